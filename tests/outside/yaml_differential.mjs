// SPDX-License-Identifier: GPL-2.0-or-later
// Random texts made of YAML's marks, against the npm parser `yaml`: whatever our reader accepts, the other must accept
// and read alike. What we refuse does not matter here. The same seed makes the same texts.
//
//   node yaml_differential.mjs TREE_JSON NODE_MODULES COUNT [SEED]
import { finish, readOther, readOurs, rest, same } from './yaml.mjs';

const starts = ['', 'a:\n  b: ', '- ', 'x: ', 's:\n  - ', 'r: [', 'q: {u: '];
const parts = ['a', 'b', 'c d', 'key', ': ', ':', '\n', '\n', '\n', '\n  ', '\n  ', '\n    ', '\n ', '- ', '- ', '-', '[',
  '[', ']', ']', '{', '}', ', ', ',', '"', '"', "'", '#', ' #', ' # c', '|', '|\n', '>\n', '>-\n', '|+\n', '|2\n', '  ', ' ',
  '"x"', "'y'", '"p\n  q"', 'x: y', 'a: 1\n', '\n\n', '\\', '\\n', '"e\\"f"', '1.5', '~', 'null', '---\n', '...\n', '? ',
  'a: ', 'b: ', '\n  - ', '\nk: ', '\nm:\n  ', '"s": ', '[x, y]', '{x: y}', 'é', '…', '%', '@', '`', '>', '?', '!', '&',
  '*', "it's", '5/16"', '<<: ', '=', '\r\n'];

const count = Number(rest[0]);
let state = Number(rest[1] ?? 1);
const below = (n) => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return Math.floor((state / 2 ** 32) * n);
};
const one = (list) => list[below(list.length)];
const texts = Array.from({ length: count }, () => {
  let text = one(starts);
  for (let left = 1 + below(12); left > 0; --left) text += one(parts);
  return below(2) ? text + '\n' : text;
});

// YAML 1.2 lets a document end twice (rule 211); the other parser counts a second, empty one.
const endsTwice = /^\.\.\.[^]*^\.\.\./m;

const wrong = [];
let accepted = 0;
readOurs(texts).forEach(({ tree, refused }, i) => {
  if (refused || endsTwice.test(texts[i])) return;
  ++accepted;
  const other = readOther(texts[i]);
  if (!same(tree, other.tree)) wrong.push(`${JSON.stringify(texts[i])}\n  ours  ${JSON.stringify(tree)}\n  other ${JSON.stringify(other)}`);
});
console.log(`${count} random texts, ${accepted} accepted, ${wrong.length} of them read otherwise by the other parser`);
if (accepted < count / 20) wrong.push(`only ${accepted} accepted: the texts test nothing`);
finish(wrong);
