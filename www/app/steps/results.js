/**
 * What comes of optional blocks that were looked at, and a press that looks at them all with what is usual.
 *
 * @import { Part, Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";

/**
 * @param {Sheet} sheet
 * @param {string[]} blocks looked at by one press
 * @param {((sheet: Sheet, result: Result) => HTMLElement[])[]} makers
 * @returns {Part & { usual: HTMLElement }}
 */
export function createResults(sheet, blocks, makers) {
  const { session } = sheet;
  const usual = h("div", { class: "usual-values" }, h("button", { type: "button", class: "move usual", onclick: fill }, sheet.say("check.usual")), h("p", { class: "note" }, sheet.say("check.usual_note")));
  const results = h("div", { class: "check-results", part: "check-results" });
  const nothing = h("p", { class: "note" }, sheet.say("check.nothing"));
  const root = h("section", { class: "check-answers" }, nothing, results);
  let drawn = "";

  /** Looks at the step's blocks, and fills in what is usual where nothing is said. */
  function fill() {
    for (const block of blocks) Object.assign(session.choice(`${block}.looked_at`), { value: "yes", assumed: false });
    for (const { path, usual: value, quantity } of session.rules.values()) {
      if (value === null || !blocks.includes(path.split(".")[0])) continue;
      const entry = session.entry(path);
      if (entry.assumed && !entry.start) entry.type(sheet.core.bare(value, quantity, session.system), session.system);
    }
    sheet.changed();
  }

  function update() {
    const { result } = sheet;
    if (!result) return;
    usual.hidden = blocks.every((block) => session.choice(`${block}.looked_at`).value === "yes");
    results.classList.toggle("stale", sheet.stale);
    const { motion, breakaway, person, entrapment, holding, findings } = result.plan;
    const text = JSON.stringify([motion, breakaway, person, entrapment, holding, findings, session.system]);
    if (text === drawn) return;
    drawn = text;
    const parts = makers.flatMap((make) => make(sheet, result));
    results.replaceChildren(...parts);
    nothing.hidden = parts.length > 0;
  }

  return { root, usual, update };
}
