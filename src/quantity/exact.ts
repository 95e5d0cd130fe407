/**
 * Correctly rounded conversion between a number in some unit and the double in SI units.
 *
 * The exact product is formed in decimal arithmetic and rounded once, to the nearest double. That takes
 * microseconds, so a product of unevaluated pairs of doubles (about 105 bits; Dekker, Numer. Math. 18, 1971)
 * is tried first, and kept when its error cannot change the double that it rounds to (Ziv, ACM TOMS 17, 1991).
 */
import { Decimal } from 'decimal.js'
import { type Kind, kinds, zeroOffsets } from './kinds.js'

/** Enough digits for the exact product of a double written out (at most 767 digits) and any factor of the table. */
const Exact = /*@__PURE__*/ Decimal.clone({ precision: 2000, defaults: true })

/** A double as the decimal number that it is, to its last digit; decimal.js alone would take its shortest text. */
function exactly(double: number): Decimal {
  let whole = double
  let halvings = 0
  for (; !Number.isInteger(whole); halvings++) whole *= 2
  return new Exact(BigInt(whole).toString()).div(Exact.pow(2, halvings))
}

/** A number as the sum of two doubles, the second no more than half a unit in the last place of the first. */
type Pair = readonly [high: number, low: number]

/** A unit's relation to SI: `SI = (number + zero) · top / bottom · π^piPower`. @internal */
export interface UnitScale {
  readonly symbol: string
  readonly top: Decimal
  readonly bottom: Decimal
  readonly piPower: number
  readonly zero: Decimal
  /** The same factor, its inverse and the zero as pairs of doubles. */
  readonly factor: Pair
  readonly inverse: Pair
  readonly zeroPair: Pair
}

/** Reads a definition such as `0.45359237 * 9.80665 / 0.0254` into whole numbers above and below. */
function scaleOf(symbol: string, definition: string, zero: string): UnitScale {
  let top = new Exact(1)
  let bottom = new Exact(1)
  let piPower = 0
  let below = false
  for (const token of definition.split(' ')) {
    if (token === '*') below = false
    else if (token === '/') below = true
    else if (token === 'pi') piPower += below ? -1 : 1
    else if (below) bottom = bottom.times(token)
    else top = top.times(token)
  }
  const Long = Decimal.clone({ precision: 60, defaults: true })
  const factor = Long.div(top, bottom).times(Long.pow(Long.acos(-1), piPower))
  return {
    symbol,
    top,
    bottom,
    piPower,
    zero: new Exact(zero),
    factor: pairOf(factor),
    inverse: pairOf(Long.div(1, factor)),
    zeroPair: pairOf(new Exact(zero)),
  }
}

function pairOf(value: Decimal): Pair {
  const high = value.toNumber()
  return [high, Exact.sub(value, exactly(high)).toNumber()]
}

const scales = new Map<Kind, Map<string, UnitScale>>()

/** The scale of a unit of a kind; `symbol` is a unit in the table. @internal */
export function unitScale(kind: Kind, symbol: string): UnitScale {
  const known = scales.get(kind)?.get(symbol)
  if (known !== undefined) return known
  const units: { readonly [symbol: string]: string } = kinds[kind].units
  const definition = units[symbol]
  if (definition === undefined) throw new RangeError(`no unit ${symbol} of ${kind}`)
  const scale = scaleOf(symbol, definition, zeroOffsets[kind]?.[symbol] ?? '0')
  const ofKind = scales.get(kind) ?? new Map()
  scales.set(kind, ofKind.set(symbol, scale))
  return scale
}

/**
 * The double nearest to `top / bottom · π^piPower`. The quotient is formed with more and more digits until
 * its last digits cannot change the double it rounds to, so that a tie or a near tie is decided rightly.
 */
function nearestDouble(top: Decimal, bottom: Decimal, piPower: number): number {
  if (top.isZero()) return 0
  for (let digits = 40; ; digits *= 2) {
    const Rounded = Decimal.clone({ precision: digits, rounding: Decimal.ROUND_DOWN, defaults: true })
    const quotient = Rounded.div(top, bottom).times(piPower === 0 ? 1 : Rounded.pow(Rounded.acos(-1), piPower))
    if (piPower === 0 && Exact.mul(quotient, bottom).eq(top)) return quotient.toNumber()
    const margin = quotient.abs().times(Rounded.pow(10, 4 - digits))
    const low = quotient.minus(margin).toNumber()
    const high = quotient.plus(margin).toNumber()
    // A tie between doubles has at most 767 digits and was found exact before 1280; decimal.js knows 1025 of π.
    if (low === high || digits === (piPower === 0 ? 1280 : 640)) return quotient.toNumber()
  }
}

/** Splits a double for exact products: 2^27 + 1. */
const SPLITTER = 134217729
/** Far above the error of the few pair operations below (each under 2^-102 of its operands). */
const PAIR_ERROR = 2 ** -96
/** Magnitudes between which the pair arithmetic neither overflows nor loses low parts to zero. */
const [SMALLEST, LARGEST] = [1e-200, 1e200]

/** What is lost in the rounded product of two doubles: `a · b` is exactly `product + productError`. */
function productError(a: number, b: number, product: number): number {
  const aSplit = SPLITTER * a
  const aHigh = aSplit - (aSplit - a)
  const aLow = a - aHigh
  const bSplit = SPLITTER * b
  const bHigh = bSplit - (bSplit - b)
  const bLow = b - bHigh
  return aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow
}

/**
 * The double nearest to `(x + xLow + before) · factor + after`, or NaN where a pair of doubles is too short
 * to tell or the magnitudes are extreme.
 */
function byPairs(x: number, xLow: number, before: Pair, factor: Pair, after: Pair): number {
  let high = x
  let low = xLow
  let magnitude = Math.abs(x)
  if (before[0] !== 0) {
    high = x + before[0]
    const part = high - x
    low += x - (high - part) + (before[0] - part) + before[1]
    magnitude += Math.abs(before[0])
  }
  let product = high * factor[0]
  let rest = productError(high, factor[0], product) + high * factor[1] + low * factor[0]
  magnitude = Math.abs(magnitude * factor[0])
  if (after[0] !== 0) {
    const sum = product - after[0]
    const part = sum - product
    rest += product - (sum - part) + (-after[0] - part) - after[1]
    product = sum
    magnitude += Math.abs(after[0])
  }
  if (magnitude === 0) return 0
  if (!(magnitude > SMALLEST && magnitude < LARGEST)) return Number.NaN
  const error = magnitude * PAIR_ERROR
  const nearest = product + (rest - error)
  return nearest === product + (rest + error) ? nearest : Number.NaN
}

const NOTHING: Pair = [0, 0]

/** Ten to a whole power from 0 to 22: each is exactly a double. */
const powersOfTen = /*@__PURE__*/ Array.from({ length: 23 }, (_, power) => Number(`1e${power}`))

/**
 * The SI double nearest to the decimal number `(whole + rest) · 10^exponent` in a unit; `whole` and `rest` are whole
 * numbers, each exactly a double, the second no more than rounding takes from the first.
 *
 * @internal
 */
export function fromWhole(whole: number, exponent: number, scale: UnitScale, rest = 0): number {
  const power = powersOfTen[Math.abs(exponent)]
  if (power !== undefined) {
    const high = exponent < 0 ? whole / power : whole * power
    const product = exponent < 0 ? high * power : high
    const error = productError(exponent < 0 ? high : whole, power, product)
    const low = exponent < 0 ? (whole - product - error + rest) / power : error + rest * power
    const si = byPairs(high, low, scale.zeroPair, scale.factor, NOTHING)
    if (!Number.isNaN(si)) return si
  }
  return fromDecimal(`${BigInt(whole) + BigInt(rest)}e${exponent}`, scale)
}

/** The SI double nearest to a decimal number, written out, in a unit. @internal */
export function fromDecimal(text: string, scale: UnitScale): number {
  return nearestDouble(new Exact(text).plus(scale.zero).times(scale.top), scale.bottom, scale.piPower)
}

/**
 * What an SI double is in a unit: the double nearest to it. In a unit with a zero of its own many numbers read as one
 * SI double (35 and 34.99999999999998 °C are both 308.15 K), and of those it is the one with the fewest decimals.
 *
 * @internal
 */
export function inUnit(si: number, scale: UnitScale): number {
  const number = nearestIn(si, scale)
  if (scale.zero.isZero() || !(Math.abs(number) < 1e9)) return number
  for (let decimals = 0; decimals <= 6; decimals++) {
    const whole = Math.round(number * (powersOfTen[decimals] as number))
    if (fromWhole(whole, -decimals, scale) === si) return Number(`${whole}e-${decimals}`) + 0
  }
  return number
}

function nearestIn(si: number, scale: UnitScale): number {
  const number = byPairs(si, 0, NOTHING, scale.inverse, scale.zeroPair)
  if (!Number.isNaN(number)) return number
  const top = exactly(si).times(scale.bottom)
  // Only temperatures have a zero of their own, and no factor of π: the sum stays a quotient of decimals.
  return nearestDouble(top.minus(scale.zero.times(scale.top)), scale.top, -scale.piPower)
}

/**
 * The shortest decimal number that reads back, in the same unit, as just this SI double; undefined where 17
 * digits are not enough, as for a temperature a hair above absolute zero written in °C.
 *
 * @internal
 */
export function writtenIn(si: number, scale: UnitScale): string | undefined {
  const plain = String(inUnit(si, scale))
  if (!scale.zero.isZero() && fromDecimal(plain, scale) === si) return plain
  const Long = Decimal.clone({ precision: 60, defaults: true })
  const pi = scale.piPower === 0 ? 1 : Long.pow(Long.acos(-1), scale.piPower)
  const number = Long.div(exactly(si).times(scale.bottom), scale.top).div(pi).minus(scale.zero)
  for (const digits of [15, 16, 17]) {
    const text = number.toSignificantDigits(digits).toString()
    if (fromDecimal(text, scale) === si) return text
  }
  return undefined
}
