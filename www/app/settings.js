/**
 * Units shown. Changing them changes no value.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

const SYSTEMS = /** @type {const} */ (["metric", "us"]);

/**
 * @param {Sheet} sheet
 * @param {(system: "metric" | "us") => void} choose
 * @returns {Part}
 */
export function createSettings(sheet, choose) {
  const radios = SYSTEMS.map((value) => h("input", { type: "radio", name: "units", value, onchange: () => choose(value) }));
  const root = h(
    "fieldset",
    { class: "settings", part: "units" },
    h("legend", {}, sheet.say("settings.units")),
    ...radios.map((radio, index) => h("label", { class: "option" }, radio, h("span", {}, sheet.say(`settings.${SYSTEMS[index]}`)))),
  );

  function update() {
    for (const radio of radios) radio.checked = radio.value === sheet.session.system;
  }

  update();
  return { root, update };
}
