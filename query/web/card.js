// SPDX-License-Identifier: GPL-2.0-or-later
// A card or a kit that remembers: every box and blank is kept on this device under a name of its own, so that a reload
// or a flat battery loses nothing and two tabs never overwrite each other. What is kept of a card leaves the device,
// and comes back in, as the record that `sheaf card --record` keeps; a kit has no record.
'use strict';

(() => {
  const source = at('record');
  if (!source) return;
  const blank = JSON.parse(source.dataset.record || '{}');
  const figures = JSON.parse(source.dataset.figures || '{}');
  const { make = '', model = '', year = '', frame = '', market = '' } = blank.machine || {};
  const card = source.dataset.kept ? `${source.dataset.kept}/` : `card/${[blank.sheet, make, model, year, frame, market].map(encodeURIComponent).join('/')}/`;
  const fields = [...document.querySelectorAll('main input, footer input')].filter((field) => field.id);
  const valueOf = (field) => (field.type === 'checkbox' ? (field.checked ? 'ticked' : '') : field.value.trim());

  function fill(field, value) {
    if (field.type === 'checkbox') field.checked = value === 'ticked';
    else field.value = value || '';
  }
  const keep = (field) => { kept.set(card + field.id, valueOf(field)); say(); };
  const filled = () => fields.filter(valueOf);
  function say() {
    const boxes = fields.filter((field) => !field.id.startsWith('job/'));
    const done = boxes.filter(valueOf).length;
    at('record-state').textContent = `${done} of ${boxes.length} filled in, kept on this device.`;
  }

  // As query/answer/card_record.cc writes it: items and texts by their names, in their order.
  const inOrder = (pairs) => Object.fromEntries(pairs.sort(([left], [right]) => (left < right ? -1 : 1)));
  function record() {
    const job = [], items = [], seen = [];
    for (const field of filled()) {
      if (field.id.startsWith('job/')) { job.push([field.id.slice(4), valueOf(field)]); continue; }
      items.push([field.id, field.type === 'checkbox' ? true : valueOf(field)]);
      const entry = field.id.split('/')[0];
      if (figures[entry]) seen.push([entry, figures[entry]]);
    }
    return { ...blank, job: inOrder(job), items: inOrder(items), figures: inOrder(seen) };
  }

  function takeOut() {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([`${JSON.stringify(record(), null, 2)}\n`], { type: 'application/json' }));
    link.download = `${blank.sheet}.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10000);
  }

  async function bringIn(file) {
    let brought;
    try { brought = JSON.parse(await file.text()); } catch { brought = null; }
    if (!brought || brought.kind !== 'card-record' || brought.schema !== 1) return refuse('That file is no record of a card.');
    if (brought.sheet !== blank.sheet) return refuse(`That is a record of ${brought.sheet}, not of ${blank.sheet}.`);
    const theirs = { ...brought.items };
    for (const [name, text] of Object.entries(brought.job || {})) theirs[`job/${name}`] = text;
    const unknown = Object.keys(theirs).filter((id) => !fields.some((field) => field.id === id));
    for (const field of fields) {
      fill(field, theirs[field.id] === true ? 'ticked' : theirs[field.id]);
      kept.set(card + field.id, valueOf(field));
    }
    say();
    const changed = Object.entries(brought.figures || {}).filter(([entry, text]) => figures[entry] && figures[entry] !== text);
    if (changed.length) refuse(`Changed since it was filled in: ${changed.map(([entry, text]) => `${entry} was ${text}, is ${figures[entry]}`).join('; ')}.`);
    else if (unknown.length) refuse(`Not on this card, and left out: ${unknown.join(', ')}.`);
    return undefined;
  }
  function refuse(why) { at('record-state').textContent = why; }

  fields.forEach((field) => {
    fill(field, kept.get(card + field.id));
    field.addEventListener(field.type === 'checkbox' ? 'change' : 'input', () => keep(field));
  });
  // What another tab fills in appears in this one.
  addEventListener('storage', (event) => {
    const field = fields.find((each) => event.key === ours + card + each.id);
    if (field) fill(field, event.newValue);
    else if (event.key === null) fields.forEach((each) => fill(each, null));
    say();
  });
  at('record-out')?.addEventListener('click', takeOut);
  at('record-in')?.addEventListener('change', (event) => { if (event.target.files[0]) bringIn(event.target.files[0]); event.target.value = ''; });
  at('record-clear').addEventListener('click', () => { fields.forEach((field) => { fill(field, null); kept.set(card + field.id, ''); }); say(); });
  at('record-tools').hidden = false;
  say();
})();
