/**
 * Choices that many groups share: a block of the job that may be absent, and a yes or no that may be unknown.
 *
 * @import { Choice, Item } from "./groups.js"
 */

/**
 * A block of the job that may be absent.
 *
 * @param {string} path
 * @param {Item[]} items
 * @returns {Choice}
 */
export function looked(path, items) {
  return {
    path: `${path}.looked_at`,
    options: ["no", "yes"],
    usual: "no",
    writes: { no: {}, yes: {} },
    signs: { yes: [path] },
    of: { yes: items },
  };
}

/**
 * A yes or no of the job, unknown until somebody says.
 *
 * @param {string} path
 * @returns {Choice}
 */
export function asked(path) {
  return {
    path,
    options: ["unknown", "yes", "no"],
    usual: "unknown",
    writes: { unknown: {}, yes: { [path]: true }, no: { [path]: false } },
  };
}
