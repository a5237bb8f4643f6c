/**
 * The page's end of the ranking: asks when it is first needed, drops stale answers, and can give up.
 *
 * @import { Looked, Ranked } from "./look.js"
 * @import { Own, Question } from "./turns.js"
 *
 * @typedef {{ kind: "ranked", id: number, ranked: Ranked, progress: import("../contract.d.ts").RankProgress } | { kind: "taken", id: number, operator: string, job: any } | { kind: "failed", id: number, errors: any[] | null, message: string }} Answer
 */

import { Thinker } from "../thinker.js";

export class OperatorRanker {
  /** @param {(answer: Answer) => void} tell called with answers to the newest question only */
  constructor(tell) {
    this.tell = tell;
    this.id = 0;
    /** The list that whoever ranks has. @type {unknown} */
    this.given = null;
    /** The operator that is to be taken, until it is: a question that comes between does not lose it. @type {string | null} */
    this.wanted = null;
    this.thinker = new Thinker(
      async (here) => (await import("./turns.js")).createTurns(here),
      (answer) => this.#told(answer),
      (message) => this.#told({ kind: "failed", id: this.id, errors: null, message }),
    );
  }

  /** @param {any} job @param {Own} own @param {unknown} list @param {Looked} looked */
  rank(job, own, list, looked) {
    /** @type {Question} */
    const asked = { kind: "rank", id: (this.id += 1), job, own, list, looked };
    // Handing over a long list takes a while: who has it is not given it again.
    const has = this.thinker.there && this.given === list;
    this.given = list;
    this.thinker.send(has ? { ...asked, list: null } : asked, asked);
    if (this.wanted !== null) this.take(this.wanted);
  }

  /** Looks at more or other parts of the answer that is there or coming. @param {Looked} looked */
  look(looked) {
    this.thinker.send({ kind: "look", id: this.id, looked });
  }

  /** Asks for the job with an operator in it, at its best place. @param {string} operator */
  take(operator) {
    this.wanted = operator;
    this.thinker.send({ kind: "taken", id: this.id, operator });
  }

  /** Gives up what is not done. */
  stop() {
    this.id += 1;
    this.wanted = null;
    if (this.thinker.there) this.thinker.send({ kind: "stop", id: this.id });
  }

  close() {
    this.id += 1;
    this.thinker.close();
  }

  /** @param {Answer} answer */
  #told(answer) {
    if (answer.id !== this.id) return;
    if (answer.kind === "taken") this.wanted = null;
    this.tell(answer);
  }
}
