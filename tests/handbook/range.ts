/** Published values for the range domain. */
import { cite } from '../../src/formula/index.js'
import { batteryPower, consumption, rangeFromConsumption } from '../../src/range/index.js'
import { handbook } from './handbook.js'

const exercise = cite('course exercise')
const petroleum = cite('10 CFR 474', 'appendix')

export const rangeHandbook = [
  handbook(batteryPower, [
    {
      given: { wheelPower: '71.5 kW', drivelineEfficiency: 0.9, motorEfficiency: 1, auxiliaries: '0 W' },
      expected: '79.5 kW',
      within: 0.001,
      source: exercise,
      standing: 'read',
      note: 'Power that the motor takes at 90 % overall; wheel power printed to three figures.',
    },
    {
      given: { wheelPower: '9 kW', drivelineEfficiency: 0.9, motorEfficiency: 0.8, auxiliaries: '500 W' },
      expected: '13 kW',
      within: 1e-12,
      source: cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 7'),
      standing: 'recomputed',
      note: 'The chain of efficiencies from memory; the numbers are chosen here: 9 / 0.72 = 12.5, and 0.5.',
    },
  ]),
  handbook(consumption, [
    {
      given: { power: '24450 W', speed: '120 km/h' },
      expected: '733.5 J/m',
      within: 1e-12,
      source: exercise,
      standing: 'read',
      note: 'Energy per distance is a force: 733.5 N of drag at 120 km/h take 24 450 W. In other units 203.75 Wh/km.',
    },
  ]),
  handbook(rangeFromConsumption, [
    {
      given: { energy: '82049 Wh', consumption: '244.75 Wh/mi' },
      expected: '335.24 mi',
      within: '0.01 mi',
      source: petroleum,
      standing: 'read',
      note: 'Printed as miles per gallon, a gallon being credited with 82 049 Wh.',
    },
    {
      given: { energy: '73844 Wh', consumption: '244.75 Wh/mi' },
      expected: '301.71 mi',
      within: '0.01 mi',
      source: petroleum,
      standing: 'read',
      note: 'The same with a heater that burns fuel.',
    },
  ]),
]
