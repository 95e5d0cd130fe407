/** Reading a value that a person or a program gives: a quantity, or text of a number and a unit. */
import { type InputIssue, shown } from './errors.js'
import { fromDecimal, fromWhole, type UnitScale, unitScale } from './exact.js'
import { type Kind, kinds, twins } from './kinds.js'
import { nearestName } from './nearest.js'

/**
 * Marks a quantity. It is registered by name, so a quantity made by another copy of this package
 * (the CommonJS twin of an ES module, say) is known as one.
 */
export const quantityBrand: unique symbol = /*@__PURE__*/ Symbol.for('kerbwatt.quantity') as never

/** What this module needs to know of a quantity, whichever copy of the package made it. */
interface Branded {
  readonly kind: Kind
  readonly si: number
  readonly unit: string
}

/** Whether a value is a quantity, of any kind, made by this or another copy of the package. */
export function isQuantity(value: unknown): value is Branded {
  return typeof value === 'object' && value !== null && quantityBrand in value
}

/** The name of a kind in a sentence: `a current`, `an energy`, `a C-rate`. */
export function kindInWords(kind: Kind): string {
  const words = kind === 'cRate' ? 'C-rate' : kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`
}

/** The symbols of a kind, the default unit first. */
export function symbolsOf(kind: Kind): string[] {
  return Object.keys(kinds[kind].units)
}

const spellingsByKind = new Map<Kind, Map<string, UnitScale>>()

/** Every way in which the units of a kind may be spelt: symbol, plain-ASCII twin, compatibility form. */
function spellingsOf(kind: Kind): Map<string, UnitScale> {
  const known = spellingsByKind.get(kind)
  if (known !== undefined) return known
  const spellings = new Map<string, UnitScale>()
  for (const symbol of symbolsOf(kind)) {
    const scale = unitScale(kind, symbol)
    for (const spelling of [symbol, twins[symbol as keyof typeof twins], symbol.normalize('NFKC')]) {
      if (spelling !== undefined) spellings.set(spelling, scale)
    }
  }
  spellingsByKind.set(kind, spellings)
  return spellings
}

/** The scale of a unit of a kind however it is spelt, or undefined when the kind has no such unit. */
export function scaleFor(kind: Kind, unit: string): UnitScale | undefined {
  const spellings = spellingsOf(kind)
  return spellings.get(unit) ?? spellings.get(unit.normalize('NFKC'))
}

const [ZERO, NINE, POINT, PLUS, MINUS, SPACE, LOWER_E, UPPER_E] = [48, 57, 46, 43, 45, 32, 101, 69]
const [TRUE_MINUS, NO_BREAK_SPACE, NARROW_NO_BREAK_SPACE] = [0x2212, 0xa0, 0x202f]
/** Fifteen digits always make a whole number that is exactly a double. */
const EXACT_DIGITS = 15
/** No double needs more digits than this to be told apart from its neighbours. */
const LONGEST_NUMBER = 800

/** A number at the start of a text: its digits as a whole number with a power of ten, and where it ends. */
interface Scanned {
  readonly whole: number
  readonly exponent: number
  readonly end: number
  /** The number needs more digits than `whole` holds: convert it from its text. */
  readonly long: boolean
}

function scanNumber(text: string): Scanned | undefined {
  let at = 0
  const sign = text.charCodeAt(0)
  const negative = sign === MINUS || sign === TRUE_MINUS
  if (negative || sign === PLUS) at = 1
  let whole = 0
  let significant = 0
  let places = 0
  let digits = 0
  let pointSeen = false
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at)
    if (code === POINT && !pointSeen) pointSeen = true
    else if (code >= ZERO && code <= NINE) {
      digits++
      if (significant > 0 || code !== ZERO) significant++
      if (significant <= EXACT_DIGITS) whole = whole * 10 + code - ZERO
      if (pointSeen) places++
    } else break
  }
  if (digits === 0) return undefined
  let exponent = 0
  const mark = text.charCodeAt(at)
  if (mark === LOWER_E || mark === UPPER_E) {
    let next = at + 1
    const exponentSign = text.charCodeAt(next)
    const down = exponentSign === MINUS || exponentSign === TRUE_MINUS
    if (down || exponentSign === PLUS) next++
    const start = next
    for (let code = text.charCodeAt(next); code >= ZERO && code <= NINE; code = text.charCodeAt(++next)) {
      exponent = exponent * 10 + code - ZERO
    }
    if (next > start) at = next
    if (down) exponent = -exponent
  }
  return {
    whole: negative ? -whole : whole,
    exponent: exponent - places,
    end: at,
    long: significant > EXACT_DIGITS,
  }
}

/** A value that was read: its SI number and the unit it was written in. */
export interface ReadValue {
  readonly si: number
  readonly scale: UnitScale
}

/** The value of a text such as `300 A` as a kind, or undefined when it is not exactly that. */
function readText(kind: Kind, text: string): ReadValue | undefined {
  const number = scanNumber(text)
  if (number === undefined || number.end > LONGEST_NUMBER) return undefined
  let start = number.end
  const gap = text.charCodeAt(start)
  if (gap === SPACE || gap === NO_BREAK_SPACE || gap === NARROW_NO_BREAK_SPACE) start++
  const unit = text.slice(start)
  const scale = unit === '' && start === number.end && kind === 'ratio' ? unitScale('ratio', '1') : scaleFor(kind, unit)
  if (scale === undefined) return undefined
  const si = toSi(text, number, scale)
  return inRange(kind, si, number.whole !== 0) ? { si, scale } : undefined
}

/** The SI value of a scanned number. Adding zero turns minus zero, which JSON does not keep, into zero. */
function toSi(text: string, number: Scanned, scale: UnitScale): number {
  const si = number.long
    ? fromDecimal(text.slice(0, number.end).replace(/\u2212/g, '-'), scale)
    : fromWhole(number.whole, number.exponent, scale)
  return si + 0
}

/** Whether an SI number is one that a quantity may hold: finite, not lost to zero, not below absolute zero. */
function inRange(kind: Kind, si: number, written: boolean): boolean {
  if (!Number.isFinite(si)) return false
  return kind === 'temperature' ? si >= 0 : si !== 0 || !written
}

/** The value of a number in a unit, as exact as if its shortest decimal text had been read. */
export function readNumber(kind: Kind, number: number, scale: UnitScale): number | undefined {
  if (!Number.isFinite(number)) return undefined
  const si = toSi(String(number), scanNumber(String(number)) as Scanned, scale)
  return inRange(kind, si, number !== 0) ? si : undefined
}

/** Reads a value as a kind, or undefined when it cannot be used; `issueWith` then says why. */
export function readValue(kind: Kind, value: unknown): ReadValue | undefined {
  if (typeof value === 'string') return readText(kind, value)
  if (isQuantity(value)) return value.kind === kind ? { si: value.si, scale: unitScale(kind, value.unit) } : undefined
  if (kind === 'ratio' && typeof value === 'number' && Number.isFinite(value)) {
    return { si: value + 0, scale: unitScale('ratio', '1') }
  }
  return undefined
}

/** The SI number of a value read as a kind, or NaN when it cannot be used; `issueWith` then says why. */
export function readSi(kind: Kind, value: unknown): number {
  if (typeof value === 'object' && isQuantity(value)) return value.kind === kind ? value.si : Number.NaN
  return readValue(kind, value)?.si ?? Number.NaN
}

/** Words that people write for units, in the singular. */
const unitWords: { readonly [word: string]: string } = {
  volt: 'V',
  amp: 'A',
  ampere: 'A',
  ohm: 'Ω',
  watt: 'W',
  kilowatt: 'kW',
  horsepower: 'hp',
  metre: 'm',
  meter: 'm',
  millimetre: 'mm',
  millimeter: 'mm',
  kilometre: 'km',
  kilometer: 'km',
  inch: 'in',
  inche: 'in',
  foot: 'ft',
  feet: 'ft',
  mile: 'mi',
  gram: 'g',
  kilogram: 'kg',
  kilo: 'kg',
  pound: 'lb',
  ounce: 'oz',
  tonne: 't',
  second: 's',
  sec: 's',
  minute: 'min',
  hour: 'h',
  hr: 'h',
  kmh: 'km/h',
  kph: 'km/h',
  degree: '°',
  celsius: '°C',
  c: '°C',
  fahrenheit: '°F',
  f: '°F',
  kelvin: 'K',
  litre: 'L',
  liter: 'L',
  newton: 'N',
  joule: 'J',
  percent: '%',
}

/** The unit of a kind that a word such as `Volts` names. */
function unitInWords(kind: Kind, unit: string): string | undefined {
  const word = unit.toLowerCase()
  const symbol = unitWords[word] ?? unitWords[word.replace(/s$/, '')]
  return symbol !== undefined && symbolsOf(kind).includes(symbol) ? symbol : undefined
}

/** The unit of a kind that was most likely meant by one it does not have. */
function suggestedUnit(kind: Kind, unit: string): string | undefined {
  const named = unitInWords(kind, unit)
  if (named !== undefined) return named
  const spelling = nearestName(unit, [...spellingsOf(kind).keys()])
  return spelling === undefined ? undefined : scaleFor(kind, spelling)?.symbol
}

/** The kinds that have a unit of this spelling. */
export function kindsOfUnit(unit: string): Kind[] {
  return (Object.keys(kinds) as Kind[]).filter((kind) => scaleFor(kind, unit) !== undefined)
}

/** A number as it is written here: of points and commas, the last sign is the decimal one, if it stands once. */
function withoutCommas(number: string): string {
  const decimal = number.lastIndexOf(',') > number.lastIndexOf('.') ? ',' : '.'
  const [thousands, ...parts] = number.split(decimal)
  if (parts.length > 1) return number.replace(/[.,]/g, '')
  return [thousands?.replace(/[.,]/g, ''), ...parts].join('.')
}

/** Why a text cannot be read as a kind, in the words of a mend. */
function mendText(kind: Kind, text: string): string | undefined {
  if (text.trim() === '') return undefined
  if (text.trim() !== text) return `write it without spaces around it: '${text.trim()}'`
  const number = /^[-+\u2212]?[\d.,]*\d[\d.,]*/.exec(text)?.[0]
  if (number?.includes(',')) {
    const rest = text.slice(number.length)
    if (/^[-+\u2212]?[1-9]\d{0,2},\d{3}$/.test(number)) {
      return `the comma is ambiguous: write '${number.replace(',', '')}${rest}' or '${Number(number.replace(',', '.'))}${rest}'`
    }
    return `write '${withoutCommas(number)}${rest}': the decimal sign is a point, and thousands are not separated`
  }
  if (/^[-+\u2212]?(nan|inf)/i.test(text)) return 'only finite numbers are quantities'
  const scanned = scanNumber(text)
  if (scanned === undefined) {
    return kind === 'ratio' ? 'write a number' : 'write the number first, then the unit'
  }
  const unit = text.slice(scanned.end).replace(/^[ \u00a0\u202f]/, '')
  if (unit === '') return `which unit? ${listed(symbolsOf(kind))}`
  if (/^\s/.test(unit)) return 'write one space or none between the number and the unit'
  if (scaleFor(kind, unit) !== undefined) {
    if (scanned.end > LONGEST_NUMBER) return `write at most ${LONGEST_NUMBER} digits`
    if (kind === 'temperature' && scanned.whole < 0) return 'that is below absolute zero, -273.15 °C'
    return 'that is more, or closer to zero, than a number can hold'
  }
  const others = kindsOfUnit(unit)
  const suggestion = others.length > 0 ? unitInWords(kind, unit) : suggestedUnit(kind, unit)
  const question = suggestion === undefined ? '' : `did you mean ${suggestion}?`
  if (others.length > 0) {
    return `${unit} measures ${listed(others.map(kindInWords))}${question === '' ? '' : `; ${question}`}`
  }
  if (question !== '') return question
  return `${unit} is not a unit of ${kindInWords(kind).replace(/^an? /, '')}: ${listed(symbolsOf(kind))}`
}

/** A list in a sentence: `V, mV or kV`. */
export function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`
}

/** What is wrong with a value that `readValue` refused for a kind. */
export function issueWith(path: string, kind: Kind, value: unknown): InputIssue {
  const issue = { path, expected: `${kindInWords(kind)} such as '${kinds[kind].example}'` }
  if (value === undefined) return { ...issue, received: 'nothing' }
  if (isQuantity(value)) return { ...issue, received: `${kindInWords(value.kind)}, ${String(value)}` }
  const hint = hintFor(kind, value)
  const received = shown(value)
  return hint === undefined ? { ...issue, received } : { ...issue, received, hint }
}

function hintFor(kind: Kind, value: unknown): string | undefined {
  if (typeof value === 'string') return mendText(kind, value)
  if (typeof value !== 'number') return undefined
  if (!Number.isFinite(value)) return 'only finite numbers are quantities'
  return `which unit? Write '${value} ${symbolsOf(kind)[0]}' if that is meant`
}
