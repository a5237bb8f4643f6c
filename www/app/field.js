/**
 * One number: label, text input, unit, and beneath it what was understood, where it came from, or what is wrong.
 * The input is plain text: a wheel or an arrow key never changes it.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setAttribute, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { createSide } from "./field-side.js";
import { obstacleSide, uncertainInput, wordsKey } from "./paths.js";
import { lengthAt, lineOf } from "./sides.js";

/** A text that says its own unit. */
const WITH_UNIT = /[\p{L}'"′″’”]/u;

/** @param {string} path */
export function fieldId(path) {
  return `field-${path.replaceAll(".", "-")}`;
}

/**
 * @param {Sheet} sheet
 * @param {string} path
 * @param {{ large?: boolean }} [look]
 * @returns {Part}
 */
export function createField(sheet, path, { large = false } = {}) {
  const entry = sheet.session.entry(path);
  const id = fieldId(path);
  const words = uncertainInput(path) === null ? `fields.${wordsKey(path)}` : "sensitivity.stated";
  const name = sheet.fieldName(path);

  const tag = h("span", { class: "tag", id: `${id}-tag` }, sheet.say(large ? "form.example" : "form.assumed"));
  const reset = h("button", { type: "button", class: "quiet", onclick: () => goBack() });
  const unit = h("span", { class: "unit", id: `${id}-unit` });
  const note = h("p", { class: "note", id: `${id}-note` });
  const error = h("p", { class: "error", id: `${id}-error`, hidden: true });
  // A mark is printed with its side, and so is it typed back.
  const side = path.startsWith("as_built.") && lineOf(path) ? createSide(sheet, path, entry) : null;
  const meanings = [0, 1].map((reading) => h("button", { type: "button", class: "means", onclick: () => means(reading) }));
  const asks = h("div", { class: "meant", role: "group", "aria-label": sheet.say("form.meant"), hidden: true }, ...meanings);
  const input = h("input", {
    id,
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    enterkeyhint: "done",
    part: "input",
    oninput: () => {
      entry.type(side ? side.signed(input.value) : input.value, sheet.session.system);
      sheet.session.held = path;
      sheet.changed();
    },
    onfocus: () => sheet.session.visited.add(path),
    // The Enter key ends the typing as leaving does.
    onchange: () => release(),
    onblur: () => release(),
  });

  const label = h("label", { for: id }, sheet.strings.has(`${words}.label`) && !obstacleSide(path) ? sheet.say(`${words}.label`) : name);
  const root = h(
    "div",
    { class: large ? "field large" : "field", part: "field", "data-path": path },
    h("div", { class: "field-head" }, label, tag, reset),
    h("div", { class: "field-box" }, input, unit),
    side?.root ?? null,
    note,
    error,
    asks,
  );

  function release() {
    sheet.session.held = null;
    sheet.changed();
  }

  /** Which reading of a lone comma was meant. @param {number} reading */
  function means(reading) {
    const { text, system } = /** @type {import("./entry.js").Typed} */ (entry.typed);
    entry.type(text, system, reading);
    release();
    input.focus();
  }

  function goBack() {
    entry.reset();
    release();
    input.focus();
  }

  function update() {
    const { system } = sheet.session;
    const shown = entry.text(system);
    side?.follow(shown);
    const text = inputText(shown === entry.typed?.text ? shown : sheet.strings.numbers(shown));
    // Writing the same text would move the caret.
    if (input.value !== text) input.value = text;
    // A keypad of digits has neither a sign nor the marks of feet and inches.
    const digits = (entry.rule.least ?? -1) >= 0 && !(system === "us" && entry.rule.quantity.endsWith("length"));
    setAttribute(input, "inputmode", digits ? "decimal" : "text");
    setText(unit, WITH_UNIT.test(text) ? "" : sheet.unit(entry.rule.quantity));
    tag.hidden = !sheet.isAssumed(path);
    reset.hidden = entry.typed === null;
    const back = resetText();
    setText(reset, back);
    setAttribute(reset, "aria-label", sheet.say("form.reset_field", { field: name, reset: back }));
    // From which line a built dimension is measured is a choice.
    if (path.startsWith("as_built.")) setText(label, sheet.fieldName(path));
    setText(note, noteText());

    const fault = sheet.told.find((told) => told.path === path);
    error.hidden = !fault;
    setText(error, fault ? faultSentence(sheet, fault) : "");
    asks.hidden = fault?.code !== "ambiguous" || !entry.readings;
    if (!asks.hidden) entry.readings?.forEach((value, reading) => setText(meanings[reading], withUnit(value)));
    setAttribute(input, "aria-invalid", fault ? "true" : null);
    const described = [unit.textContent ? unit.id : "", tag.hidden ? "" : tag.id, note.textContent ? note.id : "", fault ? error.id : ""];
    setAttribute(input, "aria-describedby", described.filter(Boolean).join(" ") || null);
  }

  /** Without the sign that the side says; what is being typed is left as it stands. @param {string} text */
  function inputText(text) {
    if (!side) return text;
    return sheet.session.held === path && side.signed(input.value) === text ? input.value : side.unsigned(text);
  }

  function resetText() {
    if (entry.start === null) return sheet.say("form.reset_empty");
    return sheet.say("form.reset", { value: side ? lengthAt(sheet, path, entry.start) : sheet.show(entry.start, entry.rule.quantity) });
  }

  /** With as many digits as an input has. @param {number} value */
  function withUnit(value) {
    const { quantity } = entry.rule;
    return `${sheet.strings.numbers(sheet.core.bare(value, quantity, sheet.session.system))} ${sheet.unit(quantity)}`.trim();
  }

  /** What the number is; once typed, what was understood. */
  function noteText() {
    const planned = sheet.planned(path);
    if (planned === null) return ownNote();
    if (!entry.typed) return sheet.say("form.built_empty", { planned: lengthAt(sheet, path, planned) });
    return sheet.say("form.built_typed", { understood: ownNote(), planned: lengthAt(sheet, path, planned) });
  }

  function ownNote() {
    const { system } = sheet.session;
    if (entry.typed && entry.value !== null) {
      const { quantity } = entry.rule;
      const understood = side ? side.told(sheet.understood(Math.abs(entry.value), quantity)) : sheet.understood(entry.value, quantity);
      if (entry.typed.system === system) return sheet.say("form.understood", { understood });
      const there = sheet.core.unit(entry.rule.quantity, entry.typed.system);
      return sheet.say("form.typed_as", { understood, typed: `${side ? side.unsigned(entry.typed.text) : entry.typed.text} ${there}`.trim() });
    }
    if (entry.value === null && !entry.unread && sheet.strings.has(`${words}.empty`)) return sheet.say(`${words}.empty`);
    return sheet.strings.has(`${words}.hint`) ? sheet.say(`${words}.hint`) : "";
  }

  update();
  return { root, update };
}
