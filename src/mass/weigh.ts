/**
 * How a car stands on its four wheels, from four scales and a tape, and the height of its centre of gravity from a
 * second weighing with the rear axle raised.
 *
 * Rests on Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18, and on ISO 10392.
 */
import { cite, section } from '../formula/index.js'
import { liftedCar } from '../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  given,
  group,
  optional,
  pairs,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import {
  centreOfGravityAft,
  centreOfGravityHeight,
  centreOfGravityLeft,
  crossShare,
  frontShare,
  leftShare,
  raisedAngle,
} from './balance.js'
import { plausibilityOf } from './plausible.js'
import type { Place } from './position.js'
import { staticStabilityFactor } from './transfer.js'

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
export interface Weighed extends Stance, Findings {
  /** How far the height moves when the front reading of the raised car is a kilogram off; absent where none was raised. */
  readonly heightPerKilogram?: Quantity<'length'>
}

/** A wheel, by name. */
export type Wheel = keyof Corners<unknown>

/** The wheels, in the order in which they are named everywhere. @internal */
export const wheels: readonly Wheel[] = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight']

/** The words for each wheel. @internal */
export const wheelInWords: { readonly [wheel in Wheel]: string } = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
}

/** One of something for each wheel, worked out. @internal */
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

/**
 * Masses that were worked out for the wheels, where a wheel that rounding alone keeps from nothing carries nothing.
 * @internal
 */
export function withoutResidue(corners: Corners<Quantity<'mass'>>): Corners<Quantity<'mass'>> {
  const mass = wheels.reduce((sum, wheel) => sum + Math.abs(corners[wheel].si), 0)
  return cornersOf((wheel) =>
    Math.abs(corners[wheel].si) <= RESIDUE * mass ? corners[wheel].times(0) : corners[wheel],
  )
}

/** What the four scales show. @internal */
export const scalesField = /*@__PURE__*/ (() =>
  group('What the scales show', {
    ...cornersOf((wheel) =>
      given('mass', `Mass on the ${wheelInWords[wheel]} wheel`, {
        min: 0,
        uncertain: ['1 kg', 'scales that were made for people, common practice, no source'],
      }),
    ),
  }))()

/** The wheelbase. @internal */
export const wheelbaseField = /*@__PURE__*/ (() =>
  given('length', 'Wheelbase', { above: 0, usual: ['1.8 m', '2.9 m'] }))()

/** The tracks. @internal */
export const trackField = /*@__PURE__*/ (() =>
  group('The distances between the wheels of an axle', {
    front: given('length', 'Front track', { above: 0, usual: ['1.1 m', '1.6 m'] }),
    rear: given('length', 'Rear track', { above: 0, usual: ['1.1 m', '1.6 m'] }),
  }))()

/** The second weighing. */
const raisedField = /*@__PURE__*/ (() =>
  group('The weighing with the rear axle raised', {
    rise: given('length', 'Height by which the rear wheel centres were raised', { above: 0 }),
    loadedRadius: given('length', 'Height of the wheel centres above the ground, car level', {
      above: 0,
      usual: ['0.24 m', '0.33 m'],
    }),
    front: optional(given('mass', 'Mass on both front wheels, rear axle raised', { min: 0 })),
    frontLeft: optional(given('mass', 'Mass on the front left wheel, rear axle raised', { min: 0 })),
    frontRight: optional(given('mass', 'Mass on the front right wheel, rear axle raised', { min: 0 })),
    others: optional(
      pairs(
        'Further weighings so, to fit the height through all of them',
        given('length', 'Height by which the rear wheel centres were raised', { above: 0 }),
        given('mass', 'Mass on both front wheels', { min: 0 }),
      ),
    ),
  }))()

/** What describes a car on scales. @internal */
export const weighedCarFields = /*@__PURE__*/ (() => ({
  scales: scalesField,
  wheelbase: wheelbaseField,
  track: trackField,
  raised: optional(raisedField, {
    absent: 'The height of the centre of gravity is not known, nor whether the car tips before it slides: give raised.',
  }),
}))()

/** What is read of a car on scales. @internal */
export type WeighedCar = Read<typeof weighedCarFields>

/** What is assumed of every weighing. @internal */
export const STOOD_LEVEL = 'The car stood level, with its suspension settled.'

/**
 * Works out how a car stands from four scale readings, and how high its centre of gravity lies from a second weighing
 * with the rear axle raised. Weigh on level ground with the tyres at their pressures, the tank as it will be, and the
 * suspension settled. For `raised`, lock the suspension at its level height, leave the wheels free, raise the rear axle by
 * `rise` and read the front scales again, as one sum `front` or as `frontLeft` and `frontRight`. One kilogram read wrong
 * moves the height by more than a centimetre at 10°.
 *
 * Answers: how does the car stand on its wheels, and where is its centre of gravity?
 *
 * - `scales`: what the scales show
 *   - `frontLeft`: mass on the front left wheel, in kg, at least 0 kg
 *   - `frontRight`: mass on the front right wheel, in kg, at least 0 kg
 *   - `rearLeft`: mass on the rear left wheel, in kg, at least 0 kg
 *   - `rearRight`: mass on the rear right wheel, in kg, at least 0 kg
 * - `wheelbase`: wheelbase, in m, above 0 m
 * - `track`: the distances between the wheels of an axle
 *   - `front`: front track, in m, above 0 m
 *   - `rear`: rear track, in m, above 0 m
 * - `raised`: the weighing with the rear axle raised, optional
 *   - `rise`: height by which the rear wheel centres were raised, in m, above 0 m
 *   - `loadedRadius`: height of the wheel centres above the ground, car level, in m, above 0 m
 *   - `front`: mass on both front wheels, rear axle raised, in kg, at least 0 kg, optional
 *   - `frontLeft`: mass on the front left wheel, rear axle raised, in kg, at least 0 kg, optional
 *   - `frontRight`: mass on the front right wheel, rear axle raised, in kg, at least 0 kg, optional
 *   - `others`: further weighings so, to fit the height through all of them, pairs of height by which the rear wheel
 *     centres were raised and mass on both front wheels, optional
 * - always assumed: the car stood level, with its suspension settled
 *
 * @returns The {@link Stance}, with checks, assumptions and cautions. A check holds the static stability factor to 1 where
 * the height is known: what looks like a car that tips before it slides is more often a reading gone wrong.
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
export const weigh = /*@__PURE__*/ procedure({
  name: 'weigh',
  title: 'The car on four scales',
  answers: 'How does the car stand on its wheels, and where is its centre of gravity?',
  input: weighedCarFields,
  source: [cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'), cite('ISO 10392')],
  assumes: [STOOD_LEVEL],
  work: (car): Unfinished<Weighed> => {
    refuseReadings('weigh', '', car)
    const { raised } = car
    const up = raised === undefined ? undefined : section('Rear axle raised', () => heightFrom(car, raised))
    const stance = section('On level ground', () => stanceOf(car.scales, car, up))
    const plausibility = plausibilityOf('weighing', 'scales', stance, car)
    return {
      ...stance,
      ...(raised === undefined ? {} : { heightPerKilogram: heightPerKilogram(car, raised, stance.mass) }),
      checks: [
        ...(up === undefined || raised === undefined
          ? []
          : [
              stabilityCheck('weighing.stability', 'Static stability factor', car, up, 'raised', 'track'),
              movedTrial(car, raised),
            ]),
        ...plausibility.checks,
      ],
      notes: plausibility.notes,
      assumptions: raisedAssumptions(car),
      cautions: raised === undefined ? [] : [liftedCar],
    }
  },
})

/** What is assumed of the second weighing, where there was one. @internal */
export function raisedAssumptions({ raised }: WeighedCar): Assumption[] {
  if (raised === undefined) return []
  return [
    assumed(
      'raised.still',
      'For the height, the suspension was locked, the wheels were free, and nothing in the car could move.',
    ),
    assumed('raised.level', 'The wheel centres of the level car are equally high in front and behind.'),
  ]
}

/** How a car stands with these masses on its wheels. @internal */
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

/**
 * Refuses readings that no car can give.
 *
 * @param path - What comes before the fields of the car in an error.
 *
 * @internal
 */
export function refuseReadings(where: string, path: string, car: WeighedCar): void {
  refuseUnloaded(where, path, car.scales)
  if (car.raised !== undefined) refuseRaised(where, path, car, car.raised)
}

/**
 * A car on the ground presses on both axles and on both sides: a pair of scales at zero was off or missed its wheels.
 * @internal
 */
export function refuseUnloaded(where: string, path: string, scales: Corners<Quantity<'mass'>>): void {
  const pairs = [
    ['frontLeft', 'frontRight', 'front'],
    ['rearLeft', 'rearRight', 'rear'],
    ['frontLeft', 'rearLeft', 'left'],
    ['frontRight', 'rearRight', 'right'],
  ] as const
  const issues = pairs
    .filter(([one, other]) => scales[one].si + scales[other].si === 0)
    .map(([one, other, end]) => ({
      path: `${path}scales.${one} and ${other}`,
      expected: `some load on the ${end} wheels, such as '160 kg' on each`,
      received: `${scales[one]} and ${scales[other]}`,
      hint: 'were these scales on, and under their wheels?',
    }))
  if (issues.length > 0) throw new InputError(where, issues)
}

type Raised = Read<typeof raisedField>

/** Refuses a second weighing that contradicts itself or the first. */
function refuseRaised(where: string, path: string, { scales, wheelbase }: WeighedCar, raised: Raised): void {
  const refuse = (key: string, expected: string, received: string, hint?: string): never => {
    throw new InputError(where, [
      { path: `${path}${key}`, expected, received, ...(hint === undefined ? {} : { hint }) },
    ])
  }
  const { rise, front, frontLeft, frontRight } = raised
  if (rise.si >= wheelbase.si) {
    refuse('raised.rise', `a length below the wheelbase, ${wheelbase}`, String(rise), 'the height, not the angle')
  }
  const named = Object.entries({ front, frontLeft, frontRight }).flatMap(([key, value]) => (value ? [key] : []))
  const isOnce = named.join() === 'front' || named.join() === 'frontLeft,frontRight'
  if (!isOnce) {
    const expected = "the front reading once: front such as '371 kg', or frontLeft and frontRight"
    refuse('raised', expected, named.length === 0 ? 'nothing' : named.join(' and '))
  }
  const levelFrontMass = scales.frontLeft.plus(scales.frontRight)
  const mass = levelFrontMass.plus(scales.rearLeft).plus(scales.rearRight)
  raised.others?.forEach(([higher], i) => {
    if (higher.si < wheelbase.si) return
    refuse(
      `raised.others[${i}][0]`,
      `a length below the wheelbase, ${wheelbase}`,
      String(higher),
      'the height, not the angle',
    )
  })
  raisedPoints(raised).forEach(([, reading], i) => {
    const key = i === 0 ? `raised.${named.join(' and ')}` : `raised.others[${i - 1}][1]`
    if (reading.si < levelFrontMass.si) {
      const expected = `at least the ${levelFrontMass} that the front wheels carry on level ground`
      const hint =
        'raising the rear moves load to the front: readings swapped, a wheel slipped or bound, or the front raised instead?'
      refuse(key, expected, String(reading), hint)
    }
    if (reading.si > mass.si) refuse(key, `at most the mass of the car, ${mass}`, String(reading))
  })
}

/** The front reading of the raised car, from one sum or from two scales. */
function raisedFront({ front, frontLeft, frontRight }: Raised): Quantity<'mass'> {
  return front ?? (frontLeft as Quantity<'mass'>).plus(frontRight as Quantity<'mass'>)
}

/** Every weighing with the rear axle raised: the rise, and what the front wheels then carried. */
function raisedPoints(raised: Raised): readonly (readonly [Quantity<'length'>, Quantity<'mass'>])[] {
  return [[raised.rise, raisedFront(raised)], ...(raised.others ?? [])]
}

/**
 * Height of the centre of gravity from the weighings with the rear axle raised. Of several, that which comes nearest to all:
 * the load that went to the front rises with the tangent of the angle, as ISO 10392 fits it.
 */
function heightFrom({ scales, wheelbase }: WeighedCar, raised: Raised): Quantity<'length'> {
  const levelFrontMass = scales.frontLeft.plus(scales.frontRight)
  const mass = levelFrontMass.plus(scales.rearLeft).plus(scales.rearRight)
  const points = raisedPoints(raised).map(([rise, front]) => {
    const angle = raisedAngle({ rise, wheelbase })
    const height = centreOfGravityHeight({
      mass,
      wheelbase,
      levelFrontMass,
      raisedFrontMass: front,
      angle,
      axleHeight: raised.loadedRadius,
    })
    return { height, weight: Math.tan(angle.si) ** 2 }
  })
  const [first, ...rest] = points as [(typeof points)[number], ...typeof points]
  if (rest.length === 0) return first.height
  // Least squares of load over tangent: each height counts by the square of its tangent.
  const weights = points.reduce((sum, { weight }) => sum + weight, 0)
  return rest.reduce(
    (sum, { height, weight }) => sum.plus(height.times(weight / weights)),
    first.height.times(first.weight / weights),
  )
}

/** How far the height moves with a kilogram of the front reading: wheelbase over mass and tangent of the angle. */
function heightPerKilogram({ wheelbase }: WeighedCar, raised: Raised, mass: Quantity<'mass'>): Quantity<'length'> {
  const tangents = raisedPoints(raised).map(([rise]) =>
    Math.tan(raisedAngle.compute({ rise: rise.si, wheelbase: wheelbase.si })),
  )
  const weights = tangents.reduce((sum, tangent) => sum + tangent ** 2, 0)
  const most = Math.max(...tangents)
  return quantity('length', (wheelbase.si / mass.si) * (most / weights), 'm').as('mm')
}

/** The least that a front reading must rise to tell anything. Common practice, no source. */
const MOVED = /*@__PURE__*/ (() => quantity('mass', '1 kg'))()

/** Raising the rear moves load to the front: a reading that stays is a scale that stuck. */
function movedTrial({ scales }: WeighedCar, raised: Raised): Check {
  const level = scales.frontLeft.plus(scales.frontRight)
  const least = raisedPoints(raised).reduce(
    (one, [, front]) => Math.min(one, front.si - level.si),
    Number.POSITIVE_INFINITY,
  )
  return trial(
    'weighing.moved',
    'Load that went to the front',
    says`${quantity('mass', least, 'kg')} went to the front as the rear was raised, at least ${MOVED}`,
    'plausibility: a scale may stick, or a wheel be held',
    'raised',
  )
}

/** Holds the static stability factor to 1. @internal */
export function stabilityCheck(
  id: string,
  name: string,
  { track }: Pick<WeighedCar, 'track'>,
  height: Quantity<'length'>,
  ...paths: readonly string[]
): Check {
  const meanTrack = track.front.plus(track.rear).over(2)
  const factor = staticStabilityFactor({ track: meanTrack, height })
  const basis = 'plausibility: below 1 a rigid car tips before tyres that grip with their load slide'
  return check(id, name, factor, 'at least', quantity('ratio', 1), basis, ...paths)
}
