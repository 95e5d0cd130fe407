/**
 * What it takes to move a car along a road: air, rolling resistance, grade and acceleration.
 *
 * Rests on ISO 2533 (standard atmosphere), Gillespie, Fundamentals of Vehicle Dynamics (1992), chapters 2 and 4, and
 * the coast-down form of 40 CFR 86.529, UN Regulation No. 83 and UN Regulation No. 154, and UN GTR No. 15 (tyres in the
 * cold). A grade is rise over run.
 */
import { cite, constant, definition, formula, input, output, standardGravity } from '../../formula/index.js'

const standardAtmosphere = /*@__PURE__*/ cite('ISO 2533')
const roadLoads = /*@__PURE__*/ cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 4')
/** The correction of a coast-down to 20 °C, turned round. */
const rollingInCold = /*@__PURE__*/ cite(
  'UN Global Technical Regulation No. 15',
  'Annex 4, correction to reference conditions, from memory',
)

/** Specific gas constant of dry air, 287.05287 J/(kg·K): that of the standard atmosphere. */
const dryAirGasConstant = /*@__PURE__*/ constant(
  'specificHeat',
  '287.05287 J/(kg·K)',
  'Specific gas constant of dry air',
  standardAtmosphere,
)

/**
 * Density of dry air. Moist air is lighter, by 0.4 % at 20 °C and half saturated.
 *
 * `rho = p / (R_a * T)`
 *
 * - `pressure` (`p`, kPa): pressure of the air, at least 0 kPa
 * - `temperature` (`T`, °C): temperature of the air
 * - gives `rho`: density of the air, in kg/m³
 * - `R_a` = 287.05287 J/(kg·K): specific gas constant of dry air (ISO 2533)
 * - Assumes: the air is dry and an ideal gas
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 2533.
 *
 * @example
 * ```ts
 * airDensity({ pressure: '101.325 kPa', temperature: '15 °C' })
 * // 1.225 kg/m³
 * // ISO 2533 (from memory): 1.2250 kg/m³
 * ```
 */
export const airDensity = /*@__PURE__*/ formula({
  name: 'airDensity',
  title: 'Density of air',
  inputs: {
    pressure: input('pressure', 'p', 'Pressure of the air', { min: 0 }),
    temperature: input('temperature', 'T', 'Temperature of the air'),
  },
  result: output('density', 'rho', 'Density of the air'),
  expression: 'p / (R_a * T)',
  constants: { R_a: dryAirGasConstant },
  assumes: ['The air is dry and an ideal gas.'],
  source: standardAtmosphere,
  compute: ({ pressure, temperature }, { R_a }) => pressure / (R_a * temperature),
})

/**
 * Pressure of the standard atmosphere at an altitude, for the density of the air on a mountain road.
 *
 * `p = p_0 * (1 - dT * H / (H_1 * T_0)) ^ (g0 * H_1 / (R_a * dT))`
 *
 * - `altitude` (`H`, m): altitude above sea level in the lowest layer of ISO 2533, at least -2000 m and at most 11000
 *   m
 * - gives `p`: pressure of the air, in kPa
 * - `p_0` = 101325 Pa: pressure at sea level (ISO 2533)
 * - `T_0` = 288.15 K: temperature at sea level (ISO 2533)
 * - `dT` = 6.5 K: fall of temperature in one kilometre (ISO 2533)
 * - `H_1` = 1 km: one kilometre (ISO 2533)
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 * - `R_a` = 287.05287 J/(kg·K): specific gas constant of dry air (ISO 2533)
 * - Assumes: the atmosphere is the standard one: the weather changes the pressure by a few percent
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ISO 2533.
 *
 * @example
 * ```ts
 * airPressure({ altitude: '1000 m' })
 * // 89.87 kPa
 * // ISO 2533 (from memory): 89874.6 Pa
 * ```
 */
export const airPressure = /*@__PURE__*/ formula({
  name: 'airPressure',
  title: 'Air pressure at an altitude',
  inputs: {
    altitude: input('length', 'H', 'Altitude above sea level in the lowest layer of ISO 2533', {
      min: '-2 km',
      max: '11 km',
    }),
  },
  result: output('pressure', 'p', 'Pressure of the air'),
  expression: 'p_0 * (1 - dT * H / (H_1 * T_0)) ^ (g0 * H_1 / (R_a * dT))',
  constants: {
    p_0: constant('pressure', '101325 Pa', 'Pressure at sea level', standardAtmosphere),
    T_0: constant('temperature', '288.15 K', 'Temperature at sea level', standardAtmosphere),
    dT: constant('temperatureDifference', '6.5 K', 'Fall of temperature in one kilometre', standardAtmosphere),
    H_1: constant('length', '1 km', 'One kilometre', standardAtmosphere),
    g0: standardGravity,
    R_a: dryAirGasConstant,
  },
  assumes: ['The atmosphere is the standard one: the weather changes the pressure by a few percent.'],
  source: standardAtmosphere,
  compute: ({ altitude }, { p_0, T_0, dT, H_1, g0, R_a }) =>
    p_0 * (1 - (dT * altitude) / (H_1 * T_0)) ** ((g0 * H_1) / (R_a * dT)),
})

/**
 * Force of the air against the car. The wind adds to the speed through the air; the power that it takes is this force
 * times the speed over the ground. A tail wind faster than the car pushes: the force is negative.
 *
 * `F_a = 0.5 * rho * A_d * (v + v_w) * abs(v + v_w)`
 *
 * - `airDensity` (`rho`, kg/m³): density of the air, at least 0 kg/m³
 * - `dragArea` (`A_d`, m²): drag coefficient times frontal area, at least 0 m²
 * - `speed` (`v`, km/h): road speed, at least 0 km/h
 * - `headwind` (`v_w`, km/h): head wind, negative for a tail wind, 0 km/h unless given
 * - gives `F_a`: drag, in N
 * - Assumes: the wind blows along the road
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * aerodynamicDrag({ airDensity: '1.2 kg/m³', dragArea: '0.72 m²', speed: '80 km/h' })
 * // 213.3 N
 * // course exercise (read): 213.33 N
 * ```
 */
export const aerodynamicDrag = /*@__PURE__*/ formula({
  name: 'aerodynamicDrag',
  title: 'Aerodynamic drag',
  inputs: {
    airDensity: input('density', 'rho', 'Density of the air', { min: 0 }),
    dragArea: input('area', 'A_d', 'Drag coefficient times frontal area', { min: 0 }),
    speed: input('speed', 'v', 'Road speed', { min: 0 }),
    headwind: input('speed', 'v_w', 'Head wind, negative for a tail wind', { default: '0 km/h' }),
  },
  result: output('force', 'F_a', 'Drag'),
  expression: '0.5 * rho * A_d * (v + v_w) * abs(v + v_w)',
  assumes: ['The wind blows along the road.'],
  source: roadLoads,
  compute: ({ airDensity, dragArea, speed, headwind }) =>
    0.5 * airDensity * dragArea * (speed + headwind) * Math.abs(speed + headwind),
})

/**
 * Force of the rolling tyres against the motion. The coefficient is the least certain input of a road load: published
 * forms differ almost threefold at one speed, so that a coast-down is worth the afternoon.
 *
 * `F_r = m * g0 * C_rr * cos(atan(G))`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `coefficient` (`C_rr`, a plain number): rolling resistance coefficient, at least 0
 * - `grade` (`G`, a plain number): grade, rise over run, 0 unless given
 * - gives `F_r`: rolling resistance, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * rollingResistance({ mass: '600 kg', coefficient: 0.015, grade: 0.14054083 })
 * // 87.4 N
 * // course exercise (read): 87.43 N
 * ```
 */
export const rollingResistance = /*@__PURE__*/ formula({
  name: 'rollingResistance',
  title: 'Rolling resistance',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    coefficient: input('ratio', 'C_rr', 'Rolling resistance coefficient', { min: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run', { default: 0 }),
  },
  result: output('force', 'F_r', 'Rolling resistance'),
  expression: 'm * g0 * C_rr * cos(atan(G))',
  constants: { g0: standardGravity },
  source: roadLoads,
  compute: ({ mass, coefficient, grade }, { g0 }) => mass * g0 * coefficient * Math.cos(Math.atan(grade)),
})

/**
 * Rolling resistance in warm or cold air, over that at 20 °C: tyres and bearings resist more in the cold. It goes for
 * the coefficient of the tyres, and for the constant and the linear coefficient of a coast-down alike.
 *
 * `k_T = 1 / (1 + K_0 * (T - T_20))`
 *
 * - `temperature` (`T`, °C): temperature of the air, at least -40 °C and at most 50 °C
 * - gives `k_T`: rolling resistance over that at 20 °C, in a plain number
 * - `K_0` = 0.0086 1/K: fall of the rolling resistance with temperature (UN Global Technical Regulation No. 15, Annex
 *   4, correction to reference conditions, from memory)
 * - `T_20` = 20 °C: temperature to which road loads are corrected (UN Global Technical Regulation No. 15, Annex 4,
 *   correction to reference conditions, from memory)
 * - Assumes: beyond the 5 °C to 35 °C of the road tests that it corrects (from memory) the line is carried on
 * - Assumes: tyres and bearings are as warm as steady driving in that air makes them: on the first kilometres they
 *   roll harder
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Global Technical Regulation No. 15, Annex 4, correction to reference conditions, from memory.
 *
 * @example
 * ```ts
 * rollingTemperatureFactor({ temperature: '-7 °C' })
 * // 1.302
 * // UN Regulation No. 117, correction of a tyre test to 25 °C, 0.008 per kelvin (from memory): 1.2903
 * ```
 */
export const rollingTemperatureFactor = /*@__PURE__*/ formula({
  name: 'rollingTemperatureFactor',
  title: 'Rolling resistance over that at 20 °C',
  inputs: {
    temperature: input('temperature', 'T', 'Temperature of the air', { min: '-40 °C', max: '50 °C' }),
  },
  result: output('ratio', 'k_T', 'Rolling resistance over that at 20 °C'),
  expression: '1 / (1 + K_0 * (T - T_20))',
  constants: {
    K_0: constant(
      'temperatureCoefficient',
      '0.0086 1/K',
      'Fall of the rolling resistance with temperature',
      rollingInCold,
    ),
    T_20: constant('temperature', '20 °C', 'Temperature to which road loads are corrected', rollingInCold),
  },
  assumes: [
    'Beyond the 5 °C to 35 °C of the road tests that it corrects (from memory) the line is carried on.',
    'Tyres and bearings are as warm as steady driving in that air makes them: on the first kilometres they roll harder.',
  ],
  source: rollingInCold,
  compute: ({ temperature }, { K_0, T_20 }) => 1 / (1 + K_0 * (temperature - T_20)),
})

/**
 * Force of gravity along the road, against the car uphill; negative downhill. A grade of 100 % is 45°.
 *
 * `F_g = m * g0 * sin(atan(G))`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `grade` (`G`, a plain number): grade, rise over run
 * - gives `F_g`: force of the grade, in N
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * gradeForce({ mass: '600 kg', grade: 0.14054083 })
 * // 818.9 N
 * // course exercise (read): 819.17 N
 * ```
 */
export const gradeForce = /*@__PURE__*/ formula({
  name: 'gradeForce',
  title: 'Force of a grade',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    grade: input('ratio', 'G', 'Grade, rise over run'),
  },
  result: output('force', 'F_g', 'Force of the grade'),
  expression: 'm * g0 * sin(atan(G))',
  constants: { g0: standardGravity },
  source: roadLoads,
  compute: ({ mass, grade }, { g0 }) => mass * g0 * Math.sin(Math.atan(grade)),
})

/**
 * Force that speeds the car up; negative when it slows down. The rotating factor counts the turning parts: about 1.03
 * for the wheels alone, and 1.6 or more in a low gear.
 *
 * `F_i = delta * m * a`
 *
 * - `mass` (`m`, kg): mass of the car, at least 0 kg
 * - `acceleration` (`a`, m/s²): forward acceleration, negative under braking
 * - `rotatingFactor` (`delta`, a plain number): mass with that of the turning parts over mass, at least 1, 1 unless
 *   given
 * - gives `F_i`: force to accelerate, in N
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 2.
 *
 * @example
 * ```ts
 * inertiaForce({ mass: '1200 kg', acceleration: '2.22 m/s²', rotatingFactor: 1.06 })
 * // 2824 N
 * // course exercise (recomputed): 2823.8 N
 * ```
 */
export const inertiaForce = /*@__PURE__*/ formula({
  name: 'inertiaForce',
  title: 'Force to accelerate',
  inputs: {
    mass: input('mass', 'm', 'Mass of the car', { min: 0 }),
    acceleration: input('acceleration', 'a', 'Forward acceleration, negative under braking'),
    rotatingFactor: input('ratio', 'delta', 'Mass with that of the turning parts over mass', { min: 1, default: 1 }),
  },
  result: output('force', 'F_i', 'Force to accelerate'),
  expression: 'delta * m * a',
  source: cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 2'),
  compute: ({ mass, acceleration, rotatingFactor }) => rotatingFactor * mass * acceleration,
})

/**
 * Force needed at the wheels: the sum of all that resists. Negative where the car must be braked.
 *
 * `F = F_a + F_r + F_g + F_i`
 *
 * - `aerodynamicDrag` (`F_a`, N): aerodynamic drag
 * - `rollingResistance` (`F_r`, N): rolling resistance, at least 0 N
 * - `gradeForce` (`F_g`, N): force of the grade, 0 N unless given
 * - `inertiaForce` (`F_i`, N): force to accelerate, 0 N unless given
 * - gives `F`: force needed at the wheels, in N
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 4.
 *
 * @example
 * ```ts
 * roadLoad({ aerodynamicDrag: '154.32 N', rollingResistance: '240 N', inertiaForce: '2823.84 N' })
 * // 3218 N
 * // course exercise (read): 3218.1 N
 * ```
 */
export const roadLoad = /*@__PURE__*/ formula({
  name: 'roadLoad',
  title: 'Road load',
  inputs: {
    aerodynamicDrag: input('force', 'F_a', 'Aerodynamic drag'),
    rollingResistance: input('force', 'F_r', 'Rolling resistance', { min: 0 }),
    gradeForce: input('force', 'F_g', 'Force of the grade', { default: '0 N' }),
    inertiaForce: input('force', 'F_i', 'Force to accelerate', { default: '0 N' }),
  },
  result: output('force', 'F', 'Force needed at the wheels'),
  expression: 'F_a + F_r + F_g + F_i',
  source: roadLoads,
  compute: ({ aerodynamicDrag, rollingResistance, gradeForce, inertiaForce }) =>
    aerodynamicDrag + rollingResistance + gradeForce + inertiaForce,
})

/**
 * Road load on the level at a steady speed, from the coefficients of a coast-down. Mind their units: a quadratic one
 * per (mph)², (km/h)² or (m/s)² differs by more than tenfold.
 *
 * `F = F_0 + F_1 * v + F_2 * v ^ 2`
 *
 * - `constant` (`F_0`, N): constant coefficient
 * - `linear` (`F_1`, N/(km/h)): linear coefficient
 * - `quadratic` (`F_2`, N/(km/h)²): quadratic coefficient
 * - `speed` (`v`, km/h): road speed, at least 0 km/h
 * - gives `F`: force needed at the wheels, in N
 * - Assumes: the road is level, the air still and as dense as at the coast-down
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: 40 CFR 86.529-98, figure F98-9; the same form in UN Regulations No. 83 and No. 154.
 *
 * @example
 * ```ts
 * roadLoadFromCoefficients({
 *   constant: '6.4 N',
 *   linear: '0 N/(km/h)',
 *   quadratic: '0.0433 N/(km/h)²',
 *   speed: '80 km/h',
 * })
 * // 283.5 N
 * // UN Regulation No. 83, table of default dynamometer settings, reference mass 1130 kg (read): 284 N
 * ```
 */
export const roadLoadFromCoefficients = /*@__PURE__*/ formula({
  name: 'roadLoadFromCoefficients',
  title: 'Road load from coast-down coefficients',
  inputs: {
    constant: input('force', 'F_0', 'Constant coefficient'),
    linear: input('forcePerSpeed', 'F_1', 'Linear coefficient'),
    quadratic: input('forcePerSpeedSquared', 'F_2', 'Quadratic coefficient'),
    speed: input('speed', 'v', 'Road speed', { min: 0 }),
  },
  result: output('force', 'F', 'Force needed at the wheels'),
  expression: 'F_0 + F_1 * v + F_2 * v ^ 2',
  assumes: ['The road is level, the air still and as dense as at the coast-down.'],
  source: cite('40 CFR 86.529-98', 'figure F98-9; the same form in UN Regulations No. 83 and No. 154'),
  compute: ({ constant, linear, quadratic, speed }) => constant + linear * speed + quadratic * speed ** 2,
})

/**
 * Power at the wheels: force times the speed over the ground, whatever the wind. Negative where the car is braked.
 *
 * `P = F * v`
 *
 * - `force` (`F`, N): force needed at the wheels
 * - `speed` (`v`, km/h): road speed, at least 0 km/h
 * - gives `P`: power at the wheels, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * roadPower({ force: '733.5 N', speed: '120 km/h' })
 * // 24.45 kW
 * // course exercise (read): 24450 W
 * ```
 */
export const roadPower = /*@__PURE__*/ formula({
  name: 'roadPower',
  title: 'Power at the wheels',
  inputs: {
    force: input('force', 'F', 'Force needed at the wheels'),
    speed: input('speed', 'v', 'Road speed', { min: 0 }),
  },
  result: output('power', 'P', 'Power at the wheels'),
  expression: 'F * v',
  source: definition,
  compute: ({ force, speed }) => force * speed,
})

/**
 * Rolling resistance coefficient that makes the constant coefficient of a coast-down at a mass.
 *
 * `C_rr = F_0 / (m * g0)`
 *
 * - `constant` (`F_0`, N): constant coefficient, at least 0 N
 * - `mass` (`m`, kg): mass of the car, above 0 kg
 * - gives `C_rr`: rolling resistance coefficient, in a plain number
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * coefficientFromConstant({ constant: '98.0665 N', mass: '1000 kg' })
 * // 0.01
 * // by definition (exact): 0.01
 * ```
 */
export const coefficientFromConstant = /*@__PURE__*/ formula({
  name: 'coefficientFromConstant',
  title: 'Rolling resistance coefficient from a coast-down',
  inputs: {
    constant: input('force', 'F_0', 'Constant coefficient', { min: 0 }),
    mass: input('mass', 'm', 'Mass of the car', { above: 0 }),
  },
  result: output('ratio', 'C_rr', 'Rolling resistance coefficient'),
  expression: 'F_0 / (m * g0)',
  constants: { g0: standardGravity },
  source: definition,
  compute: ({ constant, mass }, { g0 }) => constant / (mass * g0),
})

/**
 * Drag area that makes the quadratic coefficient of a coast-down in the air of that day.
 *
 * `A_d = 2 * F_2 / rho`
 *
 * - `quadratic` (`F_2`, N/(km/h)²): quadratic coefficient, at least 0 N/(km/h)²
 * - `airDensity` (`rho`, kg/m³): density of the air at the coast-down, above 0 kg/m³
 * - gives `A_d`: drag coefficient times frontal area, in m²
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * dragAreaFromQuadratic({ quadratic: '0.432 N/(m/s)²', airDensity: '1.2 kg/m³' })
 * // 0.72 m²
 * // by definition (exact): 0.72 m²
 * ```
 */
export const dragAreaFromQuadratic = /*@__PURE__*/ formula({
  name: 'dragAreaFromQuadratic',
  title: 'Drag area from a coast-down',
  inputs: {
    quadratic: input('forcePerSpeedSquared', 'F_2', 'Quadratic coefficient', { min: 0 }),
    airDensity: input('density', 'rho', 'Density of the air at the coast-down', { above: 0 }),
  },
  result: output('area', 'A_d', 'Drag coefficient times frontal area'),
  expression: '2 * F_2 / rho',
  source: definition,
  compute: ({ quadratic, airDensity }) => (2 * quadratic) / airDensity,
})
