/**
 * Ride height and ride frequency brought back after a change of mass, with springs, spring seats or both.
 *
 * Rests on Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16, and Gillespie, Fundamentals of Vehicle
 * Dynamics (1992), chapter 5.
 */
import * as z from 'zod/mini'
import { cautions, type Findings } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { InputError, type Quantity } from '../../quantity/index.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { rideFrequency, springRateForFrequency, springSeatChange, staticDeflection, wheelRate } from './spring.js'

/** What brings one axle back. */
export interface AxleRide {
  /** Rate of each spring to fit, or of the spring that is kept. */
  readonly springRate: Quantity<'springRate'>
  /** How far to raise each spring seat, along the spring, for the old ride height; negative, to lower it. */
  readonly preload: Quantity<'length'>
  /** Ride frequency with that spring and the new mass. */
  readonly frequency: Quantity<'frequency'>
  /** Ride height against the old one before the seat is moved: negative where the body sits lower. */
  readonly heightChange: Quantity<'length'>
}

/** What brings both axles back. */
export interface RestoredRide extends Findings {
  readonly front: AxleRide
  readonly rear: AxleRide
}

const axleGiven = /*@__PURE__*/ about(
  'the springs of an axle and what they carry',
  z.strictObject({
    before: given('mass', 'Sprung mass on both wheels of the axle before', { above: 0 }),
    after: given('mass', 'Sprung mass on both wheels of the axle after', { above: 0 }),
    springRate: given('springRate', 'Rate of one spring', { above: 0 }),
    motionRatio: given('ratio', 'Motion ratio, spring travel over wheel travel', { above: 0 }),
    targetFrequency: z.optional(given('frequency', 'Ride frequency wanted', { above: 0 })),
    keepHeight: about('whether to keep the spring and bring back the height alone', z.optional(z.boolean())),
  }),
)

const rideGiven = /*@__PURE__*/ about(
  'the ride of a car to be restored',
  z.strictObject({
    axles: about('both axles', z.strictObject({ front: axleGiven, rear: axleGiven })),
  }),
)

/**
 * Works out for each axle the springs and spring seats that bring back ride height and ride frequency after a change of
 * mass.
 *
 * `axles.front` and `axles.rear` each take:
 *
 * - `before`, `after`: sprung mass on both wheels of the axle (kg), above 0: what the scales show less wheels, hubs,
 *   brakes and the axle's share of links
 * - `springRate`: rate of one of its springs (N/mm), above 0
 * - `motionRatio`: spring travel over wheel travel, above 0
 * - `targetFrequency` (Hz): a ride frequency to have instead of the old one
 * - `keepHeight`: true to keep the spring and bring back the height with the spring seat alone; the frequency changes
 *
 * With neither, the new spring has the old frequency. It then sinks by as much under its load as the old one did, so that
 * a spring of the old free length needs no change of its seat.
 *
 * @returns For each axle the spring rate, the change of seat height along the spring, the frequency on the wheel rate
 * alone, and the change of height that the seat undoes.
 * @throws InputError for input that cannot be used, by its path.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16; Gillespie, Fundamentals of Vehicle Dynamics
 * (1992), chapter 5.
 *
 * @example
 * ```ts
 * const { front, rear } = restoreRide({
 *   axles: {
 *     front: { before: '300 kg', after: '270 kg', springRate: '20 N/mm', motionRatio: 1 },
 *     rear: { before: '270 kg', after: '340 kg', springRate: '24 N/mm', motionRatio: 1, keepHeight: true },
 *   },
 * })
 * String(front.springRate) // '18 N/mm'
 * String(rear.preload) // '14.3 mm'
 * ```
 */
export const restoreRide = /*@__PURE__*/ procedure('restoreRide', rideGiven, ({ axles }): RestoredRide => {
  const both = (['front', 'rear'] as const).filter(
    (end) => axles[end].targetFrequency !== undefined && axles[end].keepHeight === true,
  )
  if (both.length > 0) {
    throw new InputError(
      'restoreRide',
      both.map((end) => ({
        path: `axles.${end}`,
        expected: 'targetFrequency or keepHeight',
        received: 'both',
        hint: 'a spring that is kept has the frequency it has',
      })),
    )
  }
  return {
    front: section('Front axle', () => rideOf(axles.front)),
    rear: section('Rear axle', () => rideOf(axles.rear)),
    checks: [],
    assumptions: [
      'New springs have the free length of the old ones, and rates and motion ratios are the same over the travel.',
      'Frequencies are those on the wheel rate alone; with the tyre in series they are 5 to 10 % lower.',
    ],
    cautions: [cautions.brakesAndSteering, cautions.liftedCar],
  }
})

function rideOf(axle: Read<typeof axleGiven>): AxleRide {
  const { before, after, springRate, motionRatio, targetFrequency, keepHeight } = axle
  const sprungMass = after.over(2)
  const oldRate = wheelRate({ springRate, motionRatio })
  const oldFrequency = rideFrequency({ rate: oldRate, sprungMass: before.over(2) })
  const frequency = keepHeight ? rideFrequency({ rate: oldRate, sprungMass }) : (targetFrequency ?? oldFrequency)
  const fitted = keepHeight ? springRate : springRateForFrequency({ frequency, sprungMass, motionRatio })
  const heightChange = staticDeflection({ frequency: oldFrequency }).minus(staticDeflection({ frequency }))
  return {
    springRate: fitted.as(springRate.unit),
    preload: springSeatChange({ heightChange, motionRatio }),
    frequency,
    heightChange,
  }
}
