/**
 * What to look at, what is assumed, and which relations were used.
 *
 * @import { Block } from "./blocks.js"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingWords } from "../findings.js";
import { head, line, list, note } from "./blocks.js";

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function findingBlocks(sheet, { plan: { findings } }) {
  const items = findings.map((finding) => h("span", {}, h("b", {}, sheet.say(`severity.${finding.severity}`)), " ", findingWords(sheet, finding)));
  return [head(sheet.say("handover.paper.findings.title")), list(items.length ? items : [sheet.say("findings.none")])];
}

/** Those marked in the survey, and those of blocks the page does not ask for. @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function assumptionBlocks(sheet, { plan: { assumed } }) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.assumptions.${key}`, values);
  const count = sheet.counts().assumed;
  const asked = new Set(sheet.session.activePaths());
  const others = assumed.flatMap((path) => {
    const rule = sheet.session.rules.get(path);
    const name = sheet.fieldName(path);
    if (asked.has(path) || name === path) return [];
    return [rule?.default == null ? name : `${name}: ${sheet.show(rule.default, rule.quantity)}`];
  });
  const marked = count > 0 ? [line(say("marked", { count }))] : others.length ? [] : [line(say("none"))];
  return [head(say("title")), ...marked, ...(others.length ? [note(say("note")), list(others)] : [])];
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function relationBlocks(sheet, { job, plan }) {
  // The core names the relation it computed the hinges by.
  const friction = plan.loads.friction_relation ?? "";
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.relations.${key}`, { friction });
  const leans = [job.lean?.angle_deg, job.lean?.plumb_offset_m].some((value) => (value ?? 0) !== 0);
  const used = [
    "arm",
    "torque",
    "reserve",
    job.hinges.kind,
    job.wind.from || job.wind.shape ? "standard" : "gust",
    ...(leans ? ["lean"] : []),
    ...(plan.motion ? ["inertia", "motion"] : []),
    ...(plan.breakaway ? ["slip"] : []),
    "marks",
    "gravity",
    "unchecked",
  ];
  return [head(say("title")), list(used.map(say))];
}
