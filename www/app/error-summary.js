/**
 * Everything that keeps the page from a new result, with a way to each field.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";
import { faultSentence } from "./faults.js";

/**
 * @param {Sheet} sheet
 * @param {(path: string) => unknown} lead goes to a field
 * @returns {Part}
 */
export function createErrorSummary(sheet, lead) {
  const list = h("ul", {});
  const root = h("section", { class: "summary", part: "errors", hidden: true }, h("h2", {}, sheet.say("errors.title")), list);
  let drawn = "";

  function update() {
    const sentences = sheet.told.map((fault) => ({ fault, sentence: faultSentence(sheet, fault) }));
    root.hidden = sentences.length === 0;
    const text = sentences.map(({ sentence }) => sentence).join("\n");
    if (text === drawn) return;
    drawn = text;
    list.replaceChildren(
      ...sentences.map(({ fault, sentence }) => {
        const go = () => lead(fault.path);
        return h("li", {}, h("button", { type: "button", class: "link", onclick: go }, sentence));
      }),
    );
  }

  return { root, update };
}

