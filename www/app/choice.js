/**
 * A choice between words: radio buttons with a finger's room, or a list where there are many.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { wordsKey } from "./paths.js";

/** More options than this are a list. */
const BUTTONS = 5;

/**
 * @param {Sheet} sheet
 * @param {import("./groups.js").Choice} choice
 * @returns {Part}
 */
export function createChoice(sheet, choice) {
  const { path, options } = choice;
  const chosen = sheet.session.choice(path);
  const words = `choices.${wordsKey(path)}`;
  const tag = h("span", { class: "tag" }, sheet.say("form.assumed"));
  const note = h("p", { class: "note" });
  const how = h("ol", { class: "how" });
  const error = h("p", { class: "error", hidden: true });
  const says = (/** @type {string} */ option) => sheet.say(sheet.strings.has(`${words}.${option}`) ? `${words}.${option}` : `choices.answers.${option}`);
  const input = options.length > BUTTONS ? createList() : createRadios();
  const root = h(
    "fieldset",
    { class: "choice", "data-path": path },
    h("legend", {}, sheet.say(`${words}.label`), " ", tag),
    ...input.roots,
    note,
    how,
    error,
  );
  let explained = "";

  /** @param {string} value */
  function choose(value) {
    chosen.value = value;
    chosen.assumed = false;
    sheet.changed();
  }

  function createRadios() {
    const radios = options.map((value) => h("input", { type: "radio", name: path, value, onchange: () => choose(value) }));
    const roots = radios.map((radio, index) => h("label", { class: "option" }, radio, h("span", {}, says(options[index]))));
    return { roots, show: () => radios.forEach((radio) => (radio.checked = radio.value === chosen.value)) };
  }

  function createList() {
    const items = options.map((value) => h("option", { value }, says(value)));
    const list = h("select", { "aria-label": sheet.say(`${words}.label`), onchange: () => choose(list.value) }, ...items);
    return { roots: [list], show: () => void (list.value = chosen.value) };
  }

  /** What to know about the option, and how to go about it. */
  function explain() {
    explained = chosen.value;
    const said = sheet.strings.at(`${words}.notes.${chosen.value}`) ?? sheet.strings.at(`${words}.note`) ?? "";
    setText(note, said);
    note.hidden = said === "";
    const steps = /** @type {string[]} */ (sheet.strings.at(`${words}.how.${chosen.value}`) ?? []);
    how.replaceChildren(...steps.map((step) => h("li", {}, step)));
    how.hidden = steps.length === 0;
  }

  function update() {
    input.show();
    if (explained !== chosen.value) explain();
    tag.hidden = !sheet.isChoiceAssumed(choice);
    const fault = sheet.told.find((told) => told.path === path);
    error.hidden = !fault;
    setText(error, fault ? faultSentence(sheet, fault) : "");
  }

  update();
  return { root, update };
}
