/** So often the interval is halved, so that a bend which no chord follows does not hold up the search. */
const HALVED = 8

/**
 * Where a function that only rises reaches a value, to the last digits: by the chord between the ends of the interval, and
 * by half of what an end is off that stays where it is (the Illinois method; M. Dowell and P. Jarratt, BIT 11 (1971) 168,
 * from memory). A value below the lower end gives the lower end, and one above the upper end the upper.
 */
export function whereReached(rising: (x: number) => number, value: number, from: number, to: number): number {
  let [low, high] = [from, to]
  let [below, above] = [rising(low) - value, rising(high) - value]
  if (below >= 0) return low
  if (above <= 0) return high
  let kept: 'low' | 'high' | undefined
  for (let turn = 1; ; turn++) {
    const share = turn % HALVED === 0 ? 0.5 : below / (below - above)
    const x = low + (high - low) * share
    if (x <= low || x >= high) return x <= low ? low : high
    const off = rising(x) - value
    if (off === 0) return x
    if (off < 0) {
      ;[low, below] = [x, off]
      if (kept === 'high') above /= 2
      kept = 'high'
    } else {
      ;[high, above] = [x, off]
      if (kept === 'low') below /= 2
      kept = 'low'
    }
  }
}
