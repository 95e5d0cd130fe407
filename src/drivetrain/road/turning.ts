/**
 * What the turning parts of a car add to its mass.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { cite, formula, input, output } from '../../formula/index.js'

/**
 * Mass that a turning part seems to add to a car that speeds up. It counts for acceleration only, never for grade or
 * rolling resistance; wheels themselves have the ratio 1.
 *
 * `m_e = I * i ^ 2 / r ^ 2`
 *
 * - `inertia` (`I`, kg·m²): moment of inertia of the part about its own axis, at least 0 kg·m²
 * - `ratio` (`i`, a plain number): turns of the part per turn of the wheels, above 0
 * - `radius` (`r`, m): rolling radius of the wheels, above 0 m
 * - gives `m_e`: equivalent mass, in kg
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * equivalentMass({ inertia: '0.23727 kg·m²', ratio: 12.4976, radius: '12.59 in' })
 * // 362.4 kg
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, example 1 (from memory): 798.9 lb
 * ```
 */
export const equivalentMass = /*@__PURE__*/ formula({
  name: 'equivalentMass',
  title: 'Equivalent mass of a turning part',
  inputs: {
    inertia: input('inertia', 'I', 'Moment of inertia of the part about its own axis', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the part per turn of the wheels', { above: 0 }),
    radius: input('length', 'r', 'Rolling radius of the wheels', { above: 0 }),
  },
  result: output('mass', 'm_e', 'Equivalent mass'),
  expression: 'I * i ^ 2 / r ^ 2',
  source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2'),
  compute: ({ inertia, ratio, radius }) => (inertia * ratio ** 2) / radius ** 2,
})
