/**
 * Ranks a list of operators a little at a time, so that whoever shares the thread gets a turn: in a worker, or on the page where there is none.
 *
 * A question carries a number, and a newer one ends an older. `rank` gives a job and how much of the answer is looked at; `look` changes only the
 * latter; `taken` asks for the job with an operator in it; `stop` gives up.
 *
 * @import { OperatorRanking } from "../contract.d.ts"
 * @import { Looked } from "./look.js"
 * @import { SearchCore } from "../search-core.js"
 *
 * @typedef {{ efficiency: boolean, body: boolean }} Own what the person said of the operator, which holds for every one of the list
 *
 * @typedef {{ kind: "rank", id: number, job: any, own: Own, list: unknown | null, looked: Looked } | { kind: "look", id: number, looked: Looked } | { kind: "taken", id: number, operator: string } | { kind: "stop", id: number }} Question
 */

import { inTurns } from "../in-turns.js";
import { loadSearch } from "../search-core.js";
import { lookAt } from "./look.js";

/** Units of work between two looks at the clock. */
const WORK = 2;
/** Milliseconds between two answers on the way: a long list costs something to hand over. */
const TOLD_MS = 250;

/** @param {(answer: any) => void} tell */
export function createTurns(tell) {
  let newest = 0;
  /** The list, which comes with the first question. @type {unknown} */
  let list = null;
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
  async function rank({ id, job, own, list: given }) {
    list = given ?? list;
    const core = await loadSearch();
    if (id !== newest) return;
    if (ranker) ranker.renew(job, list, own.efficiency, own.body);
    else ranker = new core.Ranker(job, list, own.efficiency, own.body);
    begun = id;
    whole = false;
    let told = performance.now();
    const made = ranker;
    await inTurns(() => made.step(WORK), () => id === newest, (left) => {
      if (left && performance.now() <= told + TOLD_MS) return;
      answer = made.answer();
      whole = !left;
      say(id);
      give();
      told = performance.now();
    });
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
    if (!answer || !looked || !ranker) return;
    const jobs = looked.ids.map((one) => [one, begun === id ? ranker?.taken(one) : null]);
    tell({ kind: "ranked", id, ranked: { ...lookAt(answer, looked), jobs: Object.fromEntries(jobs), whole }, progress: ranker.progress() });
  }

  return { take, close: () => ranker?.free() };
}
