/**
 * The address that brings the job back, beside its QR code.
 *
 * @import { Block } from "./blocks.js"
 * @import { Sheet } from "../sheet.js"
 */

/** @param {Sheet} _sheet @param {any} _job @returns {Block[]} nothing where there is no address */
export function linkBlocks(_sheet, _job) {
  return [];
}
