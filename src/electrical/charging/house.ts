/**
 * A house fed from the pack.
 *
 * Rests on the definition of efficiency.
 */
import { definition, formula, input, output, section } from '../../formula/index.js'
import { feedingHouse, highVoltage } from '../../procedure/cautions.js'
import {
  assumed,
  check,
  defaultOf,
  type Findings,
  given,
  group,
  list,
  optional,
  procedure,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'

/**
 * Time for which a pack feeds a steady load through an inverter.
 *
 * `t = E * eta / P`
 *
 * - `energy` (`E`, kWh): energy taken from the pack, at least 0 kWh
 * - `load` (`P`, kW): power of the load, above 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency of the inverter, above 0 and at most 1
 * - gives `t`: time, in h
 * - Caution: feeding a house's wiring needs a transfer arrangement that isolates it from the grid, and licensed work
 *   under local rules
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * backupTime({ energy: '10 kWh', load: '1.5 kW', efficiency: 0.9 })
 * // 6 h
 * // by definition (exact): 6 h
 * ```
 */
export const backupTime = /*@__PURE__*/ formula({
  name: 'backupTime',
  title: 'Time for which a pack feeds a load',
  inputs: {
    energy: input('energy', 'E', 'Energy taken from the pack', { min: 0 }),
    load: input('power', 'P', 'Power of the load', { above: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of the inverter', { above: 0, max: 1 }),
  },
  result: output('time', 't', 'Time', 'h'),
  expression: 'E * eta / P',
  cautions: [
    "Feeding a house's wiring needs a transfer arrangement that isolates it from the grid, and licensed work under local rules.",
  ],
  source: definition,
  compute: ({ energy, load, efficiency }) => (energy * efficiency) / load,
})

/**
 * Power that an inverter draws from the pack: the load through its losses, and its own need whether it feeds one or
 * not.
 *
 * `Pd = P / eta + P0`
 *
 * - `load` (`P`, kW): power of the load, at least 0 kW
 * - `efficiency` (`eta`, a plain number): efficiency of the inverter, above 0 and at most 1
 * - `standby` (`P0`, kW): power that the inverter needs without a load, at least 0 kW, 0 W unless given
 * - gives `Pd`: power drawn from the pack, in kW
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * inverterInput({ load: '980 W', efficiency: 0.9 })
 * // 1.089 kW
 * // by definition (exact): 1088.9 W
 * ```
 */
export const inverterInput = /*@__PURE__*/ formula({
  name: 'inverterInput',
  title: 'Power that an inverter draws from the pack',
  inputs: {
    load: input('power', 'P', 'Power of the load', { min: 0 }),
    efficiency: input('ratio', 'eta', 'Efficiency of the inverter', { above: 0, max: 1 }),
    standby: input('power', 'P0', 'Power that the inverter needs without a load', {
      min: 0,
      default: '0 W',
      because: 'its own need is taken to be in its efficiency',
    }),
  },
  result: output('power', 'Pd', 'Power drawn from the pack'),
  expression: 'P / eta + P0',
  source: definition,
  compute: ({ load, efficiency, standby }) => load / efficiency + standby,
})

/** A house fed from the pack. */
export interface HomeSupply extends Findings {
  /** Until the energy above the reserve is spent. */
  readonly duration: Quantity<'time'>
  /** To the loads, at the inverter's output. */
  readonly delivered: Quantity<'energy'>
  /** Lost in the inverter, with its own need. */
  readonly lost: Quantity<'energy'>
}

/** What describes an inverter. @internal */
export const inverterFields = /*@__PURE__*/ (() => ({
  efficiency: given('ratio', 'Efficiency of the inverter', { above: 0, max: 1, usual: [0.7, 0.99] }),
  power: given('power', 'Greatest power that it delivers', { above: 0, usual: ['100 W', '30 kW'] }),
  standby: given('power', 'Power that the inverter needs without a load', {
    min: 0,
    usual: ['0 W', '300 W'],
    finest: '0.5 W',
    ...defaultOf(inverterInput.inputs.standby),
  }),
}))()

/** What describes a house that a pack feeds. @internal */
export const houseFields = /*@__PURE__*/ (() => ({
  load: optional(given('power', 'Constant load', { min: 0 })),
  hourly: optional(
    list(
      'The mean load of each hour, one after the other and then from the first again',
      given('power', 'Mean load of the hour', { min: 0, usual: ['0 W', '20 kW'], finest: '5 W' }),
      { least: 1 },
    ),
  ),
  inverter: group('The inverter', inverterFields),
  reserve: given('energy', 'Energy kept back for the next drive', {
    min: 0,
    default: '0 kWh',
    because: 'all that the pack gives is for the house',
  }),
}))()

/**
 * Tells for how long a pack feeds the base load of a house, and what reaches the loads.
 *
 * A mean over an hour hides peaks: the inverter must bear the greatest load of any moment.
 *
 * Answers: for how long does the pack feed the base load of a house, and what reaches the loads?
 *
 * - `usableEnergy`: energy that the pack gives, in kWh, above 0 kWh
 * - `load`: constant load, in kW, at least 0 kW, optional
 * - `hourly`: the mean load of each hour, one after the other and then from the first again, a list of at least 1,
 *   each in kW, each at least 0 kW, optional
 * - `inverter`: the inverter
 *   - `efficiency`: efficiency of the inverter, a plain number, above 0 and at most 1
 *   - `power`: greatest power that it delivers, in kW, above 0 kW
 *   - `standby`: power that the inverter needs without a load, in kW, at least 0 kW, 0 W by default (its own need is
 *     taken to be in its efficiency)
 * - `reserve`: energy kept back for the next drive, in kWh, at least 0 kWh, 0 kWh by default (all that the pack gives
 *   is for the house)
 * - always assumed: the inverter has one efficiency at every load
 *
 * @returns Duration and energies, with a check of the load against the inverter.
 * @throws InputError for input that cannot be used, by its path; CalculationError where nothing ever draws on the pack, and
 * for a load beyond the inverter.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const { duration, delivered } = homeSupply({
 *   usableEnergy: '12 kWh',
 *   load: '450 W',
 *   inverter: { efficiency: 0.9, power: '3 kW', standby: '40 W' },
 *   reserve: '4 kWh',
 * })
 * String(duration) // '14.81 h'
 * String(delivered) // '6.667 kWh'
 * ```
 */
export const homeSupply = /*@__PURE__*/ procedure({
  name: 'homeSupply',
  title: 'A house fed from the pack',
  answers: 'For how long does the pack feed the base load of a house, and what reaches the loads?',
  input: {
    usableEnergy: given('energy', 'Energy that the pack gives', { above: 0, usual: ['1 kWh', '150 kWh'] }),
    ...houseFields,
  },
  source: [definition],
  assumes: ['The inverter has one efficiency at every load.'],
  work: ({ usableEnergy: usable, load, hourly, inverter, reserve }): Unfinished<HomeSupply> => {
    if ((load === undefined) === (hourly === undefined)) {
      const expected = "one of them: load such as '450 W', or hourly such as ['300 W', '900 W']"
      throw new InputError('homeSupply', [
        { path: 'load and hourly', expected, received: load === undefined ? 'neither' : 'both' },
      ])
    }
    if (reserve.si >= usable.si) {
      const expected = `an energy below the usable one, ${usable}`
      throw new InputError('homeSupply', [{ path: 'reserve', expected, received: String(reserve) }])
    }
    const loads = hourly ?? [load as Quantity<'power'>]
    loads.forEach((each, hour) => {
      if (each.si <= inverter.power.si) return
      const when = hourly === undefined ? '' : ` in hour ${hour + 1}`
      throw new CalculationError(
        'homeSupply',
        `the load of ${each}${when} is beyond the inverter, which delivers ${inverter.power} at most`,
        { load: String(each), inverter: String(inverter.power) },
      )
    })
    const draws = loads.map((each, hour) =>
      section(hourly === undefined ? 'Load' : `Hour ${hour + 1}`, () =>
        inverterInput({ load: each, efficiency: inverter.efficiency, standby: inverter.standby }),
      ),
    )
    const energy = usable.minus(reserve)
    if (draws.every(({ si }) => si === 0)) {
      throw new CalculationError('homeSupply', `nothing draws on the pack: its ${energy} last for ever`)
    }
    const { time, delivered } =
      hourly === undefined
        ? constant(energy, draws[0] as Quantity<'power'>, loads[0] as Quantity<'power'>)
        : spent(
            energy.si,
            draws.map(({ si }) => si),
            loads.map(({ si }) => si),
          )
    const out = quantity('energy', delivered, 'J').as('kWh')
    const peak = loads.reduce((one, other) => (other.si > one.si ? other : one))
    return {
      duration: quantity('time', time, 's').as('h'),
      delivered: out,
      lost: energy.as('kWh').minus(out),
      checks: [
        check(
          'inverter.load',
          'Load on the inverter',
          peak,
          'at most',
          inverter.power,
          'inverter.power, as given',
          hourly === undefined ? 'load' : 'hourly',
          'inverter.power',
        ),
      ],
      assumptions:
        hourly === undefined ? [] : [assumed('load.peaks', 'Loads are means over an hour: their peaks are not seen.')],
      cautions: [feedingHouse, highVoltage],
    }
  },
})

function constant(energy: Quantity<'energy'>, draw: Quantity<'power'>, load: Quantity<'power'>) {
  const time = backupTime({ energy, load: draw, efficiency: 1 }).si
  return { time, delivered: load.si * time }
}

/** Hour by hour until the energy is spent, whole rounds of the list at once. */
function spent(energy: number, draws: readonly number[], loads: readonly number[]) {
  const hour = 3600
  const round = draws.reduce((sum, draw) => sum + draw * hour, 0)
  const rounds = Math.floor(energy / round)
  let left = energy - rounds * round
  let time = rounds * draws.length * hour
  let delivered = rounds * loads.reduce((sum, load) => sum + load * hour, 0)
  for (const [i, draw] of draws.entries()) {
    const lasts = draw * hour <= left ? hour : left / draw
    time += lasts
    delivered += (loads[i] as number) * lasts
    left -= draw * lasts
    if (lasts < hour) break
  }
  return { time, delivered }
}
