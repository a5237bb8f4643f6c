/** One number: its text, its value, the units it was typed in. The core is stood in for by a reader of a few texts. */

import { deepEqual, equal, throws } from "node:assert/strict";
import { test } from "node:test";

import { Entry } from "../../../www/app/entry.js";

/** Exact: the international foot is 0.3048 m (agreement of 1959). */
const FOOT = 0.3048;

/** What the core's reader throws. */
const unread = (code, readings = null) => Object.assign(new Error(code), { code, readings });

const core = {
  read(text, _quantity, system) {
    if (text === "") throw unread("empty");
    if (text === "1,500") throw unread("ambiguous", [1500, 1.5]);
    const number = Number(text);
    if (Number.isNaN(number)) throw unread("not_a_number");
    if (number > 1e6) throw new Error("broken");
    return system === "us" ? number * FOOT : number;
  },
  entered: (value, _quantity, system) => String(system === "us" ? value / FOOT : value),
};
const rule = { path: "leaf.length_m", quantity: "length", least: 0, most: 20, required: true, default: null, example: 3, usual: null, unless: null };
const entry = (start = 3) => new Entry(core, rule, start);

test("it starts as assumed, and goes back there", () => {
  const number = entry();
  deepEqual([number.assumed, number.text("metric"), number.fault()], [true, "3", null]);
  number.type("4", "metric");
  deepEqual([number.assumed, number.value], [false, 4]);
  number.reset();
  deepEqual([number.assumed, number.value, number.typed], [true, 3, null]);
});

test("the text stands as typed in its own units, and a change of units keeps the value to the bit", () => {
  const number = entry();
  number.type("10.0", "us");
  equal(number.value, 3.048);
  equal(number.text("us"), "10.0");
  number.unitsChanged("metric");
  equal(number.text("metric"), "3.048");
  equal(number.value, 3.048);
});

test("a text that is no number is a fault as the core tells one, with the text as found", () => {
  const number = entry();
  number.type("three", "metric");
  deepEqual(number.fault(), {
    path: "leaf.length_m", code: "not_a_number", found: "three", allowed: { kind: "range", least: 0, most: 20, quantity: "length" }, example: 3, values: [],
  });
  equal(number.text("us"), "three", "it has no value to convert");
  number.type("", "metric");
  deepEqual([number.value, number.fault()], [null, null], "whether it may be missing is the core's to say");
});

test("an ambiguous text has no value until somebody says which was meant", () => {
  const number = entry();
  number.type("1,500", "metric");
  deepEqual([number.fault()?.code, number.readings, number.value], ["ambiguous", [1500, 1.5], null]);
  number.type("1,500", "metric", 1);
  deepEqual([number.fault(), number.value, number.typed], [null, 1.5, { text: "1,500", system: "metric", meant: 1 }]);
});

test("what is no fault of reading goes through", () => {
  throws(() => entry().type("1e9", "metric"), /broken/);
});
