/**
 * Heat given off to air and to surroundings, by convection and radiation.
 *
 * Rests on S. W. Churchill and H. H. S. Chu, International Journal of Heat and Mass Transfer 18 (1975);
 * S. W. Churchill and M. Bernstein, Journal of Heat Transfer 99 (1977); and Incropera, Fundamentals of Heat and Mass
 * Transfer, chapters 1, 7 and 9. Properties of the air are those at the film temperature, midway between surface and air.
 */
import { cite, constant, definition, formula, input, output, standardGravity } from '../../formula/index.js'

/**
 * Rayleigh number, which tells how strongly a warm surface stirs the air around it. The thermal expansion of a gas is
 * 1 over its absolute temperature.
 *
 * `Ra = g0 * beta * dT * L^3 / (nu * a)`
 *
 * - `expansion` (`beta`, 1/K): thermal expansion of the fluid, at least 0 1/K
 * - `difference` (`dT`, K): surface temperature above that of the fluid, at least 0 K
 * - `length` (`L`, m): diameter of a horizontal cylinder, or height of a wall, at least 0 m
 * - `viscosity` (`nu`, mm²/s): kinematic viscosity, above 0 mm²/s
 * - `diffusivity` (`a`, m²/s): thermal diffusivity, above 0 m²/s
 * - gives `Ra`: rayleigh number, in a plain number
 * - `g0` = 9.80665 m/s²: standard acceleration of free fall (ISO 80000-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 9.
 *
 * @example
 * ```ts
 * rayleighNumber({
 *   expansion: '0.002725 1/K',
 *   difference: '142 K',
 *   length: '0.1 m',
 *   viscosity: '22.8 mm²/s',
 *   diffusivity: '32.8 mm²/s',
 * })
 * // 5074000
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 9.4 (recomputed): 5076000
 * ```
 */
export const rayleighNumber = /*@__PURE__*/ formula({
  name: 'rayleighNumber',
  title: 'Rayleigh number',
  inputs: {
    expansion: input('temperatureCoefficient', 'beta', 'Thermal expansion of the fluid', { min: 0 }),
    difference: input('temperatureDifference', 'dT', 'Surface temperature above that of the fluid', { min: 0 }),
    length: input('length', 'L', 'Diameter of a horizontal cylinder, or height of a wall', { min: 0 }),
    viscosity: input('kinematicViscosity', 'nu', 'Kinematic viscosity', { above: 0 }),
    diffusivity: input('thermalDiffusivity', 'a', 'Thermal diffusivity', { above: 0 }),
  },
  result: output('ratio', 'Ra', 'Rayleigh number'),
  expression: 'g0 * beta * dT * L^3 / (nu * a)',
  constants: { g0: standardGravity },
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 9'),
  compute: ({ expansion, difference, length, viscosity, diffusivity }, { g0 }) =>
    (g0 * expansion * difference * length ** 3) / (viscosity * diffusivity),
})

/**
 * Heat transfer coefficient that a Nusselt number stands for. The length is that on which the number was formed.
 *
 * `h = Nu * k / L`
 *
 * - `nusselt` (`Nu`, a plain number): nusselt number, at least 0
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the fluid, at least 0 W/(m·K)
 * - `length` (`L`, m): diameter of a cylinder or length of a plate, above 0 m
 * - gives `h`: heat transfer coefficient, in W/(m²·K)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * convectionCoefficient({ nusselt: 23.09, conductivity: '0.0313 W/(m·K)', length: '0.1 m' })
 * // 7.227 W/(m²·K)
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 9.4 (recomputed): 7.23 W/(m²·K)
 * ```
 */
export const convectionCoefficient = /*@__PURE__*/ formula({
  name: 'convectionCoefficient',
  title: 'Heat transfer coefficient from a Nusselt number',
  inputs: {
    nusselt: input('ratio', 'Nu', 'Nusselt number', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the fluid', { min: 0 }),
    length: input('length', 'L', 'Diameter of a cylinder or length of a plate', { above: 0 }),
  },
  result: output('heatTransferCoefficient', 'h', 'Heat transfer coefficient'),
  expression: 'Nu * k / L',
  source: definition,
  compute: ({ nusselt, conductivity, length }) => (nusselt * conductivity) / length,
})

/**
 * Mean Nusselt number of a long horizontal cylinder, such as a cable, in still air.
 *
 * `Nu = (0.6 + 0.387 * Ra^(1 / 6) / (1 + (0.559 / Pr)^(9 / 16))^(8 / 27))^2`
 *
 * - `rayleigh` (`Ra`, a plain number): rayleigh number on the diameter, at least 0 and at most 1e12
 * - `prandtl` (`Pr`, a plain number): prandtl number, above 0
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: nothing near the cylinder hinders or drives the air
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Churchill and Chu, International Journal of Heat and Mass Transfer 18 (1975) 1049.
 *
 * @example
 * ```ts
 * naturalConvectionCylinder({ rayleigh: 10000, prandtl: 0.7 })
 * // 4.366
 * // Churchill and Chu, International Journal of Heat and Mass Transfer 18 (1975) 1049 (recomputed): 4.36639
 * ```
 */
export const naturalConvectionCylinder = /*@__PURE__*/ formula({
  name: 'naturalConvectionCylinder',
  title: 'Natural convection from a horizontal cylinder',
  inputs: {
    rayleigh: input('ratio', 'Ra', 'Rayleigh number on the diameter', { min: 0, max: 1e12 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { above: 0 }),
  },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: '(0.6 + 0.387 * Ra^(1 / 6) / (1 + (0.559 / Pr)^(9 / 16))^(8 / 27))^2',
  assumes: ['Nothing near the cylinder hinders or drives the air.'],
  source: cite('Churchill and Chu, International Journal of Heat and Mass Transfer 18 (1975) 1049'),
  compute: ({ rayleigh, prandtl }) =>
    (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2,
})

/**
 * Mean Nusselt number of a wall in still air, such as the side of a battery box. The Rayleigh number is formed on its
 * height.
 *
 * `Nu = (0.825 + 0.387 * Ra^(1 / 6) / (1 + (0.492 / Pr)^(9 / 16))^(8 / 27))^2`
 *
 * - `rayleigh` (`Ra`, a plain number): rayleigh number on the height, at least 0 and at most 1e12
 * - `prandtl` (`Pr`, a plain number): prandtl number, above 0
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: the wall stands upright, has one temperature, and nothing near it hinders or drives the air
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Churchill and Chu, International Journal of Heat and Mass Transfer 18 (1975) 1323.
 *
 * @example
 * ```ts
 * naturalConvectionWall({ rayleigh: 1814000000, prandtl: 0.69 })
 * // 147.1
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 9.2 (recomputed): 147.15
 * ```
 */
export const naturalConvectionWall = /*@__PURE__*/ formula({
  name: 'naturalConvectionWall',
  title: 'Natural convection from a wall',
  inputs: {
    rayleigh: input('ratio', 'Ra', 'Rayleigh number on the height', { min: 0, max: 1e12 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { above: 0 }),
  },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: '(0.825 + 0.387 * Ra^(1 / 6) / (1 + (0.492 / Pr)^(9 / 16))^(8 / 27))^2',
  assumes: ['The wall stands upright, has one temperature, and nothing near it hinders or drives the air.'],
  source: cite('Churchill and Chu, International Journal of Heat and Mass Transfer 18 (1975) 1323'),
  compute: ({ rayleigh, prandtl }) =>
    (0.825 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2,
})

/**
 * Mean Nusselt number of a horizontal plate that is warm above or cold below: the air leaves it freely. The length is
 * its area over its edge.
 *
 * `Nu = Ra < 1e7 ? 0.54 * Ra^0.25 : 0.15 * cbrt(Ra)`
 *
 * - `rayleigh` (`Ra`, a plain number): rayleigh number on area over edge, at least 10000 and at most 1e11
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: nothing near the plate hinders or drives the air
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, equations 9.30 and 9.31, after McAdams, Lloyd and Moran.
 *
 * @example
 * ```ts
 * naturalConvectionPlateUp({ rayleigh: 1778340000 })
 * // 181.7
 * // Lloyd and Moran, Journal of Heat Transfer 96 (1974) (read): 181.731
 * ```
 */
export const naturalConvectionPlateUp = /*@__PURE__*/ formula({
  name: 'naturalConvectionPlateUp',
  title: 'Natural convection from the upper face of a warm plate',
  inputs: { rayleigh: input('ratio', 'Ra', 'Rayleigh number on area over edge', { min: 1e4, max: 1e11 }) },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: 'Ra < 1e7 ? 0.54 * Ra^0.25 : 0.15 * cbrt(Ra)',
  assumes: ['Nothing near the plate hinders or drives the air.'],
  source: cite(
    'Incropera, Fundamentals of Heat and Mass Transfer',
    'equations 9.30 and 9.31, after McAdams, Lloyd and Moran',
  ),
  compute: ({ rayleigh }) => (rayleigh < 1e7 ? 0.54 * rayleigh ** 0.25 : 0.15 * Math.cbrt(rayleigh)),
})

/**
 * Mean Nusselt number of a horizontal plate that is warm below or cold above: the air is held under it. The length is
 * its area over its edge.
 *
 * `Nu = 0.27 * Ra^0.25`
 *
 * - `rayleigh` (`Ra`, a plain number): rayleigh number on area over edge, at least 100000 and at most 1e10
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: nothing near the plate hinders or drives the air
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, equation 9.32, after McAdams.
 *
 * @example
 * ```ts
 * naturalConvectionPlateDown({ rayleigh: 1778340000 })
 * // 55.45
 * // McAdams, Heat Transmission (read): 55.446
 * ```
 */
export const naturalConvectionPlateDown = /*@__PURE__*/ formula({
  name: 'naturalConvectionPlateDown',
  title: 'Natural convection from the lower face of a warm plate',
  inputs: { rayleigh: input('ratio', 'Ra', 'Rayleigh number on area over edge', { min: 1e5, max: 1e10 }) },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: '0.27 * Ra^0.25',
  assumes: ['Nothing near the plate hinders or drives the air.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', '6th edition, equation 9.32, after McAdams'),
  compute: ({ rayleigh }) => 0.27 * rayleigh ** 0.25,
})

/**
 * Mean Nusselt number of a long cylinder across a stream.
 *
 * `Nu = 0.3 + 0.62 * sqrt(Re) * cbrt(Pr) / (1 + (0.4 / Pr)^(2 / 3))^(1 / 4) * (1 + (Re / 282000)^(5 / 8))^(4 / 5)`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number on the diameter, above 0 and at most 10000000
 * - `prandtl` (`Pr`, a plain number): prandtl number, above 0
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - holds where reynolds * prandtl is at least 0.2
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Churchill and Bernstein, Journal of Heat Transfer 99 (1977) 300.
 *
 * @example
 * ```ts
 * forcedConvectionCylinder({ reynolds: 10000, prandtl: 0.7 })
 * // 53.33
 * // Churchill and Bernstein, Journal of Heat Transfer 99 (1977) 300 (recomputed): 53.32779
 * ```
 */
export const forcedConvectionCylinder = /*@__PURE__*/ formula({
  name: 'forcedConvectionCylinder',
  title: 'Forced convection from a cylinder across a stream',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number on the diameter', { above: 0, max: 1e7 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { above: 0 }),
  },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression:
    '0.3 + 0.62 * sqrt(Re) * cbrt(Pr) / (1 + (0.4 / Pr)^(2 / 3))^(1 / 4) * (1 + (Re / 282000)^(5 / 8))^(4 / 5)',
  valid: [{ of: 'reynolds * prandtl', value: ({ reynolds, prandtl }) => reynolds * prandtl, min: 0.2 }],
  source: cite('Churchill and Bernstein, Journal of Heat Transfer 99 (1977) 300'),
  compute: ({ reynolds, prandtl }) =>
    0.3 +
    ((0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + (0.4 / prandtl) ** (2 / 3)) ** (1 / 4)) *
      (1 + (reynolds / 282000) ** (5 / 8)) ** (4 / 5),
})

/**
 * Mean Nusselt number of a flat plate along a stream: laminar up to a Reynolds number of 500 000, laminar and then
 * turbulent beyond. A rough edge or a disturbed stream turns it turbulent earlier.
 *
 * `Nu = Re > 500000 ? (0.037 * Re^0.8 - 871) * cbrt(Pr) : 0.664 * sqrt(Re) * cbrt(Pr)`
 *
 * - `reynolds` (`Re`, a plain number): reynolds number on the length, at least 0 and at most 100000000
 * - `prandtl` (`Pr`, a plain number): prandtl number, at least 0.6 and at most 60
 * - gives `Nu`: mean Nusselt number, in a plain number
 * - Assumes: the whole plate has one temperature
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 7.
 *
 * @example
 * ```ts
 * flatPlate({ reynolds: 9600, prandtl: 0.687 })
 * // 57.41
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 7.1 (recomputed): 57.41
 * ```
 */
export const flatPlate = /*@__PURE__*/ formula({
  name: 'flatPlate',
  title: 'Forced convection from a flat plate',
  inputs: {
    reynolds: input('ratio', 'Re', 'Reynolds number on the length', { min: 0, max: 1e8 }),
    prandtl: input('ratio', 'Pr', 'Prandtl number', { min: 0.6, max: 60 }),
  },
  result: output('ratio', 'Nu', 'Mean Nusselt number'),
  expression: 'Re > 500000 ? (0.037 * Re^0.8 - 871) * cbrt(Pr) : 0.664 * sqrt(Re) * cbrt(Pr)',
  assumes: ['The whole plate has one temperature.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 7'),
  compute: ({ reynolds, prandtl }) =>
    reynolds > 500000
      ? (0.037 * reynolds ** 0.8 - 871) * Math.cbrt(prandtl)
      : 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl),
})

/**
 * Heat transfer coefficient of radiation between a surface and large surroundings, to be added to that of convection.
 * The emissivity is that of the heat rays, near 0.9 for any paint or plastic and below 0.1 for bright metal. The
 * Stefan–Boltzmann constant is written as the radiation of a black body at 100 K.
 *
 * `h = eps * M100 * (Ts + Ta) * (Ts^2 + Ta^2) / T100^4`
 *
 * - `emissivity` (`eps`, a plain number): emissivity of the surface, at least 0 and at most 1
 * - `surface` (`Ts`, °C): temperature of the surface
 * - `surroundings` (`Ta`, °C): temperature of the surroundings
 * - gives `h`: heat transfer coefficient of radiation, in W/(m²·K)
 * - `M100` = 5.670374419 W/m²: radiation of a black body at the reference temperature (CODATA 2018, Stefan–Boltzmann
 *   constant)
 * - `T100` = 100 K: reference temperature of the black body (by definition)
 * - Assumes: the surroundings are large and all of one temperature
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 1.
 *
 * @example
 * ```ts
 * radiationCoefficient({ emissivity: 0.8, surface: '473.15 K', surroundings: '298.15 K' })
 * // 10.94 W/(m²·K)
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 1.2 (recomputed): 10.943 W/(m²·K)
 * ```
 */
export const radiationCoefficient = /*@__PURE__*/ formula({
  name: 'radiationCoefficient',
  title: 'Heat transfer coefficient of radiation',
  inputs: {
    emissivity: input('ratio', 'eps', 'Emissivity of the surface', { min: 0, max: 1 }),
    surface: input('temperature', 'Ts', 'Temperature of the surface'),
    surroundings: input('temperature', 'Ta', 'Temperature of the surroundings'),
  },
  result: output('heatTransferCoefficient', 'h', 'Heat transfer coefficient of radiation'),
  expression: 'eps * M100 * (Ts + Ta) * (Ts^2 + Ta^2) / T100^4',
  constants: {
    M100: constant(
      'heatFlux',
      '5.670374419 W/m²',
      'Radiation of a black body at the reference temperature',
      cite('CODATA 2018', 'Stefan–Boltzmann constant'),
    ),
    T100: constant('temperature', '100 K', 'Reference temperature of the black body', definition),
  },
  assumes: ['The surroundings are large and all of one temperature.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 1'),
  compute: ({ emissivity, surface, surroundings }, { M100, T100 }) =>
    (emissivity * M100 * (surface + surroundings) * (surface ** 2 + surroundings ** 2)) / T100 ** 4,
})
