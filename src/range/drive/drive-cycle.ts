/**
 * A car driven over a cycle, a journey or a log: what it draws, where that goes, how far it comes, and where it cannot follow.
 *
 * Rests on the equation of motion (Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4) and, for the pack, on
 * circuit theory; motion.ts says how it is stepped.
 */
import { airOf, weatherOf } from '../../drivetrain/road/air.js'
import { airField } from '../../drivetrain/vehicle.js'
import { cite } from '../../formula/index.js'
import { assumed, given, optional, procedure, type Read, type Unfinished } from '../../procedure/index.js'
import { once } from '../../procedure/once.js'
import { CalculationError, InputError, type Quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { rangeFromConsumption } from '../consumption.js'
import { type Cycle, cycleField } from '../route/cycle.js'
import { hardestOf } from '../route/spikes.js'
import { type Drive, type DriveStep, type Ended, figuresOf, speedOf, stepOf, way } from './figures.js'
import { type Course, driveFor, equalParts, journeyCourse, journeyField, type OnStep, paceField } from './journey.js'
import { isOfPack, limits, Motion, SAME_SPEED } from './motion.js'
import {
  conditionsOf,
  gripFor,
  type PackInUse,
  type Powertrain,
  packInUse,
  powertrainFields,
  powertrainOf,
  sourceFields,
} from './powertrain.js'
import { Tally } from './tally.js'

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

/** The longest step, unless another is given. @internal */
export const STEP = '1 s'

/** What describes a vehicle that is driven, but for what it drives. @internal */
export const drivenFields = /*@__PURE__*/ (() => ({
  ...powertrainFields,
  ...sourceFields,
  air: airField,
  step: given('time', 'Longest step while the speed changes', {
    min: '1 ms',
    max: '10 s',
    default: STEP,
    because: 'as cycles and logs have a row each second',
  }),
}))()
/** What is read of a vehicle that is driven. */
type DrivenRead = Read<typeof drivenFields>

const driveCycleFields = /*@__PURE__*/ (() => ({
  ...drivenFields,
  cycle: optional(cycleField),
  journey: optional(journeyField),
  pace: optional(paceField),
}))()

type Asked = Read<typeof driveCycleFields>

const where = 'driveCycle'

/** Everything that a drive needs, read. */
interface Ready {
  readonly train: Powertrain
  readonly pack: PackInUse | undefined
  readonly course: Course
  readonly startMotion: () => Motion
}

/** What every drive takes for granted. @internal */
export const drivesAssume = ['The brakes always suffice, and the driver follows as closely as the car can.']

/**
 * Drives a car over a cycle or a journey, step by step, and books every joule: what the battery gives and takes back, and
 * what air, tyres, brakes, driveline, motor and auxiliaries make of it. In every step the power at the terminals is the sum
 * of the others.
 *
 * The least that it needs is the car with its mass and its road load, the efficiency of the gearbox, the motor with its
 * efficiency, and a `cycle`, the name of one of {@link cycles} or one from {@link readCycle}, or a `journey`, driven from a
 * stand to a stand at a `pace`. With gears, the car always drives in the gear that draws least; with figures of the motor, its
 * limits count, less by the voltage that the pack leaves where `ratedVoltage` is given. A `pack` is used from its
 * `stateOfCharge` down to the `reserve`. The `controller` tells how much of the braking goes to the motor, within its torque,
 * the grip of its wheels and what the pack takes.
 *
 * Halving the `step` changes energies by the square. Where a journey holds its speed, up to ten steps count as one, of 10 s at
 * most. A limit is held on the mean of a step, so that a range that a weak pack
 * ends comes out up to two steps late.
 *
 * A car that cannot follow does what it can: `missed` tells when, by how much and what held it back. The range is where the
 * pack is down to its reserve, or first fails to give what the drive asks, the drive being repeated.
 *
 * Answers: what does the drive take, where does that go, how far does the car come, and where can it not follow?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 * - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 * - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `step`: longest step while the speed changes, in s, at least 0.001 s and at most 10 s, 1 s by default (as cycles
 *   and logs have a row each second)
 * - `cycle`: the drive cycle, optional
 * - `journey`: the stretches of a journey, one after the other, a list of at least 1, optional
 *   - `name`: what the stretch is called, text, optional
 *   - `distance`: length of the stretch, in m, at least 0.001 m and at most 2000000 m
 *   - `speed`: speed on the stretch, in km/h, above 0 km/h
 *   - `grade`: grade, rise over run, a plain number, optional
 *   - `stops`: how often the car comes to a stand, the last time at its end, a whole number, at least 1 and at most
 *     1000, optional
 *   - `standing`: time at a stand, each time, in s, at least 0 s, optional
 *   - `temperature`: temperature of the air, in °C, above -273.15 °C, optional
 *   - `altitude`: altitude of the road above sea level, in m, at least -2000 m and at most 11000 m, optional
 *   - `headwind`: head wind, negative for a tail wind, in km/h, optional
 *   - `auxiliaries`: power of all that is on, the heater too, in kW, at least 0 kW, optional
 * - `pace`: how briskly the car speeds up and slows down, optional
 *   - `acceleration`: acceleration while it speeds up, in m/s², at least 0.01 m/s² and at most 30 m/s², optional
 *   - `braking`: deceleration while it slows down, as a positive figure, in m/s², at least 0.01 m/s² and at most 30
 *     m/s², optional
 * - always assumed: the brakes always suffice, and the driver follows as closely as the car can
 *
 * @returns The {@link DrivenCycle}; `series`, `currents` and `heats` are worked out when they are asked for; a copy and JSON
 * leave them out.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a car that never moves, and for
 * auxiliaries that the pack cannot feed, with the most that it can.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * const { consumption, drawn, regenerated } = driveCycle({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   controller: { regeneration: 0.5 },
 *   cycle: 'NEDC',
 * })
 * String(consumption) // '92.58 Wh/km'
 * String(drawn) // '1.092 kWh'
 * String(regenerated) // '0.07139 kWh'
 * ```
 */
export const driveCycle = /*@__PURE__*/ (() =>
  procedure({
    name: where,
    title: 'Drive over a cycle or a journey',
    answers: 'What does the drive take, where does that go, how far does the car come, and where can it not follow?',
    input: driveCycleFields,
    source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 4')],
    assumes: drivesAssume,
    work: driven,
  }))()

function driven(asked: Asked): Unfinished<DrivenCycle> {
  const ready = readyFor(asked)
  const { pack, course } = ready
  const motion = ready.startMotion()
  const tally = new Tally(ready.train, pack)
  const ended = driveOnce(motion, tally, course, pack)
  const drive = figuresOf(where, asked, ready, motion, tally, ended)
  const made = { ...drive, ...rangeByEnergy(asked, drive, ended) }
  if (pack !== undefined) {
    const range = once(() => rangeOf(ready, motion, tally, ended))
    later(made, 'range', true, () => range().range)
    later(made, 'rangeEndedBy', true, () => range().rangeEndedBy)
  }
  // Nothing of the steps is kept: who asks for them has the drive driven again.
  const steps = <T>(each: (motion: Motion) => T): readonly T[] => {
    const again = ready.startMotion()
    const all: T[] = []
    course.drive(again, () => {
      all.push(each(again))
      return pack === undefined || again.stateOfCharge > pack.to
    })
    return all
  }
  later(made, 'series', false, () => steps((each) => stepOf(each, ready)))
  if (pack !== undefined) {
    const { resistance } = pack.supply
    const seconds = ({ lasted }: Motion) => fromSi('time', lasted, 's')
    later(made, 'currents', false, () => steps((each) => [fromSi('current', each.current, 'A'), seconds(each)]))
    later(made, 'heats', false, () =>
      steps((each) => [fromSi('power', each.current ** 2 * resistance, 'W'), seconds(each)]),
    )
  }
  return made as Unfinished<DrivenCycle>
}

/**
 * Gives an object a figure that is worked out when it is first asked for. A copy of the object and its JSON have what is
 * enumerable: thousands of steps, for which the whole drive is driven again, are not.
 */
function later(onto: object, key: keyof DrivenCycle, enumerable: boolean, work: () => unknown): void {
  Object.defineProperty(onto, key, { enumerable, get: once(work) })
}

function readyFor(asked: Asked): Ready {
  const { cycle, journey, pace, car, air } = asked
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
  const grip = gripFor(where, car)
  const pack = packInUse(where, asked, asked.controller)
  const step = asked.step.si
  if (cycle !== undefined) refuseFlyingStart(where, 'cycle', cycle.corners.metresPerSecond[0] as number, train)
  const course =
    cycle === undefined
      ? journeyCourse(where, journey as NonNullable<typeof journey>, pace, train, air, step)
      : cycleCourse(cycle, train, air, step)
  const { conditions, speed } = course.start
  return { train, pack, course, startMotion: () => new Motion(train, grip, pack, conditions, speed) }
}

/** Refuses to begin faster than the motor can turn. @internal */
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

/** The conditions of a whole drive, on a level road. @internal */
export function levelConditions(train: Powertrain, air: DrivenRead['air']) {
  const { density, headwind } = airOf(air)
  return {
    conditions: conditionsOf(train.road, density.si, headwind.si, 0, train.auxiliaries.si),
    assumptions: [assumed('road.level', 'The road is level.'), ...weatherOf(air)],
  }
}

function cycleCourse(cycle: Cycle, train: Powertrain, air: DrivenRead['air'], step: number): Course {
  const { seconds, metresPerSecond } = cycle.corners
  const { conditions, assumptions } = levelConditions(train, air)
  return {
    start: { conditions, speed: metresPerSecond[0] as number },
    assumptions,
    hardest: () => hardestOf(seconds, metresPerSecond),
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

/** Follows a piece of steady acceleration in equal steps. @internal */
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

/** Drives a course, booking every step, until it ends or the pack is empty; and tells why it ended before. @internal */
export function driveOnce(motion: Motion, tally: Tally, course: Course, pack: PackInUse | undefined): Ended {
  let isEmpty = false
  const isWhole = course.drive(motion, (target) => {
    tally.add(motion, target)
    if (tally.missed.length > 0 && motion.time > LONGEST) throw tooSlow(motion)
    isEmpty = pack !== undefined && motion.stateOfCharge <= pack.to
    return !isEmpty
  })
  if (isWhole) return undefined
  return isEmpty ? 'empty' : motion.isSpent ? 'spent' : 'stalled'
}

/** A car that falls behind and drives for longer than two days, in seconds, is no use on that road. */
const LONGEST = 48 * 3600

function tooSlow({ distance, limit }: Motion): CalculationError {
  const held = limit === 0 ? '' : `, held by the ${limits[limit]}`
  return new CalculationError('driveCycle', `the car falls behind and has come ${way(distance)} in 48 h${held}`, {
    distance: String(way(distance)),
  })
}

/** So many steps are driven for a range: some seconds of work. */
const MOST_STEPS = 3e6

/** How far an energy lasts that is given as a figure. */
function rangeByEnergy(
  { usableEnergy }: Asked,
  drive: Unfinished<Drive>,
  ended: Ended,
): Pick<DrivenCycle, 'range' | 'rangeEndedBy'> {
  if (usableEnergy === undefined || ended !== undefined) return {}
  if (drive.net.si <= 0) return { rangeEndedBy: 'nothing: the drive gives back what it takes' }
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
