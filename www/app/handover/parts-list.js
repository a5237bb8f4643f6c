/**
 * What to buy and cut, with quantities. What the core does not reckon is a blank line, never a guess.
 *
 * @import { Block } from "./blocks.js"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { operatorName } from "../operators/list.js";
import { head, note, table } from "./blocks.js";

/** Not reckoned yet. */
const BLANK = ["cable", "battery", "rod", "conductor"];

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function partsBlocks(sheet, { job, calculation }) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.parts.${key}`, values);
  const count = (/** @type {number} */ number) => sheet.show(number, "count");
  const short = (/** @type {number} */ value) => sheet.tape(value);
  const { crank, link, anchors } = calculation.mark_out();
  const marks = job.marks ?? {};
  // Tubes are cut by what was said of them, never by an overlap of nothing.
  const { overlap_m: overlap = null } = marks;
  const cut = (/** @type {import("../contract.d.ts").Tubes} */ { cut_m, pivots_m }) =>
    cut_m === null || overlap === null ? h("span", {}, say("pivots", { length: short(pivots_m) }), " ", h("span", { class: "pen" })) : say("cut", { length: short(cut_m), overlap: short(overlap) });
  const grid = anchors.length ? say("grid", { along: short(marks.anchor_along_m), across: short(marks.anchor_across_m) }) : "";
  const devices = (job.site?.means ?? []).map((/** @type {any} */ { kind }) => [say("means", { means: sheet.say(`choices.site_means_kind.${kind}`) }), count(1), "–"]);
  /** @type {import("./blocks.js").Cell[][]} */
  const rows = [
    [say("operator"), count(1), sheet.session.operator ? operatorName(sheet, sheet.session.operator) : ""],
    [say("crank"), count(2), cut(crank)],
    [say("link"), count(2), cut(link)],
    [say("bracket"), count(1), "–"],
    [say("anchors"), anchors.length ? count(anchors.length) : "", grid],
    [say("sign"), count(2), "–"],
    ...(devices.length ? devices : [[say("device"), "", ""], [say("device"), "", ""]]),
    ...BLANK.map((key) => [say(key), "", ""]),
  ];
  const heads = ["part", "count", "size", "done"].map((key) => say(`columns.${key}`));
  const ticked = rows.map((row) => [...row, h("span", { class: "box" })]);
  return [head(say("title")), note(say("note")), table(heads, ticked, "parts")];
}
