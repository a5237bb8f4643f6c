/**
 * The address that brings the job back, as a QR code. What was measured and signed stays on paper: a link is for the plan.
 *
 * @import { Block } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { h, svg } from "../dom.js";
import { linkOf } from "../link.js";
import { takeRecord } from "../typed-record.js";

/** Side of the code, and of one of its modules, mm. */
const LEAST_MM = 28;
const MODULE_MM = 0.4;

/** @param {Sheet} sheet @param {any} job @returns {Block[]} nothing where the job is too long for a code */
export function linkBlocks(sheet, job) {
  const link = linkOf(sheet.core, job, takeRecord(sheet.session));
  const code = sheet.core.qr(link);
  if (!code) return [];
  const viewBox = `0 0 ${code.side} ${code.side}`;
  const drawn = svg("svg", { role: "img", "aria-label": sheet.say("jobs.code"), viewBox }, svg("path", { d: code.path }));
  // Read by a phone's camera off paper: no module finer than this.
  drawn.style.width = drawn.style.height = `${Math.max(LEAST_MM, code.side * MODULE_MM)}mm`;
  return [{ root: h("div", { class: "link" }, drawn, h("p", { class: "note" }, sheet.say("handover.paper.code", { page: link.split("#")[0] }))) }];
}
