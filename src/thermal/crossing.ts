/** Where a quantity that only rises or only falls comes to a value: every flow and switching time here is such a place. */
import { type Bracket, rootsOver } from '../formula/root.js'

/**
 * Where a function that only rises or only falls is zero; the end that is nearer to zero where it is not zero between
 * the two.
 */
export function crossing(f: (x: number) => number, low: number, high: number): number {
  const found = low < high ? rootsOver(f, [low, high]) : []
  const [root] = found === 'everywhere' ? [] : (found as readonly Bracket[])
  return root?.root ?? (Math.abs(f(low)) < Math.abs(f(high)) ? low : high)
}
