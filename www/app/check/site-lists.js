/**
 * The means of protection of the site that are ticked off.
 *
 * @import { Entry } from "../entry.js"
 * @import { Session } from "../session.js"
 *
 * `on` is what a sensor is fixed to, `none` where it is not said; `area` the numbers of what it senses.
 * @typedef {{ kind: string, way: string, monitored: boolean, reaches: string[], on: string, area: Entry[] }} Means
 * @typedef {{ means: any[] }} SiteRecord
 */

import { get } from "../document.js";
import { AREA, KINDS } from "./groups.js";

/** @param {any} value @returns {any[]} */
const listOf = (value) => (Array.isArray(value) ? value : []);

export class SiteLists {
  /** @param {Session} session @param {any} base the `site` block of the job to start from */
  constructor(session, base) {
    this.session = session;
    /** @type {Means[]} */
    this.means = [];
    for (const means of listOf(base?.means)) this.addMeans(means);
  }

  /** Whether the site is looked at at all. */
  get active() {
    return this.session.choice("site.looked_at").value === "yes";
  }

  /** Adds a means of protection, as a job or a record has it. @param {any} [given] */
  addMeans(given) {
    this.means.push({
      kind: given?.kind ?? KINDS[0],
      way: given?.direction ?? given?.way ?? "both",
      monitored: given?.monitored === true,
      reaches: [...listOf(given?.reaches)],
      on: given?.area?.on ?? given?.on ?? "none",
      area: AREA.map((name) => {
        const rule = this.session.rule(`site.means.${this.means.length}.area.${name}`);
        return this.session.entryFor(rule, get(given?.area ?? {}, name) ?? rule.default ?? null);
      }),
    });
    this.#name();
  }

  /** @param {number} index */
  takeMeans(index) {
    this.means.splice(index, 1);
    this.#name();
  }

  /** Paths of the numbers that take part. */
  activePaths() {
    const areas = this.means.filter(({ on }) => on !== "none").map(({ area }) => area);
    return this.active ? areas.flat().map(({ path }) => path) : [];
  }

  /** The list for the job. @param {(path: string) => unknown} valueOf */
  documents(valueOf) {
    return {
      means: this.means.map(({ kind, way, monitored, reaches, on, area }) => ({
        kind,
        direction: way === "both" ? null : way,
        monitored,
        reaches,
        area: on === "none" ? null : { on, ...Object.fromEntries(area.map(({ path }, index) => [AREA[index], valueOf(path)])) },
      })),
    };
  }

  /** @returns {SiteRecord} */
  record() {
    return { means: this.means.map(({ kind, way, monitored, reaches, on }) => ({ kind, way, monitored, reaches, on })) };
  }

  /** @param {SiteRecord | undefined} record */
  restore(record) {
    if (!record) return;
    const starts = this.means.map(({ area }) => area);
    if (record.means) this.means = [];
    for (const means of listOf(record.means).filter(({ kind }) => KINDS.includes(kind))) this.addMeans(means);
    // What was not typed stays as the job to start from has it.
    this.means.forEach((means, index) => (means.area = starts[index] ?? means.area));
    this.#name();
  }

  /** Every number under the path its item now has. */
  #name() {
    const { entries, told, visited } = this.session;
    const isItem = (/** @type {string} */ path) => path.startsWith("site.means.");
    for (const map of [entries, told, visited]) for (const path of [...map.keys()]) if (isItem(path)) map.delete(path);
    const put = (/** @type {string} */ at, /** @type {Entry[]} */ list, /** @type {string[]} */ names) =>
      list.forEach((entry, index) => {
        const path = `${at}.${names[index]}`;
        entry.rule = { ...entry.rule, path };
        entries.set(path, entry);
      });
    this.means.forEach(({ area }, index) => put(`site.means.${index}.area`, area, AREA));
  }
}
