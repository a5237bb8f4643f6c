/**
 * `<pintle-calculator>`: the calculator as a custom element. Registered in define.js, so that a host may choose another name.
 *
 * Attributes  `job` and `operators` (address or inline JSON), `units` (`metric` | `us`), `layout` (`field` | `projector`), `lang` (else the nearest ancestor's).
 * Properties  `job`, `operators` (objects as well, and promises), `plan`, `errors`, `operator`, `record` (what was typed), `jobTitle`, `ready` (a promise), `version`.
 * `step` is the step of the job in view, by name; it follows where the person goes.
 * Events      `pintle-plan`, after a change the person made: detail `{ job, plan, errors }`, `plan` null while something is wrong.
 *             `pintle-faults`, once for a list of operators that has any: detail `{ faults, warnings }`, each `{ path, code, text }`.
 *             `pintle-failed`, when a file it needs does not come: detail `{ error, retry }`; see failed.js.
 *
 * @import { Plan } from "./contract.d.ts"
 * @import { Core } from "./core.js"
 * @import { Told } from "./entry.js"
 * @import { OperatorList } from "./operators/list.js"
 * @import { Part } from "./sheet.js"
 * @import { Strings } from "./strings.js"
 * @import { TypedRecord } from "./typed-record.js"
 *
 * Everything a calculator is made of, and what it is to start from; of a document, whether it had to be stood in for.
 * @typedef {{ core: Core, strings: Strings, sheets: CSSStyleSheet[], job: { value: any, failed: boolean }, list: { operators: OperatorList, failed: boolean } }} Start
 */

import { loadCore } from "./core.js";
import { tellFailed } from "./failed.js";
import { NO_OPERATORS, operatorFaults, readOperators } from "./operators/list.js";
import { Session } from "./session.js";
import { Sheet } from "./sheet.js";
import { STARTING_JOB, languageOf, readSource } from "./sources.js";
import { loadStrings, nearestTag } from "./strings.js";
import { loadStyleSheets, reserve } from "./stylesheet.js";
import { applyRecord, takeRecord } from "./typed-record.js";
import { createFrame } from "./shell/frame.js";
import { History } from "./shell/history.js";

export class PintleCalculator extends HTMLElement {
  static observedAttributes = ["job", "operators", "units", "layout", "lang", "step"];

  #tree = this.attachShadow({ mode: "open" });
  /** @type {Sheet | null} */
  #sheet = null;
  /** @type {ReturnType<typeof createFrame> | null} */
  #view = null;
  /** @type {History | null} */
  #history = null;
  #ended = new AbortController();
  /** Counts starts, so that a slow one that was overtaken does nothing. */
  #start = 0;
  /** Whether the next start is with another job, so that what was typed into the last one goes. */
  #otherJob = false;
  /** Whether what was given last stands. */
  #stands = false;
  #frame = 0;
  #byPerson = false;
  #said = "";
  /** @type {{ job?: unknown, operators?: unknown }} */
  #given = {};
  /** @type {TypedRecord | null} */
  #record = null;
  /** Documents by their addresses: a start that overtakes another one does not fetch them again. @type {Map<string, Promise<any>>} */
  #documents = new Map();
  /** What was told of the list that is there, as text. */
  #toldFaults = "";
  #observer = new MutationObserver(() => this.#languageMayHaveChanged());

  constructor() {
    super();
    this.#clear();
    /** Settles when the result of what was given stands; a new one for each job or list given. @type {Promise<void>} */
    this.ready = new Promise((resolve) => (this.#settle = resolve));
  }

  /** @type {() => void} */
  #settle = () => {};

  connectedCallback() {
    for (const name of /** @type {const} */ (["job", "operators", "record"])) this.#takeEarly(name);
    this.#observer.observe(document, { attributes: true, attributeFilter: ["lang"], subtree: true });
    this.#restart();
  }

  disconnectedCallback() {
    this.#observer.disconnect();
    cancelAnimationFrame(this.#frame);
    this.#start += 1;
    this.#record = this.record;
    this.#close();
    this.#clear();
  }

  /** The host's own text stands in the slot until the calculator is there, and stays if it cannot start. */
  #clear() {
    this.#tree.adoptedStyleSheets = [reserve()];
    this.#tree.replaceChildren(document.createElement("slot"));
  }

  /**
   * @param {string} name
   * @param {string | null} before
   * @param {string | null} after
   */
  attributeChangedCallback(name, before, after) {
    // The attributes an element is upgraded with are read when it starts.
    if (before === after || !this.isConnected || this.#start === 0) return;
    if (name === "units") this.#setUnits(this.#units());
    else if (name === "layout") this.#setLayout();
    else if (name === "lang") this.#languageMayHaveChanged();
    else if (name === "step") this.#view?.show(after);
    else {
      delete this.#given[/** @type {"job" | "operators"} */ (name)];
      this.#documents.clear();
      this.#restart(name === "job");
    }
  }

  /** The job as it stands, or what was given to start from; null while that is still to come. */
  get job() {
    const { job } = this.#given;
    return this.#sheet?.session.job() ?? (job instanceof Promise ? null : (job ?? null));
  }

  set job(job) {
    if (typeof job === "string") this.#documents.clear();
    this.#given.job = job;
    this.#record = null;
    if (this.isConnected) this.#restart(true);
  }

  get operators() {
    return this.#given.operators ?? this.#sheet?.list ?? null;
  }

  set operators(list) {
    this.#toldFaults = "";
    if (typeof list === "string") this.#documents.clear();
    this.#given.operators = list;
    if (this.isConnected) this.#restart();
  }

  /** The chosen entry of the operator list; null while ratings are typed. */
  get operator() {
    return this.#sheet?.session.operator ?? null;
  }

  /** The plan of what is typed; null while something is wrong. @returns {Plan | null} */
  get plan() {
    return this.#sheet && !this.#sheet.stale ? (this.#sheet.result?.plan ?? null) : null;
  }

  /** @returns {Told[]} */
  get errors() {
    return this.#sheet?.faults ?? [];
  }

  /** What was typed, to be put back into another copy or another version of the page. @returns {TypedRecord | null} */
  get record() {
    return this.#sheet ? takeRecord(this.#sheet.session) : this.#record;
  }

  set record(record) {
    this.#record = record;
    if (!this.#sheet || !record) return;
    if (!applyRecord(this.#sheet.session, record)) {
      this.#sheet.trouble.push({ key: "start.no_entry" });
      this.#build();
    }
    this.#history?.accept();
    this.#refresh(false);
  }

  /** Version of the calculation; null until `ready`. @returns {string | null} */
  get version() {
    return this.#sheet?.core.version() ?? null;
  }

  /** What the job is called. @returns {string} */
  get jobTitle() {
    return this.job?.title ?? "";
  }

  set jobTitle(title) {
    if (this.#sheet) this.#sheet.session.base.title = title;
    this.#schedule(false);
  }

  /** Draws again after the host has changed custom properties. */
  recolour() {
    this.#view?.recolour();
  }

  /** A property set before the element was defined hides the accessor: take it over. @param {"job" | "operators" | "record"} name */
  #takeEarly(name) {
    if (!Object.hasOwn(this, name)) return;
    const value = this[name];
    delete (/** @type {any} */ (this)[name]);
    this[name] = value;
  }

  #units() {
    return this.getAttribute("units") === "us" ? "us" : /** @type {const} */ ("metric");
  }

  /** @param {boolean} [otherJob] */
  async #restart(otherJob = false) {
    this.#otherJob ||= otherJob;
    const turn = ++this.#start;
    if (this.#stands) this.ready = new Promise((resolve) => (this.#settle = resolve));
    this.#stands = false;
    try {
      const parts = await this.#load();
      if (turn === this.#start) await this.#begin(parts);
    } catch (error) {
      if (turn !== this.#start) return;
      if (!this.#sheet) this.#tree.adoptedStyleSheets = [];
      tellFailed(this, error, () => this.#restart());
    }
  }

  /** @returns {Promise<Start>} */
  async #load() {
    const jobSource = this.#given.job ?? this.getAttribute("job");
    const listSource = this.#given.operators ?? this.getAttribute("operators");
    const named = async () => (await jobSource) || this.getAttribute("job") || STARTING_JOB;
    const [core, first, sheets, job, list] = await Promise.all([
      loadCore(),
      loadStrings(languageOf(this)),
      loadStyleSheets(),
      orElse(named().then((source) => this.#document(source)), () => this.#document(STARTING_JOB)),
      orElse(listSource ? this.#document(listSource) : null, () => null),
    ]);
    let strings = first;
    // The page may have been given another language while this was on its way.
    while (strings.tag !== nearestTag(languageOf(this))) strings = await loadStrings(languageOf(this));
    const operators = list.value === null ? NO_OPERATORS : await readOperators(core, list.value);
    return { core, strings, sheets, job, list: { ...list, operators } };
  }

  /** What was given as a document: read, or as it was read before. @param {unknown} source */
  #document(source) {
    if (typeof source !== "string") return readSource(source);
    const read = this.#documents.get(source) ?? readSource(source);
    this.#documents.set(source, read);
    read.catch(() => this.#documents.delete(source));
    return read;
  }

  /** @param {Start} parts */
  async #begin({ core, strings, sheets, job, list }) {
    // A job brings what was typed along as its `entry`, unless the host sets a record of its own.
    const { entry = null, ...base } = opened(core, this.#record ? { ...job.value, entry: this.#record } : (job.value ?? {}));
    const record = this.#otherJob || !this.#sheet ? entry : this.record;
    this.#otherJob = false;
    this.#record = null;
    this.#close();
    const { operators } = list;
    const start = () => new Session(core, base, operators.operators, this.#units());
    let session = start();
    let whole = false;
    try {
      whole = applyRecord(session, record);
    } catch (error) {
      // A broken record must not take the job with it.
      console.error("pintle-calculator", error);
      session = start();
    }
    this.#sheet = new Sheet(core, strings, session, operators, () => this.#schedule(true));
    if (!whole) this.#sheet.trouble.push({ key: "start.no_entry" });
    const retry = () => this.#restart();
    if (job.failed) this.#sheet.trouble.push({ key: "start.no_job", retry });
    if (list.failed) this.#sheet.trouble.push({ key: "start.no_operators", retry });
    this.#tree.adoptedStyleSheets = sheets;
    this.#sheet.layout = this.getAttribute("layout") ?? "";
    // The units shown are no part of what is said: taking something back leaves them.
    const said = () => ({ ...takeRecord(/** @type {Sheet} */ (this.#sheet).session), system: undefined });
    this.#history = new History(said, (record) => this.#takeBack(record, start()));
    const turn = this.#start;
    await this.#build();
    if (turn !== this.#start) return;
    this.#stands = true;
    this.#settle();
    this.#tellFaults(this.#sheet);
  }

  /** Tells the host of what is wrong with its list; a customer reads only that an entry is left out. @param {Sheet} sheet */
  #tellFaults(sheet) {
    const { faults, warnings } = operatorFaults(sheet);
    const told = JSON.stringify([faults, warnings]);
    if (faults.length + warnings.length === 0 || told === this.#toldFaults) return;
    this.#toldFaults = told;
    for (const { path, text } of [...faults, ...warnings]) console.warn(`pintle-calculator: ${path}: ${text}`);
    this.dispatchEvent(new CustomEvent("pintle-faults", { detail: { faults, warnings }, bubbles: true, composed: true }));
  }

  /** What was said before the last change. @param {unknown} said @param {Session} session a new one, of the job that was begun with */
  #takeBack(said, session) {
    if (!this.#sheet) return;
    applyRecord(session, said);
    this.#sheet.session = session;
    this.#byPerson = true;
    this.#build();
  }

  #close() {
    this.#retire();
    this.#sheet?.close();
    this.#sheet = null;
    this.#view = null;
  }

  /** Ends what the parts on show watch. An engine keeps a group of radio buttons for ever that is taken out of a tree under its name. */
  #retire() {
    this.#ended.abort();
    this.#ended = new AbortController();
    for (const radio of this.#tree.querySelectorAll("input[type=radio]")) radio.removeAttribute("name");
  }

  /** @returns {Promise<void> | undefined} settles once the step in view stands */
  #build() {
    if (!this.#sheet) return;
    this.#retire();
    const host = {
      chooseUnits: (/** @type {"metric" | "us"} */ system) => this.#setUnits(system),
      chooseLayout: (/** @type {string} */ layout) => this.setAttribute("layout", layout),
      stepChanged: (/** @type {string} */ name) => this.setAttribute("step", name),
      history: /** @type {History} */ (this.#history),
    };
    const step = this.getAttribute("step");
    this.#view = createFrame(this.#sheet, this.#ended.signal, host, step);
    this.#tree.replaceChildren(this.#view.root);
    this.#refresh(this.#byPerson);
    this.#byPerson = false;
    return this.#view.show(step);
  }

  /** @param {"metric" | "us"} system */
  #setUnits(system) {
    if (!this.#sheet) return;
    this.#sheet.session.setSystem(system);
    this.#schedule(false);
    if (this.#units() !== system) this.setAttribute("units", system);
  }

  #setLayout() {
    if (!this.#sheet) return;
    this.#sheet.layout = this.getAttribute("layout") ?? "";
    this.#schedule(false);
    this.recolour();
  }

  async #languageMayHaveChanged() {
    const wanted = nearestTag(languageOf(this));
    if (!this.#sheet || wanted === this.#sheet.strings.tag) return;
    const strings = await loadStrings(wanted).catch((error) => tellFailed(this, error, () => this.#languageMayHaveChanged()));
    if (!strings || !this.#sheet || nearestTag(languageOf(this)) !== wanted) return;
    this.#sheet.strings = strings;
    this.#build();
  }

  /** Computed once a frame, however fast somebody types or a host changes its mind. @param {boolean} byPerson */
  #schedule(byPerson) {
    this.#byPerson ||= byPerson;
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(() => {
      this.#refresh(this.#byPerson);
      this.#byPerson = false;
    });
  }

  /** @param {boolean} byPerson */
  #refresh(byPerson) {
    if (!this.#sheet) return;
    this.#sheet.compute();
    if (byPerson) this.#history?.note(this.#sheet.session.held ?? "");
    this.#view?.update();
    const { plan, errors } = this;
    const job = this.#sheet.session.job();
    const said = JSON.stringify([job, errors]);
    if (said === this.#said) return;
    this.#said = said;
    if (!byPerson) return;
    this.dispatchEvent(new CustomEvent("pintle-plan", { detail: { job, plan, errors }, bubbles: true, composed: true }));
  }
}

/**
 * A document that cannot be had is stood in for, and said so: never a blank page.
 *
 * @template Value
 * @param {Value | Promise<Value>} wanted
 * @param {() => Value | Promise<Value>} otherwise
 * @returns {Promise<{ value: Value, failed: boolean }>}
 */
async function orElse(wanted, otherwise) {
  try {
    return { value: await wanted, failed: false };
  } catch (error) {
    console.error("pintle-calculator", error);
    return { value: await otherwise(), failed: true };
  }
}

/**
 * A job in today's schema. One that is, or that cannot be opened, stays as it is, so that its faults are told where they are.
 *
 * @param {Core} core
 * @param {any} job
 */
function opened(core, job) {
  try {
    return job.schema === core.schema() ? job : core.open_job(job);
  } catch {
    return job;
  }
}
