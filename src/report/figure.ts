/**
 * A figure as a reader wants it: in his units, with no more digits than it bears.
 *
 * Where it is known how sure it is, its uncertainty has two digits and it goes as far as they do (JCGM 100:2008, 7.2.6). Else
 * it has three digits at most: what cars are weighed and measured with bears no more (common practice, no source).
 */
import { InputError, type InputIssue, shown } from '../quantity/errors.js'
import { type Kind, type Quantity, quantity, type UnitOf } from '../quantity/index.js'
import { kinds } from '../quantity/kinds.js'
import { fromSi } from '../quantity/quantity.js'
import { scaleFor, symbolsOf } from '../quantity/read.js'

/** Units in which figures are shown, in place of those that they come in. */
export type Units = 'imperial' | { readonly [K in Kind]?: UnitOf<K> }

/** How figures are shown. @internal */
export interface Shown {
  /** A figure, no finer than a step in SI units. */
  readonly alone: (value: Quantity, finest?: number) => string
  /** A figure, and what is to stand after ± if that shows, both as far as two digits of the latter go. */
  readonly sure: (value: Quantity, uncertainty: Quantity) => readonly string[]
}

/** What is shown of a figure of which nobody says how sure it is. */
const DIGITS = 3
/** What is shown of an uncertainty. */
const DIGITS_OF_UNCERTAINTY = 2
/** Of these what stands before the point is not rounded away: the sum of four scales, the place of a bay. */
const asMeasured: readonly Kind[] = ['mass', 'length']
/** Nothing on a car is measured finer than this, in SI units: a tenth of a millimetre. Common practice, no source. */
const finestOf: { readonly [K in Kind]?: number } = { length: 1e-4 }
/** No figure has more. */
const MOST_DIGITS = 15
/** What rounding does to the number of steps that a figure is. */
const ROUNDING = 1e-9

/** What is said in pounds and miles, by the units that figures come in. */
const imperial: { readonly [unit: string]: string } = {
  'kg': 'lb',
  'mm': 'in',
  'm': 'ft',
  'km': 'mi',
  'km/h': 'mph',
  'm/s': 'mph',
  'm/s²': 'ft/s²',
  'Wh/km': 'Wh/mi',
  'N·m': 'lbf·ft',
  'N': 'lbf',
  'N/mm': 'lbf/in',
  'kPa': 'psi',
  '°C': '°F',
  'K': '°F',
  'm²': 'ft²',
}

/** So far apart may two units be that stand in for one another: inches for millimetres, but no miles. */
const SAME_ORDER = 100

/** How figures are shown in some units. @internal */
export function shownIn(units: Units | undefined): Shown {
  const alone: Shown['alone'] = (value, finest = 0) =>
    value.kind === 'time'
      ? timeText(value as Quantity<'time'>)
      : inUnits(value, unitFor(value, units), Math.max(finest, finestOf[value.kind] ?? 0), DIGITS)
  return {
    alone,
    sure: (value, uncertainty) => {
      // In whole minutes, or whole seconds, as the time itself.
      if (value.kind === 'time' && Math.abs(value.si) >= SHORT) {
        const part = partsOf(value.si)[2] / 60
        const steps = Math.round(uncertainty.si / part)
        return [alone(value), ...(steps === 0 ? [] : [alone(quantity('time', steps * part, 's'))])]
      }
      const unit = value.kind === 'time' ? 's' : unitFor(value, units)
      const step = stepOf(uncertainty, unit)
      return [inUnits(value, unit, step, MOST_DIGITS), inUnits(uncertainty, unit, step, MOST_DIGITS)]
    },
  }
}

/** The last digit that an uncertainty shows in a unit, in SI units. */
function stepOf(uncertainty: Quantity, unit: string): number {
  const size = Number(Math.abs(uncertainty.in(unit as never)).toPrecision(DIGITS_OF_UNCERTAINTY))
  return (
    10 ** (Math.floor(Math.log10(size)) - DIGITS_OF_UNCERTAINTY + 1) * (uncertainty.si / uncertainty.in(unit as never))
  )
}

/** Refuses units that are none. @internal */
export function refuseUnits(where: string, units: unknown): void {
  if (units === undefined || units === 'imperial') return
  const issues = Object.entries(Object(units)).flatMap(([kind, unit]): InputIssue[] => {
    const path = `units.${kind}`
    if (!isKind(kind)) return [{ path, expected: 'a kind of quantity such as length', received: shown(kind) }]
    if (typeof unit === 'string' && scaleFor(kind, unit) !== undefined) return []
    return [{ path, expected: `a unit of it: ${symbolsOf(kind).join(', ')}`, received: shown(unit) }]
  })
  if (typeof units !== 'object' || units === null) {
    const expected = "'imperial', or units by kind such as { length: 'mi' }"
    issues.push({ path: 'units', expected, received: shown(units) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
}

function isKind(name: string): name is Kind {
  return Object.hasOwn(kinds, name)
}

/** The unit in which a figure is shown. @internal */
export function unitFor(value: Quantity, units: Units | undefined): string {
  const wanted = units === 'imperial' ? imperial[value.unit] : units?.[value.kind]
  return wanted !== undefined && isOfOrder(value, wanted) ? wanted : value.unit
}

/** A figure in a unit with so many digits at most, and no finer than a step in SI units. */
function inUnits(value: Quantity, unit: string, finest: number, most: number): string {
  const size = Math.abs(value.si)
  // Temperatures count from a zero of their own.
  const isFree = value.kind === 'temperature' || finest === 0 || size === 0
  const digits = isFree ? MOST_DIGITS : Math.floor(Math.log10(size / finest) + ROUNDING) + 1
  if (digits < 1) {
    // Half a step and more is one.
    const step = size >= finest / 2 ? Math.sign(value.si) * finest : 0
    return withSign(fromSi<Kind>(value.kind, step, unit).format({ digits: 1 }))
  }
  const number = Math.abs(value.in(unit as never))
  const whole = asMeasured.includes(value.kind) ? Math.floor(Math.log10(number || 1)) + 1 : 1
  return withSign(
    value.format({ unit: unit as never, digits: Math.max(1, Math.min(digits, Math.max(most, whole), MOST_DIGITS)) }),
  )
}

/** Whether a unit is of the order of the one in which a figure comes: kilometres become miles, and millimetres do not. */
function isOfOrder({ kind, unit }: Quantity, other: string): boolean {
  if (scaleFor(kind, other) === undefined) return false
  if (kind === 'temperature') return true
  const ratio = quantity(kind, 1, unit as never).si / quantity(kind, 1, other as never).si
  return ratio < SAME_ORDER && ratio > 1 / SAME_ORDER
}

/** Below this a time has no minutes, in seconds. */
const SHORT = 60

/** A time as it is said: 2 h 24 min, 44 min, 8.03 s. */
function timeText(value: Quantity<'time'>): string {
  const seconds = Math.abs(value.si)
  if (seconds < SHORT) return withSign(value.as(seconds < 1 ? 'ms' : 's').format({ digits: DIGITS }))
  const sign = value.si < 0 ? '−' : ''
  const [large, small, one] = partsOf(seconds)
  const parts = Math.round((seconds / one) * 60)
  const [whole, rest] = [Math.floor(parts / 60), parts % 60]
  return [sign, ...(whole === 0 ? [] : [`${whole} ${large}`]), ...(rest === 0 && whole > 0 ? [] : [`${rest} ${small}`])]
    .filter((part) => part !== '')
    .join(' ')
    .replace(/^− /, '−')
}

/** The two units in which a time is said, and the larger in seconds: the smaller is a sixtieth of it. */
function partsOf(seconds: number): readonly [large: string, small: string, seconds: number] {
  return Math.abs(seconds) < 599.5 ? ['min', 's', 60] : ['h', 'min', 3600]
}

/** With a minus sign that can be seen. */
function withSign(text: string): string {
  return text.replace(/^-/, '−')
}
