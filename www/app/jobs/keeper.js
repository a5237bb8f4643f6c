/**
 * The job on show and the row it is kept in: read at the start, written after every change, never over what another tab wrote.
 *
 * @import { PintleCalculator } from "../pintle-calculator.js"
 * @import { Row, Store } from "./store.js"
 *
 * How the keeping stands. `none`: nothing to keep yet; `kept`; `denied`: the browser keeps nothing; `full`; `wiped`: what was kept has
 * gone and the job on show is kept anew; `copied`: another tab changed the same job, so this one went on under a name of its own.
 * @typedef {"none" | "kept" | "denied" | "full" | "wiped" | "copied"} Keeping
 *
 * @typedef {object} Listener
 * @property {() => void} changed the state, the name or the list may differ
 * @property {() => string} newName a name for a job that has none of its own yet
 * @property {(name: string) => string} copyName a name for a second one of that name
 */

import { holdTyped, takeHeld } from "../kept.js";

/** Typing rests this long before it is written. */
const REST_MS = 400;
/** Deleted jobs can be brought back this long. */
const DELETED_MS = 30 * 24 * 3600 * 1000;

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
  }

  /** The job on show as a file holds it: with the text as typed. */
  document() {
    return this.#coming ?? { ...this.calculator.job, entry: this.calculator.record };
  }

  get #dirty() {
    return JSON.stringify(this.document()) !== this.#last;
  }

  /** Puts the job of last time on show: this tab's, else the newest. */
  async start() {
    const held = takeHeld();
    await this.read();
    const kept = this.rows.find(({ id }) => id === held?.id);
    if (held && (held.dirty || !kept)) {
      await this.#show(held.id, held.seen, held.document);
      await this.save();
    } else {
      const row = kept?.deleted === null ? kept : this.list()[0];
      if (row) await this.#show(row.id, row.saved, row.document);
      else await this.calculator.ready;
      this.#rest(!row);
    }
    this.tell.changed();
  }

  /** What is on show counts as kept. @param {boolean} [example] it is the page's own */
  #rest(example = false) {
    this.#last = JSON.stringify(this.document());
    this.#example = example ? this.calculator.jobTitle : "";
  }

  /** Jobs that are not deleted, newest first. */
  list() {
    return this.rows.filter(({ deleted }) => deleted === null);
  }

  /** Reads the rows again, and takes out what was deleted long ago. */
  async read() {
    try {
      const rows = await this.store.all();
      const old = rows.filter(({ deleted }) => deleted !== null && deleted < Date.now() - DELETED_MS);
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
    if (this.#showing || !this.#dirty) return;
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
    this.state = /** @type {DOMException} */ (error)?.name === "QuotaExceededError" ? "full" : "denied";
  }

  /** Before the page is reloaded or goes: this tab's job, with what was typed in the last moment. Throws where nothing can be held. */
  hold() {
    const dirty = this.#dirty;
    // A page nobody typed in starts afresh.
    if (this.id === null && (!dirty || (this.#showing && !this.#coming))) return;
    this.id ??= newId();
    holdTyped({ id: this.id, seen: this.seen, dirty, document: this.document() });
  }

  /**
   * Puts another document on show, the one before written first. It is a new job, kept from now on.
   *
   * @param {any} document null: the page's own example, kept once something is typed
   */
  async open(document) {
    await this.#leave();
    await this.#show(null, null, document);
    if (document) await this.save();
    else this.#rest(true);
    this.tell.changed();
  }

  /** Puts a kept job on show. @param {string} id */
  async openRow(id) {
    await this.#leave();
    await this.read();
    const row = this.rows.find((one) => one.id === id);
    if (row) {
      await this.#show(row.id, row.saved, row.document);
      this.#rest();
    }
    this.tell.changed();
  }

  /** Back to what was on show before the last opening. */
  async back() {
    const { before } = this;
    if (!before) return;
    if (this.list().some(({ id }) => id === before.id)) await this.openRow(/** @type {string} */ (before.id));
    else await this.open(before.document);
    this.before = null;
    this.tell.changed();
  }

  async #leave() {
    await this.save();
    this.before = { id: this.id, document: this.document() };
  }

  /** @param {string | null} id @param {number | null} seen @param {any} document */
  async #show(id, seen, document) {
    this.id = id;
    this.seen = seen;
    this.#example = this.#last = "";
    if (this.state !== "denied" && this.state !== "full") this.state = id === null ? "none" : "kept";
    this.#coming = document;
    this.#showing = true;
    this.calculator.job = document;
    await this.calculator.ready;
    this.#coming = null;
    this.#showing = false;
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
    if (row) await this.open({ ...row.document, title: name });
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
