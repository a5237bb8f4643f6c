/**
 * Two operators of the list side by side, each at the place where it does better.
 *
 * @import { RankedOperator, Standing } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 * @import { Ranked } from "./look.js"
 */

import { figure } from "../handover/blocks.js";
import { html, nothing } from "../lit-html.js";
import { readPalette } from "../palette.js";
import { SHOWN } from "../sheet.js";
import { operatorName } from "./list.js";
import { refusalSentence } from "./row.js";

/** Height of the curve, and its least width, CSS px. */
const HEIGHT_PX = 260;
const LEAST_PX = 280;

/**
 * @param {Sheet} sheet
 * @param {HTMLElement} place where the colours and the room are read
 * @returns {(ids: string[], ranked: Ranked | null) => unknown} what is to be shown of those that are compared
 */
export function createCompared(sheet, place) {
  const curve = createPairCurve(sheet, place);
  return (ids, ranked) => tableOf(sheet, ids, ranked, curve);
}

/** @param {Sheet} sheet @param {string[]} ids @param {Ranked | null} ranked @param {(jobs: any[], names: string[]) => unknown} curve */
function tableOf(sheet, ids, ranked, curve) {
  const found = ids.flatMap((id) => ranked?.wanted.find((one) => one.id === id) ?? []);
  if (found.length < 2) return nothing;
  const say = (/** @type {string} */ key) => sheet.say(`ranking.labels.${key}`);
  const names = found.map(({ id }) => {
    const operator = sheet.list.operators.find((one) => one.id === id);
    return operator ? operatorName(sheet, operator) : id;
  });
  const rows = ROWS.map(([key, cell]) => [say(key), ...found.map((one) => cell(sheet, one))]).filter(([, ...cells]) => cells.some((cell) => cell !== ""));
  return html`${curve(ids.map((id) => ranked?.jobs[id]), names)}<table class="two-operators">
    <caption>${say("side_by_side")}</caption>
    <thead><tr><th scope="col"></th>${names.map((name) => html`<th scope="col">${name}</th>`)}</tr></thead>
    <tbody>${rows.map(([name, ...cells]) => html`<tr><th scope="row">${name}</th>${cells.map((cell) => html`<td>${cell || "–"}</td>`)}</tr>`)}</tbody>
  </table>`;
}

/** @type {[string, (sheet: Sheet, one: RankedOperator) => string][]} */
const ROWS = [
  ["rated", (sheet, one) => sheet.show(one.rated_torque_n_m, "torque")],
  ["as_placed", (sheet, one) => reserve(sheet, one.as_placed)],
  ["best", (sheet, one) => (one.best ? reserve(sheet, one.best) : one.place === "not_found" ? sheet.say("ranking.labels.not_found") : "")],
  ["needed", (sheet, one) => of(one, ({ shaft_torque_n_m: torque }) => sheet.show(torque, "torque"))],
  ["wind_limit", (sheet, one) => of(one, ({ wind_limit: { speed_m_s: speed } }) => (speed === null ? "" : sheet.show(speed, "speed")))],
  ["opening", (sheet, one) => of(one, ({ opening_s: time }) => (time === null ? "" : sheet.show(time, "time")))],
  ["travel", (sheet, one) => of(one, ({ shaft_travel_deg: travel }) => sheet.show(travel, "angle"))],
  ["clearance", (sheet, one) => of(one, ({ clearance_m: clear }) => (clear === null ? "" : sheet.mark(clear)))],
  ["leaf_limit", (sheet, one) => (one.leaf_limit_kg === null ? "" : sheet.show(one.leaf_limit_kg, "mass"))],
  ["cycles", (_, one) => (one.rated_cycles.every((count) => count === null) ? "" : one.rated_cycles.map((count) => count ?? "–").join(", "))],
  ["does_not", (sheet, { refusal }) => (refusal ? refusalSentence(sheet, refusal) : "")],
];

/**
 * What each is asked for through the swing, as a part of what it is rated for; nothing while one of them is not looked at, or has no arm that works.
 *
 * @param {Sheet} sheet @param {HTMLElement} place
 * @returns {(jobs: any[], names: string[]) => unknown}
 */
function createPairCurve(sheet, place) {
  const probe = /** @type {HTMLElement} */ (place.appendChild(document.createElement("span")));
  probe.hidden = true;
  let drawn = "";
  /** @type {HTMLElement | null} */
  let root = null;

  return ([one, other], names) => {
    if (!one || !other) return nothing;
    const size = { width: Math.max(place.clientWidth, LEAST_PX), height: HEIGHT_PX, pixel_ratio: 1, leaf_deg: 0 };
    const view = { ...size, ...SHOWN, system: sheet.session.system, palette: readPalette(probe), labels: sheet.strings.at("drawing") };
    const of = JSON.stringify([one, other, names, view]);
    if (drawn !== of) {
      drawn = of;
      root = draw(sheet, [one, other], names, view);
    }
    return root ?? nothing;
  };
}

/** @param {Sheet} sheet @param {any[]} jobs @param {string[]} names @param {import("../contract.d.ts").View} view @returns {HTMLElement | null} */
function draw({ core, strings }, jobs, names, view) {
  /** @type {InstanceType<typeof core.Calculation>[]} */
  const made = [];
  try {
    for (const job of jobs) made.push(new core.Calculation(job));
    return figure(made[0].pair_svg(made[1], names, view), strings.say("ranking.labels.side_by_side")).root;
  } catch (error) {
    if (Array.isArray(/** @type {any} */ (error).errors)) return null;
    throw error;
  } finally {
    for (const calculation of made) calculation.free();
  }
}

/** At its best place, else where the arm stands. @param {RankedOperator} one @param {(stands: Standing) => string} cell */
function of({ best, as_placed: placed }, cell) {
  const stands = best ?? placed;
  return stands ? cell(stands) : "";
}

/** @param {Sheet} sheet @param {Standing | null} stands */
function reserve(sheet, stands) {
  if (!stands || stands.rating.reserve === null) return "";
  return sheet.say("ranking.labels.reserve", { reserve: sheet.show(stands.rating.reserve, "ratio") });
}
