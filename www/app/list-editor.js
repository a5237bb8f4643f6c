/**
 * A list of things that are said one after another, each with a button that takes it away.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

/**
 * @param {Sheet} sheet
 * @param {"obstacles" | "means" | "points"} name
 * @param {() => any[]} items
 * @param {() => void} add
 * @param {(index: number) => void} take
 * @param {(sheet: Sheet, index: number) => Part} create
 * @returns {Part}
 */
export function createList(sheet, name, items, add, take, create) {
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.lists.${name}.${key}`, values);
  const list = h("div", {});
  const more = h("button", { type: "button", class: "move", onclick: () => changed(add) }, say("add"));
  const root = h("fieldset", { class: "list", "data-list": name }, h("legend", {}, say("title")), h("p", { class: "note" }, say("note")), list, more);
  /** @type {Part[]} */
  let rows = [];
  /** @type {any[]} */
  let drawn = [];

  /** @param {() => void} change */
  function changed(change) {
    change();
    more.focus();
    sheet.changed();
  }

  function update() {
    const now = items();
    if (now.length !== drawn.length || now.some((item, index) => item !== drawn[index])) {
      drawn = [...now];
      rows = now.map((_, index) => {
        const row = create(sheet, index);
        row.root.append(h("button", { type: "button", class: "quiet", onclick: () => changed(() => take(index)) }, say("remove", { number: index + 1 })));
        return row;
      });
      list.replaceChildren(...rows.map((row) => row.root));
    }
    for (const row of rows) row.update();
  }

  return { root, update };
}

/**
 * A list that is there only while its block is looked at.
 *
 * @param {{ active: boolean }} block
 * @param {Part} list
 * @returns {Part}
 */
export function whileActive(block, list) {
  const root = h("div", { class: "site-lists" }, list.root);

  function update() {
    root.hidden = !block.active;
    if (!root.hidden) list.update();
  }

  return { root, update };
}
