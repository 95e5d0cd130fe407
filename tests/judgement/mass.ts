/** Cases of weight and balance. The car is invented. */
import { brakeBalance, cornerLoads, exchangeMasses, placeMasses, restoreRide, weigh } from '../../src/mass/index.js'
import type { Table, Worse } from './judgement.js'

const van = {
  scales: { frontLeft: '171 kg', frontRight: '166 kg', rearLeft: '150 kg', rearRight: '153 kg' },
  wheelbase: '2.1 m',
  track: { front: '1.25 m', rear: '1.22 m' },
  raised: { rise: '450 mm', loadedRadius: '270 mm', front: '352.5 kg' },
} as const

const group = {
  name: 'module',
  mass: '15 kg',
  count: 5,
  size: { length: '0.4 m', width: '0.3 m', height: '0.12 m' },
} as const
const bay = {
  name: 'between the axles',
  at: { aft: '1 m', left: '0 m' },
  capacity: 6,
  inside: { length: '0.6 m', width: '0.7 m', height: '0.3 m' },
} as const
const placed = {
  base: { mass: '560 kg', centreOfGravity: { aft: '0.95 m', left: '0 m' } },
  groups: [group],
  bays: [bay],
  wheelbase: '2.1 m',
  track: { front: '1.25 m', rear: '1.22 m' },
  target: { frontShare: '54 %' },
  limits: { gross: '900 kg', frontAxle: '460 kg', rearAxle: '460 kg' },
} as const

const exchanged = {
  car: van,
  removed: [{ name: 'engine', mass: '120 kg', at: { aft: '-100 mm', left: '0 mm', up: '0.55 m' } }],
  added: [
    { name: 'motor', mass: '50 kg', at: { aft: '100 mm', left: '0 mm', up: '0.45 m' } },
    { name: 'pack', mass: '90 kg', at: { aft: '900 mm', left: '0 mm', up: '0.45 m' } },
  ],
  limits: { gross: '1000 kg', frontAxle: '480 kg', rearAxle: '560 kg' },
} as const

const braked = {
  mass: '800 kg',
  wheelbase: '2.1 m',
  centreOfGravity: { aft: '0.987 m', up: '0.5 m' },
  frontBrakeShare: '75 %',
} as const
const cylinders = {
  frontBrakeShare: undefined,
  front: { pistonArea: '1600 mm²', brakeFactor: 0.7, effectiveRadius: '100 mm', rollingRadius: '0.27 m' },
  rear: { pistonArea: '300 mm²', brakeFactor: 2.4, effectiveRadius: '100 mm', rollingRadius: '0.27 m' },
} as const

export const mass: { readonly [name: string]: Table } = {
  brakeBalance: {
    call: brakeBalance,
    sound: braked,
    cases: [
      {
        what: 'brakes whose rear wheels lock first on a dry road',
        dangerous: { frontBrakeShare: '70 %' },
        told: ['brakes.order', 'fail'],
        sound: { frontBrakeShare: '70 %', antiLock: true },
      },
      {
        what: 'a pack that lies higher than the engine did',
        dangerous: { centreOfGravity: { up: '0.62 m' } },
        told: ['brakes.order', 'fail'],
        sound: { centreOfGravity: { up: '0.52 m' } },
      },
      {
        what: 'a pack ahead of the front axle, which takes load off behind',
        dangerous: { centreOfGravity: { aft: '0.85 m' } },
        told: ['brakes.order', 'fail'],
      },
      {
        what: 'brakes of which nobody knows how they share their force',
        dangerous: { frontBrakeShare: undefined },
        told: ['brakes.order', 'unknown'],
      },
      {
        what: 'a motor that goes on braking behind',
        dangerous: { regeneration: { rear: '900 N' } },
        told: ['brakes.regeneration', 'fail'],
        sound: { regeneration: { front: '900 N' } },
      },
      {
        what: 'drums behind without a valve',
        dangerous: cylinders,
        told: ['brakes.order', 'fail'],
        sound: { ...cylinders, valve: { pressure: '1.8 MPa', slope: 0.3 } },
      },
      {
        what: 'a valve that comes too late',
        dangerous: { ...cylinders, valve: { pressure: '40 bar', slope: 0.3 } },
        told: ['brakes.order', 'fail'],
      },
    ],
  },
  weigh: {
    call: weigh,
    sound: van,
    cases: [
      {
        what: 'a car with next to nothing on its steered axle',
        dangerous: { scales: { frontLeft: '25 kg', frontRight: '22 kg' }, raised: undefined },
        told: ['weighing.frontShare', 'fail'],
      },
      {
        what: 'pounds that were written as kilograms',
        dangerous: {
          scales: { frontLeft: '442 kg', frontRight: '429 kg', rearLeft: '388 kg', rearRight: '396 kg' },
          raised: undefined,
        },
        told: /Kerb mass: 1655 kg is unusual; light road cars have 400 kg to 1600 kg/,
        sound: {
          scales: { frontLeft: '242 kg', frontRight: '236 kg', rearLeft: '213 kg', rearRight: '217 kg' },
          raised: undefined,
        },
      },
      {
        what: 'a decimal point that was lost on every scale',
        dangerous: {
          scales: { frontLeft: '1712 kg', frontRight: '1664 kg', rearLeft: '1503 kg', rearRight: '1531 kg' },
          raised: undefined,
        },
        told: ['weighing.kerbMass', 'fail'],
      },
      {
        what: 'a front share that is unusual',
        dangerous: { scales: { rearLeft: '80 kg', rearRight: '83 kg' }, raised: undefined },
        told: /Share of the front wheels: 67\.4 % is unusual/,
      },
      {
        what: 'a car that leans on one side',
        dangerous: { scales: { frontLeft: '230 kg', rearLeft: '190 kg' }, raised: undefined },
        told: ['weighing.leftShare', 'fail'],
      },
      {
        what: 'a car that rocks on two wheels',
        dangerous: {
          scales: { frontLeft: '120 kg', frontRight: '217 kg', rearLeft: '200 kg', rearRight: '103 kg' },
          raised: undefined,
        },
        told: ['weighing.crossShare', 'fail'],
      },
      {
        what: 'a scale that stuck while the rear was raised',
        dangerous: { raised: { front: '337 kg' } },
        told: ['weighing.moved', 'fail'],
      },
      {
        what: 'a reading that puts the centre above any roof',
        dangerous: { raised: { front: '398 kg' } },
        told: ['weighing.height', 'fail'],
      },
      {
        what: 'a wheelbase in millimetres that was written in metres',
        dangerous: { wheelbase: '2100 m', raised: undefined },
        told: /Did you mean 2100 mm/,
      },
      {
        what: 'a track that no car has',
        dangerous: { track: { front: '1.25 mm' }, raised: undefined },
        told: /Front track: 1\.25 mm is unusual/,
      },
    ],
  },
  exchangeMasses: {
    call: exchangeMasses,
    sound: exchanged,
    cases: [
      {
        what: 'a pack in the tail that leaves nothing to steer by',
        dangerous: { added: [{ name: 'pack', mass: '260 kg', at: { aft: '2.2 m', left: '0 mm', up: '0.5 m' } }] },
        told: ['exchange.frontShare', 'fail'],
      },
      {
        what: 'an axle beyond its limit',
        dangerous: { limits: { rearAxle: '330 kg' } },
        told: ['exchange.rearMass', 'fail'],
      },
      {
        what: 'a weighing gone wrong, on which all that follows rests',
        dangerous: { car: { raised: { front: '340.5 kg', loadedRadius: '300 mm' } } },
        told: ['weighing.heightOverRadius', 'fail'],
        sound: { car: { raised: { front: '353 kg', loadedRadius: '275 mm' } } },
      },
      {
        what: 'a scale that stuck while the rear was raised',
        dangerous: { car: { raised: { front: '337.2 kg' } } },
        told: ['weighing.moved', 'fail'],
      },
      {
        what: 'a car that was weighed leaning, though it stands well after the exchange',
        dangerous: {
          car: { scales: { frontLeft: '196 kg', rearLeft: '172 kg' }, raised: undefined },
          added: [{ name: 'pack', mass: '120 kg', at: { aft: '1 m', left: '-200 mm' } }],
        },
        told: /Share of the left wheels: 53\.57 % is unusual/,
      },
    ],
  },
  placeMasses: {
    call: placeMasses,
    sound: placed,
    cases: [
      {
        what: 'a bay that cannot carry what is put into it',
        dangerous: { bays: [{ ...bay, maximumMass: '60 kg' }] },
        told: ['bay.1.mass', 'fail'],
        sound: { bays: [{ ...bay, maximumMass: '90 kg' }] },
      },
      {
        what: 'modules that are too long for the bay',
        dangerous: { groups: [{ ...group, size: { length: '0.75 m', width: '0.2 m', height: '0.1 m' } }] },
        told: ['bay.1.room', 'fail'],
      },
      {
        what: 'more modules than the room holds',
        dangerous: { bays: [{ ...bay, inside: { length: '0.5 m', width: '0.4 m', height: '0.2 m' } }] },
        told: ['bay.1.room', 'fail'],
      },
      {
        what: 'modules of no stated size in a bay of stated room',
        dangerous: { groups: [{ ...group, size: undefined }] },
        told: ['bay.1.room', 'unknown'],
      },
      {
        what: 'modules where a crash crushes the car',
        dangerous: { bays: [{ ...bay, at: { aft: '-0.3 m', left: '0 m' } }], target: { frontShare: '61 %' } },
        told: /Ahead of the front axle and behind the rear one a crash crushes/,
      },
      {
        what: 'an axle that carries too much',
        dangerous: { limits: { frontAxle: '300 kg' } },
        told: ['placing.frontAxle', 'fail'],
      },
    ],
  },
  restoreRide: {
    call: restoreRide,
    sound: {
      axles: {
        front: { before: '290 kg', after: '275 kg', springRate: '18 N/mm', motionRatio: 1 },
        rear: {
          before: '240 kg',
          after: '290 kg',
          springRate: '17 N/mm',
          motionRatio: 1,
          keepHeight: true,
          travel: '25 mm',
        },
      },
    },
    cases: [
      {
        what: 'springs on which the car bounds',
        dangerous: { axles: { front: { targetFrequency: '4 Hz' } } },
        told: ['ride.front.frequency', 'fail'],
      },
      {
        what: 'dampers that still next to nothing',
        dangerous: { axles: { front: { damper: { damping: '150 N·s/m', motionRatio: 1 } } } },
        told: ['ride.front.damping', 'fail'],
        sound: { axles: { front: { damper: { damping: '1000 N·s/m', motionRatio: 1 } } } },
      },
      {
        what: 'a seat that cannot be moved so far',
        dangerous: { axles: { rear: { travel: '10 mm' } } },
        told: ['ride.rear.travel', 'fail'],
      },
      {
        what: 'ends that do not go together',
        dangerous: { axles: { front: { targetFrequency: '0.9 Hz' } } },
        told: ['ride.ratio', 'fail'],
      },
    ],
  },
}

// None of weigh: its figures are plausible between two ends, and too much of one is as wrong as too little.
export const massLaws: readonly Worse[] = [
  {
    procedure: cornerLoads,
    sound: {
      mass: '650 kg',
      centreOfGravity: { aft: '0.94 m', left: '0.3 m' },
      wheelbase: '2.1 m',
      track: { front: '1.25 m', rear: '1.22 m' },
      rates: { frontLeft: '8 N/mm', frontRight: '8 N/mm', rearLeft: '7 N/mm', rearRight: '7 N/mm' },
    },
    // Not the rates: a softer end may bring the body level.
    worse: { mass: 'more', 'centreOfGravity.left': 'more' },
  },
  {
    procedure: exchangeMasses,
    sound: exchanged,
    worse: {
      'added.1.mass': 'more',
      'added.1.at.up': 'more',
      'limits.gross': 'less',
      'limits.frontAxle': 'less',
      'limits.rearAxle': 'less',
    },
  },
  {
    procedure: placeMasses,
    sound: { ...placed, bays: [{ ...bay, maximumMass: '110 kg' }], target: { leftShare: '50 %' } },
    worse: {
      'base.mass': 'more',
      'groups.0.mass': 'more',
      'groups.0.count': 'more',
      'groups.0.size.length': 'more',
      'groups.0.size.width': 'more',
      'groups.0.size.height': 'more',
      'bays.0.maximumMass': 'less',
      'bays.0.inside.length': 'less',
      'bays.0.inside.width': 'less',
      'bays.0.inside.height': 'less',
      'limits.gross': 'less',
      'limits.frontAxle': 'less',
      'limits.rearAxle': 'less',
    },
  },
  {
    procedure: restoreRide,
    sound: {
      axles: {
        front: { before: '290 kg', after: '275 kg', springRate: '18 N/mm', motionRatio: 1, travel: '20 mm' },
        // So much lighter before that the seat is raised whatever is drawn.
        rear: {
          before: '150 kg',
          after: '280 kg',
          springRate: '17 N/mm',
          motionRatio: 0.9,
          keepHeight: true,
          travel: '60 mm',
        },
      },
    },
    worse: {
      'axles.rear.after': 'more',
      'axles.rear.springRate': 'less',
      'axles.rear.travel': 'less',
    },
  },
]
