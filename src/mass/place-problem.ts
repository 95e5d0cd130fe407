/** The placing of masses in numbers: ways to fill each bay, their sums, and what deviation the sums leave. */

/** One way to fill a bay. */
export interface Filling {
  /** How many of each group. */
  readonly counts: readonly number[]
  /** Sums of moments along the first and second axis that the target is about, and upwards; whole numbers. */
  readonly first: number
  readonly second: number
  readonly up: number
}

/** A part of the deviation: `|slope * sum + offset|`, of a sum along an axis. */
export interface Term {
  readonly slope: number
  readonly offset: number
}

/** Which filling of every bay is best? */
export interface Problem {
  /** How many of each group are to be placed. */
  readonly counts: readonly number[]
  /** The ways to fill each bay, an empty one among them. */
  readonly bays: readonly (readonly Filling[])[]
  readonly first: readonly Term[]
  readonly second: readonly Term[]
  /** Counts where it is above zero only. */
  readonly up: Term | undefined
  /** By how much the sum upwards must differ to decide a tie. */
  readonly sameHeight: number
}

/** Deviations that differ by less are equal: two nanometres on the wheelbase of a car. */
export const SAME = 1e-9

/** The deviation of sums along the axes. */
export function deviationOf(problem: Problem, first: number, second: number, up: number): number {
  return sumOf(problem.first, first) + sumOf(problem.second, second) + excessOf(problem.up, up)
}

/** The deviation of whole placements. */
export function deviationAt(problem: Problem, fillings: readonly Filling[]): number {
  const sum = (axis: 'first' | 'second' | 'up') => fillings.reduce((total, filling) => total + filling[axis], 0)
  return deviationOf(problem, sum('first'), sum('second'), sum('up'))
}

/** What the terms of an axis make of a sum along it. */
export function sumOf(terms: readonly Term[], sum: number): number {
  let total = 0
  for (const { slope, offset } of terms) total += Math.abs(slope * sum + offset)
  return total
}

/** What too much height counts. */
export function excessOf(up: Term | undefined, sum: number): number {
  return up === undefined ? 0 : Math.max(0, up.slope * sum + up.offset)
}

/** Sets of counts as single numbers, of which the counts are the digits. */
export interface Codes {
  /** The code of all that is to be placed. */
  readonly all: number
  codeOf(counts: readonly number[]): number
  /** How many of each group are left when those of a code are placed. */
  restOf(code: number): readonly number[]
}

/** The codes for up to so many of each group. */
export function codesOf(counts: readonly number[]): Codes {
  const places = counts.map((_, group) => counts.slice(0, group).reduce((product, count) => product * (count + 1), 1))
  const codeOf = (each: readonly number[]) =>
    each.reduce((sum, count, group) => sum + count * (places[group] as number), 0)
  const rests = new Map<number, readonly number[]>()
  const restOf = (code: number) => {
    const known = rests.get(code)
    if (known !== undefined) return known
    const rest = counts.map((count, group) => count - (Math.floor(code / (places[group] as number)) % (count + 1)))
    rests.set(code, rest)
    return rest
  }
  return { all: codeOf(counts), codeOf, restOf }
}

/** Whether a filling takes no more of any group than is left. */
export function fits(filling: Filling, rest: readonly number[]): boolean {
  return filling.counts.every((count, group) => count <= (rest[group] as number))
}
