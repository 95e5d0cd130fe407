/** Inputs of procedures drawn from the descriptions of their fields, and the example that each begins with. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { limitsOf } from '../../src/formula/formula.js'
import type { AnyField, AnyProcedure, Fields, QuantityField } from '../../src/procedure/index.js'
import { valueAt } from '../../src/procedure/path.js'
import { wholeOf } from '../../src/procedure/procedure.js'
import { type Kind, kinds, quantity } from '../../src/quantity/index.js'
import { fromSi } from '../../src/quantity/quantity.js'
import { numbersFor } from './draw.js'

/** The example of a procedure, read anew: whoever gets it may change it. */
export function exampleOf({ name }: { readonly name: string }): unknown {
  return JSON.parse(readFileSync(new URL(`../../docs/examples/${name}.json`, import.meta.url), 'utf8'))
}

/** The whole input of a procedure as one field. */
export function inputOf({ title, input }: AnyProcedure): AnyField {
  return wholeOf(title, input as Fields | AnyField)
}

/** A place in an input where something stands or may stand. */
export interface Place {
  readonly path: readonly (string | number)[]
  readonly field: AnyField
  /** Whether it is one of any number: in a list, in a pair or under a name of its own. */
  readonly isOne?: true
}

/** Every place in an input below the whole, whether something stands there or not. */
export function placesIn(field: AnyField, value: unknown, path: Place['path'] = []): Place[] {
  const own: Place[] = path.length === 0 ? [] : [{ path, field }]
  if (value === undefined) return own
  switch (field.sort) {
    case 'group':
      return [
        ...own,
        ...Object.entries(field.fields).flatMap(([key, inner]) =>
          placesIn(inner, (value as { readonly [key: string]: unknown })[key], [...path, key]),
        ),
      ]
    case 'list':
      return [...own, ...(value as readonly unknown[]).flatMap((each, i) => placesOfOne(field.of, each, [...path, i]))]
    case 'pairs':
      return [
        ...own,
        ...(value as readonly (readonly [unknown, unknown])[]).flatMap((pair, i) =>
          pair.flatMap((each, side) => placesOfOne(field.of[side as 0 | 1], each, [...path, i, side])),
        ),
      ]
    case 'byName':
      return [
        ...own,
        ...Object.entries(value as object).flatMap(([key, each]) => placesOfOne(field.of, each, [...path, key])),
      ]
    default:
      return own
  }
}

/** The places in one of many, of which it is the first. */
function placesOfOne(field: AnyField, value: unknown, path: Place['path']): Place[] {
  return placesIn(field, value, path).map((place, i) => (i === 0 ? { ...place, isOne: true } : place))
}

/** An input with something else at a place, or with nothing there. */
export function changed(input: unknown, path: Place['path'], value: unknown): unknown {
  const [key, ...rest] = path
  if (key === undefined) return value
  if (Array.isArray(input)) return input.map((each, i) => (i === key ? changed(each, rest, value) : each))
  const { [key]: inner, ...others } = Object(input) as { readonly [key: string]: unknown }
  const made = changed(inner, rest, value)
  return made === undefined ? others : { ...others, [key]: made }
}

/** The example of a procedure with one to four things in it changed within the bounds of their fields. */
export function inputsOf(procedure: AnyProcedure): fc.Arbitrary<unknown> {
  return changesOf(inputOf(procedure), exampleOf(procedure))
}

/** An input with one to four things in it changed within the bounds of their fields. */
export function changesOf(whole: AnyField, example: unknown): fc.Arbitrary<unknown> {
  const places = placesIn(whole, example)
  const change = fc.constantFrom(...places).chain(({ path, field }) => {
    const drawn = valuesOf(field, valueAt(example, path))
    const isOptional = field.need !== 'required'
    return (isOptional ? fc.oneof(drawn, fc.constant(undefined)) : drawn).map((value) => ({ path, value }))
  })
  return fc
    .array(change, { minLength: 1, maxLength: 4 })
    .map((changes) => changes.reduce((input, { path, value }) => into(input, path, value), example))
}

/** A change at a place; none where what holds the place is gone. */
function into(input: unknown, path: Place['path'], value: unknown): unknown {
  const outer = valueAt(input, path.slice(0, -1))
  return typeof outer === 'object' && outer !== null ? changed(input, path, value) : input
}

/** What may be written for a field. Where something stands in the example, most of what is drawn is near it. */
function valuesOf(field: AnyField, present: unknown): fc.Arbitrary<unknown> {
  switch (field.sort) {
    case 'quantity':
      return quantitiesOf(field, present)
    case 'choice':
      return fc.constantFrom(...field.of)
    case 'whole':
      return fc.integer({ min: field.min ?? 0, max: Math.min(field.max ?? 20, (field.min ?? 0) + 20) })
    case 'text':
      return fc.constantFrom(...['first', 'a name', ...(typeof present === 'string' ? [present] : [])])
    case 'flag':
      return fc.boolean()
    case 'group':
      return groupsOf(field.fields, present)
    case 'list':
      return fc.array(valuesOf(field.of, (present as readonly unknown[] | undefined)?.[0]), {
        minLength: Math.max(field.least, 1),
        maxLength: Math.max(field.least, 3),
      })
    case 'pairs': {
      const [first, second] = (present as readonly (readonly [unknown, unknown])[] | undefined)?.[0] ?? []
      return fc.array(fc.tuple(valuesOf(field.of[0], first), valuesOf(field.of[1], second)), {
        minLength: Math.max(field.least, 1),
        maxLength: Math.max(field.least, 4),
      })
    }
    case 'byName':
      return fc.dictionary(fc.constantFrom('first', 'second', 'third'), valuesOf(field.of, undefined), { minKeys: 1 })
    case 'either':
      return fc.oneof(...field.of.map((form) => valuesOf(form, undefined)))
    case 'own':
      // Only its own reader knows what may stand here.
      return fc.constant(present ?? 'ECE-15')
  }
}

function groupsOf(fields: Fields, present: unknown): fc.Arbitrary<unknown> {
  const entries = Object.entries<AnyField>(fields)
  const drawn = Object.fromEntries(
    entries.map(([key, field]) => [
      key,
      valuesOf(field, (present as { readonly [key: string]: unknown } | undefined)?.[key]),
    ]),
  )
  const requiredKeys = entries.filter(([, { need }]) => need === 'required').map(([key]) => key)
  return fc.record(drawn, { requiredKeys })
}

/** Quantities as text: anywhere within the bounds, or up to ten times more or less than in the example. */
function quantitiesOf({ kind, bounds }: QuantityField, present: unknown): fc.Arbitrary<string> {
  const limits = limitsOf(kind, bounds)
  const anywhere = numbersFor({ kind, limits })
  const [unit] = Object.keys(kinds[kind].units) as [string]
  const text = (si: number) => fromSi<Kind>(kind, si, unit).toJSON()
  const isWithin = (si: number) =>
    !(si < (limits.min ?? -Infinity) || si > (limits.max ?? Infinity)) &&
    !(si <= (limits.above ?? -Infinity) || si >= (limits.below ?? Infinity))
  const near =
    present === undefined || kind === 'temperature'
      ? []
      : [
          fc
            .double({ min: -1, max: 1, noNaN: true })
            .map((power) => quantity<Kind>(kind, present as never).si * 10 ** power)
            .filter(isWithin),
        ]
  // Text has fewer digits than a number, and may pass a bound.
  return fc
    .oneof(anywhere, ...near, ...near, ...near)
    .map(text)
    .filter((each) => isWithin(quantity<Kind>(kind, each as never).si))
}
