/**
 * Paths of the job and what they share: the storm has the rules and the words of the wind, a member those of every member.
 */

const MEMBER = /^leaf\.members\.(\d+)\./;
/** An end of a range of the operator's body: 0 from, 1 to. */
const END = /^(operator\.body\..*)\.([01])$/;
const OBSTACLE = /^obstacles\.(\d+)\.([a-z_]+)(?:\.([01]))?$/;
const POINT = /^motion\.motor\.curve\.(\d+)\./;
const MEANS = /^site\.means\.(\d+)\./;
const UNCERTAIN = "uncertainty.";

/** The path of the rule that holds for a path. @param {string} path */
export function rulePath(path) {
  return path.replace(/^storm\.(?!looked_at$)/, "wind.").replace(MEMBER, "leaf.members.").replace(OBSTACLE, "obstacles.$2").replace(MEANS, "site.means.").replace(POINT, "motion.motor.curve.").replace(END, "$1");
}

/** The key under which the string tables speak of a path. @param {string} path */
export function wordsKey(path) {
  return rulePath(path).replaceAll(".", "_");
}

/** Which end of a range a path is; null where it is none. @param {string} path */
export function rangeEnd(path) {
  const found = END.exec(path);
  return found ? (found[2] === "0" ? "from" : "to") : null;
}

/** The index of the member a path is in; null where it is in none. @param {string} path */
export function memberIndex(path) {
  const found = MEMBER.exec(path);
  return found ? Number(found[1]) : null;
}

/** The number of the means of protection a path is in; null where it is in none. @param {string} path */
export function meansNumber(path) {
  const found = MEANS.exec(path);
  return found ? Number(found[1]) + 1 : null;
}

/** The number of the point of a motor's table a path is in; null where it is in none. @param {string} path */
export function pointNumber(path) {
  const found = POINT.exec(path);
  return found ? Number(found[1]) + 1 : null;
}

/** The number of the obstacle a number is of, and which end of a side it is, `field` where it is no side; null where it is of none. @param {string} path */
export function obstacleSide(path) {
  const found = OBSTACLE.exec(path);
  return found ? { number: Number(found[1]) + 1, end: found[3] === undefined ? "field" : found[3] === "0" ? "from" : "to" } : null;
}

/** The input whose uncertainty is at a path; null where it is another field. @param {string} path */
export function uncertainInput(path) {
  return path.startsWith(UNCERTAIN) ? path.slice(UNCERTAIN.length) : null;
}

/** @param {string} input path of an input */
export function uncertaintyPath(input) {
  return UNCERTAIN + input;
}
