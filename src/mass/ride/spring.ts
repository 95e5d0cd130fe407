/**
 * Springs as the wheels feel them: wheel rate, ride frequency, ride height and roll.
 *
 * Rests on Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16, and Gillespie, Fundamentals of Vehicle
 * Dynamics (1992), chapters 5 and 6.
 */
import { cite, definition, formula, input, output, standardGravity } from '../../formula/index.js'

const rideRates = /*@__PURE__*/ cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 16')
const ride = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 5')

/**
 * Rate of a spring as the wheel feels it. The motion ratio is spring travel over wheel travel, below 1 where the
 * spring sits inboard of the wheel; taken the other way round, it errs by its fourth power.
 *
 * `k_w = k_s * R_m ^ 2`
 *
 * - `springRate` (`k_s`, N/mm): rate of the spring, at least 0 N/mm
 * - `motionRatio` (`R_m`, a plain number): motion ratio, spring travel over wheel travel, above 0
 * - gives `k_w`: wheel rate, in N/mm
 * - Assumes: the motion ratio is the same over the travel
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * wheelRate({ springRate: '140101 N/m', motionRatio: 0.7334 })
 * // 75.36 N/mm
 * // forum worked example (read): 75357 N/m
 * ```
 */
export const wheelRate = /*@__PURE__*/ formula({
  name: 'wheelRate',
  title: 'Wheel rate of a spring',
  inputs: {
    springRate: input('springRate', 'k_s', 'Rate of the spring', { min: 0 }),
    motionRatio: input('ratio', 'R_m', 'Motion ratio, spring travel over wheel travel', { above: 0 }),
  },
  result: output('springRate', 'k_w', 'Wheel rate'),
  expression: 'k_s * R_m ^ 2',
  assumes: ['The motion ratio is the same over the travel.'],
  source: rideRates,
  compute: ({ springRate, motionRatio }) => springRate * motionRatio ** 2,
})

/**
 * Rate of two springs one upon the other, such as the wheel rate upon the tyre. It is softer than either.
 *
 * `k = k_1 * k_2 / (k_1 + k_2)`
 *
 * - `first` (`k_1`, N/mm): rate of one spring, above 0 N/mm
 * - `second` (`k_2`, N/mm): rate of the other spring, above 0 N/mm
 * - gives `k`: rate of both together, in N/mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * rateInSeries({ first: '75357 N/m', second: '318030 N/m' })
 * // 60.92 N/mm
 * // forum worked example (read): 60922 N/m
 * ```
 */
export const rateInSeries = /*@__PURE__*/ formula({
  name: 'rateInSeries',
  title: 'Rate of two springs in series',
  inputs: {
    first: input('springRate', 'k_1', 'Rate of one spring', { above: 0 }),
    second: input('springRate', 'k_2', 'Rate of the other spring', { above: 0 }),
  },
  result: output('springRate', 'k', 'Rate of both together'),
  expression: 'k_1 * k_2 / (k_1 + k_2)',
  source: rideRates,
  compute: ({ first, second }) => (first * second) / (first + second),
})

/**
 * Undamped frequency at which the body bounces on its springs. It takes the mass that the spring carries: half of an
 * axle load includes the wheels and reads too low. With the tyre in series it comes out 5 to 10 % lower.
 *
 * `f = sqrt(k / m_s) / (2 * pi)`
 *
 * - `rate` (`k`, N/mm): wheel rate, or wheel rate and tyre in series, at least 0 N/mm
 * - `sprungMass` (`m_s`, kg): sprung mass on the wheel, above 0 kg
 * - gives `f`: ride frequency, in Hz
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @example
 * ```ts
 * rideFrequency({ rate: '22 N/mm', sprungMass: '317.5 kg' })
 * // 1.325 Hz
 * // Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), p. 209 (recomputed): 1.325 Hz
 * ```
 */
export const rideFrequency = /*@__PURE__*/ formula({
  name: 'rideFrequency',
  title: 'Ride frequency',
  inputs: {
    rate: input('springRate', 'k', 'Wheel rate, or wheel rate and tyre in series', { min: 0 }),
    sprungMass: input('mass', 'm_s', 'Sprung mass on the wheel', { above: 0 }),
  },
  result: output('frequency', 'f', 'Ride frequency'),
  expression: 'sqrt(k / m_s) / (2 * pi)',
  source: ride,
  compute: ({ rate, sprungMass }) => Math.sqrt(rate / sprungMass) / (2 * Math.PI),
})

/**
 * How far a spring has given under what it carries, at the wheel. Cars of one ride frequency sink by the same on
 * their springs, whatever they weigh.
 *
 * `z_s = g0 / (2 * pi * f) ^ 2`
 *
 * - `frequency` (`f`, Hz): ride frequency, above 0 Hz
 * - gives `z_s`: wheel travel from the unloaded spring to ride height, in mm
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: the spring keeps its rate from free length on
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @example
 * ```ts
 * staticDeflection({ frequency: '1 Hz' })
 * // 248.4 mm
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5, static deflection (from memory): 9.78 in
 * ```
 */
export const staticDeflection = /*@__PURE__*/ formula({
  name: 'staticDeflection',
  title: 'Static deflection',
  inputs: { frequency: input('frequency', 'f', 'Ride frequency', { above: 0 }) },
  result: output('length', 'z_s', 'Wheel travel from the unloaded spring to ride height', 'mm'),
  expression: 'g0 / (2 * pi * f) ^ 2',
  constants: { g0: standardGravity },
  assumes: ['The spring keeps its rate from free length on.'],
  source: ride,
  compute: ({ frequency }, { g0 }) => g0 / (2 * Math.PI * frequency) ** 2,
})

/**
 * Spring that gives a ride frequency on the wheel rate alone, to bring back a car's manners after a change of mass.
 *
 * `k_s = m_s * (2 * pi * f) ^ 2 / R_m ^ 2`
 *
 * - `frequency` (`f`, Hz): ride frequency, at least 0 Hz
 * - `sprungMass` (`m_s`, kg): sprung mass on the wheel, at least 0 kg
 * - `motionRatio` (`R_m`, a plain number): motion ratio, spring travel over wheel travel, above 0
 * - gives `k_s`: rate of the spring, in N/mm
 * - Assumes: the tyre is much stiffer than the spring
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @example
 * ```ts
 * springRateForFrequency({ frequency: '1.325 Hz', sprungMass: '317.5 kg', motionRatio: 1 })
 * // 22.01 N/mm
 * // Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), p. 209 (recomputed): 22 N/mm
 * ```
 */
export const springRateForFrequency = /*@__PURE__*/ formula({
  name: 'springRateForFrequency',
  title: 'Spring rate for a ride frequency',
  inputs: {
    frequency: input('frequency', 'f', 'Ride frequency', { min: 0 }),
    sprungMass: input('mass', 'm_s', 'Sprung mass on the wheel', { min: 0 }),
    motionRatio: input('ratio', 'R_m', 'Motion ratio, spring travel over wheel travel', { above: 0 }),
  },
  result: output('springRate', 'k_s', 'Rate of the spring'),
  expression: 'm_s * (2 * pi * f) ^ 2 / R_m ^ 2',
  assumes: ['The tyre is much stiffer than the spring.'],
  source: ride,
  compute: ({ frequency, sprungMass, motionRatio }) => (sprungMass * (2 * Math.PI * frequency) ** 2) / motionRatio ** 2,
})

/**
 * Change of ride height when mass is added; negative, the car sits lower, and positive when mass is taken out.
 *
 * `dz = -dm * g0 / k`
 *
 * - `massChange` (`dm`, kg): mass added, negative for mass taken out
 * - `rate` (`k`, N/mm): sum of the wheel rates that carry it, above 0 N/mm
 * - gives `dz`: change of ride height, positive upwards, in mm
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: the springs keep their rate and do not touch their stops
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * rideHeightChange({ massChange: '100 lb', rate: '800 lbf/in' })
 * // -3.175 mm
 * // by definition (exact): -0.125 in
 * ```
 */
export const rideHeightChange = /*@__PURE__*/ formula({
  name: 'rideHeightChange',
  title: 'Change of ride height with a change of mass',
  inputs: {
    massChange: input('mass', 'dm', 'Mass added, negative for mass taken out'),
    rate: input('springRate', 'k', 'Sum of the wheel rates that carry it', { above: 0 }),
  },
  result: output('length', 'dz', 'Change of ride height, positive upwards', 'mm'),
  expression: '-dm * g0 / k',
  constants: { g0: standardGravity },
  assumes: ['The springs keep their rate and do not touch their stops.'],
  source: definition,
  compute: ({ massChange, rate }, { g0 }) => (-massChange * g0) / rate,
})

/**
 * Stiffness of an axle against roll, from the wheel rate at each side. An anti-roll bar adds its own.
 *
 * `K_phi = k * t ^ 2 / 2`
 *
 * - `rate` (`k`, N/mm): wheel rate of one wheel, at least 0 N/mm
 * - `track` (`t`, m): track, or distance between the springs of a rigid axle, above 0 m
 * - gives `K_phi`: roll rate, in N·m/°
 * - Assumes: both wheels of the axle have the same rate
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 6.
 *
 * @example
 * ```ts
 * rollRate({ rate: '20 N/mm', track: '1.4 m' })
 * // 342.1 N·m/°
 * // by definition (exact): 19600 N·m/rad
 * ```
 */
export const rollRate = /*@__PURE__*/ formula({
  name: 'rollRate',
  title: 'Roll rate of an axle',
  inputs: {
    rate: input('springRate', 'k', 'Wheel rate of one wheel', { min: 0 }),
    track: input('length', 't', 'Track, or distance between the springs of a rigid axle', { above: 0 }),
  },
  result: output('rollRate', 'K_phi', 'Roll rate'),
  expression: 'k * t ^ 2 / 2',
  assumes: ['Both wheels of the axle have the same rate.'],
  source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 6'),
  compute: ({ rate, track }) => (rate * track ** 2) / 2,
})

/**
 * How far to raise the seat of a spring to undo a change of ride height. The seat moves less than the wheel where the
 * spring sits inboard of it.
 *
 * `ds = -dz * R_m`
 *
 * - `heightChange` (`dz`, m): change of ride height to be undone, negative where the body sank
 * - `motionRatio` (`R_m`, a plain number): motion ratio, spring travel over wheel travel, above 0
 * - gives `ds`: height by which the seat is raised, along the spring, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * springSeatChange({ heightChange: '-20 mm', motionRatio: 0.7 })
 * // 14 mm
 * // by definition (exact): 14 mm
 * ```
 */
export const springSeatChange = /*@__PURE__*/ formula({
  name: 'springSeatChange',
  title: 'Spring seat that undoes a change of ride height',
  inputs: {
    heightChange: input('length', 'dz', 'Change of ride height to be undone, negative where the body sank'),
    motionRatio: input('ratio', 'R_m', 'Motion ratio, spring travel over wheel travel', { above: 0 }),
  },
  result: output('length', 'ds', 'Height by which the seat is raised, along the spring', 'mm'),
  expression: '-dz * R_m',
  source: rideRates,
  compute: ({ heightChange, motionRatio }) => -heightChange * motionRatio,
})
