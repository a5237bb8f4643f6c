/**
 * Texts of the title block and the signatures: short lines and days.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { TEXTS } from "./items.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createTexts(sheet) {
  const fields = TEXTS.map((path) => createText(sheet, path));
  const title = sheet.say("handover.texts.title");
  const root = h("fieldset", { class: "texts" }, h("legend", {}, title), h("div", { class: "fields" }, ...fields.map(({ root }) => root)));
  return { root, update: () => fields.forEach(({ update }) => update()) };
}

/** @param {Sheet} sheet @param {string} path @returns {Part} */
function createText(sheet, path) {
  const text = /** @type {{ value: string, typed: boolean }} */ (sheet.session.texts.get(path));
  const name = path.replace("record.", "");
  const id = `field-${path.replace(".", "-")}`;
  const type = name.endsWith("date") ? "date" : "text";
  const input = h("input", { id, type, maxlength: type === "text" ? 80 : null, autocomplete: "off", part: "input", oninput: take });

  function take() {
    Object.assign(text, { value: input.value, typed: true });
    sheet.changed();
  }

  function update() {
    if (input.value !== text.value) input.value = text.value;
  }

  const label = h("label", { for: id }, sheet.say(`handover.texts.${name}`));
  const root = h("div", { class: "field", part: "field", "data-path": path }, h("div", { class: "field-head" }, label), h("div", { class: "field-box" }, input));
  return { root, update };
}
