/**
 * One operator of the list: its name and torque, the reserve where the arm stands and at its best place, why it will not do.
 *
 * @import { OperatorRefusal, RankedOperator, Standing } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 * @import { ListedOperator } from "./list.js"
 *
 * @typedef {object} Acts
 * @property {(id: string) => void} choose
 * @property {(id: string) => void} take
 * @property {(id: string, wanted: boolean) => void} compare
 * @property {string | null} chosen
 * @property {string[]} beside
 */

import { html, nothing } from "../lit-html.js";
import { verdictMark } from "../verdict-mark.js";
import { operatorName } from "./list.js";

/** @param {Sheet} sheet @param {{ operator: ListedOperator, ranked: RankedOperator | null }} one @param {Acts} acts */
export function rowOf(sheet, { operator, ranked }, { choose, take, compare, chosen, beside }) {
  const say = (/** @type {string} */ key) => sheet.say(`ranking.labels.${key}`);
  const { id } = operator;
  const name = operatorName(sheet, operator);
  const refusal = ranked?.refusal ?? null;
  return html`<div class="ranked-operator" data-operator=${id} part="operator">
    <label class="option operator"><input type="radio" name="operator" value=${id} .checked=${chosen === id} @change=${() => choose(id)}><span class="operator-name">${name}, <span class="quantity">${sheet.show(operator.rated_torque_n_m, "torque")}</span></span></label>
    ${ranked ? html`
      ${standing(sheet, say("as_placed"), ranked.as_placed, ranked.does)}
      ${standing(sheet, say("best"), ranked.best, ranked.does)}
      ${refusal ? html`<p class="refusal">${refusalSentence(sheet, refusal)}</p>` : nothing}
      <p class="row-acts">
        ${ranked.best ? html`<button type="button" class="move take" aria-label=${sheet.say("ranking.labels.take_named", { name })} @click=${() => take(id)}>${say("take")}</button>` : nothing}
        <label class="option"><input type="checkbox" .checked=${beside.includes(id)} @change=${(/** @type {any} */ event) => compare(id, event.target.checked)}><span>${say("compare")}</span></label>
      </p>` : nothing}
  </div>`;
}

/** @param {Sheet} sheet @param {string} where @param {Standing | null} stands @param {boolean} does whether it does anywhere: else one reason is told for all places */
function standing(sheet, where, stands, does) {
  if (!stands) return nothing;
  const { verdict, reserve } = stands.rating;
  // A place where it may not stand is no yes, whatever its torque.
  const state = stands.refusal && stands.refusal.code !== "reserve_too_small" ? "over" : verdict;
  const because = stands.refusal && does ? refusalSentence(sheet, stands.refusal) : "";
  return html`<p class="row-verdict"><span class="where">${where}</span> ${verdictMark(state)}<span>${reserve === null ? sheet.say("verdict.no_demand_short") : sheet.say("ranking.labels.reserve", { reserve: sheet.show(reserve, "ratio") })}</span></p>${because === "" ? nothing : html`<p class="refusal">${because}</p>`}`;
}

/** The one reason, with its number. @param {Sheet} sheet @param {OperatorRefusal} refusal */
export function refusalSentence(sheet, { code, limit, values }) {
  return sheet.say(`ranking.refusals.${code}`, { ...sheet.shown(values), limit_name: limit ? sheet.say(`setout.limits.${limit}`) : "" });
}
