/** How each thermal formula moves with its inputs. */
import {
  biotNumber,
  heatToWarm,
  lumpedTemperature,
  lumpedTime,
  thermalTimeConstant,
  warmUpTime,
} from '../../src/thermal/index.js'
import { lawsOf } from '../laws.js'

export const thermalLaws = [
  lawsOf(thermalTimeConstant, { heatCapacity: 'rises', conductance: 'falls' }),
  lawsOf(lumpedTemperature, {
    initial: 'rises',
    surroundings: 'rises',
    time: 'either: the body warms or cools, by where it ends',
    timeConstant: 'either: a slower body stays nearer to where it started',
    power: 'rises',
    conductance: 'either: it brings heat in or takes it out, by which side is warmer',
  }),
  lawsOf(lumpedTime, {
    initial: 'either: a start farther from the surroundings, above or below, takes longer',
    surroundings: 'either: surroundings nearer to the target take longer to bring the body there',
    target: 'either: a target farther from the start, above or below, takes longer',
    timeConstant: 'rises',
  }),
  lawsOf(biotNumber, { coefficient: 'rises', length: 'rises', conductivity: 'falls' }),
  lawsOf(heatToWarm, { mass: 'rises', specificHeat: 'rises', from: 'falls', to: 'rises' }),
  lawsOf(warmUpTime, {
    heatCapacity: 'rises',
    conductance: 'either: it loses heat to colder surroundings and gains it from warmer ones',
    power: 'falls',
    from: 'falls',
    to: 'rises',
    surroundings: 'falls',
  }),
]
