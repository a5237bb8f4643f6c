/**
 * Asks for everything that a start needs, so that nothing waits for the file that names it.
 *
 * @typedef {{ scripts: string[], fetched: string[] }} Ahead
 */

import { fileAt } from "./files.js";
import { languageOf } from "./sources.js";
import { nearestLanguage } from "./strings.js";

/** Filled by the build: what a start loads, by its name below the page's folder. @type {Ahead} */
const AHEAD = { scripts: [], fetched: [] };

/**
 * @param {Document} page
 * @param {string} name of the element
 */
export function askAhead(page, name) {
  const element = page.querySelector(name);
  // Each element has a start of its own; the first one's is asked for.
  const named = ["job", "operators"].map((attribute) => element?.getAttribute(attribute) ?? "");
  const documents = named.filter((source) => source && !source.trimStart().startsWith("{")).map((source) => new URL(source, page.baseURI));
  const words = element ? [fileAt(`strings/${nearestLanguage(languageOf(element))}.json`)] : [];
  for (const script of AHEAD.scripts) ask(page, { rel: "modulepreload", href: fileAt(script).href });
  for (const { href } of [...AHEAD.fetched.map(fileAt), ...words, ...documents]) ask(page, { rel: "preload", as: "fetch", crossOrigin: "anonymous", href });
}

/** @param {Document} page @param {Partial<HTMLLinkElement>} wanted */
function ask(page, wanted) {
  if ([...page.querySelectorAll("link")].some(({ href }) => href === wanted.href)) return;
  page.head.append(Object.assign(page.createElement("link"), wanted));
}
