/**
 * Units shown, and apart from them how large all of it is. Changing them changes no value.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

const SYSTEMS = /** @type {const} */ (["metric", "us"]);
const LAYOUTS = ["usual", "field", "projector"];

/**
 * @param {Sheet} sheet
 * @param {(system: "metric" | "us") => void} choose
 * @param {(layout: string) => void} chooseLayout
 * @returns {Part & { layout: HTMLElement }}
 */
export function createSettings(sheet, choose, chooseLayout) {
  const radios = SYSTEMS.map((value) => h("input", { type: "radio", name: "units", value, onchange: () => choose(value) }));
  const options = LAYOUTS.map((value) => h("option", { value }, sheet.say(`settings.${value}`)));
  const layout = h("select", { onchange: () => chooseLayout(layout.value) }, ...options);
  const root = h(
    "fieldset",
    { class: "settings", part: "units" },
    h("legend", {}, sheet.say("settings.units")),
    ...radios.map((radio, index) => h("label", { class: "option" }, radio, h("span", {}, sheet.say(`settings.${SYSTEMS[index]}`)))),
  );

  function update() {
    for (const radio of radios) radio.checked = radio.value === sheet.session.system;
    layout.value = LAYOUTS.includes(sheet.layout) ? sheet.layout : LAYOUTS[0];
  }

  update();
  return { root, layout: h("label", { class: "settings", part: "layout" }, sheet.say("settings.layout"), layout), update };
}
