/**
 * Movement: ramps, slow zones, the motor and its supply, how often it runs; times, edge speed, stops, coast.
 *
 * @import { CreateStep } from "./index.js"
 */

import { createMotorEditor } from "../check/motor-editor.js";
import { motionParts } from "../check/motion.js";
import { h } from "../dom.js";
import { groupsOf } from "../groups.js";
import { createFindings } from "./findings.js";
import { createGroups, form, together } from "./groups.js";
import { createResults } from "./results.js";

/** @type {CreateStep} */
export function create({ sheet, stage }) {
  const groups = createGroups(sheet, groupsOf("movement"), { motion: createMotorEditor(sheet) });
  const findings = createFindings(sheet, ["motion"]);
  const results = createResults(sheet, ["motion"], [motionParts]);
  const tables = stage.tables.time;
  const root = h("div", {}, findings.root, form(results.usual, groups.root), results.root, h("section", { class: "tables" }, ...tables.map((table) => table.root)));
  return together(root, [findings, groups, results, ...tables]);
}
