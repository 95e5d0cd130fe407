/**
 * What a coolant carries.
 *
 * Rests on the heat balance of a steady flow.
 */
import { definition, formula, input, output } from '../formula/index.js'

/**
 * Flow of a coolant that carries off a heat with a given rise of its temperature. Half glycol needs about a sixth
 * more flow by volume than water.
 *
 * `q = Q / (rho * c * dT)`
 *
 * - `heat` (`Q`, kW): heat to carry off, at least 0 kW
 * - `density` (`rho`, kg/m³): density of the coolant, above 0 kg/m³
 * - `specificHeat` (`c`, J/(kg·K)): specific heat of the coolant, above 0 J/(kg·K)
 * - `rise` (`dT`, K): rise of the temperature of the coolant, above 0 K
 * - gives `q`: coolant flow, in L/min
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * coolantFlow({ heat: '5 kW', density: '992.216 kg/m³', specificHeat: '4179.4 J/(kg·K)', rise: '5 K' })
 * // 14.47 L/min
 * // IAPWS, properties of water at 40 °C (recomputed): 14.469 L/min
 * ```
 */
export const coolantFlow = /*@__PURE__*/ formula({
  name: 'coolantFlow',
  title: 'Coolant flow for a heat',
  inputs: {
    heat: input('power', 'Q', 'Heat to carry off', { min: 0 }),
    density: input('density', 'rho', 'Density of the coolant', { above: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat of the coolant', { above: 0 }),
    rise: input('temperatureDifference', 'dT', 'Rise of the temperature of the coolant', { above: 0 }),
  },
  result: output('volumeFlow', 'q', 'Coolant flow'),
  expression: 'Q / (rho * c * dT)',
  source: definition,
  compute: ({ heat, density, specificHeat, rise }) => heat / (density * specificHeat * rise),
})
