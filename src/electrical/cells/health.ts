/**
 * What cells still hold, how much of a charge comes back, what they resist, and how long balancing takes.
 *
 * Rests on definitions; on IEC 61960-3 for resistance by a step of the current.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'

/**
 * What is left of the capacity that cells had when they were new. Compare like with like: a capacity measured faster
 * or colder than the rated one is less, and no sign of age.
 *
 * `H = Q / Q0`
 *
 * - `capacity` (`Q`, Ah): capacity now, at least 0 Ah
 * - `newCapacity` (`Q0`, Ah): capacity when new, at the same current and temperature, above 0 Ah
 * - gives `H`: share of the capacity that is left, in %
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * stateOfHealth({ capacity: '72.6 Ah', newCapacity: '80 Ah' })
 * // 90.75 %
 * // by definition (exact): 90.75 %
 * ```
 */
export const stateOfHealth = /*@__PURE__*/ formula({
  name: 'stateOfHealth',
  title: 'State of health',
  inputs: {
    capacity: input('charge', 'Q', 'Capacity now', { min: 0 }),
    newCapacity: input('charge', 'Q0', 'Capacity when new, at the same current and temperature', { above: 0 }),
  },
  result: output('ratio', 'H', 'Share of the capacity that is left', '%'),
  expression: 'Q / Q0',
  source: definition,
  compute: ({ capacity, newCapacity }) => capacity / newCapacity,
})

/**
 * Capacity from the charge that flows between two rests whose states of charge are known, such as from the voltage at
 * rest. The nearer the two states, the less it says: an error of two points at each end is 6 % over half the charge,
 * and 28 % over a tenth of it. Where the voltage is flat, as it is of iron phosphate, a state is hardly known at all.
 *
 * `Q = dQ / (s2 - s1)`
 *
 * - `charge` (`dQ`, Ah): charge that flowed out between the two, at least 0 Ah
 * - `upper` (`s2`, a plain number): state of charge at the rest before, at least 0 and at most 1
 * - `lower` (`s1`, a plain number): state of charge at the rest after, at least 0 and at most 1
 * - gives `Q`: capacity, in Ah
 * - holds where upper - lower is above 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * capacityBetweenRests({ charge: '30 Ah', upper: '85 %', lower: '35 %' })
 * // 60 Ah
 * // by definition (exact): 60 Ah
 * ```
 */
export const capacityBetweenRests = /*@__PURE__*/ formula({
  name: 'capacityBetweenRests',
  title: 'Capacity from two rests',
  inputs: {
    charge: input('charge', 'dQ', 'Charge that flowed out between the two', { min: 0 }),
    upper: input('ratio', 's2', 'State of charge at the rest before', { min: 0, max: 1 }),
    lower: input('ratio', 's1', 'State of charge at the rest after', { min: 0, max: 1 }),
  },
  result: output('charge', 'Q', 'Capacity'),
  expression: 'dQ / (s2 - s1)',
  valid: [{ of: 'upper - lower', value: ({ upper, lower }) => upper - lower, above: 0 }],
  source: definition,
  compute: ({ charge, upper, lower }) => charge / (upper - lower),
})

/**
 * How long it takes to bleed the fullest cell down to the others.
 *
 * `t = Q * ds / Ib`
 *
 * - `spread` (`ds`, a plain number): state of charge of the fullest cell above the emptiest, at least 0 and at most 1
 * - `capacity` (`Q`, Ah): capacity of a cell, with those in parallel with it, at least 0 Ah
 * - `current` (`Ib`, A): current that is bled from the cell, above 0 A
 * - gives `t`: time to balance, in h
 * - Assumes: the current is bled all the time: a monitor that bleeds only near full takes as much longer
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * balanceTime({ spread: '2 %', capacity: '60 Ah', current: '0.1 A' })
 * // 12 h
 * // by definition (exact): 12 h
 * ```
 */
export const balanceTime = /*@__PURE__*/ formula({
  name: 'balanceTime',
  title: 'Time to balance cells',
  inputs: {
    spread: input('ratio', 'ds', 'State of charge of the fullest cell above the emptiest', { min: 0, max: 1 }),
    capacity: input('charge', 'Q', 'Capacity of a cell, with those in parallel with it', { min: 0 }),
    current: input('current', 'Ib', 'Current that is bled from the cell', { above: 0 }),
  },
  result: output('time', 't', 'Time to balance', 'h'),
  expression: 'Q * ds / Ib',
  assumes: ['The current is bled all the time: a monitor that bleeds only near full takes as much longer.'],
  source: definition,
  compute: ({ spread, capacity, current }) => (capacity * spread) / current,
})

/**
 * How much of a charge comes out again between the same two states. That of sound lithium cells is above 99 %: less
 * means that the states differ, or that the two currents were not measured alike.
 *
 * `eta = Qd / Qc`
 *
 * - `discharged` (`Qd`, Ah): charge that came out, at least 0 Ah
 * - `charged` (`Qc`, Ah): charge that went in, above 0 Ah
 * - gives `eta`: share of the charge that comes out, in %
 * - Assumes: the cells end in the state of charge in which they began
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * coulombicEfficiency({ discharged: '39.84 Ah', charged: '40 Ah' })
 * // 99.6 %
 * // by definition (exact): 99.6 %
 * ```
 */
export const coulombicEfficiency = /*@__PURE__*/ formula({
  name: 'coulombicEfficiency',
  title: 'Coulombic efficiency',
  inputs: {
    discharged: input('charge', 'Qd', 'Charge that came out', { min: 0 }),
    charged: input('charge', 'Qc', 'Charge that went in', { above: 0 }),
  },
  result: output('ratio', 'eta', 'Share of the charge that comes out', '%'),
  expression: 'Qd / Qc',
  assumes: ['The cells end in the state of charge in which they began.'],
  source: definition,
  compute: ({ discharged, charged }) => discharged / charged,
})

/**
 * How much of the energy of a charge comes out again between the same two states. It falls with the current.
 *
 * `eta = Ed / Ec`
 *
 * - `discharged` (`Ed`, kWh): energy that came out, at least 0 kWh
 * - `charged` (`Ec`, kWh): energy that went in, above 0 kWh
 * - gives `eta`: share of the energy that comes out, in %
 * - Assumes: the cells end in the state of charge in which they began
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * roundTripEfficiency({ discharged: '1.68 kWh', charged: '1.75 kWh' })
 * // 96 %
 * // by definition (exact): 96 %
 * ```
 */
export const roundTripEfficiency = /*@__PURE__*/ formula({
  name: 'roundTripEfficiency',
  title: 'Round trip of energy',
  inputs: {
    discharged: input('energy', 'Ed', 'Energy that came out', { min: 0 }),
    charged: input('energy', 'Ec', 'Energy that went in', { above: 0 }),
  },
  result: output('ratio', 'eta', 'Share of the energy that comes out', '%'),
  expression: 'Ed / Ec',
  assumes: ['The cells end in the state of charge in which they began.'],
  source: definition,
  compute: ({ discharged, charged }) => discharged / charged,
})

/**
 * Resistance from a step of the current and the change of the voltage that it brings. It grows with the time after
 * the step at which the voltage is read: what is read at once is the ohmic part alone.
 *
 * `R = dU / dI`
 *
 * - `voltage` (`dU`, V): change of the voltage, at least 0 V
 * - `current` (`dI`, A): step of the current, above 0 A
 * - gives `R`: resistance at that time after the step, in mΩ
 * - Assumes: the state of charge hardly changes in the time
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 61960-3, internal resistance by direct current.
 *
 * @example
 * ```ts
 * stepResistance({ voltage: '0.56 V', current: '40 A' })
 * // 14 mΩ
 * // Ohm's law (exact): 14 mΩ
 * ```
 */
export const stepResistance = /*@__PURE__*/ formula({
  name: 'stepResistance',
  title: 'Resistance by a step of the current',
  inputs: {
    voltage: input('voltage', 'dU', 'Change of the voltage', { min: 0 }),
    current: input('current', 'dI', 'Step of the current', { above: 0 }),
  },
  result: output('resistance', 'R', 'Resistance at that time after the step'),
  expression: 'dU / dI',
  assumes: ['The state of charge hardly changes in the time.'],
  source: cite('IEC 61960-3', 'internal resistance by direct current'),
  compute: ({ voltage, current }) => voltage / current,
})
