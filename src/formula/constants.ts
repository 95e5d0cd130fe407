/** Constants that several domains share, each with its unit and source. */
import { constant } from './formula.js'
import { cite } from './source.js'

/** Standard acceleration of free fall, 9.80665 m/s². */
export const standardGravity = /*@__PURE__*/ constant(
  'acceleration',
  '9.80665 m/s²',
  'Standard acceleration of free fall',
  cite('ISO 80000-3'),
)

/** Zero on the Celsius scale, 273.15 K. */
export const icePoint = /*@__PURE__*/ constant(
  'temperature',
  '0 °C',
  'Zero on the Celsius scale',
  cite('ISO 80000-5', 'Celsius temperature'),
)
