/**
 * The search behind the placing of masses: which filling of every bay leaves the least deviation.
 *
 * How far a placement is from its target depends on a few sums alone: how many of each kind are placed, and their
 * moments. So the bays are parted in two halves, and for each half the sums are tabulated that its bays can make. A whole
 * placement is a row of one table and a row of the other whose counts complement each other; such pairs are looked for
 * within a bound on the deviation that is widened until there is one (meet in the middle: Horowitz & Sahni, Computing
 * Partitions with Applications to the Knapsack Problem, J. ACM 21 (1974)). Every pair within the bound is seen, so that
 * the best of them is the best of all.
 *
 * Work is counted and has an end. Where the tables would go beyond it, the best placement that was met is given, not
 * proven.
 */
import { type Prices, type Relaxed, relaxed, stepsToRelax, UNPRICED } from './bound.js'
import {
  type Codes,
  codesOf,
  deviationAt,
  deviationOf,
  excessOf,
  type Filling,
  fits,
  type Problem,
  type Progress,
  SAME,
  sumOf,
  type Term,
  type Ways,
  waysToFill,
} from './problem.js'
import { improved } from './start.js'
import {
  BAYS,
  columnOf,
  costAt,
  FIRST,
  type Half,
  type Limits,
  type Rows,
  SECOND,
  type Table,
  tabulated,
  UP,
  valueOf,
  YAW,
} from './table.js'

/** The best filling of every bay, in the order of the bays. @internal */
export interface Best {
  readonly fillings: readonly Filling[]
  /** No placement deviates by less. */
  readonly bound: number
  /** Whether nothing is better. */
  readonly proven: boolean
  /** How many partial and whole placements were looked at. */
  readonly explored: number
}

/** The most ways to fill single bays that are listed, and the greatest code of a set of counts. */
const MOST_WAYS = 1e5
const GREATEST_CODE = 2 ** 50
/** The most steps for each part of the work: two or three seconds on an ordinary machine of 2020. */
const STEPS = { start: 500, bound: 6e7, table: 2e7, scan: 3e7, last: 3e5 } as const

/**
 * Finds the best placement: the least deviation, then the least of what decides a tie, then the fewest bays.
 *
 * @param start - Any placement of all.
 *
 * @internal
 */
export function bestPlacement(problem: Problem, start: readonly Filling[]): Best {
  const progress = { explored: 0, complete: true }
  const ways = waysToFill(problem, MOST_WAYS)
  const codes = codesOf(problem.counts)
  // Where all placements are soon tabulated, a better start gains nothing.
  const steps = ways === undefined ? STEPS.start : Math.min(STEPS.start, stepsToRelax(ways, codes))
  const near = improved(problem, start, steps, progress)
  const priced =
    ways === undefined || codes.all > GREATEST_CODE ? undefined : pricedFrom(problem, ways, codes, near, progress)
  const found = ways && priced && foundInTables(problem, ways, codes, priced, progress)
  if (found === undefined) progress.complete = false
  const best = found ?? priced?.fillings ?? near
  const fillings = progress.complete ? best : improved(problem, best, STEPS.last, progress)
  return { fillings, bound: priced?.bound ?? 0, proven: progress.complete, explored: progress.explored }
}

/** A bound and a good placement, by prices where that is not too long. */
function pricedFrom(
  problem: Problem,
  ways: Ways,
  codes: Codes,
  near: readonly Filling[],
  progress: Progress,
): Relaxed & { readonly isPriced: boolean } {
  // The costs are tabulated once more for either half.
  const steps = STEPS.bound - 2 * stepsToRelax(ways, codes)
  const isPriced = steps >= stepsToRelax(ways, codes)
  return isPriced
    ? { ...relaxed(problem, ways, codes, near, steps, progress), isPriced }
    : { prices: UNPRICED, bound: 0, fillings: near, deviation: deviationAt(problem, near), isPriced }
}

/** The best placement that the tables hold. Undefined where they are too large to be made, or thinned and hold none. */
function foundInTables(
  problem: Problem,
  ways: Ways,
  codes: Codes,
  { prices, bound, fillings, deviation, isPriced }: Relaxed & { readonly isPriced: boolean },
  progress: Progress,
): readonly Filling[] | undefined {
  const limits: Limits = { prices, most: deviation + SAME * 2, isPriced }
  const [one, other] = halvesOf(ways)
  const front = tabulated(problem, ways, codes, one, other, limits, STEPS.table, progress)
  const back = front && tabulated(problem, ways, codes, other, one, limits, STEPS.table, progress)
  if (front === undefined || back === undefined) return undefined
  const pairs = pairsOf(front, back, codes.all, problem, prices)
  const found = bestPair(problem, pairs, bound, limits, progress)
  // The placement that is known lies on the edge of what was looked at, where rounding may hide it.
  if (found === undefined) return progress.complete ? fillings : undefined
  const fillingOf = new Map([
    ...fillingsOf(ways, codes, front, found.pair.code, found.i),
    ...fillingsOf(ways, codes, back, codes.all - found.pair.code, found.j),
  ])
  return ways.map((_, bay) => fillingOf.get(bay) as Filling)
}

/** A row of either table, together a placement. */
interface Found {
  readonly pair: Pair
  readonly i: number
  readonly j: number
}

/** The best pair of rows, if any is seen: by deviation, then by what decides a tie, then by the number of bays. */
function bestPair(
  problem: Problem,
  pairs: readonly Pair[],
  floor: number,
  limits: Limits,
  progress: Progress,
): Found | undefined {
  const end = progress.explored + STEPS.scan
  let found: Found | undefined
  let least = Number.POSITIVE_INFINITY
  // The bound is widened until pairs keep within it, or until it is as wide as the placement that is known.
  let isThrough = true
  for (let width = SAME; found === undefined && isThrough; width *= 16) {
    const within = Math.min(floor + width, limits.most)
    isThrough = scan(problem, pairs, within, limits.prices, end, progress, (pair, i, j, deviation) => {
      if (found !== undefined && deviation >= least) return least
      least = deviation
      found = { pair, i, j }
      return least
    })
    if (within === limits.most) break
  }
  if (found === undefined) return undefined
  const within = least + SAME
  // Each tie is decided among those that the one before left equal.
  const held: (readonly [column: number, most: number])[] = []
  for (const [column, same] of [...problem.ties.map((tie) => [columnOf(tie), tie.same] as const), [BAYS, 0] as const]) {
    let fewest = Number.POSITIVE_INFINITY
    scan(problem, pairs, within, limits.prices, end, progress, (pair, i, j) => {
      const sumOfBoth = (of: number) => valueOf(pair.front, i, of) + valueOf(pair.back, j, of)
      if (sumOfBoth(column) < fewest && held.every(([of, most]) => sumOfBoth(of) <= most)) {
        fewest = sumOfBoth(column)
        found = { pair, i, j }
      }
      return within
    })
    held.push([column, fewest + same])
  }
  return found
}

/** Parts the bays so that both halves have about as many fillings. */
function halvesOf(bays: Ways): readonly [number[], number[]] {
  const halves: readonly [number[], number[]] = [[], []]
  const sizes = [0, 0]
  const order = bays.map((fillings, bay) => ({ bay, size: Math.log(fillings.length) })).sort((a, b) => b.size - a.size)
  for (const { bay, size } of order) {
    const smaller = (sizes[0] as number) <= (sizes[1] as number) ? 0 : 1
    halves[smaller].push(bay)
    sizes[smaller] = (sizes[smaller] as number) + size
  }
  return halves
}

/** Two sets of rows whose counts complement each other, and a deviation that none of their pairs is below. */
interface Pair {
  readonly code: number
  readonly front: Rows
  readonly back: Rows
  /** For each row at the back, where the rows with its first sum begin. */
  readonly runs: Int32Array
  readonly bound: number
  /** The least that a row at the back costs, and what stands whatever is placed. */
  readonly rest: number
}

function pairsOf(front: Half, back: Half, all: number, problem: Problem, prices: Prices): readonly Pair[] {
  const [fronts, backs] = [front, back].map(({ tables }) => tables[tables.length - 1] as Table) as [Table, Table]
  return fronts.codes.flatMap((code) => {
    const others = backs.rowsOf(all - code)
    if (others === undefined) return []
    const rows = fronts.rowsOf(code) as Rows
    let rest = Number.POSITIVE_INFINITY
    for (let j = 0; j < others.size; j++) rest = Math.min(rest, costAt(others, j, prices))
    const bound = boundOf(problem, rangeOf(rows), rangeOf(others))
    return [{ code, front: rows, back: others, runs: runsOf(others), bound, rest: rest + prices.fixed }]
  })
}

interface Range {
  readonly first: readonly [number, number]
  readonly second: readonly [number, number]
  readonly lowest: number
}

function rangeOf(rows: Rows): Range {
  let [least, most, lowest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let i = 0; i < rows.size; i++) {
    least = Math.min(least, valueOf(rows, i, SECOND))
    most = Math.max(most, valueOf(rows, i, SECOND))
    lowest = Math.min(lowest, valueOf(rows, i, UP))
  }
  return { first: [valueOf(rows, 0, FIRST), valueOf(rows, rows.size - 1, FIRST)], second: [least, most], lowest }
}

/** What no pair of rows in these ranges is below: every term at its own best. */
function boundOf({ first, second, up }: Problem, a: Range, b: Range): number {
  const best = (terms: readonly Term[], from: number, to: number) =>
    terms.reduce((sum, { slope, offset }) => {
      const [one, other] = [slope * from + offset, slope * to + offset]
      return sum + (one * other <= 0 ? 0 : Math.min(Math.abs(one), Math.abs(other)))
    }, 0)
  const lowest = excessOf(up, a.lowest + b.lowest)
  const firsts = best(first, a.first[0] + b.first[0], a.first[1] + b.first[1])
  return firsts + best(second, a.second[0] + b.second[0], a.second[1] + b.second[1]) + lowest
}

function runsOf(rows: Rows): Int32Array {
  const runs = new Int32Array(rows.size)
  for (let i = 1; i < rows.size; i++) {
    const goesOn = valueOf(rows, i, FIRST) === valueOf(rows, i - 1, FIRST)
    runs[i] = goesOn ? (runs[i - 1] as number) : i
  }
  return runs
}

/** Between which sums the terms keep to a bound, with a little to spare for rounding. */
function windowOf(terms: readonly Term[], bound: number): readonly [number, number] {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (const { slope, offset } of terms) {
    const half = (bound * (1 + SAME) + SAME / 1000) / Math.abs(slope)
    from = Math.max(from, -offset / slope - half)
    to = Math.min(to, -offset / slope + half)
  }
  return [from, to]
}

/**
 * Sees every pair of rows whose deviation is within a bound. What sees them gives the bound to go on with.
 *
 * @returns Whether it saw them all: it stops when `end` placements have been looked at.
 */
function scan(
  problem: Problem,
  pairs: readonly Pair[],
  within: number,
  prices: Prices,
  end: number,
  progress: Progress,
  see: (pair: Pair, i: number, j: number, deviation: number) => number,
): boolean {
  let bound = within
  for (const pair of pairs) {
    if (pair.bound > bound + SAME / 100) continue
    const { front, back, runs } = pair
    progress.explored += front.size
    let [from, to] = windowOf(problem.first, bound)
    let last = back.size - 1
    for (let i = 0; i < front.size; i++) {
      const first = valueOf(front, i, FIRST)
      while (last >= 0 && valueOf(back, last, FIRST) > to - first) last--
      if (costAt(front, i, prices) + pair.rest > bound + SAME / 100) continue
      // Rows at the back with one first sum are taken together: their second sums are sorted.
      for (let j = last; j >= 0 && valueOf(back, j, FIRST) >= from - first; j = (runs[j] as number) - 1) {
        if (progress.explored > end) {
          progress.complete = false
          return false
        }
        const second = valueOf(front, i, SECOND)
        const [low, high] = windowOf(problem.second, bound - sumOf(problem.first, first + valueOf(back, j, FIRST)))
        progress.explored++
        for (let k = atLeast(back, SECOND, low - second, runs[j] as number, j + 1); k <= j; k++) {
          const sum = second + valueOf(back, k, SECOND)
          if (sum > high) break
          progress.explored++
          const up = valueOf(front, i, UP) + valueOf(back, k, UP)
          const deviation = deviationOf(problem, first + valueOf(back, k, FIRST), sum, up)
          if (deviation > bound) continue
          const next = see(pair, i, k, deviation)
          if (next === bound) continue
          bound = next
          ;[from, to] = windowOf(problem.first, bound)
        }
      }
    }
  }
  return true
}

/** The first row from `begin` to before `end` with a sum of at least so much. */
function atLeast(rows: Rows, column: number, least: number, begin: number, end: number): number {
  while (begin < end) {
    const middle = (begin + end) >> 1
    if (valueOf(rows, middle, column) >= least) end = middle
    else begin = middle + 1
  }
  return begin
}

/** The filling of each bay of a half that leads to a row of its last table, found by going back bay by bay. */
function fillingsOf(
  ways: Ways,
  codes: Codes,
  half: Half,
  lastCode: number,
  lastRow: number,
): readonly (readonly [number, Filling])[] {
  const last = half.tables[half.tables.length - 1]?.rowsOf(lastCode) as Rows
  let code = lastCode
  let row = rowAt(last, lastRow)
  return half.bays
    .map((bay, step) => [bay, step] as const)
    .reverse()
    .map(([bay, step]) => {
      const inAll = codes.restOf(codes.all - code)
      for (const filling of ways[bay] as readonly Filling[]) {
        if (!fits(filling, inAll)) continue
        const before = code - codes.codeOf(filling.counts)
        const rows = half.tables[step]?.rowsOf(before)
        const wanted = without(row, filling)
        if (rows === undefined || !holds(rows, wanted)) continue
        code = before
        row = wanted
        return [bay, filling] as const
      }
      throw new Error('a row of a table comes from a row of the table before')
    })
}

type Row = readonly [first: number, second: number, up: number, yaw: number, bays: number]

function rowAt(rows: Rows, i: number): Row {
  return [FIRST, SECOND, UP, YAW, BAYS].map((column) => valueOf(rows, i, column)) as unknown as Row
}

function without([first, second, up, yaw, bays]: Row, filling: Filling): Row {
  const used = filling.counts.some((count) => count > 0) ? 1 : 0
  return [first - filling.first, second - filling.second, up - filling.up, yaw - filling.yaw, bays - used]
}

function holds(rows: Rows, [first, second, ...rest]: Row): boolean {
  for (let i = atLeast(rows, FIRST, first, 0, rows.size); i < rows.size && valueOf(rows, i, FIRST) === first; i++) {
    if (valueOf(rows, i, SECOND) === second)
      return [UP, YAW, BAYS].every((column, k) => valueOf(rows, i, column) === rest[k])
  }
  return false
}
