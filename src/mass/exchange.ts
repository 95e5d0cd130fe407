/**
 * What taking parts out of a car and putting others in does to its corner weights and its balance.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1 (moments about the axles), and Milliken &
 * Milliken, Race Car Vehicle Dynamics (1995), chapter 18 (sharing of the side-to-side moment).
 */
import { cite, section } from '../formula/index.js'
import { approval, brakesAndSteering } from '../procedure/cautions.js'
import {
  type Check,
  check,
  type Findings,
  given,
  group,
  isMet,
  list,
  type Note,
  optional,
  procedure,
  type Read,
  renamed,
  type Unfinished,
} from '../procedure/index.js'
import { CalculationError, type Quantity, quantity } from '../quantity/index.js'
import { commonCentre, offsetTransfer, rearAxleMass, remainingCentre } from './balance.js'
import { heightUnknown, type Part, partField, requireLeft, wholeMass } from './ledger.js'
import { plausibilityOf } from './plausible.js'
import { outside } from './position.js'
import {
  type Corners,
  cornersOf,
  raisedAssumptions,
  refuseReadings,
  STOOD_LEVEL,
  type Stance,
  stabilityCheck,
  stanceOf,
  type Weighed,
  type WeighedCar,
  weigh,
  weighedCarFields,
  wheelInWords,
  wheels,
  withoutResidue,
} from './weigh.js'

/** A car before and after an exchange of parts. */
export interface MassExchange extends Findings {
  readonly before: Weighed
  readonly after: Stance
  /** After less before, figure by figure; the height where both are known. */
  readonly change: Stance
}

/** @internal */
export const limitsField = /*@__PURE__*/ (() =>
  group('The greatest masses allowed', {
    gross: optional(given('mass', 'Greatest mass allowed', { above: 0, usual: ['400 kg', '3500 kg'] }), {
      absent: 'The mass of the car is not held to a limit: give limits.gross.',
    }),
    frontAxle: optional(
      given('mass', 'Greatest mass allowed on the front axle', { above: 0, usual: ['150 kg', '2000 kg'] }),
      {
        absent: 'The mass on the front axle is not held to a limit: give limits.frontAxle.',
      },
    ),
    rearAxle: optional(
      given('mass', 'Greatest mass allowed on the rear axle', { above: 0, usual: ['150 kg', '2000 kg'] }),
      {
        absent: 'The mass on the rear axle is not held to a limit: give limits.rearAxle.',
      },
    ),
  }))()

/**
 * Works out how a car stands after parts were exchanged, from how it stood before. Each part moves the axle totals by its
 * moments about the axles. Its side-to-side moment goes to the axles in the shares that they have of the roll stiffness, as
 * on a body that does not twist. Each part needs its `left`; without its `up` the new height is left out. What the scales
 * leave out (driver, passengers, load) the limits must leave room for: add it as parts to check that.
 *
 * Answers: how does the car stand on its wheels after parts were taken out and others put in?
 *
 * - `car`: the car on its scales, before the exchange
 *   - `scales`: what the scales show
 *     - `frontLeft`: mass on the front left wheel, in kg, at least 0 kg
 *     - `frontRight`: mass on the front right wheel, in kg, at least 0 kg
 *     - `rearLeft`: mass on the rear left wheel, in kg, at least 0 kg
 *     - `rearRight`: mass on the rear right wheel, in kg, at least 0 kg
 *   - `wheelbase`: wheelbase, in m, above 0 m
 *   - `track`: the distances between the wheels of an axle
 *     - `front`: front track, in m, above 0 m
 *     - `rear`: rear track, in m, above 0 m
 *   - `raised`: the weighing with the rear axle raised, optional
 *     - `rise`: height by which the rear wheel centres were raised, in m, above 0 m
 *     - `loadedRadius`: height of the wheel centres above the ground, car level, in m, above 0 m
 *     - `front`: mass on both front wheels, rear axle raised, in kg, at least 0 kg, optional
 *     - `frontLeft`: mass on the front left wheel, rear axle raised, in kg, at least 0 kg, optional
 *     - `frontRight`: mass on the front right wheel, rear axle raised, in kg, at least 0 kg, optional
 *     - `others`: further weighings so, to fit the height through all of them, pairs of height by which the rear wheel
 *       centres were raised and mass on both front wheels, optional
 * - `removed`: the parts taken out, a list
 *   - `name`: what it is called, text
 *   - `mass`: mass of one, in kg, above 0 kg
 *   - `at`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 *   - `count`: how many there are, all at this place, a whole number, at least 1 and at most 100000, optional
 *   - `size`: the sides of the part, seen from above; without them it is taken as a point, optional
 *     - `length`: length along the car, in m, at least 0 m
 *     - `width`: width across the car, in m, at least 0 m
 * - `added`: the parts put in, a list
 *   - `name`: what it is called, text
 *   - `mass`: mass of one, in kg, above 0 kg
 *   - `at`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 *   - `count`: how many there are, all at this place, a whole number, at least 1 and at most 100000, optional
 *   - `size`: the sides of the part, seen from above; without them it is taken as a point, optional
 *     - `length`: length along the car, in m, at least 0 m
 *     - `width`: width across the car, in m, at least 0 m
 * - `frontRollShare`: the front axle's share of the roll stiffness, a plain number, at least 0 and at most 1, 0.5 by
 *   default (as if both axles resisted roll alike; common practice, no source)
 * - `limits`: the greatest masses allowed, optional
 *   - `gross`: greatest mass allowed, in kg, above 0 kg, optional
 *   - `frontAxle`: greatest mass allowed on the front axle, in kg, above 0 kg, optional
 *   - `rearAxle`: greatest mass allowed on the rear axle, in kg, above 0 kg, optional
 * - always assumed: the car stood level, with its suspension settled
 * - always assumed: the body does not twist, and the springs and bars of each axle are alike on both sides
 *
 * @returns The stance before and after and the change, with checks, assumptions and cautions. The checks are of the car
 * after the exchange, and what of the weighing does not hold; all checks of the weighing stand with `before`. Parts that lie outside the wheels by more than a car
 * overhangs are named among the assumptions.
 * @throws InputError for input that cannot be used, by its path; CalculationError when a wheel would carry less than
 * nothing.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1; Milliken & Milliken, Race Car Vehicle
 * Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * const { after, change } = exchangeMasses({
 *   car: {
 *     scales: { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' },
 *     wheelbase: '2030 mm',
 *     track: { front: '1220 mm', rear: '1190 mm' },
 *   },
 *   removed: [{ name: 'engine', mass: '118 kg', at: { aft: '-120 mm', left: '0 mm' } }],
 *   added: [{ name: 'motor', mass: '46 kg', at: { aft: '150 mm', left: '0 mm' } }],
 * })
 * String(after.frontShare) // '44.86 %'
 * String(change.mass) // '-72 kg'
 * ```
 */
export const exchangeMasses = /*@__PURE__*/ procedure({
  name: 'exchangeMasses',
  title: 'Parts out, parts in',
  answers: 'How does the car stand on its wheels after parts were taken out and others put in?',
  input: {
    car: group('The car on its scales, before the exchange', weighedCarFields),
    removed: list('The parts taken out', partField),
    added: list('The parts put in', partField),
    frontRollShare: given('ratio', "The front axle's share of the roll stiffness", {
      min: 0,
      max: 1,
      default: 0.5,
      because: 'as if both axles resisted roll alike; common practice, no source',
    }),
    limits: optional(limitsField, { absent: 'Mass and axle loads are not held to limits: give limits.' }),
  },
  source: [
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1'),
    cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  ],
  assumes: [STOOD_LEVEL, 'The body does not twist, and the springs and bars of each axle are alike on both sides.'],
  work: ({ car, removed, added, frontRollShare, limits }): Unfinished<MassExchange> => {
    for (const [name, parts] of Object.entries({ removed, added })) {
      const placed = parts.map((part, i) => ({ ...part, path: `${name}[${i}].at` }))
      requireLeft('exchangeMasses', placed, 'the corner masses')
    }
    refuseReadings('exchangeMasses', 'car.', car)
    const before = section('Before', () => weigh(car))
    const taken = removed.map((part) => section(`Out: ${part.name}`, () => cornersFrom(part, car, frontRollShare)))
    const put = added.map((part) => section(`In: ${part.name}`, () => cornersFrom(part, car, frontRollShare)))
    const corners = withoutResidue(
      cornersOf((wheel) =>
        put.reduce(
          (sum, part) => sum.plus(part[wheel]),
          taken.reduce((sum, part) => sum.minus(part[wheel]), before.corners[wheel]),
        ),
      ),
    )
    refuseNothingLeft(before.mass, removed, added)
    refuseLifted(corners)
    const after = section('After', () => {
      const up = heightAfter(before, removed, added)
      return stanceOf(corners, car, up)
    })
    const plausibility = plausibilityOf('exchange', 'added', after, { ...car, raised: undefined })
    return {
      before,
      after,
      change: changeOf(before, after),
      checks: [...unmetOf(before), ...heightChecks(after, car), ...limitChecks(after, limits), ...plausibility.checks],
      notes: [...notesOf(before), ...plausibility.notes],
      assumptions: [
        ...raisedAssumptions(car),
        ...(before.centreOfGravity.up === undefined ? [] : heightUnknown([...removed, ...added])),
        ...Object.entries({ removed, added }).flatMap(([name, parts]) =>
          parts.flatMap((part, i) => outside(`${name}[${i}].at`, part.name, part.at, car)),
        ),
      ],
      cautions: [...before.cautions, brakesAndSteering, approval],
    }
  },
})

/** What of the weighing does not hold: all that follows rests on it. */
function unmetOf({ checks }: Weighed): Check[] {
  return checks
    .filter((each) => !isMet(each))
    .map((each) => {
      const paths = each.paths.map((path) => `car.${path}`)
      return Object.assign(renamed(each, each.id, `${each.name}, as it was weighed`), { paths })
    })
}

/** What is unusual of the weighing. That a field of it is unusual is told of the field, where it stands here. */
function notesOf({ notes }: Weighed): Note[] {
  return notes.filter(({ id, path }) => id !== `${path}.unusual`).map((each) => ({ ...each, path: `car.${each.path}` }))
}

/** What a part puts on each wheel. */
function cornersFrom(part: Part, { wheelbase, track }: WeighedCar, frontRollShare: Quantity<'ratio'>) {
  const { at } = part
  const mass = wholeMass(part)
  const left = at.left as Quantity<'length'>
  const rear = rearAxleMass({ mass, aft: at.aft, wheelbase })
  const front = mass.minus(rear)
  const rearRollShare = quantity('ratio', 1 - frontRollShare.si)
  const frontOffset = offsetTransfer({ mass, left, rollShare: frontRollShare, track: track.front })
  const rearOffset = offsetTransfer({ mass, left, rollShare: rearRollShare, track: track.rear })
  return {
    frontLeft: front.over(2).plus(frontOffset),
    frontRight: front.over(2).minus(frontOffset),
    rearLeft: rear.over(2).plus(rearOffset),
    rearRight: rear.over(2).minus(rearOffset),
  }
}

/** Taking out a whole car is a matter for two lists that do not belong together. */
function refuseNothingLeft(mass: Quantity<'mass'>, removed: readonly Part[], added: readonly Part[]): void {
  const sum = (parts: readonly Part[]) => parts.map(wholeMass).reduce((total, each) => total.plus(each), mass.times(0))
  const [taken, put] = [sum(removed), sum(added)]
  const whole = mass.plus(put)
  if (taken.si < whole.si) return
  throw new CalculationError(
    'exchangeMasses',
    `nothing is left of the car: it weighs ${mass}, and ${taken} are taken out of it. Check the masses and counts in ` +
      'removed against the scales',
    { car: String(mass), removed: String(taken), added: String(put) },
  )
}

function refuseLifted(corners: Corners<Quantity<'mass'>>): void {
  const lifted = wheels.filter((wheel) => corners[wheel].si < 0)
  if (lifted.length === 0) return
  const which = lifted.map((wheel) => `the ${wheelInWords[wheel]} wheel would carry ${corners[wheel]}`).join(', ')
  const figures = Object.fromEntries(wheels.map((wheel) => [wheel, String(corners[wheel])]))
  throw new CalculationError(
    'exchangeMasses',
    `${which}: less than nothing. Check the masses and places of the parts against the scales`,
    figures,
  )
}

/** Height of the centre of gravity after the exchange, where all heights are known. */
function heightAfter(before: Stance, removed: readonly Part[], added: readonly Part[]): Quantity<'length'> | undefined {
  if (before.centreOfGravity.up === undefined) return undefined
  if ([...removed, ...added].some(({ at }) => at.up === undefined)) return undefined
  let { mass } = before
  let { up } = before.centreOfGravity
  // Parts are put in before others are taken out, so that something is left at every step.
  for (const part of added) {
    const [second, secondMass] = [part.at.up as Quantity<'length'>, wholeMass(part)]
    up = commonCentre({ firstMass: mass, first: up, secondMass, second })
    mass = mass.plus(secondMass)
  }
  for (const part of removed) {
    const partMass = wholeMass(part)
    up = remainingCentre({ mass, centre: up, partMass, part: part.at.up as Quantity<'length'> })
    mass = mass.minus(partMass)
  }
  if (up.si > 0) return up
  throw new CalculationError(
    'exchangeMasses',
    `the centre of gravity would lie ${up} above the ground. Check the heights of the parts against that of the car`,
    { before: String(before.centreOfGravity.up), after: String(up) },
  )
}

function changeOf(before: Stance, after: Stance): Stance {
  const up = placeChange(before.centreOfGravity, after.centreOfGravity)
  return {
    mass: after.mass.minus(before.mass),
    corners: cornersOf((wheel) => after.corners[wheel].minus(before.corners[wheel])),
    frontMass: after.frontMass.minus(before.frontMass),
    rearMass: after.rearMass.minus(before.rearMass),
    frontShare: after.frontShare.minus(before.frontShare),
    leftShare: after.leftShare.minus(before.leftShare),
    crossShare: after.crossShare.minus(before.crossShare),
    centreOfGravity: up,
  }
}

function placeChange(before: Stance['centreOfGravity'], after: Stance['centreOfGravity']): Stance['centreOfGravity'] {
  const aft = after.aft.minus(before.aft)
  const left = after.left.minus(before.left)
  return before.up === undefined || after.up === undefined
    ? { aft, left }
    : { aft, left, up: after.up.minus(before.up) }
}

function heightChecks({ centreOfGravity: { up } }: Stance, car: WeighedCar): Check[] {
  if (up === undefined) return []
  const name = 'Static stability factor after the exchange'
  return [stabilityCheck('exchange.stability', name, car, up, 'car.raised', 'car.track', 'removed', 'added')]
}

function limitChecks(after: Stance, limits: Read<typeof limitsField> | undefined): Check[] {
  const held = [
    ['exchange.mass', 'Gross mass', after.mass, 'gross'],
    ['exchange.frontMass', 'Mass on the front axle', after.frontMass, 'frontAxle'],
    ['exchange.rearMass', 'Mass on the rear axle', after.rearMass, 'rearAxle'],
  ] as const
  return held.flatMap(([id, name, mass, key]) => {
    const limit = limits?.[key]
    return limit === undefined ? [] : [check(id, name, mass, 'at most', limit, 'limit as given', `limits.${key}`)]
  })
}
