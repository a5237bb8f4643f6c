/**
 * `<pintle-jobs>`: jobs kept in the browser, files, links. A host has it only where it imports `app/jobs/define.js` and puts the element
 * on its page.
 *
 * Attributes  `for` (id of the calculator; default the first of the document), `page` (address that links lead to; default the folder of the calculator).
 * Methods     `hold()` before the host reloads the page: what was typed in the last moment is there again afterwards.
 *
 * @import { Core } from "../core.js"
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { Strings } from "../strings.js"
 */

import { loadCore } from "../core.js";
import { tellFailed } from "../failed.js";
import { isLink, linkOf, openLink } from "../link.js";
import { languageOf } from "../sources.js";
import { loadStrings, nearestLanguage } from "../strings.js";
import { loadStyleSheets } from "../stylesheet.js";
import { Keeper } from "./keeper.js";
import { Store } from "./store.js";
import { readFile, watchDrops } from "./file.js";
import { createView } from "./view.js";

export class PintleJobs extends HTMLElement {
  #tree = this.attachShadow({ mode: "open" });
  #ended = new AbortController();
  #observer = new MutationObserver(() => this.#speak().catch((error) => tellFailed(this, error, () => this.#speak())));
  /** @type {Keeper | null} */
  #keeper = null;
  /** @type {Core | null} */
  #core = null;
  /** @type {Strings | null} */
  #strings = null;
  /** @type {ReturnType<typeof createView> | null} */
  #view = null;

  async connectedCallback() {
    const calculator = this.#calculator();
    if (!calculator) return console.error("pintle-jobs: no calculator");
    await customElements.whenDefined(calculator.localName);
    if (!this.isConnected) return;
    this.#ended = new AbortController();
    const { signal } = this.#ended;
    const keeper = new Keeper(calculator, new Store(new URL(".", document.baseURI).pathname), {
      changed: () => this.#view?.update(),
      newName: () => this.#say("jobs.new_name", { date: new Intl.DateTimeFormat(this.#strings?.language, { dateStyle: "medium" }).format() }),
      copyName: (name) => this.#say("jobs.copy_name", { name }),
    });
    this.#keeper = keeper;
    // Read at once: the calculator then starts with the job of last time, and not with another one first.
    const started = keeper.start();
    this.#observer.observe(document, { attributes: true, attributeFilter: ["lang"], subtree: true });
    for (const type of ["pintle-plan", "input"]) calculator.addEventListener(type, () => keeper.touch(), { signal });
    document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keeper.id && keeper.save(), { signal });
    addEventListener("pagehide", () => this.#holdQuietly(), { signal });
    addEventListener("hashchange", () => this.#openAddress(), { signal });
    watchDrops((file) => this.openFile(file), signal);
    await this.#load(started);
  }

  disconnectedCallback() {
    this.#ended.abort();
    this.#observer.disconnect();
    this.#keeper?.close();
    this.#keeper = this.#view = this.#strings = null;
    this.#tree.replaceChildren();
  }

  /** What it needs besides its modules; where something does not come that is told, with a way to try again. @param {Promise<void>} started */
  async #load(started) {
    const { signal } = this.#ended;
    try {
      [this.#core, this.#tree.adoptedStyleSheets] = await Promise.all([loadCore(), loadStyleSheets(), this.#speak()]);
    } catch (error) {
      if (!signal.aborted) tellFailed(this, error, () => this.#load(started));
      return;
    }
    await started;
    if (!signal.aborted) await this.#openAddress();
  }

  /** Throws where the browser can hold nothing. */
  hold() {
    this.#keeper?.hold();
  }

  #holdQuietly() {
    try {
      this.hold();
    } catch (error) {
      console.warn("pintle-jobs", error);
    }
  }

  /** Opens a file as a new job; a file that is none is told of, and the job on show stays. @param {File} file */
  async openFile(file) {
    const core = this.#core;
    if (core) await this.#open(() => readFile(core, file), file.name);
  }

  /** Opens the job of the address, if it holds one. The address is cleared: a reload must not take what was typed since. */
  async #openAddress() {
    const core = this.#core;
    const address = location.hash;
    if (!core || !isLink(address)) return;
    history.replaceState(history.state, "", location.pathname + location.search);
    await this.#open(() => openLink(core, address), "");
  }

  /** @param {() => any} read @param {string} source what it came from */
  async #open(read, source) {
    const { errors, document } = await attempt(read);
    if (errors) return this.#view?.refuse(errors, source);
    this.#view?.opened((await this.#keeper?.open(document)) ?? true);
  }

  #calculator() {
    const id = this.getAttribute("for");
    return /** @type {PintleCalculator | null} */ (id ? document.getElementById(id) : document.querySelector("pintle-calculator"));
  }

  /** @param {string} key @param {Record<string, string>} values */
  #say(key, values) {
    return this.#strings?.say(key, values) ?? "";
  }

  /** Speaks the nearest language, now and after every change of it. */
  async #speak() {
    const wanted = nearestLanguage(languageOf(this));
    if (this.#strings?.language === wanted) return;
    const strings = await loadStrings(wanted);
    const keeper = this.#keeper;
    // Taken off the page, or overtaken by another language or by another call.
    if (!keeper || wanted !== nearestLanguage(languageOf(this)) || this.#strings?.language === wanted) return;
    this.#strings = strings;
    this.#view = createView(strings, keeper, {
      core: () => this.#core,
      link: (core) => linkOf(core, keeper.calculator.job, /** @type {any} */ (keeper.calculator.record), this.getAttribute("page") ?? undefined),
      openFile: (file) => this.openFile(file),
    });
    this.#tree.replaceChildren(this.#view.root);
    this.#view.update();
  }
}

/** @param {() => any} read @returns {Promise<{ document?: any, errors?: import("../contract.d.ts").Fault[] }>} */
async function attempt(read) {
  try {
    return { document: await read() };
  } catch (error) {
    const { errors } = /** @type {{ errors?: any }} */ (error);
    if (!Array.isArray(errors)) throw error;
    return { errors };
  }
}
