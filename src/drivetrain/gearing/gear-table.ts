/**
 * What each gear does: the road speed it gives a motor speed, the step to the next gear, and where it ends.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { cite, section } from '../../formula/index.js'
import { liftedCar } from '../../procedure/cautions.js'
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
import { type Quantity, quantity } from '../../quantity/index.js'
import { carField, gearboxField, motorField, spareParts } from '../vehicle.js'
import { type Gear, gearingOf } from './driveline.js'
import { gearStep, motorSpeed, roadSpeed } from './gears.js'

/** One gear of a table. */
export interface GearRow {
  readonly gear: string
  /** Turns of the motor for one turn of the wheels, final drive included. */
  readonly ratio: Quantity<'ratio'>
  /** Road speed for each 1000 rpm of the motor. */
  readonly speedPerThousand: Quantity<'speed'>
  /** Road speed at the highest speed of the motor, where that is given. */
  readonly topSpeed?: Quantity<'speed'>
  /** Speed of the motor at each road speed that was asked for, whether the motor bears it or not. */
  readonly motorSpeeds: readonly Quantity<'angularSpeed'>[]
  /** Road speed at each motor speed that was asked for. */
  readonly roadSpeeds: readonly Quantity<'speed'>[]
  /** Ratio of the gear over that of the next; the highest gear has none. */
  readonly step?: Quantity<'ratio'>
  /** Speed of the motor after a shift to the next gear from its highest speed, where that is given. */
  readonly speedAfterShift?: Quantity<'angularSpeed'>
}

/** A table of gears. */
export interface GearTable extends Findings {
  /** The gears, the lowest first. */
  readonly rows: readonly GearRow[]
  readonly rollingRadius: Quantity<'length'>
}

/**
 * Tells what each gear does with a motor: road speeds, motor speeds, and the step to the next gear.
 *
 * A check holds the motor in its highest gear to its maximum speed at each road speed that is asked for.
 *
 * Answers: what does each gear do with the motor: road speeds, motor speeds, and the step to the next gear?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`, optional
 * - `speeds`: road speeds at which to tell the motor speeds, a list, each in km/h, each at least 0 km/h, optional
 * - `motorSpeeds`: motor speeds at which to tell the road speeds, a list, each in rpm, each at least 0 rpm, optional
 * - `controller`, `pack`, `auxiliaries`, `air`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the driven wheels do not slip
 *
 * @returns A row for each gear, and the rolling radius.
 * @throws InputError for input that cannot be used, by its path: gears that do not fall, what is no tyre mark.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { rows } = gearTable({
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 *   motor: { maximumSpeed: '8000 rpm' },
 *   car: { mass: '760 kg', tyre: '145/80 R13' },
 *   speeds: ['50 km/h'],
 * })
 * rows.map(({ gear, topSpeed }) => `${gear} ${topSpeed}`)
 * // ['first 49.51 km/h', 'second 81.79 km/h', 'third 129.7 km/h', 'fourth 188.1 km/h']
 * String(rows[2]?.motorSpeeds[0]) // '3083 rpm'
 * ```
 */
export const gearTable = /*@__PURE__*/ procedure({
  name: 'gearTable',
  title: 'Table of gears',
  answers: 'What does each gear do with the motor: road speeds, motor speeds, and the step to the next gear?',
  input: {
    ...spareParts,
    car: carField,
    gearbox: gearboxField,
    motor: optional(motorField),
    speeds: optional(list('Road speeds at which to tell the motor speeds', given('speed', 'Road speed', { min: 0 }))),
    motorSpeeds: optional(
      list('Motor speeds at which to tell the road speeds', given('angularSpeed', 'Motor speed', { min: 0 })),
    ),
  },
  source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2')],
  assumes: ['The driven wheels do not slip.'],
  work: ({ car, gearbox, motor, speeds = [], motorSpeeds = [] }): Unfinished<GearTable> => {
    const { gears, assumptions } = gearingOf('gearTable', { car, gearbox })
    const maximumSpeed = motor?.maximumSpeed
    const rows = gears.map((gear, i) =>
      section(`In ${gear.name}`, () => rowOf(gear, gears[i + 1], { speeds, motorSpeeds, maximumSpeed })),
    )
    const highest = rows.at(-1) as GearRow
    return {
      rows,
      rollingRadius: (gears[0] as Gear).rollingRadius,
      checks: maximumSpeed === undefined ? [] : speeds.map((speed, i) => spinCheck(highest, speed, i, maximumSpeed)),
      assumptions:
        maximumSpeed === undefined && speeds.length > 0
          ? [...assumptions, assumed('motor.maximumSpeed.absent', SPINS)]
          : assumptions,
      cautions: [liftedCar],
    }
  },
})

const SPINS = 'The speeds of the motor are not held to a limit: give motor.maximumSpeed.'

const THOUSAND = /*@__PURE__*/ (() => quantity('angularSpeed', '1000 rpm'))()

function rowOf(
  gear: Gear,
  next: Gear | undefined,
  asked: {
    readonly speeds: readonly Quantity<'speed'>[]
    readonly motorSpeeds: readonly Quantity<'angularSpeed'>[]
    readonly maximumSpeed: Quantity<'angularSpeed'> | undefined
  },
): GearRow {
  const { ratio, rollingRadius } = gear
  const { maximumSpeed } = asked
  const roadAt = (turning: Quantity<'angularSpeed'>) => roadSpeed({ motorSpeed: turning, ratio, rollingRadius })
  const topSpeed = maximumSpeed === undefined ? undefined : roadAt(maximumSpeed)
  return {
    gear: gear.name,
    ratio,
    speedPerThousand: roadAt(THOUSAND),
    ...(topSpeed === undefined ? {} : { topSpeed }),
    motorSpeeds: asked.speeds.map((speed) => motorSpeed({ speed, ratio, rollingRadius })),
    roadSpeeds: asked.motorSpeeds.map(roadAt),
    ...(next === undefined ? {} : { step: gearStep({ ratio: gear.gearRatio, nextRatio: next.gearRatio }) }),
    ...(next === undefined || topSpeed === undefined
      ? {}
      : { speedAfterShift: motorSpeed({ speed: topSpeed, ratio: next.ratio, rollingRadius }) }),
  }
}

function spinCheck(
  { gear, motorSpeeds }: GearRow,
  speed: Quantity<'speed'>,
  i: number,
  limit: Quantity<'angularSpeed'>,
): Check {
  const actual = motorSpeeds[i] as Quantity<'angularSpeed'>
  const name = `Motor in ${gear} at ${speed}`
  return check(`motor.speed.${i + 1}`, name, actual, 'at most', limit, 'motor.maximumSpeed', `speeds[${i}]`)
}
