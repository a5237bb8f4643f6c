/**
 * What the person has said, as plain data: texts as typed with the units they were typed in, choices, operator, units shown.
 * Reading the same text again gives the same value, so nothing is lost on the way through a record.
 *
 * @import { Session } from "./session.js"
 * @import { System } from "./contract.d.ts"
 * @import { Typed } from "./entry.js"
 *
 * @typedef {{ system: System, operator: string | null, choices: Record<string, string>, members: any[], typed: Record<string, Typed>,
 *   texts?: Record<string, string>, given?: string[], ticked?: string[],
 *   setout?: import("./setout/ask.js").AskRecord, site?: import("./check/site-lists.js").SiteRecord,
 *   obstacles?: import("./around/obstacles.js").ObstacleRecord, points?: number }} TypedRecord
 *
 * `given` has the paths of values of the job itself that somebody stated elsewhere, so that they count as said and not as assumed.
 */

import { uncertainInput } from "./paths.js";
import { readRecord } from "./record-reader.js";

/**
 * @param {Session} session
 * @returns {TypedRecord}
 */
export function takeRecord(session) {
  const typed = [...session.entries].filter(([, entry]) => entry.typed).map(([path, entry]) => [path, entry.typed]);
  const choices = [...session.choices].filter(([, choice]) => !choice.assumed).map(([path, choice]) => [path, choice.value]);
  return {
    system: session.system,
    operator: session.operatorId,
    choices: Object.fromEntries(choices),
    members: session.members.list.map(({ base }) => base),
    typed: Object.fromEntries(typed),
    texts: Object.fromEntries([...session.texts].filter(([, { typed }]) => typed).map(([path, { value }]) => [path, value])),
    given: [...session.entries].filter(([, entry]) => entry.given && !entry.typed).map(([path]) => path),
    ticked: [...session.ticked],
    setout: session.setout.record(),
    site: session.site.record(),
    obstacles: session.around.record(),
    points: session.points.record(),
  };
}

/**
 * Puts a record back. What the page no longer knows (a field of another version, an operator gone from the list) is left out.
 *
 * @param {Session} session
 * @param {unknown} given
 * @returns {boolean} whether it was a record through and through, and nothing of another type had to be left out
 */
export function applyRecord(session, given) {
  const { record, whole } = readRecord(given);
  const isMember = (/** @type {string} */ path) => path.startsWith("leaf.members.");
  session.site.restore(record.site);
  session.around.restore(record.obstacles);
  session.points.restore(record.points);
  put(session, record, (path) => !isMember(path));
  // Parts start from the leaf as it then is.
  if (Array.isArray(record.members)) session.members.reset(record.members);
  put(session, record, isMember);
  session.setout.restore(record.setout);
  for (const [path, value] of Object.entries(record.texts ?? {})) Object.assign(session.texts.get(path) ?? {}, { value, typed: true });
  for (const mark of record.ticked ?? []) session.ticked.add(mark);
  const listed = session.operators.some((operator) => operator.id === record.operator);
  if (record.operator === null || listed) session.operatorId = record.operator;
  if (record.system) session.setSystem(record.system);
  return whole;
}

/**
 * @param {Session} session
 * @param {TypedRecord} record
 * @param {(path: string) => boolean} wanted
 */
function put(session, record, wanted) {
  for (const [path, { text, system, meant }] of Object.entries(record.typed)) {
    if (!wanted(path)) continue;
    const input = uncertainInput(path);
    const entry = input !== null && session.rules.has(input) ? session.uncertainty(input) : session.entries.get(path);
    entry?.type(text, system, meant);
  }
  for (const path of record.given ?? []) {
    const entry = wanted(path) ? session.entries.get(path) : undefined;
    if (entry) entry.given = entry.start !== null;
    const choice = wanted(path) ? session.choices.get(path) : undefined;
    if (choice) choice.assumed = false;
  }
  for (const [path, value] of Object.entries(record.choices)) {
    const choice = wanted(path) ? session.choices.get(path) : undefined;
    if (choice) Object.assign(choice, { value, assumed: false });
  }
}
