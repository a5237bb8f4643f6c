/**
 * The list of operators to choose from, as a host gives it and the core reads it.
 *
 * @import { Fault, ListedOperator as Read, OperatorBody } from "../contract.d.ts"
 * @import { Core } from "../core.js"
 * @import { Sheet } from "../sheet.js"
 *
 * @typedef {Omit<Read, "body"> & { body: OperatorBody | null }} ListedOperator as the core reads it; `body` is all that stands about the shaft
 *
 * @typedef {object} OperatorList
 * @property {string} title
 * @property {ListedOperator[]} operators what can be used, in the list's order
 * @property {unknown} document the list as the host wrote it
 * @property {number} leftOut how many entries cannot be used
 * @property {Fault[]} faults what is wrong with them
 * @property {Fault[]} warnings what was taken and is hardly meant
 *
 * @typedef {{ path: string, code: string, text: string }} ToldFault
 */

import { faultSentence } from "../faults.js";

/** @type {OperatorList} */
export const NO_OPERATORS = { title: "", operators: [], document: { operators: [] }, leftOut: 0, faults: [], warnings: [] };

/** Entries read between two turns of the page: a few milliseconds on a slow phone. */
const PART = 64;

/**
 * What is usable of a list: one faulty entry does not take the page from its visitors. A long list is read a part at a time.
 *
 * @param {Core} core
 * @param {any} document
 * @returns {Promise<OperatorList>}
 */
export async function readOperators(core, document) {
  const entries = Array.isArray(document?.operators) ? document.operators : [];
  const parts = [core.read_operators(entries.length > PART ? { ...document, operators: [] } : document)];
  if (entries.length > PART) {
    const reader = new core.OperatorReader();
    for (let from = 0; from < entries.length; from += PART) {
      await new Promise((resolve) => setTimeout(resolve, 0));
      const part = reader.read(entries.slice(from, from + PART));
      // Too many for a list: that alone is told.
      if (part.left_out.some(({ path }) => path === "operators")) {
        parts.splice(1, Infinity, part);
        break;
      }
      parts.push(part);
    }
    reader.free();
  }
  const leftOut = parts.flatMap((part) => part.left_out);
  return {
    title: parts[0].title ?? "",
    operators: parts.flatMap((part) => part.operators.map(({ operator, outline }) => ({ ...operator, body: outline }))),
    document,
    leftOut: leftOut.length,
    faults: leftOut.flatMap(({ faults }) => faults),
    warnings: parts.flatMap((part) => part.warnings),
  };
}

/** What is wrong with the list, for whoever keeps it. @param {Sheet} sheet @returns {{ faults: ToldFault[], warnings: ToldFault[] }} */
export function operatorFaults(sheet) {
  const told = (/** @type {Fault[]} */ faults) => faults.map((fault) => ({ path: fault.path, code: fault.code, text: faultSentence(sheet, fault) }));
  return { faults: told(sheet.list.faults), warnings: told(sheet.list.warnings) };
}

/** What an operator is called in the page's language. @param {Sheet} sheet @param {ListedOperator} operator */
export function operatorName({ strings }, { name, names }) {
  return names?.[/** @type {"en" | "es"} */ (strings.language)] ?? name;
}
