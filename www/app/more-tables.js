/**
 * Tables of what only some jobs have: the range of the hinge friction, the gap over the ground, a wind of fixed bearing.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Column } from "./table.js"
 */

import { createTable } from "./table.js";

/** @type {Column} */
const LEAF = { key: "leaf_deg", quantity: "angle" };

/** @type {Column[]} */
const BAND = [
  LEAF,
  { key: "shaft_torque_open_low_n_m", quantity: "torque" },
  { key: "shaft_torque_open_high_n_m", quantity: "torque" },
  { key: "shaft_torque_close_low_n_m", quantity: "torque" },
  { key: "shaft_torque_close_high_n_m", quantity: "torque" },
];

/** @type {Column[]} */
const GROUND = [
  LEAF,
  { key: "gap_hinge_m", quantity: "short_length" },
  { key: "gap_latch_m", quantity: "short_length" },
  { key: "bracket_rise_m", quantity: "short_length" },
];

/** @type {Column[]} */
const BEARING = [
  LEAF,
  { key: "wind_n_m", quantity: "torque" },
  { key: "shaft_torque_open_n_m", quantity: "torque" },
  { key: "shaft_torque_close_n_m", quantity: "torque" },
];

/**
 * @param {Sheet} sheet
 * @returns {Part[]}
 */
export function createMoreTables(sheet) {
  return [
    createTable(sheet, "band", BAND, (plan) => plan.band?.curve),
    createTable(sheet, "ground", GROUND, (plan) => plan.ground?.curve),
    createTable(sheet, "bearing", BEARING, (plan) => plan.wind?.bearing?.curve),
  ];
}
