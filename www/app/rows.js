/**
 * Numbers side by side: a list of named figures, and a table that can be scrolled within the page.
 */

import { h } from "./dom.js";

/** @param {string[][]} rows name and value @param {string} [look] */
export function figuresList(rows, look = "") {
  return h("dl", { class: `figures-list ${look}`.trim() }, ...rows.map(([term, value]) => h("div", {}, h("dt", {}, term), h("dd", {}, value))));
}

/** @param {string} title @param {string[]} heads @param {string[][]} rows the first cell heads its row */
export function plainTable(title, heads, rows) {
  const body = rows.map(([first, ...cells]) => h("tr", {}, h("th", { scope: "row" }, first), ...cells.map((cell) => h("td", {}, cell))));
  return h(
    "div",
    { class: "scroll", tabindex: "0", role: "region", "aria-label": title },
    h("table", {}, h("caption", {}, title), h("thead", {}, h("tr", {}, ...heads.map((head) => h("th", { scope: "col" }, head)))), h("tbody", {}, ...body)),
  );
}
