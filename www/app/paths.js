/**
 * Paths of the job and what they share: the storm has the rules and the words of the wind, a member those of every member.
 */

const MEMBER = /^leaf\.members\.(\d+)\./;
/** An end of a range of the room: 0 from, 1 to. */
const END = /^(room\..*)\.([01])$/;
const OBSTACLE = /^site\.obstacles\.(\d+)\.([xy]_m)\.([01])$/;
const MEANS = /^site\.means\.(\d+)\./;
const UNCERTAIN = "uncertainty.";

/** The path of the rule that holds for a path. @param {string} path */
export function rulePath(path) {
  return path.replace(/^storm\.(?!looked_at$)/, "wind.").replace(MEMBER, "leaf.members.").replace(OBSTACLE, "site.obstacles.$2").replace(MEANS, "site.means.").replace(END, "$1");
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

/** The number of the obstacle a side is of, and which end it is; null where it is no side. @param {string} path */
export function obstacleSide(path) {
  const found = OBSTACLE.exec(path);
  return found ? { number: Number(found[1]) + 1, end: found[3] === "0" ? "from" : "to" } : null;
}

/** The input whose uncertainty is at a path; null where it is another field. @param {string} path */
export function uncertainInput(path) {
  return path.startsWith(UNCERTAIN) ? path.slice(UNCERTAIN.length) : null;
}

/** @param {string} input path of an input */
export function uncertaintyPath(input) {
  return UNCERTAIN + input;
}
