/**
 * What is asked: the leaf first and large, the operator, then everything the page has assumed, in groups that open.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Group } from "./groups.js"
 */

import { createChoice } from "./choice.js";
import { h, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { createField } from "./field.js";
import { GROUPS, LEAD } from "./groups.js";
import { createOperatorChoice } from "./operator-choice.js";
import { activePathsOf } from "./session.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createForm(sheet) {
  const lead = LEAD.map((path) => createField(sheet, path, { large: true }));
  const operator = createOperatorChoice(sheet);
  const groups = GROUPS.map((group) => createGroup(sheet, group));
  const start = h("p", { class: "note" }, sheet.say("form.starting_from"));
  const root = h(
    "form",
    { class: "form", part: "form", novalidate: true, autocomplete: "off", onsubmit: (/** @type {Event} */ event) => event.preventDefault() },
    h("h2", {}, sheet.say("form.leaf")),
    start,
    h("div", { class: "lead" }, ...lead.map((field) => field.root)),
    operator.root,
    h("h2", {}, sheet.say("form.assumptions")),
    h("p", { class: "note" }, sheet.say("form.assumptions_note")),
    h("div", { class: "groups" }, ...groups.map((group) => group.root)),
  );
  const parts = [...lead, operator, ...groups];

  function update() {
    start.hidden = !LEAD.some((path) => sheet.session.entry(path).assumed);
    for (const part of parts) part.update();
  }

  return { root, update };
}

/**
 * @param {Sheet} sheet
 * @param {Group} group
 * @returns {Part}
 */
function createGroup(sheet, group) {
  const choice = group.choice ? createChoice(sheet, group.choice) : null;
  const brief = h("span", { class: "brief" });
  const tag = h("span", { class: "tag" });
  const error = h("p", { class: "error", hidden: true });
  const fields = new Map([...group.fields, ...Object.values(group.choice?.fields ?? {}).flat()].map((path) => [path, createField(sheet, path)]));
  // Fields that belong to an option stand under the choice; the others after it.
  const root = h(
    "details",
    { class: "group", part: "group", "data-group": group.name },
    h("summary", {}, h("span", { class: "group-says" }, h("span", { class: "group-name" }, sheet.say(`groups.${group.name}.title`)), " ", brief), tag),
    sheet.strings.has(`groups.${group.name}.note`) ? h("p", { class: "note" }, sheet.say(`groups.${group.name}.note`)) : null,
    error,
    choice?.root ?? null,
    h("div", { class: "fields" }, ...[...fields.values()].map((field) => field.root)),
  );
  const firstKey = [...fields.keys()][0].split(".")[0];

  function update() {
    choice?.update();
    const active = activePathsOf(group, sheet.session);
    for (const [path, field] of fields) {
      field.root.hidden = !active.includes(path);
      if (!field.root.hidden) field.update();
    }
    setText(brief, briefly(sheet, group, active));
    const numbers = active.map((path) => sheet.isAssumed(path));
    const assumed = group.choice ? [sheet.session.choice(group.choice.path).assumed, ...numbers] : numbers;
    tag.hidden = !assumed.includes(true);
    setText(tag, sheet.say(assumed.includes(false) ? "form.partly_assumed" : "form.assumed"));
    // A fault of the group as a whole (an arm that cannot close) stands above its fields.
    const own = sheet.told.filter((fault) => !sheet.session.entries.has(fault.path) && fault.path.split(".")[0] === firstKey);
    error.hidden = own.length === 0;
    setText(error, own.map((fault) => faultSentence(sheet, fault)).join(" "));
    if (own.length || sheet.told.some((fault) => active.includes(fault.path))) root.open = true;
  }

  return { root, update };
}

/**
 * The group's main values in one line, so that an assumption is seen without opening anything.
 *
 * @param {Sheet} sheet
 * @param {Group} group
 * @param {string[]} active
 */
function briefly(sheet, group, active) {
  const values = active.map((path) => {
    const { rule, value } = sheet.session.entry(path);
    return [path.replaceAll(".", "_"), value === null ? "…" : sheet.show(value, rule.quantity)];
  });
  const option = group.choice?.fields ? `_${sheet.session.choice(group.choice.path).value}` : "";
  const key = `groups.${group.name}.brief${option}`;
  return sheet.strings.has(key) ? sheet.say(key, Object.fromEntries(values)) : "";
}
