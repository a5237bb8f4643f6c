/**
 * Jobs in the browser: one row each in IndexedDB, by their folder on the host, so that two copies of the page keep their own.
 *
 * @typedef {{ id: string, saved: number, at: number, deleted: number | null, document: any }} Row
 * `at` is the time of the last change, ms; `saved` counts up with every write of the row, so that a second tab notices that it has an older one.
 */

const ROWS = "jobs";

export class Store {
  /** @param {string} folder path of the page's folder */
  constructor(folder) {
    this.name = `pintle-jobs:${folder}`;
    /** @type {Promise<IDBDatabase> | null} */
    this.opened = null;
    /** Called when the rows were taken away while they were open. */
    this.lost = () => {};
  }

  /** Every row, those deleted too. @returns {Promise<Row[]>} rejects where the browser keeps nothing */
  all() {
    return this.#run("readonly", (rows) => rows.getAll());
  }

  /** @param {string} id */
  remove(id) {
    return this.#run("readwrite", (rows) => rows.delete(id));
  }

  /**
   * Writes a row, unless another tab wrote it since it was read.
   *
   * @param {Row} row
   * @param {number | null} seen the `saved` it was read with; null for a new one
   * @returns {Promise<"written" | "changed" | "gone">} `changed`: another tab has; `gone`: it was here and is no more. Nothing is written then.
   */
  async put(row, seen) {
    /** @type {"written" | "changed" | "gone"} */
    let outcome = "written";
    await this.#run("readwrite", (rows) => {
      const before = rows.get(row.id);
      before.onsuccess = () => {
        if (seen !== null && !before.result) outcome = "gone";
        else if (before.result && before.result.saved !== seen) outcome = "changed";
        else rows.put(row);
      };
      return before;
    });
    return outcome;
  }

  /**
   * @param {IDBTransactionMode} mode
   * @param {(rows: IDBObjectStore) => IDBRequest} ask
   * @returns {Promise<any>} the request's result, once the transaction is through
   */
  async #run(mode, ask) {
    const database = await this.#open();
    return new Promise((resolve, reject) => {
      const transaction = database.transaction(ROWS, mode);
      const request = ask(transaction.objectStore(ROWS));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new Error("the browser broke off"));
    });
  }

  #open() {
    this.opened ??= new Promise((resolve, reject) => {
      // Where storage is denied this throws, is null or fails, by browser.
      const request = indexedDB.open(this.name, 1);
      request.onupgradeneeded = () => request.result.createObjectStore(ROWS, { keyPath: "id" });
      request.onerror = () => reject(request.error);
      request.onsuccess = () => {
        const database = request.result;
        // Wiped by the person, or somebody wants to delete or change it: the next use opens anew.
        database.onclose = database.onversionchange = () => {
          database.close();
          this.opened = null;
          this.lost();
        };
        resolve(database);
      };
    });
    this.opened.catch(() => (this.opened = null));
    return this.opened;
  }
}
