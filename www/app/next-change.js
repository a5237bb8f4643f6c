/**
 * The next change worth trying when the reserve is short: the first operator of the list that has it, else the greatest load.
 *
 * @import { Result, Sheet } from "./sheet.js"
 */

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @returns {string} empty when nothing needs changing
 */
export function nextChange(sheet, { plan }) {
  if (plan.rating.verdict === "within") return "";
  const stronger = sheet.list.operators
    .map((operator) => ({ operator, rating: sheet.ratings.get(operator.id) }))
    .filter(({ rating }) => rating?.verdict === "within")
    .sort((a, b) => a.operator.rated_torque_n_m - b.operator.rated_torque_n_m)[0];
  const { friction, wind, lean } = plan.peak.shares;
  const greatest = Object.entries({ friction, wind, lean }).reduce((most, load) => (load[1] > most[1] ? load : most));
  const load = sheet.say(`next.${greatest[0]}`, { share: sheet.show(greatest[1], "percent") });
  if (!stronger) return load;
  const reserve = sheet.show(stronger.rating?.reserve ?? Infinity, "ratio");
  return `${sheet.say("next.operator", { name: stronger.operator.name, reserve })} ${load}`;
}
