/**
 * One number of the job: the text somebody typed, the value it stands for, and the start it can go back to.
 *
 * The value is read once, when it is typed. Changing the units shown never reads it again, so it stays the same bit for bit.
 *
 * @import { Core } from "./core.js"
 * @import { Fault, FieldRule, ReadError, ReadErrorCode, System } from "./contract.d.ts"
 *
 * Something wrong: a fault of the core, or a text that is no number, which the core's reader tells by a code of its own.
 * @typedef {Omit<Fault, "code"> & { code: Fault["code"] | ReadErrorCode }} Told
 *
 * A text as typed, the units shown then, and which of its readings was meant, where it has two.
 * @typedef {{ text: string, system: System, meant?: number }} Typed
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
    /** What was typed, and in which units; null until somebody types. @type {Typed | null} */
    this.typed = null;
    /** Whether the start is what somebody stated elsewhere (the sender of a link) and not the page's own. */
    this.given = false;
    /** Why the typed text is no number. @type {ReadErrorCode | null} */
    this.unread = null;
    /** What an ambiguous text may mean. @type {[number, number] | null} */
    this.readings = null;
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
   * @param {number} [meant] which reading of an ambiguous text
   */
  type(text, system, meant) {
    this.typed = meant === undefined ? { text, system } : { text, system, meant };
    this.unread = this.value = this.readings = null;
    try {
      this.value = this.core.read(text, this.rule.quantity, system);
    } catch (error) {
      const { code, readings } = /** @type {Partial<ReadError>} */ (error);
      if (code === undefined) throw error;
      this.readings = readings ?? null;
      this.value = readings?.[meant ?? NaN] ?? null;
      if (this.value !== null) return;
      // An empty field is no fault of reading: the core decides whether the number may be missing.
      if (code !== "empty") this.unread = code;
    }
  }

  /** That the typed text is no number; null where it is one. @returns {Told | null} */
  fault() {
    const { path, quantity, least, most, example } = this.rule;
    if (!this.unread) return null;
    return { path, code: this.unread, found: this.typed?.text ?? "", allowed: { kind: "range", least, most, quantity }, example, values: [] };
  }

  reset() {
    this.typed = this.unread = this.readings = null;
    this.value = this.start;
  }

  /**
   * The text for the input: as typed where the units still are those it was typed in, else the value in the units shown, as a tape shows
   * it. The value stays what it is.
   *
   * @param {System} system
   */
  text(system) {
    if (this.typed && (this.typed.system === system || this.value === null)) return this.typed.text;
    return this.value === null ? "" : this.core.entered(this.value, this.rule.quantity, system);
  }

  /** Text that cannot be read has no value to convert: it is read again in the new units. @param {System} system */
  unitsChanged(system) {
    if (this.typed && this.unread) this.type(this.typed.text, system);
  }
}
