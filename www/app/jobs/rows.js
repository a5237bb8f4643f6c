/**
 * The list of jobs: open, rename, duplicate, delete; and those deleted, to bring back.
 *
 * @import { Keeper } from "./keeper.js"
 * @import { Row } from "./store.js"
 * @import { Strings } from "../strings.js"
 */

import { h } from "../dom.js";

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
  /** The row whose name is being typed. @type {string | null} */
  let naming = null;
  let drawn = "";

  /** @param {Row} row */
  const nameOf = ({ document }) => document?.title || strings.say("jobs.nameless");

  /** @param {string} key @param {Row} row @param {() => unknown} act */
  function button(key, row, act) {
    const label = strings.say(`jobs.${key}_label`, { name: nameOf(row) });
    return h("button", { type: "button", class: "quiet", "data-act": key, "aria-label": label, onclick: act }, strings.say(`jobs.${key}`));
  }

  /** @param {Row} row */
  function item(row) {
    const here = row.id === keeper.id;
    const open = h("button", { type: "button", class: "job-open", "aria-current": here ? "true" : null, onclick: () => here || keeper.openRow(row.id) }, nameOf(row));
    return h(
      "li",
      { "data-id": row.id, class: here ? "here" : null },
      naming === row.id ? nameForm(row) : open,
      h("span", { class: "note" }, here ? `${strings.say("jobs.here")} · ${when.format(row.at)}` : when.format(row.at)),
      h(
        "span",
        { class: "job-acts" },
        button("rename", row, () => rename(row.id)),
        button("duplicate", row, () => keeper.duplicate(row.id, strings.say("jobs.copy_name", { name: nameOf(row) }))),
        button("delete", row, () => keeper.remove(row.id).then(() => deleted(row))),
      ),
    );
  }

  /** @param {Row} row */
  function nameForm(row) {
    const input = h("input", { class: "job-rename", value: row.document?.title ?? "", maxlength: 200, "aria-label": strings.say("jobs.name"), onkeydown: (event) => {
      if (event.key !== "Enter" && event.key !== "Escape") return;
      // The key must not press the button that has the focus next.
      event.preventDefault();
      (event.key === "Enter" ? done : close)();
    }, onblur: () => done() });
    function close() {
      naming = null;
      update();
      /** @type {HTMLElement | null} */ (list.querySelector(`[data-id="${row.id}"] [data-act=rename]`))?.focus();
    }
    function done() {
      if (naming !== row.id) return;
      const name = input.value.trim();
      if (name && name !== row.document?.title) keeper.rename(row.id, name);
      close();
    }
    queueMicrotask(() => input.select());
    return input;
  }

  /** @param {string} id */
  function rename(id) {
    naming = id;
    update();
    /** @type {HTMLElement | null} */ (list.querySelector(".job-rename"))?.focus();
  }

  function update() {
    const text = JSON.stringify([naming, keeper.id, keeper.rows.map((row) => [row.id, row.saved, row.deleted])]);
    if (text === drawn) return;
    drawn = text;
    const inside = list.contains(/** @type {ShadowRoot} */ (root.getRootNode()).activeElement);
    list.replaceChildren(...keeper.list().map(item));
    // The button that was pressed is another one now.
    if (inside) /** @type {HTMLElement | null} */ (list.querySelector(".here .job-open"))?.focus();
    const binned = keeper.rows.filter(({ deleted: at }) => at !== null);
    bin.hidden = binned.length === 0;
    gone.replaceChildren(
      ...binned.map((row) =>
        h("li", { "data-id": row.id }, h("span", {}, nameOf(row)), h("span", { class: "note" }, when.format(row.deleted ?? 0)), h("span", { class: "job-acts" }, button("restore", row, () => keeper.restore(row.id)))),
      ),
    );
  }

  return { root, update };
}
