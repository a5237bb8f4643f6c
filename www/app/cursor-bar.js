/**
 * Buttons that move the leaf, and what holds at its angle.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Quantity } from "./contract.d.ts"
 */

import { h, setText } from "./dom.js";

/** @type {[string, Quantity][]} */
const READINGS = [
  ["shaft_torque_open_n_m", "torque"],
  ["shaft_torque_close_n_m", "torque"],
  ["shaft_deg", "angle"],
  ["ratio", "ratio"],
  ["lever_m", "short_length"],
  ["transmission_deg", "angle"],
  ["link_force_open_n", "force"],
  ["link_force_close_n", "force"],
];

/** Said while the curve shows them. @type {[string, Quantity][]} */
const HELD = [
  ["overrun_open_n_m", "torque"],
  ["overrun_close_n_m", "torque"],
  ["holding_n_m", "torque"],
];
const ALL = [...READINGS, ...HELD];

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createCursorBar(sheet) {
  const { cursor } = sheet;
  const angle = h("strong", { class: "angle" });
  const values = ALL.map(() => h("dd", {}));
  const readings = ALL.map(([name], index) => h("div", {}, h("dt", {}, sheet.say(`columns.${name}`)), values[index]));
  const deciding = button(sheet, "deciding", () => cursor.toDeciding());
  const root = h(
    "div",
    { class: "cursor-bar", part: "cursor" },
    h(
      "div",
      { class: "moves", role: "group", "aria-label": sheet.say("cursor.title") },
      h(
        "div",
        { class: "steps" },
        button(sheet, "less", () => cursor.step(-1), "−"),
        angle,
        button(sheet, "more", () => cursor.step(1), "+"),
      ),
      h(
        "div",
        { class: "places" },
        button(sheet, "closed", () => cursor.moveTo(0)),
        deciding,
        button(sheet, "open", () => cursor.moveTo(cursor.openDeg)),
      ),
    ),
    h("dl", { class: "readings" }, ...readings),
  );

  function update() {
    if (!sheet.result) return;
    const pose = /** @type {any} */ (sheet.result.calculation.pose(cursor.leafDeg));
    setText(angle, sheet.show(cursor.leafDeg, "angle"));
    readings.forEach((reading, index) => (reading.hidden = index >= READINGS.length && !sheet.showing.overrun));
    ALL.forEach(([name, quantity], index) => setText(values[index], pose[name] === null ? "–" : sheet.show(pose[name], quantity)));
    deciding.setAttribute("aria-pressed", String(cursor.followsDeciding));
  }

  return { root, update };
}

/**
 * What the sliders say at the cursor.
 *
 * @param {Sheet} sheet
 */
export function cursorSentence(sheet) {
  if (!sheet.result) return "";
  const pose = /** @type {any} */ (sheet.result.calculation.pose(sheet.cursor.leafDeg));
  return sheet.say("cursor.value", {
    angle: sheet.show(sheet.cursor.leafDeg, "angle"),
    opening: sheet.show(pose.shaft_torque_open_n_m, "torque"),
    closing: sheet.show(pose.shaft_torque_close_n_m, "torque"),
  });
}

/**
 * @param {Sheet} sheet
 * @param {string} name
 * @param {() => void} press
 * @param {string} [sign] shown instead of the name
 */
function button(sheet, name, press, sign) {
  const label = sheet.say(`cursor.${name}`);
  return h("button", { type: "button", class: `move ${name}`, onclick: press, "aria-label": sign ? label : null }, sign ?? label);
}
