// SPDX-License-Identifier: GPL-2.0-or-later
// The schema that `sheafc schema` prints, tried with the YAML language server that editors run, over its own
// protocol: sound sheets draw no complaint, unsound ones do at the right line, keys are offered and explained.
//
//   node language_server.mjs SHEAFC NODE_MODULES FOLDER...
import { execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [sheafc, modules, ...folders] = process.argv.slice(2);
const here = mkdtempSync(join(tmpdir(), 'schema-'));
const schema = join(here, 'sheet.schema.json');
writeFileSync(schema, execFileSync(sheafc, ['schema']));

// --- the protocol: JSON bodies, each with its length before it
const server = spawn(process.execPath, [join(modules, 'yaml-language-server/bin/yaml-language-server'), '--stdio'],
  { stdio: ['pipe', 'pipe', 'ignore'] });
const waiting = new Map();
const diagnostics = new Map();
let received = Buffer.alloc(0);
let next = 1;

function send(message) {
  const body = JSON.stringify({ jsonrpc: '2.0', ...message });
  server.stdin.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
}

function request(method, params) {
  const id = next++;
  send({ id, method, params });
  return new Promise((resolve, reject) => waiting.set(id, { resolve, reject }));
}

const settings = {
  'yaml': { schemas: { [pathToFileURL(schema)]: '*.yaml' }, validate: true, completion: true, hover: true, schemaStore: { enable: false } },
};

function take(message) {
  if (message.method === 'workspace/configuration') {
    send({ id: message.id, result: message.params.items.map((item) => settings[item.section] ?? {}) });
  } else if (message.method === 'textDocument/publishDiagnostics') {
    diagnostics.get(message.params.uri)?.(message.params.diagnostics);
  } else if (message.id !== undefined && message.method) {
    send({ id: message.id, result: null });
  } else if (waiting.has(message.id)) {
    const { resolve, reject } = waiting.get(message.id);
    waiting.delete(message.id);
    if (message.error) reject(new Error(message.error.message));
    else resolve(message.result);
  }
}

server.stdout.on('data', (data) => {
  received = Buffer.concat([received, data]);
  for (;;) {
    const end = received.indexOf('\r\n\r\n');
    if (end < 0) return;
    const length = Number(/Content-Length: (\d+)/.exec(received.subarray(0, end).toString())[1]);
    if (received.length < end + 4 + length) return;
    take(JSON.parse(received.subarray(end + 4, end + 4 + length).toString()));
    received = received.subarray(end + 4 + length);
  }
});

// Opens a document; what the server has to say of it comes back.
let opened = 0;
function open(text) {
  const uri = pathToFileURL(join(here, `document-${++opened}.yaml`)).toString();
  const said = new Promise((resolve) => diagnostics.set(uri, resolve));
  send({ method: 'textDocument/didOpen', params: { textDocument: { uri, languageId: 'yaml', version: 1, text } } });
  return said.then((list) => ({ uri, said: list.map(({ range, message }) => ({ line: range.start.line + 1, message })) }));
}

// --- the tests
let faults = 0;
function expect(truth, what) {
  if (truth) return;
  faults++;
  console.log(`wrong: ${what}`);
}

const head = `sheet: try
title: A try
assembly: fork
source: { title: Sorvane fork service leaflet 41 }
checked: { on: 2026-10-02, by: workshop }
`;

async function soundSheets() {
  const files = folders.flatMap((folder) => readdirSync(folder, { recursive: true }).filter((name) => name.endsWith('.yaml'))
    .map((name) => join(folder, name)));
  for (const file of files) {
    const { said } = await open(readFileSync(file, 'utf8'));
    expect(said.length === 0, `${file}: ${JSON.stringify(said)}`);
  }
  expect(files.length > 0, 'no sheets to try');
  return files.length;
}

const unsound = [
  ['fasteners:\n  plug: { name: plug, torqe: 28 N·m }\n', 7, /torqe/],
  ['fasteners:\n  plug: { name: plug, torque: 28 }\n', 7, /string/],
  ['fasteners:\n  plug: { name: plug, state: greasy }\n', 7, /greased/],
  ['fasteners:\n  plug: { name: plug, withdrawn: { on: 2026-10-02 } }\n', 7, /reason/],
  ['fluids:\n  oil: { name: oil, purpose: fork-oil, label-only: maybe }\n', 7, /yes/],
  ['fits: { make: Haldrek, model: Muleback 380, years: 2011-2015 }\n', 6, /pattern/i],
  ['fasteners:\n  plug:\n    name: plug\n    variants:\n      - { years: 2011.., torqe: 28 N·m }\n', 10, /torqe/],
  ['fastners:\n  plug: { name: plug }\n', 6, /fastners/],
];

async function unsoundSheets() {
  for (const [piece, line, message] of unsound) {
    const { said } = await open(head + piece);
    expect(said.some((one) => one.line === line && message.test(one.message)), `${piece}: ${JSON.stringify(said)}`);
  }
}

async function keysAreOffered() {
  const text = head + 'fasteners:\n  plug:\n    name: plug\n    to\n';
  const { uri } = await open(text);
  const { items } = await request('textDocument/completion', { textDocument: { uri }, position: { line: 8, character: 6 } });
  const torque = items.find((item) => item.label === 'torque');
  expect(torque, `torque is not offered: ${items.map((item) => item.label)}`);
  expect(JSON.stringify(torque?.documentation ?? '').includes('How tight'), 'torque is offered without a description');
  expect(!items.some((item) => item.label === 'viscosity'), 'a fluid\'s key is offered on a fastener');
}

async function choicesAreOffered() {
  const { uri } = await open(head + 'fasteners:\n  plug:\n    name: plug\n    state: \n');
  const { items } = await request('textDocument/completion', { textDocument: { uri }, position: { line: 8, character: 11 } });
  const labels = items.map((item) => item.label);
  expect(['dry', 'oiled', 'source-silent'].every((word) => labels.includes(word)), `states offered: ${labels}`);
}

async function keysAreExplained() {
  const { uri } = await open(head + 'fasteners:\n  plug: { name: plug, torque: 28 N·m }\n');
  const hover = await request('textDocument/hover', { textDocument: { uri }, position: { line: 6, character: 24 } });
  expect(JSON.stringify(hover ?? '').includes('How tight'), `hovering over torque: ${JSON.stringify(hover)}`);
}

setTimeout(() => { console.log('wrong: the server is silent'); process.exit(1); }, 240_000).unref();
await request('initialize', {
  processId: process.pid, rootUri: pathToFileURL(here).toString(),
  capabilities: { workspace: { configuration: true }, textDocument: { publishDiagnostics: {}, hover: { contentFormat: ['markdown'] } } },
});
send({ method: 'initialized', params: {} });
send({ method: 'workspace/didChangeConfiguration', params: { settings } });
const tried = await soundSheets();
await unsoundSheets();
await keysAreOffered();
await choicesAreOffered();
await keysAreExplained();
server.kill();
rmSync(here, { recursive: true });
console.log(`${tried} sound sheets, ${unsound.length} unsound ones, ${faults} wrong`);
process.exit(faults ? 1 : 0);
