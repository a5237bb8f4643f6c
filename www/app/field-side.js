/**
 * The side of a measured length, beside its number: what is printed without a minus is typed without one. The sign of the number follows.
 *
 * @import { Entry } from "./entry.js"
 * @import { Sheet } from "./sheet.js"
 */

import { h, setAttribute } from "./dom.js";
import { sideWords } from "./sides.js";

const SIGN = /^\s*[-−–+]\s*/;
const MINUS = /^\s*[-−–]/;

/**
 * @param {Sheet} sheet
 * @param {string} path
 * @param {Entry} entry
 */
export function createSide(sheet, path, entry) {
  const options = ["plus", "minus"].map((side) => h("option", { value: side }, sideWords(sheet, path, side)));
  const root = h("select", { class: "side", onchange: choose }, ...options);
  /** Chosen while nothing is typed. */
  let chosen = "";

  /** Typed text with the sign of the side, unless it has one. @param {string} text */
  function signed(text) {
    return root.value === "minus" && text.trim() !== "" && !SIGN.test(text) ? `−${text}` : text;
  }

  /** @param {string} text */
  function unsigned(text) {
    return text.replace(SIGN, "");
  }

  function choose() {
    chosen = root.value;
    if (entry.typed) entry.type(signed(unsigned(entry.typed.text)), entry.typed.system, entry.typed.meant);
    sheet.changed();
  }

  /** Where what was planned lies, until somebody says otherwise. */
  function expected() {
    const planned = sheet.planned(path);
    return planned !== null && sheet.markApart(planned).side === "minus" ? "minus" : "plus";
  }

  /** Brings the side in step with the text of the number. @param {string} text */
  function follow(text) {
    setAttribute(root, "aria-label", sheet.say("sides.of", { field: sheet.fieldName(path) }));
    root.value = text.trim() === "" ? chosen || expected() : MINUS.test(text) ? "minus" : "plus";
  }

  /** @param {string} text a length without its sign */
  function told(text) {
    return sheet.say("sides.marked", { length: text, side: sideWords(sheet, path, root.value) });
  }

  return { root, signed, unsigned, follow, told };
}
