/**
 * The gate from above, to scale: leaf, shaft, crank, link and bracket at the cursor.
 *
 * @import { Palette } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { Drawing } from "./drawing.js";
import { createTable } from "./table.js";

/** @type {import("./table.js").Column[]} */
const COLUMNS = [
  { key: "leaf_deg", quantity: "angle" },
  { key: "shaft_deg", quantity: "angle" },
  { key: "ratio", quantity: "ratio" },
  { key: "lever_m", quantity: "short_length" },
  { key: "transmission_deg", quantity: "angle" },
  { key: "link_force_open_n", quantity: "force" },
  { key: "link_force_close_n", quantity: "force" },
];

/**
 * @param {Sheet} sheet
 * @param {() => Palette} palette
 */
export function createPlanView(sheet, palette) {
  const drawing = new Drawing(sheet, {
    name: "plan_view",
    palette,
    draw: (canvas, view) => sheet.result?.calculation.draw_plan_view(canvas, view),
    locate: (x, y, view) => sheet.result?.calculation.leaf_deg_at_plan_view(x, y, view) ?? sheet.cursor.leafDeg,
  });
  return { drawing, table: createTable(sheet, "plan_view", COLUMNS) };
}
