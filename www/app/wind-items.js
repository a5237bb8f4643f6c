/**
 * What is asked about a wind: how the gust is known, and what the leaf looks like to it. The working wind and the storm have the same
 * block in the job, each its own.
 *
 * @import { Choice, Item } from "./groups.js"
 */

/**
 * @param {string} path of the flag
 * @param {boolean} usual
 * @returns {Choice}
 */
function flag(path, usual) {
  return {
    path,
    options: ["yes", "no"],
    usual: usual ? "yes" : "no",
    writes: { yes: { [path]: true }, no: { [path]: false } },
  };
}

/**
 * @param {"wind" | "storm"} at
 * @returns {Item[]}
 */
export function windItems(at) {
  const [from, shape] = [`${at}.from`, `${at}.shape`];
  return [
    {
      path: `${from}.kind`,
      options: ["gust", "beaufort", "asce7", "en1991"],
      usual: "gust",
      writes: { gust: {} },
      of: {
        gust: [`${at}.speed_m_s`],
        beaufort: [`${from}.number`, `${from}.gust_factor`, `${from}.height_factor`],
        asce7: [
          {
            path: `${from}.edition`,
            options: ["7-05", "7-10", "7-16", "7-22"],
            usual: "7-16",
            of: { "7-05": [`${from}.importance`] },
          },
          // The working wind is held against a working rating.
          { path: `${from}.level`, options: ["strength", "allowable"], usual: "allowable" },
          { path: `${from}.exposure`, options: ["B", "C", "D"], usual: "C" },
          `${from}.speed_m_s`,
          `${from}.height_m`,
          `${from}.topographic`,
          `${from}.directionality`,
          `${from}.gust_effect`,
        ],
        en1991: [
          { path: `${from}.terrain`, options: ["0", "I", "II", "III", "IV"], usual: "II" },
          `${from}.basic_m_s`,
          `${from}.height_m`,
          `${from}.orography`,
          `${from}.yearly_probability`,
        ],
      },
    },
    {
      path: `${shape}.kind`,
      options: ["typed", "asce7_wall", "asce7_open", "en1991_wall", "en1991_lattice"],
      usual: "typed",
      writes: { typed: {} },
      of: {
        typed: [`${at}.force_coefficient`],
        asce7_wall: [flag(`${shape}.eccentric`, true), `${shape}.solidity`, `${shape}.clearance`],
        asce7_open: [{ path: `${shape}.bars`, options: ["flat", "round"], usual: "flat" }, `${shape}.bar_m`, `${shape}.pitch_m`],
        en1991_wall: [flag(`${shape}.returns`, false), `${shape}.solidity`, `${shape}.shelter_factor`],
        en1991_lattice: [`${shape}.solidity`, `${shape}.end_effect`],
      },
    },
    `${at}.air_density_kg_m3`,
  ];
}
