/** Reading a value that a person or a program gives: a quantity, or text of a number and a unit. */
import { type InputIssue, shown } from './errors.js'
import { fromDecimal, fromWhole, type UnitScale, unitScale } from './exact.js'
import { type Kind, kinds, twinOf } from './kinds.js'
import { nearestName } from './nearest.js'

/**
 * Marks a quantity. It is registered by name, so a quantity made by another copy of this package
 * (the CommonJS twin of an ES module, say) is known as one.
 *
 * @internal
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
  return (
    typeof value === 'object' && value !== null && (value as { [quantityBrand]?: unknown })[quantityBrand] !== undefined
  )
}

/** The name of a kind in a sentence: `a current`, `an energy`, `a C-rate`. @internal */
export function kindInWords(kind: Kind): string {
  const words = kind === 'cRate' ? 'C-rate' : kind.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`
}

/** The symbols of a kind, the default unit first. @internal */
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
    for (const spelling of [symbol, twinOf(symbol), symbol.normalize('NFKC')]) {
      spellings.set(spelling, scale)
    }
  }
  spellingsByKind.set(kind, spellings)
  return spellings
}

/** Every way in which a unit of a kind may be spelt. @internal */
export function spellingsOfKind(kind: Kind): string[] {
  return [...spellingsOf(kind).keys()]
}

/** The scale of a unit of a kind however it is spelt, or undefined when the kind has no such unit. @internal */
export function scaleFor(kind: Kind, unit: string): UnitScale | undefined {
  const spellings = spellingsOf(kind)
  return spellings.get(unit) ?? spellings.get(unit.normalize('NFKC'))
}

/** A number (sign, whole part, decimals, power of ten), one space or none, and what is left: the unit. */
const quantityPattern = /^(([-+\u2212]?)(\d*)(?:\.(\d*))?(?:[eE]([-+\u2212]?\d+))?)[ \u00a0\u202f]?(.*)$/s
/** Fifteen digits always make a whole number that is exactly a double; twice as many the sum of two. */
const [EXACT_DIGITS, PAIR_DIGITS] = [15, 30]
/** No double needs more digits than this to be told apart from its neighbours. */
const LONGEST_NUMBER = 800
/** No number of so many digits with a power beyond this is a double. */
const LARGEST_POWER = 2000

/** A value that was read: its SI number and the unit it was written in. @internal */
export interface ReadValue {
  readonly si: number
  readonly scale: UnitScale
}

/** The value of a text such as `300 A` as a kind, or undefined when it is not exactly that. */
function readText(kind: Kind, text: string): ReadValue | undefined {
  const match = quantityPattern.exec(text)
  if (match === null) return undefined
  // Elements are taken by index: taking an array apart goes through its iterator, which is slow.
  const number = match[1] as string
  const decimals = match[4] ?? ''
  const digits = decimals === '' ? (match[3] as string) : match[3] + decimals
  const power = match[5] === undefined ? 0 : Number(plainMinus(match[5]))
  if (digits === '' || number.length > LONGEST_NUMBER || Math.abs(power) > LARGEST_POWER) return undefined
  const scale = kind === 'ratio' && number === text ? unitScale('ratio', '1') : scaleFor(kind, match[6] as string)
  if (scale === undefined) return undefined
  let si: number
  if (digits.length > PAIR_DIGITS) si = fromDecimal(plainMinus(number), scale)
  else {
    const sign = match[2] === '-' || match[2] === '\u2212' ? -1 : 1
    const whole = Number(digits)
    const rest = digits.length > EXACT_DIGITS ? Number(BigInt(digits) - BigInt(whole)) : 0
    si = fromWhole(sign * whole, power - decimals.length, scale, sign * rest)
  }
  const isLost = si === 0 && /[1-9]/.test(digits) && scale.zero.isZero()
  if (!Number.isFinite(si) || isLost || (kind === 'temperature' && si < 0)) return undefined
  // Adding zero turns minus zero, which JSON does not keep, into zero.
  return { si: si + 0, scale }
}

/** Texts that were read lately: a script gives the same few again and again, and looking one up is quicker. */
const recent = new Map<Kind, Map<string, ReadValue>>()
const RECENT = 1000

function readNew(kind: Kind, text: string): ReadValue | undefined {
  const read = readText(kind, text)
  const known = recent.get(kind)
  if (known === undefined) recent.set(kind, new Map())
  else if (known.size >= RECENT) known.clear()
  if (read !== undefined) recent.get(kind)?.set(text, read)
  return read
}

function plainMinus(text: string): string {
  return text.replace(/\u2212/g, '-')
}

/** Reads a value as a kind, or undefined when it cannot be used; `issueWith` then says why. @internal */
export function readValue(kind: Kind, value: unknown): ReadValue | undefined {
  if (typeof value === 'string') return recent.get(kind)?.get(value) ?? readNew(kind, value)
  if (isQuantity(value)) return value.kind === kind ? { si: value.si, scale: unitScale(kind, value.unit) } : undefined
  return kind === 'ratio' && typeof value === 'number' ? readText(kind, String(value)) : undefined
}

/** The SI number of a value read as a kind, or NaN when it cannot be used; `issueWith` then says why. @internal */
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

/**
 * The unit of a kind that was most likely meant by one it does not have. A prefix is never guessed: between mW and MW
 * lie nine powers of ten.
 */
function suggestedUnit(kind: Kind, unit: string): string | undefined {
  const named = unitInWords(kind, unit)
  if (named !== undefined) return named
  const singular = unit.replace(/s$/, '')
  const alike = [...spellingsOf(kind).keys()].filter(
    (spelling) => !/[mMµμ]/.test(`${spelling[0]}${unit[0]}`) || spelling[0] === unit[0],
  )
  const same = alike.find((spelling) => [unit, singular].some((each) => each.toLowerCase() === spelling.toLowerCase()))
  // In a short unit a single letter is the prefix or the unit itself.
  const spelling =
    same ??
    nearestName(
      unit,
      alike.filter(({ length }) => length > 3),
    )
  return spelling === undefined ? undefined : scaleFor(kind, spelling)?.symbol
}

/** The kinds that have a unit of this spelling. @internal */
export function kindsOfUnit(unit: string): Kind[] {
  return (Object.keys(kinds) as Kind[]).filter((kind) => scaleFor(kind, unit) !== undefined)
}

/** A number with commas as it is written here, where its points and commas can be told apart. */
function withoutCommas(number: string): string | undefined {
  const body = number.replace(/^[-+\u2212]/, '')
  if (/^[1-9]\d{0,2}(,\d{3})+(\.\d*)?$/.test(body)) return number.replace(/,/g, '')
  if (/^(\d{1,3}(\.\d{3})+|\d*),\d*$/.test(body)) return number.replace(/\./g, '').replace(',', '.')
  return undefined
}

/** What stands between a value and its uncertainty. @internal */
export const plusMinus = /±|\+\/-/

/** Why a text cannot be read as a kind, in the words of a mend. */
function mendText(kind: Kind, text: string): string | undefined {
  const sign = text.search(plusMinus)
  if (sign >= 0) return `no uncertainty is taken here: leave out '${text.slice(sign)}'`
  if (text.trim() === '') return `write a number and a unit, such as '${kinds[kind].example}'`
  if (text.trim() !== text) return `write it without spaces around it: '${text.trim()}'`
  const written = /^[-+\u2212]?[\d.,]*\d[\d.,]*/.exec(text)?.[0]
  if (written?.includes(',')) {
    const rest = text.slice(written.length)
    if (/^[-+\u2212]?[1-9]\d{0,2},\d{3}$/.test(written)) {
      return `the comma is ambiguous: write '${written.replace(',', '')}${rest}' or '${Number(written.replace(',', '.'))}${rest}'`
    }
    const rule = 'the decimal sign is a point, and thousands are not separated'
    const plain = withoutCommas(written)
    return plain === undefined ? rule : `write '${plain}${rest}': ${rule}`
  }
  if (/^[-+\u2212]?(nan|inf)/i.test(text)) return 'only finite numbers are quantities'
  const [, number = '', , whole = '', decimals = '', , unit = ''] = quantityPattern.exec(text) ?? []
  if (whole + decimals === '') return kind === 'ratio' ? 'write a number' : 'write the number first, then the unit'
  if (/^\d/.test(unit)) return 'write the digits of a number together'
  if (unit === '') return `which unit? ${listed(symbolsOf(kind))}`
  if (/^\s/.test(unit)) return 'write one space or none between the number and the unit'
  if (scaleFor(kind, unit) !== undefined) {
    if (number.length > LONGEST_NUMBER) return `write at most ${LONGEST_NUMBER} digits`
    if (kind === 'temperature' && /^[-\u2212]/.test(number)) return 'that is below absolute zero, -273.15 °C'
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

/** A list in a sentence: `V, mV or kV`. @internal */
export function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? ''
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} or ${last}`
}

/** What is wrong with a value that `readValue` refused for a kind. @internal */
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
