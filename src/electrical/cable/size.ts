/**
 * The least section of cable that carries a current within its temperature, its drop and its fault, and why no smaller one
 * does.
 *
 * Rests on the heat balance of heat.ts, on IEC 60364-5-52 (drop) and on IEC 60364-5-54 (adiabatic heating).
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings, isAbove, isBelow } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { shown } from '../../quantity/errors.js'
import {
  CalculationError,
  type Given,
  InputError,
  isQuantity,
  type Kind,
  type Quantity,
  quantity,
} from '../../quantity/index.js'
import { readValue } from '../../quantity/read.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { adiabaticConstant, adiabaticWithstand, cableLoss, cableVoltageDrop, loopResistance } from './cable.js'
import { americanGauges, conductorMaterials, metricSections, resistancePerLengthAt } from './conductor.js'
import {
  airRange,
  type Cable,
  cableFields,
  cableOf,
  courseOf,
  profileGiven,
  rmsOf,
  settledPeak,
  steadyAtCurrent,
  steadyAtLimit,
} from './heat.js'

/** A section of cable that does not serve, with all the reasons. */
export interface RefusedSection {
  /** `35 mm²`, or `1/0 AWG`. */
  readonly name: string
  readonly reasons: readonly string[]
}

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
  readonly rejected: readonly RefusedSection[]
}

/** A greatest drop as it is read: a voltage, or a share of another. */
const dropGiven = /*@__PURE__*/ z.transform(
  (value: Given<'voltage'> | Given<'ratio'>, context): Quantity<'voltage'> | Quantity<'ratio'> => {
    for (const kind of ['voltage', 'ratio'] as const) {
      const read = readValue(kind, value)
      if (read !== undefined && read.si > 0) return quantity<Kind>(kind, value as never) as Quantity<'voltage'>
    }
    const expected = "a voltage such as '2 V', or a ratio such as '2 %', above 0"
    const received = isQuantity(value) ? String(value) : shown(value)
    context.issues.push({ code: 'custom', input: value, params: { issue: { path: '', expected, received } } })
    return z.NEVER
  },
)

/** What describes a run of cable that is to be sized. */
export const runFields = /*@__PURE__*/ (() => ({
  current: z.optional(given('current', 'Steady current', { above: 0 })),
  profile: z.optional(profileGiven),
  length: given('length', 'One-way length of the run', { min: 0 }),
  conductor: cableFields.conductor,
  insulationLimit: z.optional(given('temperature', 'Temperature that the insulation bears all day')),
  faultLimit: z.optional(given('temperature', 'Temperature that the insulation bears for a few seconds')),
  ambient: z.optional(given('temperature', 'Temperature of the air and what is around', airRange)),
  maximumDrop: z.optional(dropGiven),
  systemVoltage: z.optional(given('voltage', 'Voltage of which a drop is a share', { above: 0 })),
  series: about('which sections to choose from', z.optional(z.enum(['metric', 'american']))),
  laid: cableFields.laid,
  geometry: about(
    "outer diameters by section, such as { '35 mm²': '11.5 mm' }",
    z.optional(z.record(z.string(), given('length', 'Outer diameter', { above: 0 }))),
  ),
  bundled: z.optional(given('ratio', 'Share of its ampacity that a bundle leaves a cable', { above: 0, max: 1 })),
}))()

const sizeCableGiven = /*@__PURE__*/ about(
  'a run of cable',
  z.strictObject({
    ...runFields,
    fault: about(
      'the fault that the cable must withstand: a current for a time, or the joule integral that its fuse lets through',
      z.optional(
        z.strictObject({
          current: z.optional(given('current', 'Fault current', { above: 0 })),
          time: z.optional(given('time', 'Time until it is broken', { above: 0, max: '5 s' })),
          jouleIntegral: z.optional(given('jouleIntegral', 'What the fuse lets through', { above: 0 })),
        }),
      ),
    ),
  }),
)

const runGiven = /*@__PURE__*/ z.strictObject(runFields)
/** A run as it is read. */
export type RunGiven = Read<typeof runGiven>

/** A run with its defaults, ready for any section. */
export interface Run {
  readonly where: string
  /** What comes before the fields of the run in an error. */
  readonly path: string
  readonly asked: RunGiven
  /** The current that warms the cable as the profile does, the greatest current, and the words for the first. */
  readonly steady: Quantity<'current'>
  readonly greatest: Quantity<'current'>
  readonly limit: Quantity<'temperature'>
  readonly faultLimit: Quantity<'temperature'>
  readonly ambient: Quantity<'temperature'>
  readonly touching: boolean
  readonly bundled: number
  readonly mostDrop?: Quantity<'voltage'>
  readonly assumptions: readonly string[]
}

/** A section that may be chosen. */
export interface Candidate {
  readonly name: string
  readonly area: Quantity<'area'>
}

/** The sections of a series, from the least. */
export function sectionsOf(series: 'metric' | 'american' = 'metric'): readonly Candidate[] {
  return series === 'metric' ? metricSections : americanGauges.map(({ name, area }) => ({ name: `${name} AWG`, area }))
}

/** Completes a run by its defaults, and refuses what contradicts itself. */
export function runOf(where: string, path: string, asked: RunGiven): Run {
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
  const limit = asked.insulationLimit ?? quantity('temperature', '105 °C')
  const faultLimit = asked.faultLimit ?? quantity('temperature', '160 °C')
  const ambient = asked.ambient ?? quantity('temperature', '40 °C')
  if (limit.si <= ambient.si) {
    refuse('insulationLimit', `a temperature above the ambient one, ${ambient}`, String(limit))
  }
  if (faultLimit.si <= limit.si) {
    const received = asked.faultLimit === undefined ? `nothing, which is ${faultLimit}` : String(faultLimit)
    refuse('faultLimit', `a temperature above what the insulation bears all day, ${limit}`, received)
  }
  const { meltingPoint } = conductorMaterials[asked.conductor ?? 'copper']
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
    limit,
    faultLimit,
    ambient,
    touching: (asked.laid ?? 'touching') === 'touching',
    bundled: asked.bundled?.si ?? 1,
    ...(maximumDrop === undefined ? {} : { mostDrop: mostDropOf(maximumDrop, systemVoltage) }),
    assumptions: [
      ...(asked.conductor === undefined ? ['Copper conductors (conductor by default).'] : []),
      ...(asked.insulationLimit === undefined
        ? [`The insulation bears ${limit} all day (insulationLimit by default).`]
        : []),
      ...(asked.faultLimit === undefined
        ? [`The insulation bears ${faultLimit} in a fault, as PVC does (faultLimit by default; IEC 60364-5-54).`]
        : []),
      ...(asked.ambient === undefined ? [`Air of ${ambient} (ambient by default).`] : []),
      ...(asked.laid === undefined ? ['The cables out and back touch each other (laid by default).'] : []),
      ...(asked.bundled === undefined
        ? ['Nothing else warms the cables: no bundle, duct or hot part (bundled 1 by default).']
        : []),
      ...(maximumDrop === undefined ? ['The drop is not held to a limit: give maximumDrop.'] : []),
      ...(profile === undefined
        ? []
        : ['The profile is run again and again, until each round warms the cable as the last one did.']),
    ],
  }
}

function mostDropOf(
  maximumDrop: NonNullable<RunGiven['maximumDrop']>,
  systemVoltage: Quantity<'voltage'> | undefined,
): Quantity<'voltage'> {
  if (maximumDrop.kind === 'voltage') return maximumDrop as Quantity<'voltage'>
  return (systemVoltage as Quantity<'voltage'>).times(maximumDrop.si)
}

/** A section on a run, and the tests that it fails. */
export interface Judged {
  readonly made: SizedSection
  readonly reasons: string[]
}

/** What a section does on a run. The current that a bundle leaves room for is counted as if the cable were alone. */
export function judgeSection(run: Run, { name, area }: Candidate): Judged {
  const { asked, steady, greatest, limit, ambient, bundled } = run
  const outerDiameter = asked.geometry?.[name]
  const described = {
    area,
    ambient,
    laid: run.touching ? 'touching' : 'apart',
    ...(asked.conductor === undefined ? {} : { conductor: asked.conductor }),
    ...(outerDiameter === undefined ? {} : { outerDiameter }),
  } as const
  const cable = cableOf(run.where, described, `${run.path}geometry.${name}`)
  const alone = section(
    `Ampacity at ${limit}`,
    () => steadyAtLimit(run.where, `${run.path}insulationLimit`, cable, limit).current,
  )
  const ampacity = alone.times(bundled)
  const reasons: string[] = []
  if (isBelow(ampacity, steady)) reasons.push(`carries ${ampacity}, not ${steady}`)
  const temperature = temperatureOf(run, cable, ampacity)
  if (temperature === undefined) reasons.push(`burns at ${steady}`)
  else if (isAbove(temperature, limit)) {
    reasons.push(
      `${temperature} at ${asked.profile === undefined ? steady : 'the hottest of the profile'}, above ${limit}`,
    )
  }
  // What burns is shown at its limit: the drop of a cable that is no cable any more means nothing.
  const warm = temperature ?? limit
  const { length } = asked
  const coefficient = cable.material.coefficient
  const resistancePerLength = resistancePerLengthAt({ resistance: cable.resistance, coefficient, temperature: warm })
  const drop = cableVoltageDrop({ current: greatest, resistancePerLength, length })
  if (run.mostDrop !== undefined && isAbove(drop, run.mostDrop)) {
    reasons.push(`drops ${drop}, at most ${run.mostDrop} allowed`)
  }
  const { volumetricHeat, beta, resistivity } = cable.material
  const constant = adiabaticConstant({ volumetricHeat, beta, resistivity, initial: limit, final: run.faultLimit })
  return {
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
    reasons,
  }
}

/** The conductor at the steady current, or at its hottest over the profile; undefined where nothing is steady. */
function temperatureOf(run: Run, cable: Cable, ampacity: Quantity<'current'>): Quantity<'temperature'> | undefined {
  const { steady, bundled, asked, where } = run
  const alone = steady.over(bundled)
  try {
    if (asked.profile === undefined) {
      return section(`Temperature at ${steady}`, () => steadyAtCurrent(where, cable, alone).conductorTemperature)
    }
    const mean = section(`Temperature at ${steady}, the root mean square`, () => steadyAtCurrent(where, cable, alone))
    // Where even the mean current is too much, the profile need not be followed.
    if (isBelow(ampacity, steady)) return mean.conductorTemperature
    return quantity('temperature', settledPeak(where, cable, courseOf(asked.profile, bundled), mean), 'K').as('°C')
  } catch (error) {
    if (error instanceof CalculationError) return undefined
    throw error
  }
}

/** The heading of a section in a working: each test with its figure and its limit, or why it is refused. */
export function sectionHeading({ steady, limit, mostDrop }: Run, { made, reasons }: Judged): string {
  if (reasons.length > 0) return `${made.name}: refused, ${reasons.join('; ')}`
  const drop = `drops ${made.drop}${mostDrop === undefined ? '' : `, at most ${mostDrop}`}`
  return `${made.name}: serves, carries ${made.ampacity}, at least ${steady}; ${made.temperature}, at most ${limit}; ${drop}`
}

/**
 * Finds the least section of cable for a run, out and back, and says of every smaller one why it does not serve.
 *
 * - `current` (A), steady, above 0; or `profile`, a list of [current (A), time (s)], which is run again and again
 * - `length` (m), one way: the formulas double it
 * - `conductor`: `'copper'` unless given, or `'aluminium'`
 * - `insulationLimit` (°C): what the insulation bears all day, 105 °C unless given; `faultLimit` (°C): for a few seconds,
 *   160 °C unless given
 * - `ambient` (°C): 40 °C unless given
 * - `maximumDrop`: a voltage, or a ratio of `systemVoltage`, at the greatest current
 * - `fault`: `current` and `time` (up to 5 s), or `jouleIntegral`, what the fuse lets through
 * - `series`: `'metric'` unless given, or `'american'`
 * - `laid`: `'touching'` unless given, as the cables out and back usually do, or `'apart'`
 * - `geometry`: outer diameters by the name of the section, for the cable that will be bought
 * - `bundled`: share of its ampacity that a bundle leaves a cable, 1 unless given
 *
 * @returns The section, what it carries, drops and withstands, checks, and `rejected` with all reasons.
 * @throws InputError for input that cannot be used, by its path; CalculationError where no listed section serves, with the
 * reasons that refuse the largest.
 * Source: the heat balance of {@link cableTemperature}; IEC 60364-5-52, Annex G; IEC 60364-5-54, 543.1.2.
 *
 * @example
 * ```ts
 * const { section, temperature, drop, rejected } = sizeCable({
 *   current: '150 A',
 *   length: '2.4 m',
 *   maximumDrop: '1 %',
 *   systemVoltage: '178 V',
 * })
 * section.name // '25 mm²'
 * String(temperature) // '101.9 °C'
 * String(drop) // '0.7424 V'
 * rejected.at(-1)?.reasons // ['carries 114.3 A, not 150 A', '151.2 °C at 150 A, above 105 °C']
 * ```
 */
export const sizeCable = /*@__PURE__*/ procedure('sizeCable', sizeCableGiven, ({ fault, ...asked }): SizedCable => {
  const run = runOf('sizeCable', '', asked)
  const faultIntegral = faultOf(fault)
  const rejected: RefusedSection[] = []
  let last: Judged | undefined
  for (const candidate of sectionsOf(asked.series)) {
    const judged = section(
      (each: Judged) => sectionHeading(run, each),
      () => {
        const each = judgeSection(run, candidate)
        if (faultIntegral !== undefined && isBelow(each.made.withstand, faultIntegral)) {
          each.reasons.push(`withstands ${each.made.withstand}, and the fault has ${faultIntegral.as('kA²·s')}`)
        }
        return each
      },
    )
    if (judged.reasons.length === 0) return { ...sized(run, judged.made, faultIntegral), rejected }
    rejected.push({ name: candidate.name, reasons: judged.reasons })
    last = judged
  }
  const { made, reasons } = last as Judged
  throw new CalculationError(
    'sizeCable',
    `no section up to ${made.name} serves: ${made.name} ${reasons.join('; ')}. Run two in parallel, each with its own fuse, or ask less of it`,
    Object.fromEntries(rejected.map(({ name, reasons: why }) => [name, why.join('; ')])),
  )
})

function faultOf(fault: Read<typeof sizeCableGiven>['fault']): Quantity<'jouleIntegral'> | undefined {
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

function sized(run: Run, made: SizedSection, fault?: Quantity<'jouleIntegral'>): Omit<SizedCable, 'rejected'> {
  return {
    section: { name: made.name, area: made.area },
    ampacity: made.ampacity,
    temperature: made.temperature,
    drop: made.drop,
    loss: made.loss,
    withstand: made.withstand,
    loopResistance: made.loopResistance,
    checks: [...sectionChecks(run, made), ...faultCheck(made, fault)],
    assumptions: [...run.assumptions, ...cableAssumptions(run, made)],
    cautions: [cautions.shortCircuit],
  }
}

function faultCheck(made: SizedSection, fault?: Quantity<'jouleIntegral'>): Check[] {
  if (fault === undefined) return []
  return [check('Fault through the cable', fault.as('kA²·s'), 'at most', made.withstand, 'IEC 60364-5-54, 543.1.2')]
}

/** What most terminals and fuses are made for. Common practice, no source. */
const TERMINALS = /*@__PURE__*/ (() => quantity('temperature', '75 °C'))()

/** What is assumed of the cable itself, and of what it ends at. */
export function cableAssumptions({ asked }: Run, { name, outerDiameter, temperature }: SizedSection): string[] {
  return [
    ...(asked.geometry?.[name] === undefined
      ? [
          `Cable of ${name} is ${outerDiameter} thick, as thin-walled flexible cable is (geometry; common practice, no source).`,
        ]
      : []),
    ...(isAbove(temperature, TERMINALS)
      ? [
          `Terminals, fuse and contactor bear a cable of ${temperature}: most are made for ${TERMINALS} or 90 °C (common practice, no source).`,
        ]
      : []),
  ]
}

/** The checks of a section on its run. */
export function sectionChecks(run: Run, made: SizedSection): Check[] {
  const load = run.asked.profile === undefined ? 'Current' : 'Root mean square of the current'
  return [
    check(load, run.steady, 'at most', made.ampacity, 'heat balance of the cable at the limit of its insulation'),
    check('Temperature of the conductor', made.temperature, 'at most', run.limit, 'limit of the insulation'),
    ...(run.mostDrop === undefined
      ? []
      : [check('Voltage drop', made.drop, 'at most', run.mostDrop, 'maximumDrop, as given')]),
  ]
}
