/** Whether a figure keeps to a limit, by what margin, and on what basis the limit stands. */
import { InputError } from '../quantity/errors.js'
import type { Kind, Quantity } from '../quantity/index.js'
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
    const received = `a ${limit.kind}, ${limit}`
    throw new InputError('check', [{ path: 'limit', expected: `a ${actual.kind} like the figure`, received }])
  }
  const left = sense === 'at most' ? limit.si - actual.si : actual.si - limit.si
  const scale = Math.abs(scaleOf(limit)) || Math.abs(scaleOf(actual)) || 1
  const margin = left / scale + 0
  const verdict = margin < 0 ? 'fail' : margin < NEAR ? 'near' : 'pass'
  return { name, verdict, actual, limit, sense, margin, basis }
}

function scaleOf(quantity: Quantity): number {
  return quantity.kind === 'temperature' ? quantity.in('°C' as never) : quantity.si
}
