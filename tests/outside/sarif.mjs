// SPDX-License-Identifier: GPL-2.0-or-later
// Our SARIF logs against the published JSON Schema of SARIF 2.1.0 (as the npm package @microsoft/jest-sarif ships it),
// and the schema against logs that are spoilt on purpose, so that it is known to bite.
//
//   node sarif.mjs SARIF_LOG NODE_MODULES
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const [sarifLog, nodeModules] = process.argv.slice(2);
const require = createRequire(join(nodeModules, '@microsoft/jest-sarif/lib/index.js'));
const Ajv = require('ajv');
const ajv = new Ajv({ schemaId: 'auto', allErrors: true });
ajv.addMetaSchema(require('ajv/lib/refs/json-schema-draft-04.json'));
const valid = ajv.compile(require('./schemas/sarif-2.1.0-rtm.5.json'));

const sheets = {
  'good.yaml': 'a: 1\n',
  'with space, ü and #.yaml': 'a: 1\na: "±"\n',
  'many.yaml': Array.from({ length: 120 }, (_, i) => `a: ${i}\n`).join(''),
  'tabs.yaml': 'a:\n\tb: 1\n\tc: 2\n',
  'bytes.yaml': Buffer.from([0x61, 0x3a, 0x20, 0xe9, 0x0a]),
  'quote.yaml': 's:\n  ± · 千: "x\n  b: "y"\n',
};

const folder = mkdtempSync(join(tmpdir(), 'sheaf-sarif-'));
let log;
try {
  for (const [name, text] of Object.entries(sheets)) writeFileSync(join(folder, name), text);
  const run = (...names) => JSON.parse(execFileSync(sarifLog, names, { cwd: folder, encoding: 'utf8' }));
  log = run(...Object.keys(sheets));
  log.empty = run('good.yaml');
} finally {
  rmSync(folder, { recursive: true });
}

const wrong = [];
const { empty, ...full } = log;
for (const [name, one] of Object.entries({ full, empty })) {
  if (!valid(one)) wrong.push(`${name}: ${ajv.errorsText(valid.errors)}`);
}
const results = full.runs[0].results;
if (results.length < 100 || empty.runs[0].results.length !== 0) wrong.push(`${results.length} results`);
const prints = results.map((result) => result.partialFingerprints['sheafValue/v1']);
if (new Set(prints).size !== prints.length) wrong.push('two results share a fingerprint');

const spoil = {
  'a word for the runs': (copy) => { copy.runs = 'x'; },
  'a level that is none': (copy) => { copy.runs[0].results[0].level = 'bad'; },
  'a line 0': (copy) => { copy.runs[0].results[0].locations[0].physicalLocation.region.startLine = 0; },
  'no message': (copy) => { delete copy.runs[0].results[0].message; },
  'a key of our own': (copy) => { copy.runs[0].results[0].colour = 'red'; },
};
for (const [what, change] of Object.entries(spoil)) {
  const copy = structuredClone(full);
  change(copy);
  if (valid(copy)) wrong.push(`the schema lets through ${what}`);
}

console.log(`SARIF: ${results.length} results valid, ${Object.keys(spoil).length} spoilt logs refused, ${wrong.length} wrong`);
if (wrong.length) console.error(wrong.join('\n'));
process.exit(wrong.length ? 1 : 0);
