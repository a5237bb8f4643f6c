/**
 * The first host of the element: its language, its version, and what it says about working offline.
 */

import "./define.js";
import { loadCore } from "./core.js";
import { restoreTyped, keepTyped } from "./kept.js";
import { keepLayout } from "./page-layout.js";
import { startLanguage } from "./page-language.js";
import { watchNotices } from "./notice.js";

const calculator = /** @type {import("./pintle-calculator.js").PintleCalculator} */ (document.querySelector("pintle-calculator"));
const language = startLanguage(document);

keepLayout(calculator);
restoreTyped(calculator);
watchNotices(document, language, () => keepTyped(calculator));

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
