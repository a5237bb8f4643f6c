/**
 * Work that may come after the answer, a piece a task, so that no piece keeps the page from the finger. New work ends the old.
 */
export class Later {
  #timer = 0;

  /**
   * @param {Iterator<unknown>} work each step is one piece
   * @param {number} [pause] before the first, ms
   */
  run(work, pause = 0) {
    clearTimeout(this.#timer);
    const step = () => {
      if (!work.next().done) this.#timer = setTimeout(step);
    };
    this.#timer = setTimeout(step, pause);
  }

  stop() {
    clearTimeout(this.#timer);
  }
}
