/**
 * Curve and plan view under one cursor: whichever is dragged, both follow, and so do the buttons and the readout.
 *
 * @import { Palette } from "./contract.d.ts"
 * @import { Part, Sheet } from "./sheet.js"
 */

import { createCurve } from "./curve.js";
import { createCursorBar, cursorSentence } from "./cursor-bar.js";
import { h } from "./dom.js";
import { createMoreTables } from "./more-tables.js";
import { readPalette } from "./palette.js";
import { createPlanView } from "./plan-view.js";

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends the watching
 * @returns {Part & { tables: HTMLElement, recolour: () => void }} the tables to stand where there is room for them
 */
export function createDrawings(sheet, signal) {
  const probe = h("span", { class: "probe", hidden: true });
  /** @type {Palette | null} */
  let palette = null;
  const inks = () => (palette ??= readPalette(probe));
  const curve = createCurve(sheet, inks);
  const planView = createPlanView(sheet, inks);
  const bar = createCursorBar(sheet);
  const both = [curve, planView];
  const band = h("p", { class: "note" }, sheet.say("drawing_titles.band"));
  const root = h(
    "section",
    { class: "drawings" },
    h("div", { class: "pair" }, ...both.map(({ drawing }, index) => figure(sheet, ["curve", "plan_view"][index], drawing.root, [band, null][index]))),
    bar.root,
    probe,
  );

  const allTables = [...both.map(({ table }) => table), ...createMoreTables(sheet)];
  const tables = h("section", { class: "tables" }, ...allTables.map((table) => table.root));

  function cursorMoved() {
    bar.update();
    const words = cursorSentence(sheet);
    for (const { drawing } of both) {
      drawing.describe(words);
      drawing.redraw();
    }
  }

  function update() {
    root.hidden = tables.hidden = sheet.result === null;
    cursorMoved();
    band.hidden = !sheet.result?.plan.band;
    for (const table of allTables) table.update();
  }

  function recolour() {
    palette = null;
    for (const { drawing } of both) drawing.redraw();
  }

  sheet.cursor.addEventListener("move", cursorMoved, { signal });
  for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)", "(prefers-contrast: more)"]) {
    matchMedia(query).addEventListener("change", recolour, { signal });
  }
  for (const { drawing } of both) drawing.watch(signal);
  return { root, tables, update, recolour };
}

/** @param {Sheet} sheet @param {string} name @param {HTMLElement} drawing @param {HTMLElement | null} note */
function figure(sheet, name, drawing, note) {
  const id = `caption-${name}`;
  return h("div", { class: "figure" }, h("h2", { id }, sheet.say(`drawing_titles.${name}`)), drawing, note);
}
