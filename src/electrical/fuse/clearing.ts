/** What a fuse does at a current: how long it takes to open, what it lets through, and how that is said. */
import { isBelow } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { currentOnCurve, timeOnCurve } from './curve.js'
import { meltingTime } from './fuse.js'
import { ADIABATIC } from './pulses.js'
import type { Fuse } from './task.js'

/** What a fault through a fuse comes to. */
export interface Clearing {
  /** Until the fuse has opened by its curve, or has melted by its melting integral; absent where its data do not tell. */
  readonly time?: Quantity<'time'>
  /** Joule integral that it lets through; absent where its data do not tell. */
  readonly letThrough?: Quantity<'jouleIntegral'>
}

/** For how many seconds the fault limit of an insulation holds: IEC 60364-4-43, 434.5.2. @internal */
export const FAULT_TIME = 5

/** What a fuse does at a current; `never` where its curve does not reach so low. @internal */
export function clearingAt(fuse: Fuse, current: Quantity<'current'>): Clearing | 'never' {
  const { curve, meltingIntegral, clearingIntegral } = fuse
  if (curve !== undefined) {
    const time = timeOnCurve(curve, current.si)
    if (time === undefined) return 'never'
    const onCurve = current.si ** 2 * time
    const letThrough = Math.max(onCurve, clearingIntegral?.si ?? 0)
    return { time: seconds(time), letThrough: quantity('jouleIntegral', letThrough, 'A²·s').as('kA²·s') }
  }
  if (meltingIntegral !== undefined && meltingIntegral.si / current.si ** 2 <= ADIABATIC) {
    const time = meltingTime({ meltingIntegral, current })
    return clearingIntegral === undefined ? { time } : { time, letThrough: clearingIntegral.as('kA²·s') }
  }
  // A clearing integral alone is stated for currents high enough to melt the fuse within some milliseconds.
  return meltingIntegral === undefined && clearingIntegral !== undefined
    ? { letThrough: clearingIntegral.as('kA²·s') }
    : {}
}

/** @internal */
export function hours(value: number): Quantity<'time'> {
  return quantity('time', value, 's').as('h')
}

/** @internal */
export function seconds(value: number): Quantity<'time'> {
  return value < 0.1 ? quantity('time', value, 's').as('ms') : quantity('time', value, 's')
}

/** @internal */
export function timesInWords(often: number): string {
  return often < 2 ? 'once' : `${Math.floor(often)} times`
}

/** The currents, rising, at which what a fuse lets through is greatest or least: its points, and where limits change. @internal */
export function pointsOf({ curve = [], meltingIntegral }: Fuse, from: Quantity<'current'>, to: Quantity<'current'>) {
  const turns = [
    ...curve.map(([current]) => current.si),
    curve.length === 0 ? undefined : currentOnCurve(curve, FAULT_TIME),
    curve.length > 0 || meltingIntegral === undefined ? undefined : Math.sqrt(meltingIntegral.si / ADIABATIC),
  ]
  const between = turns.filter((each): each is number => each !== undefined && each > from.si && each < to.si)
  const rising = [...new Set(between)].sort((one, other) => one - other)
  return [from, ...rising.map((each) => quantity('current', each, 'A')), ...(isBelow(from, to) ? [to] : [])]
}
