/** What is written down while a calculation is explained. */
import type { Quantity } from '../quantity/index.js'
import type { AnyFormula } from './formula.js'

/** One formula that was evaluated with units. */
export interface FormulaStep {
  readonly formula: AnyFormula
  /** Every input as it was read, defaults included. */
  readonly inputs: { readonly [key: string]: Quantity }
  /** The inputs that were left out and took their default. */
  readonly defaults: readonly string[]
  readonly result: Quantity
}

/** Steps that belong together, under a heading. */
export interface SectionStep {
  readonly heading: string
  readonly steps: readonly Step[]
}

/** A step of a working: a formula, or a section of steps. */
export type Step = FormulaStep | SectionStep

/** Where steps are being written down, if anywhere. */
interface Recording {
  /** The steps of the innermost section that is open; undefined when nobody asked for an explanation. */
  steps: Step[] | undefined
}

const slot = Symbol.for('kerbwatt.recording')

/**
 * The one recording of this process. It is found by a registered name, so that a calculation explained
 * by one copy of the package also shows the formulas of its CommonJS or ES module twin.
 *
 * @internal
 */
export const recording: Recording = /*@__PURE__*/ (() => {
  const shared = globalThis as unknown as { [slot]?: Recording }
  shared[slot] ??= { steps: undefined }
  return shared[slot]
})()

/** Runs work with its steps written to a list of their own. @internal */
export function recorded<T>(work: () => T): { readonly result: T; readonly steps: readonly Step[] } {
  const outer = recording.steps
  const steps: Step[] = []
  recording.steps = steps
  try {
    return { result: work(), steps }
  } finally {
    recording.steps = outer
  }
}

/** Runs work of which nothing is written down, such as the trials of a search. @internal */
export function unrecorded<T>(work: () => T): T {
  const outer = recording.steps
  recording.steps = undefined
  try {
    return work()
  } finally {
    recording.steps = outer
  }
}

/**
 * Groups the formulas that run inside under a heading of the working. Without {@link explain} around it, it
 * only runs the work.
 *
 * @param heading - The heading, or how to make it from the result: `35 mm²: refused, 118 °C at 300 A`.
 * @param work - The work whose formulas belong under the heading.
 * @returns What the work returns.
 */
export function section<T>(heading: string | ((result: T) => string), work: () => T): T {
  const outer = recording.steps
  if (outer === undefined) return work()
  const steps: Step[] = []
  recording.steps = steps
  try {
    const result = work()
    outer.push({ heading: typeof heading === 'string' ? heading : heading(result), steps })
    return result
  } catch (error) {
    // What led to a refusal belongs in the working of whoever catches it.
    outer.push({ heading: typeof heading === 'string' ? heading : `refused: ${(error as Error).message}`, steps })
    throw error
  } finally {
    recording.steps = outer
  }
}
