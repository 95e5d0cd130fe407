/**
 * What a fuse must keep to, one trial after the other: what is written on it, its load, the overload of its cable, the
 * faults between the least and the greatest.
 */
import { USUAL_MEMORY, worstMemory } from '../../formula/memory.js'
import { type Points, straightAt } from '../../formula/points.js'
import { whyNot } from '../../procedure/check.js'
import {
  type Check,
  isAbove,
  isBelow,
  isMet,
  type Judged,
  type Saying,
  says,
  type Told,
  trial,
} from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { rmsOf } from '../cable/course.js'
import { conventionalOf, conventionalTime, type FuseClass, isSemiconductor } from './class.js'
import { currentOnCurve, timeOnCurve } from './curve.js'
import { fuseAmbientFactor, fuseRating, greatestFuseRating, meltingTime } from './fuse.js'
import { ADIABATIC, type Endurance, enduranceOf, type Hardest, hardestStretch, timesOf } from './pulses.js'
import type { Fuse, FuseTask } from './task.js'

/** What a fault through a fuse comes to. */
export interface Clearing {
  /** Until the fuse has opened by its curve, or has melted by its melting integral; absent where its data do not tell. */
  readonly time?: Quantity<'time'>
  /** Joule integral that it lets through; absent where its data do not tell. */
  readonly letThrough?: Quantity<'jouleIntegral'>
}

/** How warm a cable gets, which only who knows its section can follow. @internal */
export interface FollowedCable {
  /** After a time at a current; undefined where it burns. */
  readonly after: (
    current: Quantity<'current'>,
    time: number,
    from: Quantity<'temperature'>,
  ) => Quantity<'temperature'> | undefined
  /** In one pull on top of its load, and while it cools again; undefined where it burns. */
  readonly pulled: (
    current: Quantity<'current'>,
    time: number,
  ) =>
    | {
        readonly peak: Quantity<'temperature'>
        readonly ends: Quantity<'temperature'>
        /** How long it is above its limit. */
        readonly above: Quantity<'time'>
      }
    | undefined
  /** Under its load, at the hottest. */
  readonly loaded: Quantity<'temperature'>
  readonly limit: Quantity<'temperature'>
  readonly overloadLimit?: Quantity<'temperature'>
  readonly terminalLimit: Quantity<'temperature'>
}

/** A task as a fuse is judged by it. @internal */
export interface Judging extends FuseTask {
  /** What thin air leaves of any rating. */
  readonly thinAir: Quantity<'ratio'>
  readonly follow?: FollowedCable
  /** The protective conductor of the run: what it withstands, and how much it resists before a fault. */
  readonly protective?: { readonly withstand: Quantity<'jouleIntegral'>; readonly resistance: Quantity<'resistance'> }
}

/** The prospective currents of a task, and the time constant of their loop where its inductance is known. @internal */
export interface Faults {
  readonly loop?: Quantity<'time'>
  readonly highest: Quantity<'current'>
  readonly lowest: Quantity<'current'>
  /** The least through the protective conductor, where there is one. */
  readonly protective?: Quantity<'current'>
}

/** A candidate with what it does in the greatest and in the least fault. @internal */
export interface Candidate {
  readonly fuse: Fuse
  readonly left: Derating | undefined
  readonly clearing: { readonly highest: Clearing; readonly lowest: Clearing }
  /** Whether nothing but the controller keeps the cable from an overload. */
  readonly isHeldByController: boolean
}

/** The most that the rule for overload lets a fuse carry through its conventional time: IEC 60364-4-43, 433.1. */
const OVERLOAD = 1.45
/** For how many seconds the fault limit of an insulation holds: IEC 60364-4-43, 434.5.2. */
const FAULT_TIME = 5
/** How far above its continuous limit a cable of road vehicles is tested, and for how many seconds: ISO 6722-1, from memory. */
const [OVERLOAD_RISE, OVERLOAD_TIME] = [50, 6 * 3600]
/** No direct-current breaking test has a shorter time constant. 30 CFR 28.41 has 2 ms, gPV 1 ms from memory. */
const SHORTEST_TEST = /*@__PURE__*/ (() => quantity('time', '1 ms'))()

const BASIS = 'IEC 60364-4-43, 433.1 (from memory)'
const ADIABATIC_BASIS = 'IEC 60364-4-43, 434.5.2'

/** Judges one fuse. @internal */
export function judge(fuse: Fuse, faults: Faults, task: Judging): Judged<Candidate> {
  const { highest, lowest } = faults
  const [atHighest, atLowest] = [clearingAt(fuse, highest), clearingAt(fuse, lowest)]
  const overload = overloadOf(fuse, faults, task)
  const left = deratingOf(task, fuse.class, fuse.derating)
  return {
    name: fuse.name ?? `fuse of ${fuse.rating}`,
    checks: [
      voltageTrial(fuse, task),
      loadTrial(fuse, task, left),
      overload.check,
      breakingTrial(fuse, faults),
      ...timeConstantTrials(fuse, faults),
      ...pulseTrials(fuse, task, left),
      greatestFaultTrial(atHighest, faults, task),
      ...leastFaultTrials(fuse, atLowest, faults, task, overload),
      ...bandTrials(fuse, faults, task, overload),
      ...protectiveTrials(fuse, faults, task),
    ],
    own: task.cable.inductance === undefined ? [noInductance] : [],
    made: {
      fuse,
      left,
      clearing: { highest: atHighest === 'never' ? {} : atHighest, lowest: atLowest === 'never' ? {} : atLowest },
      isHeldByController: overload.by === 'controller',
    },
  }
}

function voltageTrial({ voltage: { dc, ac } }: Fuse, { pack: { maximumVoltage } }: FuseTask): Check {
  const noDc = `the fuse has no voltage rating for direct current${ac === undefined ? '' : `, and ${ac} AC says nothing of it`}`
  return trial(
    'fuse.voltage',
    'DC voltage of the fuse',
    dc === undefined
      ? { fail: noDc }
      : says`the fuse is rated ${dc} DC, at least the ${maximumVoltage} of the full pack`,
    'voltage of the full pack',
    'candidates',
  )
}

function breakingTrial({ breakingCapacity }: Fuse, { highest }: Faults): Check {
  return trial(
    'fuse.breakingCapacity',
    'Breaking capacity',
    says`the fuse breaks ${breakingCapacity}, at least the ${highest} that the full pack feeds in the first milliseconds`,
    'fault at the full, warm pack',
    'candidates',
  )
}

/** What the air around and its thinness leave of a rating, and on what ground; undefined where that is not known. @internal */
export interface Derating {
  readonly share: number
  readonly because: string
}

/** Up to what temperature a class needs no factor, and up to what its factor is known, in kelvins. */
const [NO_FACTOR, KNOWN] = [313.15, 358.15]

/** @internal */
export function deratingOf(
  { ambient, ambientFactor, thinAir }: Pick<Judging, 'ambient' | 'ambientFactor' | 'thinAir'>,
  of: FuseClass | undefined,
  derating?: Fuse['derating'],
): Derating | undefined {
  const high = thinAir.si
  if (ambientFactor !== undefined) return { share: high * ambientFactor.si, because: 'ambientFactor, as given' }
  if (derating !== undefined) {
    const share = shareBetween(derating, ambient.si)
    return share === undefined ? undefined : { share: high * share, because: 'its own curve' }
  }
  if (of === 'gG' && ambient.si <= NO_FACTOR) {
    return { share: high, because: 'class gG needs no factor up to 40 °C, IEC 60269-1, 3.1' }
  }
  if (ambient.si > KNOWN) return undefined
  return {
    share: high * fuseAmbientFactor({ ambient }).si,
    because: 'rated at 25 °C with a limit of 130 °C, guides of makers of semiconductor fuses',
  }
}

/** Straight between points; colder than the first as at it, warmer than the last not known. */
function shareBetween(points: NonNullable<Fuse['derating']>, at: number): number | undefined {
  const shares = points.map(([temperature, share]) => [temperature.si, share.si] as const)
  const [[coldest], [warmest]] = [shares[0], shares.at(-1)] as [Points[number], Points[number]]
  return at > warmest ? undefined : straightAt(shares, Math.max(at, coldest))
}

/** The current that a load asks of a fuse all day: the most that the fuse remembers of it. @internal */
export function rememberedCurrent({ current, profile }: FuseTask, timeConstant = USUAL_MEMORY): Quantity<'current'> {
  if (profile === undefined) return current
  const worst = worstMemory(
    profile.map(([each, time]) => [each.si ** 2, time.si]),
    timeConstant,
  )
  const remembered = Math.sqrt(worst)
  return remembered > current.si ? quantity('current', remembered, 'A') : current
}

function loadTrial({ rating, thermalTimeConstant }: Fuse, task: Judging, left: Derating | undefined): Check {
  const told = (says: Told) =>
    trial('fuse.load', 'Rating for the load', says, 'NFPA 70 (NEC), 210.20(A)', 'candidates', 'current', 'profile')
  if (left === undefined) {
    return told({
      unknown: `what the fuse carries in air of ${task.ambient} is not known: give its derating up to there`,
    })
  }
  const current = rememberedCurrent(task, thermalTimeConstant?.si)
  const needed = fuseRating({ current, ambientFactor: left.share })
  return told(says`the fuse is rated ${rating}, at least the ${needed} that the load needs`)
}

/** What opens on an overload of the cable, and from what current on the fuse alone does. */
interface Overload {
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

function overloadOf(fuse: Fuse, faults: Faults, task: Judging): Overload {
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
  const hours = quantity('time', conventionalTime(rating.si), 's').as('h')
  return {
    by: 'nothing',
    check: told({
      unknown: `at what current the fuse opens within ${hours} is not known: give its class, or its curve up to there`,
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

const NO_LEAST = 'from what current on the fuse breaks is not known: give its leastBreakingCurrent'

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

/** The currents, rising, at which what a fuse lets through is greatest or least: its points, and where limits change. */
function pointsOf({ curve = [], meltingIntegral }: Fuse, from: Quantity<'current'>, to: Quantity<'current'>) {
  const turns = [
    ...curve.map(([current]) => current.si),
    curve.length === 0 ? undefined : currentOnCurve(curve, FAULT_TIME),
    curve.length > 0 || meltingIntegral === undefined ? undefined : Math.sqrt(meltingIntegral.si / ADIABATIC),
  ]
  const between = turns.filter((each): each is number => each !== undefined && each > from.si && each < to.si)
  const rising = [...new Set(between)].sort((one, other) => one - other)
  return [from, ...rising.map((each) => quantity('current', each, 'A')), ...(isBelow(from, to) ? [to] : [])]
}

/** Whether the cable bears a current until it is broken: by its joule integral for 5 s, beyond by how warm it gets. */
function savedBy(
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
  const most = quantity('temperature', limit.si + OVERLOAD_RISE, 'K').as('°C')
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

/** What a fuse does at a current; `never` where its curve does not reach so low. */
function clearingAt(fuse: Fuse, current: Quantity<'current'>): Clearing | 'never' {
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

function hours(value: number): Quantity<'time'> {
  return quantity('time', value, 's').as('h')
}

function seconds(value: number): Quantity<'time'> {
  return value < 0.1 ? quantity('time', value, 's').as('ms') : quantity('time', value, 's')
}

/** A loop whose inductance nobody gave. */
const noInductance = /*@__PURE__*/ (() =>
  trial(
    'fuse.timeConstant',
    'Time constant of the fault loop',
    { unknown: 'the time constant of the fault loop is not known: give cable.inductance' },
    'time constant of its DC breaking test',
    'cable.inductance',
  ))()

function timeConstantTrials({ timeConstant }: Fuse, { loop }: Faults): Check[] {
  if (loop === undefined) return []
  const told = (says: Told) => [
    trial(
      'fuse.timeConstant',
      'Time constant of the fault loop',
      says,
      'time constant of its DC breaking test',
      'candidates',
      'pack.inductance',
      'cable.inductance',
    ),
  ]
  if (timeConstant !== undefined) {
    return told(
      says`the fault loop has a time constant of ${loop}, at most the ${timeConstant} at which the fuse breaks`,
    )
  }
  if (!isAbove(loop, SHORTEST_TEST)) {
    return told({
      pass: `the fault loop has a time constant of ${loop}: no DC breaking test has less than ${SHORTEST_TEST}`,
    })
  }
  return told({
    unknown: `whether the fuse breaks a fault loop with a time constant of ${loop} is not known: give the timeConstant of its breaking capacity`,
  })
}

/** What the peaks of the load, and a full pull of the controller, do to a fuse. */
function pulseTrials(fuse: Fuse, task: Judging, left: Derating | undefined): Check[] {
  const { profile, controller, cycles } = task
  // Where not even what it carries all day is known, that is told already.
  if (left === undefined) return []
  const rating = fuse.rating.si * Math.min(1, left.share)
  const endurance = enduranceOf(fuse, cycles, isSemiconductor(fuse.class))
  const course = profile?.map(([current, time]) => [current.si, time.si] as const)
  return [
    // What is too small for the mean of its load is refused by that, and every stretch of a long log would be above it.
    ...(course === undefined || profile === undefined || rmsOf(profile).si >= rating
      ? []
      : pulsesTold(
          'fuse.pulses',
          'Pulses of the load',
          'the load',
          hardestStretch(course, rating, endurance),
          endurance,
        )),
    ...(controller === undefined
      ? []
      : pulsesTold(
          'fuse.fullPull',
          'Full pull of the controller',
          'a full pull',
          hardestStretch(
            [
              [controller.batteryCurrent.si, controller.time.si],
              [0, REST],
            ],
            rating,
            endurance,
          ),
          endurance,
        )),
  ]
}

function timesInWords(often: number): string {
  return often < 2 ? 'once' : `${Math.floor(often)} times`
}

/** Long enough that a full pull is alone, in seconds. */
const REST = 1e6

function pulsesTold(id: string, name: string, what: string, { worst, untold }: Hardest, endurance: Endurance): Check[] {
  const told = (says: Told) => [
    trial(id, name, says, 'guides of fuse makers', 'candidates', 'profile', 'controller', 'cycles'),
  ]
  const [amperes, times] = [
    (each: number) => quantity('current', each, 'A'),
    (time: number) => timesInWords(endurance.times(time)),
  ]
  if (worst !== undefined && (untold === undefined || worst.current > worst.borne)) {
    const [asked, borne] = [amperes(worst.current), amperes(worst.borne)]
    return told(
      says`${asked} for ${seconds(worst.time)} of ${what}, ${times(worst.time)}, is at most the ${borne} that the fuse bears so often`,
    )
  }
  if (untold === undefined) return []
  return told({
    unknown: `whether the fuse bears ${amperes(untold.current)} for ${seconds(untold.time)} of ${what}, ${times(untold.time)}, is not known: give its curve up to that time`,
  })
}

function greatestFaultTrial(
  clearing: Clearing | 'never',
  { highest }: Faults,
  { cable: { withstand } }: Judging,
): Check {
  const told = (says: Told) => trial('fuse.letThrough', 'Let-through of the fuse', says, ADIABATIC_BASIS, 'candidates')
  if (clearing === 'never')
    return told({ fail: `the fuse does not open at ${highest}, the greatest fault, by its curve` })
  if (clearing.letThrough === undefined) {
    return told({ unknown: 'what the fuse lets through is not known: give its clearingIntegral or its curve' })
  }
  return told(
    says`the fuse lets through ${clearing.letThrough} in the greatest fault, at most the ${withstand} that the cable withstands`,
  )
}

/** What a fuse does in the least fault. */
function leastFaultTrials(
  fuse: Fuse,
  clearing: Clearing | 'never',
  { lowest }: Faults,
  task: Judging,
  overload: Overload,
): Check[] {
  const opens = (told: Told) =>
    trial('fuse.opens', 'Opening in the least fault', told, 'time–current curve of the fuse', 'candidates')
  const breaks = leastBreakingTrials(fuse, lowest, overload)
  if (clearing === 'never') {
    return [
      ...breaks,
      opens({ fail: `the fuse may not open at ${lowest}, all that the nearly empty, cold, aged pack feeds` }),
    ]
  }
  if (clearing.time === undefined) {
    const factor = fusingFactorOf(fuse, task.fusingFactor)
    const isTooLow = factor !== undefined && isBelow(lowest, fuse.rating.times(factor))
    return [
      ...breaks,
      opens(
        isTooLow
          ? { fail: `the fuse may not open at ${lowest}, all that the nearly empty, cold, aged pack feeds` }
          : { unknown: `how long the fuse takes at ${lowest}, the least fault, is not known: give its curve` },
      ),
    ]
  }
  return [...breaks, opens({ pass: `the fuse opens at ${lowest}, the least fault, in ${clearing.time}` })]
}

/** Whether a fuse breaks the least fault at all: below, a partial range melts and burns on. */
function leastBreakingTrials(fuse: Fuse, lowest: Quantity<'current'>, overload: Overload): Check[] {
  const told = (says: Told) => [
    trial(
      'fuse.leastBreaking',
      'Least current that it breaks',
      says,
      'least breaking current of the fuse',
      'candidates',
    ),
  ]
  if (fuse.leastBreakingCurrent !== undefined) {
    return told(says`the fuse breaks from ${fuse.leastBreakingCurrent} on, at most the ${lowest} of the least fault`)
  }
  // A fuse that nothing relieves of overload is refused by that, or asked for the same datum.
  return isPartial(fuse) && overload.by !== 'nothing' ? told({ unknown: NO_LEAST }) : []
}

/**
 * What a fuse lets through at every current between the least fault and the greatest. Where it opens on every overload in
 * time by its rating, the rule follows the cable no further than the 5 s of a fault.
 */
function bandTrials(fuse: Fuse, { lowest, highest }: Faults, task: Judging, overload: Overload): Check[] {
  const from = overload.from !== undefined && isBelow(lowest, overload.from) ? overload.from : lowest
  const [least, ...others] = pointsOf(fuse, from, highest)
    .slice(0, -1)
    .map((current, i) => {
      const clearing = clearingAt(fuse, current)
      // That it does not open in the least fault, or that its time is not known, is told already.
      if (clearing === 'never' || clearing.time === undefined) return undefined
      if (overload.by === 'fuse' && clearing.time.si > FAULT_TIME) return undefined
      const [id, name] =
        i === 0
          ? (['fuse.leastLetThrough', 'Cable in the least fault'] as const)
          : (['fuse.letThroughBetween', 'Cable between the faults'] as const)
      return trial(id, name, savedBy(task, current, clearing.time.si, clearing), ADIABATIC_BASIS, 'candidates')
    })
  return [least, worstOf(others)].filter((each) => each !== undefined)
}

/** What a fuse lets through at every fault that a protective conductor may take. */
function protectiveTrials(fuse: Fuse, { highest, protective: lowest }: Faults, { protective }: Judging): Check[] {
  if (protective === undefined || lowest === undefined) return []
  const { withstand } = protective
  const { leastBreakingCurrent: least } = fuse
  const told = (says: Told) =>
    trial(
      'fuse.protectiveConductor',
      'Protective conductor in a fault',
      says,
      'IEC 60364-5-54, 543.1.2',
      'candidates',
      'cable.protectiveConductor',
    )
  const through = 'through the protective conductor'
  const all = pointsOf(fuse, lowest, highest).map((current): Told => {
    const clearing = clearingAt(fuse, current)
    if (clearing === 'never') return { fail: `the fuse may not open at ${current} ${through}` }
    const { time, letThrough } = clearing
    if (letThrough === undefined) {
      return { unknown: `what the fuse lets through at ${current} ${through} is not known: give its curve` }
    }
    if (time !== undefined && time.si > FAULT_TIME) {
      return {
        unknown: `the fuse takes ${time} at ${current} ${through}, and whether that bears more than 5 s is not known`,
      }
    }
    return says`the fuse lets through ${letThrough} at ${current}, at most the ${withstand} that the protective conductor withstands`
  })
  if (least !== undefined)
    all.push(
      says`the fuse breaks from ${least} on, at most the ${lowest} of the least fault through the protective conductor`,
    )
  return [worstOf(all.map(told))].filter((each) => each !== undefined)
}

/** The check that holds least. */
function worstOf(checks: readonly (Check | undefined)[]): Check | undefined {
  const rank = ({ verdict, margin = 1 }: Check) =>
    verdict === 'unknown' ? 0 : verdict === 'fail' ? margin - 1 : margin
  return checks.reduce(
    (worst, each) => (worst === undefined || (each !== undefined && rank(each) < rank(worst)) ? each : worst),
    undefined,
  )
}
