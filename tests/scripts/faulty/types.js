/**
 * What the type checker is there to see: a code that the contract lacks, a name that is none.
 *
 * @import { Fault } from "../../../www/app/contract.d.ts"
 */

/** @param {Fault} fault */
export function isStrange(fault) {
  return fault.code === "no_such_code" || fault.paht === "";
}
