/** Published values for the thermal domain. */
import { cite, definition } from '../../src/formula/index.js'
import {
  biotNumber,
  heatToWarm,
  lumpedTemperature,
  lumpedTime,
  thermalTimeConstant,
  warmUpTime,
} from '../../src/thermal/index.js'
import { handbook } from './handbook.js'

const incropera = (place: string) => cite('Incropera, Fundamentals of Heat and Mass Transfer, 6th edition', place)
const closedForm = 'An invented pack of 150 kg and 1000 J/(kg·K), worked out from the closed form.'

export const thermalHandbook = [
  handbook(thermalTimeConstant, [
    {
      given: { heatCapacity: '150 kJ/K', conductance: '8 W/K' },
      expected: '5.2083 h',
      within: 1e-4,
      source: definition,
      standing: 'exact',
      note: closedForm,
    },
  ]),
  handbook(lumpedTemperature, [
    {
      given: {
        initial: '25 °C',
        surroundings: '-10 °C',
        time: '8 h',
        timeConstant: '18750 s',
        conductance: '8 W/K',
      },
      expected: '-2.467 °C',
      within: '0.001 K',
      source: definition,
      standing: 'exact',
      note: closedForm,
    },
    {
      given: {
        initial: '-10 °C',
        surroundings: '-10 °C',
        time: '2114.9 s',
        timeConstant: '18750 s',
        power: '1500 W',
        conductance: '8 W/K',
      },
      expected: '10 °C',
      within: '0.002 K',
      source: definition,
      standing: 'exact',
      note: closedForm,
    },
  ]),
  handbook(lumpedTime, [
    {
      given: { initial: '25 °C', surroundings: '200 °C', target: '199 °C', timeConstant: '1 s' },
      expected: '5.16 s',
      within: 0.0015,
      source: incropera('example 5.1'),
      standing: 'read',
      note: 'The book cuts 5.165 s to three figures.',
    },
  ]),
  handbook(biotNumber, [
    {
      given: { coefficient: '400 W/(m²·K)', length: '0.11765 mm', conductivity: '20 W/(m·K)' },
      expected: 2.35e-3,
      within: 0.002,
      source: incropera('example 5.1'),
      standing: 'read',
      note: 'A sphere of 0.7059 mm: the length is a sixth of that. The book gives three figures.',
    },
  ]),
  handbook(heatToWarm, [
    {
      given: { mass: '150 kg', specificHeat: '1000 J/(kg·K)', from: '-10 °C', to: '10 °C' },
      expected: '0.83333 kWh',
      within: 1e-5,
      source: definition,
      standing: 'exact',
    },
  ]),
  handbook(warmUpTime, [
    {
      given: {
        heatCapacity: '150 kJ/K',
        conductance: '8 W/K',
        power: '1500 W',
        from: '-10 °C',
        to: '10 °C',
        surroundings: '-10 °C',
      },
      expected: '2114.9 s',
      within: 1e-4,
      source: definition,
      standing: 'exact',
      note: closedForm,
    },
  ]),
]
