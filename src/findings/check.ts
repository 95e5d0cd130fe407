/** Whether a figure keeps to a limit, by what margin, and on what basis the limit stands. */
import { InputError, shown } from '../quantity/errors.js'
import type { Kind, Quantity } from '../quantity/index.js'
import { kindInWords } from '../quantity/read.js'
import type { Caution } from './cautions.js'

/** Which side of the limit is right. */
export type Sense = 'at most' | 'at least'

/** A figure held to a limit. */
export interface Check {
  /** What is checked, such as `Drop on the main run`. */
  readonly name: string
  /** `near` is a pass with less than 5 % left. */
  readonly verdict: 'pass' | 'near' | 'fail'
  readonly actual: Quantity
  readonly limit: Quantity
  readonly sense: Sense
  /** What is left, as a share of the limit; negative when it fails. */
  readonly margin: number
  /** The standard that sets the limit, or `good practice`, or whoever gave it. */
  readonly basis: string
}

/** What a procedure says beside its figures. */
export interface Findings {
  /** Figures held to limits. */
  readonly checks: readonly Check[]
  /** Every default and simplification that was used, in words, with its value. */
  readonly assumptions: readonly string[]
  /** What can hurt, and the usual precaution. */
  readonly cautions: readonly Caution[]
}

/** What rounding may do to a figure, as a share of it. */
const ROUNDING = 1e-12
/** Below this margin a pass is near its limit. */
const NEAR = 0.05

/**
 * Holds a figure to a limit.
 *
 * The margin is the share of the limit that is left; temperatures count from 0 °C, and against a limit of
 * zero the margin is 1 or -1.
 *
 * @param name - What is checked.
 * @param actual - The figure.
 * @param sense - `at most` or `at least`.
 * @param limit - The limit, of the same kind.
 * @param basis - The standard, `good practice`, or who set the limit.
 */
export function check<K extends Kind>(
  name: string,
  actual: Quantity<K>,
  sense: Sense,
  limit: Quantity<K>,
  basis: string,
): Check {
  if (actual.kind !== limit.kind) {
    const expected = `${kindInWords(actual.kind)} like the figure`
    throw new InputError('check', [{ path: 'limit', expected, received: `${kindInWords(limit.kind)}, ${limit}` }])
  }
  if (sense !== 'at most' && sense !== 'at least') {
    throw new InputError('check', [{ path: 'sense', expected: "'at most' or 'at least'", received: shown(sense) }])
  }
  const left = sense === 'at most' ? limit.si - actual.si : actual.si - limit.si
  const scale = Math.abs(scaleOf(limit)) || Math.abs(scaleOf(actual)) || 1
  // A limit that is met to the last digits that arithmetic leaves is met.
  const margin = Math.abs(left) <= ROUNDING * scale ? 0 : left / scale
  const verdict = margin < 0 ? 'fail' : margin < NEAR ? 'near' : 'pass'
  return { name, verdict, actual, limit, sense, margin, basis }
}

/** Whether a figure lies above its limit by more than rounding does. */
export function isAbove<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return actual.si - limit.si > ROUNDING * Math.abs(limit.si)
}

/** Whether a figure lies below its limit by more than rounding does. */
export function isBelow<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return limit.si - actual.si > ROUNDING * Math.abs(limit.si)
}

function scaleOf(quantity: Quantity): number {
  return quantity.kind === 'temperature' ? quantity.in('°C' as never) : quantity.si
}
