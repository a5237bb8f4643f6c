/**
 * The drawings' colours: whatever CSS says, as the "#rrggbb" the core takes.
 *
 * @import { Palette } from "./contract.d.ts"
 */

/** Colours of the core's palette, and the custom property of the sheet each is taken from. */
const INKS = {
  paper: "--_paper",
  ink: "--_ink",
  faint: "--_trace",
  opening: "--_opening",
  closing: "--_closing",
  limit: "--_limit",
  cursor: "--_cursor",
  leaf: "--_leaf",
  third: "--_third",
  fourth: "--_fourth",
};

/**
 * Resolves the custom properties where the probe stands. Any colour CSS can name is painted on one pixel and read back.
 *
 * @param {HTMLElement} probe an element inside the themed tree that is never seen
 * @returns {Palette}
 */
export function readPalette(probe) {
  const canvas = document.createElement("canvas");
  canvas.width = canvas.height = 1;
  const context = /** @type {CanvasRenderingContext2D} */ (canvas.getContext("2d", { willReadFrequently: true }));
  const colour = (/** @type {string} */ property) => {
    probe.style.color = `var(${property})`;
    return hex(context, getComputedStyle(probe).color);
  };
  return /** @type {any} */ (Object.fromEntries(Object.entries(INKS).map(([ink, property]) => [ink, colour(property)])));
}

/** @param {CanvasRenderingContext2D} context @param {string} colour */
function hex(context, colour) {
  context.clearRect(0, 0, 1, 1);
  context.fillStyle = colour;
  context.fillRect(0, 0, 1, 1);
  const [red, green, blue] = context.getImageData(0, 0, 1, 1).data;
  return `#${[red, green, blue].map((part) => part.toString(16).padStart(2, "0")).join("")}`;
}
