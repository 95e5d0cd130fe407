/** Inputs of a formula drawn at random within its bounds. */
import fc from 'fast-check'
import type { AnyFormula, Input } from '../../src/formula/index.js'
import { type Kind, kinds, quantity } from '../../src/quantity/index.js'

/** Steps into which a range is divided; its ends are drawn where the bounds include them. */
const STEPS = 2 ** 24
/** How far from the kind's typical value an unbounded input is drawn, as a power of ten either way. */
const DECADES = 2

/** Numbers, in SI units, that an input accepts. */
export function numbersFor({ kind, limits }: Pick<Input, 'kind' | 'limits'>): fc.Arbitrary<number> {
  const low = limits.min ?? limits.above ?? -Infinity
  const high = limits.max ?? limits.below ?? Infinity
  const inside = (value: number) =>
    (limits.above === undefined || value > limits.above) && (limits.below === undefined || value < limits.below)
  if (kind === 'temperature') {
    const [cold, hot] = [Math.max(230, low), Math.min(530, high)]
    return fraction.map((u) => cold + u * (hot - cold)).filter(inside)
  }
  if (Number.isFinite(low) && Number.isFinite(high)) {
    const evenly = fraction.map((u) => low + u * (high - low))
    // Over many magnitudes an even draw would hardly ever reach the low ones: a Reynolds number of laminar flow.
    const byMagnitude = fraction.map((u) => low * (high / low) ** u)
    return (low > 0 && high > 100 * low ? fc.oneof(evenly, byMagnitude) : evenly).filter(inside)
  }
  const typical = Math.abs(quantity(kind as Kind, kinds[kind].example as never).si)
  const away = fraction.map((u) => typical * 10 ** (DECADES * (2 * u - 1)))
  if (Number.isFinite(low))
    return orEnd(
      away.map((value) => low + value),
      low,
    ).filter(inside)
  if (Number.isFinite(high))
    return orEnd(
      away.map((value) => high - value),
      high,
    ).filter(inside)
  return orEnd(
    fc.tuple(away, fc.boolean()).map(([value, negative]) => (negative ? -value : value)),
    0,
  )
}

const fraction = fc.integer({ min: 0, max: STEPS }).map((n) => n / STEPS)

function orEnd(numbers: fc.Arbitrary<number>, end: number): fc.Arbitrary<number> {
  return fc.oneof({ weight: 20, arbitrary: numbers }, { weight: 1, arbitrary: fc.constant(end) })
}

/** A full set of SI inputs for a formula, within bounds and within the ranges in which it holds. */
export function inputsFor(formula: AnyFormula): fc.Arbitrary<{ [key: string]: number }> {
  const constants = siConstants(formula)
  return fc
    .record(Object.fromEntries(Object.entries(formula.inputs).map(([key, input]) => [key, numbersFor(input)])))
    .filter((si) => holds(formula, si, constants) && isResult(formula, formula.compute(si)))
}

/** Whether a number can be the result of a formula: finite, and not below absolute zero. */
export function isResult(formula: AnyFormula, si: number): boolean {
  return Number.isFinite(si) && (formula.result.kind !== 'temperature' || si >= 0)
}

/** Whether SI inputs keep to the ranges in which a formula holds. Written apart from the library's own check. */
export function holds(
  formula: AnyFormula,
  si: { readonly [key: string]: number },
  constants: { readonly [symbol: string]: number } = siConstants(formula),
): boolean {
  return formula.valid.every((range) => {
    const value = range.value(si, constants)
    return (
      value >= (range.min ?? -Infinity) &&
      value <= (range.max ?? Infinity) &&
      value > (range.above ?? -Infinity) &&
      value < (range.below ?? Infinity)
    )
  })
}

/** The constants of a formula as SI numbers by symbol. */
export function siConstants(formula: AnyFormula): { [symbol: string]: number } {
  return Object.fromEntries(Object.entries(formula.constants).map(([symbol, { value }]) => [symbol, value.si]))
}
