/** A sheet with a change: JSON Merge Patch (RFC 7396). */
import { shown } from '../../quantity/errors.js'
import { InputError } from '../../quantity/index.js'
import { MOST_LEVELS } from '../sheet/build.js'
import { isRecord } from './json.js'

/**
 * A sheet with a change, as a JSON Merge Patch makes it (RFC 7396).
 *
 * What the change names is changed, `null` takes a field out, and the rest stays. A list is replaced whole. Both are taken
 * as they are written, before anything is read, and neither is touched: what {@link readBuild} says of the outcome is for it
 * to say.
 *
 * @param sheet - The sheet as it is written, or any other JSON.
 * @param change - What is different, in the shape of the sheet.
 * @returns The changed sheet.
 * @throws InputError for a change with nothing but `undefined` at some place, which could mean to leave or to take out.
 *
 * @example
 * ```ts
 * vary({ pack: { series: 4, parallel: 2 }, hill: { grade: '9 %' } }, { pack: { series: 3 }, hill: null })
 * // { pack: { series: 3, parallel: 2 } }
 * ```
 */
export function vary(sheet: unknown, change: unknown): unknown {
  return merged(sheet, change, [])
}

function merged(target: unknown, patch: unknown, at: readonly string[]): unknown {
  if (patch === undefined) throw refused(at, 'a value, or null to leave the field out', patch)
  if (!isRecord(patch)) return patch
  if (at.length > MOST_LEVELS) throw refused(at, `at most ${MOST_LEVELS} levels`, patch)
  const made = new Map(isRecord(target) ? Object.entries(target) : [])
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) made.delete(key)
    else made.set(key, merged(made.get(key), value, [...at, key]))
  }
  // Entries become fields of its own, whatever their names: __proto__ is one like the others.
  return Object.fromEntries(made)
}

function refused(at: readonly string[], expected: string, value: unknown): InputError {
  return new InputError('vary', [{ path: ['change', ...at].join('.'), expected, received: shown(value) }])
}
