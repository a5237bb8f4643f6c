/**
 * A finding in words: what was found, and the one thing to do about it. Codes and numbers are the core's.
 *
 * @import { Finding, FindingCode } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";

/** @typedef {Pick<Finding, "code"> & Partial<Finding>} Said */

/** What was found. @param {Sheet} sheet @param {Said} finding */
export function foundWords(sheet, { code, values }) {
  return sheet.say(`findings.${code}`, sheet.shown(values));
}

/** What to do about it. @param {Sheet} sheet @param {Said} finding */
export function doWords(sheet, { code, values }) {
  return sheet.say(`actions.${code}`, sheet.shown(values));
}

/** Both, one after the other. @param {Sheet} sheet @param {Said} finding */
export function findingWords(sheet, finding) {
  return `${foundWords(sheet, finding)} ${doWords(sheet, finding)}`;
}

/** How urgent it is, what was found, what to do. @param {Sheet} sheet @param {Finding} finding */
export function findingItem(sheet, finding) {
  const { code, severity } = finding;
  const urgent = h("strong", { class: `severity ${severity}` }, sheet.say(`severity.${severity}`));
  return h("li", { "data-code": code }, urgent, " ", foundWords(sheet, finding), " ", h("span", { class: "to-do" }, doWords(sheet, finding)));
}
