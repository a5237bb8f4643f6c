/**
 * What is looked at: plan view, curve and time plot under one cursor. Whichever is dragged or played, all follow, and so do the buttons and
 * the readout. Which of them are there is the step's to say.
 *
 * @import { Palette } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Step } from "../steps/index.js"
 *
 * @typedef {Part & {
 *   tables: { curve: Part[], plan_view: Part, time: Part[] },
 *   zones: Part,
 *   map: HTMLElement,
 *   follow: (step: Step) => void,
 *   recolour: () => void,
 * }} Stage
 */

import { createCurve } from "../curve.js";
import { createCursorBar, cursorSentence } from "../cursor-bar.js";
import { h } from "../dom.js";
import { readPalette } from "../palette.js";
import { createParts } from "../plan-parts.js";
import { createPlanView } from "../plan-view.js";
import { createPlayBar } from "../play-bar.js";
import { Player } from "../player.js";
import { createTimePlot } from "../time-plot.js";
import { createZones } from "../zones.js";

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends the watching
 * @returns {Stage}
 */
export function createStage(sheet, signal) {
  const probe = h("span", { class: "probe", hidden: true });
  /** @type {Palette | null} */
  let palette = null;
  const inks = () => (palette ??= readPalette(probe));
  const curve = createCurve(sheet, inks, () => move());
  const planView = createPlanView(sheet, inks);
  const zones = createZones(sheet, () => move());
  const bar = createCursorBar(sheet);
  const player = new Player(sheet, signal, () => move());
  const time = createTimePlot(sheet, inks, player);
  const play = createPlayBar(sheet, player);
  const both = [curve, planView];
  const all = [...both, time];
  const band = h("p", { class: "note" }, sheet.say("drawing_titles.band"));
  const datum = h("p", { class: "note" }, sheet.say("drawing_titles.datum"));
  const parts = createParts(sheet, () => planView.drawing.redraw());
  const figures = {
    plan_view: figure(sheet, "plan_view", planView.drawing.root, [parts.root, datum]),
    curve: figure(sheet, "curve", curve.drawing.root, [band, ...curve.beneath]),
    time: time.root,
  };
  const root = h(
    "section",
    {
      class: "stage",
      part: "stage",
      onkeydown: (/** @type {KeyboardEvent} */ event) => {
        if (event.key !== " " || !(/** @type {Element} */ (event.target).matches(".drawing"))) return;
        event.preventDefault();
        player.toggle();
      },
    },
    figures.plan_view,
    play.root,
    figures.curve,
    bar.root,
    figures.time,
    probe,
  );
  /** Where the step that has a map puts it. */
  const map = h("div", { class: "of-map first", hidden: true });
  root.prepend(map);
  /** Whether the time plot is looked at. */
  let timed = false;

  /** Everything that shows the cursor, in step with it. */
  function move() {
    if (!sheet.result || root.hidden) return;
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
    if (!timed) figures.time.hidden = true;
  }

  function update() {
    root.hidden = sheet.result === null || root.dataset.drawings === "";
    root.classList.toggle("stale", sheet.stale);
    player.pause();
    move();
    band.hidden = !sheet.result?.plan.band;
  }

  /** @param {Step} step */
  function follow({ name, drawings }) {
    root.dataset.drawings = drawings.join(" ");
    root.dataset.at = name;
    timed = drawings.includes("time");
    map.hidden = !drawings.includes("map");
    play.root.hidden = !timed;
    for (const drawn of /** @type {const} */ (["plan_view", "curve", "time"])) {
      figures[drawn].hidden = !drawings.includes(drawn);
      // Where there is room for one drawing, the step's first is it.
      figures[drawn].classList.toggle("first", drawings[0] === drawn);
    }
    sheet.showing.zones = name === "protection";
    sheet.showing.marks = name === "mark_out";
    parts.follow(name === "survey" ? "gate" : "arm");
  }

  function recolour() {
    palette = null;
    for (const { drawing } of all) drawing.redraw();
  }

  sheet.cursor.addEventListener("move", move, { signal });
  for (const query of ["(prefers-color-scheme: dark)", "(forced-colors: active)", "(prefers-contrast: more)"]) {
    matchMedia(query).addEventListener("change", recolour, { signal });
  }
  for (const { drawing } of all) drawing.watch(signal);
  return { root, update, follow, recolour, zones, map, tables: { curve: curve.tables, plan_view: planView.table, time: time.tables } };
}

/** @param {Sheet} sheet @param {string} name @param {HTMLElement} drawing @param {HTMLElement[]} beneath */
function figure(sheet, name, drawing, beneath) {
  return h("div", { class: `figure of-${name}` }, h("h2", {}, sheet.say(`drawing_titles.${name}`)), drawing, ...beneath);
}
