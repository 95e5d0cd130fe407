/**
 * What the time–current curve of a fuse tells: how long it takes to open, what it lets through meanwhile, and how much of it
 * the peaks of a load use up.
 *
 * Rests on IEC 60269-1 (time–current characteristics); between its points a curve is straight on logarithmic scales.
 */
import { type Quantity, quantity } from '../../quantity/index.js'

/** Points [current, time until it opens], the currents rising. */
type Curve = readonly (readonly [Quantity<'current'>, Quantity<'time'>])[]
type Point = readonly [current: number, time: number]
/** Currents, each for a time. */
type Profile = readonly (readonly [Quantity<'current'>, Quantity<'time'>])[]

/**
 * Seconds until a fuse opens, at one joule integral beyond the last point; undefined below the first, where it may never.
 * @internal
 */
export function timeOnCurve(curve: Curve, current: number): number | undefined {
  const points = curve.map(([each, time]): Point => [each.si, time.si])
  const [lowest, last] = [points[0] as Point, points.at(-1) as Point]
  if (current < lowest[0]) return undefined
  if (current >= last[0]) return last[1] * (last[0] / current) ** 2
  const above = points.findIndex(([each]) => each > current)
  const [from, to] = [points[above - 1] as Point, points[above] as Point]
  const share = Math.log(current / from[0]) / Math.log(to[0] / from[0])
  return from[1] * (to[1] / from[1]) ** share
}

/**
 * The point between two currents at which a fuse lets through most. On straight lines it is one of those of the curve.
 * @internal
 */
export function mostLetThrough(curve: Curve, from: Quantity<'current'>, to: Quantity<'current'>) {
  const inside = curve.filter(([current]) => current.si > from.si && current.si < to.si)
  if (inside.length === 0) return undefined
  const joules = ([current, time]: Curve[number]) => current.si ** 2 * time.si
  const most = inside.reduce((one, other) => (joules(other) > joules(one) ? other : one))
  return { current: most[0], letThrough: quantity('jouleIntegral', joules(most), 'A²·s').as('kA²·s') }
}

/** Currents of a load above the rating of a fuse, one after the other. @internal */
export interface Peak {
  /** The greatest of them. */
  readonly current: Quantity<'current'>
  /** For how long they last in all. */
  readonly time: Quantity<'time'>
  readonly parts: Profile
}

/** The peaks of a profile that is run again and again above a current. @internal */
export function peaksAbove(profile: Profile, rating: Quantity<'current'>): Peak[] {
  const isAbove = ([current]: Profile[number]) => Math.abs(current.si) > rating.si
  // From a moment without a peak, so that none is cut in two where the profile begins again.
  const start = Math.max(
    0,
    profile.findIndex((part) => !isAbove(part)),
  )
  const stretches: Profile[number][][] = [[]]
  for (const part of [...profile.slice(start), ...profile.slice(0, start)]) {
    if (isAbove(part)) stretches.at(-1)?.push(part)
    else if (stretches.at(-1)?.length !== 0) stretches.push([])
  }
  return stretches
    .filter(({ length }) => length > 0)
    .map((parts) => ({
      current: quantity('current', Math.max(...parts.map(([current]) => Math.abs(current.si))), 'A'),
      time: quantity(
        'time',
        parts.reduce((sum, [, time]) => sum + time.si, 0),
        's',
      ),
      parts,
    }))
}

/** What share of the time until it opens a peak takes up, each part at its own current. @internal */
export function shareOfPeak(curve: Curve, { parts }: Peak): Quantity<'ratio'> {
  const used = parts.reduce((sum, [current, time]) => {
    const opens = timeOnCurve(curve, Math.abs(current.si))
    return sum + (opens === undefined ? 0 : time.si / opens)
  }, 0)
  return quantity('ratio', used).as('%')
}
