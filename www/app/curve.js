/**
 * Leaf angle against shaft torque, with the rating, the deciding angle and the cursor.
 *
 * @import { Palette } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { h, setAttribute } from "./dom.js";
import { Drawing } from "./drawing.js";
import { createTable } from "./table.js";

/** @type {import("./table.js").Column[]} */
const COLUMNS = [
  { key: "leaf_deg", quantity: "angle" },
  { key: "shaft_torque_open_n_m", quantity: "torque" },
  { key: "shaft_torque_close_n_m", quantity: "torque" },
  { key: "leaf_torque_open_n_m", quantity: "torque" },
  { key: "leaf_torque_close_n_m", quantity: "torque" },
];

/** @type {import("./table.js").Column[]} */
const OVERRUN = [
  { key: "leaf_deg", quantity: "angle" },
  { key: "overrun_open_n_m", quantity: "torque" },
  { key: "overrun_close_n_m", quantity: "torque" },
  { key: "holding_n_m", quantity: "torque" },
];

/**
 * @param {Sheet} sheet
 * @param {() => Palette} palette
 * @param {() => void} changed called when the wind from behind is shown or hidden
 */
export function createCurve(sheet, palette, changed) {
  const drawing = new Drawing(sheet, {
    name: "curve",
    palette,
    draw: (canvas, view) => sheet.result?.calculation.draw_curve(canvas, view),
    locate: (x, y, view) => sheet.result?.calculation.leaf_deg_at_curve(x, y, view) ?? sheet.cursor.leafDeg,
  });
  /** What somebody chose; until then it shows where it asks more than the wind against. @type {boolean | null} */
  let chosen = null;
  const toggle = h("button", { type: "button", class: "move", onclick: () => choose() }, sheet.say("drawing_titles.overrun"));
  const note = h("p", { class: "note" }, sheet.say("drawing_titles.overrun_note"));

  function choose() {
    chosen = !sheet.showing.overrun;
    changed();
  }

  function update() {
    if (!sheet.result) return;
    const { overrun, peak } = sheet.result.plan;
    sheet.showing.overrun = chosen ?? (overrun !== null && overrun.shaft_torque_n_m > peak.shaft_torque_n_m);
    setAttribute(toggle, "aria-pressed", String(sheet.showing.overrun));
    note.hidden = !sheet.showing.overrun;
  }

  return { drawing, update, beneath: [toggle, note], tables: [createTable(sheet, "curve", COLUMNS), createTable(sheet, "overrun", OVERRUN)] };
}
