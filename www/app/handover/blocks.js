/**
 * What a sheet is set from: blocks that stay whole, and blocks of rows that go on over the page with their heads.
 *
 * @typedef {Node | string} Cell
 *
 * @typedef {object} Block
 * @property {HTMLElement} root
 * @property {boolean} [keep] stands on the page of what follows it
 * @property {boolean} [fresh] begins a page
 * @property {HTMLElement} [rows] what may be cut between its children
 * @property {() => Block} [again] the same without rows, for the next page
 */

import { h } from "../dom.js";

/** @param {string} text @param {boolean} [fresh] @returns {Block} */
export function head(text, fresh = false) {
  return { root: h("h3", {}, text), keep: true, fresh };
}

/** @param {string} text @returns {Block} */
export function subhead(text) {
  return { root: h("h4", {}, text), keep: true };
}

/** A line under a heading, that goes with what it is about. @param {string} text @returns {Block} */
export function note(text) {
  return { root: h("p", { class: "note" }, text), keep: true };
}

/** @param {string} text @returns {Block} */
export function line(text) {
  return { root: h("p", {}, text) };
}

/** A line to write on. */
export function blank() {
  return h("span", { class: "blank" });
}

/**
 * @param {string[]} heads
 * @param {Cell[][]} rows empty cells are lines to write on
 * @param {string} [kind] class of the table
 * @returns {Block}
 */
export function table(heads, rows, kind = "") {
  const body = h("tbody", {});
  const columns = h("tr", {}, ...heads.map((text) => h("th", { scope: "col" }, text)));
  const root = h("table", { class: kind }, h("thead", {}, columns), body);
  body.append(...rows.map(([first, ...cells]) => h("tr", {}, h("th", { scope: "row" }, first), ...cells.map((cell) => h("td", {}, cell === "" ? blank() : cell)))));
  return { root, rows: body, again: () => table(heads, [], kind) };
}

/**
 * Names and values, two pairs beside one another.
 *
 * @param {[string, Cell][]} pairs
 * @returns {Block}
 */
export function pairs(pairs) {
  const half = Math.ceil(pairs.length / 2);
  const cells = (/** @type {[string, Cell] | undefined} */ pair) =>
    pair ? [h("th", { scope: "row" }, pair[0]), h("td", {}, pair[1] === "" ? blank() : pair[1])] : [h("td", { colspan: "2" })];
  const rows = pairs.slice(0, half).map((pair, index) => h("tr", {}, ...cells(pair), ...cells(pairs[half + index])));
  return ruled(rows);
}

/** @param {HTMLTableRowElement[]} rows @returns {Block} */
function ruled(rows) {
  const body = h("tbody", {}, ...rows);
  return { root: h("table", { class: "pairs" }, body), rows: body, again: () => ruled([]) };
}

/** @param {Cell[]} items @returns {Block} */
export function list(items) {
  const root = h("ul", {}, ...items.map((item) => h("li", {}, item)));
  return { root, rows: root, again: () => list([]) };
}

/** A drawing as the core draws it. @param {string} text of an SVG document @param {string} name @returns {Block} */
export function figure(text, name) {
  const drawn = document.importNode(new DOMParser().parseFromString(text, "image/svg+xml").documentElement, true);
  drawn.setAttribute("role", "img");
  drawn.setAttribute("aria-label", name);
  return { root: h("figure", {}, drawn) };
}
