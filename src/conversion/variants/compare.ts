/** Sheets side by side: what is different, which is not yet what is better. */
import { group, list, own, text, type Verdict } from '../../procedure/index.js'
import { readField } from '../../procedure/reading.js'
import { shown } from '../../quantity/errors.js'
import { InputError, type Quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import type { Assessment } from '../assess.js'
import type { BuildVerdict } from '../summary.js'
import { attempt } from './attempt.js'
import { isRecord } from './json.js'

/** A sheet under a name. */
export interface NamedSheet {
  readonly name: string
  /** The sheet as it is written. */
  readonly sheet: unknown
}

/** A column of a comparison: what comes of a sheet, or why it is not sound. */
export type Compared =
  | { readonly name: string; readonly verdict: BuildVerdict }
  | { readonly name: string; readonly error: string }

/** A figure of several sheets. Where a sheet does not have it, undefined stands in its column. */
export interface ComparedFigure {
  readonly id: string
  readonly name: string
  readonly values: readonly (Quantity | undefined)[]
  /** What each has more than the first; a temperature differs by a temperature difference. */
  readonly differences: readonly (Quantity | undefined)[]
}

/** A check that does not come out the same in all. Where a sheet does not have it, undefined stands in its column. */
export interface ComparedCheck {
  readonly id: string
  readonly name: string
  /** The verdict on the first sheet. */
  readonly from: Verdict | undefined
  /** The verdict on each sheet, the first as well. */
  readonly to: readonly (Verdict | undefined)[]
}

/** Sheets side by side. */
export interface Comparison {
  /** The columns, in the order in which the sheets were given. */
  readonly variants: readonly Compared[]
  /** Every figure by its id, in the order of the first; what only others have comes after. */
  readonly figures: readonly ComparedFigure[]
  /** The ids of figures that some sound sheets have and others not. */
  readonly onlySome: readonly string[]
  /** The checks whose verdict is not that of the first. */
  readonly checks: readonly ComparedCheck[]
}

const input = /*@__PURE__*/ (() =>
  list(
    'Sheets to compare',
    group('A sheet under a name', {
      name: text('What it is called'),
      sheet: own<unknown, unknown>('The build sheet, as it is written', (value) => ({ value }), {}),
    }),
    { least: 1 },
  ))()

/**
 * Holds sheets against the first of them, figure by figure.
 *
 * It tells what is different. Which is better is not in the figures: a heavier pack goes further.
 *
 * @param sheets - The sheets as they are written, each under a name of its own.
 * @returns Figures, verdicts and checks side by side. A sheet that is not sound is a column with its error.
 * @throws InputError where there are no sheets, or two under one name.
 *
 * @example
 * ```ts
 * compare([
 *   { name: 'as it is', sheet },
 *   { name: 'three in series', sheet: vary(sheet, { pack: { series: 3 } }) },
 * ])
 * ```
 */
export function compare(sheets: readonly NamedSheet[]): Comparison {
  refuseUnnamed(sheets)
  const read = readField('compare', input, sheets) as readonly NamedSheet[]
  const issues = read.flatMap(({ name }, i) => {
    const first = read.findIndex((each) => each.name === name)
    return first === i
      ? []
      : [{ path: `[${i}].name`, expected: `a name other than that of [${first}]`, received: shown(name) }]
  })
  if (issues.length > 0) throw new InputError('compare', issues)
  const found = read.map(({ sheet }) => attempt(sheet))
  const sound = found.map((each) => ('error' in each ? undefined : each))
  const figures = side(sound, (each) => each.figures).map(({ id, name, all }) => {
    const values = all.map((each) => each?.value)
    return { id, name, values, differences: values.map((each) => difference(values[0], each)) }
  })
  return {
    variants: read.map(({ name }, i) => {
      const each = found[i] as (typeof found)[number]
      return 'error' in each ? { name, error: each.error } : { name, verdict: each.verdict }
    }),
    figures,
    onlySome: figures
      .filter(({ values }) => values.some((value, i) => value === undefined && sound[i] !== undefined))
      .map(({ id }) => id),
    checks: side(sound, (each) => each.checks).flatMap(({ id, name, all }) => {
      const [from, ...others] = all.map((each) => each?.verdict)
      const isChanged = others.some((verdict, i) => verdict !== from && sound[i + 1] !== undefined)
      return isChanged && sound[0] !== undefined ? [{ id, name, from, to: [from, ...others] }] : []
    }),
  }
}

/** Refuses sheets that stand there without a name, in a word for each and not for each of their fields. */
function refuseUnnamed(sheets: unknown): void {
  if (!Array.isArray(sheets)) return
  const issues = sheets.flatMap((each: unknown, i) =>
    isRecord(each) && 'car' in each && !('sheet' in each)
      ? [{ path: `[${i}]`, expected: "a sheet under a name: { name: 'as it is', sheet }", received: 'a sheet alone' }]
      : [],
  )
  if (issues.length > 0) throw new InputError('compare', issues)
}

/** What assessments have under an id, one beside the other, in the order in which the ids come up. */
function side<T extends { readonly id: string; readonly name: string }>(
  assessments: readonly (Assessment | undefined)[],
  of: (assessment: Assessment) => readonly T[],
) {
  const tables = assessments.map((each) => new Map((each === undefined ? [] : of(each)).map((one) => [one.id, one])))
  const names = new Map(
    tables.flatMap((table) => [...table.values()].map(({ id, name }) => [id, name] as const)).reverse(),
  )
  const ids = new Set(tables.flatMap((table) => [...table.keys()]))
  return [...ids].map((id) => ({ id, name: names.get(id) as string, all: tables.map((table) => table.get(id)) }))
}

/** What rounding may do to a figure, as a share of it. */
const ROUNDING = 1e-12

function difference(first: Quantity | undefined, other: Quantity | undefined): Quantity | undefined {
  if (first === undefined || other === undefined) return undefined
  const between = other.minus(first as never) as Quantity
  const isRounding = Math.abs(between.si) <= ROUNDING * Math.max(Math.abs(first.si), Math.abs(other.si))
  return isRounding ? fromSi(between.kind, 0, between.unit) : between
}
