/**
 * Where an element's documents come from: an address or the JSON itself, in an attribute or a property.
 */

import { fileAt } from "./files.js";

/** The job to start from where the host names none. */
export const STARTING_JOB = fileAt("data/starting-job.json").href;

/**
 * @param {unknown} given an object, inline JSON, or an address relative to the document; or a promise of one of them
 * @returns {Promise<any>} the document; rejects when it cannot be had
 */
export async function readSource(given) {
  const source = await given;
  if (typeof source !== "string") return source;
  if (source.trimStart().startsWith("{")) return JSON.parse(source);
  const response = await fetch(new URL(source, document.baseURI));
  if (!response.ok) throw new Error(`${source}: HTTP ${response.status}`);
  return response.json();
}

/**
 * The language of the nearest ancestor that states one, through shadow trees.
 *
 * @param {Element} element
 * @returns {string}
 */
export function languageOf(element) {
  for (let node = /** @type {Element | null} */ (element); node; ) {
    const stated = node.closest("[lang]");
    if (stated) return stated.getAttribute("lang") ?? "";
    const root = node.getRootNode();
    node = root instanceof ShadowRoot ? root.host : null;
  }
  return "";
}
