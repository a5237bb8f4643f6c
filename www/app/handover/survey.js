/**
 * What was said of the gate: every number and word that takes part, group by group, marked where the page assumed it.
 *
 * @import { Block, Cell } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { FROM_PARTS, GROUPS, LEAD, LEAF_BY } from "../groups.js";
import { written } from "../items.js";
import { wordsKey } from "../paths.js";
import { head, note, pairs, subhead } from "./blocks.js";

/** Told with the leaf, and with the operator. */
const ELSEWHERE = ["leaf", "requirement"];

/** @param {Sheet} sheet @returns {Block[]} */
export function surveyBlocks(sheet) {
  const { session } = sheet;
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.survey.${key}`);
  const lead = LEAD.filter((path) => !(session.byParts && FROM_PARTS.includes(path)));
  const more = session.active(GROUPS.filter(({ name }) => name === "leaf").flatMap(({ items }) => items)).paths;
  /** @type {[string, string[], import("../groups.js").Choice[]][]} */
  const groups = [[sheet.say("form.leaf"), [...lead, ...more], session.byParts ? [LEAF_BY] : []]];
  if (session.byParts) groups.push([sheet.say("members.title"), session.members.activePaths(), session.members.activeChoices()]);
  for (const { name, items, handover } of GROUPS) {
    if (handover || ELSEWHERE.includes(name)) continue;
    const { paths, choices } = session.active(items);
    // A block that is not looked at has nothing to tell.
    const looked = choices.filter(({ path }) => !(path.endsWith(".looked_at") && session.choice(path).value === "no"));
    if (paths.length + looked.length) groups.push([sheet.say(`groups.${name}.title`), paths, looked]);
  }
  return [
    head(say("title")),
    note(say("note")),
    ...groups.flatMap(([title, paths, choices]) => {
      const rows = [...choices.map((choice) => choiceRow(sheet, choice)), ...paths.map((path) => numberRow(sheet, path))];
      const said = rows.filter((row) => row !== null);
      return said.length ? [subhead(title), pairs(said)] : [];
    }),
  ];
}

/** @param {Sheet} sheet @param {string} path @returns {[string, Cell] | null} */
function numberRow(sheet, path) {
  const { rule, value } = sheet.session.entry(path);
  if (value === null) return null;
  return [sheet.fieldName(path), mark(sheet, sheet.show(value, rule.quantity), sheet.isAssumed(path))];
}

/** @param {Sheet} sheet @param {import("../groups.js").Choice} choice @returns {[string, Cell]} */
function choiceRow(sheet, choice) {
  const { value } = sheet.session.choice(choice.path);
  const words = `choices.${wordsKey(choice.path)}`;
  const assumed = Object.keys(written(choice, value)).length > 0 && sheet.isChoiceAssumed(choice);
  return [sheet.say(`${words}.label`), mark(sheet, sheet.say(`${words}.${value}`), assumed)];
}

/** @param {Sheet} sheet @param {string} value @param {boolean} assumed */
function mark(sheet, value, assumed) {
  return assumed ? sheet.say("handover.paper.survey.marked", { value }) : value;
}
