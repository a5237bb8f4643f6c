/**
 * What stays with the owner: when to look after the gate, and a page on how to live with it.
 *
 * @import { Block, Cell } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { blank, head, note, pairs, subhead, table } from "./blocks.js";

/** Lines for what was done later. */
const LOG_LINES = 13;

/** Lines for the way to release this operator. */
const PEN_LINES = 2;

/** @param {Sheet} sheet @returns {Block[]} */
export function ownerBlocks(sheet) {
  return [...maintenanceBlocks(sheet), ...pageBlocks(sheet)];
}

/** @param {Sheet} sheet @returns {Block[]} */
function maintenanceBlocks(sheet) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.maintenance.${key}`);
  const rows = /** @type {{ when: string, what: string, who: string }[]} */ (sheet.strings.at("handover.paper.maintenance.rows"));
  const log = Array.from({ length: LOG_LINES }, () => ["", "", ""]);
  const written = table([say("log.date"), say("log.done"), say("log.name")], [], "write log");
  written.rows?.append(...log.map((cells) => h("tr", {}, ...cells.map(() => h("td", {}, blank())))));
  return [
    head(say("title"), true),
    note(say("note")),
    table([say("columns.when"), say("columns.what"), say("columns.who")], rows.map(({ when, what, who }) => [when, what, say(who)]), "schedule"),
    { root: written.root },
  ];
}

/** @param {Sheet} sheet @returns {Block[]} */
function pageBlocks(sheet) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.owner.${key}`);
  const sections = /** @type {{ title: string, lines: string[], after?: string[] }[]} */ (sheet.strings.at("handover.paper.owner.sections"));
  /** @type {[string, Cell][]} */
  const places = ["key", "isolator", "call"].map((key) => [say(key), ""]);
  return [
    head(say("title"), true),
    note(say("note")),
    ...sections.flatMap(({ title, lines, after = [] }) => {
      const item = (/** @type {string} */ text) => h("li", {}, text);
      // What only the maker can say is written in between.
      const pen = Array.from({ length: after.length ? PEN_LINES : 0 }, () => h("li", { class: "pen" }, blank()));
      return [subhead(title), { root: h("ul", { class: "owner" }, ...lines.map(item), ...pen, ...after.map(item)) }];
    }),
    { ...pairs(places), rows: undefined },
  ];
}
