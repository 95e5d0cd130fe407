/** Candidates judged one after the other: heading, reasons and choice are made from the checks of each. */
import { section } from '../formula/index.js'
import { CalculationError } from '../quantity/index.js'
import { type Check, isMet, type Told } from './check.js'

/** A candidate as it was judged. */
export interface Judged<T> {
  /** What it is called, such as `35 mm²`. */
  readonly name: string
  /** What decides whether it serves. */
  readonly checks: readonly Check[]
  /** What no other candidate could mend, which does not decide. */
  readonly own?: readonly Check[]
  /** What the candidate would do. */
  readonly made: T
}

/** A candidate that does not serve, with all the reasons. */
export interface Rejected {
  readonly name: string
  readonly reasons: readonly string[]
}

/** Why a candidate does not serve: what of it fails; where nothing does, what of it is not known. */
export function reasonsOf({ checks }: Judged<unknown>): string[] {
  const failed = checks.filter(({ verdict }) => verdict === 'fail')
  return (failed.length > 0 ? failed : checks.filter((each) => !isMet(each))).map(({ text }) => text)
}

/** Whether a candidate serves: nothing of it fails, and nothing is unknown. */
export function serves({ checks }: Judged<unknown>): boolean {
  return checks.every(isMet)
}

/** The heading of a candidate in a working. */
function headingOf(judged: Judged<unknown>): string {
  if (serves(judged)) return `${judged.name}: serves, ${judged.checks.map(({ text }) => text).join('; ')}`
  return `${judged.name}: refused, ${reasonsOf(judged).join('; ')}`
}

/** A candidate as it was refused. */
export function rejectedAs(judged: Judged<unknown>): Rejected {
  return { name: judged.name, reasons: reasonsOf(judged) }
}

/** Judges a candidate under its heading. */
export function judgedUnderHeading<C, T>(candidate: C, judge: (candidate: C) => Judged<T>): Judged<T> {
  return section(headingOf, () => judge(candidate))
}

/**
 * Judges candidates in their order until one serves.
 *
 * @returns The one that serves, if any, and all that were refused before it.
 */
export function firstThatServes<C, T>(
  candidates: Iterable<C>,
  judge: (candidate: C) => Judged<T>,
): { readonly chosen?: Judged<T>; readonly rejected: readonly Judged<T>[] } {
  const rejected: Judged<T>[] = []
  for (const candidate of candidates) {
    const judged = judgedUnderHeading(candidate, judge)
    if (serves(judged)) return { chosen: judged, rejected }
    rejected.push(judged)
  }
  return { rejected }
}

/** Judges all candidates: those that serve and those that do not, in their order. */
export function allThatServe<C, T>(
  candidates: Iterable<C>,
  judge: (candidate: C) => Judged<T>,
): { readonly serving: readonly Judged<T>[]; readonly rejected: readonly Judged<T>[] } {
  const judged = [...candidates].map((candidate) => judgedUnderHeading(candidate, judge))
  return { serving: judged.filter(serves), rejected: judged.filter((each) => !serves(each)) }
}

/** Of how many candidates the reasons are told in one sentence. */
const TOLD = 10

/** Whether any candidate serves, and else why not, those first of which only data is missing. @internal */
export function servingTold(chosen: Judged<unknown> | undefined, rejected: readonly Judged<unknown>[]): Told {
  if (chosen !== undefined) return { pass: `${chosen.name} serves` }
  const isOpen = ({ checks }: Judged<unknown>) => checks.every(({ verdict }) => verdict !== 'fail')
  const nearest = [...rejected.filter(isOpen), ...rejected.filter((each) => !isOpen(each))]
  const why = nearest.slice(0, TOLD).map((each) => `${each.name} (${reasonsOf(each).join('; ')})`)
  const others = nearest.length - why.length
  const all = `${why.join(', ')}${others === 0 ? '' : `, and ${others} more`}`
  return rejected.some(isOpen)
    ? { unknown: `no candidate is known to serve: ${all}` }
    : { fail: `no candidate serves: ${all}` }
}

/**
 * The error where no candidate serves: it tells why the last one does not, and the reasons of each.
 *
 * @param where - The function that sought.
 * @param what - What does not serve, such as `no section up to 120 mm² serves`.
 * @param rejected - All that were refused.
 * @param mend - What to do instead.
 */
export function noneServes(
  where: string,
  what: string,
  rejected: readonly Judged<unknown>[],
  mend: string,
): CalculationError {
  const last = rejected.at(-1)
  const why = last === undefined ? '' : `. ${last.name}: ${reasonsOf(last).join('; ')}`
  return new CalculationError(
    where,
    `${what}${why}. ${mend}`,
    Object.fromEntries(rejected.map((each) => [each.name, reasonsOf(each).join('; ')])),
  )
}
