/**
 * The test of a module on the bench, from its log: what it holds, what comes back of a charge, what it resists.
 *
 * Rests on definitions: charge and energy are integrals over the log, straight between its rows.
 */
import { definition } from '../../formula/index.js'
import { lithiumCells, shortCircuit } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  choice,
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
import { logField } from '../../procedure/log.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { moduleFields } from '../pack/module.js'
import { cRate } from '../pack/pack.js'
import { coulombicEfficiency, roundTripEfficiency, stateOfHealth } from './health.js'
import { readTestLog, type TestLog, type UnreadableRow } from './log.js'
import { type Step, stepsIn } from './steps.js'

/** A gap of a log in which current may have flowed. */
export interface LogGap {
  /** The line behind the gap. */
  readonly line: number
  readonly lasts: Quantity<'time'>
  /** What flows in that time at the greater of the currents at its ends. */
  readonly hides: Quantity<'charge'>
}

/** A step of the current, and the resistance that it tells. */
export interface ResistanceStep {
  /** The last line before the step. */
  readonly line: number
  /** Positive where more is drawn. */
  readonly step: Quantity<'current'>
  readonly resistance: Quantity<'resistance'>
  /** Share of the discharge that was still to come. */
  readonly left: Quantity<'ratio'>
}

/** A module as the sheet of a build has it, in text: what was known of it, with what was measured. */
export interface ModuleEntry {
  readonly [field: string]: unknown
}

/** What the test of a module tells. */
export interface CapacityTest extends Findings {
  /** What came out between the fullest and the emptiest moment of the log. */
  readonly capacity: Quantity<'charge'>
  /** Expanded, k = 2. */
  readonly capacityUncertainty: Quantity<'charge'>
  readonly energy: Quantity<'energy'>
  /** While it flowed, on average. */
  readonly current: Quantity<'current'>
  readonly rate: Quantity<'cRate'>
  /** Of the discharge, by energy. */
  readonly meanVoltage: Quantity<'voltage'>
  /** Of the discharge; absent where nobody tells it. */
  readonly temperature?: Quantity<'temperature'>
  /** What went in, where the log holds a charge. */
  readonly charged?: { readonly charge: Quantity<'charge'>; readonly energy: Quantity<'energy'> }
  readonly coulombicEfficiency?: Quantity<'ratio'>
  readonly roundTripEfficiency?: Quantity<'ratio'>
  /** The mean of the steps between 20 % and 80 % of the discharge, or of all where none lies there. */
  readonly resistance?: Quantity<'resistance'>
  /** Expanded, k = 2: twice the spread of at least three steps. */
  readonly resistanceUncertainty?: Quantity<'resistance'>
  readonly steps: readonly ResistanceStep[]
  readonly highest: Quantity<'voltage'>
  readonly lowest: Quantity<'voltage'>
  /** Of the columns of cells. */
  readonly cells?: { readonly highest: Quantity<'voltage'>; readonly lowest: Quantity<'voltage'> }
  readonly stateOfHealth?: Quantity<'ratio'>
  readonly unreadable: readonly UnreadableRow[]
  readonly gaps: readonly LogGap[]
  /** The module for the sheet of a build: what is not sure enough is not in it. */
  readonly module: ModuleEntry
}

/** A recorder and a tester are this exact in volts. Common practice, no source. */
const VOLTS = 0.005
/** Currents below this share of the greatest count as rest. Common practice, no source. */
const REST = 0.01
/** What gaps may hide of the capacity. Common practice, no source. */
const HIDDEN = 0.01
/** What must come out of a charge, and no more than this can. Common practice, no source. */
const [LEAST_BACK, MOST_BACK] = ['97 %', '101 %'] as const
/** The empty end is looked for in the last part of the discharge, so that no pulse on the way counts as empty. */
const LAST_PART = 0.98
/** The resistance of a warm module is wanted within 10 K of 25 °C. */
const [COLD, WARM] = ['15 °C', '35 °C'] as const
/** So many unreadable rows are told in a sentence; all are in the result. */
const TOLD = 5
const where = 'capacityTest'

const testedFields = /*@__PURE__*/ (() => {
  const { capacity: _, resistance: __, ohmicResistance: ___, ...known } = moduleFields
  return {
    ...known,
    name: optional(known.name),
    cellsInSeries: optional(known.cellsInSeries),
    nominalVoltage: optional(known.nominalVoltage),
    mass: optional(known.mass),
    continuousCurrent: optional(known.continuousCurrent),
  }
})()

const capacityTestFields = /*@__PURE__*/ (() => ({
  log: logField,
  module: group('What is known of the module', testedFields),
  positive: choice('Which current the log writes as positive', ['discharge', 'charge'], {
    default: 'discharge',
    because: 'as everywhere in this library',
  }),
  longestGap: given('time', 'Longest time between two rows that is not yet a gap', {
    above: 0,
    usual: ['1 s', '2 h'],
    default: '2 min',
    because: 'common practice, no source',
  }),
  stepTime: given('time', 'Time after a step of the current at which the voltage is read', {
    above: 0,
    usual: ['1 s', '60 s'],
    default: '10 s',
    because: 'common practice, no source',
  }),
  currentUncertainty: given('ratio', 'How uncertain the current is, k = 2, as a share of it', {
    min: 0,
    max: 0.2,
    usual: ['0.05 %', '5 %'],
    default: '1 %',
    because: 'a shunt of a tester at home, common practice, no source',
  }),
  temperature: optional(
    given('temperature', 'Temperature of the cells, where the log does not tell it', {
      usual: ['-20 °C', '50 °C'],
      finest: '0.1 °C',
    }),
  ),
  leastHealth: given('ratio', 'Share of the capacity when new that is still worth fitting', {
    above: 0,
    max: 1,
    usual: ['50 %', '90 %'],
    default: '70 %',
    because: 'below that cells may fail fast, common practice, no source',
  }),
}))()

type Asked = Read<typeof capacityTestFields>

/**
 * Reads the log of a module on the bench: what it holds, what comes back of a charge, what it resists, and whether the test
 * was one.
 *
 * ```text
 * time (s),current (A),voltage (V),temperature (°C)
 * 0,0,50.21,24.1
 * 1,20,49.93,24.1
 * ```
 *
 * Columns are told by the unit in their title and stand in any order; a voltage whose title begins with `cell` is that of a
 * cell; other columns are left alone. The discharge is what came out between the fullest and the emptiest moment of the log,
 * whatever pulses and rests lie between. A row that cannot be read is left out and told by its line, a gap by what it may
 * hide. Capacity and resistance go into the entry for the sheet only where the checks on them hold.
 *
 * Answers: what does a module hold and resist by the log of its test, and was the test one?
 *
 * - `log`: the text of the log, whole or in pieces of any length
 * - `module`: what is known of the module
 *   - `name`: what the module is called, text, optional
 *   - `cellsInSeries`: cells in series, a whole number, at least 1 and at most 1000, optional
 *   - `chemistry`: what its cells are made of, 'NMC' or 'LFP', optional
 *   - `nominalVoltage`: nominal voltage of the module, in V, above 0 V, optional
 *   - `minimumVoltage`: lowest voltage that the module may have, in V, above 0 V
 *   - `maximumVoltage`: voltage of the full module, in V, above 0 V
 *   - `newCapacity`: capacity of the module when it was new, at the same current and temperature, in Ah, above 0 Ah,
 *     optional
 *   - `cell`: the limits of each of its cells, and how unlike they are, optional
 *     - `minimumVoltage`: lowest voltage that a cell may have, in V, above 0 V
 *     - `maximumVoltage`: highest voltage that a cell may have, in V, above 0 V
 *     - `spread`: most by which a cell of the full or empty module is off the mean of all, in V, at least 0 V, optional
 *   - `cold`: its resistance in the cold, optional
 *     - `temperature`: temperature of the cold measurement, in °C, above -273.15 °C and below 25 °C
 *     - `resistance`: resistance of the module at that temperature, in mΩ, above 0 mΩ
 *   - `mass`: mass of the module, in kg, above 0 kg, optional
 *   - `continuousCurrent`: discharge current that it bears all day, in A, above 0 A, optional
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
 * - `positive`: which current the log writes as positive, 'discharge' or 'charge', discharge by default (as
 *   everywhere in this library)
 * - `longestGap`: longest time between two rows that is not yet a gap, in s, above 0 s, 2 min by default (common
 *   practice, no source)
 * - `stepTime`: time after a step of the current at which the voltage is read, in s, above 0 s, 10 s by default
 *   (common practice, no source)
 * - `currentUncertainty`: how uncertain the current is, k = 2, as a share of it, a plain number, at least 0 and at
 *   most 0.2, 1 % by default (a shunt of a tester at home, common practice, no source)
 * - `temperature`: temperature of the cells, where the log does not tell it, in °C, optional
 * - `leastHealth`: share of the capacity when new that is still worth fitting, a plain number, above 0 and at most 1,
 *   70 % by default (below that cells may fail fast, common practice, no source)
 * - always assumed: between two rows current, voltage and temperature change evenly
 * - always assumed: a recorder is exact to 0.5 % in volts (common practice, no source)
 * - always assumed: currents below 1 % of the greatest of the log count as rest: nothing flows but the error of the
 *   sensor
 *
 * @returns Charge, energy, efficiencies, resistance, how sure they are, and the module for the sheet.
 * @throws InputError that names the line of a bad header, for a log of which little can be read, and for a current whose
 * sign is the other way round.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const { capacity, capacityUncertainty, steps } = capacityTest({
 *   log: 'time (min),current (A),voltage (V)\n0,0,50.3\n1,0,50.3\n2,20,50\n62,20,41\n119,20,36\n120,0,38\n',
 *   module: { minimumVoltage: '36 V', maximumVoltage: '50.4 V' },
 *   longestGap: '1 h',
 * })
 * `${capacity} ± ${capacityUncertainty}` // '39.33 Ah ± 0.4585 Ah'
 * steps.length // 0
 * ```
 */
export const capacityTest = /*@__PURE__*/ procedure({
  name: where,
  title: 'Test of a module from its log',
  answers: 'What does a module hold and resist by the log of its test, and was the test one?',
  input: capacityTestFields,
  source: [definition],
  assumes: [
    'Between two rows current, voltage and temperature change evenly.',
    'A recorder is exact to 0.5 % in volts (common practice, no source).',
    'Currents below 1 % of the greatest of the log count as rest: nothing flows but the error of the sensor.',
  ],
  work: worked,
})

function worked(asked: Asked): Unfinished<CapacityTest> {
  const log = readTestLog(where, asked.log)
  const run = runOf(log, asked)
  if (run === undefined) {
    throw new InputError(where, [{ path: 'log', expected: 'a discharge of the module', received: 'none' }])
  }
  const { discharge, charge } = run
  refuseSign(asked, run, log)
  const { minimumVoltage, maximumVoltage, newCapacity } = asked.module
  const capacity = quantity('charge', discharge.charge, 'C').as('Ah')
  const energy = quantity('energy', discharge.energy, 'J').as('kWh')
  const charged =
    charge === undefined
      ? undefined
      : {
          charge: quantity('charge', charge.charge, 'C').as('Ah'),
          energy: quantity('energy', charge.energy, 'J').as('kWh'),
        }
  const current = quantity('current', discharge.charge / discharge.flowing, 'A')
  const temperature = run.temperature ?? asked.temperature
  const [highest, lowest] = [greatest(log.voltages), least(log.voltages)].map((volts) =>
    quantity('voltage', volts, 'V'),
  ) as [Quantity<'voltage'>, Quantity<'voltage'>]
  const cells =
    log.cells === undefined
      ? undefined
      : {
          highest: quantity('voltage', greatest(log.cells.map(([, high]) => high)), 'V'),
          lowest: quantity('voltage', least(log.cells.map(([low]) => low)), 'V'),
        }
  const capacityUncertainty = quantity(
    'charge',
    Math.hypot(discharge.charge * asked.currentUncertainty.si, discharge.sampling, run.offset * discharge.flowing),
    'C',
  ).as('Ah')
  const { resistance, uncertainty: resistanceUncertainty } = resistanceOf(run.steps, asked.currentUncertainty)
  const health = newCapacity === undefined ? undefined : stateOfHealth({ capacity, newCapacity })
  const onCapacity = [
    rowsTrial(log),
    gapsTrial(run, capacity),
    fullTrial(run, log, maximumVoltage),
    trial(
      'test.empty',
      'Emptied to its lowest voltage',
      says`the discharge comes down to ${quantity('voltage', run.emptiest, 'V')} at its end, at most the ${minimumVoltage.times(1 + VOLTS)} of an empty module`,
      'module.minimumVoltage, within 0.5 %',
      'log',
      'module.minimumVoltage',
    ),
    ...(charged === undefined ? [] : [balanceTrial(capacity, charged.charge)]),
  ]
  const onResistance = [resistanceTrial(resistance, asked), ...temperatureTrials(temperature)]
  const checks = [
    ...onCapacity,
    ...onResistance,
    ...limitTrials(asked, highest, lowest, cells),
    healthTrial(health, asked),
  ]
  return {
    capacity,
    capacityUncertainty,
    energy,
    current,
    rate: cRate({ current, capacity }),
    meanVoltage: quantity('voltage', discharge.energy / discharge.charge, 'V'),
    ...(temperature === undefined ? {} : { temperature }),
    ...(charged === undefined
      ? {}
      : {
          charged,
          coulombicEfficiency: coulombicEfficiency({ discharged: capacity, charged: charged.charge }),
          roundTripEfficiency: roundTripEfficiency({ discharged: energy, charged: charged.energy }),
        }),
    ...(resistance === undefined ? {} : { resistance }),
    ...(resistanceUncertainty === undefined ? {} : { resistanceUncertainty }),
    steps: run.steps.map(({ line, step, resistance: ohms, left }) => ({
      line,
      step: quantity('current', step, 'A'),
      resistance: quantity('resistance', ohms, 'Ω').as('mΩ'),
      left: quantity('ratio', left).as('%'),
    })),
    highest,
    lowest,
    ...(cells === undefined ? {} : { cells }),
    ...(health === undefined ? {} : { stateOfHealth: health }),
    unreadable: log.unreadable,
    gaps: run.gaps,
    module: {
      ...(JSON.parse(JSON.stringify(asked.module)) as object),
      ...(onCapacity.every(isHeld) ? { capacity: measured(capacity, capacityUncertainty) } : {}),
      ...(resistance !== undefined && onResistance.every(isHeld)
        ? { resistance: measured(resistance, resistanceUncertainty) }
        : {}),
    },
    checks,
    assumptions: [
      assumed(
        'test.rate',
        `The capacity is that at ${current}${temperature === undefined ? '' : ` and ${temperature}`}: it is less at a higher current and in the cold.`,
      ),
      ...ignoredIn(log),
      ...(charged === undefined
        ? [assumed('test.charge', 'The log holds no charge of the module: what comes back of one is not known.')]
        : []),
    ],
    cautions: [lithiumCells, shortCircuit],
  }
}

const isHeld = ({ verdict }: Check) => verdict === 'pass' || verdict === 'near'

/** A figure with its uncertainty as the sheet takes it. */
function measured(value: Quantity, uncertainty: Quantity | undefined): string {
  const figure = value.format({ digits: 4 })
  return uncertainty === undefined || uncertainty.si === 0 ? figure : `${figure} ± ${uncertainty.format({ digits: 2 })}`
}

const greatest = (numbers: readonly number[]) => numbers.reduce((one, other) => Math.max(one, other))
const least = (numbers: readonly number[]) => numbers.reduce((one, other) => Math.min(one, other))

/** A stretch of a log between two rows, with what flowed in it. */
interface Leg {
  readonly from: number
  readonly to: number
  readonly charge: number
  readonly energy: number
  /** For how long current flowed. */
  readonly flowing: number
  /** What the spacing of the rows leaves unsure of the charge where the current changed between two of them. */
  readonly sampling: number
}

/** What a log tells, in SI numbers. */
interface Run {
  readonly discharge: Leg
  readonly charge?: Leg
  /** Whether the log shows any charge before the discharge. */
  readonly isChargedBefore: boolean
  /** The lowest voltage as the discharge ends. */
  readonly emptiest: number
  /** What the sensor shows where nothing flows. */
  readonly offset: number
  readonly temperature?: Quantity<'temperature'>
  readonly steps: readonly Step[]
  readonly gaps: readonly LogGap[]
}

/** What a log tells; undefined where nothing ever came out. */
function runOf(log: TestLog, { positive, longestGap, stepTime }: Asked): Run | undefined {
  const { times, voltages } = log
  const currents = positive === 'discharge' ? log.currents : log.currents.map((each) => -each)
  const most = greatest(currents.map(Math.abs))
  const isRest = (i: number) => Math.abs(currents[i] as number) <= REST * most
  const charges = [0]
  for (let i = 1; i < times.length; i++) {
    charges.push((charges[i - 1] as number) + (isRest(i - 1) && isRest(i) ? 0 : meanOver(times, currents, i)))
  }
  const [from, to] = greatestRise(charges, 0, times.length - 1)
  if (from === to) return undefined
  const leg = (start: number, end: number, sign: 1 | -1): Leg => {
    let [energy, flowing, sampling] = [0, 0, 0]
    for (let i = start + 1; i <= end; i++) {
      if (isRest(i - 1) && isRest(i)) continue
      const [before, now] = [i - 1, i].map((j) => (currents[j] as number) * (voltages[j] as number)) as [number, number]
      const lasts = (times[i] as number) - (times[i - 1] as number)
      energy += (lasts * (before + now)) / 2
      flowing += lasts
      sampling += ((lasts * ((currents[i] as number) - (currents[i - 1] as number))) / 2) ** 2
    }
    const charge = (charges[end] as number) - (charges[start] as number)
    return {
      from: start,
      to: end,
      charge: sign * charge,
      energy: sign * energy,
      flowing,
      sampling: Math.sqrt(sampling),
    }
  }
  const discharge = leg(from, to, 1)
  const falling = charges.map((each) => -each)
  const [before, after] = [greatestRise(falling, 0, from), greatestRise(falling, to, times.length - 1)]
  const legs = [leg(...before, -1), leg(...after, -1)] as const
  const charge = legs[0].charge >= legs[1].charge ? legs[0] : legs[1]
  // Less than half of it is no charge of the module, but regeneration or a touch of the charger.
  const isCharge = charge.charge > discharge.charge / 2
  const late = (charges[from] as number) + LAST_PART * discharge.charge
  const emptiest = least(voltages.filter((_, i) => i > from && i <= to && (charges[i] as number) >= late))
  const rests = currents.filter((_, i) => isRest(i))
  const within = (i: number) => (i > from && i <= to) || (isCharge && i > charge.from && i <= charge.to)
  const temperature = log.temperatures === undefined ? undefined : meanTemperature(log.temperatures, times, from, to)
  return {
    discharge,
    ...(isCharge ? { charge } : {}),
    isChargedBefore: legs[0].charge > 0,
    emptiest,
    offset: rests.length === 0 ? 0 : Math.abs(rests.reduce((sum, each) => sum + each, 0) / rests.length),
    ...(temperature === undefined ? {} : { temperature }),
    steps: stepsIn(log, currents, stepTime.si, most).map((each) => ({
      ...each,
      left: Math.min(
        1,
        Math.max(0, 1 - ((charges[each.row] as number) - (charges[from] as number)) / discharge.charge),
      ),
    })),
    gaps: times.flatMap((time, i) => {
      const lasts = time - (times[i - 1] ?? time)
      if (!(lasts > longestGap.si * (1 + 1e-9)) || !within(i) || (isRest(i - 1) && isRest(i))) return []
      const hides = lasts * Math.max(Math.abs(currents[i - 1] as number), Math.abs(currents[i] as number))
      return [
        {
          line: log.lines[i] as number,
          lasts: quantity('time', lasts, 's').as('min'),
          hides: quantity('charge', hides, 'C').as('Ah'),
        },
      ]
    }),
  }
}

/** What flows between a row and the one before it. */
function meanOver(times: readonly number[], currents: readonly number[], i: number): number {
  const lasts = (times[i] as number) - (times[i - 1] as number)
  return (lasts * ((currents[i] as number) + (currents[i - 1] as number))) / 2
}

/** Between which two rows, one after the other, a course rises most; the two are as near as that allows. */
function greatestRise(course: readonly number[], first: number, last: number): [from: number, to: number] {
  let [lowest, from, to] = [first, first, first]
  for (let i = first; i <= last; i++) {
    if ((course[i] as number) <= (course[lowest] as number)) lowest = i
    if ((course[i] as number) - (course[lowest] as number) > (course[to] as number) - (course[from] as number)) {
      ;[from, to] = [lowest, i]
    }
  }
  return [from, to]
}

function meanTemperature(
  temperatures: readonly number[],
  times: readonly number[],
  from: number,
  to: number,
): Quantity<'temperature'> {
  let sum = 0
  for (let i = from + 1; i <= to; i++) sum += meanOver(times, temperatures, i)
  const mean = sum / ((times[to] as number) - (times[from] as number))
  return quantity('temperature', mean, 'K').as('°C')
}

/** A sign the other way round makes a discharge of a charge: the voltage tells which it is. */
function refuseSign({ positive }: Asked, { discharge, steps }: Run, { voltages }: TestLog): void {
  const ohms = steps.map(({ resistance }) => Math.sign(resistance))
  const byVoltage = (voltages[discharge.from] as number) - (voltages[discharge.to] as number)
  const tells = ohms.length > 0 ? ohms.reduce((sum, each) => sum + each, 0) : byVoltage
  if (tells > 0) return
  const other = positive === 'discharge' ? 'charge' : 'discharge'
  const received = `'${positive}'`
  const hint = 'the voltage rises while that current flows'
  throw new InputError(where, [{ path: 'positive', expected: `'${other}'`, received, hint }])
}

function resistanceOf(steps: readonly Step[], currentUncertainty: Quantity<'ratio'>) {
  const middle = steps.filter(({ left }) => left >= 0.2 && left <= 0.8)
  const used = (middle.length === 0 ? steps : middle).map(({ resistance }) => resistance)
  if (used.length === 0) return {}
  const mean = used.reduce((sum, each) => sum + each, 0) / used.length
  const resistance = quantity('resistance', mean, 'Ω').as('mΩ')
  if (used.length < 3) return { resistance }
  const variance = used.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (used.length - 1)
  const expanded = Math.hypot(2 * Math.sqrt(variance), mean * currentUncertainty.si)
  return { resistance, uncertainty: quantity('resistance', expanded, 'Ω').as('mΩ') }
}

function rowsTrial({ unreadable }: TestLog): Check {
  const told = unreadable.slice(0, TOLD).map(({ line, why }) => `line ${line}, ${why}`)
  const others = unreadable.length - told.length
  const more = others === 0 ? '' : `; and ${others} more`
  const count = unreadable.length === 1 ? '1 row cannot be read' : `${unreadable.length} rows cannot be read`
  return trial(
    'test.rows',
    'Rows of the log',
    unreadable.length === 0
      ? { pass: 'every row can be read' }
      : { unknown: `${count}, and what flowed there is not known: ${told.join('; ')}${more}` },
    'good practice',
    'log',
  )
}

function gapsTrial({ gaps }: Run, capacity: Quantity<'charge'>): Check {
  const hidden = quantity(
    'charge',
    gaps.reduce((sum, { hides }) => sum + hides.si, 0),
    'C',
  ).as('Ah')
  const lines =
    gaps.length === 0
      ? ''
      : ` before line ${gaps
          .map(({ line }) => line)
          .slice(0, TOLD)
          .join(', ')}`
  return trial(
    'test.gaps',
    'Gaps of the log',
    says`up to ${hidden} may flow unseen in gaps of the log${lines}, at most the ${capacity.times(HIDDEN)} that is 1 % of the capacity`,
    'common practice, no source',
    'log',
    'longestGap',
  )
}

function fullTrial(
  { discharge, isChargedBefore }: Run,
  { voltages }: TestLog,
  maximumVoltage: Quantity<'voltage'>,
): Check {
  const full = maximumVoltage.times(1 - VOLTS)
  const reached = quantity('voltage', greatest(voltages.slice(0, discharge.from + 1)), 'V')
  return trial(
    'test.full',
    'Charged to its highest voltage',
    isChargedBefore || reached.si >= full.si
      ? says`the module comes to ${reached} before the discharge, at least the ${full} of a full one`
      : {
          unknown: `the log begins with a rest at ${reached}, and whether the module was full is not known: let it begin with the end of the charge to ${maximumVoltage}`,
        },
    'module.maximumVoltage, within 0.5 %',
    'log',
    'module.maximumVoltage',
  )
}

function balanceTrial(capacity: Quantity<'charge'>, charge: Quantity<'charge'>): Check {
  const share = quantity('ratio', capacity.ratioTo(charge)).as('%')
  return trial(
    'test.balance',
    'What comes out of a charge',
    share.si > 1
      ? says`${share} of the charge comes out, at most the ${quantity('ratio', MOST_BACK)} that a sensor can add: it is off zero, or the charge was not whole`
      : says`${share} of the charge comes out, at least the ${quantity('ratio', LEAST_BACK)} of cells that end as they began`,
    'common practice, no source',
    'log',
  )
}

function resistanceTrial(resistance: Quantity<'resistance'> | undefined, { stepTime }: Asked): Check {
  return trial(
    'test.resistance',
    'Steps of the current',
    resistance === undefined
      ? {
          unknown: `the log holds no step of the current with steady ${stepTime} before and behind it: draw a pulse, with a row each second`,
        }
      : { pass: `steps of the current tell the resistance after ${stepTime}` },
    'good practice',
    'log',
    'stepTime',
  )
}

function temperatureTrials(temperature: Quantity<'temperature'> | undefined): Check[] {
  const told = (says: Parameters<typeof trial>[2]) =>
    trial('test.temperature', 'Temperature of the test', says, 'common practice, no source', 'temperature', 'log')
  if (temperature === undefined) {
    return [told({ unknown: 'how warm the cells were is not known: give temperature, or a column of it in the log' })]
  }
  const [cold, warm] = [COLD, WARM].map((each) => quantity('temperature', each)) as [
    Quantity<'temperature'>,
    Quantity<'temperature'>,
  ]
  return [
    told(
      temperature.si < 298.15
        ? says`the cells were at ${temperature}, at least the ${cold} of a warm module`
        : says`the cells were at ${temperature}, at most the ${warm} of a warm module`,
    ),
  ]
}

/** The voltages of the log against what module and cells may have. */
function limitTrials(
  { module: { minimumVoltage, maximumVoltage, cell } }: Asked,
  highest: Quantity<'voltage'>,
  lowest: Quantity<'voltage'>,
  cells: CapacityTest['cells'],
): Check[] {
  const basis = (of: string) => `module.${of}, within 0.5 %`
  return [
    trial(
      'test.highest',
      'Highest voltage of the test',
      says`the module came to ${highest}, at most ${maximumVoltage.times(1 + VOLTS)}`,
      basis('maximumVoltage'),
      'module.maximumVoltage',
      'log',
    ),
    trial(
      'test.lowest',
      'Lowest voltage of the test',
      says`the module came down to ${lowest}, at least ${minimumVoltage.times(1 - VOLTS)}`,
      basis('minimumVoltage'),
      'module.minimumVoltage',
      'log',
    ),
    ...(cell === undefined
      ? []
      : [
          trial(
            'test.highestCell',
            'Highest cell of the test',
            cells === undefined
              ? { unknown: 'how high the highest cell came is not known: log the cells, in columns such as cell 1 (V)' }
              : says`a cell came to ${cells.highest}, at most ${cell.maximumVoltage.times(1 + VOLTS)}`,
            basis('cell.maximumVoltage'),
            'module.cell.maximumVoltage',
            'log',
          ),
          trial(
            'test.lowestCell',
            'Lowest cell of the test',
            cells === undefined
              ? { unknown: 'how low the lowest cell came is not known: log the cells, in columns such as cell 1 (V)' }
              : says`a cell came down to ${cells.lowest}, at least ${cell.minimumVoltage.times(1 - VOLTS)}`,
            basis('cell.minimumVoltage'),
            'module.cell.minimumVoltage',
            'log',
          ),
        ]),
  ]
}

function healthTrial(health: Quantity<'ratio'> | undefined, { leastHealth }: Asked): Check {
  return trial(
    'test.health',
    'State of health',
    health === undefined
      ? { unknown: 'how much of its capacity is left is not known: give module.newCapacity' }
      : says`${health} of the capacity when new is left, at least the ${leastHealth} that is worth fitting`,
    'leastHealth',
    'module.newCapacity',
    'leastHealth',
  )
}

function ignoredIn({ ignored }: TestLog): Assumption[] {
  if (ignored.length === 0) return []
  return [assumed('test.columns', `Nothing is made of the columns ${ignored.map((each) => `'${each}'`).join(', ')}.`)]
}
