/** What the reader of an input and its JSON Schema agree on: structure, not bounds. */
import { Ajv } from 'ajv'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { AnyField, JsonSchema } from '../../src/procedure/index.js'
import { valueAt } from '../../src/procedure/path.js'
import { readField } from '../../src/procedure/reading.js'
import { runs } from '../runs.js'
import { changed, changesOf, placesIn } from './inputs.js'

/** Tries a schema and the reader on what the fields allow, on what is missing or too much, and on what is of the wrong sort. */
export function agreesWithSchema(name: string, whole: AnyField, schema: JsonSchema, example: unknown): void {
  describe('and its JSON Schema', () => {
    const validate = new Ajv({ strict: true, strictTypes: false, allErrors: false }).compile(schema)
    const isRead = (input: unknown) => {
      try {
        readField(name, whole, structuredClone(input))
        return true
      } catch {
        return false
      }
    }
    const agree = (input: unknown, expected: boolean) =>
      expect([validate(input), isRead(input)]).toEqual([expected, expected])
    const places = placesIn(whole, example).filter(({ path }) => valueAt(example, path) !== undefined)

    it('agree on what the fields allow', () => {
      fc.assert(
        fc.property(changesOf(whole, example), (input) => {
          agree(input, true)
        }),
        { numRuns: runs(12) },
      )
    })
    it('agree on what must be there, and that nothing else may', () => {
      for (const { path, field, isOne } of places) {
        if (!isOne) agree(changed(example, path, undefined), field.need !== 'required')
        if (field.sort === 'group' && field.open !== true) agree(changed(example, [...path, 'unheardOf'], '1 m'), false)
      }
    })
    it('agree on what is of the wrong sort', () => {
      for (const { path, field } of places) {
        if (field.sort === 'own') continue
        agree(changed(example, path, null), false)
        if (field.sort === 'quantity') agree(changed(example, path, '3 furlongs'), false)
        if (field.sort === 'choice') agree(changed(example, path, 'neither of them'), false)
        if (field.sort === 'list' || field.sort === 'pairs') agree(changed(example, path, '1 m'), false)
      }
    })
    it('agree on names: there must be one, and what stands in ids is a letter, then letters and digits', () => {
      for (const { path, field } of places) {
        if (field.sort !== 'byName') continue
        const [one] = Object.values(valueAt(example, path) as object)
        const named = (key: string) => changed(example, [...path, key], one)
        agree(named('another1'), true)
        agree(named(''), false)
        for (const key of ['one more', '2nd', 'a.b', 'ä', 'a'.repeat(65)]) agree(named(key), field.ids !== true)
        agree(changed(example, path, JSON.parse('{ "__proto__": 1 }')), false)
        agree(changed(example, path, []), false)
      }
    })
  })
}
