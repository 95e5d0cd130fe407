/**
 * The least section of cable that carries a current within its temperature, its drop and its fault, and why no smaller one
 * does.
 *
 * Rests on the heat balance of heat.ts, on IEC 60364-5-52 (drop) and on IEC 60364-5-54 (adiabatic heating).
 */
import { cite, section } from '../../formula/index.js'
import { shortCircuit } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  byName,
  type Check,
  choice,
  either,
  type Findings,
  firstThatServes,
  given,
  group,
  isMet,
  type Judged,
  noneServes,
  optional,
  procedure,
  type Read,
  type Rejected,
  rejectedAs,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import {
  airRange,
  type Cable,
  cableOf,
  conductorField,
  kelvins,
  lays,
  OUTER_DIAMETERS,
  steadyAtCurrent,
  steadyAtLimit,
} from './balance.js'
import { adiabaticConstant, adiabaticWithstand, cableLoss, cableVoltageDrop, loopResistance } from './cable.js'
import { americanGauges, conductorMaterials, metricSections, resistancePerLengthAt } from './conductor.js'
import { courseOf, HOT_DAY, LOADS, profileField, rmsOf, settledPeak } from './course.js'

/** What a section of cable does on a run. */
export interface SizedSection {
  /** `35 mm²`, or `1/0 AWG`. */
  readonly name: string
  readonly area: Quantity<'area'>
  readonly outerDiameter: Quantity<'length'>
  /** Current that it carries all day at the limit of its insulation, as it is laid. */
  readonly ampacity: Quantity<'current'>
  /** Of the conductor: steady at the current, or the hottest over the profile. */
  readonly temperature: Quantity<'temperature'>
  /** Lost out and back at the greatest current. */
  readonly drop: Quantity<'voltage'>
  /** Heat of both conductors at the current, or at the root mean square of the profile. */
  readonly loss: Quantity<'power'>
  /** Joule integral of a fault that it withstands, from the limit of its insulation. */
  readonly withstand: Quantity<'jouleIntegral'>
  /** Resistance out and back at the limit of its insulation, as the least fault may find it. */
  readonly loopResistance: Quantity<'resistance'>
}

/** The section for a run of cable. */
export interface SizedCable extends Findings {
  readonly section: { readonly name: string; readonly area: Quantity<'area'> }
  readonly ampacity: Quantity<'current'>
  readonly temperature: Quantity<'temperature'>
  readonly drop: Quantity<'voltage'>
  readonly loss: Quantity<'power'>
  readonly withstand: Quantity<'jouleIntegral'>
  /** Resistance out and back at the limit of its insulation. */
  readonly loopResistance: Quantity<'resistance'>
  /** Every smaller section, and why it does not serve. */
  readonly rejected: readonly Rejected[]
}

/** From PVC of a large section to silicone. @internal */
export const FAULT_LIMITS = ['140 °C', '350 °C', 'IEC 60364-5-54, from memory'] as const

/** What describes a run of cable that is to be sized. @internal */
export const runFields = /*@__PURE__*/ (() => ({
  current: optional(given('current', 'Steady current', { above: 0, usual: LOADS })),
  profile: optional(profileField),
  length: given('length', 'One-way length of the run', { min: 0, usual: ['0 m', '15 m'], finest: '20 mm' }),
  conductor: conductorField,
  insulationLimit: given('temperature', 'Continuous limit of the insulation', {
    usual: ['60 °C', '250 °C', 'from rubber to fluoropolymers, from memory'],
    default: '70 °C',
    because: 'PVC, the least of the usual insulations, IEC 60364-5-52; cross-linked cable bears more',
  }),
  faultLimit: given('temperature', 'Limit of the insulation in a fault of at most 5 s', {
    usual: FAULT_LIMITS,
    default: '160 °C',
    because: 'PVC, the least of the usual insulations, IEC 60364-5-54',
  }),
  ambient: given('temperature', 'Temperature of the air around the cables', {
    ...airRange,
    usual: ['-20 °C', '125 °C'],
    finest: '0.1 °C',
    ...HOT_DAY,
  }),
  maximumDrop: optional(
    either(
      'Greatest drop',
      given('voltage', 'Greatest drop', { above: 0, usual: ['0.02 V', '20 V'] }),
      given('ratio', 'Greatest drop, as a share of systemVoltage', { above: 0, usual: ['0.05 %', '10 %'] }),
    ),
    { absent: 'The voltage drop is not held to a limit: give maximumDrop.' },
  ),
  systemVoltage: optional(given('voltage', 'Voltage of which a drop is a share', { above: 0 })),
  series: choice('Sections to choose from', ['metric', 'american'], {
    default: 'metric',
    because: 'the sections of IEC 60228',
  }),
  laid: choice('How the cables lie', lays, {
    default: 'touching',
    because: 'as the cables out and back usually do',
  }),
  geometry: optional(
    byName(
      "Outer diameters by section, such as { '35 mm²': '11.5 mm' }",
      given('length', 'Outer diameter', { above: 0, usual: OUTER_DIAMETERS }),
    ),
  ),
  terminalLimit: given('temperature', 'What the terminals at both ends are made for', {
    usual: ['60 °C', '200 °C'],
    default: '75 °C',
    because: 'most terminals, fuses and contactors are, NEC 110.14(C) by analogy; more where both ends state it',
  }),
  bundled: given('ratio', 'Share of its ampacity that a bundle leaves a cable', {
    above: 0,
    max: 1,
    default: 1,
    because: 'no bundle, duct or hot part warms the cables',
  }),
}))()

/** A run as it is read. @internal */
export type RunAsked = Read<typeof runFields>

/** A run, ready for any section. @internal */
export interface Run {
  readonly where: string
  /** What comes before the fields of the run in an error. */
  readonly path: string
  readonly asked: RunAsked
  /** The current that warms the cable as the profile does, and the greatest current. */
  readonly steady: Quantity<'current'>
  readonly greatest: Quantity<'current'>
  readonly mostDrop?: Quantity<'voltage'>
  readonly assumptions: readonly Assumption[]
}

/** A section that may be chosen. @internal */
export interface Candidate {
  readonly name: string
  readonly area: Quantity<'area'>
}

/** The sections of a series, from the least. @internal */
export function sectionsOf(series: 'metric' | 'american'): readonly Candidate[] {
  return series === 'metric' ? metricSections : americanGauges.map(({ name, area }) => ({ name: `${name} AWG`, area }))
}

/** Refuses what contradicts itself in a run. @internal */
export function runOf(where: string, path: string, asked: RunAsked): Run {
  const at = (key: string) => `${path}${key}`
  const refuse = (key: string, expected: string, received: string): never => {
    throw new InputError(where, [{ path: at(key), expected, received }])
  }
  const { current, profile, maximumDrop, systemVoltage, geometry = {} } = asked
  if ((current === undefined) === (profile === undefined)) {
    const expected = "one of them: current such as '120 A', or profile such as [['300 A', '10 s'], ['80 A', '60 s']]"
    refuse('current and profile', expected, current === undefined ? 'neither' : 'both')
  }
  if (maximumDrop?.kind === 'ratio' && systemVoltage === undefined) {
    refuse('systemVoltage', `a voltage such as '144 V', of which the drop may be ${maximumDrop}`, 'nothing')
  }
  const { insulationLimit: limit, faultLimit, ambient } = asked
  if (limit.si <= ambient.si) {
    refuse('insulationLimit', `a temperature above the ambient one, ${ambient}`, String(limit))
  }
  if (faultLimit.si <= limit.si) {
    refuse('faultLimit', `a temperature above the continuous limit of the insulation, ${limit}`, String(faultLimit))
  }
  const { meltingPoint } = conductorMaterials[asked.conductor]
  if (faultLimit.si >= meltingPoint.si) {
    refuse('faultLimit', `a temperature below ${meltingPoint}, at which the conductor melts`, String(faultLimit))
  }
  const names = sectionsOf(asked.series).map(({ name }) => name)
  const strange = Object.keys(geometry).find((name) => !names.includes(name))
  if (strange !== undefined) refuse(`geometry.${strange}`, `a section: ${names.join(', ')}`, `'${strange}'`)
  const steady = current ?? rmsOf(profile as NonNullable<typeof profile>)
  const peak = Math.max(...(profile ?? []).map(([each]) => Math.abs(each.si)), 0)
  return {
    where,
    path,
    asked,
    steady,
    greatest: current ?? quantity('current', peak, 'A'),
    ...(maximumDrop === undefined ? {} : { mostDrop: mostDropOf(maximumDrop, systemVoltage) }),
    assumptions:
      profile === undefined
        ? []
        : [
            assumed(
              'cable.repeats',
              'The profile is run again and again, until each round warms the cable as the last one did.',
            ),
          ],
  }
}

function mostDropOf(
  maximumDrop: NonNullable<RunAsked['maximumDrop']>,
  systemVoltage: Quantity<'voltage'> | undefined,
): Quantity<'voltage'> {
  if (maximumDrop.kind === 'voltage') return maximumDrop as Quantity<'voltage'>
  return (systemVoltage as Quantity<'voltage'>).times(maximumDrop.si)
}

/** The cable of a section on a run. @internal */
export function cableIn({ where, path, asked }: Run, { name, area }: Candidate): Cable {
  const { ambient, laid, conductor, geometry } = asked
  const outerDiameter = geometry?.[name]
  const described = { area, ambient, laid, conductor, ...(outerDiameter === undefined ? {} : { outerDiameter }) }
  return cableOf(where, described, `${path}geometry.${name}`)
}

/**
 * What a section does on a run. The current that a bundle leaves room for is counted as if the cable were alone.
 * @internal
 */
export function judgeSection(run: Run, { name, area }: Candidate): Judged<SizedSection> {
  const { asked, steady, greatest } = run
  const { insulationLimit: limit } = asked
  const cable = cableIn(run, { name, area })
  const alone = section(
    `Ampacity at ${limit}`,
    () => steadyAtLimit(run.where, `${run.path}insulationLimit`, cable, limit).current,
  )
  const ampacity = alone.times(asked.bundled.si)
  const carries = ampacityTrial(run, ampacity)
  const temperature = temperatureOf(run, cable, !isMet(carries))
  // What burns is shown at its limit: the drop of a cable that is no cable any more means nothing.
  const warm = temperature ?? limit
  const { length } = asked
  const coefficient = cable.material.coefficient
  const resistancePerLength = resistancePerLengthAt({ resistance: cable.resistance, coefficient, temperature: warm })
  const drop = cableVoltageDrop({ current: greatest, resistancePerLength, length })
  const { volumetricHeat, beta, resistivity } = cable.material
  const constant = adiabaticConstant({ volumetricHeat, beta, resistivity, initial: limit, final: asked.faultLimit })
  return {
    name,
    checks: [carries, ...temperatureTrials(run, temperature), ...dropTrials(run, drop)],
    made: {
      name,
      area,
      outerDiameter: cable.outerDiameter,
      ampacity,
      temperature: warm,
      drop,
      loss: cableLoss({ current: steady, resistancePerLength, length }),
      withstand: adiabaticWithstand({ constant, area }).as('kA²·s'),
      loopResistance: loopResistance({
        resistancePerLength: resistancePerLengthAt({ resistance: cable.resistance, coefficient, temperature: limit }),
        length,
      }),
    },
  }
}

function ampacityTrial({ asked, steady, path }: Run, ampacity: Quantity<'current'>): Check {
  return trial(
    'cable.ampacity',
    asked.profile === undefined ? 'Current of the load' : 'Root mean square of the load',
    says`the cable carries ${ampacity}, at least the ${steady} of the load`,
    'heat balance of the cable at the limit of its insulation',
    asked.profile === undefined ? `${path}current` : `${path}profile`,
  )
}

/** What insulation and terminals bear: a cable is no cooler where it ends. */
function temperatureTrials({ asked, steady, path }: Run, temperature: Quantity<'temperature'> | undefined): Check[] {
  const when = asked.profile === undefined ? `at ${steady}` : 'at the hottest of the profile'
  const insulation = trial(
    'cable.temperature',
    'Temperature of the conductor',
    temperature === undefined
      ? { fail: `the cable burns at ${steady}` }
      : says`the conductor reaches ${temperature} ${when}, at most the ${asked.insulationLimit} that its insulation bears`,
    'limit of the insulation',
    `${path}insulationLimit`,
  )
  // What is too warm for its own insulation needs no second reason.
  if (temperature === undefined || !isMet(insulation)) return [insulation]
  const terminals = trial(
    'cable.terminals',
    'Temperature at the terminals',
    says`the cable brings ${temperature} to its terminals, at most the ${asked.terminalLimit} for which they are made`,
    'NFPA 70 (NEC), 110.14(C), by analogy',
    `${path}terminalLimit`,
  )
  return [insulation, terminals]
}

function dropTrials({ mostDrop, path }: Run, drop: Quantity<'voltage'>): Check[] {
  if (mostDrop === undefined) return []
  const told = says`the cable drops ${drop}, at most the ${mostDrop} allowed`
  return [trial('cable.drop', 'Voltage drop', told, 'maximumDrop, as given', `${path}maximumDrop`)]
}

/** The conductor at the steady current, or at its hottest over the profile; undefined where nothing is steady. */
function temperatureOf(run: Run, cable: Cable, isTooMuch: boolean): Quantity<'temperature'> | undefined {
  const { steady, asked, where } = run
  const bundled = asked.bundled.si
  const alone = steady.over(bundled)
  return unlessItBurns(() => {
    if (asked.profile === undefined) {
      return section(`Temperature at ${steady}`, () => steadyAtCurrent(where, cable, alone).conductorTemperature)
    }
    const mean = section(`Temperature at ${steady}, the root mean square`, () => steadyAtCurrent(where, cable, alone))
    // Where even the mean current is too much, the profile need not be followed.
    if (isTooMuch) return mean.conductorTemperature
    return kelvins(settledPeak(where, cable, courseOf(asked.profile, bundled), mean))
  })
}

/** What comes of a cable; undefined where it is past any heat that can be followed. @internal */
export function unlessItBurns<T>(follow: () => T): T | undefined {
  try {
    return follow()
  } catch (error) {
    if (error instanceof CalculationError) return undefined
    throw error
  }
}

/** What helps where not even the largest section serves. @internal */
export function mendFor(largest: Judged<unknown> | undefined): string {
  const failed = largest?.checks.filter(({ id, verdict }) => id.startsWith('cable.') && verdict === 'fail') ?? []
  return failed.length > 0 && failed.every(({ id }) => OF_ENDS.includes(id))
    ? 'Give terminalLimit, where the sheets of both ends state more, or take a larger section still, or keep the ends cooler'
    : 'Run two in parallel, each with its own fuse, or ask less of it'
}

/** The checks of a cable that its ends decide. */
const OF_ENDS = ['cable.terminals', 'cable.fullPullTerminals']

/** What the fault through a cable may be told by. */
const faultField = /*@__PURE__*/ (() =>
  group(
    'The fault that the cable must withstand: a current for a time, or the joule integral that its fuse lets through',
    {
      current: optional(given('current', 'Fault current', { above: 0 })),
      time: optional(given('time', 'Time until it is broken', { above: 0, max: '5 s' })),
      jouleIntegral: optional(given('jouleIntegral', 'What the fuse lets through', { above: 0 })),
    },
  ))()

/**
 * Finds the least section of cable for a run, out and back, and says of every smaller one why it does not serve.
 *
 * Answers: which is the smallest section that carries the current, within temperature, drop and fault?
 *
 * - `current`: steady current, in A, above 0 A, optional
 * - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts, optional
 * - `length`: one-way length of the run, in m, at least 0 m
 * - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 * - `insulationLimit`: continuous limit of the insulation, in °C, 70 °C by default (PVC, the least of the usual
 *   insulations, IEC 60364-5-52; cross-linked cable bears more)
 * - `faultLimit`: limit of the insulation in a fault of at most 5 s, in °C, 160 °C by default (PVC, the least of the
 *   usual insulations, IEC 60364-5-54)
 * - `ambient`: temperature of the air around the cables, in °C, at least -23.15 °C and below 226.85 °C, 40 °C by
 *   default (a hot day, common practice, no source)
 * - `maximumDrop`: greatest drop, in V, above 0 V; or a plain number, above 0, optional
 * - `systemVoltage`: voltage of which a drop is a share, in V, above 0 V, optional
 * - `series`: sections to choose from, 'metric' or 'american', metric by default (the sections of IEC 60228)
 * - `laid`: how the cables lie, 'apart' or 'touching', touching by default (as the cables out and back usually do)
 * - `geometry`: outer diameters by section, such as { '35 mm²': '11.5 mm' }, by names of your own, each in m, each
 *   above 0 m, optional
 * - `terminalLimit`: what the terminals at both ends are made for, in °C, 75 °C by default (most terminals, fuses and
 *   contactors are, NEC 110.14(C) by analogy; more where both ends state it)
 * - `bundled`: share of its ampacity that a bundle leaves a cable, a plain number, above 0 and at most 1, 1 by
 *   default (no bundle, duct or hot part warms the cables)
 * - `fault`: the fault that the cable must withstand: a current for a time, or the joule integral that its fuse lets
 *   through, optional
 *   - `current`: fault current, in A, above 0 A, optional
 *   - `time`: time until it is broken, in s, above 0 s and at most 5 s, optional
 *   - `jouleIntegral`: what the fuse lets through, in A²·s, above 0 A²·s, optional
 * - always assumed: both conductors carry the same current
 *
 * @returns The section, what it carries, drops and withstands, checks, and `rejected` with all reasons.
 * @throws InputError for input that cannot be used, by its path; CalculationError where no listed section serves, with the
 * reasons that refuse the largest.
 * Source: IEC 60287-2-1; IEC 60364-5-52, Annex G; IEC 60364-5-54, 543.1.2.
 *
 * @example
 * ```ts
 * const { section, temperature, drop, rejected } = sizeCable({
 *   current: '150 A',
 *   length: '2.4 m',
 *   maximumDrop: '1 %',
 *   systemVoltage: '178 V',
 *   insulationLimit: '105 °C',
 * })
 * section.name // '50 mm²'
 * String(temperature) // '65.08 °C'
 * String(drop) // '0.3272 V'
 * rejected.at(-1)?.reasons // ['the cable brings 79.79 °C to its terminals, more than the 75 °C for which they are made']
 * ```
 */
export const sizeCable = /*@__PURE__*/ procedure({
  name: 'sizeCable',
  title: 'Cable for a run',
  answers: 'Which is the smallest section that carries the current, within temperature, drop and fault?',
  input: { ...runFields, fault: optional(faultField) },
  source: [cite('IEC 60287-2-1'), cite('IEC 60364-5-52', 'Annex G'), cite('IEC 60364-5-54', '543.1.2')],
  assumes: ['Both conductors carry the same current.'],
  work: ({ fault, ...asked }): Unfinished<SizedCable> => {
    const run = runOf('sizeCable', '', asked)
    const integral = faultOf(fault)
    const { chosen, rejected } = firstThatServes(sectionsOf(asked.series), (candidate) => {
      const judged = judgeSection(run, candidate)
      return { ...judged, checks: [...judged.checks, ...faultTrials(judged.made, integral)] }
    })
    if (chosen === undefined) {
      const most = `no section up to ${rejected.at(-1)?.name} serves`
      throw noneServes('sizeCable', most, rejected, mendFor(rejected.at(-1)))
    }
    const { name, area, outerDiameter: _, ...made } = chosen.made
    return {
      section: { name, area },
      ...made,
      rejected: rejected.map(rejectedAs),
      checks: chosen.checks,
      assumptions: [...run.assumptions, ...cableAssumptions(run, chosen.made)],
      cautions: [shortCircuit],
    }
  },
})

function faultOf(fault: Read<typeof faultField> | undefined): Quantity<'jouleIntegral'> | undefined {
  if (fault === undefined) return undefined
  const { current, time, jouleIntegral } = fault
  if (jouleIntegral !== undefined && current === undefined && time === undefined) return jouleIntegral
  if (jouleIntegral === undefined && current !== undefined && time !== undefined) {
    return quantity('jouleIntegral', current.si ** 2 * time.si, 'A²·s')
  }
  const named = Object.entries(fault).flatMap(([key, value]) => (value === undefined ? [] : [key]))
  const expected = "current and time, such as '3 kA' and '0.1 s', or jouleIntegral, such as '90000 A²·s'"
  const received = named.length === 0 ? 'nothing' : named.join(' and ')
  throw new InputError('sizeCable', [{ path: 'fault', expected, received }])
}

function faultTrials({ withstand }: SizedSection, fault: Quantity<'jouleIntegral'> | undefined): Check[] {
  if (fault === undefined) return []
  const told = says`the cable withstands ${withstand}, at least the ${fault.as('kA²·s')} of the fault`
  return [trial('cable.fault', 'Fault through the cable', told, 'IEC 60364-5-54, 543.1.2', 'fault')]
}

/** What is assumed of the cable itself. @internal */
export function cableAssumptions({ asked }: Run, { name, outerDiameter }: SizedSection): Assumption[] {
  return [
    ...(asked.geometry?.[name] === undefined
      ? [
          assumed(
            'cable.outerDiameter',
            `Cable of ${name} is ${outerDiameter} thick, as thin-walled flexible cable is (geometry; common practice, no source).`,
          ),
        ]
      : []),
  ]
}
