/**
 * The elements' style sheet, fetched once and shared by every copy on the page. Constructed sheets need neither an inline style nor
 * a link inside the shadow tree, so a host with a strict content security policy can keep it.
 */

import { fileAt } from "./files.js";

/** @type {Promise<CSSStyleSheet[]> | undefined} */
let loaded;

/** @returns {Promise<CSSStyleSheet[]>} */
export function loadStyleSheets() {
  loaded ??= fetchSheet("element").then((sheet) => [sheet]);
  loaded.catch(() => (loaded = undefined));
  return loaded;
}

/** Room for the calculator before it is there, so that nothing below it moves when it comes: it is never lower than what can be seen at once. */
export function reserve() {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(":host(:not([hidden])) { display: block; min-block-size: 100vh; }");
  return sheet;
}

/** @param {string} name */
export async function fetchSheet(name) {
  const response = await fetch(fileAt(`style/${name}.css`));
  if (!response.ok) throw new Error(`style/${name}.css: HTTP ${response.status}`);
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(await response.text());
  return sheet;
}
