/**
 * What a recorder writes that no car drives: spikes, and a last digit that goes up and down.
 *
 * A change of speed counts as if it took a second at least, so that the last digit of a fast log is none, and what rises
 * and falls again within a second is one.
 */
import { standardGravity } from '../../formula/index.js'

/** A second, over which a change of speed is looked at. */
const SPAN = 1

/** The hardest change of speed of a log. @internal */
export interface Spike {
  /** In m/s², as a positive figure. */
  readonly acceleration: number
  /** When it ended, in seconds from the start. */
  readonly time: number
}

/** Takes the points of a log one by one, and keeps the last second of them. @internal */
export class Spikes {
  hardest: Spike = { acceleration: 0, time: 0 }
  /** The highest speed so far, in m/s. */
  fastest = 0
  #points: (readonly [time: number, speed: number])[] = []

  /**
   * Takes the next point, and gives the hardest change of speed to it from any point of the last second or, where rows lie
   * farther apart, from the last row. A point that changes faster than `most` is not kept.
   */
  take(time: number, speed: number, most = Infinity): number {
    const points = this.#points
    // The last point that lies a second back, but for the last digit of a difference, and all since then.
    while (points.length > 1 && time - (points[1] as (typeof points)[number])[0] >= SPAN * (1 - 1e-9)) points.shift()
    let acceleration = 0
    for (const [before, other] of points) {
      acceleration = Math.max(acceleration, Math.abs(speed - other) / Math.max(SPAN, time - before))
    }
    if (acceleration > most) return acceleration
    if (acceleration > this.hardest.acceleration) this.hardest = { acceleration, time }
    this.fastest = Math.max(this.fastest, speed)
    points.push([time, speed])
    return acceleration
  }
}

/** The hardest change of speed between the corners of a cycle. @internal */
export function hardestOf(seconds: readonly number[], metresPerSecond: readonly number[]): Spike {
  const spikes = new Spikes()
  seconds.forEach((time, i) => {
    spikes.take(time, metresPerSecond[i] as number)
  })
  return spikes.hardest
}

/** The rolling resistance of good tyres: no car rolls out more slowly. Common practice, no source. */
const ROLLS = 0.01

/**
 * The work that the last digit of a log could add: where the speed falls by a digit and rises by one again, what falls
 * faster than the car rolls out is lost in the brakes. Takes the points of a log one by one.
 * @internal
 */
export class Flicker {
  /** In m/s. */
  readonly #digit: number
  /** What the fall by one digit took that no rise has followed yet. */
  #fell = 0
  #last: readonly [time: number, speed: number] | undefined
  /** Each for a kilogram: in J and m. */
  #work = 0
  #distance = 0

  constructor(digit: number) {
    this.#digit = digit
  }

  take(time: number, speed: number): void {
    const [before, slow] = this.#last ?? [time, speed]
    const [change, way] = [speed - slow, ((speed + slow) / 2) * (time - before)]
    // By one digit, but for the last digit of a difference.
    const isOne = Math.abs(Math.abs(change) / this.#digit - 1) < 0.01
    if (isOne && change > 0) this.#work += this.#fell
    if (change !== 0)
      this.#fell =
        isOne && change < 0 ? Math.max(0, -change / (time - before) - ROLLS * standardGravity.value.si) * way : 0
    this.#distance += way
    this.#last = [time, speed]
  }

  /** What it could add, as a coefficient of rolling resistance. */
  get resistance(): number {
    return this.#distance === 0 ? 0 : this.#work / this.#distance / standardGravity.value.si
  }
}
