/**
 * Leaf angle against shaft torque, with the rating, the deciding angle and the cursor.
 *
 * @import { Palette } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

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

/**
 * @param {Sheet} sheet
 * @param {() => Palette} palette
 */
export function createCurve(sheet, palette) {
  const drawing = new Drawing(sheet, {
    name: "curve",
    palette,
    draw: (canvas, view) => sheet.result?.calculation.draw_curve(canvas, view),
    locate: (x, y, view) => sheet.result?.calculation.leaf_deg_at_curve(x, y, view) ?? sheet.cursor.leafDeg,
  });
  return { drawing, table: createTable(sheet, "curve", COLUMNS) };
}
