/**
 * The list of operators to choose from, as a host gives it: `{ "title": …, "operators": [ { "id", "name", "rated_torque_n_m", … } ] }`.
 *
 * @typedef {object} ListedOperator
 * @property {string} id unique in the list
 * @property {string} name as the list's owner writes it
 * @property {number} rated_torque_n_m
 * @property {number} [peak_torque_n_m]
 * @property {number} [shaft_speed_deg_s]
 * @property {number} [arm_efficiency]
 * @property {{ along_m: [number, number], across_m: [number, number], height_m?: number }} [body] outline about the shaft, along and across its base
 *
 * @typedef {object} OperatorList
 * @property {string} title
 * @property {ListedOperator[]} operators
 * @property {string[]} refused paths of entries that cannot be used
 */

/** @type {OperatorList} */
export const NO_OPERATORS = { title: "", operators: [], refused: [] };

/**
 * Takes what is usable of a list and names what is not: one faulty entry does not take the page from its visitors.
 * Whether ratings are within range the core says when the operator is chosen.
 *
 * @param {any} list
 * @returns {OperatorList}
 */
export function readOperators(list) {
  if (!Array.isArray(list?.operators)) return { ...NO_OPERATORS, refused: ["operators"] };
  /** @type {OperatorList} */
  const read = { title: typeof list.title === "string" ? list.title : "", operators: [], refused: [] };
  const seen = new Set();
  list.operators.forEach((/** @type {any} */ item, /** @type {number} */ index) => {
    const fault = faultOf(item, seen);
    if (fault) read.refused.push(`operators[${index}].${fault}`);
    else {
      seen.add(item.id);
      read.operators.push(item);
    }
  });
  return read;
}

/**
 * @param {any} item
 * @param {Set<string>} seen ids so far
 * @returns {string | null} the key at fault
 */
function faultOf(item, seen) {
  if (typeof item?.id !== "string" || item.id === "" || seen.has(item.id)) return "id";
  if (typeof item.name !== "string" || item.name.trim() === "") return "name";
  if (typeof item.rated_torque_n_m !== "number") return "rated_torque_n_m";
  for (const key of ["peak_torque_n_m", "shaft_speed_deg_s", "arm_efficiency"]) {
    if (item[key] !== undefined && item[key] !== null && typeof item[key] !== "number") return key;
  }
  if (item.body !== undefined && item.body !== null && typeof item.body !== "object") return "body";
  return null;
}
