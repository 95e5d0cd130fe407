/**
 * How uncertain a result is, and which input makes it so: JCGM 100:2008 (the GUM, first order) and
 * JCGM 101:2008 (Monte Carlo).
 */
import { CalculationError, InputError, type InputIssue, shown } from '../quantity/errors.js'
import type { DifferenceOf, Given, Kind, Measured, Quantity } from '../quantity/index.js'
import { differenceOf, kinds } from '../quantity/kinds.js'
import { type PlusMinus, readMeasured, valueText } from '../quantity/measured.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi } from '../quantity/quantity.js'
import { listed, readValue } from '../quantity/read.js'

import {
  bind,
  type Calculation,
  isFormula,
  type QuantityOf,
  read,
  refuseOthers,
  requireObject,
  requireWork,
  tell,
  together,
  type Work,
} from './calculation.js'
import type { AnyFormula, Constants, Formula, GivenTo, Inputs } from './formula.js'
import { normal, uniform } from './random.js'

/**
 * A value alone, taken as exact, or with its uncertainty: in text the expanded one (k = 2) after ±, in a pair the
 * standard one (one standard deviation). `'300 A ± 10 A'` is `['300 A', '5 A']`.
 */
export type Uncertain<K extends Kind> =
  | Measured<K>
  | readonly [value: Given<K>, standardUncertainty: Given<DifferenceOf<K>>]

/** How to propagate. First order, unless Monte Carlo is asked for. */
export type PropagateOptions = {
  /** Pairs of inputs with their correlation coefficient, from -1 to 1; what is not named is independent. */
  readonly correlations?: readonly (readonly [input: string, other: string, coefficient: number])[]
} & (
  | { readonly method?: 'first-order' }
  | {
      readonly method: 'monte-carlo'
      /** How many draws, at least 100; 100 000 give the uncertainty to about 0.5 %. */
      readonly trials: number
      /** A whole number; the same seed gives the same result. */
      readonly seed: number
    }
)

/** What one input adds to the uncertainty of a result. */
export interface Contribution {
  readonly input: string
  /** The change of the result with the input, in SI units of the one per SI unit of the other. */
  readonly sensitivity: number
  /** The uncertainty of the result from this input alone: the sensitivity times the input's uncertainty. */
  readonly uncertainty: Quantity
  /** The share of the result's variance. With correlated inputs it can be negative; the shares add up to 1. */
  readonly share: number
}

/** A result with its uncertainty. */
export interface Propagated<R extends Kind> {
  /** The result at the given values; with Monte Carlo, the mean of the draws. */
  readonly value: Quantity<R>
  /** One standard deviation. */
  readonly standardUncertainty: Quantity<DifferenceOf<R>>
  /** The expanded uncertainty: twice the standard uncertainty (k = 2), about 95 % of what to expect if normal. */
  readonly expanded: Quantity<DifferenceOf<R>>
  /** The interval that holds about 95 %: value ± expanded, or between the 2.5 % and 97.5 % quantiles of the draws. */
  readonly interval: readonly [Quantity<R>, Quantity<R>]
  /** What each input adds, to first order, the largest share first: the measurement that is most worth improving. */
  readonly contributions: readonly Contribution[]
}

/**
 * Propagates the uncertainties of inputs to the result of a function of quantities.
 *
 * @param work - The function, of an object with a quantity for each input.
 * @param inputs - Each input as a value, as text `'value ± expanded uncertainty'` (k = 2), or as
 *   `[value, standard uncertainty]`, in units that tell their kind.
 */
export function propagate<const G extends { readonly [key: string]: Told | readonly [Told, Told] }, R extends Kind>(
  work: ((given: { readonly [P in keyof G]: ValueOf<G[P]> }) => Quantity<R>) & { readonly expression?: never },
  inputs: G & Fitting<G>,
  options?: PropagateOptions,
): Propagated<R>
/**
 * Propagates the uncertainties of inputs to the result of a formula.
 *
 * First order, as JCGM 100:2008, 5.1 and 5.2 (central differences; one-sided where a bound is near), or by
 * draws from normal distributions, as JCGM 101:2008.
 *
 * @param formula - The formula.
 * @param inputs - Each input as a value, taken as exact; as text with its expanded uncertainty (k = 2), such as
 *   `'300 A ± 10 A'` or `'300 A ± 3 %'`; or as `[value, standard uncertainty]`, such as `['300 A', '5 A']`.
 * @param options - Correlations; `{ method: 'monte-carlo', trials, seed }`.
 * @returns The result, its standard and expanded uncertainty, and what each input contributes.
 * @throws InputError when an input, an uncertainty or a correlation cannot be used.
 * @throws CalculationError when the result has no value near the given inputs, or a draw falls where the
 *   formula has no result; nothing is left out or clamped.
 */
export function propagate<I extends Inputs, R extends Kind, C extends Constants>(
  formula: Formula<I, R, C>,
  inputs: { readonly [P in keyof GivenTo<I>]: P extends keyof I ? Uncertain<I[P]['kind']> : never },
  options?: PropagateOptions,
): Propagated<R>
export function propagate(work: AnyFormula | Work, inputs: unknown, options: unknown = {}): Propagated<Kind> {
  requireWork('propagate', work)
  const where = isFormula(work) ? `propagate(${work.name})` : 'propagate'
  const entries = Object.entries(requireObject(where, 'inputs', inputs))
  const pairs = together<Pair[]>(where, ...entries.map((entry) => () => pairOf(where, work, ...entry)))
  const how = readOptions(where, options)
  const calculation = bind(where, work, Object.fromEntries(pairs.map(({ key, value }) => [key, value])))
  const uncertain = together<(UncertainInput | undefined)[]>(
    where,
    ...pairs.map((pair) => () => uncertainOf(where, pair, calculation)),
  ).filter((input) => input !== undefined)
  const correlation = correlationMatrix(where, uncertain, how.correlations)
  const result = calculation.quantityAt({})
  const parts = uncertain.map((input): Part => {
    const slope = sensitivity(where, calculation, input, result.si)
    return { input: input.key, slope, deviation: slope * input.uncertainty }
  })
  const shares = parts.map(({ deviation }, i) =>
    parts.reduce((sum, other, j) => sum + deviation * other.deviation * (correlation[i]?.[j] as number), 0),
  )
  if (how.method === 'monte-carlo') {
    const { mean, deviation, low, high } = draw(where, calculation, uncertain, correlation, how)
    return outcome(where, result, parts, shares, { value: mean, deviation, low, high })
  }
  // Full cancellation of correlated parts may leave a variance a rounding error below zero.
  const deviation = Math.sqrt(Math.max(0, sumOf(shares)))
  const [low, high] = [result.si - 2 * deviation, result.si + 2 * deviation]
  return outcome(where, result, parts, shares, { value: result.si, deviation, low, high })
}

/** What an input adds: the slope of the result along it, and that slope times its uncertainty. */
interface Part {
  readonly input: string
  readonly slope: number
  readonly deviation: number
}

/** The spread of a result in SI numbers. */
interface Spread {
  readonly value: number
  readonly deviation: number
  readonly low: number
  readonly high: number
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => a + b, 0)
}

/** A spread as quantities, shown in the unit of the result; the uncertainty of a temperature is a difference. */
function outcome(
  where: string,
  result: Quantity,
  parts: readonly Part[],
  shares: readonly number[],
  { value, deviation, low, high }: Spread,
): Propagated<Kind> {
  if (result.kind === 'temperature' && low < 0) {
    throw new CalculationError(where, 'the interval would reach below absolute zero: draw with the Monte Carlo method')
  }
  const kind = differenceOf(result.kind)
  const unit = result.kind === 'temperature' && result.unit !== '°F' ? 'K' : result.unit
  const difference = (si: number) => fromSi(kind, finite(where, si), unit)
  const at = (si: number) => fromSi(result.kind, finite(where, si), result.unit)
  const variance = sumOf(shares)
  const contributions = parts.map(({ input, slope, deviation: part }, i) => ({
    input,
    sensitivity: slope,
    uncertainty: difference(Math.abs(part)),
    share: variance <= 0 ? 0 : (shares[i] as number) / variance,
  }))
  return {
    value: at(value),
    standardUncertainty: difference(deviation),
    expanded: difference(2 * deviation),
    interval: [at(low), at(high)],
    contributions: contributions.sort((a, b) => b.share - a.share),
  }
}

/** The options as they are worked with. */
type How = { readonly correlations: readonly unknown[] } & (
  | { readonly method: 'first-order' }
  | { readonly method: 'monte-carlo'; readonly trials: number; readonly seed: number }
)

/** More draws than the memory of a small machine should be asked to hold. */
const MOST_TRIALS = 10_000_000

function readOptions(where: string, options: unknown): How {
  const given = requireObject(where, 'options', options)
  refuseOthers(where, given, ['correlations', 'method', 'trials', 'seed'], 'option')
  const { correlations = [], method = 'first-order', trials, seed } = given
  const issues: InputIssue[] = []
  if (!Array.isArray(correlations)) {
    const expected = "a list such as [['voltage', 'current', -0.36]]"
    issues.push({ path: 'correlations', expected, received: shown(correlations) })
  }
  if (method !== 'first-order' && method !== 'monte-carlo') {
    issues.push({ path: 'method', expected: "'first-order' or 'monte-carlo'", received: shown(method) })
  }
  if (method === 'monte-carlo') {
    if (!(Number.isInteger(trials) && Number(trials) >= 100 && Number(trials) <= MOST_TRIALS)) {
      const expected = `a whole number from 100 to ${MOST_TRIALS}, such as 100000`
      issues.push({ path: 'trials', expected, received: shown(trials) })
    }
    if (!Number.isSafeInteger(seed)) {
      issues.push({ path: 'seed', expected: 'a whole number such as 1', received: shown(seed) })
    }
  }
  if (issues.length > 0) throw new InputError(where, issues)
  return { correlations, method, trials, seed } as How
}

type Told = Quantity | string | number

/** The quantity that an input stands for, without its uncertainty. */
type ValueOf<G> = G extends readonly [infer V, unknown]
  ? QuantityOf<V>
  : G extends `${infer V} ${PlusMinus} ${string}`
    ? QuantityOf<V>
    : QuantityOf<G>

/** Refuses text whose uncertainty does not fit its value. */
type Fitting<G> = {
  readonly [P in keyof G]: G[P] extends `${string} ${PlusMinus} ${string}`
    ? ValueOf<G[P]> extends Quantity<infer K>
      ? Measured<K>
      : never
    : unknown
}

/** An input that is not exact. */
interface UncertainInput {
  readonly key: string
  readonly si: number
  readonly uncertainty: number
}

/** What was given for an input: a value, and its standard uncertainty unless it is exact. */
interface Pair {
  readonly key: string
  readonly value: unknown
  readonly uncertainty?: unknown
}

function pairOf(where: string, work: AnyFormula | Work, key: string, given: unknown): Pair {
  if (!Array.isArray(given)) return measuredPair(where, work, key, given) ?? { key, value: given }
  if (given.length === 2) return { key, value: given[0], uncertainty: given[1] }
  const expected = "a value, or a list of a value and its standard uncertainty such as ['300 A', '5 A']"
  throw new InputError(where, [{ path: key, expected, received: `a list of ${given.length}` }])
}

/** The pair that text with a ± stands for; undefined where there is no ±, or no such input, which is refused later. */
function measuredPair(where: string, work: AnyFormula | Work, key: string, given: unknown): Pair | undefined {
  const text = valueText(given)
  if (text === undefined) return undefined
  const kind = isFormula(work) ? work.inputs[key]?.kind : kindTold(where, key, text, given)
  const measured = kind && readMeasured(kind, given)
  if (measured === undefined) return undefined
  if (!('value' in measured)) throw new InputError(where, [{ ...measured, path: key }])
  return { key, value: measured.value, uncertainty: measured.standardUncertainty }
}

/** The kind that the units of a measured text tell. Where they tell several, only a list can say which. */
function kindTold(where: string, key: string, text: string, given: unknown): Kind {
  const able = (Object.keys(kinds) as Kind[])
    .filter((kind) => readValue(kind, text) !== undefined)
    .map((kind) => readMeasured(kind, given))
    .filter((measured) => measured !== undefined && 'value' in measured)
  const [first, second] = able
  if (first === undefined) return tell(where, key, text).kind
  if (second === undefined) return first.value.kind
  const lists = able.map(
    ({ value, standardUncertainty }) => `[quantity('${value.kind}', '${text}'), '${standardUncertainty.toJSON()}']`,
  )
  const expected = `a list with the standard uncertainty, half of what follows ±: ${listed(lists)}`
  const hint = 'its units measure several kinds'
  throw new InputError(where, [{ path: key, expected, received: shown(given), hint }])
}

function uncertainOf(where: string, { key, uncertainty }: Pair, calculation: Calculation): UncertainInput | undefined {
  const input = calculation.inputs[key]
  if (uncertainty === undefined || input === undefined) return undefined
  const { si } = read(where, `${key}[1]`, differenceOf(input.kind), uncertainty)
  if (si >= 0) return si === 0 ? undefined : { key, si: input.si, uncertainty: si }
  const expected = 'a standard uncertainty, not below zero'
  throw new InputError(where, [{ path: `${key}[1]`, expected, received: shown(uncertainty) }])
}

function correlationMatrix(
  where: string,
  uncertain: readonly UncertainInput[],
  correlations: readonly unknown[],
): number[][] {
  const keys = uncertain.map((input) => input.key)
  const matrix: number[][] = keys.map((_, i) => keys.map((_, j) => (i === j ? 1 : 0)))
  const named = new Set<string>()
  const issues = correlations.flatMap((correlation, n) => {
    const path = `correlations[${n}]`
    const [first, second, coefficient] = Array.isArray(correlation) ? correlation : []
    const found = correlationIssues(path, keys, first, second, coefficient)
    const pair = [first, second].sort().join(' ')
    if (found.length === 0 && named.has(pair)) {
      found.push({ path, expected: 'each pair of inputs once', received: `${first} and ${second} again` })
    }
    named.add(pair)
    const [i, j] = [keys.indexOf(first), keys.indexOf(second)]
    if (found.length === 0)
      for (const [row, column] of [
        [i, j],
        [j, i],
      ] as const)
        (matrix[row] as number[])[column] = coefficient
    return found
  })
  if (issues.length === 0 && rootOf(matrix) === undefined) {
    const expected = 'coefficients that can all hold at once (a matrix without negative eigenvalues)'
    issues.push({ path: 'correlations', expected, received: JSON.stringify(correlations) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
  return matrix
}

function correlationIssues(
  path: string,
  keys: readonly string[],
  first: unknown,
  second: unknown,
  coefficient: unknown,
) {
  const issues: InputIssue[] = []
  for (const name of [first, second].filter((each) => !keys.includes(each as string))) {
    const nearest = nearestName(String(name), keys)
    const issue = { path, expected: `inputs with an uncertainty: ${keys.join(', ')}`, received: shown(name) }
    issues.push(nearest === undefined ? issue : { ...issue, hint: `did you mean ${nearest}?` })
  }
  if (first === second && keys.includes(first as string)) {
    issues.push({ path, expected: 'two different inputs', received: `${first} twice` })
  }
  if (!(typeof coefficient === 'number' && coefficient >= -1 && coefficient <= 1)) {
    issues.push({ path: `${path}[2]`, expected: 'a coefficient from -1 to 1', received: shown(coefficient) })
  }
  return issues
}

/** The lower triangle whose product with its transpose is the matrix (Cholesky), or undefined when there is none. */
function rootOf(matrix: readonly (readonly number[])[]): number[][] | undefined {
  const root: number[][] = []
  for (const [i, line] of matrix.entries()) {
    const row: number[] = []
    root.push(row)
    for (let j = 0; j <= i; j++) {
      const other = root[j] as number[]
      const rest =
        (line[j] as number) - row.reduce((sum, value, k) => (k < j ? sum + value * (other[k] as number) : sum), 0)
      const diagonal = other[j] as number
      if (j < i) {
        // A zero on the diagonal: the earlier input is wholly determined, and only a zero can follow.
        if (diagonal === 0 && Math.abs(rest) > 1e-9) return undefined
        row.push(diagonal === 0 ? 0 : rest / diagonal)
      } else {
        if (rest < -1e-9) return undefined
        row.push(rest < 1e-12 ? 0 : Math.sqrt(rest))
      }
    }
  }
  return root
}

/** The step of a central difference with the least error in double precision: the cube root of the spacing. */
const STEP = Math.cbrt(Number.EPSILON)

/** The change of the result with an input: a central difference, or a one-sided one of the same order at a bound. */
function sensitivity(where: string, calculation: Calculation, input: UncertainInput, result: number): number {
  const whole = STEP * Math.max(Math.abs(input.si), input.uncertainty)
  const slopes = [whole, whole / 16].map((step) => slopeOver(step, calculation, input, result))
  const [slope, closer] = slopes as [number | undefined, number | undefined]
  const shownInput = `${input.key} = ${calculation.inputs[input.key]}`
  if (slope === undefined || closer === undefined) {
    throw new CalculationError(where, `the result has no values near ${shownInput}`)
  }
  // Where the two disagree by more than rounding the result has a corner or an upright tangent there.
  const doubt = Math.abs(slope - closer) * input.uncertainty
  if (doubt > 0.01 * Math.abs(slope) * input.uncertainty && doubt > 1e-6 * Math.abs(result)) {
    throw new CalculationError(
      where,
      `the result has no steady slope at ${shownInput}: draw with the Monte Carlo method`,
    )
  }
  return slope
}

function slopeOver(step: number, calculation: Calculation, input: UncertainInput, result: number): number | undefined {
  const at = (steps: number) => calculation.valueAt({ [input.key]: input.si + steps * step })
  return [
    (at(1) - at(-1)) / (2 * step),
    (4 * at(1) - at(2) - 3 * result) / (2 * step),
    (3 * result - 4 * at(-1) + at(-2)) / (2 * step),
  ].find((estimate) => Number.isFinite(estimate))
}

function finite(where: string, si: number): number {
  if (Number.isFinite(si)) return si + 0
  throw new CalculationError(where, 'the uncertainty is not finite')
}

function draw(
  where: string,
  calculation: Calculation,
  uncertain: readonly UncertainInput[],
  correlation: readonly (readonly number[])[],
  { trials, seed }: { readonly trials: number; readonly seed: number },
) {
  const root = rootOf(correlation) as number[][]
  const random = normal(uniform(seed))
  const results = new Float64Array(trials)
  for (let trial = 0; trial < trials; trial++) {
    const independent = uncertain.map(() => random())
    const point = uncertain.map((input, i): [string, number] => {
      const deviate = (root[i] as number[]).reduce((sum, weight, k) => sum + weight * (independent[k] as number), 0)
      return [input.key, input.si + input.uncertainty * deviate]
    })
    const value = calculation.valueAt(Object.fromEntries(point))
    if (Number.isNaN(value)) refuse(where, calculation, point, trial)
    results[trial] = value
  }
  results.sort()
  const mean = results.reduce((a, b) => a + b, 0) / trials
  const deviation = Math.sqrt(results.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (trials - 1))
  const quantile = (p: number) => results[Math.min(trials - 1, Math.round(p * (trials - 1)))] as number
  return { mean, deviation, low: quantile(0.025), high: quantile(0.975) }
}

/** A draw fell where there is no result: the normal distribution does not suit the input. */
function refuse(where: string, calculation: Calculation, point: readonly [string, number][], trial: number): never {
  const figures = Object.fromEntries(
    point.map(([key, si]) => {
      const input = calculation.inputs[key] as Quantity
      return [key, String(fromSi(input.kind, si, input.unit))]
    }),
  )
  const list = Object.entries(figures).map(([key, text]) => `${key} ${text}`)
  const message = `draw ${trial + 1} has no result: ${list.join(', ')}. The uncertainty reaches beyond what the calculation allows; use the first-order method or a smaller uncertainty`
  throw new CalculationError(where, message, figures)
}
