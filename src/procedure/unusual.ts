/** What is outside the range that light road cars and their parts have: told, never refused. */
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { fromSi, quantity } from '../quantity/quantity.js'
import { readValue, symbolsOf } from '../quantity/read.js'
import type { AnyField, GroupField, QuantityField } from './field.js'
import type { Note } from './findings.js'
import { pathText } from './path.js'
import { isUnchanging } from './reading.js'

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
  const notes: Note[] = []
  gather(notes, field, value, [...path])
  return notes
}

function gather(notes: Note[], field: AnyField, value: unknown, path: PropertyKey[]): void {
  if (value === undefined || !isWatched(field)) return
  // The parts of a car go through dozens of procedures, and mostly nothing of them is unusual.
  const usual = isUnchanging(value) ? (foundUsual.get(field) ?? new WeakSet()) : undefined
  if (usual?.has(value as object)) return
  const before = notes.length
  look(notes, field, value, path)
  if (usual !== undefined && notes.length === before) foundUsual.set(field, usual.add(value as object))
}

const foundUsual = /*@__PURE__*/ new WeakMap<AnyField, WeakSet<object>>()

function look(notes: Note[], field: AnyField, value: unknown, path: PropertyKey[]): void {
  const within = (inner: AnyField, each: unknown, ...keys: readonly PropertyKey[]) => {
    path.push(...keys)
    gather(notes, inner, each, path)
    path.length -= keys.length
  }
  switch (field.sort) {
    case 'quantity': {
      const note = noteOn(field, value as Quantity, path)
      if (note !== undefined) notes.push(note)
      return
    }
    case 'group':
      for (const [key, inner] of watchedOf(field))
        within(inner, (value as { readonly [key: string]: unknown })[key], key)
      return
    case 'list':
      for (const [i, each] of (value as readonly unknown[]).entries()) within(field.of, each, i)
      return
    case 'pairs':
      for (const [i, [first, second]] of (value as readonly (readonly [unknown, unknown])[]).entries()) {
        within(field.of[0], first, i, 0)
        within(field.of[1], second, i, 1)
      }
      return
    case 'byName':
      for (const [key, each] of Object.entries(value as object)) within(field.of, each, key)
      return
    case 'either':
      for (const form of field.of) {
        if (form.sort === 'quantity' && form.kind === (value as Partial<Quantity>).kind) within(form, value)
      }
  }
}

const watchedFields = /*@__PURE__*/ new WeakMap<GroupField, readonly (readonly [key: string, field: AnyField])[]>()

/** The fields of a group that need a look. */
function watchedOf(group: GroupField): readonly (readonly [key: string, field: AnyField])[] {
  const known = watchedFields.get(group) ?? Object.entries(group.fields).filter(([, field]) => isWatched(field))
  watchedFields.set(group, known)
  return known
}

/** What is usual of a field. */
interface Usual {
  readonly range?: readonly [least: Quantity, most: Quantity]
  readonly finest?: Quantity
}

const usuals = /*@__PURE__*/ new WeakMap<AnyField, Usual>()

/** What is usual of a field: read from its words once, not at every call. */
function usualOf(field: QuantityField): Usual {
  const known = usuals.get(field)
  if (known !== undefined) return known
  const read = (bound: unknown) => quantity<Kind>(field.kind, bound as Given<Kind>)
  const usual = {
    ...(field.usual === undefined ? {} : { range: [read(field.usual[0]), read(field.usual[1])] as const }),
    ...(field.finest === undefined ? {} : { finest: read(field.finest) }),
  }
  usuals.set(field, usual)
  return usual
}

/** Zero of the temperatures as they are written, in kelvins. */
const FREEZING = 273.15

/** Its size as it is written: a temperature counts from 0 °C. */
function sizeOf({ kind, si }: Quantity): number {
  return Math.abs(kind === 'temperature' ? si - FREEZING : si)
}

function noteOn(field: QuantityField, value: Quantity, path: readonly PropertyKey[]): Note | undefined {
  const { range, finest } = usualOf(field)
  const isUsual = (si: number) => range === undefined || (si >= range[0].si && si <= range[1].si)
  if (range !== undefined && !isUsual(value.si)) {
    const [least, most] = range
    const at = pathText(path)
    const [, , basis = 'common practice'] = field.usual as NonNullable<QuantityField['usual']>
    const meant = meantBy(value, range)
    const text =
      `${field.about}: ${value} is unusual; light road cars and their parts have ${least} to ${most} (${basis}).` +
      (meant === undefined ? '' : ` Did you mean ${meant}?`)
    return { id: `${at}.unusual`, path: at, text, value, usual: [least, most] }
  }
  if (finest === undefined) return undefined
  if (sizeOf(value) === 0 || sizeOf(value) >= sizeOf(finest)) return undefined
  const at = pathText(path)
  const meant = value.kind === 'temperature' ? undefined : fromSi(value.kind, value.si * 1000, value.unit)
  const text = `${field.about}: ${value} is unusual; nobody measures it finer than ${finest}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`
  return { id: `${at}.unusual`, path: at, text, value, usual: [finest, value] }
}

/** A thousandth that is less than this part of the most that is usual is hardly what was meant. */
const HARDLY_ANY = 500

/** What would be usual: the same number in another unit, or a thousand times as much or as little. */
function meantBy(value: Quantity, [least, most]: readonly [Quantity, Quantity]): Quantity | undefined {
  const isUsual = (si: number) => si >= least.si && si <= most.si
  const number = value.in(value.unit)
  // Not every unit can have the number: nothing is -10 K.
  const inUnits = symbolsOf(value.kind).flatMap((symbol) => {
    const read = readValue(value.kind, `${number} ${symbol}`)
    return read === undefined ? [] : [fromSi(value.kind, read.si, symbol)]
  })
  const factors = value.kind === 'temperature' ? [] : [1e-3, 1e3, 1e-2, 1e2]
  // A range from nothing on holds what nobody meant too, such as 0.17 km/h.
  const isMeant = (si: number) => Number.isFinite(si) && isUsual(si) && si >= most.si / HARDLY_ANY
  const times = factors
    .map((factor) => value.si * factor)
    .filter(isMeant)
    .map((si) => fromSi(value.kind, si, value.unit))
  // A slip by a thousand is the likeliest.
  const isThousand = (other: Quantity) => Math.abs(Math.abs(Math.log10(other.si / value.si)) - 3) < 1e-9
  return (
    inUnits.find((other) => isUsual(other.si) && isThousand(other)) ??
    inUnits.find((other) => isUsual(other.si)) ??
    times[0]
  )
}
