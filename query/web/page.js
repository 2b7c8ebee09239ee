// SPDX-License-Identifier: GPL-2.0-or-later
// What the pages gain from scripting: answers as one types, and what the device remembers. Nothing here makes or
// changes a figure; whatever is shown comes from the server as it would without scripting.
'use strict';

// Everything that this device keeps begins so, and all of it can be cleared on /about.
const ours = 'sheaf/';
const kept = {
  get(name) { try { return localStorage.getItem(ours + name); } catch { return null; } },
  set(name, value) { try { value ? localStorage.setItem(ours + name, value) : localStorage.removeItem(ours + name); } catch { /* full, or not allowed */ } },
  names() { try { return Object.keys(localStorage).filter((name) => name.startsWith(ours)); } catch { return []; } },
};
const at = (id) => document.getElementById(id);

// The machine and the units: chosen once, then filled in where the address says nothing. Not beside
// an answer or a card that was asked for without them: its form would name a machine that it is not for.
const remembered = ['machine', 'year', 'unit'];
function recall() {
  const address = new URLSearchParams(location.search);
  const depends = /^\/(find|card)/.test(location.pathname);
  for (const name of remembered) {
    const field = at(name);
    if (!field) continue;
    if (!address.has(name) && kept.get(name) && !depends) field.value = kept.get(name);
    else if (address.has(name)) kept.set(name, field.value);
    field.addEventListener('change', () => kept.set(name, field.value));
  }
}

function addressOf(form) {
  const given = new URLSearchParams();
  for (const [name, value] of new FormData(form)) if (value) given.set(name, value);
  return `${form.getAttribute('action')}?${given}`;
}

// Empty fields would only lengthen an address that is to be shared.
function tidyForms() {
  for (const form of document.forms)
    form.addEventListener('submit', (event) => { event.preventDefault(); location.assign(addressOf(form)); });
}

// The wrenches of this device, for every address that says what to set and names no others. They are left out of the
// address of an answer, which is to be shared; a card or a kit is asked for with them, so that it prints and is kept so.
const ownWrenches = () => JSON.parse(kept.get('wrenches') || '[]');
function withWrenches(address) {
  const url = new URL(address, location);
  if (!/^\/(find|entry|card|kit|wrench)\b/.test(url.pathname) || url.searchParams.has('range')) return address;
  for (const wrench of ownWrenches()) for (const name of describing) url.searchParams.append(name, wrench[name] ?? '');
  return url.pathname + url.search;
}
const describing = ['wrench', 'range', 'step', 'length', 'accuracy'];

function takeWrenches() {
  const plain = location.pathname + location.search;
  const address = withWrenches(plain);
  if (address === plain) return;
  if (at('answer') && location.pathname !== '/wrench') show(plain);
  else if (location.search.includes('q=') || location.pathname !== '/wrench') location.replace(address);
}

function keepWrenches() {
  const button = at('keep-wrench');
  if (!button) return;
  button.hidden = false;
  button.addEventListener('click', () => {
    const wrench = Object.fromEntries(describing.map((name) => [name, at(name).value.trim()]));
    if (!wrench.range || !wrench.step) return void at(wrench.range ? 'step' : 'range').focus();
    wrench.wrench ||= 'wrench in hand';
    wrench.accuracy ||= '4';
    keep([...ownWrenches().filter((other) => other.wrench !== wrench.wrench), wrench]);
  });
  const keep = (wrenches) => { kept.set('wrenches', wrenches.length ? JSON.stringify(wrenches) : ''); list(); };
  function list() {
    at('kept-wrenches').replaceChildren(...ownWrenches().map((wrench, index) => {
      const item = document.createElement('li');
      const forget = document.createElement('button');
      forget.type = 'button';
      forget.textContent = 'Forget';
      forget.addEventListener('click', () => keep(ownWrenches().filter((_, other) => other !== index)));
      item.append(`${wrench.wrench}: ${wrench.range}, in steps of ${wrench.step}, ± ${wrench.accuracy} % `, forget);
      return item;
    }));
    at('kept-wrenches').hidden = ownWrenches().length === 0;
  }
  list();
}

let asked = 0;  // an answer that comes after a later question is thrown away
async function show(address) {
  const mine = ++asked;
  try {
    const response = await fetch(withWrenches(address));
    const page = new DOMParser().parseFromString(await response.text(), 'text/html');
    const answer = page.getElementById('answer');
    if (mine !== asked || !answer) return;
    at('answer').replaceWith(document.adoptNode(answer));
    document.title = page.title;
    sayWhereFrom(response);
  } catch { /* no network: what is shown stays */ }
}

async function offerWords(text) {
  const list = at('words');
  if (!text || text.endsWith(' ')) { list.hidden = true; return; }
  try {
    const { words } = await (await fetch(`/api/words?q=${encodeURIComponent(text)}`)).json();
    if (at('q').value !== text) return;
    list.replaceChildren(...words.slice(0, 5).map((word) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.textContent = word;
      button.addEventListener('click', () => take(word));
      return button;
    }));
    list.hidden = words.length === 0;
  } catch { list.hidden = true; }
}

function take(word) {
  const field = at('q');
  field.value = `${field.value.replace(/\S+$/, '')}${word} `;
  field.focus();
  typed();
}

function goTo(address, whileTyping = '') {
  history.replaceState(null, '', address);
  if (address.startsWith('/find?')) kept.set('last', address);
  show(address + whileTyping);
}

let waiting;
function typed() {
  clearTimeout(waiting);
  waiting = setTimeout(() => {
    const text = at('q').value;
    offerWords(text);
    if (text.trim().length < 3) return;
    goTo(addressOf(at('search')), '&typing=yes');
  }, 180);
}

function answerAsOneTypes() {
  const form = at('search');
  if (!form) return;
  at('q').addEventListener('input', typed);
  for (const name of ['machine', 'year']) at(name).addEventListener('input', () => { if (at('q').value) typed(); });
  at('unit').addEventListener('change', () => {
    if (location.pathname === '/') return void (at('q').value && typed());
    const given = new URLSearchParams(location.search);
    given.set('unit', at('unit').value);
    goTo(`${location.pathname}?${given}`);
  });
}

// The first page says again what was asked last.
function lastAnswer() {
  if (location.pathname === '/find' && at('q').value) kept.set('last', location.pathname + location.search);
  const last = kept.get('last');
  if (location.pathname !== '/' || location.search || !last || !last.startsWith('/find?')) return;
  at('q').value = new URLSearchParams(last.slice('/find?'.length)).get('q') || '';
  show(last);
}

// A page from this device's memory says so, with the time at which it was fetched.
function sayWhereFrom(response) {
  const since = response.headers.get('x-kept-since');
  document.querySelectorAll('.from-memory').forEach((line) => line.remove());
  if (!since) return;
  const line = document.createElement('p');
  line.className = 'from-memory';
  line.setAttribute('role', 'status');
  line.textContent = `No connection: this is what the device kept on ${new Date(since).toLocaleString()}.`;
  document.querySelector('.top').after(line);
}

function clearing() {
  const button = at('clear-device');
  if (!button) return;
  const say = () => { at('kept').textContent = `${kept.names().length} things are kept.`; };
  button.hidden = false;
  button.addEventListener('click', async () => {
    kept.names().forEach((name) => localStorage.removeItem(name));
    if (self.caches) for (const name of await caches.keys()) if (name.startsWith(ours)) await caches.delete(name);
    say();
  });
  say();
}

recall();
tidyForms();
answerAsOneTypes();
lastAnswer();
takeWrenches();
keepWrenches();
clearing();
if ('serviceWorker' in navigator) {
  navigator.serviceWorker.register('/worker.js').catch(() => { /* plain http: there is none */ });
  navigator.serviceWorker.addEventListener('message', (event) => {
    if (event.data.keptSince) sayWhereFrom(new Response('', { headers: { 'x-kept-since': event.data.keptSince } }));
  });
  navigator.serviceWorker.ready.then((registration) => registration.active.postMessage({ shown: location.href })).catch(() => {});
}
