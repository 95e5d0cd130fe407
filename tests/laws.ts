/** How the result of a formula moves with each of its inputs, as physics says. */
import type { Constants, Formula, Inputs } from '../src/formula/index.js'
import type { Kind } from '../src/quantity/index.js'

/**
 * - `rises`, `falls`: never the other way, over the whole declared range;
 * - a sentence: why it does neither.
 */
export type Law = 'rises' | 'falls' | `either: ${string}`

/** The laws of one formula. */
export interface Laws {
  readonly name: string
  readonly laws: { readonly [key: string]: Law }
}

/** States the law of every input of a formula. */
export function lawsOf<I extends Inputs, R extends Kind, C extends Constants>(
  formula: Formula<I, R, C>,
  laws: { readonly [P in keyof I]: Law },
): Laws {
  return { name: formula.name, laws }
}
