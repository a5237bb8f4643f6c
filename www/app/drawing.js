/**
 * A canvas the core draws on, which also is a slider for the shared leaf angle: drag, tap, or keys.
 * It is drawn when something changed (result, cursor, size, pixel density, colours) and at no other time.
 *
 * @import { Palette, View } from "./contract.d.ts"
 * @import { Sheet } from "./sheet.js"
 */

import { h, setAttribute } from "./dom.js";

/** Degrees from the cursor within which a finger takes hold of the leaf instead of scrolling the page. */
const GRIP_DEG = 8;

export class Drawing {
  /**
   * @param {Sheet} sheet
   * @param {object} options
   * @param {string} options.name `curve`, `plan_view` or `time`
   * @param {(canvas: HTMLCanvasElement, view: View) => void} options.draw
   * @param {(x: number, y: number, view: View) => number} options.locate leaf angle under a point of the canvas, CSS pixels
   * @param {() => Palette} options.palette
   */
  constructor(sheet, { name, draw, locate, palette }) {
    this.sheet = sheet;
    this.draw = draw;
    this.locate = locate;
    this.palette = palette;
    this.frame = 0;
    /** Where the canvas was when a finger came down: asking for it anew would make the browser lay out the page at every move. @type {DOMRect | null} */
    this.box = null;
    this.size = { width: 0, height: 0 };
    this.canvas = h("canvas", {});
    this.root = h(
      "div",
      {
        class: `drawing ${name}`,
        part: name.replace("_", "-"),
        role: "slider",
        tabindex: "0",
        "aria-label": sheet.say(`drawing_names.${name}`),
        "aria-valuemin": "0",
        onkeydown: (/** @type {KeyboardEvent} */ event) => sheet.cursor.key(event),
        onpointerdown: (/** @type {PointerEvent} */ event) => this.#down(event),
        onpointermove: (/** @type {PointerEvent} */ event) => this.#move(event),
      },
      this.canvas,
    );
    this.root.addEventListener("touchstart", (event) => this.#touch(event), { passive: false });
  }

  /** Watches size and pixel density; ends with the signal. @param {AbortSignal} signal */
  watch(signal) {
    const sizes = new ResizeObserver(([{ contentRect: { width, height } }]) => {
      this.size = { width, height };
      this.redraw();
    });
    sizes.observe(this.canvas);
    signal.addEventListener("abort", () => {
      sizes.disconnect();
      cancelAnimationFrame(this.frame);
    });
    this.#watchDensity(signal);
  }

  /** The query names the present density, so it is asked anew after each change. @param {AbortSignal} signal */
  #watchDensity(signal) {
    if (signal.aborted) return;
    const density = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    const changed = () => {
      this.redraw();
      this.#watchDensity(signal);
    };
    density.addEventListener("change", changed, { once: true, signal });
  }

  /** What the core needs to know to draw, and to find an angle under a finger. @returns {View} */
  view() {
    const { enlarged } = this.sheet;
    return {
      width: this.size.width / enlarged,
      height: this.size.height / enlarged,
      pixel_ratio: devicePixelRatio * enlarged,
      leaf_deg: this.sheet.cursor.leafDeg,
      ...this.sheet.showing,
      system: this.sheet.session.system,
      palette: this.palette(),
      labels: this.sheet.strings.at("drawing"),
    };
  }

  /** Draws in the next frame, however often it is asked. A frame that is asked for is not put off, or what plays would never be drawn. */
  redraw() {
    if (this.frame) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      const view = this.view();
      if (this.sheet.result && view.width > 0 && view.height > 0) this.draw(this.canvas, view);
    });
  }

  /** @param {string} valueText what the cursor says, in words */
  describe(valueText) {
    const { cursor } = this.sheet;
    setAttribute(this.root, "aria-valuemax", String(cursor.openDeg));
    setAttribute(this.root, "aria-valuenow", String(Math.round(cursor.leafDeg * 10) / 10));
    setAttribute(this.root, "aria-valuetext", valueText);
  }

  /** @param {number} clientX @param {number} clientY */
  #angleAt(clientX, clientY) {
    const box = (this.box ??= this.canvas.getBoundingClientRect());
    const { enlarged } = this.sheet;
    return this.locate((clientX - box.left) / enlarged, (clientY - box.top) / enlarged, this.view());
  }

  /** @param {PointerEvent} event */
  #down(event) {
    if (!this.sheet.result || event.button !== 0) return;
    this.box = null;
    this.root.setPointerCapture(event.pointerId);
    this.#follow(event);
  }

  /** @param {PointerEvent} event */
  #move(event) {
    if (this.sheet.result && this.root.hasPointerCapture(event.pointerId)) this.#follow(event);
  }

  /** @param {PointerEvent} event */
  #follow(event) {
    this.sheet.cursor.moveTo(this.#angleAt(event.clientX, event.clientY));
  }

  /** A finger that takes hold near the cursor drags in any direction; elsewhere an up or down stroke scrolls. @param {TouchEvent} event */
  #touch(event) {
    const touch = event.touches[0];
    this.box = null;
    if (!this.sheet.result || event.touches.length !== 1) return;
    if (Math.abs(this.#angleAt(touch.clientX, touch.clientY) - this.sheet.cursor.leafDeg) <= GRIP_DEG) event.preventDefault();
  }
}
