/**
 * The operator: one of the host's list, each held against this leaf where the arm stands and at its best place, or ratings typed in.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Looked, Order, Ranked } from "./look.js"
 */

import { h } from "../dom.js";
import { createField } from "../field.js";
import { RATINGS } from "../groups.js";
import { jobOf } from "../job.js";
import { html, nothing, render } from "../lit-html.js";
import { takeOperator } from "../setout/take.js";
import { createCompared } from "./compare.js";
import { smaller } from "./next-smaller.js";
import { OperatorRanker } from "./ranker.js";
import { rowOf } from "./row.js";

/** Rows at first, and as many more with each press. */
const PART = 12;
/** As many as stand beside one another. */
const PAIR = 2;

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends the ranking
 * @returns {Part}
 */
export function createOperatorChoice(sheet, signal) {
  const { session, list } = sheet;
  const say = (/** @type {string} */ key, /** @type {Record<string, string | number>} */ values = {}) => sheet.say(`ranking.labels.${key}`, values);
  const ranker = new OperatorRanker(tell);
  signal.addEventListener("abort", () => ranker.close());

  const rows = h("div", {});
  const drawnBeside = h("div", {});
  const besides = h("div", { class: "pair-of-operators" }, drawnBeside);
  const compared = createCompared(sheet, besides);
  const typed = h("input", { type: "radio", name: "operator", value: "", onchange: () => choose(null) });
  const ratings = RATINGS.map((path) => createField(sheet, path));
  const fields = h("div", { class: "fields" }, ...ratings.map((field) => field.root));
  const root = h(
    "fieldset",
    { class: "operators", part: "operators" },
    h("legend", {}, sheet.say("operator.title")),
    list.title ? h("p", { class: "note" }, list.title) : null,
    list.leftOut ? h("p", { class: "note left-out" }, sheet.say("operator.left_out", { count: list.leftOut })) : null,
    rows,
    h("label", { class: "option" }, typed, h("span", {}, sheet.say("operator.typed"))),
    fields,
    besides,
  );

  let only = false;
  /** @type {Order} */
  let order = "reserve";
  let most = PART;
  /** Ids of those that are compared. @type {string[]} */
  let beside = [];
  /** The last answer: of the job as it stands where the sheet has it, too, else of the one before. @type {Ranked | null} */
  let ranked = null;
  /** What was asked about last, as text. */
  let asked = "";
  let stopped = false;
  let missing = false;
  /** @type {{ done: number, of: number } | null} */
  let progress = null;
  /** @type {(() => void) | null} */
  let back = null;
  /** The job that stood when an operator was taken: once it is another, nothing is put back. */
  let since = "";

  /** The job but for its name, which who keeps it may give it at any time. */
  function said() {
    return JSON.stringify({ ...session.job(), title: "" });
  }

  /** @returns {Looked} */
  function looked() {
    return { only, order, most, ids: [...beside, ...(session.operatorId === null ? [] : [session.operatorId])] };
  }

  /** @param {import("./ranker.js").Answer} answer */
  function tell(answer) {
    if (answer.kind === "ranked") {
      sheet.ranked = ranked = answer.ranked;
      progress = answer.ranked.whole ? null : answer.progress;
    } else if (answer.kind === "taken") {
      back = takeOperator(sheet, answer.operator, answer.job);
      since = said();
    } else {
      sheet.ranked = ranked = progress = null;
      missing = answer.errors === null;
      if (missing) console.error("pintle-calculator", answer.message);
    }
    draw();
  }

  /** Asks, if there is something new to ask. @param {boolean} [anew] though nothing changed */
  function ask(anew = false) {
    if (list.operators.length === 0 || sheet.stale || !sheet.result) return;
    const own = session.job();
    const { operator, said: ofPerson } = unlisted(session, own.operator);
    const job = { ...own, operator, setout: session.setout.block(), ...session.setout.around(own) };
    // The ratings that stand there now are no part of the question.
    const text = JSON.stringify([{ ...job, operator: { ...operator, rated_torque_n_m: 0, peak_torque_n_m: 0, shaft_speed_deg_s: 0 } }, ofPerson]);
    if (text === asked && !anew) {
      sheet.ranked = ranked;
      return;
    }
    if (stopped && !anew) return;
    asked = text;
    stopped = missing = false;
    progress = { done: 0, of: list.operators.length };
    ranker.rank(job, ofPerson, list.document, looked());
  }

  function stop() {
    ranker.stop();
    stopped = true;
    progress = null;
    draw();
  }

  /** @param {Partial<{ only: boolean, order: Order, most: number, beside: string[] }>} said */
  function look(said) {
    ({ only = only, order = order, most = most, beside = beside } = said);
    if (ranked || progress) ranker.look(looked());
    draw();
  }

  /** @param {string | null} id */
  function choose(id) {
    session.operatorId = id;
    back = null;
    sheet.changed();
  }

  /** @param {string} id @param {boolean} wanted */
  function compare(id, wanted) {
    const others = beside.filter((one) => one !== id);
    look({ beside: wanted ? [...others, id].slice(-PAIR) : others });
  }

  function putBack() {
    back?.();
    back = null;
  }

  /** Those in view: the ranking's, or while there is none the list's own order; what is chosen always. */
  function shown() {
    const byId = new Map([...(ranked?.wanted ?? []), ...(ranked?.rows ?? [])].map((one) => [one.id, one]));
    const ids = (ranked?.rows ?? []).map(({ id }) => id);
    // What is not looked at yet stays in view, in the list's own order.
    if (!ranked?.whole && !only) {
      for (const { id } of list.operators) {
        if (ids.length >= most) break;
        if (!ids.includes(id)) ids.push(id);
      }
    }
    if (session.operatorId !== null && !ids.includes(session.operatorId)) ids.push(session.operatorId);
    return ids.flatMap((id) => {
      const operator = list.operators.find((one) => one.id === id);
      return operator ? [{ operator, ranked: byId.get(id) ?? null }] : [];
    });
  }

  function draw() {
    const all = ranked?.all ?? list.operators.length;
    const act = {
      choose,
      compare,
      take: (/** @type {string} */ id) => ranker.take(id),
      chosen: session.operatorId,
      beside,
    };
    render(
      html`
        ${list.operators.length > 1 ? html`<div class="ranking-bar">
          <label class="option"><input type="checkbox" class="only-those" .checked=${only} @change=${(/** @type {any} */ event) => look({ only: event.target.checked, most: PART })}><span>${say("only", { count: ranked?.do ?? "…" })}</span></label>
          <label class="order">${say("order")} <select @change=${(/** @type {any} */ event) => look({ order: event.target.value })}>${["reserve", "torque"].map((key) => html`<option value=${key} .selected=${key === order}>${say(`by_${key}`)}</option>`)}</select></label>
        </div>` : nothing}
        ${progress && progress.of > PART ? html`<p class="waiting"><progress max=${progress.of} .value=${progress.done} aria-label=${say("title_working")}></progress><span>${say("working", { done: progress.done, count: progress.of })}</span><button type="button" class="move" @click=${stop}>${sheet.say("setout.stop")}</button></p>` : nothing}
        ${stopped || missing ? html`<p class="note" role="status">${missing ? sheet.say("page.not_loaded") : say("stopped")} <button type="button" class="move again" @click=${() => (ask(true), draw())}>${say("again")}</button></p>` : nothing}
        <div class=${ranked && sheet.ranked !== ranked ? "ranked stale" : "ranked"}>${shown().map((one) => rowOf(sheet, one, act))}</div>
        ${ranked && all === 0 ? html`<p class="note none-does">${say("none_does")}</p>` : nothing}
        ${all > most ? html`<button type="button" class="move more" @click=${() => look({ most: most + PART })}>${say("more", { count: Math.min(PART, all - most), left: all - most })}</button>` : nothing}
        ${back && since === said() ? html`<button type="button" class="move put-back" @click=${putBack}>${say("put_back")}</button>` : nothing}
      `,
      rows,
    );
    render(html`${compared(beside, ranked)}${smaller(sheet, ranked)}`, drawnBeside);
    besides.classList.toggle("stale", ranked !== null && sheet.ranked !== ranked);
  }

  function update() {
    ask();
    draw();
    typed.checked = session.operator === null;
    fields.hidden = session.operator !== null;
    if (!fields.hidden) for (const field of ratings) field.update();
  }

  update();
  return { root, update };
}

/**
 * The job's operator without what the list says of the one that is chosen: no other is to have its arm's losses or its outline.
 *
 * @param {import("../session.js").Session} session @param {any} operator
 * @returns {{ operator: any, said: import("./turns.js").Own }}
 */
function unlisted(session, operator) {
  const { arm_efficiency, body = null } = jobOf(session, false).operator ?? {};
  const said = { efficiency: !session.entry("operator.arm_efficiency").assumed, body: body !== null };
  return { operator: { ...operator, arm_efficiency, body }, said };
}
