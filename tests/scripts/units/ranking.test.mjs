/** A ranking that is looked at in part, and the page's end of it. */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { lookAt } from "../../../www/app/operators/look.js";
import { OperatorRanker } from "../../../www/app/operators/ranker.js";

const one = (id, index, torque, does, verdict = "within") => ({ id, index, rated_torque_n_m: torque, does, as_placed: { rating: { verdict } } });
const ANSWER = {
  operators: [one("large", 0, 900, true), one("fair", 3, 400, true), one("weak", 1, 250, false, "over"), one("least", 2, 100, false, "over")],
  next_smaller: { index: 1, suggestions: [{ kind: "lighter_leaf" }] },
};
const OWN = { efficiency: false, body: false };
const LOOKED = { only: false, order: "reserve", most: 10, ids: [] };

test("the ranking's own order, or the smallest first; those that do alone; a part of them", () => {
  const ids = (looked) => lookAt(ANSWER, { ...LOOKED, ...looked }).rows.map(({ id }) => id);
  deepEqual(ids({}), ["large", "fair", "weak", "least"]);
  deepEqual(ids({ order: "torque" }), ["least", "weak", "fair", "large"]);
  deepEqual(ids({ only: true, order: "torque" }), ["fair", "large"]);
  deepEqual(ids({ most: 1 }), ["large"]);
  const { all, do: doing, next, stronger, wanted } = lookAt(ANSWER, { ...LOOKED, only: true, most: 1, ids: ["least"] });
  deepEqual([all, doing, next.id, stronger.id, wanted.map(({ id }) => id)], [2, 2, "weak", "fair", ["least"]]);
});

/** A worker that keeps what it is sent. */
class FakeWorker extends EventTarget {
  static made = [];
  sent = [];
  constructor() {
    super();
    FakeWorker.made.push(this);
  }
  postMessage(message) {
    this.sent.push(message);
  }
  terminate() {}
  answer(data) {
    this.dispatchEvent(Object.assign(new Event("message"), { data }));
  }
}

test("a list is handed over once; what is to be taken outlives a newer question; older answers are dropped", async () => {
  globalThis.location = { origin: "null" };
  globalThis.Worker = FakeWorker;
  const told = [];
  const ranker = new OperatorRanker((answer) => told.push(answer));
  const list = { operators: [] };
  ranker.rank({ job: 1 }, OWN, list, LOOKED);
  ranker.take("fair");
  ranker.rank({ job: 2 }, OWN, list, LOOKED);
  await Promise.resolve();
  const [worker] = FakeWorker.made;
  deepEqual(worker.sent.map(({ kind, id, list: given }) => [kind, id, given === list]), [["rank", 1, true], ["taken", 1, false], ["rank", 2, false], ["taken", 2, false]]);
  worker.answer({ kind: "taken", id: 1, operator: "fair" });
  equal(told.length, 0, "of the older question");
  worker.answer({ kind: "taken", id: 2, operator: "fair" });
  ranker.rank({ job: 3 }, OWN, list, LOOKED);
  await Promise.resolve();
  deepEqual([told.length, worker.sent.at(-1).kind], [1, "rank"], "taken, it is not asked for again");
});
