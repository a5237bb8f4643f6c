/**
 * Where somebody came from who was led to a field: the way back returns to the same place, and folds again what was opened on the way.
 */

export class Trail {
  /** @type {{ left: number, top: number, opened: HTMLDetailsElement[], again: () => void, home: () => Promise<void> } | null} */
  #from = null;

  /** Called when there is, or is no longer, a way back. */
  changed = () => {};

  get leadsBack() {
    return this.#from !== null;
  }

  /**
   * Leads somewhere, and remembers from where.
   *
   * @param {() => Promise<HTMLDetailsElement[]>} go goes there; gives what it opened
   * @param {() => void} again what stood open and is to stand open again
   * @param {() => Promise<void>} home brings back the step that was left
   */
  async leave(go, again, home) {
    const { scrollX: left, scrollY: top } = window;
    this.#from = { left, top, opened: [], again, home };
    const { opened } = this.#from;
    opened.push(...(await go()));
    this.changed();
  }

  async back() {
    const from = this.#from;
    if (!from) return;
    this.#from = null;
    for (const group of from.opened) group.open = false;
    // What the way back took of the room is given back first, so that the place is the same.
    this.changed();
    await from.home();
    window.scrollTo({ left: from.left, top: from.top, behavior: "instant" });
    from.again();
  }
}
