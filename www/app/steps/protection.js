/**
 * Protection: who comes here and what is fitted, where somebody can be caught, the breakaway's window, the force on a person, the storm.
 *
 * @import { Plan } from "../contract.d.ts"
 * @import { CreateStep } from "./index.js"
 */

import { breakawayParts, holdingParts } from "../check/breakaway.js";
import { peopleParts } from "../check/people.js";
import { createSiteEditor } from "../check/site-editor.js";
import { siteParts } from "../check/site.js";
import { h } from "../dom.js";
import { groupsOf } from "../groups.js";
import { createStorm } from "../storm.js";
import { createTable } from "../table.js";
import { createFindings } from "./findings.js";
import { createGroups, form } from "./groups.js";
import { createResults } from "./results.js";

/** @type {[string, import("../table.js").Column[], (plan: Plan) => any[] | undefined][]} */
const TABLES = [
  [
    "breakaway",
    columns("leaf_deg angle, push_open_n force, push_close_n force, edge_force_n force, slip_link_force_n force"),
    (plan) => plan.breakaway?.curve.map((row) => ({ ...row, slip_link_force_n: row.link_force_n })),
  ],
  ["person", columns("leaf_deg angle, edge_n force, middle_n force, near_n force, over_static_within_m length, full_edge_speed_m_s speed, impact_n force"), (plan) => plan.person?.curve],
];

/** @param {string} list keys and quantities @returns {any[]} */
function columns(list) {
  return list.split(", ").map((pair) => {
    const [key, quantity] = pair.split(" ");
    return { key, quantity };
  });
}

/** @type {CreateStep} */
export function create({ sheet, stage }) {
  const groups = createGroups(sheet, groupsOf("protection"), { site: createSiteEditor(sheet) });
  const findings = createFindings(sheet, ["breakaway", "storm", "people"]);
  const results = createResults(sheet, ["breakaway", "contact", "site"], [siteParts, breakawayParts, peopleParts, holdingParts]);
  const storm = createStorm(sheet);
  const tables = TABLES.map(([name, list, rows]) => createTable(sheet, name, list, rows));
  const { zones } = stage;
  const root = h("div", {}, findings.root, zones.root, form(results.usual, groups.root), results.root, storm.root, h("section", { class: "tables" }, ...tables.map((table) => table.root)));

  function update() {
    for (const part of [findings, zones, groups, results, storm, ...tables]) part.update();
  }

  return { root, update };
}
