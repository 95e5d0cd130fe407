/** The parts of an assessment: figures and tables under a heading, with what is checked, assumed and cautioned. */
import type { Findings } from '../../findings/index.js'
import type { Quantity } from '../../quantity/index.js'

/** A figure with its name. */
export interface Figure {
  readonly name: string
  readonly value: Quantity
}

/** A table of figures: each row begins with its name. */
export interface Table {
  readonly title: string
  readonly columns: readonly string[]
  /** What is to be said of the whole, under it. */
  readonly notes?: readonly string[]
  readonly rows: readonly { readonly name: string; readonly values: readonly (Quantity | string)[] }[]
}

/** A section of an assessment. */
export interface Section extends Findings {
  readonly title: string
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** A section that could not be assessed. */
export interface Unassessed {
  readonly title: string
  /** The fields to add to the sheet, or what the figures of the sheet do not allow. */
  readonly why: string
}

/** The findings of several parts: every check, and each assumption and caution once. */
export function gathered(parts: readonly Findings[]): Findings {
  const hazards = parts.flatMap(({ cautions }) => cautions).map((caution) => [caution.hazard, caution] as const)
  return {
    checks: parts.flatMap(({ checks }) => checks),
    assumptions: once(parts.flatMap(({ assumptions }) => assumptions)),
    notes: once(parts.flatMap(({ notes = [] }) => notes)),
    cautions: [...new Map(hazards).values()],
  }
}

/** What is said, each once. */
function once<T extends string | { readonly text: string }>(all: readonly T[]): T[] {
  return [...new Map(all.map((each) => [typeof each === 'string' ? each : each.text, each])).values()]
}

/** What to say where fields are missing: only those that are. A field of a part that is itself missing goes unnamed. */
export function missing(build: object, needed: readonly string[]): string {
  const absent = needed.filter((path) => {
    const keys = path.split('.')
    const last = keys.pop() as string
    const part = keys.reduce<unknown>((outer, key) => (outer as { readonly [key: string]: unknown })?.[key], build)
    return part !== undefined && (part as { readonly [key: string]: unknown })[last] === undefined
  })
  return `add to the sheet: ${absent.join(', ')}`
}
