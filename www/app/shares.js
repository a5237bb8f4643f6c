/**
 * What drives the demand at the deciding angle: friction, wind and lean as shares of the leaf torque, in words and as plain bars.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";

const LOADS = /** @type {const} */ (["friction", "wind", "lean"]);

/**
 * @param {Sheet} sheet
 * @returns {Part}
 */
export function createShares(sheet) {
  const rows = LOADS.map((load) => {
    const value = h("span", { class: "quantity" });
    const bar = h("span", { class: "bar", "aria-hidden": "true" });
    const root = h("li", { class: `share ${load}` }, h("span", { class: "share-name" }, sheet.say(`shares.${load}`)), bar, value);
    return { load, root, value, bar };
  });
  const title = h("h3", {});
  const root = h("section", { class: "shares", part: "shares" }, title, h("ul", {}, ...rows.map((row) => row.root)));

  function update() {
    if (!sheet.result) return;
    const { peak } = sheet.result.plan;
    setText(title, sheet.say("shares.title", { angle: sheet.show(peak.leaf_deg, "angle") }));
    for (const { load, root: row, value, bar } of rows) {
      const share = peak.shares[load];
      const helps = share < 0;
      setText(value, sheet.say(helps ? "shares.helps" : "shares.asks", { share: sheet.show(Math.abs(share), "percent") }));
      row.classList.toggle("helps", helps);
      bar.style.setProperty("--share", `${Math.min(Math.abs(share), 1) * 100}%`);
    }
  }

  return { root, update };
}
