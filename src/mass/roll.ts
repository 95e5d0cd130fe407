/**
 * How the body stands on its springs under a mass off its middle: how it rolls, pitches and sinks, and what goes over from
 * wheel to wheel.
 */
import { cite, definition, formula, input, output, standardGravity } from '../formula/index.js'

const rollStiffness = /*@__PURE__*/ cite('Milliken & Milliken, Race Car Vehicle Dynamics (1995)', 'chapter 16')

/**
 * Stiffness of the springs of an axle against roll where their rates differ. With equal rates it is `rollRate`.
 *
 * `K = t ^ 2 * k_l * k_r / (k_l + k_r)`
 *
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `rightRate` (`k_r`, N/mm): wheel rate of the right wheel, above 0 N/mm
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `K`: roll rate of the springs of the axle, in N·m/°
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * axleRollRate({ leftRate: '20 N/mm', rightRate: '20 N/mm', track: '1.4 m' })
 * // 342.1 N·m/°
 * // by definition (exact): 19600 N·m/rad
 * ```
 */
export const axleRollRate = /*@__PURE__*/ formula({
  name: 'axleRollRate',
  title: 'Roll rate of an axle with two different springs',
  inputs: {
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    rightRate: input('springRate', 'k_r', 'Wheel rate of the right wheel', { above: 0 }),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('rollRate', 'K', 'Roll rate of the springs of the axle'),
  expression: 't ^ 2 * k_l * k_r / (k_l + k_r)',
  source: rollStiffness,
  compute: ({ leftRate, rightRate, track }) => (track ** 2 * leftRate * rightRate) / (leftRate + rightRate),
})

/**
 * Angle to which an axle would roll the body if it alone set it: the load is then the same on both its springs. It
 * comes from spring seats and spring rates that differ from side to side.
 *
 * `phi_0 = (s_l - s_r - m_a * g0 / 2 * (1 / k_l - 1 / k_r)) / t`
 *
 * - `axleMass` (`m_a`, kg): mass on the axle, at least 0 kg
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `rightRate` (`k_r`, N/mm): wheel rate of the right wheel, above 0 N/mm
 * - `leftSeat` (`s_l`, m): height by which the left spring seat is raised, as wheel travel
 * - `rightSeat` (`s_r`, m): height by which the right spring seat is raised, as wheel travel
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `phi_0`: roll angle, positive with the left side up, in °
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * axleFreeRoll({
 *   axleMass: '1000 kg',
 *   leftRate: '20 N/mm',
 *   rightRate: '25 N/mm',
 *   leftSeat: '0 mm',
 *   rightSeat: '0 mm',
 *   track: '1 m',
 * })
 * // -2.809 °
 * // by definition (exact): -0.04903325 rad
 * ```
 */
export const axleFreeRoll = /*@__PURE__*/ formula({
  name: 'axleFreeRoll',
  title: 'Roll angle at which both springs of an axle carry the same',
  inputs: {
    axleMass: input('mass', 'm_a', 'Mass on the axle', { min: 0 }),
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    rightRate: input('springRate', 'k_r', 'Wheel rate of the right wheel', { above: 0 }),
    leftSeat: input('length', 's_l', 'Height by which the left spring seat is raised, as wheel travel'),
    rightSeat: input('length', 's_r', 'Height by which the right spring seat is raised, as wheel travel'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('angle', 'phi_0', 'Roll angle, positive with the left side up'),
  expression: '(s_l - s_r - m_a * g0 / 2 * (1 / k_l - 1 / k_r)) / t',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ axleMass, leftRate, rightRate, leftSeat, rightSeat, track }, { g0 }) =>
    (leftSeat - rightSeat - ((axleMass * g0) / 2) * (1 / leftRate - 1 / rightRate)) / track,
})

/**
 * Roll angle at which the springs and bars of both axles hold the side-to-side moment of the body.
 *
 * `phi = (K_f * phi_f + K_r * phi_r - m * g0 * y) / (K_f + K_r + B_f + B_r)`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `left` (`y`, m): distance of its centre of gravity to the left of the centre line
 * - `frontRate` (`K_f`, N·m/°): roll rate of the front springs, above 0 N·m/°
 * - `rearRate` (`K_r`, N·m/°): roll rate of the rear springs, above 0 N·m/°
 * - `frontFreeRoll` (`phi_f`, °): roll angle at which both front springs carry the same
 * - `rearFreeRoll` (`phi_r`, °): roll angle at which both rear springs carry the same
 * - `frontBar` (`B_f`, N·m/°): roll rate of the front anti-roll bar, at least 0 N·m/°
 * - `rearBar` (`B_r`, N·m/°): roll rate of the rear anti-roll bar, at least 0 N·m/°
 * - gives `phi`: roll angle, positive with the left side up, in °
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: the body does not twist, and angles are small
 * - Assumes: the anti-roll bars are free of load at no roll
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * bodyRoll({
 *   mass: '1000 kg',
 *   left: '20 mm',
 *   frontRate: '25350 N·m/rad',
 *   rearRate: '16900 N·m/rad',
 *   frontFreeRoll: '0 °',
 *   rearFreeRoll: '0 °',
 *   frontBar: '0 N·m/rad',
 *   rearBar: '0 N·m/rad',
 * })
 * // -0.266 °
 * // by definition (exact): -0.0046422 rad
 * ```
 */
export const bodyRoll = /*@__PURE__*/ formula({
  name: 'bodyRoll',
  title: 'Roll angle of the body',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    left: input('length', 'y', 'Distance of its centre of gravity to the left of the centre line'),
    frontRate: input('rollRate', 'K_f', 'Roll rate of the front springs', { above: 0 }),
    rearRate: input('rollRate', 'K_r', 'Roll rate of the rear springs', { above: 0 }),
    frontFreeRoll: input('angle', 'phi_f', 'Roll angle at which both front springs carry the same'),
    rearFreeRoll: input('angle', 'phi_r', 'Roll angle at which both rear springs carry the same'),
    frontBar: input('rollRate', 'B_f', 'Roll rate of the front anti-roll bar', { min: 0 }),
    rearBar: input('rollRate', 'B_r', 'Roll rate of the rear anti-roll bar', { min: 0 }),
  },
  result: output('angle', 'phi', 'Roll angle, positive with the left side up'),
  expression: '(K_f * phi_f + K_r * phi_r - m * g0 * y) / (K_f + K_r + B_f + B_r)',
  constants: { g0: standardGravity },
  assumes: ['The body does not twist, and angles are small.', 'The anti-roll bars are free of load at no roll.'],
  source: rollStiffness,
  compute: ({ mass, left, frontRate, rearRate, frontFreeRoll, rearFreeRoll, frontBar, rearBar }, { g0 }) =>
    (frontRate * frontFreeRoll + rearRate * rearFreeRoll - mass * g0 * left) /
    (frontRate + rearRate + frontBar + rearBar),
})

/**
 * Mass on the left wheel of an axle of a rolled body, beyond half of the axle's; the right wheel carries as much
 * less.
 *
 * `dm = (K * (phi_0 - phi) - B * phi) / (t * g0)`
 *
 * - `rate` (`K`, N·m/°): roll rate of the springs of the axle, at least 0 N·m/°
 * - `bar` (`B`, N·m/°): roll rate of its anti-roll bar, at least 0 N·m/°
 * - `freeRoll` (`phi_0`, °): roll angle at which both springs of the axle carry the same
 * - `roll` (`phi`, °): roll angle of the body, positive with the left side up
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `dm`: mass added to the left wheel and taken off the right one, in kg
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Milliken & Milliken, Race Car Vehicle Dynamics (1995), chapter 16.
 *
 * @example
 * ```ts
 * rollTransfer({ rate: '25350 N·m/rad', bar: '0 N·m/rad', freeRoll: '0 °', roll: '-0.0046422 rad', track: '1.3 m' })
 * // 9.231 kg
 * // by definition (exact): 9.2308 kg
 * ```
 */
export const rollTransfer = /*@__PURE__*/ formula({
  name: 'rollTransfer',
  title: 'Mass moved on to the left wheel of an axle by roll',
  inputs: {
    rate: input('rollRate', 'K', 'Roll rate of the springs of the axle', { min: 0 }),
    bar: input('rollRate', 'B', 'Roll rate of its anti-roll bar', { min: 0 }),
    freeRoll: input('angle', 'phi_0', 'Roll angle at which both springs of the axle carry the same'),
    roll: input('angle', 'phi', 'Roll angle of the body, positive with the left side up'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('mass', 'dm', 'Mass added to the left wheel and taken off the right one'),
  expression: '(K * (phi_0 - phi) - B * phi) / (t * g0)',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: rollStiffness,
  compute: ({ rate, bar, freeRoll, roll, track }, { g0 }) => (rate * (freeRoll - roll) - bar * roll) / (track * g0),
})

/**
 * Rise of the body over the middle of an axle, from where it would stand on springs without load.
 *
 * `z = s_l - (m_l * g0 + B * phi / t) / k_l - phi * t / 2`
 *
 * - `leftMass` (`m_l`, kg): mass on the left wheel, at least 0 kg
 * - `leftRate` (`k_l`, N/mm): wheel rate of the left wheel, above 0 N/mm
 * - `leftSeat` (`s_l`, m): height by which the left spring seat is raised, as wheel travel
 * - `bar` (`B`, N·m/°): roll rate of the anti-roll bar of the axle, at least 0 N·m/°
 * - `roll` (`phi`, °): roll angle of the body, positive with the left side up
 * - `track` (`t`, m): track of the axle, above 0 m
 * - gives `z`: rise of the body over the middle of the axle, negative where it sinks, in mm
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * axleRise({
 *   leftMass: '250 kg',
 *   leftRate: '24516.625 N/m',
 *   leftSeat: '10 mm',
 *   bar: '0 N·m/°',
 *   roll: '0 °',
 *   track: '1.3 m',
 * })
 * // -90 mm
 * // by definition (exact): -90 mm
 * ```
 */
export const axleRise = /*@__PURE__*/ formula({
  name: 'axleRise',
  title: 'Rise of the body over the middle of an axle',
  inputs: {
    leftMass: input('mass', 'm_l', 'Mass on the left wheel', { min: 0 }),
    leftRate: input('springRate', 'k_l', 'Wheel rate of the left wheel', { above: 0 }),
    leftSeat: input('length', 's_l', 'Height by which the left spring seat is raised, as wheel travel'),
    bar: input('rollRate', 'B', 'Roll rate of the anti-roll bar of the axle', { min: 0 }),
    roll: input('angle', 'phi', 'Roll angle of the body, positive with the left side up'),
    track: input('length', 't', 'Track of the axle', { above: 0 }),
  },
  result: output('length', 'z', 'Rise of the body over the middle of the axle, negative where it sinks', 'mm'),
  expression: 's_l - (m_l * g0 + B * phi / t) / k_l - phi * t / 2',
  constants: { g0: standardGravity },
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ leftMass, leftRate, leftSeat, bar, roll, track }, { g0 }) =>
    leftSeat - (leftMass * g0 + (bar * roll) / track) / leftRate - (roll * track) / 2,
})

/**
 * Angle by which the nose of a body is down, from its rise over the two axles.
 *
 * `theta = (z_r - z_f) / L`
 *
 * - `frontRise` (`z_f`, m): rise of the body over the front axle
 * - `rearRise` (`z_r`, m): rise of the body over the rear axle
 * - `wheelbase` (`L`, m): wheelbase, above 0 m
 * - gives `theta`: pitch angle, positive with the nose down, in °
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 8855, pitch angle.
 *
 * @example
 * ```ts
 * bodyPitch({ frontRise: '-82 mm', rearRise: '-106 mm', wheelbase: '2.4 m' })
 * // -0.573 °
 * // by definition (exact): -0.01 rad
 * ```
 */
export const bodyPitch = /*@__PURE__*/ formula({
  name: 'bodyPitch',
  title: 'Pitch angle of the body',
  inputs: {
    frontRise: input('length', 'z_f', 'Rise of the body over the front axle'),
    rearRise: input('length', 'z_r', 'Rise of the body over the rear axle'),
    wheelbase: input('length', 'L', 'Wheelbase', { above: 0 }),
  },
  result: output('angle', 'theta', 'Pitch angle, positive with the nose down'),
  expression: '(z_r - z_f) / L',
  assumes: ['Angles are small.'],
  source: cite('ISO 8855', 'pitch angle'),
  compute: ({ frontRise, rearRise, wheelbase }) => (rearRise - frontRise) / wheelbase,
})

/**
 * Rise of the centre of gravity of a body that has risen, pitched and rolled.
 *
 * `z = z_f + theta * a + phi * y`
 *
 * - `frontRise` (`z_f`, m): rise of the body over the front axle
 * - `pitch` (`theta`, °): pitch angle, positive with the nose down
 * - `roll` (`phi`, °): roll angle, positive with the left side up
 * - `aft` (`a`, m): distance of the centre of gravity behind the front axle
 * - `left` (`y`, m): distance of the centre of gravity to the left of the centre line
 * - gives `z`: rise of the body at its centre of gravity, negative where it sinks, in mm
 * - Assumes: angles are small
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * bodyHeave({ frontRise: '-82 mm', pitch: '-0.01 rad', roll: '0.005 rad', aft: '1.2 m', left: '20 mm' })
 * // -93.9 mm
 * // by definition (exact): -93.9 mm
 * ```
 */
export const bodyHeave = /*@__PURE__*/ formula({
  name: 'bodyHeave',
  title: 'Heave of the body',
  inputs: {
    frontRise: input('length', 'z_f', 'Rise of the body over the front axle'),
    pitch: input('angle', 'theta', 'Pitch angle, positive with the nose down'),
    roll: input('angle', 'phi', 'Roll angle, positive with the left side up'),
    aft: input('length', 'a', 'Distance of the centre of gravity behind the front axle'),
    left: input('length', 'y', 'Distance of the centre of gravity to the left of the centre line'),
  },
  result: output('length', 'z', 'Rise of the body at its centre of gravity, negative where it sinks', 'mm'),
  expression: 'z_f + theta * a + phi * y',
  assumes: ['Angles are small.'],
  source: definition,
  compute: ({ frontRise, pitch, roll, aft, left }) => frontRise + pitch * aft + roll * left,
})
