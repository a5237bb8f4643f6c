/**
 * The sheet as the set-out's fields see it: the same words and units, the set-out's own numbers and faults.
 *
 * @import { Told } from "../entry.js"
 * @import { Sheet } from "../sheet.js"
 * @import { Ask } from "./ask.js"
 */

import { rulePath } from "./ask.js";

/** Key of a field's name: without the ends of ranges and the places in lists. @param {string} path */
function nameKey(path) {
  return `setout.fields.${rulePath(path).replace("setout.", "").replaceAll(".", "_")}`;
}

/**
 * @param {Sheet} sheet
 * @param {Ask} ask
 * @param {() => void} changed
 * @returns {Sheet & { takeFaults: (faults: Told[]) => void }}
 */
export function askSheet(sheet, ask, changed) {
  const session = Object.create(sheet.session, {
    entries: { get: () => ask.entries },
    rules: { value: { get: (/** @type {string} */ path) => ask.rules.get(rulePath(path)) } },
    held: { value: null, writable: true },
    visited: { value: new Set() },
    told: { value: new Set() },
  });
  /** @type {Told[]} */
  let told = [];
  return Object.create(sheet, {
    session: { value: session },
    told: { get: () => told },
    changed: { value: changed },
    takeFaults: { value: (/** @type {Told[]} */ faults) => (told = session.tellable(faults)) },
    isAssumed: {
      value: (/** @type {string} */ path) => {
        const entry = session.entry(path);
        return entry.assumed && entry.value !== null && !(ask.given && entry.start !== null);
      },
    },
    fieldName: {
      value: (/** @type {string} */ path) => {
        const field = sheet.say(nameKey(path));
        const [, end] = path.match(/\.([01])$/) ?? [];
        return end ? sheet.say(`setout.ends.${end === "0" ? "from" : "to"}`, { field }) : field;
      },
    },
  });
}
