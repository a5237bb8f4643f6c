/**
 * What stands around, as the person says it: one list, which the search, the clearances, the zones and the drawings share.
 *
 * @import { Entry } from "../entry.js"
 * @import { Session } from "../session.js"
 *
 * @typedef {{ kind: string, hingePost: boolean, stops: string[], numbers: Entry[] }} Obstacle
 * @typedef {{ kind: string, hinge_post: boolean, stops: string[] }[]} ObstacleRecord
 */

import { get } from "../document.js";
import { OBSTACLE_KINDS, SIDES, STOPPED } from "./words.js";

const CHOICE = "obstacles.looked_at";

/** @param {any} value @returns {any[]} */
const listOf = (value) => (Array.isArray(value) ? value : []);

export class Obstacles {
  /** @param {Session} session @param {any} base the list of the job to start from */
  constructor(session, base) {
    this.session = session;
    this.base = base;
    /** @type {Obstacle[]} */
    this.list = [];
    for (const obstacle of listOf(base)) this.add(obstacle);
  }

  /** @param {number} index */
  static at(index) {
    return `obstacles.${index}`;
  }

  /** Whether what stands around is looked at at all. */
  get active() {
    return this.session.choice(CHOICE).value === "yes";
  }

  /** Adds an obstacle; its sides are to be typed where none are given. @param {any} [given] */
  add(given) {
    const rule = (/** @type {string} */ side) => this.session.rule(`${Obstacles.at(this.list.length)}.${side}`);
    this.list.push({
      kind: OBSTACLE_KINDS.includes(given?.kind) ? given.kind : "other",
      hingePost: given?.hinge_post === true,
      stops: Array.isArray(given?.stops) ? STOPPED.filter((what) => given.stops.includes(what)) : [...STOPPED],
      numbers: SIDES.map((side) => this.session.entryFor(rule(side), get(given ?? {}, side) ?? null)),
    });
    this.#name();
  }

  /** @param {number} index */
  take(index) {
    this.list.splice(index, 1);
    this.#name();
  }

  /** Paths of the numbers that take part. */
  activePaths() {
    return this.active ? this.list.flatMap(({ numbers }) => numbers.map(({ path }) => path)) : [];
  }

  /**
   * The list for the job; undefined where the job says nothing of it and nobody has here.
   *
   * @param {(path: string) => unknown} valueOf
   */
  documents(valueOf) {
    const said = this.list.length > 0 || Array.isArray(this.base) || !this.session.choice(CHOICE).assumed;
    if (!this.active || !said) return undefined;
    return this.list.map(({ kind, hingePost, stops, numbers }) => {
      const [left, right, low, high, height] = numbers.map(({ path }) => valueOf(path));
      /** @type {any} */
      const one = { x_m: [left, right], y_m: [low, high] };
      if (kind !== "other") one.kind = kind;
      if (hingePost) one.hinge_post = true;
      if (height !== null) one.height_m = height;
      if (stops.length < STOPPED.length) one.stops = [...stops];
      return one;
    });
  }

  /** @returns {ObstacleRecord} */
  record() {
    return this.list.map(({ kind, hingePost, stops }) => ({ kind, hinge_post: hingePost, stops: [...stops] }));
  }

  /** What was not typed stays as the job to start from has it. @param {ObstacleRecord | undefined} record */
  restore(record) {
    if (!record) return;
    const starts = this.list.map(({ numbers }) => numbers);
    this.list = [];
    for (const obstacle of record) this.add(obstacle);
    this.list.forEach((obstacle, index) => (obstacle.numbers = starts[index] ?? obstacle.numbers));
    this.#name();
  }

  /** Every number under the path its item now has. */
  #name() {
    const { entries, told, visited } = this.session;
    const isItem = (/** @type {string} */ path) => /^obstacles\.\d/.test(path);
    for (const map of [entries, told, visited]) for (const path of [...map.keys()]) if (isItem(path)) map.delete(path);
    this.list.forEach(({ numbers }, index) =>
      numbers.forEach((entry, place) => {
        const path = `${Obstacles.at(index)}.${SIDES[place]}`;
        entry.rule = { ...entry.rule, path };
        entries.set(path, entry);
      }),
    );
  }
}
