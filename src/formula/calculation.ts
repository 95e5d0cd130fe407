/** A calculation as a function of SI numbers: what solving, sweeping and propagating work on. */
import { InputError, type InputIssue, shown } from '../quantity/errors.js'
import type { Kind, Quantity, UnitOf } from '../quantity/index.js'
import { fromSi } from '../quantity/quantity.js'
import { isQuantity, issueWith, kindsOfUnit, listed, readValue } from '../quantity/read.js'
import { type AnyFormula, isValid, readInputs, unknownKey, within } from './formula.js'
import { unrecorded } from './record.js'

type KindOfUnit<U extends string> = { [K in Kind]: U extends UnitOf<K> ? K : never }[Kind]

/** The quantity that a given value stands for: its own kind, or the kind that its unit tells. @internal */
export type QuantityOf<G> =
  G extends Quantity<infer K>
    ? Quantity<K>
    : G extends number | `${number}`
      ? Quantity<'ratio'>
      : G extends `${number} ${infer U}`
        ? Quantity<KindOfUnit<U>>
        : never

/** A function of quantities, by name. @internal */
export type Work = (given: never) => Quantity

/** Whether a calculation is a formula rather than another function. @internal */
export function isFormula(calculation: AnyFormula | Work): calculation is AnyFormula {
  return typeof calculation === 'function' && 'compute' in calculation && 'expression' in calculation
}

/** Refuses what is neither a formula nor another function. @internal */
export function requireWork(where: string, work: unknown): void {
  if (typeof work === 'function') return
  throw new InputError(where, [{ path: 'work', expected: 'a formula or another function', received: shown(work) }])
}

/** Reads a value without being told its kind, which its unit must tell. @internal */
export function tell(where: string, path: string, value: unknown): Quantity {
  if (isQuantity(value)) return value as unknown as Quantity
  if (readValue('ratio', value) !== undefined) return read(where, path, 'ratio', value)
  const unit = typeof value === 'string' ? (/[^\d.,\s+\u2212-].*$/.exec(value)?.[0] ?? '') : ''
  const kinds = unit === '' ? [] : kindsOfUnit(unit)
  const [kind] = kinds
  if (kind === undefined) {
    const expected = "a quantity, or text with a unit such as '0.55 m²'"
    throw new InputError(where, [{ path, expected, received: shown(value) }])
  }
  if (kinds.length === 1) return read(where, path, kind, value)
  const expected = `a value of one kind: write ${listed(kinds.map((each) => `quantity('${each}', ${shown(value)})`))}`
  throw new InputError(where, [{ path, expected, received: shown(value), hint: `${unit} measures several kinds` }])
}

/** Does several things that may each refuse their input, and throws all that is wrong at once. @internal */
export function together<T extends readonly unknown[]>(where: string, ...works: { [P in keyof T]: () => T[P] }): T {
  const issues: InputIssue[] = []
  const results = works.map((work) => {
    try {
      return work()
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      issues.push(...error.issues)
      return undefined
    }
  })
  if (issues.length > 0) throw new InputError(where, issues)
  return results as unknown as T
}

/** Refuses what is not an object whose keys can be read. @internal */
export function requireObject(
  where: string,
  path: string,
  value: unknown,
  expected = 'an object with a value for each name',
): { readonly [key: string]: unknown } {
  if (typeof value === 'object' && value !== null && !Array.isArray(value) && !isQuantity(value)) return value as never
  throw new InputError(where, [{ path, expected, received: shown(value) }])
}

/** Refuses keys that mean nothing, which would be ignored in silence. @internal */
export function refuseOthers(where: string, value: object, known: readonly string[], sort: string, path = ''): void {
  const issues = Object.entries(value)
    .filter(([key, each]) => each !== undefined && !known.includes(key))
    .map(([key, each]) => ({ ...unknownKey(key, each, known, sort), path: `${path}${key}` }))
  if (issues.length > 0) throw new InputError(where, issues)
}

/** Reads a value of a kind, or throws what is wrong with it. @internal */
export function read<K extends Kind>(where: string, path: string, kind: K, value: unknown): Quantity<K> {
  const number = readValue(kind, value)
  if (number === undefined) throw new InputError(where, [issueWith(path, kind, value)])
  return isQuantity(value) ? (value as unknown as Quantity<K>) : fromSi(kind, number.si, number.scale.symbol)
}

/** A calculation with its inputs read once, to be evaluated at many points. @internal */
export interface Calculation {
  readonly name: string
  /** The inputs, in order, in the units in which they were given. */
  readonly inputs: { readonly [key: string]: Quantity }
  /** The result at SI inputs; what is not named stays as given. */
  quantityAt(si: { readonly [key: string]: number }): Quantity
  /** The SI result at SI inputs, or not a number where the calculation refuses. Nothing is recorded. */
  valueAt(si: { readonly [key: string]: number }): number
}

/**
 * Binds a calculation to inputs. A formula checks them as in any call; the kinds of another function's
 * inputs are told by their units.
 *
 * @internal
 */
export function bind(where: string, work: AnyFormula | Work, given: { readonly [key: string]: unknown }): Calculation {
  if (!isFormula(work)) {
    const inputs = Object.fromEntries(Object.entries(given).map(([key, value]) => [key, tell(where, key, value)]))
    const quantityAt: Calculation['quantityAt'] = (si) => resultOf(where, work, shifted(inputs, si))
    return { name: where, inputs, quantityAt, valueAt: (si) => valueOrNaN(() => quantityAt(si).si) }
  }
  const base = readInputs(work, given)
  const inputs = Object.fromEntries(
    Object.entries(work.inputs).map(([key, input]) => [
      key,
      read(work.name, key, input.kind, given[key] ?? input.default),
    ]),
  )
  return {
    name: work.name,
    inputs,
    quantityAt: (si) => work(shifted(inputs, si) as never),
    valueAt: (si) => computeWithin(work, { ...base, ...si }),
  }
}

/** The inputs with some of them moved to other SI values. */
function shifted(inputs: { readonly [key: string]: Quantity }, si: { readonly [key: string]: number }) {
  const moved = Object.entries(si).map(([key, value]) => {
    const input = inputs[key] as Quantity
    return [key, fromSi(input.kind, value, input.unit)]
  })
  return { ...inputs, ...Object.fromEntries(moved) }
}

/** What a function of quantities gives, which must be a quantity. @internal */
export function resultOf(where: string, work: Work, given: unknown): Quantity {
  const result: unknown = work(given as never)
  if (isQuantity(result)) return result as unknown as Quantity
  const expected = 'a function that returns a quantity'
  throw new InputError(where, [{ path: 'work', expected, received: `one that returns ${shown(result)}` }])
}

/** The value of some work, or not a number where it refuses its input or has no result. @internal */
export function valueOrNaN(work: () => number): number {
  try {
    return unrecorded(work)
  } catch (error) {
    // By code and not by class: the work may use another copy of the package.
    const { code } = Object(error) as { code?: unknown }
    if (code === 'ERR_KERBWATT_INPUT' || code === 'ERR_KERBWATT_CALCULATION') return Number.NaN
    throw error
  }
}

/** The result of a formula at SI inputs, not a number outside its bounds or its range of validity. @internal */
export function computeWithin(formula: AnyFormula, si: { readonly [key: string]: number }): number {
  for (const key in formula.inputs) {
    if (!within(si[key] as number, formula.inputs[key]?.limits ?? {})) return Number.NaN
  }
  const value = isValid(formula, si) ? formula.compute(si) : Number.NaN
  return Number.isFinite(value) ? value : Number.NaN
}
