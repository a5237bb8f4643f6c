/**
 * Which numbers are asked for together, in which order. What each is, and its range, the core's own table says.
 *
 * An item is the path of a number, a choice between words with the items that belong to each, or items that stand while a choice
 * made elsewhere has an option.
 *
 * @typedef {string | Choice | When} Item
 *
 * @typedef {object} Choice
 * @property {string} path job path of the word, or a name of the page's own where the job has no word for it
 * @property {string[]} options
 * @property {string} usual the option where a job says nothing
 * @property {Record<string, Record<string, unknown>>} [writes] what an option puts into the job, by path; without it the word, at `path`
 * @property {Record<string, string[]>} [signs] the option a job means when it holds something at one of these paths; without it the word says so
 * @property {(job: any) => boolean} [readable] whether the signs of a job are about this choice
 * @property {Record<string, Item[]>} [of] items that belong to one option only
 *
 * @typedef {{ when: string, is: string, items: Item[] }} When
 *
 * @typedef {object} Group
 * @property {string} name
 * @property {Item[]} items
 * @property {string} step the step of the job in which it is asked
 */

import { BODIES } from "./around/words.js";
import { CHECKS } from "./check/groups.js";
import { HANDOVER } from "./handover/items.js";
import { everything } from "./items.js";
import { asked, looked } from "./looked.js";
import { windItems } from "./wind-items.js";

/** Where the weight and the area come from. */
export const LEAF_BY = {
  path: "leaf.by",
  options: ["numbers", "parts"],
  usual: "numbers",
  writes: { numbers: {}, parts: {} },
  signs: { parts: ["leaf.members"] },
};

/** Asked for first, and large. */
export const LEAD = ["leaf.mass_kg", "leaf.length_m", "leaf.wind_area_m2"];

/** What the leaf's parts come to, so that it is not asked for beside them. */
export const FROM_PARTS = ["leaf.mass_kg", "leaf.wind_area_m2"];

/** Asked for when no operator of the list is taken. */
export const RATINGS = ["operator.rated_torque_n_m", "operator.peak_torque_n_m", "operator.shaft_speed_deg_s"];

/** One value, or a range from low to high. @type {Record<string, Item[]>} */
const COEFFICIENT = {
  coefficient: ["hinges.friction_coefficient"],
  range: ["hinges.friction_low", "hinges.friction_coefficient", "hinges.friction_high"],
};

/** @type {Choice} */
const SLIDING = {
  path: "hinges.friction_by",
  options: ["coefficient", "pairing", "range"],
  usual: "coefficient",
  writes: { coefficient: {}, pairing: {}, range: {} },
  signs: { pairing: ["hinges.pairing"], range: ["hinges.friction_low", "hinges.friction_high"] },
  of: {
    ...COEFFICIENT,
    pairing: [
      {
        path: "hinges.pairing",
        options: ["steel_steel_dry", "steel_steel_greased", "steel_bronze_dry", "steel_bronze_greased", "ptfe_lined", "rolling"],
        usual: "steel_steel_greased",
      },
    ],
  },
};

/** @type {Choice} */
const ROLLING = {
  path: "hinges.rolling_friction_by",
  options: ["handbook", "coefficient", "range"],
  usual: "handbook",
  writes: { handbook: { "hinges.pairing": "rolling" }, coefficient: {}, range: {} },
  signs: {
    handbook: ["hinges.pairing"],
    range: ["hinges.friction_low", "hinges.friction_high"],
    coefficient: ["hinges.friction_coefficient"],
  },
  // Another hinge's coefficient says nothing about rolling.
  readable: (job) => job?.hinges?.kind === "rolling",
  of: COEFFICIENT,
};

const COLLAR = ["hinges.thrust_outer_radius_m", "hinges.thrust_inner_radius_m"];

/** @type {Choice} */
const WEAR = { path: "hinges.collar", options: ["uniform_pressure", "uniform_wear"], usual: "uniform_pressure" };

/** @type {Choice} */
const HINGES = {
  path: "hinges.kind",
  options: ["plain", "rolling", "rising", "measured"],
  usual: "plain",
  of: {
    plain: ["hinges.spacing_m", "hinges.pin_radius_m", ...COLLAR, WEAR, SLIDING],
    rolling: ["hinges.spacing_m", "hinges.pin_radius_m", ROLLING],
    rising: ["hinges.rise_m", "hinges.spacing_m", "hinges.pin_radius_m", ...COLLAR, WEAR, SLIDING],
    measured: ["hinges.pull_open_n", "hinges.pull_close_n", "hinges.pull_radius_m", "hinges.pull_leaf_deg"],
  },
};

/** Both ends of a range. @param {string} path */
function ends(path) {
  return [`${path}.0`, `${path}.1`];
}

/** @type {Choice} */
const BEARING = {
  path: "wind.bearing",
  options: ["every", "fixed"],
  usual: "every",
  writes: { every: {}, fixed: {} },
  signs: { fixed: ["wind.bearing_deg"] },
  of: { fixed: ["wind.bearing_deg"] },
};

/** @type {Choice} */
const LEAN = {
  path: "lean.by",
  options: ["angle", "plumb"],
  usual: "angle",
  writes: { angle: {}, plumb: {} },
  signs: { plumb: ["lean.plumb_offset_m", "lean.plumb_height_m"] },
  of: { angle: ["lean.angle_deg"], plumb: ["lean.plumb_offset_m", "lean.plumb_height_m"] },
};

/** The line that what is square to the leaf was measured from: that of the marks, or the leaf's face. @type {Choice} */
const BUILT_FROM = { path: "as_built.from", options: ["hinge_axis", "leaf_face"], usual: "hinge_axis" };

/** How the link gets its length. @type {Choice} */
const LINK_SET = { path: "tape.link", options: ["cut", "set_last"], usual: "cut" };

/** @type {Group[]} */
export const GROUPS = [
  { name: "swing", step: "survey", items: [{ path: "hand", options: ["right", "left"], usual: "right" }, "swing.open_deg"] },
  { name: "hinges", step: "survey", items: [HINGES] },
  { name: "wind", step: "survey", items: [...windItems("wind"), BEARING] },
  {
    name: "room",
    step: "survey",
    items: [
      { ...looked("obstacles", BODIES), signs: { yes: ["obstacles", ...BODIES] } },
    ],
  },
  { name: "lean", step: "survey", items: [LEAN, "lean.downhill_deg"] },
  {
    name: "leaf",
    step: "survey",
    items: [
      "leaf.height_m",
      { when: "leaf.by", is: "numbers", items: ["leaf.mass_centroid_m", "leaf.wind_centroid_m", "leaf.inertia_kg_m2"] },
    ],
  },
  {
    name: "ground",
    step: "survey",
    items: [
      looked("ground", ["ground.gap_m", "ground.slope_deg", "ground.uphill_deg", "ground.bottom_rise_m", "ground.joint_allowance_m"]),
    ],
  },
  {
    name: "drag",
    step: "survey",
    items: [
      looked("drag", [
        "drag.seal_n_m",
        "drag.latch_n_m",
        "drag.latch_deg",
        "drag.wheel_load_n",
        "drag.wheel_radius_m",
        "drag.wheel_coefficient",
      ]),
      looked("ice", ["ice.thickness_m", "ice.density_kg_m3", "ice.area_factor"]),
    ],
  },
  {
    name: "requirement",
    step: "operator",
    items: ["required_reserve", "operator.arm_efficiency", "operator.back_efficiency", asked("operator.back_drives")],
  },
  {
    name: "body",
    step: "operator",
    items: [looked("operator.body", [...ends("operator.body.along_m"), ...ends("operator.body.across_m"), "operator.body.height_m"])],
  },
  {
    name: "arm",
    step: "place",
    items: [
      { path: "arm.elbow", options: ["left", "right"], usual: "left" },
      "arm.shaft_x_m",
      "arm.shaft_y_m",
      "arm.bracket_u_m",
      "arm.bracket_v_m",
      "arm.crank_m",
      "arm.link_m",
    ],
  },
  {
    name: "tape",
    step: "place",
    items: [looked("tape", ["tape.error_m", LINK_SET, { when: "tape.link", is: "set_last", items: ["tape.link_error_m"] }])],
  },
  {
    name: "marks",
    step: "mark_out",
    items: [
      looked("marks", [
        "marks.anchor_along_m",
        "marks.anchor_across_m",
        "marks.anchor_offset_along_m",
        "marks.anchor_offset_across_m",
        "marks.anchor_turn_deg",
        "marks.pad_level_m",
        "marks.crossbar_level_m",
        "marks.arm_height_m",
        "marks.overlap_m",
        "marks.crank_ends_m",
        "marks.link_ends_m",
      ]),
    ],
  },
  {
    name: "as_built",
    step: "mark_out",
    items: [
      looked("as_built", [
        BUILT_FROM,
        "as_built.shaft_x_m",
        "as_built.shaft_y_m",
        "as_built.bracket_u_m",
        "as_built.bracket_v_m",
        "as_built.crank_m",
        "as_built.link_m",
      ]),
    ],
  },
  ...CHECKS,
  ...HANDOVER,
];

/** What a step asks, in its order. @param {string} step */
export function groupsOf(step) {
  return GROUPS.filter((group) => group.step === step);
}

/** What all groups ask. */
export const ASKED = GROUPS.flatMap((group) => group.items);

/** Everything there is to say, the leaf's parts and the lists of the site apart. */
export const EVERYTHING = everything([LEAF_BY, ...LEAD, ...RATINGS, ...ASKED]);
