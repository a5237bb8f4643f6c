/**
 * The address that brings the job back, beside its QR code. What was measured and signed stays on paper: a link is for the plan.
 *
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { Block } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { h, svg } from "../dom.js";
import { linkOf } from "../jobs/link.js";

/** The calculator's own page, wherever the element stands. */
const PAGE = new URL("../../", import.meta.url).href;

/** @param {Sheet} sheet @param {PintleCalculator | null} calculator @returns {Block[]} nothing where the job is too long for a code */
export function linkBlocks({ core, strings }, calculator) {
  const link = calculator?.record ? linkOf(core, calculator, PAGE) : "";
  const code = link ? core.qr(link) : null;
  if (!code) return [];
  const drawn = svg("svg", { role: "img", "aria-label": strings.say("jobs.code"), viewBox: `0 0 ${code.side} ${code.side}` }, svg("path", { d: code.path }));
  return [{ root: h("div", { class: "link" }, drawn, h("p", { class: "note" }, strings.say("handover.paper.code", { link }))) }];
}
