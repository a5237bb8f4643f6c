/**
 * The worst of everything that was judged, in a shape, a word and what it is about. The core says which; torque alone is never shown for
 * the whole while anything is a stop.
 *
 * @import { Plan } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

/**
 * @param {Sheet} sheet
 * @param {Plan} plan
 * @returns {{ state: string, word: string, about: string }}
 */
export function judged(sheet, { overall, rating }) {
  const { state, about, stops } = overall;
  if (stops === 0) return { state, word: sheet.say(`verdict.${state}.word`), about: sheet.say("verdict.scope") };
  const subject = sheet.say(`verdict.about.${about}`);
  return {
    state,
    word: sheet.say(rating.verdict === "over" ? "verdict.over.word" : "verdict.stop.word"),
    about: stops === 1 ? subject : sheet.say("verdict.stops", { about: subject, count: stops }),
  };
}

/** Every stop in its sentence. @param {Sheet} sheet @param {Plan} plan */
export function stopSentences(sheet, { findings }) {
  return findings.filter(({ severity }) => severity === "stop").map(({ code, values }) => sheet.say(`findings.${code}`, sheet.shown(values)));
}

/** The stops as items of a list, told as such. @param {Sheet} sheet @param {Plan} plan */
export function stopItems(sheet, plan) {
  return stopSentences(sheet, plan).map((sentence) => h("li", {}, h("strong", { class: "severity stop" }, sheet.say("severity.stop")), " ", sentence));
}
