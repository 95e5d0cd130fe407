/**
 * How dampers still the body on its springs.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 */
import { cite, formula, input, output } from '../../formula/index.js'

const gillespie = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 5')

/**
 * Damping at which a corner comes to rest as soon as it can without swinging over: cars have a fifth to a half of it.
 *
 * `c_c = 2 * sqrt(k * m)`
 *
 * - `rate` (`k`, N/mm): wheel rate, above 0 N/mm
 * - `sprungMass` (`m`, kg): sprung mass on the wheel, above 0 kg
 * - gives `c_c`: critical damping, at the wheel, in N·s/m
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @example
 * ```ts
 * criticalDamping({ rate: '22 N/mm', sprungMass: '317.5 kg' })
 * // 5286 N·s/m
 * // Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), p. 209 (recomputed): 5285.8 N·s/m
 * ```
 */
export const criticalDamping = /*@__PURE__*/ formula({
  name: 'criticalDamping',
  title: 'Critical damping of a corner',
  inputs: {
    rate: input('springRate', 'k', 'Wheel rate', { above: 0 }),
    sprungMass: input('mass', 'm', 'Sprung mass on the wheel', { above: 0 }),
  },
  result: output('forcePerSpeed', 'c_c', 'Critical damping, at the wheel', 'N·s/m'),
  expression: '2 * sqrt(k * m)',
  source: gillespie,
  compute: ({ rate, sprungMass }) => 2 * Math.sqrt(rate * sprungMass),
})

/**
 * Damping ratio of a corner: its damping over the critical one. A damper that sits inboard counts at the wheel with
 * its motion ratio squared.
 *
 * `zeta = c * MR ^ 2 / (2 * sqrt(k * m))`
 *
 * - `damping` (`c`, N/(km/h)): damping of the damper, mean of bump and rebound, at least 0 N/(km/h)
 * - `motionRatio` (`MR`, a plain number): motion ratio, damper travel over wheel travel, above 0
 * - `rate` (`k`, N/mm): wheel rate, above 0 N/mm
 * - `sprungMass` (`m`, kg): sprung mass on the wheel, above 0 kg
 * - gives `zeta`: damping ratio, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 5.
 *
 * @example
 * ```ts
 * dampingRatio({ damping: '1459.4 N·s/m', motionRatio: 1, rate: '21898 N/m', sprungMass: '345.1 kg' })
 * // 0.2654
 * // US database of measured light vehicles, car of 1226 kg (recomputed): 0.265
 * ```
 */
export const dampingRatio = /*@__PURE__*/ formula({
  name: 'dampingRatio',
  title: 'Damping ratio of a corner',
  inputs: {
    damping: input('forcePerSpeed', 'c', 'Damping of the damper, mean of bump and rebound', { min: 0 }),
    motionRatio: input('ratio', 'MR', 'Motion ratio, damper travel over wheel travel', { above: 0 }),
    rate: input('springRate', 'k', 'Wheel rate', { above: 0 }),
    sprungMass: input('mass', 'm', 'Sprung mass on the wheel', { above: 0 }),
  },
  result: output('ratio', 'zeta', 'Damping ratio'),
  expression: 'c * MR ^ 2 / (2 * sqrt(k * m))',
  source: gillespie,
  compute: ({ damping, motionRatio, rate, sprungMass }) =>
    (damping * motionRatio ** 2) / (2 * Math.sqrt(rate * sprungMass)),
})
