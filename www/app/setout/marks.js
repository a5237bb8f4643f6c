/**
 * To mark out: how the axis is found, a card a mark, lengths and limits of the job's arm.
 *
 * @import { Mark, MarkOut } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { html, nothing, render } from "../lit-html.js";
import { figuresList } from "../rows.js";
import { lengthAt, lineOf, sideWords } from "../sides.js";

/** Numbers that every mark rests on. */
const RESTS_ON = ["leaf.length_m", "leaf.face_m", "arm.shaft_x_m", "arm.shaft_y_m", "arm.bracket_u_m", "arm.bracket_v_m", "arm.crank_m", "arm.link_m"];

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createMarks(sheet) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const cards = h("div", {});
  const figures = h("div", {});
  const root = h(
    "section",
    { class: "fit" },
    h("details", { class: "axis-first" }, h("summary", {}, say("line.title")), h("ol", { class: "line-steps" }, ...LINE_STEPS.map((step) => h("li", {}, say(`line.${step}`))))),
    cards,
    h("h3", {}, say("figures")),
    figures,
    h("p", { class: "note" }, say("note")),
  );
  let drawn = "";

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    if (root.hidden || !sheet.result) return;
    const marks = sheet.result.calculation.mark_out();
    render(cardsOf(sheet, marks, update), cards);
    const text = JSON.stringify([marks, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    figures.replaceChildren(figuresList(figureRows(sheet, marks), "marks"));
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

/** What stands over marks that rest on examples or assumed numbers; empty where none does. @param {Sheet} sheet */
export function assumedMarks(sheet) {
  const count = RESTS_ON.filter((path) => sheet.isAssumed(path)).length;
  return count === 0 ? "" : sheet.say("setout.fit.assumed_marks", { count, all: RESTS_ON.length });
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

/**
 * Places on the ground: the holes, numbered as they stand around the base, then the shaft.
 *
 * @param {Sheet} sheet
 * @param {MarkOut} marks
 * @returns {{ badge: string, name: string, mark: Mark }[]}
 */
function placesOf(sheet, marks) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  return [
    ...marks.anchors.map((mark, index) => ({ badge: String(index + 1), name: say("anchor", { number: index + 1 }), mark })),
    { badge: "S", name: say("shaft"), mark: marks.shaft },
  ];
}

/** What a tick is remembered by: the mark and where it is, to a tenth of a millimetre. @param {{ badge: string, mark: Mark }} place */
function keyOf({ badge, mark }) {
  return `${badge} ${mark.from_hinge_line_m.toFixed(4)} ${mark.from_axis_line_m.toFixed(4)}`;
}

/** @param {Sheet} sheet @param {MarkOut} marks @param {() => void} changed */
function cardsOf(sheet, marks, changed) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const assumed = assumedMarks(sheet);
  const { ticked } = sheet.session;
  const places = placesOf(sheet, marks).map((place) => ({ ...place, key: keyOf(place) }));
  // A tick belongs to the place where it was set: another place is not marked yet.
  for (const key of ticked) if (places.every((place) => place.key !== key)) ticked.delete(key);
  /** @param {keyof Mark} key @param {Mark} mark @param {string} look */
  function line(key, mark, look) {
    const { text, side } = lineOf(key) ? sheet.markApart(mark[key]) : { text: sheet.mark(mark[key]), side: "on" };
    return html`<div class=${look}><dt>${say(`card.${key}`)}</dt><dd><span class="quantity">${text}</span>${side === "on" ? nothing : html` <span class="side-of">${sideWords(sheet, key, side)}</span>`}</dd></div>`;
  }
  const checks = [
    [say("elbow_closed"), marks.elbow_closed],
    [say("elbow_open"), marks.elbow_open],
  ];
  return html`
    <p class="never" ?hidden=${assumed === ""}>${assumed}</p>
    <p class="note" ?hidden=${marks.anchors.length > 0}>${say("no_holes")}</p>
    <ol class="mark-cards">
      ${places.map(({ badge, name, mark, key }) => {
        return html`<li class="mark-card" data-mark=${badge}>
          <span class="badge" aria-hidden="true">${badge}</span>
          <div>
            <h3>${name}</h3>
            <dl>
              ${line("from_hinge_line_m", mark, "offset")}${line("from_axis_line_m", mark, "offset")}
              ${marks.face_m === 0 ? nothing : line("from_face_m", mark, "check")}${line("diagonal_m", mark, "check")}${line("from_latch_m", mark, "check")}
            </dl>
            <label class="option"><input type="checkbox" .checked=${ticked.has(key)} @change=${(/** @type {any} */ event) => {
              if (event.target.checked) ticked.add(key);
              else ticked.delete(key);
              sheet.changed();
              changed();
            }}><span>${say("marked")}</span></label>
          </div>
        </li>`;
      })}
    </ol>
    <details class="axis-first"><summary>${say("elbow_checks")}</summary>
      ${checks.map(([name, mark]) => html`<h4>${name}</h4><dl class="figures-list">${columnsOf(marks).map((key) => line(key, /** @type {Mark} */ (mark), ""))}</dl>`)}
    </details>`;
}

/** @param {Sheet} sheet @param {MarkOut} marks @returns {string[][]} */
function figureRows(sheet, marks) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`setout.fit.${key}`, values);
  const short = (/** @type {number | null} */ value) => (value === null ? say("unknown") : sheet.mark(value));
  const angle = (/** @type {number} */ value) => sheet.show(value, "angle");
  const [closed, open] = marks.limits;
  return [
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
}
