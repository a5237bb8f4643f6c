/**
 * Hand over: measured values beside their plan, what was tried and done, names, and the sheet.
 *
 * @import { CreateStep } from "./index.js"
 */

import { createHandover } from "../handover/part.js";

/** @type {CreateStep} */
export function create({ sheet, signal }) {
  return createHandover(sheet, signal);
}
