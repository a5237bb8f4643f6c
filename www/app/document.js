/**
 * Reading and writing a document by dotted path, as the core's faults and field rules name places.
 */

/**
 * @param {any} document
 * @param {string} path
 * @returns {any} undefined where there is nothing
 */
export function get(document, path) {
  let node = document;
  for (const key of path.split(".")) node = node === null || typeof node !== "object" ? undefined : node[key];
  return node;
}

/**
 * Sets a value, making the objects on the way.
 *
 * @param {any} document
 * @param {string} path
 * @param {unknown} value
 */
export function put(document, path, value) {
  const keys = path.split(".");
  const last = /** @type {string} */ (keys.pop());
  let node = document;
  for (const key of keys) {
    if (node[key] === null || typeof node[key] !== "object") node[key] = {};
    node = node[key];
  }
  node[last] = value;
}
