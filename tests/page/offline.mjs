// SPDX-License-Identifier: GPL-2.0-or-later
// By https, under a name that is not this machine's own: what was opened before is still there when the server is
// gone, and a new library makes the device forget the pages of the old one. By plain http under that name no page is
// kept, and nothing breaks.
//
//   node tests/page/offline.mjs SHEAF LIBRARY NODE_MODULES
import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserOf, ended, expect, faults, finish, serve } from './serving.mjs';

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
const browser = await launch(`--host-resolver-rules=MAP ${name} 127.0.0.1`, `--ignore-certificate-errors-spki-list=${pin}`);
const answer = '/find?q=top+plug+muleback+2013';
const kept = join(here, 'shop.sheaf');
copyFileSync(library, kept);

async function overHttps() {
  const { url, server } = await serve(sheaf, kept, '--host', name, '--certificate', certificate, '--key', key);
  const ours = url.replace('127.0.0.1', name);
  const page = await (await browser.newContext()).newPage();
  await page.goto(ours + answer);
  expect(await page.evaluate(() => isSecureContext), 'https is no secure context');
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
  await page.waitForFunction(() => navigator.serviceWorker.controller);
  await page.goto(ours + answer);
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

// The same sheets, written under another name, are another library.
function replaceLibrary() {
  execFileSync(join(sheaf, '../sheafc'), ['build', 'specs-yaml', '-o', join(here, 'second.sheaf')], { stdio: 'ignore' });
  renameSync(join(here, 'second.sheaf'), kept);
}

async function overHttp() {
  const { url, server } = await serve(sheaf, library, '--host', name);
  const page = await (await browser.newContext()).newPage();
  page.on('pageerror', (error) => faults.push(`by plain http: ${error.message}`));
  await page.goto(url.replace('127.0.0.1', name) + answer);
  expect(!(await page.evaluate(() => 'serviceWorker' in navigator)), 'by plain http there is a service worker after all');
  expect((await page.locator('h1 .figure').innerText()).includes('28'), 'by plain http: no answer');
  await page.context().close();
  await ended(server);
}

for (const step of [overHttps, overHttp]) await step().catch((error) => faults.push(`${step.name}: ${error.message.split('\n').slice(0, 4).join(' ')}`));
await browser.close();
rmSync(here, { recursive: true });
finish('kept by https, and only there');
