// SPDX-License-Identifier: GPL-2.0-or-later
// What the two comparisons with other YAML readers share: our reader run over many texts, and another
// reader's tree brought to the same shape (mappings as lists of pairs, every scalar as text, null for nothing).
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

export const nothing = new Set(['', '~', 'null', 'Null', 'NULL']);

// tree_json and the folder of npm packages come on the command line.
export const [treeJson, nodeModules, ...rest] = process.argv.slice(2);
export const load = (file) => import(pathToFileURL(join(nodeModules, file)).href);

const pairs = (value) =>
  Array.isArray(value) ? value.map(pairs)
  : value && typeof value === 'object' ? { pairs: Object.entries(value).map(([key, item]) => [key, pairs(item)]) }
  : value;

// For each text { tree } or { refused: [{rule, line, column, message}] }.
export function readOurs(texts) {
  const folder = mkdtempSync(join(tmpdir(), 'sheaf-yaml-'));
  try {
    const files = texts.map((text, i) => {
      const file = join(folder, `${i}.yaml`);
      writeFileSync(file, text);
      return file;
    });
    const lines = execFileSync(treeJson, files, { encoding: 'utf8', maxBuffer: 1 << 30 }).trim().split('\n');
    return lines.map((line) => JSON.parse(line)).map(({ tree, refused }) => (refused ? { refused } : { tree: pairs(tree) }));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

// The npm package `yaml`, a YAML 1.2 parser that shares nothing with ours: a tree, or the error that it names.
const yaml = await load('yaml/dist/index.js').then((module) => module.default ?? module);
const shape = (node) => {
  if (node === null || yaml.isAlias(node)) return node && '*';
  if (yaml.isScalar(node)) {
    const plain = node.type === 'PLAIN';
    return node.value === null || (plain && nothing.has(String(node.source ?? node.value))) ? null : String(node.value);
  }
  if (yaml.isPair(node)) return { pairs: [[String(shape(node.key)), shape(node.value)]] };
  if (yaml.isSeq(node)) return node.items.map(shape);
  return { pairs: node.items.map((pair) => [String(shape(pair.key)), shape(pair.value)]) };
};
export function readOther(text) {
  const documents = yaml.parseAllDocuments(text, { schema: 'failsafe' });
  if (documents.length !== 1) return { error: `${documents.length} documents` };
  const [error] = documents[0].errors;
  return error ? { error: error.message.split('\n')[0] } : { tree: shape(documents[0].contents) };
}

export const same = (a, b) => JSON.stringify(a) === JSON.stringify(b);
export function finish(wrong) {
  if (wrong.length) console.error(wrong.join('\n'));
  process.exit(wrong.length ? 1 : 0);
}
