/**
 * Charging from the supply, the 12 V converter, and feeding a load from the pack.
 *
 * Rests on the definitions of power, power factor and efficiency.
 */
import { definition, formula, input, output } from '../formula/index.js'

/**
 * Time in which a pack takes in an energy at a steady power. The taper at the end of a charge comes on top.
 *
 * `t = E / (P * eta)`
 *
 * - `energy` (`E`, kWh): energy to put into the pack, at least 0 kWh
 * - `power` (`P`, kW): power drawn from the supply, above 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency from the supply to the pack, above 0 and at most 1, 1 unless
 *   given
 * - gives `t`: charge time, in h
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * chargeTime({ energy: '24 kWh', power: '6 kW', efficiency: 0.8 })
 * // 5 h
 * // by definition (exact): 5 h
 * ```
 */
export const chargeTime = /*@__PURE__*/ formula({
  name: 'chargeTime',
  title: 'Charge time at constant power',
  inputs: {
    energy: input('energy', 'E', 'Energy to put into the pack', { min: 0 }),
    power: input('power', 'P', 'Power drawn from the supply', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency from the supply to the pack', { above: 0, max: 1, default: 1 }),
  },
  result: output('time', 't', 'Charge time', 'h'),
  expression: 'E / (P * eta)',
  source: definition,
  compute: ({ energy, power, efficiency }) => energy / (power * efficiency),
})

/**
 * Power of an alternating-current supply. The voltage is that of one phase to neutral, 230 V where the lines are 400
 * V apart. A supply across two lines, such as 240 V between split phases, counts as one phase of that voltage.
 *
 * `P = n * U * I * lambda`
 *
 * - `voltage` (`U`, V): voltage of one phase to neutral, root mean square, at least 0 V
 * - `current` (`I`, A): current in each phase, root mean square, at least 0 A
 * - `phases` (`n`, a plain number): number of phases, at least 1 and at most 3
 * - `powerFactor` (`lambda`, a plain number): power factor, at least 0 and at most 1
 * - gives `P`: active power, in kW
 * - Assumes: all phases carry the same current
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * acPower({ voltage: '230 V', current: '32 A', phases: 3, powerFactor: 1 })
 * // 22.08 kW
 * // common practice, no source (from memory): 22 kW
 * ```
 */
export const acPower = /*@__PURE__*/ formula({
  name: 'acPower',
  title: 'Power of an AC supply',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage of one phase to neutral, root mean square', { min: 0 }),
    current: input('current', 'I', 'Current in each phase, root mean square', { min: 0 }),
    phases: input('ratio', 'n', 'Number of phases', { min: 1, max: 3 }),
    powerFactor: input('ratio', 'lambda', 'Power factor', { min: 0, max: 1 }),
  },
  result: output('power', 'P', 'Active power'),
  expression: 'n * U * I * lambda',
  assumes: ['All phases carry the same current.'],
  source: definition,
  compute: ({ voltage, current, phases, powerFactor }) => phases * voltage * current * powerFactor,
})

/**
 * Current that a DC converter draws from the pack. It is greatest when the pack is at its lowest voltage.
 *
 * `I = P / (U * eta)`
 *
 * - `power` (`P`, kW): power delivered, at least 0 kW
 * - `voltage` (`U`, V): input voltage, above 0 V
 * - `efficiency` (`eta`, a plain number): efficiency of the converter, above 0 and at most 1
 * - gives `I`: input current, in A
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * converterInputCurrent({ power: '980 W', voltage: '350 V', efficiency: 0.9 })
 * // 3.111 A
 * // by definition (exact): 3.111 A
 * ```
 */
export const converterInputCurrent = /*@__PURE__*/ formula({
  name: 'converterInputCurrent',
  title: 'Input current of a converter',
  inputs: {
    power: input('power', 'P', 'Power delivered', { min: 0 }),
    voltage: input('voltage', 'U', 'Input voltage', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of the converter', { above: 0, max: 1 }),
  },
  result: output('current', 'I', 'Input current'),
  expression: 'P / (U * eta)',
  source: definition,
  compute: ({ power, voltage, efficiency }) => power / (voltage * efficiency),
})

/**
 * Time for which a pack feeds a steady load through an inverter.
 *
 * `t = E * eta / P`
 *
 * - `energy` (`E`, kWh): energy taken from the pack, at least 0 kWh
 * - `load` (`P`, kW): power of the load, above 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency of the inverter, above 0 and at most 1
 * - gives `t`: time, in h
 * - Caution: feeding a house's wiring needs a transfer arrangement that isolates it from the grid, and licensed work
 *   under local rules
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * backupTime({ energy: '10 kWh', load: '1.5 kW', efficiency: 0.9 })
 * // 6 h
 * // by definition (exact): 6 h
 * ```
 */
export const backupTime = /*@__PURE__*/ formula({
  name: 'backupTime',
  title: 'Time for which a pack feeds a load',
  inputs: {
    energy: input('energy', 'E', 'Energy taken from the pack', { min: 0 }),
    load: input('power', 'P', 'Power of the load', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of the inverter', { above: 0, max: 1 }),
  },
  result: output('time', 't', 'Time', 'h'),
  expression: 'E * eta / P',
  cautions: [
    "Feeding a house's wiring needs a transfer arrangement that isolates it from the grid, and licensed work under local rules.",
  ],
  source: definition,
  compute: ({ energy, load, efficiency }) => (energy * efficiency) / load,
})
