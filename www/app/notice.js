/**
 * What the page says about itself: whether it works without a network, and that a newer version waits.
 * Nothing changes under the person's hands: the newer version comes when they say so, and what they typed comes along.
 */

import { keepOffline } from "./offline.js";

/**
 * @param {Document} page
 * @param {{ each: (listener: (strings: import("./strings.js").Strings) => void) => void }} language
 * @param {() => void} keep called before the page is reloaded for an update
 */
export function watchNotices(page, language, keep) {
  const find = (/** @type {string} */ selector) => /** @type {HTMLElement} */ (page.querySelector(selector));
  const offline = find("#offline");
  const notice = find("#notice");
  const says = find("#notice-text");
  const problem = find("#notice-problem");
  /** @type {string | null} */
  let offlineKey = null;
  /** @type {(() => void) | null} */
  let accept = null;
  /** @type {import("./strings.js").Strings | null} */
  let strings = null;

  function show() {
    if (!strings) return;
    offline.textContent = offlineKey ? strings.say(`page.${offlineKey}`) : "";
    says.textContent = accept ? strings.say("page.update_ready") : "";
    notice.hidden = accept === null;
  }

  language.each((table) => {
    strings = table;
    show();
  });

  find("#update").addEventListener("click", () => {
    try {
      keep();
    } catch (error) {
      // Without storage the typed numbers would be lost by the reload: say so, and leave the choice to the person.
      console.error("pintle", error);
      if (problem.textContent === "") {
        problem.textContent = strings?.say("page.update_loses") ?? "";
        return;
      }
    }
    accept?.();
  });

  find("#later").addEventListener("click", () => {
    accept = null;
    show();
  });

  keepOffline({
    ready() {
      offlineKey = "offline_ready";
      show();
    },
    update(take) {
      accept = take;
      show();
    },
    unable(reason) {
      console.warn("pintle", reason);
      offlineKey = "offline_unable";
      show();
    },
  });
}
