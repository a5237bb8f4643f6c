// Keeps the whole page in the browser, so that it works where there is no network.
//
// The two constants are filled at build time: every file of one build with its hash, and a version that changes when any of
// them does. A version is kept whole or not at all, and a page never mixes files of two versions.

const VERSION = 'unbuilt';
const FILES = {};

/** What a service worker has besides what every worker has. */
const own = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

// The scope is part of the name: other pages of the same origin, and this page under another path, have caches of their own.
const PREFIX = `pintle:${new URL(own.registration.scope).pathname}:`;
const CACHE = PREFIX + VERSION;

own.addEventListener('install', (event) => event.waitUntil(keepAll()));
own.addEventListener('activate', (event) => event.waitUntil(dropOlder()));

// A new version waits until the old one's pages are closed or a user asks for it: see app/offline.js.
own.addEventListener('message', (event) => {
  if (event.data === 'take-over') own.skipWaiting();
});

own.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(own.registration.scope)) event.respondWith(answer(event.request));
});

/** Takes every file that is listed, all of them or none: one that cannot be had, or whose content is not the listed one, fails the installation. */
async function keepAll() {
  const cache = await caches.open(CACHE);
  const had = await Promise.all(Object.entries(FILES).map(async ([name, integrity]) => /** @type {const} */ ([name, await take(name, integrity)])));
  await Promise.all(had.map(([name, answer]) => cache.put(name, answer)));
}

/** Nothing travels that is here already: kept with the version before, or fetched by the page. @param {string} name @param {string} integrity */
async function take(name, integrity) {
  // A name with a hash means the same file in every version.
  if (/-[0-9a-f]{10}\.\w+$/.test(name)) {
    for (const other of await caches.keys()) {
      const kept = other.startsWith(PREFIX) && (await (await caches.open(other)).match(name, { ignoreVary: true }));
      if (kept) return kept;
    }
  }
  const here = await fetch(new Request(name, { cache: 'force-cache', integrity })).catch(() => null);
  if (here?.ok) return here;
  const answer = await fetch(new Request(name, { cache: 'reload', integrity }));
  if (!answer.ok) throw new Error(`${name}: HTTP ${answer.status}`);
  return answer;
}

async function dropOlder() {
  const names = await caches.keys();
  const older = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(older.map((name) => caches.delete(name)));
}

/** @param {Request} request */
async function answer(request) {
  const kept = await findKept(request);
  if (kept) return kept;
  if (request.mode !== 'navigate') return fetch(request);
  // An unknown address is the host's to answer. Without a network, the page itself is better than the browser's error.
  return fetch(request).catch(() => Response.redirect(own.registration.scope));
}

/** @param {Request} request */
async function findKept(request) {
  const cache = await caches.open(CACHE);
  const [address] = request.url.split(/[?#]/);
  // The page is kept under the address it is opened by.
  const file = address === `${own.registration.scope}index.html` ? own.registration.scope : address;
  const kept = await cache.match(file, { ignoreVary: true });
  // A host may redirect. A browser refuses such an answer to a navigation, so it is passed on as a plain one.
  return kept?.redirected ? new Response(kept.body, { headers: kept.headers }) : kept;
}
