/**
 * Where a coolant freezes and boils.
 *
 * Rests on Antoine's equation for water, and on the ASHRAE Handbook for where glycol freezes; where it boils is from memory.
 */
import { cite, constant, formula, input, output } from '../formula/index.js'
import { choice } from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'

/** A coolant with a table of properties. */
export type Coolant =
  | 'water'
  | 'ethylene glycol 30 %'
  | 'ethylene glycol 40 %'
  | 'ethylene glycol 50 %'
  | 'propylene glycol 30 %'
  | 'propylene glycol 40 %'
  | 'propylene glycol 50 %'

/** A coolant as it is written; glycol by volume. @internal */
export const coolantField = /*@__PURE__*/ choice('Coolant, glycol by volume', [
  'water',
  'ethylene glycol 30 %',
  'ethylene glycol 40 %',
  'ethylene glycol 50 %',
  'propylene glycol 30 %',
  'propylene glycol 40 %',
  'propylene glycol 50 %',
])

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
interface Phases {
  readonly freezes: Quantity<'temperature'>
  readonly boilsBy: number
}

/**
 * Where each coolant freezes and boils. Glycol freezes as the table of the ASHRAE Handbook, Fundamentals (2001), has it
 * between its rows; by how many kelvins it boils above water is from memory, rounded down.
 * @internal
 */
export const phasesOf: { readonly [name in Coolant]: Phases } = /*@__PURE__*/ (() => {
  const phases = (freezes: number, boilsBy: number): Phases => ({
    freezes: quantity('temperature', freezes, '°C'),
    boilsBy,
  })
  return {
    'water': phases(0, 0),
    'ethylene glycol 30 %': phases(-15.7, 4),
    'ethylene glycol 40 %': phases(-24.8, 5),
    'ethylene glycol 50 %': phases(-37, 7),
    'propylene glycol 30 %': phases(-13.1, 2),
    'propylene glycol 40 %': phases(-21.5, 3),
    'propylene glycol 50 %': phases(-33.7, 5),
  }
})()

/** Where a coolant boils under an absolute pressure. @internal */
export function boilsAt(coolant: Coolant, pressure: Quantity<'pressure'>): Quantity<'temperature'> {
  const rise = quantity('temperatureDifference', phasesOf[coolant].boilsBy, 'K')
  return waterBoilingPoint({ pressure }).plus(rise)
}
