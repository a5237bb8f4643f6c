/**
 * To mark out: how the axis is found, places, lengths and limits of the job's arm.
 *
 * @import { Mark, MarkOut } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { figuresList, plainTable } from "../rows.js";
import { lengthAt } from "../sides.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createMarks(sheet) {
  const root = h("section", { class: "fit" });
  let drawn = "";

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    if (root.hidden || !sheet.result) return;
    const found = sheet.result.calculation.mark_out();
    const text = JSON.stringify([found, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    root.replaceChildren(...marksPart(sheet, found));
  }

  return { root, update };
}

/**
 * What is told of a mark: from the two lines, and the diagonals; from the leaf's face too where that is apart from the axis line.
 *
 * @param {MarkOut} marks
 * @returns {(keyof Mark)[]}
 */
export function columnsOf({ face_m: face }) {
  return ["from_hinge_line_m", "from_axis_line_m", ...(face === 0 ? [] : /** @type {const} */ (["from_face_m"])), "diagonal_m", "from_latch_m"];
}

/** How the axis is found and the line stretched, in the order it is done. */
export const LINE_STEPS = ["axis", "line", "latch", "square"];

/** Where the leaf's face is. @param {Sheet} sheet @param {MarkOut} marks */
export function faceOf(sheet, { face_m: face, assumed }) {
  const shown = lengthAt(sheet, "face_m", face);
  return assumed.includes("leaf.face_m") ? sheet.say("setout.fit.assumed", { value: shown }) : shown;
}

/** The base over its pad, or how much too high the pad is; null where the levels are not said. @param {Sheet} sheet @param {MarkOut} marks */
export function riserOf(sheet, { riser_m: riser }) {
  if (riser === null) return null;
  const { text, side } = sheet.markApart(riser);
  return side === "minus" ? sheet.say("setout.fit.riser_low", { length: text }) : text;
}

/** @param {Sheet} sheet @param {MarkOut} marks */
function marksPart(sheet, marks) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const short = (/** @type {number | null} */ value) => (value === null ? say("unknown") : sheet.mark(value));
  const angle = (/** @type {number} */ value) => sheet.show(value, "angle");
  /** @type {[string, Mark][]} */
  const places = [
    [say("shaft"), marks.shaft],
    [say("elbow_closed"), marks.elbow_closed],
    [say("elbow_open"), marks.elbow_open],
    .../** @type {[string, Mark][]} */ (marks.anchors.map((mark, index) => [say("anchor", { number: index + 1 }), mark])),
  ];
  const columns = columnsOf(marks);
  const [closed, open] = marks.limits;
  const figures = [
    [say("bracket_along"), lengthAt(sheet, "bracket_along_m", marks.bracket_along_m)],
    [say("bracket_across"), lengthAt(sheet, "bracket_across_m", marks.bracket_across_m)],
    ...(marks.face_m === 0 ? [] : [[say("bracket_proud"), lengthAt(sheet, "bracket_proud_m", marks.bracket_proud_m)]]),
    [say("face"), faceOf(sheet, marks)],
    [say("crank"), short(marks.crank.pivots_m)],
    [say("link"), short(marks.link.pivots_m)],
    [say("crank_cut"), short(marks.crank.cut_m)],
    [say("link_cut"), short(marks.link.cut_m)],
    [say("riser"), riserOf(sheet, marks) ?? say("unknown")],
    [say("anchor_diagonal"), short(marks.anchor_diagonal_m)],
    [say("base"), angle(marks.base_direction_deg)],
    [say("closed_limit"), angle(closed.shaft_deg)],
    [say("open_limit"), angle(open.shaft_deg)],
    [say("crank_direction"), `${angle(closed.crank_direction_deg)}; ${angle(open.crank_direction_deg)}`],
  ];
  return [
    h("h3", {}, say("title")),
    h("p", { class: "note" }, say("note")),
    h("h4", {}, say("line.title")),
    h("ol", { class: "line-steps" }, ...LINE_STEPS.map((step) => h("li", {}, say(`line.${step}`)))),
    plainTable(say("caption"), [say("place"), ...columns.map((key) => say(key))], places.map(([name, mark]) => [name, ...columns.map((key) => lengthAt(sheet, key, mark[key]))])),
    h("h4", {}, say("figures")),
    figuresList(figures, "marks"),
  ];
}
