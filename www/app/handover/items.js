/**
 * What is asked when the gate is handed over. The core has the ranges; nothing here is ever assumed.
 *
 * @import { Group } from "../groups.js"
 */

import { asked } from "../looked.js";

/** @type {Group[]} */
export const HANDOVER = [
  { name: "settings", step: "hand_over", items: ["settings.close_timer_s"] },
  {
    name: "measured",
    step: "hand_over",
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
    step: "hand_over",
    items: [
      asked("record.isolation_tried"),
      asked("record.lock_off_tried"),
      asked("record.devices_tested"),
      asked("record.release_tried"),
      asked("record.signs_fixed"),
      asked("record.owner_instructed"),
    ],
  },
];

/** Texts, by path; dates are days. */
export const TEXTS = ["number", "revision", "date", "installer", "installer_date", "owner", "owner_date"].map((name) => `record.${name}`);
