/**
 * The list of jobs, and those deleted, to bring back.
 *
 * @import { Keeper } from "./keeper.js"
 * @import { Row } from "./store.js"
 * @import { Strings } from "../strings.js"
 */

import { h } from "../dom.js";
import { createRow, nameOf, rowButton } from "./row.js";

/**
 * @param {Strings} strings
 * @param {Keeper} keeper
 * @param {(row: Row) => void} deleted told after a deletion
 */
export function createRows(strings, keeper, deleted) {
  const when = new Intl.DateTimeFormat(strings.language, { dateStyle: "medium", timeStyle: "short" });
  const list = h("ul", { class: "job-list" });
  const gone = h("ul", { class: "job-list" });
  const bin = h("details", { class: "job-bin" }, h("summary", {}, strings.say("jobs.bin")), h("p", { class: "note" }, strings.say("jobs.bin_note")), gone);
  const root = h("div", {}, list, bin);
  /** @type {Map<string, ReturnType<typeof createRow>>} */
  const items = new Map();
  let binnedBefore = "";

  function update() {
    const rows = keeper.shelf.list();
    const inside = root.contains(active());
    const wanted = rows.map((row) => {
      const item = items.get(row.id) ?? createRow(strings, keeper, row, deleted);
      items.set(row.id, item);
      item.update(row);
      return item.root;
    });
    for (const id of items.keys()) if (!rows.some((row) => row.id === id)) items.delete(id);
    arrange(wanted);
    updateBin();
    // The button that was pressed has gone.
    if (inside && !root.contains(active())) /** @type {HTMLElement | null} */ (list.querySelector(".here .job-open"))?.focus();
  }

  function active() {
    return /** @type {ShadowRoot} */ (root.getRootNode()).activeElement;
  }

  /** Brings the list into an order. What has the focus stays where it is and the others move: moved, it would lose the focus. @param {Element[]} wanted */
  function arrange(wanted) {
    if (wanted.length === list.children.length && wanted.every((item, place) => list.children[place] === item)) return;
    const held = wanted.findIndex((item) => item.contains(active()));
    for (const item of [...list.children]) if (item !== wanted[held]) item.remove();
    if (held >= 0) wanted[held].before(...wanted.slice(0, held));
    list.append(...wanted.slice(held + 1));
  }

  function updateBin() {
    const binned = keeper.shelf.rows.filter(({ deleted: at }) => at !== null);
    const text = JSON.stringify(binned.map(({ id, saved }) => [id, saved]));
    if (text === binnedBefore) return;
    binnedBefore = text;
    bin.hidden = binned.length === 0;
    gone.replaceChildren(...binned.map(binnedRow));
  }

  /** @param {Row} row */
  function binnedRow(row) {
    const name = nameOf(strings, row);
    const restore = rowButton(strings, "restore", () => keeper.restore(row.id));
    restore.update(name);
    return h("li", { "data-id": row.id }, h("span", {}, name), h("span", { class: "note" }, when.format(row.deleted ?? 0)), h("span", { class: "job-acts" }, restore.root));
  }

  bin.hidden = true;
  return { root, update };
}
