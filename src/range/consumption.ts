/**
 * From power at the wheels to power at the battery, energy per distance, and range.
 *
 * Rests on definitions; Larminie & Lowry, Electric Vehicle Technology Explained, chapter 7, has the same chain.
 */
import { cite, definition, formula, input, output } from '../formula/index.js'

/**
 * Power that the battery gives at its terminals to drive the wheels and feed what else is on. It holds while the
 * wheels are driven; under regeneration the efficiencies act the other way.
 */
export const batteryPower = /*@__PURE__*/ formula({
  name: 'batteryPower',
  title: 'Battery power for a power at the wheels',
  inputs: {
    wheelPower: input('power', 'P_w', 'Power at the driven wheels', { min: 0 }),
    drivelineEfficiency: input('ratio', 'eta_d', 'Efficiency from motor shaft to wheels', { above: 0, max: 1 }),
    motorEfficiency: input('ratio', 'eta_m', 'Efficiency of motor and controller', { above: 0, max: 1 }),
    auxiliary: input('power', 'P_a', 'Power of lights, heater and other loads', { min: 0 }),
  },
  result: output('power', 'P_b', 'Power at the battery terminals'),
  expression: 'P_w / (eta_d * eta_m) + P_a',
  source: cite('Larminie & Lowry, Electric Vehicle Technology Explained (2003)', 'chapter 7'),
  compute: ({ wheelPower, drivelineEfficiency, motorEfficiency, auxiliary }) =>
    wheelPower / (drivelineEfficiency * motorEfficiency) + auxiliary,
})

/** Energy used over a distance at a steady speed. Downhill it may be negative. */
export const consumption = /*@__PURE__*/ formula({
  name: 'consumption',
  title: 'Energy per distance at a steady speed',
  inputs: {
    power: input('power', 'P', 'Power drawn'),
    speed: input('speed', 'v', 'Road speed', { above: 0 }),
  },
  result: output('energyPerDistance', 'e', 'Energy per distance'),
  expression: 'P / v',
  source: definition,
  compute: ({ power, speed }) => power / speed,
})

/** Distance that an amount of energy lasts. */
export const rangeFromConsumption = /*@__PURE__*/ formula({
  name: 'rangeFromConsumption',
  title: 'Range from energy and consumption',
  inputs: {
    energy: input('energy', 'E', 'Energy that may be used', { min: 0 }),
    consumption: input('energyPerDistance', 'e', 'Energy per distance', { above: 0 }),
  },
  result: output('length', 's', 'Range', 'km'),
  expression: 'E / e',
  source: definition,
  compute: ({ energy, consumption }) => energy / consumption,
})
