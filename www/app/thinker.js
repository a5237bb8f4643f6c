/**
 * Whoever takes questions off the page's hands: the worker that searches or, where none may be had, the page's own thread in turns.
 *
 * @typedef {{ take: (question: any) => void, close: () => void }} Taker
 */

import { fileAt } from "./files.js";
import { startWorker } from "./start-worker.js";

export class Thinker {
  /** @type {Promise<Taker> | null} */
  #taker = null;
  /** What whoever stands in has to be asked. @type {any} */
  #asked = null;

  /**
   * @param {(tell: (answer: any) => void) => Promise<Taker>} here who does it on the page's thread
   * @param {(answer: any) => void} tell
   * @param {(message: string) => void} broken nobody answers any more; the next question begins anew
   */
  constructor(here, tell, broken) {
    this.here = here;
    this.tell = tell;
    this.broken = broken;
  }

  /** Whether somebody is there, or on the way. */
  get there() {
    return this.#taker !== null;
  }

  /** @param {any} question @param {any} [standIn] what one who stands in is asked instead; nothing where the question rests on others */
  send(question, standIn = null) {
    if (standIn !== null) this.#asked = standIn;
    const taker = (this.#taker ??= this.#start());
    taker.then(({ take }) => take(question)).catch((error) => {
      if (this.#taker !== taker) return;
      this.#taker = null;
      this.broken(String(error?.message ?? error));
    });
  }

  /** Ends whoever is there. */
  close() {
    this.#taker?.then(({ close }) => close(), () => {});
    this.#taker = null;
    this.#asked = null;
  }

  #start() {
    try {
      return Promise.resolve(this.#worker());
    } catch {
      // The page's policy has no worker.
      return this.here(this.tell);
    }
  }

  #worker() {
    const worker = startWorker(fileAt("app/setout/worker.js"));
    let heard = false;
    let ended = false;
    const end = () => {
      ended = true;
      worker.terminate();
    };
    worker.addEventListener("message", ({ data }) => {
      heard = true;
      this.tell(data);
    });
    worker.addEventListener("error", (event) => {
      // Somebody else may be there by now.
      if (ended) return;
      end();
      // One that never spoke was refused or did not come: the page does it itself.
      this.#taker = heard ? null : this.here(this.tell);
      if (heard) this.broken(event.message);
      else if (this.#asked) this.send(this.#asked);
    });
    return { take: (/** @type {any} */ question) => worker.postMessage(question), close: end };
  }
}
