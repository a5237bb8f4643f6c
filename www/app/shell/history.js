/**
 * One history of what was said, across all steps: each change can be taken back. Changes that follow one another, as keys in a field do, are one.
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
   * @param {() => unknown} said what is said now
   * @param {(said: unknown) => void} restore
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
    // A field that is left without another change is done with: what is typed into it next is a change of its own.
    if (now === this.#now && about === "") this.#about = "";
    if (now === this.#now) return;
    if (about === "" || about !== this.#about) {
      this.#before.push(this.#now);
      if (this.#before.length > KEPT) this.#before.shift();
    }
    this.#about = about;
    this.#now = now;
  }

  /** What is said now was brought by somebody else, and is no change to be taken back. */
  accept() {
    this.#now = JSON.stringify(this.said());
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
