/** Every variant of a study, assessed, and the front of those that hold. */
import { InputError, type InputIssue } from '../../quantity/index.js'
import { frontOf, inOrder, type Member, stands } from './front.js'
import { resultOf, type VariantResult } from './result.js'
import { asRead, type Study, variantsOf } from './study.js'

/** What comes of a study. */
export interface Exploration {
  /** Every result, in the order of the numbers. */
  readonly results: readonly VariantResult[]
  /** Those than which none is better in one objective and as good in the others. */
  readonly front: readonly Member[]
  /** Those that do not hold what the study says, or lack an objective: `notHeld` and `missing` tell why. */
  readonly setAside: readonly VariantResult[]
  /** Those whose sheet is not sound: `error` tells why. */
  readonly unsound: readonly VariantResult[]
}

/**
 * Assesses every variant of a study, one after the other, and finds the front of those that hold.
 *
 * @param study - The study, as {@link Study} describes it.
 * @returns Every result, the front, and what does not stand on it for a reason of its own.
 * @throws InputError that lists everything wrong with the study, such as a path that no sheet has, or more combinations
 * than one thread gets through; or for an objective or an entry of `hold` that no variant has.
 *
 * @example
 * ```ts
 * const { front } = explore({
 *   sheet,
 *   vary: { 'pack.series': [3, 4], 'gearbox.finalDrive': ['4.375', '5.1'] },
 *   objectives: { 'journeys.bakeryRound.winter.range': 'most', 'weight.after.mass': 'least' },
 *   hold: ['motor.load', 'controller.maximumVoltage'],
 * })
 * ```
 */
export function explore(study: Study): Exploration {
  const read = asRead('explore', study)
  return explorationOf(
    read,
    Array.from(variantsOf(read), (variant) => resultOf(read, variant)),
  )
}

/**
 * What comes of the results of a study, wherever they were found and in whatever order they came.
 *
 * @param study - The study.
 * @param results - The results of its variants.
 * @returns The same as {@link explore}; of a part of the results, what comes of that.
 * @throws InputError as {@link explore} and {@link frontOf} do.
 */
export function explorationOf(study: Study, results: Iterable<VariantResult>): Exploration {
  const read = asRead('explore', study)
  const all = inOrder(read, results)
  // Of a part it cannot be said what no variant has.
  const issues = all.length < variantsOf(read).count ? [] : unheardOf(read, all)
  if (issues.length > 0) throw new InputError('explore', issues)
  const ids = Object.keys(read.objectives)
  return {
    results: all,
    front: frontOf(read, all),
    setAside: all.filter((each) => each.error === undefined && !stands(each, ids)),
    unsound: all.filter(({ error }) => error !== undefined),
  }
}

/** Objectives and checks that no variant has. Where no sheet is sound, nothing can be said of them. */
function unheardOf({ objectives, hold = [] }: Study, results: readonly VariantResult[]): readonly InputIssue[] {
  const sound = results.filter(({ error }) => error === undefined)
  const [first] = sound
  if (first === undefined) return []
  const absent = ({ notHeld }: VariantResult, entry: string) =>
    notHeld.find(({ hold, check }) => hold === entry && check === undefined)
  return [
    ...Object.keys(objectives)
      .filter((id) => sound.every(({ missing }) => missing[id] !== undefined))
      .map((id) => ({
        path: `objectives.${id}`,
        expected: 'the id of a figure that a variant has',
        received: first.missing[id] as string,
      })),
    ...hold.flatMap((entry, i) =>
      sound.every((each) => absent(each, entry) !== undefined)
        ? [
            {
              path: `hold[${i}]`,
              expected: 'the id of a check that a variant has, or what is checked, such as motor.load',
              received: `'${entry}': ${absent(first, entry)?.text}`,
            },
          ]
        : [],
    ),
  ]
}
