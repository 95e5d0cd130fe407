/**
 * The car on its road, one description for all that drives it: what resists it, what its turning parts add to its mass,
 * and what its driven wheels can hold.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 4.
 */
import { type Assumption, assumed } from '../../procedure/index.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import type { Car } from '../vehicle.js'
import {
  aerodynamicDrag,
  coefficientFromConstant,
  dragAreaFromQuadratic,
  gradeForce,
  rollingResistance,
} from './road-load.js'
import { brakingLimitFront, brakingLimitRear, tractionLimitFront, tractionLimitRear } from './traction.js'
import { equivalentMass } from './turning.js'

/** What resists a car that rolls forwards, in newtons, on plain SI numbers: for loops. @internal */
export interface Resistance {
  /** Of the tyres, and of whatever else grows with the first power of the speed. */
  readonly tyres: (speed: number, grade: number) => number
  /** Of the air; negative where a tail wind pushes. */
  readonly air: (speed: number, airDensity: number, headwind: number) => number
  /** Of the grade; negative downhill. */
  readonly hill: (grade: number) => number
  /** All of it. */
  readonly total: (speed: number, grade: number, airDensity: number, headwind: number) => number
}

/** What a car is to the road: one form, whichever way its road load was given. @internal */
export interface CarOnRoad {
  readonly mass: Quantity<'mass'>
  /** Rolling resistance coefficient, that of the constant part of a coast-down included. */
  readonly rollingResistance: Quantity<'ratio'>
  /** What a coast-down found to grow with the speed; zero else. */
  readonly linear: Quantity<'forcePerSpeed'>
  readonly dragArea: Quantity<'area'>
  readonly resistance: Resistance
  readonly assumptions: readonly Assumption[]
}

/**
 * Reads what resists a car.
 *
 * @param where - The procedure, for its errors.
 * @throws InputError where the road load is not given in just one of its two forms.
 *
 * @internal
 */
export function carOnRoad(where: string, car: Car): CarOnRoad {
  refuseCar(where, car)
  const { mass, roadLoad } = car
  const fitted = roadLoad === undefined ? undefined : fromCoastDown(mass, roadLoad)
  const coefficient = fitted?.rollingResistance ?? (car.rollingResistance as Quantity<'ratio'>)
  const dragArea = fitted?.dragArea ?? (car.dragArea as Quantity<'area'>)
  const linear = roadLoad?.linear ?? quantity('forcePerSpeed', '0 N/(m/s)')
  return {
    mass,
    rollingResistance: coefficient,
    linear,
    dragArea,
    resistance: resistanceOf(mass.si, coefficient.si, linear.si, dragArea.si),
    assumptions: [
      fitted === undefined
        ? assumed('car.rollingResistance', 'The rolling resistance coefficient is the same at every speed.')
        : assumed(
            'car.roadLoad',
            'The coefficients of the coast-down hold at the mass that is given; the quadratic one follows the air density.',
          ),
      assumed('car.lift', 'The air does not lift the car.'),
    ],
  }
}

function resistanceOf(mass: number, coefficient: number, linear: number, dragArea: number): Resistance {
  const tyres = (speed: number, grade: number) =>
    rollingResistance.compute({ mass, coefficient, grade }) + linear * speed
  const air = (speed: number, density: number, headwind: number) =>
    aerodynamicDrag.compute({ airDensity: density, dragArea, speed, headwind })
  const hill = (grade: number) => gradeForce.compute({ mass, grade })
  return {
    tyres,
    air,
    hill,
    total: (speed, grade, density, headwind) => tyres(speed, grade) + air(speed, density, headwind) + hill(grade),
  }
}

function fromCoastDown(
  mass: Quantity<'mass'>,
  { constant, quadratic, airDensity }: NonNullable<Car['roadLoad']>,
): { readonly rollingResistance: Quantity<'ratio'>; readonly dragArea: Quantity<'area'> } {
  return {
    rollingResistance: coefficientFromConstant({ constant, mass }),
    dragArea: dragAreaFromQuadratic({ quadratic, airDensity }),
  }
}

/** Refuses a car whose figures contradict each other or do not tell its road load, each fault by its path. */
function refuseCar(where: string, car: Car): void {
  const issues: InputIssue[] = []
  const parts = (['rollingResistance', 'dragArea'] as const).filter((key) => car[key] !== undefined)
  if (car.roadLoad === undefined ? parts.length < 2 : parts.length > 0) {
    const named = [...parts, ...(car.roadLoad === undefined ? [] : ['roadLoad'])]
    issues.push({
      path: 'car',
      expected: "rollingResistance and dragArea, such as 0.012 and '0.6 m²', or roadLoad from a coast-down",
      received: named.length === 0 ? 'none of them' : named.join(' and '),
    })
  }
  if (car.rotatingFactor !== undefined && car.wheelInertia !== undefined) {
    issues.push({
      path: 'car.rotatingFactor and car.wheelInertia',
      expected: 'one of them, such as rotatingFactor: 1.05',
      received: 'both',
      hint: 'the factor holds the wheels already',
    })
  }
  if (car.roadLoad !== undefined) issues.push(...pushingIssues(car.roadLoad))
  const aft = car.centreOfGravity?.aft
  if (aft !== undefined && car.wheelbase !== undefined && aft.si > car.wheelbase.si) {
    const expected = `a length of at most the wheelbase, ${car.wheelbase}`
    issues.push({ path: 'car.centreOfGravity.aft', expected, received: String(aft) })
  }
  if (issues.length > 0) throw new InputError(where, issues)
}

/** Up to this speed no road load may push: 250 km/h, in m/s. */
const FASTEST = 250 / 3.6

/** A road load that pushes the car at some speed is no road load: its linear coefficient takes more than the others give. */
function pushingIssues({ constant, linear, quadratic }: NonNullable<Car['roadLoad']>): InputIssue[] {
  const least = quadratic.si === 0 ? FASTEST : Math.min(FASTEST, Math.max(0, -linear.si / (2 * quadratic.si)))
  const force = constant.si + linear.si * least + quadratic.si * least ** 2
  if (force >= 0) return []
  const at = `${quantity('force', force, 'N')} at ${quantity('speed', least, 'm/s').as('km/h')}`
  const expected = 'coefficients with which the road load holds the car back at every speed'
  return [
    { path: 'car.roadLoad', expected, received: at, hint: 'a tail wind, a grade, or too narrow a range of speeds' },
  ]
}

/** Mass with that of the turning parts over mass, where nothing tells it: four wheels. UN Regulation No. 154, from memory. */
const TURNING = 1.03

/** Mass with that of the turning parts, as a car that speeds up or slows down feels it. @internal */
export interface Inertia {
  /** Kilograms with a motor geared by a ratio, or with the motor at rest where there is none. */
  readonly massAt: (ratio: number | undefined) => number
  readonly assumptions: readonly Assumption[]
}

/**
 * What the turning parts add to the mass: the rotating factor for every gear, or the inertias of wheels and motor by gear.
 *
 * @throws InputError where both are given.
 *
 * @internal
 */
export function inertiaOf(
  where: string,
  { mass, rotatingFactor, wheelInertia }: Car,
  rollingRadius: Quantity<'length'> | undefined,
  motorInertia: Quantity<'inertia'> | undefined,
): Inertia {
  if (rotatingFactor !== undefined && motorInertia !== undefined) {
    const expected = 'one of them, such as car.rotatingFactor: 1.05'
    const hint = 'the factor holds the motor already'
    const path = 'car.rotatingFactor and motor.inertia'
    throw new InputError(where, [{ path, expected, received: 'both', hint }])
  }
  if (wheelInertia === undefined && motorInertia === undefined) {
    const factor = rotatingFactor?.si ?? TURNING
    return {
      massAt: () => factor * mass.si,
      assumptions:
        rotatingFactor === undefined
          ? [
              assumed(
                'car.rotatingFactor.absent',
                `Turning parts add 3 % to the mass (car.rotatingFactor ${TURNING} by default; four wheels: UN Regulation No. 154, from memory).`,
              ),
            ]
          : [],
    }
  }
  if (rollingRadius === undefined) {
    const expected = "a rollingRadius such as '280 mm', or a tyre such as '155/80 R13', for the inertias"
    throw new InputError(where, [{ path: 'car.rollingRadius or car.tyre', expected, received: 'neither' }])
  }
  const radius = rollingRadius.si
  const wheels = equivalentMass.compute({ inertia: wheelInertia?.si ?? 0, ratio: 1, radius })
  const motor = (ratio: number) => equivalentMass.compute({ inertia: motorInertia?.si ?? 0, ratio, radius })
  return {
    massAt: (ratio) => mass.si + wheels + (ratio === undefined ? 0 : motor(ratio)),
    assumptions: [
      ...(wheelInertia === undefined
        ? [assumed('car.wheelInertia.absent', 'The wheels add nothing to the mass (no car.wheelInertia).')]
        : []),
      ...(motorInertia === undefined
        ? [assumed('motor.inertia.absent', 'The motor adds nothing to the mass (no motor.inertia).')]
        : []),
    ],
  }
}

/**
 * What the driven wheels hold on a grade, in newtons, on plain SI numbers, with the load that moves at that force.
 * @internal
 */
export interface Grip {
  readonly driving: (grade: number) => number
  /** By the driven wheels alone. */
  readonly braking: (grade: number) => number
  readonly axle: 'front' | 'rear'
}

/**
 * The grip of the driven wheels on a surface.
 *
 * @param friction - Friction coefficient of tyre and road.
 * @throws InputError where the car does not tell its wheelbase, centre of gravity or driven axle, or would tip over
 * backwards or forwards before its wheels slip.
 *
 * @internal
 */
export function gripOf(where: string, car: Car, friction: Quantity<'ratio'>): Grip {
  const { wheelbase, centreOfGravity, drivenAxle } = car
  const up = centreOfGravity?.up
  if (wheelbase === undefined || centreOfGravity === undefined || up === undefined || drivenAxle === undefined) {
    const needed: readonly (readonly [string, string, unknown])[] = [
      ['car.wheelbase', "a length such as '2.1 m'", wheelbase],
      centreOfGravity === undefined
        ? ['car.centreOfGravity', "its place such as { aft: '1 m', up: '0.5 m' }", undefined]
        : ['car.centreOfGravity.up', "a length such as '0.5 m'", up],
      ['car.drivenAxle', "'front' or 'rear'", drivenAxle],
    ]
    const missing = needed.filter(([, , value]) => value === undefined)
    throw new InputError(
      where,
      missing.map(([path, expected]) => ({ path, expected: `${expected}, for the grip`, received: 'nothing' })),
    )
  }
  const [pull, brake] =
    drivenAxle === 'rear' ? [tractionLimitRear, brakingLimitRear] : [tractionLimitFront, brakingLimitFront]
  const inputs = { friction, mass: car.mass, aft: centreOfGravity.aft, height: up, wheelbase }
  // Read once with units, so that what cannot be is refused and the working shows it.
  try {
    pull(inputs)
    brake(inputs)
  } catch (error) {
    if (!(error instanceof InputError || error instanceof CalculationError)) throw error
    const expected =
      "a place between the axles, and low enough that the car does not tip over: such as { aft: '1 m', up: '0.5 m' }"
    const received = `aft ${centreOfGravity.aft}, up ${up}, at a wheelbase of ${wheelbase} and a friction of ${friction}`
    throw new InputError(where, [{ path: 'car.centreOfGravity', expected, received }])
  }
  const si = {
    friction: friction.si,
    mass: car.mass.si,
    aft: centreOfGravity.aft.si,
    height: up.si,
    wheelbase: wheelbase.si,
  }
  return {
    driving: (grade) => pull.compute({ ...si, grade }),
    braking: (grade) => brake.compute({ ...si, grade }),
    axle: drivenAxle,
  }
}
