/**
 * The page's end of the search: asks when it is first needed, drops stale answers, and can give up.
 *
 * @typedef {{ kind: string, id: number } & Record<string, any>} Answer
 */

import { Thinker } from "../thinker.js";

export class Seeker {
  /** @param {(answer: Answer) => void} tell called with answers to the newest question only */
  constructor(tell) {
    this.tell = tell;
    this.id = 0;
    /** What of the newest question is still being answered: the search, the trade-off beside it. @type {Set<string>} */
    this.open = new Set();
    this.thinker = new Thinker(
      async (here) => (await import("./searches.js")).createSearches(here),
      (answer) => this.#told(answer),
      (message) => {
        this.stop();
        this.tell({ kind: "failed", id: this.id, errors: null, message });
      },
    );
  }

  get busy() {
    return this.open.size > 0;
  }

  /** @param {Record<string, unknown>} question */
  ask(question) {
    this.id += 1;
    this.open = new Set(["search"]);
    const asked = { ...question, id: this.id };
    this.thinker.send(asked, asked);
  }

  /** Asks about a place of the newest map. @param {number} column @param {number} row */
  askPad(column, row) {
    if (this.thinker.there) this.thinker.send({ kind: "pad", id: this.id, column, row });
  }

  /** Asks for the trade-off between torque and another aim, on the newest search's site. @param {any} job @param {string} aim @param {number} points */
  askFront(job, aim, points) {
    this.open.add("front");
    this.thinker.send({ kind: "front", id: this.id, job, aim, points });
  }

  /** Gives up: whoever searches is ended. */
  stop() {
    this.thinker.close();
    this.open.clear();
    this.id += 1;
  }

  /** @param {Answer} answer */
  #told(answer) {
    if (answer.id !== this.id) return;
    if (answer.kind === "done") this.open.delete("search");
    if (answer.kind === "front") this.open.delete("front");
    if (answer.kind === "failed") this.open.clear();
    this.tell(answer);
  }
}
