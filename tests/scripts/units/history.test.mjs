/**
 * What is taken back, and what a change is told as.
 */

import { deepEqual, equal } from "node:assert/strict";
import { test } from "node:test";

import { History } from "../../../www/app/shell/history.js";
import { Was } from "../../../www/app/shell/was.js";

/** Something that is said, and its history. */
function begun() {
  const said = { value: 0 };
  const history = new History(() => ({ ...said }), (before) => Object.assign(said, before));
  /** @param {number} value @param {string} about */
  const say = (value, about = "") => {
    said.value = value;
    history.note(about);
  };
  return { said, history, say };
}

test("keys in one field are one change, and another visit to it is another", () => {
  const { said, history, say } = begun();
  say(1, "weight");
  say(12, "weight");
  history.note("");
  say(3, "weight");
  history.undo();
  equal(said.value, 12);
  history.undo();
  deepEqual([said.value, history.canUndo], [0, false]);
});

test("choices are a change each", () => {
  const { said, history, say } = begun();
  say(1);
  say(2);
  history.undo();
  equal(said.value, 1);
});

test("what somebody else brought is not taken back", () => {
  const { said, history, say } = begun();
  said.value = 7;
  history.accept();
  equal(history.canUndo, false);
  say(8);
  history.undo();
  equal(said.value, 7);
});

test("what a figure was stays until the next change, and keys that follow one another are one", () => {
  const was = new Was();
  equal(was.before("1.3", false, 0), "");
  equal(was.before("1.4", false, 5000), "1.3");
  equal(was.before("1.5", false, 5200), "1.3");
  equal(was.before("1.5", false, 9000), "1.3");
  // An old figure says nothing of a change.
  equal(was.before("9", true, 12000), "1.3");
  equal(was.before("1.6", false, 20000), "1.5");
});
