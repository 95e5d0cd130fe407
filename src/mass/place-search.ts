/**
 * The search behind the placing of masses: which filling of every bay leaves the least deviation.
 *
 * How far a placement is from its target depends on a few sums alone: how many of each group are placed, and their
 * moments. So the bays are parted in two halves, and for each half the sums are tabulated that its bays can make. Of
 * fillings with the same sums only the lowest is kept. A whole placement is a row of one table and a row of the other
 * whose counts complement each other; such pairs are looked for within a bound on the deviation that is widened until
 * there is one (meet in the middle: Horowitz & Sahni, Computing Partitions with Applications to the Knapsack Problem,
 * J. ACM 21 (1974)). Every pair within the bound is seen, so that the best of them is the best of all.
 *
 * Moments are whole numbers of a small unit, so that sums are exact in whatever order they are made.
 */

import { type Prices, relaxed, withBay } from './place-bound.js'
import {
  type Codes,
  codesOf,
  deviationOf,
  excessOf,
  type Filling,
  fits,
  type Problem,
  SAME,
  sumOf,
  type Term,
} from './place-problem.js'

/** The best filling of every bay, in the order of the bays. */
export interface Best {
  readonly fillings: readonly Filling[]
  /** Whether nothing is better. */
  readonly proven: boolean
  /** How many partial and whole placements were looked at. */
  readonly explored: number
}

/** The most rows that the next step of a table is made from; beyond it rows are left out, and nothing is proven. */
const LARGEST = 5e6
/** How many rows are kept instead. */
const THINNED = 3e5

/** The most pairs that one look at the tables goes through; beyond it the best one met is kept, and nothing is proven. */
const LONGEST = 1e8

/** Sums that fillings of some bays can make for one set of counts, sorted by the first sum, then the second. */
interface Rows {
  readonly size: number
  readonly first: Float64Array
  readonly second: Float64Array
  /** The lowest sum upwards with these two. */
  readonly up: Float64Array
  /** How many bays are in use. */
  readonly bays: Uint16Array
}

/** The rows of every set of counts, by its code: the counts as the digits of one number. */
type Table = ReadonlyMap<number, Rows>

/** A half of the bays, with a table after each. */
interface Half {
  readonly bays: readonly number[]
  readonly tables: readonly Table[]
}

/**
 * Finds the best placement: the least deviation, then the least sum upwards, then the fewest bays.
 *
 * @returns Undefined when the bays have no room for all.
 */
export function bestPlacement(problem: Problem): Best | undefined {
  const codes = codesOf(problem.counts)
  const start = relaxed(problem, codes)
  if (start === undefined) return undefined
  const [one, other] = halvesOf(problem.bays)
  const progress = { explored: 0, complete: true }
  const limits = { prices: start.prices, most: start.deviation + SAME * 2 }
  const front = tabulated(problem, codes, one, other, limits, progress)
  const back = tabulated(problem, codes, other, one, limits, progress)
  const pairs = pairsOf(front, back, codes.all, problem, limits.prices)
  const found = bestPair(problem, pairs, start.bound, limits, progress)
  const fillingOf = new Map(
    found === undefined
      ? start.fillings.entries()
      : [
          ...fillingsOf(problem, codes, front, found.pair.code, found.i),
          ...fillingsOf(problem, codes, back, codes.all - found.pair.code, found.j),
        ],
  )
  return {
    fillings: problem.bays.map((_, bay) => fillingOf.get(bay) as Filling),
    proven: progress.complete,
    explored: progress.explored,
  }
}

/** A row of either table, together a placement. */
interface Found {
  readonly pair: Pair
  readonly i: number
  readonly j: number
}

/** The best pair of rows, if any is seen: by deviation, then by height, then by the number of bays. */
function bestPair(
  problem: Problem,
  pairs: readonly Pair[],
  floor: number,
  limits: Limits,
  progress: Progress,
): Found | undefined {
  let found: Found | undefined
  let least = Number.POSITIVE_INFINITY
  // The bound is widened until pairs keep within it, or until it is as wide as the placement that is known.
  let isThrough = true
  for (let width = SAME; found === undefined && isThrough; width *= 16) {
    const within = Math.min(floor + width, limits.most)
    isThrough = scan(problem, pairs, within, limits.prices, progress, (pair, i, j, deviation) => {
      if (found !== undefined && deviation >= least) return least
      least = deviation
      found = { pair, i, j }
      return least
    })
    if (within === limits.most) break
  }
  if (found === undefined) return undefined
  const within = least + SAME
  let height = Number.POSITIVE_INFINITY
  scan(problem, pairs, within, limits.prices, progress, (pair, i, j) => {
    const up = (pair.front.up[i] as number) + (pair.back.up[j] as number)
    if (up < height) {
      height = up
      found = { pair, i, j }
    }
    return within
  })
  let fewest = Number.POSITIVE_INFINITY
  scan(problem, pairs, within, limits.prices, progress, (pair, i, j) => {
    const bays = (pair.front.bays[i] as number) + (pair.back.bays[j] as number)
    const isLow = (pair.front.up[i] as number) + (pair.back.up[j] as number) <= height + problem.sameHeight
    if (isLow && bays < fewest) {
      fewest = bays
      found = { pair, i, j }
    }
    return within
  })
  return found
}

/** Parts the bays so that both halves have about as many fillings. */
function halvesOf(bays: Problem['bays']): readonly [number[], number[]] {
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

interface Progress {
  explored: number
  complete: boolean
}

/** Prices, and the most that a placement may cost to be worth a look. */
interface Limits {
  readonly prices: Prices
  readonly most: number
}

/** Tabulates the sums of a half, bay by bay. Rows that the bays still to come can only complete to a worse placement are left out. */
function tabulated(
  { bays }: Problem,
  codes: Codes,
  half: readonly number[],
  otherHalf: readonly number[],
  { prices, most }: Limits,
  progress: Progress,
): Half {
  const start: Rows = {
    size: 1,
    first: Float64Array.of(0),
    second: Float64Array.of(0),
    up: Float64Array.of(0),
    bays: Uint16Array.of(0),
  }
  // What it costs at least to complete every set of counts, from the last bay to come back to the first.
  const toCome = [...half, ...otherHalf].map((bay) => bays[bay] as readonly Filling[])
  const completions: ReadonlyMap<number, number>[] = [new Map([[0, 0]])]
  for (const fillings of toCome.slice(1).reverse()) {
    completions.unshift(withBay(completions[0] as ReadonlyMap<number, number>, fillings, codes, prices))
  }
  const tables: Table[] = [new Map([[0, start]])]
  half.forEach((bay, step) => {
    const fillings = bays[bay] as readonly Filling[]
    let table = tables[step] as Table
    const rows = [...table.values()].reduce((sum, { size }) => sum + size, 0)
    if (rows * fillings.length > LARGEST) {
      progress.complete = false
      table = thinned(table, rows, THINNED / fillings.length)
      tables[step] = table
    }
    const completion = completions[step] as ReadonlyMap<number, number>
    const grown = extended(table, fillings, codes, completion, { prices, most })
    for (const { size } of grown.values()) progress.explored += size
    tables.push(grown)
  })
  return { bays: half, tables }
}

/** The table with one more bay. */
function extended(
  table: Table,
  fillings: readonly Filling[],
  codes: Codes,
  completion: ReadonlyMap<number, number>,
  { prices, most }: Limits,
): Table {
  const lists = new Map<number, Rows[]>()
  for (const [code, rows] of table) {
    for (const filling of fillings) {
      if (!fits(filling, codes.restOf(code))) continue
      const next = code + codes.codeOf(filling.counts)
      if (!completion.has(codes.all - next)) continue
      const list = lists.get(next)
      if (list === undefined) lists.set(next, [shifted(rows, filling)])
      else list.push(shifted(rows, filling))
    }
  }
  const grown = [...lists].map(([code, list]) => {
    const rest = prices.fixed + (completion.get(codes.all - code) as number)
    return [code, affordable(mergedAll(list), prices, most - rest)] as const
  })
  return new Map(grown.filter(([, { size }]) => size > 0))
}

/** The rows that cost no more than so much, with a little to spare for rounding. */
function affordable(rows: Rows, prices: Prices, most: number): Rows {
  if (prices.first === 0 && prices.second === 0 && prices.up === 0) return rows
  const limit = most + SAME / 100
  const kept: number[] = []
  for (let i = 0; i < rows.size; i++) if (costAt(rows, i, prices) <= limit) kept.push(i)
  if (kept.length === rows.size) return rows
  const pick = (all: Float64Array) => Float64Array.from(kept, (i) => all[i] as number)
  return {
    size: kept.length,
    first: pick(rows.first),
    second: pick(rows.second),
    up: pick(rows.up),
    bays: Uint16Array.from(kept, (i) => rows.bays[i] as number),
  }
}

function costAt(rows: Rows, i: number, prices: Prices): number {
  return (
    prices.first * (rows.first[i] as number) +
    prices.second * (rows.second[i] as number) +
    prices.up * (rows.up[i] as number)
  )
}

/** Rows with the sums of a filling added; their order stays. */
function shifted(rows: Rows, { counts, first, second, up }: Filling): Rows {
  if (counts.every((count) => count === 0)) return rows
  return {
    size: rows.size,
    first: rows.first.map((sum) => sum + first),
    second: rows.second.map((sum) => sum + second),
    up: rows.up.map((sum) => sum + up),
    bays: rows.bays.map((used) => used + 1),
  }
}

function mergedAll(lists: readonly Rows[]): Rows {
  if (lists.length === 1) return lists[0] as Rows
  const middle = lists.length >> 1
  return merged(mergedAll(lists.slice(0, middle)), mergedAll(lists.slice(middle)))
}

/** Two sorted lists as one. Of rows with the same first and second sum, the lowest is kept, then that of fewest bays. */
function merged(a: Rows, b: Rows): Rows {
  const most = a.size + b.size
  const first = new Float64Array(most)
  const second = new Float64Array(most)
  const up = new Float64Array(most)
  const bays = new Uint16Array(most)
  let size = 0
  let i = 0
  let j = 0
  while (i < a.size || j < b.size) {
    const order = i === a.size ? 1 : j === b.size ? -1 : compared(a, i, b, j)
    const takesFirst = order < 0 || (order === 0 && isBetter(a, i, b, j))
    const rows = takesFirst ? a : b
    const at = takesFirst ? i : j
    first[size] = rows.first[at] as number
    second[size] = rows.second[at] as number
    up[size] = rows.up[at] as number
    bays[size] = rows.bays[at] as number
    size++
    if (order <= 0) i++
    if (order >= 0) j++
  }
  return {
    size,
    first: first.subarray(0, size),
    second: second.subarray(0, size),
    up: up.subarray(0, size),
    bays: bays.subarray(0, size),
  }
}

function compared(a: Rows, i: number, b: Rows, j: number): number {
  return (a.first[i] as number) - (b.first[j] as number) || (a.second[i] as number) - (b.second[j] as number)
}

function isBetter(a: Rows, i: number, b: Rows, j: number): boolean {
  return ((a.up[i] as number) - (b.up[j] as number) || (a.bays[i] as number) - (b.bays[j] as number)) <= 0
}

/** A table with evenly chosen rows left out, so that about so many remain. */
function thinned(table: Table, rows: number, wanted: number): Table {
  const every = Math.ceil(rows / wanted)
  const keep = <A extends Float64Array | Uint16Array>(all: A) => all.filter((_, i) => i % every === 0) as A
  return new Map(
    [...table].map(([code, { first, second, up, bays, size }]) => [
      code,
      { size: Math.ceil(size / every), first: keep(first), second: keep(second), up: keep(up), bays: keep(bays) },
    ]),
  )
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
  return [...fronts].flatMap(([code, rows]) => {
    const others = backs.get(all - code)
    if (others === undefined) return []
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

function rangeOf({ size, first, second, up }: Rows): Range {
  let [least, most, lowest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let i = 0; i < size; i++) {
    least = Math.min(least, second[i] as number)
    most = Math.max(most, second[i] as number)
    lowest = Math.min(lowest, up[i] as number)
  }
  return { first: [first[0] as number, first[size - 1] as number], second: [least, most], lowest }
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

function runsOf({ size, first }: Rows): Int32Array {
  const runs = new Int32Array(size)
  for (let i = 1; i < size; i++) runs[i] = first[i] === first[i - 1] ? (runs[i - 1] as number) : i
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
 * @returns Whether it saw them all: it stops when that takes too long.
 */
function scan(
  problem: Problem,
  pairs: readonly Pair[],
  within: number,
  prices: Prices,
  progress: Progress,
  see: (pair: Pair, i: number, j: number, deviation: number) => number,
): boolean {
  let bound = within
  let looks = 0
  for (const pair of pairs) {
    if (pair.bound > bound + SAME / 100) continue
    const { front, back, runs } = pair
    let [from, to] = windowOf(problem.first, bound)
    let end = back.size - 1
    for (let i = 0; i < front.size; i++) {
      const first = front.first[i] as number
      while (end >= 0 && (back.first[end] as number) > to - first) end--
      if (costAt(front, i, prices) + pair.rest > bound + SAME / 100) continue
      // Rows at the back with one first sum are taken together: their second sums are sorted.
      for (let j = end; j >= 0 && (back.first[j] as number) >= from - first; j = (runs[j] as number) - 1) {
        const second = front.second[i] as number
        const [low, high] = windowOf(problem.second, bound - sumOf(problem.first, first + (back.first[j] as number)))
        looks++
        for (let k = atLeast(back.second, low - second, runs[j] as number, j + 1); k <= j; k++) {
          const sum = second + (back.second[k] as number)
          if (sum > high) break
          looks++
          const up = (front.up[i] as number) + (back.up[k] as number)
          const deviation = deviationOf(problem, first + (back.first[k] as number), sum, up)
          if (deviation > bound) continue
          const next = see(pair, i, k, deviation)
          if (next === bound) continue
          bound = next
          ;[from, to] = windowOf(problem.first, bound)
        }
      }
      if (looks > LONGEST) {
        progress.complete = false
        progress.explored += looks
        return false
      }
    }
  }
  progress.explored += looks
  return true
}

/** The first place from `begin` to before `end` whose value is at least so much. */
function atLeast(values: Float64Array, least: number, begin: number, end: number): number {
  while (begin < end) {
    const middle = (begin + end) >> 1
    if ((values[middle] as number) >= least) end = middle
    else begin = middle + 1
  }
  return begin
}

/** The filling of each bay of a half that leads to a row of its last table, found by going back bay by bay. */
function fillingsOf(
  { bays, counts }: Problem,
  codes: Codes,
  half: Half,
  lastCode: number,
  lastRow: number,
): readonly (readonly [number, Filling])[] {
  const last = half.tables[half.tables.length - 1]?.get(lastCode) as Rows
  let code = lastCode
  let row = rowAt(last, lastRow)
  return half.bays
    .map((bay, step) => [bay, step] as const)
    .reverse()
    .map(([bay, step]) => {
      const rest = codes.restOf(code)
      for (const filling of bays[bay] as readonly Filling[]) {
        const placed = counts.map((count, group) => count - (rest[group] as number) - (filling.counts[group] as number))
        if (placed.some((count) => count < 0)) continue
        const before = codes.codeOf(placed)
        const rows = half.tables[step]?.get(before)
        const wanted = without(row, filling)
        if (rows === undefined || !holds(rows, wanted)) continue
        code = before
        row = wanted
        return [bay, filling] as const
      }
      throw new Error('a row of a table comes from a row of the table before')
    })
}

type Row = readonly [first: number, second: number, up: number, bays: number]

function rowAt({ first, second, up, bays }: Rows, i: number): Row {
  return [first[i], second[i], up[i], bays[i]] as unknown as Row
}

function without([first, second, up, bays]: Row, filling: Filling): Row {
  const used = filling.counts.some((count) => count > 0) ? 1 : 0
  return [first - filling.first, second - filling.second, up - filling.up, bays - used]
}

function holds(rows: Rows, [first, second, up, bays]: Row): boolean {
  for (let i = atLeast(rows.first, first, 0, rows.size); i < rows.size && rows.first[i] === first; i++) {
    if (rows.second[i] === second) return rows.up[i] === up && rows.bays[i] === bays
  }
  return false
}
