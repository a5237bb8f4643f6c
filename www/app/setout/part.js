/**
 * "Where to stand it": what is asked, the search behind it, what it found, the map. It follows every change while it is in view, answers of
 * older questions dropped, until somebody gives up.
 *
 * @import { Arm } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Found } from "./answer.js"
 */

import { h, setText } from "../dom.js";
import { answerParts } from "./answer.js";
import { askSheet } from "./ask-sheet.js";
import { createAskForm } from "./form.js";
import { createFront } from "./front.js";
import { createMap, gridOf } from "./map.js";
import { Seeker } from "./seeker.js";
import { takeArm } from "./take.js";

/** A search that is over sooner is not spoken of. */
const PATIENCE_MS = 300;

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends the search and what the part watches
 * @returns {Part & { map: HTMLElement, recolour: () => void, job: () => any }} `job` is the job as it stands with the question in it
 */
export function createSetOut(sheet, signal) {
  const ask = sheet.session.setout;
  const own = askSheet(sheet, ask, () => sheet.changed());
  const seeker = new Seeker(tell);
  const form = createAskForm(own, ask, () => sheet.session.job());
  const map = createMap(sheet, signal, { look: (column, row) => seeker.askPad(column, row), take });
  const front = createFront(sheet, (aim, points) => {
    seeker.askFront(job(), aim, points);
    wait();
  });

  const progress = h("progress", { "aria-label": sheet.say("setout.searching") });
  const progressWords = h("span", {});
  const waiting = h("div", { class: "waiting", hidden: true }, progress, progressWords,
    h("button", { type: "button", class: "move stop", onclick: stop }, sheet.say("setout.stop")));
  const said = h("p", { class: "note said" });
  const again = h("button", { type: "button", class: "move again", hidden: true, onclick: () => search(true) }, sheet.say("setout.again"));
  const undo = h("button", { type: "button", class: "move undo", hidden: true, onclick: () => takeBack() }, sheet.say("setout.undo"));
  const answer = h("div", { class: "set-outs" });
  const root = h(
    "section",
    { class: "setout", part: "setout" },
    h("h3", { tabindex: "-1" }, sheet.say("setout.title")),
    h("p", { class: "note" }, sheet.say("setout.purpose")),
    waiting,
    said,
    again,
    answer,
    undo,
    front.root,
    h("details", { class: "asks-more" }, h("summary", {}, sheet.say("setout.free")), form.root),
  );
  const title = /** @type {HTMLElement} */ (root.firstElementChild);

  /** The question that is being answered or was, as text. */
  let asked = "";
  /** What the answer on show belongs to. */
  let drawn = "";
  /** @type {Found | null} */
  let found = null;
  /** @type {(() => void) | null} */
  let back = null;
  let stopped = false;
  /** Whether the core found a fault in what is asked. */
  let refused = false;
  /** Whether what searches could not be had. */
  let missing = false;
  let timer = 0;

  /** The job without its arm: that is what is looked for. */
  function job() {
    const { arm: _, ...rest } = sheet.session.job();
    return withBlock(rest);
  }

  /** @param {any} said */
  function withBlock(said) {
    return { ...said, setout: ask.block(), ...ask.around(said) };
  }

  /** Whether the job has faults that are not the arm's. */
  function jobFaulty() {
    return sheet.faults.some(({ path }) => !path.startsWith("arm"));
  }

  /** Asks, if there is something new to ask. @param {boolean} [anew] though nothing changed */
  function search(anew = false) {
    const unread = ask.unread();
    const question = job();
    const text = JSON.stringify(question);
    if (text === asked && !anew && unread.length === 0) return;
    asked = unread.length ? "" : text;
    stopped = refused = missing = false;
    if (jobFaulty() || unread.length) {
      seeker.stop();
      own.takeFaults(unread);
      clearTimeout(timer);
      waiting.hidden = true;
      return;
    }
    try {
      // The picture reads the block too: its faults are told without asking the worker.
      map.begin(question);
    } catch (error) {
      seeker.stop();
      faulty(/** @type {any} */ (error).errors ?? []);
      return;
    }
    own.takeFaults([]);
    seeker.ask({ kind: "search", job: question, ...gridOf(question.setout) });
    wait();
  }

  /** Speaks of the search once it has taken a while. */
  function wait() {
    clearTimeout(timer);
    progress.removeAttribute("value");
    setText(progressWords, sheet.say("setout.searching"));
    timer = setTimeout(() => (waiting.hidden = !seeker.busy), PATIENCE_MS);
  }

  function stop() {
    seeker.stop();
    stopped = true;
    front.stop();
    settle();
    again.focus();
  }

  /** A question is over, one way or another; another one may still be open. */
  function settle() {
    if (!seeker.busy) {
      clearTimeout(timer);
      waiting.hidden = true;
    }
    show();
  }

  /** @param {import("../contract.d.ts").Fault[]} errors */
  function faulty(errors) {
    own.takeFaults(errors.filter(({ path }) => path.startsWith("setout")));
    found = null;
    refused = true;
    settle();
  }

  /** @param {import("./seeker.js").Answer} message */
  function tell(message) {
    switch (message.kind) {
      case "searching":
        progress.removeAttribute("value");
        return setText(progressWords, sheet.say("setout.searching"));
      case "progress":
        progress.max = message.all;
        progress.value = message.done;
        return setText(progressWords, sheet.say("setout.mapping", { done: message.done, all: message.all }));
      case "known":
        return map.tell(message.known);
      case "pad":
        return map.tellPad(/** @type {any} */ (message));
      case "found":
        found = /** @type {any} */ (message);
        map.markBest(found?.answer.best ?? null);
        return show();
      case "front":
        front.tell(message.points);
        return settle();
      case "failed":
        if (message.errors) return faulty(message.errors);
        console.error("pintle-calculator: the search failed", message.message);
        seeker.stop();
        missing = true;
        return settle();
      default:
        return settle();
    }
  }

  /** @param {Arm} arm */
  function take(arm) {
    back = takeArm(sheet, arm);
    undo.hidden = false;
  }

  function takeBack() {
    back?.();
    back = null;
    undo.hidden = true;
    title.focus();
  }

  function sentence() {
    if (stopped) return sheet.say("setout.stopped");
    if (missing) return sheet.say("page.not_loaded");
    if (jobFaulty()) return sheet.say("setout.job_first");
    if (refused || ask.unread().length) return sheet.say("setout.ask_first");
    return "";
  }

  function update() {
    if (!stopped || JSON.stringify(job()) !== asked) search();
    show();
  }

  function show() {
    form.update();
    setText(said, sentence());
    said.hidden = said.textContent === "";
    again.hidden = !stopped && !missing;
    answer.classList.toggle("stale", seeker.busy || stopped || missing);
    front.root.hidden = !found?.answer.best;
    drawAnswer();
    map.update();
  }

  /** The job's own arm stands beside what was found. */
  function drawAnswer() {
    const now = found && sheet.result && !sheet.stale ? weighed() : null;
    const parts = JSON.stringify([found, now, sheet.session.system]);
    if (parts === drawn) return;
    drawn = parts;
    answer.replaceChildren(...(found ? answerParts(sheet, found, now, take) : []));
  }

  function weighed() {
    try {
      return sheet.core.weigh({ ...job(), arm: sheet.session.job().arm });
    } catch {
      // A fault of the block is told beside its field.
      return null;
    }
  }

  signal.addEventListener("abort", () => {
    clearTimeout(timer);
    seeker.stop();
  });
  return { root, map: map.root, update, recolour: map.recolour, job: () => withBlock(sheet.session.job()) };
}
