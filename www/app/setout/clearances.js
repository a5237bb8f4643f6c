/**
 * How close leaf, arm and operator come to what stands around, through the swing.
 *
 * @import { Clearances } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { plainTable } from "../rows.js";

/**
 * @param {Sheet} sheet
 * @param {() => any} jobWithBlock the job, with the set-out's block
 * @returns {Part}
 */
export function createClearances(sheet, jobWithBlock) {
  const root = h("section", { class: "fit" });
  let drawn = "";

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    if (root.hidden || !sheet.result) return;
    const found = clearancesOf(sheet, jobWithBlock());
    const text = JSON.stringify([found, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    root.replaceChildren(...clearPart(sheet, found));
  }

  return { root, update };
}

/**
 * The clearances with the areas asked for and what stands around; the leaf is a line until the job says more.
 *
 * @param {Sheet} sheet
 * @param {any} job
 * @returns {Clearances | null}
 */
function clearancesOf({ core }, job) {
  try {
    return core.clearances(job);
  } catch {
    // A fault of the block is told beside its field.
    return null;
  }
}

/** @param {Sheet} sheet @param {Clearances | null} clearances */
function clearPart(sheet, clearances) {
  if (!clearances) return [];
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const heads = ["part", "against", "least", "angle"].map((key) => say(`clear_columns.${key}`));
  const rows = clearances.gaps.map((gap) => [
    say(`parts.${gap.part}`),
    say(`against.${gap.against}`, { number: gap.index + 1 }),
    sheet.tape(gap.least_m),
    sheet.show(gap.leaf_deg, "angle"),
  ]);
  return [
    h("h3", {}, say("clear_title")),
    h("p", { class: "note" }, say("clear_note", { area: sheet.show(clearances.sweep.area_m2, "area") })),
    h("details", { class: "asks-more" }, h("summary", {}, say("clear_all")), plainTable(say("clear_title"), heads, rows)),
  ];
}
