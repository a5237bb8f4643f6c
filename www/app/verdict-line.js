/**
 * The answer in one line that stays in view: shape, word, what it is about, reserve, the angle that decides.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { judged } from "./judged.js";
import { verdictMark } from "./verdict-mark.js";

/**
 * @param {Sheet} sheet
 * @param {() => void} why shows what stands behind the verdict
 * @param {(part: string) => HTMLElement | null} find
 * @returns {Part}
 */
export function createVerdictLine(sheet, why, find) {
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
  const old = h("p", { class: "old", hidden: true });
  const begun = h("p", { class: "begun", part: "begun", hidden: true });
  const root = h(
    "section",
    { class: "verdict-line", part: "verdict", "aria-label": sheet.say("verdict.title") },
    h(
      "div",
      { class: "answer" },
      mark,
      h("p", { class: "says" }, word, " ", scope),
      figures,
      h("button", { type: "button", class: "why", onclick: () => why() }, sheet.say("verdict.why")),
    ),
    old,
    begun,
    ways,
  );
  let drawn = "none";

  function update() {
    const { result, stale } = sheet;
    const whole = result ? judged(sheet, result.plan) : { state: "none", word: sheet.say("verdict.none.word"), about: sheet.say("verdict.scope") };
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
  // Beside a stop about something else the reserve is that of the torque, and says so.
  return plan.overall.stops > 0 ? sheet.say("verdict.stop.alone", { figures }) : figures;
}

/** As many fields are named as a line has room for. */
const NAMED = 3;

/**
 * That the result shown is an old one, and which fields the page waits for.
 *
 * @param {Sheet} sheet
 */
export function oldSentence(sheet) {
  const fields = [...new Set(sheet.faults.map((fault) => placeOf(sheet, fault.path)))];
  const more = fields.length - NAMED;
  const named = more > 1 ? [...fields.slice(0, NAMED), sheet.say("verdict.more", { count: more })] : fields;
  return sheet.say(sheet.result ? "verdict.old" : "verdict.waiting", { fields: sheet.strings.list(named) });
}

/**
 * What was begun and is not counted, each with what it needs; empty where nothing was.
 *
 * @param {Sheet} sheet
 */
export function begunSentence(sheet) {
  if (sheet.leftOut.length === 0) return "";
  const parts = sheet.leftOut.map(({ path, faults }) => {
    const fields = [...new Set(faults.map((fault) => placeOf(sheet, fault.path)))];
    return sheet.say("verdict.begun.part", { part: placeOf(sheet, path.split(".")[0]), fields: sheet.strings.list(fields) });
  });
  return sheet.say("verdict.begun.line", { parts: sheet.strings.list(parts) });
}

/** Blocks that are asked for under the name of another group. @type {Record<string, string>} */
const GROUP_OF = { obstacles: "room", operator: "room" };

/** @param {Sheet} sheet @param {string} path */
function placeOf(sheet, path) {
  if (path === "leaf.members") return sheet.say("members.title");
  const name = sheet.fieldName(path);
  if (name !== path) return name;
  const block = path.split(".")[0];
  const group = `groups.${GROUP_OF[block] ?? block}.title`;
  return sheet.strings.has(group) ? sheet.say(group) : path;
}
