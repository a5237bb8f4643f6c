/**
 * Puts a found arm into the job, and back again.
 *
 * @import { Arm } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

const NUMBERS = /** @type {const} */ (["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"]);

/** Two texts of one length: closer than anything anybody sets, m. */
const SAME_M = 1e-9;

/**
 * @param {Sheet} sheet
 * @param {Arm} arm
 * @returns {() => void} puts back what was there
 */
export function takeArm(sheet, arm) {
  const { session } = sheet;
  const elbow = session.choice("arm.elbow");
  const before = NUMBERS.map((name) => {
    const entry = session.entry(`arm.${name}`);
    const { value, typed, unread } = entry;
    entry.type(textOf(sheet, arm[name]), session.system);
    return () => Object.assign(entry, { value, typed, unread });
  });
  const { value, assumed } = elbow;
  Object.assign(elbow, { value: arm.elbow, assumed: false });
  sheet.changed();
  return () => {
    for (const back of before) back();
    Object.assign(elbow, { value, assumed });
    sheet.changed();
  };
}

/**
 * The length as a person would type it: by the marks of a tape where it is on one, else in decimals; with all its digits, in metres, where
 * those are not enough to say it.
 *
 * @param {Sheet} sheet
 * @param {number} value
 */
function textOf({ core, session }, value) {
  const texts = [...(session.system === "us" ? [core.feet_inches(value, 64)] : []), core.bare(value, "short_length", session.system)];
  return texts.find((text) => Math.abs(core.read(text, "short_length", session.system) - value) < SAME_M) ?? `${value} m`;
}
