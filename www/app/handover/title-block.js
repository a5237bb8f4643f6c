/**
 * The title block at the foot of every sheet.
 *
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";
import { day } from "./signatures.js";

/**
 * @param {Sheet} sheet
 * @param {any} job
 * @param {number} page
 * @returns {{ root: HTMLElement, count: (pages: number) => void }} `count` says of how many once that is known
 */
export function titleBlock(sheet, job, page) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.block.${key}`, values);
  const record = job.record ?? {};
  const list = sheet.session.operator ? sheet.list.title || say("typed") : say("typed");
  const number = h("b", {});
  const cell = (/** @type {string} */ key, /** @type {string | undefined} */ value, wide = "") =>
    h("div", { class: wide }, h("span", { class: "name" }, say(key)), h("span", { class: "said" }, value ?? ""));
  const root = h(
    "div",
    { class: "title-block" },
    cell("title", job.title, "wide"),
    cell("number", record.number),
    cell("revision", record.revision),
    cell("date", day(sheet, record.date)),
    h("div", {}, number),
    h("div", { class: "foot" },
      ...[say("units", { units: sheet.say(`settings.${sheet.session.system}`) }), say("scale"), say("version", { version: sheet.core.version() }),
        say("data", { schema: job.schema, list })].map((text) => h("span", {}, text))),
  );
  return { root, count: (pages) => (number.textContent = say("sheet", { page, pages })) };
}
