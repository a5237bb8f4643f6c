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
 * @returns {{ root: HTMLElement, count: (pages: number, isTrue?: boolean) => void }} `count` says of how many once that is known
 */
export function titleBlock(sheet, job, page) {
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`handover.paper.block.${key}`, values);
  const record = job.record ?? {};
  const list = sheet.session.operator ? sheet.list.title || say("typed") : say("typed");
  const number = h("b", {});
  const scale = h("span", {}, say("scale"));
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
      h("span", {}, say("units", { units: sheet.say(`settings.${sheet.session.system}`) })), scale,
      ...[say("version", { version: sheet.core.version() }), say("data", { schema: job.schema, list })].map((text) => h("span", {}, text))),
  );

  /** @param {number} pages @param {boolean} [isTrue] whether the sheet has something at its true size */
  function count(pages, isTrue = false) {
    number.textContent = say("sheet", { page, pages });
    if (isTrue) scale.textContent = say("scale_true");
  }

  return { root, count };
}
