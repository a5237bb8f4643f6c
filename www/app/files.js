/**
 * Where the files are that scripts ask for. Below the page's folder they have the names they are written under; what the build makes has
 * a hash in its name, so that it never means another file.
 */

/** Filled by the build: the name of each file as it travels. @type {Record<string, string>} */
const NAMES = {};

/** @param {string} name below the page's folder */
export function fileAt(name) {
  return new URL(`../${NAMES[name] ?? name}`, import.meta.url);
}
