/**
 * The job of this tab, carried over a reload: with what was typed in its last moment. It lives in this tab only and is read once.
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
export function takeHeld() {
  try {
    const held = sessionStorage.getItem(STORE);
    sessionStorage.removeItem(STORE);
    return held && JSON.parse(held);
  } catch (error) {
    // Denied storage or a broken record: the page starts from what is kept, or afresh.
    console.error("pintle", error);
    return null;
  }
}
