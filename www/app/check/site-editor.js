/**
 * The means of protection that are fitted, ticked off one by one.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Means } from "./site-lists.js"
 */

import { h } from "../dom.js";
import { createField } from "../field.js";
import { createList, whileActive } from "../list-editor.js";
import { AREA, FRAMES, KINDS, WAYS, ZONES } from "./groups.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createSiteEditor(sheet) {
  const { site } = sheet.session;
  return whileActive(site, createList(sheet, "means", () => site.means, () => site.addMeans(), (index) => site.takeMeans(index), createMeans));
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
