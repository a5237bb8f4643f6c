/**
 * What is asked about one part of the leaf: its section, and where how many pieces of it sit.
 *
 * @import { Choice, Item } from "./groups.js"
 */

/** Paths below a member that only say where its pieces sit. */
const ENDS = ["place.from_m", "place.to_m"];

/**
 * Rails from end to end, or uprights spread evenly between the ends: the job tells them by the height.
 *
 * @param {string} at
 * @returns {Choice}
 */
function run(at) {
  return {
    path: `${at}.run`,
    options: ["rails", "uprights"],
    usual: "rails",
    writes: { rails: {}, uprights: {} },
    signs: { uprights: [`${at}.place.height_m`] },
    of: { rails: [`${at}.place.rise_m`], uprights: [`${at}.place.height_m`] },
  };
}

/**
 * @param {string} at path of the member, with its index in the list
 * @returns {Item[]}
 */
export function memberItems(at) {
  const below = (/** @type {string[]} */ ...names) => names.map((name) => `${at}.${name}`);
  const long = () => [run(at), ...below(...ENDS, "place.count")];
  const panel = () => below(...ENDS, "place.height_m");
  /** @type {Choice} */
  const corners = { path: `${at}.corners`, options: ["en10219", "aisc"], usual: "en10219" };
  return [
    {
      path: `${at}.section`,
      options: ["tube", "round_tube", "bar", "round_bar", "sheet", "boards", "mesh"],
      usual: "tube",
      of: {
        tube: [...below("face_m", "depth_m", "wall_m"), corners, ...long()],
        round_tube: [...below("face_m", "wall_m"), ...long()],
        bar: [...below("face_m", "depth_m"), ...long()],
        round_bar: [...below("face_m"), ...long()],
        sheet: [...below("thickness_m"), ...panel()],
        boards: [...below("thickness_m", "face_m", "gap_m"), ...panel()],
        mesh: [...below("wire_m", "pitch_m"), ...panel()],
      },
    },
    ...below("density_kg_m3"),
  ];
}
