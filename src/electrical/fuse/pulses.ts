/**
 * What the peaks of a load do to a fuse: each stretch of the load, however it is cut, against the current that melts the
 * fuse in its time.
 *
 * Rests on guides of fuse makers: how much of its melting integral a fuse bears how often, and what share of the melting
 * current a fuse for semiconductors does.
 */
import { type Points, straightInLogs } from '../../formula/points.js'
import { currentOnCurve } from './curve.js'
import type { Fuse } from './task.js'

/** Until when the melting integral that a maker states holds, in seconds. @internal */
export const ADIABATIC = 0.01

/** How often a pulse can come in the life of a car: 5000 hours of it, common practice, no source. */
const LIFE = 5000 * 3600

/** How often what lasts for so many seconds comes in the life of the car. @internal */
export function timesOf(cycles: number, time: number): number {
  return Math.min(cycles, LIFE / time)
}

/** The share of its melting integral that a fuse bears so many times. Guides of fuse makers; the figures were read. */
const INTEGRAL: Points = [
  [100, 0.48],
  [1000, 0.38],
  [10_000, 0.29],
  [100_000, 0.22],
]

/** The share of the melting current that a fuse for semiconductors bears so many times. Guide of a maker; read. */
const SEMICONDUCTOR: Points = [
  [2000, 0.55],
  [4000, 0.5],
  [10_000, 0.45],
  [100_000, 0.35],
  [1_000_000, 0.31],
]

/** Straight on logarithmic scales; fewer times than the first let it bear no more, more than the last are not told. */
function shareAt(points: Points, times: number): number | undefined {
  const [first, last] = [points[0] as Points[number], points.at(-1) as Points[number]]
  if (times <= first[0]) return first[1]
  if (times > last[0]) return undefined
  return straightInLogs(points, times)
}

/** What a fuse bears again and again: the root mean square over a time, in SI numbers. @internal */
export interface Endurance {
  /** How often a stretch of the load comes in the life of the car. */
  readonly times: (time: number) => number
  /** Undefined where the data of the fuse do not tell. */
  readonly current: (time: number) => number | undefined
  /** Times at which what it bears bends. */
  readonly bends: readonly number[]
}

/** @internal */
export function enduranceOf({ curve, meltingIntegral }: Fuse, cycles: number, isSemiconductor: boolean): Endurance {
  const times = (time: number) => timesOf(cycles, time)
  const ratioAt = (often: number) => {
    const integral = shareAt(INTEGRAL, often)
    const stricter = shareAt(SEMICONDUCTOR, often)
    return isSemiconductor || integral === undefined ? stricter : Math.sqrt(integral)
  }
  return {
    times,
    current: (time) => {
      const often = times(time)
      const ratio = ratioAt(often)
      const melting = curve === undefined ? undefined : currentOnCurve(curve, time)
      const byCurve = ratio === undefined || melting === undefined ? undefined : ratio * melting
      if (meltingIntegral === undefined || time > ADIABATIC) return byCurve
      const share = shareAt(INTEGRAL, often) ?? (ratio as number) ** 2
      return Math.min(byCurve ?? Number.POSITIVE_INFINITY, Math.sqrt((share * meltingIntegral.si) / time))
    },
    bends: [
      ADIABATIC,
      ...(curve ?? []).map(([, time]) => time.si),
      ...[cycles, ...[...INTEGRAL, ...SEMICONDUCTOR].map(([often]) => often)].map((often) => LIFE / often),
    ],
  }
}

/** A stretch of the load: its root mean square in amperes, and how long it lasts in seconds. @internal */
export interface Stretch {
  readonly current: number
  readonly time: number
}

/** What the load asks of a fuse at most. @internal */
export interface Hardest {
  /** The stretch that comes nearest to what the fuse bears, or goes furthest beyond. */
  readonly worst?: Stretch & { readonly borne: number }
  /** The longest stretch for which the data of the fuse do not tell what it bears. */
  readonly untold?: Stretch
}

/** How many stretches are looked at, and over how many seconds a short round is unrolled, at most. */
const [STRETCHES, UNROLLED] = [2e5, 3600]

/**
 * The hardest stretch, above a rating, of a load that is run again and again. What a fuse bears is straight on logarithmic
 * scales between its bends, so that the hardest stretch begins or ends where the load changes, and ends or begins where it
 * changes too, at a bend, or where its mean comes down to the rating: no other cut of the same load gives another one.
 * @internal
 */
export function hardestStretch(load: Course, rating: number, endurance: Endurance): Hardest {
  const course = joined(load)
  if (course.every(([current]) => Math.abs(current) <= rating)) return {}
  const found: { worst?: Worst; untold?: Stretch } = {}
  const consider = (energy: number, time: number) => {
    const stretch = { current: Math.sqrt(energy / time), time }
    const borne = endurance.current(time)
    if (borne === undefined) {
      if (found.untold === undefined || time > found.untold.time) found.untold = stretch
    } else if (found.worst === undefined || isHarder({ ...stretch, borne }, found.worst)) {
      found.worst = { ...stretch, borne }
    }
  }
  lookAt(course, rating ** 2, endurance.bends, consider)
  lookAt([...course].reverse(), rating ** 2, endurance.bends, consider)
  return found
}

type Worst = NonNullable<Hardest['worst']>

/** Of two stretches that go equally far, but for rounding, the longer is told. */
function isHarder(one: Worst, other: Worst): boolean {
  const [asked, most] = [one.current * other.borne, other.current * one.borne]
  return Math.abs(asked - most) <= 1e-8 * most ? one.time > other.time : asked > most
}

type Course = readonly (readonly [current: number, time: number])[]

/** A course whose parts of one current that follow each other are one part. */
function joined(course: Course): Course {
  const parts: [number, number][] = []
  for (const [current, time] of course) {
    const last = parts.at(-1)
    if (last !== undefined && Math.abs(last[0]) === Math.abs(current)) last[1] += time
    else parts.push([current, time])
  }
  const [first, last] = [parts[0] as [number, number], parts.at(-1) as [number, number]]
  // The last part goes on in the first one of the next round.
  if (parts.length > 2 && Math.abs(first[0]) === Math.abs(last[0])) {
    first[1] += last[1]
    parts.pop()
  }
  return parts
}

/** All stretches above a rating that begin where the load changes, by their joule integral and time. */
function lookAt(
  course: Course,
  square: number,
  bends: readonly number[],
  consider: (energy: number, time: number) => void,
): void {
  const round = course.reduce((sum, [, time]) => sum + time, 0)
  const rounds = roundsOf(course, square, round)
  const rising = [...new Set(bends)].sort((one, other) => one - other)
  // The joule integral beyond that of the rating, up to each change, and the most of it that is still to come.
  const beyond = [0]
  for (let k = 0; k < course.length * (rounds + 1); k++) {
    const [current, lasts] = course[k % course.length] as Course[number]
    beyond.push((beyond[k] as number) + (current ** 2 - square) * lasts)
  }
  const most = [...beyond]
  for (let k = most.length - 2; k >= 0; k--) most[k] = Math.max(most[k] as number, most[k + 1] as number)
  for (let start = 0; start < course.length; start++) {
    let [energy, time, bend] = [0, 0, 0]
    for (let k = 0; k < course.length * rounds; k++) {
      if ((most[start + k] as number) <= (beyond[start] as number)) break
      const [current, lasts] = course[(start + k) % course.length] as Course[number]
      const power = current ** 2
      const at = (length: number) => energy + power * (length - time)
      for (; bend < rising.length && (rising[bend] as number) < time + lasts; bend++) {
        const length = rising[bend] as number
        if (length > time && at(length) > square * length) consider(at(length), length)
      }
      const end = time + lasts
      if (at(end) > square * end) consider(at(end), end)
      else if (energy > square * time) {
        // Here its mean comes down to the rating.
        const length = (energy - power * time) / (square - power)
        consider(square * length, length)
      }
      ;[energy, time] = [at(end), end]
    }
  }
}

/** Over how many rounds a stretch can stay above the rating. */
function roundsOf(course: Course, square: number, round: number): number {
  const excess = course.reduce((sum, [current, time]) => sum + (current ** 2 - square) * time, 0)
  const most = course.reduce((sum, [current, time]) => sum + Math.max(0, (current ** 2 - square) * time), 0)
  // A load whose mean is above the rating fails by that.
  const needed = excess < 0 ? 1 + Math.ceil(most / -excess) : 2
  const able = Math.max(2, Math.min(Math.ceil(UNROLLED / round), Math.floor(STRETCHES / course.length ** 2)))
  return Math.min(needed, able)
}
