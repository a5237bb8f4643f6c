/**
 * The calculating core: one WebAssembly instance for the whole page, however many elements use it.
 * Its address is relative to this module, so that the folder can lie anywhere.
 */

import init, * as pintle from "../pintle-web.js";
import { fileAt } from "./files.js";

/** @typedef {typeof pintle} Core */

/** @type {Promise<Core> | undefined} */
let started;

/**
 * Starts the core once. Rejects when the module cannot be loaded or the host forbids WebAssembly; a failure is forgotten, so that a
 * later try may succeed.
 *
 * @returns {Promise<Core>}
 */
export function loadCore() {
  started ??= init({ module_or_path: fileAt("pintle-web_bg.wasm") }).then(() => pintle);
  started.catch(() => (started = undefined));
  return started;
}
