/**
 * What a fuse must keep to, one trial after the other: what is written on it, its load, the overload of its cable, the
 * faults between the least and the greatest.
 */
import { worded } from '../../procedure/check.js'
import { type Check, isAbove, isBelow, type Judged, says, type Told, trial } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type Clearing, clearingAt, FAULT_TIME, pointsOf } from './clearing.js'
import { type Derating, deratingOf, loadTold, type Peaks, pulseTrials } from './load.js'
import { fusingFactorOf, isPartial, NO_LEAST, type Overload, overloadOf } from './overload.js'
import type { Faults, Fuse, Judging } from './task.js'
import { savedBy } from './warmth.js'

/** A candidate with what it does in the greatest and in the least fault. @internal */
export interface Candidate {
  readonly fuse: Fuse
  readonly left: Derating | undefined
  readonly clearing: { readonly highest: Clearing; readonly lowest: Clearing }
  /** Whether nothing but the controller keeps the cable from an overload. */
  readonly isHeldByController: boolean
}

/** No direct-current breaking test has a shorter time constant. 30 CFR 28.41 has 2 ms, gPV 1 ms from memory. */
const SHORTEST_TEST = /*@__PURE__*/ (() => quantity('time', '1 ms'))()

/** What the time constant of a fault loop is held to. @internal */
export const TEST_BASIS = 'time constant of its DC breaking test'
/** @internal */
export const ADIABATIC_BASIS = 'IEC 60364-4-43, 434.5.2'

const PEAKS: Peaks = {
  what: 'the fuse',
  pulses: ['fuse.pulses', 'Pulses of the load', 'the load'],
  fullPull: ['fuse.fullPull', 'Full pull of the controller', 'a full pull'],
  path: 'candidates',
}

/** Judges one fuse. @internal */
export function judge(fuse: Fuse, faults: Faults, task: Judging): Judged<Candidate> {
  const { highest, lowest } = faults
  const [atHighest, atLowest] = [clearingAt(fuse, highest), clearingAt(fuse, lowest)]
  const overload = overloadOf(fuse, faults, task)
  const left = deratingOf(task, fuse.class, fuse.derating)
  return {
    name: fuse.name ?? `fuse of ${fuse.rating}`,
    checks: [
      trial(
        'fuse.voltage',
        'DC voltage of the fuse',
        voltageTold('the fuse', fuse, task.pack.maximumVoltage),
        'voltage of the full pack',
        'candidates',
      ),
      trial(
        'fuse.load',
        'Rating for the load',
        loadTold('the fuse', 'the load', fuse, task, left),
        'NFPA 70 (NEC), 210.20(A)',
        'candidates',
        'current',
        'profile',
      ),
      overload.check,
      breakingTrial(fuse, faults),
      ...timeConstantTrials(fuse, faults),
      ...pulseTrials(fuse, task, left, PEAKS),
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

/** Whether a fuse breaks an arc of direct current at a voltage. @internal */
export function voltageTold(what: string, { voltage: { dc, ac } }: Fuse, voltage: Quantity<'voltage'>): Told {
  const noDc = `${what} has no voltage rating for direct current${ac === undefined ? '' : `, and ${ac} AC says nothing of it`}`
  if (dc === undefined) return { fail: noDc }
  return worded(what, says` is rated ${dc} DC, at least the ${voltage}`, ' of the full pack')
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

/** A loop whose inductance nobody gave. */
const noInductance = /*@__PURE__*/ (() =>
  trial(
    'fuse.timeConstant',
    'Time constant of the fault loop',
    { unknown: 'the time constant of the fault loop is not known: give cable.inductance' },
    TEST_BASIS,
    'cable.inductance',
  ))()

function timeConstantTrials(fuse: Fuse, { loop }: Faults): Check[] {
  if (loop === undefined) return []
  return [
    trial(
      'fuse.timeConstant',
      'Time constant of the fault loop',
      timeConstantTold('the fuse', fuse, loop),
      TEST_BASIS,
      'candidates',
      'pack.inductance',
      'cable.inductance',
    ),
  ]
}

/** Whether a fuse breaks a fault whose current rises so slowly. @internal */
export function timeConstantTold(what: string, { timeConstant }: Fuse, loop: Quantity<'time'>): Told {
  if (timeConstant !== undefined) {
    const held = says`the fault loop has a time constant of ${loop}, at most the ${timeConstant}`
    return worded('', held, ` at which ${what} breaks`)
  }
  return isAbove(loop, SHORTEST_TEST)
    ? {
        unknown: `whether ${what} breaks a fault loop with a time constant of ${loop} is not known: give the timeConstant of its breaking capacity`,
      }
    : { pass: `the fault loop has a time constant of ${loop}: no DC breaking test has less than ${SHORTEST_TEST}` }
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
  const words = { what: 'the fuse', where: 'through the protective conductor', bears: 'the protective conductor' }
  const all = withstoodTold(words, fuse, [lowest, highest], protective.withstand)
  if (least !== undefined)
    all.push(
      says`the fuse breaks from ${least} on, at most the ${lowest} of the least fault through the protective conductor`,
    )
  return [worstOf(all.map(told))].filter((each) => each !== undefined)
}

/**
 * Whether a conductor withstands what a fuse lets through, at each fault where that is most.
 *
 * @param words - Which fuse, where the fault flows, and what bears it.
 * @internal
 */
export function withstoodTold(
  { what, where, bears }: { readonly what: string; readonly where: string; readonly bears: string },
  fuse: Fuse,
  [lowest, highest]: readonly [Quantity<'current'>, Quantity<'current'>],
  withstand: Quantity<'jouleIntegral'>,
): Told[] {
  return pointsOf(fuse, lowest, highest).map((current): Told => {
    const clearing = clearingAt(fuse, current)
    if (clearing === 'never') return { fail: `${what} may not open at ${current} ${where}` }
    const { time, letThrough } = clearing
    if (letThrough === undefined) {
      return { unknown: `what ${what} lets through at ${current} ${where} is not known: give its curve` }
    }
    if (time !== undefined && time.si > FAULT_TIME) {
      return {
        unknown: `${what} takes ${time} at ${current} ${where}, and whether that bears more than 5 s is not known`,
      }
    }
    const held = says` lets through ${letThrough} at ${current}, at most the ${withstand}`
    return worded(what, held, ` that ${bears} withstands`)
  })
}

/** The check that holds least. @internal */
export function worstOf(checks: readonly (Check | undefined)[]): Check | undefined {
  const rank = ({ verdict, margin = 1 }: Check) =>
    verdict === 'unknown' ? 0 : verdict === 'fail' ? margin - 1 : margin
  return checks.reduce(
    (worst, each) => (worst === undefined || (each !== undefined && rank(each) < rank(worst)) ? each : worst),
    undefined,
  )
}
