/** An assessment in its order, with the numbers by which its parts are cited. */
import type { Assessment, Figure, Section, SheetCheck, Table } from '../conversion/index.js'
import type { Caution } from '../procedure/index.js'

/** Something with its number. @internal */
export interface Numbered<T> {
  readonly number: string
  readonly of: T
}

/** A section with the numbers of its parts. @internal */
export interface OutlinedSection {
  readonly number: number
  readonly section: Section
  /** `3.1` and on. */
  readonly figures: readonly Numbered<Figure>[]
  /** Counted through the whole report. */
  readonly tables: readonly Numbered<Table>[]
  /** Counted through the whole report. */
  readonly checks: readonly Numbered<SheetCheck>[]
}

/** The sections of an assessment with their numbers. @internal */
export function outlineOf({ sections }: Assessment): OutlinedSection[] {
  let [tables, checks] = [0, 0]
  return sections.map((section, i) => ({
    number: i + 1,
    section,
    figures: section.figures.map((each, j) => ({ number: `${i + 1}.${j + 1}`, of: each })),
    tables: section.tables.map((each) => ({ number: String(++tables), of: each })),
    checks: section.checks.map((each) => ({ number: String(++checks), of: each })),
  }))
}

/** The cautions that stand against what fails, which come first, and the others. @internal */
export function cautionsOf({
  sections,
  cautions,
}: Assessment): readonly [first: readonly Caution[], others: readonly Caution[]] {
  const failing = new Set(
    sections
      .filter(({ checks }) => checks.some(({ verdict }) => verdict === 'fail'))
      .flatMap((section) => section.cautions.map(({ id }) => id)),
  )
  return [cautions.filter(({ id }) => failing.has(id)), cautions.filter(({ id }) => !failing.has(id))]
}

/** What a verdict is called. @internal */
export const verdictWords = { pass: 'ok', near: 'near', fail: 'fails', unknown: 'unknown' } as const

/** A hazard as it begins a sentence. @internal */
export function sentenceCase(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`
}
