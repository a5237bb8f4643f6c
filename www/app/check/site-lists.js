/**
 * Lists of the site as the person says them: what stands around, and the means of protection that are ticked off.
 *
 * @import { Entry } from "../entry.js"
 * @import { Session } from "../session.js"
 *
 * @typedef {{ kind: string, way: string, monitored: boolean, reaches: string[] }} Means
 * @typedef {{ means: Means[], obstacles: number }} SiteRecord
 */

import { get } from "../document.js";
import { KINDS, SIDES } from "./groups.js";

/** @param {any} value @returns {any[]} */
const listOf = (value) => (Array.isArray(value) ? value : []);

export class SiteLists {
  /** @param {Session} session @param {any} base the `site` block of the job to start from */
  constructor(session, base) {
    this.session = session;
    /** Of each obstacle its four sides. @type {Entry[][]} */
    this.obstacles = [];
    /** @type {Means[]} */
    this.means = listOf(base?.means).map((means) => ({
      kind: means?.kind,
      way: means?.direction ?? "both",
      monitored: means?.monitored === true,
      reaches: [...listOf(means?.reaches)],
    }));
    for (const obstacle of listOf(base?.obstacles)) this.addObstacle(obstacle);
  }

  /** @param {number} index */
  static obstacle(index) {
    return `site.obstacles.${index}`;
  }

  /** Whether the site is looked at at all. */
  get active() {
    return this.session.choice("site.looked_at").value === "yes";
  }

  /** Adds an obstacle; its sides are to be typed where none are given. @param {any} [given] */
  addObstacle(given) {
    const rule = (/** @type {string} */ side) => this.session.rule(`${SiteLists.obstacle(this.obstacles.length)}.${side}`);
    this.obstacles.push(SIDES.map((side) => this.session.entryFor(rule(side), get(given ?? {}, side) ?? null)));
    this.#name();
  }

  /** @param {number} index */
  takeObstacle(index) {
    this.obstacles.splice(index, 1);
    this.#name();
  }

  addMeans() {
    this.means.push({ kind: KINDS[0], way: "both", monitored: false, reaches: [] });
  }

  /** Paths of the numbers that take part. */
  activePaths() {
    return this.active ? this.obstacles.flatMap((sides) => sides.map(({ path }) => path)) : [];
  }

  /** Both lists for the job. @param {(path: string) => unknown} valueOf */
  documents(valueOf) {
    return {
      obstacles: this.obstacles.map((sides) => {
        const [left, right, low, high] = sides.map(({ path }) => valueOf(path));
        return { x_m: [left, right], y_m: [low, high] };
      }),
      means: this.means.map(({ kind, way, monitored, reaches }) => ({ kind, direction: way === "both" ? null : way, monitored, reaches })),
    };
  }

  /** @returns {SiteRecord} */
  record() {
    return { means: structuredClone(this.means), obstacles: this.obstacles.length };
  }

  /** @param {SiteRecord | undefined} record */
  restore(record) {
    if (!record) return;
    this.means = listOf(record.means).filter(({ kind }) => KINDS.includes(kind));
    while (this.obstacles.length > record.obstacles) this.takeObstacle(this.obstacles.length - 1);
    while (this.obstacles.length < record.obstacles) this.addObstacle();
  }

  /** Every side under the path its obstacle now has. */
  #name() {
    const { entries, told, visited } = this.session;
    for (const map of [entries, told, visited]) for (const path of [...map.keys()]) if (path.startsWith("site.obstacles.")) map.delete(path);
    this.obstacles.forEach((sides, index) =>
      sides.forEach((entry, side) => {
        const path = `${SiteLists.obstacle(index)}.${SIDES[side]}`;
        entry.rule = { ...entry.rule, path };
        entries.set(path, entry);
      }),
    );
  }
}
