/**
 * A contactor that agrees with its load, the precharge before it and the fuse beside it.
 *
 * Rests on IEC 60947-4-1 (utilisation categories) and on the coordination of a switch with a fuse: up to what it breaks it may
 * open, above that it stays closed until the fuse has opened.
 */
import { cite, definition } from '../../formula/index.js'
import { USUAL_MEMORY } from '../../formula/memory.js'
import { highVoltage, weldedContactor } from '../../procedure/cautions.js'
import { worded } from '../../procedure/check.js'
import {
  type Assumption,
  assumed,
  type Check,
  type Findings,
  firstThatServes,
  isAbove,
  isBelow,
  type Judged,
  procedure,
  rejectedAs,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { servingTold } from '../../procedure/trial.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { clearingAt, FAULT_TIME, pointsOf, seconds } from '../fuse/clearing.js'
import { rememberedCurrent } from '../fuse/load.js'
import { type Endurance, hardestStretch } from '../fuse/pulses.js'
import type { Fuse } from '../fuse/task.js'
import { worstOf } from '../fuse/trials.js'
import { contactorCategories, inrushAtClosing } from './contactor.js'
import { type Contactor, type ContactorTask, contactorFields, refuseContactorTask } from './given.js'

/** A contactor, or what to look for in one. */
export interface ContactorSelection extends Findings {
  /** Continuous current that it must carry: what its contacts remember of the load. */
  readonly carryAtLeast: Quantity<'current'>
  /** What flows as it closes on what the precharge leaves; absent where that is not given. */
  readonly inrush?: Quantity<'current'>
  /** Greatest current of the load that it must break. */
  readonly breaksAtLeast: Quantity<'current'>
  /** The candidate of the least continuous current that serves. */
  readonly chosen?: { readonly name: string; readonly carry: Quantity<'current'> }
  readonly rejected: readonly { readonly candidate: string; readonly reasons: readonly string[] }[]
}

/**
 * Chooses a main contactor that carries the load, closes on what the precharge leaves, breaks the load in both directions as
 * often as asked, and works with the fuse.
 *
 * What a contactor cannot break it must not try to: its control waits until the fuse has opened, and meanwhile it stands
 * what the fuse lets through. Of several that serve, the one of the least continuous current is chosen.
 *
 * Answers: which contactor carries the load, closes on what the precharge leaves, and leaves to the fuse what it
 * cannot break?
 *
 * - `voltage`: voltage of the full pack, in V, above 0 V and at most 1500 V
 * - `current`: continuous current of the load, in A, above 0 A
 * - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts, optional
 * - `controller`: the controller that the run feeds, optional
 *   - `batteryCurrent`: greatest current that it draws from the battery, in A, above 0 A
 *   - `time`: how long it draws that current at most, in s, above 0 s, 60 s by default (a minute of full pull, common
 *     practice, no source)
 * - `backwards`: greatest current back into the pack; 0 A where none flows, in A, at least 0 A
 * - `openings`: how often it opens under full load in its life, a whole number, at least 1 and at most 1000000, 50 by
 *   default (emergencies and faults of the control: else the current is zero first, common practice, no source)
 * - `ambient`: temperature of the air around it, in °C, above -90 °C and below 200 °C, 40 °C by default (a hot day,
 *   common practice, no source)
 * - `precharge`: what the precharge leaves, optional
 *   - `residualVoltage`: voltage left across the contactor, in V, at least 0 V
 *   - `loopResistance`: resistance of pack and loop within 10 ms, in mΩ, above 0 mΩ
 * - `fault`: faults that the pack feeds, optional
 *   - `highest`: greatest current of a fault, in A, above 0 A
 *   - `lowest`: least current of a fault, in A, above 0 A
 *   - `fuse`: a fuse, optional
 *     - `name`: what it is called, text, optional
 *     - `class`: its class, as its standard names it, 'gG' or 'gR' or 'gS' or 'gPV' or 'aR' or 'aM' or 'automotive' or
 *       'UL 248', optional
 *     - `rating`: rated current, in A, above 0 A
 *     - `voltage`: its rated voltages
 *       - `dc`: rated voltage for direct current, in V, above 0 V, optional
 *       - `ac`: rated voltage for alternating current, in V, above 0 V, optional
 *     - `breakingCapacity`: greatest direct current that it breaks, in A, above 0 A
 *     - `timeConstant`: time constant of the circuit in which it breaks that current, in s, above 0 s, optional
 *     - `leastBreakingCurrent`: least direct current that it breaks, in A, above 0 A, optional
 *     - `meltingIntegral`: melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0
 *       A²·s, optional
 *     - `clearingIntegral`: greatest joule integral until it has cleared, in A²·s, above 0 A²·s, optional
 *     - `curve`: its time–current curve, the currents rising, pairs of current and time until it opens, optional
 *     - `derating`: share of its rating by the temperature around it, the temperatures rising, pairs of temperature
 *       around the fuse and share of its rating, optional
 *     - `thermalTimeConstant`: time constant with which it warms, in s, above 0 s, optional
 *   - `cutOff`: greatest peak that the fuse lets through, in A, above 0 A, optional
 * - `trip`: when its control opens it on an overcurrent, optional
 *   - `current`: from what current, in A, above 0 A
 *   - `time`: after how long, in s, at least 0 s
 * - `candidates`: contactors to choose from, a list of at least 1
 *   - `name`: what it is called, text, optional
 *   - `carry`: current that it carries all day, in A, above 0 A
 *   - `ambient`: greatest temperature of the air around it at which it carries that, in °C, optional
 *   - `thermalTimeConstant`: time constant with which it warms, in s, above 0 s, optional
 *   - `category`: its utilisation category, IEC 60947-4-1, 'DC-1' or 'DC-3' or 'DC-5', optional
 *   - `operational`: what that category holds for, optional
 *     - `voltage`: rated operational voltage, in V, above 0 V
 *     - `current`: rated operational current, in A, above 0 A
 *   - `make`: greatest current that it makes, in A, above 0 A, optional
 *   - `breaks`: what it breaks, a list of at least 1, optional
 *     - `voltage`: up to what direct voltage, in V, above 0 V
 *     - `current`: greatest current, in A, above 0 A
 *     - `times`: how often in its life, a whole number, at least 1
 *   - `polarised`: whether it breaks currents of one direction only, true or false, optional
 *   - `breaksBackwards`: what a polarised one breaks of currents the other way, a list of at least 1, optional
 *     - `voltage`: up to what direct voltage, in V, above 0 V
 *     - `current`: greatest current, in A, above 0 A
 *     - `times`: how often in its life, a whole number, at least 1
 *   - `shortTime`: what it carries for a short time, the currents rising, pairs of current and for how long, optional
 *   - `peak`: greatest peak of a fault that it withstands closed, in A, above 0 A, optional
 * - always assumed: the load is hardly inductive: the capacitor of the controller takes up what the cables have
 *   stored
 * - always assumed: the coil has the voltage that holds it, and its supply does not fail in a fault
 *
 * @returns What it must carry, make and break, the one that is chosen, and those of a lesser current with all reasons.
 * @throws InputError for input that cannot be used, by its path.
 * Source: IEC 60947-4-1, utilisation categories (read in a manual); by definition.
 *
 * @example
 * ```ts
 * const { chosen, inrush, rejected } = selectContactor({
 *   voltage: '201.6 V',
 *   current: '120 A',
 *   backwards: '80 A',
 *   precharge: { residualVoltage: '10 V', loopResistance: '20 mΩ' },
 *   fault: { highest: '9 kA', lowest: '900 A' },
 *   candidates: [
 *     { name: 'small one', carry: '100 A', make: '600 A' },
 *     { name: 'large one', carry: '200 A', make: '600 A', peak: '4 kA' },
 *   ],
 * })
 * chosen // undefined
 * String(inrush) // '500 A'
 * rejected[0]?.reasons // ['the contactor carries 100 A all day, less than the 120 A of the load']
 * rejected[1]?.reasons[0]
 * // 'what the contactor breaks at 201.6 V 50 times is not known: give its breaks, up to that voltage and so often'
 * ```
 */
export const selectContactor = /*@__PURE__*/ procedure({
  name: 'selectContactor',
  title: 'A contactor for a load, a precharge and a fuse',
  answers:
    'Which contactor carries the load, closes on what the precharge leaves, and leaves to the fuse what it cannot break?',
  input: contactorFields,
  source: [cite('IEC 60947-4-1', 'utilisation categories (read in a manual)'), definition],
  assumes: [
    'The load is hardly inductive: the capacitor of the controller takes up what the cables have stored.',
    'The coil has the voltage that holds it, and its supply does not fail in a fault.',
  ],
  work: (task): Unfinished<ContactorSelection> => {
    refuseContactorTask('selectContactor', task)
    const { precharge, current, profile = [], controller } = task
    const inrush = precharge && inrushAtClosing(precharge)
    const forwards = [current, ...profile.map(([each]) => each), ...(controller ? [controller.batteryCurrent] : [])]
    const greatest = {
      forwards: greatestOf(forwards),
      backwards: greatestOf([task.backwards, ...profile.map(([each]) => each.times(-1))]),
    }
    const candidates = [...task.candidates].sort((one, other) => one.carry.si - other.carry.si)
    const { chosen, rejected } = firstThatServes(candidates, (each) => judge(each, task, inrush, greatest))
    return {
      carryAtLeast: rememberedCurrent(task),
      ...(inrush === undefined ? {} : { inrush }),
      breaksAtLeast: greatestOf([greatest.forwards, greatest.backwards]),
      ...(chosen === undefined ? {} : { chosen: { name: chosen.name, carry: chosen.made.carry } }),
      rejected: rejected.map(rejectedAs).map(({ name, reasons }) => ({ candidate: name, reasons })),
      checks: [
        ...(chosen?.checks ?? []),
        trial(
          'contactor.candidates',
          'Candidates that serve',
          servingTold(chosen, rejected),
          'candidates, as given',
          'candidates',
        ),
      ],
      assumptions: [
        ...candidates.flatMap((each, i) => ambientTold(each, i, task.ambient)),
        ...(profile.length === 0 ? [] : candidates.flatMap(memoryTold)),
      ],
      cautions: [highVoltage, weldedContactor],
    }
  },
})

/** That nobody said how warm the air may be. */
function ambientTold(contactor: Contactor, i: number, ambient: Quantity<'temperature'>): Assumption[] {
  if (contactor.ambient !== undefined) return []
  const text = `The ${nameOf(contactor)} carries its current all day in air of ${ambient} (its own ambient by default).`
  return [assumed(`contactor.ambient.${i + 1}`, text)]
}

/** That nobody said how quickly the contacts warm. */
function memoryTold(contactor: Contactor, i: number): Assumption[] {
  if (contactor.thermalTimeConstant !== undefined) return []
  const text = `The ${nameOf(contactor)} remembers its load for ${quantity('time', USUAL_MEMORY, 's')} (thermalTimeConstant by default; common practice, no source).`
  return [assumed(`contactor.memory.${i + 1}`, text)]
}

const nameOf = ({ name, carry }: Contactor) => name ?? `contactor of ${carry}`

function greatestOf(currents: readonly Quantity<'current'>[]): Quantity<'current'> {
  return currents.reduce((one, other) => (other.si > one.si ? other : one))
}

interface Greatest {
  readonly forwards: Quantity<'current'>
  readonly backwards: Quantity<'current'>
}

function judge(
  contactor: Contactor,
  task: ContactorTask,
  inrush: Quantity<'current'> | undefined,
  greatest: Greatest,
): Judged<Contactor> {
  const name = nameOf(contactor)
  return {
    name,
    made: contactor,
    checks: [
      carryTrial(contactor, task),
      ...peakTrials(contactor, task),
      makeTrial(contactor, inrush),
      breakTrial(contactor, task, greatest.forwards),
      ...(greatest.backwards.si === 0 ? [] : [backwardsTrial(contactor, task, greatest.backwards)]),
      tripTrial(contactor, task),
      letThroughTrial(contactor, task),
      faultPeakTrial(contactor, task),
    ],
  }
}

function carryTrial({ carry, ambient, thermalTimeConstant }: Contactor, task: ContactorTask): Check {
  const told = (says: Told) =>
    trial(
      'contactor.carry',
      'Current all day',
      says,
      'continuous current of the contactor',
      'candidates',
      'current',
      'profile',
    )
  if (ambient !== undefined && isAbove(task.ambient, ambient)) {
    return told({
      unknown: `what the contactor carries in air of ${task.ambient} is not known: its current is stated up to ${ambient}`,
    })
  }
  const needed = rememberedCurrent(task, thermalTimeConstant?.si)
  return told(says`the contactor carries ${carry} all day, at least the ${needed} of the load`)
}

/** Long enough that a full pull is alone, in seconds. */
const REST = 1e6

/** What the peaks of the load, and a full pull of the controller, ask of the contacts. */
function peakTrials(contactor: Contactor, { profile, controller }: ContactorTask): Check[] {
  const told = (id: string, name: string, of: string, course: Parameters<typeof hardestStretch>[0]) => {
    const { worst } = hardestStretch(course, contactor.carry.si, enduranceOf(contactor))
    if (worst === undefined) return []
    const told = stretchTold(contactor, of, worst)
    return [trial(id, name, told, 'short-time current of the contactor', 'candidates', 'profile', 'controller')]
  }
  return [
    ...(profile === undefined
      ? []
      : told(
          'contactor.pulses',
          'Peaks of the load',
          'the load',
          profile.map(([current, time]) => [current.si, time.si]),
        )),
    ...(controller === undefined
      ? []
      : told('contactor.fullPull', 'Full pull of the controller', 'a full pull', [
          [controller.batteryCurrent.si, controller.time.si],
          [0, REST],
        ])),
  ]
}

function stretchTold({ carry, shortTime = [] }: Contactor, of: string, { current, time, borne }: Worst): Told {
  const asked = quantity('current', current, 'A')
  const longest = Math.max(0, ...shortTime.map(([, each]) => each.si))
  if (time > longest && isAbove(asked, carry)) {
    const unknown = `whether the contactor carries ${asked} for ${seconds(time)} of ${of} is not known: give its shortTime up to that time`
    return { unknown }
  }
  const held = says`${asked} for ${seconds(time)} of ${of} is at most the ${quantity('current', borne, 'A')}`
  return worded('', held, ' that the contactor carries so long')
}

type Worst = NonNullable<ReturnType<typeof hardestStretch>['worst']>

/** What a contactor carries for a short time: what is stated for as long or longer, by its heat, up to the greatest stated. */
function enduranceOf({ carry, shortTime = [], peak }: Contactor): Endurance {
  const most = peak?.si ?? shortTime.at(-1)?.[0].si ?? 0
  return {
    times: () => 1,
    current: (time) => {
      const integral = integralFor(shortTime, time)
      return integral === undefined ? carry.si : Math.max(carry.si, Math.min(most, Math.sqrt(integral / time)))
    },
    // Just beyond a time that is stated, the next longer one counts. The longest, at the lowest current, has none.
    bends: shortTime.flatMap(([, time], i) => (i === 0 ? [time.si] : [time.si, time.si * (1 + 1e-9)])),
  }
}

/**
 * Up to this time no heat leaves the contacts, and a joule integral counts; beyond, they carry no more than is stated for as
 * long. The 5 s of a fault, IEC 60364-4-43, 434.5.2, by analogy.
 */
const ADIABATIC = FAULT_TIME

/** Joule integral that contacts withstand in a time: the most by what is stated for as long or longer. */
function integralFor(shortTime: NonNullable<Contactor['shortTime']>, time: number): number | undefined {
  const all = shortTime
    .filter(([, each]) => each.si >= time)
    .map(([current, each]) => current.si ** 2 * Math.max(time, Math.min(each.si, ADIABATIC)))
  return all.length === 0 ? undefined : Math.max(...all)
}

function makeTrial(contactor: Contactor, inrush: Quantity<'current'> | undefined): Check {
  const told = (says: Told) =>
    trial('contactor.make', 'Inrush as it closes', says, 'making capacity of the contactor', 'candidates', 'precharge')
  const make = greatestMade(contactor)
  const lacks = [...(inrush === undefined ? ['precharge'] : []), ...(make === undefined ? ['its make'] : [])]
  if (inrush === undefined || make === undefined) {
    return told({
      unknown: `whether the contactor may close on what is left is not known: give ${lacks.join(' and ')}`,
    })
  }
  return told(says`${inrush} flow as the contactor closes, at most the ${make} that it makes`)
}

function greatestMade({ make, category, operational }: Contactor): Quantity<'current'> | undefined {
  if (category === undefined || operational === undefined) return make
  const proved = operational.current.times(contactorCategories[category].multiple.si)
  return make === undefined || isBelow(make, proved) ? proved : make
}

type Breaks = NonNullable<Contactor['breaks']>

/** What a contactor breaks, by its own figures and by its category. */
function breaksOf({ breaks = [], category, operational }: Contactor): Breaks {
  if (category === undefined || operational === undefined) return breaks
  const { multiple, times } = contactorCategories[category]
  return [...breaks, { voltage: operational.voltage, current: operational.current.times(multiple.si), times }]
}

/** The greatest current that is broken at a voltage so often, or undefined where none is stated. */
function greatestBroken(breaks: Breaks, voltage: Quantity<'voltage'>, times: number): Quantity<'current'> | undefined {
  const able = breaks
    .filter((each) => !isBelow(each.voltage, voltage) && each.times >= times)
    .map(({ current }) => current)
  return able.length === 0 ? undefined : greatestOf(able)
}

function breakTrial(contactor: Contactor, task: ContactorTask, greatest: Quantity<'current'>): Check {
  return trial(
    'contactor.break',
    'Breaking the load',
    brokenTold(breaksOf(contactor), task, greatest, 'its breaks'),
    'breaking capacity of the contactor',
    'candidates',
    'current',
    'openings',
  )
}

function brokenTold(
  breaks: Breaks,
  { voltage, openings }: ContactorTask,
  greatest: Quantity<'current'>,
  give: string,
  of = 'of the load',
): Told {
  const able = greatestBroken(breaks, voltage, openings)
  const often = openings === 1 ? 'once' : `${openings} times`
  if (able === undefined) {
    return {
      unknown: `what the contactor breaks at ${voltage} ${often} is not known: give ${give}, up to that voltage and so often`,
    }
  }
  return worded('', says`the contactor breaks ${able} at ${voltage} ${often}, at least the ${greatest}`, ` ${of}`)
}

/** What flows the other way, in words. */
const BACK = 'that flow back into the pack'

function backwardsTrial(contactor: Contactor, task: ContactorTask, greatest: Quantity<'current'>): Check {
  const { polarised, breaksBackwards } = contactor
  const told = (says: Told) =>
    trial(
      'contactor.breakBackwards',
      'Breaking regeneration',
      says,
      'breaking capacity of the contactor',
      'candidates',
      'backwards',
    )
  if (polarised === undefined) {
    return told({ unknown: `whether the contactor breaks ${greatest} the other way is not known: give polarised` })
  }
  if (!polarised) return told(brokenTold(breaksOf(contactor), task, greatest, 'its breaks', BACK))
  if (breaksBackwards === undefined) {
    return told({
      fail: `the contactor is polarised, and ${greatest} flow the other way: an arc that its magnets blow inwards does not go out`,
    })
  }
  return told(brokenTold(breaksBackwards, task, greatest, 'its breaksBackwards', BACK))
}

const COORDINATION = 'coordination of switch and fuse'
/** What is told of a fault where none is given. */
const NO_FAULT = { unknown: 'which faults the contactor meets is not known: give fault' }

/** Whether its control leaves to the fuse what the contactor cannot break. */
function tripTrial(contactor: Contactor, { voltage, fault, trip }: ContactorTask): Check {
  const told = (says: Told) =>
    trial('contactor.trip', 'Opening on an overcurrent', says, COORDINATION, 'trip', 'candidates', 'fault')
  if (fault === undefined) return told(NO_FAULT)
  const broken = greatestBroken(breaksOf(contactor), voltage, 1)
  if (broken === undefined)
    return told({ unknown: `what the contactor breaks at ${voltage} is not known: give its breaks` })
  if (!isBelow(broken, fault.highest))
    return told({ pass: `the contactor breaks ${broken}, as much as the greatest fault` })
  if (trip === undefined) {
    return told({ unknown: 'when the control of the contactor opens it on an overcurrent is not known: give trip' })
  }
  const from = greatestOf([broken, trip.current, fault.lowest])
  if (!isBelow(from, fault.highest))
    return told({
      pass: `its control opens the contactor on no fault: from ${trip.current} on, and the greatest is ${fault.highest}`,
    })
  if (fault.fuse === undefined)
    return told({ unknown: 'what opens on a fault that the contactor cannot break is not known: give fault.fuse' })
  const clearing = clearingAt(fault.fuse, from)
  if (clearing === 'never') {
    return told({
      fail: `the contactor breaks no more than ${broken}, and at ${from} the fuse may not open: nothing breaks that`,
    })
  }
  const { time } = clearing
  if (time === undefined) return told({ unknown: `how long the fuse takes at ${from} is not known: give its curve` })
  return told(
    says`the fuse takes ${time} at ${from}, which the contactor cannot break, at most the ${trip.time} for which its control waits`,
  )
}

/** Whether the contacts withstand every fault until the fuse has opened, or their control opens them on what they break. */
function letThroughTrial(contactor: Contactor, { voltage, fault, trip }: ContactorTask): Check {
  const told = (says: Told) =>
    trial('contactor.letThrough', 'Contacts in a fault', says, COORDINATION, 'candidates', 'fault', 'trip')
  if (fault === undefined) return told(NO_FAULT)
  const { fuse, lowest, highest } = fault
  if (fuse === undefined) return told({ unknown: 'what the fuse lets through is not known: give fault.fuse' })
  const { shortTime } = contactor
  if (shortTime === undefined) {
    return told({ unknown: 'what the contactor carries for a short time is not known: give its shortTime' })
  }
  const broken = greatestBroken(breaksOf(contactor), voltage, 1)
  const turns = [trip?.current, broken].flatMap((each) =>
    each === undefined || isBelow(each, lowest) || isAbove(each, highest) ? [] : [each],
  )
  const all = [...pointsOf(fuse, lowest, highest), ...turns].map((current) => {
    const opens =
      trip !== undefined && broken !== undefined && !isBelow(current, trip.current) && !isAbove(current, broken)
    return told(bornTold(fuse, current, shortTime, opens ? trip.time : undefined))
  })
  return worstOf(all) as Check
}

/** Whether contacts bear a current until the fuse has opened, or they have. */
function bornTold(
  fuse: Fuse,
  current: Quantity<'current'>,
  shortTime: NonNullable<Contactor['shortTime']>,
  opensAfter: Quantity<'time'> | undefined,
): Told {
  const clearing = clearingAt(fuse, current)
  const time = clearing === 'never' ? undefined : clearing.time
  const bears = (asked: number, integral: Quantity<'jouleIntegral'>): Told => {
    const withstood = integralFor(shortTime, asked)
    if (withstood === undefined) {
      const unknown = `whether the contactor carries ${current} for ${seconds(asked)} is not known: give its shortTime up to there`
      return { unknown }
    }
    const limit = quantity('jouleIntegral', withstood, 'A²·s').as('kA²·s')
    return says`${integral} go through the contactor at ${current}, at most the ${limit} that it withstands`
  }
  if (opensAfter !== undefined && (time === undefined || isBelow(opensAfter, time))) {
    return bears(opensAfter.si, quantity('jouleIntegral', current.si ** 2 * opensAfter.si, 'A²·s').as('kA²·s'))
  }
  if (clearing === 'never') {
    return { fail: `at ${current} the fuse may not open, and the contactor is not opened either` }
  }
  if (clearing.letThrough === undefined) {
    return { unknown: `what the fuse lets through at ${current} is not known: give its curve` }
  }
  // Where its time is not told, a clearing integral is stated for a few milliseconds.
  return bears(time?.si ?? Math.min(...shortTime.map(([, each]) => each.si)), clearing.letThrough)
}

/** Whether the contacts stay together at the peak of a fault. */
function faultPeakTrial({ peak }: Contactor, { fault }: ContactorTask): Check {
  const told = (says: Told) =>
    trial('contactor.peak', 'Peak of a fault through the contacts', says, COORDINATION, 'candidates', 'fault')
  if (fault === undefined) return told(NO_FAULT)
  const { highest, cutOff } = fault
  if (peak === undefined)
    return told({ unknown: 'at what peak the contacts lift and weld is not known: give its peak' })
  const most = cutOff !== undefined && isBelow(cutOff, highest) ? cutOff : highest
  if (cutOff === undefined && isAbove(highest, peak)) {
    return told({
      unknown: `a fault reaches ${highest} where the fuse does not cut it off, more than the ${peak} that the contacts stand: give fault.cutOff`,
    })
  }
  return told(says`a fault peaks at ${most}, at most the ${peak} at which the contacts stay together`)
}
