/**
 * What every part of the element works with: the core, the words, what was said, and the last result.
 *
 * @import { Core } from "./core.js"
 * @import { Plan, Quantity, View } from "./contract.d.ts"
 * @import { Told } from "./entry.js"
 * @import { Choice } from "./groups.js"
 * @import { OperatorList } from "./operators/list.js"
 * @import { Session } from "./session.js"
 * @import { Strings } from "./strings.js"
 *
 * @typedef {{ job: any, plan: Plan, calculation: InstanceType<Core["Calculation"]> }} Result
 *
 * A piece of the page. `update` brings it in step with the sheet; it is called after every change and touches only what differs.
 * @typedef {{ root: HTMLElement, update: () => void }} Part
 */

import { Cursor } from "./cursor.js";
import { written } from "./items.js";
import { meansNumber, pointNumber, memberIndex, obstacleSide, rangeEnd, uncertainInput, wordsKey } from "./paths.js";

/** What the drawings show as usual. @type {Pick<View, "zones" | "marks" | "part" | "overrun" | "run">} */
export const SHOWN = Object.freeze({ zones: false, marks: false, part: "arm", overrun: false, run: "opening" });

export class Sheet {
  /**
   * @param {Core} core
   * @param {Strings} strings
   * @param {Session} session
   * @param {OperatorList} list
   * @param {() => void} changed to be called when the person has changed something
   */
  constructor(core, strings, session, list, changed) {
    this.core = core;
    this.strings = strings;
    this.session = session;
    this.list = list;
    this.changed = changed;
    /** How it is laid out: `field`, `projector`, else as usual. */
    this.layout = "";
    this.cursor = new Cursor();
    /** What the drawings show beside the usual, and the run that is followed through time. */
    this.showing = { ...SHOWN };
    /** What went wrong at the start: string keys, and how it is tried again where it can be. @type {{ key: string, retry?: () => unknown }[]} */
    this.trouble = [];
    /** The last valid result. @type {Result | null} */
    this.result = null;
    /** What is known of the list's operators on the job as it stands; null until they were ranked. @type {import("./operators/look.js").Ranked | null} */
    this.ranked = null;
    /** Whether `result` is older than what is typed. */
    this.stale = false;
    /** Everything wrong with what is typed. @type {Told[]} */
    this.faults = [];
    /** Parts that are begun and not counted, and what they need. @type {import("./session.js").LeftOut[]} */
    this.leftOut = [];
    /** The part of it that may be told now. @type {Told[]} */
    this.told = [];
    /** Planned values of what is measured, of the last result, once somebody asks. @type {Map<string, number | null> | null} */
    this.built = null;
  }

  /**
   * @param {string} key
   * @param {Record<string, string | number>} [values]
   */
  say(key, values) {
    return this.strings.say(key, values);
  }

  /**
   * A value with its unit, in the units the person reads.
   *
   * @param {number} value in the document's unit
   * @param {Quantity} quantity
   */
  show(value, quantity) {
    return unbroken(this.strings.numbers(this.core.show(value, quantity, this.session.system)));
  }

  /**
   * One end of an allowed range, or by how much one is missed, rounded so that the number shown would do.
   *
   * @param {number} value
   * @param {Quantity} quantity
   * @param {"up" | "down"} rounding
   */
  limit(value, quantity, rounding) {
    return this.strings.numbers(this.core.show_limit(value, quantity, this.session.system, rounding));
  }

  /**
   * A length as a tape has it: millimetres, or feet, inches and a fraction.
   *
   * @param {number} value
   */
  tape(value) {
    return this.session.system === "us" ? unbroken(this.core.feet_inches(value, 0)) : this.show(value, "short_length");
  }

  /**
   * A length as it is marked: whole millimetres, or feet, inches and sixteenths, on the screen as on paper.
   *
   * @param {number} value
   */
  mark(value) {
    return unbroken(this.core.mark(value, this.session.system));
  }

  /**
   * The same without its sign, and the side of its line it lies on.
   *
   * @param {number} value
   */
  markApart(value) {
    const { text, side } = this.core.mark_apart(value, this.session.system);
    return { text: unbroken(text), side };
  }

  /**
   * A typed value as it was understood, in the units shown and in the others.
   *
   * @param {number} value
   * @param {Quantity} quantity
   */
  understood(value, quantity) {
    const both = /** @type {const} */ (["metric", "us"]).map((system) => this.core.show(value, quantity, system)).map((text) => this.strings.numbers(text));
    const [here, there] = this.session.system === "us" ? both.reverse() : both;
    return here === there ? here : this.say("form.both", { here, there });
  }

  /** How much larger drawings are lettered and lined. */
  get enlarged() {
    return { field: 1.25, projector: 2 }[this.layout] ?? 1;
  }

  /** @param {Quantity} quantity */
  unit(quantity) {
    return this.core.unit(quantity, this.session.system);
  }

  /**
   * Values that come with a code, ready for its sentence.
   *
   * @param {{ name: string, value: number, quantity: Quantity }[] | undefined} values
   */
  shown(values) {
    const shown = (/** @type {number} */ value, /** @type {Quantity} */ quantity) => (quantity === "short_length" ? this.tape(value) : this.show(value, quantity));
    return Object.fromEntries((values ?? []).map(({ name, value, quantity }) => [name, shown(value, quantity)]));
  }

  /** What a field is called; where several have one name, with what it belongs to. @param {string} path @returns {string} */
  fieldName(path) {
    const input = uncertainInput(path);
    if (input !== null) return this.say("sensitivity.field", { field: this.fieldName(input) });
    const words = wordsKey(path);
    const key = [`fields.${words}.label`, `choices.${words}.label`].find((known) => this.strings.has(known));
    if (!key) return path;
    const end = rangeEnd(path);
    const field = end ? this.say(`setout.ends.${end}`, { field: this.say(key) }) : this.say(key);
    const line = this.#builtFrom(path);
    if (line) return this.say(`form.lines.${line}`, { field });
    const index = memberIndex(path);
    if (index !== null) return this.say("members.field", { number: index + 1, field });
    const side = obstacleSide(path);
    if (side) return this.say(`check.lists.obstacles.${side.end}`, { number: side.number, field });
    const number = meansNumber(path);
    if (number) return this.say("check.lists.means.field", { number, field });
    const point = pointNumber(path);
    if (point) return this.say("check.lists.points.field", { number: point, field });
    return path.startsWith("storm.") ? this.say("form.storm_field", { field }) : field;
  }

  /** The line a built dimension is measured from; null where it is a length of its own. @param {string} path */
  #builtFrom(path) {
    if (/^as_built\.(shaft_x_m|bracket_u_m)$/.test(path)) return "hinge_line";
    return /^as_built\.(shaft_y_m|bracket_v_m)$/.test(path) ? this.session.choice("as_built.from").value : null;
  }

  /**
   * What a built dimension was planned as, from the line it is measured from; null where there is no plan now.
   *
   * @param {string} path
   */
  planned(path) {
    if (!this.result || this.stale || !path.startsWith("as_built.")) return null;
    this.built ??= new Map(this.result.calculation.commissioning().checks.map((check) => [check.path, check.planned]));
    return this.built.get(path) ?? null;
  }

  /** Whether a number is the page's or the core's, not the person's. @param {string} path */
  isAssumed(path) {
    // Nobody assumes what was measured.
    if (/^(record|settings|as_built)\./.test(path)) return false;
    const { assumed, value } = this.session.entry(path);
    return assumed && (value !== null || (this.result?.plan.assumed.includes(path) ?? false));
  }

  /** Whether a word of the job is the page's. A choice of a way to say something assumes nothing. @param {Choice} choice */
  isChoiceAssumed(choice) {
    const { value, assumed } = this.session.choice(choice.path);
    return assumed && !/^(record|as_built)\./.test(choice.path) && Object.keys(written(choice, value)).length > 0;
  }

  /**
   * How many numbers and choices are the person's, and how many still are the page's.
   *
   * @param {(path: string) => boolean} [belongs] which of them are counted; all where nothing is said
   */
  counts(belongs = () => true) {
    const { session } = this;
    const numbers = session.activePaths().filter((path) => belongs(path) && (session.entry(path).value !== null || this.isAssumed(path)));
    const all = [...session.activeChoices(), ...(session.byParts ? session.members.activeChoices() : [])];
    const choices = all.filter(({ path }) => belongs(path));
    const assumed = numbers.filter((path) => this.isAssumed(path)).length + choices.filter((choice) => this.isChoiceAssumed(choice)).length;
    const said = choices.filter(({ path }) => !session.choice(path).assumed).length;
    return { assumed, measured: numbers.filter((path) => !this.isAssumed(path)).length + said };
  }

  /** Computes what is typed, and keeps the last valid result where that fails. */
  compute() {
    const { job, calculation, faults, leftOut } = this.session.compute();
    this.faults = faults;
    this.leftOut = leftOut;
    // What a part that was only begun still lacks is no mistake: it is said beside the verdict.
    const lacking = new Set(leftOut.flatMap((part) => part.faults).filter(({ code }) => code === "missing"));
    this.told = this.session.tellable(faults.filter((fault) => !lacking.has(fault)));
    this.stale = calculation === null;
    this.built = null;
    // A leaf of no part weighs nothing that could be judged: what was worked out before belongs to another leaf.
    if (faults.some(({ code }) => code === "no_members")) this.close();
    if (!calculation) return;
    this.result?.calculation.free();
    const plan = calculation.plan();
    this.result = { job, plan, calculation };
    // What was ranked was so on another job, until whoever ranks says otherwise.
    this.ranked = null;
    this.cursor.rest(job.swing.open_deg, plan.peak.leaf_deg);
  }

  /** Gives back the core's memory. */
  close() {
    this.result?.calculation.free();
    this.result = null;
  }
}

/** Inches and their fraction stay on one line. @param {string} text */
function unbroken(text) {
  return text.replaceAll(" ", "\u00a0");
}
