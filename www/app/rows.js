/**
 * Numbers side by side: a list of named figures, and a table whose rows become cards where there is no room for columns.
 */

import { h } from "./dom.js";

/** @param {string[][]} rows name and value @param {string} [look] */
export function figuresList(rows, look = "") {
  return h("dl", { class: `figures-list ${look}`.trim() }, ...rows.map(([term, value]) => h("div", {}, h("dt", {}, term), h("dd", {}, value))));
}

/** @param {string} title @param {string[]} heads @param {string[][]} rows the first cell heads its row */
export function plainTable(title, heads, rows) {
  // Roles are said, since a card is laid out as none of a table's parts; its cells say their column.
  const body = rows.map(([first, ...cells]) => h("tr", { role: "row" }, h("th", { scope: "row", role: "rowheader" }, first),
    ...cells.map((cell, index) => h("td", { role: "cell", "data-head": heads[index + 1] }, h("span", {}, cell)))));
  const columns = heads.map((head) => h("th", { scope: "col", role: "columnheader" }, head));
  return h(
    "div",
    { class: "scroll cards", tabindex: "0", role: "region", "aria-label": title },
    h("table", { role: "table" }, h("caption", {}, title), h("thead", { role: "rowgroup" }, h("tr", { role: "row" }, ...columns)), h("tbody", { role: "rowgroup" }, ...body)),
  );
}
