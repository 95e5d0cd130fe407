/**
 * Every kind of quantity, its units and their exact factors to SI.
 *
 * A factor is written as its definition and not as a rounded product, so that each digit can be
 * checked against the definition: the international yard and pound (exactly 0.3048 m to the foot and
 * 0.45359237 kg to the pound, 1959), standard gravity 9.80665 m/s² (ISO 80000-3), the hour of
 * 3600 s, the mechanical horsepower of 550 ft·lbf/s, the metric one of 75 kgf·m/s, the circular mil
 * of π/4 square mils.
 */

/** What one kind is: a text that shows how it is written, and its units. */
interface KindEntry {
  /** A typical value, shown in messages as a model of what to write. */
  readonly example: string
  /** Unit symbol → how many SI units it is; the first unit is the one shown by default. */
  readonly units: { readonly [symbol: string]: string }
}

/** Every kind: its dimension, an example, and its units with their exact factors to SI. */
export const kinds = {
  length: {
    example: '2.4 m',
    units: { m: '1', mm: '0.001', cm: '0.01', km: '1000', in: '0.0254', ft: '0.3048', yd: '0.9144', mi: '1609.344' },
  },
  area: {
    example: '35 mm²',
    units: {
      'm²': '1',
      'mm²': '1e-6',
      'cm²': '1e-4',
      'in²': '0.0254 * 0.0254',
      'ft²': '0.3048 * 0.3048',
      kcmil: '1000 * pi / 4 * 0.0000254 * 0.0000254',
    },
  },
  volume: {
    example: '6 L',
    units: { L: '0.001', 'm³': '1', mL: '1e-6', 'in³': '0.0254 * 0.0254 * 0.0254' },
  },
  angle: { example: '12 °', units: { '°': 'pi / 180', rad: '1' } },
  mass: {
    example: '24 kg',
    units: { kg: '1', g: '0.001', t: '1000', lb: '0.45359237', oz: '0.45359237 / 16' },
  },
  time: { example: '90 s', units: { s: '1', ms: '0.001', min: '60', h: '3600' } },
  speed: {
    example: '80 km/h',
    units: { 'km/h': '1000 / 3600', 'm/s': '1', mph: '1609.344 / 3600' },
  },
  acceleration: {
    example: '2.5 m/s²',
    units: { 'm/s²': '1', g: '9.80665', 'ft/s²': '0.3048' },
  },
  angularSpeed: { example: '3000 rpm', units: { rpm: '2 * pi / 60', 'rad/s': '1' } },
  frequency: { example: '1.3 Hz', units: { Hz: '1' } },
  force: {
    example: '1200 N',
    units: { N: '1', kN: '1000', lbf: '0.45359237 * 9.80665', kgf: '9.80665' },
  },
  forcePerSpeed: {
    example: '0.6 N/(km/h)',
    units: {
      'N/(km/h)': '3600 / 1000',
      'N/(m/s)': '1',
      'N·s/m': '1',
      'lbf/mph': '0.45359237 * 9.80665 * 3600 / 1609.344',
    },
  },
  forcePerSpeedSquared: {
    example: '0.03 N/(km/h)²',
    units: {
      'N/(km/h)²': '3600 * 3600 / 1000 / 1000',
      'N/(m/s)²': '1',
      'lbf/mph²': '0.45359237 * 9.80665 * 3600 * 3600 / 1609.344 / 1609.344',
    },
  },
  torque: {
    example: '180 N·m',
    units: {
      'N·m': '1',
      'kN·m': '1000',
      'lbf·ft': '0.45359237 * 9.80665 * 0.3048',
      'lbf·in': '0.45359237 * 9.80665 * 0.0254',
    },
  },
  pressure: {
    example: '15 kPa',
    units: { kPa: '1000', Pa: '1', MPa: '1e6', bar: '1e5', mbar: '100', psi: '0.45359237 * 9.80665 / 0.0254 / 0.0254' },
  },
  energy: {
    example: '24 kWh',
    units: { kWh: '3600000', Wh: '3600', J: '1', kJ: '1000', MJ: '1e6' },
  },
  power: {
    example: '50 kW',
    units: {
      kW: '1000',
      W: '1',
      MW: '1e6',
      hp: '550 * 0.3048 * 0.45359237 * 9.80665',
      PS: '75 * 9.80665',
    },
  },
  energyPerDistance: {
    example: '140 Wh/km',
    units: { 'Wh/km': '3.6', 'kWh/100km': '36', 'Wh/mi': '3600 / 1609.344', 'J/m': '1' },
  },
  specificEnergy: {
    example: '160 Wh/kg',
    units: { 'Wh/kg': '3600', 'kWh/kg': '3600000', 'J/kg': '1' },
  },
  voltage: { example: '345 V', units: { V: '1', mV: '0.001', kV: '1000' } },
  current: { example: '300 A', units: { A: '1', mA: '0.001', kA: '1000' } },
  charge: { example: '60 Ah', units: { Ah: '3600', mAh: '3.6', C: '1' } },
  resistance: {
    example: '1.5 mΩ',
    units: { mΩ: '0.001', Ω: '1', µΩ: '1e-6', kΩ: '1000', MΩ: '1e6' },
  },
  powerPerLength: { example: '25 W/m', units: { 'W/m': '1', 'kW/m': '1000' } },
  resistancePerLength: {
    example: '0.386 mΩ/m',
    units: { 'mΩ/m': '0.001', 'Ω/m': '1', 'Ω/km': '0.001', 'Ω/kft': '1 / 304.8' },
  },
  resistivity: {
    example: '0.01724 Ω·mm²/m',
    units: { 'Ω·m': '1', 'Ω·mm²/m': '1e-6', 'µΩ·cm': '1e-8' },
  },
  isolationRatio: { example: '500 Ω/V', units: { 'Ω/V': '1', 'kΩ/V': '1000' } },
  capacitance: {
    example: '680 µF',
    units: { µF: '1e-6', F: '1', mF: '0.001', nF: '1e-9' },
  },
  inductance: { example: '20 µH', units: { µH: '1e-6', H: '1', mH: '0.001' } },
  currentDensity: { example: '5 A/mm²', units: { 'A/mm²': '1e6', 'A/m²': '1' } },
  jouleIntegral: { example: '25000 A²·s', units: { 'A²·s': '1', 'kA²·s': '1e6' } },
  adiabaticConstant: {
    example: '143 A·√s/mm²',
    units: { 'A·√s/mm²': '1e6', 'A·√s/m²': '1' },
  },
  cRate: { example: '2 C', units: { C: '1 / 3600' } },
  temperature: {
    example: '20 °C',
    units: { '°C': '1', K: '1', '°F': '5 / 9' },
  },
  temperatureDifference: { example: '5 K', units: { K: '1', '°C': '1', '°F': '5 / 9' } },
  temperatureCoefficient: { example: '0.00393 1/K', units: { '1/K': '1' } },
  heatCapacity: {
    example: '150 kJ/K',
    units: { 'kJ/K': '1000', 'J/K': '1', 'Wh/K': '3600' },
  },
  specificHeat: {
    example: '1000 J/(kg·K)',
    units: { 'J/(kg·K)': '1', 'kJ/(kg·K)': '1000' },
  },
  volumetricHeat: {
    example: '0.00345 J/(mm³·K)',
    units: { 'J/(m³·K)': '1', 'J/(mm³·K)': '1e9', 'MJ/(m³·K)': '1e6' },
  },
  thermalConductivity: { example: '0.38 W/(m·K)', units: { 'W/(m·K)': '1' } },
  thermalConductance: { example: '8 W/K', units: { 'W/K': '1' } },
  thermalResistance: { example: '0.12 K/W', units: { 'K/W': '1' } },
  heatTransferCoefficient: { example: '12 W/(m²·K)', units: { 'W/(m²·K)': '1' } },
  heatFlux: { example: '800 W/m²', units: { 'W/m²': '1' } },
  density: { example: '1064 kg/m³', units: { 'kg/m³': '1', 'g/cm³': '1000' } },
  dynamicViscosity: { example: '2.26 mPa·s', units: { 'mPa·s': '0.001', 'Pa·s': '1' } },
  kinematicViscosity: { example: '1.6 mm²/s', units: { 'mm²/s': '1e-6', 'm²/s': '1' } },
  thermalDiffusivity: { example: '22 mm²/s', units: { 'm²/s': '1', 'mm²/s': '1e-6' } },
  massFlow: { example: '0.2 kg/s', units: { 'kg/s': '1', 'kg/h': '1 / 3600' } },
  volumeFlow: {
    example: '10 L/min',
    units: { 'L/min': '0.001 / 60', 'm³/s': '1', 'm³/h': '1 / 3600' },
  },
  springRate: {
    example: '22 N/mm',
    units: { 'N/mm': '1000', 'N/m': '1', 'lbf/in': '0.45359237 * 9.80665 / 0.0254' },
  },
  rollRate: {
    example: '400 N·m/°',
    units: { 'N·m/°': '180 / pi', 'N·m/rad': '1' },
  },
  inertia: { example: '950 kg·m²', units: { 'kg·m²': '1' } },
  entropyCoefficient: {
    example: '-0.1 mV/K',
    units: { 'mV/K': '0.001', 'V/K': '1' },
  },
  lossPerTorqueSquared: { example: '0.3 W/(N·m)²', units: { 'W/(N·m)²': '1' } },
  lossPerSpeed: { example: '0.01 W/(rad/s)', units: { 'W/(rad/s)': '1' } },
  lossPerSpeedCubed: { example: '5e-6 W/(rad/s)³', units: { 'W/(rad/s)³': '1' } },
  elasticModulus: { example: '205 GPa', units: { GPa: '1e9', MPa: '1e6', Pa: '1' } },
  ratio: { example: '0.95', units: { '1': '1', '%': '0.01' } },
} as const satisfies Record<string, KindEntry>

/** What stands for what in the plain-ASCII twin of a symbol, in this order. */
const twins = [
  ['N·m', 'Nm'],
  ['·', '*'],
  ['²', '2'],
  ['³', '3'],
  ['°', 'deg'],
  ['Ω', 'ohm'],
  ['µ', 'u'],
  ['√s', 'sqrt(s)'],
] as const

/** The plain-ASCII twin of a symbol that is hard to type; other symbols as they are. @internal */
export function twinOf(symbol: string): string {
  return twins.reduce((text, [sign, letters]) => text.replaceAll(sign, letters), symbol)
}

/**
 * Units whose zero is not the zero of the quantity: how many units lie between the two. 0 °C is
 * 273.15 K by definition (ITS-90), and 32 °F is 0 °C, so that 0 °F lies 459.67 °F above absolute zero.
 *
 * @internal
 */
export const zeroOffsets: { readonly [K in Kind]?: { readonly [symbol: string]: string } } = {
  temperature: { '°C': '273.15', '°F': '459.67' },
}

/** The name of a kind of quantity, such as `'voltage'`. */
export type Kind = keyof typeof kinds

type SymbolOf<K extends Kind> = K extends Kind ? keyof (typeof kinds)[K]['units'] & string : never
type Replaced<
  S extends string,
  Sign extends string,
  Letters extends string,
> = S extends `${infer Before}${Sign}${infer After}` ? Replaced<`${Before}${Letters}${After}`, Sign, Letters> : S
type Rules = readonly (readonly [string, string])[]
type TwinOf<S extends string, R extends Rules = typeof twins> = R extends readonly [
  readonly [infer Sign extends string, infer Letters extends string],
  ...infer Rest extends Rules,
]
  ? TwinOf<Replaced<S, Sign, Letters>, Rest>
  : S

/** The units in which a kind may be written: each symbol and its plain-ASCII twin. */
export type UnitOf<K extends Kind> = SymbolOf<K> | TwinOf<SymbolOf<K>>

/** The kind of a difference of two quantities: a temperature difference for temperatures, else the kind itself. */
export type DifferenceOf<K extends Kind> = K extends 'temperature' ? 'temperatureDifference' : K

/** The kind of a difference of two quantities of a kind. @internal */
export function differenceOf<K extends Kind>(kind: K): DifferenceOf<K> {
  return (kind === 'temperature' ? 'temperatureDifference' : kind) as DifferenceOf<K>
}
