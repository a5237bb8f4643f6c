/**
 * The answer in one line that stays in view: shape, word, what it is about, reserve, the angle that decides.
 *
 * @import { Part, Sheet } from "./sheet.js"
 * @import { Trail } from "./trail.js"
 */

import { begunSentence, oldSentence } from "./begun.js";
import { h, setText } from "./dom.js";
import { judged } from "./judged.js";
import { verdictMark } from "./verdict-mark.js";

/**
 * @param {Sheet} sheet
 * @param {() => void} why shows what was judged
 * @param {(part: string) => HTMLElement | null} find
 * @param {Trail} trail where somebody came from who was led away
 * @returns {Part}
 */
export function createVerdictLine(sheet, why, find, trail) {
  const mark = h("span", { class: "mark-place" }, verdictMark("none"));
  const word = h("strong", { class: "word", part: "verdict-word" });
  const figures = h("span", { class: "figures" });
  const scope = h("span", { class: "scope" });
  // Under the thumb, where the layout has the line at the lower edge.
  const way = (/** @type {string} */ name, /** @type {() => void} */ go) => h("button", { type: "button", class: "move", onclick: go }, sheet.say(`ways.${name}`));
  const ways = h(
    "div",
    { class: "ways" },
    way("ask", () => to(find("[part=form] h2"))),
    way("why", why),
    way("draw", () => to(find(".drawings h2"))),
    way("set_out", () => to(find(".setout summary"))),
  );
  const back = h("button", { type: "button", class: "move back", hidden: true, onclick: () => trail.back() }, sheet.say("judged.back"));
  trail.changed = () => (back.hidden = !trail.leadsBack);
  const old = h("p", { class: "old", hidden: true });
  const begun = h("p", { class: "begun", part: "begun", hidden: true });
  const root = h(
    "section",
    { class: "verdict-line", part: "verdict", "aria-label": sheet.say("verdict.title") },
    h(
      "div",
      { class: "answer" },
      mark,
      h("button", { type: "button", class: "says", "aria-haspopup": "dialog", onclick: () => why() }, h("span", {}, word, " ", scope)),
      figures,
      h("button", { type: "button", class: "why", "aria-haspopup": "dialog", onclick: () => why() }, sheet.say("verdict.why")),
    ),
    back,
    old,
    begun,
    ways,
  );
  let drawn = "none";

  function update() {
    const { result, stale } = sheet;
    const whole = result ? judged(sheet, result.plan) : { state: "none", word: sheet.say("verdict.none.word"), about: "" };
    // An old result is told, and no shape stands for it: what is typed now may be worse.
    const state = stale ? "none" : whole.state;
    if (state !== drawn) mark.replaceChildren(verdictMark((drawn = state)));
    root.dataset.verdict = state;
    root.classList.toggle("stale", stale);
    setText(word, whole.word);
    setText(scope, whole.about);
    setText(figures, result ? figuresOf(sheet) : "");
    old.hidden = !stale;
    setText(old, stale ? oldSentence(sheet) : "");
    const parts = stale ? "" : begunSentence(sheet);
    begun.hidden = parts === "";
    setText(begun, parts);
  }

  return { root, update };
}

/** Goes to a place, for the eye and for the next press of the tabulator key. @param {HTMLElement | null} place */
function to(place) {
  if (place?.tabIndex === -1) place.tabIndex = -1;
  place?.focus({ preventScroll: true });
  place?.scrollIntoView({ block: "start" });
}

/** @param {Sheet} sheet */
function figuresOf(sheet) {
  const { plan } = /** @type {import("./sheet.js").Result} */ (sheet.result);
  if (plan.rating.reserve === null) return sheet.say("verdict.no_demand");
  const figures = sheet.say("verdict.figures", {
    reserve: sheet.show(plan.rating.reserve, "ratio"),
    angle: sheet.show(plan.peak.leaf_deg, "angle"),
  });
  // Beside a verdict about something else the reserve is that of the torque, and says so.
  return plan.overall.about !== "torque" || plan.overall.stops > 1 ? sheet.say("verdict.stop.alone", { figures }) : figures;
}
