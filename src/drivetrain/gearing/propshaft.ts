/**
 * The speed at which a propeller shaft whirls.
 *
 * Rests on the bending vibration of a uniform beam on two supports: Young & Budynas, Roark's Formulas for Stress and
 * Strain, table 16.1.
 */
import { cite, formula, input, output } from '../../formula/index.js'

/**
 * Speed at which a tubular propeller shaft bends and whirls. A motor that turns faster than the engine did may reach
 * it: a shaft of half the length has four times the critical speed.
 *
 * `w_c = pi ^ 2 / (4 * l ^ 2) * sqrt(E / rho * (D ^ 2 + d ^ 2))`
 *
 * - `length` (`l`, m): length between the joint centres, above 0 m
 * - `outerDiameter` (`D`, m): outer diameter of the tube, above 0 m
 * - `innerDiameter` (`d`, m): inner diameter of the tube, at least 0 m
 * - `elasticModulus` (`E`, GPa): elastic modulus, above 0 GPa
 * - `density` (`rho`, kg/m³): density, above 0 kg/m³
 * - gives `w_c`: critical speed, in rpm
 * - holds where innerDiameter / outerDiameter is below 1
 * - Assumes: the tube is uniform, straight, balanced and long beside its diameter
 * - Assumes: the joints let both ends bend freely and do not move sideways
 * - Caution: a shaft that runs near its critical speed can break and come through the floor: keep its highest speed
 *   well below, commonly under three quarters (common practice, no source), have it balanced, and fit a safety loop
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Young & Budynas, Roark's Formulas for Stress and Strain, table 16.1, both ends simply supported.
 *
 * @example
 * ```ts
 * criticalSpeed({
 *   length: '1.2 m',
 *   outerDiameter: '60 mm',
 *   innerDiameter: '56 mm',
 *   elasticModulus: '205 GPa',
 *   density: '7850 kg/m³',
 * })
 * // 6863 rpm
 * // Young & Budynas, Roark's Formulas for Stress and Strain, table 16.1, coefficient 9.87 (from memory): 6863 rpm
 * ```
 */
export const criticalSpeed = /*@__PURE__*/ formula({
  name: 'criticalSpeed',
  title: 'Critical speed of a propeller shaft',
  inputs: {
    length: input('length', 'l', 'Length between the joint centres', { above: 0 }),
    outerDiameter: input('length', 'D', 'Outer diameter of the tube', { above: 0 }),
    innerDiameter: input('length', 'd', 'Inner diameter of the tube', { min: 0 }),
    elasticModulus: input('elasticModulus', 'E', 'Elastic modulus', { above: 0 }),
    density: input('density', 'rho', 'Density', { above: 0 }),
  },
  result: output('angularSpeed', 'w_c', 'Critical speed'),
  expression: 'pi ^ 2 / (4 * l ^ 2) * sqrt(E / rho * (D ^ 2 + d ^ 2))',
  valid: [
    {
      of: 'innerDiameter / outerDiameter',
      value: ({ innerDiameter, outerDiameter }) => innerDiameter / outerDiameter,
      below: 1,
    },
  ],
  assumes: [
    'The tube is uniform, straight, balanced and long beside its diameter.',
    'The joints let both ends bend freely and do not move sideways.',
  ],
  cautions: [
    'A shaft that runs near its critical speed can break and come through the floor: keep its highest speed well below, commonly under three quarters (common practice, no source), have it balanced, and fit a safety loop.',
  ],
  source: cite("Young & Budynas, Roark's Formulas for Stress and Strain", 'table 16.1, both ends simply supported'),
  compute: ({ length, outerDiameter, innerDiameter, elasticModulus, density }) =>
    (Math.PI ** 2 / (4 * length ** 2)) *
    Math.sqrt((elasticModulus / density) * (outerDiameter ** 2 + innerDiameter ** 2)),
})
