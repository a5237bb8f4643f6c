/**
 * The page's own sentences. The HTML holds the English ones, so that they stand before any script runs; each names its key by
 * `data-string`. Choosing a language sets the document's, which the element follows.
 *
 * @import { Strings } from "./strings.js"
 */

import { tellFailed } from "./failed.js";
import { LANGUAGES, loadStrings, nearestTag } from "./strings.js";

const STORE = "pintle-language";

/**
 * @param {Document} page
 */
export function startLanguage(page) {
  /** @type {Strings | null} */
  let strings = null;
  /** @type {((strings: Strings) => void)[]} */
  const listeners = [];

  function fill() {
    const table = strings;
    if (!table) return;
    page.title = table.say("page.title");
    for (const element of page.querySelectorAll("[data-string]")) {
      element.textContent = table.say(`page.${element.getAttribute("data-string")}`);
    }
    for (const element of page.querySelectorAll("[data-label]")) {
      element.setAttribute("aria-label", table.say(`page.${element.getAttribute("data-label")}`));
    }
    for (const listener of listeners) listener(table);
  }

  /** @param {string} wanted */
  async function choose(wanted) {
    const before = page.documentElement.lang;
    const tag = nearestTag(regional(wanted));
    // Said before its words are there: the elements then start in it, and not in another one first.
    if (!strings) page.documentElement.lang = tag;
    const table = await loadStrings(tag).catch((error) => {
      page.documentElement.lang = before;
      tellFailed(page.documentElement, error, () => choose(wanted));
      return null;
    });
    if (!table) return;
    strings = table;
    page.documentElement.lang = table.tag;
    for (const button of page.querySelectorAll("[data-language]")) {
      button.setAttribute("aria-pressed", String(button.getAttribute("data-language") === table.language));
    }
    fill();
  }

  for (const button of page.querySelectorAll("[data-language]")) {
    button.addEventListener("click", () => {
      const wanted = button.getAttribute("data-language") ?? LANGUAGES[0];
      remember(wanted);
      choose(wanted);
    });
  }
  choose(remembered() ?? navigator.language);

  return {
    /** Now, and after every change. @param {(strings: Strings) => void} listener */
    each(listener) {
      listeners.push(listener);
      if (strings) listener(strings);
    },
  };
}

/** The language as the browser's own settings have it: with a region, numbers are written its way. @param {string} wanted */
function regional(wanted) {
  return navigator.languages.find((tag) => tag.split("-")[0] === wanted) ?? wanted;
}

/** Storage may be denied; then the language lasts as long as the page. */
function remembered() {
  try {
    return localStorage.getItem(STORE);
  } catch {
    return null;
  }
}

/** @param {string} language */
function remember(language) {
  try {
    localStorage.setItem(STORE, language);
  } catch {
    // Nothing is lost but the choice of language.
  }
}
