/**
 * What is asked to check how the leaf moves and what protects people. Every block may be absent; its usual values stand in its fields,
 * marked as assumed, once it is looked at.
 *
 * @import { Choice, Group, Item } from "../groups.js"
 */

import { asked, looked } from "../looked.js";
import { windItems } from "../wind-items.js";

/** Numbers of one point of a motor's table: paths below it. */
export const POINT = ["speed_deg_s", "torque_n_m"];

/**
 * A straight line, or the points of a table, which have an editor of their own.
 *
 * @type {Choice}
 */
export const MOTOR_BY = {
  path: "motion.motor.by",
  options: ["line", "table"],
  usual: "line",
  writes: { line: {}, table: {} },
  signs: { table: ["motion.motor.curve"] },
  of: { line: ["motion.motor.stall_torque_n_m", "motion.motor.no_load_speed_deg_s"] },
};

/** @type {Item[]} */
const MOTION = [
  "motion.ramp_up_s",
  "motion.ramp_down_s",
  "motion.slow_open_deg",
  "motion.slow_close_deg",
  "motion.slow_speed_deg_s",
  "motion.coast_drag_n_m",
  "motion.stop_stiffness_n_per_m",
  "motion.supply_resistance_ohm",
  looked("motion.motor", [
    MOTOR_BY,
    "motion.motor.rated_v",
    "motion.motor.supply_v",
    "motion.motor.gear_ratio",
    "motion.motor.gear_efficiency",
    "motion.motor.run_up_s",
  ]),
  looked("motion.duty", [
    "motion.duty.cycles_per_hour",
    "motion.duty.cycles_per_day",
    "motion.duty.rated_cycles_per_hour",
    "motion.duty.rated_cycles_per_day",
  ]),
];

/** @type {Item[]} */
const BREAKAWAY = [
  "breakaway.slip_torque_n_m",
  "breakaway.push_radius_m",
  "breakaway.leaf_moment_n_m",
  "breakaway.link_force_n",
  "breakaway.bracket_force_n",
  "breakaway.gearbox_torque_n_m",
  "breakaway.hold_factor",
  "breakaway.release_factor",
];

/** @type {Item[]} */
const CONTACT = [
  "contact.stiffness_n_per_m",
  "contact.dynamic_limit_n",
  "contact.static_limit_n",
  "contact.response_s",
  "contact.edge_travel_m",
  "contact.near_m",
];

/** @type {Item[]} */
const SITE = [
  ...["site.public", "site.guarded"].map(asked),
  "site.homes",
  ...["site.pedestrian_way", "site.signs_both_faces"].map(asked),
  "site.latch_gap_m",
];

/** @type {Item[]} */
const HOLDING = ["holding.shaft_torque_n_m", "holding.link_force_n", "holding.bracket_force_n", "holding.play_deg"];

/** @type {Group[]} */
export const CHECKS = [
  { name: "motion", step: "movement", items: [looked("motion", MOTION)] },
  { name: "site", step: "protection", items: [looked("site", SITE)] },
  { name: "breakaway", step: "protection", items: [looked("breakaway", BREAKAWAY)] },
  { name: "contact", step: "protection", items: [looked("contact", CONTACT)] },
  { name: "storm", step: "protection", items: [looked("storm", windItems("storm"))] },
  { name: "holding", step: "protection", items: [{ when: "storm.looked_at", is: "yes", items: [looked("holding", HOLDING)] }] },
];

/** How a means of protection works, in the order a person meets them. */
export const KINDS = ["inherent", "inherent_force", "contact", "non_contact", "constant_pressure"];

/** What closes on what. */
export const ZONES = ["leading_edge_closing", "leading_edge_opening", "hinge_side", "bottom", "elbow", "arm_scissors", "behind_leaf"];

/** The movement a means protects in. */
export const WAYS = ["both", "open", "close"];

/** What a sensor is fixed to. */
export const FRAMES = ["none", "ground", "leaf"];

/** Ends and width of what it senses: paths below it. */
export const AREA = ["from_x_m", "from_y_m", "to_x_m", "to_y_m", "half_width_m"];
