/** A formula as a value: what it computes, how it is printed, in what units, within what bounds, on whose authority. */
import { CalculationError, InputError, type InputIssue, shown } from '../quantity/errors.js'
import type { Given, Kind, Quantity, UnitOf } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi, quantity } from '../quantity/quantity.js'
import { isQuantity, issueWith, kindInWords, listed, readSi, scaleFor, symbolsOf } from '../quantity/read.js'
import { recording } from './record.js'
import { type Source, sourceText } from './source.js'

/** Bounds that physics sets on a value. A plain number is in SI units. */
export interface Bounds<K extends Kind> {
  /** The least value allowed. */
  readonly min?: number | Given<K>
  /** The value must be above this. */
  readonly above?: number | Given<K>
  /** The greatest value allowed. */
  readonly max?: number | Given<K>
  /** The value must be below this. */
  readonly below?: number | Given<K>
}

/** Bounds in SI units. */
export interface Limits {
  readonly min?: number
  readonly above?: number
  readonly max?: number
  readonly below?: number
}

/** An input of a formula. */
export interface Input<K extends Kind = Kind> {
  readonly kind: K
  /** How the expression writes it. */
  readonly symbol: string
  /** What it is, in a few words. */
  readonly about: string
  readonly limits: Limits
  /** What stands when the input is left out; undefined when it must be given. */
  readonly default?: Quantity<K>
  /** On what ground the default stands. */
  readonly because?: string
}

/** The result of a formula. */
export interface Output<K extends Kind = Kind> {
  readonly kind: K
  readonly symbol: string
  readonly about: string
  /** The unit in which the result is shown. */
  readonly unit: string
}

/** A constant of nature or of a published correlation, with its unit and source. */
export interface Constant<K extends Kind = Kind> {
  readonly value: Quantity<K>
  readonly about: string
  readonly source: Source
}

/** A range outside which a published correlation is not known to hold. */
export interface Validity<Values, Constants> extends Limits {
  /** What is bounded, such as `Ra` or `final - initial`. */
  readonly of: string
  /** What it measures, where it is no plain number: a refusal then shows it with its unit. */
  readonly kind?: Kind
  /** Its value, from SI inputs. */
  readonly value: (si: Values, constants: Constants) => number
  /**
   * Where the inputs are sound and what they ask for does not exist: what to say of it, such as the temperature that a
   * heater reaches instead. The refusal is then a CalculationError.
   */
  readonly otherwise?: (si: Values, constants: Constants) => string
}

/** The inputs of a formula by the names under which they are given. */
export interface Inputs {
  readonly [key: string]: Input
}
/** The constants of a formula by the symbols of its expression. */
export interface Constants {
  readonly [symbol: string]: Constant
}

type OptionalKeys<I extends Inputs> = { [P in keyof I]: I[P] extends { default: Quantity } ? P : never }[keyof I]
type Flat<T> = { [P in keyof T]: T[P] }

/** What a formula is called with: each input as a quantity or as text; those with a default may be left out. */
export type GivenTo<I extends Inputs> = Flat<
  { readonly [P in Exclude<keyof I, OptionalKeys<I>>]: Given<I[P]['kind']> } & {
    readonly [P in OptionalKeys<I>]?: Given<I[P]['kind']>
  }
>
/** The inputs as plain numbers in SI units. */
export type SiOf<I extends object> = { readonly [P in keyof I]: number }

/** What describes a formula: all that the library knows of it stands here, once. */
export interface Description<I extends Inputs, R extends Kind, C extends Constants> {
  /** The name under which it is exported. */
  readonly name: string
  /** What it gives, as a heading. */
  readonly title: string
  readonly inputs: I
  readonly result: Output<R>
  /** The right-hand side in plain ASCII mathematics over the input symbols, constants and `pi`. */
  readonly expression: string
  readonly constants?: C
  /** Ranges of derived values outside which the formula refuses. */
  readonly valid?: readonly Validity<SiOf<I>, SiOf<C>>[]
  /** What is taken for granted, in short sentences. */
  readonly assumes?: readonly string[]
  /** What can hurt, and the usual precaution. */
  readonly cautions?: readonly string[]
  readonly source: Source
  /** The arithmetic, in SI units, radians and radians per second. */
  readonly compute: (si: SiOf<I>, constants: SiOf<C>) => number
}

/** A formula: call it with units, or read what it is. */
export interface Formula<I extends Inputs = Inputs, R extends Kind = Kind, C extends Constants = Constants> {
  /**
   * Evaluates the formula.
   *
   * @throws InputError that lists everything wrong with the inputs.
   * @throws CalculationError when the result is not finite.
   */
  (given: GivenTo<I>): Quantity<R>
  /** SI numbers in, SI number out; nothing is checked. */
  readonly compute: (si: SiOf<I>, constants?: SiOf<C>) => number
  readonly name: string
  readonly title: string
  readonly inputs: I
  readonly result: Output<R>
  readonly expression: string
  readonly constants: C
  readonly valid: readonly Validity<SiOf<I>, SiOf<C>>[]
  readonly assumes: readonly string[]
  readonly cautions: readonly string[]
  readonly source: Source
}

/** Any formula, where it is read and not called by the names of its inputs. */
export interface AnyFormula extends Omit<Formula, 'compute' | 'valid'> {
  (given: never): Quantity
  /** SI numbers in, SI number out; nothing is checked. */
  compute(si: { readonly [key: string]: number }, constants?: { readonly [symbol: string]: number }): number
  readonly valid: readonly (Limits & {
    readonly of: string
    readonly kind?: Kind
    /** Its value, from SI inputs. */
    value(si: { readonly [key: string]: number }, constants: { readonly [symbol: string]: number }): number
    /** What to say where the inputs are sound and what they ask for does not exist. */
    otherwise?(si: { readonly [key: string]: number }, constants: { readonly [symbol: string]: number }): string
  })[]
}

/**
 * Describes an input.
 *
 * @param kind - What it measures.
 * @param symbol - How the expression writes it: letters and digits.
 * @param about - What it is, in a few words.
 * @param bounds - Bounds that physics sets, in SI units or as text, and a `default` where the input may be left out,
 *   with its ground, `because`.
 */
/* @__NO_SIDE_EFFECTS__ */
export function input<K extends Kind>(
  kind: K,
  symbol: string,
  about: string,
  bounds: Bounds<NoInfer<K>> & { readonly default: Given<NoInfer<K>>; readonly because: string },
): Input<K> & { readonly default: Quantity<K>; readonly because: string }
/* @__NO_SIDE_EFFECTS__ */
export function input<K extends Kind>(
  kind: K,
  symbol: string,
  about: string,
  bounds: Bounds<NoInfer<K>> & { readonly default: Given<NoInfer<K>> },
): Input<K> & { readonly default: Quantity<K> }
/* @__NO_SIDE_EFFECTS__ */
export function input<K extends Kind>(kind: K, symbol: string, about: string, bounds?: Bounds<NoInfer<K>>): Input<K>
/* @__NO_SIDE_EFFECTS__ */
export function input<K extends Kind>(
  kind: K,
  symbol: string,
  about: string,
  bounds: Bounds<K> & { readonly default?: Given<K>; readonly because?: string } = {},
): Input<K> {
  const limits = limitsOf(kind, bounds)
  const described = { kind, symbol, about, limits }
  if (bounds.default === undefined) return described
  const ground = bounds.because === undefined ? {} : { because: bounds.because }
  return { ...described, default: quantity(kind, bounds.default), ...ground }
}

function unitSymbol(kind: Kind, unit: string): string {
  const scale = scaleFor(kind, unit)
  if (scale !== undefined) return scale.symbol
  const expected = `a unit of ${kindInWords(kind)}: ${listed(symbolsOf(kind))}`
  throw new InputError('output', [{ path: 'unit', expected, received: shown(unit) }])
}

/** Bounds as SI numbers. An infinite bound is none; what is not a number is refused. @internal */
export function limitsOf<K extends Kind>(kind: K, bounds: Bounds<K>): Limits {
  const limits: { -readonly [P in keyof Limits]: Limits[P] } = {}
  for (const bound of ['min', 'above', 'max', 'below'] as const) {
    const value = bounds[bound]
    if (value === undefined || value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) continue
    const number = typeof value === 'number' ? value : quantity(kind, value).si
    if (Number.isNaN(number)) throw new InputError('input', [{ path: bound, expected: 'a number', received: 'NaN' }])
    limits[bound] = number
  }
  return Object.freeze(limits)
}

/**
 * Describes a result.
 *
 * @param kind - What it measures.
 * @param symbol - How the printed formula writes it.
 * @param about - What it is, in a few words.
 * @param unit - The unit in which it is shown; the kind's first unit unless given.
 */
/* @__NO_SIDE_EFFECTS__ */
export function output<K extends Kind>(kind: K, symbol: string, about: string, unit?: UnitOf<K>): Output<K> {
  return { kind, symbol, about, unit: unit === undefined ? (symbolsOf(kind)[0] as string) : unitSymbol(kind, unit) }
}

/**
 * Describes a constant.
 *
 * @param kind - What it measures.
 * @param value - Its value, with its unit.
 * @param about - What it is, in a few words.
 * @param source - Where the value is published.
 */
/* @__NO_SIDE_EFFECTS__ */
export function constant<K extends Kind>(
  kind: K,
  value: Given<NoInfer<K>>,
  about: string,
  source: Source,
): Constant<K> {
  return { value: quantity(kind, value), about, source }
}

/**
 * Makes a formula from its description.
 *
 * @param description - Name, inputs, result, expression, source and arithmetic.
 * @returns A function of the inputs, with units, that also holds its description.
 */
/* @__NO_SIDE_EFFECTS__ */
export function formula<
  const I extends Inputs,
  const R extends Kind,
  // biome-ignore lint/complexity/noBannedTypes: no constants
  const C extends Constants = {},
>(description: Description<I, R, C>): Formula<I, R, C> {
  const { name, inputs, result, constants = {} as C, valid = [], assumes = [], cautions = [] } = description
  const { compute, title, expression, source } = description
  const own = siOf(constants) as SiOf<C>
  const evaluate = (given: GivenTo<I>): Quantity<R> => {
    const si = readInputs(self, given as { readonly [key: string]: unknown }) as SiOf<I>
    const value = compute(si, own)
    if (!Number.isFinite(value) || (result.kind === 'temperature' && value < 0)) throw noResult(self, si)
    const quantity = fromSi(result.kind, value + 0, result.unit)
    if (recording.steps !== undefined) {
      recording.steps.push(stepOf(self, given as { readonly [key: string]: unknown }, quantity))
    }
    return quantity
  }
  Object.defineProperty(evaluate, 'name', { value: name })
  const self = Object.assign(evaluate, {
    ...{ title, inputs, result, expression, constants, valid, assumes, cautions, source },
    compute: description.constants === undefined ? compute : (si: SiOf<I>, given = own) => compute(si, given),
  }) as unknown as Formula<I, R, C> & AnyFormula
  return Object.freeze(self)
}

/** Reads the inputs of a call to SI numbers, or throws all that is wrong with them at once. @internal */
export function readInputs(
  formula: AnyFormula,
  given: { readonly [key: string]: unknown },
): { readonly [key: string]: number } {
  const { inputs } = formula
  const si: { [key: string]: number } = {}
  if (typeof given !== 'object' || given === null || Array.isArray(given) || isQuantity(given)) {
    throw new InputError(formula.name, [{ path: '', expected: modelCall(formula), received: shown(given) }])
  }
  let usable = true
  // Every input has limits, and nothing that an object inherits does: quicker than asking what it owns.
  for (const key in given) if (inputs[key]?.limits === undefined && given[key] !== undefined) usable = false
  for (const key in inputs) {
    const input = inputs[key] as Input
    const value = given[key]
    const number = value === undefined ? (input.default?.si ?? Number.NaN) : readSi(input.kind, value)
    // Not a number keeps to no limits, but an input may have none.
    if (Number.isNaN(number) || !within(number, input.limits)) usable = false
    si[key] = number
  }
  if (!usable) throw new InputError(formula.name, issuesOf(given, inputs, si))
  if (formula.valid.length > 0) checkValid(formula, si)
  return si
}

/** All that is wrong with a call whose inputs were read to SI numbers, NaN where they could not be. */
function issuesOf(
  given: { readonly [key: string]: unknown },
  inputs: Inputs,
  si: { readonly [key: string]: number },
): InputIssue[] {
  const wrong = Object.entries(inputs).flatMap(([key, input]) => {
    const number = si[key] as number
    if (Number.isNaN(number)) return [issueWith(key, input.kind, given[key])]
    return within(number, input.limits) ? [] : [outOfBounds(key, input, number, given[key])]
  })
  return [...wrong, ...unknownKeys(given, inputs)]
}

/** Whether an SI number keeps to limits. Not a number keeps to none. @internal */
export function within(value: number, limits: Limits): boolean {
  const { min, above, max, below } = limits
  if (min !== undefined && !(value >= min)) return false
  if (above !== undefined && !(value > above)) return false
  if (max !== undefined && !(value <= max)) return false
  return below === undefined || value < below
}

/** Limits in words: `at least 0 A`, `above 0 and at most 1`. @internal */
export function limitsText(limits: Limits, text: (si: number) => string): string {
  const words: string[] = []
  if (limits.min !== undefined) words.push(`at least ${text(limits.min)}`)
  if (limits.above !== undefined) words.push(`above ${text(limits.above)}`)
  if (limits.max !== undefined) words.push(`at most ${text(limits.max)}`)
  if (limits.below !== undefined) words.push(`below ${text(limits.below)}`)
  return words.join(' and ')
}

/** An SI number of a kind as text in the kind's first unit. @internal */
export function siText(kind: Kind, si: number): string {
  const quantity = fromSi(kind, si, symbolsOf(kind)[0] as string)
  // Kelvins are five digits in °C: -273.15.
  return kind === 'temperature' ? quantity.format({ digits: 5 }) : String(quantity)
}

/** Limits of a kind in words: `at least 0 A`. @internal */
export function boundsText(kind: Kind, limits: Limits): string {
  return limitsText(limits, (si) => siText(kind, si))
}

function outOfBounds(path: string, input: Input, si: number, value: unknown): InputIssue {
  const bounds = boundsText(input.kind, input.limits)
  const received = typeof value === 'string' ? shown(value) : siText(input.kind, si)
  return { path, expected: `${kindInWords(input.kind)} ${bounds}`, received, hint: input.about }
}

function unknownKeys(given: { readonly [key: string]: unknown }, inputs: Inputs): InputIssue[] {
  const known = Object.keys(inputs)
  const issues: InputIssue[] = []
  // Inherited keys count too: what is given is what can be seen to be given.
  for (const key in given) {
    if (given[key] !== undefined && !known.includes(key)) issues.push(unknownKey(key, given[key], known, 'input'))
  }
  return issues
}

/** A key that is not among those known, with the nearest of them. @internal */
export function unknownKey(key: string, value: unknown, known: readonly string[], sort: string): InputIssue {
  const nearest = nearestName(key, known)
  const received = isQuantity(value) ? String(value) : shown(value)
  const issue = { path: key, expected: `no such ${sort}; there are ${known.join(', ')}`, received }
  return nearest === undefined ? issue : { ...issue, hint: `did you mean ${nearest}?` }
}

function modelCall(formula: AnyFormula): string {
  const keys = Object.entries(formula.inputs).map(([key, input]) => `${key}: ${kindInWords(input.kind)}`)
  return `an object { ${keys.join(', ')} }`
}

const siConstants = /*@__PURE__*/ new WeakMap<Constants, { readonly [symbol: string]: number }>()

/** Constants as SI numbers, made once for each set. */
function siOf(constants: Constants): { readonly [symbol: string]: number } {
  const known = siConstants.get(constants)
  if (known !== undefined) return known
  const made = Object.fromEntries(Object.entries(constants).map(([symbol, { value }]) => [symbol, value.si]))
  siConstants.set(constants, made)
  return made
}

/** Whether SI inputs lie in all the ranges in which the formula is known to hold. @internal */
export function isValid(formula: AnyFormula, si: { readonly [key: string]: number }): boolean {
  return formula.valid.every((range) => within(range.value(si, siOf(formula.constants)), range))
}

/** Refuses SI inputs outside the ranges in which the formula is known to hold. */
function checkValid(formula: AnyFormula, si: { readonly [key: string]: number }): void {
  const constants = siOf(formula.constants)
  const issues: InputIssue[] = []
  for (const range of formula.valid) {
    const value = range.value(si, constants)
    if (within(value, range)) continue
    if (range.otherwise !== undefined && issues.length === 0) {
      throw new CalculationError(formula.name, range.otherwise(si, constants), figuresOf(formula, si))
    }
    const { kind } = range
    const text = (number: number) => (kind === undefined ? String(Number(number.toPrecision(4))) : siText(kind, number))
    const expected = `${limitsText(range, text)}, the range of this formula (${sourceText(formula.source)})`
    issues.push({ path: range.of, expected, received: text(value) })
  }
  if (issues.length > 0) throw new InputError(formula.name, issues)
}

/** The inputs of a call as text. */
function figuresOf(formula: AnyFormula, si: { readonly [key: string]: number }): { readonly [key: string]: string } {
  return Object.fromEntries(
    Object.entries(formula.inputs).map(([key, input]) => [key, siText(input.kind, si[key] as number)]),
  )
}

function noResult(formula: AnyFormula, si: { readonly [key: string]: number }): CalculationError {
  const figures = figuresOf(formula, si)
  const inputs = Object.entries(figures).map(([key, text]) => `${key} ${text}`)
  const message = `there is no finite ${formula.result.about.toLowerCase()} for ${inputs.join(', ')}`
  return new CalculationError(formula.name, message, figures)
}

function stepOf(formula: AnyFormula, given: { readonly [key: string]: unknown }, result: Quantity) {
  const inputs: { [key: string]: Quantity } = {}
  const defaults: string[] = []
  for (const [key, input] of Object.entries(formula.inputs)) {
    const value = given[key]
    if (value === undefined) defaults.push(key)
    // A quantity stays the same object, so that a working can show it as it was shown where it came from.
    const isOwn = isQuantity(value)
    inputs[key] = (
      value === undefined ? input.default : isOwn ? value : quantity(input.kind, value as never)
    ) as Quantity
  }
  return { formula, inputs, defaults, result }
}
