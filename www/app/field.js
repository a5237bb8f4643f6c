/**
 * One number: label, text input, unit, and beneath it what was understood, where it came from, or what is wrong.
 * The input is plain text: a wheel or an arrow key never changes it.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setAttribute, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { obstacleSide, uncertainInput, wordsKey } from "./paths.js";

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
      entry.type(input.value, sheet.session.system);
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
    const text = shown === entry.typed?.text ? shown : sheet.strings.numbers(shown);
    // Writing the same text would move the caret.
    if (input.value !== text) input.value = text;
    // A keypad of digits has neither a sign nor the marks of feet and inches.
    const digits = (entry.rule.least ?? -1) >= 0 && !(system === "us" && entry.rule.quantity.endsWith("length"));
    setAttribute(input, "inputmode", digits ? "decimal" : "text");
    setText(unit, sheet.unit(entry.rule.quantity));
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

  function resetText() {
    if (entry.start === null) return sheet.say("form.reset_empty");
    return sheet.say("form.reset", { value: sheet.show(entry.start, entry.rule.quantity) });
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
    if (!entry.typed) return sheet.say("form.built_empty", { planned: sheet.mark(planned) });
    return sheet.say("form.built_typed", { understood: ownNote(), planned: sheet.mark(planned) });
  }

  function ownNote() {
    const { system } = sheet.session;
    if (entry.typed && entry.value !== null) {
      const understood = sheet.understood(entry.value, entry.rule.quantity);
      if (entry.typed.system === system) return sheet.say("form.understood", { understood });
      const there = sheet.core.unit(entry.rule.quantity, entry.typed.system);
      return sheet.say("form.typed_as", { understood, typed: `${entry.typed.text} ${there}`.trim() });
    }
    if (entry.value === null && !entry.unread && sheet.strings.has(`${words}.empty`)) return sheet.say(`${words}.empty`);
    return sheet.strings.has(`${words}.hint`) ? sheet.say(`${words}.hint`) : "";
  }

  update();
  return { root, update };
}
