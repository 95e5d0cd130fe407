/** Finding the input of a formula that gives a wanted result. */
import { InputError, SolveError } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi } from '../quantity/quantity.js'
import { kindInWords, symbolsOf } from '../quantity/read.js'
import { computeWithin, isFormula, type QuantityOf, read, tell, type Work } from './calculation.js'
import { type AnyFormula, type Constants, type Formula, type GivenTo, type Inputs, readInputs } from './formula.js'
import { unrecorded } from './record.js'
import { type Real, rootsOver, scanPoints } from './root.js'

/** The other inputs, the wanted result, and the interval to search where the bounds of the input are too wide. */
export type SolveGiven<I extends Inputs, R extends Kind, U extends keyof I> = GivenTo<{
  [P in Exclude<keyof I, U>]: I[P]
}> & {
  readonly result: Given<R>
  readonly between?: readonly [Given<I[U]['kind']>, Given<I[U]['kind']>]
}

/** How densely a formula is scanned, and another function, which may be a thousand times as slow. */
const [FORMULA_POINTS, FUNCTION_POINTS] = [2000, 100]

/**
 * Finds the value of one input at which a formula has a wanted result.
 *
 * The input's own bounds (or `between`) are scanned for changes of sign, and each is narrowed by Brent's
 * method until neighbouring doubles are reached. A value without a bound is looked for up to 1e15 SI units.
 *
 * @param formula - The formula.
 * @param unknown - The input to find.
 * @param given - The other inputs, `result`, and `between` to choose among several solutions.
 * @returns The input, in its kind's first unit.
 * @throws InputError when an input, the result or the interval cannot be used.
 * @throws SolveError when there is no solution in the interval, or more than one; it names the interval
 *   and the brackets that were found.
 */
export function solve<I extends Inputs, R extends Kind, C extends Constants, const U extends keyof I & string>(
  formula: Formula<I, R, C>,
  unknown: U,
  given: SolveGiven<I, R, U>,
): Quantity<I[U]['kind']>
/**
 * Finds the quantity at which a function of it has a wanted result.
 *
 * @param work - The function of the unknown quantity.
 * @param given - The wanted `result` and the interval `between` which to search.
 */
export function solve<const G, R extends Kind>(
  work: (unknown: QuantityOf<G>) => Quantity<R>,
  given: { readonly result: Given<R>; readonly between: readonly [G, G] },
): QuantityOf<G>
export function solve(work: AnyFormula | Work, ...rest: readonly unknown[]): Quantity {
  if (isFormula(work)) return solveFormula(work, rest[0], rest[1])
  return solveFunction(work, rest[0] as { readonly result: unknown; readonly between: readonly [unknown, unknown] })
}

function solveFormula(formula: AnyFormula, unknown: unknown, all: unknown): Quantity {
  const { result, between, ...others } = Object(all) as { readonly [key: string]: unknown }
  const where = `solve(${formula.name})`
  const input = formula.inputs[unknown as string]
  if (typeof unknown !== 'string' || input === undefined) {
    const known = Object.keys(formula.inputs)
    const nearest = nearestName(String(unknown), known)
    const issue = { path: 'unknown', expected: `an input: ${known.join(', ')}`, received: String(unknown) }
    throw new InputError(where, [nearest === undefined ? issue : { ...issue, hint: `did you mean ${nearest}?` }])
  }
  const target = read(where, 'result', formula.result.kind, result)
  const remaining = { ...formula, name: where, inputs: without(formula.inputs, unknown), valid: [] }
  const si = readInputs(remaining as never, others)
  const ends = between === undefined ? undefined : interval(where, input.kind, between)
  const { min, above, max, below } = input.limits
  const floor = input.kind === 'temperature' ? 0 : -Infinity
  const low = Math.max(min ?? above ?? floor, ends?.[0] ?? -Infinity)
  const high = Math.min(max ?? below ?? Infinity, ends?.[1] ?? Infinity)
  const f: Real = (x) => computeWithin(formula, { ...si, [unknown]: x }) - target.si
  const root = theRoot(f, low, high, FORMULA_POINTS, { where, unknown, kind: input.kind, target })
  const found = fromSi(input.kind, root, symbolsOf(input.kind)[0] as string)
  // Evaluated once more with units, so that a working shows the formula with the value found.
  formula({ ...others, [unknown]: found } as never)
  return found
}

function without(inputs: Inputs, unknown: string): Inputs {
  return Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== unknown))
}

function solveFunction(work: Work, given: { readonly result: unknown; readonly between: readonly [unknown, unknown] }) {
  const where = 'solve'
  if (!Array.isArray(given?.between)) {
    const expected = "the interval to search, such as ['0.3 m²', '0.9 m²']"
    throw new InputError(where, [{ path: 'between', expected, received: String(given?.between) }])
  }
  const first = tell(where, 'between[0]', given.between[0])
  const [low, high] = interval(where, first.kind, given.between)
  const at = (x: number) => work(fromSi(first.kind, x, first.unit) as never)
  const target = read(where, 'result', unrecorded(() => at(low)).kind, given.result)
  const f: Real = (x) => unrecorded(() => at(x).si) - target.si
  const root = theRoot(f, low, high, FUNCTION_POINTS, { where, unknown: 'the unknown', kind: first.kind, target })
  const found = fromSi(first.kind, root, first.unit)
  work(found as never)
  return found
}

function interval(where: string, kind: Kind, between: unknown): readonly [number, number] {
  const [a, b] = (Array.isArray(between) ? between : []) as unknown[]
  const [from, to] = [read(where, 'between[0]', kind, a), read(where, 'between[1]', kind, b)]
  if (from.si < to.si) return [from.si, to.si]
  const received = `from ${from} to ${to}`
  throw new InputError(where, [{ path: 'between', expected: 'the lower end first, then a higher one', received }])
}

/** What rounding inside a formula may do to its result, as a share of it. */
const ROUNDING = 1e-13

interface Question {
  readonly where: string
  readonly unknown: string
  readonly kind: Kind
  readonly target: Quantity
}

function theRoot(
  f: Real,
  low: number,
  high: number,
  count: number,
  { where, unknown, kind, target }: Question,
): number {
  const points = scanPoints(low, high, count)
  const roots = rootsOver(f, points, ROUNDING * Math.abs(target.si))
  if (roots !== 'everywhere' && roots.length === 1 && roots[0] !== undefined) return roots[0].root
  const text = (x: number) => fromSi(kind, x, symbolsOf(kind)[0] as string).format({ digits: 6 })
  const [first, last] = [text(points[0] ?? low), text(points[points.length - 1] ?? high)]
  const span = `${first} to ${last}`
  const wanted = `${kindInWords(target.kind)} of ${target}`
  const details = { unknown, interval: [first, last] as const }
  if (roots === 'everywhere') {
    const message = `every ${unknown} over part of ${span} gives ${wanted}; the result does not depend on it there`
    throw new SolveError(where, message, { ...details, brackets: [] })
  }
  if (roots.length === 0) {
    const values = points.map(f).filter((value) => !Number.isNaN(value))
    const inTarget = (value: number) => String(fromSi(target.kind, value + target.si, target.unit))
    const range =
      values.length === 0
        ? 'there is no result at all in that interval'
        : `the result there runs from ${inTarget(least(values))} to ${inTarget(-least(values.map((value) => -value)))}`
    throw new SolveError(where, `no ${unknown} from ${span} gives ${wanted}: ${range}`, { ...details, brackets: [] })
  }
  const brackets = roots.map((bracket) => [text(bracket.low), text(bracket.high)] as const)
  const list = brackets.map(([from, to]) => `from ${from} to ${to}`).join('; ')
  const message = `${roots.length} values of ${unknown} give ${wanted}: ${list}. Choose one with between: ['${brackets[0]?.[0]}', '${brackets[0]?.[1]}']`
  throw new SolveError(where, message, { ...details, brackets })
}

function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b))
}
