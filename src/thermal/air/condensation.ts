/** Whether water settles from the air on a face that is colder than it. */
import { worded } from '../../procedure/check.js'
import { type Check, given, says, trial } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import { dewPoint } from './moist-air.js'

/** Relative humidity as a weather station tells it. @internal */
export const humidityField = /*@__PURE__*/ (() =>
  given('ratio', 'Relative humidity of the air around', { min: 0.01, max: 1, usual: ['15 %', '100 %'] }))()

/** The air that touches a face. @internal */
interface AirAtFace {
  readonly temperature: Quantity<'temperature'>
  readonly humidity?: Quantity<'ratio'> | undefined
}

/** The form of Magnus is good to so many kelvins from here up to there, in kelvins. */
const [COLDEST, HOTTEST] = [233.15, 333.15]

/**
 * Whether a face stays dry. One that is no colder than the air always does; of a colder one the humidity tells.
 * @internal
 */
export function drynessTrials(
  id: string,
  face: Quantity<'temperature'>,
  words: string,
  { temperature, humidity }: AirAtFace,
  ...paths: readonly [...others: string[], humidity: string]
): Check[] {
  if (face.si >= temperature.si) return []
  const at = paths.at(-1) as string
  const isKnown = humidity !== undefined && temperature.si >= COLDEST && temperature.si <= HOTTEST
  return [
    trial(
      id,
      'Coldest face that the air touches',
      isKnown
        ? worded(
            `${words} is at `,
            says`${face} at its coldest, at least the dew point of the air of ${temperature}, ${dewPoint({ temperature, humidity })}`,
          )
        : {
            unknown: `${words} at ${face} is colder than the air of ${temperature}: whether water settles on it is not known: give ${at}`,
          },
      'water settles on what is colder than the dew point of the air, and creeps into joints and connectors',
      ...paths,
    ),
  ]
}
