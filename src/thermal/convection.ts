/**
 * Heat given off to air and to surroundings, by convection and radiation.
 *
 * Rests on S. W. Churchill and H. H. S. Chu, International Journal of Heat and Mass Transfer 18 (1975);
 * S. W. Churchill and M. Bernstein, Journal of Heat Transfer 99 (1977); and Incropera, Fundamentals of Heat and Mass
 * Transfer, chapters 1, 7 and 9. Properties of the air are those at the film temperature, midway between surface and air.
 */
import { cite, constant, definition, formula, input, output, standardGravity } from '../formula/index.js'

/**
 * Rayleigh number, which tells how strongly a warm surface stirs the air around it. The thermal expansion of a gas is 1
 * over its absolute temperature.
 */
export const rayleighNumber = /*@__PURE__*/ formula({
  name: 'rayleighNumber',
  title: 'Rayleigh number',
  inputs: {
    expansion: input('temperatureCoefficient', 'beta', 'Thermal expansion of the fluid', { min: 0 }),
    difference: input('temperatureDifference', 'dT', 'Surface temperature above that of the fluid', { min: 0 }),
    length: input('length', 'L', 'Diameter of a horizontal cylinder', { min: 0 }),
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

/** Heat transfer coefficient that a Nusselt number stands for. The length is that on which the number was formed. */
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

/** Mean Nusselt number of a long horizontal cylinder, such as a cable, in still air. */
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

/** Mean Nusselt number of a long cylinder across a stream. */
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
 * Heat transfer coefficient of radiation between a surface and large surroundings, to be added to that of
 * convection. The emissivity is that of the heat rays, near 0.9 for any paint or plastic and below 0.1 for bright metal.
 * The Stefan–Boltzmann constant is written as the radiation of a black body at 100 K.
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
