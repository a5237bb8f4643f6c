/**
 * The searches for a place, a little at a time, so that whoever shares the thread gets a turn: in a worker, or on the page where there is none.
 *
 * A question carries a number; a newer one ends an older, whose answers nobody waits for. A question is: `search` (the best set-out and the
 * map), `pad` (a place of the map), `front` (torque against another aim), `stop`.
 *
 * @import { SearchCore } from "../search-core.js"
 */

import { inTurns, pause } from "../in-turns.js";
import { loadSearch } from "../search-core.js";

/** Places, and units of the search, between two looks at the clock. */
const PLACES = 64;
const WORK = 2;

/**
 * @param {(answer: any) => void} tell
 * @returns {{ take: (question: any) => void, close: () => void }}
 */
export function createSearches(tell) {
  /** The newest search. */
  let newest = 0;
  /** @type {InstanceType<SearchCore["Pads"]> | null} */
  let map = null;

  const answers = { search, pad, front };

  /** @param {any} question */
  function take(question) {
    if (question.kind === "search" || question.kind === "stop") newest = question.id;
    if (question.kind === "stop") return;
    loadSearch().then((core) => answers[/** @type {keyof typeof answers} */ (question.kind)](core, question)).catch((error) => fail(question, error));
  }

  /** @param {SearchCore} core @param {any} question */
  async function search(core, question) {
    if (question.id !== newest) return;
    // A lattice takes longest: the map is there first.
    const steps = question.job.setout.step_m === null ? [best, places] : [places, best];
    for (const step of steps) {
      await step(core, question);
      await pause();
      if (question.id !== newest) return;
    }
    tell({ kind: "done", id: question.id });
  }

  /** @param {SearchCore} core @param {any} question */
  async function best(core, { id, job }) {
    tell({ kind: "searching", id });
    const seeking = new core.Seeking(job);
    try {
      if (!(await inTurns(() => seeking.step(WORK), () => id === newest))) return;
      const answer = /** @type {NonNullable<ReturnType<typeof seeking.answer>>} */ (seeking.answer());
      const arm = answer.rule_of_thumb?.arm;
      tell({ kind: "found", id, answer, rule: arm ? core.weigh({ ...job, arm }) : null });
    } finally {
      seeking.free();
    }
  }

  /** @param {SearchCore} core @param {any} question */
  async function places(core, { id, job, columns, rows }) {
    map?.free();
    const made = (map = new core.Pads(job, columns, rows));
    const all = columns * rows;
    let told = 0;
    await inTurns(() => made.step(PLACES), () => id === newest, (left) => {
      const done = made.done();
      tell({ kind: "progress", id, done, all });
      // A picture for each pass, which has four times the places of the one before.
      if (!left || done >= told * 4) {
        tell({ kind: "known", id, known: made.known(), done, all });
        told = done;
      }
    });
  }

  /** @param {SearchCore} _core @param {any} question */
  function pad(_core, { id, column, row }) {
    if (map && id === newest) tell({ kind: "pad", id, column, row, pad: map.pad(column, row) });
  }

  /** @param {SearchCore} core @param {any} question */
  function front(core, { id, job, aim, points }) {
    tell({ kind: "front", id, aim, points: core.front(job, aim, points) });
  }

  /** @param {any} question @param {any} error */
  function fail({ id }, error) {
    tell({ kind: "failed", id, errors: Array.isArray(error?.errors) ? error.errors : null, message: String(error?.message ?? error) });
  }

  function close() {
    newest = -1;
    map?.free();
    map = null;
  }

  return { take, close };
}
