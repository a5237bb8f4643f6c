/**
 * The search, off the page's thread, in a module of its own.
 *
 * A question carries a number; a newer one ends the map of an older one, whose answers nobody waits for. A question is:
 * `search` (the best set-out and the map), `pad` (a place of the map), `front` (torque against another aim); `rank`, `look`, `taken` and `stop` are about a
 * list of operators.
 */

import { createTurns } from "../operators/turns.js";
import { loadSearch } from "../search-core.js";

/** Milliseconds the map is worked on before messages are looked at. */
const TURN_MS = 16;
/** Places between two looks at the clock. */
const CHUNK = 64;

/** The newest search. */
let newest = 0;
/** @type {any} */
let map = null;

addEventListener("message", (event) => {
  const question = event.data;
  if (question.kind in RANKING) {
    turns.take(question);
    return;
  }
  if (question.kind === "search") newest = question.id;
  loadSearch().then((core) => ANSWERS[/** @type {keyof typeof ANSWERS} */ (question.kind)](core, question)).catch((error) => fail(question, error));
});

const ANSWERS = { search, pad, front };
const RANKING = { rank: true, look: true, taken: true, stop: true };
const turns = createTurns((answer) => postMessage(answer));

/** @param {import("../search-core.js").SearchCore} core @param {any} question */
async function search(core, question) {
  if (question.id !== newest) return;
  // A lattice takes longest: the map is there first.
  const steps = question.job.setout.step_m === null ? [best, places] : [places, best];
  for (const step of steps) {
    await step(core, question);
    await pause();
    if (question.id !== newest) return;
  }
  postMessage({ kind: "done", id: question.id });
}

/** @param {import("../search-core.js").SearchCore} core @param {any} question */
function best(core, { id, job }) {
  postMessage({ kind: "searching", id });
  const answer = core.set_out(job);
  const arm = answer.rule_of_thumb?.arm;
  postMessage({ kind: "found", id, answer, rule: arm ? core.weigh({ ...job, arm }) : null });
}

/** @param {import("../search-core.js").SearchCore} core @param {any} question */
async function places(core, { id, job, columns, rows }) {
  map?.free();
  map = new core.Pads(job, columns, rows);
  const all = columns * rows;
  let told = 0;
  let left = true;
  while (left) {
    const end = performance.now() + TURN_MS;
    do left = map.step(CHUNK);
    while (left && performance.now() < end);
    const done = map.done();
    postMessage({ kind: "progress", id, done, all });
    // A picture for each pass, which has four times the places of the one before.
    if (!left || done >= told * 4) {
      postMessage({ kind: "known", id, known: map.known(), done, all });
      told = done;
    }
    if (left) await pause();
    if (id !== newest) return;
  }
}

/** @param {import("../search-core.js").SearchCore} core @param {any} question */
function pad(core, { id, column, row }) {
  if (map && id === newest) postMessage({ kind: "pad", id, column, row, pad: map.pad(column, row) });
}

/** @param {import("../search-core.js").SearchCore} core @param {any} question */
function front(core, { id, job, aim, points }) {
  postMessage({ kind: "front", id, aim, points: core.front(job, aim, points) });
}

/** Lets messages in. @returns {Promise<void>} */
function pause() {
  return new Promise((resolve) => setTimeout(resolve, 0));
}

/** @param {any} question @param {any} error */
function fail({ id }, error) {
  postMessage({ kind: "failed", id, errors: Array.isArray(error?.errors) ? error.errors : null, message: String(error?.message ?? error) });
}
