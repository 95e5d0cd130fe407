/**
 * The air that a car drives through: its density and the wind along the road.
 *
 * Rests on ISO 2533 (pressure by altitude) and on the gas law of dry air.
 */
import * as z from 'zod/mini'
import { type Quantity, quantity } from '../../quantity/index.js'
import { about, given, type Read } from '../../structure/index.js'
import { airDensity, airPressure } from './road-load.js'

/** The air as it is read. */
export const airGiven = /*@__PURE__*/ about(
  'the air',
  z.strictObject({
    temperature: z.optional(given('temperature', 'Temperature of the air', { above: 0 })),
    altitude: z.optional(given('length', 'Altitude of the road above sea level', { min: '-2 km', max: '11 km' })),
    headwind: z.optional(given('speed', 'Head wind, negative for a tail wind')),
  }),
)

/** Density of the air and the wind against the car, and what was taken for granted of them. */
export interface Air {
  readonly density: Quantity<'density'>
  readonly headwind: Quantity<'speed'>
  readonly assumptions: readonly string[]
}

/** The temperature at which cars are compared: that of UN Regulation No. 154, from memory. */
const MILD = '20 °C'

/** The air that is given, or still air of 20 °C at sea level for what is not. */
export function airOf(air: Read<typeof airGiven> = {}): Air {
  const temperature = air.temperature ?? quantity('temperature', MILD)
  const altitude = air.altitude ?? quantity('length', '0 m')
  const headwind = air.headwind ?? quantity('speed', '0 km/h')
  return {
    density: airDensity({ pressure: airPressure({ altitude }), temperature }),
    headwind,
    assumptions: [
      ...(air.temperature === undefined ? [`The air is at ${MILD} (air.temperature by default).`] : []),
      ...(air.altitude === undefined ? ['The road lies at sea level (air.altitude by default).'] : []),
      ...(air.headwind === undefined ? ['The air is still (air.headwind by default).'] : []),
    ],
  }
}
