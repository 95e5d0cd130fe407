/**
 * A deviation that no placement is below, and a placement near it.
 *
 * Each term `|v|` of the deviation is at least `p v` for any price `p` from -1 to 1, and the height at least `p v` from 0
 * to 1. With prices fixed, the deviation is at least a sum of a cost for each bay, whose least is found bay by bay. The
 * prices that make this least the greatest are approached by following its slope (Lagrangian relaxation: Fisher, The
 * Lagrangian Relaxation Method for Solving Integer Programming Problems, Management Science 27 (1981)).
 */
import { type Codes, deviationAt, type Filling, fits, type Problem, type Term } from './place-problem.js'

/** What a unit of each sum costs, and what stands whatever is placed. */
export interface Prices {
  readonly first: number
  readonly second: number
  readonly up: number
  readonly fixed: number
}

/** A bound and a placement. */
export interface Relaxed {
  readonly prices: Prices
  /** No placement deviates by less. */
  readonly bound: number
  /** A good placement, and its deviation. */
  readonly fillings: readonly Filling[]
  readonly deviation: number
}

/** How often the prices are moved at most, and how many steps that may take; the bound stands whatever they are. */
const MOST_MOVES = 30
const MOST_STEPS = 2e8

/** Finds prices with a good bound, and the best placement met on the way. Undefined when there is none at all. */
export function relaxed(problem: Problem, codes: Codes): Relaxed | undefined {
  const steps = (codes.all + 1) * problem.bays.reduce((sum, fillings) => sum + fillings.length, 0)
  const moves = Math.min(MOST_MOVES, Math.ceil(MOST_STEPS / steps))
  let at = valuesOf(problem, []).map(() => 0)
  let best: Relaxed | undefined
  for (let move = 0; move < moves; move++) {
    const prices = pricesOf(problem, at)
    const cheapest = cheapestPlacement(problem, codes, prices)
    if (cheapest === undefined) return undefined
    const bound = prices.fixed + cheapest.cost
    const fillings = move % 10 === 0 ? exchanged(problem, codes, cheapest.fillings) : cheapest.fillings
    const deviation = deviationAt(problem, fillings)
    best ??= { prices, bound, fillings, deviation }
    if (bound > best.bound) best = { ...best, prices, bound }
    if (deviation < best.deviation) best = { ...best, fillings, deviation }
    // A step up the slope, as long as would reach the best placement known (Polyak).
    const slopes = valuesOf(problem, cheapest.fillings)
    const step = (best.deviation - bound) / slopes.reduce((sum, slope) => sum + slope * slope, 0)
    if (!(step > 0 && step < Number.POSITIVE_INFINITY)) break
    at = at.map((price, i) => Math.min(1, Math.max(isUp(problem, i) ? 0 : -1, price + step * (slopes[i] as number))))
  }
  return best
}

/** Whether a term, by its place among all, is that of the height. */
function isUp({ first, second }: Problem, i: number): boolean {
  return i >= first.length + second.length
}

/** The value of each term, signs kept. */
function valuesOf({ first, second, up }: Problem, fillings: readonly Filling[]): number[] {
  const sum = (axis: 'first' | 'second' | 'up') => fillings.reduce((total, filling) => total + filling[axis], 0)
  const values = (terms: readonly Term[], total: number) => terms.map(({ slope, offset }) => slope * total + offset)
  return [
    ...values(first, sum('first')),
    ...values(second, sum('second')),
    ...values(up === undefined ? [] : [up], sum('up')),
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
 * The least cost at which each set of counts can be placed in some bays. Sets that find no room in them are not there.
 *
 * @param start - The least costs in bays that came before.
 */
export function withBay(
  start: ReadonlyMap<number, number>,
  fillings: readonly Filling[],
  codes: Codes,
  prices: Prices,
): Map<number, number> {
  const costs = new Map<number, number>()
  const ways = fillings.map((filling) => ({
    filling,
    code: codes.codeOf(filling.counts),
    cost: costOf(prices, filling),
  }))
  for (const [code, before] of start) {
    const rest = codes.restOf(code)
    for (const { filling, code: more, cost } of ways) {
      if (!fits(filling, rest)) continue
      const known = costs.get(code + more)
      if (known === undefined || before + cost < known) costs.set(code + more, before + cost)
    }
  }
  return costs
}

function cheapestPlacement({ bays, counts }: Problem, codes: Codes, prices: Prices) {
  const tables = [new Map([[0, 0]])]
  for (const fillings of bays)
    tables.push(withBay(tables[tables.length - 1] as Map<number, number>, fillings, codes, prices))
  const cost = tables[bays.length]?.get(codes.all)
  if (cost === undefined) return undefined
  let code = codes.all
  const fillings = bays
    .map((ways, i) => ({ ways, i }))
    .reverse()
    .map(({ ways, i }) => {
      const after = tables[i + 1]?.get(code) as number
      const placed = counts.map((count, group) => count - (codes.restOf(code)[group] as number))
      const chosen = ways.find((filling) => {
        if (!fits(filling, placed)) return false
        const before = tables[i]?.get(code - codes.codeOf(filling.counts))
        return before !== undefined && before + costOf(prices, filling) === after
      }) as Filling
      code -= codes.codeOf(chosen.counts)
      return chosen
    })
  return { cost, fillings: fillings.reverse() }
}

/** Changes two bays at a time, as long as that brings the placement nearer to its target. */
function exchanged(problem: Problem, codes: Codes, start: readonly Filling[]): readonly Filling[] {
  let fillings = start
  let deviation = deviationAt(problem, fillings)
  const waysByCode = problem.bays.map((ways) => new Map(ways.map((filling) => [codes.codeOf(filling.counts), filling])))
  for (let isBetter = true; isBetter; ) {
    isBetter = false
    for (let one = 1; one < fillings.length; one++) {
      for (let other = 0; other < one; other++) {
        const theirs = (fillings[other] as Filling).counts
        const total = (fillings[one] as Filling).counts.map((count, group) => count + (theirs[group] as number))
        for (const filling of problem.bays[one] as readonly Filling[]) {
          if (!fits(filling, total)) continue
          const rest = total.map((count, group) => count - (filling.counts[group] as number))
          const match = waysByCode[other]?.get(codes.codeOf(rest))
          if (match === undefined) continue
          const changed = fillings.with(one, filling).with(other, match)
          const next = deviationAt(problem, changed)
          if (next >= deviation) continue
          fillings = changed
          deviation = next
          isBetter = true
        }
      }
    }
  }
  return fillings
}
