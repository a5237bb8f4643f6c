/**
 * The page's end of the search: starts the worker when it is first needed, drops stale answers, and can give up.
 *
 * @typedef {{ kind: string, id: number } & Record<string, any>} Answer
 */

import { fileAt } from "../files.js";
import { startWorker } from "../start-worker.js";

export class Seeker {
  /** @param {(answer: Answer) => void} tell called with answers to the newest question only */
  constructor(tell) {
    this.tell = tell;
    this.id = 0;
    /** @type {Worker | null} */
    this.worker = null;
    /** What of the newest question is still being answered: the search, the trade-off beside it. @type {Set<string>} */
    this.open = new Set();
  }

  get busy() {
    return this.open.size > 0;
  }

  /** @param {Record<string, unknown>} question */
  ask(question) {
    this.id += 1;
    this.open = new Set(["search"]);
    this.#send({ ...question, id: this.id });
  }

  /** Asks about a place of the newest map. @param {number} column @param {number} row */
  askPad(column, row) {
    if (this.worker) this.#send({ kind: "pad", id: this.id, column, row });
  }

  /** Asks for the trade-off between torque and another aim, on the newest search's site. @param {any} job @param {string} aim @param {number} points */
  askFront(job, aim, points) {
    this.open.add("front");
    this.#send({ kind: "front", id: this.id, job, aim, points });
  }

  /** Gives up: a core that is searching hears nothing, so its worker goes. */
  stop() {
    this.worker?.terminate();
    this.worker = null;
    this.open.clear();
    this.id += 1;
  }

  /** @param {Record<string, unknown>} message */
  #send(message) {
    this.worker ??= this.#start();
    this.worker.postMessage(message);
  }

  #start() {
    const worker = startWorker(fileAt("app/setout/worker.js"));
    worker.addEventListener("message", ({ data }) => {
      if (data.id !== this.id) return;
      if (data.kind === "done") this.open.delete("search");
      if (data.kind === "front") this.open.delete("front");
      if (data.kind === "failed") this.open.clear();
      this.tell(data);
    });
    worker.addEventListener("error", (event) => {
      this.stop();
      this.tell({ kind: "failed", id: this.id, errors: null, message: event.message });
    });
    return worker;
  }
}
