/**
 * A worker of the page's own, wherever its script comes from.
 */

/**
 * Starts a worker. A browser refuses a script from another origin than the page's; one made here, that imports it, is of the page's.
 *
 * @param {URL} address
 * @returns {Worker} throws where the page's policy allows none
 */
export function startWorker(address) {
  if (address.origin === location.origin) return new Worker(address, { type: "module" });
  const made = URL.createObjectURL(new Blob([`import ${JSON.stringify(address.href)};`], { type: "text/javascript" }));
  try {
    return new Worker(made, { type: "module" });
  } finally {
    // It is read before anything else is done with it.
    setTimeout(() => URL.revokeObjectURL(made), 10_000);
  }
}
