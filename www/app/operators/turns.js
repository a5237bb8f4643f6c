/**
 * Ranks a list of operators a little at a time, so that whoever shares the thread gets a turn: in a worker, or on the page where there is none.
 *
 * A question carries a number, and a newer one ends an older. `rank` gives a job and how much of the answer is looked at; `look` changes only the
 * latter; `taken` asks for the job with an operator in it; `stop` gives up.
 *
 * @import { OperatorRanking, RankedOperator } from "../contract.d.ts"
 * @import { SearchCore } from "../search-core.js"
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
 * @property {number} all how many there are after `only`
 * @property {number} do how many do
 * @property {{ id: string, suggestions: import("../contract.d.ts").Suggestion[] } | null} next the next smaller one, and what would make it do
 * @property {RankedOperator | null} stronger the smallest that is within its rated torque where the arm stands
 * @property {boolean} whole whether all of the list was looked at
 *
 * @typedef {{ kind: "rank", id: number, job: any, list: unknown, looked: Looked } | { kind: "look", id: number, looked: Looked } | { kind: "taken", id: number, operator: string } | { kind: "stop", id: number }} Question
 */

import { loadSearch } from "../search-core.js";

/** Milliseconds of a turn, and units of work between two looks at the clock. */
const TURN_MS = 16;
const WORK = 2;
/** Milliseconds between two answers on the way: a long list costs something to hand over. */
const TOLD_MS = 250;

/** @param {(answer: any) => void} tell */
export function createTurns(tell) {
  let newest = 0;
  /** @type {InstanceType<SearchCore["Ranker"]> | null} */
  let ranker = null;
  /** @type {OperatorRanking | null} */
  let answer = null;
  /** @type {Looked | null} */
  let looked = null;
  let whole = false;
  /** The question whose job the ranker has. */
  let begun = 0;
  /** What is to be taken, until it was looked at. @type {Question & { kind: "taken" } | null} */
  let wanted = null;

  /** @param {Question} question */
  function take(question) {
    newest = question.id;
    if (question.kind === "stop") return;
    if (question.kind === "taken") {
      wanted = question;
      give();
      return;
    }
    looked = question.looked;
    if (question.kind === "look") say(question.id);
    else rank(question).catch((error) => tell({ kind: "failed", id: question.id, errors: error?.errors ?? null, message: String(error?.message ?? error) }));
  }

  /** @param {Question & { kind: "rank" }} question */
  async function rank({ id, job, list }) {
    const core = await loadSearch();
    if (id !== newest) return;
    if (ranker) ranker.renew(job, list);
    else ranker = new core.Ranker(job, list);
    begun = id;
    whole = false;
    let told = performance.now();
    for (let left = true; left; ) {
      const end = performance.now() + TURN_MS;
      do left = ranker.step(WORK);
      while (left && performance.now() < end);
      if (!left || performance.now() > told + TOLD_MS) {
        answer = ranker.answer();
        whole = !left;
        say(id);
        give();
        told = performance.now();
      }
      if (left) await new Promise((resolve) => setTimeout(resolve, 0));
      if (id !== newest) return;
    }
  }

  /** The job with the operator that is wanted. */
  function give() {
    const job = wanted && wanted.id === newest && begun === newest ? ranker?.taken(wanted.operator) : null;
    if (!wanted || !job) return;
    const { id, operator } = wanted;
    wanted = null;
    tell({ kind: "taken", id, operator, job });
  }

  /** @param {number} id */
  function say(id) {
    if (answer && looked && ranker) tell({ kind: "ranked", id, ranked: { ...lookAt(answer, looked), whole }, progress: ranker.progress() });
  }

  return { take, close: () => ranker?.free() };
}

/** @param {OperatorRanking} answer @param {Looked} looked @returns {Omit<Ranked, "whole">} */
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
