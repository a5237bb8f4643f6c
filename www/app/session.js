/**
 * What the person has said so far, and the job made of it. Knows nothing of how it is shown.
 *
 * @import { Core } from "./core.js"
 * @import { Fault, FieldRule, System } from "./contract.d.ts"
 * @import { Told } from "./entry.js"
 * @typedef {{ path: string, faults: Told[] }} LeftOut a part that is begun and not counted, and what it needs
 * @import { ListedOperator } from "./operators/list.js"
 */

import { get, put } from "./document.js";
import { Entry } from "./entry.js";
import { MotorPoints } from "./check/motor-points.js";
import { Obstacles } from "./around/obstacles.js";
import { SiteLists } from "./check/site-lists.js";
import { ASKED, EVERYTHING, FROM_PARTS, LEAD, LEAF_BY, RATINGS } from "./groups.js";
import { TEXTS } from "./handover/items.js";
import { active, optionOf } from "./items.js";
import { jobOf } from "./job.js";
import { Members } from "./members.js";
import { rulePath, uncertainInput, uncertaintyPath } from "./paths.js";
import { Ask } from "./setout/ask.js";

/** An uncertainty as a fraction of the value it is about. */
const UNCERTAINTY = /** @type {const} */ ({ quantity: "percent", least: 0, most: 1, required: false, default: 0.1, example: 0.1, usual: null, unless: null });

/**
 * A choice between words of the contract.
 *
 * @typedef {{ value: string, start: string, assumed: boolean }} Chosen
 */

export class Session {
  /**
   * @param {Core} core
   * @param {any} job the job to start from; a fault in it is reported, never mended in silence
   * @param {ListedOperator[]} operators
   * @param {System} system
   */
  constructor(core, job, operators, system) {
    this.core = core;
    this.base = job;
    this.operators = operators;
    this.system = system;
    /** @type {Map<string, FieldRule>} */
    this.rules = new Map(core.fields().map((/** @type {FieldRule} */ rule) => [rule.path, rule]));
    /** @type {Map<string, Entry>} */
    this.entries = new Map();
    /** @type {Map<string, Chosen>} */
    this.choices = new Map();
    /** The field being typed in: its fault is not told before it is left. @type {string | null} */
    this.held = null;
    /** Fields somebody has been in. @type {Set<string>} */
    this.visited = new Set();
    /** Faults on show; they stay while they are being mended. @type {Set<string>} */
    this.told = new Set();
    /** Marks that were set out, each with its place. @type {Set<string>} */
    this.ticked = new Set();
    /** Texts of the hand-over, empty where nothing is said. */
    this.texts = new Map(TEXTS.map((path) => [path, { value: textOf(get(job, path)), typed: false }]));
    /** What a search for a place may choose from. */
    this.setout = new Ask(core, this.rules, get(job, "setout"));
    this.#start();
    this.members = new Members(this, get(this.base, "leaf.members"));
    this.site = new SiteLists(this, get(this.base, "site"));
    /** The points of the motor's table. */
    this.points = new MotorPoints(this, get(this.base, "motion.motor.curve"));
    /** What stands around. */
    this.around = new Obstacles(this, get(this.base, "obstacles"));
    /** The listed operator in use; null: typed ratings. @type {string | null} */
    this.operatorId = this.#sameRatings()?.id ?? null;
  }

  #start() {
    for (const path of EVERYTHING.paths) {
      const rule = this.rule(path);
      this.entries.set(path, this.entryFor(rule, get(this.base, path) ?? rule.default ?? null));
    }
    for (const choice of EVERYTHING.choices) {
      const start = optionOf(choice, this.base);
      this.choices.set(choice.path, { value: start, start, assumed: true });
    }
    for (const [input, fraction] of Object.entries(this.base?.uncertainty ?? {})) {
      if (this.rules.has(input)) this.uncertainty(input, fraction);
    }
  }

  /** The rule of a number, under the path asked for. @param {string} path @returns {FieldRule} */
  rule(path) {
    if (uncertainInput(path) !== null) return { path, ...UNCERTAINTY };
    const rule = this.rules.get(rulePath(path));
    if (!rule) throw new Error(`the core has no field ${path}`);
    return { ...rule, path };
  }

  /** @param {FieldRule} rule @param {unknown} given what the job to start from has */
  entryFor(rule, given) {
    const entry = new Entry(this.core, rule, typeof given === "number" ? given : null);
    if (given !== null && typeof given !== "number") {
      // A host's object may refuse to be a string.
      entry.typed = { text: typeof given === "object" ? JSON.stringify(given) : String(given), system: this.system };
      entry.unread = "not_a_number";
    }
    return entry;
  }

  /** The listed operator whose ratings the starting job has, if any. */
  #sameRatings() {
    return this.operators.find((operator) => RATINGS.every((path) => (get(this.base, path) ?? null) === (get({ operator }, path) ?? null)));
  }

  /** @param {string} path */
  entry(path) {
    return /** @type {Entry} */ (this.entries.get(path));
  }

  /** @param {string} path */
  choice(path) {
    return /** @type {Chosen} */ (this.choices.get(path));
  }

  /**
   * How sure an input is; ±10 % until somebody says otherwise.
   *
   * @param {string} input
   * @param {unknown} [given] what the job to start from has
   */
  uncertainty(input, given = null) {
    const path = uncertaintyPath(input);
    if (!this.entries.has(path)) this.entries.set(path, this.entryFor(this.rule(path), given));
    return this.entry(path);
  }

  get operator() {
    return this.operators.find((operator) => operator.id === this.operatorId) ?? null;
  }

  /** Whether the leaf's weight and area come from its parts. */
  get byParts() {
    return this.choice(LEAF_BY.path).value === "parts";
  }

  /** What takes part of some items as the choices stand. @param {import("./groups.js").Item[]} items */
  active(items) {
    return active(items, (path) => this.choice(path).value);
  }

  /** Paths of the numbers that take part in the job as it stands: not those of another kind of hinge, nor ratings of a listed operator. */
  activePaths() {
    const lead = LEAD.filter((path) => !(this.byParts && FROM_PARTS.includes(path)));
    const members = this.byParts ? this.members.activePaths() : [];
    return [...lead, ...members, ...(this.operator ? [] : RATINGS), ...this.active(ASKED).paths, ...this.site.activePaths(), ...this.points.activePaths(), ...this.around.activePaths()];
  }

  /** Choices that take part, those of the leaf's parts apart. */
  activeChoices() {
    return this.active([LEAF_BY, ...ASKED]).choices;
  }

  /** @param {System} system */
  setSystem(system) {
    this.system = system;
    for (const entry of this.entries.values()) entry.unitsChanged(system);
    this.setout.setSystem(system);
  }

  /** The job document as it stands. @returns {any} */
  job() {
    return jobOf(this);
  }

  /**
   * Makes the job and computes it.
   *
   * A part that is begun and cannot be read yet is left out, with what it needs; the rest is computed.
   *
   * @returns {{ job: any, calculation: InstanceType<Core["Calculation"]> | null, faults: Told[], leftOut: LeftOut[] }}
   */
  compute() {
    const job = this.job();
    const uncertain = [...this.entries.keys()].filter((path) => uncertainInput(path) !== null);
    const unread = [...this.activePaths(), ...uncertain].filter((path) => this.entry(path).unread);
    const faults = unread.flatMap((path) => this.entry(path).fault() ?? []);
    // A plan does not look at the set-out's block, whose faults are told where it is asked.
    const asked = { ...structuredClone(job), setout: null };
    // A text that cannot be read stands as it is, so that the core leaves its part out. One that the job has no place for stops the whole.
    const placed = unread.filter((path) => !uncertain.includes(path) && !path.startsWith("leaf."));
    for (const path of placed) put(asked, path, this.entry(path).typed?.text ?? "");
    const named = (/** @type {Told[]} */ found) => found.map((fault) => faults.find(({ path }) => path === fault.path) ?? fault);
    try {
      const calculation = new this.core.Calculation(asked);
      if (placed.length === unread.length) {
        const leftOut = calculation.left_out().map((part) => ({ ...part, faults: named(part.faults) }));
        return { job, calculation, faults: leftOut.flatMap((part) => part.faults), leftOut };
      }
      calculation.free();
      return { job, calculation: null, faults, leftOut: [] };
    } catch (error) {
      const errors = /** @type {{ errors?: Fault[] }} */ (error).errors;
      if (!Array.isArray(errors)) throw error;
      const others = errors.filter(({ path }) => !unread.includes(path));
      const rest = this.byParts ? others.map((fault) => ({ ...fault, path: this.members.placed(fault.path) })) : others;
      return { job, calculation: null, faults: [...faults, ...rest], leftOut: [] };
    }
  }

  /**
   * The faults that may be told now: nothing new before the field is left, and no field nobody has come to yet.
   *
   * @param {Told[]} faults
   */
  tellable(faults) {
    const now = new Set(faults.map(nameOf));
    for (const name of this.told) if (!now.has(name)) this.told.delete(name);
    return faults.filter((fault) => {
      if (this.told.has(nameOf(fault))) return true;
      // While somebody types, anything new may be half a number; a field nobody has come to yet is no mistake.
      const waits = this.held !== null || (fault.code === "missing" && !this.visited.has(fault.path));
      if (!waits) this.told.add(nameOf(fault));
      return !waits;
    });
  }
}

/** A text of the starting job; what is none stays for the core to refuse. @param {unknown} given */
function textOf(given) {
  return typeof given === "string" ? given : "";
}

/** @param {Told} fault */
function nameOf(fault) {
  return `${fault.path} ${fault.code}`;
}
