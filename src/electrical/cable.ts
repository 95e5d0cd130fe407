/**
 * Voltage drop, losses and heating of the cables between pack, controller and loads.
 *
 * Rests on IEC 60364-5-52 (drop), IEC 60364-5-54 and IEC 60949 (adiabatic heating), and NEC 310 (ampacity at
 * another ambient temperature).
 */
import { cite, constant, definition, formula, icePoint, input, output } from '../formula/index.js'

/** DC voltage lost over a two-wire cable run, out and back. */
export const cableVoltageDrop = /*@__PURE__*/ formula({
  name: 'cableVoltageDrop',
  title: 'Voltage drop of a two-wire cable run',
  inputs: {
    current: input('current', 'I', 'Steady current', { min: 0 }),
    resistancePerLength: input('resistancePerLength', 'r', 'Resistance of one conductor per length', { above: 0 }),
    length: input('length', 'l', 'One-way length of the run', { min: 0 }),
  },
  result: output('voltage', 'dU', 'Voltage lost out and back'),
  expression: '2 * I * r * l',
  source: cite('IEC 60364-5-52', 'Annex G'),
  compute: ({ current, resistancePerLength, length }) => 2 * current * resistancePerLength * length,
})

/** Resistance of a two-wire cable run, out and back: what it adds to a circuit. */
export const loopResistance = /*@__PURE__*/ formula({
  name: 'loopResistance',
  title: 'Resistance of a two-wire cable run',
  inputs: {
    resistancePerLength: input('resistancePerLength', 'r', 'Resistance of one conductor per length', { above: 0 }),
    length: input('length', 'l', 'One-way length of the run', { min: 0 }),
  },
  result: output('resistance', 'R', 'Resistance out and back'),
  expression: '2 * r * l',
  source: definition,
  compute: ({ resistancePerLength, length }) => 2 * resistancePerLength * length,
})

/**
 * Heat that a two-wire cable run gives off, both conductors together. For a current that varies, give its
 * root mean square, not its mean.
 */
export const cableLoss = /*@__PURE__*/ formula({
  name: 'cableLoss',
  title: 'Heat lost in a two-wire cable run',
  inputs: {
    current: input('current', 'I', 'Steady or root-mean-square current', { min: 0 }),
    resistancePerLength: input('resistancePerLength', 'r', 'Resistance of one conductor per length', { above: 0 }),
    length: input('length', 'l', 'One-way length of the run', { min: 0 }),
  },
  result: output('power', 'P', 'Heat lost in both conductors', 'W'),
  expression: '2 * I^2 * r * l',
  source: definition,
  compute: ({ current, resistancePerLength, length }) => 2 * current ** 2 * resistancePerLength * length,
})

/**
 * The constant k of a conductor metal between two temperatures: with it, a conductor of section S withstands
 * a current I for a time t when I²t is at most k²S². State the initial temperature with it: 143 A·√s/mm² is
 * copper from 30 °C to the 160 °C of PVC, and also copper from 90 °C to the 250 °C of cross-linked polyethylene.
 */
export const adiabaticConstant = /*@__PURE__*/ formula({
  name: 'adiabaticConstant',
  title: 'Adiabatic constant of a conductor',
  inputs: {
    volumetricHeat: input('volumetricHeat', 'Qc', 'Volumetric heat of the metal at 20 °C', { above: 0 }),
    beta: input('temperatureDifference', 'beta', 'Reciprocal of the temperature coefficient of resistance at 0 °C', {
      above: 0,
    }),
    resistivity: input('resistivity', 'rho20', 'Resistivity of the metal at 20 °C', { above: 0 }),
    initial: input('temperature', 'Ti', 'Temperature of the conductor before the fault'),
    final: input('temperature', 'Tf', 'Greatest temperature that the insulation withstands'),
  },
  result: output('adiabaticConstant', 'k', 'Adiabatic constant'),
  expression: 'sqrt(Qc * (beta + dT20) / rho20 * log((beta + Tf - T0) / (beta + Ti - T0)))',
  constants: {
    T0: icePoint,
    dT20: constant(
      'temperatureDifference',
      '20 K',
      'Reference temperature of the resistivity, above 0 °C',
      cite('IEC 60364-5-54', 'Annex A'),
    ),
  },
  valid: [
    {
      of: 'beta + initial, in °C',
      value: ({ beta, initial }, { T0 }) => beta + initial - T0,
      above: 0,
    },
    { of: 'final - initial', value: ({ initial, final }) => final - initial, above: 0 },
  ],
  assumes: ['No heat leaves the conductor during the fault.'],
  source: cite('IEC 60364-5-54', 'Annex A'),
  compute: ({ volumetricHeat, beta, resistivity, initial, final }, { T0, dT20 }) =>
    Math.sqrt(((volumetricHeat * (beta + dT20)) / resistivity) * Math.log((beta + final - T0) / (beta + initial - T0))),
})

/**
 * The I²t of a fault that a conductor withstands. The fuse must let through less at every current that the
 * fault can have.
 */
export const adiabaticWithstand = /*@__PURE__*/ formula({
  name: 'adiabaticWithstand',
  title: 'Joule integral that a conductor withstands',
  inputs: {
    constant: input('adiabaticConstant', 'k', 'Adiabatic constant of metal and insulation', { above: 0 }),
    area: input('area', 'S', 'Section of the conductor', { min: 0 }),
  },
  result: output('jouleIntegral', 'I2t', 'Joule integral withstood'),
  expression: 'k^2 * S^2',
  assumes: ['The fault lasts 5 s at most, so that hardly any heat leaves the conductor.'],
  source: cite('IEC 60364-5-54', '543.1.2'),
  compute: ({ constant: k, area }) => k ** 2 * area ** 2,
})

/**
 * Time for which a conductor withstands a fault current. Beyond 5 s the heat that leaves the conductor counts,
 * and the formula refuses.
 */
export const adiabaticTime = /*@__PURE__*/ formula({
  name: 'adiabaticTime',
  title: 'Time for which a conductor withstands a fault',
  inputs: {
    constant: input('adiabaticConstant', 'k', 'Adiabatic constant of metal and insulation', { above: 0 }),
    area: input('area', 'S', 'Section of the conductor', { min: 0 }),
    current: input('current', 'I', 'Fault current', { above: 0 }),
  },
  result: output('time', 't', 'Time withstood'),
  expression: '(k * S / I)^2',
  valid: [
    {
      of: '(constant * area / current)^2, in seconds',
      value: ({ constant: k, area, current }) => ((k * area) / current) ** 2,
      max: 5,
    },
  ],
  assumes: ['No heat leaves the conductor during the fault.'],
  source: cite('IEC 60364-5-54', '543.1.2'),
  compute: ({ constant: k, area, current }) => ((k * area) / current) ** 2,
})

/**
 * Ampacity of a conductor at an ambient temperature other than that of its table. The table's conditions
 * (bundling, duct or free air) still hold.
 */
export const ampacityAtAmbient = /*@__PURE__*/ formula({
  name: 'ampacityAtAmbient',
  title: 'Ampacity at another ambient temperature',
  inputs: {
    ampacity: input('current', 'I', 'Ampacity from a table', { min: 0 }),
    rated: input('temperature', 'Tc', 'Temperature rating of the conductor'),
    ratedAmbient: input('temperature', 'Tr', 'Ambient temperature of the table'),
    ambient: input('temperature', 'Ta', 'Ambient temperature'),
  },
  result: output('current', 'Ia', 'Ampacity at the ambient temperature'),
  expression: 'I * sqrt((Tc - Ta) / (Tc - Tr))',
  valid: [
    { of: 'rated - ratedAmbient', value: ({ rated, ratedAmbient }) => rated - ratedAmbient, above: 0 },
    { of: 'rated - ambient', value: ({ rated, ambient }) => rated - ambient, min: 0 },
  ],
  assumes: ['The heat given off grows in proportion to the temperature rise.'],
  source: cite('NFPA 70 (NEC)', '310.15(B)'),
  compute: ({ ampacity, rated, ratedAmbient, ambient }) =>
    ampacity * Math.sqrt((rated - ambient) / (rated - ratedAmbient)),
})
