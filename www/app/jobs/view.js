/**
 * What the person sees of their jobs: the name of the one on show and how it is kept, tools, the list, and what just happened.
 *
 * @import { Core } from "../core.js"
 * @import { Fault } from "../contract.d.ts"
 * @import { Keeper } from "./keeper.js"
 * @import { Strings } from "../strings.js"
 */

import { h, setText } from "../dom.js";
import { faultSentence } from "../faults.js";
import { Sheet } from "../sheet.js";
import { saveFile } from "./file.js";
import { createRows } from "./rows.js";
import { createShare } from "./share.js";

/** Faults told of a file that is none; more help nobody. */
const MOST_FAULTS = 5;

/**
 * @param {Strings} strings
 * @param {Keeper} keeper
 * @param {{ core: () => Core | null, link: (core: Core) => string, openFile: (file: File) => void }} host
 */
export function createView(strings, keeper, host) {
  const say = strings.say.bind(strings);
  const name = h("span", { class: "job-name" });
  const state = h("span", { class: "note" });
  const said = h("p", { class: "job-said", role: "status" });
  const undo = h("button", { type: "button", class: "move", hidden: true, onclick: () => act?.() });
  const trouble = h("p", { class: "error", role: "alert" });
  const saves = h("button", { type: "button", class: "move", hidden: true, onclick: save }, say("jobs.save"));
  const refused = h("div", { class: "job-refused", role: "alert", hidden: true });
  const file = h("input", { type: "file", hidden: true, accept: ".json,.txt,application/json,text/plain", onchange: () => picked() });
  const rows = createRows(strings, keeper, (row) => tell(say("jobs.deleted", { name: row.document?.title ?? "" }), say("jobs.undo"), () => keeper.restore(row.id), true));
  const share = createShare(strings, made);
  const tool = (/** @type {string} */ key, /** @type {() => unknown} */ run) => h("button", { type: "button", class: "move", "data-act": key, onclick: run }, say(`jobs.${key}`));
  const root = h(
    "section",
    { class: "jobs", "aria-label": say("jobs.title"), lang: strings.language },
    h(
      "details",
      { class: "jobs-opens" },
      h("summary", {}, h("span", { class: "job-word" }, say("jobs.job")), name, state),
      h("div", { class: "job-tools" }, tool("new", () => keeper.open(null)), tool("open", () => file.click()), tool("save", save), file),
      share.root,
      rows.root,
    ),
    h("div", { class: "job-line" }, trouble, saves),
    h("div", { class: "job-line" }, said, undo),
    refused,
  );
  /** @type {(() => unknown) | null} */
  let act = null;

  /** @param {string} text @param {string} [label] of a way back @param {() => unknown} [back] @param {boolean} [focus] where the button just pressed has gone */
  function tell(text, label = "", back = undefined, focus = false) {
    setText(said, text);
    setText(undo, label);
    undo.hidden = !back;
    refused.hidden = true;
    act = back
      ? () => {
          tell("");
          back();
        }
      : null;
    if (focus) undo.focus();
  }

  async function save() {
    const outcome = await saveFile(keeper.document(), keeper.calculator.jobTitle);
    if (outcome !== "given_up") tell(say(`jobs.${outcome}`));
  }

  function picked() {
    const one = file.files?.[0];
    file.value = "";
    if (one) host.openFile(one);
  }

  function made() {
    const core = host.core();
    if (!core || !keeper.calculator.record) return null;
    const link = host.link(core);
    return { link, code: core.qr(link) };
  }

  /** A job was opened from elsewhere: the one before is one press away. @param {boolean} fresh whether it was not here before */
  function opened(fresh) {
    const { before } = keeper;
    const title = before?.document?.title || say("jobs.nameless");
    tell(say(fresh ? "jobs.opened" : "jobs.known", { name: keeper.calculator.jobTitle }), say("jobs.back", { name: title }), before ? () => keeper.back() : undefined);
    update();
  }

  /** Says why something was not opened. @param {Fault[]} errors @param {string} source name of a file; empty: a link */
  function refuse(errors, source) {
    const core = host.core();
    if (!core) return;
    const session = /** @type {any} */ ({ entries: new Map(), system: keeper.calculator.record?.system ?? "metric" });
    const sheet = new Sheet(core, strings, session, /** @type {any} */ ({ operators: [] }), () => {});
    const sentences = errors.slice(0, MOST_FAULTS).map((fault) => h("li", {}, faultSentence(sheet, fault)));
    tell("");
    refused.replaceChildren(
      h("p", { class: "error" }, source ? say("jobs.bad_file", { name: source }) : say("jobs.bad_link")),
      h("ul", {}, ...sentences),
      h("button", { type: "button", class: "move", onclick: () => (refused.hidden = true) }, say("jobs.understood")),
    );
    refused.hidden = false;
  }

  function update() {
    const bad = !["none", "kept"].includes(keeper.state);
    setText(name, keeper.seen === null && keeper.state === "none" ? say("jobs.example") : keeper.calculator.jobTitle || say("jobs.nameless"));
    setText(state, say(`jobs.state_${keeper.state}`));
    setText(trouble, bad ? say(`jobs.trouble_${keeper.state}`) : "");
    saves.hidden = !bad;
    rows.update();
    share.update();
  }

  return { root, update, opened, refuse };
}
