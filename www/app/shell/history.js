/**
 * One history of what was said, across all steps: each change can be taken back. Changes that follow one another, as keys in a field do, are one.
 *
 * @import { TypedRecord } from "../typed-record.js"
 */

/** As many as are kept. */
const KEPT = 100;

export class History {
  /** What was said before each change, as text. @type {string[]} */
  #before = [];
  /** What is said now, as text. */
  #now = "";
  /** What the last change was about. */
  #about = "";

  /**
   * @param {() => TypedRecord} said what is said now
   * @param {(record: TypedRecord) => void} restore
   */
  constructor(said, restore) {
    this.said = said;
    this.restore = restore;
    this.#now = JSON.stringify(said());
  }

  get canUndo() {
    return this.#before.length > 0;
  }

  /** To be called after a change. @param {string} about the field being typed in; empty for a change that is whole at once */
  note(about) {
    const now = JSON.stringify(this.said());
    if (now === this.#now) return;
    if (about === "" || about !== this.#about) {
      this.#before.push(this.#now);
      if (this.#before.length > KEPT) this.#before.shift();
    }
    this.#about = about;
    this.#now = now;
  }

  /** The field is left: what is typed into it next is another change. */
  rest() {
    this.#about = "";
  }

  undo() {
    const before = this.#before.pop();
    if (before === undefined) return;
    this.#now = before;
    this.#about = "";
    this.restore(JSON.parse(before));
  }
}
