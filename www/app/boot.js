/**
 * The first host of the elements: its language, its version, and what it says about working offline.
 */

import { startLanguage } from "./page-language.js";
import "./jobs/define.js";
import { keepLayout } from "./page-layout.js";
import { keepStep } from "./page-step.js";
import { watchNotices } from "./notice.js";
import { NAME, register } from "./register.js";

const jobs = /** @type {import("./jobs/pintle-jobs.js").PintleJobs} */ (document.querySelector("pintle-jobs"));
const calculator = /** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator"));
const language = startLanguage(document);

register();
keepLayout(calculator);
keepStep(calculator);

const stands = customElements.whenDefined(NAME).then(() => calculator.ready);
watchNotices(document, language, () => jobs.hold(), stands);

stands.then(() => {
  const version = /** @type {HTMLElement} */ (document.querySelector("#version"));
  language.each((strings) => (version.textContent = strings.say("page.version", { version: calculator.version ?? "" })));
});
