// SPDX-License-Identifier: GPL-2.0-or-later
// How soon a first visit shows its answer on a slow phone: the network and the processor are held back by the browser's
// own means (Chrome DevTools Protocol). Fails if the answer is not painted within a second, or a whole page weighs
// 100 kB or more. It is no test: its times hold only on a machine that does nothing else.
//
//   node tests/page/paint.mjs SHEAF LIBRARY NODE_MODULES
import { browserOf, ended, expect, finish, serve } from './serving.mjs';

const [sheaf, library, modules] = process.argv.slice(2);
const { url, server } = await serve(sheaf, library);
const browser = await browserOf(modules).launch();

// "Slow 4G" as tools for the web take it, and a processor a quarter as fast (common practice, from memory).
const network = { offline: false, latency: 150, downloadThroughput: 1.6e6 / 8, uploadThroughput: 750e3 / 8 };
const slowness = 4;
const visits = 5;
const longest = 1000, heaviest = 100_000;  // ms, bytes
// What must be there to be of use.
const pages = {
  answer: ['/find?q=top+plug+muleback+2013', 'h1 .figure'], entry: ['/entry/sorvane-41-rod/top-plug', 'h1 .figure'],
  several: ['/find?q=top+plug', '.answers .figure'], card: ['/card/sorvane-41-rod?machine=muleback&year=2013', 'main h1'],
  match: ['/match?inside=41.1&outside=54', '.answers .figure'], home: ['/', '#q'],
};

// Each visit in a profile of its own: nothing is kept from the one before. The browser has a page of two bytes open, as
// a phone's browser is open: to start its processes takes this browser longer than the visit, whatever is visited.
async function visit(path, useful) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: 3, isMobile: true, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(`${url}/health`);
  const devtools = await context.newCDPSession(page);
  await devtools.send('Network.enable');
  await devtools.send('Network.emulateNetworkConditions', network);
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowness });
  let bytes = 0;
  devtools.on('Network.loadingFinished', (finished) => { bytes += finished.encodedDataLength; });
  await page.goto(url + path, { waitUntil: 'load' });
  const painted = await page.evaluate((selector) => {
    const element = document.querySelector(selector);
    if (!element || element.getBoundingClientRect().top > innerHeight) return null;  // must not be scrolled to
    return new Promise((resolve) => {
      new PerformanceObserver((list) => {
        const first = list.getEntriesByName('first-contentful-paint')[0];
        if (first) resolve(first.startTime);
      }).observe({ type: 'paint', buffered: true });
    });
  }, useful);
  await context.close();
  return { painted, bytes };
}

const median = (numbers) => numbers.sort((left, right) => left - right)[Math.floor(numbers.length / 2)];
for (const [name, [path, useful]] of Object.entries(pages)) {
  const seen = [];
  for (let i = 0; i < visits; ++i) seen.push(await visit(path, useful));
  const times = seen.map((each) => each.painted);
  if (!expect(!times.includes(null), `${name}: its answer is not on the first screen`)) continue;
  const bytes = Math.max(...seen.map((each) => each.bytes));
  console.log(`${name.padEnd(8)} painted after ${Math.round(median(times))} ms (${times.map(Math.round).join(' ')}), ${bytes} bytes`);
  expect(median(times) < longest, `${name}: painted after ${Math.round(median(times))} ms`);
  expect(bytes > 5_000 && bytes < heaviest, `${name} weighs ${bytes} bytes`);
}
await browser.close();
await ended(server);
finish('painted in time');
