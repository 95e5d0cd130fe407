/** Moments of inertia about an upright axis. */
import { cite, formula, input, output } from '../formula/index.js'

/**
 * Moment of inertia about an axis that does not pass through the centre of gravity, as when parts are summed to a
 * car.
 *
 * `I_d = I + m * d ^ 2`
 *
 * - `inertia` (`I`, kg·m²): moment of inertia about the axis through the centre of gravity, at least 0 kg·m²
 * - `mass` (`m`, kg): mass, at least 0 kg
 * - `distance` (`d`, m): distance between the two axes, at least 0 m
 * - gives `I_d`: moment of inertia about the parallel axis, in kg·m²
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Meriam & Kraige, Engineering Mechanics: Dynamics, appendix B.
 *
 * @example
 * ```ts
 * parallelAxis({ inertia: '1 kg·m²', mass: '12 kg', distance: '0.5 m' })
 * // 4 kg·m²
 * // by definition (exact): 4 kg·m²
 * ```
 */
export const parallelAxis = /*@__PURE__*/ formula({
  name: 'parallelAxis',
  title: 'Moment of inertia about a parallel axis',
  inputs: {
    inertia: input('inertia', 'I', 'Moment of inertia about the axis through the centre of gravity', { min: 0 }),
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    distance: input('length', 'd', 'Distance between the two axes', { min: 0 }),
  },
  result: output('inertia', 'I_d', 'Moment of inertia about the parallel axis'),
  expression: 'I + m * d ^ 2',
  source: cite('Meriam & Kraige, Engineering Mechanics: Dynamics', 'appendix B'),
  compute: ({ inertia, mass, distance }) => inertia + mass * distance ** 2,
})

/**
 * Moment of inertia of a part about the upright axis through its own middle, taken as a uniform box.
 *
 * `I_z = m * (l ^ 2 + w ^ 2) / 12`
 *
 * - `mass` (`m`, kg): mass, at least 0 kg
 * - `length` (`l`, m): length along the car, at least 0 m
 * - `width` (`w`, m): width across the car, at least 0 m
 * - gives `I_z`: moment of inertia about its own upright axis, in kg·m²
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Meriam & Kraige, Engineering Mechanics: Dynamics, appendix D.
 *
 * @example
 * ```ts
 * boxYawInertia({ mass: '12 kg', length: '3 m', width: '4 m' })
 * // 25 kg·m²
 * // by definition (exact): 25 kg·m²
 * ```
 */
export const boxYawInertia = /*@__PURE__*/ formula({
  name: 'boxYawInertia',
  title: 'Yaw inertia of a uniform box',
  inputs: {
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    length: input('length', 'l', 'Length along the car', { min: 0 }),
    width: input('length', 'w', 'Width across the car', { min: 0 }),
  },
  result: output('inertia', 'I_z', 'Moment of inertia about its own upright axis'),
  expression: 'm * (l ^ 2 + w ^ 2) / 12',
  source: cite('Meriam & Kraige, Engineering Mechanics: Dynamics', 'appendix D'),
  compute: ({ mass, length, width }) => (mass * (length ** 2 + width ** 2)) / 12,
})
