/**
 * Limits, what the controller is told, and the push that tries the breakaway.
 *
 * @import { Block, Cell } from "./blocks.js"
 * @import { Quantity } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { head, line, note, pairs, subhead, table } from "./blocks.js";

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function settingBlocks(sheet, result) {
  return [...limitBlocks(sheet, result), ...enterBlocks(sheet, result), ...pushBlocks(sheet, result)];
}

/** @param {Sheet} sheet */
function shower(sheet) {
  return (/** @type {number | null | undefined} */ value, /** @type {Quantity} */ quantity) => (value == null ? "" : sheet.show(value, quantity));
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function limitBlocks(sheet, { calculation, plan: { motion } }) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.limits.${key}`);
  const angle = (/** @type {number} */ value) => sheet.show(value, "angle");
  const [closed, open] = calculation.mark_out().limits;
  const rows = /** @type {const} */ ([["closed", closed], ["open", open]]).map(([name, limit]) => [
    say(name), angle(limit.leaf_deg), angle(limit.shaft_deg), angle(limit.crank_direction_deg),
  ]);
  if (motion && motion.limits.slow_opening_from_deg !== motion.limits.open_deg) {
    rows.push([say("slow_opening"), angle(motion.limits.slow_opening_leaf_deg), angle(motion.limits.slow_opening_from_deg), "–"]);
  }
  if (motion && motion.limits.slow_closing_from_deg !== motion.limits.closed_deg) {
    rows.push([say("slow_closing"), angle(motion.limits.slow_closing_leaf_deg), angle(motion.limits.slow_closing_from_deg), "–"]);
  }
  return [head(say("title")), table([say("title"), say("leaf"), say("shaft"), say("crank")], rows, "numbers")];
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function enterBlocks(sheet, { job, plan }) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.settings.${key}`);
  const shown = shower(sheet);
  const rule = (/** @type {string} */ path) => sheet.session.rules.get(path)?.default;
  const { motion } = plan;
  const twice = (/** @type {string} */ one, /** @type {string} */ other) => (one && other ? `${one}; ${other}` : "");
  // In the order of the work, whatever a maker's menu is like.
  /** @type {[string, [string, Cell][]][]} */
  const groups = [
    [
      "travel",
      [
        [say("hand"), sheet.say(`choices.hand.${job.hand ?? "right"}`)],
        [say("length"), shown(job.leaf.length_m, "length")],
        [say("mass"), shown(job.leaf.mass_kg ?? plan.members?.mass_kg, "mass")],
        [say("speed"), twice(shown(job.operator.shaft_speed_deg_s, "angular_speed"), shown(motion?.limits.slow_speed_deg_s, "angular_speed"))],
      ],
    ],
    [
      "time",
      [
        [say("ramps"), twice(shown(job.motion?.ramp_up_s ?? rule("motion.ramp_up_s"), "time"), shown(job.motion?.ramp_down_s ?? rule("motion.ramp_down_s"), "time"))],
        [say("time"), twice(shown(motion?.opening.time_s, "time"), shown(motion?.closing.time_s, "time"))],
        [say("timer"), shown(job.settings?.close_timer_s, "time")],
      ],
    ],
    [
      "force",
      [
        [say("slip"), shown(job.breakaway?.slip_torque_n_m, "torque")],
        [say("class"), plan.entrapment?.class ?? say("undecided")],
      ],
    ],
  ];
  return [head(say("title")), note(say("note")), ...groups.flatMap(([name, rows]) => [subhead(say(`groups.${name}`)), pairs(rows)])];
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function pushBlocks(sheet, { plan: { breakaway } }) {
  if (!breakaway) return [];
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.push.${key}`, values);
  const shown = shower(sheet);
  const { trial, highest, least_slip_n_m: least } = breakaway;
  /** @type {[string, Cell][]} */
  const rows = [
    [say("least"), shown(least, "torque")],
    [say("most"), shown(highest?.slip_torque_n_m, "torque") || say("unknown")],
    [say("must_hold"), shown(trial.must_hold_n, "force")],
    [say("must_slip"), shown(trial.must_slip_n, "force") || say("unknown")],
  ];
  if (trial.set_open_n != null) rows.push([say("set"), `${shown(trial.set_open_n, "force")}; ${shown(trial.set_close_n, "force")}`]);
  return [
    head(say("title")),
    note(say("note", { angle: shown(trial.leaf_deg, "angle"), radius: shown(trial.radius_m, "length") })),
    pairs(rows),
    ...(breakaway.state === "shut" ? [line(sheet.say("findings.breakaway_no_window", { least: shown(least, "torque"), most: shown(highest?.slip_torque_n_m, "torque") }))] : []),
  ];
}
