/**
 * The leaf's parts as the person lists them. A part is known by its place in the list, as in the job; when one goes, those behind it
 * move up.
 *
 * @import { Session, Chosen } from "./session.js"
 * @import { Entry } from "./entry.js"
 */

import { get, put, remove } from "./document.js";
import { active, everything, optionOf, writable, written } from "./items.js";
import { memberItems } from "./member-items.js";

/**
 * @typedef {object} Member
 * @property {any} base what the job to start from says of it; null for a part added here
 * @property {Map<string, Entry>} entries by the part of the path below the member
 * @property {Map<string, Chosen>} choices
 */

/** Everything that can be asked about a part, by paths below it. */
const ALL = everything(memberItems("member"));

/** @param {string} path */
const below = (path) => path.slice("member.".length);

export class Members {
  /** @param {Session} session @param {any} base the list of the job to start from */
  constructor(session, base) {
    this.session = session;
    /** @type {Member[]} */
    this.list = [];
    /** The part that was taken away last, so that it can come back. @type {{ index: number, member: Member } | null} */
    this.removed = null;
    if (Array.isArray(base)) for (const document of base) this.insert(this.list.length, this.#make(document));
  }

  /** @param {number} index */
  static path(index) {
    return `leaf.members.${index}`;
  }

  /** Adds a part of plausible numbers, marked as assumed, along the whole leaf. */
  add() {
    this.removed = null;
    this.insert(this.list.length, this.#make(null));
  }

  /** @param {number} index */
  take(index) {
    const [member] = this.list.splice(index, 1);
    this.removed = { index, member };
    this.#name();
  }

  /** Puts back what was taken away last. */
  undo() {
    if (!this.removed) return;
    const { index, member } = this.removed;
    this.removed = null;
    this.insert(index, member);
  }

  /** @param {number} index @param {Member} member */
  insert(index, member) {
    this.list.splice(index, 0, member);
    this.#name();
  }

  /** Replaces the list by parts that start from the given documents. @param {any[]} bases */
  reset(bases) {
    this.removed = null;
    this.list = bases.map((base) => this.#make(base));
    this.#name();
  }

  /** Whether a part is one of the job's own, or something of it was typed or chosen: of others nobody said that they are there. @param {Member} member */
  counts({ base, entries, choices }) {
    return base !== null || [...entries.values()].some(({ typed }) => typed) || [...choices.values()].some(({ assumed }) => !assumed);
  }

  /** Places of the parts that count. */
  #counted() {
    return this.list.flatMap((member, index) => (this.counts(member) ? [index] : []));
  }

  /** Paths of the numbers that take part. */
  activePaths() {
    return this.#counted().flatMap((index) => this.#active(index).paths);
  }

  /** Choices that take part. */
  activeChoices() {
    return this.#counted().flatMap((index) => this.#active(index).choices);
  }

  /** A path of the job, where parts that do not count are left out, as the page has it. @param {string} path */
  placed(path) {
    const counted = this.#counted();
    return path.replace(/^leaf\.members\.(\d+)/, (whole, index) => (counted[index] === undefined ? whole : Members.path(counted[index])));
  }

  /** @param {number} index */
  #active(index) {
    return active(memberItems(Members.path(index)), (path) => this.session.choice(path).value);
  }

  /** The list for the job, of what counts. @param {(path: string) => unknown} valueOf a number's value for the job */
  documents(valueOf) {
    return this.#counted().map((index) => {
      const { base } = this.list[index];
      const document = typeof base === "object" && !Array.isArray(base) ? structuredClone(base ?? {}) : {};
      for (const path of [...ALL.paths, ...ALL.choices.flatMap(writable)]) remove(document, below(path));
      const at = `${Members.path(index)}.`;
      const { paths, choices } = this.#active(index);
      for (const choice of choices) {
        for (const [path, value] of Object.entries(written(choice, this.session.choice(choice.path).value))) put(document, path.slice(at.length), value);
      }
      for (const path of paths) put(document, path.slice(at.length), valueOf(path));
      return document;
    });
  }

  /** @param {any} base @returns {Member} */
  #make(base) {
    const document = base === null ? null : { member: base };
    const entries = ALL.paths.map((path) => {
      const rule = this.session.rule(`leaf.members.${below(path)}`);
      const given = document ? (get(document, path) ?? rule.default ?? null) : this.#plausible(below(path), rule);
      return /** @type {[string, Entry]} */ ([below(path), this.session.entryFor(rule, given)]);
    });
    const choices = ALL.choices.map((choice) => {
      const start = optionOf(choice, document ?? {});
      return /** @type {[string, Chosen]} */ ([below(choice.path), { value: start, start, assumed: true }]);
    });
    return { base, entries: new Map(entries), choices: new Map(choices) };
  }

  /** @param {string} name @param {import("./contract.d.ts").FieldRule} rule */
  #plausible(name, rule) {
    const leaf = (/** @type {string} */ path) => this.session.entry(path).value;
    if (name === "place.to_m") return leaf("leaf.length_m") ?? rule.example;
    if (name === "place.height_m") return leaf("leaf.height_m") ?? rule.example;
    return rule.default ?? (rule.required ? rule.example : null);
  }

  /** Every entry and choice under the path its part now has. */
  #name() {
    const { entries, choices, told, visited } = this.session;
    const stale = (/** @type {string} */ path) => path.startsWith("leaf.members.");
    for (const map of [entries, choices, told, visited]) for (const path of [...map.keys()]) if (stale(path)) map.delete(path);
    this.list.forEach((member, index) => {
      for (const [name, entry] of member.entries) {
        const path = `${Members.path(index)}.${name}`;
        entry.rule = { ...entry.rule, path };
        entries.set(path, entry);
      }
      for (const [name, choice] of member.choices) choices.set(`${Members.path(index)}.${name}`, choice);
    });
  }
}
