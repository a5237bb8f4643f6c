/**
 * The points of a motor's table, one after another.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { createField } from "../field.js";
import { createList, whileActive } from "../list-editor.js";
import { POINT } from "./groups.js";
import { POINTS } from "./motor-points.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createMotorEditor(sheet) {
  const { points } = sheet.session;
  return whileActive(points, createList(sheet, "points", () => points.list, () => points.add(), (index) => points.take(index), createPoint));
}

/** @param {Sheet} sheet @param {number} index @returns {Part} */
function createPoint(sheet, index) {
  const fields = POINT.map((name) => createField(sheet, `${POINTS}.${index}.${name}`));
  const name = sheet.say("check.lists.points.item", { number: index + 1 });
  const root = h("fieldset", { "data-point": index }, h("legend", {}, name), h("div", { class: "fields" }, ...fields.map((field) => field.root)));
  return { root, update: () => fields.forEach((field) => field.update()) };
}
