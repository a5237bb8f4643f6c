/**
 * The one polite status region: the verdict in a few words, once typing has paused.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { oldSentence } from "./verdict-line.js";

const PAUSE_MS = 700;

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createStatus(sheet) {
  const root = h("p", { class: "status", role: "status" });
  let timer = 0;

  function sentence() {
    if (sheet.stale || !sheet.result) return oldSentence(sheet);
    const { rating, peak } = sheet.result.plan;
    const word = sheet.say(`verdict.${rating.verdict}.word`);
    if (rating.reserve === null) return sheet.say("status.no_demand", { word });
    return sheet.say("status.result", {
      word,
      reserve: sheet.show(rating.reserve, "ratio"),
      angle: sheet.show(peak.leaf_deg, "angle"),
    });
  }

  function update() {
    clearTimeout(timer);
    timer = setTimeout(() => setText(root, sentence()), PAUSE_MS);
  }

  return { root, update };
}
