/**
 * Numbers side by side: a list of named figures, and a table whose rows become cards where there is no room for columns.
 */

import { h } from "./dom.js";

/** @param {string[][]} rows name and value @param {string} [look] */
export function figuresList(rows, look = "") {
  return h("dl", { class: `figures-list ${look}`.trim() }, ...rows.map(([term, value]) => h("div", {}, h("dt", {}, term), h("dd", {}, value))));
}

/**
 * A table whose rows become cards. Roles are said, since a card is laid out as none of a table's parts; its cells say their column.
 *
 * @param {string} title
 * @param {string[]} heads the first may be empty
 * @param {(string | Node)[][]} rows the first cell heads its row
 * @param {string[]} [kinds] classes of the rows
 */
export function cardTable(title, heads, rows, kinds = []) {
  const columns = heads.map((head) => (head ? h("th", { scope: "col", role: "columnheader" }, head) : h("td", { role: "cell" })));
  const cellOf = (/** @type {string | Node} */ cell, /** @type {number} */ index) => h("td", { role: "cell", "data-head": heads[index + 1] }, h("span", {}, cell));
  const body = rows.map(([first, ...cells], index) => h("tr", { role: "row", class: kinds[index] ?? null }, h("th", { scope: "row", role: "rowheader" }, first), ...cells.map(cellOf)));
  return h("table", { role: "table" }, h("caption", {}, title), h("thead", { role: "rowgroup" }, h("tr", { role: "row" }, ...columns)), h("tbody", { role: "rowgroup" }, ...body));
}

/** @param {string} title @param {string[]} heads @param {string[][]} rows the first cell heads its row @param {string} [look] */
export function plainTable(title, heads, rows, look = "") {
  return h("div", { class: `scroll cards ${look}`.trim(), tabindex: "0", role: "region", "aria-label": title }, cardTable(title, heads, rows));
}
