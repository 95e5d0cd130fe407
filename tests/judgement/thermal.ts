/** Cases of heat and cold. All parts are invented. */
import { cabinHeat, coldPlate, coolingLoop, packTemperature, winterStart } from '../../src/thermal/index.js'
import type { Table, Worse } from './judgement.js'

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

/** The same loop of pipes, which are worked out in the cold too. */
const warmOnly = {
  segments: [
    { name: 'hoses', length: '5 m', bore: '19 mm' },
    { name: 'motor', length: '3 m', bore: '12 mm', heat: '2.9 kW' },
  ],
} as const

const plate = {
  coolant: 'ethylene glycol 50 %',
  temperature: '20 °C',
  flow: '8 L/min',
  heat: '800 W',
  channels: { count: 1, length: '2.4 m', bore: '10 mm' },
  footprint: '0.2 m²',
  plate: { thickness: '4 mm', conductivity: '167 W/(m·K)' },
  contact: '10000 W/(m²·K)',
  limit: '45 °C',
  maximumSpread: '5 K',
  maximumDrop: '30 kPa',
  air: { temperature: '28 °C', humidity: '55 %' },
} as const

const warmed = {
  heatCapacity: '120 kJ/K',
  conductance: '6 W/K',
  surroundings: '24 °C',
  initial: '24 °C',
  heat: [['900 W', '40 min']],
  heatOf: 'drive',
  cooling: { power: '700 W', conductance: '15 W/K', on: '33 °C', off: '29 °C' },
  limits: { high: '45 °C' },
} as const

/** A chiller that brings the coolant below the air around it. */
const chilled = {
  cooling: { power: '1.5 kW', conductance: undefined },
  coolant: {
    heatCapacity: '20 kJ/K',
    fromCells: '150 W/K',
    toSurroundings: '5 W/K',
    fluid: 'ethylene glycol 50 %',
    capacityRate: '300 W/K',
  },
} as const

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
        what: 'a mixture that freezes while the car is parked',
        dangerous: { coolant: 'ethylene glycol 30 %', air: { temperature: '-18 °C' }, ...warmOnly },
        told: ['coolant.parked', 'fail'],
        sound: { coolant: 'ethylene glycol 40 %', air: { temperature: '-18 °C' }, ...warmOnly },
      },
      {
        what: 'parts whose drop may not hold in the cold',
        dangerous: { air: { temperature: '-20 °C' } },
        told: ['coolant.drops', 'unknown'],
        // Each of the two ways out that the check names: passages that are known, or pipes.
        sound: {
          air: { temperature: '-20 °C' },
          segments: [
            hoses,
            {
              parallel: [
                [
                  {
                    ...loop.segments[1].parallel[0][0],
                    drop: '3 kPa',
                    at: '8 L/min',
                    hydraulicDiameter: '5 mm',
                  },
                ],
                [{ name: 'charger', length: '3 m', bore: '8 mm', heat: '0.3 kW' }],
              ],
            },
            { name: 'motor', length: '3 m', bore: '12 mm', heat: '2 kW' },
          ],
        },
      },
      {
        what: 'how to settle whether a part is turbulent in the cold',
        dangerous: { air: { temperature: '-20 °C' } },
        told: /in controller, charger, motor that is not known: give hydraulicDiameter, with flowArea .* or pipes/,
      },
      {
        what: 'a part whose passages are so fine that its flow is laminar',
        dangerous: branches({ hydraulicDiameter: '1 mm', flowArea: '200 mm²' }, {}),
        told: ['coolant.drops', 'unknown'],
        sound: branches({ hydraulicDiameter: '8 mm', flowArea: '60 mm²' }, {}),
      },
    ],
  },
  coldPlate: {
    call: coldPlate,
    sound: plate,
    cases: [
      {
        what: 'cells that stand too hot at the outlet',
        dangerous: { heat: '3.5 kW', maximumSpread: '9 K' },
        told: ['plate.hottest', 'fail'],
      },
      {
        what: 'a limit that only a lucky film keeps, between laminar and turbulent flow',
        dangerous: { temperature: '6 °C', limit: '19.5 °C', air: { temperature: '5 °C' } },
        told: ['plate.hottest', 'unknown'],
        sound: { temperature: '6 °C', limit: '45 °C', air: { temperature: '5 °C' } },
      },
      {
        what: 'that a film between laminar and turbulent flow is rough',
        dangerous: { temperature: '6 °C', air: { temperature: '5 °C' } },
        told: /neither laminar nor turbulent: the film may be 30 % better or worse/,
      },
      {
        what: 'cells at the end that are much warmer than those at the beginning',
        dangerous: { flow: '1.5 L/min' },
        told: ['plate.spread', 'fail'],
      },
      {
        what: 'a plate that takes what the pump has',
        dangerous: { channels: { bore: '6 mm' } },
        told: ['plate.drop', 'fail'],
      },
      {
        what: 'a plate on which water settles',
        dangerous: { air: { humidity: '80 %' } },
        told: ['plate.dryness', 'fail'],
      },
      {
        what: 'a chilled plate in air of unknown humidity',
        dangerous: { air: { humidity: undefined } },
        told: ['plate.dryness', 'unknown'],
        // A face that is warmer than the air never condenses, whatever the humidity.
        sound: { air: { temperature: '19 °C', humidity: undefined } },
      },
    ],
  },
  packTemperature: {
    call: packTemperature,
    sound: warmed,
    cases: [
      {
        what: 'a fan that blows hotter air on the cells than they are',
        dangerous: { surroundings: '44 °C', cooling: { power: undefined, conductance: '40 W/K' } },
        told: ['cooling.direction', 'fail'],
        sound: { surroundings: '26 °C', cooling: { power: undefined, conductance: '40 W/K' } },
      },
      {
        what: 'a fan that warms the cells before their own heat makes them warmer than the air',
        dangerous: {
          heatCapacity: '90 kJ/K',
          surroundings: '40 °C',
          initial: '31 °C',
          heat: [['300 W', '4 h']],
          cooling: { power: undefined, conductance: '35 W/K', on: '35 °C', off: '32 °C' },
        },
        told: ['cooling.direction', 'fail'],
        sound: {
          heatCapacity: '90 kJ/K',
          surroundings: '27 °C',
          initial: '31 °C',
          heat: [['300 W', '4 h']],
          cooling: { power: undefined, conductance: '35 W/K', on: '35 °C', off: '32 °C' },
        },
      },
      {
        what: 'a motor that warms the coolant faster than the chiller cools it',
        dangerous: {
          surroundings: '38 °C',
          initial: '30 °C',
          heat: [['900 W', '3 h']],
          cooling: { power: '1.1 kW', conductance: undefined },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '200 W/K',
            toSurroundings: '10 W/K',
            heat: '1 kW',
            fluid: 'ethylene glycol 50 %',
          },
        },
        told: ['cooling.direction', 'fail'],
        // For some seconds after it switches on the coolant is still the warmer one: nothing that the cells feel.
        sound: {
          surroundings: '38 °C',
          humidity: '25 %',
          initial: '30 °C',
          heat: [['900 W', '3 h']],
          cooling: { power: '3.5 kW', conductance: undefined },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '200 W/K',
            toSurroundings: '10 W/K',
            heat: '1 kW',
            fluid: 'ethylene glycol 50 %',
          },
        },
      },
      {
        what: 'a fan that never brings the cells down to where it switches off',
        dangerous: { surroundings: '31 °C', cooling: { power: undefined, conductance: '40 W/K' } },
        told: ['cooling.reach', 'fail'],
      },
      {
        what: 'a coolant that comes warmer from the motor than the cells are',
        dangerous: {
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '90 W/K',
            toSurroundings: '10 W/K',
            heat: '1.5 kW',
            fluid: 'ethylene glycol 50 %',
          },
        },
        told: ['cooling.direction', 'fail'],
        sound: {
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '90 W/K',
            toSurroundings: '10 W/K',
            heat: '50 W',
            fluid: 'ethylene glycol 50 %',
          },
        },
      },
      {
        what: 'water that freezes in the plates',
        dangerous: {
          surroundings: '-12 °C',
          initial: '8 °C',
          heat: [['0 W', '14 h']],
          cooling: undefined,
          coolant: { heatCapacity: '20 kJ/K', fromCells: '90 W/K', toSurroundings: '10 W/K', fluid: 'water' },
        },
        told: ['coolant.freezing', 'fail'],
        sound: {
          surroundings: '-12 °C',
          initial: '8 °C',
          heat: [['0 W', '14 h']],
          cooling: undefined,
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '90 W/K',
            toSurroundings: '10 W/K',
            fluid: 'ethylene glycol 50 %',
          },
        },
      },
      {
        what: 'coolant that leaves its heater too hot',
        dangerous: {
          surroundings: '-5 °C',
          initial: '-5 °C',
          heat: [['0 W', '1 h']],
          cooling: undefined,
          heater: { power: '3 kW', on: '8 °C', off: '12 °C', limit: '45 °C' },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '110 W/K',
            toSurroundings: '3 W/K',
            fluid: 'ethylene glycol 50 %',
            capacityRate: '90 W/K',
          },
        },
        told: ['heater.outlet', 'fail'],
        sound: {
          surroundings: '-5 °C',
          initial: '-5 °C',
          heat: [['0 W', '1 h']],
          cooling: undefined,
          heater: { power: '1 kW', on: '8 °C', off: '12 °C', limit: '45 °C' },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '110 W/K',
            toSurroundings: '3 W/K',
            fluid: 'ethylene glycol 50 %',
            capacityRate: '300 W/K',
          },
        },
      },
      {
        what: 'a charge of frozen cells that is told by its heat',
        dangerous: {
          surroundings: '-6 °C',
          initial: '-6 °C',
          heat: [['60 W', '1 h']],
          heatOf: 'charge',
          cooling: undefined,
        },
        told: ['cell.chargeTemperature', 'fail'],
        sound: { surroundings: '-6 °C', initial: '-6 °C', heat: [['60 W', '1 h']], cooling: undefined },
      },
      {
        what: 'cells of which nobody said how warm they may be',
        dangerous: { limits: { high: undefined } },
        told: /held to the 60 °C that makers commonly allow: give limits\.high/,
      },
      {
        what: 'a charge of frozen cells that take up heat by it',
        dangerous: {
          surroundings: '-6 °C',
          initial: '-6 °C',
          heat: [['-5 W', '1 h']],
          heatOf: 'charge',
          cooling: undefined,
        },
        told: ['cell.chargeTemperature', 'fail'],
        sound: { initial: '12 °C', heat: [['-5 W', '1 h']], heatOf: 'charge', cooling: undefined },
      },
      {
        what: 'a fan in air just as warm as where it switches off',
        dangerous: { surroundings: '29 °C', cooling: { power: undefined } },
        told: ['cooling.reach', 'fail'],
        sound: { surroundings: '28 °C', heat: [['500 W', '40 min']], cooling: { power: undefined } },
      },
      {
        what: 'a motor whose heat the chiller does not take, and nothing else either',
        dangerous: {
          conductance: '0 W/K',
          heat: [['0 W', '5 min']],
          cooling: { power: '1 kW', conductance: undefined },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '50 W/K',
            toSurroundings: '0 W/K',
            heat: '1.2 kW',
            fluid: 'ethylene glycol 50 %',
          },
        },
        told: ['cooling.reach', 'fail'],
      },
      {
        what: 'a core that is too hot in a pack that is not',
        dangerous: { limits: { high: '40 °C' } },
        told: ['cell.hottest', 'fail'],
        // Cells that were measured: thin, and cooled alike.
        sound: { limits: { high: '40 °C' }, hottest: { core: '1 min', spread: '2 K' } },
      },
      {
        what: 'whose heat stands in the core, where nobody gave it',
        dangerous: {},
        told: /round cells of 18 to 21 mm and prismatic ones of 26 mm/,
      },
      {
        what: 'a chilled plate on which water settles',
        dangerous: { humidity: '70 %', ...chilled },
        told: ['cooling.dryness', 'fail'],
        sound: { humidity: '40 %', ...chilled },
      },
      {
        what: 'a chilled plate in air of unknown humidity',
        dangerous: chilled,
        told: ['cooling.dryness', 'unknown'],
        // What stays warmer than the air never condenses, whatever the humidity.
        sound: { ...chilled, surroundings: '14 °C' },
      },
      {
        what: 'water that freezes in the chiller while the plates are warm',
        dangerous: {
          initial: '34 °C',
          cooling: { power: '2 kW', conductance: undefined },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '150 W/K',
            toSurroundings: '5 W/K',
            fluid: 'water',
            capacityRate: '60 W/K',
          },
        },
        told: ['coolant.freezing', 'fail'],
        sound: {
          humidity: '40 %',
          initial: '34 °C',
          cooling: { power: '2 kW', conductance: undefined },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '150 W/K',
            toSurroundings: '5 W/K',
            fluid: 'water',
            capacityRate: '300 W/K',
          },
        },
      },
      {
        what: 'coolant that boils in a heater for which no limit was given',
        dangerous: {
          surroundings: '-9 °C',
          initial: '-9 °C',
          heat: [['0 W', '1 h']],
          cooling: undefined,
          heater: { power: '3 kW', on: '4 °C', off: '7 °C' },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '150 W/K',
            toSurroundings: '5 W/K',
            fluid: 'ethylene glycol 50 %',
            capacityRate: '25 W/K',
          },
        },
        told: ['coolant.boiling', 'fail'],
        sound: {
          surroundings: '-9 °C',
          initial: '-9 °C',
          heat: [['0 W', '1 h']],
          cooling: undefined,
          heater: { power: '3 kW', on: '4 °C', off: '7 °C' },
          coolant: {
            heatCapacity: '20 kJ/K',
            fromCells: '150 W/K',
            toSurroundings: '5 W/K',
            fluid: 'ethylene glycol 50 %',
            capacityRate: '150 W/K',
          },
        },
      },
      {
        what: 'a pack that takes up a thousand times the heat of any',
        dangerous: { heatCapacity: '120000 kJ/K' },
        told: /Heat capacity of the pack: 120000 kJ\/K is unusual.* Did you mean 120000 J\/K/,
        sound: { heatCapacity: '160 kJ/K' },
      },
      {
        what: 'a limit of the cells at which they burn',
        dangerous: { limits: { high: '92 °C' } },
        told: /Highest temperature allowed: 92 °C is unusual/,
        sound: { limits: { high: '55 °C' } },
      },
      {
        what: 'a charge that is allowed in hard frost',
        dangerous: {
          surroundings: '-14 °C',
          initial: '-14 °C',
          heat: [['30 W', '1 h']],
          heatOf: 'charge',
          cooling: undefined,
          limits: { charge: '-19 °C' },
        },
        told: /Lowest temperature at which they may be charged: -19 °C is unusual/,
      },
      {
        what: 'heat of which nobody said whether it is that of a charge',
        dangerous: { heatOf: undefined },
        told: /no limit of a charge is held/,
      },
    ],
  },
  winterStart: {
    call: winterStart,
    sound: {
      pack: { heatCapacity: '130 kJ/K', energy: '13 kWh' },
      from: '-11 °C',
      to: '9 °C',
      heaterPower: '900 W',
      conductance: '6 W/K',
      surroundings: '-11 °C',
      chargeLimit: '0 °C',
    },
    cases: [
      {
        what: 'a pack that is warmed until it burns',
        dangerous: { to: '85 °C' },
        told: /Temperature to warm it to: 85 °C is unusual/,
        sound: { to: '15 °C' },
      },
      {
        what: 'a charge of cells that were not warmed enough',
        dangerous: { to: '-2 °C' },
        told: ['cell.chargeTemperature', 'fail'],
        sound: { to: '3 °C' },
      },
      {
        what: 'a heater that takes all that the pack holds',
        dangerous: { pack: { energy: '0.4 kWh' } },
        told: ['heater.energy', 'fail'],
      },
    ],
  },
}

const cooled = { name: 'motor', drop: '9 kPa', at: '10 L/min', heat: '2.5 kW' } as const

export const thermalLaws: readonly Worse[] = [
  {
    procedure: coldPlate,
    sound: plate,
    // Not the flow: it cools, and it costs pressure.
    worse: {
      heat: 'more',
      'plate.thickness': 'more',
      contact: 'less',
      limit: 'less',
      maximumSpread: 'less',
      maximumDrop: 'less',
      'air.humidity': 'more',
    },
  },
  {
    procedure: coolingLoop,
    // No least flow: warmer coolant is thinner, and flows better.
    sound: { ...loop, segments: [{ ...cooled, inletLimit: '55 °C' }] },
    worse: {
      'segments.0.heat': 'more',
      'segments.0.inletLimit': 'less',
      'radiator.conductance': 'less',
      'air.temperature': 'more',
      'air.flow': 'less',
      limit: 'less',
    },
  },
  {
    procedure: coolingLoop,
    isSlow: true,
    // No limit of an inlet: what flows slower leaves the radiator cooler.
    sound: { ...loop, segments: [hoses, { ...cooled, minimumFlow: '9 L/min' }], minimumFlow: '8 L/min' },
    worse: {
      'segments.0.length': 'more',
      'segments.0.bore': 'less',
      'segments.1.drop': 'more',
      'segments.1.minimumFlow': 'more',
      minimumFlow: 'more',
      limit: 'less',
    },
  },
  {
    procedure: packTemperature,
    // No core: cooling that is stronger lets it come back to its limit later, with more heat in the core.
    sound: { ...warmed, surroundings: '22 °C', humidity: '15 %', hottest: { core: '0 s', spread: '2 K' } },
    // Not cooling.off: the later it switches off, the cooler the cells.
    worse: {
      heatCapacity: 'less',
      surroundings: 'more',
      initial: 'more',
      'heat.0.0': 'more',
      'heat.0.1': 'more',
      'cooling.power': 'less',
      'cooling.on': 'more',
      'limits.high': 'less',
    },
  },
  {
    procedure: packTemperature,
    sound: {
      heatCapacity: '120 kJ/K',
      conductance: '7 W/K',
      surroundings: '-8 °C',
      initial: '6 °C',
      heat: [['20 W', '5 h']],
      heatOf: 'charge',
      heater: { power: '400 W', on: '2 °C', off: '6 °C' },
      coolant: {
        heatCapacity: '15 kJ/K',
        fromCells: '100 W/K',
        toSurroundings: '4 W/K',
        fluid: 'ethylene glycol 50 %',
      },
      limits: { low: '-10 °C', charge: '0 °C' },
    },
    worse: {
      surroundings: 'less',
      initial: 'less',
      conductance: 'more',
      'coolant.toSurroundings': 'more',
      'heater.power': 'less',
      'heater.on': 'less',
      'limits.low': 'more',
      'limits.charge': 'more',
    },
  },
  {
    procedure: cabinHeat,
    sound: {
      airFlow: '90 m³/h',
      outside: '-5 °C',
      inside: '18 °C',
      lossConductance: '45 W/K',
      heaterKind: 'heat pump',
      coefficientOfPerformance: 7,
      time: '3 h',
      packEnergy: '1 kWh',
    },
    // Not coefficientOfPerformance: the more, the less energy, and the nearer to what no heat pump reaches.
    worse: {
      airFlow: 'more',
      outside: 'less',
      inside: 'more',
      lossConductance: 'more',
      time: 'more',
      packEnergy: 'less',
    },
  },
  {
    procedure: winterStart,
    sound: {
      pack: { heatCapacity: '150 kJ/K', energy: '2 kWh' },
      // Warmer than the surroundings, whatever is drawn: what is colder is warmed by them.
      from: '0 °C',
      to: '14 °C',
      heaterPower: '900 W',
      conductance: '8 W/K',
      surroundings: '-28 °C',
      chargeLimit: '5 °C',
    },
    worse: {
      'pack.heatCapacity': 'more',
      'pack.energy': 'less',
      from: 'less',
      heaterPower: 'less',
      conductance: 'more',
      surroundings: 'less',
      chargeLimit: 'more',
    },
  },
]
