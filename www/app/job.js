/**
 * The job document made of what a session holds.
 *
 * @import { ListedOperator } from "./operators/list.js"
 * @import { Session } from "./session.js"
 */

import { put, remove } from "./document.js";
import { BODIES } from "./around/words.js";
import { POINTS } from "./check/motor-points.js";
import { EVERYTHING } from "./groups.js";
import { writable, written } from "./items.js";
import { uncertainInput } from "./paths.js";

/**
 * A text that cannot be read is stood in for by an example, so that the core can look at all the rest; such a job is never shown as a
 * result.
 *
 * @param {Session} session
 * @param {boolean} [listed] whether what the list says of the chosen operator is in it, too
 * @returns {any}
 */
export function jobOf(session, listed = true) {
  const { members } = session;
  const job = structuredClone(session.base);
  for (const path of dropped(session)) remove(job, path);
  for (const choice of session.activeChoices()) {
    for (const [path, value] of Object.entries(written(choice, session.choice(choice.path).value))) put(job, path, value);
  }
  const ofLists = new Set([...(session.byParts ? members.activePaths() : []), ...session.site.activePaths(), ...session.points.activePaths(), ...session.around.activePaths()]);
  for (const path of session.activePaths()) if (!ofLists.has(path)) say(job, path, valueFor(session, path));
  for (const [path, { value, typed }] of session.texts) if (typed) say(job, path, value || null);
  if (session.byParts) put(job, "leaf.members", members.documents((path) => valueFor(session, path)));
  if (session.site.active) Object.assign(job.site, session.site.documents((path) => valueFor(session, path)));
  if (session.points.active) put(job, POINTS, session.points.documents((path) => valueFor(session, path)));
  const obstacles = session.around.documents((path) => valueFor(session, path));
  if (obstacles) job.obstacles = obstacles;
  if (listed && session.operator) job.operator = { ...job.operator, ...listedOperator(session, session.operator, job.operator.arm_efficiency, job.operator.body) };
  putUncertainties(session, job);
  if (session.setout.said) job.setout = session.setout.block();
  return job;
}

/** What was not recorded is not there: a record of nothing is none. @param {any} job @param {string} path @param {unknown} value */
function say(job, path, value) {
  if (value === null && /^(record|settings)\./.test(path)) remove(job, path);
  else put(job, path, value);
}

/** @param {Session} session @param {string} path */
function valueFor(session, path) {
  const { rule, value, unread } = session.entry(path);
  return unread ? (rule.example ?? rule.least) : value;
}

/**
 * What of the starting job is taken away before what takes part is put in. Where no choice of a block was changed, what the page does
 * not ask for stays as the job has it.
 *
 * @param {Session} session
 */
function dropped(session) {
  const block = (/** @type {string} */ path) => path.split(".")[0];
  const turned = EVERYTHING.choices.map(({ path }) => path).filter((path) => session.choice(path).value !== session.choice(path).start);
  // A block that hangs on another goes with it: nothing holds a leaf in a storm that is not looked at.
  const active = new Set(session.activeChoices());
  const idle = EVERYTHING.choices.filter((choice) => choice.path.endsWith(".looked_at") && !active.has(choice)).map(({ path }) => path);
  const changed = new Set([...turned, ...idle].map(block));
  const all = [...EVERYTHING.paths, ...EVERYTHING.choices.flatMap(writable), "leaf.members", "obstacles", "site.means", POINTS];
  // Leaf and arm are bodies among what stands around.
  const goes = (/** @type {string} */ path) => changed.has(block(path)) || (changed.has("obstacles") && BODIES.includes(path));
  return all.filter(goes);
}

/** Only what was said of inputs that take part. @param {Session} session @param {any} job */
function putUncertainties(session, job) {
  const paths = session.activePaths();
  for (const [path, entry] of session.entries) {
    const input = uncertainInput(path);
    if (input === null || (entry.assumed && entry.start === null)) continue;
    if (job.uncertainty) delete job.uncertainty[input];
    const value = valueFor(session, path);
    if (value !== null && paths.includes(input)) job.uncertainty = { ...job.uncertainty, [input]: value };
  }
}

/**
 * The job's operator when one of the list is taken. A list may state the efficiency of its own arm and the outline of the body; what the person
 * types wins.
 *
 * @param {Session} session
 * @param {ListedOperator} operator
 * @param {number | null} efficiency
 * @param {unknown} [body] the outline that is typed
 */
export function listedOperator(session, operator, efficiency, body) {
  const { rated_torque_n_m, peak_torque_n_m = undefined, shaft_speed_deg_s = undefined, arm_efficiency: own = undefined, body: listed = undefined } = operator;
  const { assumed } = session.entry("operator.arm_efficiency");
  return {
    rated_torque_n_m,
    peak_torque_n_m: peak_torque_n_m ?? null,
    shaft_speed_deg_s: shaft_speed_deg_s ?? null,
    arm_efficiency: assumed ? (own ?? efficiency) : efficiency,
    // What is no outline the core refuses.
    body: /** @type {any} */ (body ?? listed ?? null),
  };
}
