/**
 * The push window as two numbers a person can try, what would open it where it is shut; and the closed leaf held in the storm.
 *
 * @import { Breakaway, Remedy } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingWords } from "../findings.js";
import { figuresList, plainTable } from "../rows.js";
import { verdictMark } from "../verdict-mark.js";
import { findingItems, shown } from "./words.js";

/** @type {Record<string, string>} */
const MARKS = { open: "within", no_limit: "tight", shut: "over", holds: "within", unknown: "tight", gives_way: "over" };

/** A verdict in word and shape. @param {string} state @param {string} words */
export function verdictWord(state, words) {
  return h("p", { class: "check-verdict", "data-state": state }, h("span", { class: "mark-place" }, verdictMark(MARKS[state])), h("strong", {}, words));
}

/** @param {Sheet} sheet @param {Result} result */
export function breakawayParts(sheet, { plan }) {
  const { breakaway } = plan;
  if (!breakaway) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.breakaway.${key}`, values);
  const { trial, highest } = breakaway;
  const steps = /** @type {string[]} */ (sheet.strings.at("check.breakaway.how"));
  const values = { angle: sheet.show(trial.leaf_deg, "angle"), radius: sheet.show(trial.radius_m, "length") };
  const figures = [
    [say("running"), sheet.show(breakaway.running_torque_n_m, "torque")],
    [say("least"), sheet.show(breakaway.least_slip_n_m, "torque")],
    [say("most"), highest ? say(`by.${highest.part}`, { torque: sheet.show(highest.slip_torque_n_m, "torque"), angle: shown(sheet, highest.leaf_deg, "angle") }) : "–"],
    [say("set_open"), shown(sheet, trial.set_open_n, "force")],
    [say("set_close"), shown(sheet, trial.set_close_n, "force")],
  ];
  return [
    h("h3", {}, say("title")),
    h("p", { class: "never" }, findingWords(sheet, { code: "breakaway_not_for_people" })),
    verdictWord(breakaway.state, say(`states.${breakaway.state}`)),
    h("div", { class: "push-window", part: "push-window" },
      push(say("holds"), limit(sheet, trial.must_hold_n, "up")),
      push(say("slips"), trial.must_slip_n === null ? say("unknown") : limit(sheet, trial.must_slip_n, "down"))),
    h("ol", { class: "how" }, ...steps.map((step) => h("li", {}, filled(step, values)))),
    figuresList(figures),
    ...remedyParts(sheet, breakaway.remedies),
    h("p", {}, breakaway.toggle_to_leaf_deg > 0 ? say("toggle", { angle: sheet.show(breakaway.toggle_to_leaf_deg, "angle") }) : say("no_toggle")),
    ...findingItems(sheet, plan, ["breakaway_no_", "breakaway_slips_"]),
  ];
}

/**
 * What is to hold is rounded up, what is to slip down: a try at the shown number is on the careful side.
 *
 * @param {Sheet} sheet @param {number} force_n @param {"up" | "down"} rounding
 */
function limit({ core, session, strings }, force_n, rounding) {
  return strings.numbers(core.show_limit(force_n, "force", session.system, rounding));
}

/** @param {string} words @param {string} number */
function push(words, number) {
  return h("p", {}, h("span", {}, words), " ", h("strong", {}, number));
}

/** @param {string} text @param {Record<string, string>} values */
function filled(text, values) {
  return text.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
}

/** @param {Sheet} sheet @param {Remedy[]} remedies */
function remedyParts(sheet, remedies) {
  if (!remedies.length) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.breakaway.${key}`, values);
  const name = (/** @type {Remedy} */ { change, with: other }) => (other ? say("and", { one: say(`changes.${change}`), other: say(`changes.${other}`) }) : say(`changes.${change}`));
  const rows = remedies.map((remedy) => [
    name(remedy),
    sheet.show(remedy.least_slip_n_m, "torque"),
    remedy.highest_slip_n_m === null ? say("free") : sheet.show(remedy.highest_slip_n_m, "torque"),
    say(remedy.opens ? "opens" : "stays_shut"),
  ]);
  return [
    h("h4", {}, say("remedies")),
    h("p", { class: "note" }, say("remedies_note")),
    plainTable(say("remedies"), [say("change"), say("least"), say("most"), say("outcome")], rows),
  ];
}

/** @param {Sheet} sheet @param {Result} result */
export function holdingParts(sheet, { plan }) {
  const { holding } = plan;
  if (!holding) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.holding.${key}`, values);
  const figures = [
    [say("closed"), sheet.show(holding.closed_torque_n_m, "torque")],
    [say("play", { angle: sheet.show(holding.play_leaf_deg, "angle") }), sheet.show(holding.torque_n_m, "torque")],
    [say(holding.limit_by === "clutch" ? "limit_clutch" : "limit"), shown(sheet, holding.limit_n_m, "torque")],
    [say("link"), sheet.show(holding.link_force_n, "force")],
  ];
  return [
    h("h3", {}, say("title")),
    verdictWord(holding.verdict, say(`states.${holding.verdict}`)),
    h("p", {}, say(holding.lock_needed ? "lock" : "no_lock")),
    figuresList(figures),
  ];
}
