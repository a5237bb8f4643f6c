/**
 * The leaf angle that is being looked at: one state, shared by curve, plan view, readout and keys.
 * Until somebody moves it, it stays at the angle that decides the verdict.
 */
export class Cursor extends EventTarget {
  constructor() {
    super();
    /** Degrees from closed. */
    this.leafDeg = 0;
    this.openDeg = 90;
    this.decidingDeg = 0;
    this.followsDeciding = true;
  }

  /**
   * A new result: the swing and the deciding angle may have moved. Says nothing; the caller redraws everything anyway.
   *
   * @param {number} openDeg
   * @param {number} decidingDeg
   */
  rest(openDeg, decidingDeg) {
    this.openDeg = openDeg;
    this.decidingDeg = decidingDeg;
    this.leafDeg = this.followsDeciding ? decidingDeg : this.within(this.leafDeg);
  }

  /** @param {number} leafDeg */
  within(leafDeg) {
    return Math.min(Math.max(leafDeg, 0), this.openDeg);
  }

  /** @param {number} leafDeg clamped to the swing */
  moveTo(leafDeg) {
    this.set(this.within(leafDeg), false);
  }

  /** @param {number} degrees */
  step(degrees) {
    // From whole degree to whole degree, so that stepping reads well after a drag.
    const here = this.leafDeg;
    this.moveTo(degrees > 0 ? Math.floor(here + 1e-9) + degrees : Math.ceil(here - 1e-9) + degrees);
  }

  toDeciding() {
    this.set(this.decidingDeg, true);
  }

  /**
   * @param {number} leafDeg
   * @param {boolean} followsDeciding
   */
  set(leafDeg, followsDeciding) {
    if (leafDeg === this.leafDeg && followsDeciding === this.followsDeciding) return;
    this.leafDeg = leafDeg;
    this.followsDeciding = followsDeciding;
    this.dispatchEvent(new Event("move"));
  }

  /**
   * What a key does to a slider (WAI-ARIA authoring practices, slider pattern).
   *
   * @param {KeyboardEvent} event
   */
  key(event) {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const steps = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1, PageUp: 10, PageDown: -10 };
    if (event.key in steps) this.step(steps[/** @type {keyof typeof steps} */ (event.key)]);
    else if (event.key === "Home") this.moveTo(0);
    else if (event.key === "End") this.moveTo(this.openDeg);
    else return;
    event.preventDefault();
  }
}
