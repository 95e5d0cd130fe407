/** Published values: what someone else worked out, beside what a formula gives for the same inputs. */
import { expect, it } from 'vitest'
import { type GivenTo, type Inputs, type Source, sourceText } from '../../src/formula/index.js'
import type { DifferenceOf, Given, Kind, Quantity } from '../../src/quantity/index.js'
import { quantity } from '../../src/quantity/index.js'

/**
 * How the expected figure is known:
 * - `read`: it was read in a copy or transcription of the source;
 * - `recomputed`: inputs or formula were read in the source, the figure was worked out from them apart from this library;
 * - `from memory`: the figure is remembered, no copy was read;
 * - `exact`: it follows from definitions by arithmetic.
 */
export type Standing = 'read' | 'recomputed' | 'from memory' | 'exact'

/** One check of a formula against a figure from outside. */
export interface Row<G, R extends Kind> {
  readonly given: G
  readonly expected: Given<R>
  /** A plain number is relative to the expected value; text is a difference, with its unit. */
  readonly within: number | Given<DifferenceOf<R>>
  readonly source: Source
  readonly standing: Standing
  /** Why a tolerance is what it is, or what else a reader must know. */
  readonly note?: string
}

/** All checks of one formula. */
export interface HandbookEntry {
  readonly name: string
  readonly rows: readonly Row<GivenTo<Inputs>, Kind>[]
}

/** Lists the published values of a formula. The first row is the worked number in its documentation. */
export function handbook<G, R extends Kind>(
  formula: { (given: G): Quantity<R>; readonly name: string; readonly result: { readonly kind: R } },
  rows: readonly Row<NoInfer<G>, NoInfer<R>>[],
): HandbookEntry & { readonly check: () => void } {
  return {
    name: formula.name,
    rows: rows as never,
    check: () => {
      for (const { given, expected, within, source, standing } of rows) {
        it(`${formula.name} = ${expected} (${sourceText(source)}, ${standing})`, () => {
          const wanted = quantity(formula.result.kind, expected as Given<R>)
          const tolerance =
            typeof within === 'number'
              ? Math.abs(wanted.si) * within
              : quantity(differenceKind(formula.result.kind) as Kind, within as never).si
          const result = formula(given)
          const text = `${formula.name}: expected ${wanted.format({ digits: 8 })}, got ${result.format({ digits: 8 })}`
          expect(Math.abs(result.si - wanted.si), text).toBeLessThanOrEqual(tolerance)
        })
      }
    },
  }
}

function differenceKind(kind: Kind): Kind {
  return kind === 'temperature' ? 'temperatureDifference' : kind
}
