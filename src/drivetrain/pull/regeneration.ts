/**
 * How hard a motor may brake: what the grip of the driven axle, the motor and the pack allow by speed and state of
 * charge, and when the stop lamps must light.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 3, and on UN Regulation No. 13-H (electric
 * regenerative braking, stop lamps; from memory).
 */
import { cite, section } from '../../formula/index.js'
import { approval, brakesAndSteering, brakingByMotor, lithiumCells } from '../../procedure/cautions.js'
import { type Findings, given, list, optional, procedure, type Unfinished } from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { torqueForForce, wheelForce } from '../gearing/driveline.js'
import { tractiveForce, wheelTorque } from '../gearing/gears.js'
import { type Conversion, conversionOf } from '../motor/envelope.js'
import { greatestCharge } from '../motor/supply.js'
import { gripAcceleration } from '../road/traction.js'
import { onTheRoad } from '../vehicle.js'
import {
  type Drive,
  type DriveGear,
  type DriveRead,
  driveFields,
  driveOf,
  GRIP,
  highestSpeedIn,
  loadWorked,
} from './drive.js'
import { everyStep } from './traction-curves.js'

/** Whether the stop lamps light while the motor brakes, by UN Regulation No. 13-H. */
export type StopLamps = 'must not light' | 'may light' | 'must light'

/** The most that the motor may brake in a gear, at a speed. */
export interface RegenPoint {
  readonly gear: string
  readonly speed: Quantity<'speed'>
  /** Braking force of the motor at the driven wheels; the road feels less of it by what slows the turning parts. */
  readonly force: Quantity<'force'>
  /** Of the car, with what resists it anyway; a positive figure. */
  readonly deceleration: Quantity<'acceleration'>
  /** Into the pack; negative where the motor loses more than it brakes. */
  readonly power: Quantity<'power'>
  /** What holds it, such as `charge current of the modules`. */
  readonly limitedBy: string
  readonly stopLamps: StopLamps
}

/** How hard the motor may brake. */
export interface RegenLimit extends Findings {
  /** Of the pack; none where no pack is given. */
  readonly stateOfCharge?: Quantity<'ratio'>
  readonly points: readonly RegenPoint[]
  /** The most that the driven axle holds in braking alone, where `car.friction` is given. */
  readonly grip?: Quantity<'force'>
}

/**
 * Decelerations of UN Regulation No. 13-H, from memory: up to the first the lamps must not light for regeneration alone,
 * above the second they must.
 */
const LAMPS = { off: 0.7, on: 1.3 } as const

/**
 * Tells how hard a motor may brake a car by speed: by the grip of the driven axle alone, by the motor,
 * and by what the pack takes; and when the stop lamps must light.
 *
 * Needs `motor.loss` or `motor.efficiency`, and beside a pack the `stateOfCharge`: a full pack takes next to nothing.
 *
 * The motor is taken to brake as hard as it drives. Gears in which it would turn too fast at a speed are left out there.
 *
 * By UN Regulation No. 13-H (from memory) the stop lamps must not light for regeneration on lifting the accelerator up to
 * a deceleration of 0.7 m/s², may light above it, and must above 1.3 m/s². The deceleration is that of the car on the
 * level, with drag and rolling resistance.
 *
 * Answers: how hard may the motor brake, what holds it, and must the stop lamps light?
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
 * - `speeds`: road speeds, a list of at least 1, each in km/h, each above 0 km/h, optional
 * - `auxiliaries`: may stand beside, as parts of a vehicle; not used
 * - always assumed: the motor brakes as hard as it drives, the road is level, and the brakes are off
 * - always assumed: stop lamps: UN Regulation No. 13-H, from memory
 *
 * @returns A point for each gear and speed.
 * @throws InputError for input that cannot be used or does not suffice, by its path.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 3; UN Regulation No. 13-H, electric
 * regenerative braking, stop lamps; from memory.
 *
 * @example
 * ```ts
 * const { points } = regenLimit({
 *   car: { mass: '760 kg', rollingResistance: 0.013, dragArea: '0.7 m²', tyre: '145/80 R13' },
 *   motor: { peakTorque: '120 N·m', peakPower: '50 kW', maximumSpeed: '8000 rpm', efficiency: '88 %' },
 *   gearbox: { gears: { third: 1.45 }, finalDrive: 4.375, efficiency: 0.94 },
 *   speeds: ['50 km/h'],
 * })
 * points.map(({ deceleration, stopLamps }) => `${deceleration}: stop lamps ${stopLamps}`) // ['4.018 m/s²: stop lamps must light']
 * ```
 */
export const regenLimit = /*@__PURE__*/ procedure({
  name: 'regenLimit',
  title: 'Limit of braking by the motor',
  answers: 'How hard may the motor brake, what holds it, and must the stop lamps light?',
  input: {
    ...driveFields,
    speeds: optional(list('Road speeds', given('speed', 'Road speed', { above: 0, ...onTheRoad }), { least: 1 })),
  },
  source: [
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapters 2 and 3'),
    cite('UN Regulation No. 13-H', 'electric regenerative braking, stop lamps; from memory'),
  ],
  assumes: [
    'The motor brakes as hard as it drives, the road is level, and the brakes are off.',
    'Stop lamps: UN Regulation No. 13-H, from memory.',
  ],
  work: ({ speeds: asked, ...vehicle }): Unfinished<RegenLimit> => {
    const drive = driveFor(vehicle)
    if (asked !== undefined) refuseTooFast(drive, asked)
    const speeds = asked ?? everyStep(drive).slice(1)
    const conversion = conversionOf('regenLimit', vehicle.motor)
    const grip = drive.grip?.braking(0)
    return {
      points: drive.gears.flatMap((gear) =>
        speeds
          .filter((speed) => speed.si <= highestSpeedIn(drive, gear))
          .map((speed) => section(`In ${gear.name} at ${speed}`, () => pointAt(drive, conversion, gear, speed))),
      ),
      ...(drive.supply === undefined ? {} : { stateOfCharge: drive.stateOfCharge }),
      ...(grip === undefined ? {} : { grip: quantity('force', grip, 'N') }),
      checks: [...drive.checks, ...(drive.supply?.recovered === undefined ? [] : [drive.supply.recovered])],
      assumptions: [...drive.assumptions, ...(drive.conversion === undefined ? conversion.assumptions : [])],
      cautions: [brakingByMotor, brakesAndSteering, approval, lithiumCells],
    }
  },
})

/** Refuses speeds that no gear allows: there the motor cannot be in gear. */
function refuseTooFast(drive: Drive, speeds: readonly Quantity<'speed'>[]): void {
  const fastest = Math.max(...drive.gears.map((gear) => highestSpeedIn(drive, gear)))
  const issues = speeds.flatMap((speed, i) => {
    if (speed.si <= fastest) return []
    const expected = `a speed at which the motor may turn in some gear, at most ${fromSi('speed', fastest, 'km/h')}`
    return [{ path: `speeds[${i}]`, expected, received: String(speed) }]
  })
  if (issues.length > 0) throw new InputError('regenLimit', issues)
}

/** The drive at its state of charge, which decides what a pack takes: it is not guessed. */
function driveFor(vehicle: DriveRead): Drive {
  if (vehicle.pack !== undefined && vehicle.stateOfCharge === undefined) {
    const expected = 'a state of charge such as 0.9: it decides what the pack takes'
    throw new InputError('regenLimit', [{ path: 'stateOfCharge', expected, received: 'nothing' }])
  }
  return driveOf('regenLimit', vehicle)
}

function pointAt(drive: Drive, conversion: Conversion, gear: DriveGear, speed: Quantity<'speed'>): RegenPoint {
  const turning = Math.min((speed.si * gear.ratio) / gear.radius, drive.envelope.maximumSpeed)
  const { torque, limitedBy } = brakingTorque(drive, conversion, turning)
  const grip = drive.grip?.braking(0) ?? Infinity
  const resisted = loadWorked(drive, speed, quantity('ratio', 0))
  // The road slows the car alone, and the motor all that turns as well: what it takes from there asks no grip.
  const { road, inertia } = drive
  const turningMass = inertia.massAt(gear.ratio)
  const byGrip = ((grip + resisted.si) / road.mass.si) * turningMass - resisted.si
  const isSlipping = -wheelForce(gear, -torque) > byGrip
  const held = isSlipping ? -torqueForForce(gear, -byGrip) : torque
  const { ratio, efficiency, rollingRadius } = gear.gear
  const atWheels = tractiveForce({
    wheelTorque: wheelTorque({ motorTorque: quantity('torque', -held, 'N·m'), ratio, efficiency }),
    radius: rollingRadius,
  })
  const deceleration = gripAcceleration({
    tractionLimit: atWheels.times(-1),
    roadLoad: resisted.times(-1),
    mass: quantity('mass', turningMass, 'kg'),
  })
  return {
    gear: gear.name,
    speed,
    force: atWheels.times(-1),
    deceleration,
    power: conversion
      .powerOf(quantity('torque', -held, 'N·m'), quantity('angularSpeed', turning, 'rad/s').as('rpm'))
      .times(-1),
    limitedBy: isSlipping ? GRIP : limitedBy,
    stopLamps: stopLampsAt(deceleration.si),
  }
}

/** The most braking torque of the motor, in N·m, and what holds it: the motor, or what the pack takes. */
function brakingTorque(
  { envelope, supply, openCircuit }: Drive,
  conversion: Conversion,
  turning: number,
): { readonly torque: number; readonly limitedBy: string } {
  // On charge the voltage is above that at rest, and the motor has at least what it has there.
  const motor = {
    torque: envelope.torqueAt(turning, openCircuit, 'peak'),
    limitedBy: envelope.limitAt(turning, openCircuit, 'peak'),
  }
  if (supply === undefined) return motor
  const taken = greatestCharge(supply, openCircuit)
  const byPack = conversion.brakingTorque(taken.power, turning)
  return byPack < motor.torque ? { torque: byPack, limitedBy: taken.limitedBy } : motor
}

function stopLampsAt(deceleration: number): StopLamps {
  if (deceleration <= LAMPS.off) return 'must not light'
  return deceleration > LAMPS.on ? 'must light' : 'may light'
}
