/**
 * The way to a field of the job, wherever the page asks for it.
 *
 * @import { Sheet } from "./sheet.js"
 */

import { fieldId } from "./field.js";

/**
 * Opens the group a field is in, and goes to it. What is no field of its own leads to the first of its block: a fault of a whole group, or a
 * number that this kind of hinge or wind does not ask for.
 *
 * @param {ParentNode} scope where the fields are
 * @param {Sheet} sheet
 * @param {string} path
 * @returns {HTMLDetailsElement[]} what was opened for it
 */
export function focusField(scope, sheet, path) {
  const input = placesOf(sheet, path).map((selector) => scope.querySelector(selector)).find((found) => found !== null);
  /** @type {HTMLDetailsElement[]} */
  const opened = [];
  for (let group = input?.closest("details"); group; group = group.parentElement?.closest("details")) {
    if (!group.open) opened.push(group);
    group.open = true;
  }
  if (input instanceof HTMLElement) {
    input.focus();
    input.scrollIntoView({ block: "center" });
  }
  return opened;
}

/** Selectors of where a path may be asked for, the nearest first. @param {Sheet} sheet @param {string} path */
function placesOf(sheet, path) {
  const { session } = sheet;
  const [block, ...rest] = path.split(".");
  // The ratings of a listed operator are changed by choosing another one.
  if (block === "operator" && session.operator) return ["[part=operators] input:checked"];
  const asked = [...session.activePaths(), ...session.activeChoices().map((choice) => choice.path)];
  const near = rest.length > 1 ? asked.filter((other) => other.startsWith(`${block}.${rest[0]}`)) : [];
  const list = `[data-list="${rest.at(-1)}"] > button`;
  const field = (/** @type {string} */ place) => `#${fieldId(place)}, [data-path="${place}"] :is(input, select)`;
  return [field(path), list, ...[...near, ...asked.filter((other) => other.startsWith(block)), `${block}.looked_at`].map(field)];
}
