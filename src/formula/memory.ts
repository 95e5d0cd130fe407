/** The memory that a body has of its load: what counts against a rating for all day. */

/** A share of the rating, squared, and for how many seconds it is asked. @internal */
export type Stretch = readonly [square: number, time: number]

/**
 * The worst that a body remembers of a load that comes again and again: the greatest first-order mean of (load / rating)²
 * with the body's own time constant. At 1 it is as warm as its rating makes it. However a stretch is cut, it comes out alike.
 *
 * @param stretches - The squares of load over rating, each for its time.
 * @param timeConstant - Of the body, in seconds.
 * @internal
 */
export function worstMemory(stretches: readonly Stretch[], timeConstant: number): number {
  // One round from nothing: what it adds, and what it leaves of what was there before.
  const total = stretches.reduce((sum, [, time]) => sum + time, 0)
  const added = stretches.reduce((memory, stretch) => moved(memory, stretch, timeConstant), 0)
  const settled = added / -Math.expm1(-total / timeConstant)
  let [memory, worst] = [settled, settled]
  for (const stretch of stretches) {
    memory = moved(memory, stretch, timeConstant)
    worst = Math.max(worst, memory)
  }
  return worst
}

/** The memory after a stretch. */
function moved(memory: number, [square, time]: Stretch, timeConstant: number): number {
  return memory - (square - memory) * Math.expm1(-time / timeConstant)
}
