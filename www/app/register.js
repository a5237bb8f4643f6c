/**
 * The calculator under its usual name. The class comes by an import that can fail and be told: one of the modules behind it may be missing.
 */

import { tellFailed } from "./failed.js";

export const NAME = "pintle-calculator";

export function register() {
  import("./pintle-calculator.js").then(
    ({ PintleCalculator }) => {
      if (!customElements.get(NAME)) customElements.define(NAME, PintleCalculator);
    },
    (error) => {
      // A browser may remember that a module did not come as long as the page is there: only a new page asks for it again.
      for (const element of document.querySelectorAll(NAME)) tellFailed(element, error, () => location.reload());
    },
  );
}
