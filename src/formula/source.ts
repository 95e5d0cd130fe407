/** On whose authority a formula, a constant or a figure stands. */

/** A source: a published work, common practice, or a definition. */
export interface Source {
  /** The work: a standard with its number, or a book or paper with author and year. */
  readonly work: string
  /** The place in it: clause, annex, table, equation or chapter. */
  readonly place?: string
}

/**
 * Names a published source.
 *
 * @param work - The standard, book or paper.
 * @param place - Where in it: clause, annex, table, equation.
 */
/* @__NO_SIDE_EFFECTS__ */
export function cite(work: string, place?: string): Source {
  return place === undefined ? { work } : { work, place }
}

/** A fact of the trade that no publication is named for. */
export const commonPractice: Source = { work: 'common practice, no source' }

/** A relation that defines one of its terms, or follows from definitions by arithmetic. */
export const definition: Source = { work: 'by definition' }

/** A source in a sentence: `IEC 60364-5-52, Annex G`. */
export function sourceText(source: Source): string {
  return source.place === undefined ? source.work : `${source.work}, ${source.place}`
}
