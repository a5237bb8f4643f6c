/**
 * A group of what is asked: closed it says its main values in one line, open it asks, and says what came out.
 *
 * @import { Group } from "./groups.js"
 * @import { Part, Sheet } from "./sheet.js"
 */

import { h, setText } from "./dom.js";
import { faultSentence } from "./faults.js";
import { everything, written } from "./items.js";
import { createItems } from "./items-part.js";
import { OUTCOMES } from "./outcomes.js";
import { wordsKey } from "./paths.js";

/**
 * @param {Sheet} sheet
 * @param {Group} group
 * @returns {Part & { catchUp: () => void }} `catchUp` brings fields that nobody sees in step too
 */
export function createGroup(sheet, group) {
  const { name, items } = group;
  const brief = h("span", { class: "brief" });
  const tag = h("span", { class: "tag" });
  const error = h("p", { class: "error", hidden: true });
  const asked = createItems(sheet, items);
  const outcome = h("div", { class: "outcome", part: "outcome" });
  const all = everything(items);
  const blocks = new Set([...all.paths, ...all.choices.map(({ path }) => path)].map((path) => path.split(".")[0]));
  // The operator has a place of its own, wherever one of its numbers is asked for.
  blocks.delete("operator");
  const root = h(
    "details",
    { class: "group", part: "group", "data-group": name, ontoggle: updateAsked },
    h("summary", {}, h("span", { class: "group-says" }, h("span", { class: "group-name" }, sheet.say(`groups.${name}.title`)), " ", brief), tag),
    sheet.strings.has(`groups.${name}.note`) ? h("p", { class: "note" }, sheet.say(`groups.${name}.note`)) : null,
    error,
    asked.root,
    outcome,
  );
  let said = "";
  let chosen = "";

  /** Fields that nobody sees are left alone until the group opens; what a choice brings in is there at once, to be led to. */
  function updateAsked() {
    const choices = all.choices.map(({ path }) => sheet.session.choice(path).value).join();
    if (!root.open && choices === chosen) return;
    chosen = choices;
    asked.update();
  }

  function update() {
    updateAsked();
    const active = sheet.session.active(items);
    root.hidden = active.paths.length + active.choices.length === 0;
    setText(brief, briefly(sheet, name, active));
    const words = active.choices.filter((choice) => Object.keys(written(choice, sheet.session.choice(choice.path).value)).length > 0);
    const assumed = [...words.map((choice) => sheet.isChoiceAssumed(choice)), ...active.paths.map((path) => sheet.isAssumed(path))];
    tag.hidden = !assumed.includes(true);
    setText(tag, sheet.say(assumed.includes(false) ? "form.partly_assumed" : "form.assumed"));
    showFaults(active);
    showOutcome();
  }

  /** @param {ReturnType<Sheet["session"]["active"]>} active */
  function showFaults({ paths, choices }) {
    const fields = new Set([...paths, ...choices.map(({ path }) => path)]);
    // A fault of the group as a whole (an arm that cannot close) stands above its fields.
    const whole = sheet.told.filter(({ path }) => blocks.has(path.split(".")[0]) && !fields.has(path) && !isElsewhere(path));
    error.hidden = whole.length === 0;
    setText(error, whole.map((fault) => faultSentence(sheet, fault)).join(" "));
    if (whole.length || sheet.told.some((fault) => fields.has(fault.path))) {
      root.open = true;
      asked.update();
    }
  }

  /** The large fields and the leaf's parts have a place of their own, and so has a field of another group. @param {string} path */
  function isElsewhere(path) {
    if (path.startsWith("leaf.members")) return true;
    return sheet.session.activePaths().includes(path) && !all.paths.includes(path);
  }

  function showOutcome() {
    const sentences = sheet.result ? (OUTCOMES[name]?.(sheet, sheet.result) ?? []) : [];
    outcome.classList.toggle("stale", sheet.stale);
    const text = sentences.join("\n");
    if (text === said) return;
    said = text;
    outcome.replaceChildren(...sentences.map((sentence) => h("p", {}, sentence)));
  }

  return { root, update, catchUp: () => root.open || asked.update() };
}

/**
 * The group's main values in one line, so that an assumption is seen without opening anything.
 *
 * @param {Sheet} sheet
 * @param {string} name
 * @param {ReturnType<Sheet["session"]["active"]>} active
 */
function briefly(sheet, name, { paths, choices }) {
  const values = Object.fromEntries(
    paths.map((path) => {
      const { rule, value } = sheet.session.entry(path);
      return [wordsKey(path), value === null ? "…" : sheet.show(value, rule.quantity)];
    }),
  );
  const ofChoices = choices.map(({ path }) => `choices.${wordsKey(path)}.brief.${sheet.session.choice(path).value}`);
  const keys = [`groups.${name}.brief`, ...ofChoices].filter((key) => sheet.strings.has(key));
  return keys.map((key) => sheet.say(key, values)).join(", ");
}
