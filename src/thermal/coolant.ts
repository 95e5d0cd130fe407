/**
 * What a coolant carries.
 *
 * Rests on the heat balance of a steady flow.
 */
import { definition, formula, input, output } from '../formula/index.js'

/**
 * Flow of a coolant that carries off a heat with a given rise of its temperature. Half glycol needs about a sixth
 * more flow by volume than water.
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
