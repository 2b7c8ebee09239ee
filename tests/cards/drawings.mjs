// SPDX-License-Identifier: GPL-2.0-or-later
// Every drawing as a browser lays it out: nothing written runs over the edge or over other words, and all of it
// is black on white, with a title for those who do not see it.
//
//   node tests/cards/drawings.mjs SHEAF LIBRARY NODE_MODULES
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const [sheaf, library, modules] = process.argv.slice(2);
const { chromium } = createRequire(join(modules, 'x.js'))('playwright-core');

const angles = [0, 20, 45, 70, 90, 110, 135, 160, 180].flatMap((angle) => [angle, -angle]);
const asked = [
  'reckon viscosity 32 mm²/s at 40 °C and 6.1 mm²/s at 100 °C for 0 °C, 60 °C',
  'reckon viscosity 460 mm²/s at 40 °C and 30 mm²/s at 100 °C for 20 °C',
  'reckon viscosity 15 mm²/s at 40 °C and 12.5 mm²/s at 46 °C',
  'reckon torque M8 class 8.8 state oiled',
  'reckon torque M8 class 8.8 state dry scale 5..60 N·m',
  'reckon torque M24 class 10.9 state oiled',
  'reckon level bore 37.4 mm length 580 mm volume 512 mL rod 12 mm dipped 300 mm',
  'reckon level bore 37.4 mm length 580 mm level 5 mm',
  'reckon level bore 30 mm length 400 mm level 390 mm',
  'reckon ring 34.5x2.65 depth 2.1 mm width 3.6 mm groove 35.5 mm',
  'reckon ring 3x1 depth 0.8 mm width 1.3 mm',
  'match fork seal 43 x 55 x 9.5/10.5',
  'match shaft seal 30 x 40 x 7',
  'match 6203',
  'match 32006',
  'match o-ring 34.5x2.65',
  'match -001',
  'match bushing 39 x 41 x 15',
  'wrench 35±3 N·m',
  'wrench 6 N·m',
  'wrench min 35 N·m',
  'wrench max 35 N·m',
  'wrench 150±15 N·m',
  'wrench sorvane-41-rod/damper-rod-bolt',
  ...angles.map((angle) => `wrench 35±3 N·m --adapter open-17 --angle=${angle}`),
];

const faults = [];
const here = mkdtempSync(join(tmpdir(), 'drawings-'));

function draw(words, file) {
  const flags = ['--svg', file, '--library', library, ...(words.startsWith('wrench') ? ['--today', '2026-11-25'] : [])];
  const [command, ...rest] = words.split(' ');
  const done = spawnSync(sheaf, [command, ...flags, ...rest]);
  if (done.status === 2) faults.push(`${words}: ${done.stderr}`);
  return done.status === 2 ? '' : readFileSync(file, 'utf8');
}

// What is wrong with the drawing on the page, in words.
const look = () => {
  const svg = document.querySelector('svg');
  const said = [...svg.querySelectorAll('text')].map((e) => ({ words: e.textContent, box: e.getBBox() }));
  const { width, height } = svg.viewBox.baseVal;
  const wrong = said.filter(({ box }) => box.x < 0 || box.y < 0 || box.x + box.width > width || box.y + box.height > height)
    .map(({ words }) => `runs over the edge: ${words}`);
  const meet = (a, b) => a.x + 1 < b.x + b.width && b.x + 1 < a.x + a.width && a.y + 4 < b.y + b.height && b.y + 4 < a.y + a.height;
  said.forEach((a, i) => said.slice(i + 1).forEach((b) => meet(a.box, b.box) && wrong.push(`“${a.words}” over “${b.words}”`)));
  const colours = new Set([...svg.querySelectorAll('*'), svg].flatMap((e) => [e.getAttribute('fill'), e.getAttribute('stroke')]));
  for (const colour of colours)
    if (![null, 'none', '#000', '#fff'].includes(colour)) wrong.push(`neither black nor white: ${colour}`);
  if (!svg.querySelector('title')?.textContent) wrong.push('no title');
  if (said.length < 3) wrong.push('hardly a word on it');
  return wrong;
};

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const page = await (await browser.newContext()).newPage();
for (const words of asked) {
  const drawing = draw(words, join(here, 'drawing.svg'));
  if (!drawing) continue;
  await page.setContent(`<!DOCTYPE html><body>${drawing}`);
  for (const wrong of await page.evaluate(look)) faults.push(`${words}: ${wrong}`);
}
await browser.close();
rmSync(here, { recursive: true });
console.log(faults.length ? faults.join('\n') : `${asked.length} drawings: all words on them, none over another`);
process.exit(faults.length ? 1 : 0);
