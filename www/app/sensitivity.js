/**
 * What to measure better: how far the reserve moves when an input is as wrong as it may be. Computed once typing pauses, an input at a
 * time, since all together are some sixty plans.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Sensitivity } from "./contract.d.ts"
 */

import { h, setText } from "./dom.js";
import { createField } from "./field.js";
import { Later } from "./later.js";

const PAUSE_MS = 400;
/** Rows shown at once; the rest on request. */
const FIRST = 6;

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createSensitivity(sheet) {
  const first = h("ul", {});
  const rest = h("ul", {});
  const more = h("details", { class: "data" }, h("summary", {}, sheet.say("sensitivity.more")), rest);
  const root = h(
    "section",
    { class: "sensitivity", part: "sensitivity" },
    h("h3", {}, sheet.say("sensitivity.title")),
    h("p", { class: "note" }, sheet.say("sensitivity.note")),
    first,
    more,
  );
  /** @type {Map<string, ReturnType<typeof createRow>>} */
  const rows = new Map();
  /** @type {unknown} */
  let shown = null;
  const later = new Later();

  function update() {
    root.hidden = sheet.result === null;
    for (const row of rows.values()) row.update();
    if (!sheet.result || shown === sheet.result) return;
    later.run(compute(sheet.result), PAUSE_MS);
  }

  /** @param {import("./sheet.js").Result} result */
  function* compute(result) {
    /** @type {Sensitivity[]} */
    const list = [];
    // A result that was replaced has given back its memory.
    for (let entry; sheet.result === result && (entry = result.calculation.sensitivity(list.length)); yield) list.push(entry);
    if (sheet.result !== result) return;
    shown = result;
    list.sort((one, other) => spread(other) - spread(one));
    if (result.job.uncertainty) result.plan.sensitivity = list;
    const widest = Math.max(...list.map(spread));
    const shownRows = list.map((entry) => {
      const row = rows.get(entry.path) ?? createRow(sheet, entry.path);
      rows.set(entry.path, row);
      row.show(entry, widest);
      return row.root;
    });
    place(first, shownRows.slice(0, FIRST));
    place(rest, shownRows.slice(FIRST));
    more.hidden = shownRows.length <= FIRST;
  }

  return { root, update };
}

/** Moves rows only where their order changed, so that a field in one keeps the focus. @param {HTMLElement} list @param {HTMLElement[]} rows */
function place(list, rows) {
  if (rows.length === list.children.length && rows.every((row, index) => row === list.children[index])) return;
  list.replaceChildren(...rows);
}

/** Room on the page, not a quantity: an input that breaks the arm has no bar. @param {Sensitivity} entry */
function spread({ low, high }) {
  return low === null || high === null ? -1 : Math.abs(high - low);
}

/** @param {Sheet} sheet @param {string} path */
function createRow(sheet, path) {
  const bar = h("span", { class: "bar", "aria-hidden": "true" });
  const says = h("span", { class: "says-range" });
  const sure = h("button", { type: "button", class: "quiet", "aria-expanded": "false", onclick: () => openField() });
  const root = h("li", { class: "input", "data-input": path }, h("span", { class: "share-name" }, sheet.fieldName(path)), bar, says, sure);
  /** @type {Part | null} */
  let field = null;

  function openField() {
    if (!field) {
      sheet.session.uncertainty(path);
      root.append((field = createField(sheet, `uncertainty.${path}`)).root);
    } else field.root.hidden = !field.root.hidden;
    sure.setAttribute("aria-expanded", String(!field.root.hidden));
    if (!field.root.hidden) field.root.querySelector("input")?.focus();
  }

  /** @param {Sensitivity} entry @param {number} widest */
  function show(entry, widest) {
    bar.style.setProperty("--share", `${widest > 0 ? Math.max(spread(entry) / widest, 0) * 100 : 0}%`);
    const end = (/** @type {number | null} */ reserve) => (reserve === null ? sheet.say("sensitivity.none") : sheet.show(reserve, "ratio"));
    setText(says, sheet.say("sensitivity.range", { low: end(entry.low), high: end(entry.high) }));
    const fraction = sheet.show(entry.fraction, "percent");
    setText(sure, sheet.say("sensitivity.sure", { fraction }));
    sure.setAttribute("aria-label", `${sheet.say("sensitivity.sure", { fraction })}: ${sheet.fieldName(path)}`);
    // Where the input itself is not asked for (a coefficient of the handbook), nothing can be stated of it.
    sure.disabled = !sheet.session.activePaths().includes(path);
  }

  function update() {
    if (field && !field.root.hidden) field.update();
  }

  return { root, show, update };
}
