/**
 * Dry air: its properties by temperature, for convection, radiators and cabins.
 *
 * Rests on the equations of Lemmon and others (2000) for density and of Lemmon and Jacobsen (2004) for viscosity and
 * conductivity, and on Incropera, Fundamentals of Heat and Mass Transfer, Table A.4, for the specific heat.
 */
import { cite } from '../../formula/index.js'
import { given, procedure } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { columnAt, type PropertyTable, refuseOutside } from '../property-table.js'

/** The table behind {@link airProperties}, with its source and range. */
export const dryAir: PropertyTable = {
  fluid: 'dry air at 101.325 kPa',
  source: /*@__PURE__*/ cite(
    'Lemmon and others (2000), Lemmon and Jacobsen (2004)',
    'worked out with the open-source library chemicals, at 200 K and 225 K from the same equations written down from ' +
      'memory; specific heat from Incropera, Table A.4, from memory, midway values interpolated',
  ),
  temperatureUnit: 'K',
  columns: ['density, kg/m³', 'viscosity, 1e-5 Pa·s', 'thermal conductivity, W/(m·K)', 'specific heat, J/(kg·K)'],
  rows: [
    [200, 1.7688, 1.3334, 0.0185, 1007],
    [225, 1.5709, 1.4714, 0.02057, 1006.5],
    [250, 1.413, 1.6038, 0.02256, 1006],
    [275, 1.284, 1.7311, 0.0245, 1006.5],
    [300, 1.1767, 1.8537, 0.02638, 1007],
    [325, 1.086, 1.9722, 0.02822, 1008],
    [350, 1.0083, 2.0867, 0.03, 1009],
    [375, 0.941, 2.1977, 0.03175, 1011.5],
    [400, 0.8821, 2.3055, 0.03345, 1014],
    [450, 0.784, 2.5124, 0.03676, 1021],
    [500, 0.7056, 2.709, 0.03994, 1030],
  ],
}

/** What is usual of the air outside. @internal */
export const outdoors = { usual: ['-20 °C', '40 °C', 'meteorology'] } as const

/** What air is like at a temperature, at the pressure of the standard atmosphere. */
export interface AirProperties {
  readonly density: Quantity<'density'>
  readonly specificHeat: Quantity<'specificHeat'>
  readonly viscosity: Quantity<'dynamicViscosity'>
  readonly conductivity: Quantity<'thermalConductivity'>
  /** Viscosity over density. */
  readonly kinematicViscosity: Quantity<'kinematicViscosity'>
  /** Conductivity over density times specific heat. */
  readonly diffusivity: Quantity<'thermalDiffusivity'>
  /** Thermal expansion: that of an ideal gas, 1 over the absolute temperature. */
  readonly expansion: Quantity<'temperatureCoefficient'>
  /** Prandtl number: kinematic viscosity over diffusivity. */
  readonly prandtl: Quantity<'ratio'>
}

/** The properties of air at kelvins within the table, as SI numbers. @internal */
export function airAt(kelvins: number) {
  // The volume of a gas rises straight with its temperature.
  const density = columnAt(dryAir, 0, kelvins, 'reciprocal')
  const viscosity = columnAt(dryAir, 1, kelvins, 'straight') / 1e5
  const conductivity = columnAt(dryAir, 2, kelvins, 'straight')
  const specificHeat = columnAt(dryAir, 3, kelvins, 'straight')
  return {
    density,
    specificHeat,
    viscosity,
    conductivity,
    kinematicViscosity: viscosity / density,
    diffusivity: conductivity / (density * specificHeat),
    expansion: 1 / kelvins,
    prandtl: (viscosity * specificHeat) / conductivity,
  }
}

/**
 * Gives the properties of dry air at the pressure of the standard atmosphere, interpolated in {@link dryAir}. For
 * convection from a surface take the film temperature, midway between surface and air.
 *
 * Density falls with altitude as the pressure does, by about 11 % at 1000 m; viscosity, conductivity and specific heat
 * hardly change.
 *
 * Answers: what is dry air like at a temperature?
 *
 * - `temperature`: temperature of the air, from -73.15 °C to 226.8 °C, in °C
 * - always assumed: the air is dry and at the pressure of the standard atmosphere
 *
 * @throws InputError for a temperature outside the table, with its range and source; nothing is extrapolated.
 * Source: Lemmon and others (2000), Lemmon and Jacobsen (2004), worked out with the open-source library chemicals, at
 * 200 K and 225 K from the same equations written down from memory; specific heat from Incropera, Table A.4, from
 * memory, midway values interpolated.
 *
 * @example
 * ```ts
 * const { density, prandtl } = airProperties({ temperature: '20 °C' })
 * String(density) // '1.204 kg/m³'
 * String(prandtl) // '0.7085'
 * ```
 */
export const airProperties = /*@__PURE__*/ procedure({
  name: 'airProperties',
  title: 'Properties of dry air',
  answers: 'What is dry air like at a temperature?',
  input: { temperature: given('temperature', 'Temperature of the air, from -73.15 °C to 226.8 °C') },
  source: [dryAir.source],
  assumes: ['The air is dry and at the pressure of the standard atmosphere.'],
  work: ({ temperature }): AirProperties => {
    refuseOutside('airProperties', 'temperature', dryAir, temperature)
    const si = airAt(temperature.si)
    return {
      density: quantity('density', si.density, 'kg/m³'),
      specificHeat: quantity('specificHeat', si.specificHeat, 'J/(kg·K)'),
      viscosity: quantity('dynamicViscosity', si.viscosity, 'Pa·s').as('mPa·s'),
      conductivity: quantity('thermalConductivity', si.conductivity, 'W/(m·K)'),
      kinematicViscosity: quantity('kinematicViscosity', si.kinematicViscosity, 'm²/s').as('mm²/s'),
      diffusivity: quantity('thermalDiffusivity', si.diffusivity, 'm²/s').as('mm²/s'),
      expansion: quantity('temperatureCoefficient', si.expansion, '1/K'),
      prandtl: quantity('ratio', si.prandtl),
    }
  },
})
