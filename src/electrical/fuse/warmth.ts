/** What a cable bears until something opens, and in the pulls that its use brings. */
import { whyNot } from '../../procedure/check.js'
import { type Check, isAbove, type Saying, says, type Told, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type Clearing, FAULT_TIME, hours, seconds, timesInWords } from './clearing.js'
import { timesOf } from './pulses.js'
import type { FollowedCable, Judging } from './task.js'

/** How far above its continuous limit a cable of road vehicles is tested, in kelvins: ISO 6722-1, from memory. @internal */
export const OVERLOAD_RISE = 50
/** For how many seconds: the same. */
const OVERLOAD_TIME = 6 * 3600

/** Whether the cable bears a current until it is broken: by its joule integral for 5 s, beyond by how warm it gets. @internal */
export function savedBy(
  { cable: { withstand }, follow }: Judging,
  current: Quantity<'current'>,
  time: number | undefined,
  clearing?: Clearing,
): Told {
  if (time === undefined) return { unknown: `how long the fuse takes at ${current} is not known: give its curve` }
  const lasts = seconds(time)
  // The curve is read at 5 s too, and comes back with the digits that logarithms leave.
  if (time <= FAULT_TIME * (1 + 1e-9)) {
    if (clearing?.letThrough !== undefined) {
      return says`the fuse lets through ${clearing.letThrough} in ${lasts} at ${current}, at most the ${withstand} that the cable withstands`
    }
    const integral = quantity('jouleIntegral', current.si ** 2 * time, 'A²·s').as('kA²·s')
    return says`the cable takes ${integral} in ${lasts} at ${current}, at most the ${withstand} that it withstands`
  }
  if (follow === undefined) {
    return {
      unknown: `how warm ${current} makes the cable in ${lasts} only protectRun can tell, which knows its section`,
    }
  }
  return warmthTold(follow, follow.after(current, time, follow.limit), time, `in ${lasts} at ${current}`)
}

/** The most that any class of cable bears in an overload. @internal */
export function mostInOverload(limit: Quantity<'temperature'>): Quantity<'temperature'> {
  return quantity('temperature', limit.si + OVERLOAD_RISE, 'K').as('°C')
}

/**
 * Whether a cable bears how warm it gets for a while: to its continuous limit, or for some hours of its life beyond. What
 * something opens on is a rare event, which stands alone; what comes by use counts as often as it comes.
 */
function warmthTold(
  { limit, overloadLimit: stated }: FollowedCable,
  temperature: Quantity<'temperature'> | undefined,
  time: number,
  when: string,
  inLife?: Saying,
): Told {
  if (temperature === undefined) return { fail: `the cable burns ${when}` }
  if (!isAbove(temperature, limit) || (inLife === undefined && time > OVERLOAD_TIME)) {
    return says`the cable reaches ${temperature} ${when}, at most the ${limit} that it bears all day`
  }
  const most = mostInOverload(limit)
  const held =
    stated === undefined
      ? says`the cable reaches ${temperature} ${when}, at most the ${most} that any overload limit allows`
      : says`the cable reaches ${temperature} ${when}, at most the ${stated} of its overload limit`
  if (whyNot(held) !== undefined) return held
  if (inLife !== undefined && whyNot(inLife) !== undefined) return inLife
  if (stated !== undefined) return held
  return {
    unknown: `the cable reaches ${temperature} ${when}, and whether it bears that is not known: give its overloadLimit`,
  }
}

/** Whether the cable and its ends bear a full pull of the controller, which comes on top of what its load has made of it. @internal */
export function fullPullTrials({ controller, cycles, current: load, cable: { ampacity }, follow }: Judging): Check[] {
  // What does not even carry its load is refused by that.
  if (controller === undefined || (follow !== undefined && isAbove(load, ampacity))) return []
  const { batteryCurrent: current, time } = controller
  const told = (says: Told) =>
    trial(
      'cable.fullPull',
      'Cable in a full pull of the controller',
      says,
      'overload of road-vehicle cable, ISO 6722-1 (from memory)',
      'controller',
      'cable',
      'cycles',
    )
  const isCarried = !isAbove(current, ampacity)
  const carried = () => told(says`${current} of a full pull is at most the ${ampacity} that the cable carries all day`)
  if (follow === undefined) {
    const unknown = `how warm ${time} of a full pull of ${current} makes the cable only protectRun can tell, which knows its section`
    return [isCarried ? carried() : told({ unknown })]
  }
  const when = `in ${time} of a full pull of ${current}`
  const pull = follow.pulled(current, time.si)
  const times = timesOf(cycles, time.si)
  const inLife =
    pull &&
    says`the cable spends ${hours(times * pull.above.si)} of its life above the ${follow.limit} that it bears all day, by a full pull of ${current} for ${time} that comes ${timesInWords(times)}, at most the ${hours(OVERLOAD_TIME)} for which an overload limit holds`
  return [
    isCarried ? carried() : told(warmthTold(follow, pull?.peak, time.si, when, inLife)),
    // What is too warm for its ends under its load needs no second reason.
    ...(pull === undefined || isAbove(follow.loaded, follow.terminalLimit)
      ? []
      : [
          trial(
            'cable.fullPullTerminals',
            'Terminals in a full pull of the controller',
            says`the ends of the cable reach ${pull.ends} after ${time} of a full pull of ${current}, at most the ${follow.terminalLimit} for which they are made`,
            'NFPA 70 (NEC), 110.14(C), by analogy',
            'controller',
            'cable.terminalLimit',
          ),
        ]),
  ]
}
