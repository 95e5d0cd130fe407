/**
 * What a car can hold: its highest speed, and the steepest grade it climbs.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 4, and Ehsani et al., Modern Electric,
 * Hybrid Electric, and Fuel Cell Vehicles (2004), vehicle performance.
 */
import { cite, section, standardGravity } from '../../formula/index.js'
import { brakesAndSteering } from '../../procedure/cautions.js'
import {
  assumed,
  type Check,
  check,
  type Findings,
  given,
  list,
  optional,
  procedure,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../../quantity/index.js'
import { motorSpeed } from '../gearing/gears.js'
import { oneRating, type Rating } from '../motor/envelope.js'
import { roadPower } from '../road/road-load.js'
import { gradeability, gripGradeability } from '../road/traction.js'
import { onTheRoad } from '../vehicle.js'
import {
  type Drive,
  type DriveGear,
  dragWorked,
  driveFields,
  driveOf,
  GRIP,
  gradeField,
  type Held,
  heldSpeed,
  highestSpeedIn,
  loadOn,
  loadWorked,
  pullIn,
  tractionIn,
} from './drive.js'

/** A speed that a car holds. */
export interface HeldSpeed {
  readonly speed: Quantity<'speed'>
  readonly gear: string
  /** What stops it there, such as `highest speed of the motor`. */
  readonly limitedBy: string
}

/** The highest speed of a car. */
export interface TopSpeed extends HeldSpeed, Findings {
  /** Power at the wheels at that speed. */
  readonly power: Quantity<'power'>
  readonly motorSpeed: Quantity<'angularSpeed'>
  /** The highest speed of each gear; without one where the gear cannot hold any. */
  readonly gears: readonly (Partial<HeldSpeed> & { readonly gear: string })[]
  /** The highest speed that it can hold all day, where figures for all day are given for the motor. */
  readonly continuous?: HeldSpeed
}

/**
 * Finds the highest speed of a car, in which gear, and what stops it there: the motor, the pack, or the grip.
 *
 * Answers: how fast does the car go, in which gear, and what stops it there?
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
 * - `grade`: grade, rise over run, a plain number, 0 by default (a level road)
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 *
 * @returns The speed, the gear and the limit; the same of each gear; and the speed that is held all day, where
 * `motor.continuousTorque` or `motor.continuousPower` is given.
 * @throws InputError for input that cannot be used or does not suffice, by its path; CalculationError on a grade that the
 * car does not climb, with the pull that it has and needs.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 4.
 *
 * @example
 * ```ts
 * const { speed, gear, limitedBy } = topSpeed({
 *   car: { mass: '760 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 * })
 * `${speed} in ${gear}: ${limitedBy}` // '167.6 km/h in fourth: peak power of the motor'
 * ```
 */
export const topSpeed = /*@__PURE__*/ procedure({
  name: 'topSpeed',
  title: 'Highest speed',
  answers: 'How fast does the car go, in which gear, and what stops it there?',
  input: {
    ...driveFields,
    grade: gradeField,
  },
  source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapters 2 and 4')],
  work: ({ grade, ...vehicle }): Unfinished<TopSpeed> => {
    const drive = driveOf('topSpeed', vehicle)
    const rated = (rating: Rating) =>
      drive.gears.map((gear) => ({ gear, held: heldSpeed(drive, gear, grade.si, rating) }))
    const peak = rated('peak')
    const best = fastest(peak)
    if (best === undefined) throw noClimb('topSpeed', drive, grade)
    const all = drive.envelope.hasContinuous ? fastest(rated('continuous')) : undefined
    const speed = kilometresPerHour(best.held.most)
    const { ratio, rollingRadius } = best.gear.gear
    return {
      speed,
      gear: best.gear.name,
      limitedBy: best.held.limitedBy,
      ...section(`At ${speed} in ${best.gear.name}`, () => ({
        power: roadPower({ force: loadWorked(drive, speed, grade), speed }),
        motorSpeed: motorSpeed({ speed, ratio, rollingRadius }),
      })),
      gears: peak.map(({ gear, held }) =>
        held === undefined
          ? { gear: gear.name }
          : { gear: gear.name, speed: kilometresPerHour(held.most), limitedBy: held.limitedBy },
      ),
      ...(all === undefined
        ? {}
        : {
            continuous: {
              speed: kilometresPerHour(all.held.most),
              gear: all.gear.name,
              limitedBy: all.held.limitedBy,
            },
          }),
      checks: [
        ...drive.checks,
        ...(drive.envelope.hasContinuous && all === undefined ? [allDayCheck(drive, grade)] : []),
      ],
      assumptions: [
        ...drive.assumptions,
        ...oneRating(vehicle.motor),
        ...(drive.envelope.hasContinuous
          ? []
          : [
              assumed(
                'motor.continuous.absent',
                'How long the speed is held is not told: no continuous figures are given.',
              ),
            ]),
      ],
      cautions: [brakesAndSteering],
    }
  },
})

/** The check of a grade on which no speed is held all day. */
function allDayCheck(drive: Drive, grade: Quantity<'ratio'>): Check {
  const lowest = drive.gears[0] as DriveGear
  const force = (newtons: number) => quantity('force', newtons, 'N')
  const pull = force(pullIn(drive, lowest, 0, 'continuous').most)
  const load = force(loadOn(drive, 0, grade.si))
  const basis = `what resists on ${grade.as('%')}`
  return check('motor.continuousPull', 'Pull that the motor holds all day', pull, 'at least', load, basis, 'grade')
}

function kilometresPerHour(speed: number): Quantity<'speed'> {
  return quantity('speed', speed, 'm/s').as('km/h')
}

interface Candidate {
  readonly gear: DriveGear
  readonly held: Held | undefined
}

/** The fastest gear; of those that are as fast, the lowest. */
function fastest(candidates: readonly Candidate[]): { readonly gear: DriveGear; readonly held: Held } | undefined {
  return candidates.reduce<{ readonly gear: DriveGear; readonly held: Held } | undefined>(
    (best, { gear, held }) =>
      held !== undefined && (best === undefined || held.most > best.held.most) ? { gear, held } : best,
    undefined,
  )
}

/** The refusal of a grade on which a car cannot hold any speed. */
function noClimb(where: string, drive: Drive, grade: Quantity<'ratio'>): CalculationError {
  const gear = drive.gears[0] as DriveGear
  const { most, limitedBy } = tractionIn(drive, gear, 0, grade.si)
  const [has, needs] = [most, loadOn(drive, 0, grade.si)].map((force) => String(quantity('force', force, 'N')))
  const message = `the car does not climb a grade of ${grade.as('%')}: it needs ${needs} and pulls ${has} in ${gear.name}, held by the ${limitedBy}`
  return new CalculationError(where, message, { needed: needs as string, pull: has as string, limitedBy })
}

/** The steepest grade that a car climbs at a speed. */
export interface Climb {
  readonly speed: Quantity<'speed'>
  /** Rise over run. Negative where the car does not hold the speed on the level. */
  readonly grade: Quantity<'ratio'>
  readonly gear: string
  readonly limitedBy: string
  /** The same all day, where figures for all day are given for the motor. */
  readonly continuous?: { readonly grade: Quantity<'ratio'>; readonly gear: string; readonly limitedBy: string }
}

/** What a car climbs. */
export interface ClimbingAbility extends Findings {
  /** From standstill, in the gear that climbs most. */
  readonly start: Climb
  /** At each speed that was asked for, in the gear that climbs most there. */
  readonly climbs: readonly Climb[]
  /** From standstill, in each gear. */
  readonly gears: readonly { readonly gear: string; readonly grade: Quantity<'ratio'>; readonly limitedBy: string }[]
}

/**
 * Finds the steepest grade that a car climbs, from standstill and at speeds, in which gear, and what holds it: the motor,
 * the pack or the grip.
 *
 * Give the mass with passengers and load: that is what climbs the hill.
 *
 * Answers: how steep a grade does the car climb, from standstill and at speeds, and what holds it?
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
 * - `speeds`: road speeds at which to tell the grade, a list, each in km/h, each at least 0 km/h, optional
 * - `grade`: grade that the car must climb from standstill, rise over run, a plain number, above 0, optional
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the car holds its speed: nothing is left to speed up with
 *
 * @returns The grades, rise over run, with gear and limit; also all day, where `motor.continuousTorque` or
 * `motor.continuousPower` is given.
 * @throws InputError for input that cannot be used or does not suffice, by its path; CalculationError for a speed at which
 * no gear turns the motor slowly enough, and without `car.friction` where a gear pulls more than the weight: then only the grip
 * bounds the grade.
 * Source: Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), gradeability; Gillespie,
 * Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { start, climbs } = climbingAbility({
 *   car: { mass: '900 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 *   speeds: ['60 km/h'],
 * })
 * `${start.grade} in ${start.gear}` // '120.8 % in first'
 * climbs.map(({ speed, grade, gear }) => `${speed}: ${grade} in ${gear}`) // ['60 km/h: 30.74 % in second']
 * ```
 */
export const climbingAbility = /*@__PURE__*/ procedure({
  name: 'climbingAbility',
  title: 'Steepest grade',
  answers: 'How steep a grade does the car climb, from standstill and at speeds, and what holds it?',
  input: {
    ...driveFields,
    speeds: optional(
      list('Road speeds at which to tell the grade', given('speed', 'Road speed', { min: 0, ...onTheRoad })),
    ),
    grade: optional(
      given('ratio', 'Grade that the car must climb from standstill, rise over run', {
        above: 0,
        usual: [0, 0.35, 'the steepest public streets'],
      }),
    ),
  },
  source: [
    cite('Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004)', 'gradeability'),
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2'),
  ],
  assumes: ['The car holds its speed: nothing is left to speed up with.'],
  work: ({ speeds = [], grade, ...vehicle }): Unfinished<ClimbingAbility> => {
    const drive = driveOf('climbingAbility', vehicle)
    const standstill = quantity('speed', '0 km/h')
    const start = climbAt(drive, standstill)
    return {
      start,
      climbs: speeds.map((speed) => climbAt(drive, speed)),
      gears: drive.gears.map((gear) => ({ gear: gear.name, ...gradeIn(drive, gear, standstill, 'peak') })),
      checks: [...drive.checks, ...(grade === undefined ? [] : [startCheck(start, grade)])],
      assumptions: [...drive.assumptions, ...oneRating(vehicle.motor)],
      cautions: [brakesAndSteering],
    }
  },
})

function startCheck({ grade, gear }: Climb, asked: Quantity<'ratio'>): Check {
  const name = `Grade from standstill in ${gear}`
  return check('start.grade', name, grade, 'at least', asked.as('%'), 'asked for: grade', 'grade')
}

function climbAt(drive: Drive, speed: Quantity<'speed'>): Climb {
  const gears = drive.gears.filter((gear) => speed.si <= highestSpeedIn(drive, gear))
  if (gears.length === 0) {
    const fastestGear = drive.gears.at(-1) as DriveGear
    const most = String(kilometresPerHour(highestSpeedIn(drive, fastestGear)))
    const message = `no gear does ${speed}: at most ${most} in ${fastestGear.name}, at the highest speed of the motor`
    throw new CalculationError('climbingAbility', message, { speed: String(speed), atMost: most })
  }
  const best = (rating: Rating) =>
    gears
      .map((gear) => ({ gear: gear.name, ...gradeIn(drive, gear, speed, rating) }))
      .reduce((one, other) => (other.grade.si > one.grade.si ? other : one))
  const { gear, grade, limitedBy } = section(`At ${speed}`, () => best('peak'))
  const all = drive.envelope.hasContinuous ? section(`At ${speed}, all day`, () => best('continuous')) : undefined
  return { speed, grade, gear, limitedBy, ...(all === undefined ? {} : { continuous: all }) }
}

/** The steepest grade in a gear: what the pull climbs, or what the driven wheels hold where that is less. */
function gradeIn(
  drive: Drive,
  gear: DriveGear,
  speed: Quantity<'speed'>,
  rating: Rating,
): { readonly grade: Quantity<'ratio'>; readonly limitedBy: string } {
  const { road, grip } = drive
  const { mass, rollingResistance } = road
  const pull = pullIn(drive, gear, speed.si, rating)
  const other = dragWorked(drive, speed)
  const weight = mass.si * standardGravity.value.si
  // A pull of the weight and more climbs whatever the tyres hold.
  const limits = [
    ...(pull.most - other.si < weight
      ? [
          {
            grade: gradeability({
              tractiveForce: quantity('force', pull.most, 'N'),
              mass,
              coefficient: rollingResistance,
              aerodynamicDrag: other,
            }),
            limitedBy: pull.limitedBy,
          },
        ]
      : []),
    ...(grip === undefined
      ? []
      : [
          {
            grade: gripGradeability({
              tractionLimit: quantity('force', grip.driving(0), 'N'),
              mass,
              coefficient: rollingResistance,
              aerodynamicDrag: other,
            }),
            limitedBy: GRIP,
          },
        ]),
  ]
  const [first, second] = limits
  if (first !== undefined) return second !== undefined && second.grade.si < first.grade.si ? second : first
  const has = String(quantity('force', pull.most, 'N'))
  throw new CalculationError(
    'climbingAbility',
    `the pull of ${has} in ${gear.name} is more than the weight of the car: only grip bounds the grade, and no car.friction is given`,
    { pull: has },
  )
}
