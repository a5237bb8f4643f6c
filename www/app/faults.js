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
  const values = {
    field: fault.path === "" ? sheet.say("faults.whole") : sheet.fieldName(fault.path),
    code: fault.code,
    found: found(sheet, fault),
    allowed: allowed(sheet, fault),
    example: example(sheet, fault),
    ...sheet.shown(fault.values),
  };
  return withoutHoles(sheet, sheet.strings.has(key) ? key : "faults.other", values);
}

/**
 * What the key says, without the sentences of it that nobody has a value for. Without the first one nothing would be said: another
 * stands for it, that needs no more than the field.
 *
 * @param {Sheet} sheet
 * @param {string} key
 * @param {Record<string, string>} values
 */
function withoutHoles(sheet, key, values) {
  const names = (/** @type {string} */ text) => [...text.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
  const hasHole = (/** @type {string} */ text) => names(text).some((name) => !values[name]);
  const [first, ...others] = sheet.strings.at(key).split(". ");
  const kept = [hasHole(first) ? sheet.strings.at("faults.bare").replace(/\.$/, "") : first, ...others.filter((text) => !hasHole(text))];
  const text = kept.join(". ").replace(/([^.?!])$/, "$1.");
  return text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
}

/** As typed, with the unit it was taken in; a number nobody typed is shown in the units of the page. @param {Sheet} sheet @param {Fault} fault */
function found(sheet, fault) {
  const entry = sheet.session.entries.get(fault.path);
  if (entry && entry.value !== null) return sheet.show(entry.value, entry.rule.quantity);
  return entry?.typed?.text || inWords(sheet, fault.found ?? "");
}

/** The core says what is not short by its size alone. @param {Sheet} sheet @param {string} found */
function inWords(sheet, found) {
  const [, items, fields] = /^(?:\[(\d+) items\]|\{(\d+) fields\})$/.exec(found) ?? [];
  if (items) return sheet.say("faults.items", { count: items });
  return fields ? sheet.say("faults.fields", { count: fields }) : found;
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
