/**
 * Coolants: their properties by temperature, and the heat that a stream carries.
 *
 * The tables rest on the formulations of the IAPWS for water and on the ASHRAE Handbook for glycol in water; the rest is
 * the heat balance of a steady flow.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'
import { given, procedure } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { boilsAt, type Coolant, coolantField, phasesOf } from '../boiling.js'
import { columnAt, type PropertyTable, refuseOutside } from '../property-table.js'
import { coolantColumns, glycols } from './glycol.js'

/**
 * The tables behind {@link coolantProperties}: the rows as published, each with its source and its range. Glycol is
 * mixed by volume and inhibited: half ethylene glycol is 52.4 % by mass.
 */
export const coolants: { readonly [name in Coolant]: PropertyTable } = /*@__PURE__*/ (() => ({
  'water': {
    fluid: 'water at 101.325 kPa',
    source: /*@__PURE__*/ cite(
      'IAPWS',
      'IAPWS-95, 2008 viscosity and 2011 conductivity formulations, worked out with the open-source library chemicals',
    ),
    temperatureUnit: '°C',
    columns: coolantColumns,
    rows: [
      [0.01, 999.844, 4219.4, 1.7911, 0.5557],
      [5, 999.967, 4205.0, 1.5182, 0.5678],
      [10, 999.702, 4195.2, 1.3059, 0.5788],
      [20, 998.207, 4184.1, 1.0016, 0.598],
      [30, 995.649, 4179.8, 0.7972, 0.6144],
      [40, 992.216, 4179.4, 0.6527, 0.6285],
      [50, 988.035, 4181.3, 0.5465, 0.6406],
      [60, 983.196, 4185.0, 0.466, 0.651],
      [70, 977.765, 4190.1, 0.4035, 0.6598],
      [80, 971.79, 4196.8, 0.3541, 0.667],
      [90, 965.31, 4205.2, 0.3142, 0.6728],
      [99, 959.066, 4214.5, 0.2846, 0.6768],
    ],
  },
  ...glycols,
}))()

/** What a coolant is like at a temperature. */
export interface CoolantProperties {
  readonly density: Quantity<'density'>
  readonly specificHeat: Quantity<'specificHeat'>
  readonly viscosity: Quantity<'dynamicViscosity'>
  readonly conductivity: Quantity<'thermalConductivity'>
}

/** What a coolant is like at a temperature, and between which temperatures it is a liquid. */
export interface CoolantState extends CoolantProperties {
  /** Where its first crystals form. */
  readonly freezes: Quantity<'temperature'>
  /** Where it boils under the pressure of the standard atmosphere, in an open tank. */
  readonly boils: Quantity<'temperature'>
}

/** The properties of a coolant at kelvins within its table, as SI numbers. @internal */
export function coolantAt(coolant: Coolant, kelvins: number) {
  const table = coolants[coolant]
  return {
    density: columnAt(table, 0, kelvins, 'straight'),
    specificHeat: columnAt(table, 1, kelvins, 'straight'),
    // Viscosity falls by nearly the same factor from row to row.
    viscosity: columnAt(table, 2, kelvins, 'logarithm') / 1000,
    conductivity: columnAt(table, 3, kelvins, 'straight'),
  }
}

/**
 * Gives the properties of a coolant at a temperature, interpolated in {@link coolants}, viscosity in its logarithm, and
 * where it freezes and boils.
 *
 * Glycol is by volume, inhibited. Half ethylene glycol at 20 °C is four times as viscous as water, half propylene glycol
 * seven times. Other concentrations have no table here, and the two glycols do not stand for each other. Other editions
 * and other makers differ: by 1 % in density, 3 % in specific heat and conductivity, and by 15 % in viscosity, more next to
 * freezing. Where glycol boils is from memory.
 *
 * Answers: what is a coolant like at a temperature?
 *
 * - `coolant`: coolant, glycol by volume, 'water' or 'ethylene glycol 30 %' or 'ethylene glycol 40 %' or 'ethylene
 *   glycol 50 %' or 'propylene glycol 30 %' or 'propylene glycol 40 %' or 'propylene glycol 50 %'
 * - `temperature`: temperature of the coolant, within its table, in °C
 *
 * @throws InputError for a temperature outside the table, with its range and source; nothing is extrapolated.
 * Source: IAPWS, IAPWS-95, 2008 viscosity and 2011 conductivity formulations, worked out with the open-source library
 * chemicals; ASHRAE Handbook, Fundamentals (2001), properties of aqueous ethylene glycol, read in an open data file;
 * ASHRAE Handbook, Fundamentals (2001), properties of aqueous propylene glycol, read in an open data file.
 *
 * @example
 * ```ts
 * const { viscosity, freezes } = coolantProperties({ coolant: 'propylene glycol 50 %', temperature: '40 °C' })
 * String(viscosity) // '3.11 mPa·s'
 * String(freezes) // '-33.7 °C'
 * ```
 */
export const coolantProperties = /*@__PURE__*/ procedure({
  name: 'coolantProperties',
  title: 'Properties of a coolant',
  answers: 'What is a coolant like at a temperature?',
  input: {
    coolant: coolantField,
    temperature: given('temperature', 'Temperature of the coolant, within its table'),
  },
  source: /*@__PURE__*/ (() => [
    coolants.water.source,
    coolants['ethylene glycol 50 %'].source,
    coolants['propylene glycol 50 %'].source,
  ])(),
  work: ({ coolant, temperature }): CoolantState => {
    refuseOutside('coolantProperties', 'temperature', coolants[coolant], temperature)
    return {
      ...asQuantities(coolantAt(coolant, temperature.si)),
      freezes: phasesOf[coolant].freezes,
      boils: boilsAt(coolant, quantity('pressure', '101.325 kPa')),
    }
  },
})

/** Properties with their units. @internal */
export function asQuantities(si: ReturnType<typeof coolantAt>): CoolantProperties {
  return {
    density: quantity('density', si.density, 'kg/m³'),
    specificHeat: quantity('specificHeat', si.specificHeat, 'J/(kg·K)'),
    viscosity: quantity('dynamicViscosity', si.viscosity, 'Pa·s').as('mPa·s'),
    conductivity: quantity('thermalConductivity', si.conductivity, 'W/(m·K)'),
  }
}

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

/**
 * Heat that a motor or a controller puts into its coolant, from the power that it delivers and its efficiency there.
 *
 * `Q = P * (1 - eta) / eta`
 *
 * - `power` (`P`, kW): power delivered, at least 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency at that power, above 0 and at most 1
 * - gives `Q`: heat given off, in kW
 * - Assumes: all of the loss goes into the coolant, none into the air
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * wasteHeat({ power: '15 kW', efficiency: 0.90975 })
 * // 1.488 kW
 * // Larminie and Lowry, Electric Vehicle Technology Explained, coefficients of its large motor (recomputed): 1488 W
 * ```
 */
export const wasteHeat = /*@__PURE__*/ formula({
  name: 'wasteHeat',
  title: 'Waste heat of a machine',
  inputs: {
    power: input('power', 'P', 'Power delivered', { min: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency at that power', { above: 0, max: 1 }),
  },
  result: output('power', 'Q', 'Heat given off'),
  expression: 'P * (1 - eta) / eta',
  assumes: ['All of the loss goes into the coolant, none into the air.'],
  source: definition,
  compute: ({ power, efficiency }) => (power * (1 - efficiency)) / efficiency,
})
