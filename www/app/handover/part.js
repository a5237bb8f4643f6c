/**
 * "Hand over": what was measured, tried and signed, each beside its plan; and the sheet made of it.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h, setText } from "../dom.js";
import { createGroup } from "../group.js";
import { groupsOf } from "../groups.js";
import { cardTable } from "../rows.js";
import { verdictMark } from "../verdict-mark.js";
import { comparison, fullResult } from "./compare.js";
import { createTexts } from "./texts.js";

/** The shape beside a verdict's word. */
const MARKS = { pass: "within", look_again: "tight", not_measured: "none", not_planned: "none" };

/** The verdict comes early: on a narrow screen the rest is reached by scrolling. */
const COLUMNS = ["what", "verdict", "measured", "planned", "agreed"];

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends a print that is under way
 * @returns {Part}
 */
export function createHandover(sheet, signal) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.${key}`);
  const groups = groupsOf("hand_over").map((group) => createGroup(sheet, group));
  const texts = createTexts(sheet);
  const table = h("div", { class: "scroll cards compared", tabindex: "0", role: "region", "aria-label": say("compare") });
  const differs = h("div", { class: "differs" });
  const first = h("p", { class: "note" }, say("first"));
  const show = h("button", { type: "button", class: "move show-sheet", onclick: () => open() }, say("show"));
  const missing = h("p", { class: "error", role: "alert", hidden: true }, sheet.say("page.not_loaded"));
  const paper = h("div", { class: "paper" });
  const root = h(
    "section",
    { class: "handover", part: "handover" },
    h("p", { class: "note" }, say("purpose")),
    h("form", { class: "groups", novalidate: true, onsubmit: (/** @type {Event} */ event) => event.preventDefault() }, ...groups.map((group) => group.root), texts.root),
    differs,
    h("details", { class: "handed asks-more" }, h("summary", {}, say("compare")), table),
    first,
    show,
    missing,
    paper,
  );
  let drawn = "";
  /** @type {{ update: () => void, close: () => void } | null} */
  let preview = null;

  async function open() {
    missing.hidden = true;
    try {
      // The sheet's own modules and style come when the first one is wanted; where they do not, the same button asks for them again.
      const { createPreview } = await import("./preview.js");
      if (signal.aborted) return;
      preview?.close();
      preview = await createPreview(sheet, paper, signal, () => {
        preview = null;
        show.focus();
      });
    } catch (error) {
      console.error("pintle-calculator", error);
      missing.hidden = false;
    }
  }

  function update() {
    for (const part of [...groups, texts]) part.update();
    const result = fullResult(sheet);
    first.hidden = result !== null;
    show.disabled = result === null;
    if (!result) return;
    draw(comparison(sheet, result.calculation.commissioning()));
    result.calculation.free();
    preview?.update();
  }

  /** @param {ReturnType<typeof comparison>} compared */
  function draw({ checks, steps }) {
    const text = JSON.stringify([checks, steps]);
    if (text === drawn) return;
    drawn = text;
    const all = [...checks, ...steps];
    const rows = all.map(({ name, planned, agreed, measured, verdict, word }) =>
      [name, h("span", { class: "row-verdict" }, verdictMark(MARKS[verdict]), word), ...[measured, planned, agreed].map((cell) => cell || "–")]);
    table.replaceChildren(cardTable(say("compare"), COLUMNS.map((key) => say(`columns.${key}`)), rows, all.map(({ verdict }) => verdict)));
    const off = new Set(all.filter(({ verdict }) => verdict === "look_again").map((row) => row.differs));
    differs.replaceChildren(...(off.size ? [h("h3", {}, say("difference")), h("ul", {}, ...[...off].map((line) => h("li", {}, line)))] : []));
    setText(show, say("show"));
  }

  return { root, update };
}
