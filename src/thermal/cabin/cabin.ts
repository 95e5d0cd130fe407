/**
 * Heat for the people in the car: what fresh air and walls take, and what a heater draws for it.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 3, for walls and glass, and on the heat balance of
 * a steady stream.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'
import { highVoltage } from '../../procedure/cautions.js'
import {
  type Check,
  check,
  choice,
  type Findings,
  given,
  optional,
  procedure,
  type Read,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { airAt, dryAir, outdoors } from '../air/dry-air.js'
import { heaterEnergy } from '../lumped.js'
import { energyShare } from '../pack/winter.js'
import { refuseOutside } from '../property-table.js'

/**
 * Heat that warms fresh air from outside to the temperature inside.
 *
 * `Q = q * rho * c * (Ti - To)`
 *
 * - `flow` (`q`, L/min): flow of fresh air, as it is outside, at least 0 L/min
 * - `density` (`rho`, kg/m³): density of the air outside, at least 0 kg/m³
 * - `specificHeat` (`c`, J/(kg·K)): specific heat of air, at least 0 J/(kg·K)
 * - `inside` (`Ti`, °C): temperature inside
 * - `outside` (`To`, °C): temperature outside
 * - gives `Q`: heat, in kW
 * - holds where inside - outside is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * ventilationHeat({
 *   flow: '150 m³/h',
 *   density: '1.3948 kg/m³',
 *   specificHeat: '1006 J/(kg·K)',
 *   inside: '20 °C',
 *   outside: '-20 °C',
 * })
 * // 2.339 kW
 * // by definition (recomputed): 2338.6 W
 * ```
 */
export const ventilationHeat = /*@__PURE__*/ formula({
  name: 'ventilationHeat',
  title: 'Heat for fresh air',
  inputs: {
    flow: input('volumeFlow', 'q', 'Flow of fresh air, as it is outside', { min: 0 }),
    density: input('density', 'rho', 'Density of the air outside', { min: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat of air', { min: 0 }),
    inside: input('temperature', 'Ti', 'Temperature inside'),
    outside: input('temperature', 'To', 'Temperature outside'),
  },
  result: output('power', 'Q', 'Heat'),
  expression: 'q * rho * c * (Ti - To)',
  valid: [
    { of: 'inside - outside', kind: 'temperatureDifference', value: ({ inside, outside }) => inside - outside, min: 0 },
  ],
  source: definition,
  compute: ({ flow, density, specificHeat, inside, outside }) => flow * density * specificHeat * (inside - outside),
})

/**
 * Heat that passes through walls, floor, roof and glass.
 *
 * `Q = G * (Ti - To)`
 *
 * - `conductance` (`G`, W/K): conductance of all walls, at least 0 W/K
 * - `inside` (`Ti`, °C): temperature inside
 * - `outside` (`To`, °C): temperature outside
 * - gives `Q`: heat, in kW
 * - holds where inside - outside is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * transmissionHeat({ conductance: '60 W/K', inside: '20 °C', outside: '-20 °C' })
 * // 2.4 kW
 * // by definition (exact): 2400 W
 * ```
 */
export const transmissionHeat = /*@__PURE__*/ formula({
  name: 'transmissionHeat',
  title: 'Heat through the walls',
  inputs: {
    conductance: input('thermalConductance', 'G', 'Conductance of all walls', { min: 0 }),
    inside: input('temperature', 'Ti', 'Temperature inside'),
    outside: input('temperature', 'To', 'Temperature outside'),
  },
  result: output('power', 'Q', 'Heat'),
  expression: 'G * (Ti - To)',
  valid: [
    { of: 'inside - outside', kind: 'temperatureDifference', value: ({ inside, outside }) => inside - outside, min: 0 },
  ],
  source: definition,
  compute: ({ conductance, inside, outside }) => conductance * (inside - outside),
})

/**
 * Power that a heater draws for a heat: a resistive one as much as it gives, a heat pump as many times less as its
 * coefficient of performance says, fan and controls included where the maker includes them.
 *
 * `P = Q / COP`
 *
 * - `heat` (`Q`, kW): heat given, at least 0 kW
 * - `coefficientOfPerformance` (`COP`, a plain number): coefficient of performance, 1 for a resistive heater, above 0
 * - gives `P`: power drawn, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * heaterInput({ heat: '4.2 kW', coefficientOfPerformance: 1.9 })
 * // 2.211 kW
 * // doi 10.1177/1687814019845806, a heat pump in a car at −1 °C (read): 2.2 kW
 * ```
 */
export const heaterInput = /*@__PURE__*/ formula({
  name: 'heaterInput',
  title: 'Power drawn by a heater',
  inputs: {
    heat: input('power', 'Q', 'Heat given', { min: 0 }),
    coefficientOfPerformance: input('ratio', 'COP', 'Coefficient of performance, 1 for a resistive heater', {
      above: 0,
    }),
  },
  result: output('power', 'P', 'Power drawn'),
  expression: 'Q / COP',
  source: definition,
  compute: ({ heat, coefficientOfPerformance }) => heat / coefficientOfPerformance,
})

/**
 * Highest coefficient of performance that any heat pump can have between two temperatures. Real ones stay far below
 * it, because their refrigerant must be colder than outside and hotter than inside.
 *
 * `COP = Ti / (Ti - To)`
 *
 * - `inside` (`Ti`, °C): temperature inside
 * - `outside` (`To`, °C): temperature outside
 * - gives `COP`: highest coefficient of performance, in a plain number
 * - holds where inside - outside is above 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Çengel and Boles, Thermodynamics, chapter 6.
 *
 * @example
 * ```ts
 * carnotCoefficient({ inside: '21 °C', outside: '-5 °C' })
 * // 11.31
 * // Çengel and Boles, Thermodynamics, a house heated by a heat pump of Carnot (from memory): 11.3
 * ```
 */
export const carnotCoefficient = /*@__PURE__*/ formula({
  name: 'carnotCoefficient',
  title: 'Coefficient of performance of Carnot',
  inputs: {
    inside: input('temperature', 'Ti', 'Temperature inside'),
    outside: input('temperature', 'To', 'Temperature outside'),
  },
  result: output('ratio', 'COP', 'Highest coefficient of performance'),
  expression: 'Ti / (Ti - To)',
  valid: [
    {
      of: 'inside - outside',
      kind: 'temperatureDifference',
      value: ({ inside, outside }) => inside - outside,
      above: 0,
    },
  ],
  source: cite('Çengel and Boles, Thermodynamics', 'chapter 6'),
  compute: ({ inside, outside }) => inside / (inside - outside),
})

/**
 * Heat transfer coefficient from air to air through a wall or a pane.
 *
 * `U = 1 / (1 / hi + L / k + 1 / ho)`
 *
 * - `inner` (`hi`, W/(m²·K)): coefficient at the inner face, above 0 W/(m²·K)
 * - `thickness` (`L`, m): thickness of the wall, at least 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the wall, above 0 W/(m·K)
 * - `outer` (`ho`, W/(m²·K)): coefficient at the outer face, above 0 W/(m²·K)
 * - gives `U`: coefficient from air to air, in W/(m²·K)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * wallCoefficient({ inner: '10 W/(m²·K)', thickness: '4 mm', conductivity: '1.4 W/(m·K)', outer: '65 W/(m²·K)' })
 * // 8.457 W/(m²·K)
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, problem 3.4 (recomputed): 8.457 W/(m²·K)
 * ```
 */
export const wallCoefficient = /*@__PURE__*/ formula({
  name: 'wallCoefficient',
  title: 'Heat transfer coefficient of a wall',
  inputs: {
    inner: input('heatTransferCoefficient', 'hi', 'Coefficient at the inner face', { above: 0 }),
    thickness: input('length', 'L', 'Thickness of the wall', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the wall', { above: 0 }),
    outer: input('heatTransferCoefficient', 'ho', 'Coefficient at the outer face', { above: 0 }),
  },
  result: output('heatTransferCoefficient', 'U', 'Coefficient from air to air'),
  expression: '1 / (1 / hi + L / k + 1 / ho)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ inner, thickness, conductivity, outer }) => 1 / (1 / inner + thickness / conductivity + 1 / outer),
})

/**
 * Conductance of a surface. Those of glass, roof, doors and floor add up to that of a cabin.
 *
 * `G = U * A`
 *
 * - `coefficient` (`U`, W/(m²·K)): heat transfer coefficient, at least 0 W/(m²·K)
 * - `area` (`A`, m²): area, at least 0 m²
 * - gives `G`: conductance, in W/K
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * surfaceConductance({ coefficient: '8.457 W/(m²·K)', area: '0.6 m²' })
 * // 5.074 W/K
 * // by definition (exact): 5.0742 W/K
 * ```
 */
export const surfaceConductance = /*@__PURE__*/ formula({
  name: 'surfaceConductance',
  title: 'Conductance of a surface',
  inputs: {
    coefficient: input('heatTransferCoefficient', 'U', 'Heat transfer coefficient', { min: 0 }),
    area: input('area', 'A', 'Area', { min: 0 }),
  },
  result: output('thermalConductance', 'G', 'Conductance'),
  expression: 'U * A',
  source: definition,
  compute: ({ coefficient, area }) => coefficient * area,
})

/**
 * Heat that a film on the inner face of a pane must give to hold that face at a temperature, above the dew point of
 * the air inside, so that it stays clear.
 *
 * `q = (Tf - To) / (L / k + 1 / ho) - hi * (Ti - Tf)`
 *
 * - `face` (`Tf`, °C): temperature of the inner face
 * - `inside` (`Ti`, °C): temperature of the air inside
 * - `outside` (`To`, °C): temperature of the air outside
 * - `inner` (`hi`, W/(m²·K)): coefficient at the inner face, at least 0 W/(m²·K)
 * - `thickness` (`L`, m): thickness of the pane, at least 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity of the pane, above 0 W/(m·K)
 * - `outer` (`ho`, W/(m²·K)): coefficient at the outer face, above 0 W/(m²·K)
 * - gives `q`: heat for each area; negative where the pane stays warmer by itself, in W/m²
 * - holds where face - outside is at least 0
 * - holds where inside - face is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * demisterFlux({
 *   face: '15 °C',
 *   inside: '25 °C',
 *   outside: '-10 °C',
 *   inner: '10 W/(m²·K)',
 *   thickness: '4 mm',
 *   conductivity: '1.4 W/(m·K)',
 *   outer: '65 W/(m²·K)',
 * })
 * // 1270 W/m²
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, problem 3.4, the rear window of a car (read):
 * // 1270 W/m²
 * ```
 */
export const demisterFlux = /*@__PURE__*/ formula({
  name: 'demisterFlux',
  title: 'Heat to keep a pane clear',
  inputs: {
    face: input('temperature', 'Tf', 'Temperature of the inner face'),
    inside: input('temperature', 'Ti', 'Temperature of the air inside'),
    outside: input('temperature', 'To', 'Temperature of the air outside'),
    inner: input('heatTransferCoefficient', 'hi', 'Coefficient at the inner face', { min: 0 }),
    thickness: input('length', 'L', 'Thickness of the pane', { min: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity of the pane', { above: 0 }),
    outer: input('heatTransferCoefficient', 'ho', 'Coefficient at the outer face', { above: 0 }),
  },
  result: output('heatFlux', 'q', 'Heat for each area; negative where the pane stays warmer by itself'),
  expression: '(Tf - To) / (L / k + 1 / ho) - hi * (Ti - Tf)',
  valid: [
    { of: 'face - outside', kind: 'temperatureDifference', value: ({ face, outside }) => face - outside, min: 0 },
    { of: 'inside - face', kind: 'temperatureDifference', value: ({ face, inside }) => inside - face, min: 0 },
  ],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ face, inside, outside, inner, thickness, conductivity, outer }) =>
    (face - outside) / (thickness / conductivity + 1 / outer) - inner * (inside - face),
})

/** What a warm cabin takes. */
export interface CabinHeat extends Findings {
  /** Heat for fresh air. */
  readonly ventilation: Quantity<'power'>
  /** Heat through the walls. */
  readonly transmission: Quantity<'power'>
  /** All the heat. */
  readonly heat: Quantity<'power'>
  /** Power that the heater draws for it. */
  readonly power: Quantity<'power'>
  /** Energy drawn over the time, where a time was given. */
  readonly energy?: Quantity<'energy'>
  /** That energy as a share of the pack's, where its energy was given too. */
  readonly share?: Quantity<'ratio'>
}

/** A cabin and its heater, but for the weather and the time. @internal */
export const cabinFields = /*@__PURE__*/ (() => ({
  airFlow: given('volumeFlow', 'Flow of fresh air, as it is outside', {
    min: 0,
    usual: ['0 m³/h', '600 m³/h'],
    finest: '1 m³/h',
  }),
  inside: given('temperature', 'Temperature inside', { usual: ['15 °C', '28 °C'] }),
  lossConductance: given('thermalConductance', 'Conductance of all walls', {
    min: 0,
    usual: ['0 W/K', '300 W/K'],
    finest: '1 W/K',
  }),
  coefficientOfPerformance: optional(
    given('ratio', 'Coefficient of performance of the heat pump, at this temperature outside', { min: 1 }),
  ),
}))()

const cabinInput = /*@__PURE__*/ (() => ({
  ...cabinFields,
  outside: given('temperature', 'Temperature outside', outdoors),
  heaterKind: choice('Kind of heater', ['resistive', 'heat pump']),
  time: optional(given('time', 'Time for which the cabin is kept warm', { min: 0 })),
  packEnergy: optional(given('energy', 'Energy of the pack', { above: 0, usual: ['1 kWh', '150 kWh'] })),
}))()

type Cabin = Read<typeof cabinInput>
const where = 'cabinHeat'

/**
 * Finds the heat that keeps a cabin warm, and the power that a resistive heater or a heat pump draws for it.
 *
 * Air that is turned over inside takes no heat; people need some fresh air, and so do clear panes. The coefficient of
 * performance of a heat pump is that of its maker for this temperature outside: it falls with the cold.
 *
 * Answers: how much heat keeps a cabin warm, and what does its heater draw for it?
 *
 * - `airFlow`: flow of fresh air, as it is outside, in L/min, at least 0 L/min
 * - `inside`: temperature inside, in °C
 * - `lossConductance`: conductance of all walls, in W/K, at least 0 W/K
 * - `coefficientOfPerformance`: coefficient of performance of the heat pump, at this temperature outside, a plain
 *   number, at least 1, optional
 * - `outside`: temperature outside, in °C
 * - `heaterKind`: kind of heater, 'resistive' or 'heat pump'
 * - `time`: time for which the cabin is kept warm, in s, at least 0 s, optional
 * - `packEnergy`: energy of the pack, in kWh, above 0 kWh, optional
 * - always assumed: the cabin is warm already; seats and panels that must be warmed first are not counted
 * - always assumed: the heat of people and sun is not counted
 * - always assumed: the air outside is dry, at the pressure of the standard atmosphere
 *
 * @returns The {@link CabinHeat}; for a heat pump with a check that it does not beat Carnot's.
 * @throws InputError for what cannot be used, by its path: among others a heat pump without a coefficient of performance,
 * or a cabin colder than outside.
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * const { heat, power, share } = cabinHeat({
 *   airFlow: '90 m³/h',
 *   outside: '-5 °C',
 *   inside: '18 °C',
 *   lossConductance: '45 W/K',
 *   heaterKind: 'heat pump',
 *   coefficientOfPerformance: 1.9,
 *   time: '40 min',
 *   packEnergy: '14.6 kWh',
 * })
 * String(heat) // '1.797 kW'
 * String(power) // '0.9458 kW'
 * String(share) // '4.319 %'
 * ```
 */
export const cabinHeat = /*@__PURE__*/ procedure({
  name: where,
  title: 'Heat for the cabin',
  answers: 'How much heat keeps a cabin warm, and what does its heater draw for it?',
  input: cabinInput,
  source: [cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3')],
  assumes: [
    'The cabin is warm already; seats and panels that must be warmed first are not counted.',
    'The heat of people and sun is not counted.',
    'The air outside is dry, at the pressure of the standard atmosphere.',
  ],
  work: (cabin): Unfinished<CabinHeat> => {
    refuseUnusable(cabin)
    const { airFlow, outside, inside, lossConductance, time, packEnergy } = cabin
    const air = airAt(outside.si)
    const ventilation = ventilationHeat({
      flow: airFlow,
      density: quantity('density', air.density, 'kg/m³'),
      specificHeat: quantity('specificHeat', air.specificHeat, 'J/(kg·K)'),
      inside,
      outside,
    })
    const transmission = transmissionHeat({ conductance: lossConductance, inside, outside })
    const heat = ventilation.plus(transmission)
    const power = heaterInput({ heat, coefficientOfPerformance: cabin.coefficientOfPerformance ?? 1 })
    const energy = time === undefined ? undefined : heaterEnergy({ power, time })
    const share = energy === undefined || packEnergy === undefined ? undefined : energyShare({ energy, packEnergy })
    return {
      ventilation,
      transmission,
      heat,
      power,
      ...(energy === undefined ? {} : { energy }),
      ...(share === undefined ? {} : { share }),
      checks: checksOf(cabin, energy),
      cautions: [highVoltage],
    }
  },
})

function checksOf(cabin: Cabin, energy: Quantity<'energy'> | undefined): Check[] {
  const { inside, outside, coefficientOfPerformance, packEnergy } = cabin
  return [
    ...(coefficientOfPerformance === undefined || inside.si === outside.si
      ? []
      : [
          check(
            'heater.coefficientOfPerformance',
            'Coefficient of performance',
            coefficientOfPerformance,
            'at most',
            carnotCoefficient({ inside, outside }),
            'the second law of thermodynamics',
            'coefficientOfPerformance',
            'inside',
            'outside',
          ),
        ]),
    ...(energy === undefined || packEnergy === undefined
      ? []
      : [
          check(
            'heater.energy',
            'Energy of the heater',
            energy,
            'at most',
            packEnergy,
            'the energy of the pack',
            'packEnergy',
            'time',
          ),
        ]),
  ]
}

function refuseUnusable({ inside, outside, heaterKind, coefficientOfPerformance, time, packEnergy }: Cabin): void {
  const issues: InputIssue[] = []
  if (inside.si < outside.si) {
    const expected = `a temperature of at least that outside, ${outside}`
    issues.push({ path: 'inside', expected, received: String(inside) })
  }
  if ((heaterKind === 'heat pump') !== (coefficientOfPerformance !== undefined)) {
    const expected =
      heaterKind === 'heat pump' ? 'that of the heat pump, such as 1.9' : 'none: that of a resistive heater is 1'
    issues.push({
      path: 'coefficientOfPerformance',
      expected,
      received: String(coefficientOfPerformance ?? 'nothing'),
    })
  }
  if (time === undefined && packEnergy !== undefined) {
    const expected = "the time for which the cabin is kept warm, such as '40 min', for a share of the pack"
    issues.push({ path: 'time', expected, received: 'nothing' })
  }
  if (issues.length > 0) throw new InputError(where, issues)
  refuseOutside(where, 'outside', dryAir, outside)
}
