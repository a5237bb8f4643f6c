/**
 * Curve, plan view and time plot under one cursor: whichever is dragged or played, all follow, and so do the buttons and the readout.
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
import { createPlayBar } from "./play-bar.js";
import { Player } from "./player.js";
import { createTimePlot } from "./time-plot.js";
import { createZones } from "./zones.js";

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
  const curve = createCurve(sheet, inks, () => follow());
  const planView = createPlanView(sheet, inks);
  const zones = createZones(sheet, () => follow());
  const bar = createCursorBar(sheet);
  const player = new Player(sheet, signal, () => follow());
  const time = createTimePlot(sheet, inks, player);
  const play = createPlayBar(sheet, player);
  const both = [curve, planView];
  const all = [...both, time];
  const band = h("p", { class: "note" }, sheet.say("drawing_titles.band"));
  const datum = h("p", { class: "note" }, sheet.say("drawing_titles.datum"));
  const root = h(
    "section",
    {
      class: "drawings",
      onkeydown: (/** @type {KeyboardEvent} */ event) => {
        if (event.key !== " " || !(/** @type {Element} */ (event.target).matches(".drawing"))) return;
        event.preventDefault();
        player.toggle();
      },
    },
    h("div", { class: "pair" }, ...both.map(({ drawing }, index) => figure(sheet, ["curve", "plan_view"][index], drawing.root, [[band, ...curve.beneath], [datum, ...zones.beneath]][index]))),
    play.root,
    bar.root,
    time.root,
    probe,
  );

  const allTables = [...curve.tables, planView.table, ...time.tables, ...createMoreTables(sheet)];
  const tables = h("section", { class: "tables" }, ...allTables.map((table) => table.root));

  /** Everything that shows the cursor, in step with it. */
  function follow() {
    if (!sheet.result) return;
    curve.update();
    zones.update();
    play.update();
    bar.update();
    const words = cursorSentence(sheet);
    for (const { drawing } of both) {
      drawing.describe(words);
      drawing.redraw();
    }
    time.follow();
  }

  function update() {
    root.hidden = tables.hidden = sheet.result === null;
    player.pause();
    follow();
    band.hidden = !sheet.result?.plan.band;
    for (const table of allTables) table.update();
  }

  function recolour() {
    palette = null;
    for (const { drawing } of all) drawing.redraw();
  }

  sheet.cursor.addEventListener("move", follow, { signal });
  for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)", "(prefers-contrast: more)"]) {
    matchMedia(query).addEventListener("change", recolour, { signal });
  }
  for (const { drawing } of all) drawing.watch(signal);
  return { root, tables, update, recolour };
}

/** @param {Sheet} sheet @param {string} name @param {HTMLElement} drawing @param {HTMLElement[]} beneath */
function figure(sheet, name, drawing, beneath) {
  const id = `caption-${name}`;
  return h("div", { class: "figure" }, h("h2", { id }, sheet.say(`drawing_titles.${name}`)), drawing, ...beneath);
}
