/**
 * Voltage drop, losses and heating of the cables between pack, controller and loads.
 *
 * Rests on IEC 60364-5-52 (drop), IEC 60364-5-54 and IEC 60949 (adiabatic heating).
 */
import { cite, formula, input, output } from '../formula/index.js'

/** DC voltage lost over a two-wire cable run, out and back. */
export const cableVoltageDrop = /*@__PURE__*/ formula({
  name: 'cableVoltageDrop',
  title: 'Voltage drop of a two-wire cable run',
  inputs: {
    current: input('current', 'I', 'Steady current', { min: 0 }),
    resistancePerLength: input('resistancePerLength', 'r', 'Resistance of one conductor per length', { above: 0 }),
    length: input('length', 'l', 'One-way length of the run', { min: 0 }),
  },
  result: output('voltage', 'dU', 'Voltage lost out and back'),
  expression: '2 * I * r * l',
  source: cite('IEC 60364-5-52', 'Annex G'),
  compute: ({ current, resistancePerLength, length }) => 2 * current * resistancePerLength * length,
})
