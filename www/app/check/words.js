/**
 * What the results of the check have in common: shown numbers, where a published number comes from, findings beside what they are about.
 *
 * @import { Plan, Quantity, Source } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingItem } from "../findings.js";

/** @param {Sheet} sheet @param {number | null | undefined} value @param {Quantity} quantity */
export function shown(sheet, value, quantity) {
  return value == null ? "–" : sheet.show(value, quantity);
}

/** A number and the leaf angle it falls at. @param {Sheet} sheet @param {number} value @param {Quantity} quantity @param {number} leaf_deg */
export function shownAt(sheet, value, quantity, leaf_deg) {
  return sheet.say("check.at", { value: sheet.show(value, quantity), angle: sheet.show(leaf_deg, "angle") });
}

/** Name, how it was come by, whether a later edition is in force. @param {Sheet} sheet @param {Source} source */
export function sourceWords(sheet, { name, provenance, superseded }) {
  return [name, sheet.say(`check.provenance.${provenance}`), superseded ? sheet.say("check.superseded") : ""].filter(Boolean).join(", ");
}

/** @param {Sheet} sheet @param {Source[]} sources each named once */
export function sourcesNote(sheet, sources) {
  const words = [...new Set(sources.map((source) => sourceWords(sheet, source)))];
  return h("p", { class: "note" }, sheet.say("check.sources", { sources: words.join("; ") }));
}

/** Sentences of the findings whose codes begin so. @param {Sheet} sheet @param {Plan} plan @param {string[]} starts */
export function findingItems(sheet, plan, starts) {
  const own = plan.findings.filter(({ code }) => starts.some((start) => code.startsWith(start)));
  const items = own.map((finding) => findingItem(sheet, finding));
  return items.length ? [h("ul", { class: "findings" }, ...items)] : [];
}

/** Whether motor and gear are part of the numbers. @param {Sheet} sheet @param {"people" | "limits"} part @param {number | null} inertia */
export function driveNote(sheet, part, inertia) {
  const words = inertia == null ? sheet.say(`check.${part}.without_drive`) : sheet.say(`check.${part}.with_drive`, { inertia: sheet.show(inertia, "inertia") });
  return h("p", { class: "note" }, words);
}
