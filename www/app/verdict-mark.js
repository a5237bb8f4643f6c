/**
 * The verdict's own shape, so that it can be told without colour: a disc within the rating, a triangle when tight, a crossed square when over.
 */

import { svg } from "./dom.js";

/** @type {Record<string, [string, Record<string, string>][]>} */
const SHAPES = {
  within: [
    ["circle", { cx: "16", cy: "16", r: "13" }],
    ["path", { d: "M9.5 16.5l4.5 4.5 8.5-9.5", class: "stroke" }],
  ],
  tight: [
    ["path", { d: "M16 3L30 28H2Z" }],
    ["path", { d: "M16 12v8M16 23.5v1", class: "stroke" }],
  ],
  over: [
    ["rect", { x: "3", y: "3", width: "26", height: "26" }],
    ["path", { d: "M10 10l12 12M22 10L10 22", class: "stroke" }],
  ],
  none: [["circle", { cx: "16", cy: "16", r: "12", class: "hollow" }]],
};

/**
 * @param {string} verdict `within`, `tight`, `over`, or `none` while there is no result
 * @returns {SVGElement}
 */
export function verdictMark(verdict) {
  const shapes = SHAPES[verdict] ?? SHAPES.none;
  return svg(
    "svg",
    { viewBox: "0 0 32 32", class: `mark ${verdict}`, "aria-hidden": "true", focusable: "false" },
    ...shapes.map(([tag, attributes]) => svg(tag, attributes)),
  );
}
