/**
 * The commissioning record against the plan, in words: the core compares, this names.
 *
 * @import { Check, CheckVerdict, Commissioning, Step } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 *
 * @typedef {{ name: string, planned: string, agreed: string, measured: string, source: string, verdict: CheckVerdict, word: string, differs: string }} Row
 */

import { sourceWords } from "../check/words.js";
import { wordsKey } from "../paths.js";
import { endsAt, lengthAt } from "../sides.js";

/**
 * The job with every block said that the sheet speaks of, so that its defaults are reckoned with and listed as assumed.
 *
 * @param {any} job
 */
export function fullJob(job) {
  const { shaft_speed_deg_s: speed } = job.operator;
  const said = Object.fromEntries(["breakaway", "site", "marks", "contact"].map((block) => [block, job[block] ?? {}]));
  return { ...job, ...said, motion: job.motion ?? (speed == null ? null : {}), setout: null, uncertainty: null };
}

/**
 * What the sheet is made of; null where it cannot be had. Free its calculation.
 *
 * @param {Sheet} sheet
 * @returns {Result | null}
 */
export function fullResult(sheet) {
  // What is handed over waits until nothing is begun and unfinished.
  if (!sheet.result || sheet.stale || sheet.leftOut.length > 0) return null;
  const job = fullJob(sheet.result.job);
  try {
    const calculation = new sheet.core.Calculation(job);
    return { job, calculation, plan: calculation.plan() };
  } catch (error) {
    if (!Array.isArray(/** @type {any} */ (error).errors)) throw error;
    return null;
  }
}

/** @param {Sheet} sheet @param {Commissioning} record @returns {{ checks: Row[], steps: Row[] }} */
export function comparison(sheet, { checks, steps }) {
  return { checks: checks.map((check) => checkRow(sheet, check)), steps: steps.map((step) => stepRow(sheet, step)) };
}

/** @param {Sheet} sheet @param {Check} check @returns {Row} */
function checkRow(sheet, { path, quantity, planned, least, most, measured, source, verdict }) {
  const shown = (/** @type {number | null} */ value) => (value === null ? "" : quantity === "short_length" ? lengthAt(sheet, path, value) : sheet.show(value, quantity));
  const ends = quantity === "short_length" && least !== null && most !== null ? endsAt(sheet, path, least, most) : { least: shown(least), most: shown(most) };
  const kind = least === null ? "most" : most === null ? "least" : "range";
  return {
    ...worded(sheet, path, verdict),
    name: sheet.fieldName(path),
    planned: shown(planned),
    agreed: least === null && most === null ? "" : sheet.say(`allowed.${kind}`, ends),
    measured: shown(measured),
    source: sourceWords(sheet, source),
  };
}

/** @param {Sheet} sheet @param {Step} step @returns {Row} */
function stepRow(sheet, { path, done, verdict }) {
  const measured = done === null ? "" : sheet.say(`choices.answers.${done ? "yes" : "no"}`);
  return { ...worded(sheet, path, verdict), name: sheet.fieldName(path), planned: "", agreed: "", measured, source: "" };
}

/** @param {Sheet} sheet @param {string} path @param {CheckVerdict} verdict */
function worded(sheet, path, verdict) {
  return { verdict, word: sheet.say(`handover.verdicts.${verdict}`), differs: sheet.say(`handover.differs.${wordsKey(path)}`) };
}
