/** A study: a sheet, what is varied on it, what is wanted of it, and what must hold. */
import {
  type AnyField,
  byName,
  choice,
  type Field,
  group,
  list,
  optional,
  own,
  type Read,
  text,
  type Written,
} from '../../procedure/index.js'
import { placed } from '../../procedure/path.js'
import { readField } from '../../procedure/reading.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type InputIssue } from '../../quantity/index.js'
import { nearestName } from '../../quantity/nearest.js'
import { canonical, isRecord, plain } from './json.js'
import { idsLike, kindOfFigure } from './kind.js'
import { holdersOf, LONGEST, pathIssue, stepsOf } from './path.js'

/**
 * The most variants of a study. An assessment takes 0.03 s to 0.15 s, so that one thread is busy with so many for one to
 * four hours.
 */
const MOST_VARIANTS = 100_000

const sheetAsWritten = /*@__PURE__*/ (() =>
  own<object, { readonly [key: string]: unknown }>(
    'The build sheet, as it is written',
    (value) =>
      isRecord(value)
        ? { value }
        : { issue: { expected: 'the build sheet itself, an object', received: shown(value) } },
    { type: 'object' },
  ))()

const valueAsWritten = /*@__PURE__*/ (() =>
  own<unknown, unknown>('A value, as it is written', (value) => ({ value }), {}))()

/** What describes a study. @internal */
export const studyField = /*@__PURE__*/ (() =>
  group('A study of variants', {
    $schema: optional(text('Where its JSON Schema is found, for the editor')),
    sheet: sheetAsWritten,
    vary: byName(
      'What is varied: by its path on the sheet, such as pack.series, the values that take the place of all that stands there',
      list('The values, each once', valueAsWritten, { least: 1 }),
    ),
    objectives: byName(
      'What is wanted: by its id, such as weight.after.mass, whether most or least of the figure',
      choice('Which is wanted', ['most', 'least']),
    ),
    hold: optional(
      list(
        'What must hold: the id of a check, or what is checked wherever it is, such as motor.load',
        text('The id of a check, or what is checked'),
        { least: 1 },
      ),
    ),
  }))()

/** A study, as it is written: plain JSON. */
export type Study = Written<typeof studyField>

/** A study that was read: plain JSON as well. @internal */
export type ReadStudy = Read<typeof studyField>

/** One of the variants of a study. */
export interface Variant {
  /** Its place in the order of all, from 1: the values of the path that comes last change first. */
  readonly number: number
  /** The value at each path. */
  readonly values: { readonly [path: string]: unknown }
  /** The sheet with these values, as it is written. */
  readonly sheet: unknown
}

/** The variants of a study, made one after the other as they are asked for. */
export interface Variants extends Iterable<Variant> {
  /** How many there are. */
  readonly count: number
}

const studiesRead = /*@__PURE__*/ new WeakSet<object>()

/**
 * Reads a study, once: what it gives back goes through the other functions without being read again.
 *
 * @param study - The study, as {@link Study} describes it.
 * @returns The study as plain JSON.
 * @throws InputError that lists everything wrong with it, each by its place.
 */
export function readStudy(study: unknown): Study {
  return asRead('readStudy', study)
}

/** A study that was read, or is now. @internal */
export function asRead(where: string, study: unknown): ReadStudy {
  if (studiesRead.has(Object(study))) return study as ReadStudy
  const issues: InputIssue[] = []
  const written = plain(study, '', issues)
  if (issues.length > 0) throw new InputError(where, issues)
  const read = readField(where, studyField as AnyField as Field<Study, ReadStudy>, written) as ReadStudy
  const wrong = contradictions(read)
  if (wrong.length > 0) throw new InputError(where, wrong)
  studiesRead.add(read)
  return Object.freeze(read)
}

/** What is sound by itself and makes no study. */
function contradictions({ sheet, vary, objectives, hold = [] }: ReadStudy): readonly InputIssue[] {
  const none = (path: string, named: object, expected: string) =>
    Object.keys(named).length > 0 ? [] : [{ path, expected, received: 'an object without entries' }]
  return [
    ...none('vary', vary, "a path with its values, such as 'pack.series': [4, 5, 6]"),
    ...none('objectives', objectives, "an objective, such as 'weight.after.mass': 'least'"),
    ...Object.keys(vary).flatMap((path) => {
      const issue = pathIssue(path, sheet)
      return issue === undefined ? [] : [{ path: `vary.${path}`, ...issue }]
    }),
    ...insideAnother(Object.keys(vary)),
    ...Object.entries(vary).flatMap(([path, values]) => equalIn(`vary.${path}`, values)),
    ...Object.keys(objectives).flatMap(objectiveIssue),
    ...equalIn('hold', hold),
    ...boundIssue(countOf(vary)),
  ]
}

/** Of two paths one of which holds the other, the outcome would hang on which came first. */
function insideAnother(paths: readonly string[]): readonly InputIssue[] {
  const known = new Set(paths)
  return paths.flatMap((path) => {
    const holder = holdersOf(path).find((each) => known.has(each))
    if (holder === undefined) return []
    return [
      { path: `vary.${path}`, expected: 'a path inside no other that is varied', received: `one inside ${holder}` },
    ]
  })
}

function equalIn(path: string, values: readonly unknown[]): readonly InputIssue[] {
  const first = new Map<string, number>()
  return values.flatMap((value, i) => {
    const text = canonical(value)
    const before = first.get(text)
    if (before === undefined) first.set(text, i)
    const received = `${shown(value)}, the same as ${path}[${before}]`
    return before === undefined ? [] : [{ path: `${path}[${i}]`, expected: 'each value once', received }]
  })
}

function objectiveIssue(id: string): readonly InputIssue[] {
  if (kindOfFigure(id) !== undefined) return []
  const near = id.length > LONGEST ? undefined : nearestName(id, idsLike(id))
  const issue = {
    path: `objectives.${id}`,
    expected: "the id of a figure such as 'weight.after.mass'",
    received: shown(id),
  }
  return [near === undefined ? issue : { ...issue, hint: `did you mean ${near}?` }]
}

function boundIssue(count: bigint): readonly InputIssue[] {
  if (count <= MOST_VARIANTS) return []
  const digits = String(count)
  const received = digits.length > 15 ? `a number of ${digits.length} digits` : digits
  return [{ path: 'vary', expected: `at most ${MOST_VARIANTS} combinations`, received, hint: 'leave some values out' }]
}

function countOf(vary: ReadStudy['vary']): bigint {
  return Object.values(vary).reduce((count, { length }) => count * BigInt(length), 1n)
}

/**
 * Every variant of a study, in an order of its own.
 *
 * @param study - The study.
 * @returns The variants, made as they are asked for, and how many there are.
 * @throws InputError that lists everything wrong with the study.
 */
export function variantsOf(study: Study): Variants {
  const { sheet, vary } = asRead('variantsOf', study)
  const axes = Object.entries(vary).map(([path, values]) => ({ path, steps: stepsOf(path), values }))
  const count = Number(countOf(vary))
  const variant = (number: number): Variant => {
    let rest = number - 1
    const chosen = axes.toReversed().map(({ path, steps, values }) => {
      const value = values[rest % values.length]
      rest = Math.floor(rest / values.length)
      return { path, steps, value }
    })
    return {
      number,
      values: Object.fromEntries(chosen.toReversed().map(({ path, value }) => [path, value])),
      sheet: chosen.reduce<unknown>((made, { steps, value }) => placed(made, steps, value), sheet),
    }
  }
  return {
    count,
    *[Symbol.iterator]() {
      for (let number = 1; number <= count; number++) yield variant(number)
    },
  }
}
