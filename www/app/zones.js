/**
 * Zones in which somebody can be caught, in words beside the plan view that shows them; each line brings the leaf to the angle where its
 * gap is worst.
 *
 * @import { Zone } from "./contract.d.ts"
 * @import { Part, Sheet } from "./sheet.js"
 */

import { sourceWords } from "./check/words.js";
import { h, setAttribute, setText } from "./dom.js";

/** A leaf this near to a zone's worst angle stands there, degrees. */
const THERE_DEG = 0.05;

/**
 * @param {Sheet} sheet
 * @param {() => void} changed called when zones are shown or hidden
 * @returns {Part}
 */
export function createZones(sheet, changed) {
  const toggle = h("button", { type: "button", class: "move", onclick: () => show() }, sheet.say("zones.toggle"));
  const list = h("ol", { class: "zones", part: "zones" });
  const swept = h("p", { class: "note" });
  const none = h("p", { class: "note" }, sheet.say("zones.none"));
  const legend = h("p", { class: "note" }, sheet.say("zones.legend"));
  const panel = h("div", {}, list, none, swept, legend, h("p", { class: "note" }, sheet.say("zones.note")));
  const root = h("section", { class: "zones-of" }, toggle, panel);
  /** @type {{ zone: Zone, button: HTMLButtonElement }[]} */
  let lines = [];
  let drawn = "";

  function show() {
    sheet.showing.zones = !sheet.showing.zones;
    changed();
  }

  /** @param {Zone[]} zones */
  function fill(zones) {
    const words = zones.map((zone) => sentence(sheet, zone));
    const text = JSON.stringify([words, zones]);
    if (text === drawn) return;
    drawn = text;
    lines = zones.map((zone, index) => {
      const button = h("button", { type: "button", onclick: () => sheet.cursor.moveTo(zone.leaf_deg) }, `${index + 1}: ${words[index]}`);
      return { zone, button };
    });
    list.replaceChildren(...lines.map(({ button }) => h("li", {}, button)));
  }

  function update() {
    const { zones } = sheet.showing;
    setAttribute(toggle, "aria-pressed", String(zones));
    if (!sheet.result) return;
    const { entrapment, clearances } = sheet.result.plan;
    fill(entrapment?.zones ?? []);
    none.hidden = entrapment != null;
    legend.hidden = entrapment == null;
    swept.hidden = clearances == null;
    if (clearances) setText(swept, sheet.say("zones.swept", { area: sheet.show(clearances.sweep.area_m2, "area") }));
    for (const { zone, button } of lines) {
      setAttribute(button, "aria-current", Math.abs(zone.leaf_deg - sheet.cursor.leafDeg) < THERE_DEG ? "true" : null);
    }
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {Zone} zone */
function sentence(sheet, { kind, directions, gap_m: gap, leaf_deg: leafDeg, present, free_gap_m: free, obstacle, at_operator: atOperator, source }) {
  const name = sheet.say(`choices.site_means_reaches.${kind}`);
  const moves = directions.length === 1 ? directions[0] : "both";
  return sheet.say(gap === null ? "zones.unknown" : present ? "zones.line" : "zones.wide", {
    zone: atOperator ? sheet.say("zones.operator", { zone: name }) : obstacle === null ? name : sheet.say("zones.obstacle", { zone: name, number: obstacle + 1 }),
    gap: gap === null ? "" : sheet.tape(gap),
    angle: sheet.show(leafDeg, "angle"),
    moves: sheet.say(`zones.moves.${moves}`),
    free: sheet.show(free, "short_length"),
    source: sourceWords(sheet, source),
  });
}
