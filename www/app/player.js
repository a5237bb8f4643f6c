/**
 * Plays a run of the leaf at its own speed, or slower or faster. The shared cursor is all it moves, so everything that shows the cursor
 * shows one state; when anybody else moves it, it stops. Frames are asked for while it plays and at no other time.
 *
 * @import { RunPoint, View } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 *
 * @typedef {View["run"]} RunName
 */

/** Each run and the one the other way. @type {Record<RunName, RunName>} */
const BACK = { opening: "closing", closing: "opening", motor_opening: "motor_closing", motor_closing: "motor_opening" };

/** Where no animation is wanted, one still picture in this many milliseconds. */
const STILL_MS = 1000;

/** Degrees from a run's end within which the leaf is there. */
const THERE_DEG = 1e-6;

export class Player {
  /**
   * @param {Sheet} sheet
   * @param {AbortSignal} signal ends it
   * @param {() => void} changed called when it starts, stops or follows another run
   */
  constructor(sheet, signal, changed) {
    this.sheet = sheet;
    this.changed = changed;
    /** Seconds of the run in one of the clock. */
    this.factor = 1;
    this.playing = false;
    this.time = 0;
    this.frame = 0;
    this.timer = 0;
    /** When the last frame was, ms; null before the first. @type {number | null} */
    this.last = null;
    this.moving = false;
    sheet.cursor.addEventListener("move", () => !this.moving && this.pause(), { signal });
    document.addEventListener("visibilitychange", () => document.hidden && this.pause(), { signal });
    signal.addEventListener("abort", () => this.pause());
  }

  /** Runs there are to follow. @returns {RunName[]} */
  get runs() {
    const motion = this.sheet.result?.plan.motion;
    if (!motion) return [];
    return motion.driven ? ["opening", "closing", "motor_opening", "motor_closing"] : ["opening", "closing"];
  }

  /** The followed run where the leaf is; null where it does not come there. @returns {RunPoint | null} */
  get here() {
    return this.sheet.result?.calculation.run_of_leaf(this.sheet.showing.run, this.sheet.cursor.leafDeg) ?? null;
  }

  /** The last row of a run. @param {RunName} run @returns {RunPoint | null} */
  #end(run) {
    return this.sheet.result?.calculation.run_at(run, Number.MAX_VALUE) ?? null;
  }

  /** The run that playing would show: at the end of one that arrives, the way back. @returns {RunName} */
  next() {
    const { run } = this.sheet.showing;
    const target = run.endsWith("opening") ? this.sheet.cursor.openDeg : 0;
    const end = this.#end(run);
    const arrives = end !== null && Math.abs(end.leaf_deg - target) < THERE_DEG;
    return arrives && Math.abs(this.sheet.cursor.leafDeg - target) < THERE_DEG ? BACK[run] : run;
  }

  /** @param {RunName} run */
  follow(run) {
    this.pause();
    this.sheet.showing.run = run;
    this.changed();
  }

  toggle() {
    if (this.playing) this.pause();
    else this.play();
  }

  play() {
    if (this.playing || this.runs.length === 0) return;
    this.sheet.showing.run = this.next();
    const { here } = this;
    const end = this.#end(this.sheet.showing.run);
    // A run that ends on the way starts anew.
    this.time = here && end && here.time_s < end.time_s ? here.time_s : 0;
    this.playing = true;
    this.last = null;
    this.changed();
    if (matchMedia("(prefers-reduced-motion: reduce)").matches) this.timer = setInterval(() => this.#advance(STILL_MS), STILL_MS);
    else this.frame = requestAnimationFrame((now) => this.#tick(now));
  }

  pause() {
    if (!this.playing) return;
    this.playing = false;
    cancelAnimationFrame(this.frame);
    clearInterval(this.timer);
    this.changed();
  }

  /** @param {number} now */
  #tick(now) {
    const since = this.last === null ? 0 : now - this.last;
    this.last = now;
    this.frame = requestAnimationFrame((next) => this.#tick(next));
    this.#advance(since);
  }

  /** @param {number} ms of the clock */
  #advance(ms) {
    this.time += (ms / 1000) * this.factor;
    const { run } = this.sheet.showing;
    const [at, end] = [this.sheet.result?.calculation.run_at(run, this.time) ?? null, this.#end(run)];
    if (!at || !end) return this.pause();
    this.moving = true;
    this.sheet.cursor.moveTo(at.leaf_deg);
    this.moving = false;
    if (this.time >= end.time_s) this.pause();
  }
}
