/**
 * Where a coolant freezes and boils.
 *
 * Rests on Antoine's equation for water; half glycol from memory.
 */
import { cite, constant, formula, input, output } from '../formula/index.js'
import { choice } from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'

/** A coolant with a table of properties. */
export type Coolant = 'water' | 'ethylene glycol 50 %'

/** A coolant as it is written. @internal */
export const coolantField = /*@__PURE__*/ choice('Coolant', ['water', 'ethylene glycol 50 %'])

/**
 * Temperature at which water boils under a pressure.
 *
 * `T = B / (A - log10(p / p1)) + C`
 *
 * - `pressure` (`p`, kPa): absolute pressure, at least 20 kPa and at most 300 kPa
 * - gives `T`: boiling point, in °C
 * - `A` = 8.07131: antoine coefficient of water (from memory)
 * - `B` = 1730.63 K: antoine coefficient of water (from memory)
 * - `C` = 39.724 K: antoine coefficient of water, counted from absolute zero (from memory)
 * - `p1` = 133.322 Pa: a millimetre of mercury (definition)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Antoine's equation, coefficients for 1 °C to 100 °C, from memory; within 0.3 K up to 133 °C.
 *
 * @example
 * ```ts
 * waterBoilingPoint({ pressure: '101.325 kPa' })
 * // 100 °C
 * // IAPWS-95, worked out with an open-source library (read): 99.97 °C
 * ```
 */
export const waterBoilingPoint = /*@__PURE__*/ formula({
  name: 'waterBoilingPoint',
  title: 'Boiling point of water',
  inputs: { pressure: input('pressure', 'p', 'Absolute pressure', { min: '20 kPa', max: '300 kPa' }) },
  result: output('temperature', 'T', 'Boiling point'),
  expression: 'B / (A - log10(p / p1)) + C',
  constants: {
    A: constant('ratio', 8.07131, 'Antoine coefficient of water', cite('from memory')),
    B: constant('temperatureDifference', '1730.63 K', 'Antoine coefficient of water', cite('from memory')),
    C: constant(
      'temperatureDifference',
      '39.724 K',
      'Antoine coefficient of water, counted from absolute zero',
      cite('from memory'),
    ),
    p1: constant('pressure', '133.322 Pa', 'A millimetre of mercury', cite('definition')),
  },
  source: cite("Antoine's equation", 'coefficients for 1 °C to 100 °C, from memory; within 0.3 K up to 133 °C'),
  compute: ({ pressure }, { A, B, C, p1 }) => B / (A - Math.log10(pressure / p1)) + C,
})

/** Where a coolant freezes, and by how much more than water it must be heated to boil. @internal */
export const phasesOf: {
  readonly [name in Coolant]: { readonly freezes: Quantity<'temperature'>; readonly boilsBy: number }
} = /*@__PURE__*/ (() => ({
  water: { freezes: quantity('temperature', '0 °C'), boilsBy: 0 },
  // Half glycol boils at 107 °C under the air, from memory.
  'ethylene glycol 50 %': { freezes: quantity('temperature', '-37 °C'), boilsBy: 7 },
}))()
