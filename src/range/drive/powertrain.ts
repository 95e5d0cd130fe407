/**
 * A car with its drive on a road, as everything that counts its energy reads it: what resists it, how force at the wheels
 * becomes power at the battery, and what limits that.
 *
 * Rests on the car, driveline, motor and supply of the drivetrain domain.
 */
import * as z from 'zod/mini'
import { drivelineOf, gearNumbers, oneEfficiency } from '../../drivetrain/gearing/driveline.js'
import { type Conversion, conversionOf, type Envelope, envelopeOf } from '../../drivetrain/motor/envelope.js'
import { type Supply, supplyOf } from '../../drivetrain/motor/supply.js'
import { type CarOnRoad, carOnRoad, type Grip, gripOf, inertiaOf } from '../../drivetrain/road/car.js'
import type { Car } from '../../drivetrain/vehicle.js'
import { packGiven } from '../../electrical/pack/module.js'
import { parallelCharge } from '../../electrical/pack/pack.js'
import type { Assumption } from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { about, given, type Read } from '../../structure/index.js'
import { carGiven, controllerGiven, drivelineGiven, motorGiven } from './given.js'

/** What describes a car with its drive, before the road and the way it is driven. */
export const powertrainShape = /*@__PURE__*/ (() => ({
  car: carGiven,
  driveline: drivelineGiven,
  motor: motorGiven,
  auxiliary: z.optional(given('power', 'Power of lights, heater and other loads', { min: 0 })),
  regeneration: about(
    'what of the braking the motor does',
    z.optional(
      z.strictObject({
        share: given('ratio', 'Share of the braking energy at the wheels that goes to the motor', { min: 0, max: 1 }),
      }),
    ),
  ),
}))()

/** What limits a drive. */
export const limitShape = /*@__PURE__*/ (() => ({
  friction: z.optional(given('ratio', 'Friction coefficient of tyre and road', { above: 0 })),
  controller: z.optional(controllerGiven),
}))()

/** What the energy of a drive comes from: a pack, or an energy that may be used. */
export const sourceShape = /*@__PURE__*/ (() => ({
  pack: z.optional(packGiven),
  usableEnergy: z.optional(given('energy', 'Energy that may be used', { above: 0 })),
  stateOfCharge: about(
    'the states of charge between which the pack is used',
    z.optional(
      z.strictObject({
        from: z.optional(given('ratio', 'State of charge at the start', { min: 0, max: 1 })),
        to: z.optional(given('ratio', 'State of charge at which the pack counts as empty', { min: 0, max: 1 })),
      }),
    ),
  ),
  cellTemperature: z.optional(given('temperature', 'Temperature of the cells', { above: 0 })),
}))()

const powertrainGiven = /*@__PURE__*/ z.strictObject(powertrainShape)
/** What is read of a car with its drive. */
export type PowertrainRead = Read<typeof powertrainGiven>
const limitGiven = /*@__PURE__*/ z.strictObject(limitShape)
type LimitRead = Read<typeof limitGiven>
const sourceGiven = /*@__PURE__*/ z.strictObject(sourceShape)
/** What is read of the source of energy. */
export type SourceRead = Read<typeof sourceGiven>

/** A gear on plain SI numbers. */
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

/** A car with its drive, for loops. */
export interface Powertrain {
  readonly road: CarOnRoad
  readonly gears: readonly DriveGear[]
  readonly conversion: Conversion
  /** What the motor loses: its efficiency, or 1 and the coefficients of its losses. */
  readonly motor: MotorNumbers
  /** The most torque of the motor, where its figures are given. */
  readonly envelope: Envelope | undefined
  /** In rad/s. */
  readonly maximumSpeed: number
  readonly auxiliary: Quantity<'power'>
  /** Share of the braking that goes to the motor. */
  readonly share: number
  readonly assumptions: readonly (string | Assumption)[]
}

/**
 * Reads a car with its drive. Gears may be left out where the motor is told by one efficiency: power at the wheels is then
 * all that counts.
 */
export function powertrainOf(where: string, read: PowertrainRead): Powertrain {
  const { car, driveline, motor, auxiliary, regeneration } = read
  const road = carOnRoad(where, car)
  const conversion = conversionOf(where, motor)
  const envelope = hasEnvelope(motor) ? envelopeOf(where, motor) : undefined
  const { gears, assumptions } = gearsOf(where, car, driveline, motor)
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
    maximumSpeed: envelope?.maximumSpeed ?? Infinity,
    auxiliary: auxiliary ?? quantity('power', '0 W'),
    share: regeneration?.share.si ?? 0,
    assumptions: [
      ...road.assumptions,
      ...assumptions,
      ...conversion.assumptions,
      ...(envelope?.assumptions ?? ['The motor has no limits: no figures of it are given.']),
      ...(auxiliary === undefined ? ['Nothing but the motor draws power (auxiliary 0 W by default).'] : []),
      ...(regeneration === undefined ? ['The brakes take all the braking energy (regeneration.share 0).'] : []),
    ],
  }
}

type MotorRead = PowertrainRead['motor']

/** Whether more is told of a motor than what it loses and weighs. */
function hasEnvelope({ curve, peakTorque, peakPower, maximumSpeed, continuousTorque, continuousPower }: MotorRead) {
  return [curve, peakTorque, peakPower, maximumSpeed, continuousTorque, continuousPower].some(
    (figure) => figure !== undefined,
  )
}

function gearsOf(where: string, car: Car, driveline: PowertrainRead['driveline'], motor: MotorRead) {
  const { gears, finalDrive, efficiency, rollingRadius, tyre } = driveline
  if (gears !== undefined && finalDrive !== undefined) {
    const read = drivelineOf(where, { car: { tyre, rollingRadius }, gearbox: driveline })
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
        ...(read.gears.length > 1 ? ['At every moment the gear is in that draws least; shifts take no time.'] : []),
      ],
    }
  }
  refuseMissingGears(where, driveline, motor, car)
  const only = oneEfficiency(efficiency)
  if (only === undefined || rollingRadius !== undefined || tyre !== undefined) {
    const expected = 'gears and finalDrive for a tyre and an efficiency in each gear, or efficiency alone, such as 0.93'
    throw new InputError(where, [{ path: 'driveline', expected, received: 'no gears' }])
  }
  const inertia = inertiaOf(where, car, undefined, undefined)
  return {
    // Without gears only the product of torque and speed counts: as if the motor turned by a radian in each metre.
    gears: [{ name: undefined, turns: 1, efficiency: only.si, inertialMass: inertia.massAt(undefined) }],
    assumptions: [
      `The driveline has an efficiency of ${only.as('%')} at every load and speed.`,
      ...inertia.assumptions,
    ],
  }
}

/** Refuses figures of motor and car that mean nothing without gears. */
function refuseMissingGears(
  where: string,
  { gears, finalDrive }: PowertrainRead['driveline'],
  motor: MotorRead,
  car: Car,
) {
  const needs = [
    ...(motor.loss === undefined ? [] : ['motor.loss']),
    ...(hasEnvelope(motor) ? ['the figures of the motor'] : []),
    ...(motor.inertia === undefined ? [] : ['motor.inertia']),
    ...(car.wheelInertia === undefined ? [] : ['car.wheelInertia']),
    ...(gears === undefined && finalDrive === undefined ? [] : ['the other of the two']),
  ]
  if (needs.length === 0) return
  const issues: InputIssue[] = []
  if (gears === undefined) {
    const expected = `the ratios of the gears, such as { first: 3.6, second: 2.1 }, for ${needs.join(' and ')}`
    issues.push({ path: 'driveline.gears', expected, received: 'nothing' })
  }
  if (finalDrive === undefined) {
    const expected = `the ratio of the final drive, such as 4.1, for ${needs.join(' and ')}`
    issues.push({ path: 'driveline.finalDrive', expected, received: 'nothing' })
  }
  throw new InputError(where, issues)
}

/** The grip of the driven wheels, where a friction coefficient is given. */
export function gripFor(where: string, car: Car, { friction }: LimitRead): Grip | undefined {
  return friction === undefined ? undefined : gripOf(where, car, friction)
}

/** A pack between two states of charge, for loops. */
export interface PackInUse {
  readonly supply: Supply
  /** In coulombs. */
  readonly capacity: number
  readonly from: number
  readonly to: number
  /** States of charge between which the open-circuit voltage is known. */
  readonly lowest: number
  readonly highest: number
  readonly assumptions: readonly (string | Assumption)[]
}

/** Reads the pack that feeds a drive, where one is given. */
export function packInUse(
  where: string,
  source: SourceRead,
  controller: LimitRead['controller'],
): PackInUse | undefined {
  const { pack, usableEnergy, stateOfCharge, cellTemperature } = source
  const issues: InputIssue[] = []
  if (pack !== undefined && usableEnergy !== undefined) {
    const expected = 'one of them: the pack tells its energy'
    issues.push({ path: 'pack and usableEnergy', expected, received: 'both' })
  }
  if (pack === undefined) {
    const strays = { stateOfCharge, cellTemperature, controller }
    for (const [path, stray] of Object.entries(strays)) {
      if (stray === undefined) continue
      issues.push({ path, expected: 'a pack to which it belongs, or nothing', received: 'no pack' })
    }
  }
  const from = stateOfCharge?.from ?? quantity('ratio', '100 %')
  const to = stateOfCharge?.to ?? quantity('ratio', '0 %')
  if (from.si <= to.si) {
    const expected = `a state of charge below that at the start, ${from}`
    issues.push({ path: 'stateOfCharge.to', expected, received: String(to) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
  if (pack === undefined) return undefined
  const supply = supplyOf(where, pack, controller, cellTemperature)
  // Where its open-circuit curve does not reach, this refuses.
  supply.openCircuitAt(from.si)
  supply.openCircuitAt(to.si)
  return {
    supply,
    capacity: parallelCharge.compute({ count: pack.parallel, capacity: pack.module.capacity.si }),
    from: from.si,
    to: to.si,
    lowest: pack.module.openCircuit?.[0]?.[0].si ?? 0,
    highest: pack.module.openCircuit?.at(-1)?.[0].si ?? 1,
    assumptions: [
      ...supply.assumptions,
      ...(stateOfCharge?.from === undefined ? ['The pack starts full (stateOfCharge.from 100 %).'] : []),
      ...(stateOfCharge?.to === undefined
        ? ['The pack is driven until it is empty (stateOfCharge.to 0 %): its cells last longer if some is left.']
        : []),
    ],
  }
}

/** What a stretch of road asks of a car, on plain SI numbers: forces as polynomials of the speed. */
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
  readonly auxiliary: number
}

/** The conditions at an air density (kg/m³), a head wind (m/s), a grade and a power of auxiliaries (W). */
export function conditionsOf(
  { resistance, linear }: CarOnRoad,
  density: number,
  headwind: number,
  grade: number,
  auxiliary: number,
): Conditions {
  return {
    tyres: resistance.tyres(0, grade),
    tyresBySpeed: linear.si,
    air: resistance.air(1, density, 0),
    headwind,
    hill: resistance.hill(grade),
    grade,
    auxiliary,
  }
}
