// SPDX-License-Identifier: GPL-2.0-or-later
// By https, under a name and an address that are not this machine's own loopback: what was opened before is still there
// when the network is gone, and is fresh again when it is back; a new library makes the device forget the pages of the
// old one. By plain http under that name no page is kept, and nothing breaks.
//
// All of it runs in a network namespace of its own, so that its network can be taken away. Where none can be made, it
// fails and says why.
//
//   node tests/page/offline.mjs SHEAF LIBRARY NODE_MODULES
import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserOf, ended, expect, faults, finish, serve } from './serving.mjs';

const inside = 'SHEAF_TEST_NAMESPACE';
if (!process.env[inside]) {
  const asRoot = process.getuid() === 0 ? [] : ['--map-root-user'];
  const ran = spawnSync('unshare', ['--net', ...asRoot, process.execPath, ...process.argv.slice(1)], { stdio: 'inherit', env: { ...process.env, [inside]: 'yes' } });
  if (ran.error) console.log(`no network namespace: ${ran.error.message}`);
  process.exit(ran.status ?? 1);
}
const shop = '192.0.2.1';  // an address for documentation (RFC 5737)
const ip = (...words) => execFileSync('ip', words, { stdio: ['ignore', 'ignore', 'inherit'] });
const connect = () => ip('addr', 'add', `${shop}/32`, 'dev', 'lo');
const disconnect = () => ip('addr', 'del', `${shop}/32`, 'dev', 'lo');
ip('link', 'set', 'lo', 'up');
connect();

const [sheaf, library, modules] = process.argv.slice(2);
const { launch } = browserOf(modules);
const here = mkdtempSync(join(tmpdir(), 'offline-'));
const name = 'bench.local';
const [certificate, key] = [join(here, 'bench.pem'), join(here, 'bench.key')];
execFileSync('openssl', ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2', '-subj', `/CN=${name}`,
  '-addext', `subjectAltName=DNS:${name}`, '-out', certificate, '-keyout', key], { stdio: 'ignore' });
const publicKey = execFileSync('openssl', ['x509', '-in', certificate, '-pubkey', '-noout']);
const der = execFileSync('openssl', ['pkey', '-pubin', '-outform', 'der'], { input: publicKey });
const pin = execFileSync('openssl', ['dgst', '-sha256', '-binary'], { input: der }).toString('base64');

// The browser looks the name up here, and trusts this one certificate: as on a device on which the shop installed it.
const browser = await launch(`--host-resolver-rules=MAP ${name} ${shop}`, `--ignore-certificate-errors-spki-list=${pin}`);
const answer = '/find?q=top+plug+muleback+2013';
const kept = join(here, 'shop.sheaf');
copyFileSync(library, kept);

async function overHttps() {
  const { url, server } = await serve(sheaf, kept, '--listen', shop, '--host', name, '--certificate', certificate, '--key', key);
  const ours = url.replace(shop, name);
  const page = await (await browser.newContext()).newPage();
  await page.goto(ours + answer);
  expect(await page.evaluate(() => isSecureContext), 'https is no secure context');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller);
  await page.goto(ours + answer);
  await withoutNetwork(page, ours);
  const stores = () => page.evaluate(() => caches.keys());
  const [before] = await stores();
  replaceLibrary();
  await page.goto(ours + answer);
  await page.waitForFunction(async (old) => { const names = await caches.keys(); return names.length === 1 && names[0] !== old; }, before, { timeout: 10000 })
    .catch(() => faults.push('pages of the library before are kept'));
  await page.goto(ours + answer);
  expect(await ended(server) === 0, 'the server did not end well');
  await page.goto(ours + answer);
  expect((await page.locator('h1 .figure').innerText()).includes('28'), 'offline by https: the answer is gone');
  await page.locator('.from-memory').waitFor({ timeout: 5000 }).catch(() => faults.push('offline by https: it does not say that it is from memory'));
  await page.goto(`${ours}/entry/sorvane-43-rod/top-plug`).then(() => faults.push('offline: a page never opened is shown'), () => undefined);
  await page.context().close();
}

// A card that was begun goes on, the answer is there, and neither hides where it comes from.
const card = '/card/sorvane-41-rod?machine=muleback&year=2013', box = '[id="top-plug/tightened/left"]';
async function withoutNetwork(page, ours) {
  const fromMemory = (what) => page.locator('.from-memory').waitFor({ timeout: 8000 }).catch(() => faults.push(`without a network: ${what} does not say that it is from memory`));
  await page.goto(ours + card);
  await page.locator(box).check();
  disconnect();
  await page.goto(ours + answer);
  expect((await page.locator('h1 .figure').innerText()).includes('28'), 'without a network: the answer is gone');
  await fromMemory('the answer');
  await page.goto(ours + card);
  expect(await page.locator(box).isChecked(), 'without a network: the card has forgotten its ticks');
  await fromMemory('the card');
  const other = await page.context().newPage();
  await other.goto(`${ours}/entry/sorvane-43-rod/top-plug`).then(() => faults.push('without a network: a page never opened is shown'), () => undefined);
  await other.close();
  connect();
  await page.goto(ours + answer);
  expect((await page.locator('.from-memory').count()) === 0, 'with the network back: the answer is still from memory');
}

// The same sheets, written under another name, are another library.
function replaceLibrary() {
  execFileSync(join(sheaf, '../sheafc'), ['build', 'specs-yaml', '-o', join(here, 'second.sheaf')], { stdio: 'ignore' });
  renameSync(join(here, 'second.sheaf'), kept);
}

async function overHttp() {
  const { url, server } = await serve(sheaf, library, '--listen', shop, '--host', name);
  const page = await (await browser.newContext()).newPage();
  page.on('pageerror', (error) => faults.push(`by plain http: ${error.message}`));
  await page.goto(url.replace(shop, name) + answer);
  expect(!(await page.evaluate(() => 'serviceWorker' in navigator)), 'by plain http there is a service worker after all');
  expect((await page.locator('h1 .figure').innerText()).includes('28'), 'by plain http: no answer');
  await page.context().close();
  await ended(server);
}

for (const step of [overHttps, overHttp]) await step().catch((error) => faults.push(`${step.name}: ${error.message.split('\n').slice(0, 4).join(' ')}`));
await browser.close();
rmSync(here, { recursive: true });
finish('kept by https, and only there');
