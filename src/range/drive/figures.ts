/** The figures of a drive that was booked: what it took, where that went, what it is held to, and what was taken for granted. */

import { oneRating } from '../../drivetrain/motor/envelope.js'
import { greatestDischarge, powerRefused } from '../../drivetrain/motor/supply.js'
import type { Car, Motor } from '../../drivetrain/vehicle.js'
import { USUAL_MEMORY } from '../../formula/memory.js'
import { highVoltage, lithiumCells } from '../../procedure/cautions.js'
import { unlessUnknown } from '../../procedure/check.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { consumption } from '../consumption.js'
import type { Course } from './journey.js'
import { limits, type Motion } from './motion.js'
import type { PackInUse, Powertrain } from './powertrain.js'
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
  /** The greatest current back into the pack; with a pack. */
  readonly peakChargeCurrent?: Quantity<'current'>
  readonly rmsCurrent?: Quantity<'current'>
  /** Lowest voltage under load. */
  readonly lowestVoltage?: Quantity<'voltage'>
  /** Heat made inside the pack, on top of the net energy. */
  readonly packHeat?: Quantity<'energy'>
  readonly stateOfCharge?: Quantity<'ratio'>
  /** When the car could not do what was asked; at most the first 1000 times. */
  readonly missed: readonly Missed[]
}

/** Of what is asked, what a drive is held to. */
interface Asked {
  readonly car: Pick<Car, 'friction'>
  readonly motor: Motor
  readonly usableEnergy?: Quantity<'energy'> | undefined
}

/** What drove over what. */
interface Driving {
  readonly train: Powertrain
  readonly pack: PackInUse | undefined
  readonly course: Course
}

/** Why a drive ended before its end. @internal */
export type Ended = 'empty' | 'spent' | 'stalled' | undefined

/** A car that has come no farther than this, in metres, has not moved. */
const STILL = 1e-6

const energy = (joules: number) => fromSi('energy', joules, 'kWh')
const power = (watts: number) => fromSi('power', watts, 'kW')
const time = (seconds: number) => fromSi('time', seconds, 's')
/** Metres as they are shown. @internal */
export const way = (metres: number) => fromSi('length', metres, 'km')
/** Metres per second as they are shown. @internal */
export const speedOf = (metresPerSecond: number) => fromSi('speed', metresPerSecond, 'km/h')

/** The figures of a drive that was booked. @internal */
export function figuresOf(
  place: string,
  asked: Asked,
  { train, pack, course }: Driving,
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
function memoryAssumptions({ motor }: Asked, train: Powertrain, pack: PackInUse | undefined): Assumption[] {
  const { isRated } = train
  return [
    ...oneRating(motor),
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
      : [
          assumed(
            'pack.memory',
            `The current of the pack is averaged over ${time(USUAL_MEMORY).as('min')} (common practice, no source).`,
          ),
        ]),
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
    peakChargeCurrent: fromSi('current', tally.peakChargeCurrent, 'A'),
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
  { motor, usableEnergy }: Asked,
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
    ...(supply.tooHigh === undefined ? [] : [supply.tooHigh]),
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

/** A step as it is shown. @internal */
export function stepOf(motion: Motion, { train, pack }: Omit<Driving, 'course'>): DriveStep {
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
