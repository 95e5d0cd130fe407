/** Published values for the electrical domain. */
import { cableVoltageDrop } from '../../src/electrical/index.js'
import { cite } from '../../src/formula/index.js'
import { handbook } from './handbook.js'

export const electricalHandbook = [
  handbook(cableVoltageDrop, [
    {
      given: { current: '10 A', resistancePerLength: '1.84 mΩ/m', length: '0.5 m' },
      expected: '18.4 mV',
      within: 0.001,
      source: cite('BS 7671:2008', 'Appendix 4, 25 mm² flexible cord, 60 °C'),
      standing: 'recomputed',
      note: 'The table gives mV per ampere and metre for both conductors: 1.8, rounded.',
    },
  ]),
]
