// Registers the service worker and tells the page what becomes of it. What is said to the user, and how, is the caller's.

/**
 * Keeps the page in the browser for use without a network.
 *
 * @param {object} tell
 * @param {() => void} tell.ready  Everything is kept: from now on the page works without a network.
 * @param {(accept: () => void) => void} tell.update  A newer version is kept and waits. `accept()` changes to it and reloads
 *   the page; without it nothing changes under the user's hands. Told again for each newer version.
 * @param {(afresh: () => Promise<void>) => void} [tell.stuck]  The newer version was accepted and does not answer; `afresh()` is
 *   {@link startAfresh}.
 * @param {(reason: unknown) => void} tell.unable  The page cannot be kept here: the browser has no service workers, storage is
 *   denied or full, or the network failed before all was fetched. It still works as long as there is a network.
 * @param {Promise<unknown>} [after]  On a first visit nothing is fetched to be kept before this is settled: what the page itself needs comes
 *   first, and is then taken from what the browser has.
 * @returns {Promise<void>} Settled when the browser has taken up the work; never rejected.
 */
export async function keepOffline({ ready, update, stuck, unable }, after) {
  if (!('serviceWorker' in navigator)) {
    unable(new Error('no service workers'));
    return;
  }
  try {
    if (!navigator.serviceWorker.controller) await after;
    const worker = new URL('../sw.js', import.meta.url);
    const registration = await navigator.serviceWorker.register(worker, { updateViaCache: 'none' });
    follow(registration, { ready, update, stuck, unable });
    checkOnReturn(registration);
  } catch (reason) {
    unable(reason);
  }
}

/**
 * @param {ServiceWorkerRegistration} registration
 * @param {Parameters<typeof keepOffline>[0]} tell
 */
function follow(registration, { ready, update, stuck, unable }) {
  const offer = () => update(() => changeToNewest(registration, stuck));
  const watch = (/** @type {ServiceWorker} */ worker) =>
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) offer();
      else if (worker.state === 'activated') ready();
      else if (worker.state === 'redundant' && !registration.active) unable(new Error('not all files could be kept'));
    });
  if (registration.active) ready();
  if (registration.waiting && registration.active) offer();
  // One that has just been installed has no older one to wait for, and is about to become active.
  for (const worker of [registration.installing, registration.waiting]) if (worker) watch(worker);
  registration.addEventListener('updatefound', () => registration.installing && watch(registration.installing));
}

/** A version that takes over does so at once; one that needs longer than this is stuck. */
const ANSWER_MS = 10_000;

/**
 * Makes the waiting version the active one, then reloads. Another tab may have done the first half already.
 *
 * @param {ServiceWorkerRegistration} registration
 * @param {((afresh: () => Promise<void>) => void) | undefined} stuck
 */
function changeToNewest(registration, stuck) {
  const worker = registration.waiting ?? registration.active;
  // Taken away by another tab: a page loaded anew is what is left to do.
  if (!worker || worker.state === 'activated') {
    location.reload();
    return;
  }
  worker.addEventListener('statechange', () => {
    if (worker.state === 'activated') location.reload();
  });
  worker.postMessage('take-over');
  setTimeout(() => stuck?.(startAfresh), ANSWER_MS);
}

/**
 * Throws away what is kept of the page and its worker, and loads it from the network: the way out when a worker is stuck. Jobs are
 * kept elsewhere and stay.
 *
 * @returns {Promise<void>} Rejected, with nothing thrown away, where the network does not give the worker's script.
 */
export async function startAfresh() {
  const registration = await navigator.serviceWorker?.getRegistration();
  if (registration) {
    // The one request that never goes through the worker itself.
    await registration.update();
    await registration.unregister();
    const own = `pintle:${new URL(registration.scope).pathname}:`;
    const names = await caches.keys();
    await Promise.all(names.filter((name) => name.startsWith(own)).map((name) => caches.delete(name)));
  }
  location.reload();
}

/** A page may stay open for weeks: it looks for a newer version whenever the user comes back to it. @param {ServiceWorkerRegistration} registration */
function checkOnReturn(registration) {
  document.addEventListener('visibilitychange', () => {
    // Without a network there is nothing to find, and nothing to say about it.
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}
