/**
 * The site: class of use, zones of entrapment with the angle where each is worst, means of protection counted by movement.
 *
 * @import { AngleSpan, Entrapment, Zone } from "../contract.d.ts"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { findingWords } from "../findings.js";
import { plainTable } from "../rows.js";
import { findingItems, shown, sourcesNote, sourceWords } from "./words.js";

/** @param {Sheet} sheet @param {Result} result */
export function siteParts(sheet, { plan }) {
  const { entrapment } = plan;
  if (!entrapment) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.site.${key}`, values);
  const { zones, means } = entrapment;
  const ways = (/** @type {Zone} */ zone) => (zone.directions.length ? sheet.strings.list(zone.directions.map((way) => say(`ways.${way}`))) : say("ways.none"));
  const name = (/** @type {Zone} */ { kind, obstacle, at_operator: atOperator }) => {
    const words = sheet.say(`choices.site_means_reaches.${kind}`);
    if (atOperator) return say("at_operator", { zone: words });
    return obstacle === null ? words : say("at_obstacle", { zone: words, number: obstacle + 1 });
  };
  const reached = (/** @type {Zone} */ { kind, present }) => say(!present ? "wide" : entrapment.unreached.includes(kind) ? "unreached" : "reached");
  const zoneRows = zones.map((zone) => [
    name(zone),
    zone.gap_m === null ? say("not_known") : sheet.tape(zone.gap_m),
    shown(sheet, zone.gap_m === null ? null : zone.leaf_deg, "angle"),
    sheet.show(zone.free_gap_m, "short_length"),
    ways(zone),
    reached(zone),
  ]);
  const count = (/** @type {number} */ value) => sheet.show(value, "count");
  const meansRows = means.map((one) => [say(`ways.${one.direction}`), count(one.wanted), count(one.counted), count(one.not_counted)]);
  return [
    h("h3", {}, say("title")),
    h("p", { class: "class-of-use", part: "class-of-use" }, h("strong", {}, entrapment.class ? say("class", { class: entrapment.class }) : say("no_class"))),
    h("p", {}, entrapment.class ? say(`classes.${entrapment.class}`) : findingWords(sheet, { code: "class_undecided" })),
    h("p", { class: "note" }, say("decides", { source: sourceWords(sheet, entrapment.class_source) })),
    h("h4", {}, say("means")),
    h("p", { class: "note" }, say("means_note")),
    plainTable(say("means"), ["way", "wanted", "counted", "not_counted"].map((key) => say(`columns.${key}`)), meansRows),
    sourcesNote(sheet, means.map(({ source }) => source)),
    h("h4", {}, say("zones")),
    plainTable(say("zones"), ["zone", "gap", "angle", "free", "catches", "reach"].map((key) => say(`columns.${key}`)), zoneRows),
    h("p", { class: "note" }, say("figures")),
    sourcesNote(sheet, zones.map(({ source }) => source)),
    ...sensorParts(sheet, entrapment),
    ...findingItems(sheet, plan, ["means_", "zones_", "sensors_", "signs_", "pedestrian_"]),
    h("p", { class: "note" }, say("signs")),
  ];
}

/** Where sensors reach in plan and where they leave a gap. @param {Sheet} sheet @param {Entrapment} entrapment */
function sensorParts(sheet, { sensors, edge_unseen: unseen }) {
  if (!sensors.length) return [];
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.sensors.${key}`, values);
  const spans = (/** @type {AngleSpan[]} */ list) =>
    list.length ? sheet.strings.list(list.map(({ from_deg, to_deg }) => say("span", { from: sheet.show(from_deg, "angle"), to: sheet.show(to_deg, "angle") }))) : say("nowhere");
  const rows = sensors.flatMap(({ means, zones }) =>
    zones.map(({ kind, gap_m: gap }) => [
      sheet.say("check.lists.means.item", { number: means + 1 }),
      sheet.say(`choices.site_means_reaches.${kind}`),
      gap === 0 ? say("within") : say("misses", { gap: sheet.tape(gap) }),
    ]),
  );
  return [
    h("h4", {}, say("title")),
    h("p", { class: "note" }, say("note")),
    plainTable(say("title"), ["means", "zone", "reach"].map((key) => say(`columns.${key}`)), rows),
    ...sensors.map(({ means, edge }) => h("p", {}, say("edge", { number: means + 1, spans: spans(edge) }))),
    ...["opening", "closing"].map((way, index) => h("p", {}, unseen[index].length ? say(way, { spans: spans(unseen[index]) }) : say(`${way}_all`))),
  ];
}
