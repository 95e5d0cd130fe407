/** Cases of heat and cold. All parts are invented. */
import { coolingLoop } from '../../src/thermal/index.js'
import type { Table } from './judgement.js'

const loop = {
  coolant: 'ethylene glycol 50 %',
  pump: [
    ['0 L/min', '40 kPa'],
    ['14 L/min', '30 kPa'],
    ['28 L/min', '0 kPa'],
  ],
  segments: [
    { name: 'hoses', length: '5 m', bore: '19 mm' },
    {
      parallel: [
        [
          {
            name: 'controller',
            drop: '6 kPa',
            at: '8 L/min',
            heat: '0.6 kW',
            minimumFlow: '4 L/min',
            inletLimit: '60 °C',
          },
        ],
        [{ name: 'charger', drop: '8 kPa', at: '6 L/min', heat: '0.3 kW' }],
      ],
    },
    { name: 'motor', drop: '9 kPa', at: '10 L/min', heat: '2 kW' },
  ],
  radiator: {
    conductance: '200 W/K',
    at: { air: '900 m³/h', coolant: '10 L/min' },
    exponents: { air: 0.5, coolant: 0.3 },
  },
  air: { temperature: '30 °C', flow: '800 m³/h' },
  limit: '65 °C',
} as const
const [hoses, , motor] = loop.segments
/** The branches side by side, with other parts. */
const branches = (controller: object, charger: object) => ({
  segments: [
    hoses,
    {
      parallel: [
        [{ ...loop.segments[1].parallel[0][0], ...controller }],
        [{ ...loop.segments[1].parallel[1][0], ...charger }],
      ],
    },
    motor,
  ],
})

export const thermal: { readonly [name: string]: Table } = {
  coolingLoop: {
    call: coolingLoop,
    sound: loop,
    cases: [
      {
        what: 'a branch that boils while its mixture is cool',
        // A choked branch: 1.5 kW into half a litre a minute.
        dangerous: branches({}, { drop: '900 kPa', at: '4 L/min', heat: '1.5 kW' }),
        told: ['segment.3.outlet', 'fail'],
        sound: branches({}, { drop: '8 kPa', at: '6 L/min', heat: '1.5 kW' }),
      },
      {
        what: 'a part that gets its coolant too warm',
        dangerous: branches({ inletLimit: '34 °C' }, {}),
        told: ['segment.2.inlet', 'fail'],
        sound: branches({ inletLimit: '55 °C' }, {}),
      },
      {
        what: 'a part that gets too little coolant',
        dangerous: branches({ minimumFlow: '12 L/min' }, {}),
        told: ['segment.2.flow', 'fail'],
      },
      {
        what: 'parts whose drop may not hold in the cold',
        dangerous: { air: { temperature: '-20 °C' } },
        told: ['coolant.drops', 'unknown'],
      },
      {
        what: 'a part whose passages are so fine that its flow is laminar',
        dangerous: branches({ hydraulicDiameter: '1 mm', flowArea: '200 mm²' }, {}),
        told: ['coolant.drops', 'unknown'],
        sound: branches({ hydraulicDiameter: '8 mm', flowArea: '60 mm²' }, {}),
      },
    ],
  },
}
