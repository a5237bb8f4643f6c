/**
 * Obstacles around the leaf, and the means of protection that are fitted, ticked off one by one.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Means } from "./site-lists.js"
 */

import { h } from "../dom.js";
import { createField } from "../field.js";
import { AREA, FRAMES, KINDS, SIDES, WAYS, ZONES } from "./groups.js";
import { SiteLists } from "./site-lists.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createSiteEditor(sheet) {
  const { site } = sheet.session;
  const parts = [
    createList(sheet, "obstacles", () => site.obstacles, () => site.addObstacle(), (index) => site.takeObstacle(index), createObstacle),
    createList(sheet, "means", () => site.means, () => site.addMeans(), (index) => site.takeMeans(index), createMeans),
  ];
  const root = h("div", { class: "site-lists" }, ...parts.map((part) => part.root));

  function update() {
    root.hidden = !site.active;
    if (!root.hidden) for (const part of parts) part.update();
  }

  return { root, update };
}

/**
 * @param {Sheet} sheet
 * @param {"obstacles" | "means"} name
 * @param {() => any[]} items
 * @param {() => void} add
 * @param {(index: number) => void} take
 * @param {(sheet: Sheet, index: number) => Part} create
 * @returns {Part}
 */
function createList(sheet, name, items, add, take, create) {
  const say = (/** @type {string} */ key, /** @type {any} */ values = {}) => sheet.say(`check.lists.${name}.${key}`, values);
  const list = h("div", {});
  const more = h("button", { type: "button", class: "move", onclick: () => changed(add) }, say("add"));
  const root = h("fieldset", { class: "list", "data-list": name }, h("legend", {}, say("title")), h("p", { class: "note" }, say("note")), list, more);
  /** @type {Part[]} */
  let rows = [];
  /** @type {any[]} */
  let drawn = [];

  /** @param {() => void} change */
  function changed(change) {
    change();
    more.focus();
    sheet.changed();
  }

  function update() {
    const now = items();
    if (now.length !== drawn.length || now.some((item, index) => item !== drawn[index])) {
      drawn = [...now];
      rows = now.map((_, index) => {
        const row = create(sheet, index);
        row.root.append(h("button", { type: "button", class: "quiet", onclick: () => changed(() => take(index)) }, say("remove", { number: index + 1 })));
        return row;
      });
      list.replaceChildren(...rows.map((row) => row.root));
    }
    for (const row of rows) row.update();
  }

  return { root, update };
}

/** @param {Sheet} sheet @param {number} index @returns {Part} */
function createObstacle(sheet, index) {
  const fields = SIDES.map((side) => createField(sheet, `${SiteLists.obstacle(index)}.${side}`));
  const name = sheet.say("check.lists.obstacles.item", { number: index + 1 });
  const root = h("fieldset", {}, h("legend", {}, name), h("div", { class: "fields" }, ...fields.map((field) => field.root)));
  return { root, update: () => fields.forEach((field) => field.update()) };
}

/** @param {Sheet} sheet @param {number} index @returns {Part} */
function createMeans(sheet, index) {
  const means = /** @type {Means} */ (sheet.session.site.means[index]);
  const label = (/** @type {HTMLElement} */ input, /** @type {string} */ words) => h("label", { class: "option" }, input, h("span", {}, words));
  /** @param {(event: any) => void} change @returns {(event: any) => void} */
  const then = (change) => (event) => {
    change(event.target);
    sheet.changed();
  };
  const name = sheet.say("check.lists.means.item", { number: index + 1 });
  const kind = h("select", { "aria-label": `${name}: ${sheet.say("choices.site_means_kind.label")}`, onchange: then((list) => (means.kind = list.value)) },
    ...KINDS.map((value) => h("option", { value }, sheet.say(`choices.site_means_kind.${value}`))));
  kind.value = means.kind;
  const ways = WAYS.map((value) => {
    const radio = h("input", { type: "radio", name: `site-means-${index}`, value, onchange: then(() => (means.way = value)) });
    radio.checked = means.way === value;
    return label(radio, sheet.say(`choices.site_means_direction.${value}`));
  });
  const watched = h("input", { type: "checkbox", name: "monitored", onchange: then((box) => (means.monitored = box.checked)) });
  watched.checked = means.monitored;
  const watch = label(watched, sheet.say("check.lists.means.monitored"));
  const zones = ZONES.map((value) => {
    const box = h("input", { type: "checkbox", name: value, onchange: then(({ checked }) => tick(value, checked)) });
    box.checked = means.reaches.includes(value);
    return label(box, sheet.say(`choices.site_means_reaches.${value}`));
  });

  const frames = FRAMES.map((value) => {
    const radio = h("input", { type: "radio", name: `site-sensor-${index}`, value, onchange: then(() => (means.on = value)) });
    radio.checked = means.on === value;
    return label(radio, sheet.say(`choices.site_means_area_on.${value}`));
  });
  const fields = AREA.map((name) => createField(sheet, `site.means.${index}.area.${name}`));
  const area = h("div", { class: "fields" }, ...fields.map((field) => field.root));
  const sensed = h("fieldset", { class: "choice" }, h("legend", {}, sheet.say("choices.site_means_area_on.label")), ...frames);

  /** @param {string} zone @param {boolean} reached */
  function tick(zone, reached) {
    means.reaches = ZONES.filter((one) => (one === zone ? reached : means.reaches.includes(one)));
  }

  const root = h("fieldset", { "data-means": index }, h("legend", {}, name), kind,
    h("fieldset", { class: "choice" }, h("legend", {}, sheet.say("choices.site_means_direction.label")), ...ways), watch,
    h("fieldset", { class: "choice" }, h("legend", {}, sheet.say("choices.site_means_reaches.label")), ...zones), sensed, area);

  function update() {
    // Only what stands outside the operator has a fault to be watched for, and a place where it senses.
    const outside = ["contact", "non_contact"].includes(means.kind);
    watch.hidden = !outside;
    sensed.hidden = !outside && means.on === "none";
    area.hidden = means.on === "none";
    if (!area.hidden) for (const field of fields) field.update();
  }

  return { root, update };
}
