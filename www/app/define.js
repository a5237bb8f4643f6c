/** Registers the calculator under its usual name. A host that wants another name imports the class instead. */

import { PintleCalculator } from "./pintle-calculator.js";

if (!customElements.get("pintle-calculator")) customElements.define("pintle-calculator", PintleCalculator);

export { PintleCalculator };
