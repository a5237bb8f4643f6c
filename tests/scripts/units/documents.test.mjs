/** Documents by dotted path, and whether two are one job. */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { get, put, remove } from "../../../www/app/document.js";
import { covers, sameJob } from "../../../www/app/jobs/same.js";

test("what is not there is undefined, however deep", () => {
  const job = { leaf: { mass_kg: 300, members: [{ wall_m: 0.003 }] }, storm: null };
  equal(get(job, "leaf.mass_kg"), 300);
  equal(get(job, "leaf.members.0.wall_m"), 0.003);
  for (const path of ["wind", "wind.speed_m_s", "storm.speed_m_s", "leaf.mass_kg.no", "leaf.members.1.wall_m"]) equal(get(job, path), undefined, path);
});

test("a value makes the objects on its way, and a list where a number stands", () => {
  const job = { site: null };
  put(job, "wind.speed_m_s", 20);
  put(job, "site.means.0.reaches.0", 2);
  deepEqual(job, { site: { means: [{ reaches: [2] }] }, wind: { speed_m_s: 20 } });
});

test("what is taken away takes the objects along that are empty without it, and no other", () => {
  const job = { record: { pull: { open_n: 1 } }, settings: { a: 1, b: 2 } };
  remove(job, "record.pull.open_n");
  remove(job, "settings.a");
  remove(job, "settings.no.such");
  deepEqual(job, { settings: { b: 2 } });
});

test("a job is the same in another order of keys, with nothing said as null, under another name", () => {
  const kept = { title: "Yard", leaf: { mass_kg: 300, height_m: null }, hand: "left", entry: { typed: {} } };
  equal(sameJob(kept, { hand: "left", leaf: { mass_kg: 300 }, title: "Yard (2)", record: { pull_n: 3 } }), true);
  equal(sameJob(kept, { hand: "left", leaf: { mass_kg: 301 } }), false);
  equal(sameJob({ list: [1, 2] }, { list: [2, 1] }), false, "the order of a list says something");
});

test("a document covers another that has nothing beside the job which it lacks", () => {
  const measured = { record: { pull_n: 3 }, entry: { typed: { "leaf.mass_kg": { text: "300" } } } };
  equal(covers(measured, {}), true);
  equal(covers({}, measured), false);
  equal(covers(measured, { record: { pull_n: 3 } }), true);
  equal(covers(measured, { record: { pull_n: 4 } }), false);
});
