/** The memory that a body has of its load: what counts against a rating for all day. */

/**
 * The time constant of a body whose maker does not say it, in seconds: short, so that a load is averaged little. Common
 * practice, no source.
 * @internal
 */
export const USUAL_MEMORY = 300

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

/** After so many time constants nothing is left of what was remembered at the start. */
const FORGOTTEN = 30

/**
 * What a body remembers of a load that is told stretch by stretch, and comes once: from the mean of the whole load, which is
 * known only at its end.
 * @internal
 */
export class Memory {
  readonly #timeConstant: number
  #memory = 0
  #step = Number.NaN
  #share = 0
  #sum = 0
  #time = 0
  /** What is remembered from nothing where it is more than ever before, and when. */
  readonly #highs: (readonly [memory: number, time: number])[] = []

  constructor(timeConstant: number) {
    this.#timeConstant = timeConstant
  }

  /** Takes the next stretch: the square of load over rating, and its seconds. */
  add(square: number, time: number): void {
    // Most loads are told in equal steps.
    if (time !== this.#step) {
      this.#step = time
      this.#share = -Math.expm1(-time / this.#timeConstant)
    }
    this.#memory += (square - this.#memory) * this.#share
    this.#sum += square * time
    this.#time += time
    const highs = this.#highs
    const last = highs.at(-1)
    if (last !== undefined && this.#memory <= last[0]) return
    // Once the start is forgotten, only the highest counts.
    if (last !== undefined && last[1] > FORGOTTEN * this.#timeConstant) highs.pop()
    highs.push([this.#memory, this.#time])
  }

  /** The worst that it remembered, where it began as warm as the mean of the load makes it. */
  worst(): number {
    const mean = this.#time === 0 ? 0 : this.#sum / this.#time
    return this.#highs.reduce(
      (worst, [memory, time]) => Math.max(worst, memory + mean * Math.exp(-time / this.#timeConstant)),
      mean,
    )
  }
}

/** The memory after a stretch. */
function moved(memory: number, [square, time]: Stretch, timeConstant: number): number {
  return memory - (square - memory) * Math.expm1(-time / timeConstant)
}
