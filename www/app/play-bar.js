/**
 * Plays and pauses the leaf, says which run is followed and how fast; where nothing can be played, why.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Player, RunName } from "./player.js"
 */

import { h, setText } from "./dom.js";

const FACTORS = [0.5, 1, 2];

/**
 * @param {Sheet} sheet
 * @param {Player} player
 * @returns {Part}
 */
export function createPlayBar(sheet, player) {
  const button = h("button", { type: "button", class: "move play", onclick: () => player.toggle() });
  const runs = h("select", { onchange: () => player.follow(/** @type {RunName} */ (runs.value)) });
  const factors = h("select", { onchange: () => (player.factor = Number(factors.value)) });
  for (const factor of FACTORS) {
    factors.append(h("option", { value: factor, selected: factor === player.factor }, sheet.say("play.factor", { factor: factor === 0.5 ? "½" : factor })));
  }
  const choices = [
    h("label", {}, sheet.say("play.run"), runs),
    h("label", {}, sheet.say("play.speed"), factors),
  ];
  const why = h("p", { class: "note" });
  const root = h("div", { class: "play-bar", part: "play", role: "group", "aria-label": sheet.say("play.title") }, button, ...choices, why);
  let listed = "";

  function update() {
    if (!sheet.result) return;
    const names = player.runs;
    if (String(names) !== listed) {
      listed = String(names);
      runs.replaceChildren(...names.map((name) => h("option", { value: name }, sheet.say(`play.runs.${name}`))));
    }
    if (names.length && !names.includes(sheet.showing.run)) sheet.showing.run = names[0];
    runs.value = sheet.showing.run;
    button.disabled = names.length === 0;
    for (const choice of choices) choice.hidden = names.length === 0;
    why.hidden = names.length > 0;
    setText(why, sheet.say(sheet.result.job.operator.shaft_speed_deg_s == null ? "play.no_speed" : "play.no_motion"));
    setText(button, player.playing ? sheet.say("play.pause") : sheet.say("play.play", { run: sheet.say(`play.runs.${player.next()}`) }));
  }

  return { root, update };
}
