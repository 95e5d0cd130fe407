/**
 * What grip and force allow: the hardest pull of a driven axle, the steepest grade.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2 (traction-limited acceleration), and Ehsani
 * et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles, chapter on vehicle fundamentals (gradeability).
 */
import { cite, definition, formula, input, output, standardGravity } from '../../formula/index.js'

const tractionLimit = /*@__PURE__*/ cite(
  'Gillespie, Fundamentals of Vehicle Dynamics (1992)',
  'chapter 2, traction-limited acceleration',
)

/**
 * Hardest pull of a driven rear axle, the load that moves on to it under acceleration included. It holds while the
 * front wheels stay on the ground.
 *
 * `F = mu * m * g0 * cos(atan(G)) * a / (L - mu * h)`
 *
 * - `friction` (`mu`, a plain number): friction coefficient of tyre and road, at least 0
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle, at least 0 m
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - `grade` (`G`, a plain number): grade, rise over run, 0 unless given
 * - gives `F`: greatest force of the rear wheels on the road, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where aft / wheelbase is below 1
 * - holds where friction * height / (wheelbase - aft) is at most 1
 * - Assumes: what else resists acts at the height of the centre of gravity or is small beside the pull, and the air
 *   does not lift the car
 * - Assumes: both driven wheels grip alike: an open differential on a rigid axle pulls less
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction-limited acceleration.
 *
 * @example
 * ```ts
 * tractionLimitRear({
 *   friction: 0.62,
 *   mass: '1791.6 kg',
 *   aft: '1.284683 m',
 *   height: '0.533 m',
 *   wheelbase: '2.743 m',
 * })
 * // 5801 N
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, example 2 (read): 5802.6 N
 * ```
 */
export const tractionLimitRear = /*@__PURE__*/ formula({
  name: 'tractionLimitRear',
  title: 'Traction limit of a driven rear axle',
  inputs: {
    friction: input('ratio', 'mu', 'Friction coefficient of tyre and road', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle', { min: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run', { default: 0 }),
  },
  result: output('force', 'F', 'Greatest force of the rear wheels on the road'),
  expression: 'mu * m * g0 * cos(atan(G)) * a / (L - mu * h)',
  constants: { g0: standardGravity },
  valid: [
    { of: 'aft / wheelbase', value: ({ aft, wheelbase }) => aft / wheelbase, below: 1 },
    {
      of: 'friction * height / (wheelbase - aft)',
      value: ({ friction, height, wheelbase, aft }) => (friction * height) / (wheelbase - aft),
      max: 1,
    },
  ],
  assumes: [
    'What else resists acts at the height of the centre of gravity or is small beside the pull, and the air does not lift the car.',
    'Both driven wheels grip alike: an open differential on a rigid axle pulls less.',
  ],
  source: tractionLimit,
  compute: ({ friction, mass, aft, height, wheelbase, grade }, { g0 }) =>
    (friction * mass * g0 * Math.cos(Math.atan(grade)) * aft) / (wheelbase - friction * height),
})

/**
 * Hardest pull of a driven front axle, less the load that moves off it under acceleration.
 *
 * `F = mu * m * g0 * cos(atan(G)) * (L - a) / (L + mu * h)`
 *
 * - `friction` (`mu`, a plain number): friction coefficient of tyre and road, at least 0
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle, at least 0 m
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - `grade` (`G`, a plain number): grade, rise over run, 0 unless given
 * - gives `F`: greatest force of the front wheels on the road, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where aft / wheelbase is at most 1
 * - Assumes: what else resists acts at the height of the centre of gravity or is small beside the pull, and the air
 *   does not lift the car
 * - Assumes: both driven wheels grip alike
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction-limited acceleration.
 *
 * @example
 * ```ts
 * tractionLimitFront({ friction: 0.7, mass: '1000 kg', aft: '1.3 m', height: '0.7 m', wheelbase: '2.6 m' })
 * // 2888 N
 * // Bonnick, Automotive Science and Mathematics, maximum acceleration (recomputed): 2889 N
 * ```
 */
export const tractionLimitFront = /*@__PURE__*/ formula({
  name: 'tractionLimitFront',
  title: 'Traction limit of a driven front axle',
  inputs: {
    friction: input('ratio', 'mu', 'Friction coefficient of tyre and road', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle', { min: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run', { default: 0 }),
  },
  result: output('force', 'F', 'Greatest force of the front wheels on the road'),
  expression: 'mu * m * g0 * cos(atan(G)) * (L - a) / (L + mu * h)',
  constants: { g0: standardGravity },
  valid: [{ of: 'aft / wheelbase', value: ({ aft, wheelbase }) => aft / wheelbase, max: 1 }],
  assumes: [
    'What else resists acts at the height of the centre of gravity or is small beside the pull, and the air does not lift the car.',
    'Both driven wheels grip alike.',
  ],
  source: tractionLimit,
  compute: ({ friction, mass, aft, height, wheelbase, grade }, { g0 }) =>
    (friction * mass * g0 * Math.cos(Math.atan(grade)) * (wheelbase - aft)) / (wheelbase + friction * height),
})

/**
 * Greatest braking force of the rear wheels alone, as when a motor on them brakes: braking takes load off them. With
 * the brakes of the front wheels on as well there is less.
 *
 * `F = mu * m * g0 * cos(atan(G)) * a / (L + mu * h)`
 *
 * - `friction` (`mu`, a plain number): friction coefficient of tyre and road, at least 0
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle, at least 0 m
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - `grade` (`G`, a plain number): grade, rise over run, 0 unless given
 * - gives `F`: greatest braking force of the rear wheels, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where aft / wheelbase is at most 1
 * - Assumes: only this axle brakes, its wheels grip alike, and the air does not lift the car
 * - Caution: rear wheels that are braked to their grip let the tail go: keep regeneration on a rear axle well below
 *   this limit, and less in the wet
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction-limited acceleration.
 *
 * @example
 * ```ts
 * brakingLimitRear({ friction: 0.3, mass: '1145 kg', aft: '1.139 m', height: '0.5 m', wheelbase: '2.532 m' })
 * // 1431 N
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction limit with the sign of the force turned
 * // (recomputed): 1430.5 N
 * ```
 */
export const brakingLimitRear = /*@__PURE__*/ formula({
  name: 'brakingLimitRear',
  title: 'Braking limit of the rear axle alone',
  inputs: {
    friction: input('ratio', 'mu', 'Friction coefficient of tyre and road', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle', { min: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run', { default: 0 }),
  },
  result: output('force', 'F', 'Greatest braking force of the rear wheels'),
  expression: 'mu * m * g0 * cos(atan(G)) * a / (L + mu * h)',
  constants: { g0: standardGravity },
  valid: [{ of: 'aft / wheelbase', value: ({ aft, wheelbase }) => aft / wheelbase, max: 1 }],
  assumes: ['Only this axle brakes, its wheels grip alike, and the air does not lift the car.'],
  cautions: [
    'Rear wheels that are braked to their grip let the tail go: keep regeneration on a rear axle well below this limit, and less in the wet.',
  ],
  source: tractionLimit,
  compute: ({ friction, mass, aft, height, wheelbase, grade }, { g0 }) =>
    (friction * mass * g0 * Math.cos(Math.atan(grade)) * aft) / (wheelbase + friction * height),
})

/**
 * Greatest braking force of the front wheels alone, as when a motor on them brakes: braking brings load on to them.
 *
 * `F = mu * m * g0 * cos(atan(G)) * (L - a) / (L - mu * h)`
 *
 * - `friction` (`mu`, a plain number): friction coefficient of tyre and road, at least 0
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle, at least 0 m
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - `grade` (`G`, a plain number): grade, rise over run, 0 unless given
 * - gives `F`: greatest braking force of the front wheels, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where aft / wheelbase is above 0 and at most 1
 * - holds where friction * height / aft is at most 1
 * - Assumes: only this axle brakes, its wheels grip alike, and the air does not lift the car
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction-limited acceleration.
 *
 * @example
 * ```ts
 * brakingLimitFront({ friction: 0.3, mass: '1145 kg', aft: '1.139 m', height: '0.5 m', wheelbase: '2.532 m' })
 * // 1970 N
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction limit with the sign of the force turned
 * // (recomputed): 1969.5 N
 * ```
 */
export const brakingLimitFront = /*@__PURE__*/ formula({
  name: 'brakingLimitFront',
  title: 'Braking limit of the front axle alone',
  inputs: {
    friction: input('ratio', 'mu', 'Friction coefficient of tyre and road', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle', { min: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run', { default: 0 }),
  },
  result: output('force', 'F', 'Greatest braking force of the front wheels'),
  expression: 'mu * m * g0 * cos(atan(G)) * (L - a) / (L - mu * h)',
  constants: { g0: standardGravity },
  valid: [
    { of: 'aft / wheelbase', value: ({ aft, wheelbase }) => aft / wheelbase, above: 0, max: 1 },
    { of: 'friction * height / aft', value: ({ friction, height, aft }) => (friction * height) / aft, max: 1 },
  ],
  assumes: ['Only this axle brakes, its wheels grip alike, and the air does not lift the car.'],
  source: tractionLimit,
  compute: ({ friction, mass, aft, height, wheelbase, grade }, { g0 }) =>
    (friction * mass * g0 * Math.cos(Math.atan(grade)) * (wheelbase - aft)) / (wheelbase - friction * height),
})

/**
 * Acceleration that the grip of the driven wheels allows. Negative where even that pull is less than the resistance.
 *
 * `a = (F - F_l) / m`
 *
 * - `tractionLimit` (`F`, N): greatest force of the driven wheels on the road, at least 0 N
 * - `roadLoad` (`F_l`, N): road load at steady speed, 0 N unless given
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - gives `a`: acceleration, in m/s²
 * - Assumes: the turning of the undriven wheels is left out
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * gripAcceleration({ tractionLimit: '5802.6 N', mass: '1791.6 kg' })
 * // 3.239 m/s²
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, example 2 (read): 0.330 g
 * ```
 */
export const gripAcceleration = /*@__PURE__*/ formula({
  name: 'gripAcceleration',
  title: 'Acceleration at the limit of grip',
  inputs: {
    tractionLimit: input('force', 'F', 'Greatest force of the driven wheels on the road', { min: 0 }),
    roadLoad: input('force', 'F_l', 'Road load at steady speed', { default: '0 N' }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
  },
  result: output('acceleration', 'a', 'Acceleration'),
  expression: '(F - F_l) / m',
  assumes: ['The turning of the undriven wheels is left out.'],
  source: definition,
  compute: ({ tractionLimit, roadLoad, mass }) => (tractionLimit - roadLoad) / mass,
})

/**
 * Steepest grade that a force at the wheels climbs at a steady speed; negative, the fall that is needed where the
 * force does not suffice on the level. The wheels must have the grip for it.
 *
 * `G = tan(asin((F - F_a) / (m * g0 * sqrt(1 + C_rr ^ 2))) - atan(C_rr))`
 *
 * - `tractiveForce` (`F`, N): tractive force, at least 0 N
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - `coefficient` (`C_rr`, a plain number): rolling resistance coefficient, at least 0
 * - `aerodynamicDrag` (`F_a`, N): aerodynamic drag at the speed, 0 N unless given
 * - gives `G`: grade, rise over run, in %
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where (tractiveForce - aerodynamicDrag) / (mass * g0) is above -1 and below 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004), vehicle fundamentals,
 * gradeability.
 *
 * @example
 * ```ts
 * gradeability({ tractiveForce: '936.60 N', mass: '600 kg', coefficient: 0.015, aerodynamicDrag: '30 N' })
 * // 14.06 %
 * // course exercise (recomputed): 14.054 %
 * ```
 */
export const gradeability = /*@__PURE__*/ formula({
  name: 'gradeability',
  title: 'Steepest grade for a tractive force',
  inputs: {
    tractiveForce: input('force', 'F', 'Tractive force', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
    coefficient: input('ratio', 'C_rr', 'Rolling resistance coefficient', { min: 0 }),
    aerodynamicDrag: input('force', 'F_a', 'Aerodynamic drag at the speed', { default: '0 N' }),
  },
  result: output('ratio', 'G', 'Grade, rise over run', '%'),
  expression: 'tan(asin((F - F_a) / (m * g0 * sqrt(1 + C_rr ^ 2))) - atan(C_rr))',
  constants: { g0: standardGravity },
  valid: [
    {
      of: '(tractiveForce - aerodynamicDrag) / (mass * g0)',
      value: ({ tractiveForce, aerodynamicDrag, mass }, { g0 }) => (tractiveForce - aerodynamicDrag) / (mass * g0),
      above: -1,
      below: 1,
    },
  ],
  source: cite(
    'Ehsani et al., Modern Electric, Hybrid Electric, and Fuel Cell Vehicles (2004)',
    'vehicle fundamentals, gradeability',
  ),
  compute: ({ tractiveForce, mass, coefficient, aerodynamicDrag }, { g0 }) => {
    const pull = (tractiveForce - aerodynamicDrag) / (mass * g0 * Math.sqrt(1 + coefficient ** 2))
    return Math.tan(Math.asin(pull) - Math.atan(coefficient))
  },
})

/**
 * Steepest grade on which the driven wheels hold the car at a steady speed; the motor must have the pull for it. What
 * they hold falls with the cosine of the slope, which is reckoned with here.
 *
 * `G = tan(atan(F / (m * g0) - C_rr) - asin(F_a / (m * g0 * sqrt(1 + (F / (m * g0) - C_rr) ^ 2))))`
 *
 * - `tractionLimit` (`F`, N): greatest force of the driven wheels on a level road, at least 0 N
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - `coefficient` (`C_rr`, a plain number): rolling resistance coefficient, at least 0
 * - `aerodynamicDrag` (`F_a`, N): aerodynamic drag at the speed, 0 N unless given
 * - gives `G`: grade, rise over run, in %
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where aerodynamicDrag / (mass * g0) is above -1 and below 1
 * - Assumes: the limit on the level knows no rolling resistance, which hinders the load that moves to the rear: a
 *   grade of 48 % comes out a third of a percentage point too steep, on a light car
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2, traction-limited acceleration.
 *
 * @example
 * ```ts
 * gripGradeability({ tractionLimit: '4903.325 N', mass: '1000 kg', coefficient: 0.01 })
 * // 49 %
 * // by definition (exact): 49 %
 * ```
 */
export const gripGradeability = /*@__PURE__*/ formula({
  name: 'gripGradeability',
  title: 'Steepest grade for the grip of the driven wheels',
  inputs: {
    tractionLimit: input('force', 'F', 'Greatest force of the driven wheels on a level road', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
    coefficient: input('ratio', 'C_rr', 'Rolling resistance coefficient', { min: 0 }),
    aerodynamicDrag: input('force', 'F_a', 'Aerodynamic drag at the speed', { default: '0 N' }),
  },
  result: output('ratio', 'G', 'Grade, rise over run', '%'),
  expression: 'tan(atan(F / (m * g0) - C_rr) - asin(F_a / (m * g0 * sqrt(1 + (F / (m * g0) - C_rr) ^ 2))))',
  constants: { g0: standardGravity },
  valid: [
    {
      of: 'aerodynamicDrag / (mass * g0)',
      value: ({ aerodynamicDrag, mass }, { g0 }) => aerodynamicDrag / (mass * g0),
      above: -1,
      below: 1,
    },
  ],
  assumes: [
    'The limit on the level knows no rolling resistance, which hinders the load that moves to the rear: a grade of 48 % comes out a third of a percentage point too steep, on a light car.',
  ],
  source: tractionLimit,
  compute: ({ tractionLimit: force, mass, coefficient, aerodynamicDrag }, { g0 }) => {
    const net = force / (mass * g0) - coefficient
    return Math.tan(Math.atan(net) - Math.asin(aerodynamicDrag / (mass * g0 * Math.sqrt(1 + net ** 2))))
  },
})
