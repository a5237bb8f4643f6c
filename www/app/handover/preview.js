/**
 * The hand-over sheet before it is printed: its pages as they come out of the printer, made smaller where there is no room.
 *
 * @import { Sheet } from "../sheet.js"
 * @import { Size } from "./print.js"
 */

import { h } from "../dom.js";
import { fetchSheet } from "../stylesheet.js";
import { fullResult } from "./compare.js";
import { setOnPages } from "./pages.js";
import { paperBlocks } from "./paper.js";
import { SIZES, printInstead } from "./print.js";
import { titleBlock } from "./title-block.js";

/** CSS px in a mm. */
const MM = 96 / 25.4;

/**
 * @param {Sheet} sheet
 * @param {HTMLElement} place
 * @param {AbortSignal} signal
 * @param {() => void} closed
 * @param {(sheet: Sheet, result: import("../sheet.js").Result) => import("./blocks.js").Block[]} [blocksOf] what stands on the pages
 */
export async function createPreview(sheet, place, signal, closed, blocksOf = paperBlocks) {
  const say = (/** @type {string} */ key) => sheet.say(`handover.${key}`);
  const style = await fetchSheet("print");
  const ended = new AbortController();
  signal.addEventListener("abort", () => ended.abort(), { signal: ended.signal });

  const host = h("div", { "data-pintle-paper": true, lang: sheet.strings.language });
  const pages = h("div", { class: "pages" });
  const tree = host.attachShadow({ mode: "open" });
  tree.adoptedStyleSheets = [style];
  tree.append(pages);

  const frame = h("div", {}, host);
  const radios = /** @type {Size[]} */ (Object.keys(SIZES)).map((value) => h("input", { type: "radio", name: "paper", value, onchange: () => choose(value) }));
  const pane = h("div", { class: "scroll preview", tabindex: "0", role: "region", "aria-label": say("preview") }, frame);
  place.replaceChildren(
    h("div", { class: "paper-bar" },
      h("fieldset", { class: "settings" }, h("legend", {}, say("size.label")),
        ...radios.map((radio) => h("label", { class: "option" }, radio, h("span", {}, say(`size.${radio.value}`))))),
      h("button", { type: "button", class: "move print", onclick: () => print() }, say("print")),
      h("button", { type: "button", class: "move", onclick: () => close(true) }, say("close"))),
    h("p", { class: "note" }, say("printing")),
    pane,
  );

  /** The paper chosen; until then that of the units. @type {Size | null} */
  let chosen = null;
  const size = () => chosen ?? (sheet.session.system === "us" ? "letter" : "a4");
  let drawn = "";

  /** @param {Size} value */
  function choose(value) {
    chosen = value;
    update();
  }

  /** @param {boolean} byPerson */
  function close(byPerson) {
    ended.abort();
    place.replaceChildren();
    if (byPerson) closed();
  }

  function update() {
    for (const radio of radios) radio.checked = radio.value === size();
    const result = fullResult(sheet);
    if (!result) return;
    const text = JSON.stringify([result.job, size(), sheet.session.system, sheet.counts().assumed]);
    if (text !== drawn) {
      drawn = text;
      draw(result);
    }
    result.calculation.free();
  }

  /** @param {import("../sheet.js").Result} result */
  function draw(result) {
    // Measured at its full size.
    host.style.transform = "";
    pages.className = `pages ${size()}`;
    pages.replaceChildren();
    /** @type {((pages: number, isTrue: boolean) => void)[]} */
    const numbered = [];
    setOnPages(blocksOf(sheet, result), () => {
      const block = titleBlock(sheet, result.job, numbered.length + 1);
      const body = h("div", { class: "body" });
      numbered.push(block.count);
      pages.append(h("section", { class: "page" }, body, block.root));
      return body;
    });
    numbered.forEach((count, index) => count(numbered.length, pages.children[index].querySelector(".true-size") !== null));
    fit();
  }

  function fit() {
    const room = pane.clientWidth / (SIZES[size()][0] * MM);
    const small = room > 0 && room < 1;
    Object.assign(host.style, { transform: small ? `scale(${room})` : "", transformOrigin: "0 0" });
    frame.style.height = small ? `${host.offsetHeight * room}px` : "";
  }

  const widths = new ResizeObserver(() => fit());
  widths.observe(pane);
  ended.signal.addEventListener("abort", () => widths.disconnect());
  printInstead(host, size, ended.signal);
  update();
  return { update, close: () => close(false) };
}
