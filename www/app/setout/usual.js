/**
 * What the set-out starts from where a job says nothing: an invented site with room beside the hinge. Every value of it stands on the
 * page marked as assumed.
 */

/** Ranges are from and to; the other numbers are limits, null where there is none. */
export const USUAL = {
  shaft_x_m: [-0.55, -0.15],
  shaft_y_m: [0.25, 0.7],
  bracket_u_m: [0.7, 1.5],
  bracket_v_m: 0.06,
  crank_m: [0.35, 0.9],
  link_m: [0.35, 0.9],
  straightness: [0.96, 1],
  square_deg: 12,
  least_lever_m: 0.25,
  shaft_travel_deg: 170,
  step_m: 0.005,
  elbow: "either",
  aim: "least_shaft_torque",
};

/** What stands around as long as nobody says: the post that the leaf is hung on. Nothing stands in it or passes it. */
export const USUAL_AROUND = [{ kind: "post", x_m: [-0.25, 0.1], y_m: [-0.2, 0.2], stops: ["pad", "arm"] }];

/** Ranges, in the order they are asked for. */
export const RANGES = ["shaft_x_m", "shaft_y_m", "bracket_u_m", "crank_m", "link_m", "straightness"];

/** Numbers that stand alone. */
export const LIMITS = ["bracket_v_m", "square_deg", "least_lever_m", "shaft_travel_deg"];

/** Numbers that belong to one aim only. @type {Record<string, string[]>} */
export const OF_AIM = { least_link_force: ["storm_speed_m_s"], nearest_place: ["place.x_m", "place.y_m"] };

/** What a tape can set, m, by the option's name: millimetres, or a quarter of an inch. @type {Record<string, number | null>} */
export const STEPS = { five_mm: 0.005, quarter_inch: 0.00635, none: null };

/** Choices between words, with their options. @type {Record<string, string[]>} */
export const CHOICES = {
  elbow: ["either", "left", "right"],
  step: Object.keys(STEPS),
  proof: ["no", "yes"],
  aim: ["least_shaft_torque", "least_link_force", "least_shaft_travel", "nearest_place"],
};
