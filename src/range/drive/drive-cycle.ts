/**
 * A car driven over a cycle, a journey or a log: what it draws, where that goes, how far it comes, and where it cannot follow.
 *
 * Rests on the equation of motion (Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4) and, for the pack, on
 * circuit theory; motion.ts says how it is stepped.
 */
import { greatestDischarge, powerRefused } from '../../drivetrain/motor/supply.js'
import { airOf, weatherOf } from '../../drivetrain/road/air.js'
import { airField } from '../../drivetrain/vehicle.js'
import { cite } from '../../formula/index.js'
import { highVoltage, lithiumCells } from '../../procedure/cautions.js'
import { unlessUnknown } from '../../procedure/check.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  given,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { consumption, rangeFromConsumption } from '../consumption.js'
import { type Cycle, cycleField } from '../route/cycle.js'
import { hardestOf } from '../route/spikes.js'
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

/** The longest step, unless another is given. @internal */
export const STEP = '1 s'

/** What describes a vehicle that is driven, but for what it drives. @internal */
export const drivenFields = /*@__PURE__*/ (() => ({
  ...powertrainFields,
  ...sourceFields,
  air: airField,
  step: given('time', 'Longest step', {
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
 * Halving the `step` changes energies by the square. A limit is held on the mean of a step, so that a range that a weak pack
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
 * - `step`: longest step, in s, at least 0.001 s and at most 10 s, 1 s by default (as cycles and logs have a row each
 *   second)
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

/** Work that is done when its result is first asked for, and not again. */
function once<T>(work: () => T): () => T {
  let done: { readonly result: T } | undefined
  return () => {
    done ??= { result: work() }
    return done.result
  }
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

/** Why a drive ended before its end. */
type Ended = 'empty' | 'spent' | 'stalled' | undefined

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

/** A car that has come no farther than this, in metres, has not moved. */
const STILL = 1e-6
/** So many steps are driven for a range: some seconds of work. */
const MOST_STEPS = 3e6

const energy = (joules: number) => fromSi('energy', joules, 'kWh')
const power = (watts: number) => fromSi('power', watts, 'kW')
const time = (seconds: number) => fromSi('time', seconds, 's')
const way = (metres: number) => fromSi('length', metres, 'km')
const speedOf = (metresPerSecond: number) => fromSi('speed', metresPerSecond, 'km/h')

/** The figures of a drive that was booked. @internal */
export function figuresOf(
  place: string,
  asked: Pick<Asked, 'car' | 'motor' | 'usableEnergy'>,
  { train, pack, course }: Pick<Ready, 'train' | 'pack' | 'course'>,
  motion: Motion,
  tally: Tally,
  ended: Ended,
): Unfinished<Drive> {
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
    // Without figures of it, the motor has no limits, which is told.
    checks: [
      ...spikeChecks(course, asked.car),
      ...checksOf(asked, train.envelope !== undefined, pack, tally, motion, ended),
    ],
    assumptions: [
      ...train.assumptions,
      ...memoryAssumptions(asked, train, pack),
      ...course.assumptions,
      ...(pack?.assumptions ?? []),
      ...ofTally(tally),
    ],
    cautions: [highVoltage, lithiumCells],
  }
}

/** Over how long motor and pack remember their load. */
function memoryAssumptions(
  { motor }: Pick<Asked, 'motor'>,
  train: Powertrain,
  pack: PackInUse | undefined,
): Assumption[] {
  const { continuousTorque, continuousPower } = motor
  const { isRated } = train
  const lacks = continuousTorque === undefined ? 'continuousTorque' : 'continuousPower'
  return [
    ...(isRated && (continuousTorque === undefined || continuousPower === undefined)
      ? [assumed('motor.one', `Only one of its ratings all day holds the motor: give motor.${lacks} too.`)]
      : []),
    ...(isRated ? train.memory.assumptions : []),
    ...(isRated && train.gears.length > 1
      ? [
          assumed(
            'motor.gear',
            'On a pull that is too much for the motor all day, the gear counts that asks least of it.',
          ),
        ]
      : []),
    ...(pack === undefined
      ? []
      : [assumed('pack.memory', 'The current of the pack is averaged over 5 min (common practice, no source).')]),
  ]
}

/** What was taken for granted in the books of a drive. */
function ofTally({ hill, kinetic, power: net, missed }: Tally): Assumption[] {
  return [
    ...(Math.abs(hill + kinetic) > Math.abs(net) / 100
      ? [
          assumed(
            'range.repeated',
            'A range repeats the drive, each time from the height and the speed at which it began.',
          ),
        ]
      : []),
    ...(missed.length === Tally.MOST_MISSED
      ? [assumed('missed.first', `Only the first ${Tally.MOST_MISSED} times that the car could not follow are listed.`)]
      : []),
  ]
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
function nothingLeft(place: string, { supply, from }: PackInUse, { auxiliaries }: Powertrain): CalculationError {
  const limit = greatestDischarge(supply, supply.openCircuitAt(from), 'peak')
  return powerRefused(place, auxiliaries, limit, fromSi('ratio', from, '1'))
}

function checksOf(
  { motor, usableEnergy }: Pick<Asked, 'motor' | 'usableEnergy'>,
  hasMotor: boolean,
  pack: PackInUse | undefined,
  tally: Tally,
  motion: Motion,
  ended: Ended,
): Check[] {
  const missed = tally.missed.reduce((sum, { from, until }) => sum + until - from, 0)
  return [
    ...(missed === 0 ? [] : [behindCheck(missed)]),
    ...(ended === 'stalled' ? [stalledCheck(motion)] : []),
    ...(hasMotor ? [motorTrial(motor, tally)] : []),
    ...(usableEnergy === undefined ? [] : [energyCheck(energy(tally.power), usableEnergy)]),
    ...(pack === undefined ? [] : packChecks(pack, tally, motion, ended)),
  ]
}

/** What the tyres of a road car hold at best, in g. Common practice, no source. */
const ADHESION = 1.1

/** A log that asks for more than the tyres hold: a fault of the recorder, or a drive that no car does. */
function spikeChecks({ hardest }: Course, { friction }: Asked['car']): Check[] {
  const spike = hardest?.()
  const most = quantity('acceleration', Math.min(ADHESION, friction?.si ?? ADHESION), 'g')
  if (spike === undefined || spike.acceleration <= most.si) return []
  const asked = fromSi('acceleration', spike.acceleration, 'g')
  return [
    trial(
      'cycle.acceleration',
      'Hardest change of speed in the log',
      says`the log asks for ${asked} over a second, ${time(spike.time)} from its start, at most the ${most} that tyres hold`,
      most.in('g') < ADHESION ? 'friction as given' : 'adhesion: 1.1 g, common practice, no source',
      'cycle',
      'log',
    ),
  ]
}

/** A motor is held by its heat: by what it remembers of its torque over the torque all day at its speed. */
function motorTrial({ continuousTorque, continuousPower }: Asked['motor'], { motorMemory }: Tally): Check {
  const remembered = fromSi('ratio', Math.sqrt(motorMemory.worst()), '%')
  return trial(
    'motor.load',
    'Worst average load of the motor',
    continuousTorque === undefined && continuousPower === undefined
      ? { unknown: 'whether the motor keeps cool is not known: give motor.continuousTorque or motor.continuousPower' }
      : says`the load of the motor averages ${remembered} of the torque that it holds all day, at most ${fromSi('ratio', 1, '%')}`,
    'torque and power all day of the motor',
    'motor.continuousTorque',
    'motor.continuousPower',
  )
}

function energyCheck(net: Quantity<'energy'>, limit: Quantity<'energy'>): Check {
  return check('drive.net', 'Net energy of the drive', net, 'at most', limit, 'usableEnergy', 'usableEnergy')
}

function behindCheck(missed: number): Check {
  const name = 'Time in which the car falls behind'
  return check('drive.missed', name, time(missed), 'at most', time(0), 'the speeds that are asked for')
}

function stalledCheck({ speed }: Motion): Check {
  const basis = 'a car that stands comes no farther'
  return check('drive.stalled', 'Speed on the hill', speedOf(speed), 'at least', speedOf(0.1), basis, 'journey')
}

function packChecks({ supply, from, to }: PackInUse, tally: Tally, { stateOfCharge }: Motion, ended: Ended): Check[] {
  const state = (value: number) => fromSi('ratio', value, '%')
  const current = (amperes: number) => fromSi('current', amperes, 'A')
  const [continuous, continuousName] = supply.discharge.continuous
  const [peak, peakName] = supply.discharge.peak
  const [floor, floorName] = supply.floor
  // No more than the peak, but for rounding.
  const remembered = Math.min(Math.sqrt(tally.packMemory?.worst() ?? 0), tally.peakCurrent)
  const left = ended === 'spent' ? Math.min(stateOfCharge, to) : stateOfCharge
  return [
    ...(supply.recovered === undefined || tally.regenerated === 0 ? [] : [supply.recovered]),
    check(
      'pack.stateOfCharge',
      'State of charge at the end',
      state(left),
      'at least',
      state(to),
      `reserve, from ${state(from)}`,
      'stateOfCharge',
      'reserve',
    ),
    check(
      'pack.rmsCurrent',
      'Worst average current of the pack',
      current(remembered),
      'at most',
      current(continuous),
      continuousName,
      'pack',
      'controller',
    ),
    check(
      'pack.peakCurrent',
      'Peak current',
      current(tally.peakCurrent),
      'at most',
      current(peak),
      peakName,
      'pack',
      'controller',
    ),
    unlessUnknown(
      check(
        'pack.lowestVoltage',
        'Lowest voltage under load',
        fromSi('voltage', tally.lowestVoltage, 'V'),
        'at least',
        fromSi('voltage', floor, 'V'),
        floorName,
        'pack',
        'controller',
      ),
      supply.cold?.text,
    ),
  ]
}

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
