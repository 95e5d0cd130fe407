/**
 * Gear ratios between motor and road: speeds, torques and forces.
 *
 * Rests on Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'

const acceleration = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2')

/**
 * Turns of the motor for one turn of the driven wheels.
 *
 * `i = i_g * i_f`
 *
 * - `gearRatio` (`i_g`, a plain number): ratio of the gear, above 0
 * - `finalDrive` (`i_f`, a plain number): ratio of the final drive, above 0
 * - gives `i`: turns of the motor per turn of the wheels, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * overallRatio({ gearRatio: 1.46, finalDrive: 3.944 })
 * // 5.758
 * // by definition (exact): 5.75824
 * ```
 */
export const overallRatio = /*@__PURE__*/ formula({
  name: 'overallRatio',
  title: 'Overall ratio of gear and final drive',
  inputs: {
    gearRatio: input('ratio', 'i_g', 'Ratio of the gear', { above: 0 }),
    finalDrive: input('ratio', 'i_f', 'Ratio of the final drive', { above: 0 }),
  },
  result: output('ratio', 'i', 'Turns of the motor per turn of the wheels'),
  expression: 'i_g * i_f',
  source: definition,
  compute: ({ gearRatio, finalDrive }) => gearRatio * finalDrive,
})

/**
 * Speed of the motor at a road speed, to be kept below the motor's maximum.
 *
 * `w = v * i / r`
 *
 * - `speed` (`v`, km/h): road speed, at least 0 km/h
 * - `ratio` (`i`, a plain number): turns of the motor per turn of the wheels, above 0
 * - `rollingRadius` (`r`, m): rolling radius of the driven wheels, above 0 m
 * - gives `w`: motor speed, in rpm
 * - Assumes: the driven wheels do not slip
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * motorSpeed({ speed: '90 km/h', ratio: 8, rollingRadius: '0.3 m' })
 * // 6366 rpm
 * // course exercise (read): 666.67 rad/s
 * ```
 */
export const motorSpeed = /*@__PURE__*/ formula({
  name: 'motorSpeed',
  title: 'Motor speed at a road speed',
  inputs: {
    speed: input('speed', 'v', 'Road speed', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('angularSpeed', 'w', 'Motor speed'),
  expression: 'v * i / r',
  assumes: ['The driven wheels do not slip.'],
  source: acceleration,
  compute: ({ speed, ratio, rollingRadius }) => (speed * ratio) / rollingRadius,
})

/**
 * Road speed at a motor speed.
 *
 * `v = w * r / i`
 *
 * - `motorSpeed` (`w`, rpm): motor speed, at least 0 rpm
 * - `ratio` (`i`, a plain number): turns of the motor per turn of the wheels, above 0
 * - `rollingRadius` (`r`, m): rolling radius of the driven wheels, above 0 m
 * - gives `v`: road speed, in km/h
 * - Assumes: the driven wheels do not slip
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * roadSpeed({ motorSpeed: '750 rad/s', ratio: 10, rollingRadius: '0.2 m' })
 * // 54 km/h
 * // course exercise (read): 54 km/h
 * ```
 */
export const roadSpeed = /*@__PURE__*/ formula({
  name: 'roadSpeed',
  title: 'Road speed at a motor speed',
  inputs: {
    motorSpeed: input('angularSpeed', 'w', 'Motor speed', { min: 0 }),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('speed', 'v', 'Road speed'),
  expression: 'w * r / i',
  assumes: ['The driven wheels do not slip.'],
  source: acceleration,
  compute: ({ motorSpeed, ratio, rollingRadius }) => (motorSpeed * rollingRadius) / ratio,
})

/**
 * Step from one gear to the next: the motor turns this many times slower after the shift, at the same road speed.
 * Final drive and tyres cancel.
 *
 * `phi = i_1 / i_2`
 *
 * - `ratio` (`i_1`, a plain number): ratio of the gear, above 0
 * - `nextRatio` (`i_2`, a plain number): ratio of the next gear, above 0
 * - gives `phi`: ratio of the gear over that of the next, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * gearStep({ ratio: 3.78, nextRatio: 2.12 })
 * // 1.783
 * // course exercise (recomputed): 1.783
 * ```
 */
export const gearStep = /*@__PURE__*/ formula({
  name: 'gearStep',
  title: 'Step between two gears',
  inputs: {
    ratio: input('ratio', 'i_1', 'Ratio of the gear', { above: 0 }),
    nextRatio: input('ratio', 'i_2', 'Ratio of the next gear', { above: 0 }),
  },
  result: output('ratio', 'phi', 'Ratio of the gear over that of the next'),
  expression: 'i_1 / i_2',
  source: definition,
  compute: ({ ratio, nextRatio }) => ratio / nextRatio,
})

/**
 * Torque on the driven wheels, of both together. While the motor drives, the losses of gears and bearings take from
 * its torque; while it brakes, they help it to brake.
 *
 * `T_w = i * min(T_m * eta, T_m / eta)`
 *
 * - `motorTorque` (`T_m`, N·m): motor torque, negative where it brakes
 * - `ratio` (`i`, a plain number): turns of the motor per turn of the wheels, above 0
 * - `efficiency` (`eta`, a plain number): efficiency between motor shaft and wheels, above 0 and at most 1
 * - gives `T_w`: torque on the driven wheels together, in N·m
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * wheelTorque({ motorTorque: '174 N·m', ratio: 5.75824, efficiency: 0.96 })
 * // 961.9 N·m
 * // course exercise (recomputed): 961.85 N·m
 * ```
 */
export const wheelTorque = /*@__PURE__*/ formula({
  name: 'wheelTorque',
  title: 'Torque at the driven wheels',
  inputs: {
    motorTorque: input('torque', 'T_m', 'Motor torque, negative where it brakes'),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency between motor shaft and wheels', { above: 0, max: 1 }),
  },
  result: output('torque', 'T_w', 'Torque on the driven wheels together'),
  expression: 'i * min(T_m * eta, T_m / eta)',
  source: acceleration,
  compute: ({ motorTorque, ratio, efficiency }) => ratio * Math.min(motorTorque * efficiency, motorTorque / efficiency),
})

/**
 * Torque that the motor must give for a force at the driven wheels; for a braking force, the torque with which it
 * brakes, less by the losses on the way.
 *
 * `T_m = r / i * max(F * eta, F / eta)`
 *
 * - `force` (`F`, N): force of the driven wheels on the road, negative where they brake
 * - `ratio` (`i`, a plain number): turns of the motor per turn of the wheels, above 0
 * - `rollingRadius` (`r`, m): rolling radius of the driven wheels, above 0 m
 * - `efficiency` (`eta`, a plain number): efficiency between motor shaft and wheels, above 0 and at most 1
 * - gives `T_m`: motor torque, negative where it brakes, in N·m
 * - Assumes: the turning parts are not being speeded up
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * motorTorque({ force: '3330.5 N', ratio: 5.75824, rollingRadius: '0.2888 m', efficiency: 0.96 })
 * // 174 N·m
 * // course exercise (read): 174 N·m
 * ```
 */
export const motorTorque = /*@__PURE__*/ formula({
  name: 'motorTorque',
  title: 'Motor torque for a force at the wheels',
  inputs: {
    force: input('force', 'F', 'Force of the driven wheels on the road, negative where they brake'),
    ratio: input('ratio', 'i', 'Turns of the motor per turn of the wheels', { above: 0 }),
    rollingRadius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency between motor shaft and wheels', { above: 0, max: 1 }),
  },
  result: output('torque', 'T_m', 'Motor torque, negative where it brakes'),
  expression: 'r / i * max(F * eta, F / eta)',
  assumes: ['The turning parts are not being speeded up.'],
  source: acceleration,
  compute: ({ force, ratio, rollingRadius, efficiency }) =>
    (rollingRadius / ratio) * Math.max(force * efficiency, force / efficiency),
})

/**
 * Force with which the driven wheels push the car, at steady speed and if they grip.
 *
 * `F = T_w / r`
 *
 * - `wheelTorque` (`T_w`, N·m): torque on the driven wheels together
 * - `radius` (`r`, m): rolling radius of the driven wheels, above 0 m
 * - gives `F`: force of the driven wheels on the road, in N
 * - Assumes: the turning parts are not being speeded up
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * tractiveForce({ wheelTorque: '961.856 N·m', radius: '0.2888 m' })
 * // 3331 N
 * // course exercise (read): 3330.5 N
 * ```
 */
export const tractiveForce = /*@__PURE__*/ formula({
  name: 'tractiveForce',
  title: 'Tractive force at the driven wheels',
  inputs: {
    wheelTorque: input('torque', 'T_w', 'Torque on the driven wheels together'),
    radius: input('length', 'r', 'Rolling radius of the driven wheels', { above: 0 }),
  },
  result: output('force', 'F', 'Force of the driven wheels on the road'),
  expression: 'T_w / r',
  assumes: ['The turning parts are not being speeded up.'],
  source: acceleration,
  compute: ({ wheelTorque, radius }) => wheelTorque / radius,
})
