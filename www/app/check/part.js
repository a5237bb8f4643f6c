/**
 * "How it moves, and what protects people": what is asked beside what comes of it. Folded until wanted; the numbers are made only while
 * it is open.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { createGroup } from "../group.js";
import { createTable } from "../table.js";
import { breakawayParts, holdingParts } from "./breakaway.js";
import { AT_ONCE, CHECKS } from "./groups.js";
import { motionParts } from "./motion.js";
import { peopleParts } from "./people.js";
import { createMotorEditor } from "./motor-editor.js";
import { createSiteEditor } from "./site-editor.js";
import { siteParts } from "./site.js";

/** @type {[string, import("../table.js").Column[], (plan: import("../contract.d.ts").Plan) => any[] | undefined][]} */
const TABLES = [
  ["breakaway", columns("leaf_deg angle, push_open_n force, push_close_n force, edge_force_n force, slip_link_force_n force"), (plan) => plan.breakaway?.curve.map((row) => ({ ...row, slip_link_force_n: row.link_force_n }))],
  ["person", columns("leaf_deg angle, edge_n force, middle_n force, near_n force, over_static_within_m length, full_edge_speed_m_s speed, impact_n force"), (plan) => plan.person?.curve],
];

/** @param {string} list keys and quantities @returns {any[]} */
function columns(list) {
  return list.split(", ").map((pair) => {
    const [key, quantity] = pair.split(" ");
    return { key, quantity };
  });
}

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createCheck(sheet) {
  const [editor, motor] = [createSiteEditor(sheet), createMotorEditor(sheet)];
  const groups = CHECKS.map((group) => {
    const part = createGroup(sheet, group);
    if (group.name === "site") part.root.append(editor.root);
    if (group.name === "motion") part.root.append(motor.root);
    return part;
  });
  const usual = h("button", { type: "button", class: "move usual", onclick: () => fill() }, sheet.say("check.usual"));
  const form = h("form", { class: "ask", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() },
    usual, h("p", { class: "note" }, sheet.say("check.usual_note")), h("div", { class: "groups" }, ...groups.map((group) => group.root)));
  const results = h("div", { class: "check-results", part: "check-results" });
  const tables = TABLES.map(([name, list, rows]) => createTable(sheet, name, list, rows));
  const nothing = h("p", { class: "note" }, sheet.say("check.nothing"));
  const details = h("details", { class: "setout-opens", ontoggle: () => update() },
    h("summary", {}, h("h2", {}, sheet.say("check.title"))),
    h("p", { class: "note" }, sheet.say("check.purpose")),
    h("div", { class: "setout-pair" }, form, h("div", { class: "check-answers" }, nothing, results, ...tables.map((table) => table.root))));
  const root = h("section", { class: "setout check", part: "check" }, details);
  let drawn = "";

  /** Looks at everything, and fills in what is usual where nothing is said. */
  function fill() {
    const { session } = sheet;
    for (const block of AT_ONCE) Object.assign(session.choice(`${block}.looked_at`), { value: "yes", assumed: false });
    for (const { path, usual, quantity } of session.rules.values()) {
      if (usual === null) continue;
      const entry = session.entry(path);
      if (entry.assumed && !entry.start) entry.type(sheet.core.bare(usual, quantity, session.system), session.system);
    }
    sheet.changed();
  }

  function showResults() {
    const { result } = sheet;
    if (!details.open || !result) return;
    results.classList.toggle("stale", sheet.stale);
    for (const table of tables) table.update();
    const { motion, breakaway, person, entrapment, holding, findings } = result.plan;
    const text = JSON.stringify([motion, breakaway, person, entrapment, holding, findings, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    const parts = [motionParts, breakawayParts, peopleParts, siteParts, holdingParts].flatMap((make) => make(sheet, result));
    results.replaceChildren(...parts);
    nothing.hidden = parts.length > 0;
  }

  function update() {
    // While it is closed and nothing is wrong, nobody sees what is asked.
    if (details.open || sheet.told.length) for (const part of [...groups, editor, motor]) part.update();
    showResults();
  }

  return { root, update };
}
