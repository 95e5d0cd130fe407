/**
 * From power at the wheels to power at the battery, energy per distance, and range.
 *
 * Rests on definitions; Larminie & Lowry, Electric Vehicle Technology Explained, chapter 7, has the same chain.
 */
import { cite, definition, formula, input, output } from '../formula/index.js'

/**
 * Power that the battery gives at its terminals to drive the wheels and feed what else is on. It holds while the
 * wheels are driven; under regeneration the efficiencies act the other way.
 *
 * `P_b = P_w / (eta_d * eta_m) + P_a`
 *
 * - `wheelPower` (`P_w`, kW): power at the driven wheels, at least 0 kW
 * - `drivelineEfficiency` (`eta_d`, a plain number): efficiency from motor shaft to wheels, above 0 and at most 1
 * - `motorEfficiency` (`eta_m`, a plain number): efficiency of motor and controller, above 0 and at most 1
 * - `auxiliaries` (`P_a`, kW): power of lights, heater and other loads, at least 0 kW
 * - gives `P_b`: power at the battery terminals, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Larminie & Lowry, Electric Vehicle Technology Explained (2003), chapter 7.
 *
 * @example
 * ```ts
 * batteryPower({ wheelPower: '71.5 kW', drivelineEfficiency: 0.9, motorEfficiency: 1, auxiliaries: '0 W' })
 * // 79.44 kW
 * // course exercise (read): 79.5 kW
 * ```
 */
export const batteryPower = /*@__PURE__*/ formula({
  name: 'batteryPower',
  title: 'Battery power for a power at the wheels',
  inputs: {
    wheelPower: input('power', 'P_w', 'Power at the driven wheels', { min: 0 }),
    drivelineEfficiency: input('ratio', 'eta_d', 'Efficiency from motor shaft to wheels', { above: 0, max: 1 }),
    motorEfficiency: input('ratio', 'eta_m', 'Efficiency of motor and controller', { above: 0, max: 1 }),
    auxiliaries: input('power', 'P_a', 'Power of lights, heater and other loads', { min: 0 }),
  },
  result: output('power', 'P_b', 'Power at the battery terminals'),
  expression: 'P_w / (eta_d * eta_m) + P_a',
  source: cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 7'),
  compute: ({ wheelPower, drivelineEfficiency, motorEfficiency, auxiliaries }) =>
    wheelPower / (drivelineEfficiency * motorEfficiency) + auxiliaries,
})

/**
 * Energy used over a distance at a steady speed. Downhill it may be negative.
 *
 * `e = P / v`
 *
 * - `power` (`P`, kW): power drawn
 * - `speed` (`v`, km/h): road speed, above 0 km/h
 * - gives `e`: energy per distance, in Wh/km
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * consumption({ power: '24450 W', speed: '120 km/h' })
 * // 203.8 Wh/km
 * // course exercise (read): 733.5 J/m
 * ```
 */
export const consumption = /*@__PURE__*/ formula({
  name: 'consumption',
  title: 'Energy per distance at a steady speed',
  inputs: {
    power: input('power', 'P', 'Power drawn'),
    speed: input('speed', 'v', 'Road speed', { above: 0 }),
  },
  result: output('energyPerDistance', 'e', 'Energy per distance'),
  expression: 'P / v',
  source: definition,
  compute: ({ power, speed }) => power / speed,
})

/**
 * Distance that an amount of energy lasts.
 *
 * `s = E / e`
 *
 * - `energy` (`E`, kWh): energy that may be used, at least 0 kWh
 * - `consumption` (`e`, Wh/km): energy per distance, above 0 Wh/km
 * - gives `s`: range, in km
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * rangeFromConsumption({ energy: '82049 Wh', consumption: '244.75 Wh/mi' })
 * // 539.5 km
 * // 10 CFR 474, appendix (read): 335.24 mi
 * ```
 */
export const rangeFromConsumption = /*@__PURE__*/ formula({
  name: 'rangeFromConsumption',
  title: 'Range from energy and consumption',
  inputs: {
    energy: input('energy', 'E', 'Energy that may be used', { min: 0 }),
    consumption: input('energyPerDistance', 'e', 'Energy per distance', { above: 0 }),
  },
  result: output('length', 's', 'Range', 'km'),
  expression: 'E / e',
  source: definition,
  compute: ({ energy, consumption }) => energy / consumption,
})
