/**
 * What goes over from axle to axle and from side to side as a car speeds up, brakes and turns, and how far it is from tipping.
 */
import { cite, formula, input, output } from '../formula/index.js'

/**
 * Load that moves from the front wheels to the rear ones under acceleration; negative, to the front, under braking.
 *
 * `dF = m * a * h / L`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `acceleration` (`a`, m/s²): forward acceleration, negative under braking
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `dF`: load moved from the front axle to the rear axle, in N
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1.
 *
 * @example
 * ```ts
 * longitudinalTransfer({ mass: '1145 kg', acceleration: '2 m/s²', height: '0.5 m', wheelbase: '2.532 m' })
 * // 452.2 N
 * // course exercise (recomputed): 452.2 N
 * ```
 */
export const longitudinalTransfer = /*@__PURE__*/ formula({
  name: 'longitudinalTransfer',
  title: 'Load transfer from front to rear',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    acceleration: input('acceleration', 'a', 'Forward acceleration, negative under braking'),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('force', 'dF', 'Load moved from the front axle to the rear axle'),
  expression: 'm * a * h / L',
  source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1'),
  compute: ({ mass, acceleration, height, wheelbase }) => (mass * acceleration * height) / wheelbase,
})

/**
 * Load that moves from the inner wheels to the outer ones in a bend, of both axles together. For the unsprung mass of
 * one axle, its wheel-centre height gives that axle's own part.
 *
 * `dF = m * a * h / t`
 *
 * - `mass` (`m`, kg): mass that is turned, at least 0 kg
 * - `acceleration` (`a`, m/s²): lateral acceleration
 * - `height` (`h`, m): height of its centre of gravity, at least 0 m
 * - `track` (`t`, m): track, above 0 m
 * - gives `dF`: load moved from the inner to the outer wheels, in N
 * - Assumes: body roll moves the centre of gravity sideways too little to count
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 18.
 *
 * @example
 * ```ts
 * lateralTransfer({ mass: '140 kg', acceleration: '0.6 g', height: '0.28 m', track: '1.46 m' })
 * // 158 N
 * // Barton & Fieldhouse, Automotive Chassis Engineering (Springer 2018), p. 174 (read): 158 N
 * ```
 */
export const lateralTransfer = /*@__PURE__*/ formula({
  name: 'lateralTransfer',
  title: 'Load transfer from the inner to the outer wheels',
  inputs: {
    mass: input('mass', 'm', 'Mass that is turned', { min: 0 }),
    acceleration: input('acceleration', 'a', 'Lateral acceleration'),
    height: input('length', 'h', 'Height of its centre of gravity', { min: 0 }),
    track: input('length', 't', 'Track', { above: 0 }),
  },
  result: output('force', 'dF', 'Load moved from the inner to the outer wheels'),
  expression: 'm * a * h / t',
  assumes: ['Body roll moves the centre of gravity sideways too little to count.'],
  source: cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 18'),
  compute: ({ mass, acceleration, height, track }) => (mass * acceleration * height) / track,
})

/**
 * Lateral acceleration, as a multiple of gravity, at which a rigid car would lift its inner wheels.
 *
 * `SSF = t / (2 * h)`
 *
 * - `track` (`t`, m): mean track, above 0 m
 * - `height` (`h`, m): height of the centre of gravity, above 0 m
 * - gives `SSF`: static stability factor, in a plain number
 * - Assumes: springs and tyres do not give: a real car rolls over at less
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: NHTSA, New Car Assessment Program, rollover resistance.
 *
 * @example
 * ```ts
 * staticStabilityFactor({ track: '1.5 m', height: '0.53 m' })
 * // 1.415
 * // NHTSA, New Car Assessment Program, rollover resistance (recomputed): 1.415
 * ```
 */
export const staticStabilityFactor = /*@__PURE__*/ formula({
  name: 'staticStabilityFactor',
  title: 'Static stability factor',
  inputs: {
    track: input('length', 't', 'Mean track', { above: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { above: 0 }),
  },
  result: output('ratio', 'SSF', 'Static stability factor'),
  expression: 't / (2 * h)',
  assumes: ['Springs and tyres do not give: a real car rolls over at less.'],
  source: cite('NHTSA, New Car Assessment Program, rollover resistance'),
  compute: ({ track, height }) => track / (2 * height),
})
