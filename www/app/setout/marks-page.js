/**
 * The marks on one page to take out to the gate, with the base at its true size: seen before it is printed.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends a print that is under way
 * @returns {Part}
 */
export function createMarksPage(sheet, signal) {
  const missing = h("p", { class: "error", role: "alert", hidden: true }, sheet.say("page.not_loaded"));
  const place = h("div", { class: "paper" });
  const show = h("button", { type: "button", class: "move show-marks-page", onclick: () => open() }, sheet.say("setout.fit.page.open"));
  const root = h("section", { class: "marks-page" }, show, missing, place);
  /** @type {{ update: () => void, close: () => void } | null} */
  let preview = null;

  async function open() {
    missing.hidden = true;
    try {
      const [{ createPreview }, { markPageBlocks }] = await Promise.all([import("../handover/preview.js"), import("../handover/drawings.js")]);
      if (signal.aborted) return;
      preview?.close();
      preview = await createPreview(sheet, place, signal, () => {
        preview = null;
        show.focus();
      }, markPageBlocks);
    } catch (error) {
      console.error("pintle-calculator", error);
      missing.hidden = false;
    }
  }

  function update() {
    root.hidden = sheet.result === null || sheet.stale;
    preview?.update();
  }

  return { root, update };
}
