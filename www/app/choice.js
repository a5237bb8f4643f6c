/**
 * A choice between the contract's words: radio buttons with a finger's room.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

/**
 * @param {Sheet} sheet
 * @param {import("./groups.js").Choice} choice
 * @returns {Part}
 */
export function createChoice(sheet, { path, options }) {
  const chosen = sheet.session.choice(path);
  const words = `choices.${path.replaceAll(".", "_")}`;
  const tag = h("span", { class: "tag" }, sheet.say("form.assumed"));
  const radios = options.map((value) =>
    h("input", { type: "radio", name: path, value, onchange: () => choose(value) }),
  );
  const root = h(
    "fieldset",
    { class: "choice", "data-path": path },
    h("legend", {}, sheet.say(`${words}.label`), " ", tag),
    ...radios.map((radio, index) => h("label", { class: "option" }, radio, h("span", {}, sheet.say(`${words}.${options[index]}`)))),
  );

  /** @param {string} value */
  function choose(value) {
    chosen.value = value;
    chosen.assumed = false;
    sheet.changed();
  }

  function update() {
    for (const radio of radios) radio.checked = radio.value === chosen.value;
    tag.hidden = !chosen.assumed;
  }

  update();
  return { root, update };
}
