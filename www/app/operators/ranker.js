/**
 * The page's end of the ranking: asks a worker or, where none may be had, the page's own thread in turns; drops stale answers, and can give up.
 *
 * @import { Looked, Question, Ranked } from "./turns.js"
 *
 * @typedef {{ kind: "ranked", id: number, ranked: Ranked, progress: import("../contract.d.ts").RankProgress } | { kind: "taken", id: number, operator: string, job: any } | { kind: "failed", id: number, errors: any[] | null, message: string }} Answer
 */

import { fileAt } from "../files.js";
import { startWorker } from "../start-worker.js";

export class OperatorRanker {
  /** @param {(answer: Answer) => void} tell called with answers to the newest question only */
  constructor(tell) {
    this.tell = tell;
    this.id = 0;
    /** Takes a question, once somebody is there to take it. @type {Promise<{ take: (question: Question) => void, close: () => void }> | null} */
    this.taker = null;
    /** The last question with a job in it, for whoever stands in. @type {Question | null} */
    this.asked = null;
    /** The operator that is to be taken, until it is: a question that comes between does not lose it. @type {string | null} */
    this.wanted = null;
  }

  /** @param {any} job @param {unknown} list @param {Looked} looked */
  rank(job, list, looked) {
    this.asked = { kind: "rank", id: (this.id += 1), job, list, looked };
    this.#send(this.asked);
    if (this.wanted !== null) this.take(this.wanted);
  }

  /** Looks at more or other parts of the answer that is there or coming. @param {Looked} looked */
  look(looked) {
    if (this.asked?.kind === "rank") this.asked = { ...this.asked, looked };
    this.#send({ kind: "look", id: this.id, looked });
  }

  /** Asks for the job with an operator in it, at its best place. @param {string} operator */
  take(operator) {
    this.wanted = operator;
    this.#send({ kind: "taken", id: this.id, operator });
  }

  /** Gives up what is not done. */
  stop() {
    this.id += 1;
    this.wanted = null;
    if (this.taker) this.#send({ kind: "stop", id: this.id });
  }

  close() {
    this.id += 1;
    this.taker?.then(({ close }) => close());
    this.taker = null;
  }

  /** @param {Question} question */
  #send(question) {
    this.taker ??= this.#start();
    this.taker.then(({ take }) => take(question)).catch((error) => this.#told({ kind: "failed", id: this.id, errors: null, message: String(error) }));
  }

  /** @param {Answer} answer */
  #told = (answer) => {
    if (answer.id !== this.id) return;
    if (answer.kind === "taken") this.wanted = null;
    this.tell(answer);
  };

  #start() {
    try {
      return Promise.resolve(this.#worker());
    } catch {
      // The page's policy has no worker.
      return this.#here();
    }
  }

  #worker() {
    const worker = startWorker(fileAt("app/setout/worker.js"));
    let heard = false;
    worker.addEventListener("message", ({ data }) => {
      heard = true;
      this.#told(data);
    });
    worker.addEventListener("error", () => {
      worker.terminate();
      // One that never spoke was refused or not found: the page does it itself. One that breaks later starts anew with the next question.
      this.taker = heard ? null : this.#here();
      if (heard) this.#told({ kind: "failed", id: this.id, errors: null, message: "" });
      else if (this.asked) this.#send({ ...this.asked, id: this.id });
    });
    return { take: (/** @type {Question} */ question) => worker.postMessage(question), close: () => worker.terminate() };
  }

  async #here() {
    const { createTurns } = await import("./turns.js");
    return createTurns(/** @type {(answer: any) => void} */ (this.#told));
  }
}
