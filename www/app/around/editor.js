/**
 * What stands around, one thing after another: what it is, where it stands, what it stops.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Obstacle } from "./obstacles.js"
 */

import { h } from "../dom.js";
import { createField } from "../field.js";
import { createList, whileActive } from "../list-editor.js";
import { Obstacles } from "./obstacles.js";
import { OBSTACLE_KINDS, SIDES, STOPPED } from "./words.js";

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createAroundEditor(sheet) {
  const { around } = sheet.session;
  return whileActive(around, createList(sheet, "obstacles", () => around.list, () => around.add(), (index) => around.take(index), createObstacle));
}

/** @param {Sheet} sheet @param {number} index @returns {Part} */
function createObstacle(sheet, index) {
  const obstacle = /** @type {Obstacle} */ (sheet.session.around.list[index]);
  const say = (/** @type {string} */ key) => sheet.say(`choices.obstacles_${key}`);
  const option = (/** @type {HTMLElement} */ input, /** @type {string} */ words) => h("label", { class: "option" }, input, h("span", {}, words));
  const name = sheet.say("check.lists.obstacles.item", { number: index + 1 });
  /** @param {(value: any) => void} change @returns {(event: any) => void} */
  const then = (change) => (event) => {
    change(event.target);
    sheet.changed();
  };

  const kind = h("select", { "aria-label": `${name}: ${say("kind.label")}`, onchange: then((list) => (obstacle.kind = list.value)) },
    ...OBSTACLE_KINDS.map((value) => h("option", { value }, say(`kind.${value}`))));
  kind.value = obstacle.kind;
  const post = h("input", { type: "checkbox", name: "hinge_post", onchange: then((box) => (obstacle.hingePost = box.checked)) });
  post.checked = obstacle.hingePost;
  const stops = STOPPED.map((value) => {
    const box = h("input", { type: "checkbox", name: value, onchange: then(({ checked }) => tick(value, checked)) });
    box.checked = obstacle.stops.includes(value);
    return option(box, say(`stops.${value}`));
  });

  /** @param {string} what @param {boolean} stopped */
  function tick(what, stopped) {
    obstacle.stops = STOPPED.filter((one) => (one === what ? stopped : obstacle.stops.includes(one)));
  }

  const fields = SIDES.map((side) => createField(sheet, `${Obstacles.at(index)}.${side}`));
  const root = h("fieldset", { "data-obstacle": index }, h("legend", {}, name), kind, option(post, say("hinge_post")),
    h("div", { class: "fields" }, ...fields.map((field) => field.root)),
    h("fieldset", { class: "choice" }, h("legend", {}, say("stops.label")), ...stops));
  return { root, update: () => fields.forEach((field) => field.update()) };
}
