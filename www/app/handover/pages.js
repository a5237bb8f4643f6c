/**
 * Blocks set on pages: a heading never ends a page, a figure is never cut, a table goes on under its heads. The page is measured, not
 * guessed, so that every sheet can carry its number and no browser has to know of page breaks.
 *
 * @import { Block } from "./blocks.js"
 */

/** A printer breaks lines a little otherwise than a screen. */
const SLACK_PX = 12;

/** Rows of a table that are not worth a page of their own. */
const FEWEST = 3;

/** Tables with fewer rows are not cut at all. */
const WHOLE = 8;

/**
 * @param {Block[]} blocks
 * @param {() => HTMLElement} addPage a new page's part for blocks, with a height of its own
 */
export function setOnPages(blocks, addPage) {
  const queue = [...blocks];
  let body = addPage();
  /** @type {Block[]} */
  let placed = [];

  function turn() {
    body = addPage();
    placed = [];
  }

  for (let block = queue.shift(); block; block = queue.shift()) {
    if (block.fresh && placed.length) turn();
    body.append(block.root);
    placed.push(block);
    if (!overflows(body)) continue;
    const rest = cut(block, body);
    if (rest) {
      queue.unshift(rest);
      turn();
      continue;
    }
    /** What goes over: the block, and what has to stand before it. @type {Block[]} */
    const over = [];
    do over.unshift(/** @type {Block} */ (placed.pop()));
    while (placed.at(-1)?.keep);
    // Higher than a page by itself: there it stands, and the next begins another.
    if (placed.length === 0) {
      if (queue.length) turn();
      continue;
    }
    for (const { root } of over) root.remove();
    queue.unshift(...over.map((block, index) => (index === 0 ? { ...block, fresh: false } : block)));
    turn();
  }
}

/** @param {HTMLElement} body */
function overflows(body) {
  const end = body.lastElementChild?.getBoundingClientRect().bottom ?? 0;
  return end > body.getBoundingClientRect().bottom - SLACK_PX;
}

/** Leaves on the page the rows that fit; null where too few would. @param {Block} block @param {HTMLElement} body @returns {Block | null} */
function cut({ rows, again }, body) {
  if (!rows || !again || rows.childElementCount < WHOLE) return null;
  /** @type {Element[]} */
  const over = [];
  while (rows.childElementCount > FEWEST && (overflows(body) || over.length < FEWEST)) {
    const last = /** @type {Element} */ (rows.lastElementChild);
    over.unshift(last);
    last.remove();
  }
  if (overflows(body)) {
    rows.append(...over);
    return null;
  }
  const rest = again();
  rest.rows?.append(...over);
  return rest;
}
