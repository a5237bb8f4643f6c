/**
 * The cautions: the hazards named in every step, and spelled out in each that leads to work on the gate, or once somebody asks.
 *
 * @import { Sheet } from "./sheet.js"
 * @import { Step } from "./steps/index.js"
 */

import { h } from "./dom.js";

/** Sentences of the page, on the sheet that is printed as well. */
const NAMES = ["crush", "shear", "lift", "mains", "stored", "measure", "decide"];

/** @param {Sheet} sheet */
export function cautionSentences(sheet) {
  return NAMES.map((name) => sheet.say(`page.caution_${name}`));
}

/**
 * @param {Sheet} sheet
 * @returns {{ named: HTMLElement, root: HTMLElement, follow: (step: Step) => void }}
 */
export function createCautions(sheet) {
  const title = h("h2", { tabindex: "-1" }, sheet.say("page.cautions"));
  const root = h("section", { class: "cautions", part: "cautions" }, title, h("ul", {}, ...cautionSentences(sheet).map((text) => h("li", {}, text))));

  function show() {
    root.hidden = false;
    named.hidden = true;
    title.focus({ preventScroll: true });
    title.scrollIntoView({ block: "start" });
  }

  const named = h("button", { type: "button", class: "cautions-named", onclick: show }, sheet.say("page.cautions_named"));

  /** @param {Step} step */
  function follow({ works = false }) {
    root.hidden = !works;
    named.hidden = works;
  }

  return { named, root, follow };
}
