/** What the linter is there to see: a comparison that converts, a variable nobody reads, a fault of types that is silenced. */

/** @param {string} text */
export function isOne(text) {
  const unread = text.length;
  // @ts-ignore
  return text == 1;
}
