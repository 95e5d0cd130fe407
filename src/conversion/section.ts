/** The parts of an assessment: figures and tables under a heading, with what is checked, assumed and cautioned. */
import type { Findings } from '../findings/index.js'
import type { Quantity } from '../quantity/index.js'

/** A figure with its name. */
export interface Figure {
  readonly name: string
  readonly value: Quantity
}

/** A table of figures: each row begins with its name. */
export interface Table {
  readonly title: string
  readonly columns: readonly string[]
  readonly rows: readonly { readonly name: string; readonly values: readonly (Quantity | string)[] }[]
}

/** A section of an assessment. */
export interface Section extends Findings {
  readonly title: string
  readonly figures: readonly Figure[]
  readonly tables: readonly Table[]
}

/** What a section needs and the sheet does not have. */
export interface Missing {
  readonly title: string
  /** The fields to add to the sheet to have it assessed. */
  readonly add: readonly string[]
}
