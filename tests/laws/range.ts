/** How the formulas of the range domain move with their inputs. */
import { batteryPower, consumption, rangeFromConsumption } from '../../src/range/index.js'
import { lawsOf } from '../laws.js'

export const rangeLaws = [
  lawsOf(batteryPower, {
    wheelPower: 'rises',
    drivelineEfficiency: 'falls',
    motorEfficiency: 'falls',
    auxiliaries: 'rises',
  }),
  lawsOf(consumption, { power: 'rises', speed: 'either: power that flows back is negative' }),
  lawsOf(rangeFromConsumption, { energy: 'rises', consumption: 'falls' }),
]
