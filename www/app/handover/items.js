/**
 * What is asked when the gate is handed over. The core has the ranges; nothing here is ever assumed.
 *
 * @import { Choice, Group } from "../groups.js"
 */

/** Yes, no, or not yet: silence is no answer. @param {string} path @returns {Choice} */
function tried(path) {
  return { path, options: ["open", "yes", "no"], usual: "open", writes: { open: {}, yes: { [path]: true }, no: { [path]: false } } };
}

/** @type {Group[]} */
export const HANDOVER = [
  { name: "settings", handover: true, items: ["settings.close_timer_s"] },
  {
    name: "measured",
    handover: true,
    items: [
      "record.shaft_travel_deg",
      "record.open_leaf_deg",
      "record.opening_s",
      "record.closing_s",
      "record.close_timer_s",
      "record.pull_open_n",
      "record.pull_close_n",
      "record.pull_radius_m",
      "record.pull_leaf_deg",
      "record.slip_open_n",
      "record.slip_close_n",
      "record.dynamic_force_n",
      "record.static_force_n",
      "record.motor_v",
      "record.rod_ohm",
    ],
  },
  {
    name: "tried",
    handover: true,
    items: [
      tried("record.isolation_tried"),
      tried("record.lock_off_tried"),
      tried("record.devices_tested"),
      tried("record.release_tried"),
      tried("record.signs_fixed"),
      tried("record.owner_instructed"),
    ],
  },
];

/** Texts, by path; dates are days. */
export const TEXTS = ["number", "revision", "date", "installer", "installer_date", "owner", "owner_date"].map((name) => `record.${name}`);
