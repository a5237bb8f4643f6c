/**
 * The set-out with its marks, and the curve: the core's drawings as vectors, black on white.
 *
 * @import { Mark, MarkOut, Palette, View } from "../contract.d.ts"
 * @import { Block } from "./blocks.js"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { LINE_STEPS, assumedMarks, columnsOf, faceOf, riserOf } from "../setout/marks.js";
import { SHOWN } from "../sheet.js";
import { lengthAt } from "../sides.js";
import { figure, head, list, note, pairs, subhead, table } from "./blocks.js";

const BLACK = "#000000";
/** Height of what is at its true size, CSS px: what a page of either paper has room for beside its words. */
const TEMPLATE_PX = 780;

/** Ink is black; series are told by their dashes. @type {Palette} */
const PALETTE = {
  paper: "#ffffff", ink: BLACK, faint: "#777777", opening: BLACK, closing: BLACK, limit: BLACK, cursor: "#444444", leaf: BLACK, third: BLACK,
  fourth: BLACK,
};

/** @param {Sheet} sheet @param {number} height @param {number} leafDeg @returns {View} */
function view(sheet, height, leafDeg, marks = false) {
  const labels = sheet.strings.at("drawing");
  return { width: 680, height, pixel_ratio: 1, leaf_deg: leafDeg, ...SHOWN, marks, system: sheet.session.system, palette: PALETTE, labels };
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function drawingBlocks(sheet, { plan, calculation }) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.${key}`);
  return [
    head(say("setout.title")),
    note(say("setout.note")),
    figure(calculation.plan_view_svg(view(sheet, 430, 0)), sheet.say("drawing_titles.plan_view")),
    ...markBlocks(sheet, calculation.mark_out()),
    head(say("curve.title")),
    figure(calculation.curve_svg(view(sheet, 340, plan.peak.leaf_deg)), sheet.say("drawing_titles.curve")),
  ];
}

/**
 * What is taken out to the gate: the marks on one page, and the base at its true size on another.
 *
 * @param {Sheet} sheet @param {Result} result @returns {Block[]}
 */
export function markPageBlocks(sheet, { calculation }) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.page.${key}`, values);
  const marks = calculation.mark_out();
  const assumed = assumedMarks(sheet);
  const drawn = calculation.template_svgs(view(sheet, TEMPLATE_PX, 0, true));
  const missing = say(marks.anchors.length ? "too_large" : "no_holes");
  return [
    { root: h("h2", {}, say("title")), keep: true },
    ...(assumed ? [{ ...note(assumed), keep: true }] : []),
    figure(calculation.plan_view_svg(view(sheet, 240, 0, true)), sheet.say("drawing_titles.plan_view")),
    ...[...stretchBlocks(sheet), placeTable(sheet, marks, groundPlaces(sheet, marks)), figurePairs(sheet, marks)].map(small),
    ...(drawn.length ? drawn.flatMap((svg, index) => templateBlocks(sheet, svg, [index + 1, drawn.length], assumed)) : [note(missing)]),
  ];
}

/**
 * A sheet of the template, which page it is of how many.
 *
 * @param {Sheet} sheet @param {string} svg @param {[number, number]} page @param {string} assumed
 * @returns {Block[]}
 */
function templateBlocks(sheet, svg, [number, count], assumed) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.page.${key}`, values);
  const title = count === 1 ? say("template") : say("template_of", { number, count });
  const lines = [say("template_note"), ...(count === 1 ? [] : [say("join")]), say("lay"), ...(assumed ? [assumed] : [])];
  return [head(title, true), ...lines.map(note), trueSize(figure(svg, title))];
}

/** In small letters, so that all of it goes on one sheet in every language. @param {Block} block @returns {Block} */
function small(block) {
  block.root.classList.add("small");
  return block;
}

/** At its true size, whatever room there is. @param {Block} block @returns {Block} */
function trueSize(block) {
  block.root.className = "true-size";
  return block;
}

/** @param {Sheet} sheet @param {MarkOut} marks @returns {Block[]} */
function markBlocks(sheet, marks) {
  const say = (/** @type {string} */ key) => sheet.say(`setout.fit.${key}`);
  /** @type {[string, Mark][]} */
  const elbows = [[say("elbow_closed"), marks.elbow_closed], [say("elbow_open"), marks.elbow_open]];
  const [shaft, ...holes] = groundPlaces(sheet, marks);
  return [head(say("title")), note(say("note")), ...stretchBlocks(sheet), placeTable(sheet, marks, [shaft, ...elbows, ...holes]), figurePairs(sheet, marks)];
}

/** How the lines come to the ground. @param {Sheet} sheet @returns {Block[]} */
function stretchBlocks(sheet) {
  const say = (/** @type {string} */ key) => sheet.say(`setout.fit.${key}`);
  return [subhead(say("line.title")), list(LINE_STEPS.map((step) => say(`line.${step}`)))];
}

/** What is marked on the ground: the shaft, then the holes. @param {Sheet} sheet @param {MarkOut} marks @returns {[string, Mark][]} */
function groundPlaces(sheet, marks) {
  const holes = /** @type {[string, Mark][]} */ (marks.anchors.map((mark, index) => [sheet.say("setout.fit.anchor", { number: index + 1 }), mark]));
  return [[sheet.say("setout.fit.shaft"), marks.shaft], ...holes];
}

/** @param {Sheet} sheet @param {MarkOut} marks @param {[string, Mark][]} places @returns {Block} */
function placeTable(sheet, marks, places) {
  const say = (/** @type {string} */ key) => sheet.say(`setout.fit.${key}`);
  const columns = columnsOf(marks);
  return table([say("place"), ...columns.map(say)], places.map(([name, mark]) => [name, ...columns.map((key) => lengthAt(sheet, key, mark[key]))]), "numbers");
}

/** @param {Sheet} sheet @param {MarkOut} marks @returns {Block} */
function figurePairs(sheet, marks) {
  const say = (/** @type {string} */ key) => sheet.say(`setout.fit.${key}`);
  return pairs([
    [say("bracket_along"), lengthAt(sheet, "bracket_along_m", marks.bracket_along_m)],
    [say("bracket_across"), lengthAt(sheet, "bracket_across_m", marks.bracket_across_m)],
    ...(marks.face_m === 0 ? [] : /** @type {[string, string][]} */ ([[say("bracket_proud"), lengthAt(sheet, "bracket_proud_m", marks.bracket_proud_m)]])),
    [say("face"), faceOf(sheet, marks)],
    [say("crank"), sheet.mark(marks.crank.pivots_m)],
    [say("link"), sheet.mark(marks.link.pivots_m)],
    [say("riser"), riserOf(sheet, marks) ?? ""],
    [say("base"), sheet.show(marks.base_direction_deg, "angle")],
  ]);
}
