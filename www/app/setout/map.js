/**
 * The map of places for the shaft. The worker finds what each is worth, the core draws it here; a finger or the keys look at a place,
 * and a button or the Enter key takes it.
 *
 * @import { Arm, Pad, Palette, View } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 */

import { h, setAttribute, setText } from "../dom.js";
import { readPalette } from "../palette.js";
import { lengthAt } from "../sides.js";
import { padSentence } from "./words.js";

/** Places along a side that is a range: one in each of sixteen in the first pass, ends included. */
const SIDE = 65;
/** Places apart in the table. */
const TABLE = 16;

/** @type {Record<string, [number, number]>} */
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1], PageUp: [0, 8], PageDown: [0, -8] };

/** @type {("shaft_x_m" | "shaft_y_m" | "bracket_u_m" | "bracket_v_m" | "crank_m" | "link_m")[]} */
const ARM = ["shaft_x_m", "shaft_y_m", "bracket_u_m", "bracket_v_m", "crank_m", "link_m"];

/** Columns and rows of the map of a block: a fixed value is one place. @param {any} setout */
export function gridOf(setout) {
  const count = (/** @type {[number, number]} */ [least, most]) => (least === most ? 1 : SIDE);
  return { columns: count(setout.shaft_x_m), rows: count(setout.shaft_y_m) };
}

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal
 * @param {object} does
 * @param {(column: number, row: number) => void} does.look asks what the map says of a place
 * @param {(arm: Arm) => void} does.take
 */
export function createMap(sheet, signal, { look, take }) {
  const limitNames = sheet.core.limit_names();
  const probe = h("span", { class: "probe", hidden: true });
  const canvas = h("canvas", {});
  const drawing = h("div", {
    class: "drawing map",
    part: "map",
    role: "slider",
    tabindex: "0",
    "aria-label": sheet.say("setout.map.name"),
    "aria-valuemin": "0",
    onkeydown: key,
    onpointerdown: (/** @type {PointerEvent} */ event) => {
      if (event.button === 0) drawing.setPointerCapture(event.pointerId);
      follow(event);
    },
    onpointermove: follow,
  }, canvas);
  const reading = h("p", { class: "reading" });
  const armCanvas = h("canvas", {});
  const armDrawing = h("div", { class: "drawing arm-here", role: "img", hidden: true }, armCanvas);
  const button = h("button", { type: "button", class: "move take place", onclick: () => takePlace() }, sheet.say("setout.take.place"));
  const body = h("tbody", {});
  const head = h("tr", {});
  const title = sheet.say("setout.map.table");
  const table = h("details", { class: "data", ontoggle: () => fillTable() }, h("summary", {}, title),
    h("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": title }, h("table", {}, h("caption", {}, title), h("thead", {}, head), body)));
  const root = h("div", { class: "figure map-figure", hidden: true }, h("h2", {}, sheet.say("setout.map.title")), h("p", { class: "note" }, sheet.say("setout.map.note")), drawing, reading, button, armDrawing, table, probe);

  /** @type {InstanceType<import("../core.js").Core["PadView"]> | null} */
  let picture = null;
  /** The job the map is of, without an arm. @type {any} */
  let site = null;
  let grid = { columns: 1, rows: 1 };
  /** @type {Float64Array | null} */
  let known = null;
  let here = { column: 0, row: 0 };
  /** @type {Pad | null} */
  let pad = null;
  /** @type {Palette | null} */
  let palette = null;
  let frame = 0;
  /** Whether the place is still to be asked about, and whether an answer is awaited: with a step or a proof each is a small search. */
  let [due, awaited] = [false, false];

  /** A map of another site begins. @param {any} job */
  function begin(job) {
    const next = gridOf(job.setout);
    if (next.columns !== grid.columns || next.rows !== grid.rows) here = { column: (next.columns - 1) >> 1, row: (next.rows - 1) >> 1 };
    grid = next;
    const { schema, hand, leaf, hinges, wind, swing, operator } = job;
    site = { schema, hand, leaf, hinges, wind, swing, operator, samples: 2 };
    picture?.free();
    // Its maker may throw.
    picture = null;
    picture = new sheet.core.PadView(job, grid.columns, grid.rows);
    known = null;
    pad = null;
    [due, awaited] = [false, false];
  }

  /** What is known so far. @param {Float64Array} values */
  function tell(values) {
    if (!picture) return;
    known = values;
    picture.set(values);
    root.hidden = false;
    [due, awaited] = [true, false];
    fillTable();
    redraw();
  }

  /** @param {Arm | null} best */
  function markBest(best) {
    picture?.mark_best(best?.shaft_x_m ?? NaN, best?.shaft_y_m ?? NaN);
    redraw();
  }

  /** @param {{ column: number, row: number, pad: Pad | null }} answer */
  function tellPad(answer) {
    awaited = false;
    if (due) redraw();
    if (answer.column !== here.column || answer.row !== here.row) return;
    pad = answer.pad;
    update();
  }

  /** @param {HTMLCanvasElement} [seen] @returns {View} */
  function view(seen = canvas) {
    palette ??= readPalette(probe);
    const { width, height } = seen.getBoundingClientRect();
    const { enlarged } = sheet;
    return { width: width / enlarged, height: height / enlarged, pixel_ratio: devicePixelRatio * enlarged, leaf_deg: 0, ...sheet.showing, system: sheet.session.system, palette, labels: sheet.strings.at("drawing") };
  }

  function lookOf() {
    const limits = Object.fromEntries(limitNames.map((name) => [name, sheet.say(`setout.limits.${name}`)]));
    return { best: sheet.say("setout.map.best"), limits };
  }

  function redraw() {
    cancelAnimationFrame(frame);
    frame = requestAnimationFrame(() => {
      // Of the places that a finger has run over, the last.
      if (picture && due && !awaited) {
        [due, awaited] = [false, true];
        look(here.column, here.row);
      }
      const seen = view();
      if (!picture || seen.width === 0 || seen.height === 0) return;
      picture.mark_here(here.column, here.row);
      const arm = pad && !pad.ruled_out ? pad.arm : null;
      picture.mark_arm(new Float64Array(arm ? ARM.map((key) => arm[key]) : []), arm?.elbow === "left");
      picture.draw(canvas, seen, lookOf());
      drawArm(arm);
    });
  }

  /** The whole of what the map has no room for: the arm of the place, closed and open. @param {Arm | null} arm */
  function drawArm(arm) {
    armDrawing.hidden = !arm;
    if (!arm) return;
    try {
      const calculation = new sheet.core.Calculation({ ...site, arm });
      calculation.draw_plan_view(armCanvas, view(armCanvas));
      calculation.free();
    } catch {
      // The map keeps limits within a pencil line; an arm that stops working there is not drawn.
      armDrawing.hidden = true;
    }
  }

  /** @param {number} column @param {number} row */
  function moveTo(column, row) {
    const within = (/** @type {number} */ at, /** @type {number} */ count) => Math.min(Math.max(at, 0), count - 1);
    here = { column: within(column, grid.columns), row: within(row, grid.rows) };
    due = true;
    redraw();
  }

  /** @param {PointerEvent} event */
  function follow(event) {
    if (!picture || !drawing.hasPointerCapture(event.pointerId)) return;
    const box = canvas.getBoundingClientRect();
    const [column, row] = picture.place_at(event.clientX - box.left, event.clientY - box.top, view());
    moveTo(column, row);
  }

  /** @param {KeyboardEvent} event */
  function key(event) {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const step = STEPS[event.key];
    // On the mirrored sheet of a left-hand gate, right is towards the hinge's other side.
    const across = sheet.session.choice("hand").value === "left" ? -1 : 1;
    if (step) moveTo(here.column + across * step[0], here.row + step[1]);
    else if (event.key === "Home") moveTo(0, 0);
    else if (event.key === "End") moveTo(grid.columns - 1, grid.rows - 1);
    else if (event.key === "Enter") takePlace();
    else return;
    event.preventDefault();
  }

  function takePlace() {
    if (pad && !pad.ruled_out) take(pad.arm);
  }

  /** Every sixteenth place, in numbers. */
  function fillTable() {
    if (!table.open || !picture || !known) return;
    const stops = (/** @type {number} */ count) => Array.from({ length: Math.ceil(count / TABLE) }, (_, index) => index * TABLE);
    const count = grid.columns * grid.rows;
    const [columns, rows] = [stops(grid.columns), stops(grid.rows)];
    const place = (/** @type {number} */ column, /** @type {number} */ row) => /** @type {NonNullable<typeof picture>} */ (picture).place_m(column, row);
    head.replaceChildren(h("th", { scope: "col" }, sheet.say("setout.map.corner")), ...columns.map((column) => h("th", { scope: "col" }, lengthAt(sheet, "shaft_x_m", place(column, 0)[0]))));
    body.replaceChildren(...rows.reverse().map((row) => {
      const cells = columns.map((column) => {
        const at = row * grid.columns + column;
        const [reserve, code] = [/** @type {Float64Array} */ (known)[at], /** @type {Float64Array} */ (known)[count + at]];
        if (code === 0) return Number.isFinite(reserve) ? sheet.show(reserve, "ratio") : "–";
        return limitNames[code - 1] ? sheet.say(`setout.limits.${limitNames[code - 1]}`) : "…";
      });
      return h("tr", {}, h("th", { scope: "row" }, lengthAt(sheet, "shaft_y_m", place(0, row)[1])), ...cells.map((cell) => h("td", {}, cell)));
    }));
  }

  function update() {
    const words = picture ? padSentence(sheet, pad) : "";
    setText(reading, words);
    setAttribute(armDrawing, "aria-label", words);
    button.disabled = !pad || pad.ruled_out !== null;
    setAttribute(drawing, "aria-valuemax", String(grid.columns * grid.rows - 1));
    setAttribute(drawing, "aria-valuenow", String(here.row * grid.columns + here.column));
    setAttribute(drawing, "aria-valuetext", words);
    fillTable();
    redraw();
  }

  function recolour() {
    palette = null;
    redraw();
  }

  const sizes = new ResizeObserver(redraw);
  sizes.observe(drawing);
  signal.addEventListener("abort", () => {
    sizes.disconnect();
    cancelAnimationFrame(frame);
    picture?.free();
    picture = null;
  });
  return { root, update, recolour, begin, tell, tellPad, markBest };
}
