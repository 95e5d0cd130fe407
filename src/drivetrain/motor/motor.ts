/**
 * What a motor gives at its shaft, where its power takes over from its torque, and what it loses.
 *
 * Rests on Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6 (losses), and on definitions.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'

const losses = /*@__PURE__*/ cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 6')

/**
 * Mechanical power of a turning shaft; negative where the torque brakes it.
 *
 * `P = T * w`
 *
 * - `torque` (`T`, N·m): torque, negative where it brakes
 * - `speed` (`w`, rpm): speed of the shaft, at least 0 rpm
 * - gives `P`: power of the shaft, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * shaftPower({ torque: '200 N·m', speed: '5639 rpm' })
 * // 118.1 kW
 * // course exercise (read): 118.1 kW
 * ```
 */
export const shaftPower = /*@__PURE__*/ formula({
  name: 'shaftPower',
  title: 'Power of a shaft',
  inputs: {
    torque: input('torque', 'T', 'Torque, negative where it brakes'),
    speed: input('angularSpeed', 'w', 'Speed of the shaft', { min: 0 }),
  },
  result: output('power', 'P', 'Power of the shaft'),
  expression: 'T * w',
  source: definition,
  compute: ({ torque, speed }) => torque * speed,
})

/**
 * Speed up to which a motor gives its full torque; above it the torque falls as power over speed.
 *
 * `w_b = P / T`
 *
 * - `power` (`P`, kW): peak power at the shaft, at least 0 kW
 * - `torque` (`T`, N·m): peak torque, above 0 N·m
 * - gives `w_b`: base speed, in rpm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * baseSpeed({ power: '50 kW', torque: '100 N·m' })
 * // 4775 rpm
 * // by definition (exact): 4774.648 rpm
 * ```
 */
export const baseSpeed = /*@__PURE__*/ formula({
  name: 'baseSpeed',
  title: 'Base speed of a motor',
  inputs: {
    power: input('power', 'P', 'Peak power at the shaft', { min: 0 }),
    torque: input('torque', 'T', 'Peak torque', { above: 0 }),
  },
  result: output('angularSpeed', 'w_b', 'Base speed'),
  expression: 'P / T',
  source: definition,
  compute: ({ power, torque }) => power / torque,
})

/**
 * Heat in a motor: of its windings by the torque, of its iron by the speed, of its windage by the cube of the speed,
 * and a part that does not change. The four coefficients are fitted to a measured efficiency map.
 *
 * `P_l = kc * T ^ 2 + ki * w + kw * w ^ 3 + C`
 *
 * - `torque` (`T`, N·m): torque, driving or braking
 * - `speed` (`w`, rpm): motor speed, at least 0 rpm
 * - `copper` (`kc`, W/(N·m)²): copper loss coefficient, at least 0 W/(N·m)²
 * - `iron` (`ki`, W/(rad/s)): iron loss coefficient, at least 0 W/(rad/s)
 * - `windage` (`kw`, W/(rad/s)³): windage coefficient, at least 0 W/(rad/s)³
 * - `constant` (`C`, kW): constant loss, at least 0 kW
 * - gives `P_l`: loss of the motor, in W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6.
 *
 * @example
 * ```ts
 * motorLoss({
 *   torque: '100 N·m',
 *   speed: '400 rad/s',
 *   copper: '0.3 W/(N·m)²',
 *   iron: '0.01 W/(rad/s)',
 *   windage: '5e-6 W/(rad/s)³',
 *   constant: '600 W',
 * })
 * // 3924 W
 * // Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6 (from memory): 3924 W
 * ```
 */
export const motorLoss = /*@__PURE__*/ formula({
  name: 'motorLoss',
  title: 'Loss of a motor',
  inputs: {
    torque: input('torque', 'T', 'Torque, driving or braking'),
    speed: input('angularSpeed', 'w', 'Motor speed', { min: 0 }),
    copper: input('lossPerTorqueSquared', 'kc', 'Copper loss coefficient', { min: 0 }),
    iron: input('lossPerSpeed', 'ki', 'Iron loss coefficient', { min: 0 }),
    windage: input('lossPerSpeedCubed', 'kw', 'Windage coefficient', { min: 0 }),
    constant: input('power', 'C', 'Constant loss', { min: 0 }),
  },
  result: output('power', 'P_l', 'Loss of the motor', 'W'),
  expression: 'kc * T ^ 2 + ki * w + kw * w ^ 3 + C',
  source: losses,
  compute: ({ torque, speed, copper, iron, windage, constant }) =>
    copper * torque ** 2 + iron * speed + windage * speed ** 3 + constant,
})

/**
 * Share of the electrical power that a driving motor gives at its shaft.
 *
 * `eta = P / (P + P_l)`
 *
 * - `shaftPower` (`P`, kW): power at the shaft, driving, above 0 kW
 * - `loss` (`P_l`, kW): loss of the motor, at least 0 kW
 * - gives `eta`: efficiency of the motor, in %
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6.
 *
 * @example
 * ```ts
 * motorEfficiency({ shaftPower: '40 kW', loss: '3924 W' })
 * // 91.07 %
 * // Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6 (from memory): 91.07 %
 * ```
 */
export const motorEfficiency = /*@__PURE__*/ formula({
  name: 'motorEfficiency',
  title: 'Efficiency of a motor',
  inputs: {
    shaftPower: input('power', 'P', 'Power at the shaft, driving', { above: 0 }),
    loss: input('power', 'P_l', 'Loss of the motor', { min: 0 }),
  },
  result: output('ratio', 'eta', 'Efficiency of the motor', '%'),
  expression: 'P / (P + P_l)',
  source: losses,
  compute: ({ shaftPower, loss }) => shaftPower / (shaftPower + loss),
})

/**
 * Electrical power of a motor by its loss: what it draws while it drives, and what it gives back, as a negative
 * figure, while it brakes. Where a braking motor loses more than the shaft brings, it draws.
 *
 * `P_e = P + P_l`
 *
 * - `shaftPower` (`P`, kW): power at the shaft, negative where it brakes
 * - `loss` (`P_l`, kW): loss of the motor, at least 0 kW
 * - gives `P_e`: electrical power, negative where it is given back, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6.
 *
 * @example
 * ```ts
 * electricalPower({ shaftPower: '40 kW', loss: '3924 W' })
 * // 43.92 kW
 * // Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 6 (from memory): 43.924 kW
 * ```
 */
export const electricalPower = /*@__PURE__*/ formula({
  name: 'electricalPower',
  title: 'Electrical power of a motor by its loss',
  inputs: {
    shaftPower: input('power', 'P', 'Power at the shaft, negative where it brakes'),
    loss: input('power', 'P_l', 'Loss of the motor', { min: 0 }),
  },
  result: output('power', 'P_e', 'Electrical power, negative where it is given back'),
  expression: 'P + P_l',
  source: losses,
  compute: ({ shaftPower, loss }) => shaftPower + loss,
})

/**
 * Electrical power of a motor by one efficiency for both directions. One figure is kind to a motor that stands or
 * runs at part load, where its loss is a greater share.
 *
 * `P_e = max(P * eta, P / eta)`
 *
 * - `shaftPower` (`P`, kW): power at the shaft, negative where it brakes
 * - `efficiency` (`eta`, a plain number): efficiency of motor and controller, above 0 and at most 1
 * - gives `P_e`: electrical power, negative where it is given back, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * electricalPowerAtEfficiency({ shaftPower: '71.5 kW', efficiency: 0.9 })
 * // 79.44 kW
 * // course exercise (read): 79.5 kW
 * ```
 */
export const electricalPowerAtEfficiency = /*@__PURE__*/ formula({
  name: 'electricalPowerAtEfficiency',
  title: 'Electrical power of a motor by its efficiency',
  inputs: {
    shaftPower: input('power', 'P', 'Power at the shaft, negative where it brakes'),
    efficiency: input('ratio', 'eta', 'Efficiency of motor and controller', { above: 0, max: 1 }),
  },
  result: output('power', 'P_e', 'Electrical power, negative where it is given back'),
  expression: 'max(P * eta, P / eta)',
  source: definition,
  compute: ({ shaftPower, efficiency }) => Math.max(shaftPower * efficiency, shaftPower / efficiency),
})
