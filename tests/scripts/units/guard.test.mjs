/** The guard of the page: a plain script, run in a window that is stood in for. */

import { deepEqual, equal } from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { runInNewContext } from "node:vm";

const TEXT = readFileSync(new URL("../../../www/app/guard.js", import.meta.url), "utf8");

class Element {
  hidden = false;
  constructor(again = false) {
    this.again = again;
  }
  closest() {
    return this.again ? this : null;
  }
  toggleAttribute(_name, on) {
    this.hidden = on;
  }
}
class HTMLScriptElement extends Element {}
class HTMLLinkElement extends Element {
  rel = "stylesheet";
}

/** A page in which the guard stands. @param {{ there?: boolean, readyState?: string }} [state] */
function page({ there = false, readyState = "complete" } = {}) {
  const parts = { "#failed": new Element(), "#not-loaded": new Element(), "#unable": new Element(), "#loading": new Element() };
  parts["#failed"].hidden = true;
  const listeners = {};
  const reloads = [];
  const window = {
    Element, HTMLScriptElement, HTMLLinkElement, WebAssembly,
    addEventListener: (type, listener) => (listeners[type] = listener),
    customElements: { get: () => (there ? class {} : undefined) },
    document: { readyState, querySelector: (name) => parts[name], addEventListener: (type, listener) => (listeners[type] = listener) },
    location: { reload: () => reloads.push("page") },
  };
  // What listens hears the window itself, by its own name for it.
  runInNewContext(`globalThis.window = globalThis;${TEXT}`, window);
  const fire = (type, event) => listeners[type]({ preventDefault() {}, ...event });
  return { fire, reloads, shown: () => Object.keys(parts).filter((name) => !parts[name].hidden), again: () => fire("click", { target: new Element(true) }) };
}

test("a script or a style that does not come is told, and tried again by a new page", () => {
  for (const target of [new HTMLScriptElement(), new HTMLLinkElement()]) {
    const { fire, shown, again, reloads } = page();
    fire("error", { target });
    deepEqual(shown(), ["#failed", "#not-loaded"]);
    again();
    deepEqual([shown(), reloads], [["#not-loaded", "#loading"], ["page"]]);
  }
});

test("a picture that does not come is nothing to tell", () => {
  const { fire, shown } = page();
  fire("error", { target: new Element() });
  equal(shown().includes("#loading"), true);
});

test("what an element asks for again is asked for, and no page is loaded", () => {
  const { fire, again, reloads, shown } = page();
  const asked = [];
  let prevented = 0;
  for (const name of ["core", "words"]) fire("pintle-failed", { detail: { error: new Error(name), retry: () => asked.push(name) }, preventDefault: () => (prevented += 1) });
  deepEqual([prevented, shown()], [2, ["#failed", "#not-loaded"]]);
  again();
  deepEqual([asked, reloads], [["core", "words"], []]);
});

test("a browser that cannot is told apart from a file that is missing", () => {
  const { fire, shown } = page();
  fire("pintle-failed", { detail: { error: new WebAssembly.CompileError("no"), retry() {} } });
  deepEqual(shown(), ["#failed", "#unable"]);
});

test("while the page is still read, it is told when all of it is there", () => {
  const { fire, shown } = page({ readyState: "loading" });
  fire("error", { target: new HTMLScriptElement() });
  equal(shown().includes("#failed"), false);
  fire("DOMContentLoaded", {});
  equal(shown().includes("#failed"), true);
});
