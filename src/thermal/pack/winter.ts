/**
 * A cold morning: warming a pack before it works or may be charged, and what that costs.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 */
import { cite, definition, formula, input, output } from '../../formula/index.js'
import { lithiumCells } from '../../procedure/cautions.js'
import {
  type Assumption,
  type Check,
  type Findings,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { outdoors } from '../air/dry-air.js'
import { heaterEnergy, steadyTemperature, warmUpTime } from '../lumped.js'
import { packHeatCapacityField } from './given.js'

/**
 * Share of a pack's energy that something takes.
 *
 * `s = E / Ep`
 *
 * - `energy` (`E`, kWh): energy taken, at least 0 kWh
 * - `packEnergy` (`Ep`, kWh): energy of the pack, above 0 kWh
 * - gives `s`: share, in %
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * energyShare({ energy: '0.88121 kWh', packEnergy: '14.6 kWh' })
 * // 6.036 %
 * // by definition (exact): 6.0357 %
 * ```
 */
export const energyShare = /*@__PURE__*/ formula({
  name: 'energyShare',
  title: 'Share of the energy of a pack',
  inputs: {
    energy: input('energy', 'E', 'Energy taken', { min: 0 }),
    packEnergy: input('energy', 'Ep', 'Energy of the pack', { above: 0 }),
  },
  result: output('ratio', 's', 'Share', '%'),
  expression: 'E / Ep',
  source: definition,
  compute: ({ energy, packEnergy }) => energy / packEnergy,
})

/** What it takes to warm a pack. */
export interface WinterStart extends Findings {
  readonly time: Quantity<'time'>
  /** Energy of the heater, with what is lost on the way. */
  readonly energy: Quantity<'energy'>
  /** That energy as a share of the pack's. */
  readonly share: Quantity<'ratio'>
  /** Temperature that the heater would reach in the end. */
  readonly ceiling: Quantity<'temperature'>
}

const startFields = /*@__PURE__*/ (() => ({
  pack: group('The pack', {
    heatCapacity: packHeatCapacityField,
    energy: given('energy', 'Energy of the pack', { above: 0, usual: ['1 kWh', '150 kWh'] }),
  }),
  from: given('temperature', 'Temperature of the pack at the start'),
  to: given('temperature', 'Temperature to warm it to', { usual: ['-10 °C', '40 °C'] }),
  heaterPower: given('power', 'Power of the heater', { above: 0 }),
  conductance: given('thermalConductance', 'Conductance from the pack to its surroundings', { above: 0 }),
  surroundings: given('temperature', 'Temperature of the surroundings', outdoors),
  chargeLimit: optional(
    given('temperature', 'Lowest temperature at which the cells may be charged', { usual: ['-10 °C', '15 °C'] }),
  ),
}))()

type Start = Read<typeof startFields>
const where = 'winterStart'

/**
 * Finds how long a heater takes to warm a cold pack, and what that costs in energy and in share of the pack. Lithium
 * cells must not be charged below the limit of their maker, commonly 0 °C: nor by a charger, nor by braking.
 *
 * Answers: how long does a heater take to warm a cold pack, and what does that cost in energy?
 *
 * - `pack`: the pack
 *   - `heatCapacity`: heat capacity of the pack, in kJ/K, above 0 kJ/K
 *   - `energy`: energy of the pack, in kWh, above 0 kWh
 * - `from`: temperature of the pack at the start, in °C
 * - `to`: temperature to warm it to, in °C
 * - `heaterPower`: power of the heater, in kW, above 0 kW
 * - `conductance`: conductance from the pack to its surroundings, in W/K, above 0 W/K
 * - `surroundings`: temperature of the surroundings, in °C
 * - `chargeLimit`: lowest temperature at which the cells may be charged, in °C, optional
 * - always assumed: the pack has one temperature throughout; in truth the cells farthest from the heater lag behind
 * - always assumed: all the power of the heater reaches the pack
 *
 * @returns The {@link WinterStart}, with checks of the temperature for charging and of the energy.
 * @throws InputError for what cannot be used, by its path; CalculationError where the heater never reaches the
 * temperature, with the one that it reaches.
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5.
 *
 * @example
 * ```ts
 * const { time, energy, share } = winterStart({
 *   pack: { heatCapacity: '150 kJ/K', energy: '14.6 kWh' },
 *   from: '-10 °C',
 *   to: '10 °C',
 *   heaterPower: '1500 W',
 *   conductance: '8 W/K',
 *   surroundings: '-10 °C',
 * })
 * String(time) // '35.25 min'
 * String(energy) // '0.8812 kWh'
 * String(share) // '6.036 %'
 * ```
 */
export const winterStart = /*@__PURE__*/ procedure({
  name: where,
  title: 'Warming a cold pack',
  answers: 'How long does a heater take to warm a cold pack, and what does that cost in energy?',
  input: startFields,
  source: [cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5')],
  assumes: [
    'The pack has one temperature throughout; in truth the cells farthest from the heater lag behind.',
    'All the power of the heater reaches the pack.',
  ],
  work: (start): Unfinished<WinterStart> => {
    const { pack, from, to, heaterPower: power, conductance, surroundings } = start
    if (to.si < from.si) {
      const expected = `a temperature of at least that at the start, ${from}`
      throw new InputError(where, [{ path: 'to', expected, received: String(to) }])
    }
    const ceiling = steadyTemperature({ surroundings, power, conductance })
    if (ceiling.si <= to.si) {
      const message = `the heater never brings the pack to ${to}: in the end it reaches ${ceiling}`
      throw new CalculationError(where, message, { ceiling: String(ceiling) })
    }
    const { heatCapacity } = pack
    const time = warmUpTime({ heatCapacity, conductance, power, from, to, surroundings })
    const energy = heaterEnergy({ power, time })
    const share = energyShare({ energy, packEnergy: pack.energy })
    return {
      time,
      energy,
      share,
      ceiling,
      checks: checksOf(start, energy),
      assumptions: start.chargeLimit === undefined ? [chargedFromFreezing('chargeLimit')] : [],
      cautions: [lithiumCells],
    }
  },
})

/** Where the cells' limit for charging is not given. @internal */
export const usualChargeLimit = 'the usual limit of lithium cells (common practice); that of the maker counts'

/** What stands where no lowest temperature for charging is given. @internal */
export function chargedFromFreezing(path: string): Assumption {
  const text = 'The cells may be charged from 0 °C on, unless their maker says otherwise.'
  return { id: `${path}.default`, path, value: quantity('temperature', 0, '°C'), because: usualChargeLimit, text }
}

function checksOf({ pack, to, chargeLimit }: Start, energy: Quantity<'energy'>): Check[] {
  return [
    trial(
      'cell.chargeTemperature',
      'Cell temperature for charging',
      says`the heater warms the cells to ${to}, at least the ${chargeLimit ?? quantity('temperature', 0, '°C')} from which they may be charged`,
      chargeLimit === undefined ? usualChargeLimit : 'the limit given',
      'to',
      'chargeLimit',
    ),
    trial(
      'heater.energy',
      'Energy of the heater, if the pack feeds it',
      says`the heater takes ${energy}, at most the ${pack.energy} of the pack`,
      'the energy of the pack',
      'pack.energy',
      'heaterPower',
    ),
  ]
}
