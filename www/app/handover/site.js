/**
 * Zones that can catch a person, the means against them, supply and earth.
 *
 * @import { Block, Cell } from "./blocks.js"
 * @import { Result, Sheet } from "../sheet.js"
 */

import { findingWords } from "../findings.js";
import { head, line, list, note, pairs, table } from "./blocks.js";

/** Not reckoned by the core: for the pen. */
const SUPPLY = ["circuit", "cable", "voltage", "battery", "rod", "conductor"];

/** @param {Sheet} sheet @param {Result} result @returns {Block[]} */
export function siteBlocks(sheet, { job, plan: { entrapment } }) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.${key}`, values);
  /** @type {[string, Cell][]} */
  const supply = SUPPLY.map((key) => [say(`supply.rows.${key}`), ""]);
  return [
    ...(entrapment ? zoneBlocks(sheet, job, entrapment) : []),
    head(say("supply.title")),
    note(`${say("supply.note")} ${say("blank")}`),
    { ...pairs(supply), rows: undefined },
  ];
}

/** @param {Sheet} sheet @param {any} job @param {import("../contract.d.ts").Entrapment} entrapment @returns {Block[]} */
function zoneBlocks(sheet, job, { zones, means, unreached }) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.zones.${key}`, values);
  const word = (/** @type {boolean} */ yes) => say(yes ? "yes" : "no");
  const moves = (/** @type {("open" | "close")[]} */ list) => list.map((direction) => sheet.say(`direction.${direction}`)).join(", ");
  const kind = (/** @type {string} */ name) => sheet.say(`choices.site_means_reaches.${name}`);
  const heads = ["zone", "moves", "angle", "gap", "free", "counts", "reached"].map((key) => say(`columns.${key}`));
  const rows = zones.map((zone) => [
    zone.at_operator ? sheet.say("check.site.at_operator", { zone: kind(zone.kind) }) : zone.obstacle === null ? kind(zone.kind) : sheet.say("check.site.at_obstacle", { zone: kind(zone.kind), number: zone.obstacle + 1 }),
    moves(zone.directions) || "–",
    sheet.show(zone.leaf_deg, "angle"),
    zone.gap_m === null ? say("unknown") : sheet.tape(zone.gap_m),
    sheet.tape(zone.free_gap_m),
    word(zone.present),
    zone.present ? word(!unreached.includes(zone.kind)) : "–",
  ]);
  const fitted = (job.site?.means ?? []).map((/** @type {any} */ { kind, direction }) =>
    [sheet.say(`choices.site_means_kind.${kind}`), ...(direction ? [sheet.say(`direction.${direction}`)] : [])].join(", "));
  return [
    head(say("title")),
    note(`${sheet.say("check.site.figures")} ${say("source")}`),
    table(heads, rows),
    list([...means.map(({ direction, counted, wanted }) => say("count", { direction: sheet.say(`direction.${direction}`), counted, wanted })), ...fitted]),
    line(findingWords(sheet, { code: "force_must_be_measured" })),
  ];
}
