/**
 * What the time–current curve of a fuse tells: how long it takes to open, and what it lets through meanwhile.
 *
 * Rests on IEC 60269-1 (time–current characteristics); between its points a curve is straight on logarithmic scales.
 */
import { straightInLogs } from '../../formula/points.js'
import type { Quantity } from '../../quantity/index.js'

/** Points [current, time until it opens], the currents rising. */
type Curve = readonly (readonly [Quantity<'current'>, Quantity<'time'>])[]
type Point = readonly [current: number, time: number]
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
  const points = curve.map(([current, each]): Point => [current.si, each.si])
  const [first, last] = [points[0] as Point, points.at(-1) as Point]
  if (time > first[1]) return undefined
  if (time <= last[1]) return last[0] * Math.sqrt(last[1] / time)
  // Where the curve falls straight down between two points, or lies level, the lesser current counts.
  const above = points.findIndex(([, each]) => each < time)
  const [from, to] = [points[above - 1] as Point, points[above] as Point]
  const share = Math.log(time / from[1]) / Math.log(to[1] / from[1])
  return from[0] * (to[0] / from[0]) ** share
}
