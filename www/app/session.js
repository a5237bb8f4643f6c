/**
 * What the person has said so far, and the job made of it. Knows nothing of how it is shown.
 *
 * @import { Core } from "./core.js"
 * @import { Fault, FieldRule, Job, Operator, Plan, System } from "./contract.d.ts"
 * @import { ListedOperator } from "./operators.js"
 */

import { get, put } from "./document.js";
import { Entry } from "./entry.js";
import { CHOICE_DEFAULTS, GROUPS, LEAD, RATINGS } from "./groups.js";
import { Ask } from "./setout/ask.js";

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
    /** What a search for a place may choose from. */
    this.setout = new Ask(core, this.rules, get(job, "setout"));
    this.#start();
    /** The listed operator in use; null: typed ratings. @type {string | null} */
    this.operatorId = this.#sameRatings()?.id ?? null;
  }

  #start() {
    const asked = [...LEAD, ...RATINGS, ...GROUPS.flatMap(pathsOf)];
    for (const path of asked) {
      const rule = this.rules.get(path);
      if (!rule) throw new Error(`the core has no field ${path}`);
      const given = get(this.base, path) ?? rule.default ?? null;
      const entry = new Entry(this.core, rule, typeof given === "number" ? given : null);
      if (given !== null && typeof given !== "number") {
        entry.typed = { text: String(given), system: this.system };
        entry.unread = "not_a_number";
      }
      this.entries.set(path, entry);
    }
    for (const [path, usual] of Object.entries(CHOICE_DEFAULTS)) {
      const start = get(this.base, path) ?? usual;
      this.choices.set(path, { value: start, start, assumed: true });
    }
  }

  /** The listed operator whose ratings the starting job has, if any. */
  #sameRatings() {
    return this.operators.find((operator) => RATINGS.every((path) => get(this.base, path) === get({ operator }, path)));
  }

  /** @param {string} path */
  entry(path) {
    return /** @type {Entry} */ (this.entries.get(path));
  }

  /** @param {string} path */
  choice(path) {
    return /** @type {Chosen} */ (this.choices.get(path));
  }

  get operator() {
    return this.operators.find((operator) => operator.id === this.operatorId) ?? null;
  }

  /** Paths of the numbers that take part in the job as it stands: not those of the other kind of hinge, nor ratings of a listed operator. */
  activePaths() {
    const groups = GROUPS.flatMap((group) => activePathsOf(group, this));
    return [...LEAD, ...(this.operator ? [] : RATINGS), ...groups];
  }

  /** @param {System} system */
  setSystem(system) {
    this.system = system;
    for (const entry of this.entries.values()) entry.unitsChanged(system);
    this.setout.setSystem(system);
  }

  /**
   * The job document. A text that cannot be read is stood in for by an example, so that the core can look at all the rest; such a
   * job is never shown as a result.
   *
   * @returns {any}
   */
  job() {
    const job = structuredClone(this.base);
    job.hinges = { kind: this.choice("hinges.kind").value };
    for (const [path, choice] of this.choices) put(job, path, choice.value);
    for (const path of this.activePaths()) {
      const { rule, value, unread } = this.entry(path);
      put(job, path, unread ? (rule.example ?? rule.least) : value);
    }
    if (this.operator) job.operator = this.#listed(this.operator, job.operator.arm_efficiency);
    if (this.setout.said) job.setout = this.setout.block();
    return job;
  }

  /**
   * Makes the job and computes it.
   *
   * @returns {{ job: any, calculation: InstanceType<Core["Calculation"]> | null, faults: Fault[] }}
   */
  compute() {
    const job = this.job();
    const unread = this.activePaths().filter((path) => this.entry(path).unread).map((path) => this.#unreadFault(path));
    try {
      // A plan does not look at the set-out's block, whose faults are told where it is asked.
      const calculation = new this.core.Calculation({ ...job, setout: null });
      if (unread.length === 0) return { job, calculation, faults: [] };
      calculation.free();
      return { job, calculation: null, faults: unread };
    } catch (error) {
      const errors = /** @type {{ errors?: Fault[] }} */ (error).errors;
      if (!Array.isArray(errors)) throw error;
      return { job, calculation: null, faults: [...unread, ...errors] };
    }
  }

  /**
   * The job's operator when one of the list is taken. A list may state the efficiency of its own arm; what the person types wins.
   *
   * @param {ListedOperator} operator
   * @param {number | null} efficiency
   */
  #listed({ rated_torque_n_m, peak_torque_n_m = undefined, shaft_speed_deg_s = undefined, arm_efficiency: own = undefined }, efficiency) {
    const assumed = this.entry("operator.arm_efficiency").assumed;
    return {
      rated_torque_n_m,
      peak_torque_n_m: peak_torque_n_m ?? null,
      shaft_speed_deg_s: shaft_speed_deg_s ?? null,
      arm_efficiency: assumed ? (own ?? efficiency) : efficiency,
    };
  }

  /** @param {string} path @returns {Fault} */
  #unreadFault(path) {
    const { rule, typed, unread } = this.entry(path);
    const allowed = { kind: "range", least: rule.least, most: rule.most, quantity: rule.quantity };
    return /** @type {any} */ ({ path, code: unread, found: typed?.text ?? "", allowed, example: rule.example ?? null, values: [] });
  }

  /**
   * The same job under another operator of the list.
   *
   * @param {any} job
   * @param {ListedOperator} operator
   * @returns {Plan["rating"] | null} null where the job is invalid with it
   */
  rate(job, operator) {
    const efficiency = this.entry("operator.arm_efficiency").value;
    const other = { ...job, setout: null, samples: 2, operator: this.#listed(operator, efficiency) };
    try {
      const calculation = new this.core.Calculation(other);
      const { rating } = calculation.plan();
      calculation.free();
      return rating;
    } catch (error) {
      if (!Array.isArray(/** @type {{ errors?: Fault[] }} */ (error).errors)) throw error;
      return null;
    }
  }

  /**
   * The faults that may be told now: nothing new before the field is left, and no field nobody has come to yet.
   *
   * @param {Fault[]} faults
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

/** @param {Fault} fault */
function nameOf(fault) {
  return `${fault.path} ${fault.code}`;
}

/** @param {import("./groups.js").Group} group */
function pathsOf(group) {
  return [...group.fields, ...Object.values(group.choice?.fields ?? {}).flat()];
}

/**
 * @param {import("./groups.js").Group} group
 * @param {Session} session
 */
export function activePathsOf(group, session) {
  const own = group.choice?.fields?.[session.choice(group.choice.path).value] ?? [];
  return [...own, ...group.fields];
}
