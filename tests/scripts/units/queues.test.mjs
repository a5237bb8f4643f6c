/** Work that waits: pieces a task, questions to the worker, the leaf angle that is looked at. */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { Cursor } from "../../../www/app/cursor.js";
import { Later } from "../../../www/app/later.js";
import { Seeker } from "../../../www/app/setout/seeker.js";

/** A clock that goes when it is told to. */
function standInClock(context) {
  const { setTimeout, clearTimeout } = globalThis;
  const waiting = new Map();
  let now = 0;
  let made = 0;
  globalThis.setTimeout = (run, pause = 0) => waiting.set((made += 1), { run, at: now + Math.max(pause, 1) }) && made;
  globalThis.clearTimeout = (id) => waiting.delete(id);
  context.after(() => Object.assign(globalThis, { setTimeout, clearTimeout }));
  return (ms) => {
    now += ms;
    for (const [id, { run, at }] of [...waiting]) if (at <= now && waiting.delete(id)) run();
  };
}

test("a piece a task; new work ends the old", (context) => {
  const tick = standInClock(context);
  const done = [];
  function* work(name) {
    for (let piece = 1; piece <= 3; piece += 1) yield done.push(`${name}${piece}`);
  }
  const later = new Later();
  later.run(work("a"));
  deepEqual(done, [], "nothing at once");
  tick(1);
  tick(1);
  deepEqual(done, ["a1", "a2"]);
  later.run(work("b"), 100);
  tick(99);
  deepEqual(done, ["a1", "a2"]);
  for (let task = 0; task < 9; task += 1) tick(1);
  deepEqual(done, ["a1", "a2", "b1", "b2", "b3"]);
  later.run(work("c"));
  later.stop();
  tick(10);
  equal(done.length, 5);
});

/** Workers that keep what they are sent. */
class FakeWorker extends EventTarget {
  static made = [];
  sent = [];
  ended = false;
  constructor() {
    super();
    FakeWorker.made.push(this);
  }
  postMessage(message) {
    this.sent.push(message);
  }
  terminate() {
    this.ended = true;
  }
  answer(data) {
    this.dispatchEvent(Object.assign(new Event("message"), { data }));
  }
}

globalThis.location = { origin: "null" };

test("the worker starts with the first question; answers to older ones are dropped", async () => {
  globalThis.Worker = FakeWorker;
  const told = [];
  const seeker = new Seeker((answer) => told.push(answer));
  seeker.askPad(1, 2);
  equal(FakeWorker.made.length, 0, "no map, no worker");
  seeker.ask({ kind: "search" });
  seeker.ask({ kind: "search" });
  await Promise.resolve();
  const [worker] = FakeWorker.made;
  deepEqual(worker.sent.map(({ id }) => id), [1, 2]);
  worker.answer({ kind: "done", id: 1 });
  deepEqual([told.length, seeker.busy], [0, true]);
  worker.answer({ kind: "known", id: 2 });
  deepEqual([told.length, seeker.busy], [1, true]);
  worker.answer({ kind: "done", id: 2 });
  deepEqual([told.length, seeker.busy], [2, false]);
});

test("one that is given up is ended, and the next question goes to another", async () => {
  FakeWorker.made = [];
  const told = [];
  const seeker = new Seeker((answer) => told.push(answer));
  seeker.ask({ kind: "search" });
  seeker.stop();
  await Promise.resolve();
  const [first] = FakeWorker.made;
  deepEqual([first.ended, seeker.busy], [true, false]);
  first.answer({ kind: "done", id: 1 });
  equal(told.length, 0);
  seeker.ask({ kind: "search" });
  const [, second] = FakeWorker.made;
  second.answer({ kind: "progress", id: 3 });
  told.length = 0;
  second.dispatchEvent(Object.assign(new Event("error"), { message: "no memory" }));
  deepEqual(told.map(({ kind, message }) => [kind, message]), [["failed", "no memory"]]);
  deepEqual([second.ended, seeker.busy], [true, false]);
});

test("the angle follows what decides until somebody moves it, and stays within the swing", () => {
  const cursor = new Cursor();
  let moves = 0;
  cursor.addEventListener("move", () => (moves += 1));
  cursor.rest(95, 40.5);
  deepEqual([cursor.leafDeg, moves], [40.5, 0]);
  cursor.step(1);
  equal(cursor.leafDeg, 41);
  cursor.step(-1);
  equal(cursor.leafDeg, 40);
  cursor.moveTo(1000);
  equal(cursor.leafDeg, 95);
  cursor.rest(90, 30);
  equal(cursor.leafDeg, 90, "no further than it opens now");
  const key = (name) => cursor.key({ key: name, preventDefault() {} });
  key("Home");
  key("PageUp");
  equal(cursor.leafDeg, 10);
  cursor.toDeciding();
  deepEqual([cursor.leafDeg, cursor.followsDeciding], [30, true]);
});
