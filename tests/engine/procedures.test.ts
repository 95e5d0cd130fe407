/** What holds for every procedure, whatever it decides. Nothing here knows one procedure from another. */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { procedures } from '../../src/catalogue.js'
import * as root from '../../src/index.js'
import {
  type AnyField,
  type AnyProcedure,
  type Findings,
  fieldsOf,
  isMet,
  jsonSchemaOf,
} from '../../src/procedure/index.js'
import { pathText, valueAt } from '../../src/procedure/path.js'
import { readField } from '../../src/procedure/reading.js'
import { unusualIn } from '../../src/procedure/unusual.js'
import { CalculationError, InputError } from '../../src/quantity/index.js'
import { runs } from '../runs.js'
import checkIds from './check-ids.json' with { type: 'json' }
import { changed, exampleOf, inputOf, inputsOf, placesIn } from './inputs.js'
import { isPlain } from './plain.js'
import { agreesWithSchema } from './schema.js'

const all = Object.values(procedures).map((each) => [each.name, each] as const)

/** What comes of a call: a result, or the one of the two errors that a caller is told to expect. */
function outcomeOf(procedure: AnyProcedure, input: unknown): unknown {
  try {
    return procedure(input as never)
  } catch (error) {
    if (error instanceof InputError || error instanceof CalculationError) return error
    throw error
  }
}

/** Every number anywhere in a result. */
function numbersIn(value: unknown, seen = new Set<unknown>()): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null || seen.has(value)) return []
  seen.add(value)
  return Object.values(value).flatMap((each) => numbersIn(each, seen))
}

function checksOf(result: unknown): Findings['checks'] {
  return result instanceof Error ? [] : ((result as Partial<Findings>).checks ?? [])
}

/** Whether the list of ids knows one: a star in it stands for a name that the caller chose. */
function isKnown(id: string): boolean {
  return checkIds.some((known) => new RegExp(`^${known.replaceAll('.', '\\.').replaceAll('*', '[^.]+')}$`).test(id))
}

/** Every assumption of a result, in words. */
function saidOf(result: unknown): string[] {
  return result instanceof Error ? [] : ((result as Partial<Findings>).assumptions ?? []).map(({ text }) => text)
}

describe('the procedures', () => {
  it('are found under the names by which they are exported', () => {
    for (const [name, procedure] of all) expect((root as Record<string, unknown>)[name]).toBe(procedure)
  })
  it('have an example each, and no example is left over', () => {
    const files = readdirSync(new URL('../../docs/examples/', import.meta.url)).map((file) => file.replace('.json', ''))
    expect(files.sort()).toEqual(all.map(([name]) => name).sort())
  })
  it('hold figures to limits by ids that a script may rely on', () => {
    const files = readdirSync(new URL('../../src/', import.meta.url), { recursive: true, encoding: 'utf8' })
    const written = files
      .filter((file) => file.endsWith('.ts') && !file.startsWith('procedure'))
      .flatMap((file) =>
        Array.from(
          readFileSync(new URL(`../../src/${file}`, import.meta.url), 'utf8').matchAll(
            /\b(?:check|trial|heldToSheet)\(\s*(?:'([\w.]+)'|`([^`]+)`)/g,
          ),
          ([, plain, made]) => plain ?? (made as string).replaceAll(/\$\{[^}]*\}/g, '*'),
        ),
      )
    for (const id of written) expect([id, isKnown(id)]).toEqual([id, true])
  })
})

describe.each(all)('%s', (name, procedure) => {
  const whole = inputOf(procedure)
  const fields = fieldsOf(procedure)

  it('says what it gives, what it answers, and on whose authority', () => {
    expect(procedure.title).toMatch(/^\p{Lu}/u)
    expect(procedure.answers).toMatch(/^\p{Lu}.*\?$/u)
    expect(procedure.source.length).toBeGreaterThan(0)
    for (const text of procedure.assumes) expect(text).toMatch(/^\p{Lu}.*\.$/u)
  })
  it('has words for every field', () => {
    for (const { path, field } of fields) expect([path, field.about]).toEqual([path, expect.stringMatching(/^\p{Lu}/u)])
  })
  it('has defaults with their ground, within the bounds of their fields and usual', () => {
    for (const { field } of fields) {
      if (field.need !== 'default' || field.sort === 'group') continue
      const value = readField(name, field, field.default)
      expect(field.because).toMatch(/\S/)
      expect(unusualIn(field, value)).toEqual([])
    }
  })
  it('has no default where nobody would be told of it: in a list, by a name, or in one of several forms', () => {
    const hidden = (field: AnyField): AnyField[] => {
      switch (field.sort) {
        case 'group':
          return Object.values(field.fields).flatMap(hidden)
        case 'list':
        case 'byName':
          return within(field.of)
        case 'pairs':
        case 'either':
          return field.of.flatMap(within)
        default:
          return []
      }
    }
    const within = (field: AnyField): AnyField[] => [
      ...(field.need === 'default' ? [field] : []),
      ...(field.sort === 'group' ? Object.values(field.fields).flatMap(within) : hidden(field)),
    ]
    expect(hidden(whole).map(({ about }) => about)).toEqual([])
  })
  it('works on its example, with known checks and nothing unusual, in sentences, and leaves it as it was', () => {
    const example = exampleOf(procedure)
    const result = procedure(example as never)
    expect(example).toEqual(exampleOf(procedure))
    expect(JSON.stringify(result)).not.toMatch(/null|undefined|\[object/)
    const { assumptions = [] } = result as Partial<Findings>
    for (const { text } of assumptions) expect(text).toMatch(/^[\p{Lu}\d].*\.$/u)
    expect(new Set(assumptions.map(({ id }) => id)).size).toBe(assumptions.length)
    const ids = checksOf(result).map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    for (const id of ids) expect([id, isKnown(id)]).toEqual([id, true])
    expect((result as Partial<Findings>)?.notes ?? []).toEqual([])
  })
  it('gives a result or one of the two errors for what its fields allow, without NaN', () => {
    fc.assert(
      fc.property(inputsOf(procedure), (input) => {
        const found = outcomeOf(procedure, input)
        if (found instanceof InputError) {
          expect(found.where).toBe(name)
          for (const { path, expected, received } of found.issues) {
            expect([typeof path, expected !== '', received !== '']).toEqual(['string', true, true])
          }
        } else if (!(found instanceof CalculationError)) {
          expect(numbersIn(found).every(Number.isFinite)).toBe(true)
          const ids = checksOf(found).map(({ id }) => id)
          expect(new Set(ids).size).toBe(ids.length)
          for (const id of ids) expect([id, isKnown(id)]).toEqual([id, true])
        }
      }),
      { numRuns: runs(8, 60) },
    )
  })
  it('refuses what is no input with words, wherever it stands', () => {
    const circle: { [key: string]: unknown } = {}
    circle.car = circle
    let nested: unknown = []
    for (let depth = 0; depth < 20_000; depth++) nested = [nested]
    const odd = [undefined, null, 10n, Symbol('odd'), new Map(), () => 1, circle]
    const example = exampleOf(procedure)
    for (const value of [...odd, nested, Array(1e5).fill('x')]) {
      expect(outcomeOf(procedure, value)).toBeInstanceOf(InputError)
    }
    for (const value of odd) {
      // What is left out may be optional.
      for (const key of Object.keys(Object(example))) outcomeOf(procedure, { ...Object(example), [key]: value })
    }
  })
  it('passes nothing in silence for want of a figure', () => {
    fc.assert(
      fc.property(inputsOf(procedure), (input) => {
        const result = outcomeOf(procedure, input)
        const failed = checksOf(result).filter((each) => !isMet(each))
        if (failed.length === 0) return
        const told = saidOf(result)
        for (const { path, field } of placesIn(whole, input)) {
          const at = pathText(path)
          if (field.need !== 'optional' || valueAt(input, path) === undefined || isPlain(path)) continue
          const without = outcomeOf(procedure, changed(input, path, undefined))
          if (saidOf(without).some((text) => !told.includes(text))) continue
          for (const { id } of failed) {
            const now = checksOf(without).find((each) => each.id === id)
            expect([at, id, now !== undefined && isMet(now)]).toEqual([at, id, false])
          }
        }
      }),
      { numRuns: runs(8, 60) },
    )
  })

  agreesWithSchema(name, whole, jsonSchemaOf(procedure), exampleOf(procedure))
})
