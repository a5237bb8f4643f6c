/**
 * The next change worth trying when the reserve is short: the smallest operator of the list that has it, once that is known, else the greatest load.
 *
 * @import { Result, Sheet } from "./sheet.js"
 */

import { operatorName } from "./operators/list.js";

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {string} empty when nothing needs changing
 */
export function nextChange(sheet, { plan }) {
  if (plan.rating.verdict === "within") return "";
  const { friction, wind, lean } = plan.peak.shares;
  const greatest = Object.entries({ friction, wind, lean }).reduce((most, load) => (load[1] > most[1] ? load : most));
  const load = sheet.say(`next.${greatest[0]}`, { share: sheet.show(greatest[1], "percent") });
  const stronger = sheet.ranked?.stronger;
  const operator = sheet.list.operators.find(({ id }) => id === stronger?.id);
  if (!operator) return load;
  const reserve = sheet.show(stronger?.as_placed?.rating.reserve ?? Infinity, "ratio");
  return `${sheet.say("next.operator", { name: operatorName(sheet, operator), reserve })} ${load}`;
}
