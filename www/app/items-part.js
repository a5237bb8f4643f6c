/**
 * Items on the page: numbers in a grid, choices with what belongs to the option chosen beneath them. What belongs to another option
 * is not there at all; what was typed into it is kept in the session.
 *
 * @import { Choice, Item } from "./groups.js"
 * @import { Part, Sheet } from "./sheet.js"
 */

import { createChoice } from "./choice.js";
import { h } from "./dom.js";
import { createField } from "./field.js";
import { isWhen } from "./items.js";

/**
 * @param {Sheet} sheet
 * @param {Item[]} items
 * @returns {Part}
 */
export function createItems(sheet, items) {
  const root = h("div", { class: "items" });
  /** @type {Part[]} */
  const parts = [];
  /** @type {HTMLElement | null} */
  let grid = null;
  for (const item of items) {
    if (typeof item === "string") {
      if (!grid) root.append((grid = h("div", { class: "fields" })));
      const field = createField(sheet, item);
      grid.append(field.root);
      parts.push(field);
      continue;
    }
    grid = null;
    const part = isWhen(item) ? createWhen(sheet, item) : createBranch(sheet, item);
    root.append(part.root);
    parts.push(part);
  }

  function update() {
    for (const part of parts) part.update();
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {Choice} choice @returns {Part} */
function createBranch(sheet, choice) {
  const asked = createChoice(sheet, choice);
  const below = createSwitch(sheet, choice.path, choice.of ?? {});
  const root = h("div", { class: "branch" }, asked.root, below.root);

  function update() {
    asked.update();
    below.update();
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {import("./groups.js").When} when @returns {Part} */
function createWhen(sheet, { when, is, items }) {
  return createSwitch(sheet, when, { [is]: items });
}

/**
 * @param {Sheet} sheet
 * @param {string} path of the choice that decides
 * @param {Record<string, Item[]>} of
 * @returns {Part}
 */
function createSwitch(sheet, path, of) {
  const root = h("div", { class: "of" });
  /** @type {Map<string, Part>} */
  const made = new Map();
  /** @type {string | null} */
  let shown = null;

  function update() {
    const option = sheet.session.choice(path).value;
    if (option !== shown) {
      shown = option;
      if (of[option] && !made.has(option)) made.set(option, createItems(sheet, of[option]));
      const part = made.get(option);
      root.replaceChildren(...(part ? [part.root] : []));
      root.hidden = !part;
    }
    made.get(option)?.update();
  }

  update();
  return { root, update };
}
