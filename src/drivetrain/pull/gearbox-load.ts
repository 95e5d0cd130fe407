/**
 * What an old gearbox bears of a new motor: its torque in every gear against the torque for which the box was made, and
 * the speed of the propeller shaft behind it.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2. An engine reaches its torque at some speed and
 * through a slipping clutch; a motor has it from low speed on, in every gear.
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { drivelineOf, drivelineShape, gearNumbers, type LossyGear, torqueForForce } from '../gearing/driveline.js'
import { motorSpeed, roadSpeed, wheelTorque } from '../gearing/gears.js'
import { criticalSpeed } from '../gearing/propshaft.js'
import { envelopeOf, type Motor, motorGiven } from '../motor/envelope.js'
import { carGiven, gripOf } from '../road/car.js'
import { GRIP } from './drive.js'

/** The load in one gear. */
export interface GearLoad {
  readonly gear: string
  /** Torque at the input of the box: that of the motor, or that at which the tyres slip. */
  readonly inputTorque: Quantity<'torque'>
  /** What sets it. */
  readonly limitedBy: string
  /** Torque in the propeller shaft, losses left out; with the final drive in the box, that of its pinion. */
  readonly outputTorque: Quantity<'torque'>
  /** What is left of the rated input torque, as a share of it; negative where it is exceeded. */
  readonly margin: Quantity<'ratio'>
}

/** The load of a gearbox in every gear. */
export interface GearboxLoad extends Findings {
  readonly rows: readonly GearLoad[]
  /** The motor torque to which the controller must be set so that no gear is overloaded, where it must be. */
  readonly torqueLimit?: Quantity<'torque'>
}

const gearboxLoadGiven = /*@__PURE__*/ (() =>
  about(
    'a gearbox and its motor',
    z.strictObject({
      ...drivelineShape,
      motor: motorGiven,
      ratedInputTorque: given('torque', 'Input torque for which the gearbox was made', { above: 0 }),
      car: z.optional(carGiven),
      friction: z.optional(given('ratio', 'Friction coefficient of tyre and road', { above: 0 })),
    }),
  ))()

/**
 * Holds the torque of a motor to the torque for which a gearbox was made, in every gear.
 *
 * - `gears`, `finalDrive`, `rollingRadius` or `tyre`, `efficiency`, `motor` as for {@link tractionCurves}
 * - `ratedInputTorque` (N·m), above 0: commonly that of the strongest engine with which the maker sold the box
 * - `car` and `friction`: in a low gear the tyres slip before the motor gives all its torque, and the box feels no more.
 *   A low friction flatters the box: take the highest that the tyres ever find, on dry asphalt
 *
 * The torque of the motor is the greatest at any speed, at a voltage that does not hold it back.
 *
 * Steady torque only. A motor that is let in against a locked or spinning wheel, a slipping tyre that grips again, and a
 * shift without a clutch load the box with the momentum of the rotor on top: ramp the torque up in the controller.
 *
 * @returns Input and output torque and margin in every gear, and the torque limit that would spare the box.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { rows, torqueLimit } = gearboxLoad({
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 },
 *   finalDrive: 4.375,
 *   tyre: '145/80 R13',
 *   efficiency: 0.94,
 *   ratedInputTorque: '85 N·m',
 * })
 * String(rows[0]?.margin) // '-41.18 %'
 * String(torqueLimit) // '85 N·m'
 * ```
 */
export const gearboxLoad = /*@__PURE__*/ procedure('gearboxLoad', gearboxLoadGiven, (read): GearboxLoad => {
  const { gears, assumptions } = drivelineOf('gearboxLoad', read)
  const peak = greatestTorqueOf(read.motor)
  const rated = read.ratedInputTorque
  const grip = gripFor(read)
  const rows = gears.map((gear) => section(`In ${gear.name}`, () => loadIn(gear, peak, grip, rated)))
  const isOver = rows.some(({ inputTorque }) => inputTorque.si > rated.si)
  return {
    rows,
    ...(isOver ? { torqueLimit: rated } : {}),
    checks: rows.map(
      ({ gear, inputTorque }): Check =>
        check(`Input torque in ${gear}`, inputTorque, 'at most', rated, 'ratedInputTorque'),
    ),
    assumptions: [
      ...assumptions,
      'The torque is steady: the momentum of the rotor, and shifts without a clutch, come on top.',
      ...(grip === undefined ? ['The tyres hold whatever the motor gives: no car and friction are given.'] : []),
    ],
    cautions: [cautions.liftedCar],
  }
})

function gripFor({ car, friction }: Read<typeof gearboxLoadGiven>): number | undefined {
  if ((car === undefined) !== (friction === undefined)) {
    const expected = 'both, to work out where the tyres slip, or neither'
    const received = car === undefined ? 'friction alone' : 'car alone'
    throw new InputError('gearboxLoad', [{ path: 'car and friction', expected, received }])
  }
  return car === undefined || friction === undefined ? undefined : gripOf('gearboxLoad', car, friction).driving(0)
}

/** A torque, and what sets it. */
interface Peak {
  readonly torque: Quantity<'torque'>
  readonly limitedBy: string
}

/** The most torque of a motor at any speed. */
function greatestTorqueOf(motor: Motor): Peak {
  const envelope = envelopeOf('gearboxLoad', motor)
  const { curve = [], peakPower } = motor
  // Where a curve rises it may run into the peak power, between its points.
  const atPower = curve.slice(1).map(([speed, torque], i) => {
    const [from, low] = curve[i] as (typeof curve)[number]
    const slope = (torque.si - low.si) / (speed.si - from.si)
    if (peakPower === undefined || slope <= 0) return 0
    // Speed times the torque on the line is the power: slope w² + b w = P.
    const b = low.si - slope * from.si
    const crossing = (Math.sqrt(b ** 2 + 4 * slope * peakPower.si) - b) / (2 * slope)
    return crossing > from.si && crossing < speed.si ? crossing : 0
  })
  const speeds = [0, ...curve.map(([speed]) => speed.si), ...atPower, envelope.maximumSpeed]
  const torques = speeds.map((speed) => envelope.torqueAt(speed, Infinity, 'peak'))
  const most = Math.max(...torques)
  return {
    torque: quantity('torque', most, 'N·m'),
    limitedBy: envelope.limitAt(speeds[torques.indexOf(most)] as number, Infinity, 'peak'),
  }
}

function loadIn(gear: LossyGear, peak: Peak, grip: number | undefined, rated: Quantity<'torque'>): GearLoad {
  const slips = grip === undefined ? Infinity : torqueForForce(gearNumbers(gear), grip)
  const [inputTorque, limitedBy] =
    slips < peak.torque.si ? [quantity('torque', slips, 'N·m'), GRIP] : [peak.torque, peak.limitedBy]
  return {
    gear: gear.name,
    inputTorque,
    limitedBy,
    outputTorque: wheelTorque({ motorTorque: inputTorque, ratio: gear.gearRatio, efficiency: 1 }),
    margin: quantity('ratio', 1 - inputTorque.ratioTo(rated)).as('%'),
  }
}

/** How fast a propeller shaft turns, and how fast it may. */
export interface PropshaftSpeed extends Findings {
  /** Of the shaft, in the gear and at the motor speed that turn it fastest. */
  readonly speed: Quantity<'angularSpeed'>
  /** The gear in which it turns so fast. */
  readonly gear: string
  /** Road speed there. */
  readonly roadSpeed: Quantity<'speed'>
  /** Speed at which it would bend itself to pieces. */
  readonly critical: Quantity<'angularSpeed'>
  readonly margin: Quantity<'ratio'>
}

/** Share of the critical speed to which a shaft is used: common practice, no source. */
const USED = 0.75

const propshaftSpeedGiven = /*@__PURE__*/ (() =>
  about(
    'a propeller shaft behind a gearbox',
    z.strictObject({
      ...drivelineShape,
      efficiency: z.optional(drivelineShape.efficiency),
      motor: motorGiven,
      shaft: about(
        'the shaft',
        z.strictObject({
          length: given('length', 'Length between the joint centres', { above: 0 }),
          outerDiameter: given('length', 'Outer diameter of the tube', { above: 0 }),
          innerDiameter: z.optional(given('length', 'Inner diameter of the tube', { min: 0 })),
          elasticModulus: z.optional(given('elasticModulus', 'Elastic modulus', { above: 0 })),
          density: z.optional(given('density', 'Density', { above: 0 })),
        }),
      ),
      topSpeed: z.optional(given('speed', 'Highest road speed', { above: 0 })),
    }),
  ))()

/** Steel for shafts, from memory of handbooks. */
const STEEL = { elasticModulus: '205 GPa', density: '7850 kg/m³' } as const

/**
 * Holds the speed of a propeller shaft to the speed at which it would whirl. A motor that turns twice as fast as the
 * engine did turns the shaft twice as fast in the same gear.
 *
 * - `gears`, `finalDrive`, `rollingRadius` or `tyre` as for {@link gearTable}; the shaft runs between box and final drive
 * - `motor.maximumSpeed` (rpm)
 * - `shaft`: `length` between the joint centres and `outerDiameter` (mm); `innerDiameter`, 0 (a solid bar) unless given;
 *   `elasticModulus` and `density`, those of steel unless given
 * - `topSpeed` (km/h): the fastest that the car goes, where that is less than the gears would allow
 *
 * @returns The highest speed of the shaft, its critical speed, and a check against three quarters of it.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Roark's Formulas for Stress and Strain, as {@link criticalSpeed}; three quarters of the critical speed, common
 * practice, no source.
 *
 * @example
 * ```ts
 * const { speed, critical, checks } = propshaftSpeed({
 *   gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 },
 *   finalDrive: 4.375,
 *   tyre: '145/80 R13',
 *   motor: { maximumSpeed: '8000 rpm' },
 *   shaft: { length: '1 m', outerDiameter: '50.8 mm', innerDiameter: '47.5 mm' },
 *   topSpeed: '130 km/h',
 * })
 * `${speed} of ${critical}: ${checks[0]?.verdict}` // '5528 rpm of 8374 rpm: pass'
 * ```
 */
export const propshaftSpeed = /*@__PURE__*/ procedure('propshaftSpeed', propshaftSpeedGiven, (read): PropshaftSpeed => {
  const { shaft, topSpeed, motor } = read
  const one = quantity('ratio', 1)
  const { gears, assumptions } = drivelineOf('propshaftSpeed', { ...read, efficiency: [[undefined, one]] })
  const most = motor.maximumSpeed
  if (most === undefined) {
    const expected = "a speed such as '8000 rpm'"
    throw new InputError('propshaftSpeed', [{ path: 'motor.maximumSpeed', expected, received: 'nothing' }])
  }
  // The highest gear turns the shaft fastest at a motor speed; a road speed turns it alike in every gear that reaches it.
  const gear = gears.at(-1) as LossyGear
  const { rollingRadius, ratio } = gear
  const [road, speed] = section('Speed of the shaft', () => {
    const fastest = roadSpeed({ motorSpeed: most, ratio, rollingRadius })
    const held = topSpeed !== undefined && topSpeed.si < fastest.si ? topSpeed : fastest
    // The shaft turns as a motor in direct drive would.
    return [held, motorSpeed({ speed: held, ratio: read.finalDrive, rollingRadius })] as const
  })
  const critical = criticalSpeed({
    length: shaft.length,
    outerDiameter: shaft.outerDiameter,
    innerDiameter: shaft.innerDiameter ?? '0 mm',
    elasticModulus: shaft.elasticModulus ?? STEEL.elasticModulus,
    density: shaft.density ?? STEEL.density,
  })
  const limit = critical.times(USED)
  return {
    speed,
    gear: gear.name,
    roadSpeed: road,
    critical,
    margin: quantity('ratio', 1 - speed.ratioTo(critical)).as('%'),
    checks: [
      check(
        'Speed of the propeller shaft',
        speed,
        'at most',
        limit,
        'three quarters of its critical speed; common practice, no source',
      ),
    ],
    assumptions: [
      ...assumptions.filter((text) => !text.startsWith('The driveline has')),
      'The shaft is one straight tube between two joints, balanced, and runs between gearbox and final drive.',
      ...(shaft.innerDiameter === undefined ? ['The shaft is a solid bar (shaft.innerDiameter 0 by default).'] : []),
      ...(shaft.elasticModulus === undefined || shaft.density === undefined
        ? [`The shaft is of steel: ${STEEL.elasticModulus}, ${STEEL.density} by default.`]
        : []),
      ...(topSpeed === undefined ? ['The car reaches the speed that its highest gear allows (no topSpeed).'] : []),
    ],
    cautions: [cautions.turningShaft, cautions.liftedCar],
  }
})
