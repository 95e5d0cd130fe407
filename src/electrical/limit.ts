/** A figure beside its limit: one that is met up to the last digits that arithmetic leaves is met, as in a check. */
import type { Kind, Quantity } from '../quantity/index.js'

const ROUNDING = 1e-12

/** Whether a figure lies above its limit by more than rounding does. */
export function isAbove<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return actual.si - limit.si > ROUNDING * Math.abs(limit.si)
}

/** Whether a figure lies below its limit by more than rounding does. */
export function isBelow<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return limit.si - actual.si > ROUNDING * Math.abs(limit.si)
}
