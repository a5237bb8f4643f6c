/**
 * Puts a found arm, or all that an operator brings, into the job, and back again.
 *
 * @import { Arm, FieldRule, Quantity } from "../contract.d.ts"
 * @import { Entry } from "../entry.js"
 * @import { Sheet } from "../sheet.js"
 */

import { get } from "../document.js";

const NUMBERS = /** @type {const} */ (["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"]);

/** Two texts of one number: closer than anything anybody sets, as a part of it and in the document's unit. */
const SAME = 1e-9;

/**
 * @param {Sheet} sheet
 * @param {Arm} arm
 * @returns {() => void} puts back what was there
 */
export function takeArm(sheet, arm) {
  const back = typeArm(sheet, arm);
  sheet.changed();
  return () => {
    back();
    sheet.changed();
  };
}

/**
 * An operator of the list with all it brings: where it stands best, its arm, what its maker says of base, duty and holding.
 *
 * @param {Sheet} sheet
 * @param {string} id
 * @param {any} taken the job with it in it
 * @returns {() => void} puts back what was there
 */
export function takeOperator(sheet, id, taken) {
  const { session } = sheet;
  const now = { ...session.job(), setout: session.setout.block() };
  const { operatorId } = session;
  session.operatorId = id;
  const backs = taken.arm ? [typeArm(sheet, taken.arm)] : [];
  for (const [path, entry] of [...session.entries, ...session.setout.entries]) {
    // Its ratings are the list's, and the arm is typed.
    if (/^(operator|arm)\./.test(path)) continue;
    const value = get(taken, path);
    if (typeof value === "number" && !same(value, get(now, path))) backs.push(typeNumber(sheet, entry, value));
  }
  sheet.changed();
  return () => {
    for (const back of backs) back();
    session.operatorId = operatorId;
    sheet.changed();
  };
}

/** @param {Sheet} sheet @param {Arm} arm @returns {() => void} */
function typeArm(sheet, arm) {
  const { session } = sheet;
  const elbow = session.choice("arm.elbow");
  const before = NUMBERS.map((name) => typeNumber(sheet, session.entry(`arm.${name}`), arm[name]));
  const { value, assumed } = elbow;
  Object.assign(elbow, { value: arm.elbow, assumed: false });
  return () => {
    for (const back of before) back();
    Object.assign(elbow, { value, assumed });
  };
}

/** @param {Sheet} sheet @param {Entry} entry @param {number} number @returns {() => void} */
function typeNumber(sheet, entry, number) {
  const { value, typed, unread, readings } = entry;
  entry.type(textOf(sheet, entry.rule, number), sheet.session.system);
  return () => Object.assign(entry, { value, typed, unread, readings });
}

/** @param {number} value @param {unknown} other */
function same(value, other) {
  return typeof other === "number" && Math.abs(value - other) <= SAME * Math.max(1, Math.abs(value));
}

/**
 * The number as a person would type it: a length by the marks of a tape where it is on one; with all its digits where fewer are not enough to
 * say it.
 *
 * @param {Sheet} sheet
 * @param {FieldRule} rule
 * @param {number} value
 */
function textOf({ core, session }, { quantity }, value) {
  const metric = `${core.bare(value, quantity, "metric")} ${core.unit(quantity, "metric")}`.trim();
  const texts = [session.system === "us" ? (quantity === "short_length" ? core.feet_inches(value, 64) : core.bare(value, quantity, "us")) : core.bare(value, quantity, "metric"), metric];
  const whole = `${value} ${UNITS[/** @type {keyof typeof UNITS} */ (quantity)] ?? core.unit(quantity, "metric")}`.trim();
  return texts.find((text) => same(value, core.read(text, quantity, session.system))) ?? whole;
}

/** Units of the document, where they are not those of the metric system as it is shown. @satisfies {Partial<Record<Quantity, string>>} */
const UNITS = { short_length: "m", length: "m" };
