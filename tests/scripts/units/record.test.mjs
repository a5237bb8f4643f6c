/** A record from anywhere: nothing of another type or beyond all measure gets through. */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { readRecord } from "../../../www/app/record-reader.js";

const NOTHING = {
  system: undefined, operator: undefined, choices: {}, members: undefined, typed: {}, texts: {}, given: [], ticked: [], setout: undefined, site: undefined, obstacles: undefined, points: undefined,
};

test("nothing is a record of nothing, and whole", () => {
  for (const given of [undefined, null, {}]) deepEqual(readRecord(given), { record: NOTHING, whole: true });
});

test("a record comes through as it is", () => {
  const record = {
    system: "us",
    operator: null,
    choices: { hand: "left" },
    members: [null, { kind: "tube" }],
    typed: { "leaf.mass_kg": { text: "1,5", system: "metric", meant: 1 } },
    texts: { "record.by": "A" },
    given: ["leaf.length_m"],
    ticked: ["1 -0.2500 0.4500"],
    setout: { typed: { "setout.crank_m.0": { text: "2 ft", system: "us" } }, choices: { aim: "nearest_place" } },
    site: { means: [{ kind: "edge", way: "both", on: "leaf", monitored: true, reaches: ["edge"] }] },
    obstacles: [{ kind: "post", hinge_post: true, stops: ["arm"] }],
    points: 3,
  };
  deepEqual(readRecord(record), { record, whole: true });
});

test("what is no record at all is left out, and said so", () => {
  for (const given of [7, "record", true, [], () => 1]) deepEqual(readRecord(given), { record: NOTHING, whole: false });
});

test("each wrong part is left out alone", () => {
  const good = { text: "3", system: "metric" };
  const wrong = [
    [{ system: "imperial" }, "system"],
    [{ operator: 7 }, "operator"],
    [{ choices: { hand: 1 } }, "choices"],
    [{ members: ["tube"] }, "members"],
    [{ typed: { a: { text: 3, system: "metric" } } }, "typed"],
    [{ typed: { a: { text: "3", system: "metric", meant: 2 } } }, "typed"],
    [{ texts: { a: null } }, "texts"],
    [{ given: [3] }, "given"],
    [{ ticked: "1" }, "ticked"],
    [{ points: -1 }, "points"],
  ];
  for (const [given, name] of wrong) {
    const { record, whole } = readRecord(given);
    equal(whole, false, JSON.stringify(given));
    deepEqual(record[name], NOTHING[name], JSON.stringify(given));
  }
  const { record, whole } = readRecord({ typed: { good, bad: null } });
  deepEqual([record.typed, whole], [{ good }, false]);
});

test("what is longer or more than anything is left out", () => {
  const long = "1".repeat(1001);
  equal(readRecord({ typed: { a: { text: long.slice(1), system: "us" } } }).whole, true);
  equal(readRecord({ typed: { a: { text: long, system: "us" } } }).whole, false);
  equal(readRecord({ members: Array.from({ length: 201 }, () => null) }).record.members, undefined);
  const wall = { kind: "wall", hinge_post: false, stops: [] };
  equal(readRecord({ obstacles: Array.from({ length: 201 }, () => wall) }).record.obstacles, undefined);
  for (const bad of [{ ...wall, stops: [7] }, { ...wall, kind: 1 }, { ...wall, hinge_post: "yes" }, "wall"]) equal(readRecord({ obstacles: [bad] }).whole, false);
});
