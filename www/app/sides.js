/**
 * On which side of its line a length lies: a tape has no minus. Documents keep the sign.
 *
 * @import { Sheet } from "./sheet.js"
 */

/** What is measured from a line, by the last name of its path: from the line square to the leaf, or from one along it. @type {Record<string, "along" | "square">} */
const LINES = {
  shaft_x_m: "along",
  shaft_y_m: "square",
  bracket_u_m: "along",
  bracket_v_m: "square",
  bracket_along_m: "along",
  bracket_proud_m: "square",
  from_hinge_line_m: "along",
  bracket_across_m: "square",
  from_axis_line_m: "square",
  from_face_m: "square",
  face_m: "square",
};

/** Which way something lies from its line; null for a length of its own. @param {string} path */
export function lineOf(path) {
  return LINES[path.slice(path.lastIndexOf(".") + 1)] ?? null;
}

/** A side in words. @param {Sheet} sheet @param {string} path @param {string} side */
export function sideWords(sheet, path, side) {
  return sheet.say(`sides.${lineOf(path)}.${side}`);
}

/** As a tape shows it, with its side where it has one. @param {Sheet} sheet @param {string} path @param {number} value */
export function lengthAt(sheet, path, value) {
  if (!lineOf(path)) return sheet.mark(value);
  const { text, side } = sheet.markApart(value);
  return side === "on" ? text : sheet.say("sides.marked", { length: text, side: sideWords(sheet, path, side) });
}

/**
 * Two ends of a range, the one nearer to the line first where both lie on one side.
 *
 * @param {Sheet} sheet
 * @param {string} path
 * @param {number} least
 * @param {number} most
 */
export function endsAt(sheet, path, least, most) {
  const sides = [least, most].map((value) => sheet.markApart(value));
  const ends = [least, most].map((value) => lengthAt(sheet, path, value));
  if (!lineOf(path) || sides[0].side !== sides[1].side) return { least: ends[0], most: ends[1] };
  // Said once, behind both.
  return sides[0].side === "minus" ? { least: sides[1].text, most: ends[0] } : { least: sides[0].text, most: ends[1] };
}
