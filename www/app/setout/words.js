/**
 * The search's answers in words: a limit that is in the way, the least change, a place of the map.
 *
 * @import { Change, Pad } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

import { lengthAt } from "../sides.js";

/** An amount of a limit, rounded so that it is enough. @param {Sheet} sheet @param {Change} change */
function amount(sheet, { limit, by }) {
  const quantity = sheet.session.rules.get(`setout.${limit.replace("tape_", "")}`)?.quantity ?? "short_length";
  return sheet.limit(by, quantity, "up");
}

/** What is in the way, and by how much. @param {Sheet} sheet @param {Change} change */
export function inTheWay(sheet, change) {
  return sheet.say("setout.in_the_way", { limit: sheet.say(`setout.limits.${change.limit}`), by: amount(sheet, change) });
}

/** What to give way in. @param {Sheet} sheet @param {Change} change */
export function wayOut(sheet, change) {
  return sheet.say(`setout.changes.${change.limit}`, { by: amount(sheet, change) });
}

/** A place of the map. @param {Sheet} sheet @param {Pad | null} pad */
export function padSentence(sheet, pad) {
  if (!pad) return sheet.say("setout.map.not_yet");
  const at = (/** @type {"shaft_x_m" | "shaft_y_m" | "bracket_u_m" | "crank_m" | "link_m"} */ name) => lengthAt(sheet, name, pad.arm[name]);
  const place = sheet.say("setout.map.place", { x: at("shaft_x_m"), y: at("shaft_y_m") });
  if (pad.ruled_out) return sheet.say("setout.map.ruled_out", { place, why: inTheWay(sheet, pad.ruled_out) });
  return sheet.say("setout.map.works", {
    place,
    reserve: pad.reserve === null ? "–" : sheet.show(pad.reserve, "ratio"),
    torque: pad.shaft_torque_n_m === null ? "–" : sheet.show(pad.shaft_torque_n_m, "torque"),
    bracket: at("bracket_u_m"),
    crank: at("crank_m"),
    link: at("link_m"),
  });
}
