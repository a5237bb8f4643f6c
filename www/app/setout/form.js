/**
 * What is fixed and what is free: ranges side by side, limits, areas to stay out of, what a tape can set, and the aim.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Ask } from "./ask.js"
 */

import { h, setText } from "../dom.js";
import { createField } from "../field.js";
import { ENDS } from "./ask.js";
import { CHOICES, LIMITS, OF_AIM, RANGES } from "./usual.js";

/**
 * @param {Sheet} own the set-out's own sheet
 * @param {Ask} ask
 * @returns {Part}
 */
export function createAskForm(own, ask) {
  const ranges = RANGES.map((name) => createRange(own, [0, 1].map((end) => `setout.${name}.${end}`), own.say(`setout.fields.${name}`)));
  const limits = LIMITS.map((name) => createField(own, `setout.${name}`));
  const choices = Object.keys(CHOICES).map((name) => createWords(own, ask, name));
  const ofAim = Object.entries(OF_AIM).flatMap(([aim, names]) => names.map((name) => ({ aim, field: createField(own, `setout.${name}`) })));
  const areas = createAreas(own, ask);
  const root = h(
    "form",
    { class: "ask", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() },
    h("h3", {}, own.say("setout.free")),
    h("p", { class: "note" }, own.say("setout.free_note")),
    ...ranges.map((range) => range.root),
    h("h3", {}, own.say("setout.kept")),
    h("div", { class: "fields" }, ...limits.map((field) => field.root)),
    areas.root,
    ...choices.map((choice) => choice.root),
    h("div", { class: "fields" }, ...ofAim.map(({ field }) => field.root)),
  );

  function update() {
    for (const part of [...ranges, ...limits, areas, ...choices]) part.update();
    for (const { aim, field } of ofAim) {
      field.root.hidden = ask.choice("aim").value !== aim;
      if (!field.root.hidden) field.update();
    }
  }

  return { root, update };
}

/**
 * Two ends of a range under one name. Each says its whole name to those who do not see the pair.
 *
 * @param {Sheet} own
 * @param {string[]} paths
 * @param {string} name
 * @returns {Part}
 */
function createRange(own, paths, name) {
  const ends = ["from", "to"].map((end, index) => {
    const field = createField(own, paths[index]);
    const label = /** @type {HTMLElement} */ (field.root.querySelector("label"));
    const input = /** @type {HTMLElement} */ (field.root.querySelector("input"));
    input.setAttribute("aria-label", own.fieldName(paths[index]));
    setText(label, own.say(`setout.end.${end}`));
    return field;
  });
  const root = h("fieldset", { class: "range" }, h("legend", {}, name), ...ends.map((field) => field.root));
  return { root, update: () => ends.forEach((field) => field.update()) };
}

/**
 * A choice between words that are the set-out's own.
 *
 * @param {Sheet} own
 * @param {Ask} ask
 * @param {string} name
 * @returns {Part}
 */
function createWords(own, ask, name) {
  const chosen = ask.choice(name);
  const options = chosen.start === "own" ? ["own", ...CHOICES[name]] : CHOICES[name];
  const tag = h("span", { class: "tag" }, own.say("form.assumed"));
  const radios = options.map((value) => h("input", { type: "radio", name: `setout-${name}`, value, onchange: () => choose(value) }));
  const root = h(
    "fieldset",
    { class: "choice", "data-path": `setout.${name}` },
    h("legend", {}, own.say(`setout.choices.${name}.label`), " ", tag),
    ...radios.map((radio, index) => h("label", { class: "option" }, radio, h("span", {}, own.say(`setout.choices.${name}.${options[index]}`)))),
  );

  /** @param {string} value */
  function choose(value) {
    Object.assign(chosen, { value, assumed: false });
    own.changed();
  }

  function update() {
    for (const radio of radios) radio.checked = radio.value === chosen.value;
    tag.hidden = !chosen.assumed || ask.given !== null;
  }

  return { root, update };
}

/**
 * Areas the arm stays out of: post, wall, kerb, drive.
 *
 * @param {Sheet} own
 * @param {Ask} ask
 * @returns {Part}
 */
function createAreas(own, ask) {
  const list = h("div", { class: "areas" });
  const add = h("button", { type: "button", class: "move", onclick: () => (ask.addKeepOut(), own.changed()) }, own.say("setout.add_area"));
  const root = h("fieldset", { class: "keep-out" }, h("legend", {}, own.say("setout.areas")), h("p", { class: "note" }, own.say("setout.areas_note")), list, add);
  /** @type {Part[]} */
  let rows = [];
  /** The entries that are shown; others have to be built anew. @type {unknown[]} */
  let shown = [];

  function update() {
    const paths = Array.from({ length: ask.keepOuts }, (_, index) => ENDS.map((end) => `setout.keep_out.${index}.${end}`));
    const entries = paths.flat().map((path) => ask.entries.get(path));
    if (entries.length !== shown.length || entries.some((entry, index) => entry !== shown[index])) {
      shown = entries;
      rows = paths.flatMap(([left, right, low, high], index) => [
        createRange(own, [left, right], own.say("setout.area_side", { number: index + 1, side: own.say("setout.fields.keep_out_x_m") })),
        createRange(own, [low, high], own.say("setout.area_side", { number: index + 1, side: own.say("setout.fields.keep_out_y_m") })),
        takeAway(index),
      ]);
      list.replaceChildren(...rows.map((row) => row.root));
    }
    for (const row of rows) row.update();
  }

  /** @param {number} index @returns {Part} */
  function takeAway(index) {
    const press = () => {
      ask.removeKeepOut(index);
      own.changed();
      add.focus();
    };
    const root = h("button", { type: "button", class: "quiet", onclick: press }, own.say("setout.remove_area", { number: index + 1 }));
    return { root, update: () => {} };
  }

  return { root, update };
}
