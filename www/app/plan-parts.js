/**
 * Two views of the drawing from above: all of the gate, or the arm as large as it will go. Each step begins with one of them.
 *
 * @import { Sheet } from "./sheet.js"
 */

import { h, setAttribute } from "./dom.js";

/** @typedef {"gate" | "arm"} PlanPart */

/**
 * @param {Sheet} sheet
 * @param {() => void} changed
 */
export function createParts(sheet, changed) {
  const buttons = /** @type {PlanPart[]} */ (["gate", "arm"]).map((part) => ({
    part,
    button: h("button", { type: "button", class: "move", onclick: () => (show(part), changed()) }, sheet.say(`drawing_titles.${part}`)),
  }));
  const root = h("div", { class: "plan-parts", role: "group", "aria-label": sheet.say("drawing_titles.part") }, ...buttons.map(({ button }) => button));

  /** @param {PlanPart} shown */
  function show(shown) {
    sheet.showing.part = shown;
    for (const { part, button } of buttons) setAttribute(button, "aria-pressed", String(part === shown));
  }

  show(/** @type {PlanPart} */ (sheet.showing.part));
  return { root, follow: show };
}
