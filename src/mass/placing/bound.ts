/**
 * A deviation that no placement is below, and a placement near it.
 *
 * Each term `|v|` of the deviation is at least `p v` for any price `p` from -1 to 1, and the height at least `p v` from 0
 * to 1. With prices fixed, the deviation is at least a sum of a cost for each bay, whose least is found bay by bay. The
 * prices that make this least the greatest are approached by following its slope (Lagrangian relaxation: Fisher, The
 * Lagrangian Relaxation Method for Solving Integer Programming Problems, Management Science 27 (1981)).
 */
import {
  type Codes,
  deviationAt,
  type Filling,
  fits,
  type Problem,
  type Progress,
  type Term,
  totalOf,
  type Ways,
} from './problem.js'
import { improved } from './start.js'

/** What a unit of each sum costs, and what stands whatever is placed. @internal */
export interface Prices {
  readonly first: number
  readonly second: number
  readonly up: number
  readonly fixed: number
}

/** A bound and a placement. @internal */
export interface Relaxed {
  readonly prices: Prices
  /** No placement deviates by less. */
  readonly bound: number
  /** A good placement, and its deviation. */
  readonly fillings: readonly Filling[]
  readonly deviation: number
}

/** How often the prices are moved at most; the bound stands whatever they are. */
const MOST_MOVES = 30
/** How many placements are looked at to improve one that was met; where all are soon tabulated, no more than that takes. */
const IMPROVING = 500

/**
 * Finds prices with a good bound, and the best placement met on the way.
 *
 * @param start - A placement to begin with.
 * @param steps - How many steps to spend at most.
 *
 * @internal
 */
export function relaxed(
  problem: Problem,
  ways: Ways,
  codes: Codes,
  start: readonly Filling[],
  steps: number,
  progress: Progress,
): Relaxed {
  const end = progress.explored + steps
  const improving = Math.min(IMPROVING, stepsToRelax(ways, codes))
  let at = valuesOf(problem, []).map(() => 0)
  let best: Relaxed = {
    prices: pricesOf(problem, at),
    bound: 0,
    fillings: start,
    deviation: deviationAt(problem, start),
  }
  for (let move = 0; move < MOST_MOVES; move++) {
    const before = progress.explored
    const prices = pricesOf(problem, at)
    const cheapest = cheapestPlacement(ways, codes, prices, progress)
    const bound = prices.fixed + cheapest.cost
    const fillings = move % 10 === 0 ? improved(problem, cheapest.fillings, improving, progress) : cheapest.fillings
    const deviation = deviationAt(problem, fillings)
    if (bound > best.bound) best = { ...best, prices, bound }
    if (deviation < best.deviation) best = { ...best, fillings, deviation }
    // A step up the slope, as long as would reach the best placement known (Polyak).
    const slopes = valuesOf(problem, cheapest.fillings)
    const step = (best.deviation - bound) / slopes.reduce((sum, slope) => sum + slope * slope, 0)
    if (!(step > 0 && step < Number.POSITIVE_INFINITY)) break
    at = at.map((price, i) => Math.min(1, Math.max(isUp(problem, i) ? 0 : -1, price + step * (slopes[i] as number))))
    if (2 * progress.explored - before > end) break
  }
  return best
}

/** What one look at all sets of counts in all bays takes at most. @internal */
export function stepsToRelax(ways: Ways, codes: Codes): number {
  return (codes.all + 1) * ways.reduce((sum, { length }) => sum + length, 0)
}

/** No prices, and the bound that stands without them: no deviation is below nothing. @internal */
export const UNPRICED: Prices = { first: 0, second: 0, up: 0, fixed: 0 }

/** Whether a term, by its place among all, is that of the height. */
function isUp({ first, second }: Problem, i: number): boolean {
  return i >= first.length + second.length
}

/** The value of each term, signs kept. */
function valuesOf({ first, second, up }: Problem, fillings: readonly Filling[]): number[] {
  const total = totalOf(fillings)
  const values = (terms: readonly Term[], sum: number) => terms.map(({ slope, offset }) => slope * sum + offset)
  return [
    ...values(first, total.first),
    ...values(second, total.second),
    ...values(up === undefined ? [] : [up], total.up),
  ]
}

function pricesOf({ first, second, up }: Problem, at: readonly number[]): Prices {
  const weighted = (terms: readonly Term[], from: number, of: 'slope' | 'offset') =>
    terms.reduce((sum, term, i) => sum + (at[from + i] as number) * term[of], 0)
  const ups = up === undefined ? [] : [up]
  const upAt = first.length + second.length
  return {
    first: weighted(first, 0, 'slope'),
    second: weighted(second, first.length, 'slope'),
    up: weighted(ups, upAt, 'slope'),
    fixed: weighted(first, 0, 'offset') + weighted(second, first.length, 'offset') + weighted(ups, upAt, 'offset'),
  }
}

/** What a filling costs at some prices. */
function costOf(prices: Prices, { first, second, up }: Pick<Filling, 'first' | 'second' | 'up'>): number {
  return prices.first * first + prices.second * second + prices.up * up
}

/**
 * The least cost at which each set of counts, by its code, can be placed in some bays; infinite where it finds no room.
 *
 * @param start - The least costs in bays that came before.
 *
 * @internal
 */
export function withBay(
  start: Float64Array,
  fillings: readonly Filling[],
  codes: Codes,
  prices: Prices,
  progress: Progress,
): Float64Array {
  const costs = new Float64Array(codes.all + 1).fill(Number.POSITIVE_INFINITY)
  const more = fillings.map(({ counts }) => codes.codeOf(counts))
  const price = fillings.map((filling) => costOf(prices, filling))
  for (let code = 0; code <= codes.all; code++) {
    const before = start[code] as number
    if (before === Number.POSITIVE_INFINITY) continue
    const rest = codes.restOf(code)
    progress.explored += fillings.length
    for (let i = 0; i < fillings.length; i++) {
      if (!fits(fillings[i] as Filling, rest)) continue
      const [after, cost] = [code + (more[i] as number), before + (price[i] as number)]
      if (cost < (costs[after] as number)) costs[after] = cost
    }
  }
  return costs
}

/** The least costs in no bay: nothing for nothing. @internal */
export function noBay(codes: Codes): Float64Array {
  const costs = new Float64Array(codes.all + 1).fill(Number.POSITIVE_INFINITY)
  costs[0] = 0
  return costs
}

function cheapestPlacement(
  bays: Ways,
  codes: Codes,
  prices: Prices,
  progress: Progress,
): { readonly cost: number; readonly fillings: readonly Filling[] } {
  const tables = [noBay(codes)]
  for (const fillings of bays) {
    tables.push(withBay(tables[tables.length - 1] as Float64Array, fillings, codes, prices, progress))
  }
  const cost = tables[bays.length]?.[codes.all] as number
  let code = codes.all
  const fillings = bays
    .map((ways, i) => ({ ways, i }))
    .reverse()
    .map(({ ways, i }) => {
      const after = tables[i + 1]?.[code] as number
      const placed = codes.restOf(codes.all - code)
      const chosen = ways.find((filling) => {
        if (!fits(filling, placed)) return false
        const before = tables[i]?.[code - codes.codeOf(filling.counts)] as number
        return before + costOf(prices, filling) === after
      }) as Filling
      code -= codes.codeOf(chosen.counts)
      return chosen
    })
  return { cost, fillings: fillings.reverse() }
}
