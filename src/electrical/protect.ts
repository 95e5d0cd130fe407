/**
 * One run of cable protected end to end: pack, load, cable and fuse, each against each.
 *
 * Rests on cable/size.ts and fuse/select.ts. A section that carries the load may still be too thin for the fuse that the
 * load needs; here the two are chosen together.
 */
import { cite, section } from '../formula/index.js'
import { lithiumCells, storedCharge } from '../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  type Findings,
  given,
  group,
  isAbove,
  type Judged,
  judgedUnderHeading,
  noneServes,
  optional,
  procedure,
  type Read,
  type Rejected,
  rejectedAs,
  says,
  serves,
  text,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { InputError, type Quantity } from '../quantity/index.js'
import {
  cableAssumptions,
  judgeSection,
  type RunAsked,
  runFields,
  runOf,
  type SizedSection,
  sectionsOf,
} from './cable/size.js'
import { type FuseFigures, type FuseSelection, fuseFields, fuseFor, refuseTask } from './fuse/select.js'
import { openCircuitOf, packFields, refuseModule, resistanceOf } from './pack/module.js'
import { seriesVoltage } from './pack/pack.js'
import { voltageClass } from './safety.js'

/** A run of cable with its fuse. */
export interface ProtectedRun extends Findings {
  readonly name: string
  /** The section that serves with a fuse, or the one that was given. */
  readonly cable: SizedSection
  /** Every smaller section, and why it does not serve. */
  readonly rejected: readonly Rejected[]
  readonly fuse: FuseFigures
  /** Class A or B of ISO 6469-3, by the voltage of the full pack. */
  readonly voltageClass: 'A' | 'B'
}

const protectFields = /*@__PURE__*/ (() => {
  const { current, profile, systemVoltage: _, ...cable } = runFields
  return {
    name: text('What the run is called'),
    pack: group('The pack', packFields),
    load: group('What flows through the run', { current, profile }),
    cable: group('The run of cable', {
      section: optional(text('The section, where it is given and only to be examined')),
      ...cable,
    }),
    nearlyEmpty: given('ratio', 'State of charge at which the pack is nearly empty', {
      min: 0,
      max: 1,
      default: '5 %',
      because: 'a pack is hardly used below, common practice, no source',
    }),
    coldest: optional(given('temperature', 'Lowest temperature of the cells', { above: 0, below: '25 °C' })),
    ...fuseFields,
  }
})()

type Asked = Read<typeof protectFields>

/**
 * Protects one run of cable: chooses section and fuse together and holds pack, load, cable and fuse each against each.
 *
 * Answers: which section and which fuse agree with the load, the pack and each other?
 *
 * - `name`: what the run is called, text
 * - `pack`: the pack, `{ module, series, parallel }`
 * - `load`: what flows through the run
 *   - `current`: steady current, in A, above 0 A, optional
 *   - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts, optional
 * - `cable`: the run of cable
 *   - `section`: the section, where it is given and only to be examined, text, optional
 *   - `length`: one-way length of the run, in m, at least 0 m
 *   - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 *   - `insulationLimit`: continuous limit of the insulation, in °C, 105 °C by default (cross-linked cable, common
 *     practice, no source)
 *   - `faultLimit`: limit of the insulation in a fault of at most 5 s, in °C, 160 °C by default (PVC, the least of the
 *     usual insulations, IEC 60364-5-54)
 *   - `ambient`: temperature of the air around the cables, in °C, at least -23.15 °C and below 226.85 °C, 40 °C by
 *     default (a hot day, common practice, no source)
 *   - `maximumDrop`: greatest drop, in V, above 0 V; or a plain number, above 0, optional
 *   - `series`: sections to choose from, 'metric' or 'american', metric by default (the sections of IEC 60228)
 *   - `laid`: how the cables lie, 'apart' or 'touching', touching by default (as the cables out and back usually do)
 *   - `geometry`: outer diameters by section, such as { '35 mm²': '11.5 mm' }, by names of your own, each in m, each
 *     above 0 m, optional
 *   - `bundled`: share of its ampacity that a bundle leaves a cable, a plain number, above 0 and at most 1, 1 by
 *     default (no bundle, duct or hot part warms the cables)
 * - `nearlyEmpty`: state of charge at which the pack is nearly empty, a plain number, at least 0 and at most 1, 5 %
 *   by default (a pack is hardly used below, common practice, no source)
 * - `coldest`: lowest temperature of the cells, in °C, above -273.15 °C and below 25 °C, optional
 * - `ambientFactor`: share of its rating that the heat around leaves the fuse, a plain number, above 0, 1 by default
 *   (the fuse sits no warmer than its rating allows)
 * - `fusingFactor`: current at which the fuse opens within its conventional time, over its rating, a plain number,
 *   above 1, 1.6 by default (a gG fuse, IEC 60269-1, from memory)
 * - `candidates`: fuses to choose from, a list of at least 1, optional
 *   - `name`: what it is called, text, optional
 *   - `rating`: rated current, in A, above 0 A
 *   - `voltage`: its rated voltages
 *     - `dc`: rated voltage for direct current, in V, above 0 V, optional
 *     - `ac`: rated voltage for alternating current, in V, above 0 V, optional
 *   - `breakingCapacity`: greatest direct current that it breaks, in A, above 0 A
 *   - `meltingIntegral`: melting (pre-arcing) joule integral, in A²·s, above 0 A²·s, optional
 *   - `clearingIntegral`: greatest joule integral until it has cleared, in A²·s, above 0 A²·s, optional
 *   - `curve`: its time–current curve, the currents rising, pairs of current and time until it opens, optional
 * - always assumed: both conductors carry the same current
 *
 * @returns Section and fuse, every smaller section with its reasons, and all checks. A `section` or candidates that do not
 * serve are returned with failed checks and reasons, not refused.
 * @throws InputError for input that cannot be used, by its path; CalculationError where no listed section serves.
 * Source: NFPA 70 (NEC), 210.20(A); IEC 60364-4-43, 433.1 (from memory); IEC 60364-5-52, Annex G; IEC 60364-5-54,
 * 543.1.2; ISO 6469-3.
 *
 * @example
 * ```ts
 * const { cable, fuse, rejected } = protectRun({
 *   name: 'main run, pack to controller',
 *   pack: {
 *     module: {
 *       name: 'salvaged module of 12 cells',
 *       cellsInSeries: 12,
 *       chemistry: 'NMC',
 *       nominalVoltage: '44.4 V',
 *       minimumVoltage: '36 V',
 *       maximumVoltage: '50.4 V',
 *       capacity: '41 Ah',
 *       resistance: '14 mΩ',
 *       mass: '11.5 kg',
 *       continuousCurrent: '80 A',
 *     },
 *     series: 4,
 *     parallel: 2,
 *   },
 *   load: { current: '120 A' },
 *   cable: { length: '2.4 m', maximumDrop: '1 %' },
 * })
 * cable.name // '35 mm²'
 * fuse.preferred.map(String) // ['160 A']
 * String(fuse.prospective.lowest) // '1773 A'
 * rejected.at(-1)?.reasons
 * // ['the load needs a fuse of at least 150 A, and the cable bears one of at most 139.4 A']
 * ```
 */
export const protectRun = /*@__PURE__*/ procedure({
  name: 'protectRun',
  title: 'A run of cable with its fuse',
  answers: 'Which section and which fuse agree with the load, the pack and each other?',
  input: protectFields,
  source: [
    cite('NFPA 70 (NEC)', '210.20(A)'),
    cite('IEC 60364-4-43', '433.1 (from memory)'),
    cite('IEC 60364-5-52', 'Annex G'),
    cite('IEC 60364-5-54', '543.1.2'),
    cite('ISO 6469-3'),
  ],
  assumes: ['Both conductors carry the same current.'],
  work: (asked): Unfinished<ProtectedRun> => {
    refuseModule('protectRun', 'pack.module', asked.pack.module)
    refuseLoad(asked)
    const { section: only, ...cable } = asked.cable
    const run = runOf('protectRun', 'cable.', {
      ...cable,
      ...asked.load,
      // A drop in per cent is one of the nominal voltage.
      systemVoltage: asked.pack.module.nominalVoltage.times(asked.pack.series),
    })
    const source = section('The pack in a fault', () => sourceOf(asked))
    const rejected: Judged<Tried>[] = []
    /** The first section that serves by itself, and how many were refused before it. */
    let unfused: { readonly tried: Tried; readonly before: number } | undefined
    for (const candidate of sectionsFor(only, cable.series)) {
      const judged = judgedUnderHeading(candidate, () => {
        const alone = judgeSection(run, candidate)
        const fuse = fuseFor(taskFor(asked, run.steady, source.pack, alone.made))
        return triedOn(asked, alone, fuse)
      })
      const { made: tried } = judged
      if (only !== undefined || serves(judged)) return protectedBy(asked, run, tried, rejected, source.basis)
      if (unfused === undefined && tried.isSound) unfused = { tried, before: rejected.length }
      rejected.push(judged)
    }
    // The cable is there, the fuse is not among those offered: the specification tells what to look for instead.
    if (unfused !== undefined) {
      return protectedBy(asked, run, unfused.tried, rejected.slice(0, unfused.before), source.basis)
    }
    const most = `no section up to ${rejected.at(-1)?.name} serves ${asked.name}`
    throw noneServes('protectRun', most, rejected, 'Run two in parallel, each with its own fuse, or ask less of it')
  },
})

function refuseLoad({ load: { current, profile } }: Asked): void {
  if ((current === undefined) !== (profile === undefined)) return
  const expected = "one of them: current such as '120 A', or profile such as [['300 A', '10 s'], ['80 A', '60 s']]"
  const received = current === undefined ? 'neither' : 'both'
  throw new InputError('protectRun', [{ path: 'load.current and load.profile', expected, received }])
}

/** All sections of a series, or the one that is only examined. */
function sectionsFor(only: string | undefined, series: RunAsked['series']) {
  const all = sectionsOf(series)
  const found = all.filter(({ name }) => only === undefined || name === only)
  if (found.length > 0) return found
  const expected = `a section: ${all.map(({ name }) => name).join(', ')}`
  throw new InputError('protectRun', [{ path: 'cable.section', expected, received: `'${only}'` }])
}

function taskFor(
  { load, ambientFactor, fusingFactor, candidates }: Asked,
  current: Quantity<'current'>,
  pack: Parameters<typeof fuseFor>[0]['pack'],
  { ampacity, withstand, loopResistance }: SizedSection,
): Parameters<typeof fuseFor>[0] {
  const cable = { ampacity, withstand, resistance: loopResistance }
  const task = { current, profile: load.profile, ambientFactor, fusingFactor, candidates, pack, cable }
  refuseTask('protectRun', '', task)
  return task
}

/** A section with its fuse. */
interface Tried {
  readonly cable: SizedSection
  readonly cableChecks: readonly Check[]
  readonly fuse: ReturnType<typeof fuseFor>
  /** Whether the section serves, and some rating agrees with both load and cable. */
  readonly isSound: boolean
}

/** Which fuses are refused tells something of a section only where the section itself would serve. */
function triedOn({ candidates }: Asked, alone: Judged<SizedSection>, fuse: Tried['fuse']): Judged<Tried> {
  const own = { name: alone.name, checks: [...alone.checks, ...windowTrials(fuse, candidates)], made: undefined }
  const isSound = serves(own)
  return {
    name: alone.name,
    checks: [...own.checks, ...(isSound ? candidateTrials(fuse, candidates) : [])],
    made: { cable: alone.made, cableChecks: alone.checks, fuse, isSound },
  }
}

/** Whether any fuse at all agrees with both load and cable. */
function windowTrials(
  { ratingAtLeast, ratingAtMost, preferred }: FuseSelection | Tried['fuse'],
  candidates: Asked['candidates'],
): Check[] {
  const basis = 'IEC 60364-4-43, 433.1 (from memory)'
  const told = isAbove(ratingAtLeast, ratingAtMost)
    ? { fail: `the load needs a fuse of at least ${ratingAtLeast}, and the cable bears one of at most ${ratingAtMost}` }
    : says`the load needs a fuse of ${ratingAtLeast}, at most the ${ratingAtMost} that the cable bears`
  // Candidates may have other ratings than those of IEC 60269-1.
  const isGap = !isAbove(ratingAtLeast, ratingAtMost) && preferred.length === 0 && candidates === undefined
  return [
    trial('fuse.window', 'Least rating for the load', told, basis),
    ...(isGap
      ? [
          trial(
            'fuse.ratings',
            'Ratings that exist',
            { fail: `IEC 60269-1 has no rating from ${ratingAtLeast} to ${ratingAtMost}` },
            'IEC 60269-1',
          ),
        ]
      : []),
  ]
}

/** Whether one of the candidates serves, where there are any. */
function candidateTrials({ chosen, rejected }: Tried['fuse'], candidates: Asked['candidates']): Check[] {
  if (candidates === undefined) return []
  const why = rejected.map(({ candidate, reasons }) => `${candidate} ${reasons.join(', ')}`).join('; ')
  return [
    trial(
      'fuse.candidates',
      'Candidates that serve',
      chosen === undefined ? { fail: `no candidate serves: ${why}` } : { pass: `${chosen.name} serves` },
      'candidates, as given',
      'candidates',
    ),
  ]
}

function protectedBy(
  asked: Asked,
  run: Parameters<typeof cableAssumptions>[0],
  { cable, cableChecks, fuse }: Tried,
  rejected: readonly Judged<Tried>[],
  basis: readonly Assumption[],
): Unfinished<ProtectedRun> {
  const { checks, assumptions, cautions, ...selection } = fuse
  return {
    name: asked.name,
    cable,
    rejected: rejected.map(rejectedAs),
    fuse: selection,
    voltageClass: voltageClass(selection.voltageAtLeast),
    checks: [...cableChecks, ...checks, ...(fuse.chosen === undefined ? candidateTrials(fuse, asked.candidates) : [])],
    assumptions: [...run.assumptions, ...cableAssumptions(run, cable), ...basis, ...assumptions],
    cautions: [...cautions, lithiumCells, storedCharge],
  }
}

/** What the pack puts behind a fault. */
function sourceOf({ pack, nearlyEmpty, coldest }: Asked) {
  const { module, series } = pack
  const curve = openCircuitOf('protectRun', 'pack.module', module)
  const maximumVoltage = seriesVoltage({ count: series, voltage: module.maximumVoltage })
  const openCircuit = seriesVoltage({ count: series, voltage: curve.voltageAt(nearlyEmpty) })
  const { resistance } = resistanceOf(pack, undefined)
  const cold = module.cold === undefined ? undefined : resistanceOf(pack, coldest ?? module.cold.temperature)
  return {
    pack: { maximumVoltage, openCircuit, resistance, coldResistance: cold?.resistance },
    basis: [
      assumed('pack.openCircuit', curve.basis),
      ...(cold === undefined ? [] : [assumed('pack.coldResistance', cold.basis)]),
      ...(coldest === undefined && module.cold !== undefined
        ? [
            assumed(
              'coldest.default',
              `The pack is no colder than ${module.cold.temperature}, where its module was measured (coldest by default).`,
            ),
          ]
        : []),
      ...(coldest !== undefined && cold === undefined
        ? [assumed('pack.cold', `How much more the pack resists at ${coldest} is not known: give module.cold.`)]
        : []),
    ],
  }
}
