/** A value with its unit: what every function here accepts and returns. */
import { CalculationError, InputError, shown } from './errors.js'
import { inUnit, type UnitScale, unitScale, writtenIn } from './exact.js'
import { type DifferenceOf, differenceOf, type Kind, kinds, type UnitOf } from './kinds.js'
import { type Made, making } from './made.js'
import { nearestName } from './nearest.js'
import { isQuantity, issueWith, kindInWords, listed, quantityBrand, readValue, scaleFor, symbolsOf } from './read.js'

/**
 * What a function accepts where a kind is wanted: a quantity of that kind or text such as `'300 A'`.
 * A ratio may also be a plain number.
 */
export type Given<K extends Kind> =
  | Quantity<K>
  | `${number} ${UnitOf<K>}`
  | (K extends 'ratio' ? number | `${number}` | `${number}%` : never)

/**
 * A value of one kind. It holds the SI number and the unit in which it is shown, and never changes:
 * every operation makes a new quantity.
 */
export interface Quantity<K extends Kind = Kind> {
  /** What is measured, such as `voltage`. */
  readonly kind: K
  /** The value in SI units: the double nearest to what was written. */
  readonly si: number
  /** The unit in which the quantity is shown. */
  readonly unit: UnitOf<K>

  /**
   * The value in a unit: the double nearest to what `si` is in it. In °C and °F, whose zero is not that of the kelvin,
   * many numbers read as one `si`; of those it is the one with the fewest decimals, so that 35 °C is 35.
   */
  in(unit: UnitOf<K>): number
  /** The same value, shown in another unit from here on. */
  as(unit: UnitOf<K>): Quantity<K>
  /** The sum. To a temperature, a temperature difference is added. */
  plus(other: Given<DifferenceOf<K>>): Quantity<K>
  /** A temperature less a temperature difference, which must be a quantity: text is read as a temperature. */
  minus(other: K extends 'temperature' ? Quantity<'temperatureDifference'> : never): Quantity<K>
  /** The difference. Of two temperatures it is a temperature difference. */
  minus(other: Given<K>): Quantity<DifferenceOf<K>>
  /** The quantity times a number. Not for a temperature, whose double means nothing. */
  times(factor: K extends 'temperature' ? never : number): Quantity<K>
  /** The quantity divided by a number other than zero. Not for a temperature. */
  over(divisor: K extends 'temperature' ? never : number): Quantity<K>
  /** How many times the other it is. The other must not be zero. Not for a temperature. */
  ratioTo(other: K extends 'temperature' ? never : Given<K>): number
  /** Whether it is the other or less. */
  isAtMost(other: Given<K>): boolean
  /** Whether it is the other or more. */
  isAtLeast(other: Given<K>): boolean
  /** Whether it is the other, exactly or within a difference. */
  equals(other: Given<K>, within?: Given<DifferenceOf<K>>): boolean
  /** Text in a unit (the one shown, unless another is named) with so many significant digits (4 unless said). */
  format(options?: { readonly unit?: UnitOf<K>; readonly digits?: number }): string
  /** Text with at most 4 significant digits, such as `24 kWh`. */
  toString(): string
  /** Text that reads back as just this value. */
  toJSON(): string
}

const DIGITS = 4
/** From here on a number is written with a power of ten: nobody counts more zeros than this. */
const LONG = 1e9

/** Where a fault in a method's argument is reported to be. */
type Method =
  | 'plus'
  | 'minus'
  | 'times'
  | 'over'
  | 'ratioTo'
  | 'isAtMost'
  | 'isAtLeast'
  | 'equals'
  | 'in'
  | 'as'
  | 'format'

class Value<K extends Kind> implements Quantity<K> {
  readonly kind: K
  readonly si: number
  readonly unit: UnitOf<K>

  constructor(kind: K, si: number, unit: string) {
    this.kind = kind
    this.si = si
    // Whoever makes one takes the unit from the table of its kind.
    this.unit = unit as UnitOf<K>
    Object.freeze(this)
  }

  in(unit: UnitOf<K>): number {
    return this.#in(this.#scale('in', unit))
  }

  #in(scale: UnitScale): number {
    const number = inUnit(this.si, scale)
    if (Number.isFinite(number)) return number
    throw new CalculationError('quantity.in', `${this.toJSON()} is more ${scale.symbol} than a number can hold`)
  }

  as(unit: UnitOf<K>): Quantity<K> {
    return this.#making(new Value(this.kind, this.si, this.#scale('as', unit).symbol), 'as')
  }

  plus(other: Given<DifferenceOf<K>>): Quantity<K> {
    const added = this.#read('plus', differenceOf(this.kind), other)
    return this.#making(this.#same('plus', this.si + added), '+', other)
  }

  minus(other: unknown): never {
    if (this.kind === 'temperature' && !(isQuantity(other) && other.kind === 'temperatureDifference')) {
      const difference = this.si - this.#read('minus', this.kind, other)
      const unit = this.unit === '°F' ? '°F' : 'K'
      return this.#making(new Value('temperatureDifference', difference, unit), '−', other) as never
    }
    const taken = this.#read('minus', differenceOf(this.kind), other)
    return this.#making(this.#same('minus', this.si - taken), '−', other) as never
  }

  times(factor: number): Quantity<K> {
    return this.#making(this.#same('times', this.si * this.#factor('times', factor)), '×', factor)
  }

  over(divisor: number): Quantity<K> {
    return this.#making(this.#same('over', this.si / this.#factor('over', divisor)), '÷', divisor)
  }

  ratioTo(other: unknown): number {
    this.#refuseTemperature('ratioTo')
    const ratio = this.si / this.#read('ratioTo', this.kind, other)
    if (!Number.isFinite(ratio)) {
      throw new CalculationError('quantity.ratioTo', `${this} has no finite ratio to ${String(other)}`)
    }
    return ratio
  }

  isAtMost(other: Given<K>): boolean {
    return this.si <= this.#read('isAtMost', this.kind, other)
  }

  isAtLeast(other: Given<K>): boolean {
    return this.si >= this.#read('isAtLeast', this.kind, other)
  }

  equals(other: Given<K>, within?: Given<DifferenceOf<K>>): boolean {
    const difference = Math.abs(this.si - this.#read('equals', this.kind, other))
    return difference <= (within === undefined ? 0 : this.#read('equals', differenceOf(this.kind), within))
  }

  format(options?: { readonly unit?: UnitOf<K>; readonly digits?: number }): string {
    const { unit, digits = DIGITS } = options ?? {}
    if (!Number.isInteger(digits) || digits < 1 || digits > 17) {
      const expected = 'a whole number of significant digits from 1 to 17'
      throw new InputError('quantity.format', [{ path: 'digits', expected, received: shown(digits) }])
    }
    return this.#text(this.#scale('format', unit ?? this.unit), digits)
  }

  toString(): string {
    return this.#text(unitScale(this.kind, this.unit), DIGITS)
  }

  #text(scale: UnitScale, digits: number): string {
    const exact = inUnit(this.si, scale)
    // Decimal text goes further than doubles do.
    if (!Number.isFinite(exact)) return this.toJSON()
    const number = Number(exact.toPrecision(digits))
    const text = Math.abs(number) < LONG ? String(number) : number.toExponential()
    return withUnit(text.replace('e+', 'e'), scale.symbol)
  }

  toJSON(): string {
    const number = writtenIn(this.si, unitScale(this.kind, this.unit))
    if (number !== undefined) return withUnit(number, this.unit)
    const si = siSymbol(this.kind)
    return withUnit(String(this.si), si)
  }

  /** Text where a string is wanted. As a number it is refused: `a < b` and `a * b` would drop the units. */
  [Symbol.toPrimitive](hint: string): string {
    if (hint !== 'number') return this.toString()
    throw new InputError('quantity', [
      {
        path: '',
        expected: 'a method such as isAtMost, plus or in(unit)',
        received: `arithmetic or comparison on ${this}`,
        hint: 'a quantity is not a number',
      },
    ])
  }

  [Symbol.for('nodejs.util.inspect.custom')](): string {
    return `Quantity<${this.kind}> ${this}`
  }

  get [quantityBrand](): 1 {
    return 1
  }

  /** A quantity that was made of this one, which is written down where somebody asks. */
  #making<M extends Quantity>(made: M, by: Made['by'], and?: unknown): M {
    if (making.written !== undefined) {
      // What was text is read as it was read above: less a temperature, plus a difference of temperatures.
      const kind = by === '−' ? this.kind : differenceOf(this.kind)
      const second = typeof and === 'string' ? quantity(kind, and as never) : (and as Made['and'])
      making.written.set(made, {
        by,
        of: this as unknown as Quantity,
        ...(second === undefined ? {} : { and: second }),
      })
    }
    return made
  }

  #same(method: Method, si: number): Quantity<K> {
    if (!Number.isFinite(si)) throw new CalculationError(`quantity.${method}`, `no finite result from ${this}`)
    if (this.kind === 'temperature' && si < 0) {
      throw new CalculationError(`quantity.${method}`, `the result from ${this} is below absolute zero`)
    }
    return new Value(this.kind, si + 0, this.unit)
  }

  #read(method: Method, kind: Kind, other: unknown): number {
    const read = readValue(kind, other)
    if (read === undefined) throw new InputError(`quantity.${method}`, [issueWith('', kind, other)])
    return read.si
  }

  #factor(method: Method, factor: unknown): number {
    this.#refuseTemperature(method)
    if (typeof factor === 'number' && Number.isFinite(factor) && (factor !== 0 || method === 'times')) return factor
    const expected = method === 'times' ? 'a finite number such as 2' : 'a finite number other than 0, such as 2'
    throw new InputError(`quantity.${method}`, [{ path: '', expected, received: shown(factor) }])
  }

  #refuseTemperature(method: Method): void {
    if (this.kind !== 'temperature') return
    throw new InputError(`quantity.${method}`, [
      {
        path: '',
        expected: 'a quantity that can be multiplied',
        received: `the temperature ${this}`,
        hint: 'its zero is arbitrary; multiply a temperature difference',
      },
    ])
  }

  #scale(method: Method, unit: string): UnitScale {
    const scale = typeof unit === 'string' ? scaleFor(this.kind, unit) : undefined
    if (scale !== undefined) return scale
    const expected = `a unit of ${kindInWords(this.kind)}: ${listed(symbolsOf(this.kind))}`
    throw new InputError(`quantity.${method}`, [{ path: 'unit', expected, received: shown(unit) }])
  }
}

/** Whether a value is a quantity that this copy of the package made, which can be taken as it is. @internal */
export function isOwnQuantity(value: unknown): value is Quantity {
  return value instanceof Value
}

/** Whether a unit has the factor 1 and the zero of its kind. */
function isSiUnit(kind: Kind, symbol: string): boolean {
  const units: { readonly [symbol: string]: string } = kinds[kind].units
  return units[symbol] === '1' && unitScale(kind, symbol).zero.isZero()
}

/** The SI unit of a kind. */
function siSymbol(kind: Kind): string {
  const symbols = symbolsOf(kind)
  return symbols.find((symbol) => isSiUnit(kind, symbol)) ?? (symbols[0] as string)
}

function withUnit(number: string, symbol: string): string {
  return symbol === '1' ? number : `${number} ${symbol}`
}

/** A quantity from its SI value, shown in a unit of the table. @internal */
export function fromSi<K extends Kind>(kind: K, si: number, symbol: string): Quantity<K> {
  if (!Number.isFinite(si)) throw new CalculationError('quantity', `${kindInWords(kind)} of ${si} is not a quantity`)
  return new Value(kind, si, symbol)
}

/**
 * Makes a quantity from text or from another quantity.
 *
 * The SI value is the double nearest to the decimal number that was written: `quantity('mass', '155 lb')`
 * is 70.30681735 kg.
 *
 * @param kind - What is measured, such as `'mass'`.
 * @param value - Text such as `'155 lb'`, or a quantity of the kind; a ratio may be a plain number.
 * @returns The quantity, shown in the unit in which it was written.
 * @throws InputError when the kind is not known, or the value is not of the kind.
 */
export function quantity<K extends Kind>(kind: K, value: Given<NoInfer<K>>): Quantity<K>
/**
 * Makes a quantity from a number and a unit.
 *
 * @param kind - What is measured, such as `'mass'`.
 * @param value - The number, finite.
 * @param unit - Its unit, such as `'lb'`.
 * @returns The quantity, shown in that unit.
 * @throws InputError when the kind is not known, the unit is not one of the kind, or the number is not finite.
 */
export function quantity<K extends Kind>(kind: K, value: number, unit: UnitOf<NoInfer<K>>): Quantity<K>
export function quantity<K extends Kind>(kind: K, value: unknown, unit?: UnitOf<K>): Quantity<K> {
  if (typeof kind !== 'string' || !Object.hasOwn(kinds, kind)) {
    const nearest = nearestName(String(kind), Object.keys(kinds))
    const issue = { path: 'kind', expected: "a kind of quantity such as 'current'", received: shown(kind) }
    throw new InputError('quantity', [nearest === undefined ? issue : { ...issue, hint: `did you mean '${nearest}'?` }])
  }
  // Most that are computed are SI numbers already: no text need be read. Not every number is a temperature.
  if (Number.isFinite(value) && typeof unit === 'string' && kind !== 'temperature' && isSiUnit(kind, unit)) {
    return new Value(kind, (value as number) + 0, unit)
  }
  // A number is taken at its shortest decimal text, so that 155 and 'lb' read as '155 lb' does.
  if (unit !== undefined && !(typeof value === 'number' && typeof unit === 'string')) {
    const received = `${shown(value)} and ${shown(unit)}`
    throw new InputError('quantity', [{ path: 'value', expected: 'a number, its unit as text beside it', received }])
  }
  const written = unit === undefined ? value : `${value} ${unit}`
  const read = readValue(kind, written)
  if (read === undefined) throw new InputError('quantity', [issueWith('value', kind, written)])
  return new Value(kind, read.si, read.scale.symbol)
}
