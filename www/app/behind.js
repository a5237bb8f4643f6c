/**
 * What stands behind the verdict: the figures, the wind limit, what drives the demand, the findings.
 *
 * @import { Part, Result, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { findingItem } from "./findings.js";
import { apart } from "./outcomes.js";
import { createSensitivity } from "./sensitivity.js";
import { createShares } from "./shares.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createBehind(sheet) {
  const figures = h("dl", { class: "figures-list" });
  const shares = createShares(sheet);
  const sensitivity = createSensitivity(sheet);
  const stormTitle = h("h3", {}, sheet.say("storm.title"));
  const stormNote = h("p", { class: "note" }, sheet.say("storm.note"), " ", sheet.say("storm.alone"));
  const storm = h("dl", { class: "figures-list", part: "storm" });
  const strandedTitle = h("h3", {}, sheet.say("storm.stranded.title"));
  const strandedNote = h("p", { class: "note" }, sheet.say("storm.stranded.note"));
  const stranded = h("dl", { class: "figures-list", part: "stranded" });
  const findings = h("ul", { class: "findings", part: "findings" });
  const rests = h("p", { class: "note" });
  const root = h(
    "section",
    { class: "behind", part: "figures" },
    h("h2", {}, sheet.say("verdict.behind")),
    figures,
    shares.root,
    h("h3", {}, sheet.say("findings.title")),
    findings,
    stormTitle,
    stormNote,
    storm,
    strandedTitle,
    strandedNote,
    stranded,
    sensitivity.root,
    rests,
  );

  function update() {
    const { result } = sheet;
    root.hidden = result === null;
    if (!result) return;
    const rows = figureRows(sheet, result);
    drawFigures(figures, rows);
    shares.update();
    const held = stormRows(sheet, result);
    for (const part of [stormTitle, stormNote, storm, strandedTitle, strandedNote, stranded]) part.hidden = held.length === 0;
    drawFigures(storm, held);
    drawFigures(stranded, strandedRows(sheet, result));
    sensitivity.update();
    drawFindings(sheet, result, findings);
    setText(rests, sheet.say("verdict.rests", { count: sheet.assumptions() }));
  }

  return { root, update };
}

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {[string, string][]}
 */
function figureRows(sheet, { plan, job }) {
  const { rating, peak, loads, overrun } = plan;
  /** @type {[string, string | null][]} */
  const rows = [
    ["rated", sheet.show(job.operator.rated_torque_n_m, "torque")],
    ["needed", sheet.show(Math.abs(peak.shaft_torque_n_m), "torque")],
    ["used", sheet.show(rating.utilisation, "percent")],
    ["peak_used", rating.peak_utilisation == null ? null : sheet.show(rating.peak_utilisation, "percent")],
    ["wind_limit", windLimit(sheet, plan.wind_limit)],
    ["holds_back", overrun ? sheet.say(`verdict.holds_back.${overrun.direction}`, holdsBack(sheet, overrun)) : null],
    ["wind_load", sheet.show(loads.wind_n_m, "torque")],
    ["friction_load", sheet.show(loads.hinge_friction_n_m, "torque")],
    ["snow", sheet.show(loads.snow.moment_n_m, "torque")],
    ["shaft_travel", sheet.show(plan.shaft_travel_deg, "angle")],
    ["least_lever", sheet.show(plan.least_lever_m, "short_length")],
  ];
  return rows.filter(([, value]) => value !== null).map(([name, value]) => [sheet.say(`figures.${name}`, { depth: sheet.show(loads.snow.depth_m, "short_length") }), /** @type {string} */ (value)]);
}

/** @param {HTMLElement} list @param {[string, string][]} rows */
function drawFigures(list, rows) {
  list.replaceChildren(...rows.map(([term, value]) => h("div", {}, h("dt", {}, term), h("dd", {}, value))));
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

/** @param {Sheet} sheet @param {{ leaf_deg: number, shaft_torque_n_m: number }} overrun */
function holdsBack(sheet, overrun) {
  return { torque: sheet.show(Math.abs(overrun.shaft_torque_n_m), "torque"), angle: sheet.show(overrun.leaf_deg, "angle") };
}

/** @param {Sheet} sheet @param {{ state: string, speed_m_s: number | null }} limit */
function windLimit(sheet, { state, speed_m_s: speed }) {
  const searched = sheet.session.rules.get("wind.speed_m_s")?.most ?? NaN;
  return sheet.say(`wind_limit.${state}`, { speed: sheet.show(speed ?? searched, "speed") });
}

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @param {HTMLElement} list
 */
function drawFindings(sheet, { plan }, list) {
  const items = plan.findings.map((finding) => findingItem(sheet, finding));
  list.replaceChildren(...(items.length ? items : [h("li", {}, sheet.say("findings.none"))]));
}
