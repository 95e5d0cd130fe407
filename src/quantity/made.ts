/** How quantities came of others by their own methods, while somebody asks where a figure comes from. */
import type { Quantity } from './quantity.js'

/** What was done to a quantity: the same in another unit, or arithmetic with a second one or a number. @internal */
export interface Made {
  readonly by: 'as' | '+' | '−' | '×' | '÷'
  readonly of: Quantity
  readonly and?: Quantity | number
}

/** Where it is written down, if anywhere. @internal */
export const making: { written: WeakMap<Quantity, Made> | undefined } = { written: undefined }

/** Runs work of which it is written down how its quantities came of others. @internal */
export function makingOf<T>(work: () => T): { readonly result: T; readonly made: WeakMap<Quantity, Made> } {
  const outer = making.written
  const made = new WeakMap<Quantity, Made>()
  making.written = made
  try {
    return { result: work(), made }
  } finally {
    making.written = outer
  }
}
