/**
 * What is fixed and what is free where an operator is still to be stood: the job's `setout` block as the person says it.
 * It lives beside the job's own numbers, so that a fault in it never takes the verdict away.
 *
 * @import { Core } from "../core.js"
 * @import { FieldRule, System } from "../contract.d.ts"
 * @import { Told } from "../entry.js"
 * @import { Chosen } from "../session.js"
 *
 * What was said, as plain data: texts as typed, and choices.
 * @typedef {{ typed: Record<string, import("../entry.js").Typed>, choices: Record<string, string> }} AskRecord
 */

import { get, put } from "../document.js";
import { Entry } from "../entry.js";
import { CHOICES, LIMITS, OF_AIM, RANGES, STEPS, USUAL, USUAL_AROUND } from "./usual.js";

/** Path of a rule: without the places in lists. @param {string} path */
export function rulePath(path) {
  return path.replace(/\.\d+(?=\.|$)/g, "");
}

export class Ask {
  /**
   * @param {Core} core
   * @param {Map<string, FieldRule>} rules
   * @param {any} given the `setout` block of the job to start from
   */
  constructor(core, rules, given) {
    this.core = core;
    this.rules = rules;
    this.given = given ?? null;
    /** Numbers by path; what a path of the other kind of aim has stays. @type {Map<string, Entry>} */
    this.entries = new Map();
    /** @type {Map<string, Chosen>} */
    this.choices = new Map();
    this.#start();
  }

  #start() {
    const start = this.given ?? USUAL;
    for (const name of RANGES) for (const end of [0, 1]) this.#enter(`setout.${name}.${end}`, start[name]?.[end]);
    for (const name of [...LIMITS, ...Object.values(OF_AIM).flat()]) this.#enter(`setout.${name}`, get(start, name));
    for (const [name, options] of Object.entries(CHOICES)) {
      const own = name === "step" ? stepName(start.step_m) : name === "proof" && start.tape_proof ? "yes" : start[name];
      const value = own ?? options[0];
      this.choices.set(name, { value, start: value, assumed: true });
    }
  }

  /** @param {string} path @param {unknown} value */
  #enter(path, value) {
    const rule = this.rules.get(rulePath(path));
    if (!rule) throw new Error(`the core has no field ${rulePath(path)}`);
    const known = value ?? rule.default;
    this.entries.set(path, new Entry(this.core, { ...rule, path }, typeof known === "number" ? known : null));
  }

  /**
   * What is assumed to stand around where nobody has said anything of it, so that no operator is found in the gate's own post.
   *
   * @param {any} job
   */
  around(job) {
    return this.given === null && !Array.isArray(job.obstacles) ? { obstacles: USUAL_AROUND } : {};
  }

  /** Whether the block is the person's or the job's, and not only the page's. */
  get said() {
    const changed = [...this.choices.values()].some((choice) => !choice.assumed);
    return this.given !== null || changed || [...this.entries.values()].some((entry) => !entry.assumed);
  }

  /** @param {string} name */
  choice(name) {
    return /** @type {Chosen} */ (this.choices.get(name));
  }

  /** Paths that take part as the aim stands. */
  activePaths() {
    const others = Object.entries(OF_AIM).filter(([aim]) => aim !== this.choice("aim").value);
    const resting = new Set(others.flatMap(([, names]) => names.map((name) => `setout.${name}`)));
    return [...this.entries.keys()].filter((path) => !resting.has(path));
  }

  /**
   * The block. What cannot be read is stood in for by an example, so that the core can look at all the rest.
   *
   * @returns {any}
   */
  block() {
    const block = { ...structuredClone(this.given ?? {}) };
    for (const name of RANGES) put(block, name, []);
    if (this.choice("aim").value !== "nearest_place") block.place = null;
    for (const path of this.activePaths()) {
      const { rule, value, unread } = /** @type {Entry} */ (this.entries.get(path));
      put(block, path.replace("setout.", ""), unread ? rule.example : value);
    }
    // No straightness asked for is none; one end alone leaves the other where it is no limit.
    const { least, most } = /** @type {FieldRule} */ (this.rules.get("setout.straightness"));
    const [from, to] = block.straightness;
    block.straightness = from === null && to === null ? null : [from ?? least, to ?? most];
    const step = this.choice("step").value;
    block.step_m = step in STEPS ? STEPS[step] : this.given.step_m;
    block.tape_proof = this.choice("proof").value === "yes" ? true : null;
    block.elbow = this.choice("elbow").value;
    block.aim = this.choice("aim").value;
    return block;
  }

  /** Texts that are no numbers. @returns {Told[]} */
  unread() {
    return this.activePaths().flatMap((path) => this.entries.get(path)?.fault() ?? []);
  }

  /** @param {System} system */
  setSystem(system) {
    for (const entry of this.entries.values()) entry.unitsChanged(system);
  }

  /** @returns {AskRecord} */
  record() {
    const typed = [...this.entries].filter(([, entry]) => entry.typed).map(([path, entry]) => [path, entry.typed]);
    const choices = [...this.choices].filter(([, choice]) => !choice.assumed).map(([name, choice]) => [name, choice.value]);
    return { typed: Object.fromEntries(typed), choices: Object.fromEntries(choices) };
  }

  /** @param {AskRecord | undefined} record */
  restore(record) {
    if (!record) return;
    for (const [path, { text, system, meant }] of Object.entries(record.typed ?? {})) this.entries.get(path)?.type(text, system, meant);
    for (const [name, value] of Object.entries(record.choices ?? {})) {
      const known = CHOICES[name]?.includes(value);
      if (known) Object.assign(this.choice(name), { value, assumed: false });
    }
  }
}

/** The option a step belongs to; one of the job's own is an option by itself. @param {number | null | undefined} step_m */
function stepName(step_m) {
  const known = Object.entries(STEPS).find(([, step]) => step === (step_m ?? null));
  return known ? known[0] : "own";
}
