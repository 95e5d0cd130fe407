/**
 * The air that a car drives through: its density and the wind along the road.
 *
 * Rests on ISO 2533 (pressure by altitude) and on the gas law of dry air.
 */
import type { Read } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import type { airField } from '../vehicle.js'
import { airDensity, airPressure } from './road-load.js'

/** Density of the air and the wind against the car. @internal */
export interface Air {
  readonly density: Quantity<'density'>
  readonly headwind: Quantity<'speed'>
}

/** What the air that is given is to a car. @internal */
export function airOf({ temperature, altitude, headwind }: Read<typeof airField>): Air {
  return { density: airDensity({ pressure: airPressure({ altitude }), temperature }), headwind }
}
