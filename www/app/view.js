/**
 * The element's parts in their order: verdict first, what is asked, the drawings, what stands behind the verdict, the numbers; the cautions
 * before all that leads to work on the gate.
 *
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h } from "./dom.js";
import { createBehind } from "./behind.js";
import { createCautions } from "./cautions.js";
import { createCheck } from "./check/part.js";
import { createDrawings } from "./drawings.js";
import { createErrorSummary } from "./error-summary.js";
import { focusField } from "./go-to.js";
import { createForm } from "./form.js";
import { createHandover } from "./handover/part.js";
import { createJudgements } from "./judgements.js";
import { createSetOut } from "./setout/part.js";
import { createSettings } from "./settings.js";
import { createStatus } from "./status.js";
import { Trail } from "./trail.js";
import { createVerdict } from "./verdict.js";
import { createVerdictLine } from "./verdict-line.js";

/**
 * @param {Sheet} sheet
 * @param {AbortSignal} signal ends what the parts watch
 * @param {(system: "metric" | "us") => void} chooseUnits
 * @param {(layout: string) => void} chooseLayout
 * @returns {Part & { recolour: () => void }}
 */
export function createView(sheet, signal, chooseUnits, chooseLayout) {
  const root = h("div", { class: "sheet", lang: sheet.strings.language });
  const settings = createSettings(sheet, chooseUnits, chooseLayout);
  const summary = createErrorSummary(sheet, root);
  const form = createForm(sheet);
  const verdict = createVerdict(sheet);
  const trail = new Trail();
  const judgements = createJudgements(
    sheet,
    (path) => trail.leave(() => focusField(root, sheet, path), () => judgements.show()),
    () => trail.leave(() => (verdict.show(), []), () => judgements.show()),
  );
  const line = createVerdictLine(sheet, judgements.show, (part) => root.querySelector(part), trail);
  const cautions = createCautions(sheet);
  const drawings = createDrawings(sheet, signal);
  const behind = createBehind(sheet);
  const status = createStatus(sheet);
  const setout = createSetOut(sheet, signal);
  const check = createCheck(sheet);
  const handover = createHandover(sheet, signal);
  const answers = h("div", { class: "answers" }, verdict.root, drawings.root, behind.root, drawings.tables);
  const trouble = sheet.trouble.map(({ key, retry }) =>
    h("p", { class: "error", role: "alert" }, sheet.say(key), " ", retry ? h("button", { type: "button", class: "move", onclick: retry }, sheet.say("page.again")) : null));
  root.append(line.root, judgements.root, h("div", { class: "asks" }, ...trouble, cautions.named, summary.root, settings.root, form.root), answers, cautions.root, setout.root, check.root, handover.root, status.root);

  function update() {
    answers.classList.toggle("stale", sheet.stale);
    for (const part of [line, judgements, settings, summary, form, verdict, drawings, behind, setout, check, handover, status]) part.update();
  }

  return { root, update, recolour: () => (drawings.recolour(), setout.recolour()) };
}
