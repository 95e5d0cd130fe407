/**
 * The temperature of a pack over a drive, a charge or a night.
 *
 * Rests on Incropera, Fundamentals of Heat and Mass Transfer, chapter 5, for bodies of one temperature, on Bernardi,
 * Pawlikowski and Newman (1985) for the heat of cells, and on the law of Arrhenius for their resistance.
 */
import { cite, section } from '../../formula/index.js'
import { lithiumCells } from '../../procedure/cautions.js'
import { type Findings, procedure, type Unfinished } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { fromSi } from '../../quantity/quantity.js'
import { lumpedTemperature, thermalTimeConstant } from '../lumped.js'
import { assumptionsOf, celsius, checksOf, hottestOf } from './checks.js'
import { bodiesOf, follow, type Stretch, type Track } from './follow.js'
import { type Pack, packFields, refuseUnusable, where } from './given.js'
import { cellHeat, resistanceAtTemperature } from './heat.js'
import { type Lump, responseOf } from './lumps.js'

/** The course of a temperature, and its ends. */
export interface TemperatureCourse {
  /** Times and temperatures: the start, the end of each step, every switching, and the times asked for. */
  readonly series: readonly (readonly [time: Quantity<'time'>, temperature: Quantity<'temperature'>])[]
  /** Highest temperature, also between the points of the series. */
  readonly maximum: Quantity<'temperature'>
  /** Lowest temperature, also between the points of the series. */
  readonly minimum: Quantity<'temperature'>
  readonly final: Quantity<'temperature'>
}

/** What becomes of a pack's heat over the whole time. */
export interface PackEnergies {
  /** Heat that the cells make. */
  readonly made: Quantity<'energy'>
  /** Heat that comes into the coolant from elsewhere, 0 without a coolant. */
  readonly coolantHeat: Quantity<'energy'>
  /** Heat of the heater. */
  readonly heater: Quantity<'energy'>
  /** Heat that the cooling takes. */
  readonly cooling: Quantity<'energy'>
  /** Heat lost to the surroundings; negative where they warm the pack. */
  readonly lost: Quantity<'energy'>
  /** Heat that is in the pack, and its coolant, at the end and was not at the start. */
  readonly stored: Quantity<'energy'>
}

/** The temperature of a pack over time. */
export interface PackTemperature extends TemperatureCourse, Findings {
  /** The course of the coolant, where it is a body of its own. */
  readonly coolant?: TemperatureCourse
  /** Hottest point of the cells: the core of the warmest of them. The limit of the cells is held to it. */
  readonly hottest: Quantity<'temperature'>
  readonly energies: PackEnergies
}

/**
 * Finds the temperature of a pack over time, exactly: while heat, heater and cooling are steady it follows the exact
 * response of a body of one temperature (or of two, cells and coolant), and the moments at which a thermostat switches
 * are found from that response, not stepped over.
 *
 * What the cells make is `heat`, steps of power and duration, as a drive cycle or a charge makes it; or `current`, steps of
 * current and duration, with the `resistance` of the pack at two temperatures, between and beyond which it follows the law of
 * Arrhenius. A `heater` switches on when the cells come down to one temperature and off when they come up to a higher one;
 * `cooling` the other way round. A `coolant` is a body of its own, to which heater and cooling then belong; `conductance` is
 * then that of the cells past the coolant.
 *
 * Answers: how warm or cold do the cells become over a drive, a charge or a night?
 *
 * - `heatCapacity`: heat capacity of the pack, in kJ/K, above 0 kJ/K
 * - `conductance`: conductance from the pack to its surroundings, in W/K, at least 0 W/K
 * - `surroundings`: temperature of the surroundings, in °C
 * - `initial`: temperature of the pack at the start, in °C
 * - `heat`: the heat of the cells, step by step, pairs of heat of the cells and duration, optional
 * - `current`: the current of the pack, step by step, pairs of current, positive on discharge and duration, optional
 * - `heatOf`: whether the heat is that of a drive or of a charge, 'drive' or 'charge', optional
 * - `resistance`: the resistance of the pack at two temperatures, optional
 *   - `coldTemperature`: colder temperature of measurement, in °C, above -273.15 °C
 *   - `coldResistance`: resistance measured in the cold, in mΩ, above 0 mΩ
 *   - `warmTemperature`: warmer temperature of measurement, in °C, above -273.15 °C
 *   - `warmResistance`: resistance measured in the warm, in mΩ, above 0 mΩ
 * - `heater`: a heater that switches on in the cold, optional
 *   - `power`: power of the heater, in kW, above 0 kW
 *   - `limit`: most that the coolant may have as it leaves the heater, in °C, optional
 *   - `on`: cell temperature at which it switches on, in °C
 *   - `off`: cell temperature at which it switches off, in °C
 * - `cooling`: cooling that switches on in the heat, by a power, a conductance, or both, optional
 *   - `power`: heat that it takes, as a chiller does, in kW, above 0 kW, optional
 *   - `conductance`: conductance to the surroundings that it adds, as a fan does, in W/K, above 0 W/K, optional
 *   - `on`: cell temperature at which it switches on, in °C
 *   - `off`: cell temperature at which it switches off, in °C
 * - `coolant`: the coolant as a body of its own, optional
 *   - `heatCapacity`: heat capacity of coolant, plates and pipes, in kJ/K, above 0 kJ/K
 *   - `fromCells`: conductance from the cells to the coolant, in W/K, at least 0 W/K
 *   - `toSurroundings`: conductance from the coolant to the surroundings, in W/K, at least 0 W/K
 *   - `heat`: heat that comes into the coolant from elsewhere, in kW, 0 W by default (nothing but the cells in its
 *     circuit)
 *   - `initial`: temperature of the coolant at the start, in °C, optional
 *   - `fluid`: coolant, glycol by volume, 'water' or 'ethylene glycol 30 %' or 'ethylene glycol 40 %' or 'ethylene
 *     glycol 50 %' or 'propylene glycol 30 %' or 'propylene glycol 40 %' or 'propylene glycol 50 %', optional
 *   - `cap`: pressure above that of the air at which the cap opens, in kPa, at least 0 kPa and at most 190 kPa, 0 kPa
 *     by default (an open tank)
 *   - `capacityRate`: flow of the coolant times its density and specific heat, in W/K, above 0 W/K, optional
 * - `hottest`: by how much the hottest point of the cells is hotter than the pack, while they make heat, optional
 *   - `core`: how long the heat of a cell stands in its core: its rise there over the rate at which it warms, in s, at
 *     least 0 s, 5 min by default (own estimate: conduction gives 3 to 4 min in round cells of 18 to 21 mm and
 *     prismatic ones of 26 mm)
 *   - `spread`: by how much the warmest cell is warmer than the pack, in K, at least 0 K, 5 K by default (common
 *     practice, no source)
 * - `humidity`: relative humidity of the air around, a plain number, at least 0.01 and at most 1, optional
 * - `limits`: the limits of the cells, optional
 *   - `low`: lowest temperature allowed, in °C, optional
 *   - `high`: highest temperature allowed, in °C, optional
 *   - `charge`: lowest temperature at which they may be charged, in °C, optional
 * - `every`: time from point to point of the series, for a drawing, in s, above 0 s, optional
 *
 * @returns The {@link PackTemperature}: series, maximum, minimum, final, the heat balance, and checks of the limits.
 * @throws InputError for what cannot be used, by its path; CalculationError where a thermostat would switch more than
 * 100 000 times, where more heat is taken out than there is, or where the cells would be hotter than 1000 °C.
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 5; Bernardi, Pawlikowski and Newman (1985), heat
 * of cells.
 *
 * @example
 * ```ts
 * const night = packTemperature({
 *   heatCapacity: '150 kJ/K',
 *   conductance: '8 W/K',
 *   surroundings: '-10 °C',
 *   initial: '25 °C',
 *   heat: [['0 W', '8 h']],
 * })
 * String(night.final) // '-2.467 °C'
 * ```
 */
export const packTemperature = /*@__PURE__*/ procedure({
  name: where,
  title: 'Temperature of a pack over time',
  answers: 'How warm or cold do the cells become over a drive, a charge or a night?',
  input: packFields,
  source: [
    cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 5'),
    cite('Bernardi, Pawlikowski and Newman (1985)', 'heat of cells'),
  ],
  work: (pack): Unfinished<PackTemperature> => {
    refuseUnusable(pack)
    const run = follow(pack)
    worked(pack, run.stretches)
    const { tally } = run
    const [cells, coolant] = run.tracks
    const energy = (joules: number) => quantity('energy', joules, 'J').as('kWh')
    return {
      ...courseOf(cells),
      ...(coolant === undefined ? {} : { coolant: courseOf(coolant) }),
      hottest: celsius(hottestOf(pack, run)),
      energies: {
        made: energy(tally.made),
        coolantHeat: energy(tally.coolantHeat),
        heater: energy(tally.heater),
        cooling: energy(tally.cooling),
        lost: energy(tally.lost),
        stored: energy(tally.stored),
      },
      checks: checksOf(pack, run),
      assumptions: assumptionsOf(pack, run),
      cautions: [lithiumCells],
    }
  },
})

/** So many stretches a working shows one by one. */
const SHOWN = 12

function courseOf({ points, maximum, minimum }: Track): TemperatureCourse {
  return {
    series: points.map(([time, at]) => [fromSi('time', time, 's'), celsius(at)]),
    maximum: celsius(maximum),
    minimum: celsius(minimum),
    final: celsius((points.at(-1) as Track['points'][number])[1]),
  }
}

/** Writes down, for the working, what the course starts from, and a short course stretch by stretch. */
function worked(pack: Pack, stretches: readonly Stretch[]): void {
  const { heatCapacity, surroundings, initial: temperature, resistance, current } = pack
  const first = current?.[0]?.[0]
  if (resistance !== undefined && first !== undefined) {
    section('Cells at the start', () =>
      cellHeat({ current: first, resistance: resistanceAtTemperature({ temperature, ...resistance }), temperature }),
    )
  }
  if (pack.coolant !== undefined) {
    const { capacities, away, between } = bodiesOf(pack)
    const [cells, coolant] = capacities.map(
      (each, i): Lump => ({ heatCapacity: each, rate: 0, conductance: away[i] as number }),
    )
    const { decays } = responseOf([cells as Lump, coolant as Lump], between)
    const times = decays.map((decay) =>
      Number.isFinite(1 / decay) ? String(quantity('time', 1 / decay, 's')) : 'no end',
    )
    section(`Cells and coolant as two bodies, of time constants ${times.join(' and ')}`, () => {})
  }
  // Where hardly anything is lost, the printed formula would divide by next to nothing.
  const loses = (through: number, time: number) => through * time > 1e-6 * heatCapacity.si
  if (stretches.length > SHOWN) return
  for (const { from, until, initial, power, conductance: whole } of stretches) {
    if (!loses(whole, until - from)) continue
    const [start, end] = [from, until].map((at) => quantity('time', at, 's'))
    const through = quantity('thermalConductance', whole, 'W/K')
    section(`From ${start} to ${end}`, () =>
      lumpedTemperature({
        initial: quantity('temperature', initial, 'K').as('°C'),
        surroundings,
        time: quantity('time', until - from, 's'),
        timeConstant: thermalTimeConstant({ heatCapacity, conductance: through }),
        power: quantity('power', power, 'W'),
        conductance: through,
      }),
    )
  }
}
