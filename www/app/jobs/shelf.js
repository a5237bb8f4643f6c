/**
 * The rows of kept jobs, as last read.
 *
 * @import { Row, Store } from "./store.js"
 */

import { isJob } from "../kept.js";

/** Deleted jobs can be brought back this long. */
const DELETED_MS = 30 * 24 * 3600 * 1000;

export class Shelf {
  /** Newest first. @type {Row[]} */
  rows = [];

  /** @param {Store} store @param {(error: unknown) => void} failed */
  constructor(store, failed) {
    this.store = store;
    this.failed = failed;
  }

  /** Jobs that are not deleted, newest first. */
  list() {
    return this.rows.filter(({ deleted }) => deleted === null);
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
      this.failed(error);
    }
  }

  /** Changes one row, if it is still there as it was read. @param {string} id @param {(row: Row) => void} change */
  async change(id, change) {
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
      this.failed(error);
    }
    await this.read();
  }
}
