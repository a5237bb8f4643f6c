/**
 * Sentences for people. They live in `strings/<language>.json`; code only names them by a dotted key.
 */

import { fileAt } from "./files.js";

/** Languages with a table of their own; the first is the one to fall back to. */
export const LANGUAGES = ["en", "es"];

/** One language's table. */
export class Strings {
  /**
   * @param {Record<string, any>} table
   * @param {string} tag the language as it was asked for: its region writes numbers its own way
   */
  constructor(table, tag) {
    const language = nearestLanguage(tag);
    this.tag = tag;
    this.language = language;
    this.decimal = decimalMark(tag) ?? decimalMark(language) ?? ".";
    this.table = { ...table, drawing: { ...table.drawing, decimal: this.decimal } };
    this.plural = new Intl.PluralRules(language);
    // Slow to make, and asked for with every keystroke.
    this.joined = new Intl.ListFormat(language, { type: "conjunction" });
  }

  /**
   * Whatever stands at a dotted key; undefined where nothing does.
   *
   * @param {string} key
   * @returns {any}
   */
  at(key) {
    /** @type {any} */
    let node = this.table;
    for (const part of key.split(".")) node = node?.[part];
    return node;
  }

  /** @param {string} key */
  has(key) {
    return this.at(key) !== undefined;
  }

  /**
   * The sentence at `key`, with `{name}` replaced by `values.name`, `{decimal}` by the decimal mark. A key with plural forms is chosen by `values.count`.
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
    return text.replace(/\{(\w+)\}/g, (whole, name) => (name in values ? String(values[name]) : name === "decimal" ? this.decimal : whole));
  }

  /** A text of the core with its numbers as the language writes them. @param {string} text */
  numbers(text) {
    return text.replace(/(\d)\.(?=\d)/g, `$1${this.decimal}`);
  }

  /**
   * A list as the language joins it: "a, b and c".
   *
   * @param {string[]} items
   */
  list(items) {
    return this.joined.format(items);
  }
}

/** @param {string} tag */
function decimalMark(tag) {
  try {
    return new Intl.NumberFormat(tag).formatToParts(0.5).find(({ type }) => type === "decimal")?.value;
  } catch {
    // No tag at all, such as "es_MX".
    return undefined;
  }
}

/** The tag where its language has a table, else that of the language to fall back to. @param {string | null | undefined} wanted */
export function nearestTag(wanted) {
  return wanted && LANGUAGES.includes(wanted.toLowerCase().split(/[-_]/)[0]) ? wanted : LANGUAGES[0];
}

/**
 * The nearest language that has a table.
 *
 * @param {string | null | undefined} wanted a BCP 47 tag, such as `es-MX`
 */
export function nearestLanguage(wanted) {
  return nearestTag(wanted).toLowerCase().split(/[-_]/)[0];
}

/** @type {Map<string, Promise<Record<string, any>>>} */
const loaded = new Map();

/**
 * Loads a language's table once. A failure is forgotten, so that a later try may succeed.
 *
 * @param {string | null | undefined} wanted
 * @returns {Promise<Strings>}
 */
export async function loadStrings(wanted) {
  const language = nearestLanguage(wanted);
  let table = loaded.get(language);
  if (!table) {
    table = fetchTable(language);
    table.catch(() => loaded.delete(language));
    loaded.set(language, table);
  }
  return new Strings(await table, nearestTag(wanted));
}

/** @param {string} language */
async function fetchTable(language) {
  const response = await fetch(fileAt(`strings/${language}.json`));
  if (!response.ok) throw new Error(`strings/${language}.json: HTTP ${response.status}`);
  return response.json();
}
