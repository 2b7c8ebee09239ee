// SPDX-License-Identifier: GPL-2.0-or-later
// The page in a real browser, as the technician and the clerk use it: on a phone, a tablet and a desktop, by the
// keyboard alone, without scripting, over a reload, in two tabs, and with the server gone. Every page is valid,
// accessible and light, and its figure can be read at arm's length.
//
//   node tests/page/bench.mjs SHEAF LIBRARY NODE_MODULES [STEP...]      all steps, if none is named
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserOf, ended, expect, faults, finish, serve } from './serving.mjs';

const patience = 20000;  // milliseconds, for a browser that starts beside other tests
const [sheaf, library, modules, ...named] = process.argv.slice(2);
const { launch, AxeBuilder } = browserOf(modules);
const here = mkdtempSync(join(tmpdir(), 'page-'));
const { url, server } = await serve(sheaf, library);
const browser = await launch();

const sizes = { phone: [390, 844], tablet: [820, 1180], desktop: [1366, 768] };
const fork = '/card/sorvane-41-rod?machine=muleback&year=2013';
const pages = {
  home: '/', answer: '/find?q=top+plug+muleback+2013', pounds: '/find?q=top+plug+muleback+2013&unit=lbf%C2%B7ft',
  several: '/find?q=top+plug', none: '/find?q=top+plug+muleback+2009', entry: '/entry/sorvane-41-rod/top-plug', ring: '/entry/sorvane-41-rod/oil-seal',
  sheet: '/entry/sorvane-41-rod', card: fork, choice: '/card?q=fork', match: '/match?q=41.1+x+54+x+11',
  convert: '/convert?q=17.5+oz+to+mL', wrench: '/wrench?q=35%C2%B13+N%C2%B7m', 
  ownWrench: '/wrench?q=35%C2%B13+N%C2%B7m&range=10..60+N%C2%B7m&step=0.5',
  kit: '/kit?q=fork,+front+brake&machine=muleback&year=2013', kitAsked: '/kit', topics: '/reckon', topic: '/reckon?topic=torque',
  reckoned: '/reckon?topic=torque&thread=M8&class=8.8&state=oiled', level: '/reckon?q=level+bore+37.4+mm+length+580+mm+volume+512+mL', about: '/about', missing: '/no/such',
};

const inTheDark = ['answer', 'card', 'match'];  // looked through again with dark colours

async function opened(path, options = {}) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, ...options });
  const page = await context.newPage();
  page.on('pageerror', (error) => faults.push(`${page.url()}: ${error.message}`));
  page.on('console', (message) => { if (message.type() === 'error' && !/404|400|ERR_/.test(message.text())) faults.push(`${page.url()}: ${message.text()}`); });
  await page.goto(url + path);
  return page;
}
// Numbers are tied to their units by spaces that do not break; here they are spaces like others.
const plain = (words) => words.replaceAll('\u00a0', ' ');
const text = async (page, selector) => plain(await page.locator(selector).first().innerText());
const close = (page) => page.context().close();

// --- every page: accessible at every size and in both lights, nothing wider than the screen, targets large enough
async function checkPage(page, name, path) {
  await page.goto(url + path);
  for (const [size, [width, height]] of Object.entries(sizes)) {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme: size === 'tablet' ? 'dark' : 'light' });
    await checkSize(page, `${name} on a ${size}`);
    if (size === 'phone' || (size === 'tablet' && inTheDark.includes(name)))
      // In the page itself: there are no frames, for which the newer way opens another page each time.
      for (const found of (await new AxeBuilder({ page }).setLegacyMode().analyze()).violations)
        faults.push(`${name} on a ${size}: ${found.id}: ${found.help}: ${found.nodes[0].html.slice(0, 120)}`);
  }
}

async function checkSize(page, where) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide <= 0, `${where}: ${wide} px wider than the screen`);
  const small = await page.evaluate(() => [...document.querySelectorAll('button, nav a, .button, select, input:not([type=file]), .name a, summary')]
    .filter((each) => each.offsetParent && Math.min(...[(each.closest('label') || each).getBoundingClientRect()].flatMap((box) => [box.width, box.height])) < 43.9)
    .map((each) => each.outerHTML.slice(0, 90)));
  expect(small.length === 0, `${where}: too small to touch: ${small[0]}`);
}

// --- the capitals of the figure: at least 10 mm at 96 px to the inch, measured in the font that is used
async function checkCapitals() {
  for (const path of [pages.answer, pages.pounds]) {
    const page = await opened(path);
    const height = await page.evaluate(() => {
      const style = getComputedStyle(document.querySelector('h1 .figure'));
      const pen = document.createElement('canvas').getContext('2d');
      pen.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
      return (pen.measureText('N').actualBoundingBoxAscent / 96) * 25.4;
    });
    expect(height >= 10, `${path}: capitals are ${height.toFixed(1)} mm high`);
    const figure = await page.locator('h1 .figure').boundingBox();
    expect(figure.y + figure.height < 500, `${path}: the figure begins at ${figure.y} px and must be scrolled to`);
    await close(page);
  }
}

// --- the technician: words, the figure, the unit of the tool in hand, remembered
async function technician() {
  const page = await opened('/');
  await page.locator('#q').pressSequentially('top pl', { delay: 20 });
  await page.locator('#words button').first().click();
  await page.locator('#machine').fill('muleback');
  await page.locator('#year').fill('2013');
  await page.locator('#year').blur();
  await page.locator('h1 .figure', { hasText: '28 N·m' }).waitFor({ timeout: patience });
  await page.locator('#unit').selectOption({ index: 2 });
  await page.locator('h1 .figure', { hasText: '20.7 lbf·ft' }).waitFor({ timeout: patience });
  expect((await text(page, '.beside')).includes('as written 28 N·m (25–31)'), 'in pounds-feet: the figure as written is not beside it');
  expect((await text(page, 'main')).includes('Spring under load'), 'the caution is not beside the figure');
  await page.goto(`${url}/`);
  expect(await page.locator('#machine').inputValue() === 'muleback' && await page.locator('#year').inputValue() === '2013', 'the machine is not remembered');
  await page.locator('h1 .figure', { hasText: '20.7 lbf·ft' }).waitFor({ timeout: patience });
  await page.locator('summary').click();
  expect((await page.locator('#report').inputValue()).includes('read as: part “top plug”'), 'the report does not say how the question was read');
  await page.locator('h1 .name a').click();
  await page.waitForURL(/\/entry\/sorvane-41-rod\/top-plug/);
  await page.locator('summary').click();
  const report = plain(await page.locator('#report').inputValue());
  const digest = JSON.parse(execFileSync(sheaf, ['about', '--library', library, '--json'])).libraries[0].digest;
  for (const part of ['sorvane-41-rod/top-plug', '28 N·m', digest]) expect(report.includes(part), `the report does not say ${part}`);
  await close(page);
}

// --- a page that was asked for without a machine does not name the one that is remembered
async function remembering() {
  const page = await opened('/');
  await page.locator('#machine').fill('muleback');
  await page.locator('#machine').blur();
  await page.goto(url + pages.several);
  expect(await page.locator('#machine').inputValue() === '', 'an answer for every machine names one in its form');
  await page.goto(url + pages.entry);
  expect(await page.locator('#machine').inputValue() === 'muleback', 'the machine is forgotten beside an entry');
  await close(page);
}

// --- the technician's own wrenches: kept on the device, said beside every torque, and not in the address of an answer
async function wrenches() {
  const page = await opened('/wrench');
  for (const [name, range] of [['small one', '5..25 N·m'], ['long one', '20..100 N·m']]) {
    for (const [field, value] of [['wrench', name], ['range', range], ['step', '1'], ['accuracy', '']]) await page.locator(`#${field}`).fill(value);
    await page.locator('#keep-wrench').click();
  }
  expect(await page.locator('#kept-wrenches li').count() === 2, 'two wrenches are not both kept');
  await page.goto(url + pages.answer);
  await page.locator('.set', { hasText: 'on the long one' }).waitFor({ timeout: patience });
  expect(!page.url().includes('range'), 'the address of an answer names the wrenches of one device');
  await page.locator('h1 .name a').click();
  await page.waitForURL(/\/entry\//);
  await page.locator('.set', { hasText: 'on the long one' }).waitFor({ timeout: patience });
  await page.goto(url + fork);
  await page.waitForURL(/range=/);
  expect((await text(page, 'main')).includes('on the long one'), 'the card does not say what to set on the wrench of the device');
  await page.goto(`${url}/wrench`);
  for (let left = 2; left > 0; --left) await page.locator('#kept-wrenches button').first().click();
  await page.goto(url + pages.answer);
  await page.locator('.set', { hasText: 'three-eighths wrench' }).waitFor({ timeout: patience });
  await close(page);
}

// --- the clerk: two fields, what fits and what does not apart
async function clerk() {
  const page = await opened('/match', { viewport: { width: 1366, height: 768 } });
  await page.locator('#inside').fill('41.1');
  await page.locator('#outside').fill('54');
  await page.keyboard.press('Enter');
  await page.locator('.answers .name', { hasText: 'fork oil seal' }).first().waitFor({ timeout: patience });
  expect((await text(page, '.not')).includes('NOT the same'), 'what is near does not stand apart');
  expect(!(await text(page, '.not')).includes('fork oil seal\n'), 'the seal that fits is among those that do not');
  expect((await text(page, 'main')).includes('Same size is not same part'), 'the caution of sizes is missing');
  await close(page);
}

// --- without scripting, and by the keyboard alone
async function withoutScripting() {
  const page = await opened('/', { javaScriptEnabled: false });
  await page.locator('#q').fill('top plug muleback');
  await page.locator('#year').fill('2013');
  await page.locator('#unit').selectOption({ index: 2 });
  await page.locator('#search button[type=submit]').click();
  expect((await text(page, 'h1 .figure')).replace(/\s+/g, ' ').includes('20.7 lbf·ft'), 'without scripting: no figure in pounds-feet');
  await page.goto(url + fork);
  expect(await page.locator('main input[type=checkbox]').count() > 20, 'without scripting: the card has no boxes');
  await close(page);
}

async function byKeyboard() {
  const page = await opened('/');
  expect(await page.evaluate(() => document.activeElement.id) === 'q', 'the search field is not where one begins');
  await page.keyboard.type('top plug muleback 2013');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => location.pathname === '/find' && document.activeElement.id !== 'q');
  for (let i = 0; i < 30 && !(await page.evaluate(() => document.activeElement.closest('h1'))); ++i) await page.keyboard.press('Tab');
  const outlined = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
  expect(outlined === 'solid', 'what the keyboard is on is not outlined');
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/entry\/sorvane-41-rod\/top-plug/, { timeout: patience });
  await close(page);
}

// --- the card: kept over a reload, in two tabs, out and in as the command line's own record
const box = 'top-plug/tightened/left';
async function card() {
  const page = await opened(fork);
  const other = await page.context().newPage();
  await other.goto(url + fork);
  await page.locator(`[id="${box}"]`).check();
  await page.locator('[id="job/number"]').fill('W-1207');
  await other.locator('[id="top-plug/tightened/right"]').check();
  await other.locator('[id="preload/found/left"], [id="preload/found"]').first().fill('5');
  await page.waitForFunction(() => document.getElementById('top-plug/tightened/right').checked);
  await page.reload();
  expect(await page.locator(`[id="${box}"]`).isChecked(), 'a tick is lost by a reload');
  expect(await page.locator('[id="top-plug/tightened/right"]').isChecked(), 'a tick of the other tab was overwritten');
  expect(await page.locator('[id="job/number"]').inputValue() === 'W-1207', 'a blank is lost by a reload');
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator('#record-out').click()]);
  const kept = join(here, 'job.json');
  await download.saveAs(kept);
  checkRecord(kept);
  page.on('dialog', (dialog) => dialog.accept());
  await page.locator('#record-clear').click();
  expect(!(await page.locator(`[id="${box}"]`).isChecked()), 'what was cleared is still there');
  await page.locator('#record-in').setInputFiles(kept);
  await page.locator('#record-state', { hasText: '3 of' }).waitFor({ timeout: patience }).catch(() => faults.push('a record does not come back in'));
  expect(await page.locator('[id="job/number"]').inputValue() === 'W-1207', 'the job does not come back in');
  await close(page);
}

// The command line fills in the same card, and keeps the very same file.
function checkRecord(kept) {
  const same = join(here, 'same.json');
  const ids = Object.entries(JSON.parse(readFileSync(kept)).items);
  const entering = ids.flatMap(([id, value]) => {
    const [entry, deed, place] = id.split('/');
    const what = place ? `${entry}/${place}` : entry;
    return value === true ? ['--done', what] : [`--${deed}`, `${what}=${value}`];
  });
  const words = ['card', 'sorvane-41-rod', '--machine', 'muleback', '--year', '2013', '--library', library, '--today', '2026-11-25'];
  const ran = spawnSync(sheaf, [...words, '--record', same, ...entering, '--job', 'number=W-1207']);
  expect(ran.status === 1, `sheaf card --record: ${ran.status} ${ran.stderr}`);
  const [ours, theirs] = [kept, same].map((file) => JSON.parse(readFileSync(file)));
  delete theirs.job.on; delete ours.job.on;
  expect(JSON.stringify(ours) === JSON.stringify(theirs), `the record is not the command line's:\n${JSON.stringify(ours)}\n${JSON.stringify(theirs)}`);
  const shown = spawnSync(sheaf, [...words, '--with', kept, '--html']);
  expect(shown.status === 0 && shown.stdout.includes('W-1207'), `sheaf card --with does not take the record: ${shown.stderr}`);
}

// --- saved as one file: whole, without anything to fetch
async function savedAsFiles() {
  for (const [path, words] of [[fork, '28 N·m'], [pages.entry, '28 N·m'], [pages.sheet, '28 N·m'], [pages.kit, 'Sorvane damper oil']]) {
    const page = await opened(path);
    const [download] = await Promise.all([page.waitForEvent('download'), page.locator('a', { hasText: /^Save this/ }).click()]);
    const file = join(here, `saved-${download.suggestedFilename()}`);
    await download.saveAs(file);
    const html = plain(readFileSync(file, 'utf8'));
    expect(html.includes(words) && !/\b(src|href|action)=/.test(html), `${path}, saved: not whole, or fetches something`);
    saved.push(file);
    await close(page);
  }
}
const saved = [];

// --- light: all that a first visit loads
async function checkWeight() {
  const page = await opened('/health');
  const bodies = [];
  page.on('response', (response) => bodies.push(response.body().catch(() => '')));
  await page.goto(url + fork, { waitUntil: 'networkidle' });
  const bytes = (await Promise.all(bodies)).reduce((sum, body) => sum + body.length, 0);
  expect(bytes > 30_000 && bytes < 100_000, `the heaviest page weighs ${bytes} bytes`);
  await page.close();
  weight = bytes;
}

// --- valid: what the server sends, by the checker of the HTML standard
async function checkValid() {
  const files = [...saved];
  for (const [name, path] of Object.entries(pages)) {
    files.push(join(here, `${name}.html`));
    writeFileSync(files.at(-1), await (await fetch(url + path)).text());
  }
  const vnu = spawnSync('java', ['-jar', join(modules, 'vnu-jar/build/dist/vnu.jar'), '--format', 'gnu', ...files]);
  expect(vnu.status === 0 && vnu.stderr.length === 0, `the checker of HTML: ${vnu.stderr}${vnu.error ?? ''}`);
}

// --- the server gone: what was opened before is still shown, and says so
async function withoutServer() {
  const page = await opened(pages.answer);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller);
  await page.goto(url + fork);
  await page.locator(`[id="${box}"]`).check();
  await page.goto(url + pages.answer);
  expect(await ended(server) === 0, 'the server did not end well');
  await page.goto(url + fork);
  expect(await page.locator(`[id="${box}"]`).isChecked(), 'offline: the card has forgotten its ticks');
  await page.locator('.from-memory').waitFor({ timeout: patience }).catch(() => faults.push('offline: the page does not say that it is from memory'));
  await page.goto(url + pages.answer);
  expect((await text(page, 'h1 .figure')) === '28 N·m', 'offline: the answer is gone');
  await close(page);
}

// A step that breaks off is a fault, and the others are still taken.
let weight = 0;
const allPages = async () => {
  const page = await opened('/');
  for (const [name, path] of Object.entries(pages)) await checkPage(page, name, path);
  await close(page);
};
const steps = [technician, remembering, wrenches, clerk, withoutScripting, byKeyboard, card, savedAsFiles, checkCapitals, checkWeight, checkValid, allPages, withoutServer];
for (const step of named.length ? steps.filter((each) => named.includes(each.name)) : steps)
  await step().catch((error) => faults.push(`${step.name}: ${error.message.split('\n').slice(0, 4).join(' ')}`));
await browser.close();
server.kill();
rmSync(here, { recursive: true });
finish(`${Object.keys(pages).length} pages on ${Object.keys(sizes).length} screens; the heaviest weighs ${weight} bytes`);
