/**
 * How a car stands on its four wheels, from four scales and a tape, and the height of its centre of gravity from a
 * second weighing with the rear axle raised.
 *
 * Rests on Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18, and on ISO 10392.
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../findings/index.js'
import { section } from '../formula/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import { about, given, procedure, type Read } from '../structure/index.js'
import {
  centreOfGravityAft,
  centreOfGravityHeight,
  centreOfGravityLeft,
  crossShare,
  frontShare,
  leftShare,
  raisedAngle,
  staticStabilityFactor,
} from './balance.js'
import type { Place } from './position.js'

/** One of something for each wheel. */
export interface Corners<T> {
  readonly frontLeft: T
  readonly frontRight: T
  readonly rearLeft: T
  readonly rearRight: T
}

/** How a mass stands on four wheels: what the scales show, and what follows from it. */
export interface Stance {
  readonly mass: Quantity<'mass'>
  /** What a scale under each wheel shows. */
  readonly corners: Corners<Quantity<'mass'>>
  readonly frontMass: Quantity<'mass'>
  readonly rearMass: Quantity<'mass'>
  /** Share of the mass on the front wheels. */
  readonly frontShare: Quantity<'ratio'>
  /** Share of the mass on the left wheels. */
  readonly leftShare: Quantity<'ratio'>
  /** Share of the mass on the front right and rear left wheels, the cross weight. */
  readonly crossShare: Quantity<'ratio'>
  /** Where the centre of gravity lies; `up` where the height is known. */
  readonly centreOfGravity: Place & { readonly left: Quantity<'length'> }
}

/** A stance with what is to be said of the weighing. */
export interface Weighed extends Stance, Findings {}

/** A wheel, by name. */
export type Wheel = keyof Corners<unknown>

/** The wheels, in the order in which they are named everywhere. */
export const wheels: readonly Wheel[] = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight']

/** The words for each wheel. */
export const wheelInWords: { readonly [wheel in Wheel]: string } = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
}

/** One of something for each wheel, worked out. */
export function cornersOf<T>(valueAt: (wheel: Wheel) => T): Corners<T> {
  return {
    frontLeft: valueAt('frontLeft'),
    frontRight: valueAt('frontRight'),
    rearLeft: valueAt('rearLeft'),
    rearRight: valueAt('rearRight'),
  }
}

/** What rounding leaves of a wheel that carries nothing, as a share of the mass. */
const RESIDUE = 1e-12

/** Masses that were worked out for the wheels, where a wheel that rounding alone keeps from nothing carries nothing. */
export function withoutResidue(corners: Corners<Quantity<'mass'>>): Corners<Quantity<'mass'>> {
  const mass = wheels.reduce((sum, wheel) => sum + Math.abs(corners[wheel].si), 0)
  return cornersOf((wheel) =>
    Math.abs(corners[wheel].si) <= RESIDUE * mass ? corners[wheel].times(0) : corners[wheel],
  )
}

/** Four readings as they are read. */
export const scalesGiven = /*@__PURE__*/ about(
  'what the scales show',
  z.strictObject({
    frontLeft: given('mass', 'Mass on the front left wheel', { min: 0 }),
    frontRight: given('mass', 'Mass on the front right wheel', { min: 0 }),
    rearLeft: given('mass', 'Mass on the rear left wheel', { min: 0 }),
    rearRight: given('mass', 'Mass on the rear right wheel', { min: 0 }),
  }),
)

/** The wheelbase as it is read. */
export const wheelbaseGiven = /*@__PURE__*/ given('length', 'Wheelbase', { above: 0 })

/** The tracks as they are read. */
export const trackGiven = /*@__PURE__*/ about(
  'the distances between the wheels of an axle',
  z.strictObject({
    front: given('length', 'Front track', { above: 0 }),
    rear: given('length', 'Rear track', { above: 0 }),
  }),
)

/** A car on scales as it is read. */
export const weighedCarGiven = /*@__PURE__*/ about(
  'a car on four scales',
  z.strictObject({
    scales: scalesGiven,
    wheelbase: wheelbaseGiven,
    track: trackGiven,
    raised: about(
      'the weighing with the rear axle raised',
      z.optional(
        z.strictObject({
          rise: given('length', 'Height by which the rear wheel centres were raised', { above: 0 }),
          loadedRadius: given('length', 'Height of the wheel centres above the ground, car level', { above: 0 }),
          front: z.optional(given('mass', 'Mass on both front wheels, rear axle raised', { min: 0 })),
          frontLeft: z.optional(given('mass', 'Mass on the front left wheel, rear axle raised', { min: 0 })),
          frontRight: z.optional(given('mass', 'Mass on the front right wheel, rear axle raised', { min: 0 })),
        }),
      ),
    ),
  }),
)

/** What is read of a car on scales. */
export type WeighedCar = Read<typeof weighedCarGiven>

/**
 * Works out how a car stands from four scale readings, and how high its centre of gravity lies from a second weighing
 * with the rear axle raised.
 *
 * Weigh on level ground with the tyres at their pressures, the tank as it will be, and the suspension settled. For
 * `raised`, lock the suspension at its level height, leave the wheels free, raise the rear axle by `rise` and read the
 * front scales again, as one sum `front` or as `frontLeft` and `frontRight`.
 *
 * - `scales`: `frontLeft`, `frontRight`, `rearLeft`, `rearRight` (kg), at least 0, with load on both axles and both sides
 * - `wheelbase` (m), above 0
 * - `track`: `front` and `rear` (m), above 0; they may differ
 * - `raised.rise` (m), above 0 and below the wheelbase: how much higher the rear wheel centres stood than the front ones
 * - `raised.loadedRadius` (m), above 0: height of the wheel centres of the level car
 *
 * A check holds the static stability factor to 1 where the height is known: what looks like a car that tips before it
 * slides is more often a reading gone wrong. One kilogram read wrong moves the height by more than a centimetre at 10°.
 *
 * @returns The {@link Stance}, with checks, assumptions and cautions.
 * @throws InputError for readings that no car can give, by their path: a wheel, axle or side without load where there
 * must be some, a raised front axle that reads less than the level one or more than the whole car.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18; ISO 10392.
 *
 * @example
 * ```ts
 * const { mass, frontShare, crossShare } = weigh({
 *   scales: { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' },
 *   wheelbase: '2030 mm',
 *   track: { front: '1220 mm', rear: '1190 mm' },
 * })
 * String(mass) // '682 kg'
 * String(frontShare) // '52.2 %'
 * String(crossShare) // '49.12 %'
 * ```
 */
export const weigh = /*@__PURE__*/ procedure('weigh', weighedCarGiven, (car): Weighed => weighed('weigh', car))

/** Weighs a car for the procedure that was called. */
export function weighed(where: string, car: WeighedCar): Weighed {
  refuseUnloaded(where, car.scales)
  const up = car.raised === undefined ? undefined : section('Rear axle raised', () => heightFrom(where, car))
  const stance = section('On level ground', () => stanceOf(car.scales, car, up))
  return {
    ...stance,
    checks: up === undefined ? [] : [stabilityCheck('Static stability factor', car, up)],
    assumptions: [
      'The car stood level, with its suspension settled.',
      ...(up === undefined
        ? []
        : [
            'For the height, the suspension was locked, the wheels were free, and nothing in the car could move.',
            'The wheel centres of the level car are equally high in front and behind.',
          ]),
    ],
    cautions: up === undefined ? [] : [cautions.liftedCar],
  }
}

/** How a car stands with these masses on its wheels. */
export function stanceOf(
  corners: Corners<Quantity<'mass'>>,
  { wheelbase, track }: Pick<WeighedCar, 'wheelbase' | 'track'>,
  up?: Quantity<'length'>,
): Stance {
  const { frontLeft, frontRight, rearLeft, rearRight } = corners
  const frontMass = frontLeft.plus(frontRight)
  const rearMass = rearLeft.plus(rearRight)
  const mass = frontMass.plus(rearMass)
  const aft = centreOfGravityAft({ rearAxleMass: rearMass, mass, wheelbase })
  const left = centreOfGravityLeft({ ...corners, frontTrack: track.front, rearTrack: track.rear })
  return {
    mass,
    corners,
    frontMass,
    rearMass,
    frontShare: frontShare({ aft, wheelbase }),
    leftShare: leftShare({ frontLeft, rearLeft, mass }),
    crossShare: crossShare({ frontRight, rearLeft, mass }),
    centreOfGravity: up === undefined ? { aft, left } : { aft, left, up },
  }
}

/** A car on the ground presses on both axles and on both sides: a pair of scales at zero was off or missed its wheels. */
export function refuseUnloaded(where: string, scales: Corners<Quantity<'mass'>>): void {
  const pairs = [
    ['frontLeft', 'frontRight', 'front'],
    ['rearLeft', 'rearRight', 'rear'],
    ['frontLeft', 'rearLeft', 'left'],
    ['frontRight', 'rearRight', 'right'],
  ] as const
  const issues = pairs
    .filter(([one, other]) => scales[one].si + scales[other].si === 0)
    .map(([one, other, end]) => ({
      path: `scales.${one} and ${other}`,
      expected: `some load on the ${end} wheels, such as '160 kg' on each`,
      received: `${scales[one]} and ${scales[other]}`,
      hint: 'were these scales on, and under their wheels?',
    }))
  if (issues.length > 0) throw new InputError(where, issues)
}

/** Height of the centre of gravity from the weighing with the rear axle raised. */
function heightFrom(where: string, { scales, wheelbase, raised }: WeighedCar): Quantity<'length'> {
  const { rise, loadedRadius } = raised as NonNullable<WeighedCar['raised']>
  if (rise.si >= wheelbase.si) {
    const expected = `a length below the wheelbase, ${wheelbase}`
    throw new InputError(where, [
      { path: 'raised.rise', expected, received: String(rise), hint: 'the height, not the angle' },
    ])
  }
  const [path, raisedFrontMass] = raisedFront(where, raised as NonNullable<WeighedCar['raised']>)
  const levelFrontMass = scales.frontLeft.plus(scales.frontRight)
  const mass = levelFrontMass.plus(scales.rearLeft).plus(scales.rearRight)
  if (raisedFrontMass.si < levelFrontMass.si) {
    const expected = `at least the ${levelFrontMass} that the front wheels carry on level ground`
    const hint =
      'raising the rear moves load to the front: readings swapped, a wheel slipped or bound, or the front raised instead?'
    throw new InputError(where, [{ path, expected, received: String(raisedFrontMass), hint }])
  }
  if (raisedFrontMass.si > mass.si) {
    const expected = `at most the mass of the car, ${mass}`
    throw new InputError(where, [{ path, expected, received: String(raisedFrontMass) }])
  }
  const angle = raisedAngle({ rise, wheelbase })
  return centreOfGravityHeight({ mass, wheelbase, levelFrontMass, raisedFrontMass, angle, axleHeight: loadedRadius })
}

/** The front reading of the raised car, from one sum or from two scales, and where it was given. */
function raisedFront(where: string, raised: NonNullable<WeighedCar['raised']>): [string, Quantity<'mass'>] {
  const { front, frontLeft, frontRight } = raised
  if (front !== undefined && frontLeft === undefined && frontRight === undefined) return ['raised.front', front]
  if (front === undefined && frontLeft !== undefined && frontRight !== undefined) {
    return ['raised.frontLeft and frontRight', frontLeft.plus(frontRight)]
  }
  const named = Object.entries({ front, frontLeft, frontRight }).flatMap(([key, value]) => (value ? [key] : []))
  const expected = "the front reading once: front such as '371 kg', or frontLeft and frontRight"
  const received = named.length === 0 ? 'nothing' : named.join(' and ')
  throw new InputError(where, [{ path: 'raised', expected, received }])
}

/** Holds the static stability factor to 1. */
export function stabilityCheck(name: string, { track }: Pick<WeighedCar, 'track'>, height: Quantity<'length'>): Check {
  const meanTrack = track.front.plus(track.rear).over(2)
  const factor = staticStabilityFactor({ track: meanTrack, height })
  const basis = 'plausibility: below 1 a rigid car tips before tyres that grip with their load slide'
  return check(name, factor, 'at least', quantity('ratio', 1), basis)
}
