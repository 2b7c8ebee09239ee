// SPDX-License-Identifier: GPL-2.0-or-later
// With the network gone, what was opened before is shown again, marked with the time at which it was fetched. The
// server puts the library's digest before this text: a new library makes a new worker, which keeps nothing of the old.
'use strict';

const store = `sheaf/${digest}`;
const frame = ['/', '/page.js', '/card.js', '/icon.svg', '/match', '/convert', '/about'];
const longestWait = 4000;  // ms, before what is kept is shown instead

self.addEventListener('install', (event) => event.waitUntil(
  caches.open(store).then((cache) => Promise.all(frame.map((path) => fetchAndKeep(cache, new Request(path))))).then(() => self.skipWaiting())));

self.addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== store && name.startsWith('sheaf/')) await caches.delete(name);
  await self.clients.claim();
})()));

const keyOf = (request) => request.url.replace(/&typing=yes(?=&|$)/, '');

async function fetchAndKeep(cache, request) {
  const response = await fetch(request);
  if (!response.ok) return response;
  const headers = new Headers(response.headers);
  headers.set('x-kept-since', new Date().toISOString());
  const body = await response.clone().blob();
  await cache.put(keyOf(request), new Response(body, { status: response.status, headers }));
  return response;
}

const tooLate = () => new Promise((_, fail) => { setTimeout(() => fail(new Error('too late')), longestWait); });

async function answer(request) {
  const cache = await caches.open(store);
  const fresh = fetchAndKeep(cache, request);
  try {
    return await Promise.race([fresh, tooLate()]);
  } catch {
    const keptBefore = await cache.match(keyOf(request));
    return keptBefore || fresh;
  }
}

const shown = new Map();  // addresses answered from memory, and since when

self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin) return;
  if (url.pathname === '/health' || url.pathname === '/worker.js' || url.pathname === '/api/words' || url.searchParams.has('save')) return;
  event.respondWith(answer(event.request).then((response) => {
    const since = response.headers.get('x-kept-since');
    if (event.request.mode === 'navigate') since ? shown.set(event.request.url, since) : shown.delete(event.request.url);
    return response;
  }));
});

// A page that was navigated to cannot see how it came: it asks.
self.addEventListener('message', (event) => {
  const since = shown.get(event.data.shown);
  if (since) event.source.postMessage({ keptSince: since });
});
