/**
 * What a figure was before the last change: changes that follow one another, as keys do, are one.
 */

/** Pause that ends a change, ms. */
const PAUSE_MS = 1500;

export class Was {
  #now = "";
  #before = "";
  #changed = -Infinity;

  /**
   * @param {string} figure as it stands
   * @param {boolean} stale whether it is an old one
   * @param {number} [time] ms
   * @returns {string} what it was; empty where that is the same, or not known
   */
  before(figure, stale, time = performance.now()) {
    if (!stale && figure !== this.#now) {
      if (time - this.#changed > PAUSE_MS) this.#before = this.#now;
      // The first figure is no change.
      if (this.#now !== "") this.#changed = time;
      this.#now = figure;
    }
    return this.#before === this.#now ? "" : this.#before;
  }
}
