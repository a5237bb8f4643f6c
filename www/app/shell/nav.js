/**
 * The steps along the top, each with its state, and the verdict behind them; on a narrow screen one bar under the thumb: previous, verdict,
 * next.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Step } from "../steps/index.js"
 * @import { Trail } from "../trail.js"
 *
 * @typedef {{ go: (name: string) => void, why: () => void, trail: Trail, asks: { open: boolean, toggle: () => void } }} Ways
 */

import { begunSentence, oldSentence } from "../begun.js";
import { h } from "../dom.js";
import { judged } from "../judged.js";
import { html, nothing, render } from "../lit-html.js";
import { STEPS } from "../steps/index.js";
import { verdictMark } from "../verdict-mark.js";
import { Was } from "./was.js";
import { stateOf } from "./step-state.js";

/**
 * @param {Sheet} sheet
 * @param {Ways} ways
 * @param {() => Step} current
 * @returns {Part & { bar: HTMLElement }}
 */
export function createNav(sheet, { go, why, trail, asks }, current) {
  const root = h("nav", { class: "steps-nav", part: "steps", "aria-label": sheet.say("steps.title") });
  const bar = h("section", { class: "verdict-line", part: "verdict", "aria-label": sheet.say("verdict.title") });
  const was = new Was();
  /** Shapes that were drawn, by where they stand: one that stays is not drawn again at every key. @type {Map<string, SVGElement>} */
  const shapes = new Map();

  /** @param {string} place @param {string} mark */
  function shape(place, mark) {
    const key = `${place} ${mark}`;
    if (!shapes.has(key)) shapes.set(key, verdictMark(mark));
    return shapes.get(key);
  }

  /** @param {Step} step */
  function stepButton(step) {
    const { mark, words } = stateOf(sheet, step);
    return html`<button type="button" class="step-way" data-step=${step.name} aria-current=${step === current() ? "step" : nothing} @click=${() => go(step.name)}>
      <span class="step-name">${sheet.say(`steps.${step.name}`)}</span>
      <span class="step-state">${mark ? shape(step.name, mark) : nothing}${words}</span>
    </button>`;
  }

  /** @param {Step | undefined} step @param {"previous" | "next"} way */
  function beside(step, way) {
    if (!step) return html`<span class=${way}></span>`;
    const name = sheet.say(`steps.${step.name}`);
    return html`<button type="button" class=${way} aria-label=${sheet.say(`steps.${way}`, { step: name })} @click=${() => go(step.name)}>${name}</button>`;
  }

  function verdict() {
    const { result, stale } = sheet;
    const whole = result ? judged(sheet, result.plan) : { state: "none", word: sheet.say("verdict.none.word"), about: "" };
    // An old result is told, and no shape stands for it: what is typed now may be worse.
    const state = stale ? "none" : whole.state;
    bar.dataset.verdict = state;
    bar.classList.toggle("stale", stale);
    const parts = stale ? "" : begunSentence(sheet);
    const before = result ? was.before(reserveOf(sheet), stale) : "";
    return html`<button type="button" class="says" aria-haspopup="dialog" title=${sheet.say("verdict.why")} @click=${why}>
        <span class="mark-place">${shape("verdict", state)}</span>
        <span class="said-words"><strong class="word" part="verdict-word">${whole.word}</strong> <span class="scope">${whole.about}</span></span>
        <span class="figures">${result ? figures(sheet, before) : ""}</span>
        <span class="reserve" aria-hidden="true">${result ? short(sheet, before) : ""}${parts ? html`<br />${sheet.say("steps.states.begun")}` : nothing}</span>
        <span class="old" ?hidden=${!stale}>${stale ? oldSentence(sheet) : ""}</span>
      </button>
      <p class="begun" part="begun" ?hidden=${parts === ""}>${parts}</p>`;
  }

  function update() {
    const at = STEPS.indexOf(current());
    render(html`${STEPS.map(stepButton)}`, root);
    render(
      html`<button type="button" class="move back" ?hidden=${!trail.leadsBack} @click=${() => trail.back()}>${sheet.say("judged.back")}</button>
        <div class="bar-row">${beside(STEPS[at - 1], "previous")}<div class="answer">${verdict()}</div><button type="button" class="questions" aria-expanded=${String(asks.open)} @click=${asks.toggle}>${sheet.say("steps.questions")}</button>${beside(STEPS[at + 1], "next")}</div>`,
      bar,
    );
  }

  trail.changed = update;
  return { root, bar, update };
}

/** @param {Sheet} sheet */
function reserveOf(sheet) {
  const reserve = sheet.result?.plan.rating.reserve ?? null;
  return reserve === null ? "" : sheet.show(reserve, "ratio");
}

/** The reserve alone, where there is room for no more. @param {Sheet} sheet @param {string} before */
function short(sheet, before) {
  const reserve = reserveOf(sheet);
  if (!reserve) return "";
  return sheet.say(before ? "verdict.alone.changed" : "verdict.alone.now", { reserve, was: before });
}

/** @param {Sheet} sheet @param {string} before */
function figures(sheet, before) {
  const { plan } = /** @type {import("../sheet.js").Result} */ (sheet.result);
  const reserve = reserveOf(sheet);
  if (!reserve) return sheet.say("verdict.no_demand_short");
  const said = sheet.say(before ? "verdict.changed" : "verdict.figures", { reserve, was: before, angle: sheet.show(plan.peak.leaf_deg, "angle") });
  // Beside a verdict about something else the reserve is that of the torque, and says so.
  return plan.overall.about !== "torque" || plan.overall.stops > 1 ? sheet.say("verdict.stop.alone", { figures: said }) : said;
}
