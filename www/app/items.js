/**
 * Walking over what is asked: everything there is, or what takes part as the choices stand.
 *
 * @import { Choice, Item, When } from "./groups.js"
 */

import { get } from "./document.js";

/** @param {Item} item @returns {item is When} */
export function isWhen(item) {
  return typeof item === "object" && "when" in item;
}

/**
 * Every number and every choice, once each however often it is named.
 *
 * @param {Item[]} items
 * @returns {{ paths: string[], choices: Choice[] }}
 */
export function everything(items) {
  return walk(items, (choice) => Object.values(choice.of ?? {}).flat(), () => true);
}

/**
 * The numbers and choices that take part.
 *
 * @param {Item[]} items
 * @param {(path: string) => string} chosen the option a choice has
 */
export function active(items, chosen) {
  return walk(items, (choice) => choice.of?.[chosen(choice.path)] ?? [], ({ when, is }) => chosen(when) === is);
}

/**
 * @param {Item[]} items
 * @param {(choice: Choice) => Item[]} below
 * @param {(when: When) => boolean} stands
 */
function walk(items, below, stands) {
  /** @type {Set<string>} */
  const paths = new Set();
  /** @type {Map<string, Choice>} */
  const choices = new Map();
  /** @param {Item[]} list */
  function visit(list) {
    for (const item of list) {
      if (typeof item === "string") paths.add(item);
      else if (isWhen(item)) visit(stands(item) ? item.items : []);
      else {
        choices.set(item.path, item);
        visit(below(item));
      }
    }
  }
  visit(items);
  return { paths: [...paths], choices: [...choices.values()] };
}

/**
 * What an option puts into the job, by path.
 *
 * @param {Choice} choice
 * @param {string} option
 * @returns {Record<string, unknown>}
 */
export function written(choice, option) {
  return choice.writes?.[option] ?? { [choice.path]: option };
}

/** Paths of the job that a choice may write. @param {Choice} choice */
export function writable(choice) {
  const words = choice.options.some((option) => !choice.writes?.[option]) ? [choice.path] : [];
  return [...words, ...Object.values(choice.writes ?? {}).flatMap(Object.keys)];
}

/**
 * The option a job has. A word that is no option stays: the core says what is wrong with it.
 *
 * @param {Choice} choice
 * @param {any} job
 */
export function optionOf(choice, job) {
  if (choice.signs) {
    const readable = choice.readable?.(job) ?? true;
    const signed = Object.entries(readable ? choice.signs : {}).find(([, paths]) => paths.some((path) => (get(job, path) ?? null) !== null));
    return signed ? signed[0] : choice.usual;
  }
  const stated = get(job, choice.path) ?? null;
  if (stated === null) return choice.usual;
  const written = choice.options.find((option) => choice.writes?.[option]?.[choice.path] === stated);
  return written ?? (typeof stated === "string" ? stated : JSON.stringify(stated));
}
