/**
 * Place: the arm as it is, what a search may choose from and what it found, the map, what a tape error costs, how near everything comes.
 *
 * @import { CreateStep } from "./index.js"
 */

import { h } from "../dom.js";
import { groupsOf } from "../groups.js";
import { createClearances } from "../setout/clearances.js";
import { createSetOut } from "../setout/part.js";
import { createTapeCost } from "../setout/tape-cost.js";
import { createFindings } from "./findings.js";
import { createGroups, form } from "./groups.js";

/** @type {CreateStep} */
export function create({ sheet, signal, stage }) {
  const setout = createSetOut(sheet, signal);
  const groups = createGroups(sheet, groupsOf("place"));
  const findings = createFindings(sheet, ["arm", "clearances", "tape"]);
  const tape = createTapeCost(sheet);
  const clearances = createClearances(sheet, setout.job);
  const table = stage.tables.plan_view;
  stage.map.append(setout.map);
  const root = h("div", {}, setout.root, findings.root, form(groups.root), tape.root, clearances.root, h("section", { class: "tables" }, table.root));

  function update() {
    for (const part of [findings, setout, groups, tape, clearances, table]) part.update();
  }

  return { root, update, recolour: setout.recolour };
}
