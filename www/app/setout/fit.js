/**
 * To mark out: places, lengths and limits of the job's arm, what a tape error costs, and how close it comes to what is around.
 *
 * @import { Clearances, Mark, MarkOut, Quantity, TapeCost } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { figuresList, plainTable } from "../rows.js";
import { lengthAt } from "../sides.js";

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

/**
 * @param {Sheet} sheet
 * @param {() => any} jobWithBlock the job, with the set-out's block
 */
export function createFit(sheet, jobWithBlock) {
  const root = h("div", { class: "fit" });
  let drawn = "";

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    if (root.hidden || !sheet.result) return;
    const { calculation } = sheet.result;
    const clearances = clearancesOf(sheet, jobWithBlock());
    const all = { marks: calculation.mark_out(), tape: calculation.tape_cost(), clearances };
    const text = JSON.stringify([all, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    root.replaceChildren(...marksPart(sheet, all.marks), ...tapePart(sheet, all.tape), ...clearPart(sheet, clearances));
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

/** @param {Sheet} sheet @param {TapeCost} cost */
function tapePart(sheet, cost) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const shown = (/** @type {number | null | undefined} */ value, /** @type {Quantity} */ quantity) => (value == null ? "–" : sheet.show(value, quantity));
  const rows = cost.dimensions.map(({ path, short, long }) => [
    sheet.fieldName(path),
    shown(short?.reserve, "ratio"),
    shown(long?.reserve, "ratio"),
    shown(short?.off_square_deg, "angle"),
    shown(long?.off_square_deg, "angle"),
  ]);
  const { worst } = cost;
  const [squareFrom, squareTo, bendFrom, bendTo] = [...worst.off_square_deg, ...worst.bend_deg].map((value) => sheet.show(value, "angle"));
  const heads = ["dimension", "short", "long", "short_square", "long_square"].map((key) => say(`tape_columns.${key}`));
  return [
    h("h3", {}, say("tape_title")),
    h("p", { class: "lead-sentence" }, say("measure_twice", { dimension: sheet.fieldName(cost.measure_twice) })),
    h("p", { class: "note" }, say("tape_note", { error: sheet.tape(cost.error_m) })),
    plainTable(say("tape_title"), heads, rows),
    h("p", {}, say("tape_worst", { reserve: shown(worst.reserve, "ratio"), square_from: squareFrom, square_to: squareTo, bend_from: bendFrom, bend_to: bendTo })),
    ...(worst.broken > 0 ? [h("p", {}, say("tape_broken", { count: sheet.show(worst.broken, "count") }))] : []),
  ];
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
    plainTable(say("clear_title"), heads, rows),
  ];
}
