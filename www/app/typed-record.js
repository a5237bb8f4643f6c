/**
 * What the person has said, as plain data: texts as typed with the units they were typed in, choices, operator, units shown.
 * Reading the same text again gives the same value, so nothing is lost on the way through a record.
 *
 * @import { Session } from "./session.js"
 * @import { System } from "./contract.d.ts"
 *
 * @typedef {{ system: System, operator: string | null, choices: Record<string, string>, typed: Record<string, { text: string, system: System }>,
 *   setout?: import("./setout/ask.js").AskRecord }} TypedRecord
 */

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
    typed: Object.fromEntries(typed),
    setout: session.setout.record(),
  };
}

/**
 * Puts a record back. What the page no longer knows (a field of another version, an operator gone from the list) is left out.
 *
 * @param {Session} session
 * @param {TypedRecord} record
 */
export function applyRecord(session, record) {
  for (const [path, { text, system }] of Object.entries(record.typed ?? {})) {
    session.entries.get(path)?.type(text, system);
  }
  for (const [path, value] of Object.entries(record.choices ?? {})) {
    const choice = session.choices.get(path);
    if (choice) Object.assign(choice, { value, assumed: false });
  }
  session.setout.restore(record.setout);
  const listed = session.operators.some((operator) => operator.id === record.operator);
  if (record.operator === null || listed) session.operatorId = record.operator;
  session.setSystem(record.system === "us" ? "us" : "metric");
}
