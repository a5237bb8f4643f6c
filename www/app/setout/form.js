/**
 * What is fixed and what is free: ranges side by side, limits, what a tape can set, and the aim.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Ask } from "./ask.js"
 */

import { h, setText } from "../dom.js";
import { createField } from "../field.js";
import { CHOICES, LIMITS, OF_AIM, RANGES, USUAL_AROUND } from "./usual.js";

/**
 * @param {Sheet} own the set-out's own sheet
 * @param {Ask} ask
 * @param {() => any} job the job as it is said, which may have what stands around
 * @returns {Part}
 */
export function createAskForm(own, ask, job) {
  const ranges = RANGES.map((name) => createRange(own, [0, 1].map((end) => `setout.${name}.${end}`), own.say(`setout.fields.${name}`)));
  const limits = LIMITS.map((name) => createField(own, `setout.${name}`));
  const choices = Object.keys(CHOICES).map((name) => createWords(own, ask, name));
  const ofAim = Object.entries(OF_AIM).flatMap(([aim, names]) => names.map((name) => ({ aim, field: createField(own, `setout.${name}`) })));
  const around = h("p", { class: "note" });
  const root = h(
    "form",
    { class: "ask", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() },
    h("p", { class: "note" }, own.say("setout.free_note")),
    ...ranges.map((range) => range.root),
    h("h3", {}, own.say("setout.kept")),
    h("div", { class: "fields" }, ...limits.map((field) => field.root)),
    around,
    ...choices.map((choice) => choice.root),
    h("div", { class: "fields" }, ...ofAim.map(({ field }) => field.root)),
  );

  function update() {
    for (const part of [...ranges, ...limits, ...choices]) part.update();
    const assumed = "obstacles" in ask.around(job());
    setText(around, assumed ? own.say("setout.around_assumed", assumedPost(own)) : own.say("setout.around"));
    for (const { aim, field } of ofAim) {
      field.root.hidden = ask.choice("aim").value !== aim;
      if (!field.root.hidden) field.update();
    }
  }

  return { root, update };
}

/** How far the assumed post reaches, as a tape has it. @param {Sheet} own */
function assumedPost(own) {
  const [{ x_m: [behind, before], y_m: [, side] }] = USUAL_AROUND;
  return { behind: own.tape(-behind), before: own.tape(before), side: own.tape(side) };
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
