/**
 * What an error of the tape costs, a dimension at a time and all at once.
 *
 * @import { Quantity, TapeCost } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { plainTable } from "../rows.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createTapeCost(sheet) {
  const root = h("section", { class: "fit" });
  let drawn = "";

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    if (root.hidden || !sheet.result) return;
    const found = sheet.result.calculation.tape_cost();
    const text = JSON.stringify([found, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    root.replaceChildren(...tapePart(sheet, found));
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {TapeCost} cost */
function tapePart(sheet, cost) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const shown = (/** @type {number | null | undefined} */ value, /** @type {Quantity} */ quantity) => (value == null ? "–" : sheet.show(value, quantity));
  const rows = cost.dimensions.map(({ path, short, long }) => [
    sheet.fieldName(path),
    shown(short?.reserve, "ratio"),
    shown(long?.reserve, "ratio"),
    shown(short?.off_square_deg, "angle"),
    shown(long?.off_square_deg, "angle"),
  ]);
  const { worst } = cost;
  const [squareFrom, squareTo, bendFrom, bendTo] = [...worst.off_square_deg, ...worst.bend_deg].map((value) => sheet.show(value, "angle"));
  const heads = ["dimension", "short", "long", "short_square", "long_square"].map((key) => say(`tape_columns.${key}`));
  return [
    h("h3", {}, say("tape_title")),
    h("p", { class: "lead-sentence" }, say("measure_twice", { dimension: sheet.fieldName(cost.measure_twice) })),
    h("p", { class: "note" }, say("tape_note", { error: sheet.tape(cost.error_m) })),
    h("details", { class: "asks-more" }, h("summary", {}, say("tape_all")), plainTable(say("tape_title"), heads, rows)),
    h("p", {}, say("tape_worst", { reserve: shown(worst.reserve, "ratio"), square_from: squareFrom, square_to: squareTo, bend_from: bendFrom, bend_to: bendTo })),
    ...(worst.broken > 0 ? [h("p", {}, say("tape_broken", { count: sheet.show(worst.broken, "count") }))] : []),
  ];
}
