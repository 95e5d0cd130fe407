/**
 * The sums that half of the bays can make.
 *
 * After each bay, for every set of counts that the bays so far can hold, the moments that their fillings add up to. Of
 * fillings with the same sums only the one is kept that wins a tie. Moments are whole numbers of a small unit, so that sums are exact
 * in whatever order they are made.
 */
import { noBay, type Prices, withBay } from './bound.js'
import { type Codes, type Filling, fits, type Problem, type Progress, SAME, type Tie, type Ways } from './problem.js'

/** The most rows of a table; beyond it rows of the table before are left out, and nothing is proven. */
const LARGEST = 3e6
/** The most runs of rows that a table is made from. */
const MOST_RUNS = 4e6
/** How many rows the next table is made from instead, counted once for every filling. */
const THINNED = 3e5

/** The numbers of a row, one after the other: the sums, and how many bays are in use. */
const WIDTH = 5
/** Where the first sum stands in a row. @internal */
export const FIRST = 0
/** Where the second sum stands. @internal */
export const SECOND = 1
/** Where the sum of the heights stands. @internal */
export const UP = 2
/** Where the sum of the second moments stands. @internal */
export const YAW = 3
/** Where the number of bays in use stands. @internal */
export const BAYS = 4

/** Where a sum stands that decides a tie. @internal */
export function columnOf({ sum }: Tie): number {
  return sum === 'up' ? UP : YAW
}

/** Sums that fillings of some bays can make for one set of counts, sorted by the first sum, then the second. @internal */
export interface Rows {
  readonly size: number
  /** The rows one after the other. */
  readonly values: Float64Array
}

/** The rows of every set of counts, by its code: the counts as the digits of one number. @internal */
export interface Table {
  readonly size: number
  readonly codes: readonly number[]
  rowsOf(code: number): Rows | undefined
}

/** A half of the bays, with a table after each. @internal */
export interface Half {
  readonly bays: readonly number[]
  readonly tables: readonly Table[]
}

/**
 * Prices, and the most that a placement may cost to be worth a look; undefined where the problem is too large to price.
 * @internal
 */
export interface Limits {
  readonly prices: Prices
  readonly most: number
  readonly isPriced: boolean
}

/** What it costs at least to complete a set of counts, by its code; infinite where that cannot be. */
type Completion = (code: number) => number

/**
 * Tabulates the sums of a half, bay by bay. Rows that the bays still to come can only complete to a worse placement are
 * left out.
 *
 * @returns Undefined when it takes more than so many steps.
 *
 * @internal
 */
export function tabulated(
  problem: Problem,
  ways: Ways,
  codes: Codes,
  half: readonly number[],
  otherHalf: readonly number[],
  limits: Limits,
  steps: number,
  progress: Progress,
): Half | undefined {
  const end = progress.explored + steps
  const order = [...half, ...otherHalf]
  const completions = limits.isPriced
    ? pricedCompletions(order, ways, codes, limits.prices, progress)
    : half.map((_, step) => roomCompletion(problem, codes, order.slice(step + 1)))
  const tables = [tableOf(new Float64Array(WIDTH), [0], [0, 1])]
  for (const [step, bay] of half.entries()) {
    const fillings = ways[bay] as readonly Filling[]
    const completion = completions[step] as Completion
    let grown = extended(problem, tables[step] as Table, fillings, codes, completion, limits, end, progress)
    if (grown === 'too large') {
      progress.complete = false
      tables[step] = thinned(tables[step] as Table, THINNED / fillings.length)
      grown = extended(problem, tables[step] as Table, fillings, codes, completion, limits, end, progress)
    }
    if (grown === 'too long' || grown === 'too large') return undefined
    tables.push(grown)
  }
  return { bays: half, tables }
}

/** What it costs at least to complete every set of counts after each bay, from the last bay to come back to the first. */
function pricedCompletions(
  order: readonly number[],
  ways: Ways,
  codes: Codes,
  prices: Prices,
  progress: Progress,
): readonly Completion[] {
  const costs = [noBay(codes)]
  for (const bay of order.slice(1).reverse()) {
    costs.unshift(withBay(costs[0] as Float64Array, ways[bay] as readonly Filling[], codes, prices, progress))
  }
  return costs.map((cost) => (code) => prices.fixed + (cost[codes.all - code] as number))
}

/** Without prices: nothing, or infinite where the bays to come have no room for all that is left, or for all of a kind. */
function roomCompletion({ counts, bays }: Problem, codes: Codes, toCome: readonly number[]): Completion {
  const roomOf = (rooms: Problem['bays']) => rooms.reduce((sum, { capacity }) => sum + capacity, 0)
  const rooms = toCome.map((bay) => bays[bay] as Problem['bays'][number])
  const whole = roomOf(rooms)
  const byKind = counts.map((_, kind) => roomOf(rooms.filter(({ takes }) => takes[kind])))
  return (code) => {
    const rest = codes.restOf(code)
    let sum = 0
    for (let kind = 0; kind < rest.length; kind++) {
      if ((rest[kind] as number) > (byKind[kind] as number)) return Number.POSITIVE_INFINITY
      sum += rest[kind] as number
    }
    return sum > whole ? Number.POSITIVE_INFINITY : 0
  }
}

/** A table of rows that lie one after the other, those of each code from one start to the next. */
function tableOf(values: Float64Array, codes: readonly number[], starts: readonly number[]): Table {
  const places = new Map(codes.map((code, place) => [code, place]))
  const rowsOf = (code: number) => {
    const place = places.get(code)
    if (place === undefined) return undefined
    const [from, to] = [starts[place] as number, starts[place + 1] as number]
    return { size: to - from, values: values.subarray(from * WIDTH, to * WIDTH) }
  }
  return { size: starts[codes.length] as number, codes, rowsOf }
}

/** The table with one more bay. */
function extended(
  { ties }: Problem,
  table: Table,
  fillings: readonly Filling[],
  codes: Codes,
  completion: Completion,
  limits: Limits,
  end: number,
  progress: Progress,
): Table | 'too large' | 'too long' {
  const runs = runsByCode(table, fillings, codes, completion, end, progress)
  if (typeof runs === 'string') return runs
  const used = fillings.map(({ counts }) => (counts.some((count) => count > 0) ? 1 : 0))
  const sources = table.codes.map((code) => table.rowsOf(code) as Rows)
  const [grownCodes, starts]: [number[], number[]] = [[], [0]]
  let values: Float64Array = new Float64Array(WIDTH * 1024)
  let size = 0
  let scratch: Scratch = { rows: new Float64Array(0), spare: new Float64Array(0) }
  const columns = ties.map(columnOf) as [number, number]
  for (const [code, list] of runs) {
    let most = 0
    for (let i = 0; i < list.length; i += 2) most += (sources[list[i] as number] as Rows).size
    scratch = roomy(scratch, most)
    const ends: number[] = []
    let made = 0
    for (let i = 0; i < list.length; i += 2) {
      const filling = list[i + 1] as number
      const source = sources[list[i] as number] as Rows
      made = shifted(
        source,
        fillings[filling] as Filling,
        used[filling] as number,
        limits,
        completion(code),
        scratch,
        made,
      )
      ends.push(made)
    }
    progress.explored += most
    if (progress.explored > end) return 'too long'
    const { rows, count } = merged(scratch, ends, columns)
    if (count === 0) continue
    if (size + count > LARGEST) return 'too large'
    values = grown(values, size * WIDTH, (size + count) * WIDTH)
    values.set(rows.subarray(0, count * WIDTH), size * WIDTH)
    size += count
    grownCodes.push(code)
    starts.push(size)
  }
  return tableOf(values.slice(0, size * WIDTH), grownCodes, starts)
}

/** For every code that one more bay leads to: places of codes in the table, each with a filling that leads from it. */
function runsByCode(
  table: Table,
  fillings: readonly Filling[],
  codes: Codes,
  completion: Completion,
  end: number,
  progress: Progress,
): ReadonlyMap<number, readonly number[]> | 'too large' | 'too long' {
  const runs = new Map<number, number[]>()
  const more = fillings.map(({ counts }) => codes.codeOf(counts))
  let count = 0
  for (let place = 0; place < table.codes.length; place++) {
    const code = table.codes[place] as number
    const rest = codes.restOf(code)
    progress.explored += fillings.length
    if (progress.explored > end) return 'too long'
    for (let i = 0; i < fillings.length; i++) {
      if (!fits(fillings[i] as Filling, rest)) continue
      const next = code + (more[i] as number)
      const known = runs.get(next)
      if (known === undefined) {
        // A set of counts that cannot be completed has no runs, and is known by that.
        const canBe = completion(next) < Number.POSITIVE_INFINITY
        runs.set(next, canBe ? [place, i] : [])
        if (canBe) count++
      } else if (known.length > 0) {
        known.push(place, i)
        count++
      }
    }
    if (count > MOST_RUNS) return 'too large'
  }
  return runs
}

/** Room for rows while they are merged. */
interface Scratch {
  readonly rows: Float64Array
  readonly spare: Float64Array
}

function roomy(scratch: Scratch, most: number): Scratch {
  if (scratch.rows.length >= most * WIDTH) return scratch
  return { rows: new Float64Array(2 * most * WIDTH), spare: new Float64Array(2 * most * WIDTH) }
}

/** An array that holds at least so many values, the first of them kept. */
function grown(values: Float64Array, kept: number, wanted: number): Float64Array {
  if (wanted <= values.length) return values
  const larger = new Float64Array(2 * wanted)
  larger.set(values.subarray(0, kept))
  return larger
}

/**
 * Adds rows with the sums of a filling added, in their order, those that can be completed at a cost worth a look.
 *
 * @returns How many rows there then are.
 */
function shifted(
  { size, values }: Rows,
  { first, second, up, yaw }: Filling,
  used: number,
  { prices, most, isPriced }: Limits,
  toCome: number,
  { rows }: Scratch,
  made: number,
): number {
  // A little to spare for rounding.
  const limit = isPriced ? most - toCome + SAME / 100 : Number.POSITIVE_INFINITY
  let at = made * WIDTH
  for (let from = 0; from < size * WIDTH; from += WIDTH) {
    const [a, b, c] = [
      (values[from + FIRST] as number) + first,
      (values[from + SECOND] as number) + second,
      (values[from + UP] as number) + up,
    ]
    if (prices.first * a + prices.second * b + prices.up * c > limit) continue
    rows[at + FIRST] = a
    rows[at + SECOND] = b
    rows[at + UP] = c
    rows[at + YAW] = (values[from + YAW] as number) + yaw
    rows[at + BAYS] = (values[from + BAYS] as number) + used
    at += WIDTH
  }
  return at / WIDTH
}

/** A number of a row. @internal */
export function valueOf({ values }: Rows, i: number, column: number): number {
  return values[i * WIDTH + column] as number
}

/** What a row costs at some prices. @internal */
export function costAt(rows: Rows, i: number, { first, second, up }: Prices): number {
  return first * valueOf(rows, i, FIRST) + second * valueOf(rows, i, SECOND) + up * valueOf(rows, i, UP)
}

/** Sorted runs of rows, given by where each ends, as one; two by two, from one array to the other and back. */
function merged(
  { rows, spare }: Scratch,
  ends: readonly number[],
  ties: readonly [number, number],
): { readonly rows: Float64Array; readonly count: number } {
  let [from, to, runs] = [rows, spare, ends]
  while (runs.length > 1) {
    const next: number[] = []
    let size = 0
    for (let run = 0; run < runs.length; run += 2) {
      const begin = run === 0 ? 0 : (runs[run - 1] as number)
      const middle = runs[run] as number
      size = mergedTwo(from, begin, middle, runs[run + 1] ?? middle, to, size, ties)
      next.push(size)
    }
    ;[from, to, runs] = [to, from, next]
  }
  return { rows: from, count: runs[0] ?? 0 }
}

/**
 * Two sorted runs as one, after `size` rows that are there. Of rows with the same first and second sum, the one is kept
 * with the lesser of what decides a tie, then that of fewest bays.
 *
 * @returns How many rows there then are.
 */
function mergedTwo(
  from: Float64Array,
  begin: number,
  middle: number,
  end: number,
  to: Float64Array,
  size: number,
  [tie, next]: readonly [number, number],
): number {
  let [i, j, at] = [begin * WIDTH, middle * WIDTH, size * WIDTH]
  const [endOfOne, endOfOther] = [middle * WIDTH, end * WIDTH]
  while (i < endOfOne || j < endOfOther) {
    const order =
      i === endOfOne ? 1 : j === endOfOther ? -1 : compared(from, i, j, FIRST) || compared(from, i, j, SECOND)
    const takesOne =
      order < 0 ||
      (order === 0 && (compared(from, i, j, tie) || compared(from, i, j, next) || compared(from, i, j, BAYS)) <= 0)
    const taken = takesOne ? i : j
    to[at] = from[taken] as number
    to[at + 1] = from[taken + 1] as number
    to[at + 2] = from[taken + 2] as number
    to[at + 3] = from[taken + 3] as number
    to[at + 4] = from[taken + 4] as number
    at += WIDTH
    if (order <= 0) i += WIDTH
    if (order >= 0) j += WIDTH
  }
  return at / WIDTH
}

function compared(values: Float64Array, i: number, j: number, by: number): number {
  return (values[i + by] as number) - (values[j + by] as number)
}

/** A table with evenly chosen rows left out, so that about so many remain, and one of each set of counts. */
function thinned(table: Table, wanted: number): Table {
  const every = Math.ceil(table.size / wanted)
  const starts = [0]
  const kept: number[] = []
  for (const code of table.codes) {
    const { size, values } = table.rowsOf(code) as Rows
    for (let i = 0; i < size; i += every) for (let at = 0; at < WIDTH; at++) kept.push(values[i * WIDTH + at] as number)
    starts.push(kept.length / WIDTH)
  }
  return tableOf(Float64Array.from(kept), table.codes, starts)
}
