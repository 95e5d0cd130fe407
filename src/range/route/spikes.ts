/** How fast the speed of a log changes: over at least a second, so that the last digit of a fast log is no change. */

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
  #points: (readonly [time: number, speed: number])[] = []

  /** Takes the next point, and gives the change of speed over the last second or, where rows lie farther apart, the last row. */
  take(time: number, speed: number): number {
    const points = this.#points
    // The last point that lies a second back, but for the last digit of a difference, and all since then.
    while (points.length > 1 && time - (points[1] as (typeof points)[number])[0] >= SPAN * (1 - 1e-9)) points.shift()
    const [before, slow] = points[0] ?? [time, speed]
    const lasts = time - before
    const acceleration = lasts >= SPAN * (1 - 1e-9) ? Math.abs(speed - slow) / lasts : 0
    if (acceleration > this.hardest.acceleration) this.hardest = { acceleration, time }
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
