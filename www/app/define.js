/**
 * Registers the calculator under its usual name. A host that wants another name imports the class instead.
 *
 * The class comes by an import that can fail and be told: one of the many modules behind it may be missing.
 */

import { tellFailed } from "./failed.js";

const NAME = "pintle-calculator";

import("./pintle-calculator.js").then(
  ({ PintleCalculator }) => {
    if (!customElements.get(NAME)) customElements.define(NAME, PintleCalculator);
  },
  (error) => {
    // A browser may remember that a module did not come as long as the page is there: only a new page asks for it again.
    for (const element of document.querySelectorAll(NAME)) tellFailed(element, error, () => location.reload());
  },
);
