/**
 * The job on show and the row it is kept in: read at the start, written after every change, never over what another tab wrote.
 *
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { Row, Store } from "./store.js"
 *
 * How the keeping stands. `none`: nothing to keep yet; `kept`; `denied`: the browser keeps nothing; `silent`: its storage does not answer;
 * `full`; `wiped`: what was kept has gone and the job on show is kept anew; `copied`: another tab changed the same job, so this one went on
 * under a name of its own.
 * @typedef {"none" | "kept" | "denied" | "silent" | "full" | "wiped" | "copied"} Keeping
 *
 * A job to put on show: the row it is kept in, if it is, and whether it is newer than that row.
 * @typedef {{ id: string | null, seen: number | null, document: any, dirty: boolean }} Shown
 *
 * @typedef {object} Listener
 * @property {() => void} changed the state, the name or the list may differ
 * @property {() => string} newName a name for a job that has none of its own yet
 * @property {(name: string) => string} copyName a name for a second one of that name
 */

import { forgetHeld, holdTyped, isJob, readHeld } from "../kept.js";
import { covers, sameJob } from "./same.js";

/** Typing rests this long before it is written. */
const REST_MS = 400;
/** Deleted jobs can be brought back this long. */
const DELETED_MS = 30 * 24 * 3600 * 1000;
/** The calculator waits this long for the job of last time before it starts with the page's example. */
const START_MS = 1000;
/** How it stands where the browser does not keep what it is given; a later write that succeeds ends it. */
const BROKEN = ["denied", "silent", "full"];

export class Keeper {
  /** @type {string | null} */
  id = null;
  /** The row's count when it was last read or written here; null: not written yet. @type {number | null} */
  seen = null;
  /** @type {Keeping} */
  state = "none";
  /** Rows as last read, newest first. @type {Row[]} */
  rows = [];
  /** What was on show before the last opening, to go back to. @type {{ id: string | null, document: any } | null} */
  before = null;
  /** What is kept, as text. */
  #last = "";
  /** Whether another document is on its way to be shown, and which; null: the page's own example. */
  #showing = false;
  /** @type {any} */
  #coming = null;
  /** The title of the page's own example, which is nobody's name. */
  #example = "";
  #timer = 0;
  /** One write at a time. @type {Promise<unknown>} */
  #line = Promise.resolve();

  /** @param {PintleCalculator} calculator @param {Store} store @param {Listener} tell */
  constructor(calculator, store, tell) {
    this.calculator = calculator;
    this.store = store;
    this.tell = tell;
    // What is on show is kept anew at once, and not only after the next change.
    store.lost = () => {
      this.#last = "";
      if (this.seen !== null) this.touch();
    };
    store.answered = async () => {
      this.state = "none";
      this.#late(await this.#lastTime());
    };
  }

  /** The job on show as a file holds it: with the text as typed. */
  document() {
    return this.#coming ?? { ...this.calculator.job, entry: this.calculator.record };
  }

  get #dirty() {
    return this.#print() !== this.#last;
  }

  /** The job on show as text. The example in other units still is the example. */
  #print() {
    const document = this.document();
    return JSON.stringify(this.id === null && document.entry ? { ...document, entry: { ...document.entry, system: null } } : document);
  }

  /** Puts the job of last time on show: this tab's, else the newest. */
  async start() {
    const found = this.#lastTime();
    const soon = Promise.race([found, new Promise((resolve) => setTimeout(resolve, START_MS, null))]);
    this.#showing = true;
    // Given as a promise, and at once: the calculator then starts with the job of last time, and not with another one first.
    this.calculator.job = soon.then((last) => (last ? this.#expect(last) : null));
    await this.calculator.ready;
    const last = await soon;
    await this.#shown(last?.dirty ?? false, !last);
    if (last) this.#forget();
    else found.then((late) => this.#late(late));
    this.tell.changed();
  }

  /** @returns {Promise<Shown | null>} */
  async #lastTime() {
    const held = readHeld();
    const read = this.read();
    // What is newer than its row need not wait for the rows.
    if (held?.dirty) return held;
    await read;
    const kept = this.rows.find(({ id }) => id === held?.id);
    if (held && !kept) return { ...held, dirty: true };
    const row = kept?.deleted === null ? kept : this.list()[0];
    return row ? shownOf(row) : null;
  }

  /** Storage was slow, or silent: the job of last time comes on show where nothing was typed meanwhile. @param {Shown | null} last */
  async #late(last) {
    if (this.id !== null || this.#dirty) await this.save();
    else if (last) await this.#show(last);
    this.#forget();
    this.tell.changed();
  }

  /** What was held is on show; what is not in a row yet stays held. */
  #forget() {
    if (!this.#dirty) forgetHeld();
  }

  /** What is on show counts as kept. @param {boolean} [example] it is the page's own */
  #rest(example = false) {
    this.#last = this.#print();
    this.#example = example ? this.calculator.jobTitle : "";
  }

  /** Jobs that are not deleted, newest first. */
  list() {
    return this.rows.filter(({ deleted }) => deleted === null);
  }

  /** The host takes the list off its page: what is typed is written, and the rows are let go of. */
  async close() {
    await this.save();
    this.store.close();
  }

  /** Reads the rows again, and takes out what was deleted long ago. */
  async read() {
    try {
      const rows = await this.store.all();
      const isOld = (/** @type {Row} */ { deleted }) => deleted !== null && deleted < Date.now() - DELETED_MS;
      // What is no job was kept by an older page before it had one, and cannot be opened.
      const old = rows.filter((row) => isOld(row) || !isJob(row.document));
      await Promise.all(old.map(({ id }) => this.store.remove(id)));
      this.rows = rows.filter((row) => !old.includes(row)).sort((a, b) => (b.deleted ?? b.at) - (a.deleted ?? a.at));
    } catch (error) {
      this.#failed(error);
    }
  }

  /** The person changed something: written once they pause. */
  touch() {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => this.save(), REST_MS);
  }

  /** Writes the job on show, if it differs from what is kept. */
  save() {
    clearTimeout(this.#timer);
    this.#line = this.#line.then(() => this.#write()).then(() => this.tell.changed());
    return this.#line;
  }

  async #write() {
    if (this.#showing || !this.#dirty || !isJob(this.document())) return;
    if (this.seen === null && ["", this.#example].includes(this.calculator.jobTitle)) this.calculator.jobTitle = this.tell.newName();
    const document = this.document();
    try {
      this.id ??= newId();
      /** @type {Keeping} */
      let state = this.state === "wiped" || this.state === "copied" ? this.state : "kept";
      const outcome = await this.#put(document);
      if (outcome !== "written") {
        state = outcome === "gone" ? "wiped" : "copied";
        this.seen = null;
        if (outcome === "changed") {
          this.id = newId();
          this.calculator.jobTitle = document.title = this.tell.copyName(document.title);
        }
        await this.#put(document);
      }
      this.state = state;
      this.#last = JSON.stringify(document);
      forgetHeld();
    } catch (error) {
      this.#failed(error);
    }
    await this.read();
  }

  /** @param {any} document */
  async #put(document) {
    const saved = (this.seen ?? 0) + 1;
    const outcome = await this.store.put({ id: /** @type {string} */ (this.id), saved, at: Date.now(), deleted: null, document }, this.seen);
    if (outcome === "written") this.seen = saved;
    return outcome;
  }

  /** @param {unknown} error */
  #failed(error) {
    console.warn("pintle-jobs", error);
    const { name = "" } = /** @type {DOMException} */ (error ?? {});
    this.state = name === "QuotaExceededError" ? "full" : name === "TimeoutError" ? "silent" : "denied";
  }

  /** Before the page is reloaded or goes: this tab's job, with what was typed in the last moment. Throws where nothing can be held. */
  hold() {
    const document = this.document();
    // Before there is a job there is nothing to hold, and what the page before it held stays.
    if (!isJob(document)) return;
    const dirty = this.#dirty;
    // A page nobody typed in starts afresh.
    if (this.id === null && (!dirty || (this.#showing && !this.#coming))) return;
    this.id ??= newId();
    holdTyped({ id: this.id, seen: this.seen, dirty, document });
  }

  /**
   * Puts another document on show, the one before written first. It is kept from now on: as a new job, or as the one it already is.
   *
   * @param {any} document null: the page's own example, kept once something is typed
   * @param {boolean} [second] whether a second one is wanted of a job that is here
   * @returns {Promise<boolean>} whether it is a job that was not here before
   */
  async open(document, second = false) {
    const known = async (/** @type {any} */ given) => document && !second && (await this.#showKnown(given));
    await this.#leave();
    await this.read();
    if (await known(document)) return false;
    await this.#show({ id: null, seen: null, document, dirty: false });
    // The page has its own way to write a job: only now can it be compared with what the page wrote before.
    if (await known(this.document())) return false;
    if (document) {
      const { jobTitle } = this.calculator;
      const named = (/** @type {string} */ name) => this.list().some((row) => row.document.title === name);
      let name = jobTitle;
      while (name && named(name)) name = this.tell.copyName(name);
      if (name !== jobTitle) this.calculator.jobTitle = name;
      this.#last = "";
      await this.save();
    }
    this.tell.changed();
    return true;
  }

  /**
   * Puts the kept job on show that a document is, if it is one; with what the document has beside it and the row has not.
   *
   * @param {any} document
   */
  async #showKnown(document) {
    const same = this.list().filter((row) => sameJob(row.document, document) && (covers(row.document, document) || covers(document, row.document)));
    const title = document.title ?? "";
    const row = same.find((one) => one.document.title === title) ?? same.find((one) => one.document.title?.startsWith(title));
    if (!row) return false;
    if (this.before?.id === row.id) this.before = null;
    if (!covers(row.document, document)) await this.#show({ ...shownOf(row), document: { ...document, title: row.document.title }, dirty: true });
    else if (this.id !== row.id) await this.#show(shownOf(row));
    this.tell.changed();
    return true;
  }

  /** Puts a kept job on show. @param {string} id */
  async openRow(id) {
    await this.#leave();
    await this.read();
    const row = this.rows.find((one) => one.id === id);
    if (row) await this.#show(shownOf(row));
    this.tell.changed();
  }

  /** Back to what was on show before the last opening. */
  async back() {
    const { before } = this;
    if (!before) return;
    if (before.id === null) await this.open(null);
    else if (this.list().some(({ id }) => id === before.id)) await this.openRow(before.id);
    else await this.open(before.document);
    this.before = null;
    this.tell.changed();
  }

  async #leave() {
    await this.save();
    this.before = { id: this.id, document: this.document() };
  }

  /** @param {Shown} next its document null: the page's own example */
  async #show(next) {
    this.#showing = true;
    this.calculator.job = this.#expect(next);
    await this.calculator.ready;
    await this.#shown(next.dirty, next.document === null);
  }

  /** @param {Shown} next @returns {any} its document */
  #expect({ id, seen, document, dirty }) {
    this.id = id;
    this.seen = seen;
    this.#example = "";
    // As long as it is on its way it is what its row has, unless it is newer.
    this.#last = dirty || id === null ? "" : JSON.stringify(document);
    if (!BROKEN.includes(this.state)) this.state = id === null ? "none" : "kept";
    this.#coming = document;
    return document;
  }

  /** The calculator has what it was given. @param {boolean} dirty it is newer than its row @param {boolean} example it is the page's own */
  async #shown(dirty, example) {
    this.#coming = null;
    this.#showing = false;
    if (dirty) await this.save();
    else this.#rest(example);
  }

  /** @param {string} id @param {string} name */
  async rename(id, name) {
    if (id !== this.id) return this.#change(id, (row) => (row.document.title = name));
    this.calculator.jobTitle = name;
    return this.save();
  }

  /** A second one like it, on show from now on. @param {string} id @param {string} name */
  async duplicate(id, name) {
    await this.save();
    const row = this.rows.find((one) => one.id === id);
    if (row) await this.open({ ...row.document, title: name }, true);
  }

  /** Deletes a job; it can be brought back for a month. @param {string} id */
  async remove(id) {
    await this.save();
    await this.#change(id, (row) => (row.deleted = Date.now()));
    if (id !== this.id) return;
    const [next] = this.list();
    if (next) await this.openRow(next.id);
    else await this.open(null);
    // What was deleted comes back by `restore`.
    this.before = null;
    this.tell.changed();
  }

  /** Brings a deleted job back and puts it on show. @param {string} id */
  async restore(id) {
    await this.#change(id, (row) => (row.deleted = null));
    await this.openRow(id);
  }

  /** @param {string} id @param {(row: Row) => void} change */
  async #change(id, change) {
    await this.read();
    try {
      const row = this.rows.find((one) => one.id === id);
      const seen = row?.saved ?? 0;
      if (row) {
        change(row);
        row.saved += 1;
        await this.store.put(row, seen);
      }
    } catch (error) {
      this.#failed(error);
    }
    await this.read();
    this.tell.changed();
  }
}

/** Random; `crypto.randomUUID` is missing where a page comes without encryption. */
function newId() {
  return crypto.getRandomValues(new Uint32Array(3)).join("-");
}

/** @param {Row} row @returns {Shown} */
function shownOf({ id, saved, document }) {
  return { id, seen: saved, document, dirty: false };
}
