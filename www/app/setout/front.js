/**
 * The trade-off: set-outs between the least shaft torque and another aim, none beaten in both.
 *
 * @import { Quantity, Stand } from "../contract.d.ts"
 * @import { Sheet } from "../sheet.js"
 */

import { h } from "../dom.js";

/** Set-outs on the front. */
const POINTS = 6;

/** What each of the other aims is measured by. @type {Record<string, [keyof Stand, Quantity]>} */
const MEASURES = { least_shaft_travel: ["shaft_travel_deg", "angle"], least_link_force: ["link_force_n", "force"] };

/** @type {[keyof Stand, Quantity][]} */
const COLUMNS = [
  ["reserve", "ratio"],
  ["shaft_x_m", "short_length"],
  ["shaft_y_m", "short_length"],
  ["bracket_u_m", "short_length"],
  ["crank_m", "short_length"],
  ["link_m", "short_length"],
];

/**
 * @param {Sheet} sheet
 * @param {(aim: string, points: number) => void} ask
 */
export function createFront(sheet, ask) {
  let aim = "";
  const table = h("div", {});
  const buttons = Object.keys(MEASURES).map((name) => h("button", { type: "button", class: `move ${name}`, onclick: () => start(name) }, sheet.say(`setout.choices.aim.${name}`)));
  const root = h("div", { class: "front", hidden: true }, h("h3", {}, sheet.say("setout.front.title")), h("p", { class: "note" }, sheet.say("setout.front.note")), h("div", { class: "takes" }, ...buttons), table);

  /** @param {string} name */
  function start(name) {
    aim = name;
    table.replaceChildren();
    ask(name, POINTS);
  }

  function stop() {
    aim = "";
  }

  /** @param {Stand[]} points */
  function tell(points) {
    if (!aim) return;
    const columns = [MEASURES[aim], ...COLUMNS];
    const title = sheet.say("setout.front.caption", { aim: sheet.say(`setout.choices.aim.${aim}`) });
    const cell = (/** @type {Stand} */ point, /** @type {[keyof Stand, Quantity]} */ [key, quantity]) => {
      const value = point[key];
      if (value === null) return "–";
      return quantity === "short_length" ? sheet.mark(Number(value)) : sheet.show(Number(value), quantity);
    };
    const rows = points.map((point) => h("tr", {}, h("th", { scope: "row" }, cell(point, ["shaft_torque_n_m", "torque"])), ...columns.map((column) => h("td", {}, cell(point, column)))));
    const heads = [["shaft_torque_n_m"], ...columns].map(([key]) => h("th", { scope: "col" }, sheet.say(`setout.rows.${key}`)));
    table.replaceChildren(h("div", { class: "scroll", tabindex: "0", role: "region", "aria-label": title },
      h("table", {}, h("caption", {}, title), h("thead", {}, h("tr", {}, ...heads)), h("tbody", {}, ...rows))));
  }

  return { root, tell, stop };
}
