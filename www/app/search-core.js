/**
 * The searching core, a module of its own: what the search's worker calculates with. The page itself does not wait for it.
 */

import init, * as search from "../pintle-search.js";
import { fileAt } from "./files.js";

/** @typedef {typeof search} SearchCore */

/** @type {Promise<SearchCore> | undefined} */
let started;

/**
 * Starts it once. Rejects when it cannot be loaded; a failure is forgotten, so that a later try may succeed.
 *
 * @returns {Promise<SearchCore>}
 */
export function loadSearch() {
  started ??= init({ module_or_path: fileAt("pintle-search_bg.wasm") }).then(() => search);
  started.catch(() => (started = undefined));
  return started;
}
