/**
 * What stops it, the verdict about torque in a sentence, and the next change worth trying.
 *
 * @import { Part, Result, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { stopItems } from "./judged.js";
import { nextChange } from "./next-change.js";
import { bandSentence } from "./outcomes.js";

/**
 * @param {Sheet} sheet
 * @returns {Part & { show: () => void }}
 */
export function createVerdict(sheet) {
  const lead = h("p", { class: "lead-sentence" });
  const next = h("p", { class: "next" });
  const stops = h("ul", { class: "findings stops", part: "stops" });
  const title = h("h2", { tabindex: "-1" }, sheet.say("verdict.title"));
  const root = h("section", { class: "says-why", part: "sentence" }, title, stops, lead, next);

  function update() {
    const { result } = sheet;
    root.hidden = result === null;
    if (!result) return;
    const wrong = stopItems(sheet, result.plan);
    stops.replaceChildren(...wrong);
    stops.hidden = wrong.length === 0;
    setText(lead, [leadSentence(sheet, result), bandSentence(sheet, result.plan)].filter(Boolean).join(" "));
    const change = nextChange(sheet, result);
    setText(next, change);
    next.hidden = change === "";
  }

  function show() {
    title.focus({ preventScroll: true });
    title.scrollIntoView({ block: "start" });
  }

  return { root, update, show };
}

/** @param {Sheet} sheet @param {Result} result */
function leadSentence(sheet, { plan, job }) {
  if (plan.rating.reserve === null) return sheet.say("verdict.no_demand");
  return sheet.say(`verdict.${plan.rating.verdict}.sentence`, {
    torque: sheet.show(Math.abs(plan.peak.shaft_torque_n_m), "torque"),
    rated: sheet.show(job.operator.rated_torque_n_m, "torque"),
    angle: sheet.show(plan.peak.leaf_deg, "angle"),
    direction: sheet.say(`direction.${plan.peak.direction}`),
    reserve: sheet.show(plan.rating.reserve, "ratio"),
    required: sheet.show(job.required_reserve ?? sheet.session.rules.get("required_reserve")?.default, "ratio"),
  });
}
