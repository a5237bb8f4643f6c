/**
 * The verdict about torque in a sentence, and the next change worth trying.
 *
 * @import { Part, Result, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { nextChange } from "./next-change.js";
import { bandSentence } from "./outcomes.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createVerdict(sheet) {
  const lead = h("p", { class: "lead-sentence" });
  const next = h("p", { class: "next" });
  const title = h("h3", {}, sheet.say("verdict.title"));
  const root = h("section", { class: "says-why", part: "sentence" }, title, lead, next);

  function update() {
    const { result } = sheet;
    root.hidden = result === null;
    if (!result) return;
    setText(lead, [leadSentence(sheet, result), bandSentence(sheet, result.plan)].filter(Boolean).join(" "));
    const change = nextChange(sheet, result);
    setText(next, change);
    next.hidden = change === "";
  }

  return { root, update };
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
