/**
 * The element's style sheets, fetched once and shared by every copy on the page. Constructed sheets need neither an inline style nor
 * a link inside the shadow tree, so a host with a strict content security policy can keep it.
 */

/** In the order of the cascade. */
const NAMES = ["tokens", "base", "verdict", "cautions", "form", "field", "outcome", "drawings", "setout", "check", "handover", "room", "jobs", "layout"];

/** @type {Promise<CSSStyleSheet[]> | undefined} */
let loaded;

/** @returns {Promise<CSSStyleSheet[]>} */
export function loadStyleSheets() {
  loaded ??= Promise.all(NAMES.map(fetchSheet));
  loaded.catch(() => (loaded = undefined));
  return loaded;
}

/** @param {string} name */
export async function fetchSheet(name) {
  const response = await fetch(new URL(`../style/${name}.css`, import.meta.url));
  if (!response.ok) throw new Error(`style/${name}.css: HTTP ${response.status}`);
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(await response.text());
  return sheet;
}
