/** Finding the input of a formula that gives a wanted result. */
import { InputError, SolveError, shown } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi } from '../quantity/quantity.js'
import { kindInWords, symbolsOf } from '../quantity/read.js'
import {
  computeWithin,
  isFormula,
  type QuantityOf,
  read,
  refuseOthers,
  requireObject,
  requireWork,
  resultOf,
  tell,
  together,
  valueOrNaN,
  type Work,
} from './calculation.js'
import {
  type AnyFormula,
  boundsText,
  type Constants,
  type Formula,
  type GivenTo,
  type Input,
  type Inputs,
  readInputs,
  siText,
} from './formula.js'
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
 * method until neighbouring doubles are reached; where the result only touches what is wanted, to about 1e-10. A value
 * without a bound is looked for up to 1e15 SI units.
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
  requireWork('solve', work)
  return isFormula(work) ? solveFormula(work, rest[0], rest[1]) : solveFunction(work, rest[0])
}

function solveFormula(formula: AnyFormula, unknown: unknown, all: unknown): Quantity {
  const where = `solve(${formula.name})`
  const input = inputNamed(where, formula, unknown)
  const name = unknown as string
  const { result, between, ...others } = requireObject(where, 'given', all)
  const { [name]: found, ...known } = others
  const remaining = { ...formula, name: where, inputs: without(formula.inputs, name), valid: [] }
  const [target, si, ends] = together<[Quantity, { readonly [key: string]: number }, Ends, undefined]>(
    where,
    () => read(where, 'result', formula.result.kind, result),
    () => readInputs(remaining as never, known),
    () => (between === undefined ? boundsOf(input) : within(where, input, interval(where, input.kind, between))),
    () => {
      if (found === undefined) return undefined
      const expected = 'nothing, as it is what is to be found; between bounds the search'
      throw new InputError(where, [{ path: name, expected, received: String(found) }])
    },
  )
  const f: Real = (x) => computeWithin(formula, { ...si, [name]: x }) - target.si
  const root = theRoot(f, ends, FORMULA_POINTS, { where, unknown: name, kind: input.kind, target })
  const solution = fromSi(input.kind, root, symbolsOf(input.kind)[0] as string)
  // Evaluated once more with units, so that a working shows the formula with the value found.
  formula({ ...known, [name]: solution } as never)
  return solution
}

function inputNamed(where: string, { inputs }: AnyFormula, name: unknown): Input {
  const input = typeof name === 'string' && Object.hasOwn(inputs, name) ? inputs[name] : undefined
  if (input !== undefined) return input
  const known = Object.keys(inputs)
  const nearest = nearestName(String(name), known)
  const issue = { path: 'unknown', expected: `an input: ${known.join(', ')}`, received: shown(name) }
  throw new InputError(where, [nearest === undefined ? issue : { ...issue, hint: `did you mean ${nearest}?` }])
}

function without(inputs: Inputs, unknown: string): Inputs {
  return Object.fromEntries(Object.entries(inputs).filter(([key]) => key !== unknown))
}

function solveFunction(work: Work, all: unknown): Quantity {
  const where = 'solve'
  const given = requireObject(where, 'given', all)
  refuseOthers(where, given, ['result', 'between'], 'field')
  const { result, between } = given
  if (!Array.isArray(between)) {
    const expected = "the interval to search, such as ['0.3 m²', '0.9 m²']"
    throw new InputError(where, [{ path: 'between', expected, received: shown(between) }])
  }
  const first = tell(where, 'between[0]', between[0])
  const [low, high] = interval(where, first.kind, between)
  const at = (x: number) => resultOf(where, work, fromSi(first.kind, x, first.unit))
  const points = scanPoints(low, high, FUNCTION_POINTS)
  const working = points.find((x) => !Number.isNaN(valueOrNaN(() => at(x).si)))
  // Where no point works, the first one tells why.
  const target = read(where, 'result', unrecorded(() => at(working ?? low)).kind, result)
  const f: Real = (x) => valueOrNaN(() => at(x).si) - target.si
  const root = theRoot(f, [low, high], FUNCTION_POINTS, { where, unknown: 'value', kind: first.kind, target })
  const solution = fromSi(first.kind, root, first.unit)
  at(root)
  return solution
}

/** The ends of an interval to search, in SI units; they may be infinite. */
type Ends = readonly [low: number, high: number]

function boundsOf({ kind, limits }: Input): Ends {
  const { min, above, max, below } = limits
  const floor = kind === 'temperature' ? 0 : Number.NEGATIVE_INFINITY
  return [min ?? above ?? floor, max ?? below ?? Number.POSITIVE_INFINITY]
}

/** The part of an interval that lies within the bounds of an input. */
function within(where: string, input: Input, [from, to]: Ends): Ends {
  const [least, greatest] = boundsOf(input)
  if (from <= greatest && to >= least) return [Math.max(from, least), Math.min(to, greatest)]
  const expected = `an interval within the bounds of the input, ${boundsText(input.kind, input.limits)}`
  const received = `${siText(input.kind, from)} to ${siText(input.kind, to)}`
  throw new InputError(where, [{ path: 'between', expected, received }])
}

function interval(where: string, kind: Kind, between: unknown): Ends {
  const ends = Array.isArray(between) ? between : []
  if (ends.length !== 2) {
    throw new InputError(where, [{ path: 'between', expected: 'a list of two ends', received: shown(between) }])
  }
  const [from, to] = together<[Quantity, Quantity]>(
    where,
    () => read(where, 'between[0]', kind, ends[0]),
    () => read(where, 'between[1]', kind, ends[1]),
  )
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

function theRoot(f: Real, [low, high]: Ends, count: number, { where, unknown, kind, target }: Question): number {
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
