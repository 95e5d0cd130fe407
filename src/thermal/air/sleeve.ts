/**
 * Insulation around a wire, a pipe or a hose: how well it keeps heat in, and from which thickness on it does so at all.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 */
import { cite, formula, input, output } from '../../formula/index.js'

const incropera = /*@__PURE__*/ cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3')

/**
 * Conductance from a wire, pipe or hose through its insulation to the air. What it is around is as warm as its own
 * surface; the coefficient is that of convection and radiation together.
 *
 * `G = 2 * pi * l / (log(D / d) / k + 2 / (h * D))`
 *
 * - `length` (`l`, m): length, at least 0 m
 * - `innerDiameter` (`d`, m): diameter of what the sleeve is around, above 0 m
 * - `outerDiameter` (`D`, m): outer diameter of the sleeve, above 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the sleeve, above 0 W/(m·K)
 * - `coefficient` (`h`, W/(m²·K)): heat transfer coefficient at the outside, above 0 W/(m²·K)
 * - gives `G`: conductance to the air, in W/K
 * - holds where outerDiameter / innerDiameter is at least 1
 * - Assumes: the ends lose nothing
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * sleeveConductance({
 *   length: '1 m',
 *   innerDiameter: '10 mm',
 *   outerDiameter: '10 mm',
 *   conductivity: '0.055 W/(m·K)',
 *   coefficient: '5 W/(m²·K)',
 * })
 * // 0.1571 W/K
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 3.5 (recomputed): 0.157085 W/K
 * ```
 */
export const sleeveConductance = /*@__PURE__*/ formula({
  name: 'sleeveConductance',
  title: 'Conductance through a sleeve to the air',
  inputs: {
    length: input('length', 'l', 'Length', { min: 0 }),
    innerDiameter: input('length', 'd', 'Diameter of what the sleeve is around', { above: 0 }),
    outerDiameter: input('length', 'D', 'Outer diameter of the sleeve', { above: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the sleeve', { above: 0 }),
    coefficient: input('heatTransferCoefficient', 'h', 'Heat transfer coefficient at the outside', { above: 0 }),
  },
  result: output('thermalConductance', 'G', 'Conductance to the air'),
  expression: '2 * pi * l / (log(D / d) / k + 2 / (h * D))',
  valid: [
    {
      of: 'outerDiameter / innerDiameter',
      value: ({ outerDiameter, innerDiameter }) => outerDiameter / innerDiameter,
      min: 1,
    },
  ],
  assumes: ['The ends lose nothing.'],
  source: incropera,
  compute: ({ length, innerDiameter, outerDiameter, conductivity, coefficient }) =>
    (2 * Math.PI * length) /
    (Math.log(outerDiameter / innerDiameter) / conductivity + 2 / (coefficient * outerDiameter)),
})

/**
 * Outer radius of insulation at which a wire or pipe loses the most heat. Up to it more insulation cools a wire,
 * because the surface grows faster than the insulation hinders; only beyond it does more insulation keep heat in.
 *
 * `r = k / h`
 *
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the insulation, at least 0 W/(m·K)
 * - `coefficient` (`h`, W/(m²·K)): heat transfer coefficient at the outside, above 0 W/(m²·K)
 * - gives `r`: critical outer radius, in mm
 * - Assumes: the coefficient does not change with the radius
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * criticalRadius({ conductivity: '0.055 W/(m·K)', coefficient: '5 W/(m²·K)' })
 * // 11 mm
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, example 3.5 (read): 11 mm
 * ```
 */
export const criticalRadius = /*@__PURE__*/ formula({
  name: 'criticalRadius',
  title: 'Critical radius of insulation',
  inputs: {
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the insulation', { min: 0 }),
    coefficient: input('heatTransferCoefficient', 'h', 'Heat transfer coefficient at the outside', { above: 0 }),
  },
  result: output('length', 'r', 'Critical outer radius', 'mm'),
  expression: 'k / h',
  assumes: ['The coefficient does not change with the radius.'],
  source: incropera,
  compute: ({ conductivity, coefficient }) => conductivity / coefficient,
})
