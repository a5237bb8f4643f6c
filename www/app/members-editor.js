/**
 * The leaf's parts: one folded block a part, add, take away and back again, and what all of them come to.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Quantity } from "./contract.d.ts"
 */

import { h, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { createItems } from "./items-part.js";
import { memberItems } from "./member-items.js";
import { Members } from "./members.js";
import { wordsKey } from "./paths.js";

/** @type {[string, Quantity][]} */
const TOTALS = [
  ["mass_kg", "mass"],
  ["wind_area_m2", "area"],
  ["mass_centroid_m", "length"],
  ["wind_centroid_m", "length"],
  ["inertia_kg_m2", "inertia"],
];

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createMembersEditor(sheet) {
  const { members } = sheet.session;
  const totals = h("dl", { class: "figures-list totals", part: "totals" });
  const error = h("p", { class: "error", hidden: true });
  const list = h("div", { class: "groups" });
  const gone = h("span", { id: "member-gone" });
  const undo = h("button", { type: "button", class: "quiet", onclick: () => changed(() => members.undo()), "aria-describedby": "member-gone" }, sheet.say("members.undo"));
  const removed = h("p", { class: "removed" }, gone, " ", undo);
  const add = h("button", { type: "button", class: "move", onclick: () => changed(() => members.add(), true) }, sheet.say("members.add"));
  const root = h(
    "section",
    { class: "members", part: "members" },
    h("h3", {}, sheet.say("members.title")),
    h("p", { class: "note" }, sheet.say("members.note")),
    error,
    list,
    removed,
    add,
    h("h3", {}, sheet.say("members.totals")),
    totals,
  );
  /** @type {Part[]} */
  let rows = [];
  /** @type {unknown[]} */
  let drawn = [];

  /** @param {() => void} change @param {boolean} [openLast] */
  function changed(change, openLast = false) {
    change();
    update();
    const last = rows.at(-1)?.root;
    if (openLast && last instanceof HTMLDetailsElement) {
      last.open = true;
      last.querySelector("summary")?.focus();
    } else if (!undo.hidden) undo.focus();
    else add.focus();
    sheet.changed();
  }

  /** Blocks stay open or closed where they are when the list changes. */
  function draw() {
    const open = new Map(drawn.map((member, index) => [member, /** @type {any} */ (rows[index].root).open]));
    drawn = [...members.list];
    rows = members.list.map((member, index) => createMember(sheet, index, open.get(member) ?? false, () => changed(() => members.take(index))));
    list.replaceChildren(...rows.map((row) => row.root));
  }

  function update() {
    if (drawn.length !== members.list.length || members.list.some((member, index) => member !== drawn[index])) draw();
    for (const row of rows) row.update();
    const own = sheet.told.filter((fault) => fault.path === "leaf.members");
    error.hidden = own.length === 0;
    setText(error, own.map((fault) => faultSentence(sheet, fault)).join(" "));
    undo.hidden = members.removed === null;
    removed.hidden = undo.hidden;
    setText(gone, members.removed ? sheet.say("members.removed", { number: members.removed.index + 1 }) : "");
    showTotals();
  }

  function showTotals() {
    const sums = /** @type {any} */ (sheet.result?.plan.members ?? null);
    totals.classList.toggle("stale", sheet.stale);
    const text = (/** @type {string} */ name, /** @type {Quantity} */ quantity) => (sums ? sheet.show(sums[name], quantity) : "–");
    const row = (/** @type {[string, Quantity]} */ [name, quantity]) => h("div", {}, h("dt", {}, sheet.say(`fields.leaf_${name}.label`)), h("dd", { "data-total": name }, text(name, quantity)));
    totals.replaceChildren(...TOTALS.map(row));
  }

  return { root, update };
}

/**
 * @param {Sheet} sheet
 * @param {number} index
 * @param {boolean} open
 * @param {() => void} take
 * @returns {Part}
 */
function createMember(sheet, index, open, take) {
  const at = Members.path(index);
  const items = memberItems(at);
  const asked = createItems(sheet, items);
  const brief = h("span", { class: "brief" });
  const name = sheet.say("members.name", { number: index + 1 });
  const remove = h("button", { type: "button", class: "quiet", onclick: take, "aria-label": `${sheet.say("members.remove")}: ${name}` }, sheet.say("members.remove"));
  const root = h(
    "details",
    { class: "group member", open, "data-member": index },
    h("summary", {}, h("span", { class: "group-says" }, h("span", { class: "group-name" }, name), " ", brief)),
    asked.root,
    remove,
  );

  function update() {
    asked.update();
    const { paths, choices } = sheet.session.active(items);
    const { members } = sheet.session;
    setText(brief, members.counts(members.list[index]) ? memberBrief(sheet, at, paths) : sheet.say("members.uncounted"));
    const fields = new Set([...paths, ...choices.map(({ path }) => path)]);
    if (sheet.told.some((fault) => fields.has(fault.path))) root.open = true;
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {string} at @param {string[]} paths */
function memberBrief(sheet, at, paths) {
  const section = `${at}.section`;
  const word = sheet.say(`choices.${wordsKey(section)}.${sheet.session.choice(section).value}`);
  const sizes = ["face_m", "depth_m", "thickness_m", "wall_m", "wire_m", "pitch_m"].map((name) => `${at}.${name}`);
  const shown = sizes.filter((path) => paths.includes(path)).map((path) => sheet.session.entry(path));
  const known = shown.filter((entry) => entry.value !== null).map((entry) => sheet.show(/** @type {number} */ (entry.value), entry.rule.quantity));
  const count = sheet.session.entries.get(`${at}.place.count`);
  const pieces = count && paths.includes(count.path) && count.value !== null ? `${sheet.show(count.value, "count")} × ` : "";
  return `${pieces}${word}, ${known.join(" × ")}`;
}
