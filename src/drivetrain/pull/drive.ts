/**
 * A car with its drive on a road: what pulls it in a gear at a speed, what holds that pull, and what resists it.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 4, and on Ehsani et al., Modern Electric,
 * Hybrid Electric, and Fuel Cell Vehicles (2004), vehicle performance.
 */
import { rootBetween } from '../../formula/root.js'
import { type Assumption, assumed, type Check, given, optional, type Read } from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { drivelineOf, type GearNumbers, gearNumbers, type LossyGear, wheelForce } from '../gearing/driveline.js'
import {
  type Conversion,
  conversionOf,
  type Envelope,
  envelopeOf,
  motorLimits,
  type Rating,
} from '../motor/envelope.js'
import {
  greatestDischarge,
  loadedVoltage,
  type PowerLimit,
  type Supply,
  supplyChecks,
  supplyOf,
} from '../motor/supply.js'
import { airOf } from '../road/air.js'
import { type CarOnRoad, carOnRoad, type Grip, gripOf, type Inertia, inertiaOf } from '../road/car.js'
import { aerodynamicDrag, gradeForce, roadLoad, rollingResistance } from '../road/road-load.js'
import { airField, carField, controllerField, gearboxField, motorField, packField, spareParts } from '../vehicle.js'

/** What describes a vehicle that drives, and the state of its pack. @internal */
export const driveFields = /*@__PURE__*/ (() => ({
  ...spareParts,
  car: carField,
  gearbox: gearboxField,
  motor: motorField,
  controller: optional(controllerField),
  pack: optional(packField),
  air: airField,
  stateOfCharge: optional(given('ratio', 'State of charge of the pack', { min: 0, max: 1 })),
  cellTemperature: optional(given('temperature', 'Temperature of the cells', { above: 0 })),
}))()
/** What is read of a vehicle that drives. @internal */
export type DriveRead = Read<typeof driveFields>

/** The grade of a road on which a car drives. @internal */
export const gradeField = /*@__PURE__*/ (() =>
  given('ratio', 'Grade, rise over run', { usual: [-0.2, 0.2], default: 0, because: 'a level road' }))()

/** A gear of a drive, by name and as plain numbers. @internal */
export interface DriveGear extends GearNumbers {
  readonly name: string
  readonly gear: LossyGear
}

/** A motor on its supply, on plain SI numbers. @internal */
export interface Power {
  readonly envelope: Envelope
  readonly conversion?: Conversion
  readonly supply?: Supply
  /** Volts of the pack at rest; infinite where no pack is given. */
  readonly openCircuit: number
  readonly stateOfCharge: Quantity<'ratio'>
  /** The most that the pack gives. */
  readonly most?: { readonly [rating in Rating]: PowerLimit }
}

/** A car with its drive. @internal */
export interface Drive extends Power {
  readonly road: CarOnRoad
  readonly inertia: Inertia
  readonly gears: readonly DriveGear[]
  readonly grip?: Grip
  readonly airDensity: Quantity<'density'>
  readonly headwind: Quantity<'speed'>
  /** What is not known of the pack. */
  readonly checks: readonly Check[]
  readonly assumptions: readonly Assumption[]
}

/** A pull or torque on plain SI numbers, and what holds it. @internal */
export interface Held {
  readonly most: number
  readonly limitedBy: string
}

/** What holds a pull where the tyres slip. @internal */
export const GRIP = 'grip of the driven wheels'
/** What holds a torque where the sagging pack leaves less than the rated voltage. */
const SAG = 'voltage that the pack leaves'

/** The state of charge at which a pack is taken to be, unless it is given. */
const MIDDLING = 0.5

/**
 * Reads a motor on its supply.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError for figures that contradict each other or do not suffice, by their path.
 */
function powerOf(
  where: string,
  read: Pick<DriveRead, 'motor' | 'pack' | 'controller' | 'stateOfCharge' | 'cellTemperature'>,
): Power & { readonly assumptions: readonly Assumption[] } {
  const envelope = envelopeOf(where, read.motor)
  const stateOfCharge = read.stateOfCharge ?? quantity('ratio', MIDDLING)
  const hasLosses = read.motor.loss !== undefined || read.motor.efficiency !== undefined
  if (read.pack === undefined) {
    refuseWithoutPack(where, read)
    const conversion = hasLosses ? conversionOf(where, read.motor) : undefined
    return {
      envelope,
      ...(conversion === undefined ? {} : { conversion }),
      openCircuit: Infinity,
      stateOfCharge,
      assumptions: [assumed('pack.absent', 'The pack gives all that the motor can take: none is given.')],
    }
  }
  const conversion = conversionOf(where, read.motor)
  const supply = supplyOf(where, read.pack, read.controller, read.cellTemperature)
  const openCircuit = supply.openCircuitAt(stateOfCharge.si)
  return {
    envelope,
    conversion,
    supply,
    openCircuit,
    stateOfCharge,
    most: {
      peak: greatestDischarge(supply, openCircuit, 'peak'),
      continuous: greatestDischarge(supply, openCircuit, 'continuous'),
    },
    assumptions: [
      ...envelope.assumptions,
      ...conversion.assumptions,
      ...supply.assumptions,
      ...(read.stateOfCharge === undefined
        ? [
            assumed(
              'stateOfCharge.default',
              `The pack is at ${stateOfCharge.as('%')} (stateOfCharge by default), and stays there.`,
            ),
          ]
        : [assumed('stateOfCharge', 'The state of charge stays as it is.')]),
    ],
  }
}

function refuseWithoutPack(
  where: string,
  read: Pick<DriveRead, 'controller' | 'stateOfCharge' | 'cellTemperature'>,
): void {
  const { controller = {} } = read
  const idle = [
    ...(['batteryCurrent', 'chargeCurrent', 'minimumVoltage', 'maximumVoltage'] as const)
      .filter((key) => controller[key] !== undefined)
      .map((key) => `controller.${key}`),
    ...(['stateOfCharge', 'cellTemperature'] as const).filter((key) => read[key] !== undefined),
  ]
  if (idle.length === 0) return
  throw new InputError(
    where,
    idle.map((path) => ({ path, expected: 'a pack beside it, or nothing', received: 'no pack' })),
  )
}

/**
 * Reads a car with its drive.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError for figures that contradict each other or do not suffice, by their path.
 *
 * @internal
 */
export function driveOf(where: string, read: DriveRead): Drive {
  const { gears, assumptions } = drivelineOf(where, read)
  const power = powerOf(where, read)
  const road = carOnRoad(where, read.car)
  const inertia = inertiaOf(where, read.car, gears[0]?.rollingRadius, read.motor.inertia)
  const air = airOf(read.air)
  const { friction } = read.car
  return {
    ...power,
    road,
    inertia,
    gears: gears.map((gear) => ({ name: gear.name, gear, ...gearNumbers(gear) })),
    ...(friction === undefined ? {} : { grip: gripOf(where, read.car, friction) }),
    airDensity: air.density,
    headwind: air.headwind,
    checks: supplyChecks(power.supply),
    assumptions: [
      ...assumptions,
      ...power.assumptions,
      ...road.assumptions,
      friction === undefined
        ? assumed('car.friction.absent', 'The tyres hold whatever the motor gives: no car.friction is given.')
        : assumed(
            'car.friction',
            'Both driven wheels hold alike; on a rigid axle without a locked differential they hold some per cent less.',
          ),
    ],
  }
}

/** What rounding may do to a speed, as a share of it. */
const ROUNDING = 1e-12

/**
 * The most torque of a motor on its supply at a speed, in rad/s: of the motor, of the pack and of the voltage it leaves.
 * @internal
 */
export function greatestTorque(power: Power, turning: number, rating: Rating): Held {
  const { envelope, conversion, supply, openCircuit, most } = power
  // A road speed that is that of the highest motor speed may come back from it a digit higher.
  const speed = Math.abs(turning / envelope.maximumSpeed - 1) < ROUNDING ? envelope.maximumSpeed : turning
  if (speed > envelope.maximumSpeed) return { most: 0, limitedBy: motorLimits.speed }
  const free = envelope.torqueAt(speed, openCircuit, rating)
  if (conversion === undefined || supply === undefined || most === undefined) {
    return { most: free, limitedBy: envelope.limitAt(speed, openCircuit, rating) }
  }
  const fed = conversion.drivingTorque(most[rating].power, speed)
  const byPower: Held =
    fed < free
      ? { most: fed, limitedBy: most[rating].limitedBy }
      : { most: free, limitedBy: envelope.limitAt(speed, openCircuit, rating) }
  if (!envelope.followsVoltage) return byPower
  const left = (torque: number) =>
    envelope.torqueAt(speed, loadedVoltage(supply, openCircuit, conversion.electricalPower(torque, speed)), rating)
  if (left(byPower.most) >= byPower.most) return byPower
  // More torque sags the pack more and leaves less: the two meet once.
  return { most: rootBetween((torque) => torque - left(torque), 0, byPower.most), limitedBy: SAG }
}

/** Pull of the motor in a gear at a road speed, in newtons; the tyres may hold less. @internal */
export function pullIn(drive: Drive, gear: GearNumbers, speed: number, rating: Rating = 'peak'): Held {
  const { most, limitedBy } = greatestTorque(drive, (speed * gear.ratio) / gear.radius, rating)
  return { most: wheelForce(gear, most), limitedBy }
}

/** Pull in a gear at a road speed on a grade, in newtons, that the tyres hold too. @internal */
export function tractionIn(
  drive: Drive,
  gear: GearNumbers,
  speed: number,
  grade: number,
  rating: Rating = 'peak',
): Held {
  const pull = pullIn(drive, gear, speed, rating)
  const grip = drive.grip?.driving(grade) ?? Infinity
  return pull.most > grip ? { most: grip, limitedBy: GRIP } : pull
}

/** What resists a car at a speed on a grade, in newtons. @internal */
export function loadOn({ road, airDensity, headwind }: Drive, speed: number, grade: number): number {
  return road.resistance.total(speed, grade, airDensity.si, headwind.si)
}

/** What resists a car at a speed on a grade, with its working. @internal */
export function loadWorked(
  drive: Pick<Drive, 'road' | 'airDensity' | 'headwind'>,
  speed: Quantity<'speed'>,
  grade: Quantity<'ratio'>,
): Quantity<'force'> {
  const { mass, rollingResistance: coefficient } = drive.road
  return roadLoad({
    aerodynamicDrag: dragWorked(drive, speed),
    rollingResistance: rollingResistance({ mass, coefficient, grade }),
    gradeForce: gradeForce({ mass, grade }),
  })
}

/**
 * The part of what resists a car that grows with its speed, with its working: the drag, and with it the linear term of a
 * coast-down, which may be negative, as rolling resistance may not.
 *
 * @internal
 */
export function dragWorked(
  { road, airDensity, headwind }: Pick<Drive, 'road' | 'airDensity' | 'headwind'>,
  speed: Quantity<'speed'>,
): Quantity<'force'> {
  const { dragArea, linear } = road
  const air = aerodynamicDrag({ airDensity, dragArea, speed, headwind })
  return linear.si === 0 ? air : air.plus(quantity('force', linear.si * speed.si, 'N'))
}

/** Road speed, in m/s, at which a gear turns the motor at its highest speed. @internal */
export function highestSpeedIn({ envelope }: Pick<Drive, 'envelope'>, { ratio, radius }: GearNumbers): number {
  return (envelope.maximumSpeed * radius) / ratio
}

/** Into how many parts a range of speeds is cut to look for a crossing. */
const PARTS = 240

/**
 * The highest of the values from a lower to an upper end at which a condition holds; undefined where it holds nowhere. The
 * condition is looked at in equal steps, and where it ends the place is narrowed down to neighbouring doubles.
 *
 * @internal
 */
export function lastWhere(holds: (x: number) => boolean, from: number, to: number): number | undefined {
  if (holds(to)) return to
  for (let i = PARTS - 1; i >= 0; i--) {
    let low = from + ((to - from) * i) / PARTS
    if (!holds(low)) continue
    let high = from + ((to - from) * (i + 1)) / PARTS
    for (;;) {
      const middle = low + (high - low) / 2
      if (middle === low || middle === high) return low
      if (holds(middle)) low = middle
      else high = middle
    }
  }
  return undefined
}

/**
 * The highest speed, in m/s, that a gear holds on a grade, and what stops it there; undefined where it holds none.
 * @internal
 */
export function heldSpeed(drive: Drive, gear: GearNumbers, grade: number, rating: Rating): Held | undefined {
  const end = highestSpeedIn(drive, gear)
  const isHeld = (speed: number) => tractionIn(drive, gear, speed, grade, rating).most >= loadOn(drive, speed, grade)
  const speed = lastWhere(isHeld, 0, end)
  if (speed === undefined) return undefined
  return {
    most: speed,
    limitedBy: speed === end ? motorLimits.speed : tractionIn(drive, gear, speed, grade, rating).limitedBy,
  }
}
