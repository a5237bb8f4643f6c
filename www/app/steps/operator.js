/**
 * Operator: one of the list or its ratings, what it gives on this leaf, and what stands behind that.
 *
 * @import { CreateStep } from "./index.js"
 */

import { createBehind } from "../behind.js";
import { h } from "../dom.js";
import { groupsOf } from "../groups.js";
import { createMoreTables } from "../more-tables.js";
import { createOperatorChoice } from "../operators/choice.js";
import { createVerdict } from "../verdict.js";
import { createFindings } from "./findings.js";
import { createGroups, form, together } from "./groups.js";

/** @type {CreateStep} */
export function create({ sheet, stage, signal }) {
  const choice = createOperatorChoice(sheet, signal);
  const verdict = createVerdict(sheet);
  const groups = createGroups(sheet, groupsOf("operator"));
  const behind = createBehind(sheet);
  const findings = createFindings(sheet, ["torque"]);
  const tables = [...stage.tables.curve, ...createMoreTables(sheet)];
  const root = h("div", {}, form(choice.root, verdict.root, findings.root, groups.root), behind.root, h("section", { class: "tables" }, ...tables.map((table) => table.root)));
  return together(root, [choice, verdict, findings, groups, behind, ...tables]);
}
