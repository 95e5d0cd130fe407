/**
 * Ride height and ride frequency brought back after a change of mass, with springs, spring seats or both.
 *
 * Rests on Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16, and Gillespie, Fundamentals of Vehicle
 * Dynamics (1992), chapter 5.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering, liftedCar } from '../../procedure/cautions.js'
import {
  type Check,
  check,
  type Findings,
  flag,
  given,
  group,
  optional,
  procedure,
  type Read,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { criticalDamping, dampingRatio } from './damping.js'
import { rideFrequency, springRateForFrequency, springSeatChange, staticDeflection, wheelRate } from './spring.js'

/** What the change makes of the damping of an axle. */
export interface AxleDamping {
  /** Damping ratio before the change. */
  readonly before: Quantity<'ratio'>
  /** Damping ratio after it, with the dampers that it has. */
  readonly after: Quantity<'ratio'>
  /** Damping of each damper that brings the old ratio back, mean of bump and rebound. */
  readonly damper: Quantity<'forcePerSpeed'>
}

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
  /** Its damping; absent where its damper is not given. */
  readonly damping?: AxleDamping
}

/** What brings both axles back. */
export interface RestoredRide extends Findings {
  readonly front: AxleRide
  readonly rear: AxleRide
}

/** What describes the springs of an axle. @internal */
export const springFields = /*@__PURE__*/ (() => ({
  springRate: given('springRate', 'Rate of one spring', { above: 0, usual: ['12 N/mm', '80 N/mm'] }),
  motionRatio: given('ratio', 'Motion ratio, spring travel over wheel travel', { above: 0, usual: [0.5, 1.05] }),
}))()

const axleField = /*@__PURE__*/ (() =>
  group('The springs of an axle and what they carry', {
    before: given('mass', 'Sprung mass on both wheels of the axle before', { above: 0 }),
    after: given('mass', 'Sprung mass on both wheels of the axle after', { above: 0 }),
    ...springFields,
    targetFrequency: optional(
      given('frequency', 'Ride frequency wanted; the old one unless given', { above: 0, usual: ['1 Hz', '2 Hz'] }),
    ),
    damper: optional(
      group('One damper', {
        damping: given('forcePerSpeed', 'Its damping, mean of bump and rebound', {
          above: 0,
          usual: ['300 N·s/m', '8000 N·s/m'],
        }),
        motionRatio: given('ratio', 'Motion ratio, damper travel over wheel travel', { above: 0, usual: [0.5, 1.05] }),
      }),
    ),
    keepHeight: optional(flag('Whether to keep the spring and bring back the height with its seat alone')),
    travel: optional(
      given('length', 'How far the spring seat can be moved either way, along the spring', { above: 0 }),
      {
        absent: 'The change of a spring seat is not held to the travel that it has: give travel of the axle.',
      },
    ),
  }))()

/**
 * Works out for each axle the springs and spring seats that bring back ride height and ride frequency after a change of
 * mass. Sprung mass is what the scales show less wheels, hubs, brakes and the axle's share of links. With neither
 * `targetFrequency` nor `keepHeight`, the new spring has the old frequency. It then sinks by as much under its load as the
 * old one did, so that a spring of the old free length needs no change of its seat. A spring that is kept changes the
 * frequency.
 *
 * Answers: which springs, or which change of their seats, bring back ride height and ride frequency?
 *
 * - `axles`: both axles
 *   - `front`: the springs of an axle and what they carry
 *     - `before`: sprung mass on both wheels of the axle before, in kg, above 0 kg
 *     - `after`: sprung mass on both wheels of the axle after, in kg, above 0 kg
 *     - `springRate`: rate of one spring, in N/mm, above 0 N/mm
 *     - `motionRatio`: motion ratio, spring travel over wheel travel, a plain number, above 0
 *     - `targetFrequency`: ride frequency wanted; the old one unless given, in Hz, above 0 Hz, optional
 *     - `damper`: one damper, optional
 *       - `damping`: its damping, mean of bump and rebound, in N/(km/h), above 0 N/(km/h)
 *       - `motionRatio`: motion ratio, damper travel over wheel travel, a plain number, above 0
 *     - `keepHeight`: whether to keep the spring and bring back the height with its seat alone, true or false, optional
 *     - `travel`: how far the spring seat can be moved either way, along the spring, in m, above 0 m, optional
 *   - `rear`: the springs of an axle and what they carry
 *     - `before`: sprung mass on both wheels of the axle before, in kg, above 0 kg
 *     - `after`: sprung mass on both wheels of the axle after, in kg, above 0 kg
 *     - `springRate`: rate of one spring, in N/mm, above 0 N/mm
 *     - `motionRatio`: motion ratio, spring travel over wheel travel, a plain number, above 0
 *     - `targetFrequency`: ride frequency wanted; the old one unless given, in Hz, above 0 Hz, optional
 *     - `damper`: one damper, optional
 *       - `damping`: its damping, mean of bump and rebound, in N/(km/h), above 0 N/(km/h)
 *       - `motionRatio`: motion ratio, damper travel over wheel travel, a plain number, above 0
 *     - `keepHeight`: whether to keep the spring and bring back the height with its seat alone, true or false, optional
 *     - `travel`: how far the spring seat can be moved either way, along the spring, in m, above 0 m, optional
 * - always assumed: new springs have the free length of the old ones, and rates and motion ratios are the same over
 *   the travel
 * - always assumed: frequencies are those on the wheel rate alone; with the tyre in series they are 5 to 10 % lower
 *
 * @returns For each axle the spring rate, the change of seat height along the spring, the frequency on the wheel rate
 * alone, and the change of height that the seat undoes.
 * @throws InputError for input that cannot be used, by its path.
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16; Gillespie, Fundamentals of Vehicle
 * Dynamics (1992), chapter 5.
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
export const restoreRide = /*@__PURE__*/ procedure({
  name: 'restoreRide',
  title: 'Springs after a change of mass',
  answers: 'Which springs, or which change of their seats, bring back ride height and ride frequency?',
  input: { axles: group('Both axles', { front: axleField, rear: axleField }) },
  source: [
    cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 16'),
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 5'),
  ],
  assumes: [
    'New springs have the free length of the old ones, and rates and motion ratios are the same over the travel.',
    'Frequencies are those on the wheel rate alone; with the tyre in series they are 5 to 10 % lower.',
  ],
  work: ({ axles }): Unfinished<RestoredRide> => {
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
    const front = section('Front axle', () => rideOf(axles.front))
    const rear = section('Rear axle', () => rideOf(axles.rear))
    return {
      front,
      rear,
      checks: [
        ...axleChecks('front', axles.front, front),
        ...axleChecks('rear', axles.rear, rear),
        within(
          'ride.ratio',
          'Ride frequency of the rear axle over that of the front',
          quantity('ratio', rear.frequency.ratioTo(front.frequency)),
          [quantity('ratio', 0.7), quantity('ratio', 1.6)],
          'axles',
        ),
      ],
      cautions: [brakesAndSteering, liftedCar],
    }
  },
})

function rideOf(axle: Read<typeof axleField>): AxleRide {
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
    ...(axle.damper === undefined ? {} : { damping: dampingOf(axle, axle.damper, fitted) }),
  }
}

/** The damping before and after, with the spring that is fitted or kept. */
function dampingOf(
  { before, after, springRate, motionRatio }: Read<typeof axleField>,
  damper: NonNullable<Read<typeof axleField>['damper']>,
  fitted: Quantity<'springRate'>,
): AxleDamping {
  const [oldRate, rate] = [springRate, fitted].map((each) => wheelRate({ springRate: each, motionRatio })) as [
    Quantity<'springRate'>,
    Quantity<'springRate'>,
  ]
  const sprungMass = after.over(2)
  const ratio = dampingRatio({ ...damper, rate: oldRate, sprungMass: before.over(2) })
  return {
    before: ratio,
    after: dampingRatio({ ...damper, rate, sprungMass }),
    damper: criticalDamping({ rate, sprungMass })
      .times(ratio.si)
      .over(damper.motionRatio.si ** 2),
  }
}

/** Damping ratios that road cars have, with worn dampers and with the stiffest. Common practice, no source. */
const DAMPING = /*@__PURE__*/ (() => [quantity('ratio', 0.05), quantity('ratio', 0.8)] as const)()

/** Ride frequencies of cars, from the softest to the hardest. Common practice, no source. */
const FREQUENCIES = /*@__PURE__*/ (() => [quantity('frequency', '0.8 Hz'), quantity('frequency', '3 Hz')] as const)()

/** Holds a figure to the nearer of two bounds. */
function within<K extends Kind>(
  id: string,
  name: string,
  value: Quantity<K>,
  [low, high]: readonly [Quantity<K>, Quantity<K>],
  path: string,
): Check {
  const basis = 'plausibility: common practice, no source'
  // Between the two, the geometric mean is as far from either.
  return value.si ** 2 < low.si * high.si
    ? trial(id, name, { strings: ['', ', at least ', ''], values: [value, low] }, basis, path)
    : trial(id, name, { strings: ['', ', at most ', ''], values: [value, high] }, basis, path)
}

function axleChecks(
  end: 'front' | 'rear',
  { travel }: Read<typeof axleField>,
  { frequency, preload, damping }: AxleRide,
): Check[] {
  const path = `axles.${end}`
  return [
    within(`ride.${end}.frequency`, `Ride frequency of the ${end} axle`, frequency, FREQUENCIES, path),
    ...(damping === undefined
      ? []
      : [within(`ride.${end}.damping`, `Damping ratio of the ${end} axle`, damping.after, DAMPING, `${path}.damper`)]),
    ...(travel === undefined
      ? []
      : [
          check(
            `ride.${end}.travel`,
            `Move of the ${end} spring seats`,
            preload.si < 0 ? preload.times(-1) : preload,
            'at most',
            travel,
            'travel, as given',
            `${path}.travel`,
          ),
        ]),
  ]
}
