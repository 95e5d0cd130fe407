/**
 * What an old gearbox bears of a new motor: its torque in every gear against the torque for which the box was made, and
 * the speed of the propeller shaft behind it.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2. An engine reaches its torque at some speed and
 * through a slipping clutch; a motor has it from low speed on, in every gear.
 */
import { cite, section } from '../../formula/index.js'
import { liftedCar, turningShaft } from '../../procedure/cautions.js'
import {
  assumed,
  type Check,
  check,
  type Findings,
  given,
  group,
  optional,
  procedure,
  required,
  type Unfinished,
} from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { drivelineOf, type Gear, gearingOf, gearNumbers, type LossyGear, torqueForForce } from '../gearing/driveline.js'
import { motorSpeed, roadSpeed, wheelTorque } from '../gearing/gears.js'
import { criticalSpeed } from '../gearing/propshaft.js'
import { envelopeOf } from '../motor/envelope.js'
import { gripOf } from '../road/car.js'
import {
  type Car,
  carField,
  gearboxField,
  gearboxFields,
  type Motor,
  motorField,
  motorFields,
  spareParts,
} from '../vehicle.js'
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

/**
 * Holds the torque of a motor to the torque for which a gearbox was made, in every gear.
 *
 * With `car.friction`: in a low gear the tyres slip before the motor gives all its torque, and the box feels no more. A low
 * friction flatters the box: take the highest that the tyres ever find, on dry asphalt.
 *
 * The torque of the motor is the greatest at any speed, at a voltage that does not hold it back.
 *
 * Steady torque only. A motor that is let in against a locked or spinning wheel, a slipping tyre that grips again, and a
 * shift without a clutch load the box with the momentum of the rotor on top: ramp the torque up in the controller.
 *
 * Answers: does the gearbox bear the torque of the motor in every gear, and to what must the controller be set?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`, `pack`, `auxiliaries`, `air`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the torque is steady: the momentum of the rotor, and shifts without a clutch, come on top
 *
 * @returns Input and output torque and margin in every gear, and the torque limit that would spare the box.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * const { rows, torqueLimit } = gearboxLoad({
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm' },
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94, ratedInputTorque: '85 N·m' },
 *   car: { mass: '760 kg', tyre: '145/80 R13' },
 * })
 * String(rows[0]?.margin) // '-41.18 %'
 * String(torqueLimit) // '85 N·m'
 * ```
 */
export const gearboxLoad = /*@__PURE__*/ procedure({
  name: 'gearboxLoad',
  title: 'Load of a gearbox',
  answers: 'Does the gearbox bear the torque of the motor in every gear, and to what must the controller be set?',
  input: {
    ...spareParts,
    car: carField,
    gearbox: group('The gearbox with its final drive', {
      ...gearboxFields,
      ratedInputTorque: required(gearboxFields.ratedInputTorque),
    }),
    motor: motorField,
  },
  source: [cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2')],
  assumes: ['The torque is steady: the momentum of the rotor, and shifts without a clutch, come on top.'],
  work: ({ car, gearbox, motor }): Unfinished<GearboxLoad> => {
    const { gears, assumptions } = drivelineOf('gearboxLoad', { car, gearbox })
    const peak = greatestTorqueOf(motor)
    const rated = gearbox.ratedInputTorque
    const grip = gripFor(car)
    const rows = gears.map((gear) => section(`In ${gear.name}`, () => loadIn(gear, peak, grip, rated)))
    const isOver = rows.some(({ inputTorque }) => inputTorque.si > rated.si)
    return {
      rows,
      ...(isOver ? { torqueLimit: rated } : {}),
      checks: rows.map(
        ({ gear, inputTorque }): Check =>
          check(
            `gearbox.torque.${gear}`,
            `Input torque in ${gear}`,
            inputTorque,
            'at most',
            rated,
            'ratedInputTorque',
            'gearbox.ratedInputTorque',
          ),
      ),
      assumptions: [
        ...assumptions,
        ...(grip === undefined
          ? [assumed('car.friction.absent', 'The tyres hold whatever the motor gives: no car.friction is given.')]
          : []),
      ],
      cautions: [liftedCar],
    }
  },
})

function gripFor(car: Car): number | undefined {
  return car.friction === undefined ? undefined : gripOf('gearboxLoad', car, car.friction).driving(0)
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

/**
 * Holds the speed of a propeller shaft to the speed at which it would whirl. A motor that turns twice as fast as the
 * engine did turns the shaft twice as fast in the same gear.
 *
 * Answers: how fast does the propeller shaft turn, and how fast may it?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `shaft`: the propeller shaft
 *   - `length`: length between the joint centres, in m, above 0 m
 *   - `outerDiameter`: outer diameter of the tube, in m, above 0 m
 *   - `innerDiameter`: inner diameter of the tube, in m, at least 0 m, 0 mm by default (a solid bar)
 *   - `elasticModulus`: elastic modulus, in GPa, above 0 GPa, 205 GPa by default (steel for shafts, from memory of
 *     handbooks)
 *   - `density`: density, in kg/m³, above 0 kg/m³, 7850 kg/m³ by default (steel for shafts, from memory of handbooks)
 * - `topSpeed`: highest road speed, in km/h, above 0 km/h, optional
 * - `controller`, `pack`, `auxiliaries`, `air`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the shaft is one straight tube between two joints, balanced, and runs between gearbox and final
 *   drive
 *
 * @returns The highest speed of the shaft, its critical speed, and a check against three quarters of it.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Roark's Formulas for Stress and Strain.
 *
 * @example
 * ```ts
 * const { speed, critical, checks } = propshaftSpeed({
 *   gearbox: { gears: { first: 3.8, second: 2.3, third: 1.45, fourth: 1 }, finalDrive: 4.375, efficiency: 0.94 },
 *   car: { mass: '760 kg', tyre: '145/80 R13' },
 *   motor: { maximumSpeed: '8000 rpm' },
 *   shaft: { length: '1 m', outerDiameter: '50.8 mm', innerDiameter: '47.5 mm' },
 *   topSpeed: '130 km/h',
 * })
 * `${speed} of ${critical}: ${checks[0]?.verdict}` // '5528 rpm of 8374 rpm: pass'
 * ```
 */
export const propshaftSpeed = /*@__PURE__*/ procedure({
  name: 'propshaftSpeed',
  title: 'Speed of a propeller shaft',
  answers: 'How fast does the propeller shaft turn, and how fast may it?',
  input: {
    ...spareParts,
    car: carField,
    gearbox: gearboxField,
    motor: group('The motor with its controller', {
      ...motorFields,
      maximumSpeed: required(motorFields.maximumSpeed),
    }),
    shaft: group('The propeller shaft', {
      length: given('length', 'Length between the joint centres', { above: 0 }),
      outerDiameter: given('length', 'Outer diameter of the tube', { above: 0 }),
      innerDiameter: given('length', 'Inner diameter of the tube', {
        min: 0,
        default: '0 mm',
        because: 'a solid bar',
      }),
      elasticModulus: given('elasticModulus', 'Elastic modulus', {
        above: 0,
        default: '205 GPa',
        because: 'steel for shafts, from memory of handbooks',
      }),
      density: given('density', 'Density', {
        above: 0,
        default: '7850 kg/m³',
        because: 'steel for shafts, from memory of handbooks',
      }),
    }),
    topSpeed: optional(given('speed', 'Highest road speed', { above: 0 }), {
      absent: 'The car reaches the speed that its highest gear allows (no topSpeed).',
    }),
  },
  source: [cite("Roark's Formulas for Stress and Strain")],
  assumes: ['The shaft is one straight tube between two joints, balanced, and runs between gearbox and final drive.'],
  work: ({ car, gearbox, motor, shaft, topSpeed }): Unfinished<PropshaftSpeed> => {
    const { gears, assumptions } = gearingOf('propshaftSpeed', { car, gearbox })
    const most = motor.maximumSpeed
    // What gearingOf has not refused.
    const finalDrive = gearbox.finalDrive as Quantity<'ratio'>
    // The highest gear turns the shaft fastest at a motor speed; a road speed turns it alike in every gear that reaches it.
    const gear = gears.at(-1) as Gear
    const { rollingRadius, ratio } = gear
    const [road, speed] = section('Speed of the shaft', () => {
      const fastest = roadSpeed({ motorSpeed: most, ratio, rollingRadius })
      const held = topSpeed !== undefined && topSpeed.si < fastest.si ? topSpeed : fastest
      // The shaft turns as a motor in direct drive would.
      return [held, motorSpeed({ speed: held, ratio: finalDrive, rollingRadius })] as const
    })
    const critical = criticalSpeed(shaft)
    const limit = critical.times(USED)
    return {
      speed,
      gear: gear.name,
      roadSpeed: road,
      critical,
      margin: quantity('ratio', 1 - speed.ratioTo(critical)).as('%'),
      checks: [
        check(
          'shaft.speed',
          'Speed of the propeller shaft',
          speed,
          'at most',
          limit,
          'three quarters of its critical speed; common practice, no source',
          'shaft',
          'topSpeed',
        ),
      ],
      assumptions,
      cautions: [turningShaft, liftedCar],
    }
  },
})
