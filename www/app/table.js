/**
 * The numbers behind a drawing, each as the core shows it. Rows are made only while the table is open.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Plan, Quantity } from "./contract.d.ts"
 */

import { h } from "./dom.js";

/** @typedef {{ key: string, quantity: Quantity }} Column */

/** Rows of the plan's own curve. @param {Plan} plan @returns {any[] | null} */
const curveRows = (plan) => plan.curve;

/**
 * @param {Sheet} sheet
 * @param {string} name string key of the table
 * @param {Column[]} columns keys of the rows; the first heads the row
 * @param {(plan: Plan) => any[] | null | undefined} [rowsIn] the rows of a plan; none where it has no such table
 * @returns {Part}
 */
export function createTable(sheet, name, columns, rowsIn = curveRows) {
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
    const rows = sheet.result ? rowsIn(sheet.result.plan) : null;
    root.hidden = !rows;
    if (!root.open || !rows) return;
    const cells = rows.map((/** @type {any} */ row) => columns.map(({ key, quantity }) => (row[key] === null ? "–" : sheet.show(row[key], quantity))));
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
