/**
 * What was said of the gate: every number and word that takes part, group by group, marked where the page assumed it.
 *
 * @import { Block, Cell } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { FROM_PARTS, GROUPS, LEAD, LEAF_BY } from "../groups.js";
import { written } from "../items.js";
import { memberIndex, wordsKey } from "../paths.js";
import { lengthAt, lineOf } from "../sides.js";
import { head, list, note, pairs, subhead } from "./blocks.js";

/** Told with the leaf, with the operator, and beside the plan. */
const ELSEWHERE = ["leaf", "requirement", "as_built"];

/** @param {Sheet} sheet @returns {Block[]} */
export function surveyBlocks(sheet) {
  const { session } = sheet;
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.survey.${key}`);
  const lead = LEAD.filter((path) => !(session.byParts && FROM_PARTS.includes(path)));
  const more = session.active(GROUPS.filter(({ name }) => name === "leaf").flatMap(({ items }) => items)).paths;
  /** @type {[string, string[], import("../groups.js").Choice[]][]} */
  const groups = [[sheet.say("form.leaf"), [...lead, ...more], session.byParts ? [LEAF_BY] : []]];
  for (const { name, items, step } of GROUPS) {
    if (step === "hand_over" || ELSEWHERE.includes(name)) continue;
    const { paths, choices } = session.active(items);
    // A block that is not looked at has nothing to tell.
    const looked = choices.filter(({ path }) => !(path.endsWith(".looked_at") && session.choice(path).value === "no"));
    const listed = name === "site" ? session.site.activePaths() : name === "room" ? session.around.activePaths() : [];
    if (paths.length + looked.length) groups.push([sheet.say(`groups.${name}.title`), [...paths, ...listed], looked]);
  }
  return [
    head(say("title")),
    note(say("note")),
    ...(session.byParts ? partBlocks(sheet) : []),
    ...groups.flatMap(([title, paths, choices]) => {
      const rows = [...choices.map((choice) => choiceRow(sheet, choice)), ...paths.map((path) => numberRow(sheet, path))];
      const said = rows.filter((row) => row !== null);
      return said.length ? [subhead(title), pairs(said)] : [];
    }),
  ];
}

/** The leaf's parts, a line each. @param {Sheet} sheet @returns {Block[]} */
function partBlocks(sheet) {
  const { members } = sheet.session;
  const label = (/** @type {string} */ path) => sheet.say(`fields.${wordsKey(path)}.label`);
  /** @type {string[][]} */
  const parts = [];
  const add = (/** @type {string} */ path, /** @type {string} */ text) => (parts[memberIndex(path) ?? 0] ??= []).push(text);
  for (const choice of members.activeChoices()) add(choice.path, String(choiceRow(sheet, choice)[1]));
  for (const path of members.activePaths()) {
    const row = numberRow(sheet, path);
    if (row) add(path, `${label(path)} ${row[1]}`);
  }
  const lines = parts.map((texts, index) => `${sheet.say("members.name", { number: index + 1 })}: ${texts.join("; ")}`);
  return [subhead(sheet.say("members.title")), list(lines)];
}

/** @param {Sheet} sheet @param {string} path @returns {[string, Cell] | null} */
function numberRow(sheet, path) {
  const { rule, value } = sheet.session.entry(path);
  if (value === null) return null;
  const shown = lineOf(path) ? lengthAt(sheet, path, value) : sheet.show(value, rule.quantity);
  return [sheet.fieldName(path), mark(sheet, shown, sheet.isAssumed(path))];
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
