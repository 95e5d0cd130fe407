/**
 * What taking parts out of a car and putting others in does to its corner weights and its balance.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1 (moments about the axles), and Milliken &
 * Milliken, Race Car Vehicle Dynamics (1995), chapter 18 (sharing of the side-to-side moment).
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../findings/index.js'
import { section } from '../formula/index.js'
import { CalculationError, type Quantity, quantity } from '../quantity/index.js'
import { about, given, procedure } from '../structure/index.js'
import { commonCentre, offsetTransfer, rearAxleMass, remainingCentre } from './balance.js'
import { heightUnknown, type Part, partGiven, requireLeft, wholeMass } from './ledger.js'
import { outside } from './position.js'
import {
  type Corners,
  cornersOf,
  type Stance,
  stabilityCheck,
  stanceOf,
  type Weighed,
  type WeighedCar,
  weighed,
  weighedCarGiven,
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

const exchangeGiven = /*@__PURE__*/ about(
  'an exchange of parts',
  z.strictObject({
    car: weighedCarGiven,
    removed: about('the parts taken out', z.readonly(z.array(partGiven))),
    added: about('the parts put in', z.readonly(z.array(partGiven))),
    frontRollShare: z.optional(given('ratio', "The front axle's share of the roll stiffness", { min: 0, max: 1 })),
    limits: about(
      'the greatest masses allowed',
      z.optional(
        z.strictObject({
          gross: z.optional(given('mass', 'Greatest mass allowed', { above: 0 })),
          frontAxle: z.optional(given('mass', 'Greatest mass allowed on the front axle', { above: 0 })),
          rearAxle: z.optional(given('mass', 'Greatest mass allowed on the rear axle', { above: 0 })),
        }),
      ),
    ),
  }),
)

/**
 * Works out how a car stands after parts were exchanged, from how it stood before.
 *
 * Each part moves the axle totals by its moments about the axles. Its side-to-side moment goes to the axles in the
 * shares that they have of the roll stiffness, as on a body that does not twist.
 *
 * - `car`: as for {@link weigh}
 * - `removed`, `added`: lists of parts as for {@link tally}; `left` must be known of each, `up` only for the new height
 * - `frontRollShare`, 0 to 1: the front axle's share of the roll stiffness, 0.5 unless given
 * - `limits`: `gross`, `frontAxle`, `rearAxle` (kg), above 0; each that is given becomes a check
 *
 * The checks are of the car after the exchange; those of the weighing stand with `before`.
 * What the scales leave out (driver, passengers, load) the limits must leave room for: add it as parts to check that.
 *
 * @returns The stance before and after and the change, with checks, assumptions and cautions. Parts that lie outside
 * the wheels by more than a car overhangs are named among the assumptions.
 * @throws InputError for input that cannot be used, by its path; CalculationError when a wheel would carry less than
 * nothing.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1; Milliken & Milliken, Race Car Vehicle Dynamics
 * (1995), chapter 18.
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
export const exchangeMasses = /*@__PURE__*/ procedure(
  'exchangeMasses',
  exchangeGiven,
  ({ car, removed, added, frontRollShare, limits = {} }): MassExchange => {
    for (const [list, parts] of Object.entries({ removed, added })) {
      const placed = parts.map((part, i) => ({ ...part, path: `${list}[${i}].at` }))
      requireLeft('exchangeMasses', placed, 'the corner masses')
    }
    const before = section('Before', () => weighed('exchangeMasses', car))
    const share = frontRollShare ?? quantity('ratio', 0.5)
    const taken = removed.map((part) => section(`Out: ${part.name}`, () => cornersFrom(part, car, share)))
    const put = added.map((part) => section(`In: ${part.name}`, () => cornersFrom(part, car, share)))
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
    const parts = [...removed, ...added]
    return {
      before,
      after,
      change: changeOf(before, after),
      checks: [...heightChecks(after, car), ...limitChecks(after, limits)],
      assumptions: [
        ...before.assumptions,
        'The body does not twist, and the springs and bars of each axle are alike on both sides.',
        ...(frontRollShare === undefined
          ? ['The front axle has half of the roll stiffness (frontRollShare 0.5 by default).']
          : []),
        ...(before.centreOfGravity.up === undefined ? [] : heightUnknown(parts)),
        ...parts.flatMap(({ name, at }) => outside(name, at, car)),
      ],
      cautions: [...before.cautions, cautions.brakesAndSteering, cautions.approval],
    }
  },
)

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
  return up === undefined ? [] : [stabilityCheck('Static stability factor after the exchange', car, up)]
}

function limitChecks(
  after: Stance,
  limits: {
    gross?: Quantity<'mass'> | undefined
    frontAxle?: Quantity<'mass'> | undefined
    rearAxle?: Quantity<'mass'> | undefined
  },
): Check[] {
  const held = [
    ['Gross mass', after.mass, limits.gross],
    ['Mass on the front axle', after.frontMass, limits.frontAxle],
    ['Mass on the rear axle', after.rearMass, limits.rearAxle],
  ] as const
  return held.flatMap(([name, mass, limit]) =>
    limit === undefined ? [] : [check(name, mass, 'at most', limit, 'limit as given')],
  )
}
