/** What a procedure says beside its figures, where its description does not tell yet. */
import { type Assumption, type Caution, type Check, check as held, type Note, type Sense } from '../procedure/index.js'
import type { Kind, Quantity } from '../quantity/index.js'

export type { Check, Sense }

/** What a procedure says beside its figures. */
export interface Findings {
  /** Figures held to limits. */
  readonly checks: readonly Check[]
  /** Every default and simplification that was used, in words, with its value. */
  readonly assumptions: readonly (string | Assumption)[]
  /** Figures that are unusual. */
  readonly notes?: readonly Note[]
  /** What can hurt, and the usual precaution. */
  readonly cautions: readonly Caution[]
}

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
  return held('', name, actual, sense, limit, basis)
}
