/**
 * What keeps a number from being counted, in words: which fields wait, and which parts are begun.
 *
 * @import { Sheet } from "./sheet.js"
 */

/** As many fields are named as a line has room for. */
const NAMED = 3;

/**
 * That the result shown is an old one, and which fields the page waits for.
 *
 * @param {Sheet} sheet
 */
export function oldSentence(sheet) {
  const fields = [...new Set(sheet.faults.map((fault) => placeOf(sheet, fault.path)))];
  const more = fields.length - NAMED;
  const named = more > 1 ? [...fields.slice(0, NAMED), sheet.say("verdict.more", { count: more })] : fields;
  return sheet.say(sheet.result ? "verdict.old" : "verdict.waiting", { fields: sheet.strings.list(named) });
}

/**
 * What was begun and is not counted, each with what it needs; empty where nothing was.
 *
 * @param {Sheet} sheet
 */
export function begunSentence(sheet) {
  if (sheet.leftOut.length === 0) return "";
  const parts = sheet.leftOut.map(({ path, faults }) => {
    const fields = [...new Set(faults.map((fault) => placeOf(sheet, fault.path)))];
    return sheet.say("verdict.begun.part", { part: placeOf(sheet, path.split(".")[0]), fields: sheet.strings.list(fields) });
  });
  return sheet.say("verdict.begun.line", { parts: sheet.strings.list(parts) });
}

/** Blocks that are asked for under the name of another group. @type {Record<string, string>} */
const GROUP_OF = { obstacles: "room", operator: "body" };

/** What a field or a part of the job is called. @param {Sheet} sheet @param {string} path */
export function placeOf(sheet, path) {
  if (path === "leaf.members") return sheet.say("members.title");
  const name = sheet.fieldName(path);
  if (name !== path) return name;
  const list = `check.lists.${path.split(".").at(-1)}.title`;
  if (sheet.strings.has(list)) return sheet.say(list);
  const block = path.split(".")[0];
  const group = `groups.${GROUP_OF[block] ?? block}.title`;
  return sheet.strings.has(group) ? sheet.say(group) : path;
}
