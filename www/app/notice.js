/**
 * What the page says about itself: whether it works without a network, and that a newer version waits.
 * Nothing changes under the person's hands: the newer version comes when they say so, and what they typed comes along.
 */

import { keepOffline, startAfresh } from "./offline.js";

/**
 * @param {Document} page
 * @param {{ each: (listener: (strings: import("./strings.js").Strings) => void) => void }} language
 * @param {() => void} keep called before the page is reloaded for an update
 * @param {Promise<unknown>} stands settles when the page has all that it needs at first
 */
export function watchNotices(page, language, keep, stands) {
  const find = (/** @type {string} */ selector) => /** @type {HTMLElement} */ (page.querySelector(selector));
  const offline = find("#offline");
  const notice = find("#notice");
  const says = find("#notice-text");
  const problem = find("#notice-problem");
  /** @type {string | null} */
  let offlineKey = null;
  /** What is offered: a sentence, and what is done if it is accepted. @type {{ key: string, take: () => unknown } | null} */
  let offer = null;
  /** @type {import("./strings.js").Strings | null} */
  let strings = null;

  function show() {
    if (!strings) return;
    offline.textContent = offlineKey ? strings.say(`page.${offlineKey}`) : "";
    says.textContent = offer ? strings.say(`page.${offer.key}`) : "";
    notice.hidden = offer === null;
  }

  /** @param {string} key @param {() => unknown} take */
  function propose(key, take) {
    offer = { key, take };
    problem.textContent = "";
    show();
  }

  /** @param {() => Promise<void>} afresh */
  function fetchAnew(afresh) {
    return afresh().catch((error) => {
      console.warn("pintle", error);
      problem.textContent = strings?.say("page.afresh_offline") ?? "";
    });
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
    offer?.take();
  });

  find("#later").addEventListener("click", () => {
    offer = null;
    show();
  });

  find("#afresh").addEventListener("click", () => propose("afresh_ask", () => fetchAnew(startAfresh)));

  keepOffline({
    ready() {
      offlineKey = "offline_ready";
      show();
    },
    update(take) {
      // What the person asked for is not taken from under the finger; to fetch everything anew brings the newer version, too.
      if (offer?.key !== "afresh_ask") propose("update_ready", take);
    },
    stuck(afresh) {
      propose("update_stuck", () => fetchAnew(afresh));
    },
    unable(reason) {
      console.warn("pintle", reason);
      offlineKey = "offline_unable";
      show();
    },
  }, stands);
}
