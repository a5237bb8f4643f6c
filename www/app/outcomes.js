/**
 * What came out of a group, in sentences beneath it: the relation used with its source, and the core's numbers.
 *
 * @import { Result, Sheet } from "./sheet.js"
 * @import { Gust, Overrun, Plan, Wind } from "./contract.d.ts"
 */

import { faultSentence } from "./faults.js";
import { findingWords } from "./findings.js";

/** By the group's name. @type {Record<string, (sheet: Sheet, result: Result) => string[]>} */
export const OUTCOMES = { wind, storm, hinges, lean, ground, drag, as_built: asBuilt };

/**
 * @param {Sheet} sheet
 * @param {Wind} wind as the job says it
 * @param {Gust} gust as it is reckoned with
 */
function gustSentences(sheet, wind, gust) {
  const values = {
    pressure: sheet.show(gust.pressure_pa, "pressure"),
    speed: sheet.show(gust.speed_m_s, "speed"),
    coefficient: sheet.show(gust.force_coefficient, "ratio"),
    edition: wind.from?.kind === "asce7" ? wind.from.edition : "",
  };
  return [
    sheet.say(`outcomes.from.${wind.from?.kind ?? "gust"}`, values),
    sheet.say(`outcomes.shape.${wind.shape?.kind ?? "typed"}`, values),
  ];
}

/** @param {Sheet} sheet @param {Result} result */
function wind(sheet, { job, plan }) {
  const sentences = [sheet.say("outcomes.wind.load", { torque: sheet.show(plan.loads.wind_n_m, "torque") })];
  if (!plan.wind) return sentences;
  const { gust, excluded, limit_beaufort: number, bearing } = plan.wind;
  sentences.push(...gustSentences(sheet, job.wind, gust));
  sentences.push(...excluded.map((name) => sheet.say(`outcomes.excluded.${name}`)));
  if (number !== null) sentences.push(sheet.say("outcomes.wind.limit_beaufort", { number: sheet.show(number, "count") }));
  if (bearing) {
    sentences.push(sheet.say("outcomes.wind.bearing", at(sheet, bearing.peak)));
    if (bearing.overrun) sentences.push(sheet.say("outcomes.wind.bearing_holds_back", at(sheet, bearing.overrun)));
  }
  return sentences.concat(found(sheet, plan, ["wind_at_strength_level", "wind_solidity_differs"]));
}

/** @param {Sheet} sheet @param {Result} result */
function storm(sheet, { job, plan }) {
  if (!plan.storm) return [];
  const { gust, wind_n_m: torque, force_n: force, wind_n: equivalent } = plan.storm;
  const sentences = gustSentences(sheet, job.storm, gust);
  sentences.push(sheet.say("outcomes.storm.load", { force: sheet.show(force, "force"), torque: sheet.show(torque, "torque") }));
  if (apart(plan.storm)) sentences.push(sheet.say("outcomes.storm.apart", { equivalent: sheet.show(equivalent, "force") }));
  return sentences.concat(found(sheet, plan, ["storm_solidity_differs"]));
}

/** Whether a shape sets the force apart from the one that has its moment at the middle. @param {import("./contract.d.ts").Storm} storm */
export function apart({ force_n, wind_n }) {
  return Math.abs(wind_n - force_n) > 1e-9 * wind_n;
}

/** @param {Sheet} sheet @param {Result} result */
function hinges(sheet, { plan }) {
  const { hinge_friction_n_m: friction, ramp } = plan.loads;
  const torque = (/** @type {number} */ value) => sheet.show(value, "torque");
  const sentences = [
    ramp
      ? sheet.say("outcomes.hinges.ramp", {
          opening: torque(ramp.friction_open_n_m),
          closing: torque(ramp.friction_close_n_m),
          weight: torque(Math.abs(ramp.weight_n_m)),
        })
      : sheet.say("outcomes.hinges.friction", { torque: torque(friction) }),
  ];
  if (plan.band) {
    const { low, likely, high } = plan.band.friction;
    const shown = [low, likely, high].map((value) => sheet.show(value, "ratio"));
    sentences.push(sheet.say("outcomes.hinges.range", { low: shown[0], likely: shown[1], high: shown[2] }));
    sentences.push(bandSentence(sheet, plan));
  }
  return sentences.concat(found(sheet, plan, ["band_over_rated", "pull_bias_against_lean", "ramp_runs_shut", "ramp_runs_open"]));
}

/** The demand from low to high friction; empty where there is one coefficient only. @param {Sheet} sheet @param {Plan} plan */
export function bandSentence(sheet, { band }) {
  if (!band) return "";
  const { low, high } = band.peak_n_m;
  const word = sheet.say(`verdict.${band.verdict_high}.word`);
  return sheet.say("verdict.band", { low: sheet.show(low, "torque"), high: sheet.show(high, "torque"), word });
}

/** @param {Sheet} sheet @param {Result} result */
function lean(sheet, { job, plan }) {
  const drifts = found(sheet, plan, ["lean_drift"]);
  if (drifts.length) return drifts;
  const leans = [job.lean?.angle_deg, job.lean?.plumb_offset_m].some((value) => (value ?? 0) > 0);
  // On a ramp it is not the lean alone that decides whether it stays.
  return leans && !plan.loads.ramp ? [sheet.say("outcomes.lean.stays", { torque: sheet.show(plan.loads.hinge_friction_n_m, "torque") })] : [];
}

/** What ice comes to. @param {Sheet} sheet @param {Result} result */
function drag(sheet, { plan: { ice } }) {
  if (!ice) return [];
  const values = { mass: sheet.show(ice.mass_kg, "mass"), area: sheet.show(ice.wind_area_m2, "area") };
  return [sheet.say(`outcomes.ice.${ice.all_round ? "all_round" : "faces"}`, values)];
}

/** @param {Sheet} sheet @param {Result} result */
function ground(sheet, { plan }) {
  if (!plan.ground) return [];
  const { least_gap_m: gap, least_gap_leaf_deg: angle, bracket_rise_m: rise } = plan.ground;
  const touches = found(sheet, plan, ["ground_touches"]);
  const least = { gap: sheet.tape(gap), angle: sheet.show(angle, "angle") };
  return [
    ...(touches.length ? touches : [sheet.say("outcomes.ground.clears", least)]),
    sheet.say("outcomes.ground.rise", { rise: sheet.tape(rise) }),
    ...found(sheet, plan, ["bracket_rise"]),
  ];
}

/** @param {Sheet} sheet @param {Result} result */
function asBuilt(sheet, { plan }) {
  const built = plan.as_built;
  if (!built) return [];
  const link = built.link_for_straightness_m;
  const mend = link === null ? sheet.say("outcomes.as_built.no_link") : sheet.say("outcomes.as_built.link", { link: sheet.mark(link) });
  if (!built.fitted) return [sheet.say("outcomes.as_built.broken", { why: built.fault ? faultSentence(sheet, built.fault) : "" }), mend];
  const { reserve } = built.fitted;
  const shown = (/** @type {number | null} */ value, /** @type {import("./contract.d.ts").Quantity} */ quantity) => (value === null ? "–" : sheet.show(value, quantity));
  const values = { reserve: shown(reserve, "ratio"), torque: shown(built.shaft_torque_n_m, "torque"), travel: shown(built.shaft_travel_deg, "angle") };
  return [sheet.say("outcomes.as_built.works", values), mend];
}

/** Findings that are about a group, said there too. @param {Sheet} sheet @param {Plan} plan @param {string[]} codes */
function found(sheet, plan, codes) {
  const own = plan.findings.filter(({ code }) => codes.includes(code));
  return own.map((finding) => findingWords(sheet, finding));
}

/** @param {Sheet} sheet @param {Overrun} overrun */
function at(sheet, { leaf_deg, shaft_torque_n_m, direction }) {
  return {
    torque: sheet.show(Math.abs(shaft_torque_n_m), "torque"),
    angle: sheet.show(leaf_deg, "angle"),
    direction: sheet.say(`direction.${direction}`),
  };
}
