/**
 * What the storm asks of the closed leaf, and of a leaf that stands open in it.
 *
 * @import { Part, Result, Sheet } from "./sheet.js"
 */

import { drawFigures } from "./behind.js";
import { h } from "./dom.js";
import { apart } from "./outcomes.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createStorm(sheet) {
  const closed = h("dl", { class: "figures-list", part: "storm" });
  const stranded = h("dl", { class: "figures-list", part: "stranded" });
  const root = h(
    "section",
    { class: "storm" },
    h("h3", {}, sheet.say("storm.title")),
    h("p", { class: "note" }, sheet.say("storm.note"), " ", sheet.say("storm.alone")),
    closed,
    h("h3", {}, sheet.say("storm.stranded.title")),
    h("p", { class: "note" }, sheet.say("storm.stranded.note")),
    stranded,
  );

  function update() {
    const { result } = sheet;
    root.hidden = !result?.plan.storm;
    if (!result || root.hidden) return;
    drawFigures(closed, stormRows(sheet, result));
    drawFigures(stranded, strandedRows(sheet, result));
  }

  return { root, update };
}

/**
 * What the closed leaf, its arm and its hinges must hold; the working wind has no part in it.
 *
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {[string, string][]}
 */
function stormRows(sheet, { plan: { storm } }) {
  if (!storm) return [];
  /** @type {[string, string][]} */
  const rows = [
    ["force_n", sheet.show(storm.force_n, "force")],
    .../** @type {[string, string][]} */ (apart(storm) ? [["wind_n", sheet.show(storm.wind_n, "force")]] : []),
    ["wind_n_m", sheet.show(storm.wind_n_m, "torque")],
    ["link_force_n", sheet.show(storm.link_force_n, "force")],
    ["bracket_along_n", sheet.show(storm.bracket_along_n, "force")],
    ["bracket_across_n", sheet.show(storm.bracket_across_n, "force")],
    ["hinge_n", sheet.show(storm.hinge_n, "force")],
    ["shaft_torque_n_m", sheet.show(storm.shaft_torque_n_m, "torque")],
  ];
  return rows.map(([name, value]) => [sheet.say(`storm.${name}`), value]);
}

/**
 * What holds a leaf that stands open in it.
 *
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {[string, string][]}
 */
function strandedRows(sheet, { plan: { storm } }) {
  if (!storm) return [];
  const places = /** @type {const} */ (["half_open", "open", "worst"]);
  return places.map((place) => {
    const leaf = storm.stranded[place];
    const held = {
      torque: sheet.show(leaf.shaft_torque_n_m, "torque"),
      link: sheet.show(leaf.link_force_n, "force"),
      across: sheet.show(leaf.bracket_across_n, "force"),
      hinge: sheet.show(leaf.hinge_n, "force"),
      bolt: sheet.show(leaf.bolt_n, "force"),
    };
    return [sheet.say(`storm.stranded.${place}`, { angle: sheet.show(leaf.leaf_deg, "angle") }), sheet.say("storm.stranded.held", held)];
  });
}
