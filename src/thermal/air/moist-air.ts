/**
 * Moist air: how much water it holds, and where that settles on a cold face.
 *
 * Rests on the ASHRAE Handbook, Fundamentals, chapter 1, and on the form of Magnus with the constants of Sonntag (1990).
 */
import { cite, constant, definition, formula, icePoint, input, output } from '../../formula/index.js'

const hyland = /*@__PURE__*/ cite(
  'ASHRAE Handbook, Fundamentals',
  'chapter 1, equations 5 and 6, constants from memory',
)
const magnus = /*@__PURE__*/ cite('Sonntag (1990)', 'form of Magnus, constants from memory')

/**
 * Pressure of the vapour over water, and below 0 °C over ice: the most that the air can hold.
 *
 * `p = T < T0 ? p1 * exp(-5674.5359 * K1 / T + 6.3925247 - 0.009677843 * T / K1 + 6.2215701e-7 * (T / K1)^2 + 2.0747825e-9 * (T / K1)^3 - 9.484024e-13 * (T / K1)^4 + 4.1635019 * log(T / K1)) : p1 * exp(-5800.2206 * K1 / T + 1.3914993 - 0.048640239 * T / K1 + 4.1764768e-5 * (T / K1)^2 - 1.4452093e-8 * (T / K1)^3 + 6.5459673 * log(T / K1))`
 *
 * - `temperature` (`T`, °C): temperature, at least -100 °C and at most 200 °C
 * - gives `p`: saturation pressure, in Pa
 * - `T0` = 0 °C: zero on the Celsius scale (ISO 80000-5, Celsius temperature)
 * - `K1` = 1 K: a kelvin (by definition)
 * - `p1` = 1 Pa: a pascal (by definition)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ASHRAE Handbook, Fundamentals, chapter 1, equations 5 and 6, constants from memory.
 *
 * @example
 * ```ts
 * saturationPressure({ temperature: '-20 °C' })
 * // 103.3 Pa
 * // ASHRAE Handbook, Fundamentals (2017), chapter 1, Table 3 (read): 103.24 Pa
 * ```
 */
export const saturationPressure = /*@__PURE__*/ formula({
  name: 'saturationPressure',
  title: 'Saturation pressure of water',
  inputs: { temperature: input('temperature', 'T', 'Temperature', { min: '-100 °C', max: '200 °C' }) },
  result: output('pressure', 'p', 'Saturation pressure', 'Pa'),
  expression:
    'T < T0 ? p1 * exp(-5674.5359 * K1 / T + 6.3925247 - 0.009677843 * T / K1 + 6.2215701e-7 * (T / K1)^2 + ' +
    '2.0747825e-9 * (T / K1)^3 - 9.484024e-13 * (T / K1)^4 + 4.1635019 * log(T / K1)) : ' +
    'p1 * exp(-5800.2206 * K1 / T + 1.3914993 - 0.048640239 * T / K1 + 4.1764768e-5 * (T / K1)^2 - ' +
    '1.4452093e-8 * (T / K1)^3 + 6.5459673 * log(T / K1))',
  constants: {
    T0: icePoint,
    K1: constant('temperature', '1 K', 'A kelvin', definition),
    p1: constant('pressure', '1 Pa', 'A pascal', definition),
  },
  source: hyland,
  compute: ({ temperature }, { T0, K1, p1 }) => {
    const T = temperature / K1
    return temperature < T0
      ? p1 *
          Math.exp(
            -5674.5359 / T +
              6.3925247 -
              0.009677843 * T +
              6.2215701e-7 * T ** 2 +
              2.0747825e-9 * T ** 3 -
              9.484024e-13 * T ** 4 +
              4.1635019 * Math.log(T),
          )
      : p1 *
          Math.exp(
            -5800.2206 / T +
              1.3914993 -
              0.048640239 * T +
              4.1764768e-5 * T ** 2 -
              1.4452093e-8 * T ** 3 +
              6.5459673 * Math.log(T),
          )
  },
})

/** The two slopes of the form of Magnus: the temperature at which each has its end, from the ice point down. */
const magnusConstants = /*@__PURE__*/ (() => ({
  T0: icePoint,
  Cw: constant('temperatureDifference', '243.12 K', 'Constant of Magnus over water', magnus),
  Ci: constant('temperatureDifference', '272.62 K', 'Constant of Magnus over ice', magnus),
}))()

/**
 * Temperature at which water begins to settle from the air, on a face that the air touches. Below 0 °C it is frost.
 * Relative humidity is that over water, as weather stations tell it, also in frost.
 *
 * `Td = log(RH) + 17.62 * (T - T0) / (Cw + T - T0) >= 0 ? T0 + Cw * (log(RH) + 17.62 * (T - T0) / (Cw + T - T0)) / (17.62 - log(RH) - 17.62 * (T - T0) / (Cw + T - T0)) : T0 + Ci * (log(RH) + 17.62 * (T - T0) / (Cw + T - T0)) / (22.46 - log(RH) - 17.62 * (T - T0) / (Cw + T - T0))`
 *
 * - `temperature` (`T`, °C): temperature of the air, at least -40 °C and at most 60 °C
 * - `humidity` (`RH`, a plain number): relative humidity, at least 0.01 and at most 1
 * - gives `Td`: dew point, below 0 °C the frost point, in °C
 * - `T0` = 0 °C: zero on the Celsius scale (ISO 80000-5, Celsius temperature)
 * - `Cw` = 243.12 K: constant of Magnus over water (Sonntag (1990), form of Magnus, constants from memory)
 * - `Ci` = 272.62 K: constant of Magnus over ice (Sonntag (1990), form of Magnus, constants from memory)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Sonntag (1990), form of Magnus, constants from memory.
 *
 * @example
 * ```ts
 * dewPoint({ temperature: '20 °C', humidity: 0.75 })
 * // 15.43 °C
 * // Çengel and Boles, Thermodynamics, 6th edition, example 14-2 (read): 15.4 °C
 * ```
 */
export const dewPoint = /*@__PURE__*/ formula({
  name: 'dewPoint',
  title: 'Dew point',
  inputs: {
    temperature: input('temperature', 'T', 'Temperature of the air', { min: '-40 °C', max: '60 °C' }),
    humidity: input('ratio', 'RH', 'Relative humidity', { min: 0.01, max: 1 }),
  },
  result: output('temperature', 'Td', 'Dew point, below 0 °C the frost point'),
  expression:
    'log(RH) + 17.62 * (T - T0) / (Cw + T - T0) >= 0 ? ' +
    'T0 + Cw * (log(RH) + 17.62 * (T - T0) / (Cw + T - T0)) / (17.62 - log(RH) - 17.62 * (T - T0) / (Cw + T - T0)) : ' +
    'T0 + Ci * (log(RH) + 17.62 * (T - T0) / (Cw + T - T0)) / (22.46 - log(RH) - 17.62 * (T - T0) / (Cw + T - T0))',
  constants: magnusConstants,
  source: magnus,
  compute: ({ temperature, humidity }, { T0, Cw, Ci }) => {
    const g = Math.log(humidity) + (17.62 * (temperature - T0)) / (Cw + temperature - T0)
    return T0 + (g >= 0 ? (Cw * g) / (17.62 - g) : (Ci * g) / (22.46 - g))
  },
})

/**
 * Relative humidity of air of which the dew point is known, over water.
 *
 * `RH = exp((Td >= T0 ? 17.62 * (Td - T0) / (Cw + Td - T0) : 22.46 * (Td - T0) / (Ci + Td - T0)) - 17.62 * (T - T0) / (Cw + T - T0))`
 *
 * - `temperature` (`T`, °C): temperature of the air, at least -40 °C and at most 60 °C
 * - `dewPoint` (`Td`, °C): dew point of the air, below 0 °C its frost point, at least -80 °C and at most 60 °C
 * - gives `RH`: relative humidity, in %
 * - `T0` = 0 °C: zero on the Celsius scale (ISO 80000-5, Celsius temperature)
 * - `Cw` = 243.12 K: constant of Magnus over water (Sonntag (1990), form of Magnus, constants from memory)
 * - `Ci` = 272.62 K: constant of Magnus over ice (Sonntag (1990), form of Magnus, constants from memory)
 * - holds where temperature - dewPoint is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Sonntag (1990), form of Magnus, constants from memory.
 *
 * @example
 * ```ts
 * relativeHumidity({ temperature: '20 °C', dewPoint: '15.4 °C' })
 * // 74.85 %
 * // Çengel and Boles, Thermodynamics, 6th edition, example 14-2 (read): 0.75
 * ```
 */
export const relativeHumidity = /*@__PURE__*/ formula({
  name: 'relativeHumidity',
  title: 'Relative humidity',
  inputs: {
    temperature: input('temperature', 'T', 'Temperature of the air', { min: '-40 °C', max: '60 °C' }),
    dewPoint: input('temperature', 'Td', 'Dew point of the air, below 0 °C its frost point', {
      min: '-80 °C',
      max: '60 °C',
    }),
  },
  result: output('ratio', 'RH', 'Relative humidity', '%'),
  expression:
    'exp((Td >= T0 ? 17.62 * (Td - T0) / (Cw + Td - T0) : 22.46 * (Td - T0) / (Ci + Td - T0)) - ' +
    '17.62 * (T - T0) / (Cw + T - T0))',
  constants: magnusConstants,
  valid: [
    {
      of: 'temperature - dewPoint',
      kind: 'temperatureDifference',
      value: ({ temperature, dewPoint: dew }) => temperature - dew,
      min: 0,
    },
  ],
  source: magnus,
  compute: ({ temperature, dewPoint: dew }, { T0, Cw, Ci }) =>
    Math.exp(
      (dew >= T0 ? (17.62 * (dew - T0)) / (Cw + dew - T0) : (22.46 * (dew - T0)) / (Ci + dew - T0)) -
        (17.62 * (temperature - T0)) / (Cw + temperature - T0),
    ),
})

/**
 * Mass of the water in moist air for each mass of dry air, from the pressure of its vapour.
 *
 * `W = 0.621945 * pw / (p - pw)`
 *
 * - `vapour` (`pw`, kPa): pressure of the vapour, at least 0 kPa
 * - `pressure` (`p`, kPa): pressure of the air, above 0 kPa
 * - gives `W`: mass of water for each mass of dry air, in a plain number
 * - holds where vapour / pressure is below 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ASHRAE Handbook, Fundamentals, chapter 1.
 *
 * @example
 * ```ts
 * humidityRatio({ vapour: '2.37735 kPa', pressure: '100 kPa' })
 * // 0.01515
 * // Çengel and Boles, Thermodynamics, 6th edition, example 14-1 (read): 0.01515
 * ```
 */
export const humidityRatio = /*@__PURE__*/ formula({
  name: 'humidityRatio',
  title: 'Humidity ratio',
  inputs: {
    vapour: input('pressure', 'pw', 'Pressure of the vapour', { min: 0 }),
    pressure: input('pressure', 'p', 'Pressure of the air', { above: 0 }),
  },
  result: output('ratio', 'W', 'Mass of water for each mass of dry air'),
  expression: '0.621945 * pw / (p - pw)',
  valid: [{ of: 'vapour / pressure', value: ({ vapour, pressure }) => vapour / pressure, below: 1 }],
  source: cite('ASHRAE Handbook, Fundamentals', 'chapter 1'),
  compute: ({ vapour, pressure }) => (0.621945 * vapour) / (pressure - vapour),
})
