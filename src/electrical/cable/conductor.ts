/**
 * Conductors: wire gauges, standard sections, materials, and resistance per length.
 *
 * Rests on ASTM B258 (American wire gauge), IEC 60228 (metric sections and their greatest resistances),
 * IEC 60028 (annealed copper), IEC 60889 (aluminium) and IEC 60364-5-54 (volumetric heat).
 */
import { cite, constant, definition, formula, input, output } from '../../formula/index.js'
import { InputError, shown } from '../../quantity/errors.js'
import { type Quantity, quantity } from '../../quantity/index.js'

/**
 * Diameter of a solid wire of an American wire gauge. Gauges above 1 count downwards: 1/0 is 0, 2/0 is −1, 4/0 is −3.
 *
 * `d = d36 * 92^((36 - n) / 39)`
 *
 * - `gauge` (`n`, a plain number): gauge number, 4/0 being −3, at least -3 and at most 56
 * - gives `d`: diameter of the solid wire, in mm
 * - `d36` = 0.127 mm: diameter of gauge 36, 0.005 in (ASTM B258)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: ASTM B258.
 *
 * @example
 * ```ts
 * awgDiameter({ gauge: -3 })
 * // 11.68 mm
 * // ASTM B258 (read): 11.684 mm
 * ```
 */
export const awgDiameter = /*@__PURE__*/ formula({
  name: 'awgDiameter',
  title: 'Diameter of an American wire gauge',
  inputs: {
    gauge: input('ratio', 'n', 'Gauge number, 4/0 being −3', { min: -3, max: 56 }),
  },
  result: output('length', 'd', 'Diameter of the solid wire', 'mm'),
  expression: 'd36 * 92^((36 - n) / 39)',
  constants: {
    d36: constant('length', '0.127 mm', 'Diameter of gauge 36, 0.005 in', cite('ASTM B258')),
  },
  source: cite('ASTM B258'),
  compute: ({ gauge }, { d36 }) => d36 * 92 ** ((36 - gauge) / 39),
})

/**
 * Cross-section of a solid round wire. Of a stranded conductor it is the section of one strand, not of the bundle.
 *
 * `A = pi / 4 * d^2`
 *
 * - `diameter` (`d`, m): diameter of the bare wire, at least 0 m
 * - gives `A`: cross-section, in mm²
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * wireArea({ diameter: '11.684 mm' })
 * // 107.2 mm²
 * // ASTM B258 (recomputed): 107.22 mm²
 * ```
 */
export const wireArea = /*@__PURE__*/ formula({
  name: 'wireArea',
  title: 'Cross-section of a round wire',
  inputs: {
    diameter: input('length', 'd', 'Diameter of the bare wire', { min: 0 }),
  },
  result: output('area', 'A', 'Cross-section', 'mm²'),
  expression: 'pi / 4 * d^2',
  source: definition,
  compute: ({ diameter }) => (Math.PI / 4) * diameter ** 2,
})

/**
 * Resistivity of a metal at its own temperature, from the value at 20 °C. The coefficient is the one at 20 °C, and
 * belongs to the metal: 0.00393 1/K for annealed copper.
 *
 * `rho = rho20 * (1 + alpha * (T - T20))`
 *
 * - `resistivity` (`rho20`, Ω·m): resistivity at 20 °C, above 0 Ω·m
 * - `coefficient` (`alpha`, 1/K): temperature coefficient at 20 °C, at least 0 1/K
 * - `temperature` (`T`, °C): temperature of the conductor
 * - gives `rho`: resistivity at the temperature, in Ω·mm²/m
 * - `T20` = 20 °C: reference temperature of the resistivity (IEC 60028)
 * - holds where 1 + coefficient * (temperature - 20 °C) is above 0
 * - Assumes: resistivity changes in a straight line with temperature
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60028.
 *
 * @example
 * ```ts
 * resistivityAt({ resistivity: '1 Ω·mm²/m', coefficient: '0.00393 1/K', temperature: '90 °C' })
 * // 1.275 Ω·mm²/m
 * // IEC 60028, coefficient of annealed copper (recomputed): 1.2751 Ω·mm²/m
 * ```
 */
export const resistivityAt = /*@__PURE__*/ formula({
  name: 'resistivityAt',
  title: 'Resistivity at a temperature',
  inputs: {
    resistivity: input('resistivity', 'rho20', 'Resistivity at 20 °C', { above: 0 }),
    coefficient: input('temperatureCoefficient', 'alpha', 'Temperature coefficient at 20 °C', { min: 0 }),
    temperature: input('temperature', 'T', 'Temperature of the conductor'),
  },
  result: output('resistivity', 'rho', 'Resistivity at the temperature', 'Ω·mm²/m'),
  expression: 'rho20 * (1 + alpha * (T - T20))',
  constants: {
    T20: constant('temperature', '20 °C', 'Reference temperature of the resistivity', cite('IEC 60028')),
  },
  valid: [
    {
      of: '1 + coefficient * (temperature - 20 °C)',
      value: ({ coefficient, temperature }, { T20 }) => 1 + coefficient * (temperature - T20),
      above: 0,
    },
  ],
  assumes: ['Resistivity changes in a straight line with temperature.'],
  source: cite('IEC 60028'),
  compute: ({ resistivity, coefficient, temperature }, { T20 }) =>
    resistivity * (1 + coefficient * (temperature - T20)),
})

/**
 * DC resistance of one conductor per length, from its metal and its true section of metal. A stranded conductor has
 * about 2 % more than a solid one of the same section, because its strands are laid in a helix.
 *
 * `r = rho / A`
 *
 * - `resistivity` (`rho`, Ω·m): resistivity at the temperature of the conductor, above 0 Ω·m
 * - `area` (`A`, m²): section of metal, above 0 m²
 * - gives `r`: resistance per length of one conductor, in mΩ/m
 * - Assumes: direct current, so that the whole section carries it
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * resistancePerLength({ resistivity: '0.017241 Ω·mm²/m', area: '107.22 mm²' })
 * // 0.1608 mΩ/m
 * // copper wire table (100 % IACS, 20 °C) (read): 0.1608 Ω/km
 * ```
 */
export const resistancePerLength = /*@__PURE__*/ formula({
  name: 'resistancePerLength',
  title: 'Resistance of a conductor per length',
  inputs: {
    resistivity: input('resistivity', 'rho', 'Resistivity at the temperature of the conductor', { above: 0 }),
    area: input('area', 'A', 'Section of metal', { above: 0 }),
  },
  result: output('resistancePerLength', 'r', 'Resistance per length of one conductor'),
  expression: 'rho / A',
  assumes: ['Direct current, so that the whole section carries it.'],
  source: definition,
  compute: ({ resistivity, area }) => resistivity / area,
})

/**
 * Resistance per length of a conductor at its own temperature, from the one at 20 °C that its standard or maker
 * states.
 *
 * `r = r20 * (1 + alpha * (T - T20))`
 *
 * - `resistance` (`r20`, mΩ/m): resistance per length at 20 °C, above 0 mΩ/m
 * - `coefficient` (`alpha`, 1/K): temperature coefficient at 20 °C, at least 0 1/K
 * - `temperature` (`T`, °C): temperature of the conductor
 * - gives `r`: resistance per length of one conductor, in mΩ/m
 * - `T20` = 20 °C: reference temperature of the resistance (IEC 60028)
 * - holds where 1 + coefficient * (temperature - 20 °C) is above 0
 * - Assumes: resistance changes in a straight line with temperature
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60028.
 *
 * @example
 * ```ts
 * resistancePerLengthAt({ resistance: '0.05 Ω/kft', coefficient: '0.00393 1/K', temperature: '75 °C' })
 * // 0.1995 mΩ/m
 * // NFPA 70 (NEC), chapter 9, Table 8, stranded 4/0 at 75 °C (recomputed): 0.0608 Ω/kft
 * ```
 */
export const resistancePerLengthAt = /*@__PURE__*/ formula({
  name: 'resistancePerLengthAt',
  title: 'Resistance of a conductor per length at a temperature',
  inputs: {
    resistance: input('resistancePerLength', 'r20', 'Resistance per length at 20 °C', { above: 0 }),
    coefficient: input('temperatureCoefficient', 'alpha', 'Temperature coefficient at 20 °C', { min: 0 }),
    temperature: input('temperature', 'T', 'Temperature of the conductor'),
  },
  result: output('resistancePerLength', 'r', 'Resistance per length of one conductor'),
  expression: 'r20 * (1 + alpha * (T - T20))',
  constants: {
    T20: constant('temperature', '20 °C', 'Reference temperature of the resistance', cite('IEC 60028')),
  },
  valid: [
    {
      of: '1 + coefficient * (temperature - 20 °C)',
      value: ({ coefficient, temperature }, { T20 }) => 1 + coefficient * (temperature - T20),
      above: 0,
    },
  ],
  assumes: ['Resistance changes in a straight line with temperature.'],
  source: cite('IEC 60028'),
  compute: ({ resistance, coefficient, temperature }, { T20 }) => resistance * (1 + coefficient * (temperature - T20)),
})

/** What a conductor is made of. */
export interface ConductorMaterial {
  /** Resistivity at 20 °C. */
  readonly resistivity: Quantity<'resistivity'>
  /** Temperature coefficient of resistance at 20 °C. */
  readonly coefficient: Quantity<'temperatureCoefficient'>
  /** Reciprocal of the temperature coefficient at 0 °C, as adiabatic heating uses it. */
  readonly beta: Quantity<'temperatureDifference'>
  /** Heat that warms a volume by a kelvin, at 20 °C. */
  readonly volumetricHeat: Quantity<'volumetricHeat'>
  /** Density at 20 °C. */
  readonly density: Quantity<'density'>
  readonly meltingPoint: Quantity<'temperature'>
}

/**
 * Copper (annealed, IEC 60028: 1/58 Ω·mm²/m, 0.00393 1/K) and aluminium (IEC 60889: 0.028264 Ω·mm²/m,
 * 0.00403 1/K), with the volumetric heat and `beta` of IEC 60364-5-54, Annex A. The densities, 8.89 g/cm³
 * and 2.703 g/cm³, are those of IEC 60028 and IEC 60889 from memory, and the melting points those of ITS-90.
 */
export const conductorMaterials: {
  readonly copper: ConductorMaterial
  readonly aluminium: ConductorMaterial
} = /*@__PURE__*/ (() => ({
  copper: {
    resistivity: quantity('resistivity', 1 / 58, 'Ω·mm²/m'),
    coefficient: quantity('temperatureCoefficient', '0.00393 1/K'),
    beta: quantity('temperatureDifference', '234.5 K'),
    volumetricHeat: quantity('volumetricHeat', '0.00345 J/(mm³·K)'),
    density: quantity('density', '8.89 g/cm³'),
    meltingPoint: quantity('temperature', '1084.62 °C'),
  },
  aluminium: {
    resistivity: quantity('resistivity', '0.028264 Ω·mm²/m'),
    coefficient: quantity('temperatureCoefficient', '0.00403 1/K'),
    beta: quantity('temperatureDifference', '228 K'),
    volumetricHeat: quantity('volumetricHeat', '0.0025 J/(mm³·K)'),
    density: quantity('density', '2.703 g/cm³'),
    meltingPoint: quantity('temperature', '660.323 °C'),
  },
}))()

/** A metric conductor section. */
export interface MetricSection {
  /** Nominal section as text, such as `35 mm²`. */
  readonly name: string
  /** Nominal section. A standard fixes the resistance, not the area of metal. */
  readonly area: Quantity<'area'>
  /** Greatest resistance per length at 20 °C of a flexible (class 5) conductor of plain copper. */
  readonly maximumResistance: Quantity<'resistancePerLength'>
}

/**
 * Metric sections with the greatest resistance at 20 °C that IEC 60228 allows a flexible (class 5) conductor of
 * plain copper. The rows 1.5, 4, 10, 25, 35, 50, 70, 95 and 150 mm² were read in transcriptions of the standard,
 * the others are from memory.
 */
export const metricSections: readonly MetricSection[] = /*@__PURE__*/ (
  [
    ['0.5 mm²', '39 Ω/km'],
    ['0.75 mm²', '26 Ω/km'],
    ['1 mm²', '19.5 Ω/km'],
    ['1.5 mm²', '13.3 Ω/km'],
    ['2.5 mm²', '7.98 Ω/km'],
    ['4 mm²', '4.95 Ω/km'],
    ['6 mm²', '3.3 Ω/km'],
    ['10 mm²', '1.91 Ω/km'],
    ['16 mm²', '1.21 Ω/km'],
    ['25 mm²', '0.78 Ω/km'],
    ['35 mm²', '0.554 Ω/km'],
    ['50 mm²', '0.386 Ω/km'],
    ['70 mm²', '0.272 Ω/km'],
    ['95 mm²', '0.206 Ω/km'],
    ['120 mm²', '0.161 Ω/km'],
    ['150 mm²', '0.129 Ω/km'],
    ['185 mm²', '0.106 Ω/km'],
    ['240 mm²', '0.0801 Ω/km'],
  ] as const
).map(([name, resistance]) => ({
  name,
  area: quantity('area', name),
  maximumResistance: quantity('resistancePerLength', resistance),
}))

/** A wire of an American gauge. */
export interface Gauge {
  /** Gauge number as {@link awgDiameter} takes it: 10 for 10, 0 for 1/0, −3 for 4/0. */
  readonly gauge: number
  /** Diameter of the solid wire. */
  readonly diameter: Quantity<'length'>
  /** Section of metal, which a stranded wire of the gauge has too. */
  readonly area: Quantity<'area'>
}

/**
 * Size of an American wire gauge by its usual name.
 *
 * @param name - `'4/0'` to `'1/0'`, or `'1'` to `'56'`.
 * @returns Gauge number, diameter of the solid wire, and section of metal.
 * @throws InputError when there is no such gauge.
 */
/* @__NO_SIDE_EFFECTS__ */
export function awg(name: string): Gauge {
  const gauge = gaugeNumber(name)
  if (gauge === undefined) {
    const expected = "a gauge from '4/0' to '1/0' or from '1' to '56', such as '2/0'"
    throw new InputError('awg', [{ path: 'name', expected, received: shown(name) }])
  }
  const diameter = awgDiameter({ gauge })
  return { gauge, diameter, area: wireArea({ diameter }) }
}

function gaugeNumber(name: string): number | undefined {
  if (/^[1-4]\/0$/.test(name)) return 1 - Number(name[0])
  return /^[1-9]\d?$/.test(name) && Number(name) <= 56 ? Number(name) : undefined
}

/** American wire gauges from 18 to 4/0 in rising size, as cable is sold, each with its name (ASTM B258). */
export const americanGauges: readonly (Gauge & { readonly name: string })[] = /*@__PURE__*/ [
  '18',
  '16',
  '14',
  '12',
  '10',
  '8',
  '6',
  '4',
  '3',
  '2',
  '1',
  '1/0',
  '2/0',
  '3/0',
  '4/0',
].map((name) => ({ name, ...awg(name) }))
