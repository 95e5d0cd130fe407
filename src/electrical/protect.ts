/**
 * One run of cable protected end to end: pack, load, cable and fuse, each against each.
 *
 * Rests on cable/size.ts and fuse/select.ts. A section that carries the load may still be too thin for the fuse that the
 * load needs; here the two are chosen together.
 */
import { cite, section } from '../formula/index.js'
import { USUAL_MEMORY } from '../formula/memory.js'
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
  type Note,
  noneServes,
  optional,
  procedure,
  type Read,
  type Rejected,
  rejectedAs,
  serves,
  text,
  type Unfinished,
  type Verdict,
} from '../procedure/index.js'
import { unusualIn } from '../procedure/unusual.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../quantity/index.js'
import { type Cable, conductorField, kelvins } from './cable/balance.js'
import { adiabaticConstant, adiabaticWithstand } from './cable/cable.js'
import { conductorMaterials, resistancePerLength, resistivityAt } from './cable/conductor.js'
import { followed, pulled } from './cable/course.js'
import {
  type Candidate,
  cableAssumptions,
  cableIn,
  FAULT_LIMITS,
  judgeSection,
  mendFor,
  type Run,
  type RunAsked,
  runFields,
  runOf,
  type SizedSection,
  sectionsOf,
  unlessItBurns,
} from './cable/size.js'
import { fuseAltitudeFactor, loopInductance } from './fuse/fuse.js'
import { type FuseFigures, fuseFor } from './fuse/select.js'
import {
  ageingField,
  type FollowedCable,
  fuseFields,
  fuseIssues,
  inductanceField,
  type Judging,
  refuseTask,
} from './fuse/task.js'
import { fullPullTrials, mostInOverload, OVERLOAD_RISE } from './fuse/warmth.js'
import { openCircuitOf, packFields, refuseModule, resistanceOf, unusualOfPack } from './pack/module.js'
import { seriesVoltage } from './pack/pack.js'
import { voltageClass } from './safety.js'
import { stringFindings, stringsField } from './strings.js'

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

/** What a cable bears beyond its continuous limit. @internal */
export const overloadLimitField = /*@__PURE__*/ (() =>
  optional(
    given('temperature', 'What the insulation bears for hours in an overload, as its maker states', {
      usual: ['85 °C', '300 °C', 'ISO 6722-1, from memory'],
    }),
  ))()

/** The conductor through which a fault to the body flows. @internal */
export const protectiveConductorField = /*@__PURE__*/ (() =>
  optional(
    group('The protective or bonding conductor through which a fault to the body flows', {
      area: given('area', 'Its section', { above: 0, usual: ['1 mm²', '300 mm²'] }),
      conductor: conductorField,
      initial: optional(given('temperature', 'How warm it is before a fault'), {
        absent: 'The protective conductor is as warm before a fault as the cable may be all day.',
      }),
      faultLimit: optional(given('temperature', 'What its insulation bears for at most 5 s', { usual: FAULT_LIMITS }), {
        absent: 'The insulation of the protective conductor bears as much in a fault as that of the cable.',
      }),
    }),
  ))()

/** How far apart conductors lie that do not touch. @internal */
export const spacingField = /*@__PURE__*/ (() =>
  optional(
    given('length', 'Distance between the centres of conductors that lie apart', { above: 0, usual: ['10 mm', '1 m'] }),
  ))()

const protectFields = /*@__PURE__*/ (() => {
  const { current, profile, systemVoltage: _, ...cable } = runFields
  return {
    name: text('What the run is called'),
    pack: group('The pack', packFields),
    strings: stringsField,
    load: group('What flows through the run', { current, profile }),
    cable: group('The run of cable', {
      section: optional(text('The section, where it is given and only to be examined')),
      ...cable,
      overloadLimit: overloadLimitField,
      protectiveConductor: protectiveConductorField,
      spacing: spacingField,
    }),
    ambient: optional(
      given('temperature', 'Temperature of the air around the fuse', {
        above: '-90 °C',
        below: '200 °C',
        usual: ['20 °C', '125 °C'],
      }),
      {
        absent: 'The air around the fuse is as warm as that around the cable.',
      },
    ),
    ageing: ageingField,
    inductance: inductanceField,
    nearlyEmpty: given('ratio', 'State of charge at which the pack is nearly empty', {
      min: 0,
      max: 1,
      usual: ['0 %', '30 %'],
      default: '5 %',
      because: 'a pack is hardly used below, common practice, no source',
    }),
    coldest: optional(
      given('temperature', 'Lowest temperature of the cells', {
        above: 0,
        below: '25 °C',
        usual: ['-40 °C', '20 °C'],
      }),
    ),
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
 * - `strings`: whole strings side by side, in place of modules that are joined in each group, optional
 *   - `fuse`: a fuse, optional
 *     - `name`: what it is called, text, optional
 *     - `class`: its class, as its standard names it, 'gG' or 'gR' or 'gS' or 'gPV' or 'aR' or 'aM' or 'automotive' or
 *       'UL 248', optional
 *     - `rating`: rated current, in A, above 0 A
 *     - `voltage`: its rated voltages
 *       - `dc`: rated voltage for direct current, in V, above 0 V, optional
 *       - `ac`: rated voltage for alternating current, in V, above 0 V, optional
 *     - `breakingCapacity`: greatest direct current that it breaks, in A, above 0 A
 *     - `timeConstant`: time constant of the circuit in which it breaks that current, in s, above 0 s, optional
 *     - `leastBreakingCurrent`: least direct current that it breaks, in A, above 0 A, optional
 *     - `meltingIntegral`: melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0
 *       A²·s, optional
 *     - `clearingIntegral`: greatest joule integral until it has cleared, in A²·s, above 0 A²·s, optional
 *     - `curve`: its time–current curve, the currents rising, pairs of current and time until it opens, optional
 *     - `derating`: share of its rating by the temperature around it, the temperatures rising, pairs of temperature
 *       around the fuse and share of its rating, optional
 *     - `thermalTimeConstant`: time constant with which it warms, in s, above 0 s, optional
 *   - `withstand`: joule integral that the cable of a string withstands; 1 kA²·s is (1 kA)²·s, in A²·s, above 0 A²·s,
 *     optional
 * - `load`: what flows through the run
 *   - `current`: steady current, in A, above 0 A, optional
 *   - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts, optional
 * - `cable`: the run of cable
 *   - `section`: the section, where it is given and only to be examined, text, optional
 *   - `length`: one-way length of the run, in m, at least 0 m
 *   - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 *   - `insulationLimit`: continuous limit of the insulation, in °C, 70 °C by default (PVC, the least of the usual
 *     insulations, IEC 60364-5-52; cross-linked cable bears more)
 *   - `faultLimit`: limit of the insulation in a fault of at most 5 s, in °C, 160 °C by default (PVC, the least of the
 *     usual insulations, IEC 60364-5-54)
 *   - `ambient`: temperature of the air around the cables, in °C, at least -23.15 °C and below 226.85 °C, 40 °C by
 *     default (a hot day, common practice, no source)
 *   - `maximumDrop`: greatest drop, in V, above 0 V; or a plain number, above 0, optional
 *   - `series`: sections to choose from, 'metric' or 'american', metric by default (the sections of IEC 60228)
 *   - `laid`: how the cables lie, 'apart' or 'touching', touching by default (as the cables out and back usually do)
 *   - `geometry`: outer diameters by section, such as { '35 mm²': '11.5 mm' }, by names of your own, each in m, each
 *     above 0 m, optional
 *   - `terminalLimit`: what the terminals at both ends are made for, in °C, 75 °C by default (most terminals, fuses and
 *     contactors are, NEC 110.14(C) by analogy; more where both ends state it)
 *   - `bundled`: share of its ampacity that a bundle leaves a cable, a plain number, above 0 and at most 1, 1 by
 *     default (no bundle, duct or hot part warms the cables)
 *   - `overloadLimit`: what the insulation bears for hours in an overload, as its maker states, in °C, optional
 *   - `protectiveConductor`: the protective or bonding conductor through which a fault to the body flows, optional
 *     - `area`: its section, in m², above 0 m²
 *     - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 *     - `initial`: how warm it is before a fault, in °C, optional
 *     - `faultLimit`: what its insulation bears for at most 5 s, in °C, optional
 *   - `spacing`: distance between the centres of conductors that lie apart, in m, above 0 m, optional
 * - `ambient`: temperature of the air around the fuse, in °C, above -90 °C and below 200 °C, optional
 * - `ageing`: how many times as much the pack resists at the end of its life, a plain number, at least 1 and at most
 *   10, 2 by default (the common end of life; 1 where it was measured on modules so old; common practice, no source)
 * - `inductance`: inductance of the pack, in µH, at least 0 µH, 2 µH by default (two metres of conductor around its
 *   modules, common practice, no source)
 * - `nearlyEmpty`: state of charge at which the pack is nearly empty, a plain number, at least 0 and at most 1, 5 %
 *   by default (a pack is hardly used below, common practice, no source)
 * - `coldest`: lowest temperature of the cells, in °C, above -273.15 °C and below 25 °C, optional
 * - `altitude`: greatest height above the sea, in m, at least 0 m and at most 5000 m, 2000 m by default (no road that
 *   is driven is higher)
 * - `ambientFactor`: share of its rating that the heat around leaves the fuse, in place of what its class tells, a
 *   plain number, at least 0.2 and at most 1.2, optional
 * - `fusingFactor`: current at which a fuse of no stated class opens within its conventional time, over its rating, a
 *   plain number, above 1 and at most 3, optional
 * - `cycles`: how often the peaks of the load, and a full pull, come in the life of the car, a whole number, at least
 *   1 and at most 1000000, 100000 by default (every pull-away, common practice, no source)
 * - `family`: the family in which ratings are sought, 'R10' or 'UL' or 'blade' or 'bolt-down', R10 by default (the
 *   ratings of IEC 60269-1)
 * - `ratings`: ratings that can be had, in place of those of a family, a list of at least 1, each in A, each above 0
 *   A, optional
 * - `overload`: what opens on an overload in place of the fuse, such as a contactor, optional
 *   - `by`: what opens, text
 *   - `current`: current at which it opens, in A, above 0 A
 *   - `time`: within what time, in s, above 0 s
 *   - `breaks`: greatest direct current that it breaks, in A, above 0 A
 * - `controller`: the controller that the run feeds, optional
 *   - `batteryCurrent`: greatest current that it draws from the battery, in A, above 0 A
 *   - `time`: how long it draws that current at most, in s, above 0 s, 60 s by default (a minute of full pull, common
 *     practice, no source)
 * - `candidates`: fuses to choose from, a list of at least 1, optional
 *   - `name`: what it is called, text, optional
 *   - `class`: its class, as its standard names it, 'gG' or 'gR' or 'gS' or 'gPV' or 'aR' or 'aM' or 'automotive' or
 *     'UL 248', optional
 *   - `rating`: rated current, in A, above 0 A
 *   - `voltage`: its rated voltages
 *     - `dc`: rated voltage for direct current, in V, above 0 V, optional
 *     - `ac`: rated voltage for alternating current, in V, above 0 V, optional
 *   - `breakingCapacity`: greatest direct current that it breaks, in A, above 0 A
 *   - `timeConstant`: time constant of the circuit in which it breaks that current, in s, above 0 s, optional
 *   - `leastBreakingCurrent`: least direct current that it breaks, in A, above 0 A, optional
 *   - `meltingIntegral`: melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s, in A²·s, above 0
 *     A²·s, optional
 *   - `clearingIntegral`: greatest joule integral until it has cleared, in A²·s, above 0 A²·s, optional
 *   - `curve`: its time–current curve, the currents rising, pairs of current and time until it opens, optional
 *   - `derating`: share of its rating by the temperature around it, the temperatures rising, pairs of temperature
 *     around the fuse and share of its rating, optional
 *   - `thermalTimeConstant`: time constant with which it warms, in s, above 0 s, optional
 * - always assumed: both conductors carry the same current
 *
 * @returns Section and fuse, every smaller section with its reasons, and all checks. A `section` or candidates that do not
 * serve are returned with failed checks and reasons, not refused: of several sections, the least where nothing but data of a
 * candidate is missing, else the least that suits the load.
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
 *   cable: { length: '2.4 m', maximumDrop: '1 %', insulationLimit: '105 °C' },
 * })
 * cable.name // '35 mm²'
 * fuse.preferred.map(String) // ['160 A']
 * String(fuse.prospective.lowest) // '904.6 A'
 * rejected.at(-1)?.reasons[0]
 * // 'the cable brings 80.38 °C to its terminals, more than the 75 °C for which they are made'
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
    refuseAsked(asked)
    const { section: only, overloadLimit: _, spacing: __, protectiveConductor: ___, ...cable } = asked.cable
    const run = runOf('protectRun', 'cable.', {
      ...cable,
      ...asked.load,
      // A drop in per cent is one of the nominal voltage.
      systemVoltage: asked.pack.module.nominalVoltage.times(asked.pack.series),
    })
    const source = section('The pack in a fault', () => sourceOf(asked))
    const thinAir = fuseAltitudeFactor({ altitude: asked.altitude })
    const protective = protectiveOf(asked.cable)
    const shared = { pack: source.pack, thinAir, ...(protective === undefined ? {} : { protective }) }
    const rejected: Judged<Tried | undefined>[] = []
    for (const candidate of sectionsFor(only, cable.series)) {
      const judged = judgedUnderHeading(candidate, () => {
        const alone = judgeSection(run, candidate)
        // What does not serve by itself is tried with none of the fuses, unless it is the one to be examined.
        if (only === undefined && asked.candidates !== undefined && !serves(alone)) return { ...alone, made: undefined }
        const task = taskFor(asked, run, candidate, shared, alone.made)
        return triedOn(task, { ...alone, checks: [...alone.checks, ...fullPullTrials(task)] }, fuseFor(task))
      })
      const { made } = judged
      if (made !== undefined && (only !== undefined || serves(judged))) {
        return protectedBy(asked, run, made, rejected, source)
      }
      rejected.push(judged)
    }
    const nearest = nearestOf(rejected)
    if (nearest?.made !== undefined) {
      return protectedBy(asked, run, nearest.made, rejected.slice(0, rejected.indexOf(nearest)), source)
    }
    const most = `no section up to ${rejected.at(-1)?.name} serves ${asked.name}`
    throw noneServes('protectRun', most, rejected, mendFor(rejected.at(-1)))
  },
})

/** The most that direct-current equipment of low voltage is made for: IEC 60364-1, from memory. */
const MOST_VOLTAGE = /*@__PURE__*/ (() => quantity('voltage', '1500 V'))()

/** Refuses what contradicts itself, by the caller's own fields. */
function refuseAsked({ load: { current, profile }, pack: { module, series }, cable, strings }: Asked): void {
  const issues: InputIssue[] = strings?.fuse === undefined ? [] : fuseIssues('strings.fuse', strings.fuse)
  if ((current === undefined) === (profile === undefined)) {
    const expected = "one of them: current such as '120 A', or profile such as [['300 A', '10 s'], ['80 A', '60 s']]"
    const received = current === undefined ? 'neither' : 'both'
    issues.push({ path: 'load.current and load.profile', expected, received })
  }
  const full = module.maximumVoltage.times(series)
  if (isAbove(full, MOST_VOLTAGE)) {
    const expected = `a pack of at most ${MOST_VOLTAGE}, so at most ${Math.floor(MOST_VOLTAGE.ratioTo(module.maximumVoltage))} modules in series`
    issues.push({ path: 'pack.series', expected, received: `${series}, which make ${full}` })
  }
  const { overloadLimit, insulationLimit, faultLimit, spacing, laid, protectiveConductor: own } = cable
  if (overloadLimit !== undefined && (overloadLimit.si <= insulationLimit.si || overloadLimit.si > faultLimit.si)) {
    const expected = `a temperature above the continuous limit, ${insulationLimit}, and at most that of a fault, ${faultLimit}`
    issues.push({ path: 'cable.overloadLimit', expected, received: String(overloadLimit) })
  }
  if (spacing !== undefined && laid === 'touching') {
    const expected = "nothing, as cables that touch are as far apart as they are thick, or laid: 'apart'"
    issues.push({ path: 'cable.spacing', expected, received: String(spacing) })
  }
  if (own !== undefined) {
    const [initial, final] = [own.initial ?? insulationLimit, own.faultLimit ?? faultLimit]
    const { meltingPoint } = conductorMaterials[own.conductor]
    if (initial.si >= final.si || final.si >= meltingPoint.si) {
      const expected = `a temperature above that before a fault, ${initial}, and below ${meltingPoint}, at which it melts`
      issues.push({ path: 'cable.protectiveConductor.faultLimit', expected, received: String(final) })
    }
  }
  if (issues.length > 0) throw new InputError('protectRun', issues)
}

/** What a protective conductor withstands, and how much it resists as warm as it may be before a fault. */
function protectiveOf({ protectiveConductor: own, insulationLimit, faultLimit, length }: Asked['cable']) {
  if (own === undefined) return undefined
  return section('The protective conductor', () => {
    const { resistivity, coefficient, volumetricHeat, beta } = conductorMaterials[own.conductor]
    const [initial, final] = [own.initial ?? insulationLimit, own.faultLimit ?? faultLimit]
    const constant = adiabaticConstant({ volumetricHeat, beta, resistivity, initial, final })
    const warm = resistivityAt({ resistivity, coefficient, temperature: initial })
    const each = resistancePerLength({ resistivity: warm, area: own.area })
    return {
      withstand: adiabaticWithstand({ constant, area: own.area }).as('kA²·s'),
      resistance: quantity('resistance', each.si * length.si, 'Ω').as('mΩ'),
    }
  })
}

/** All sections of a series, or the one that is only examined. */
function sectionsFor(only: string | undefined, series: RunAsked['series']) {
  const all = sectionsOf(series)
  const found = all.filter(({ name }) => only === undefined || name === only)
  if (found.length > 0) return found
  const expected = `a section: ${all.map(({ name }) => name).join(', ')}`
  throw new InputError('protectRun', [{ path: 'cable.section', expected, received: `'${only}'` }])
}

/** How far apart the conductors of a run lie that do not touch, where it is not said. Common practice, no source. */
const APART = /*@__PURE__*/ (() => quantity('length', '0.3 m'))()

function taskFor(
  asked: Asked,
  run: Run,
  candidate: Candidate,
  shared: Pick<Judging, 'pack' | 'thinAir' | 'protective'>,
  { ampacity, withstand, loopResistance: resistance, outerDiameter, temperature }: SizedSection,
): Judging {
  const { load, cable: laid, ...others } = asked
  const cable = cableIn(run, candidate)
  const inductance = section('Inductance of the run', () =>
    loopInductance({
      length: laid.length,
      spacing: laid.laid === 'touching' ? outerDiameter : (laid.spacing ?? APART),
      radius: quantity('length', Math.sqrt(candidate.area.si / Math.PI), 'm').as('mm'),
    }),
  )
  const task: Judging = {
    ...others,
    ambient: asked.ambient ?? laid.ambient,
    current: run.steady,
    profile: load.profile,
    ...shared,
    cable: { ampacity, withstand, resistance, inductance },
    follow: followedCable(asked, cable, temperature, run.steady),
  }
  refuseTask('protectRun', '', task)
  return task
}

/** How warm a cable gets in some time at a current, and in a pull on top of its load. */
function followedCable(
  { cable: { insulationLimit, overloadLimit, terminalLimit, bundled } }: Asked,
  cable: Cable,
  loaded: Quantity<'temperature'>,
  load: Quantity<'current'>,
): FollowedCable {
  const alone = (current: Quantity<'current'>) => current.si / bundled.si
  return {
    loaded,
    limit: insulationLimit,
    terminalLimit,
    ...(overloadLimit === undefined ? {} : { overloadLimit }),
    after: (current, time, from) =>
      unlessItBurns(() => kelvins(followed('protectRun', cable, [[alone(current), time]], 1, from.si).peak)),
    pulled: (current, time) =>
      unlessItBurns(() => {
        const pull = [alone(current), time] as const
        const { peak, ends, above } = pulled('protectRun', cable, pull, alone(load), loaded.si, insulationLimit.si)
        return { peak: kelvins(peak), ends: kelvins(ends), above: quantity('time', above, 's') }
      }),
  }
}

/** A section with its fuse. */
interface Tried {
  readonly task: Judging
  readonly cable: SizedSection
  readonly cableChecks: readonly Check[]
  readonly fuse: ReturnType<typeof fuseFor>
  /** Whether some rating agrees with both load and cable; absent where the cable does not serve by itself. */
  readonly window?: Verdict
  /** Whether one of the fuses that are offered serves. */
  readonly offered?: Verdict
}

/** Which fuses are refused tells something of a section only where the section itself would serve. */
function triedOn(task: Judging, alone: Judged<SizedSection>, fuse: Tried['fuse']): Judged<Tried> {
  const { ratingAtLeast, ratingAtMost } = fuse
  const made = { task, cable: alone.made, cableChecks: alone.checks, fuse }
  // A fuse that serves is held to its own class, and there is no window.
  const window = fuse.checks.filter(({ id }) => id === 'fuse.window')
  const verdict = window[0]?.verdict ?? 'pass'
  if (!serves(alone) || verdict === 'fail') return { name: alone.name, checks: [...alone.checks, ...window], made }
  const offered = fuse.checks.filter(({ id }) => id === 'fuse.candidates')
  // What the air leaves of a rating is known on no section: where there is room for what it may, it does not decide.
  const isRoomy = verdict === 'unknown' && !isAbove(ratingAtLeast, ratingAtMost)
  return {
    name: alone.name,
    checks: [...alone.checks, ...(isRoomy ? [] : window), ...offered],
    own: isRoomy ? window : [],
    made: {
      ...made,
      window: isRoomy ? 'pass' : verdict,
      ...(offered[0] === undefined ? {} : { offered: offered[0].verdict }),
    },
  }
}

/**
 * The section that comes nearest to serving: where nothing but data is missing of a fuse; else where the cable is there, and
 * the specification tells which fuse to look for; else where it is not known whether there is one.
 */
function nearestOf(rejected: readonly Judged<Tried | undefined>[]): Judged<Tried | undefined> | undefined {
  return (
    rejected.find(({ made }) => made?.offered === 'unknown') ??
    rejected.find(({ made }) => made?.window === 'pass' || made?.window === 'near') ??
    rejected.find(({ made }) => made?.window !== undefined)
  )
}

function protectedBy(
  asked: Asked,
  run: Parameters<typeof cableAssumptions>[0],
  { task, cable, cableChecks, fuse }: Tried,
  rejected: readonly Judged<Tried | undefined>[],
  source: ReturnType<typeof sourceOf>,
): Unfinished<ProtectedRun> {
  const { checks, assumptions, cautions, ...selection } = fuse
  const strings = stringFindings(asked.strings, asked.pack.parallel, task)
  return {
    name: asked.name,
    cable,
    rejected: rejected.map(rejectedAs),
    fuse: selection,
    voltageClass: voltageClass(selection.voltageAtLeast),
    checks: [...cableChecks, ...checks, ...strings.checks],
    assumptions: [
      ...run.assumptions,
      ...cableAssumptions(run, cable),
      ...source.basis,
      ...pullAssumptions(asked, run.greatest),
      ...assumptions,
      ...strings.assumptions,
    ],
    notes: [...unusualOfPack('pack', asked.pack), ...unusualOverload(asked)],
    cautions: [...cautions, lithiumCells, storedCharge],
  }
}

/** An overload limit that lies above its continuous one by more than that of any class of cable. */
function unusualOverload({ cable: { insulationLimit, overloadLimit } }: Asked): Note[] {
  const basis = `${OVERLOAD_RISE} K above insulationLimit, ISO 6722-1, from memory`
  const usual = [insulationLimit, mostInOverload(insulationLimit), basis] as const
  const field = given('temperature', 'What the insulation bears for hours in an overload', { usual })
  return unusualIn(field, overloadLimit, ['cable', 'overloadLimit'])
}

/** What stands in place of what nobody knows of a cable beyond its load. */
function pullAssumptions({ controller, cable: { overloadLimit } }: Asked, load: Quantity<'current'>): Assumption[] {
  return [
    ...(controller === undefined || !isAbove(load, controller.batteryCurrent)
      ? []
      : [
          assumed(
            'load.others',
            `The run feeds more than its controller: the load is ${load}, and the controller draws ${controller.batteryCurrent} at most.`,
          ),
        ]),
    ...(controller === undefined
      ? []
      : [
          assumed(
            'cable.ends',
            `In a full pull the ends of the cable warm after its conductor, with a time constant of ${USUAL_MEMORY / 60} min (common practice, no source).`,
          ),
        ]),
    ...(overloadLimit === undefined
      ? []
      : [
          assumed(
            'cable.overloads',
            'Overloads on which a fuse or contactor opens are rare: each is held to the overload limit by itself, and does not count towards the 6 h in the life of the cable for which that limit holds (ISO 6722-1, from memory).',
          ),
        ]),
  ]
}

/** What the pack puts behind a fault. */
function sourceOf({ pack, nearlyEmpty, coldest, ageing, inductance }: Asked) {
  const { module, series } = pack
  const curve = openCircuitOf('protectRun', 'pack.module', module)
  const maximumVoltage = seriesVoltage({ count: series, voltage: module.maximumVoltage })
  const openCircuit = seriesVoltage({ count: series, voltage: curve.voltageAt(nearlyEmpty) })
  const { resistance } = resistanceOf(pack, undefined)
  const ohmicResistance = module.ohmicResistance?.times(series).over(pack.parallel)
  const cold = module.cold === undefined ? undefined : resistanceOf(pack, coldest ?? module.cold.temperature)
  return {
    pack: {
      maximumVoltage,
      openCircuit,
      resistance,
      ohmicResistance,
      coldResistance: cold?.resistance,
      ageing,
      inductance,
    },
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
