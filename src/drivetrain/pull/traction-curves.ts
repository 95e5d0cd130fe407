/**
 * Pull against speed in every gear, what holds it, and where it meets the road load of a grade.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, and Ehsani et al., Modern Electric, Hybrid
 * Electric, and Fuel Cell Vehicles (2004), vehicle performance.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering, liftedCar } from '../../procedure/cautions.js'
import { assumed, type Findings, given, list, optional, procedure, type Unfinished } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { tractiveForce, wheelTorque } from '../gearing/gears.js'
import {
  type Drive,
  type DriveGear,
  driveFields,
  driveOf,
  greatestTorque,
  heldSpeed,
  highestSpeedIn,
  loadOn,
  loadWorked,
  tractionIn,
} from './drive.js'

/** A pull at a speed. */
export interface PullPoint {
  readonly speed: Quantity<'speed'>
  readonly force: Quantity<'force'>
  /** What holds it, such as `grip of the driven wheels`. */
  readonly limitedBy: string
}

/** The pull in one gear. */
export interface TractionCurve {
  readonly gear: string
  /** From standstill up to the highest speed of the motor. */
  readonly points: readonly PullPoint[]
  /** Pull of the motor from standstill, whether the tyres hold it or not. */
  readonly start: Quantity<'force'>
  /** Whether full torque from standstill makes the driven wheels spin; not told without `friction`. */
  readonly spins?: boolean
  /** For each grade the highest speed that the gear holds, and what stops it there; none where it holds no speed. */
  readonly crossings: readonly {
    readonly grade: Quantity<'ratio'>
    readonly speed?: Quantity<'speed'>
    readonly limitedBy?: string
  }[]
}

/** Pull in every gear, and the road load. */
export interface TractionCurves extends Findings {
  /** The gears, the lowest first. */
  readonly curves: readonly TractionCurve[]
  /** What resists the car, for each grade. */
  readonly roadLoads: readonly {
    readonly grade: Quantity<'ratio'>
    readonly points: readonly { readonly speed: Quantity<'speed'>; readonly force: Quantity<'force'> }[]
  }[]
  /** The most that the driven wheels hold on the level, where `friction` is given. */
  readonly grip?: Quantity<'force'>
}

/** Grades for which the road load is drawn, unless given. */
const GRADES = [0, 0.1, 0.2] as const
/** Distance of the points along the speed, in km/h, unless speeds are given. */
const STEP = 5
/** Of the points that are not given, no more than this: then they lie farther apart. */
const MOST_POINTS = 200

/**
 * Draws the pull of a car in every gear against speed, under the limits of motor, pack, controller and grip, with the
 * road load on several grades and the speeds at which the two meet.
 *
 * Answers: how hard does the car pull in every gear, what holds it, and where does the pull meet the road load?
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
 * - `grades`: grades of the road loads, a list, each a plain number, optional
 * - `speeds`: road speeds of the points, a list, each in km/h, each at least 0 km/h, optional
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: pulls are those at a steady speed
 *
 * @returns A curve for each gear with what holds each point, road loads, and crossings.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2; Ehsani et al., Modern Electric, Hybrid
 * Electric, and Fuel Cell Vehicles (2004), vehicle performance.
 *
 * @example
 * ```ts
 * const { curves } = tractionCurves({
 *   car: {
 *     mass: '760 kg',
 *     rollingResistance: 0.013,
 *     dragArea: '0.7 m²',
 *     wheelbase: '2.03 m',
 *     centreOfGravity: { aft: '1 m', up: '0.5 m' },
 *     drivenAxle: 'rear',
 *     tyre: '145/80 R13',
 *     friction: 0.9,
 *   },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 * })
 * curves.map(({ gear, start, spins }) => `${gear} ${start}${spins ? ', spins' : ''}`)
 * // ['first 6872 N, spins', 'second 4159 N', 'third 2622 N', 'fourth 1808 N']
 * ```
 */
export const tractionCurves = /*@__PURE__*/ procedure({
  name: 'tractionCurves',
  title: 'Pull against speed',
  answers: 'How hard does the car pull in every gear, what holds it, and where does the pull meet the road load?',
  input: {
    ...driveFields,
    grades: optional(list('Grades of the road loads', given('ratio', 'Grade, rise over run', { usual: [-0.2, 0.2] }))),
    speeds: optional(list('Road speeds of the points', given('speed', 'Road speed', { min: 0 }))),
  },
  source: [
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2'),
    cite('Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004)', 'vehicle performance'),
  ],
  assumes: ['Pulls are those at a steady speed.'],
  work: ({ grades: asked, speeds: at, ...vehicle }): Unfinished<TractionCurves> => {
    const drive = driveOf('tractionCurves', vehicle)
    const grades = asked ?? GRADES.map((grade) => quantity('ratio', grade).as('%'))
    const speeds = at ?? everyStep(drive)
    const grip = drive.grip?.driving(0)
    return {
      curves: drive.gears.map((gear) => curveOf(drive, gear, speeds, grades)),
      roadLoads: grades.map((grade) =>
        section(`Road load on a grade of ${grade.as('%')}`, () => ({
          grade,
          points: speeds.map((speed, i) => ({
            speed,
            // The working shows the last, where the air tells most.
            force:
              i === speeds.length - 1
                ? loadWorked(drive, speed, grade)
                : quantity('force', loadOn(drive, speed.si, grade.si), 'N'),
          })),
        })),
      ),
      ...(grip === undefined ? {} : { grip: quantity('force', grip, 'N') }),
      checks: drive.checks,
      assumptions: [
        ...drive.assumptions,
        ...(asked === undefined
          ? [assumed('grades.default', 'Grades are level, 10 % and 20 % (grades by default).')]
          : []),
      ],
      cautions: [liftedCar, brakesAndSteering],
    }
  },
})

/** Speeds from standstill to beyond the fastest gear, every 5 km/h, where none are given. @internal */
export function everyStep(drive: Drive): readonly Quantity<'speed'>[] {
  const fastest = Math.max(...drive.gears.map((gear) => highestSpeedIn(drive, gear)))
  const apart = STEP * Math.ceil((fastest * 3.6) / STEP / MOST_POINTS)
  const count = Math.ceil((fastest * 3.6) / apart)
  return Array.from({ length: count + 1 }, (_, i) => quantity('speed', i * apart, 'km/h'))
}

function curveOf(
  drive: Drive,
  gear: DriveGear,
  speeds: readonly Quantity<'speed'>[],
  grades: readonly Quantity<'ratio'>[],
): TractionCurve {
  const start = section(`Pull from standstill in ${gear.name}`, () => startIn(drive, gear))
  const grip = drive.grip?.driving(0)
  const end = highestSpeedIn(drive, gear)
  return {
    gear: gear.name,
    points: speeds
      .filter((speed) => speed.si <= end)
      .map((speed) => {
        const { most, limitedBy } = tractionIn(drive, gear, speed.si, 0)
        return { speed, force: quantity('force', most, 'N'), limitedBy }
      }),
    start,
    ...(grip === undefined ? {} : { spins: start.si > grip }),
    crossings: grades.map((grade) => {
      const held = heldSpeed(drive, gear, grade.si, 'peak')
      if (held === undefined) return { grade }
      return { grade, speed: quantity('speed', held.most, 'm/s').as('km/h'), limitedBy: held.limitedBy }
    }),
  }
}

function startIn(drive: Drive, { gear }: DriveGear): Quantity<'force'> {
  const { ratio, efficiency, rollingRadius } = gear
  const torque = quantity('torque', greatestTorque(drive, 0, 'peak').most, 'N·m')
  return tractiveForce({ wheelTorque: wheelTorque({ motorTorque: torque, ratio, efficiency }), radius: rollingRadius })
}
