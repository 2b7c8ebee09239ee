// SPDX-License-Identifier: GPL-2.0-or-later
// Cards and kits as HTML: no fault by the checker of the HTML standard, none for those who hear or enlarge the
// page, and on A4 as on Letter every word on the paper: nothing wider than it, and every figure in the PDF.
//
//   node tests/cards/printing.mjs SHEAF LIBRARY NODE_MODULES
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const [sheaf, library, modules] = process.argv.slice(2);
const require = createRequire(join(modules, 'x.js'));
const { chromium } = require('playwright-core');
const { AxeBuilder } = require('@axe-core/playwright');

const papers = { A4: [210, 297], Letter: [215.9, 279.4] };  // mm
const margins = 24;  // mm, both sides together, as the style has them
const asked = {
  fork: ['card', 'fork', 'muleback', '2013'],
  top_end: ['card', 'muleback-top-end'],
  front_brake: ['card', 'pellmarrow-front-240'],
  front_wheel: ['card', 'muleback-front-wheel'],  // open to two runs of years
  steering_head: ['card', 'muleback-steering-head'],
  shock: ['card', 'sorvane-shock-50'],  // holds a withdrawn figure
  kit: ['kit', '--machine', 'muleback', '--year', '2013'],
};

const here = mkdtempSync(join(tmpdir(), 'cards-'));
const faults = [];
const run = (...words) =>
  execFileSync(sheaf, [...words, '--library', library, '--today', '2026-11-25'], { maxBuffer: 1 << 26 }).toString();

// Every figure that stands large on the page. Spaces are left out: a PDF has none, only distances.
const figures = (page) => page.$$eval('.figure', (spans) => spans.map((span) => span.textContent.replace(/\s+/g, '')));

async function checkPrint(page, name) {
  for (const [paper, [width]] of Object.entries(papers)) {
    const room = Math.floor(((width - margins) / 25.4) * 96);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: room, height: 1000 });
    const wide = await page.evaluate(() =>
      [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
        .map((e) => e.outerHTML.slice(0, 80)));
    const spilt = await page.$$eval('td, th', (cells) => cells.filter((c) => c.scrollWidth > c.clientWidth + 1).map((c) => c.textContent));
    if (spilt.length) faults.push(`${name} on ${paper}: runs out of its cell: ${spilt[0].slice(0, 60)}`);
    if (wide.length) faults.push(`${name} on ${paper}: wider than the paper: ${wide[0]}`);
    const pdf = join(here, `${name}.${paper}.pdf`);
    await page.pdf({ path: pdf, format: paper, printBackground: false });
    const text = execFileSync('pdftotext', [pdf, '-'], { maxBuffer: 1 << 26 }).toString().replace(/\s+/g, '');
    for (const figure of (await figures(page)).flatMap((words) => words.split('+')))
      if (!text.includes(figure)) faults.push(`${name} on ${paper}: not on the paper: ${figure}`);
  }
}

async function check(page, name, words) {
  const file = join(here, `${name}.html`);
  writeFileSync(file, run(...words, '--html'));
  if (/\b(src|href)=/.test(readFileSync(file, 'utf8'))) faults.push(`${name}: fetches something`);
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize({ width: 1280, height: 720 });
  await page.goto(`file://${file}`);
  if ((await figures(page)).length < 3) faults.push(`${name}: hardly a figure on it`);
  // In the page itself: there are no frames, for which the newer way opens another page.
  for (const found of (await new AxeBuilder({ page }).setLegacyMode().analyze()).violations)
    faults.push(`${name}: ${found.id}: ${found.help}: ${found.nodes[0].html.slice(0, 100)}`);
  await checkPrint(page, name);
  return file;
}

const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const page = await (await browser.newContext()).newPage();  // one for all: a new one is slow to begin
const files = [];
for (const [name, words] of Object.entries(asked)) files.push(await check(page, name, words));
await browser.close();
const vnu = spawnSync('java', ['-jar', join(modules, 'vnu-jar/build/dist/vnu.jar'), '--format', 'gnu', ...files]);
if (vnu.status !== 0 || vnu.stderr.length) faults.push(`the checker of HTML: ${vnu.stderr}${vnu.error ?? ''}`);
rmSync(here, { recursive: true });
console.log(faults.length ? faults.join('\n') : `${files.length} pages, on A4 and Letter: whole, valid and accessible`);
process.exit(faults.length ? 1 : 0);
