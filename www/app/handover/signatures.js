/**
 * Who signs, and when.
 *
 * @import { Sheet } from "../sheet.js"
 * @import { Block } from "./blocks.js"
 */

import { head, note, table } from "./blocks.js";

/** A day as the language writes it; nothing where there is none. @param {Sheet} sheet @param {string | undefined} date `YYYY-MM-DD` */
export function day(sheet, date) {
  if (!date) return "";
  const format = new Intl.DateTimeFormat(sheet.strings.tag, { dateStyle: "medium", timeZone: "UTC" });
  return format.format(new Date(`${date}T00:00:00Z`));
}

/** @param {Sheet} sheet @param {import("../sheet.js").Result} result @returns {Block[]} */
export function signatureBlocks(sheet, { job, plan }) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.paper.signatures.${key}`);
  const record = job.record ?? {};
  const rows = ["installer", "owner"].map((who) => [say(who), record[who] ?? "", "", day(sheet, record[`${who}_date`])]);
  const { root } = table([say("who"), say("name"), say("sign"), say("date")], rows, "write signatures");
  const { stops } = plan.overall;
  const standing = stops > 0 ? [note(sheet.say("handover.paper.signatures.stops", { count: stops }))] : [];
  return [head(say("title")), ...standing, note(say("note")), { root }];
}

