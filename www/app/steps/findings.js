/**
 * What was found about the subjects of a step, the most severe first, each with the one thing to do about it.
 *
 * @import { Subject } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingItem } from "../findings.js";

/**
 * @param {Sheet} sheet
 * @param {Subject[]} subjects
 * @returns {Part}
 */
export function createFindings(sheet, subjects) {
  const list = h("ul", { class: "findings", part: "findings" });
  const root = h("section", { class: "found" }, h("h3", {}, sheet.say("findings.title")), list);
  let drawn = "";

  function update() {
    const found = sheet.result?.plan.findings.filter(({ about }) => subjects.includes(about)) ?? [];
    root.hidden = found.length === 0;
    root.classList.toggle("stale", sheet.stale);
    const text = JSON.stringify([found, sheet.session.system]);
    if (text === drawn) return;
    drawn = text;
    list.replaceChildren(...found.map((finding) => findingItem(sheet, finding)));
  }

  return { root, update };
}
