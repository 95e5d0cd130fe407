/** The placing of masses in numbers: kinds of module, bays, ways to fill them, and what deviation the sums leave. */

/** One way to fill a bay. @internal */
export interface Filling {
  /** How many of each kind. */
  readonly counts: readonly number[]
  /** Sums of moments along the first and second axis that the target is about, and upwards; whole numbers. */
  readonly first: number
  readonly second: number
  readonly up: number
  /** Sum of second moments about the upright axis through the centre that is aimed at; a whole number. */
  readonly yaw: number
}

/** What decides between placements of the same deviation: the lesser sum, where it is less by more than `same`. @internal */
export interface Tie {
  readonly sum: 'yaw' | 'up'
  readonly same: number
}

/** A bay. @internal */
export interface Room {
  /** How many modules it holds, of all that there are. */
  readonly capacity: number
  /** Whether each kind fits. */
  readonly takes: readonly boolean[]
  fillingOf(counts: readonly number[]): Filling
}

/** A part of the deviation: `|slope * sum + offset|`, of a sum along an axis. @internal */
export interface Term {
  readonly slope: number
  readonly offset: number
}

/** Which filling of every bay is best? @internal */
export interface Problem {
  /** How many of each kind are to be placed. */
  readonly counts: readonly number[]
  readonly bays: readonly Room[]
  readonly first: readonly Term[]
  readonly second: readonly Term[]
  /** Counts where it is above zero only. */
  readonly up: Term | undefined
  /** What decides first, and what next. */
  readonly ties: readonly [Tie, Tie]
}

/** How far the work has come. It is counted, not timed, so that every machine gives the same answer. @internal */
export interface Progress {
  /** How many partial and whole placements were looked at. */
  explored: number
  /** Whether none was passed over that could be better. */
  complete: boolean
}

/** Deviations that differ by less are equal: two nanometres on the wheelbase of a car. @internal */
export const SAME = 1e-9

/** The deviation of sums along the axes. @internal */
export function deviationOf(problem: Problem, first: number, second: number, up: number): number {
  return sumOf(problem.first, first) + sumOf(problem.second, second) + excessOf(problem.up, up)
}

/** The deviation of whole placements. @internal */
export function deviationAt(problem: Problem, fillings: readonly Filling[]): number {
  const { first, second, up } = totalOf(fillings)
  return deviationOf(problem, first, second, up)
}

/** The sums of a whole placement. @internal */
export function totalOf(fillings: readonly Filling[]): Pick<Filling, 'first' | 'second' | 'up'> {
  const sum = (axis: 'first' | 'second' | 'up') => fillings.reduce((total, filling) => total + filling[axis], 0)
  return { first: sum('first'), second: sum('second'), up: sum('up') }
}

/** What the terms of an axis make of a sum along it. @internal */
export function sumOf(terms: readonly Term[], sum: number): number {
  let total = 0
  for (const { slope, offset } of terms) total += Math.abs(slope * sum + offset)
  return total
}

/** What too much height counts. @internal */
export function excessOf(up: Term | undefined, sum: number): number {
  return up === undefined ? 0 : Math.max(0, up.slope * sum + up.offset)
}

/** The ways to fill each bay. @internal */
export type Ways = readonly (readonly Filling[])[]

/**
 * Every way to fill each bay that leaves no more than the other bays hold.
 *
 * @returns Undefined where there are more than `most` in all.
 *
 * @internal
 */
export function waysToFill({ counts, bays }: Problem, most: number): Ways | undefined {
  const all = counts.reduce((sum, count) => sum + count, 0)
  const roomInAll = bays.reduce((sum, { capacity }) => sum + capacity, 0)
  let listed = 0
  const ways = bays.map(({ capacity, takes, fillingOf }) => {
    const fillings: Filling[] = []
    const least = all - (roomInAll - capacity)
    const fill = (chosen: readonly number[], left: number): void => {
      if (listed > most) return
      const kind = chosen.length
      if (kind === counts.length) {
        if (capacity - left < least) return
        fillings.push(fillingOf(chosen))
        listed++
        return
      }
      const highest = takes[kind] ? Math.min(left, counts[kind] as number) : 0
      for (let count = 0; count <= highest; count++) fill([...chosen, count], left - count)
    }
    fill([], capacity)
    return fillings
  })
  return listed > most ? undefined : ways
}

/** Sets of counts as single numbers, of which the counts are the digits. @internal */
export interface Codes {
  /** The code of all that is to be placed. */
  readonly all: number
  codeOf(counts: readonly number[]): number
  /** How many of each kind are left when those of a code are placed. */
  restOf(code: number): readonly number[]
}

/** The codes for up to so many of each kind. @internal */
export function codesOf(counts: readonly number[]): Codes {
  const places = counts.map((_, kind) => counts.slice(0, kind).reduce((product, count) => product * (count + 1), 1))
  const codeOf = (each: readonly number[]) =>
    each.reduce((sum, count, kind) => sum + count * (places[kind] as number), 0)
  const rests = new Map<number, readonly number[]>()
  const restOf = (code: number) => {
    const known = rests.get(code)
    if (known !== undefined) return known
    const rest = counts.map((count, kind) => count - (Math.floor(code / (places[kind] as number)) % (count + 1)))
    rests.set(code, rest)
    return rest
  }
  return { all: codeOf(counts), codeOf, restOf }
}

/** Whether a filling takes no more of any kind than is left. @internal */
export function fits({ counts }: Filling, rest: readonly number[]): boolean {
  for (let kind = 0; kind < counts.length; kind++) if ((counts[kind] as number) > (rest[kind] as number)) return false
  return true
}
