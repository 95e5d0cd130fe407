/**
 * Which arrangements of equal modules, so many in series and so many in parallel, fit a controller and what is asked of
 * the pack, and what refuses the others.
 *
 * Rests on circuit theory. Full-charge voltage is held to the most that the controller bears, and the empty pack, sagged
 * under load, to the least that it works at.
 */
import { definition } from '../../formula/index.js'
import { unrecorded } from '../../formula/record.js'
import { highVoltage, joiningModules, lithiumCells, shortCircuit } from '../../procedure/cautions.js'
import {
  type Assumption,
  allThatServe,
  assumed,
  type Check,
  defaulted,
  type Findings,
  given,
  group,
  type Judged,
  judgedUnderHeading,
  optional,
  procedure,
  type Read,
  reasonsOf,
  says,
  trial,
  type Unfinished,
  whole,
} from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { chargeLimitOf } from './charge-limit.js'
import { moduleFields, openCircuitOf, refuseModule, unusualOfModule, WARM } from './module.js'
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

const arrangeFields = /*@__PURE__*/ (() => ({
  module: group('A module', moduleFields),
  window: group('The voltages at which the controller works', {
    minimum: given('voltage', 'Lowest voltage at which the controller works', { min: 0, usual: ['12 V', '400 V'] }),
    maximum: given('voltage', 'Highest voltage that the controller bears', {
      above: 0,
      max: '1500 V',
      usual: ['48 V', '900 V'],
    }),
  }),
  available: optional(whole('How many modules there are', { min: 1 }), {
    absent: 'As many modules can be had as maximumMass allows: give available.',
  }),
  energy: optional(given('energy', 'Least energy wanted', { min: 0 }), {
    absent: 'The energy is not held to a limit: give energy.',
  }),
  power: optional(given('power', 'Least power wanted all day, at the nominal voltage', { min: 0 }), {
    absent: 'The power is not held to a limit: give power.',
  }),
  maximumMass: optional(given('mass', 'Greatest mass of all modules', { above: 0 }), {
    absent: 'The mass of the modules is not held to a limit: give maximumMass.',
  }),
  batteryCurrent: optional(given('current', 'Most current that the controller draws from the pack', { min: 0 })),
  regenerationCurrent: optional(
    given('current', 'Most current that the controller sends back into the pack', { above: 0 }),
    { absent: 'Nothing is recovered when the pack is full: no regenerationCurrent is given.' },
  ),
  usable: defaulted(
    group('The states of charge between which the pack is used', {
      upper: given('ratio', 'Highest state of charge used', {
        min: 0,
        max: 1,
        default: '90 %',
        because: 'a full cell wears, common practice, no source',
      }),
      lower: given('ratio', 'Lowest state of charge used', {
        min: 0,
        max: 1,
        default: '10 %',
        because: 'an empty cell wears and sags most, common practice, no source',
      }),
    }),
  ),
}))()

type Asked = Read<typeof arrangeFields>

/**
 * Finds every arrangement of equal modules in series and in parallel that fits a controller, and what refuses the others.
 *
 * Answers: how many modules in series and in parallel fit the controller and what is asked of the pack?
 *
 * - `module`: a module
 *   - `name`: what the module is called, text
 *   - `cellsInSeries`: cells in series, a whole number, at least 1 and at most 1000
 *   - `chemistry`: what its cells are made of, 'NMC' or 'LFP', optional
 *   - `nominalVoltage`: nominal voltage of the module, in V, above 0 V
 *   - `minimumVoltage`: lowest voltage that the module may have, in V, above 0 V
 *   - `maximumVoltage`: voltage of the full module, in V, above 0 V
 *   - `capacity`: capacity of the module, in Ah, above 0 Ah
 *   - `newCapacity`: capacity of the module when it was new, at the same current and temperature, in Ah, above 0 Ah,
 *     optional
 *   - `cell`: the limits of each of its cells, and how unlike they are, optional
 *     - `minimumVoltage`: lowest voltage that a cell may have, in V, above 0 V
 *     - `maximumVoltage`: highest voltage that a cell may have, in V, above 0 V
 *     - `spread`: most by which a cell of the full or empty module is off the mean of all, in V, at least 0 V, optional
 *   - `resistance`: resistance of the module, warm, in mΩ, above 0 mΩ
 *   - `ohmicResistance`: resistance of the module, warm, within 10 ms, such as at 1 kHz, in mΩ, above 0 mΩ, optional
 *   - `cold`: its resistance in the cold, optional
 *     - `temperature`: temperature of the cold measurement, in °C, above -273.15 °C and below 25 °C
 *     - `resistance`: resistance of the module at that temperature, in mΩ, above 0 mΩ
 *   - `mass`: mass of the module, in kg, above 0 kg
 *   - `continuousCurrent`: discharge current that it bears all day, in A, above 0 A
 *   - `peakCurrent`: discharge current that it bears for a short time, in A, above 0 A, optional
 *   - `chargeCurrent`: charge current that it bears, in A, above 0 A, optional
 *   - `chargeCurrents`: charge current that it bears by the temperature of the cells, the temperatures rising, pairs of
 *     temperature of the cells and charge current that it bears there, optional
 *   - `temperatures`: the temperatures at which its cells may work, optional
 *     - `charge`: the temperatures of the cells on charge
 *       - `minimum`: lowest temperature of the cells on charge, in °C
 *       - `maximum`: highest temperature of the cells on charge, in °C
 *     - `discharge`: the temperatures of the cells on discharge
 *       - `minimum`: lowest temperature of the cells on discharge, in °C
 *       - `maximum`: highest temperature of the cells on discharge, in °C
 *   - `size`: the sides of the module, optional
 *     - `length`: length, in m, above 0 m
 *     - `width`: width, in m, above 0 m
 *     - `height`: height, in m, above 0 m
 *   - `specificHeat`: specific heat of the module, in J/(kg·K), above 0 J/(kg·K), optional
 *   - `openCircuit`: points [state of charge, voltage at rest] in rising order, pairs of state of charge and
 *     open-circuit voltage, optional
 * - `window`: the voltages at which the controller works
 *   - `minimum`: lowest voltage at which the controller works, in V, at least 0 V
 *   - `maximum`: highest voltage that the controller bears, in V, above 0 V and at most 1500 V
 * - `available`: how many modules there are, a whole number, at least 1, optional
 * - `energy`: least energy wanted, in kWh, at least 0 kWh, optional
 * - `power`: least power wanted all day, at the nominal voltage, in kW, at least 0 kW, optional
 * - `maximumMass`: greatest mass of all modules, in kg, above 0 kg, optional
 * - `batteryCurrent`: most current that the controller draws from the pack, in A, at least 0 A, optional
 * - `regenerationCurrent`: most current that the controller sends back into the pack, in A, above 0 A, optional
 * - `usable`: the states of charge between which the pack is used, optional
 *   - `upper`: highest state of charge used, a plain number, at least 0 and at most 1, 90 % by default (a full cell
 *     wears, common practice, no source)
 *   - `lower`: lowest state of charge used, a plain number, at least 0 and at most 1, 10 % by default (an empty cell
 *     wears and sags most, common practice, no source)
 * - always assumed: the modules are equal, warm, and share the current; links and contactors add no resistance
 * - always assumed: powers are those at the nominal voltage as open-circuit voltage
 *
 * @returns `fits`, ranked, and `rejected`, each with every reason. Where nothing fits, `fits` is empty.
 * @throws InputError for input that cannot be used, by its path, such as a module whose voltages are out of order, or so many
 * modules that more than 100 000 arrangements come of them.
 * Source: by definition.
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
 *   batteryCurrent: '250 A',
 * })
 * fits.map(({ series, parallel }) => `${series} x ${parallel}`) // ['4 x 2', '3 x 3']
 * rejected[0]?.reasons // ['holds 10.92 kWh, less than the 12 kWh wanted']
 * ```
 */
export const arrangePack = /*@__PURE__*/ procedure({
  name: 'arrangePack',
  title: 'Arrangements of equal modules',
  answers: 'How many modules in series and in parallel fit the controller and what is asked of the pack?',
  input: arrangeFields,
  source: [definition],
  assumes: [
    'The modules are equal, warm, and share the current; links and contactors add no resistance.',
    'Powers are those at the nominal voltage as open-circuit voltage.',
  ],
  work: (asked): Unfinished<PackArrangements> => {
    refuseModule('arrangePack', 'module', asked.module)
    refuseAsked(asked)
    const { serving, rejected } = unrecorded(() => allThatServe(candidates(asked), (each) => judge(asked, each)))
    const refused = rejected
      .map((judged) => ({ judged, misses: failsOf(judged).length, worst: worstOf(judged) }))
      .sort((one, other) => one.misses - other.misses || one.worst - other.worst)
    const near = refused.filter(({ worst }) => worst <= NEAR)
    // Once more for those that are returned, so that a working shows these and no others.
    const again = ({ made: { series, parallel } }: Judged<Arrangement>) =>
      judgedUnderHeading([series, parallel] as const, (each) => judge(asked, each))
    return {
      fits: [...serving].sort(byRank).map((each) => again(each).made),
      rejected: (near.length > 0 ? near : refused.slice(0, 10)).map(({ judged }) => {
        const shown = again(judged)
        return { series: shown.made.series, parallel: shown.made.parallel, reasons: reasonsOf(shown) }
      }),
      checks: [...noneFits(serving, refused), ...unknownOf(asked)],
      assumptions: [assumed('pack.emptyUnderLoad', loadInWords(asked)), ...recoveryAssumptions(asked)],
      notes: unusualOfModule('module', asked.module),
      cautions: [highVoltage, joiningModules, lithiumCells, shortCircuit],
    }
  },
})

/** That nothing fits, with what comes nearest. */
function noneFits(
  serving: readonly unknown[],
  refused: readonly { readonly judged: Judged<Arrangement>; readonly misses: number }[],
): Check[] {
  const [nearest] = refused
  if (serving.length > 0 || nearest === undefined) return []
  const text = `no arrangement fits; the nearest, ${nearest.judged.name}, does not: ${reasonsOf(nearest.judged).join('; ')}`
  const told = refused.some(({ misses }) => misses === 0) ? { unknown: text } : { fail: text }
  return [trial('pack.arrangements', 'Arrangements that fit', told, 'what is asked of the pack', 'available', 'window')]
}

/** What no arrangement of these modules can be held to. */
function unknownOf(asked: Asked): Check[] {
  const { usable, regenerationCurrent } = asked
  if (regenerationCurrent === undefined) return []
  const state = usable.upper.as('%')
  return [
    ...(recoveredMost(asked, 1) === undefined
      ? [
          trial(
            'pack.chargeCurrent',
            'Braking into the pack, by its current',
            { unknown: 'whether the modules take the recovered current is not known: give module.chargeCurrent' },
            'module.chargeCurrent, for all in parallel',
            'module.chargeCurrent',
          ),
        ]
      : []),
    ...(isRestKnown(asked)
      ? []
      : [
          trial(
            'pack.regenerationCells',
            'Braking into the pack, at the cells',
            {
              unknown: `whether the recovered current lifts the cells above their full voltage is not known: give module.openCircuit or module.chemistry, for the voltage at ${state}`,
            },
            'module.maximumVoltage, for all in series',
            ...['module.openCircuit', 'module.chemistry', 'usable.upper'],
          ),
        ]),
  ]
}

/** Whether the voltage at rest is known at the highest state of charge used: that of the full pack always is. */
function isRestKnown({ module: { openCircuit, chemistry }, usable }: Asked): boolean {
  return openCircuit !== undefined || chemistry !== undefined || usable.upper.si === 1
}

/** What the warm modules take back; undefined where that is not said. */
function recoveredMost({ module }: Asked, parallel: number) {
  const temperature = quantity('temperature', WARM)
  const { most, field } = chargeLimitOf({ module, series: 1, parallel }, '', { temperature, field: '' })
  // A table that does not reach to warm cells says nothing of them.
  return most === undefined || most.si === 0 ? undefined : { most, field }
}

function recoveryAssumptions(asked: Asked): Assumption[] {
  const { module, usable, regenerationCurrent } = asked
  if (regenerationCurrent === undefined) return []
  return [
    ...(isRestKnown(asked)
      ? []
      : [
          assumed(
            'pack.regenerationVoltage',
            `For the controller, braking starts from the voltage of the full pack, not from that at ${usable.upper.as('%')}: neither module.openCircuit nor module.chemistry is given.`,
          ),
        ]),
    ...(module.chargeCurrents === undefined
      ? []
      : [
          assumed(
            'pack.chargeCurrents',
            `The modules take back what module.chargeCurrents tells at ${WARM}; regenLimit and driveCycle tell it for colder cells.`,
          ),
        ]),
  ]
}

/** An arrangement that misses a limit by more than this share of it is not near. */
const NEAR = 0.5

function failsOf({ checks }: Judged<Arrangement>): Check[] {
  return checks.filter(({ verdict }) => verdict === 'fail')
}

/** By what share of a limit an arrangement misses it at most; what has no figure is missed by all of it. */
function worstOf(judged: Judged<Arrangement>): number {
  return Math.max(...failsOf(judged).map(({ margin = -1 }) => -margin))
}

function byRank({ made: one }: Judged<Arrangement>, { made: other }: Judged<Arrangement>): number {
  return one.modules - other.modules || other.series - one.series
}

function refuseAsked({ window, available, maximumMass, usable }: Asked): void {
  if (window.minimum.si >= window.maximum.si) {
    const expected = `a voltage above the minimum, ${window.minimum}`
    throw new InputError('arrangePack', [{ path: 'window.maximum', expected, received: String(window.maximum) }])
  }
  if (usable.upper.si < usable.lower.si) {
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

function judge(asked: Asked, [series, parallel]: readonly [series: number, parallel: number]): Judged<Arrangement> {
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
    usableEnergy: usableEnergy({ energy, ...asked.usable }),
    resistance,
    mass: module.mass.times(series * parallel),
    continuousPower: power(module.continuousCurrent),
    ...(peak === undefined ? {} : { peakPower: power(peak) }),
    sag,
  }
  return {
    name: `${series} in series, ${parallel} in parallel`,
    checks: trialsOf(asked, arrangement, current),
    made: arrangement,
  }
}

/** The current under which the empty pack sags; undefined where it cannot deliver the power at all. */
function currentWhenEmpty(
  { module, power, batteryCurrent }: Asked,
  parallel: number,
  openCircuit: Quantity<'voltage'>,
  resistance: Quantity<'resistance'>,
): Quantity<'current'> | undefined {
  if (batteryCurrent !== undefined) return batteryCurrent
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

/** What recovered current does to controller and cells at the highest state of charge used. */
function recoveryTrials(asked: Asked, { series, parallel, maximumVoltage, resistance }: Arrangement): Check[] {
  const { module, window, usable, regenerationCurrent } = asked
  if (regenerationCurrent === undefined) return []
  // Where nothing tells the voltage at rest, the pack counts as full: beside the controller that is the safe side.
  const isCounted = module.openCircuit !== undefined || module.chemistry !== undefined
  const rest = isCounted
    ? seriesVoltage({
        count: series,
        voltage: openCircuitOf('arrangePack', 'module', module).voltageAt(usable.upper),
      })
    : maximumVoltage
  const lifted = terminalVoltage({ openCircuit: rest, current: regenerationCurrent.times(-1), resistance })
  const state = isCounted ? `at ${usable.upper.as('%')}` : 'when full'
  const recovered = recoveredMost(asked, parallel)
  return [
    trial(
      'pack.regenerationVoltage',
      'Braking into the pack, at the controller',
      says`rises to ${lifted} ${state} as ${regenerationCurrent} come back, at most the ${window.maximum} that the controller bears`,
      'window.maximum, as given',
      'regenerationCurrent',
      'window.maximum',
    ),
    ...(isRestKnown(asked)
      ? [
          trial(
            'pack.regenerationCells',
            'Braking into the pack, at the cells',
            says`rises to ${lifted} ${state} as ${regenerationCurrent} come back, at most the ${maximumVoltage} of the full cells`,
            'module.maximumVoltage, for all in series',
            'regenerationCurrent',
            'usable.upper',
          ),
        ]
      : []),
    ...(recovered === undefined
      ? []
      : [
          trial(
            'pack.chargeCurrent',
            'Braking into the pack, by its current',
            says`takes ${regenerationCurrent} back, at most the ${recovered.most} that the modules take`,
            `module.${recovered.field}, for all in parallel`,
            'regenerationCurrent',
            `module.${recovered.field}`,
          ),
        ]),
  ]
}

function trialsOf(asked: Asked, made: Arrangement, current: Quantity<'current'> | undefined): Check[] {
  const { window, available, maximumMass, energy, power } = asked
  const { maximumVoltage, minimumVoltage, mass, continuousPower } = made
  const count = (modules: number) => quantity('ratio', modules)
  return [
    trial(
      'pack.fullVoltage',
      'Full pack at the controller',
      says`stands at ${maximumVoltage} when full, at most the ${window.maximum} that the controller bears`,
      'window.maximum, as given',
      'window.maximum',
      'module.maximumVoltage',
    ),
    ...(current === undefined
      ? [
          trial(
            'pack.emptyVoltage',
            'Empty pack under load',
            { fail: `the empty pack cannot deliver ${power} at all` },
            'circuit theory',
            'power',
            'module.resistance',
          ),
        ]
      : [
          trial(
            'pack.emptyVoltage',
            'Empty pack under load',
            says`falls to ${minimumVoltage.minus(made.sag)} when empty at ${current}, at least the ${window.minimum} at which the controller works`,
            'window.minimum, as given',
            'window.minimum',
            'module.minimumVoltage',
            'module.resistance',
          ),
          currentTrial(asked, made, current),
        ]),
    ...recoveryTrials(asked, made),
    ...(available === undefined
      ? []
      : [
          trial(
            'pack.modules',
            'Modules needed',
            says`needs ${count(made.modules)} modules, at most the ${count(available)} available`,
            'available, as given',
            'available',
          ),
        ]),
    ...(maximumMass === undefined
      ? []
      : [
          trial(
            'pack.mass',
            'Mass of the modules',
            says`weighs ${mass}, at most the ${maximumMass} allowed`,
            'maximumMass, as given',
            'maximumMass',
            'module.mass',
          ),
        ]),
    ...(energy === undefined
      ? []
      : [
          trial(
            'pack.energy',
            'Energy of the pack',
            says`holds ${made.energy}, at least the ${energy} wanted`,
            'energy, as given',
            'energy',
            'module.capacity',
          ),
        ]),
    ...(power === undefined
      ? []
      : [
          trial(
            'pack.power',
            'Power all day',
            says`gives ${continuousPower} all day, at least the ${power} wanted`,
            'power, as given',
            'power',
            'module.continuousCurrent',
          ),
        ]),
  ]
}

/** What the controller draws at most is held to the peak current of the modules, where that is known. */
function currentTrial(
  { module, batteryCurrent, power }: Asked,
  { parallel }: Arrangement,
  current: Quantity<'current'>,
): Check {
  const [one, words, field] =
    batteryCurrent === undefined || module.peakCurrent === undefined
      ? ([module.continuousCurrent, 'continuous', 'continuousCurrent'] as const)
      : ([module.peakCurrent, 'peak', 'peakCurrent'] as const)
  return trial(
    'pack.current',
    'Current of the modules',
    says`takes ${current} from ${parallel} in parallel, at most the ${words} current of ${one.times(parallel)}`,
    `module.${field}, for all in parallel`,
    ...(batteryCurrent !== undefined ? ['batteryCurrent'] : power !== undefined ? ['power'] : []),
    `module.${field}`,
  )
}

function loadInWords({ batteryCurrent, power }: Asked): string {
  const load =
    batteryCurrent !== undefined
      ? `${batteryCurrent}, the most that the controller draws`
      : power !== undefined
        ? `the current for ${power}`
        : 'the continuous current of its modules'
  return `The empty pack rests at the lowest voltage of its modules, and sags from there under ${load}.`
}
