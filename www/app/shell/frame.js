/**
 * The element's frame: the steps and the verdict, the drawings, the questions of the step in view. Only that step is made and brought in step
 * with the sheet; the cautions stand before all that leads to work on the gate.
 *
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Step, StepView } from "../steps/index.js"
 * @import { History } from "./history.js"
 *
 * @typedef {object} Host what the frame asks of the element
 * @property {(system: "metric" | "us") => void} chooseUnits
 * @property {(layout: string) => void} chooseLayout
 * @property {(name: string) => void} stepChanged
 * @property {History} history
 */

import { createCautions } from "../cautions.js";
import { h } from "../dom.js";
import { createErrorSummary } from "../error-summary.js";
import { focusField } from "../go-to.js";
import { createJudgements } from "../judgements.js";
import { createSettings } from "../settings.js";
import { createStatus } from "../status.js";
import { STEPS, stepNamed, stepOf } from "../steps/index.js";
import { Trail } from "../trail.js";
import { createNav } from "./nav.js";
import { createStage } from "./stage.js";
import { counts } from "./step-state.js";

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends what the parts watch
 * @param {Host} host
 * @param {string | null} start name of the step to begin with
 * @returns {Part & { recolour: () => void, show: (name: string | null) => Promise<void> }}
 */
export function createFrame(sheet, signal, host, start) {
  let step = stepNamed(start);
  /** Steps that were made, by name. @type {Map<string, { view: StepView, root: HTMLElement, title: HTMLElement, count: HTMLElement }>} */
  const made = new Map();
  const root = h("div", { class: "sheet", lang: sheet.strings.language });
  const trail = new Trail();
  const stage = createStage(sheet, signal);
  const settings = createSettings(sheet, host.chooseUnits, host.chooseLayout);
  const summary = createErrorSummary(sheet, (path) => lead(path));
  const cautions = createCautions(sheet);
  const status = createStatus(sheet);
  const judgements = createJudgements(sheet, {
    field: (path) => {
      const { name } = step;
      return trail.leave(() => lead(path), () => judgements.show(), () => show(name));
    },
    step: (name) => show(name),
    current: () => step,
  });
  judgements.root.append(settings.layout);
  // On the wall the questions stand aside until they are asked for.
  const aside = {
    open: false,
    toggle() {
      aside.open = !aside.open;
      asks.classList.toggle("aside", aside.open);
      nav.update();
    },
  };
  const nav = createNav(sheet, { go: show, why: judgements.show, trail, asks: aside }, () => step);
  const missing = h("p", { class: "error", role: "alert", hidden: true }, sheet.say("page.not_loaded"), " ", h("button", { type: "button", class: "move", onclick: () => show(step.name) }, sheet.say("page.again")));
  const undo = h("button", { type: "button", class: "quiet undo-last", onclick: () => host.history.undo() }, sheet.say("steps.undo"));
  const places = h("div", { class: "places-of-steps" });
  const above = h("div", { class: "settings-place" }, settings.root);
  const below = h("div", { class: "settings-place" });
  const trouble = sheet.trouble.map(({ key, retry }) =>
    h("p", { class: "error", role: "alert" }, sheet.say(key), " ", retry ? h("button", { type: "button", class: "move", onclick: retry }, sheet.say("page.again")) : null));
  const asks = h("div", { class: "asks" }, undo, ...trouble, summary.root, above, missing, places, below, cautions.named, cautions.root);
  root.append(nav.root, h("div", { class: "bench" }, stage.root, asks), nav.bar, judgements.root, status.root);

  /**
   * Brings a step into view, made when it is first asked for.
   *
   * @param {string | null} name
   */
  async function show(name) {
    const wanted = stepNamed(name);
    const other = wanted !== step;
    step = wanted;
    missing.hidden = true;
    if (other) host.stepChanged(step.name);
    if (!made.has(step.name)) {
      try {
        const { create } = await step.load();
        if (signal.aborted) return;
        if (!made.has(wanted.name)) make(wanted, create);
      } catch (error) {
        console.error("pintle-calculator", error);
        missing.hidden = signal.aborted || step !== wanted;
        return;
      }
    }
    // Somebody may have gone on while it was loading.
    if (step !== wanted) return;
    for (const [known, { root: place }] of made) place.hidden = known !== step.name;
    (step === STEPS[0] ? above : below).append(settings.root);
    stage.follow(step);
    cautions.follow(step);
    update();
    if (!other) return;
    const { top } = root.getBoundingClientRect();
    if (top < 0) root.scrollIntoView({ block: "start" });
    made.get(step.name)?.title.focus({ preventScroll: true });
  }

  /** @param {Step} wanted @param {import("../steps/index.js").CreateStep} create */
  function make(wanted, create) {
    const view = create({ sheet, signal, stage });
    const title = h("h2", { class: "step-title", tabindex: "-1" }, sheet.say(`steps.${wanted.name}`));
    const count = h("p", { class: "note step-counts" });
    const place = h("section", { class: "step", "data-step": wanted.name }, title, h("p", { class: "note" }, sheet.say(`steps.notes.${wanted.name}`)), count, view.root);
    made.set(wanted.name, { view, root: place, title, count });
    // In the order of the work, whatever was opened first.
    const next = STEPS.slice(STEPS.indexOf(wanted) + 1).map(({ name }) => made.get(name)?.root).find(Boolean);
    places.insertBefore(place, next ?? null);
  }

  /** Leads to a field, wherever it is asked for. @param {string} path */
  async function lead(path) {
    await show(stepOf(path).name);
    const place = made.get(step.name)?.root;
    return place ? focusField(place, sheet, path) : [];
  }

  function update() {
    for (const part of [nav, stage, settings, summary, judgements, status]) part.update();
    undo.hidden = !host.history.canUndo;
    const here = made.get(step.name);
    if (!here) return;
    here.view.update();
    const { assumed, measured } = counts(sheet, step);
    here.count.hidden = assumed + measured === 0;
    here.count.textContent = sheet.say("steps.counts", { assumed, measured });
  }

  stage.follow(step);
  const recolour = () => {
    stage.recolour();
    for (const { view } of made.values()) view.recolour?.();
  };
  return { root, update, recolour, show };
}
