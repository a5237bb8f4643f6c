/**
 * A job as a link: everything stands behind the `#`, so that no server sees it.
 *
 * Besides the job a link says in which units it was worked on, and which values nobody stated: one bit for each value, in the order
 * of the document, so that what the sender typed does not look assumed to the receiver.
 *
 * @import { Core } from "../core.js"
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { TypedRecord } from "../typed-record.js"
 */

import { RATINGS } from "../groups.js";

const MARK = "#job=";

/** Bits in one number. */
const BITS = 30;

/**
 * @param {Core} core
 * @param {PintleCalculator} calculator
 * @param {string} page address of the page that opens it
 */
export function linkOf(core, calculator, page) {
  const { entry: _, record: __, ...job } = calculator.job;
  return page.split("#")[0] + MARK + core.pack({ ...job, entry: told(job, /** @type {TypedRecord} */ (calculator.record)) });
}

/** Whether an address holds a job. @param {string} address */
export function isLink(address) {
  return address.includes(MARK);
}

/**
 * The job document of a link. Throws `Invalid` for one that is damaged, newer, or no job.
 *
 * @param {Core} core
 * @param {string} address
 */
export function openLink(core, address) {
  const { entry, ...job } = core.unpack(address.slice(address.indexOf(MARK) + MARK.length));
  const bits = Array.isArray(entry?.assumed) ? entry.assumed : [];
  const given = leaves(job).filter((_, place) => !((bits[Math.floor(place / BITS)] >> place % BITS) & 1));
  return { ...job, entry: { system: entry?.system, given } };
}

/** What goes along with a job: units, and bits of what nobody stated. @param {any} job @param {TypedRecord} record */
function told(job, record) {
  const said = new Set([...Object.keys(record.typed), ...Object.keys(record.choices), ...(record.given ?? []), ...(record.operator ? RATINGS : [])]);
  /** @type {number[]} */
  const assumed = [];
  leaves(job).forEach((path, place) => {
    const group = Math.floor(place / BITS);
    assumed[group] = (assumed[group] ?? 0) | (said.has(path) ? 0 : 1 << place % BITS);
  });
  return { system: record.system, assumed };
}

/** Paths of every value of a job, in its order. @param {any} node @param {string} [path] @returns {string[]} */
function leaves(node, path = "") {
  if (node === null || node === undefined) return [];
  if (typeof node !== "object") return [path];
  return Object.entries(node).flatMap(([key, inner]) => leaves(inner, path ? `${path}.${key}` : key));
}
