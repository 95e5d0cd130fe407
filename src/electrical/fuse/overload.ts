/** What opens on an overload of a cable: the fuse, what stands in its place, or a controller that never brings one. */
import { whyNot } from '../../procedure/check.js'
import { type Check, isAbove, isBelow, isMet, says, type Told, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { conventionalOf, conventionalTime } from './class.js'
import { clearingAt, hours, pointsOf } from './clearing.js'
import { currentOnCurve } from './curve.js'
import { greatestFuseRating } from './fuse.js'
import type { Faults, Fuse, FuseTask, Judging } from './task.js'
import { savedBy } from './warmth.js'

const BASIS = 'IEC 60364-4-43, 433.1 (from memory)'
/** The most that the rule for overload lets a fuse carry through its conventional time: IEC 60364-4-43, 433.1. */
const OVERLOAD = 1.45

/** What opens on an overload of the cable, and from what current on the fuse alone does. @internal */
export interface Overload {
  readonly check: Check
  readonly by: 'fuse' | 'controller' | 'other' | 'nothing'
  /** From where the fuse clears and saves the cable, where something else opens below. */
  readonly from?: Quantity<'current'>
}

/** At what current a fuse opens within its conventional time, over its rating. @internal */
export function fusingFactorOf(
  { class: of, rating, curve }: Fuse,
  given: FuseTask['fusingFactor'],
): number | undefined {
  if (of !== undefined) return conventionalOf(of, rating.si)?.factor
  if (given !== undefined) return given.si
  const fusing = curve === undefined ? undefined : currentOnCurve(curve, conventionalTime(rating.si))
  return fusing === undefined ? undefined : fusing / rating.si
}

/** Whether a fuse opens on faults only, by its class. @internal */
export function isPartial({ class: of, rating }: Fuse): boolean {
  return of !== undefined && conventionalOf(of, rating.si) === undefined
}

/** @internal */
export function overloadOf(fuse: Fuse, faults: Faults, task: Judging): Overload {
  const { cable, controller, overload } = task
  const told = (says: Told) =>
    trial('fuse.overload', 'Overload of the cable', says, BASIS, 'candidates', 'overload', 'controller')
  const factor = fusingFactorOf(fuse, task.fusingFactor)
  const byRating =
    factor === undefined
      ? undefined
      : told(
          says`the fuse is rated ${fuse.rating}, at most the ${mostRating(cable.ampacity, factor)} at which it protects the cable`,
        )
  const { class: of, rating, leastBreakingCurrent: least } = fuse
  // What melts on less than it breaks burns on.
  const byBreaking =
    factor === undefined || least === undefined
      ? undefined
      : told(
          says`the fuse breaks from ${least} on, at most the ${rating.times(factor)} on which it opens in an overload`,
        )
  const byItself = [byRating, byBreaking].filter((each) => each !== undefined)
  const missed = byItself.find((each) => !isMet(each))
  if (byRating !== undefined && missed === undefined) return { check: byRating, by: 'fuse' }
  if (controller !== undefined && isHeldByController(task)) {
    const check = told(
      says`overload is left to the controller, which draws ${controller.batteryCurrent}, at most the ${cable.ampacity} that the cable carries all day`,
    )
    return { check, by: 'controller' }
  }
  if (overload !== undefined) return byOther(fuse, faults, task, overload, told)
  if (missed !== undefined) return { check: missed, by: 'nothing' }
  if (isPartial(fuse)) {
    const fail = `the fuse is of class ${of}, which opens on no overload: name in overload what does`
    return { check: told({ fail }), by: 'nothing' }
  }
  // No class lets a fuse be larger than what the cable carries.
  if (isAbove(rating, cable.ampacity)) {
    const check = told(says`the fuse is rated ${rating}, at most the ${cable.ampacity} that the cable carries all day`)
    return { check, by: 'nothing' }
  }
  return {
    by: 'nothing',
    check: told({
      unknown: `at what current the fuse opens within ${hours(conventionalTime(rating.si))} is not known: give its class, or its curve up to there`,
    }),
  }
}

/** The greatest current that the load takes, if only for a moment. */
function greatestOf({ current, profile = [] }: FuseTask): Quantity<'current'> {
  const most = Math.max(...profile.map(([each]) => Math.abs(each.si)), 0)
  return most > current.si ? quantity('current', most, 'A') : current
}

/** Whether the controller keeps the current to what the cable carries all day, and feeds all of the load. @internal */
export function isHeldByController(task: FuseTask): boolean {
  const most = task.controller?.batteryCurrent
  return most !== undefined && !isAbove(most, task.cable.ampacity) && !isBelow(most, greatestOf(task))
}

/** A curve may tell that a fuse opens below its rating, which the formula does not take. */
function mostRating(ampacity: Quantity<'current'>, fusingFactor: number): Quantity<'current'> {
  return fusingFactor > 1 ? greatestFuseRating({ ampacity, fusingFactor }) : ampacity
}

/** Something else that opens on an overload, up to where the fuse both clears and saves the cable. */
function byOther(
  fuse: Fuse,
  { highest }: Faults,
  task: Judging,
  { by, current, time, breaks }: NonNullable<FuseTask['overload']>,
  told: (says: Told) => Check,
): Overload {
  const open = (says: Told): Overload => ({ by: 'nothing', check: told(says) })
  const most = task.cable.ampacity.times(OVERLOAD)
  if (isAbove(current, most)) {
    return open(says`${current}, at which the ${by} opens, is at most the ${most} that the cable bears in an overload`)
  }
  const greatest = greatestOf(task)
  if (isBelow(current, greatest)) {
    return open(says`${current}, at which the ${by} opens, is at least the ${greatest} of the load`)
  }
  const pull = task.controller?.batteryCurrent
  if (pull !== undefined && isBelow(current, pull)) {
    return open(says`${current}, at which the ${by} opens, is at least the ${pull} of a full pull`)
  }
  const least = leastBreakingOf(fuse, task)
  if (least === undefined) return open({ unknown: `${NO_LEAST}. Up to there the ${by} must open` })
  const from = savesFrom(fuse, least, highest, task)
  if (!('si' in from)) return open(from)
  if (isBelow(breaks, from)) {
    return open(
      says`${breaks}, the most that the ${by} breaks, is at least the ${from} from which on the fuse saves the cable`,
    )
  }
  const melts = clearingAt(fuse, least)
  if (melts !== 'never' && melts.time !== undefined && isBelow(melts.time, time)) {
    // Below what it breaks a link that melts burns on: what opens in its place must be the quicker of the two.
    return open(
      says`the fuse melts in ${melts.time} at ${least}, below which only the ${by} breaks, at least the ${time} in which that opens`,
    )
  }
  const why = whyNot(savedBy(task, from, time.si))
  if (why !== undefined) return open('fail' in why ? { fail: `${why.fail}, before the ${by} opens` } : why)
  const check = told({ pass: `below ${from} overload is left to the ${by}, which opens at ${current} in ${time}` })
  return { by: 'other', from, check }
}

/** @internal */
export const NO_LEAST = 'from what current on the fuse breaks is not known: give its leastBreakingCurrent'

/** The least current that a fuse breaks: as stated, else for a full range that at which it opens at all. */
function leastBreakingOf(fuse: Fuse, task: Judging): Quantity<'current'> | undefined {
  if (fuse.leastBreakingCurrent !== undefined) return fuse.leastBreakingCurrent
  const factor = fusingFactorOf(fuse, task.fusingFactor)
  return isPartial(fuse) || factor === undefined ? undefined : fuse.rating.times(factor)
}

/** From what current on a fuse saves the cable at every greater one; or why it never does. */
function savesFrom(fuse: Fuse, least: Quantity<'current'>, highest: Quantity<'current'>, task: Judging) {
  let from: Quantity<'current'> | undefined
  for (const current of [...pointsOf(fuse, least, highest)].reverse()) {
    const clearing = clearingAt(fuse, current)
    const told: Told =
      clearing === 'never'
        ? { fail: `the fuse does not open at ${current}` }
        : savedBy(task, current, clearing.time?.si, clearing)
    const why = whyNot(told)
    if (why !== undefined) return from ?? why
    from = current
  }
  return from as Quantity<'current'>
}
