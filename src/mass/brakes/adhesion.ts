/**
 * How the braking is shared by the axles, what adhesion each one uses, and which one locks first.
 *
 * Rests on Crolla (ed.), Automotive Engineering (2009), chapter 12.1, whose form is also that of UN R13-H, annex 5.
 */
import { cite, formula, input, output, standardGravity } from '../../formula/index.js'

const crolla = /*@__PURE__*/ cite(
  'Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009)',
  'chapter 12.1',
)

const WITHOUT_REST = 'Air and rolling resistance are left out, and the car does not pitch.'

/**
 * Share of the braking that the front brakes must give for both axles to use the same adhesion. Above 1 the rear
 * wheels lift.
 *
 * `phi = p + a / g0 * h / L`
 *
 * - `frontShare` (`p`, a plain number): share of the mass on the front axle, standing, at least 0 and at most 1
 * - `deceleration` (`a`, m/s²): deceleration, at least 0 m/s²
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `phi`: front share of the braking, in %
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: air and rolling resistance are left out, and the car does not pitch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * idealFrontBrakeShare({ frontShare: 0.45, deceleration: '0.2 g', height: '0.52 m', wheelbase: '2.05 m' })
 * // 50.07 %
 * // Crolla (ed.), Automotive Engineering (2009), chapter 12.1 (recomputed): 0.5007
 * ```
 */
export const idealFrontBrakeShare = /*@__PURE__*/ formula({
  name: 'idealFrontBrakeShare',
  title: 'Front share of the braking at which both axles use the same adhesion',
  inputs: {
    frontShare: input('ratio', 'p', 'Share of the mass on the front axle, standing', { min: 0, max: 1 }),
    deceleration: input('acceleration', 'a', 'Deceleration', { min: 0 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('ratio', 'phi', 'Front share of the braking', '%'),
  expression: 'p + a / g0 * h / L',
  constants: { g0: standardGravity },
  assumes: [WITHOUT_REST],
  source: crolla,
  compute: ({ frontShare, deceleration, height, wheelbase }, { g0 }) =>
    frontShare + ((deceleration / g0) * height) / wheelbase,
})

/**
 * Adhesion that the front wheels use: their braking force over their load. What the road has less, they lock.
 *
 * `f_1 = phi * a / g0 / (p + a / g0 * h / L)`
 *
 * - `brakeShare` (`phi`, a plain number): front share of the braking, the motor with it, at least 0 and at most 1
 * - `deceleration` (`a`, m/s²): deceleration, at least 0 m/s²
 * - `frontShare` (`p`, a plain number): share of the mass on the front axle, standing, above 0 and at most 1
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `f_1`: adhesion used by the front axle, in a plain number
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: air and rolling resistance are left out, and the car does not pitch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * frontAdhesionUsed({
 *   brakeShare: 0.58823,
 *   deceleration: '0.1378 g',
 *   frontShare: 0.54246,
 *   height: '20.5 in',
 *   wheelbase: '108.5 in',
 * })
 * // 0.1426
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 3, example (from memory): 0.1426
 * ```
 */
export const frontAdhesionUsed = /*@__PURE__*/ formula({
  name: 'frontAdhesionUsed',
  title: 'Adhesion used by the front axle',
  inputs: {
    brakeShare: input('ratio', 'phi', 'Front share of the braking, the motor with it', { min: 0, max: 1 }),
    deceleration: input('acceleration', 'a', 'Deceleration', { min: 0 }),
    frontShare: input('ratio', 'p', 'Share of the mass on the front axle, standing', { above: 0, max: 1 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('ratio', 'f_1', 'Adhesion used by the front axle'),
  expression: 'phi * a / g0 / (p + a / g0 * h / L)',
  constants: { g0: standardGravity },
  assumes: [WITHOUT_REST],
  source: crolla,
  compute: ({ brakeShare, deceleration, frontShare, height, wheelbase }, { g0 }) =>
    (brakeShare * deceleration) / g0 / (frontShare + ((deceleration / g0) * height) / wheelbase),
})

/**
 * Adhesion that the rear wheels use: their braking force over their load, which falls as the car brakes.
 *
 * `f_2 = (1 - phi) * a / g0 / (1 - p - a / g0 * h / L)`
 *
 * - `brakeShare` (`phi`, a plain number): front share of the braking, the motor with it, at least 0 and at most 1
 * - `deceleration` (`a`, m/s²): deceleration, at least 0 m/s²
 * - `frontShare` (`p`, a plain number): share of the mass on the front axle, standing, at least 0 and below 1
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `f_2`: adhesion used by the rear axle, in a plain number
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where frontShare + deceleration / g0 * height / wheelbase is below 1
 * - Assumes: air and rolling resistance are left out, and the car does not pitch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * rearAdhesionUsed({
 *   brakeShare: 0.58823,
 *   deceleration: '0.1378 g',
 *   frontShare: 0.54246,
 *   height: '20.5 in',
 *   wheelbase: '108.5 in',
 * })
 * // 0.1315
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 3, example (from memory): 0.1315
 * ```
 */
export const rearAdhesionUsed = /*@__PURE__*/ formula({
  name: 'rearAdhesionUsed',
  title: 'Adhesion used by the rear axle',
  inputs: {
    brakeShare: input('ratio', 'phi', 'Front share of the braking, the motor with it', { min: 0, max: 1 }),
    deceleration: input('acceleration', 'a', 'Deceleration', { min: 0 }),
    frontShare: input('ratio', 'p', 'Share of the mass on the front axle, standing', { min: 0, below: 1 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('ratio', 'f_2', 'Adhesion used by the rear axle'),
  expression: '(1 - phi) * a / g0 / (1 - p - a / g0 * h / L)',
  constants: { g0: standardGravity },
  valid: [
    {
      of: 'frontShare + deceleration / g0 * height / wheelbase',
      value: ({ frontShare, deceleration, height, wheelbase }, { g0 }) =>
        frontShare + ((deceleration / g0) * height) / wheelbase,
      below: 1,
      otherwise: () => 'the rear wheels carry nothing: they lift before the car brakes so hard',
    },
  ],
  assumes: [WITHOUT_REST],
  source: crolla,
  compute: ({ brakeShare, deceleration, frontShare, height, wheelbase }, { g0 }) =>
    ((1 - brakeShare) * deceleration) / g0 / (1 - frontShare - ((deceleration / g0) * height) / wheelbase),
})

/**
 * Deceleration at which the front wheels lock, on a road of this adhesion. The rear ones may have locked before.
 *
 * `a = g0 * mu * p / (phi - mu * h / L)`
 *
 * - `adhesion` (`mu`, a plain number): adhesion of tyre and road, at least 0
 * - `frontShare` (`p`, a plain number): share of the mass on the front axle, standing, at least 0 and at most 1
 * - `brakeShare` (`phi`, a plain number): front share of the braking, the motor with it, above 0 and at most 1
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `a`: deceleration, in g
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where brakeShare - adhesion * height / wheelbase is above 0
 * - Assumes: air and rolling resistance are left out, and the car does not pitch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * frontLockDeceleration({ adhesion: 0.4, frontShare: 0.53, brakeShare: 0.7, height: '0.5 m', wheelbase: '2.1 m' })
 * // 0.3506 g
 * // Crolla (ed.), Automotive Engineering (2009), chapter 12.1 (recomputed): 0.3506 g
 * ```
 */
export const frontLockDeceleration = /*@__PURE__*/ formula({
  name: 'frontLockDeceleration',
  title: 'Deceleration at which the front wheels lock',
  inputs: {
    adhesion: input('ratio', 'mu', 'Adhesion of tyre and road', { min: 0 }),
    frontShare: input('ratio', 'p', 'Share of the mass on the front axle, standing', { min: 0, max: 1 }),
    brakeShare: input('ratio', 'phi', 'Front share of the braking, the motor with it', { above: 0, max: 1 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('acceleration', 'a', 'Deceleration', 'g'),
  expression: 'g0 * mu * p / (phi - mu * h / L)',
  constants: { g0: standardGravity },
  valid: [
    {
      of: 'brakeShare - adhesion * height / wheelbase',
      value: ({ brakeShare, adhesion, height, wheelbase }) => brakeShare - (adhesion * height) / wheelbase,
      above: 0,
      otherwise: () => 'the front wheels never lock: their load grows faster than their braking',
    },
  ],
  assumes: [WITHOUT_REST],
  source: crolla,
  compute: ({ adhesion, frontShare, brakeShare, height, wheelbase }, { g0 }) =>
    (g0 * adhesion * frontShare) / (brakeShare - (adhesion * height) / wheelbase),
})

/**
 * Deceleration at which the rear wheels lock, on a road of this adhesion. The front ones may have locked before.
 *
 * `a = g0 * mu * (1 - p) / (1 - phi + mu * h / L)`
 *
 * - `adhesion` (`mu`, a plain number): adhesion of tyre and road, at least 0
 * - `frontShare` (`p`, a plain number): share of the mass on the front axle, standing, at least 0 and at most 1
 * - `brakeShare` (`phi`, a plain number): front share of the braking, the motor with it, at least 0 and at most 1
 * - `height` (`h`, m): height of the centre of gravity, at least 0 m
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `a`: deceleration, in g
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - holds where 1 - brakeShare + adhesion * height / wheelbase is above 0
 * - Assumes: air and rolling resistance are left out, and the car does not pitch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * rearLockDeceleration({ adhesion: 0.8, frontShare: 0.53, brakeShare: 0.7, height: '0.5 m', wheelbase: '2.1 m' })
 * // 0.7666 g
 * // Crolla (ed.), Automotive Engineering (2009), chapter 12.1 (recomputed): 0.7666 g
 * ```
 */
export const rearLockDeceleration = /*@__PURE__*/ formula({
  name: 'rearLockDeceleration',
  title: 'Deceleration at which the rear wheels lock',
  inputs: {
    adhesion: input('ratio', 'mu', 'Adhesion of tyre and road', { min: 0 }),
    frontShare: input('ratio', 'p', 'Share of the mass on the front axle, standing', { min: 0, max: 1 }),
    brakeShare: input('ratio', 'phi', 'Front share of the braking, the motor with it', { min: 0, max: 1 }),
    height: input('length', 'h', 'Height of the centre of gravity', { min: 0 }),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('acceleration', 'a', 'Deceleration', 'g'),
  expression: 'g0 * mu * (1 - p) / (1 - phi + mu * h / L)',
  constants: { g0: standardGravity },
  valid: [
    {
      of: '1 - brakeShare + adhesion * height / wheelbase',
      value: ({ brakeShare, adhesion, height, wheelbase }) => 1 - brakeShare + (adhesion * height) / wheelbase,
      above: 0,
      otherwise: () => 'the rear wheels never lock: they are not braked',
    },
  ],
  assumes: [WITHOUT_REST],
  source: crolla,
  compute: ({ adhesion, frontShare, brakeShare, height, wheelbase }, { g0 }) =>
    (g0 * adhesion * (1 - frontShare)) / (1 - brakeShare + (adhesion * height) / wheelbase),
})

/**
 * Share of the adhesion that a car makes use of by the time that its first axle locks.
 *
 * `eta = a / (g0 * mu)`
 *
 * - `deceleration` (`a`, m/s²): deceleration at which the first axle locks, at least 0 m/s²
 * - `adhesion` (`mu`, a plain number): adhesion of tyre and road, above 0
 * - gives `eta`: share of the adhesion that is made use of, in %
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), chapter 12.1.
 *
 * @example
 * ```ts
 * brakingEfficiency({ deceleration: '0.8019 g', adhesion: 0.8178 })
 * // 98.06 %
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 3, example (from memory): 0.9806
 * ```
 */
export const brakingEfficiency = /*@__PURE__*/ formula({
  name: 'brakingEfficiency',
  title: 'Braking efficiency',
  inputs: {
    deceleration: input('acceleration', 'a', 'Deceleration at which the first axle locks', { min: 0 }),
    adhesion: input('ratio', 'mu', 'Adhesion of tyre and road', { above: 0 }),
  },
  result: output('ratio', 'eta', 'Share of the adhesion that is made use of', '%'),
  expression: 'a / (g0 * mu)',
  constants: { g0: standardGravity },
  source: crolla,
  compute: ({ deceleration, adhesion }, { g0 }) => deceleration / (g0 * adhesion),
})

/**
 * Braking force of both wheels of an axle at a pressure in its lines. The brake factor is the pull of the linings
 * over the push of one piston side: twice the friction of the pad in a disc brake, about 2 to 3 in a drum.
 *
 * `F = 2 * P * A * C * r_e / r`
 *
 * - `pressure` (`P`, kPa): pressure in the lines, at least 0 kPa
 * - `pistonArea` (`A`, m²): area of the pistons on one side of a disc, or of one cylinder of a drum, at least 0 m²
 * - `brakeFactor` (`C`, a plain number): brake factor, at least 0
 * - `effectiveRadius` (`r_e`, m): effective radius of the disc or drum, at least 0 m
 * - `rollingRadius` (`r`, m): rolling radius of the wheels, above 0 m
 * - gives `F`: braking force of both wheels, in N
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 3.
 *
 * @example
 * ```ts
 * axleBrakeForce({
 *   pressure: '100 psi',
 *   pistonArea: '4 in²',
 *   brakeFactor: 1,
 *   effectiveRadius: '5 in',
 *   rollingRadius: '12.11 in',
 * })
 * // 1469 N
 * // Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 3, example (from memory): 330.3 lbf
 * ```
 */
export const axleBrakeForce = /*@__PURE__*/ formula({
  name: 'axleBrakeForce',
  title: 'Braking force of an axle',
  inputs: {
    pressure: input('pressure', 'P', 'Pressure in the lines', { min: 0 }),
    pistonArea: input('area', 'A', 'Area of the pistons on one side of a disc, or of one cylinder of a drum', {
      min: 0,
    }),
    brakeFactor: input('ratio', 'C', 'Brake factor', { min: 0 }),
    effectiveRadius: input('length', 'r_e', 'Effective radius of the disc or drum', { min: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the wheels', { above: 0 }),
  },
  result: output('force', 'F', 'Braking force of both wheels'),
  expression: '2 * P * A * C * r_e / r',
  source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 3'),
  compute: ({ pressure, pistonArea, brakeFactor, effectiveRadius, rollingRadius }) =>
    (2 * pressure * pistonArea * brakeFactor * effectiveRadius) / rollingRadius,
})
