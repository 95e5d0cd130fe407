/** A formula over ranges of its inputs: rows for a table or a plot. */
import { InputError, shown } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { fromSi } from '../quantity/quantity.js'
import {
  isFormula,
  type QuantityOf,
  read,
  refuseOthers,
  requireObject,
  requireWork,
  resultOf,
  tell,
  together,
  type Work,
} from './calculation.js'
import type { AnyFormula, Constants, Formula, GivenTo, Inputs } from './formula.js'

/** Values to go through: evenly spaced, both ends included, or listed. */
export type Range<G> = { readonly from: G; readonly to: G; readonly steps: number } | readonly G[]

/** A row of a sweep: the values that were varied, and the result. */
export type SweepRow<I extends Inputs, V, R extends Kind> = {
  readonly [P in keyof V & keyof I]: Quantity<I[P]['kind']>
} & { readonly result: Quantity<R> }

/**
 * Evaluates a formula over one or more ranges. With several, every value of the later ranges is gone
 * through for each value of the earlier.
 *
 * @param formula - The formula.
 * @param varied - For each input to vary, `{ from, to, steps }` (so many values, both ends included) or a list.
 * @param fixed - The other inputs.
 * @returns A row for each combination: the varied inputs and the `result`.
 * @throws InputError when a range or an input cannot be used; CalculationError where a row has no result.
 */
export function sweep<
  I extends Inputs,
  R extends Kind,
  C extends Constants,
  const V extends { readonly [P in keyof I]?: Range<Given<I[P]['kind']>> },
>(formula: Formula<I, R, C>, varied: V, fixed: GivenTo<{ [P in Exclude<keyof I, keyof V>]: I[P] }>): SweepRow<I, V, R>[]
/**
 * Evaluates a function of quantities over one or more ranges.
 *
 * @param work - The function, of an object with a quantity for each range.
 * @param varied - The ranges, by name.
 */
export function sweep<const V extends { readonly [key: string]: Range<Quantity | string | number> }, R extends Kind>(
  work: (given: { readonly [P in keyof V]: V[P] extends Range<infer G> ? QuantityOf<G> : never }) => Quantity<R>,
  varied: V,
): ({ readonly [P in keyof V]: V[P] extends Range<infer G> ? QuantityOf<G> : never } & {
  readonly result: Quantity<R>
})[]
export function sweep(
  work: AnyFormula | Work,
  varied: { readonly [key: string]: Range<unknown> },
  fixed: { readonly [key: string]: unknown } = {},
): { readonly [key: string]: Quantity }[] {
  requireWork('sweep', work)
  const where = isFormula(work) ? `sweep(${work.name})` : 'sweep'
  const ranges = Object.entries(requireObject(where, 'varied', varied) as { readonly [key: string]: Range<unknown> })
  requireObject(where, 'fixed', fixed)
  const axes = together<(readonly [string, Quantity[]])[]>(
    where,
    ...ranges.map(([key, range]) => () => {
      if (fixed[key] !== undefined) {
        const expected = 'an input that is varied or fixed, not both'
        throw new InputError(where, [{ path: key, expected, received: `fixed at ${String(fixed[key])}` }])
      }
      return [key, valuesOf(where, key, isFormula(work) ? work.inputs[key]?.kind : undefined, range)] as const
    }),
  )
  const combinations = axes.reduce<{ readonly [key: string]: Quantity }[]>(
    (rows, [key, values]) => rows.flatMap((row) => values.map((value) => ({ ...row, [key]: value }))),
    [{}],
  )
  return combinations.map((row) => ({ ...row, result: resultOf(where, work as Work, { ...fixed, ...row }) }))
}

/** More values than anyone reads, and few enough to hold. */
const MOST_STEPS = 1_000_000

function valuesOf(where: string, path: string, kind: Kind | undefined, range: Range<unknown>): Quantity[] {
  const one = (at: string, value: unknown) =>
    kind === undefined ? tell(where, at, value) : read(where, at, kind, value)
  if (Array.isArray(range))
    return together<Quantity[]>(where, ...range.map((value, i) => () => one(`${path}[${i}]`, value)))
  const { from, to, steps, ...others } = requireObject(
    where,
    path,
    range,
    "a list, or { from: '50 A', to: '400 A', steps: 8 }",
  )
  const [first, last] = together<[Quantity, Quantity, undefined]>(
    where,
    () => one(`${path}.from`, from),
    () => one(`${path}.to`, to),
    () => {
      refuseOthers(where, others, ['from', 'to', 'steps'], 'field', `${path}.`)
      if (typeof steps === 'number' && Number.isInteger(steps) && steps >= 2 && steps <= MOST_STEPS) return undefined
      const expected = `how many values, from 2 to ${MOST_STEPS}, such as 8`
      throw new InputError(where, [{ path: `${path}.steps`, expected, received: shown(steps) }])
    },
  )
  const count = steps as number
  return Array.from({ length: count }, (_, i) => {
    if (i === 0) return first
    if (i === count - 1) return last.as(first.unit)
    // In this order no step overflows where neither end does.
    const share = i / (count - 1)
    return fromSi(first.kind, first.si * (1 - share) + last.si * share, first.unit)
  })
}
