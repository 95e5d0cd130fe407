/**
 * The air that a car drives through: its density and the wind along the road.
 *
 * Rests on ISO 2533 (pressure by altitude) and on the gas law of dry air.
 */
import { type Assumption, assumed, type Read } from '../../procedure/index.js'
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

/** Closer to 20 °C than this, in kelvins, tyres roll as they are given. */
const [REFERENCE, NEAR] = [293.15, 1]

const WEATHER = 'air.weather'

/** What warmer or colder air than that of the reference is counted by, and what of it is left to the figures given. @internal */
export function weatherOf({ temperature }: Read<typeof airField>): Assumption[] {
  if (Math.abs(temperature.si - REFERENCE) <= NEAR) return []
  return [
    assumed(
      WEATHER,
      `Air of ${temperature} counts by its density alone: rolling resistance and cells are taken as they are given. seasons counts what the cold does to all three.`,
    ),
  ]
}

/**
 * What a drive takes for granted where the weather is counted, as its tyres and cells are given as they are in its air, or
 * where it is told once of all drives. @internal
 */
export function withWeatherCounted(assumptions: readonly Assumption[]): Assumption[] {
  return assumptions.filter(({ id }) => id !== WEATHER)
}
