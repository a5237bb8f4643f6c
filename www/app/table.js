/**
 * The numbers behind a drawing, each as the core shows it. Rows are made only while the table is open.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Quantity } from "./contract.d.ts"
 */

import { h } from "./dom.js";

/** @typedef {{ key: string, quantity: Quantity }} Column */

/**
 * @param {Sheet} sheet
 * @param {string} name string key of the table
 * @param {Column[]} columns keys of the plan's curve rows; the first heads the row
 * @returns {Part}
 */
export function createTable(sheet, name, columns) {
  const title = sheet.say(`tables.${name}`);
  const body = h("tbody", {});
  const head = h("tr", {}, ...columns.map(({ key }) => h("th", { scope: "col" }, sheet.say(`columns.${key}`))));
  const table = h("table", {}, h("caption", {}, title), h("thead", {}, head), body);
  const root = h(
    "details",
    { class: "data", part: "table", ontoggle: () => update() },
    h("summary", {}, title),
    h("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": title }, table),
  );
  let drawn = "";

  function update() {
    if (!root.open || !sheet.result) return;
    const { curve } = sheet.result.plan;
    const cells = curve.map((/** @type {any} */ row) => columns.map(({ key, quantity }) => (row[key] === null ? "–" : sheet.show(row[key], quantity))));
    const text = JSON.stringify(cells);
    if (text === drawn) return;
    drawn = text;
    body.replaceChildren(...cells.map(rowOf));
  }

  return { root, update };
}

/** @param {string[]} cells */
function rowOf([first, ...others]) {
  return h("tr", {}, h("th", { scope: "row" }, first), ...others.map((cell) => h("td", {}, cell)));
}
