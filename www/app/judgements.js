/**
 * What was judged, a subject at a time: its state, the finding it rests on, the one thing to do about it, and a way to the field that changes it.
 * Opened from the verdict's line; what it leads to leads back. The steps stand before it, for whom there is no room for them along the top.
 *
 * @import { Finding, Judgement } from "./contract.d.ts"
 * @import { Part, Result, Sheet } from "./sheet.js"
 * @import { Step } from "./steps/index.js"
 */

import { h } from "./dom.js";
import { doWords, foundWords } from "./findings.js";
import { markOf, subjectList, subjectName, unjudged } from "./judged.js";
import { placeOf } from "./begun.js";
import { stateOf } from "./shell/step-state.js";
import { STEPS } from "./steps/index.js";
import { verdictMark } from "./verdict-mark.js";

/** What asks for something stands first. */
const ORDER = ["over", "tight", "not_judged", "within"];

/**
 * @param {Sheet} sheet
 * @param {{ field: (path: string) => void, step: (name: string) => void, current: () => Step }} go goes to a field or a step
 * @returns {Part & { root: HTMLDialogElement, show: () => void }}
 */
export function createJudgements(sheet, go) {
  const list = h("ul", { class: "judgements" });
  const rest = h("p", { class: "note" });
  const close = h("button", { type: "button", class: "move close", onclick: () => root.close() }, sheet.say("judged.close"));
  const figures = h("button", { type: "button", class: "move", onclick: () => leave(() => go.step("operator")) }, sheet.say("judged.figures"));
  const steps = h("ol", { class: "step-list" });
  const title = h("h2", { id: "judged-title" }, sheet.say("judged.title"));
  const root = h("dialog", { class: "judged", part: "judgements", "aria-labelledby": "judged-title" }, h("div", { class: "judged-head" }, title, close), list, rest, figures, h("h2", {}, sheet.say("steps.title")), steps);

  /** @param {() => void} then */
  function leave(then) {
    root.close();
    then();
  }

  /** @param {Step} step */
  function stepRow(step) {
    const { mark, words } = stateOf(sheet, step);
    const way = h("button", { type: "button", class: "step-way", "data-step": step.name, "aria-current": step === go.current() ? "step" : null, onclick: () => leave(() => go.step(step.name)) },
      h("span", { class: "step-name" }, sheet.say(`steps.${step.name}`)), " ", h("span", { class: "step-state" }, mark ? verdictMark(mark) : null, words));
    return h("li", {}, way);
  }

  /** @param {string} path */
  function way(path) {
    return h("button", { type: "button", class: "move", "data-to": path, onclick: () => leave(() => go.field(path)) }, sheet.say("judged.go", { field: fieldOf(sheet, path) }));
  }

  function update() {
    if (!root.open) return;
    // What is focused is rebuilt only while nobody can be typing: a modal list has no fields.
    const { result } = sheet;
    const asked = result?.plan.judgements.filter((one) => one.unjudged !== "not_asked") ?? [];
    const judgements = ORDER.flatMap((state) => asked.filter((one) => one.state === state));
    const begun = sheet.leftOut.map((part) => begunRow(sheet, part, way));
    list.replaceChildren(...begun, ...(result ? judgements.map((one) => row(sheet, result, one, way)) : []));
    steps.replaceChildren(...STEPS.map(stepRow));
    const silent = result ? unjudged(result.plan, "not_asked") : [];
    rest.hidden = silent.length === 0;
    rest.textContent = silent.length ? sheet.say("judged.not_asked", { subjects: subjectList(sheet, silent) }) : "";
  }

  function show() {
    if (!root.open) root.showModal();
    update();
    title.scrollIntoView({ block: "start" });
  }

  return { root, update, show };
}

/** What stands at a path; a listed operator is changed as a whole. @param {Sheet} sheet @param {string} path */
function fieldOf(sheet, path) {
  return path.startsWith("operator.") && sheet.session.operator ? sheet.say("operator.title") : placeOf(sheet, path);
}

/**
 * @param {Sheet} sheet
 * @param {Result} result
 * @param {Judgement} judgement
 * @param {(path: string) => HTMLElement} way
 */
function row(sheet, { plan }, { about, state, unjudged, finding, path }, way) {
  const told = plan.findings.find(({ code }) => code === finding);
  const why = unjudged && unjudged !== "not_asked" ? h("p", {}, sheet.say(`judged.unjudged.${unjudged}`)) : null;
  return h(
    "li",
    { "data-about": about, "data-state": state },
    h("span", { class: "mark-place" }, verdictMark(markOf(state))),
    h("div", {}, h("p", {}, h("strong", {}, subjectName(sheet, about)), ": ", sheet.say(`judged.states.${state}`)), why, ...(told ? toldParts(sheet, told, path, way) : [])),
  );
}

/** @param {Sheet} sheet @param {Finding} finding @param {string | null} path @param {(path: string) => HTMLElement} way */
function toldParts(sheet, finding, path, way) {
  return [h("p", {}, foundWords(sheet, finding)), h("p", { class: "to-do" }, doWords(sheet, finding)), path === null ? null : way(path)];
}

/** A part that is begun: what it needs, and the way there. @param {Sheet} sheet @param {import("./session.js").LeftOut} part @param {(path: string) => HTMLElement} way */
function begunRow(sheet, { path, faults }, way) {
  const fields = [...new Set(faults.map((fault) => placeOf(sheet, fault.path)))];
  const part = placeOf(sheet, path.split(".")[0]);
  const first = faults[0]?.path;
  return h(
    "li",
    { "data-begun": path },
    h("span", { class: "mark-place" }, verdictMark("none")),
    h("div", {}, h("p", {}, h("strong", {}, part), ": ", sheet.say("judged.needs", { fields: sheet.strings.list(fields) })), first === undefined ? null : way(first)),
  );
}
