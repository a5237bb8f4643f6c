/**
 * Jobs in the browser: one row each in IndexedDB, by their folder on the host, so that two copies of the page keep their own.
 *
 * @typedef {{ id: string, saved: number, at: number, deleted: number | null, document: any }} Row
 * `at` is the time of the last change, ms; `saved` counts up with every write of the row, so that a second tab notices that it has an older one.
 */

const ROWS = "jobs";
/** Storage answers within milliseconds, on a busy phone within a second or two: one that needs longer than this does not answer. */
const PATIENCE_MS = 4000;

export class Store {
  /** Whether it was asked for and does not answer: nothing is waited for again before it does. */
  silent = false;

  /** @param {string} folder path of the page's folder */
  constructor(folder) {
    this.name = `pintle-jobs:${folder}`;
    /** @type {Promise<IDBDatabase> | null} */
    this.opened = null;
    /** Called when the rows were taken away while they were open. */
    this.lost = () => {};
    /** Called when storage that was silent answers after all. */
    this.answered = () => {};
  }

  /** Every row, those deleted too. @returns {Promise<Row[]>} rejects where the browser keeps nothing */
  all() {
    return this.#run("readonly", (rows) => rows.getAll());
  }

  /** @param {string} id */
  remove(id) {
    return this.#run("readwrite", (rows) => rows.delete(id));
  }

  /** Lets go of the rows. */
  close() {
    this.lost = this.answered = () => {};
    this.opened?.then((database) => database.close()).catch(() => {});
    this.opened = null;
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
   * @returns {Promise<any>} the request's result, once the transaction is through; rejects with a `TimeoutError` where nothing answers
   */
  async #run(mode, ask) {
    if (this.silent) throw silence();
    const opening = this.#open();
    const database = await within(opening, () => {
      this.silent = true;
      opening.finally(() => {
        this.silent = false;
        this.answered();
      }).catch(() => {});
    });
    const transaction = database.transaction(ROWS, mode);
    const request = ask(transaction.objectStore(ROWS));
    const through = new Promise((resolve, reject) => {
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? new Error("the browser broke off"));
    });
    // Given up, it must not be written later, behind the back of what is kept by then.
    return within(through, () => {
      try {
        transaction.abort();
      } catch {
        // It came through in the very moment; then it is written, as was asked.
      }
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

/**
 * What a promise gives, if it does so in time.
 *
 * @template Value
 * @param {Promise<Value>} promise
 * @param {() => void} giveUp called when it does not
 * @returns {Promise<Value>}
 */
function within(promise, giveUp) {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => {
      reject(silence());
      giveUp();
    }, PATIENCE_MS);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

function silence() {
  return new DOMException("storage does not answer", "TimeoutError");
}
