/**
 * What is asked: the leaf first and large, the operator, then everything the page has assumed, in groups that open.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { createAroundEditor } from "./around/editor.js";
import { createChoice } from "./choice.js";
import { h } from "./dom.js";
import { createField } from "./field.js";
import { Later } from "./later.js";
import { createGroup } from "./group.js";
import { FROM_PARTS, GROUPS, LEAD, LEAF_BY } from "./groups.js";
import { createMembersEditor } from "./members-editor.js";
import { createOperatorChoice } from "./operator-choice.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createForm(sheet) {
  const lead = new Map(LEAD.map((path) => [path, createField(sheet, path, { large: true })]));
  const by = createChoice(sheet, LEAF_BY);
  const members = createMembersEditor(sheet);
  // Whoever turns to the parts finds one to begin with; a list that is given empty, or emptied, is a mistake to be told.
  by.root.addEventListener("change", () => {
    // A first part to type into; it does not count before something of it is typed.
    if (sheet.session.byParts && sheet.session.members.list.length === 0) sheet.session.members.add();
  });
  const operator = createOperatorChoice(sheet);
  const around = createAroundEditor(sheet);
  const groups = GROUPS.filter(({ handover }) => !handover).map((group) => {
    const part = createGroup(sheet, group);
    if (group.name === "room") part.root.append(around.root);
    return part;
  });
  const start = h("p", { class: "note" }, sheet.say("form.starting_from"));
  const root = h(
    "form",
    { class: "form", part: "form", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() },
    h("h2", {}, sheet.say("form.leaf")),
    start,
    h("div", { class: "lead" }, ...[...lead.values()].map((field) => field.root)),
    by.root,
    members.root,
    operator.root,
    h("h2", {}, sheet.say("form.assumptions")),
    h("p", { class: "note" }, sheet.say("form.assumptions_note")),
    h("div", { class: "groups" }, ...groups.map((group) => group.root)),
  );
  const later = new Later();
  const parts = [by, operator, ...groups, around];

  function update() {
    const { session } = sheet;
    members.root.hidden = !session.byParts;
    if (session.byParts) members.update();
    for (const [path, field] of lead) {
      field.root.hidden = session.byParts && FROM_PARTS.includes(path);
      if (!field.root.hidden) field.update();
    }
    start.hidden = ![...lead].some(([path, field]) => !field.root.hidden && session.entry(path).assumed);
    for (const part of parts) part.update();
    later.run(catchUp());
  }

  /**
   * Closed groups follow when there is time, one a task.
   *
   * @yields {void}
   */
  function* catchUp() {
    for (const group of groups) yield group.catchUp();
  }

  return { root, update };
}
