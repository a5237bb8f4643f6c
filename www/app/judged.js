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
  // Nothing is green while a part that was asked for is not counted.
  if (state === "within" && sheet.leftOut.length > 0) return { state: "none", word: sheet.say("verdict.begun.word"), about: sheet.say("verdict.scope") };
  if (rating.verdict === "over" || stops === 0) {
    const more = stops > 1 ? sheet.say("verdict.torque_stops", { count: stops - 1 }) : sheet.say("verdict.scope");
    return { state, word: sheet.say(`verdict.${rating.verdict}.word`), about: more };
  }
  const subject = sheet.say(`verdict.about.${about}`);
  return { state, word: sheet.say("verdict.stop.word"), about: stops === 1 ? subject : sheet.say("verdict.stops", { about: subject, count: stops - 1 }) };
}

/** Every stop in its sentence. @param {Sheet} sheet @param {Plan} plan */
export function stopSentences(sheet, { findings }) {
  return findings.filter(({ severity }) => severity === "stop").map(({ code, values }) => sheet.say(`findings.${code}`, sheet.shown(values)));
}

/** The stops as items of a list, told as such. @param {Sheet} sheet @param {Plan} plan */
export function stopItems(sheet, plan) {
  return stopSentences(sheet, plan).map((sentence) => h("li", {}, h("strong", { class: "severity stop" }, sheet.say("severity.stop")), " ", sentence));
}
