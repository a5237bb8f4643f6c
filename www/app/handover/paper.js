/**
 * Everything on the hand-over sheet, in its order: what was said, what came out, what to set and build, what was measured, what the owner
 * keeps. Every number is the core's, every line that is blank is for the pen.
 *
 * @import { Block } from "./blocks.js"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { cautionSentences } from "../cautions.js";
import { h } from "../dom.js";
import { judged, stopItems, subjectList, unjudged } from "../judged.js";
import { operatorName } from "../operators/list.js";
import { verdictMark } from "../verdict-mark.js";
import { head, list, note, pairs, table } from "./blocks.js";
import { comparison } from "./compare.js";
import { drawingBlocks } from "./drawings.js";
import { linkBlocks } from "./link.js";
import { ownerBlocks } from "./owner.js";
import { partsBlocks } from "./parts-list.js";
import { settingBlocks } from "./settings.js";
import { signatureBlocks } from "./signatures.js";
import { siteBlocks } from "./site.js";
import { surveyBlocks } from "./survey.js";
import { assumptionBlocks, findingBlocks, relationBlocks } from "./words.js";

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {Block[]}
 */
export function paperBlocks(sheet, result) {
  return [
    { root: h("h2", {}, sheet.say("handover.paper.title")), keep: true },
    ...chosenBlocks(sheet, result),
    ...stopBlocks(sheet, result),
    ...linkBlocks(sheet, sheet.session.job()),
    head(sheet.say("page.cautions")),
    list(cautionSentences(sheet)),
    ...surveyBlocks(sheet),
    ...drawingBlocks(sheet, result),
    ...settingBlocks(sheet, result),
    ...siteBlocks(sheet, result),
    ...partsBlocks(sheet, result),
    ...findingBlocks(sheet, result),
    ...measuredBlocks(sheet, result),
    ...signatureBlocks(sheet, result),
    ...assumptionBlocks(sheet, result),
    ...relationBlocks(sheet, result),
    ...ownerBlocks(sheet),
  ];
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function chosenBlocks(sheet, { job, plan }) {
  const { rating, peak } = plan;
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.chosen.${key}`);
  const ratio = (/** @type {number | null} */ value) => (value === null ? "–" : sheet.show(value, "ratio"));
  const required = job.required_reserve ?? sheet.session.rules.get("required_reserve")?.default ?? null;
  const said = answer(sheet, plan);
  const { state, word, about } = judged(sheet, said);
  const verdict = h("span", { class: "verdict" }, verdictMark(state), `${word} ${about}`);
  /** @type {[string, import("./blocks.js").Cell][]} */
  const rows = [
    [say("operator"), sheet.session.operator ? operatorName(sheet, sheet.session.operator) : say("typed")],
    [say("whole"), verdict],
    ...openRows(sheet, said),
    [say("reserve"), `${ratio(rating.reserve)}; ${ratio(required)}`],
    [say("rated"), sheet.show(job.operator.rated_torque_n_m, "torque")],
    [say("needed"), sheet.show(peak.shaft_torque_n_m, "torque")],
    [say("worst"), `${sheet.show(peak.leaf_deg, "angle")}, ${sheet.say(`direction.${peak.direction}`)}`],
  ];
  return [head(say("title")), pairs(rows)];
}

/**
 * The plan whose verdict stands on the sheet: that of the page. The sheet's own has blocks besides that nobody asked for, with assumed values;
 * only where one of those stops it does its verdict go first.
 *
 * @param {Sheet} sheet @param {Result["plan"]} plan
 */
function answer(sheet, plan) {
  const shown = sheet.result?.plan;
  return shown && plan.overall.stops <= shown.overall.stops ? shown : plan;
}

/** What was not judged, and why, in as many rows. @param {Sheet} sheet @param {Result["plan"]} plan @returns {[string, string][]} */
function openRows(sheet, plan) {
  const reasons = /** @type {const} */ (["begun", "not_measured", "not_asked"]);
  const rows = reasons.map((why) => ({ why, subjects: unjudged(plan, why) })).filter(({ subjects }) => subjects.length > 0);
  return rows.map(({ why, subjects }) => [sheet.say(`judged.paper.${why}`), subjectList(sheet, subjects)]);
}

/** What stops it stands on the first sheet, before anything that could be taken for a yes. @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function stopBlocks(sheet, { plan }) {
  const items = stopItems(sheet, plan);
  return items.length ? [head(sheet.say("handover.paper.stops.title")), { root: h("ul", { class: "stops" }, ...items) }] : [];
}

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
function measuredBlocks(sheet, { calculation }) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.measured.${key}`);
  const { checks, steps } = comparison(sheet, calculation.commissioning());
  const heads = (/** @type {string[]} */ keys) => keys.map((key) => sheet.say(`handover.columns.${key}`));
  const word = (/** @type {import("./compare.js").Row} */ { verdict, word }) => (verdict === "not_measured" ? "" : word);
  // Sources are told once, by letters.
  const sources = [...new Set(checks.map(({ source }) => source))];
  const letter = (/** @type {string} */ source) => String.fromCharCode(97 + sources.indexOf(source));
  const rows = checks.map((row) => [row.name, row.planned || "–", row.agreed ? h("span", {}, row.agreed, h("sup", {}, letter(row.source))) : "–", row.measured, word(row)]);
  const done = steps.map((row) => [row.name, row.measured, word(row)]);
  return [
    // With the signatures on one sheet, to be signed as a whole.
    head(say("title"), true),
    note(say("note")),
    table(heads(["what", "planned", "agreed", "measured", "verdict"]), [...rows, [say("instrument"), "–", "–", "", ""]], "write compared"),
    { ...note(`${sheet.say("handover.columns.source")}: ${sources.map((source) => `${letter(source)} ${source}`).join("; ")}.`), keep: false },
    head(say("steps")),
    table(heads(["what", "answer", "verdict"]), done, "write steps"),
  ];
}
