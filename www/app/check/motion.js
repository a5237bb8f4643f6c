/**
 * The leaf through time in numbers: both ways, the motor's runs, limits and stops, the way by hand, duty.
 *
 * @import { Coast, DrivenRun, EndStop, Motion, Quantity } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { figuresList, plainTable } from "../rows.js";
import { driveNote, findingItems, shown, shownAt, sourcesNote } from "./words.js";

const FINDINGS = ["motion_", "ramps_", "coast_", "hand_", "opening_", "closing_", "duty_"];

/** @param {Sheet} sheet @param {Result} result */
export function motionParts(sheet, { plan }) {
  const { motion } = plan;
  if (!motion) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.motion.${key}`, values);
  const { opening, closing, held_back: held } = motion;
  const ways = (/** @type {string} */ name, /** @type {(run: Motion["opening"]) => string} */ cell) => [say(`rows.${name}`), cell(opening), cell(closing)];
  const plain = (/** @type {keyof Motion["opening"]} */ key, /** @type {Quantity} */ quantity) => ways(key, (run) => sheet.show(/** @type {number} */ (run[key]), quantity));
  const rows = [
    plain("time_s", "time"),
    ways("edge_speed_m_s", (run) => shownAt(sheet, run.edge_speed_m_s, "speed", run.edge_speed_leaf_deg)),
    plain("arrival_edge_speed_m_s", "speed"),
    plain("leaf_acceleration_deg_s2", "angular_acceleration"),
    plain("energy_j", "energy"),
    ways("peak", (run) => shownAt(sheet, run.peak.shaft_torque_n_m, "torque", run.peak.leaf_deg)),
    ways("inertial", (run) => shownAt(sheet, run.inertial.shaft_torque_n_m, "torque", run.inertial.leaf_deg)),
    plain("shaft_power_w", "power"),
  ];
  const figures = [
    [say("utilisation"), sheet.show(motion.utilisation, "percent")],
    [say("peak_utilisation"), shown(sheet, motion.peak_utilisation, "percent")],
    [say("held_back"), shownAt(sheet, held.shaft_torque_n_m, "torque", held.leaf_deg)],
  ];
  return [
    h("h3", {}, say("title")),
    plainTable(say("title"), [say("quantity"), say("opening"), say("closing")], rows),
    figuresList(figures),
    ...drivenParts(sheet, motion),
    ...limitParts(sheet, motion),
    ...findingItems(sheet, plan, FINDINGS),
  ];
}

/** @param {Sheet} sheet @param {Motion} motion */
function drivenParts(sheet, { driven }) {
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.driven.${key}`, values);
  if (!driven) return [h("p", { class: "note" }, say("none"))];
  const names = /** @type {const} */ (["opening", "closing", "opening_following", "closing_following"]);
  const row = (/** @type {string} */ name, /** @type {(run: DrivenRun) => string} */ cell) => [say(`rows.${name}`), ...names.map((run) => cell(driven[run]))];
  const rows = [
    row("state", (run) => say(`states.${run.state}`)),
    row("time_s", (run) => sheet.show(run.time_s, "time")),
    row("leaf_deg", (run) => sheet.show(run.leaf_deg, "angle")),
    row("edge_speed_m_s", (run) => sheet.show(run.edge_speed_m_s, "speed")),
    row("arrival_edge_speed_m_s", (run) => sheet.show(run.arrival_edge_speed_m_s, "speed")),
    row("motor_j", (run) => sheet.show(run.energy.motor_j, "energy")),
  ];
  return [
    h("h4", {}, say("title")),
    h("p", { class: "note" }, say("note")),
    plainTable(say("title"), [say("quantity"), ...names.map((name) => say(name))], rows),
  ];
}

/** @param {Sheet} sheet @param {Motion} motion */
function limitParts(sheet, motion) {
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.limits.${key}`, values);
  const { limits, open_stop, closed_stop, hand, duty, drive_inertia_kg_m2: drive } = motion;
  const angle = (/** @type {number} */ value) => sheet.show(value, "angle");
  const stops = (/** @type {string} */ name, /** @type {keyof EndStop} */ key, /** @type {Quantity} */ quantity) => [
    say(`rows.${name}`),
    shown(sheet, closed_stop[key], quantity),
    shown(sheet, open_stop[key], quantity),
  ];
  const coast = (/** @type {Coast} */ run, /** @type {"calm" | "following"} */ wind) =>
    say(`coast.${run[wind]}`, { angle: shown(sheet, run[`${wind}_leaf_deg`], "angle") });
  const rows = [
    [say("rows.limit"), angle(limits.closed_deg), angle(limits.open_deg)],
    [say("rows.slow_from"), angle(limits.slow_closing_from_deg), angle(limits.slow_opening_from_deg)],
    [say("rows.slow_leaf"), angle(limits.slow_closing_leaf_deg), angle(limits.slow_opening_leaf_deg)],
    stops("edge_speed", "edge_speed_m_s", "speed"),
    stops("energy", "energy_j", "energy"),
    stops("force", "force_n", "force"),
    stops("full_edge_speed", "full_edge_speed_m_s", "speed"),
    stops("full_energy", "full_energy_j", "energy"),
    stops("full_force", "full_force_n", "force"),
    [say("rows.coast_calm"), coast(motion.coast_close, "calm"), coast(motion.coast_open, "calm")],
    [say("rows.coast_following"), coast(motion.coast_close, "following"), coast(motion.coast_open, "following")],
  ];
  const figures = [
    [say("slow_speed"), sheet.show(limits.slow_speed_deg_s, "angular_speed")],
    [say("hand"), shownAt(sheet, hand.calm_n, "force", hand.leaf_deg)],
    [say("hand_wind"), sheet.show(hand.against_wind_n, "force")],
    [say("hand_limit"), sheet.show(hand.limit_n, "force")],
    ...(duty
      ? [
          [say("cycle"), sheet.show(duty.cycle_s, "time")],
          [say("running"), shown(sheet, duty.running, "percent")],
          [say("hour"), shown(sheet, duty.hour_utilisation, "percent")],
          [say("day"), shown(sheet, duty.day_utilisation, "percent")],
        ]
      : []),
  ];
  return [
    h("h4", {}, say("title")),
    h("p", { class: "note" }, say("note")),
    plainTable(say("title"), [say("quantity"), say("closed"), say("open")], rows),
    driveNote(sheet, "limits", drive),
    figuresList(figures),
    sourcesNote(sheet, [hand.source]),
  ];
}
