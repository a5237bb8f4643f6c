/**
 * One job of the list: opened, renamed, duplicated or deleted. It stands as long as its job does: saving goes on while somebody types
 * a name or presses a button of it, and neither may be lost.
 *
 * @import { Keeper } from "./keeper.js"
 * @import { Row } from "./store.js"
 * @import { Strings } from "../strings.js"
 */

import { h, setAttribute, setText } from "../dom.js";

/** @param {Strings} strings @param {Row} row */
export function nameOf(strings, { document }) {
  return document?.title || strings.say("jobs.nameless");
}

/**
 * A small button that says in words for whoever cannot see its row which job it is about.
 *
 * @param {Strings} strings
 * @param {string} key
 * @param {() => unknown} act
 */
export function rowButton(strings, key, act) {
  const root = h("button", { type: "button", class: "quiet", "data-act": key, onclick: act }, strings.say(`jobs.${key}`));
  /** @param {string} name */
  const update = (name) => setAttribute(root, "aria-label", strings.say(`jobs.${key}_label`, { name }));
  return { root, update };
}

/**
 * @param {Strings} strings
 * @param {Keeper} keeper
 * @param {Row} first
 * @param {(row: Row) => void} deleted told after a deletion
 */
export function createRow(strings, keeper, first, deleted) {
  const { id } = first;
  const when = new Intl.DateTimeFormat(strings.language, { dateStyle: "medium", timeStyle: "short" });
  let row = first;
  const open = h("button", { type: "button", class: "job-open", onclick: () => id === keeper.id || keeper.openRow(id) });
  const input = h("input", { class: "job-rename", hidden: true, maxlength: 200, "aria-label": strings.say("jobs.name"), onkeydown: key, onblur: done });
  const note = h("span", { class: "note" });
  const acts = [
    rowButton(strings, "rename", rename),
    rowButton(strings, "duplicate", () => keeper.duplicate(id, strings.say("jobs.copy_name", { name: nameOf(strings, row) }))),
    rowButton(strings, "delete", () => keeper.remove(id).then(() => deleted(row))),
  ];
  const root = h("li", { "data-id": id }, open, input, note, h("span", { class: "job-acts" }, ...acts.map(({ root }) => root)));

  function rename() {
    input.value = row.document?.title ?? "";
    naming(true);
    input.select();
    input.focus();
  }

  /** @param {boolean} now */
  function naming(now) {
    input.hidden = !now;
    open.hidden = now;
  }

  /** @param {KeyboardEvent} event */
  function key(event) {
    if (event.key !== "Enter" && event.key !== "Escape") return;
    // The key must not press the button that has the focus next.
    event.preventDefault();
    if (event.key === "Enter") done();
    else naming(false);
    acts[0].root.focus();
  }

  function done() {
    if (input.hidden) return;
    naming(false);
    const name = input.value.trim();
    if (name && name !== row.document?.title) keeper.rename(id, name);
  }

  /** @param {Row} now */
  function update(now) {
    row = now;
    const here = id === keeper.id;
    const name = nameOf(strings, row);
    root.classList.toggle("here", here);
    setAttribute(open, "aria-current", here ? "true" : null);
    setText(open, name);
    setText(note, here ? `${strings.say("jobs.here")} · ${when.format(row.at)}` : when.format(row.at));
    for (const act of acts) act.update(name);
  }

  return { root, update };
}
