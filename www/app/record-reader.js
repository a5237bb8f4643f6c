/**
 * What of something that claims to be a typed record is one. It may come from a file, a link, a host's page or an older version: nothing
 * of another type or beyond all measure reaches the session, where it would be taken for what somebody typed.
 *
 * @import { TypedRecord } from "./typed-record.js"
 */

/** No number and no choice is written with more letters. */
const LONGEST = 1000;
/** As many items as the core allows a list of parts or of what stands around, and one of means of protection. */
const MOST_MEMBERS = 200;
const MOST_ITEMS = 64;
const MOST_POINTS = 60;

const SYSTEMS = ["metric", "us"];

/** @param {unknown} value */
const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);
/** @param {unknown} value */
const isText = (value) => typeof value === "string";
/** @param {unknown} value @returns {value is string} */
const isShort = (value) => typeof value === "string" && value.length <= LONGEST;
/** @param {any} value */
const isTyped = (value) => isObject(value) && isShort(value.text) && SYSTEMS.includes(value.system) && [undefined, 0, 1].includes(value.meant);
/** @param {any} value */
const isMeans = (value) => isObject(value) && [value.kind, value.way, value.on].every(isShort) && typeof value.monitored === "boolean" && Array.isArray(value.reaches) && value.reaches.every(isShort);
/** @param {any} value */
const isObstacle = (value) => isObject(value) && isShort(value.kind) && typeof value.hinge_post === "boolean" && Array.isArray(value.stops) && value.stops.every(isShort);

/**
 * @param {unknown} given
 * @returns {{ record: TypedRecord, whole: boolean }} `whole`: nothing had to be left out
 */
export function readRecord(given) {
  let whole = true;

  /** A value that is what it should be; what is not there is nothing out of order. @param {any} value @param {(value: any) => boolean} is @param {any} otherwise */
  function one(value, is, otherwise) {
    if (value === undefined || value === null) return otherwise;
    if (is(value)) return value;
    whole = false;
    return otherwise;
  }

  /** @param {any} value @param {(value: any) => boolean} is */
  function map(value, is) {
    const all = Object.entries(one(value, isObject, {}));
    const good = all.filter(([, item]) => is(item));
    whole &&= good.length === all.length;
    return Object.fromEntries(good);
  }

  /** @param {any} value @param {(value: any) => boolean} is @param {number} most */
  function list(value, is, most) {
    return one(value, (items) => Array.isArray(items) && items.length <= most && items.every(is), undefined);
  }

  const all = one(given, isObject, {});
  const setout = one(all.setout, isObject, undefined);
  const site = one(all.site, isObject, undefined);
  const record = {
    system: one(all.system, (value) => SYSTEMS.includes(value), undefined),
    operator: one(all.operator, isShort, all.operator === null ? null : undefined),
    choices: map(all.choices, isShort),
    members: list(all.members, (base) => base === null || isObject(base), MOST_MEMBERS),
    typed: map(all.typed, isTyped),
    texts: map(all.texts, isText),
    given: list(all.given, isText, Infinity) ?? [],
    ticked: list(all.ticked, isShort, MOST_ITEMS) ?? [],
    setout: setout && { typed: map(setout.typed, isTyped), choices: map(setout.choices, isShort) },
    site: site && { means: list(site.means, isMeans, MOST_ITEMS) },
    points: one(all.points, (value) => Number.isInteger(value) && value >= 0 && value <= MOST_POINTS, undefined),
    obstacles: list(all.obstacles, isObstacle, MOST_MEMBERS),
  };
  return { record, whole };
}
