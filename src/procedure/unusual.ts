/** What is outside the range that light road cars and their parts have: told, never refused. */
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { fromSi, quantity } from '../quantity/quantity.js'
import { readValue, symbolsOf } from '../quantity/read.js'
import type { AnyField, QuantityField } from './field.js'
import type { Note } from './findings.js'
import { pathText } from './path.js'

const watched = /*@__PURE__*/ new WeakMap<AnyField, boolean>()

/** Whether a field or one in it has a usual range: most need no look. */
function isWatched(field: AnyField): boolean {
  const known = watched.get(field)
  if (known !== undefined) return known
  const found = field.need !== 'spare' && (isBounded(field) || innerOf(field).some(isWatched))
  watched.set(field, found)
  return found
}

function isBounded(field: AnyField): field is QuantityField {
  return field.sort === 'quantity' && (field.usual ?? field.finest) !== undefined
}

function innerOf(field: AnyField): readonly AnyField[] {
  switch (field.sort) {
    case 'group':
      return Object.values(field.fields)
    case 'list':
    case 'byName':
      return [field.of]
    case 'pairs':
    case 'either':
      return field.of
    default:
      return []
  }
}

/** Notes on all that is unusual in what was read. */
export function unusualIn(field: AnyField, value: unknown, path: readonly PropertyKey[] = []): Note[] {
  if (value === undefined || !isWatched(field)) return []
  if (isBounded(field)) {
    const note = noteOn(field, value as Quantity, path)
    return note === undefined ? [] : [note]
  }
  switch (field.sort) {
    case 'group':
      return Object.entries(field.fields).flatMap(([key, inner]) =>
        unusualIn(inner, (value as { readonly [key: string]: unknown })[key], [...path, key]),
      )
    case 'list':
      return (value as readonly unknown[]).flatMap((each, i) => unusualIn(field.of, each, [...path, i]))
    case 'pairs':
      return (value as readonly (readonly [unknown, unknown])[]).flatMap(([first, second], i) => [
        ...unusualIn(field.of[0], first, [...path, i, 0]),
        ...unusualIn(field.of[1], second, [...path, i, 1]),
      ])
    case 'byName':
      return Object.entries(value as object).flatMap(([key, each]) => unusualIn(field.of, each, [...path, key]))
    case 'either':
      return field.of
        .filter((form) => form.sort === 'quantity' && form.kind === (value as Partial<Quantity>).kind)
        .flatMap((form) => unusualIn(form, value, path))
    default:
      return []
  }
}

const ranges = /*@__PURE__*/ new WeakMap<AnyField, readonly [least: Quantity, most: Quantity]>()

/** The usual range of a field: read from its words once, not at every call. Without one, all is usual. */
function rangeOf(field: QuantityField): readonly [Quantity, Quantity] | undefined {
  if (field.usual === undefined) return undefined
  const known = ranges.get(field)
  if (known !== undefined) return known
  const [low, high] = field.usual
  const read = (bound: unknown) => quantity<Kind>(field.kind, bound as Given<Kind>)
  const range = [read(low), read(high)] as const
  ranges.set(field, range)
  return range
}

/** Its size as it is written: a temperature counts from 0 °C. */
function sizeOf(value: Quantity): number {
  return Math.abs(value.kind === 'temperature' ? value.in('°C' as never) : value.si)
}

function noteOn(field: QuantityField, value: Quantity, path: readonly PropertyKey[]): Note | undefined {
  const range = rangeOf(field)
  const isUsual = (si: number) => range === undefined || (si >= range[0].si && si <= range[1].si)
  const at = pathText(path)
  if (range !== undefined && !isUsual(value.si)) {
    const [least, most] = range
    const [, , basis = 'common practice'] = field.usual as NonNullable<QuantityField['usual']>
    const meant = meantBy(value, isUsual)
    const text =
      `${field.about}: ${value} is unusual; light road cars and their parts have ${least} to ${most} (${basis}).` +
      (meant === undefined ? '' : ` Did you mean ${meant}?`)
    return { id: `${at}.unusual`, path: at, text, value, usual: [least, most] }
  }
  if (field.finest === undefined) return undefined
  const finest = quantity<Kind>(field.kind, field.finest as Given<Kind>)
  if (sizeOf(value) === 0 || sizeOf(value) >= sizeOf(finest)) return undefined
  const meant = value.kind === 'temperature' ? undefined : fromSi(value.kind, value.si * 1000, value.unit)
  const text = `${field.about}: ${value} is unusual; nobody measures it finer than ${finest}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`
  return { id: `${at}.unusual`, path: at, text, value, usual: [finest, value] }
}

/** What would be usual: the same number in another unit, or a thousand times as much or as little. */
function meantBy(value: Quantity, isUsual: (si: number) => boolean): Quantity | undefined {
  const number = value.in(value.unit)
  // Not every unit can have the number: nothing is -10 K.
  const inUnits = symbolsOf(value.kind).flatMap((symbol) => {
    const read = readValue(value.kind, `${number} ${symbol}`)
    return read === undefined ? [] : [fromSi(value.kind, read.si, symbol)]
  })
  const factors = value.kind === 'temperature' ? [] : [1e-3, 1e3, 1e-2, 1e2]
  const times = factors.map((factor) => fromSi(value.kind, value.si * factor, value.unit))
  // A slip by a thousand is the likeliest.
  const isThousand = (other: Quantity) => Math.abs(Math.abs(Math.log10(other.si / value.si)) - 3) < 1e-9
  return (
    inUnits.find((other) => isUsual(other.si) && isThousand(other)) ??
    inUnits.find((other) => isUsual(other.si)) ??
    times.find((other) => isUsual(other.si))
  )
}
