/**
 * What each gear does: the road speed it gives a motor speed, the step to the next gear, and where it ends.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { about, given, procedure } from '../../structure/index.js'
import { motorGiven } from '../motor/envelope.js'
import { type Gear, gearingOf, gearingShape } from './driveline.js'
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

const gearTableGiven = /*@__PURE__*/ (() =>
  about(
    'the gears of a car',
    z.strictObject({
      ...gearingShape,
      motor: z.optional(motorGiven),
      speeds: about('road speeds', z.optional(z.readonly(z.array(given('speed', 'Road speed', { min: 0 }))))),
      motorSpeeds: about(
        'speeds of the motor',
        z.optional(z.readonly(z.array(given('angularSpeed', 'Motor speed', { min: 0 })))),
      ),
    }),
  ))()

/**
 * Tells what each gear does with a motor: road speeds, motor speeds, and the step to the next gear.
 *
 * - `gears`: the ratios by name, `{ first: 3.6, second: 2.1 }`, or as a list, `[3.6, 2.1]`, falling from gear to gear;
 *   above 0
 * - `finalDrive`, above 0
 * - `rollingRadius` (mm), above 0, or `tyre`, its mark, such as `'155/80 R13'`
 * - `motor.maximumSpeed` (rpm), for top speeds and shifts; what else describes the motor may stand there
 * - `speeds` (km/h): road speeds at which to tell the motor speeds
 * - `motorSpeeds` (rpm): motor speeds at which to tell the road speeds
 *
 * A check holds the motor in its highest gear to its maximum speed at each road speed that is asked for.
 *
 * @returns A row for each gear, and the rolling radius.
 * @throws InputError for input that cannot be used, by its path: gears that do not fall, what is no tyre mark.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { rows } = gearTable({
 *   gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 },
 *   finalDrive: 4.375,
 *   tyre: '145/80 R13',
 *   motor: { maximumSpeed: '8000 rpm' },
 *   speeds: ['50 km/h'],
 * })
 * rows.map(({ gear, topSpeed }) => `${gear} ${topSpeed}`)
 * // ['first 49.51 km/h', 'second 81.79 km/h', 'third 129.7 km/h', 'fourth 188.1 km/h']
 * String(rows[2]?.motorSpeeds[0]) // '3083 rpm'
 * ```
 */
export const gearTable = /*@__PURE__*/ procedure('gearTable', gearTableGiven, (asked): GearTable => {
  const { speeds = [], motorSpeeds = [] } = asked
  const { gears, assumptions } = gearingOf('gearTable', asked)
  const maximumSpeed = asked.motor?.maximumSpeed
  const rows = gears.map((gear, i) =>
    section(`In ${gear.name}`, () => rowOf(gear, gears[i + 1], { speeds, motorSpeeds, maximumSpeed })),
  )
  const highest = rows.at(-1) as GearRow
  return {
    rows,
    rollingRadius: (gears[0] as Gear).rollingRadius,
    checks: maximumSpeed === undefined ? [] : speeds.map((speed, i) => spinCheck(highest, speed, i, maximumSpeed)),
    assumptions: [...assumptions, 'The driven wheels do not slip.'],
    cautions: [cautions.liftedCar],
  }
})

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
  return check(`Motor in ${gear} at ${speed}`, actual, 'at most', limit, 'motor.maximumSpeed')
}
