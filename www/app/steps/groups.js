/**
 * The groups of fields that a step asks, as one form; closed ones follow when there is time, one a task.
 *
 * @import { Group } from "../groups.js"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { createGroup } from "../group.js";
import { Later } from "../later.js";

/**
 * @param {Sheet} sheet
 * @param {Group[]} groups
 * @param {Record<string, Part>} [within] what stands in a group beside its fields, by the group's name
 * @returns {Part}
 */
export function createGroups(sheet, groups, within = {}) {
  const parts = groups.map((group) => {
    const part = createGroup(sheet, group);
    if (within[group.name]) part.root.append(within[group.name].root);
    return part;
  });
  const root = h("div", { class: "groups" }, ...parts.map((part) => part.root));
  const later = new Later();

  function update() {
    for (const part of [...parts, ...Object.values(within)]) part.update();
    later.run(catchUp());
  }

  /** @yields {void} */
  function* catchUp() {
    for (const part of parts) yield part.catchUp();
  }

  return { root, update };
}

/** A form that sends nothing: what is typed counts at once. @param {...(Node | string | null)} children */
export function form(...children) {
  return h("form", { class: "form", part: "form", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() }, ...children);
}

/** All of several parts as one. @param {HTMLElement} root @param {Part[]} parts @returns {Part} */
export function together(root, parts) {
  return { root, update: () => parts.forEach((part) => part.update()) };
}
