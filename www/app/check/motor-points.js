/**
 * The points of a motor's table of speed and torque, as the person says them, in rising order.
 *
 * @import { Entry } from "../entry.js"
 * @import { Session } from "../session.js"
 */

import { get } from "../document.js";
import { MOTOR_BY, POINT } from "./groups.js";

/** Path of the list in the job. */
export const POINTS = "motion.motor.curve";

/** Points to begin with: standstill, breakdown, no load. */
const BEGUN = [{ speed_deg_s: 0 }, {}, { torque_n_m: 0 }];

/** As many as the core allows. */
export const MOST_POINTS = 60;

export class MotorPoints {
  /** @param {Session} session @param {any} base the list of the job to start from */
  constructor(session, base) {
    this.session = session;
    /** @type {Entry[][]} */
    this.list = [];
    for (const point of Array.isArray(base) ? base : BEGUN) this.add(point);
  }

  /** Whether the motor is said by a table. */
  get active() {
    return this.session.activeChoices().includes(MOTOR_BY) && this.session.choice(MOTOR_BY.path).value === "table";
  }

  /** Adds a point behind the others. @param {any} [given] */
  add(given) {
    if (this.list.length === MOST_POINTS) return;
    const at = `${POINTS}.${this.list.length}`;
    this.list.push(POINT.map((name) => this.session.entryFor(this.session.rule(`${at}.${name}`), get(given ?? {}, name) ?? null)));
    this.#name();
  }

  /** @param {number} index */
  take(index) {
    this.list.splice(index, 1);
    this.#name();
  }

  /** Paths of the numbers that take part. */
  activePaths() {
    return this.active ? this.list.flat().map(({ path }) => path) : [];
  }

  /** The list for the job. @param {(path: string) => unknown} valueOf */
  documents(valueOf) {
    return this.list.map((point) => Object.fromEntries(point.map(({ path }, index) => [POINT[index], valueOf(path)])));
  }

  /** How many points there are; what is typed in them is kept with the other numbers. */
  record() {
    return this.list.length;
  }

  /** @param {number | undefined} count */
  restore(count) {
    if (count === undefined) return;
    while (this.list.length > count) this.list.pop();
    while (this.list.length < count) this.add();
    this.#name();
  }

  /** Every number under the path its point now has. */
  #name() {
    const { entries, told, visited } = this.session;
    for (const map of [entries, told, visited]) for (const path of [...map.keys()]) if (path.startsWith(`${POINTS}.`)) map.delete(path);
    this.list.forEach((point, index) =>
      point.forEach((entry, place) => {
        const path = `${POINTS}.${index}.${POINT[place]}`;
        entry.rule = { ...entry.rule, path };
        entries.set(path, entry);
      }),
    );
  }
}
