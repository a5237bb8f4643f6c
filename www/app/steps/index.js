/**
 * The steps of the job, in the order of the work. The shell knows a step by its line here and by what its module makes; a new step is a line
 * and a module.
 *
 * @import { Subject } from "../contract.d.ts"
 * @import { Part, Sheet } from "../sheet.js"
 * @import { Stage } from "../shell/stage.js"
 *
 * What a step's module makes: its questions and what comes of them. It is brought in step with the sheet only while it is in view.
 * @typedef {Part & { recolour?: () => void }} StepView
 * @typedef {{ sheet: Sheet, signal: AbortSignal, stage: Stage }} StepTools
 * @typedef {(tools: StepTools) => StepView} CreateStep
 *
 * @typedef {object} Step
 * @property {string} name
 * @property {string[]} blocks blocks of the job that are asked for here, and nowhere else
 * @property {Subject[]} subjects what is judged here
 * @property {("plan_view" | "curve" | "time" | "map")[]} drawings what is looked at here, the first one where there is room for one
 * @property {boolean} [works] whether it leads to work on the gate
 * @property {() => Promise<{ create: CreateStep }>} load
 */

import * as survey from "./survey.js";

/** @type {Step[]} */
export const STEPS = [
  {
    name: "survey",
    blocks: ["schema", "title", "hand", "leaf", "arm_half_width_m", "hinges", "lean", "wind", "swing", "ground", "drag", "ice", "obstacles"],
    subjects: [],
    drawings: ["plan_view", "curve"],
    // It is the first to be seen.
    load: () => Promise.resolve(survey),
  },
  { name: "operator", blocks: ["operator", "required_reserve", "uncertainty"], subjects: ["torque"], drawings: ["curve", "plan_view"], load: () => import("./operator.js") },
  { name: "place", blocks: ["arm", "setout", "tape"], subjects: ["arm", "clearances", "tape"], drawings: ["map", "plan_view"], load: () => import("./place.js") },
  { name: "mark_out", blocks: ["marks", "as_built"], subjects: ["as_built"], drawings: ["plan_view"], works: true, load: () => import("./mark-out.js") },
  { name: "movement", blocks: ["motion"], subjects: ["motion"], drawings: ["plan_view", "time"], works: true, load: () => import("./movement.js") },
  {
    name: "protection",
    blocks: ["site", "contact", "breakaway", "storm", "holding"],
    subjects: ["breakaway", "storm", "people"],
    drawings: ["plan_view"],
    works: true,
    load: () => import("./protection.js"),
  },
  { name: "hand_over", blocks: ["record", "settings"], subjects: ["record"], drawings: [], works: true, load: () => import("./hand-over.js") },
];

/** The step of a name; the first one where there is none of it. @param {string | null} name */
export function stepNamed(name) {
  return STEPS.find((step) => step.name === name) ?? STEPS[0];
}

/** Where a path of the job is asked for. @param {string} path */
export function stepOf(path) {
  const [block] = path.split(".");
  return STEPS.find(({ blocks }) => blocks.includes(block)) ?? STEPS[0];
}
