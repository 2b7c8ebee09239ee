// SPDX-License-Identifier: GPL-2.0-or-later
// A server of our own and a browser, for the tests of the page. Faults are collected and said at the end.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';

export const faults = [];
export function expect(truth, what) { if (!truth) faults.push(what); return truth; }

// Starts `sheaf serve` on a free port and waits for its first line.
export function serve(sheaf, library, ...flags) {
  const server = spawn(sheaf, ['serve', '--library', library, '--port', '0', '--today', '2026-11-25', ...flags]);
  server.said = '';
  server.stderr.on('data', (bytes) => { server.said += bytes; });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.once('exit', (code) => reject(new Error(`the server ended with ${code}: ${server.said}`)));
    server.stdout.once('data', (bytes) => {
      server.removeAllListeners('exit');
      resolve({ url: bytes.toString().match(/^https?:\/\/\S+:\d+/)[0], server });
    });
  });
}

export function ended(server) {
  return new Promise((resolve) => { server.once('exit', resolve); server.kill('SIGTERM'); });
}

export function browserOf(modules) {
  const require = createRequire(join(modules, 'x.js'));
  const { chromium } = require('playwright-core');
  const { AxeBuilder } = require('@axe-core/playwright');
  const launch = (...args) => chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu', ...args] });
  return { launch, AxeBuilder };
}

export function finish(done) {
  console.log(faults.length ? faults.join('\n') : done);
  process.exit(faults.length ? 1 : 0);
}
