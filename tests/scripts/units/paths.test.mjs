/** Paths of the job: which rule and which words hold for them, and what they are a part of. */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { memberIndex, meansNumber, obstacleSide, rangeEnd, rulePath, uncertainInput, uncertaintyPath, wordsKey } from "../../../www/app/paths.js";
import { active, everything, optionOf, writable, written } from "../../../www/app/items.js";

test("an item of a list has the rule of every item, the storm that of the wind", () => {
  for (const [path, rule] of [
    ["leaf.mass_kg", "leaf.mass_kg"],
    ["leaf.members.12.wall_m", "leaf.members.wall_m"],
    ["storm.speed_m_s", "wind.speed_m_s"],
    ["storm.looked_at", "storm.looked_at"],
    ["operator.body.along_m.1", "operator.body.along_m"],
    ["obstacles.3.y_m.0", "obstacles.y_m"],
    ["obstacles.3.height_m", "obstacles.height_m"],
    ["site.means.0.area.2", "site.means.area.2"],
  ]) equal(rulePath(path), rule, path);
  equal(wordsKey("storm.speed_m_s"), "wind_speed_m_s");
});

test("places in lists are told apart from everything else", () => {
  equal(memberIndex("leaf.members.0.wall_m"), 0);
  equal(memberIndex("leaf.mass_kg"), null);
  equal(meansNumber("site.means.0.area.0"), 1);
  equal(meansNumber("obstacles.0.x_m.0"), null);
  deepEqual(obstacleSide("obstacles.1.y_m.1"), { number: 2, end: "to" });
  deepEqual(obstacleSide("obstacles.1.height_m"), { number: 2, end: "field" });
  equal(obstacleSide("obstacles.looked_at"), null);
  equal(rangeEnd("operator.body.along_m.0"), "from");
  equal(rangeEnd("setout.crank_m.0"), null);
  equal(uncertainInput(uncertaintyPath("leaf.mass_kg")), "leaf.mass_kg");
  equal(uncertainInput("leaf.mass_kg"), null);
});

const KIND = {
  path: "hinges.kind",
  options: ["plain", "measured"],
  usual: "plain",
  of: { plain: ["hinges.friction"], measured: ["hinges.pull_n", { when: "hand", is: "left", items: ["hinges.left_n"] }] },
};
const LOOKED = { path: "storm.looked_at", options: ["no", "yes"], usual: "no", writes: { no: {}, yes: {} }, signs: { yes: ["storm"] }, of: { yes: ["storm.speed_m_s"] } };

test("everything is each number once; what takes part follows the choices", () => {
  const items = ["leaf.mass_kg", KIND, "leaf.mass_kg"];
  deepEqual(everything(items).paths, ["leaf.mass_kg", "hinges.friction", "hinges.pull_n", "hinges.left_n"]);
  const chosen = (kind, hand) => active(items, (path) => (path === "hand" ? hand : kind)).paths;
  deepEqual(chosen("plain", "left"), ["leaf.mass_kg", "hinges.friction"]);
  deepEqual(chosen("measured", "left"), ["leaf.mass_kg", "hinges.pull_n", "hinges.left_n"]);
  deepEqual(chosen("measured", "right"), ["leaf.mass_kg", "hinges.pull_n"]);
});

test("the option of a job is what it says, by word or by what is there", () => {
  equal(optionOf(KIND, { hinges: { kind: "measured" } }), "measured");
  equal(optionOf(KIND, {}), "plain");
  equal(optionOf(KIND, { hinges: { kind: "odd" } }), "odd", "the core says what is wrong with it");
  equal(optionOf(KIND, { hinges: { kind: 7 } }), "7");
  equal(optionOf(LOOKED, { storm: { speed_m_s: 30 } }), "yes");
  equal(optionOf(LOOKED, { storm: null }), "no");
  deepEqual(written(KIND, "plain"), { "hinges.kind": "plain" });
  deepEqual(written(LOOKED, "yes"), {});
  deepEqual([writable(KIND), writable(LOOKED)], [["hinges.kind"], []]);
});
