/**
 * What the search found, beside the rule of thumb and the arm the job has; or what is in the way.
 *
 * @import { Arm, Quantity, SetOutAnswer, Stand } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { plainTable } from "../rows.js";
import { lengthAt } from "../sides.js";
import { inTheWay, wayOut } from "./words.js";

/** @typedef {{ answer: SetOutAnswer, rule: Stand | null }} Found */

/** @type {[keyof Stand, Quantity | null][]} */
const ROWS = [
  ["reserve", "ratio"],
  ["shaft_torque_n_m", "torque"],
  ["shaft_x_m", "short_length"],
  ["shaft_y_m", "short_length"],
  ["bracket_u_m", "short_length"],
  ["bracket_v_m", "short_length"],
  ["crank_m", "short_length"],
  ["link_m", "short_length"],
  ["elbow", null],
  ["shaft_travel_deg", "angle"],
  ["least_lever_m", "short_length"],
  ["straightness", "ratio"],
  ["off_square_deg", "angle"],
  ["link_force_n", "force"],
  ["clearance_m", "short_length"],
  ["worst_reserve", "ratio"],
];

/**
 * @param {Sheet} sheet
 * @param {Found} found
 * @param {Stand | null} now the job's own arm
 * @param {(arm: Arm) => void} take
 * @returns {Node[]}
 */
export function answerParts(sheet, { answer, rule }, now, take) {
  if (!answer.best) return nothing(sheet, answer);
  const columns = /** @type {[string, Stand | null][]} */ ([["found", answer.best], ["rule", rule], ["now", now]]).filter(([, stand]) => stand);
  const heads = columns.map(([name]) => sheet.say(`setout.answer.${name}`));
  const rows = ROWS.filter(([key]) => key !== "worst_reserve" || "without_proof" in answer);
  const table = plainTable(sheet.say("setout.answer.caption"), ["", ...heads], rows.map((row) => rowOf(sheet, row, columns.map(([, stand]) => /** @type {Stand} */ (stand)))));
  const buttons = columns
    .filter(([name]) => name !== "now")
    .map(([name, stand]) => h("button", { type: "button", class: `move take ${name === "found" ? "by-search" : "by-rule"}`, onclick: () => take(/** @type {Stand} */ (stand)) }, sheet.say(`setout.take.${name}`)));
  const short = answer.rule_of_thumb?.short;
  const noRule = short
    ? sheet.say("setout.answer.rule_short", { length: sheet.say(`setout.fields.${short[0]}`), by: sheet.limit(short[1], "short_length", "up") })
    : rule ? null : sheet.say("setout.answer.no_rule");
  const reserves = columns.map(([, stand], index) =>
    h("div", {}, h("dt", {}, heads[index]), h("dd", {}, stand?.reserve == null ? "–" : sheet.say("verdict.alone.now", { reserve: sheet.show(stand.reserve, "ratio") }))));
  return [
    h("dl", { class: "side-by-side" }, ...reserves),
    h("div", { class: "takes" }, ...buttons),
    ...proofCosts(sheet, answer),
    h("p", { class: "note" }, sheet.say("setout.answer.rule_note")),
    ...(noRule ? [h("p", { class: "note" }, noRule)] : []),
    h("details", { class: "asks-more" }, h("summary", {}, sheet.say("setout.answer.caption")), table),
  ];
}

/** @param {Sheet} sheet @param {[keyof Stand, Quantity | null]} row @param {Stand[]} stands */
function rowOf(sheet, [key, quantity], stands) {
  const cells = stands.map((stand) => {
    const value = stand[key];
    if (value == null) return "–";
    if (quantity === null) return sheet.say(`setout.choices.elbow.${value}`);
    return quantity === "short_length" ? lengthAt(sheet, key, Number(value)) : sheet.show(Number(value), quantity);
  });
  return [sheet.say(`setout.rows.${key}`), ...cells];
}

/** What it costs that every tape error leaves the arm working. @param {Sheet} sheet @param {SetOutAnswer} answer @returns {Node[]} */
function proofCosts(sheet, { best, without_proof: without }) {
  if (!without) return [];
  const shown = (/** @type {number} */ torque) => sheet.show(torque, "torque");
  const told = { without: shown(without.shaft_torque_n_m) };
  if (!best) return [h("p", { class: "note" }, sheet.say("setout.answer.proof_lacks", told))];
  const cost = shown(best.shaft_torque_n_m - without.shaft_torque_n_m);
  return [h("p", { class: "note" }, sheet.say("setout.answer.proof_costs", { ...told, cost, with: shown(best.shaft_torque_n_m) }))];
}

/** @param {Sheet} sheet @param {SetOutAnswer} answer */
function nothing(sheet, answer) {
  const { nearest } = answer;
  if (!nearest) return [];
  const changes = nearest.changes.map((change, index) => h("li", {}, index === 0 ? h("strong", {}, wayOut(sheet, change)) : wayOut(sheet, change)));
  return [
    h("p", { class: "lead-sentence" }, sheet.say("setout.none.sentence")),
    ...proofCosts(sheet, answer),
    h("ul", { class: "findings" }, ...nearest.exceeded.map((change) => h("li", {}, inTheWay(sheet, change)))),
    ...(changes.length
      ? [h("p", {}, sheet.say("setout.none.changes")), h("ul", { class: "findings changes" }, ...changes)]
      : [h("p", {}, sheet.say(nearest.limit === "step_m" ? "setout.changes.step_m" : "setout.none.no_change"))]),
  ];
}
