/**
 * The first host of the elements: its language, its version, and what it says about working offline.
 */

import "./define.js";
import { loadCore } from "./core.js";
import "./jobs/define.js";
import { keepLayout } from "./page-layout.js";
import { startLanguage } from "./page-language.js";
import { watchNotices } from "./notice.js";

const jobs = /** @type {import("./jobs/pintle-jobs.js").PintleJobs} */ (document.querySelector("pintle-jobs"));
const language = startLanguage(document);

keepLayout(/** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator")));
watchNotices(document, language, () => jobs.hold());

loadCore().then(
  async (core) => {
    const version = /** @type {HTMLElement} */ (document.querySelector("#version"));
    language.each((strings) => (version.textContent = strings.say("page.version", { version: core.version() })));
  },
  () => {
    const said = document.querySelector("[data-string=loading]");
    said?.setAttribute("data-string", "failed");
    language.fill();
  },
);
