/**
 * The address that brings the job back, beside its QR code. What was measured and signed stays on paper: a link is for the plan.
 *
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { Block } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

import { h, svg } from "../dom.js";
import { linkOf } from "../link.js";

/** Side of the code, and of one of its modules, mm. */
const LEAST_MM = 28;
const MODULE_MM = 0.4;

/** @param {Sheet} sheet @param {PintleCalculator | null} calculator @returns {Block[]} nothing where the job is too long for a code */
export function linkBlocks({ core, strings }, calculator) {
  const link = calculator?.record ? linkOf(core, calculator.job, calculator.record) : "";
  const code = link ? core.qr(link) : null;
  if (!code) return [];
  const drawn = svg("svg", { role: "img", "aria-label": strings.say("jobs.code"), viewBox: `0 0 ${code.side} ${code.side}` }, svg("path", { d: code.path }));
  // Read by a phone's camera off paper: no module finer than this.
  drawn.style.width = drawn.style.height = `${Math.max(LEAST_MM, code.side * MODULE_MM)}mm`;
  return [{ root: h("div", { class: "link" }, drawn, h("p", { class: "note" }, strings.say("handover.paper.code", { page: PAGE }))) }];
}
