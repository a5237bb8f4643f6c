/**
 * The job of this tab, carried over a reload: with what was typed in its last moment. It lives in this tab only, and stays until it is
 * on show again: a page that is reloaded before it has started leaves it for the next.
 *
 * @typedef {{ id: string, seen: number | null, dirty: boolean, document: any }} Held
 * `id` and `seen` name the row it is kept in, `dirty` says that it is newer than that row.
 */

const STORE = "pintle-typed";

/** Throws where the browser keeps nothing. @param {Held} held */
export function holdTyped(held) {
  sessionStorage.setItem(STORE, JSON.stringify(held));
}

/** @returns {Held | null} */
export function readHeld() {
  try {
    const text = sessionStorage.getItem(STORE);
    const held = text && JSON.parse(text);
    if (typeof held?.id === "string" && isJob(held.document)) return held;
    if (text) forgetHeld();
  } catch (error) {
    // Denied storage or a broken record: the page starts from what is kept, or afresh.
    console.error("pintle", error);
  }
  return null;
}

/** Once it is on show, and in its row. */
export function forgetHeld() {
  try {
    sessionStorage.removeItem(STORE);
  } catch {
    // Denied: nothing was held.
  }
}

/** Whether something kept is a job at all. Every job says its schema; what has none was kept before there was one. @param {any} document */
export function isJob(document) {
  return typeof document?.schema === "number";
}
