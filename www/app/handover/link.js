/**
 * The address that brings the job back, as text and as a QR code.
 *
 * @import { Block } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { h, svg } from "../dom.js";
import { linkOf } from "../link.js";
import { takeRecord } from "../typed-record.js";

/** @param {Sheet} sheet @param {any} job @returns {Block[]} nothing where the job is too long for a code */
export function linkBlocks(sheet, job) {
  const link = linkOf(sheet.core, job, takeRecord(sheet.session));
  const code = sheet.core.qr(link);
  if (!code) return [];
  const viewBox = `0 0 ${code.side} ${code.side}`;
  const name = sheet.say("jobs.code");
  const drawn = svg("svg", { viewBox, role: "img", "aria-label": name }, svg("path", { d: code.path }));
  return [{ root: h("div", { class: "qr" }, drawn, h("p", {}, sheet.say("handover.paper.code", { link }))) }];
}
