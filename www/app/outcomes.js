/**
 * What came out of a group, in sentences beneath it: the relation used with its source, and the core's numbers.
 *
 * @import { Result, Sheet } from "./sheet.js"
 * @import { Gust, Overrun, Plan, Wind } from "./contract.d.ts"
 */

import { faultSentence } from "./faults.js";

/** By the group's name. @type {Record<string, (sheet: Sheet, result: Result) => string[]>} */
export const OUTCOMES = { wind, storm, hinges, lean, ground, as_built: asBuilt };

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
  return sentences.concat(found(sheet, plan, ["wind_at_strength_level"]));
}

/** @param {Sheet} sheet @param {Result} result */
function storm(sheet, { job, plan }) {
  if (!plan.storm) return [];
  const { gust, wind_n_m: torque, wind_n: force } = plan.storm;
  const load = sheet.say("outcomes.storm.load", { force: sheet.show(force, "force"), torque: sheet.show(torque, "torque") });
  return [...gustSentences(sheet, job.storm, gust), load];
}

/** @param {Sheet} sheet @param {Result} result */
function hinges(sheet, { plan }) {
  const sentences = [sheet.say("outcomes.hinges.friction", { torque: sheet.show(plan.loads.hinge_friction_n_m, "torque") })];
  if (plan.band) {
    const { low, likely, high } = plan.band.friction;
    const shown = [low, likely, high].map((value) => sheet.show(value, "ratio"));
    sentences.push(sheet.say("outcomes.hinges.range", { low: shown[0], likely: shown[1], high: shown[2] }));
    sentences.push(bandSentence(sheet, plan));
  }
  return sentences.concat(found(sheet, plan, ["band_over_rated", "pull_bias_against_lean"]));
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
  return leans ? [sheet.say("outcomes.lean.stays", { torque: sheet.show(plan.loads.hinge_friction_n_m, "torque") })] : [];
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
  return own.map(({ code, values }) => sheet.say(`findings.${code}`, sheet.shown(values)));
}

/** @param {Sheet} sheet @param {Overrun} overrun */
function at(sheet, { leaf_deg, shaft_torque_n_m, direction }) {
  return {
    torque: sheet.show(Math.abs(shaft_torque_n_m), "torque"),
    angle: sheet.show(leaf_deg, "angle"),
    direction: sheet.say(`direction.${direction}`),
  };
}
