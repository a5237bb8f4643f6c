/**
 * What was typed, carried over the reload that an accepted update needs. It lives in this tab only and is read once.
 *
 * @import { PintleCalculator } from "./pintle-calculator.js"
 */

const STORE = "pintle-typed";

/** @param {PintleCalculator} calculator */
export function keepTyped(calculator) {
  sessionStorage.setItem(STORE, JSON.stringify(calculator.record));
}

/** @param {PintleCalculator} calculator */
export function restoreTyped(calculator) {
  try {
    const kept = sessionStorage.getItem(STORE);
    sessionStorage.removeItem(STORE);
    if (kept) calculator.record = JSON.parse(kept);
  } catch (error) {
    // Denied storage or a broken record: the page starts afresh.
    console.error("pintle", error);
  }
}
