/**
 * Which arrangements of equal modules, so many in series and so many in parallel, fit a controller and what is asked of
 * the pack, and what refuses the others.
 *
 * Rests on circuit theory. Full-charge voltage is held to the most that the controller bears, and the empty pack, sagged
 * under load, to the least that it works at.
 */
import * as z from 'zod/mini'
import { cautions, type Findings, isAbove, isBelow } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { unrecorded } from '../../formula/record.js'
import { InputError, type Kind, type Quantity, quantity } from '../../quantity/index.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { moduleGiven, refuseModule } from './module.js'
import {
  currentAtVoltage,
  currentForPower,
  maximumPower,
  packEnergy,
  packResistance,
  parallelCharge,
  seriesVoltage,
  terminalPower,
  terminalVoltage,
  usableEnergy,
} from './pack.js'

/** Equal modules, so many in series and so many in parallel. */
export interface Arrangement {
  readonly series: number
  readonly parallel: number
  readonly modules: number
  readonly nominalVoltage: Quantity<'voltage'>
  /** Of the empty pack at rest. */
  readonly minimumVoltage: Quantity<'voltage'>
  /** Of the full pack. */
  readonly maximumVoltage: Quantity<'voltage'>
  readonly capacity: Quantity<'charge'>
  readonly energy: Quantity<'energy'>
  readonly usableEnergy: Quantity<'energy'>
  readonly resistance: Quantity<'resistance'>
  readonly mass: Quantity<'mass'>
  /** At the nominal voltage, within the current of the modules and down to the lowest voltage of modules and controller. */
  readonly continuousPower: Quantity<'power'>
  /** The same at the peak current of the modules, where it is given. */
  readonly peakPower?: Quantity<'power'>
  /** By how much the voltage falls at the current that is asked for. */
  readonly sag: Quantity<'voltage'>
}

/** An arrangement with all the reasons why it does not serve. */
export interface RefusedArrangement {
  readonly series: number
  readonly parallel: number
  readonly reasons: readonly string[]
}

/** The arrangements of a module that serve, and those that nearly do. */
export interface PackArrangements extends Findings {
  /** The lightest first; of equal masses, which hold equal energies, the one with the higher voltage. */
  readonly fits: readonly Arrangement[]
  /** Those that miss no limit by more than half of it, or else the ten nearest; the nearest first. */
  readonly rejected: readonly RefusedArrangement[]
}

const arrangePackGiven = /*@__PURE__*/ about(
  'a module, a controller and what is asked of the pack',
  z.strictObject({
    module: moduleGiven,
    window: about(
      'the voltages at which the controller works',
      z.strictObject({
        minimum: given('voltage', 'Lowest voltage at which the controller works', { min: 0 }),
        maximum: given('voltage', 'Highest voltage that the controller bears', { above: 0, max: '1500 V' }),
      }),
    ),
    available: about('how many modules there are', z.optional(z.int().check(z.minimum(1)))),
    energy: z.optional(given('energy', 'Least energy wanted', { min: 0 })),
    power: z.optional(given('power', 'Least power wanted all day', { min: 0 })),
    maximumMass: z.optional(given('mass', 'Greatest mass of all modules', { above: 0 })),
    current: z.optional(given('current', 'Greatest current that the controller draws from the pack', { min: 0 })),
    usable: about(
      'the states of charge between which the pack is used',
      z.optional(
        z.strictObject({
          upper: given('ratio', 'Highest state of charge used', { min: 0, max: 1 }),
          lower: given('ratio', 'Lowest state of charge used', { min: 0, max: 1 }),
        }),
      ),
    ),
  }),
)

type Asked = Read<typeof arrangePackGiven>

/** Common practice, no source: both ends wear cells, and the last of the charge sags most. */
const USABLE = /*@__PURE__*/ (() => ({ upper: quantity('ratio', '90 %'), lower: quantity('ratio', '10 %') }))()

/**
 * Finds every arrangement of equal modules in series and in parallel that fits a controller, and what refuses the others.
 *
 * - `module`: as {@link packAt} takes it; its open-circuit curve is not needed
 * - `window`: `minimum` and `maximum` (V) of the controller, up to 1500 V. The full pack must lie within the maximum, and
 *   the empty pack under load above the minimum
 * - `available`: how many modules there are; or `maximumMass` (kg) of them; at least one of the two
 * - `energy` (kWh), `power` (kW): the least wanted; power at the nominal voltage, all day
 * - `current` (A): the most that the controller draws. Without it the empty pack sags under `power`, and without that
 *   under the continuous current of its modules
 * - `usable`: `upper` and `lower` state of charge, 0.9 and 0.1 unless given
 *
 * @returns `fits`, ranked, and `rejected`, each with every reason. Where nothing fits, `fits` is empty.
 * @throws InputError for input that cannot be used, by its path, such as a module whose voltages are out of order, or so many
 * modules that more than 100 000 arrangements come of them.
 * Source: circuit theory.
 *
 * @example
 * ```ts
 * const { fits, rejected } = arrangePack({
 *   module: {
 *     name: 'salvaged module of 12 cells',
 *     cellsInSeries: 12,
 *     nominalVoltage: '44.4 V',
 *     minimumVoltage: '36 V',
 *     maximumVoltage: '50.4 V',
 *     capacity: '41 Ah',
 *     resistance: '14 mΩ',
 *     mass: '11.5 kg',
 *     continuousCurrent: '80 A',
 *     peakCurrent: '180 A',
 *   },
 *   window: { minimum: '96 V', maximum: '220 V' },
 *   available: 9,
 *   energy: '12 kWh',
 *   current: '250 A',
 * })
 * fits.map(({ series, parallel }) => `${series} x ${parallel}`) // ['4 x 2', '3 x 3']
 * rejected[0]?.reasons // ['10.92 kWh, 12 kWh wanted']
 * ```
 */
export const arrangePack = /*@__PURE__*/ procedure('arrangePack', arrangePackGiven, (asked): PackArrangements => {
  refuseModule('arrangePack', 'module', asked.module)
  refuseAsked(asked)
  const judged = candidates(asked).map(([series, parallel]) => unrecorded(() => judge(asked, series, parallel)))
  const fits = judged.filter(({ misses }) => misses.length === 0)
  const refused = judged
    .filter(({ misses }) => misses.length > 0)
    .sort((one, other) => one.misses.length - other.misses.length || worst(one) - worst(other))
  const near = refused.filter((each) => worst(each) <= NEAR)
  // Once more for those that are returned, so that a working shows these and no others.
  const again = ({ arrangement: { series, parallel } }: Judged) =>
    section(
      ({ misses }: Judged) =>
        `${series} in series, ${parallel} in parallel: ${misses.length === 0 ? 'fits' : `refused, ${misses.map(({ reason }) => reason).join('; ')}`}`,
      () => judge(asked, series, parallel),
    )
  return {
    fits: fits.sort(byRank).map((each) => again(each).arrangement),
    rejected: (near.length > 0 ? near : refused.slice(0, 10)).map(again).map(({ arrangement, misses }) => ({
      series: arrangement.series,
      parallel: arrangement.parallel,
      reasons: misses.map(({ reason }) => reason),
    })),
    checks: [],
    assumptions: assumptionsOf(asked),
    cautions: [cautions.highVoltage, cautions.joiningModules, cautions.lithiumCells, cautions.shortCircuit],
  }
})

/** A limit that an arrangement misses, and by what share of it. */
interface Miss {
  readonly reason: string
  readonly by: number
}

interface Judged {
  readonly arrangement: Arrangement
  readonly misses: readonly Miss[]
}

/** An arrangement that misses a limit by more than this share of it is not near. */
const NEAR = 0.5

function worst({ misses }: Judged): number {
  return Math.max(...misses.map(({ by }) => by))
}

function byRank({ arrangement: one }: Judged, { arrangement: other }: Judged): number {
  return one.modules - other.modules || other.series - one.series
}

function refuseAsked({ window, available, maximumMass, usable }: Asked): void {
  if (window.minimum.si >= window.maximum.si) {
    const expected = `a voltage above the minimum, ${window.minimum}`
    throw new InputError('arrangePack', [{ path: 'window.maximum', expected, received: String(window.maximum) }])
  }
  if (usable !== undefined && usable.upper.si < usable.lower.si) {
    const expected = `a state of charge of at least the lower one, ${usable.lower}`
    throw new InputError('arrangePack', [{ path: 'usable.upper', expected, received: String(usable.upper) }])
  }
  if (available === undefined && maximumMass === undefined) {
    const expected = "at least one of them, such as available: 12 or maximumMass: '140 kg', so that the search ends"
    throw new InputError('arrangePack', [{ path: 'available and maximumMass', expected, received: 'neither' }])
  }
}

/** More arrangements than this are no longer a choice, and take seconds to judge. */
const MOST = 100_000

/** Series up to the first that is too high for the controller, and parallel up to the first that is too many. */
function candidates({ module, window, available, maximumMass }: Asked): (readonly [number, number])[] {
  const highest = Math.floor(window.maximum.si / module.maximumVoltage.si) + 1
  const byMass = maximumMass === undefined ? Infinity : Math.floor(maximumMass.si / module.mass.si)
  const most = Math.min(available ?? Infinity, byMass)
  const found: (readonly [number, number])[] = []
  for (let series = 1; series <= highest; series++) {
    for (let parallel = 1; parallel <= Math.floor(most / series) + 1; parallel++) {
      if (found.length === MOST) {
        const expected = `so few modules, and with so high a voltage, that at most ${MOST} arrangements come of them`
        const received = `${most} modules, and up to ${highest} in series`
        throw new InputError('arrangePack', [{ path: 'available and maximumMass', expected, received }])
      }
      found.push([series, parallel])
    }
  }
  return found
}

function judge(asked: Asked, series: number, parallel: number): Judged {
  const { module, window } = asked
  const volts = (voltage: Quantity<'voltage'>) => seriesVoltage({ count: series, voltage })
  const [minimumVoltage, nominalVoltage, maximumVoltage] = [
    volts(module.minimumVoltage),
    volts(module.nominalVoltage),
    volts(module.maximumVoltage),
  ]
  const capacity = parallelCharge({ count: parallel, capacity: module.capacity })
  const energy = packEnergy({ voltage: nominalVoltage, capacity })
  const resistance = packResistance({ series, parallel, resistance: module.resistance })
  const floor = window.minimum.si > minimumVoltage.si ? window.minimum : minimumVoltage
  const power = (current: Quantity<'current'>) =>
    powerWithin(nominalVoltage, floor, resistance, current.times(parallel))
  const peak = module.peakCurrent
  const current = currentWhenEmpty(asked, parallel, minimumVoltage, resistance)
  const sag = current === undefined ? minimumVoltage : quantity('voltage', current.si * resistance.si, 'V')
  const arrangement: Arrangement = {
    series,
    parallel,
    modules: series * parallel,
    nominalVoltage,
    minimumVoltage,
    maximumVoltage,
    capacity,
    energy,
    usableEnergy: usableEnergy({ energy, ...(asked.usable ?? USABLE) }),
    resistance,
    mass: module.mass.times(series * parallel),
    continuousPower: power(module.continuousCurrent),
    ...(peak === undefined ? {} : { peakPower: power(peak) }),
    sag,
  }
  return { arrangement, misses: missesOf(asked, arrangement, current) }
}

/** The current under which the empty pack sags; undefined where it cannot deliver the power at all. */
function currentWhenEmpty(
  { module, power, current }: Asked,
  parallel: number,
  openCircuit: Quantity<'voltage'>,
  resistance: Quantity<'resistance'>,
): Quantity<'current'> | undefined {
  if (current !== undefined) return current
  if (power === undefined) return module.continuousCurrent.times(parallel)
  const most = maximumPower.compute({ openCircuit: openCircuit.si, resistance: resistance.si })
  return power.si <= most ? currentForPower({ openCircuit, resistance, power }) : undefined
}

/** Power at the most current that the modules bear or the floor allows. */
function powerWithin(
  openCircuit: Quantity<'voltage'>,
  floor: Quantity<'voltage'>,
  resistance: Quantity<'resistance'>,
  bearable: Quantity<'current'>,
): Quantity<'power'> {
  if (floor.si >= openCircuit.si) return quantity('power', '0 kW')
  const atFloor = currentAtVoltage({ openCircuit, terminal: floor, resistance })
  const current = atFloor.si < bearable.si ? atFloor : bearable
  return terminalPower({ voltage: terminalVoltage({ openCircuit, current, resistance }), current })
}

function missesOf(asked: Asked, made: Arrangement, current: Quantity<'current'> | undefined): Miss[] {
  const { module, window, available, maximumMass, energy, power } = asked
  const misses: Miss[] = []
  const above = <K extends Kind>(actual: Quantity<K>, limit: Quantity<K>, reason: () => string) => {
    if (isAbove(actual, limit)) misses.push({ reason: reason(), by: actual.si / limit.si - 1 })
  }
  const below = <K extends Kind>(actual: Quantity<K>, limit: Quantity<K>, reason: () => string) => {
    if (isBelow(actual, limit)) misses.push({ reason: reason(), by: 1 - actual.si / limit.si })
  }
  above(
    made.maximumVoltage,
    window.maximum,
    () => `${made.maximumVoltage} when full, above the ${window.maximum} that the controller bears`,
  )
  if (current === undefined) misses.push({ reason: `the empty pack cannot deliver ${power} at all`, by: 1 })
  else {
    const sagged = made.minimumVoltage.minus(made.sag)
    below(
      sagged,
      window.minimum,
      () => `${sagged} when empty at ${current}, below the ${window.minimum} at which the controller works`,
    )
    const [bearable, name] =
      asked.current === undefined || module.peakCurrent === undefined
        ? [module.continuousCurrent, 'continuous']
        : [module.peakCurrent, 'peak']
    const bears = bearable.times(made.parallel)
    above(current, bears, () => `${current}, above the ${bears} of ${name} current of ${made.parallel} in parallel`)
  }
  if (available !== undefined && made.modules > available) {
    misses.push({ reason: `${made.modules} modules, ${available} available`, by: made.modules / available - 1 })
  }
  if (maximumMass !== undefined) above(made.mass, maximumMass, () => `${made.mass}, at most ${maximumMass} allowed`)
  if (energy !== undefined) below(made.energy, energy, () => `${made.energy}, ${energy} wanted`)
  if (power !== undefined) {
    below(made.continuousPower, power, () => `${made.continuousPower} all day, ${power} wanted`)
  }
  return misses
}

function assumptionsOf({ current, power, usable }: Asked): string[] {
  const load =
    current !== undefined
      ? `${current}, the most that the controller draws`
      : power !== undefined
        ? `the current for ${power}`
        : 'the continuous current of its modules'
  return [
    `The empty pack rests at the lowest voltage of its modules, and sags from there under ${load}.`,
    'The modules are equal, warm, and share the current; links and contactors add no resistance.',
    'Powers are those at the nominal voltage as open-circuit voltage.',
    ...(usable === undefined
      ? [
          `The pack is used from ${USABLE.upper} down to ${USABLE.lower} (usable by default; common practice, no source).`,
        ]
      : []),
  ]
}
