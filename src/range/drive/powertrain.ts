/**
 * A car with its drive on a road, as everything that counts its energy reads it: what resists it, how force at the wheels
 * becomes power at the battery, and what limits that.
 *
 * Rests on the car, driveline, motor and supply of the drivetrain domain.
 */
import { drivelineOf, gearNumbers, oneEfficiency } from '../../drivetrain/gearing/driveline.js'
import { type Conversion, conversionOf, type Envelope, envelopeOf } from '../../drivetrain/motor/envelope.js'
import { memoryOf, torqueAllDay } from '../../drivetrain/motor/memory.js'
import { type Supply, supplyOf } from '../../drivetrain/motor/supply.js'
import { type CarOnRoad, carOnRoad, type Grip, gripOf, inertiaOf } from '../../drivetrain/road/car.js'
import {
  auxiliariesField,
  type Car,
  type Controller,
  carField,
  controllerField,
  type Gearbox,
  gearboxField,
  type Motor,
  motorField,
  packField,
  spareParts,
} from '../../drivetrain/vehicle.js'
import { parallelCharge } from '../../electrical/pack/pack.js'
import { type Assumption, assumed, given, optional, type Read } from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'

/** What describes a vehicle before the air, the road and the way it is driven. @internal */
export const powertrainFields = /*@__PURE__*/ (() => ({
  ...spareParts,
  car: carField,
  gearbox: gearboxField,
  motor: motorField,
  controller: optional(controllerField),
  auxiliaries: optional(auxiliariesField, { absent: 'Nothing but the motor draws power: give auxiliaries.' }),
}))()

/** What is on in a season or on a stretch of road. With a heater it has no usual range. @internal */
export const heatedField = /*@__PURE__*/ (() => given('power', 'Power of all that is on, the heater too', { min: 0 }))()

/** What the energy of a drive comes from: a pack, or an energy that may be used. @internal */
export const sourceFields = /*@__PURE__*/ (() => ({
  pack: optional(packField),
  usableEnergy: optional(given('energy', 'Energy that may be used', { above: 0, usual: ['1 kWh', '150 kWh'] })),
  stateOfCharge: optional(given('ratio', 'State of charge at the start', { min: 0, max: 1 })),
  reserve: optional(given('ratio', 'State of charge at which the pack counts as empty', { min: 0, max: 1 })),
  cellTemperature: optional(given('temperature', 'Temperature of the cells', { above: 0 })),
}))()

/** What is read of a vehicle before the road. @internal */
export type PowertrainRead = Pick<
  Read<typeof powertrainFields>,
  'car' | 'gearbox' | 'motor' | 'controller' | 'auxiliaries'
>
/** What is read of the source of energy. @internal */
export type SourceRead = Read<typeof sourceFields>

/** A gear on plain SI numbers. @internal */
export interface DriveGear {
  /** Its name; undefined where no gears are given. */
  readonly name: string | undefined
  /** Turns of the motor, in radians for each metre of road. */
  readonly turns: number
  readonly efficiency: number
  /** Mass with that of the turning parts, in this gear. */
  readonly inertialMass: number
}

/** What a motor loses, on plain SI numbers. */
interface MotorNumbers {
  /** Whether it is told by its efficiency. */
  readonly isByEfficiency: boolean
  readonly efficiency: number
  readonly copper: number
  readonly iron: number
  readonly windage: number
  readonly constant: number
}

/** A car with its drive, for loops. @internal */
export interface Powertrain {
  readonly road: CarOnRoad
  readonly gears: readonly DriveGear[]
  readonly conversion: Conversion
  /** What the motor loses: its efficiency, or 1 and the coefficients of its losses. */
  readonly motor: MotorNumbers
  /** Whether it is given what the motor holds all day. */
  readonly isRated: boolean
  /** The torque that the motor holds all day at a speed and a voltage; infinite where that is not given. */
  readonly torqueAllDay: (speed: number, voltage: number) => number
  /** With what time constant the motor remembers its load, and on what ground. */
  readonly memory: ReturnType<typeof memoryOf>
  /** The most torque of the motor, where its figures are given. */
  readonly envelope: Envelope | undefined
  /** In rad/s. */
  readonly maximumSpeed: number
  readonly auxiliaries: Quantity<'power'>
  /** Share of the braking that goes to the motor. */
  readonly share: number
  readonly assumptions: readonly Assumption[]
}

/**
 * Reads a car with its drive. Gears may be left out where the motor is told by one efficiency: power at the wheels is then
 * all that counts.
 *
 * @internal
 */
export function powertrainOf(where: string, read: PowertrainRead): Powertrain {
  const { car, gearbox, motor, auxiliaries, controller } = read
  const road = carOnRoad(where, car)
  const conversion = conversionOf(where, motor)
  const envelope = hasEnvelope(motor) ? envelopeOf(where, motor) : undefined
  const { gears, assumptions } = gearsOf(where, car, gearbox, motor)
  return {
    road,
    gears,
    conversion,
    motor: {
      isByEfficiency: motor.efficiency !== undefined,
      efficiency: motor.efficiency?.si ?? 1,
      copper: motor.loss?.lossPerTorqueSquared.si ?? 0,
      iron: motor.loss?.lossPerSpeed?.si ?? 0,
      windage: motor.loss?.lossPerSpeedCubed?.si ?? 0,
      constant: motor.loss?.constant?.si ?? 0,
    },
    envelope,
    isRated: motor.continuousTorque !== undefined || motor.continuousPower !== undefined,
    torqueAllDay: envelope?.hasContinuous
      ? (speed, voltage) => envelope.torqueAt(Math.min(speed, envelope.maximumSpeed), voltage, 'continuous')
      : torqueAllDay(motor),
    memory: memoryOf(motor),
    maximumSpeed: envelope?.maximumSpeed ?? Infinity,
    auxiliaries: auxiliaries ?? quantity('power', '0 W'),
    share: controller?.regeneration?.si ?? 0,
    assumptions: [
      ...road.assumptions,
      ...assumptions,
      ...conversion.assumptions,
      ...(motor.efficiency === undefined
        ? []
        : [
            assumed(
              'motor.efficiency.band',
              'A range from efficiencies that were not measured is good to 10 % to 15 % either way (common practice, no source).',
            ),
          ]),
      ...(envelope?.assumptions ?? [assumed('motor.absent', 'The motor has no limits: no figures of it are given.')]),
      ...(controller?.regeneration === undefined
        ? [
            assumed(
              'controller.regeneration.absent',
              'The brakes take all the braking energy (controller.regeneration 0).',
            ),
          ]
        : []),
    ],
  }
}

/** Whether more is told of a motor than what it loses and weighs. */
function hasEnvelope({ curve, peakTorque, peakPower, maximumSpeed, continuousTorque, continuousPower }: Motor) {
  return [curve, peakTorque, peakPower, maximumSpeed, continuousTorque, continuousPower].some(
    (figure) => figure !== undefined,
  )
}

function gearsOf(where: string, car: Car, gearbox: Gearbox, motor: Motor) {
  const { gears, finalDrive, efficiency } = gearbox
  if (gears !== undefined || finalDrive !== undefined) {
    const read = drivelineOf(where, { car, gearbox })
    const [first] = read.gears
    const inertia = inertiaOf(where, car, first?.rollingRadius, motor.inertia)
    return {
      gears: read.gears.map((gear): DriveGear => {
        const { ratio, radius, efficiency: share } = gearNumbers(gear)
        return { name: gear.name, turns: ratio / radius, efficiency: share, inertialMass: inertia.massAt(ratio) }
      }),
      assumptions: [
        ...read.assumptions,
        ...inertia.assumptions,
        ...(read.gears.length > 1
          ? [assumed('gearbox.gears', 'At every moment the gear is in that draws least; shifts take no time.')]
          : []),
      ],
    }
  }
  refuseMissingGears(where, motor, car)
  const only = oneEfficiency(efficiency)
  if (only === undefined) {
    const expected = 'the gears to which the efficiencies belong, or one efficiency, such as 0.93'
    throw new InputError(where, [{ path: 'gearbox.gears', expected, received: 'nothing' }])
  }
  const inertia = inertiaOf(where, car, undefined, undefined)
  return {
    // Without gears only the product of torque and speed counts: as if the motor turned by a radian in each metre.
    gears: [{ name: undefined, turns: 1, efficiency: only.si, inertialMass: inertia.massAt(undefined) }],
    assumptions: [
      assumed('gearbox.efficiency', `The driveline has an efficiency of ${only.as('%')} at every load and speed.`),
      ...inertia.assumptions,
    ],
  }
}

/** Refuses figures of motor and car that mean nothing without a ratio between motor and wheels. */
function refuseMissingGears(where: string, motor: Motor, car: Car) {
  const needs = [
    ...(motor.loss === undefined ? [] : ['motor.loss']),
    ...(hasEnvelope(motor) ? ['the figures of the motor'] : []),
    ...(motor.inertia === undefined ? [] : ['motor.inertia']),
    ...(car.wheelInertia === undefined ? [] : ['car.wheelInertia']),
  ]
  if (needs.length === 0) return
  const expected = `the ratio of the final drive, such as 4.1, or without gears that of motor to wheels, for ${needs.join(' and ')}`
  throw new InputError(where, [{ path: 'gearbox.finalDrive', expected, received: 'nothing' }])
}

/** The grip of the driven wheels, where a friction coefficient is given. @internal */
export function gripFor(where: string, car: Car): Grip | undefined {
  const { friction } = car
  return friction === undefined ? undefined : gripOf(where, car, friction)
}

/** A pack between two states of charge, for loops. @internal */
export interface PackInUse {
  readonly supply: Supply
  /** In coulombs. */
  readonly capacity: number
  readonly from: number
  readonly to: number
  /** State of charge up to which the open-circuit voltage is known. */
  readonly highest: number
  readonly atRest: RestVoltage
  readonly assumptions: readonly Assumption[]
}

/** What of a controller means nothing without a pack. */
const limitsOfPack = [
  'batteryCurrent',
  'continuousCurrent',
  'chargeCurrent',
  'minimumVoltage',
  'maximumVoltage',
] as const

/** Reads the pack that feeds a drive, where one is given. @internal */
export function packInUse(
  where: string,
  source: SourceRead,
  controller: Controller | undefined,
): PackInUse | undefined {
  const { pack, usableEnergy, stateOfCharge, reserve, cellTemperature } = source
  const issues: InputIssue[] = []
  if (pack !== undefined && usableEnergy !== undefined) {
    const expected = 'one of them: the pack tells its energy'
    issues.push({ path: 'pack and usableEnergy', expected, received: 'both' })
  }
  if (pack === undefined) {
    const strays = [
      ...Object.entries({ stateOfCharge, reserve, cellTemperature }),
      ...limitsOfPack.map((key) => [`controller.${key}`, controller?.[key]] as const),
    ]
    for (const [path, stray] of strays) {
      if (stray === undefined) continue
      issues.push({ path, expected: 'a pack to which it belongs, or nothing', received: 'no pack' })
    }
  }
  const from = stateOfCharge ?? quantity('ratio', '100 %')
  const to = reserve ?? quantity('ratio', '0 %')
  if (from.si <= to.si) {
    const expected = `a state of charge below that at the start, ${from}`
    issues.push({ path: 'reserve', expected, received: String(to) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
  if (pack === undefined) return undefined
  const supply = supplyOf(where, pack, controller, cellTemperature)
  // Where its open-circuit curve does not reach, this refuses.
  supply.openCircuitAt(from.si)
  supply.openCircuitAt(to.si)
  const [lowest, highest] = [pack.module.openCircuit?.[0]?.[0].si ?? 0, pack.module.openCircuit?.at(-1)?.[0].si ?? 1]
  return {
    supply,
    capacity: parallelCharge.compute({ count: pack.parallel, capacity: pack.module.capacity.si }),
    from: from.si,
    to: to.si,
    highest,
    atRest: new RestVoltage(supply, lowest, highest),
    assumptions: [
      ...supply.assumptions,
      ...(stateOfCharge === undefined
        ? [assumed('stateOfCharge.default', 'The pack starts full (stateOfCharge 100 % by default).')]
        : []),
      ...(reserve === undefined
        ? [
            assumed(
              'reserve.default',
              'The pack is driven until it is empty (reserve 0 % by default): its cells last longer if some is left.',
            ),
          ]
        : []),
    ],
  }
}

/** Into how many straight lines the open-circuit voltage is divided. */
const LINES = 1000

/** The open-circuit voltage over the state of charge as straight lines, of which each end is worked out when it is first met. */
class RestVoltage {
  readonly #volts = new Float64Array(LINES + 1).fill(Number.NaN)
  readonly #supply: Supply
  readonly #lowest: number
  readonly #highest: number
  readonly #width: number

  constructor(supply: Supply, lowest: number, highest: number) {
    this.#supply = supply
    this.#lowest = lowest
    this.#highest = highest
    this.#width = (highest - lowest) / LINES
  }

  voltsAt(state: number): number {
    const place = (state - this.#lowest) / this.#width
    // The last step may have gone beyond the end by a hair.
    const line = Math.max(0, Math.min(Math.floor(place), LINES - 1))
    const low = this.#endOf(line)
    return low + (place - line) * (this.#endOf(line + 1) - low)
  }

  #endOf(line: number): number {
    const known = this.#volts[line] as number
    if (!Number.isNaN(known)) return known
    const volts = this.#supply.openCircuitAt(line === LINES ? this.#highest : this.#lowest + line * this.#width)
    this.#volts[line] = volts
    return volts
  }
}

/** What a stretch of road asks of a car, on plain SI numbers: forces as polynomials of the speed. @internal */
export interface Conditions {
  /** Of the tyres: newtons, and newtons for each m/s. */
  readonly tyres: number
  readonly tyresBySpeed: number
  /** Of the air: newtons for the square of each m/s. */
  readonly air: number
  readonly headwind: number
  /** Of the grade. */
  readonly hill: number
  /** Rise over run. */
  readonly grade: number
  readonly auxiliaries: number
}

/** The conditions at an air density (kg/m³), a head wind (m/s), a grade and a power of auxiliaries (W). @internal */
export function conditionsOf(
  { resistance, linear }: CarOnRoad,
  density: number,
  headwind: number,
  grade: number,
  auxiliaries: number,
): Conditions {
  return {
    tyres: resistance.tyres(0, grade),
    tyresBySpeed: linear.si,
    air: resistance.air(1, density, 0),
    headwind,
    hill: resistance.hill(grade),
    grade,
    auxiliaries,
  }
}
