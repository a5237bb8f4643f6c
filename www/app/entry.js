/**
 * One number of the job: the text somebody typed, the value it stands for, and the start it can go back to.
 *
 * The value is read once, when it is typed. Changing the units shown never reads it again, so it stays the same bit for bit.
 *
 * @import { Core } from "./core.js"
 * @import { FieldRule, System } from "./contract.d.ts"
 */
export class Entry {
  /**
   * @param {Core} core
   * @param {FieldRule} rule
   * @param {number | null} start null: left to the core's default, or not given
   */
  constructor(core, rule, start) {
    this.core = core;
    this.rule = rule;
    this.start = start;
    /** In the document's unit; null when there is none. @type {number | null} */
    this.value = start;
    /** What was typed, and in which units; null until somebody types. @type {{ text: string, system: System } | null} */
    this.typed = null;
    /** Whether the start is what somebody stated elsewhere (the sender of a link) and not the page's own. */
    this.given = false;
    /** Why the typed text is no number. @type {string | null} */
    this.unread = null;
  }

  get path() {
    return this.rule.path;
  }

  /** Whether the number still is the one the page started with. */
  get assumed() {
    return this.typed === null && !this.given;
  }

  /**
   * @param {string} text
   * @param {System} system
   */
  type(text, system) {
    this.typed = { text, system };
    this.unread = null;
    this.value = null;
    try {
      this.value = this.core.read(text, this.rule.quantity, system);
    } catch (error) {
      const code = /** @type {{ code?: string }} */ (error).code;
      if (code === undefined) throw error;
      // An empty field is no fault of reading: the core decides whether the number may be missing.
      if (code !== "empty") this.unread = code;
    }
  }

  reset() {
    this.typed = null;
    this.unread = null;
    this.value = this.start;
  }

  /**
   * The text for the input: as typed where the units still are those it was typed in, else the value in the units shown.
   *
   * @param {System} system
   */
  text(system) {
    if (this.typed && (this.typed.system === system || this.value === null)) return this.typed.text;
    return this.value === null ? "" : this.core.bare(this.value, this.rule.quantity, system);
  }

  /** Text that cannot be read has no value to convert: it is read again in the new units. @param {System} system */
  unitsChanged(system) {
    if (this.typed && this.unread) this.type(this.typed.text, system);
  }
}
