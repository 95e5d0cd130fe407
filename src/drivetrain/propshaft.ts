/**
 * The speed at which a propeller shaft whirls.
 *
 * Rests on the bending vibration of a uniform beam on two supports: Young & Budynas, Roark's Formulas for Stress and
 * Strain, table 16.1.
 */
import { cite, formula, input, output } from '../formula/index.js'

/**
 * Speed at which a tubular propeller shaft bends and whirls. A motor that turns faster than the engine did may reach
 * it: a shaft of half the length has four times the critical speed.
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
