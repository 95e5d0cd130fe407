/**
 * Voltage, capacity, energy and power of a pack of equal modules, and what its resistance costs.
 *
 * Rests on circuit theory: a source of constant voltage behind a resistance. Currents are positive on discharge.
 */
import { definition, formula, input, output } from '../../formula/index.js'
import { quantity } from '../../quantity/index.js'

/** The most power that maximumPower tells is not refused for its last digits. */
const ROUNDING = 1e-12

/**
 * Voltage of cells or modules in series. Ask it of the nominal, the full-charge and the empty voltage in turn: a pack
 * named by its nominal voltage stands well above it when full. A count that was solved for need not be whole; the
 * pack's must be.
 *
 * `U = n * U1`
 *
 * - `count` (`n`, a plain number): number in series, at least 0
 * - `voltage` (`U1`, V): voltage of one, at least 0 V
 * - gives `U`: voltage of the string, in V
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * seriesVoltage({ count: 96, voltage: '3.6 V' })
 * // 345.6 V
 * // by definition (exact): 345.6 V
 * ```
 */
export const seriesVoltage = /*@__PURE__*/ formula({
  name: 'seriesVoltage',
  title: 'Voltage of modules in series',
  inputs: {
    count: input('ratio', 'n', 'Number in series', { min: 0 }),
    voltage: input('voltage', 'U1', 'Voltage of one', { min: 0 }),
  },
  result: output('voltage', 'U', 'Voltage of the string'),
  expression: 'n * U1',
  source: definition,
  compute: ({ count, voltage }) => count * voltage,
})

/**
 * Capacity of equal cells or modules in parallel.
 *
 * `Q = n * Q1`
 *
 * - `count` (`n`, a plain number): number in parallel, at least 0
 * - `capacity` (`Q1`, Ah): capacity of one, at least 0 Ah
 * - gives `Q`: capacity of the group, in Ah
 * - Assumes: the modules are equal and share the current equally
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * parallelCharge({ count: 3, capacity: '5 Ah' })
 * // 15 Ah
 * // by definition (exact): 15 Ah
 * ```
 */
export const parallelCharge = /*@__PURE__*/ formula({
  name: 'parallelCharge',
  title: 'Capacity of modules in parallel',
  inputs: {
    count: input('ratio', 'n', 'Number in parallel', { min: 0 }),
    capacity: input('charge', 'Q1', 'Capacity of one', { min: 0 }),
  },
  result: output('charge', 'Q', 'Capacity of the group'),
  expression: 'n * Q1',
  assumes: ['The modules are equal and share the current equally.'],
  source: definition,
  compute: ({ count, capacity }) => count * capacity,
})

/**
 * Energy that a pack holds, from its mean (nominal) voltage and its capacity. The full-charge voltage would flatter
 * it.
 *
 * `E = U * Q`
 *
 * - `voltage` (`U`, V): nominal voltage, at least 0 V
 * - `capacity` (`Q`, Ah): capacity, at least 0 Ah
 * - gives `E`: energy, in kWh
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * packEnergy({ voltage: '345.6 V', capacity: '15 Ah' })
 * // 5.184 kWh
 * // by definition (exact): 5.184 kWh
 * ```
 */
export const packEnergy = /*@__PURE__*/ formula({
  name: 'packEnergy',
  title: 'Energy of a pack',
  inputs: {
    voltage: input('voltage', 'U', 'Nominal voltage', { min: 0 }),
    capacity: input('charge', 'Q', 'Capacity', { min: 0 }),
  },
  result: output('energy', 'E', 'Energy'),
  expression: 'U * Q',
  source: definition,
  compute: ({ voltage, capacity }) => voltage * capacity,
})

/**
 * Resistance of a pack of equal modules. Links, fuse and contactors come on top.
 *
 * `R = ns / np * R1`
 *
 * - `series` (`ns`, a plain number): number in series, at least 0
 * - `parallel` (`np`, a plain number): number in parallel, above 0
 * - `resistance` (`R1`, mΩ): resistance of one, at least 0 mΩ
 * - gives `R`: resistance of the pack, in mΩ
 * - Assumes: the modules are equal and share the current equally
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * packResistance({ series: 96, parallel: 3, resistance: '20 mΩ' })
 * // 640 mΩ
 * // by definition (exact): 640 mΩ
 * ```
 */
export const packResistance = /*@__PURE__*/ formula({
  name: 'packResistance',
  title: 'Resistance of a pack',
  inputs: {
    series: input('ratio', 'ns', 'Number in series', { min: 0 }),
    parallel: input('ratio', 'np', 'Number in parallel', { above: 0 }),
    resistance: input('resistance', 'R1', 'Resistance of one', { min: 0 }),
  },
  result: output('resistance', 'R', 'Resistance of the pack'),
  expression: 'ns / np * R1',
  assumes: ['The modules are equal and share the current equally.'],
  source: definition,
  compute: ({ series, parallel, resistance }) => (series / parallel) * resistance,
})

/**
 * Energy between two states of charge, for a pack that is neither filled nor emptied to its ends.
 *
 * `Eu = E * (s2 - s1)`
 *
 * - `energy` (`E`, kWh): energy from full to empty, at least 0 kWh
 * - `upper` (`s2`, a plain number): highest state of charge used, at least 0 and at most 1
 * - `lower` (`s1`, a plain number): lowest state of charge used, at least 0 and at most 1
 * - gives `Eu`: usable energy, in kWh
 * - holds where upper - lower is at least 0
 * - Assumes: energy is spread evenly over the state of charge
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * usableEnergy({ energy: '24 kWh', upper: 0.9, lower: 0.2 })
 * // 16.8 kWh
 * // by definition (exact): 16.8 kWh
 * ```
 */
export const usableEnergy = /*@__PURE__*/ formula({
  name: 'usableEnergy',
  title: 'Usable energy of a pack',
  inputs: {
    energy: input('energy', 'E', 'Energy from full to empty', { min: 0 }),
    upper: input('ratio', 's2', 'Highest state of charge used', { min: 0, max: 1 }),
    lower: input('ratio', 's1', 'Lowest state of charge used', { min: 0, max: 1 }),
  },
  result: output('energy', 'Eu', 'Usable energy'),
  expression: 'E * (s2 - s1)',
  valid: [{ of: 'upper - lower', value: ({ upper, lower }) => upper - lower, min: 0 }],
  assumes: ['Energy is spread evenly over the state of charge.'],
  source: definition,
  compute: ({ energy, upper, lower }) => energy * (upper - lower),
})

/**
 * Current as a multiple of the one that would empty the pack in an hour.
 *
 * `c = I / Q`
 *
 * - `current` (`I`, A): charge or discharge current, at least 0 A
 * - `capacity` (`Q`, Ah): capacity of what carries the current, above 0 Ah
 * - gives `c`: C-rate, in C
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * cRate({ current: '10 A', capacity: '5 Ah' })
 * // 2 C
 * // by definition (exact): 2 C
 * ```
 */
export const cRate = /*@__PURE__*/ formula({
  name: 'cRate',
  title: 'C-rate',
  inputs: {
    current: input('current', 'I', 'Charge or discharge current', { min: 0 }),
    capacity: input('charge', 'Q', 'Capacity of what carries the current', { above: 0 }),
  },
  result: output('cRate', 'c', 'C-rate'),
  expression: 'I / Q',
  source: definition,
  compute: ({ current, capacity }) => current / capacity,
})

/**
 * Voltage at the terminals of a pack under load: it sags on discharge and rises on charge (a negative current).
 *
 * `Vt = V - I * R`
 *
 * - `openCircuit` (`V`, V): open-circuit voltage, at least 0 V
 * - `current` (`I`, A): current, positive on discharge
 * - `resistance` (`R`, mΩ): resistance of the pack, at least 0 mΩ
 * - gives `Vt`: terminal voltage, in V
 * - holds where openCircuit - current * resistance is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * terminalVoltage({ openCircuit: '345.6 V', current: '100 A', resistance: '640 mΩ' })
 * // 281.6 V
 * // by definition (exact): 281.6 V
 * ```
 */
export const terminalVoltage = /*@__PURE__*/ formula({
  name: 'terminalVoltage',
  title: 'Terminal voltage under load',
  inputs: {
    openCircuit: input('voltage', 'V', 'Open-circuit voltage', { min: 0 }),
    current: input('current', 'I', 'Current, positive on discharge'),
    resistance: input('resistance', 'R', 'Resistance of the pack', { min: 0 }),
  },
  result: output('voltage', 'Vt', 'Terminal voltage'),
  expression: 'V - I * R',
  valid: [
    {
      of: 'openCircuit - current * resistance',
      kind: 'voltage',
      value: ({ openCircuit, current, resistance }) => openCircuit - current * resistance,
      min: 0,
      otherwise: ({ openCircuit, current, resistance }) =>
        `the pack cannot deliver ${amperes(current)}: shorted, it gives ${amperes(openCircuit / resistance)}`,
    },
  ],
  source: definition,
  compute: ({ openCircuit, current, resistance }) => openCircuit - current * resistance,
})

/**
 * Current at which a pack delivers a power at its terminals, negative when the power is negative (charging). Of the
 * two currents that would do, it is the lesser, with the higher voltage and the smaller loss. It equals (V − √(V² −
 * 4PR)) / 2R, written so that a small resistance costs no digits and none may be given.
 *
 * `I = 2 * P / (V * (1 + sqrt(1 - 4 * P * R / V^2)))`
 *
 * - `openCircuit` (`V`, V): open-circuit voltage, above 0 V
 * - `resistance` (`R`, mΩ): resistance of the pack, at least 0 mΩ
 * - `power` (`P`, kW): power at the terminals, positive on discharge
 * - gives `I`: current, positive on discharge, in A
 * - holds where power as a share of the most that the pack can deliver, openCircuit^2 / (4 * resistance) is at most
 *   1.000000000001
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * currentForPower({ openCircuit: '12 V', resistance: '100 mΩ', power: '200 W' })
 * // 20 A
 * // OpenStax, College Physics, example 21.2 (from memory): 20 A
 * ```
 */
export const currentForPower = /*@__PURE__*/ formula({
  name: 'currentForPower',
  title: 'Current for a power',
  inputs: {
    openCircuit: input('voltage', 'V', 'Open-circuit voltage', { above: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the pack', { min: 0 }),
    power: input('power', 'P', 'Power at the terminals, positive on discharge'),
  },
  result: output('current', 'I', 'Current, positive on discharge'),
  expression: '2 * P / (V * (1 + sqrt(1 - 4 * P * R / V^2)))',
  valid: [
    {
      of: 'power as a share of the most that the pack can deliver, openCircuit^2 / (4 * resistance)',
      value: ({ openCircuit, resistance, power }) => (4 * power * resistance) / openCircuit ** 2,
      max: 1 + ROUNDING,
      otherwise: ({ openCircuit, resistance, power }) =>
        `the pack cannot deliver ${kilowatts(power)}: at most ${kilowatts(openCircuit ** 2 / (4 * resistance))}`,
    },
  ],
  source: definition,
  // At the most power, rounding may leave a little less than zero under the root.
  compute: ({ openCircuit, resistance, power }) =>
    (2 * power) / (openCircuit * (1 + Math.sqrt(Math.max(0, 1 - (4 * power * resistance) / openCircuit ** 2)))),
})

function amperes(value: number): string {
  return String(quantity('current', value, 'A'))
}

function kilowatts(watts: number): string {
  return String(quantity('power', watts, 'W').as('kW'))
}

/**
 * Most power that a pack can deliver at its terminals, with half the open-circuit voltage left there and as much heat
 * inside the pack as power outside. No pack may be used so: it marks the end of what is possible.
 *
 * `P = V^2 / (4 * R)`
 *
 * - `openCircuit` (`V`, V): open-circuit voltage, at least 0 V
 * - `resistance` (`R`, mΩ): resistance of the pack, above 0 mΩ
 * - gives `P`: most power at the terminals, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * maximumPower({ openCircuit: '12 V', resistance: '500 mΩ' })
 * // 0.072 kW
 * // OpenStax, College Physics, example 21.2 (from memory): 72 W
 * ```
 */
export const maximumPower = /*@__PURE__*/ formula({
  name: 'maximumPower',
  title: 'Most power that a pack can deliver',
  inputs: {
    openCircuit: input('voltage', 'V', 'Open-circuit voltage', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the pack', { above: 0 }),
  },
  result: output('power', 'P', 'Most power at the terminals'),
  expression: 'V^2 / (4 * R)',
  source: definition,
  compute: ({ openCircuit, resistance }) => openCircuit ** 2 / (4 * resistance),
})

/**
 * Power that a pack delivers with its terminals at a voltage floor, such as the controller's or the cells' lower
 * limit. It is the most that the floor allows as long as the floor is at least half the open-circuit voltage.
 *
 * `P = Vf * (V - Vf) / R`
 *
 * - `openCircuit` (`V`, V): open-circuit voltage, at least 0 V
 * - `floor` (`Vf`, V): lowest voltage allowed at the terminals, at least 0 V
 * - `resistance` (`R`, mΩ): resistance of the pack, above 0 mΩ
 * - gives `P`: power at the terminals, in kW
 * - holds where openCircuit - floor is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * powerAtFloor({ openCircuit: '12 V', floor: '10 V', resistance: '100 mΩ' })
 * // 0.2 kW
 * // OpenStax, College Physics, example 21.2 (from memory): 200 W
 * ```
 */
export const powerAtFloor = /*@__PURE__*/ formula({
  name: 'powerAtFloor',
  title: 'Power at a voltage floor',
  inputs: {
    openCircuit: input('voltage', 'V', 'Open-circuit voltage', { min: 0 }),
    floor: input('voltage', 'Vf', 'Lowest voltage allowed at the terminals', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the pack', { above: 0 }),
  },
  result: output('power', 'P', 'Power at the terminals'),
  expression: 'Vf * (V - Vf) / R',
  valid: [
    { of: 'openCircuit - floor', kind: 'voltage', value: ({ openCircuit, floor }) => openCircuit - floor, min: 0 },
  ],
  source: definition,
  compute: ({ openCircuit, floor, resistance }) => (floor * (openCircuit - floor)) / resistance,
})

/**
 * Heat that a current makes in a resistance. For a current that varies, give its root mean square.
 *
 * `P = I^2 * R`
 *
 * - `current` (`I`, A): steady or root-mean-square current
 * - `resistance` (`R`, mΩ): resistance, at least 0 mΩ
 * - gives `P`: heat, in W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * jouleHeat({ current: '20 A', resistance: '100 mΩ' })
 * // 40 W
 * // by definition (exact): 40 W
 * ```
 */
export const jouleHeat = /*@__PURE__*/ formula({
  name: 'jouleHeat',
  title: 'Heat in a resistance',
  inputs: {
    current: input('current', 'I', 'Steady or root-mean-square current'),
    resistance: input('resistance', 'R', 'Resistance', { min: 0 }),
  },
  result: output('power', 'P', 'Heat', 'W'),
  expression: 'I^2 * R',
  source: definition,
  compute: ({ current, resistance }) => current ** 2 * resistance,
})

/**
 * Energy per mass. A pack has less than its cells, by the mass of housings, links and cooling.
 *
 * `e = E / m`
 *
 * - `energy` (`E`, kWh): energy, at least 0 kWh
 * - `mass` (`m`, kg): mass that carries it, above 0 kg
 * - gives `e`: specific energy, in Wh/kg
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * specificEnergy({ energy: '24 kWh', mass: '150 kg' })
 * // 160 Wh/kg
 * // by definition (exact): 160 Wh/kg
 * ```
 */
export const specificEnergy = /*@__PURE__*/ formula({
  name: 'specificEnergy',
  title: 'Specific energy',
  inputs: {
    energy: input('energy', 'E', 'Energy', { min: 0 }),
    mass: input('mass', 'm', 'Mass that carries it', { above: 0 }),
  },
  result: output('specificEnergy', 'e', 'Specific energy'),
  expression: 'E / m',
  source: definition,
  compute: ({ energy, mass }) => energy / mass,
})

/**
 * Current at which the terminals of a pack stand at a voltage: the most that a voltage limit allows.
 *
 * `I = (V - Vt) / R`
 *
 * - `openCircuit` (`V`, V): open-circuit voltage, at least 0 V
 * - `terminal` (`Vt`, V): voltage at the terminals, at least 0 V
 * - `resistance` (`R`, mΩ): resistance of the pack, above 0 mΩ
 * - gives `I`: current, positive on discharge, in A
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * currentAtVoltage({ openCircuit: '12 V', terminal: '10 V', resistance: '100 mΩ' })
 * // 20 A
 * // OpenStax, College Physics, example 21.2 (from memory): 20 A
 * ```
 */
export const currentAtVoltage = /*@__PURE__*/ formula({
  name: 'currentAtVoltage',
  title: 'Current at a terminal voltage',
  inputs: {
    openCircuit: input('voltage', 'V', 'Open-circuit voltage', { min: 0 }),
    terminal: input('voltage', 'Vt', 'Voltage at the terminals', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the pack', { above: 0 }),
  },
  result: output('current', 'I', 'Current, positive on discharge'),
  expression: '(V - Vt) / R',
  source: definition,
  compute: ({ openCircuit, terminal, resistance }) => (openCircuit - terminal) / resistance,
})

/**
 * Power at the terminals of a pack at a current.
 *
 * `P = U * I`
 *
 * - `voltage` (`U`, V): voltage at the terminals, at least 0 V
 * - `current` (`I`, A): current, positive on discharge
 * - gives `P`: power at the terminals, positive on discharge, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * terminalPower({ voltage: '10 V', current: '20 A' })
 * // 0.2 kW
 * // OpenStax, College Physics, example 21.2 (from memory): 200 W
 * ```
 */
export const terminalPower = /*@__PURE__*/ formula({
  name: 'terminalPower',
  title: 'Power at the terminals',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage at the terminals', { min: 0 }),
    current: input('current', 'I', 'Current, positive on discharge'),
  },
  result: output('power', 'P', 'Power at the terminals, positive on discharge'),
  expression: 'U * I',
  source: definition,
  compute: ({ voltage, current }) => voltage * current,
})
