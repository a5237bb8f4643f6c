/**
 * Force on a person: estimates, each to be measured on the finished gate.
 *
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { figuresList } from "../rows.js";
import { findingItems, shown, shownAt, sourcesNote } from "./words.js";

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
    row("edge_speed", shown(sheet, person.edge_speed_m_s, "speed")),
    row("impact", shown(sheet, person.impact_n, "force")),
    row("compression", shown(sheet, person.compression_m, "short_length")),
    row("speed_at_limit", shown(sheet, person.speed_at_limit_m_s, "speed")),
    row("edge_travel", shown(sheet, person.edge_travel_m, "short_length")),
    [say("dynamic_limit"), sheet.show(person.dynamic_limit_n, "force")],
    [say("static_limit"), sheet.show(person.static_limit_n, "force")],
  ];
  const toggle = breakaway?.toggle_to_leaf_deg ?? 0;
  return [
    h("h3", {}, say("title")),
    h("p", { class: "never" }, sheet.say("findings.force_must_be_measured")),
    figuresList(figures),
    h("p", {}, say("near")),
    ...(toggle > 0 ? [h("p", {}, say("toggle", { angle: sheet.show(toggle, "angle") }))] : []),
    sourcesNote(sheet, [person.limits_source, person.measuring_source]),
    ...findingItems(sheet, plan, ["push_over", "impact_over", "edge_travel"]),
  ];
}
