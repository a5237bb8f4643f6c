/**
 * What of a ranking is looked at: a long list is shown, and handed over, in part.
 *
 * @import { OperatorRanking, RankedOperator } from "../contract.d.ts"
 *
 * @typedef {"reserve" | "torque"} Order
 * @typedef {object} Looked what of the answer is looked at
 * @property {boolean} only only those that do
 * @property {Order} order the ranking's own order, or the smallest torque first
 * @property {number} most rows
 * @property {string[]} ids those wanted in any case: what is chosen, what is compared
 *
 * @typedef {object} Ranked
 * @property {RankedOperator[]} rows
 * @property {RankedOperator[]} wanted those of `ids`
 * @property {Record<string, any>} jobs the job with each of `ids` in it, at its best place; null for one that is not looked at yet
 * @property {number} all how many there are after `only`
 * @property {number} do how many do
 * @property {{ id: string, suggestions: import("../contract.d.ts").Suggestion[] } | null} next the next smaller one, and what would make it do
 * @property {RankedOperator | null} stronger the smallest that is within its rated torque where the arm stands
 * @property {boolean} whole whether all of the list was looked at
 */

/** The part of an answer that is looked at. @param {OperatorRanking} answer @param {Looked} looked @returns {Omit<Ranked, "whole" | "jobs">} */
export function lookAt({ operators, next_smaller: next }, { only, order, most, ids }) {
  const doing = operators.filter((one) => one.does);
  const rows = only ? doing : [...operators];
  const bySize = (/** @type {RankedOperator} */ a, /** @type {RankedOperator} */ b) => a.rated_torque_n_m - b.rated_torque_n_m || a.index - b.index;
  if (order === "torque") rows.sort(bySize);
  const smaller = operators.find(({ index }) => index === next?.index);
  const placed = operators.filter((one) => one.as_placed?.rating.verdict === "within").sort(bySize);
  return {
    rows: rows.slice(0, most),
    wanted: operators.filter(({ id }) => ids.includes(id)),
    all: rows.length,
    do: doing.length,
    next: smaller && next ? { id: smaller.id, suggestions: next.suggestions } : null,
    stronger: placed[0] ?? null,
  };
}
