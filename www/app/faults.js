/**
 * A fault in words: field, what was found, what is allowed in the units shown, an example.
 *
 * @import { Fault } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { wordsKey } from "./paths.js";

/**
 * @param {Sheet} sheet
 * @param {Fault} fault
 * @returns {string}
 */
export function faultSentence(sheet, fault) {
  const key = `faults.${fault.code}`;
  return sheet.say(sheet.strings.has(key) ? key : "faults.other", {
    field: sheet.fieldName(fault.path),
    code: fault.code,
    found: found(sheet, fault),
    allowed: allowed(sheet, fault),
    example: example(sheet, fault),
    ...sheet.shown(fault.values),
  });
}

/** As typed, with the unit it was taken in; a number nobody typed is shown in the units of the page. @param {Sheet} sheet @param {Fault} fault */
function found(sheet, fault) {
  const entry = sheet.session.entries.get(fault.path);
  if (!entry) return fault.found ?? "";
  if (entry.value !== null) return sheet.show(entry.value, entry.rule.quantity);
  return entry.typed?.text ?? fault.found ?? "";
}

/** @param {Sheet} sheet @param {Fault} fault */
function allowed(sheet, fault) {
  const { allowed: limits } = /** @type {any} */ (fault);
  switch (limits?.kind) {
    case "range": {
      const end = (/** @type {number} */ value, /** @type {"up" | "down"} */ rounding) =>
        sheet.limit(value, limits.quantity, rounding);
      if (limits.least == null && limits.most == null) return sheet.say("allowed.any");
      if (limits.least == null) return sheet.say("allowed.most", { most: end(limits.most, "down") });
      if (limits.most == null) return sheet.say("allowed.least", { least: end(limits.least, "up") });
      return sheet.say("allowed.range", { least: end(limits.least, "up"), most: end(limits.most, "down") });
    }
    case "one_of":
      return limits.names.map((/** @type {string} */ name) => word(sheet, fault.path, name)).join(", ");
    case "type":
      return sheet.strings.has(`allowed.types.${limits.name}`) ? sheet.say(`allowed.types.${limits.name}`) : limits.name;
    default:
      return "";
  }
}

/** A word of the contract as the page says it. @param {Sheet} sheet @param {string} path @param {string} name */
function word(sheet, path, name) {
  const key = `choices.${wordsKey(path)}.${name}`;
  return sheet.strings.has(key) ? sheet.say(key) : name;
}

/** @param {Sheet} sheet @param {Fault} fault */
function example(sheet, fault) {
  const rule = sheet.session.entries.get(fault.path)?.rule;
  const value = /** @type {unknown} */ (fault.example ?? rule?.example);
  if (typeof value === "number" && rule) return sheet.show(value, rule.quantity);
  return value === null || value === undefined ? "" : String(value);
}
