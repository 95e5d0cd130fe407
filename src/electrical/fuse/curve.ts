/**
 * What the time–current curve of a fuse tells: how long it takes to open, and what it lets through meanwhile.
 *
 * Rests on IEC 60269-1 (time–current characteristics); between its points a curve is straight on logarithmic scales.
 */
import { type Points, straightInLogs } from '../../formula/points.js'
import type { Quantity } from '../../quantity/index.js'

/** Points [current, time until it opens], the currents rising. */
type Curve = readonly (readonly [Quantity<'current'>, Quantity<'time'>])[]
type Point = Points[number]

/**
 * Seconds until a fuse opens, at one joule integral beyond the last point; undefined below the first, where it may never.
 * @internal
 */
export function timeOnCurve(curve: Curve, current: number): number | undefined {
  const points = curve.map(([each, time]): Point => [each.si, time.si])
  const [lowest, last] = [points[0] as Point, points.at(-1) as Point]
  if (current < lowest[0]) return undefined
  if (current >= last[0]) return last[1] * (last[0] / current) ** 2
  return straightInLogs(points, current)
}

/**
 * The current at which a fuse opens in a time, at one joule integral before the last point; undefined where its curve does
 * not reach so long a time.
 * @internal
 */
export function currentOnCurve(curve: Curve, time: number): number | undefined {
  // By time, the shortest first. Where the curve lies level, the lesser current counts.
  const points = curve.map(([current, each]): Point => [each.si, current.si]).reverse()
  const [shortest, longest] = [points[0] as Point, points.at(-1) as Point]
  if (time >= longest[0]) return time === longest[0] ? longest[1] : undefined
  if (time < shortest[0]) return shortest[1] * Math.sqrt(shortest[0] / time)
  return straightInLogs(points, time)
}
