/**
 * How far a step is: what was judged in it, or how much of it is still assumed.
 *
 * @import { Sheet } from "../sheet.js"
 * @import { Step } from "../steps/index.js"
 */

import { markOf } from "../judged.js";
import { stepOf } from "../steps/index.js";

/** The worst stands for all. */
const WORST = /** @type {const} */ (["over", "tight", "within"]);

/**
 * @param {Sheet} sheet
 * @param {Step} step
 * @returns {{ mark: string, words: string }} the shape that stands for it, and a few words
 */
export function stateOf(sheet, step) {
  const lacking = sheet.told.some(({ path }) => stepOf(path) === step);
  if (lacking) return { mark: "none", words: sheet.say("steps.states.to_correct") };
  const begun = sheet.leftOut.some(({ path }) => stepOf(path) === step);
  if (begun) return { mark: "none", words: sheet.say("steps.states.begun") };
  const judgements = sheet.result?.plan.judgements.filter(({ about }) => step.subjects.includes(about)) ?? [];
  const worst = sheet.stale ? undefined : WORST.find((state) => judgements.some((one) => one.state === state));
  if (worst) return { mark: markOf(worst), words: sheet.say(`judged.states.${worst}`) };
  if (step.subjects.length) return { mark: "", words: sheet.say("judged.states.not_judged") };
  const { assumed, measured } = counts(sheet, step);
  return { mark: "", words: sheet.say("steps.states.counted", { assumed, measured }) };
}

/** How much of a step is assumed, and how much the person's. @param {Sheet} sheet @param {Step} step */
export function counts(sheet, step) {
  return sheet.counts((path) => stepOf(path) === step);
}
