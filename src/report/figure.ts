/** A figure as a reader wants it: in his units, with no more digits than it bears. */
import { InputError, type InputIssue, shown } from '../quantity/errors.js'
import { type Kind, type Quantity, quantity, type UnitOf } from '../quantity/index.js'
import { kinds } from '../quantity/kinds.js'
import { scaleFor, symbolsOf } from '../quantity/read.js'

/** Units in which figures are shown, in place of those that they come in. */
export type Units = 'imperial' | { readonly [K in Kind]?: UnitOf<K> }

/** How a figure is shown, and no finer than a step in SI units. @internal */
export type Shown = (value: Quantity, finest?: number) => string

/** What is shown of a figure whose inputs were weighed and measured: three digits. */
const DIGITS = 3
/** No figure has more. */
const MOST_DIGITS = 15

/** What is said in pounds and miles, by the units that figures come in. */
const imperial: { readonly [unit: string]: string } = {
  'kg': 'lb',
  'mm': 'in',
  'm': 'ft',
  'km': 'mi',
  'km/h': 'mph',
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
  return (value, finest = 0) =>
    value.kind === 'time' ? timeText(value as Quantity<'time'>) : inUnits(value, units, finest)
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

function inUnits(value: Quantity, units: Units | undefined, finest: number): string {
  const wanted = units === 'imperial' ? imperial[value.unit] : units?.[value.kind]
  const unit = wanted !== undefined && isOfOrder(value, wanted) ? wanted : value.unit
  const size = Math.abs(value.si)
  // Temperatures count from a zero of their own.
  const reach = value.kind === 'temperature' || finest === 0 ? MOST_DIGITS : Math.floor(Math.log10(size / finest)) + 1
  if (size > 0 && reach < 1) return quantity(value.kind, 0, unit as never).format()
  // What stands before the point is never rounded away.
  const whole = Math.floor(Math.log10(Math.abs(value.in(unit as never)) || 1)) + 1
  return withSign(value.format({ unit: unit as never, digits: Math.max(1, Math.min(reach, Math.max(DIGITS, whole))) }))
}

/** Whether a unit is of the order of the one in which a figure comes: kilometres become miles, and millimetres do not. */
function isOfOrder({ kind, unit }: Quantity, other: string): boolean {
  if (scaleFor(kind, other) === undefined) return false
  if (kind === 'temperature') return true
  const ratio = quantity(kind, 1, unit as never).si / quantity(kind, 1, other as never).si
  return ratio < SAME_ORDER && ratio > 1 / SAME_ORDER
}

/** A time as it is said: 2 h 24 min, 44 min, 8.03 s. */
function timeText(value: Quantity<'time'>): string {
  const seconds = Math.abs(value.si)
  if (seconds < 60) return withSign(value.as(seconds < 1 ? 'ms' : 's').format({ digits: DIGITS }))
  const sign = value.si < 0 ? '−' : ''
  const [large, small, one] = seconds < 599.5 ? (['min', 's', 60] as const) : (['h', 'min', 3600] as const)
  const parts = Math.round((seconds / one) * 60)
  const [whole, rest] = [Math.floor(parts / 60), parts % 60]
  return [sign, ...(whole === 0 ? [] : [`${whole} ${large}`]), ...(rest === 0 && whole > 0 ? [] : [`${rest} ${small}`])]
    .filter((part) => part !== '')
    .join(' ')
    .replace(/^− /, '−')
}

/** With a minus sign that can be seen. */
function withSign(text: string): string {
  return text.replace(/^-/, '−')
}
