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
 * Sets a value, making the objects on the way, and lists where a number stands.
 *
 * @param {any} document
 * @param {string} path
 * @param {unknown} value
 */
export function put(document, path, value) {
  const keys = path.split(".");
  const last = /** @type {string} */ (keys.pop());
  let node = document;
  for (const [depth, key] of keys.entries()) {
    if (node[key] === null || typeof node[key] !== "object") node[key] = /^\d+$/.test(keys[depth + 1] ?? last) ? [] : {};
    node = node[key];
  }
  node[last] = value;
}

/**
 * Takes a value away, and the objects that are empty without it.
 *
 * @param {any} document
 * @param {string} path
 */
export function remove(document, path) {
  const keys = path.split(".");
  const way = keys.map((_, depth) => (depth === 0 ? document : get(document, keys.slice(0, depth).join("."))));
  for (let depth = keys.length - 1; depth >= 0; depth -= 1) {
    const node = way[depth];
    if (node === null || typeof node !== "object" || !(keys[depth] in node)) return;
    delete node[keys[depth]];
    if (Object.keys(node).length > 0) return;
  }
}
