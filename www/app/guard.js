/**
 * A file of the page that does not come is told in the page's own words, with a button to try again. A plain script outside the module
 * graph and before it: it is there for the day when a module, or everything after this one, is missing.
 */

(() => {
  /** What the button does. @type {Set<() => unknown>} */
  const retries = new Set();
  /** Whether it is the browser that cannot, and no file that is missing. */
  let unable = false;

  addEventListener("error", ({ target }) => {
    const script = target instanceof HTMLScriptElement;
    const style = target instanceof HTMLLinkElement && target.rel === "stylesheet";
    // What is thrown while the calculator is not there yet keeps it from coming.
    const thrown = target === window && !customElements.get("pintle-calculator");
    if (script || style || thrown) tell(() => location.reload());
  }, true);

  addEventListener("pintle-failed", (event) => {
    const { error, retry } = /** @type {CustomEvent} */ (event).detail;
    unable ||= typeof WebAssembly === "undefined" || error instanceof WebAssembly.CompileError;
    event.preventDefault();
    tell(retry);
  });

  addEventListener("click", (event) => {
    if (!(event.target instanceof Element) || !event.target.closest("[data-again]")) return;
    event.preventDefault();
    const now = retries.size ? [...retries] : [() => location.reload()];
    retries.clear();
    unable = false;
    show();
    for (const retry of now) retry();
  });

  /** @param {() => unknown} retry */
  function tell(retry) {
    retries.add(retry);
    if (document.readyState === "loading") document.addEventListener("DOMContentLoaded", show, { once: true });
    else show();
  }

  function show() {
    const failed = retries.size > 0;
    for (const [selector, shown] of /** @type {[string, boolean][]} */ ([["#failed", failed], ["#not-loaded", !unable], ["#unable", unable], ["#loading", !failed]])) {
      document.querySelector(selector)?.toggleAttribute("hidden", !shown);
    }
  }
})();
