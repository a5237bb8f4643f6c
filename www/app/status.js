/**
 * The one polite status region: the verdict in a few words, once typing has paused.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { begunSentence, oldSentence } from "./begun.js";
import { h, setText } from "./dom.js";
import { judged, stopSentences } from "./judged.js";

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
    const { plan } = sheet.result;
    const { rating, peak } = plan;
    const { word, about } = judged(sheet, plan);
    if (plan.overall.stops > 0) return sheet.say("status.stop", { word, about, finding: stopSentences(sheet, plan)[0] });
    if (rating.reserve === null) return sheet.say("status.no_demand", { word, about });
    return sheet.say("status.result", {
      word,
      about,
      reserve: sheet.show(rating.reserve, "ratio"),
      angle: sheet.show(peak.leaf_deg, "angle"),
    });
  }

  function update() {
    clearTimeout(timer);
    timer = setTimeout(() => setText(root, [sentence(), sheet.stale ? "" : begunSentence(sheet)].join(" ").trim()), PAUSE_MS);
  }

  return { root, update };
}
