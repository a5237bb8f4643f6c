/**
 * Survey: three numbers or the leaf's parts, how the gate swings, what it hangs on, the wind, what stands around.
 *
 * @import { Part } from "../sheet.js"
 * @import { CreateStep } from "./index.js"
 */

import { createAroundEditor } from "../around/editor.js";
import { createChoice } from "../choice.js";
import { h } from "../dom.js";
import { createField } from "../field.js";
import { FROM_PARTS, LEAD, LEAF_BY, groupsOf } from "../groups.js";
import { createMembersEditor } from "../members-editor.js";
import { createGroups, form } from "./groups.js";

/** @type {CreateStep} */
export function create({ sheet }) {
  const { session } = sheet;
  const lead = new Map(LEAD.map((path) => [path, createField(sheet, path, { large: true })]));
  const by = createChoice(sheet, LEAF_BY);
  const members = createMembersEditor(sheet);
  // Whoever turns to the parts finds one to begin with, which does not count before something of it is typed; a list that is given empty, or
  // emptied, is a mistake to be told.
  by.root.addEventListener("change", () => {
    if (session.byParts && session.members.list.length === 0) session.members.add();
  });
  const groups = createGroups(sheet, groupsOf("survey"), { room: createAroundEditor(sheet) });
  const start = h("p", { class: "note" }, sheet.say("form.starting_from"));
  const root = form(
    start,
    h("div", { class: "lead" }, ...[...lead.values()].map((field) => field.root)),
    by.root,
    members.root,
    h("h3", {}, sheet.say("form.assumptions")),
    h("p", { class: "note" }, sheet.say("form.assumptions_note")),
    groups.root,
  );

  function update() {
    members.root.hidden = !session.byParts;
    if (session.byParts) members.update();
    for (const [path, field] of lead) {
      field.root.hidden = session.byParts && FROM_PARTS.includes(path);
      if (!field.root.hidden) field.update();
    }
    start.hidden = ![...lead].some(([path, field]) => !field.root.hidden && session.entry(path).assumed);
    by.update();
    groups.update();
  }

  return { root, update };
}
