/**
 * Which numbers are asked for together, in which order. What each is, and its range, the core's own table says.
 *
 * @typedef {object} Choice
 * @property {string} path job path of the choice
 * @property {string[]} options
 * @property {Record<string, string[]>} [fields] fields that belong to one option only
 *
 * @typedef {object} Group
 * @property {string} name
 * @property {string[]} fields
 * @property {Choice} [choice]
 */

/** Asked for first, and large. */
export const LEAD = ["leaf.mass_kg", "leaf.length_m", "leaf.wind_area_m2"];

/** Asked for when no operator of the list is taken. */
export const RATINGS = ["operator.rated_torque_n_m", "operator.peak_torque_n_m", "operator.shaft_speed_deg_s"];

/** @type {Group[]} */
export const GROUPS = [
  {
    name: "wind",
    fields: ["wind.speed_m_s", "wind.force_coefficient", "wind.air_density_kg_m3"],
  },
  {
    name: "hinges",
    fields: [],
    choice: {
      path: "hinges.kind",
      options: ["plain", "measured"],
      fields: {
        plain: [
          "hinges.spacing_m",
          "hinges.pin_radius_m",
          "hinges.thrust_outer_radius_m",
          "hinges.thrust_inner_radius_m",
          "hinges.friction_coefficient",
        ],
        measured: ["hinges.pull_open_n", "hinges.pull_close_n", "hinges.pull_radius_m", "hinges.pull_leaf_deg"],
      },
    },
  },
  { name: "lean", fields: ["lean.angle_deg", "lean.downhill_deg"] },
  {
    name: "swing",
    fields: ["swing.open_deg"],
    choice: { path: "hand", options: ["right", "left"] },
  },
  {
    name: "arm",
    fields: [
      "arm.shaft_x_m",
      "arm.shaft_y_m",
      "arm.bracket_u_m",
      "arm.bracket_v_m",
      "arm.crank_m",
      "arm.link_m",
      "operator.arm_efficiency",
    ],
    choice: { path: "arm.elbow", options: ["left", "right"] },
  },
  {
    name: "leaf",
    fields: ["leaf.height_m", "leaf.mass_centroid_m", "leaf.wind_centroid_m", "leaf.inertia_kg_m2"],
  },
  { name: "requirement", fields: ["required_reserve"] },
];

/** Every choice, with the option the core takes when a job says nothing. */
export const CHOICE_DEFAULTS = { "hinges.kind": "plain", hand: "right", "arm.elbow": "left" };
