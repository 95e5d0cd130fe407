/** What a procedure says beside its figures. */
import type { Quantity } from '../quantity/index.js'
import type { Caution } from './cautions.js'
import type { Check } from './check.js'

/** A default or a simplification that was used. */
export interface Assumption {
  /** Its stable name in a program, such as `ambient.default`. */
  readonly id: string
  readonly text: string
  /** The field that was left out. */
  readonly path?: string
  /** What stands in its place. */
  readonly value?: Quantity | string | number | boolean
  /** On what ground. */
  readonly because?: string
}

/** A figure outside what light road cars and their parts have. It is no check, and has no verdict. */
export interface Note {
  /** Its stable name in a program, such as `wheelbase.unusual`. */
  readonly id: string
  readonly path: string
  readonly text: string
  readonly value: Quantity
  readonly usual: readonly [least: Quantity, most: Quantity]
}

/** What a procedure says beside its figures. */
export interface Findings {
  /** Figures held to limits. */
  readonly checks: readonly Check[]
  /** Every default and simplification that was used, in words, with its value. */
  readonly assumptions: readonly Assumption[]
  /** Figures that are unusual. */
  readonly notes: readonly Note[]
  /** What can hurt, and the usual precaution. */
  readonly cautions: readonly Caution[]
}

/**
 * A simplification that was used.
 *
 * @param id - Its stable name in a program.
 * @param text - A sentence.
 */
export function assumed(id: string, text: string): Assumption {
  return { id, text }
}

/** Findings of several parts in one: those that say the same of the same are said once. */
export function merged(...parts: readonly Partial<Findings>[]): Findings {
  return {
    checks: parts.flatMap(({ checks = [] }) => checks),
    assumptions: once(parts.flatMap(({ assumptions = [] }) => assumptions)),
    notes: once(parts.flatMap(({ notes = [] }) => notes)),
    cautions: once(parts.flatMap(({ cautions = [] }) => cautions)),
  }
}

function once<T extends { readonly id: string; readonly text: string }>(all: readonly T[]): T[] {
  return [...new Map(all.map((each) => [`${each.id} ${each.text}`, each])).values()]
}
