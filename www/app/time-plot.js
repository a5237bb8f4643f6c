/**
 * Edge speed and shaft torque against time, opening and closing, as set and as the motor drives; in step with the leaf.
 *
 * @import { Palette, Plan, RunPoint } from "./contract.d.ts"
 * @import { Player, RunName } from "./player.js"
 * @import { Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { Drawing } from "./drawing.js";
import { createTable } from "./table.js";

/** @type {import("./table.js").Column[]} */
const COLUMNS = [
  { key: "time_s", quantity: "time" },
  { key: "leaf_deg", quantity: "angle" },
  { key: "shaft_deg", quantity: "angle" },
  { key: "edge_speed_m_s", quantity: "speed" },
  { key: "shaft_torque_n_m", quantity: "torque" },
];

/** Where a plan has the rows of each run. @type {[RunName, (plan: Plan) => any[] | undefined][]} */
const RUNS = [
  ["opening", ({ motion }) => motion?.opening.curve],
  ["closing", ({ motion }) => motion?.closing.curve],
  ["motor_opening", ({ motion }) => motion?.driven?.opening.curve],
  ["motor_closing", ({ motion }) => motion?.driven?.closing.curve],
];

/**
 * @param {Sheet} sheet
 * @param {() => Palette} palette
 * @param {Player} player
 */
export function createTimePlot(sheet, palette, player) {
  const drawing = new Drawing(sheet, {
    name: "time",
    palette,
    draw: (canvas, view) => sheet.result?.calculation.draw_time(canvas, view),
    locate: (x, y, view) => sheet.result?.calculation.leaf_deg_at_time(x, y, view) ?? sheet.cursor.leafDeg,
  });
  const reading = h("p", { class: "note", part: "time-reading" });
  const root = h("div", { class: "figure of-time" }, h("h2", {}, sheet.say("drawing_titles.time")), drawing.root, reading);
  const tables = RUNS.map(([run, rows]) => createTable(sheet, run, COLUMNS, rows));

  /** In step with the cursor. */
  function follow() {
    root.hidden = player.runs.length === 0;
    if (root.hidden) return;
    const words = sentence(sheet, player.here);
    setText(reading, words);
    drawing.describe(words);
    drawing.redraw();
  }

  return { root, drawing, tables, follow };
}

/** What holds in the followed run at the leaf's angle. @param {Sheet} sheet @param {RunPoint | null} here */
function sentence(sheet, here) {
  const run = sheet.say(`play.runs.${sheet.showing.run}`);
  const angle = sheet.show(sheet.cursor.leafDeg, "angle");
  if (!here) return sheet.say("play.not_there", { run, angle });
  return sheet.say("play.value", {
    run,
    angle,
    time: sheet.show(here.time_s, "time"),
    speed: sheet.show(here.edge_speed_m_s, "speed"),
    torque: sheet.show(here.shaft_torque_n_m, "torque"),
  });
}
