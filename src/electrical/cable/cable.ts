/**
 * Voltage drop, losses and heating of the cables between pack, controller and loads.
 *
 * Rests on IEC 60364-5-52 (drop), IEC 60364-5-54 and IEC 60949 (adiabatic heating), and NEC 310 (ampacity at
 * another ambient temperature).
 */
import { cite, constant, definition, formula, icePoint, input, output } from '../../formula/index.js'

/**
 * DC voltage lost over a two-wire cable run, out and back.
 *
 * `dU = 2 * I * r * l`
 *
 * - `current` (`I`, A): steady current, at least 0 A
 * - `resistancePerLength` (`r`, mΩ/m): resistance of one conductor per length, above 0 mΩ/m
 * - `length` (`l`, m): one-way length of the run, at least 0 m
 * - gives `dU`: voltage lost out and back, in V
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-5-52, Annex G.
 *
 * @example
 * ```ts
 * cableVoltageDrop({ current: '10 A', resistancePerLength: '1.84 mΩ/m', length: '0.5 m' })
 * // 0.0184 V
 * // BS 7671:2008, Appendix 4, 25 mm² flexible cord, 60 °C (recomputed): 18.4 mV
 * ```
 */
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

/**
 * Resistance of a two-wire cable run, out and back: what it adds to a circuit.
 *
 * `R = 2 * r * l`
 *
 * - `resistancePerLength` (`r`, mΩ/m): resistance of one conductor per length, above 0 mΩ/m
 * - `length` (`l`, m): one-way length of the run, at least 0 m
 * - gives `R`: resistance out and back, in mΩ
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * loopResistance({ resistancePerLength: '0.206 mΩ/m', length: '5 m' })
 * // 2.06 mΩ
 * // IEC 60228, table 3, 95 mm² class 5: 0.206 Ω/km (recomputed): 2.06 mΩ
 * ```
 */
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
 * Heat that a two-wire cable run gives off, both conductors together. For a current that varies, give its root mean
 * square, not its mean.
 *
 * `P = 2 * I^2 * r * l`
 *
 * - `current` (`I`, A): steady or root-mean-square current, at least 0 A
 * - `resistancePerLength` (`r`, mΩ/m): resistance of one conductor per length, above 0 mΩ/m
 * - `length` (`l`, m): one-way length of the run, at least 0 m
 * - gives `P`: heat lost in both conductors, in W
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * cableLoss({ current: '150 A', resistancePerLength: '0.706405 mΩ/m', length: '3 m' })
 * // 95.36 W
 * // IEC 60228, 35 mm² class 5, 0.554 Ω/km at 20 °C, taken to 90 °C (recomputed): 95.4 W
 * ```
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
 * The constant k of a conductor metal between two temperatures: with it, a conductor of section S withstands a
 * current I for a time t when I²t is at most k²S². State the initial temperature with it: 143 A·√s/mm² is copper from
 * 30 °C to the 160 °C of PVC, and also copper from 90 °C to the 250 °C of cross-linked polyethylene.
 *
 * `k = sqrt(Qc * (beta + dT20) / rho20 * log((beta + Tf - T0) / (beta + Ti - T0)))`
 *
 * - `volumetricHeat` (`Qc`, J/(m³·K)): volumetric heat of the metal at 20 °C, above 0 J/(m³·K)
 * - `beta` (`beta`, K): reciprocal of the temperature coefficient of resistance at 0 °C, above 0 K
 * - `resistivity` (`rho20`, Ω·m): resistivity of the metal at 20 °C, above 0 Ω·m
 * - `initial` (`Ti`, °C): temperature of the conductor before the fault
 * - `final` (`Tf`, °C): greatest temperature that the insulation withstands
 * - gives `k`: adiabatic constant, in A·√s/mm²
 * - `T0` = 0 °C: zero on the Celsius scale (ISO 80000-5, Celsius temperature)
 * - `dT20` = 20 K: reference temperature of the resistivity, above 0 °C (IEC 60364-5-54, Annex A)
 * - holds where beta + initial, in °C is above 0
 * - holds where final - initial is above 0
 * - Assumes: no heat leaves the conductor during the fault
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-5-54, Annex A.
 *
 * @example
 * ```ts
 * adiabaticConstant({
 *   volumetricHeat: '0.00345 J/(mm³·K)',
 *   beta: '234.5 K',
 *   resistivity: '0.017241 Ω·mm²/m',
 *   initial: '90 °C',
 *   final: '250 °C',
 * })
 * // 142.9 A·√s/mm²
 * // IEC 60364-5-54, Annex A, table of k (read): 143 A·√s/mm²
 * ```
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
      kind: 'temperatureDifference',
      value: ({ beta, initial }, { T0 }) => beta + initial - T0,
      above: 0,
    },
    { of: 'final - initial', kind: 'temperatureDifference', value: ({ initial, final }) => final - initial, above: 0 },
  ],
  assumes: ['No heat leaves the conductor during the fault.'],
  source: cite('IEC 60364-5-54', 'Annex A'),
  compute: ({ volumetricHeat, beta, resistivity, initial, final }, { T0, dT20 }) =>
    Math.sqrt(((volumetricHeat * (beta + dT20)) / resistivity) * Math.log((beta + final - T0) / (beta + initial - T0))),
})

/**
 * The I²t of a fault that a conductor withstands. The fuse must let through less at every current that the fault can
 * have.
 *
 * `I2t = k^2 * S^2`
 *
 * - `constant` (`k`, A·√s/mm²): adiabatic constant of metal and insulation, above 0 A·√s/mm²
 * - `area` (`S`, m²): section of the conductor, at least 0 m²
 * - gives `I2t`: joule integral withstood, in A²·s
 * - Assumes: the fault lasts 5 s at most, so that hardly any heat leaves the conductor
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-5-54, 543.1.2.
 *
 * @example
 * ```ts
 * adiabaticWithstand({ constant: '115 A·√s/mm²', area: '50 mm²' })
 * // 33060000 A²·s
 * // IEC 60364-5-54, copper in PVC, 50 mm² for 1 s: 5750 A (recomputed): 33.0625 kA²·s
 * ```
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
 * Time for which a conductor withstands a fault current. Beyond 5 s the heat that leaves the conductor counts, and
 * the formula refuses.
 *
 * `t = (k * S / I)^2`
 *
 * - `constant` (`k`, A·√s/mm²): adiabatic constant of metal and insulation, above 0 A·√s/mm²
 * - `area` (`S`, m²): section of the conductor, at least 0 m²
 * - `current` (`I`, A): fault current, above 0 A
 * - gives `t`: time withstood, in s
 * - holds where (constant * area / current)^2 is at most 5
 * - Assumes: no heat leaves the conductor during the fault
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-5-54, 543.1.2.
 *
 * @example
 * ```ts
 * adiabaticTime({ constant: '143 A·√s/mm²', area: '35 mm²', current: '6 kA' })
 * // 0.6958 s
 * // IEC 60364-5-54, 543.1.2 (recomputed): 0.6958 s
 * ```
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
      of: '(constant * area / current)^2',
      kind: 'time',
      value: ({ constant: k, area, current }) => ((k * area) / current) ** 2,
      max: 5,
    },
  ],
  assumes: ['No heat leaves the conductor during the fault.'],
  source: cite('IEC 60364-5-54', '543.1.2'),
  compute: ({ constant: k, area, current }) => ((k * area) / current) ** 2,
})

/**
 * Ampacity of a conductor at an ambient temperature other than that of its table. The table's conditions (bundling,
 * duct or free air) still hold.
 *
 * `Ia = I * sqrt((Tc - Ta) / (Tc - Tr))`
 *
 * - `ampacity` (`I`, A): ampacity from a table, at least 0 A
 * - `rated` (`Tc`, °C): temperature rating of the conductor
 * - `ratedAmbient` (`Tr`, °C): ambient temperature of the table
 * - `ambient` (`Ta`, °C): ambient temperature
 * - gives `Ia`: ampacity at the ambient temperature, in A
 * - holds where rated - ratedAmbient is above 0
 * - holds where rated - ambient is at least 0
 * - Assumes: the heat given off grows in proportion to the temperature rise
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: NFPA 70 (NEC), 310.15(B).
 *
 * @example
 * ```ts
 * ampacityAtAmbient({ ampacity: '100 A', rated: '90 °C', ratedAmbient: '30 °C', ambient: '40 °C' })
 * // 91.29 A
 * // NFPA 70 (NEC), 310.15(B)(1), 90 °C at 40 °C (read): 91 A
 * ```
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
    {
      of: 'rated - ratedAmbient',
      kind: 'temperatureDifference',
      value: ({ rated, ratedAmbient }) => rated - ratedAmbient,
      above: 0,
    },
    { of: 'rated - ambient', kind: 'temperatureDifference', value: ({ rated, ambient }) => rated - ambient, min: 0 },
  ],
  assumes: ['The heat given off grows in proportion to the temperature rise.'],
  source: cite('NFPA 70 (NEC)', '310.15(B)'),
  compute: ({ ampacity, rated, ratedAmbient, ambient }) =>
    ampacity * Math.sqrt((rated - ambient) / (rated - ratedAmbient)),
})
