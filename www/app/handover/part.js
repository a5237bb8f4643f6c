/**
 * "Hand over": what was measured, tried and signed, each beside its plan; and the sheet made of it. Folded until it is wanted.
 *
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h, setText } from "../dom.js";
import { createGroup } from "../group.js";
import { GROUPS } from "../groups.js";
import { verdictMark } from "../verdict-mark.js";
import { comparison, fullResult } from "./compare.js";
import { createTexts } from "./texts.js";

/** The shape beside a verdict's word. */
const MARKS = { pass: "within", look_again: "tight", not_measured: "none", not_planned: "none" };

/** The verdict comes early: on a phone the rest is reached by scrolling sideways. */
const COLUMNS = ["what", "verdict", "measured", "planned", "agreed"];

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends a print that is under way
 * @returns {Part}
 */
export function createHandover(sheet, signal) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.${key}`);
  const groups = GROUPS.filter(({ handover }) => handover).map((group) => createGroup(sheet, group));
  const texts = createTexts(sheet);
  const table = h("div", { class: "scroll compared", tabindex: "0", role: "region", "aria-label": say("compare") });
  const differs = h("div", { class: "differs" });
  const first = h("p", { class: "note" }, say("first"));
  const show = h("button", { type: "button", class: "move show-sheet", onclick: () => open() }, say("show"));
  const missing = h("p", { class: "error", role: "alert", hidden: true }, sheet.say("page.not_loaded"));
  const paper = h("div", { class: "paper" });
  const root = h(
    "section",
    { class: "handover", part: "handover" },
    h(
      "details",
      { class: "handover-opens", ontoggle: () => update() },
      h("summary", {}, h("h2", {}, say("title"))),
      h("p", { class: "note" }, say("purpose")),
      h("div", { class: "handover-pair" },
        h("form", { class: "groups", novalidate: true, onsubmit: (/** @type {Event} */ event) => event.preventDefault() }, ...groups.map((group) => group.root), texts.root),
        h("div", {}, table, differs)),
      first,
      show,
      missing,
      paper,
    ),
  );
  const details = /** @type {HTMLDetailsElement} */ (root.firstElementChild);
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
    if (sheet.told.some(({ path }) => /^(record|settings|as_built)\b/.test(path))) details.open = true;
    if (!details.open) return;
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
    const rows = [...checks, ...steps].map(({ name, planned, agreed, measured, verdict, word }) =>
      h("tr", { class: verdict }, h("th", { scope: "row" }, name),
        h("td", {}, h("span", { class: "row-verdict" }, verdictMark(MARKS[verdict]), word)),
        ...[measured, planned, agreed].map((cell) => h("td", {}, cell || "–"))));
    const heads = COLUMNS.map((key) => h("th", { scope: "col" }, say(`columns.${key}`)));
    table.replaceChildren(h("table", {}, h("caption", {}, say("compare")), h("thead", {}, h("tr", {}, ...heads)), h("tbody", {}, ...rows)));
    const off = new Set([...checks, ...steps].filter(({ verdict }) => verdict === "look_again").map((row) => row.differs));
    differs.replaceChildren(...(off.size ? [h("h3", {}, say("difference")), h("ul", {}, ...[...off].map((line) => h("li", {}, line)))] : []));
    setText(show, say("show"));
  }

  return { root, update };
}
