/**
 * One run of cable protected end to end: pack, load, cable and fuse, each against each.
 *
 * Rests on cable/size.ts and fuse/select.ts. A section that carries the load may still be too thin for the fuse that the
 * load needs; here the two are chosen together.
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings, isAbove } from '../findings/index.js'
import { section } from '../formula/index.js'
import { CalculationError, InputError, quantity } from '../quantity/index.js'
import { about, given, procedure, type Read } from '../structure/index.js'
import {
  cableAssumptions,
  judgeSection,
  type RefusedSection,
  type Run,
  runFields,
  runOf,
  type SizedSection,
  sectionChecks,
  sectionHeading,
  sectionsOf,
} from './cable/size.js'
import { candidatesGiven, type FuseFigures, type FuseSelection, fuseFor, refuseTask } from './fuse/select.js'
import { openCircuitOf, packGiven, refuseModule, resistanceOf } from './pack/module.js'
import { seriesVoltage } from './pack/pack.js'
import { voltageClass } from './safety.js'

/** A run of cable with its fuse. */
export interface ProtectedRun extends Findings {
  readonly name: string
  /** The section that serves with a fuse, or the one that was given. */
  readonly cable: SizedSection
  /** Every smaller section, and why it does not serve. */
  readonly rejected: readonly RefusedSection[]
  readonly fuse: FuseFigures
  /** Class A or B of ISO 6469-3, by the voltage of the full pack. */
  readonly voltageClass: 'A' | 'B'
}

/** What a run of cable is asked, without what its pack and its load tell. */
const cableFields = /*@__PURE__*/ (() => {
  const { current: _, profile: __, systemVoltage: ___, ...fields } = runFields
  return fields
})()

const protectRunGiven = /*@__PURE__*/ about(
  'a pack, a load, and the cable between them',
  z.strictObject({
    name: about('what the run is called', z.string().check(z.minLength(1))),
    pack: packGiven,
    load: about(
      'what flows through the run',
      z.strictObject({ current: runFields.current, profile: runFields.profile }),
    ),
    cable: about(
      'the run of cable',
      z.strictObject({
        section: about('the section, where it is given and only to be examined', z.optional(z.string())),
        ...cableFields,
      }),
    ),
    nearlyEmpty: z.optional(given('ratio', 'State of charge at which the pack is nearly empty', { min: 0, max: 1 })),
    coldest: z.optional(given('temperature', 'Lowest temperature of the cells', { above: 0, below: '25 °C' })),
    ambientFactor: z.optional(given('ratio', 'Share of its rating that the heat around leaves the fuse', { above: 0 })),
    fusingFactor: z.optional(
      given('ratio', 'Current at which the fuse opens within its conventional time, over its rating', { above: 1 }),
    ),
    candidates: candidatesGiven,
  }),
)

type Asked = Read<typeof protectRunGiven>

/**
 * Protects one run of cable: chooses section and fuse together and holds pack, load, cable and fuse each against each.
 *
 * - `name`: what the run is called
 * - `pack`: `module`, `series`, `parallel`, as {@link packAt} takes it
 * - `load`: `current` (A) all day, or `profile`, a list of [current (A), time (s)], which is run again and again
 * - `cable`: `length` (m) one way, and what {@link sizeCable} takes; a `maximumDrop` in per cent is one of the nominal voltage;
 *   with `section`, such as `'35 mm²'`, that one is examined and no other
 * - `nearlyEmpty`: state of charge of the least fault, 0.05 unless given; `coldest` (°C, below 25 °C): its temperature, that of the
 *   module's `cold` measurement unless given; where the module has none, it resists three times as much as warm
 * - `ambientFactor`, `fusingFactor`, `candidates`: as {@link selectFuse} takes them
 *
 * @returns Section and fuse, every smaller section with its reasons, and all checks. A `section` or candidates that do not
 * serve are returned with failed checks and reasons, not refused.
 * @throws InputError for input that cannot be used, by its path; CalculationError where no listed section serves.
 * Source: as {@link sizeCable} and {@link selectFuse}; ISO 6469-3 (voltage class).
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
export const protectRun = /*@__PURE__*/ procedure('protectRun', protectRunGiven, (asked): ProtectedRun => {
  refuseModule('protectRun', 'pack.module', asked.pack.module)
  if ((asked.load.current === undefined) === (asked.load.profile === undefined)) {
    const expected = "one of them: current such as '120 A', or profile such as [['300 A', '10 s'], ['80 A', '60 s']]"
    const received = asked.load.current === undefined ? 'neither' : 'both'
    throw new InputError('protectRun', [{ path: 'load.current and load.profile', expected, received }])
  }
  const run = runOf('protectRun', 'cable.', runAsked(asked))
  const source = section('The pack in a fault', () => sourceOf(asked))
  const taskFor = (made: SizedSection) => ({
    current: run.steady,
    profile: asked.load.profile,
    ambientFactor: asked.ambientFactor,
    fusingFactor: asked.fusingFactor,
    pack: source.pack,
    cable: { ampacity: made.ampacity, withstand: made.withstand, resistance: made.loopResistance },
    candidates: asked.candidates,
  })
  const { section: only } = asked.cable
  const candidates = sectionsOf(asked.cable.series).filter(({ name }) => only === undefined || name === only)
  if (candidates.length === 0) {
    const expected = `a section: ${sectionsOf(asked.cable.series)
      .map(({ name }) => name)
      .join(', ')}`
    throw new InputError('protectRun', [{ path: 'cable.section', expected, received: `'${only}'` }])
  }
  const rejected: RefusedSection[] = []
  let unfused: Tried | undefined
  let last: Tried | undefined
  for (const candidate of candidates) {
    const tried = section(
      (each: Tried) => triedHeading(run, each),
      (): Tried => {
        const { made, reasons } = judgeSection(run, candidate)
        const task = taskFor(made)
        refuseTask('protectRun', '', task)
        const fuse = fuseFor(task)
        return {
          made,
          fuse,
          reasons: [...reasons, ...windowReasons(fuse, asked)],
          without: candidateReasons(fuse, asked),
        }
      },
    )
    if (only !== undefined || allOf(tried).length === 0) return protectedBy(asked, run, tried, rejected, source.basis)
    if (tried.reasons.length === 0 && unfused === undefined) unfused = { ...tried, before: rejected.length }
    rejected.push({ name: candidate.name, reasons: allOf(tried) })
    last = tried
  }
  // The cable is there, the fuse is not among those offered: the specification tells what to look for instead.
  if (unfused !== undefined) return protectedBy(asked, run, unfused, rejected.slice(0, unfused.before), source.basis)
  const { made } = last as Tried
  throw new CalculationError(
    'protectRun',
    `no section up to ${made.name} serves ${asked.name}: ${made.name} ${allOf(last as Tried).join('; ')}. Run two in parallel, each with its own fuse, or ask less of it`,
    Object.fromEntries(rejected.map(({ name, reasons }) => [name, reasons.join('; ')])),
  )
})

/** A section with its fuse: why the section does not serve, and why no candidate does on it. */
interface Tried {
  readonly made: SizedSection
  readonly fuse: FuseSelection
  readonly reasons: readonly string[]
  readonly without: readonly string[]
  /** How many sections were refused before it. */
  readonly before?: number
}

/** Which fuses are refused tells something of a section only where the section itself would serve. */
function allOf({ reasons, without }: Tried): string[] {
  return [...(reasons.length > 0 ? reasons : without)]
}

function triedHeading(run: Run, tried: Tried): string {
  return sectionHeading(run, { made: tried.made, reasons: allOf(tried) })
}

/** Why no fuse at all agrees with both load and cable. */
function windowReasons({ ratingAtLeast, ratingAtMost, preferred }: FuseSelection, { candidates }: Asked): string[] {
  if (isAbove(ratingAtLeast, ratingAtMost)) {
    return [`the load needs a fuse of at least ${ratingAtLeast}, and the cable bears one of at most ${ratingAtMost}`]
  }
  // Candidates may have other ratings than those of IEC 60269-1.
  return preferred.length === 0 && candidates === undefined
    ? [`IEC 60269-1 has no rating from ${ratingAtLeast} to ${ratingAtMost}`]
    : []
}

/** Why no candidate serves on a section. */
function candidateReasons({ chosen, rejected }: FuseSelection, { candidates }: Asked): string[] {
  if (candidates === undefined || chosen !== undefined) return []
  return [
    `no candidate serves: ${rejected.map(({ candidate, reasons }) => `${candidate} ${reasons.join(', ')}`).join('; ')}`,
  ]
}

function protectedBy(
  asked: Asked,
  run: Run,
  { made, fuse }: Tried,
  rejected: readonly RefusedSection[],
  basis: readonly string[],
): ProtectedRun {
  const { checks, assumptions, cautions: fuseCautions, ...selection } = fuse
  const none: Check[] =
    asked.candidates === undefined || fuse.chosen !== undefined
      ? []
      : [check('Candidates that serve', quantity('ratio', 0), 'at least', quantity('ratio', 1), 'candidates, as given')]
  return {
    name: asked.name,
    cable: made,
    rejected,
    fuse: selection,
    voltageClass: voltageClass(selection.voltageAtLeast),
    checks: [...sectionChecks(run, made), ...checks, ...none],
    assumptions: [...run.assumptions, ...cableAssumptions(run, made), ...basis, ...assumptions],
    cautions: [...fuseCautions, cautions.lithiumCells, cautions.storedCharge],
  }
}

/** The run as sizing takes it. A drop in per cent is one of the nominal voltage. */
function runAsked({ pack, load, cable }: Asked): Parameters<typeof runOf>[2] {
  const { section: _section, ...rest } = cable
  return { ...rest, ...load, systemVoltage: pack.module.nominalVoltage.times(pack.series) }
}

/** State of charge below which a pack is hardly used. Common practice, no source. */
const NEARLY_EMPTY = '5 %'

/** What the pack puts behind a fault. */
function sourceOf({ pack, nearlyEmpty, coldest }: Asked) {
  const { module, series } = pack
  const curve = openCircuitOf('protectRun', 'pack.module', module)
  const maximumVoltage = seriesVoltage({ count: series, voltage: module.maximumVoltage })
  const state = nearlyEmpty ?? quantity('ratio', NEARLY_EMPTY)
  const openCircuit = seriesVoltage({ count: series, voltage: curve.voltageAt(state) })
  const { resistance } = resistanceOf(pack, undefined)
  const cold = module.cold === undefined ? undefined : resistanceOf(pack, coldest ?? module.cold.temperature)
  return {
    pack: { maximumVoltage, openCircuit, resistance, coldResistance: cold?.resistance },
    basis: [
      curve.basis,
      ...(nearlyEmpty === undefined
        ? [`The pack is nearly empty at ${NEARLY_EMPTY} (nearlyEmpty by default; common practice, no source).`]
        : []),
      ...(cold === undefined ? [] : [cold.basis]),
      ...(coldest === undefined && module.cold !== undefined
        ? [`The pack is no colder than ${module.cold.temperature}, where its module was measured (coldest by default).`]
        : []),
      ...(coldest !== undefined && cold === undefined
        ? [`How much more the pack resists at ${coldest} is not known: give module.cold.`]
        : []),
    ],
  }
}
