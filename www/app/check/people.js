/**
 * Force on a person: estimates, each to be measured on the finished gate; the blow of the edge by the gap that is left, each with its limit.
 *
 * @import { Blow, ForceOnPerson } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingWords } from "../findings.js";
import { figuresList, plainTable } from "../rows.js";
import { driveNote, findingItems, shown, shownAt, sourcesNote } from "./words.js";

/** @param {Sheet} sheet @param {Result} result */
export function peopleParts(sheet, { plan }) {
  const { person, breakaway } = plan;
  if (!person) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.people.${key}`, values);
  // Every row is an estimate, and says so.
  const row = (/** @type {string} */ key, /** @type {string} */ value) => [say(`rows.${key}`), value === "–" ? value : say("estimate", { value })];
  const figures = [
    [say("torque"), say(`from.${person.torque_from}`, { torque: sheet.show(person.torque_n_m, "torque") })],
    row("edge_push", shownAt(sheet, person.edge_push_n, "force", person.edge_push_leaf_deg)),
    row("edge_mass", sheet.show(person.edge_mass_kg, "mass")),
    row("edge_travel", shown(sheet, person.edge_travel_m, "short_length")),
    [say("dynamic_time"), sheet.show(person.dynamic_time_s, "time")],
    [say("static_limit"), sheet.show(person.static_limit_n, "force")],
  ];
  const toggle = breakaway?.toggle_to_leaf_deg ?? 0;
  return [
    h("h3", {}, say("title")),
    h("p", { class: "never" }, findingWords(sheet, { code: "force_must_be_measured" })),
    figuresList(figures),
    ...blowParts(sheet, person),
    h("p", {}, say("near")),
    ...(toggle > 0 ? [h("p", {}, say("toggle", { angle: sheet.show(toggle, "angle") }))] : []),
    sourcesNote(sheet, [person.limits_source, person.measuring_source]),
    ...findingItems(sheet, plan, ["push_over", "impact_over", "response_too", "edge_travel"]),
  ];
}

/** @param {Sheet} sheet @param {ForceOnPerson} person */
function blowParts(sheet, { blows, wide_gap_m: wide, drive_inertia_kg_m2: drive }) {
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.people.blows.${key}`, values);
  const gap = (/** @type {Blow} */ { gap_m, leaf_deg }) => {
    const values = { gap: sheet.show(gap_m ?? wide, "short_length"), angle: shown(sheet, leaf_deg, "angle") };
    return say(gap_m != null ? "at" : leaf_deg != null ? "wide" : "wide_unknown", values);
  };
  const rows = blows.map((blow) => [
    gap(blow),
    shown(sheet, blow.edge_speed_m_s, "speed"),
    shown(sheet, blow.impact_n, "force"),
    sheet.show(blow.dynamic_limit_n, "force"),
    shown(sheet, blow.speed_at_limit_m_s, "speed"),
    shown(sheet, blow.push_n, "force"),
  ]);
  const heads = ["gap", "edge_speed", "impact", "dynamic_limit", "speed_at_limit", "push"].map((key) => say(key));
  return [h("h4", {}, say("title")), plainTable(say("title"), heads, rows), h("p", { class: "note" }, say("note")), driveNote(sheet, "people", drive)];
}
