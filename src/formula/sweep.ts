/** A formula over ranges of its inputs: rows for a table or a plot. */
import { InputError, shown } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { fromSi } from '../quantity/quantity.js'
import { isFormula, type QuantityOf, read, tell, type Work } from './calculation.js'
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
  const where = isFormula(work) ? `sweep(${work.name})` : 'sweep'
  let combinations: { readonly [key: string]: Quantity }[] = [{}]
  for (const [key, range] of Object.entries(varied)) {
    const values = valuesOf(where, key, isFormula(work) ? work.inputs[key]?.kind : undefined, range)
    combinations = combinations.flatMap((row) => values.map((value) => ({ ...row, [key]: value })))
  }
  return combinations.map((row) => ({ ...row, result: work({ ...fixed, ...row } as never) }))
}

function valuesOf(where: string, path: string, kind: Kind | undefined, range: Range<unknown>): Quantity[] {
  const one = (at: string, value: unknown) =>
    kind === undefined ? tell(where, at, value) : read(where, at, kind, value)
  if (Array.isArray(range)) return range.map((value, i) => one(`${path}[${i}]`, value))
  const { from, to, steps } = Object(range) as { readonly [key: string]: unknown }
  const [first, last] = [one(`${path}.from`, from), one(`${path}.to`, to)]
  if (typeof steps !== 'number' || !Number.isInteger(steps) || steps < 2) {
    const expected = 'how many values, at least 2, such as 8'
    throw new InputError(where, [{ path: `${path}.steps`, expected, received: shown(steps) }])
  }
  return Array.from({ length: steps }, (_, i) => {
    if (i === 0) return first
    if (i === steps - 1) return last.as(first.unit as never)
    return fromSi(first.kind, first.si + ((last.si - first.si) * i) / (steps - 1), first.unit)
  })
}
