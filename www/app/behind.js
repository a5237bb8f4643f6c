/**
 * What stands behind the verdict: the figures, the wind limit, what drives the demand.
 *
 * @import { Part, Result, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
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
  const rests = h("p", { class: "note" });
  const root = h(
    "details",
    { class: "behind asks-more", part: "figures" },
    h("summary", {}, sheet.say("verdict.behind")),
    figures,
    shares.root,
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
    sensitivity.update();
    setText(rests, sheet.say("verdict.rests", { count: sheet.counts().assumed }));
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
export function drawFigures(list, rows) {
  list.replaceChildren(...rows.map(([term, value]) => h("div", {}, h("dt", {}, term), h("dd", {}, value))));
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
