/** Whether a figure keeps to a limit, by what margin, on what basis; or what is missing to tell. */
import { InputError, shown } from '../quantity/errors.js'
import type { Kind, Quantity } from '../quantity/index.js'
import { kindInWords } from '../quantity/read.js'

/** Which side of the limit is right. */
export type Sense = 'at most' | 'at least'

/** What comes of a check. `near` is a pass with less than 5 % left; `unknown` is no pass. */
export type Verdict = 'pass' | 'near' | 'fail' | 'unknown'

/** A figure held to a limit. */
export interface Check {
  /** Its stable name in a program, such as `cable.temperature`; unique in a result. */
  readonly id: string
  /** What is checked, such as `Temperature of the conductor`. */
  readonly name: string
  readonly verdict: Verdict
  /** What came of it in words: the figure and its limit, or what is missing and how to get it. */
  readonly text: string
  /** The standard that sets the limit, or `good practice`, or whoever gave it. */
  readonly basis: string
  /** The fields from which it comes. */
  readonly paths: readonly string[]
  /** The figure, where there is one. */
  readonly actual?: Quantity
  readonly limit?: Quantity
  readonly sense?: Sense
  /** What is left, as a share of the limit; negative when it fails; always finite. */
  readonly margin?: number
}

/** A sentence of a figure and its limit, as {@link says} makes it. */
export interface Saying {
  readonly strings: readonly string[]
  readonly values: readonly unknown[]
}

/** What a check tells: a figure against its limit; what is missing; or what holds or fails where there is no figure. */
export type Told = Saying | { readonly unknown: string } | { readonly pass: string } | { readonly fail: string }

/** What rounding may do to a figure, as a share of it. */
const ROUNDING = 1e-12
/** Digits of a figure, and the most where that is needed to tell it from its limit. */
const [DIGITS, MOST_DIGITS] = [4, 12]
/** Below this margin a pass is near its limit. */
const NEAR = 0.05

/**
 * A sentence that is a test: its first value is the figure, its last the limit, and between them stands `at least` or
 * `at most`. Where the figure does not keep to the limit, that reads `less than` or `more than`.
 *
 * @example
 * ```ts
 * says`carries ${ampacity}, at least the ${load} of the load`
 * ```
 */
export function says<K extends Kind>(
  strings: TemplateStringsArray,
  ...values: readonly [figure: Quantity<K>, ...between: unknown[], limit: Quantity<NoInfer<K>>]
): Saying {
  return { strings, values }
}

/** A sentence with words before its figure and after its limit, such as what it is told of. @internal */
export function worded(before: string, { strings, values }: Saying, after = ''): Saying {
  const [first = '', ...others] = strings
  const all = [`${before}${first}`, ...others]
  return { strings: [...all.slice(0, -1), `${all.at(-1)}${after}`], values }
}

const senses = /at (?:least|most)/

/** A check whose text is made when it is read: a search judges many candidates of which nobody reads a word. */
class Finding implements Check {
  readonly id: string
  readonly name: string
  readonly verdict: Verdict
  readonly basis: string
  readonly paths: readonly string[]
  readonly #tell: () => string

  constructor(id: string, name: string, verdict: Verdict, tell: () => string, basis: string, paths: readonly string[]) {
    this.id = id
    this.name = name
    this.verdict = verdict
    this.basis = basis
    this.paths = paths
    this.#tell = tell
  }

  get text(): string {
    return this.#tell()
  }

  toJSON(): Check {
    const { id, name, verdict, text, ...others } = this
    return { id, name, verdict, text, ...others }
  }
}

/** A check of a figure, with both and what is left. */
class Held extends Finding {
  readonly actual: Quantity
  readonly limit: Quantity
  readonly sense: Sense
  readonly margin: number

  constructor(id: string, name: string, saying: Saying, basis: string, paths: readonly string[]) {
    const { actual, limit, sense, margin } = figuresOf(saying)
    const verdict = margin < 0 ? 'fail' : margin < NEAR ? 'near' : 'pass'
    super(id, name, verdict, () => sentence(saying, verdict === 'fail'), basis, paths)
    this.actual = actual
    this.limit = limit
    this.sense = sense
    this.margin = margin
  }
}

/** The figure of a sentence, its limit, and what is left. */
function figuresOf({ strings, values }: Saying) {
  const [actual, limit] = [values[0] as Quantity, values.at(-1) as Quantity]
  const sense = strings.map((each) => senses.exec(each)?.[0]).find((each) => each !== undefined) as Sense | undefined
  refuse(actual, limit, sense)
  return { actual, limit, sense, margin: marginOf(actual, sense, limit) }
}

function refuse(actual: Quantity, limit: Quantity, sense: Sense | undefined): asserts sense is Sense {
  if (actual.kind !== limit.kind) {
    const expected = `${kindInWords(actual.kind)} like the figure`
    throw new InputError('check', [{ path: 'limit', expected, received: `${kindInWords(limit.kind)}, ${limit}` }])
  }
  if (sense === undefined) {
    throw new InputError('check', [{ path: 'sense', expected: "'at most' or 'at least'", received: shown(sense) }])
  }
}

function sentence({ strings, values }: Saying, isMissed: boolean): string {
  const told = toldIn(values)
  const words = isMissed
    ? strings.map((each) => each.replace(senses, (sense) => (sense === 'at least' ? 'less than' : 'more than')))
    : strings
  return words.map((each, i) => (i < told.length ? `${each}${told[i]}` : each)).join('')
}

/** The values of a sentence, figure and limit with the digits that tell them apart. */
function toldIn(values: readonly unknown[]): unknown[] {
  const [figure, limit] = toldApart(values[0] as Quantity, values.at(-1) as Quantity)
  return [figure, ...values.slice(1, -1), limit]
}

/** A figure and its limit in words, with as many digits as it takes to tell them apart. */
export function toldApart(figure: Quantity, limit: Quantity): [figure: string, limit: string] {
  const unit = figure.unit as never
  const isAlike = (digits: number) => figure.format({ digits }) === limit.format({ unit, digits })
  let digits = DIGITS
  while (figure.si !== limit.si && digits < MOST_DIGITS && isAlike(digits)) digits++
  return [figure.format({ digits }), limit.format({ digits })]
}

/** What is left of a limit, as a share of it. A limit that is met to the last digits that arithmetic leaves is met. */
function marginOf(actual: Quantity, sense: Sense, limit: Quantity): number {
  const [figure, bound] = [scaleOf(actual), scaleOf(limit)]
  if (Math.abs(limit.si - actual.si) <= ROUNDING * Math.max(Math.abs(actual.si), Math.abs(limit.si))) return 0
  // A limit that is nothing beside the figure is zero: else the margin would be without bounds.
  const isZero = Math.abs(bound) <= ROUNDING * Math.abs(figure)
  const scale = Math.abs(isZero ? figure : bound)
  const left = bound / scale - figure / scale
  return sense === 'at most' ? left : -left
}

function scaleOf(quantity: Quantity): number {
  return quantity.kind === 'temperature' ? quantity.in('°C' as never) : quantity.si
}

/**
 * One line of a judgement: what is checked, in a sentence that is the test.
 *
 * The margin is the share of the limit that is left; temperatures count from 0 °C. Against a limit of zero, or of less than a
 * millionth of a millionth of the figure, the margin is 1 or -1.
 *
 * @param id - Its stable name in a program.
 * @param name - What is checked, in words.
 * @param told - The sentence, or what is missing to judge.
 * @param basis - The standard, `good practice`, or who set the limit.
 * @param paths - The fields from which it comes.
 */
export function trial(id: string, name: string, told: Told, basis: string, ...paths: readonly string[]): Check {
  if ('strings' in told) return new Held(id, name, told, basis, paths)
  const [verdict, text] = Object.entries(told)[0] as [Verdict, string]
  return new Finding(id, name, verdict, () => text, basis, paths)
}

/** Why what is told does not hold: it fails, or it is not known; undefined where it holds. @internal */
export function whyNot(told: Told): { readonly fail: string } | { readonly unknown: string } | undefined {
  if ('strings' in told) return figuresOf(told).margin < 0 ? { fail: sentence(told, true) } : undefined
  return 'pass' in told ? undefined : told
}

/**
 * Holds a figure to a limit, where no candidate is judged and the figures say enough.
 *
 * @param id - Its stable name in a program.
 * @param name - What is checked, in words.
 * @param actual - The figure.
 * @param sense - `at most` or `at least`.
 * @param limit - The limit, of the same kind.
 * @param basis - The standard, `good practice`, or who set the limit.
 * @param paths - The fields from which it comes.
 */
export function check<K extends Kind>(
  id: string,
  name: string,
  actual: Quantity<K>,
  sense: Sense,
  limit: Quantity<NoInfer<K>>,
  basis: string,
  ...paths: readonly string[]
): Check {
  const saying = { strings: ['', `, ${sense} `, ''], values: [actual, limit] }
  return trial(id, name, saying, basis, ...paths)
}

/** A check under another id and name, by other paths and in other words, as part of something larger. */
export function renamed(one: Check, id: string, name: string, paths = one.paths, told = (text: string) => text): Check {
  const { verdict, basis, paths: _, id: __, name: ___, ...figures } = one
  return Object.assign(new Finding(id, name, verdict, () => told(one.text), basis, paths), figures)
}

/** Whether a figure lies above its limit by more than rounding does. */
export function isAbove<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return actual.si - limit.si > ROUNDING * Math.abs(limit.si)
}

/** Whether a figure lies below its limit by more than rounding does. */
export function isBelow<K extends Kind>(actual: Quantity<K>, limit: Quantity<K>): boolean {
  return limit.si - actual.si > ROUNDING * Math.abs(limit.si)
}

/** Whether a check allows what it is made of. */
export function isMet({ verdict }: Check): boolean {
  return verdict === 'pass' || verdict === 'near'
}

/** A check whose figure is on the kind side of what is not known: it may fail, but it cannot pass. @internal */
export function unlessUnknown(held: Check, unknown: string | undefined): Check {
  if (unknown === undefined || !isMet(held)) return held
  return trial(held.id, held.name, { unknown }, held.basis, ...held.paths)
}
