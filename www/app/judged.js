/**
 * The worst of everything that was judged, in a shape, a word and what it is about. The core says which, and what was judged at all: within is
 * never said without naming that.
 *
 * @import { Judgement, Plan, Subject } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { findingItem, findingWords } from "./findings.js";

/** The shape for each state: nothing is green, tight or over where something waits to be counted. */
const MARKS = { within: "within", tight: "tight", over: "over", not_judged: "none" };

/** What a subject is called. @param {Sheet} sheet @param {Subject} about */
export function subjectName(sheet, about) {
  return sheet.say(`verdict.about.${about}`);
}

/** The shape that stands for a state. @param {Judgement["state"]} state */
export function markOf(state) {
  return MARKS[state];
}

/** Names of subjects in a sentence. @param {Sheet} sheet @param {Subject[]} subjects */
export function subjectList(sheet, subjects) {
  return sheet.strings.list(subjects.map((about) => subjectName(sheet, about)));
}

/** Subjects that are not judged, and why. @param {Plan} plan @param {Judgement["unjudged"]} why */
export function unjudged(plan, why) {
  return plan.judgements.filter((one) => one.unjudged === why).map(({ about }) => about);
}

/**
 * @param {Sheet} sheet
 * @param {Plan} plan
 * @returns {{ state: string, word: string, about: string }}
 */
export function judged(sheet, plan) {
  const { state, about, stops, judged } = plan.overall;
  const subject = subjectName(sheet, about);
  const said = {
    over: () => (stops > 1 ? sheet.say("verdict.stops", { about: subject, count: stops - 1 }) : subject),
    tight: () => subject,
    within: () => subjectList(sheet, judged),
    not_judged: () => subject,
  }[state]();
  // What was asked for and only an instrument can judge is named beside what was judged.
  const open = unjudged(plan, "not_measured");
  const rest = open.length && state !== "over" ? sheet.say("verdict.but_not", { subjects: subjectList(sheet, open) }) : "";
  return { state: MARKS[state], word: sheet.say(`verdict.whole.${state}`), about: [said, rest].filter(Boolean).join("; ") };
}

/** The stops of a plan. @param {Plan} plan */
function stops({ findings }) {
  return findings.filter(({ severity }) => severity === "stop");
}

/** Every stop in its sentence. @param {Sheet} sheet @param {Plan} plan */
export function stopSentences(sheet, plan) {
  return stops(plan).map((finding) => findingWords(sheet, finding));
}

/** The stops as items of a list, told as such. @param {Sheet} sheet @param {Plan} plan */
export function stopItems(sheet, plan) {
  return stops(plan).map((finding) => findingItem(sheet, finding));
}
