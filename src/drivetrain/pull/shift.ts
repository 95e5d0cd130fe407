/**
 * Which gear when: where the next gear pulls harder, and which gear loses least at a steady speed.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, and on the losses of motor and driveline.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering } from '../../procedure/cautions.js'
import { type Findings, given, procedure, type Unfinished } from '../../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import { torqueForForce } from '../gearing/driveline.js'
import { motorSpeed, motorTorque } from '../gearing/gears.js'
import { conversionOf, motorLimits } from '../motor/envelope.js'
import { roadPower } from '../road/road-load.js'
import { onTheRoad } from '../vehicle.js'
import {
  type Drive,
  type DriveGear,
  driveFields,
  driveOf,
  GRIP,
  gradeField,
  greatestTorque,
  highestSpeedIn,
  lastWhere,
  loadOn,
  loadWorked,
  pullIn,
} from './drive.js'

/** A shift from one gear to the next. */
export interface Shift {
  readonly from: string
  readonly to: string
  /** Road speed above which the lower gear never pulls harder. */
  readonly speed: Quantity<'speed'>
  /** Speed of the motor before the shift, and after it. */
  readonly before: Quantity<'angularSpeed'>
  readonly after: Quantity<'angularSpeed'>
  /** Why there: the next gear pulls as hard, or the motor can turn no faster. */
  readonly reason: string
}

/** Where to shift for the hardest pull. */
export interface ShiftSpeeds extends Findings {
  readonly shifts: readonly Shift[]
}

/** By how much a pull must be more, as a share of it, to count as more. */
const HARDER = 1e-9

/**
 * Finds the road speed of each shift that makes the most of the motor: above it the lower gear never pulls harder. Where
 * power, not torque, is the limit, gears of one efficiency pull alike and the shift is as early as it costs nothing.
 *
 * Grip is left out: the shift is that of a car that grips.
 *
 * Answers: at which road speed does each shift make the most of the motor?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `stateOfCharge`: state of charge of the pack, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the tyres grip: a shift may be earlier where they do not
 * - always assumed: the pulls are those at a steady speed; the time that a shift takes is left out
 *
 * @returns For each gear but the highest, where to leave it and why.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { shifts } = shiftSpeeds({
 *   car: { mass: '760 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 * })
 * shifts.map(({ from, speed, reason }) => `${from} until ${speed}: ${reason}`)
 * // [
 * //   'first until 40.68 km/h: second pulls as hard',
 * //   'second until 64.53 km/h: third pulls as hard',
 * //   'third until 93.57 km/h: fourth pulls as hard',
 * // ]
 * ```
 */
export const shiftSpeeds = /*@__PURE__*/ procedure({
  name: 'shiftSpeeds',
  title: 'Speeds at which to shift',
  answers: 'At which road speed does each shift make the most of the motor?',
  input: {
    ...driveFields,
  },
  source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2')],
  assumes: [
    'The tyres grip: a shift may be earlier where they do not.',
    'The pulls are those at a steady speed; the time that a shift takes is left out.',
  ],
  work: (asked): Unfinished<ShiftSpeeds> => {
    const drive = driveOf('shiftSpeeds', { ...asked, car: { ...asked.car, friction: undefined } })
    return {
      shifts: drive.gears.slice(1).map((next, i) => shiftTo(drive, drive.gears[i] as DriveGear, next)),
      checks: drive.checks,
      assumptions: drive.assumptions.filter(({ id }) => id !== 'car.friction.absent'),
      cautions: [brakesAndSteering],
    }
  },
})

function shiftTo(drive: Drive, gear: DriveGear, next: DriveGear): Shift {
  const end = highestSpeedIn(drive, gear)
  const pullsHarder = (speed: number) =>
    pullIn(drive, gear, speed).most > pullIn(drive, next, speed).most * (1 + HARDER)
  const at = lastWhere(pullsHarder, 0, end) ?? 0
  return section(`From ${gear.name} to ${next.name}`, () => {
    const speed = quantity('speed', at, 'm/s').as('km/h')
    const turning = ({ gear: { ratio, rollingRadius } }: DriveGear) => motorSpeed({ speed, ratio, rollingRadius })
    const reason = at === end ? motorLimits.speed : `${next.name} pulls as hard`
    return { from: gear.name, to: next.name, speed, before: turning(gear), after: turning(next), reason }
  })
}

/** A gear at a steady speed. */
export interface SteadyGear {
  readonly gear: string
  readonly motorSpeed: Quantity<'angularSpeed'>
  /** Torque of the motor; negative where it brakes. */
  readonly motorTorque: Quantity<'torque'>
  /** What driveline, motor and controller lose. */
  readonly loss: Quantity<'power'>
  /** Power into the controller; negative where it is given back. */
  readonly electricalPower: Quantity<'power'>
  /** Why the gear cannot do it, where it cannot. */
  readonly refused?: string
}

/** The gear that loses least at a speed. */
export interface BestGear extends Findings {
  readonly gear: string
  /** Every gear, the lowest first. */
  readonly rows: readonly SteadyGear[]
}

/**
 * Finds the gear in which driveline, motor and controller lose least at a steady speed.
 *
 * Needs `motor.loss` or `motor.efficiency`. With one `efficiency` for the motor
 * and one for all gears nothing tells the gears apart: measure the losses, or give an efficiency for each gear. Of gears
 * that lose alike the highest is taken.
 *
 * Answers: in which gear do driveline, motor and controller lose least at a steady speed?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `stateOfCharge`: state of charge of the pack, a plain number, at least 0 and at most 1, optional
 * - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `speed`: road speed, in km/h, above 0 km/h
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 *
 * @returns The gear, and speed, torque and loss of every gear; what refuses a gear stands in its row.
 * @throws InputError for input that cannot be used or does not suffice, by its path; CalculationError where no gear can
 * hold the speed, with what refuses each.
 * Source: Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6.
 *
 * @example
 * ```ts
 * const { gear, rows } = bestGear({
 *   car: { mass: '760 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: {
 *     peakTorque: '120 N·m',
 *     peakPower: '50 kW',
 *     maximumSpeed: '8000 rpm',
 *     loss: { lossPerTorqueSquared: '0.3 W/(N·m)²', lossPerSpeed: '0.4 W/(rad/s)', constant: '80 W' },
 *   },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 *   speed: '50 km/h',
 * })
 * gear // 'fourth'
 * String(rows[3]?.loss) // '0.369 kW'
 * ```
 */
export const bestGear = /*@__PURE__*/ procedure({
  name: 'bestGear',
  title: 'Gear that loses least',
  answers: 'In which gear do driveline, motor and controller lose least at a steady speed?',
  input: {
    ...driveFields,
    speed: given('speed', 'Road speed', { above: 0, ...onTheRoad }),
    grade: gradeField,
  },
  source: [cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 6')],
  work: ({ speed, grade, ...vehicle }): Unfinished<BestGear> => {
    const drive = driveOf('bestGear', vehicle)
    const { powerOf: electricalOf, assumptions } = conversionOf('bestGear', vehicle.motor)
    const force = section('What resists the car', () => loadWorked(drive, speed, grade))
    const wheelPower = roadPower({ force, speed })
    const rows = drive.gears.map((each) =>
      section(`In ${each.name}`, (): SteadyGear => {
        const { ratio, rollingRadius, efficiency } = each.gear
        const turning = motorSpeed({ speed, ratio, rollingRadius })
        const torque = motorTorque({ force, ratio, rollingRadius, efficiency })
        const electricalPower = electricalOf(torque, turning)
        const refused = refusalOf(drive, each, speed.si, grade.si)
        return {
          gear: each.name,
          motorSpeed: turning,
          motorTorque: torque,
          loss: electricalPower.minus(wheelPower),
          electricalPower,
          ...(refused === undefined ? {} : { refused }),
        }
      }),
    )
    const able = rows.filter(({ refused }) => refused === undefined)
    const [first, ...others] = able.toReversed()
    if (first === undefined) throw noGear(speed, rows)
    const isLess = (one: SteadyGear, other: SteadyGear) =>
      one.loss.si < other.loss.si - HARDER * Math.abs(other.loss.si)
    return {
      gear: others.reduce((best, each) => (isLess(each, best) ? each : best), first).gear,
      rows,
      checks: drive.checks,
      assumptions: [...drive.assumptions, ...(drive.supply === undefined ? assumptions : [])],
      cautions: [],
    }
  },
})

function refusalOf(drive: Drive, gear: DriveGear, speed: number, grade: number): string | undefined {
  const turning = (speed * gear.ratio) / gear.radius
  const force = loadOn(drive, speed, grade)
  // Where the car must be held back, brakes do what the motor does not.
  const { most, limitedBy } = greatestTorque(drive, turning, 'peak')
  if (turning > drive.envelope.maximumSpeed || torqueForForce(gear, force) > most) return limitedBy
  return force > (drive.grip?.driving(grade) ?? Infinity) ? GRIP : undefined
}

function noGear(speed: Quantity<'speed'>, rows: readonly SteadyGear[]): CalculationError {
  const reasons = rows.map(({ gear, refused }) => `${gear}, ${refused}`)
  const message = `no gear holds ${speed}: ${reasons.join('; ')}`
  return new CalculationError('bestGear', message, { speed: String(speed) })
}
