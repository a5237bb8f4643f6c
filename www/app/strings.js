/**
 * Sentences for people. They live in `strings/<language>.json`; code only names them by a dotted key.
 */

/** Languages with a table of their own; the first is the one to fall back to. */
export const LANGUAGES = ["en", "es"];

/** One language's table. */
export class Strings {
  /**
   * @param {Record<string, any>} table
   * @param {string} language
   */
  constructor(table, language) {
    this.table = table;
    this.language = language;
    this.plural = new Intl.PluralRules(language);
  }

  /**
   * Whatever stands at a dotted key; undefined where nothing does.
   *
   * @param {string} key
   * @returns {any}
   */
  at(key) {
    let node = this.table;
    for (const part of key.split(".")) node = node?.[part];
    return node;
  }

  /** @param {string} key */
  has(key) {
    return this.at(key) !== undefined;
  }

  /**
   * The sentence at `key`, with `{name}` replaced by `values.name`. A key with plural forms is chosen by `values.count`.
   * A missing key shows as itself: a gap that is seen is mended.
   *
   * @param {string} key
   * @param {Record<string, string | number>} [values]
   * @returns {string}
   */
  say(key, values = {}) {
    let text = this.at(key);
    if (typeof text === "object" && text !== null) text = text[this.plural.select(Number(values.count))] ?? text.other;
    if (typeof text !== "string") return key;
    return text.replace(/\{(\w+)\}/g, (whole, name) => (name in values ? String(values[name]) : whole));
  }

  /**
   * A list as the language joins it: "a, b and c".
   *
   * @param {string[]} items
   */
  list(items) {
    return new Intl.ListFormat(this.language, { type: "conjunction" }).format(items);
  }
}

/**
 * The nearest language that has a table.
 *
 * @param {string | null | undefined} wanted a BCP 47 tag, such as `es-MX`
 */
export function nearestLanguage(wanted) {
  const primary = (wanted ?? "").toLowerCase().split("-")[0];
  return LANGUAGES.includes(primary) ? primary : LANGUAGES[0];
}

/** @type {Map<string, Promise<Strings>>} */
const loaded = new Map();

/**
 * Loads a language's table once. A failure is forgotten, so that a later try may succeed.
 *
 * @param {string | null | undefined} wanted
 * @returns {Promise<Strings>}
 */
export function loadStrings(wanted) {
  const language = nearestLanguage(wanted);
  let table = loaded.get(language);
  if (!table) {
    table = fetchTable(language);
    table.catch(() => loaded.delete(language));
    loaded.set(language, table);
  }
  return table;
}

/** @param {string} language */
async function fetchTable(language) {
  const response = await fetch(new URL(`../strings/${language}.json`, import.meta.url));
  if (!response.ok) throw new Error(`strings/${language}.json: HTTP ${response.status}`);
  return new Strings(await response.json(), language);
}
