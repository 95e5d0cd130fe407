/** Invented cars, and cars and cycles at random, for the tests of this domain. */
import fc from 'fast-check'
import { quantity } from '../../src/quantity/index.js'
import { type driveCycle, readCycle } from '../../src/range/index.js'
import { between } from '../between.js'

type Given = Parameters<typeof driveCycle>[0]

/** A light van told by as little as will do. */
export const least = {
  car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
  gearbox: { efficiency: 0.93 },
  motor: { efficiency: 0.86 },
  cycle: 'NEDC',
} as const satisfies Given

export const module = {
  name: 'invented module',
  cellsInSeries: 12,
  nominalVoltage: '44.4 V',
  minimumVoltage: '36 V',
  maximumVoltage: '50.4 V',
  capacity: '41 Ah',
  resistance: '14 mΩ',
  mass: '11.5 kg',
  continuousCurrent: '80 A',
  peakCurrent: '200 A',
  chargeCurrent: '60 A',
  openCircuit: [
    [0, '36 V'],
    [0.05, '40.5 V'],
    [0.3, '43.4 V'],
    [0.5, '44.5 V'],
    [0.8, '47.5 V'],
    [1, '50.2 V'],
  ],
} as const

/** The same with one voltage at rest, whatever its charge. */
export const flat = {
  ...module,
  openCircuit: [
    [0, '44 V'],
    [1, '44 V'],
  ],
} as const

export const gears = { first: 3.6, second: 2.1, third: 1.4, fourth: 1 } as const

export const motor = {
  peakTorque: '110 N·m',
  peakPower: '42 kW',
  continuousTorque: '60 N·m',
  maximumSpeed: '8000 rpm',
  ratedVoltage: '144 V',
  loss: {
    lossPerTorqueSquared: '0.25 W/(N·m)²',
    lossPerSpeed: '0.5 W/(rad/s)',
    lossPerSpeedCubed: '1e-6 W/(rad/s)³',
    constant: '120 W',
  },
  inertia: '0.03 kg·m²',
} as const

/** The same van with its gears, the limits of its motor, its grip and its pack. */
export const whole = {
  car: {
    ...least.car,
    wheelInertia: '2.4 kg·m²',
    wheelbase: '2.1 m',
    centreOfGravity: { aft: '1 m', up: '0.5 m' },
    drivenAxle: 'rear',
    tyre: '155/80 R13',
    friction: 0.8,
  },
  gearbox: { gears, finalDrive: 4.1, efficiency: 0.93 },
  motor,
  auxiliaries: '250 W',
  controller: { regeneration: 0.6 },
  pack: { module, series: 4, parallel: 2 },
  cycle: 'NEDC',
} as const satisfies Given

/** A trace of a minute or two, with stops, at steps that are not even. */
const traces = fc
  .array(fc.record({ lasts: between(0.3, 9), speed: fc.oneof(fc.constant(0), between(0, 28)) }), {
    minLength: 2,
    maxLength: 25,
  })
  .map((rows) => {
    let time = 0
    const lines = rows.map(({ lasts, speed }) => {
      time += lasts
      return `${time},${speed}`
    })
    return readCycle({ log: `t (s),v (m/s)\n0,0\n${lines.join('\n')}` })
  })

const journeys = fc
  .array(
    fc.record({
      distance: between(5, 3000),
      speed: between(5, 130),
      grade: between(-0.15, 0.15),
      temperature: between(-20, 40),
      headwind: between(-10, 10),
      stops: fc.option(fc.record({ stops: fc.integer({ min: 1, max: 3 }), standing: between(0, 30) })),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((stretches) =>
    stretches.map(({ distance, speed, grade, temperature, headwind, stops }) => ({
      distance: quantity('length', distance, 'm'),
      speed: quantity('speed', speed, 'km/h'),
      grade,
      temperature: quantity('temperature', temperature, '°C'),
      headwind: quantity('speed', headwind, 'm/s'),
      ...(stops === null ? {} : { stops: stops.stops, standing: quantity('time', stops.standing, 's') }),
    })),
  )

/** Cars of every sort on cycles and journeys of every sort. */
export const drives: fc.Arbitrary<Given> = fc
  .record({
    mass: between(300, 2500),
    rollingResistance: between(0, 0.03),
    dragArea: between(0, 1.5),
    share: between(0, 1),
    efficiency: between(0.5, 1),
    auxiliaries: between(0, 3000),
    power: between(5, 150),
    torque: between(30, 300),
    copper: between(0, 1),
    isWhole: fc.boolean(),
    friction: between(0.1, 1),
    parallel: fc.integer({ min: 1, max: 4 }),
    from: between(0.3, 1),
    road: fc.oneof(
      traces.map((cycle) => ({ cycle })),
      journeys.map((journey) => ({ journey })),
    ),
  })
  .map((drawn) => ({
    car: {
      ...(drawn.isWhole ? { ...whole.car, friction: drawn.friction } : {}),
      mass: quantity('mass', drawn.mass, 'kg'),
      rollingResistance: drawn.rollingResistance,
      dragArea: quantity('area', drawn.dragArea, 'm²'),
    },
    gearbox: drawn.isWhole ? { ...whole.gearbox, efficiency: drawn.efficiency } : { efficiency: drawn.efficiency },
    motor: drawn.isWhole
      ? {
          ...motor,
          continuousTorque: '10 N·m' as const,
          peakTorque: quantity('torque', drawn.torque, 'N·m'),
          peakPower: quantity('power', drawn.power, 'kW'),
          loss: { ...motor.loss, lossPerTorqueSquared: quantity('lossPerTorqueSquared', drawn.copper, 'W/(N·m)²') },
        }
      : { efficiency: drawn.efficiency },
    ...(drawn.isWhole
      ? {
          pack: { module, series: 4, parallel: drawn.parallel },
          stateOfCharge: drawn.from,
          reserve: 0.1,
        }
      : {}),
    auxiliaries: quantity('power', drawn.auxiliaries, 'W'),
    controller: { regeneration: drawn.share },
    ...drawn.road,
  }))
