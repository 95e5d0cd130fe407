/**
 * A car driven over a cycle, a journey or a log: what it draws, where that goes, how far it comes, and where it cannot follow.
 *
 * Rests on the equation of motion (Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4) and, for the pack, on
 * circuit theory; motion.ts says how it is stepped.
 */
import * as z from 'zod/mini'
import { greatestDischarge, powerRefused } from '../../drivetrain/motor/supply.js'
import { type Check, cautions, check, type Findings } from '../../findings/index.js'
import { CalculationError, InputError, type Quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { consumption, rangeFromConsumption } from '../consumption.js'
import { type Cycle, cycleGiven } from '../route/cycle.js'
import { airGiven, airOf } from './given.js'
import { type Course, driveFor, equalParts, journeyCourse, journeyGiven, type OnStep, paceGiven } from './journey.js'
import { isOfPack, limits, Motion, SAME_SPEED } from './motion.js'
import {
  conditionsOf,
  gripFor,
  limitShape,
  type PackInUse,
  type Powertrain,
  packInUse,
  powertrainOf,
  powertrainShape,
  sourceShape,
} from './powertrain.js'
import { Tally } from './tally.js'

/** Where the energy of a drive went. With what is stored, it adds up to the net energy from the pack. */
export interface DriveLosses {
  readonly air: Quantity<'energy'>
  readonly tyres: Quantity<'energy'>
  /** Heat of the brakes. */
  readonly brakes: Quantity<'energy'>
  readonly driveline: Quantity<'energy'>
  /** Motor and controller. */
  readonly motor: Quantity<'energy'>
  /** What the rotor loses when a higher gear slows it down. */
  readonly shifts: Quantity<'energy'>
  readonly auxiliaries: Quantity<'energy'>
}

/** A time in which the car could not do what was asked. */
export interface Missed {
  readonly from: Quantity<'time'>
  readonly until: Quantity<'time'>
  /** Where it began. */
  readonly at: Quantity<'length'>
  /** The speed that was asked for where the car was furthest behind, and the speed that it had. */
  readonly asked: Quantity<'speed'>
  readonly reached: Quantity<'speed'>
  /** What held it back, such as `grip of the driven wheels`. */
  readonly limitedBy: string
}

/** A step of a drive. Its powers are means over the step; all but `power` add up to it. */
export interface DriveStep {
  /** At the end of the step, as distance and speed. */
  readonly time: Quantity<'time'>
  readonly distance: Quantity<'length'>
  readonly speed: Quantity<'speed'>
  readonly gear?: string
  /** At the terminals of the pack, negative where it is charged. */
  readonly power: Quantity<'power'>
  readonly shares: {
    readonly air: Quantity<'power'>
    readonly tyres: Quantity<'power'>
    /** Lifting the car; negative downhill. */
    readonly hill: Quantity<'power'>
    /** Into its speed; negative while it slows down. */
    readonly kinetic: Quantity<'power'>
    readonly brakes: Quantity<'power'>
    readonly driveline: Quantity<'power'>
    readonly motor: Quantity<'power'>
    readonly shifts: Quantity<'power'>
    readonly auxiliaries: Quantity<'power'>
  }
  /** Positive on discharge; with a pack, as the three that follow. */
  readonly current?: Quantity<'current'>
  readonly voltage?: Quantity<'voltage'>
  readonly stateOfCharge?: Quantity<'ratio'>
  readonly heat?: Quantity<'power'>
}

/** The figures of a drive. */
export interface Drive extends Findings {
  readonly distance: Quantity<'length'>
  readonly duration: Quantity<'time'>
  readonly meanSpeed: Quantity<'speed'>
  /** From the terminals of the pack, and back into them. */
  readonly drawn: Quantity<'energy'>
  readonly regenerated: Quantity<'energy'>
  /** The difference of the two. */
  readonly net: Quantity<'energy'>
  /** Net energy over distance. */
  readonly consumption: Quantity<'energyPerDistance'>
  readonly losses: DriveLosses
  /** What is in the car at the end and was not at the start: in its height and in its speed. */
  readonly stored: { readonly height: Quantity<'energy'>; readonly speed: Quantity<'energy'> }
  readonly peakPower: Quantity<'power'>
  /** Largest current of the pack in either direction; with a pack, as what follows. */
  readonly peakCurrent?: Quantity<'current'>
  readonly rmsCurrent?: Quantity<'current'>
  /** Lowest voltage under load. */
  readonly lowestVoltage?: Quantity<'voltage'>
  /** Heat made inside the pack, on top of the net energy. */
  readonly packHeat?: Quantity<'energy'>
  readonly stateOfCharge?: Quantity<'ratio'>
  /** When the car could not do what was asked; at most the first 1000 times. */
  readonly missed: readonly Missed[]
}

/** A drive over a cycle or a journey. */
export interface DrivenCycle extends Drive {
  /**
   * Distance until the pack, or the energy, is used up, the drive being repeated; worked out when it is asked for. Absent
   * where nothing ends it, and where a hill has stopped the car.
   */
  readonly range?: Quantity<'length'> | undefined
  /** What ends it: a state of charge, or a power that the pack cannot give any more; or why nothing does. */
  readonly rangeEndedBy?: string | undefined
  /** The steps, worked out when they are asked for. */
  readonly series: readonly DriveStep[]
  /** The current of each step, as `sizeCable`, `cableDuty` and `rmsCurrent` take it; with a pack. */
  readonly currents?: readonly (readonly [current: Quantity<'current'>, time: Quantity<'time'>])[]
  /** The heat of the pack in each step, as `packTemperature` takes it; with a pack. */
  readonly heats?: readonly (readonly [heat: Quantity<'power'>, time: Quantity<'time'>])[]
}

export const driveShape = /*@__PURE__*/ (() => ({
  ...powertrainShape,
  ...limitShape,
  ...sourceShape,
  air: z.optional(airGiven),
  step: z.optional(given('time', 'Longest step', { min: '1 ms', max: '10 s' })),
}))()

const driveCycleGiven = /*@__PURE__*/ about(
  'a car with its drive, and what it drives',
  z.strictObject({
    ...driveShape,
    cycle: z.optional(cycleGiven),
    journey: z.optional(journeyGiven),
    pace: z.optional(paceGiven),
  }),
)

type Asked = Read<typeof driveCycleGiven>

const where = 'driveCycle'
/** The longest step unless another is given, in seconds. */
export const STEP = 1

/** Everything that a drive needs, read. */
interface Ready {
  readonly train: Powertrain
  readonly pack: PackInUse | undefined
  readonly course: Course
  readonly startMotion: () => Motion
}

/**
 * Drives a car over a cycle or a journey, step by step, and books every joule: what the battery gives and takes back, and
 * what air, tyres, brakes, driveline, motor and auxiliaries make of it. In every step the power at the terminals is the sum
 * of the others.
 *
 * The least that it needs:
 *
 * - `car`: `mass` (kg), `rollingResistance` (a plain number) and `dragArea` (m²), or `roadLoad` from a coast-down:
 *   `constant` (N), `linear`, `quadratic`; `rotatingFactor` or `wheelInertia` for what turns; for grip also `wheelbase`,
 *   `centreOfGravity` (`aft`, `up`), `drivenAxle`
 * - `driveline`: `efficiency` between motor and wheels; with `gears`, `finalDrive` and `rollingRadius` or `tyre`, the car
 *   always drives in the gear that draws least
 * - `motor`: `efficiency` with its controller, or `loss` by its coefficients; with `peakTorque`, `peakPower` or `curve`, and
 *   `maximumSpeed`, its limits count, less by the voltage that the pack leaves where `ratedVoltage` is given
 * - `cycle`, the name of one of {@link cycles} or one from {@link readCycle}; or `journey`, stretches of `distance`, `speed`,
 *   `grade`, `stops` with the time `standing`, `temperature`, `altitude`, `headwind`, `auxiliary`, driven from a stand to a
 *   stand at a `pace` (`acceleration`, `braking`)
 *
 * What makes it truer:
 *
 * - `pack`, as {@link packAt} takes it, used between `stateOfCharge.from` and `.to`, with `cellTemperature` and the limits of
 *   the `controller`; or `usableEnergy` (kWh), for the range alone
 * - `regeneration.share`: how much of the braking goes to the motor, within its torque, the grip of its wheels and what the
 *   pack takes; none unless given
 * - `air` (`temperature`, `altitude`, `headwind`), `auxiliary` (W), `friction` of tyre and road
 * - `step` (s): the longest step, 1 s unless given, at most 10 s. Halving it changes energies by the square. A limit is
 *   held on the mean of a step, so that a range that a weak pack ends comes out up to two steps late
 *
 * A car that cannot follow does what it can: `missed` tells when, by how much and what held it back. The range is where the
 * pack is down to its last state of charge, or first fails to give what the drive asks, the drive being repeated.
 *
 * @returns The {@link DrivenCycle}; `series`, `currents` and `heats` are worked out when they are asked for.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a car that never moves, and for
 * auxiliaries that the pack cannot feed, with the most that it can.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * const { consumption, drawn, regenerated } = driveCycle({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   driveline: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   regeneration: { share: 0.5 },
 *   cycle: 'NEDC',
 * })
 * String(consumption) // '91.96 Wh/km'
 * String(drawn) // '1.082 kWh'
 * String(regenerated) // '0.0682 kWh'
 * ```
 */
export const driveCycle = /*@__PURE__*/ procedure(where, driveCycleGiven, (asked): DrivenCycle => {
  const ready = readyFor(asked)
  const { pack, course } = ready
  const motion = ready.startMotion()
  const tally = new Tally(pack)
  const ended = driveOnce(motion, tally, course, pack)
  const drive = figuresOf(where, asked, ready, motion, tally, ended)
  const driven = { ...drive, ...rangeByEnergy(asked, drive, ended) }
  if (pack !== undefined) {
    const range = once(() => rangeOf(ready, motion, tally, ended))
    later(driven, 'range', () => range().range)
    later(driven, 'rangeEndedBy', () => range().rangeEndedBy)
  }
  // Nothing of the steps is kept: who asks for them has the drive driven again.
  const steps = <T>(each: (motion: Motion) => T): readonly T[] => {
    const again = ready.startMotion()
    const made: T[] = []
    course.drive(again, () => {
      made.push(each(again))
      return pack === undefined || again.stateOfCharge > pack.to
    })
    return made
  }
  later(driven, 'series', () => steps((each) => stepOf(each, ready)))
  if (pack !== undefined) {
    const { resistance } = pack.supply
    const seconds = ({ lasted }: Motion) => fromSi('time', lasted, 's')
    later(driven, 'currents', () => steps((each) => [fromSi('current', each.current, 'A'), seconds(each)]))
    later(driven, 'heats', () => steps((each) => [fromSi('power', each.current ** 2 * resistance, 'W'), seconds(each)]))
  }
  return driven as DrivenCycle
})

/** Work that is done when its result is first asked for, and not again. */
function once<T>(work: () => T): () => T {
  let done: { readonly result: T } | undefined
  return () => {
    done ??= { result: work() }
    return done.result
  }
}

/** Gives an object a figure that is worked out when it is first asked for. */
function later(onto: object, key: keyof DrivenCycle, work: () => unknown): void {
  Object.defineProperty(onto, key, { enumerable: true, get: once(work) })
}

function readyFor(asked: Asked): Ready {
  const { cycle, journey, pace, car } = asked
  if ((cycle === undefined) === (journey === undefined)) {
    const expected = "one of them: cycle such as 'NEDC', or journey such as [{ distance: '12 km', speed: '70 km/h' }]"
    const received = cycle === undefined ? 'neither' : 'both'
    throw new InputError(where, [{ path: 'cycle and journey', expected, received }])
  }
  if (pace !== undefined && journey === undefined) {
    const expected = 'a journey to which it belongs: a cycle has its own pace'
    throw new InputError(where, [{ path: 'pace', expected, received: 'a cycle' }])
  }
  const train = powertrainOf(where, asked)
  const grip = gripFor(where, car, asked)
  const pack = packInUse(where, asked, asked.controller)
  const step = asked.step?.si ?? STEP
  if (cycle !== undefined) refuseFlyingStart(where, 'cycle', cycle.corners.metresPerSecond[0] as number, train)
  const course =
    cycle === undefined
      ? journeyCourse(where, journey as NonNullable<typeof journey>, pace, train, asked.air, step)
      : cycleCourse(cycle, train, asked.air, step)
  const { conditions, speed } = course.start
  return { train, pack, course, startMotion: () => new Motion(train, grip, pack, conditions, speed) }
}

/** Refuses to begin faster than the motor can turn. */
export function refuseFlyingStart(
  place: string,
  path: string,
  start: number,
  { gears, maximumSpeed }: Powertrain,
): void {
  const fastest = Math.max(...gears.map(({ turns }) => maximumSpeed / turns))
  if (start <= fastest) return
  const expected = `one that begins no faster than the motor can turn, ${speedOf(fastest)}`
  throw new InputError(place, [{ path, expected, received: `a start at ${speedOf(start)}` }])
}

/** The conditions of a whole drive, on a level road. */
export function levelConditions(train: Powertrain, air: Asked['air']) {
  const { density, headwind, assumptions } = airOf(air)
  return {
    conditions: conditionsOf(train.road, density.si, headwind.si, 0, train.auxiliary.si),
    assumptions: [...assumptions, 'The road is level.'],
  }
}

function cycleCourse(cycle: Cycle, train: Powertrain, air: Asked['air'], step: number): Course {
  const { seconds, metresPerSecond } = cycle.corners
  const { conditions, assumptions } = levelConditions(train, air)
  return {
    start: { conditions, speed: metresPerSecond[0] as number },
    assumptions,
    drive: (motion, onStep) => {
      for (let i = 1; i < seconds.length; i++) {
        const lasts = (seconds[i] as number) - (seconds[i - 1] as number)
        if (!followPiece(motion, metresPerSecond[i - 1] as number, metresPerSecond[i] as number, lasts, step, onStep)) {
          return false
        }
      }
      return true
    },
  }
}

/** Follows a piece of steady acceleration in equal steps. */
export function followPiece(
  motion: Motion,
  from: number,
  to: number,
  lasts: number,
  step: number,
  onStep: OnStep,
): boolean {
  const parts = equalParts(lasts, step)
  for (let k = 1; k <= parts; k++) {
    const target = k === parts ? to : from + ((to - from) * k) / parts
    if (!driveFor(motion, target, lasts / parts, onStep)) return false
  }
  return true
}

/** Why a drive ended before its end. */
type Ended = 'empty' | 'spent' | 'stalled' | undefined

/** Drives a course, booking every step, until it ends or the pack is empty; and tells why it ended before. */
export function driveOnce(motion: Motion, tally: Tally, course: Course, pack: PackInUse | undefined): Ended {
  let isEmpty = false
  const isWhole = course.drive(motion, (target) => {
    tally.add(motion, target)
    isEmpty = pack !== undefined && motion.stateOfCharge <= pack.to
    return !isEmpty
  })
  if (isWhole) return undefined
  return isEmpty ? 'empty' : motion.isSpent ? 'spent' : 'stalled'
}

/** A car that has come no farther than this, in metres, has not moved. */
const STILL = 1e-6
/** So many steps are driven for a range: some seconds of work. */
const MOST_STEPS = 3e6

const energy = (joules: number) => fromSi('energy', joules, 'kWh')
const power = (watts: number) => fromSi('power', watts, 'kW')
const time = (seconds: number) => fromSi('time', seconds, 's')
const way = (metres: number) => fromSi('length', metres, 'km')
const speedOf = (metresPerSecond: number) => fromSi('speed', metresPerSecond, 'km/h')

/** The figures of a drive that was booked. */
export function figuresOf(
  place: string,
  asked: Pick<Asked, 'motor' | 'usableEnergy'>,
  { train, pack, course }: Pick<Ready, 'train' | 'pack' | 'course'>,
  motion: Motion,
  tally: Tally,
  ended: Ended,
): Drive {
  const { time: duration, distance, stateOfCharge } = motion
  if (ended === 'spent' && duration === 0) throw nothingLeft(place, pack as PackInUse, train)
  if (distance < STILL) {
    const held = tally.missed[0] === undefined ? '' : `: what holds it is the ${limits[tally.missed[0].limit]}`
    throw new CalculationError(place, `the car never moves${held}`)
  }
  const meanSpeed = speedOf(distance / duration)
  const withPack = pack === undefined ? {} : packFigures(tally, duration, stateOfCharge)
  const figures = {
    distance: way(distance),
    duration: time(duration),
    meanSpeed,
    drawn: energy(tally.drawn),
    regenerated: energy(tally.regenerated),
    net: energy(tally.power),
    consumption: consumption({ power: power(tally.power / duration), speed: meanSpeed }),
    losses: {
      air: energy(tally.air),
      tyres: energy(tally.tyres),
      brakes: energy(tally.brakes),
      driveline: energy(tally.driveline),
      motor: energy(tally.motor),
      shifts: energy(tally.shifts),
      auxiliaries: energy(tally.auxiliaries),
    },
    stored: { height: energy(tally.hill), speed: energy(tally.kinetic) },
    peakPower: power(tally.peakPower),
    ...withPack,
    missed: tally.missed.map(({ from, until, at, asked: wanted, reached, limit }) => ({
      from: time(from),
      until: time(until),
      at: way(at),
      asked: speedOf(wanted),
      reached: speedOf(reached),
      limitedBy: limits[limit] as string,
    })),
  }
  return {
    ...figures,
    checks: checksOf(asked, pack, tally, motion, ended),
    assumptions: [
      ...train.assumptions,
      ...course.assumptions,
      ...(pack?.assumptions ?? []),
      'The brakes always suffice, and the driver follows as closely as the car can.',
      ...(Math.abs(tally.hill + tally.kinetic) > Math.abs(tally.power) / 100
        ? ['A range repeats the drive, each time from the height and the speed at which it began.']
        : []),
      ...(motion.time > 0 && tally.missed.length === Tally.MOST_MISSED
        ? [`Only the first ${Tally.MOST_MISSED} times that the car could not follow are listed.`]
        : []),
    ],
    cautions: [cautions.highVoltage, cautions.lithiumCells],
  }
}

function packFigures(tally: Tally, duration: number, stateOfCharge: number) {
  return {
    peakCurrent: fromSi('current', tally.peakCurrent, 'A'),
    rmsCurrent: fromSi('current', Math.sqrt(tally.squares / duration), 'A'),
    lowestVoltage: fromSi('voltage', tally.lowestVoltage, 'V'),
    packHeat: energy(tally.heat),
    stateOfCharge: fromSi('ratio', stateOfCharge, '%'),
  }
}

/** The refusal where the pack cannot even feed what is on in the standing car. */
function nothingLeft(place: string, { supply, from }: PackInUse, { auxiliary }: Powertrain): CalculationError {
  const limit = greatestDischarge(supply, supply.openCircuitAt(from), 'peak')
  return powerRefused(place, auxiliary, limit, fromSi('ratio', from, '1'))
}

function checksOf(
  { motor, usableEnergy }: Pick<Asked, 'motor' | 'usableEnergy'>,
  pack: PackInUse | undefined,
  tally: Tally,
  motion: Motion,
  ended: Ended,
): Check[] {
  const missed = tally.missed.reduce((sum, { from, until }) => sum + until - from, 0)
  const { continuousTorque } = motor
  const torque = fromSi('torque', Math.sqrt(tally.torqueSquares / motion.time), 'N·m')
  return [
    ...(missed === 0 ? [] : [behindCheck(missed)]),
    ...(ended === 'stalled' ? [stalledCheck(motion)] : []),
    ...(continuousTorque === undefined
      ? []
      : [check('Root mean square torque', torque, 'at most', continuousTorque, 'motor.continuousTorque')]),
    ...(usableEnergy === undefined
      ? []
      : [check('Net energy of the drive', energy(tally.power), 'at most', usableEnergy, 'usableEnergy')]),
    ...(pack === undefined ? [] : packChecks(pack, tally, motion, ended)),
  ]
}

function behindCheck(missed: number): Check {
  return check('Time in which the car falls behind', time(missed), 'at most', time(0), 'the speeds that are asked for')
}

function stalledCheck({ speed }: Motion): Check {
  return check('Speed on the hill', speedOf(speed), 'at least', speedOf(0.1), 'a car that stands comes no farther')
}

function packChecks(
  { supply, from, to }: PackInUse,
  tally: Tally,
  { time: duration, stateOfCharge }: Motion,
  ended: Ended,
): Check[] {
  const state = (value: number) => fromSi('ratio', value, '%')
  const current = (amperes: number) => fromSi('current', amperes, 'A')
  const [continuous, continuousName] = supply.discharge.continuous
  const [peak, peakName] = supply.discharge.peak
  const [floor, floorName] = supply.floor
  // No more than the peak, but for rounding.
  const rms = Math.min(Math.sqrt(tally.squares / duration), tally.peakCurrent)
  const left = ended === 'spent' ? Math.min(stateOfCharge, to) : stateOfCharge
  return [
    check('State of charge at the end', state(left), 'at least', state(to), `stateOfCharge.to, from ${state(from)}`),
    check('Root mean square current', current(rms), 'at most', current(continuous), continuousName),
    check('Peak current', current(tally.peakCurrent), 'at most', current(peak), peakName),
    check(
      'Lowest voltage under load',
      fromSi('voltage', tally.lowestVoltage, 'V'),
      'at least',
      fromSi('voltage', floor, 'V'),
      floorName,
    ),
  ]
}

/** How far an energy lasts that is given as a figure. */
function rangeByEnergy(
  { usableEnergy }: Asked,
  drive: Drive,
  ended: Ended,
): Pick<DrivenCycle, 'range' | 'rangeEndedBy'> {
  if (usableEnergy === undefined || drive.net.si <= 0 || ended !== undefined) return {}
  const range = rangeFromConsumption({ energy: usableEnergy, consumption: drive.consumption })
  return { range, rangeEndedBy: 'usableEnergy, as given' }
}

/** How far a pack lasts: goes on from the end of the first drive, again and again. */
function rangeOf(
  { pack, course }: Ready,
  motion: Motion,
  tally: Tally,
  ended: Ended,
): Pick<DrivenCycle, 'range' | 'rangeEndedBy'> {
  if (pack === undefined || ended === 'stalled') return {}
  const emptied = () => {
    // Back to the moment within the last step at which the state of charge was reached.
    const used = (motion.current * motion.lasted) / pack.capacity
    return way(motion.distance - (motion.length * (pack.to - motion.stateOfCharge)) / used)
  }
  const byState = `state of charge of ${fromSi('ratio', pack.to, '%')}`
  if (ended === 'empty') return { range: emptied(), rangeEndedBy: byState }
  if (ended === 'spent') return { range: way(motion.distance), rangeEndedBy: limits[motion.limit] as string }
  // Where the fresh pack held the car back already, it still drives on, until a round takes it twice the time.
  const heldBack = tally.missed.some(({ limit }) => isOfPack(limit))
  const slowest = motion.distance / motion.time / 2
  let { steps } = tally
  let before = { state: pack.from, distance: 0, time: 0 }
  for (let heldBy = motion.limit; ; ) {
    const { stateOfCharge: state, distance, time: now } = motion
    const used = before.state - state
    if (used <= 0) return { rangeEndedBy: 'nothing: a round gives the pack back what it takes' }
    if (heldBack && (distance - before.distance) / (now - before.time) < slowest) {
      return { range: way(distance), rangeEndedBy: limits[heldBy] as string }
    }
    if (steps + ((state - pack.to) / used) * tally.steps > MOST_STEPS) {
      return { rangeEndedBy: `nothing within ${MOST_STEPS} steps: a round takes too little from the pack` }
    }
    before = { state, distance, time: now }
    motion.restart(course.start.speed)
    let [isEmpty, isWeak] = [false, false]
    const isWhole = course.drive(motion, (target) => {
      steps++
      isEmpty = motion.stateOfCharge <= pack.to
      if (isOfPack(motion.limit)) {
        heldBy = motion.limit
        isWeak = !heldBack && target - motion.speed > SAME_SPEED
      }
      return !isEmpty && !isWeak
    })
    if (isWhole) continue
    if (isEmpty) return { range: emptied(), rangeEndedBy: byState }
    return { range: way(motion.distance), rangeEndedBy: limits[motion.limit] as string }
  }
}

/** A step as it is shown. */
function stepOf(motion: Motion, { train, pack }: Ready): DriveStep {
  const name = train.gears[motion.gear]?.name
  return {
    time: time(motion.time),
    distance: way(motion.distance),
    speed: speedOf(motion.speed),
    ...(name === undefined ? {} : { gear: name }),
    power: power(motion.power),
    shares: {
      air: power(motion.air),
      tyres: power(motion.tyres),
      hill: power(motion.hill),
      kinetic: power(motion.kinetic),
      brakes: power(motion.brakes),
      driveline: power(motion.driveline),
      motor: power(motion.motor),
      shifts: power(motion.shifts),
      auxiliaries: power(motion.auxiliaries),
    },
    ...(pack === undefined
      ? {}
      : {
          current: fromSi('current', motion.current, 'A'),
          voltage: fromSi('voltage', motion.voltage, 'V'),
          stateOfCharge: fromSi('ratio', motion.stateOfCharge, '%'),
          heat: fromSi('power', motion.current ** 2 * pack.supply.resistance, 'W'),
        }),
  }
}
