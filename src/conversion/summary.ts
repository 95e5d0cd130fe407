/** What an assessment comes to: a verdict, what stands against it, and the figures that everybody asks for first. */
import type { Verdict } from '../procedure/index.js'
import {
  type Binds,
  type Figure,
  familiesOf,
  type Section,
  type SheetCheck,
  type Unassessed,
} from './chapters/section.js'

/**
 * What comes of a whole build, by the worst that was found: `fails` where a check fails, `open` where something could not be
 * judged, `near` where a limit is near, and else `holds`.
 */
export type BuildVerdict = 'holds' | 'near' | 'fails' | 'open'

/** The same check of several runs, gears, journeys or seasons: the worst of them. */
export interface WorstCheck {
  readonly check: SheetCheck
  /** All that come out so, the worst first, by their ids. */
  readonly ids: readonly string[]
}

/** What an assessment comes to. */
export interface Summary {
  readonly fails: readonly WorstCheck[]
  readonly unknown: readonly WorstCheck[]
  readonly near: readonly WorstCheck[]
  /** The figures that everybody asks for first, as far as there are. */
  readonly figures: readonly Figure[]
  /** What holds the car first, as it pulls away, on the hill and at its highest speed. */
  readonly binds: Binds
}

/** Key figures by their ids, in the order in which they are told. */
const keyFigures = [
  /^weight\.(?:before|after)\.mass$/,
  /^weight\.(?:before|after)\.frontShare$/,
  /^weight\.(?:before|after)\.crossShare$/,
  /^pack\.energy$/,
  /^journeys\.[^.]+\.[^.]+\.range$/,
  /^road\.topSpeed$/,
  /^road\.startGrade$/,
  /^road\.to80\.time$/,
  /^charging\.time$/,
]

/** @internal */
export function summaryOf(sections: readonly Section[], figures: readonly Figure[], binds: Binds): Summary {
  return {
    fails: worstOf(sections, 'fail'),
    unknown: worstOf(sections, 'unknown'),
    near: worstOf(sections, 'near'),
    figures: keyFigures.flatMap((key) => figures.filter(({ id }) => key.test(id))),
    binds,
  }
}

/** @internal */
export function verdictOf({ fails, unknown, near }: Summary, unassessed: readonly Unassessed[]): BuildVerdict {
  if (fails.length > 0) return 'fails'
  if (unknown.length > 0 || unassessed.some(({ isAsked }) => isAsked)) return 'open'
  return near.length > 0 ? 'near' : 'holds'
}

/** The checks of a verdict, those of one thing in one section together, the worst first. */
function worstOf(sections: readonly Section[], verdict: Verdict): WorstCheck[] {
  const marginOf = ({ margin = Number.NEGATIVE_INFINITY }: SheetCheck) => margin
  return sections
    .flatMap(({ checks }) => familiesOf(checks.filter((each) => each.verdict === verdict)))
    .map((all) => all.toSorted((one, other) => marginOf(one) - marginOf(other)))
    .map((all) => ({ check: all[0] as SheetCheck, ids: all.map(({ id }) => id) }))
    .sort((one, other) => marginOf(one.check) - marginOf(other.check))
}
