// Registers the service worker and tells the page what becomes of it. What is said to the user, and how, is the caller's.

/**
 * Keeps the page in the browser for use without a network.
 *
 * @param {object} tell
 * @param {() => void} tell.ready  Everything is kept: from now on the page works without a network.
 * @param {(accept: () => void) => void} tell.update  A newer version is kept and waits. `accept()` changes to it and reloads
 *   the page; without it nothing changes under the user's hands. Told again for each newer version.
 * @param {(reason: unknown) => void} tell.unable  The page cannot be kept here: the browser has no service workers, storage is
 *   denied or full, or the network failed before all was fetched. It still works as long as there is a network.
 * @returns {Promise<void>} Settled when the browser has taken up the work; never rejected.
 */
export async function keepOffline({ ready, update, unable }) {
  if (!('serviceWorker' in navigator)) {
    unable(new Error('no service workers'));
    return;
  }
  try {
    const worker = new URL('../sw.js', import.meta.url);
    const registration = await navigator.serviceWorker.register(worker, { updateViaCache: 'none' });
    follow(registration, { ready, update, unable });
    checkOnReturn(registration);
  } catch (reason) {
    unable(reason);
  }
}

function follow(registration, { ready, update, unable }) {
  const offer = () => update(() => changeToNewest(registration));
  const watch = (worker) =>
    worker.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) offer();
      else if (worker.state === 'activated') ready();
      else if (worker.state === 'redundant' && !registration.active) unable(new Error('not all files could be kept'));
    });
  if (registration.active) ready();
  if (registration.waiting && registration.active) offer();
  // One that has just been installed has no older one to wait for, and is about to become active.
  for (const worker of [registration.installing, registration.waiting]) if (worker) watch(worker);
  registration.addEventListener('updatefound', () => watch(registration.installing));
}

/** Makes the waiting version the active one, then reloads. Another tab may have done the first half already. */
function changeToNewest(registration) {
  const worker = registration.waiting ?? registration.active;
  if (worker.state === 'activated') {
    location.reload();
    return;
  }
  worker.addEventListener('statechange', () => {
    if (worker.state === 'activated') location.reload();
  });
  worker.postMessage('take-over');
}

/** A page may stay open for weeks: it looks for a newer version whenever the user comes back to it. */
function checkOnReturn(registration) {
  document.addEventListener('visibilitychange', () => {
    // Without a network there is nothing to find, and nothing to say about it.
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}
