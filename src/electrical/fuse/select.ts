/**
 * A fuse that agrees with the load that it carries, the cable that it protects and the pack that feeds the fault: full and
 * warm, and nearly empty and cold.
 *
 * Rests on NEC 210.20 (load), IEC 60364-4-43 (overload of the cable), IEC 60364-5-54 (let-through) and IEC 60269-1 (ratings).
 */
import { cite, section } from '../../formula/index.js'
import { USUAL_MEMORY } from '../../formula/memory.js'
import { type Caution, highVoltage, overloadByController, shortCircuit } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  type Findings,
  firstThatServes,
  isAbove,
  isBelow,
  type Judged,
  procedure,
  rejectedAs,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { servingTold } from '../../procedure/trial.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { conventionalOf, type FuseClass, fuseFamilies } from './class.js'
import type { Clearing } from './clearing.js'
import { fuseAltitudeFactor, fuseRating, greatestFuseRating, prospectiveCurrent } from './fuse.js'
import { type Derating, deratingOf, rememberedCurrent } from './load.js'
import { fusingFactorOf, isHeldByController } from './overload.js'
import { hardestStretch } from './pulses.js'
import { COLD, loopTimeConstant, resistanceAtFirst, weakestResistance } from './source.js'
import { type Fuse, type FuseTask, type Judging, refuseTask, selectFields } from './task.js'
import { type Candidate, judge } from './trials.js'
import { fullPullTrials } from './warmth.js'

/** A fuse, or what to look for in one. */
export interface FuseFigures {
  readonly ratingAtLeast: Quantity<'current'>
  readonly ratingAtMost: Quantity<'current'>
  /** Rated currents that can be had between the two. */
  readonly preferred: readonly Quantity<'current'>[]
  /** For direct current. */
  readonly voltageAtLeast: Quantity<'voltage'>
  readonly breakingCapacityAtLeast: Quantity<'current'>
  readonly letThroughAtMost: Quantity<'jouleIntegral'>
  readonly prospective: { readonly highest: Quantity<'current'>; readonly lowest: Quantity<'current'> }
  /** All of it in a sentence, to buy against. */
  readonly specification: string
  /** The candidate of the least rating that serves. */
  readonly chosen?: { readonly name: string; readonly rating: Quantity<'current'> }
  /** What the chosen fuse does in the greatest and in the least fault. */
  readonly clearing?: { readonly highest: Clearing; readonly lowest: Clearing }
  readonly rejected: readonly { readonly candidate: string; readonly reasons: readonly string[] }[]
}

/** A fuse, or what to look for in one, with checks. */
export interface FuseSelection extends FuseFigures, Findings {}

/**
 * Says what a fuse must be, so that it carries the load, protects the cable and breaks every fault that the pack can feed,
 * and chooses from candidates.
 *
 * Without candidates it gives the specification to buy against. A fuse without a voltage rating for direct current is
 * refused, whatever its rating for alternating current: a DC arc has no zero at which it goes out.
 *
 * Answers: what must the fuse be rated for, and which of these serves?
 *
 * - `current`: continuous current of the load, in A, above 0 A
 * - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts, optional
 * - `ambient`: temperature of the air around the fuse, in °C, above -90 °C and below 200 °C, 40 °C by default (a hot
 *   day, common practice, no source)
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
 * - `pack`: the pack that feeds a fault
 *   - `maximumVoltage`: voltage of the full pack, in V, above 0 V and at most 1500 V
 *   - `openCircuit`: open-circuit voltage of the nearly empty pack, in V, above 0 V
 *   - `resistance`: resistance of the warm pack, by a pulse of some seconds, in mΩ, above 0 mΩ
 *   - `ohmicResistance`: resistance of the warm pack within 10 ms, such as at 1 kHz, in mΩ, above 0 mΩ, optional
 *   - `coldResistance`: resistance of the nearly empty pack in the cold, in mΩ, above 0 mΩ, optional
 *   - `ageing`: how many times as much the pack resists at the end of its life, a plain number, at least 1 and at most
 *     10, 2 by default (the common end of life; 1 where it was measured on modules so old; common practice, no source)
 *   - `inductance`: inductance of the pack, in µH, at least 0 µH, 2 µH by default (two metres of conductor around its
 *     modules, common practice, no source)
 * - `cable`: the cable that the fuse protects
 *   - `ampacity`: continuous current of the cable, in A, above 0 A
 *   - `withstand`: joule integral that the cable withstands; 1 kA²·s is (1 kA)²·s, in A²·s, above 0 A²·s
 *   - `resistance`: resistance of the run, out and back, as warm as it gets, in mΩ, at least 0 mΩ
 *   - `inductance`: inductance of the run, out and back, in µH, at least 0 µH, optional
 *
 * @returns The bounds, the prospective currents, the chosen fuse with its clearing times, and those of a lesser rating with
 * all reasons.
 * A nearly empty, cold, aged pack that may not blow the fuse is a failed check and a caution.
 * @throws InputError for input that cannot be used, by its path.
 * Source: NFPA 70 (NEC), 210.20(A); IEC 60364-4-43, 433.1 (from memory); IEC 60364-5-54, 543.1.2; IEC 60269-1.
 *
 * @example
 * ```ts
 * const { ratingAtLeast, ratingAtMost, preferred, prospective } = selectFuse({
 *   current: '120 A',
 *   pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '28 mΩ' },
 *   cable: { ampacity: '190 A', withstand: '9.2 kA²·s', resistance: '2.7 mΩ', inductance: '1.5 µH' },
 * })
 * String(ratingAtLeast) // '150 A'
 * String(ratingAtMost) // '172.2 A'
 * preferred.map(String) // ['160 A']
 * String(prospective.highest) // '14400 A'
 * ```
 */
export const selectFuse = /*@__PURE__*/ procedure({
  name: 'selectFuse',
  title: 'A fuse for a load, a cable and a pack',
  answers: 'What must the fuse be rated for, and which of these serves?',
  input: selectFields,
  source: [
    cite('NFPA 70 (NEC)', '210.20(A)'),
    cite('IEC 60364-4-43', '433.1 (from memory)'),
    cite('IEC 60364-5-54', '543.1.2'),
    cite('IEC 60269-1'),
  ],
  work: (task): Unfinished<FuseSelection> => {
    refuseTask('selectFuse', '', task)
    const judging = { ...task, thinAir: fuseAltitudeFactor({ altitude: task.altitude }) }
    const { checks, ...selection } = fuseFor(judging)
    return { ...selection, checks: [...checks, ...fullPullTrials(judging)] }
  },
})

const BASIS = 'IEC 60364-4-43, 433.1 (from memory)'

/** The bounds of a fuse. */
type Bounds = Omit<FuseFigures, 'chosen' | 'clearing' | 'rejected'>

/** The fuse for a task. @internal */
export function fuseFor(task: Judging): Omit<FuseSelection, 'notes'> {
  const { left, loop, protective, ...bounds } = section('What the fuse must be', () => boundsOf(task))
  const candidates = [...(task.candidates ?? [])].sort((one, other) => one.rating.si - other.rating.si)
  const faults = {
    ...bounds.prospective,
    ...(loop === undefined ? {} : { loop }),
    ...(protective === undefined ? {} : { protective }),
  }
  const { chosen, rejected } = firstThatServes(candidates, (fuse) => judge(fuse, faults, task))
  // Where the air leaves an unknown share of a rating, the least that may do carries the load in cool air.
  const least = left === undefined ? bounds.ratingAtLeast.times(HOTTEST.si) : bounds.ratingAtLeast
  const rating = chosen?.made.fuse.rating ?? least
  return {
    ...bounds,
    ...(chosen === undefined ? {} : { chosen: { name: chosen.name, rating }, clearing: chosen.made.clearing }),
    rejected: rejected.map(rejectedAs).map(({ name, reasons }) => ({ candidate: name, reasons })),
    checks: [
      ...(chosen === undefined ? [windowTrial(task, bounds, left)] : []),
      ...leastFaultTrials(task, bounds, rating, chosen?.made.fuse),
      ...(chosen?.checks ?? []),
      ...(chosen?.own ?? []),
      ...(candidates.length === 0 ? [] : [candidatesTrial(chosen, rejected)]),
    ],
    assumptions: assumptionsOf(task, chosen === undefined ? left : chosen.made.left, chosen?.made),
    cautions: [
      shortCircuit,
      highVoltage,
      ...(chosen?.made.isHeldByController ? [overloadByController] : []),
      ...unblown(task, bounds, rating, chosen?.made.fuse),
    ],
  }
}

/** Whether one of the fuses that are offered serves. */
function candidatesTrial(chosen: Judged<Candidate> | undefined, rejected: readonly Judged<Candidate>[]): Check {
  const told = servingTold(chosen, rejected)
  return trial('fuse.candidates', 'Candidates that serve', told, 'candidates, as given', 'candidates')
}

/** The class that is sought: that of the family. */
function classOf({ family }: FuseTask): FuseClass {
  return fuseFamilies[family].class
}

/** Share of its rating that air of 85 °C leaves: warmer, no class tells what is left, and the check on it says so. */
const HOTTEST = /*@__PURE__*/ (() => quantity('ratio', '65 %'))()

function boundsOf(task: Judging) {
  const { pack, cable, profile, controller, cycles } = task
  const left = deratingOf(task, classOf(task))
  const ratingAtLeast = fuseRating({
    current: rememberedCurrent(task),
    ambientFactor: left?.share ?? HOTTEST.times(task.thinAir.si),
  })
  const ratingAtMost = greatestRatingOn(cable.ampacity, task)
  const highest = section('Full and warm, just behind the fuse, in the first milliseconds', () =>
    prospectiveCurrent({
      voltage: pack.maximumVoltage,
      sourceResistance: resistanceAtFirst(pack),
      loopResistance: '0 Ω',
    }),
  )
  const weak = {
    voltage: pack.openCircuit,
    sourceResistance: weakestResistance(pack),
  }
  const lowest = section('Nearly empty, cold and aged, at the far end of the cable', () =>
    prospectiveCurrent({ ...weak, loopResistance: cable.resistance }),
  )
  // Out through one conductor of the cable, back through the protective one.
  const back = task.protective?.resistance.plus(cable.resistance.over(2))
  const protective =
    back === undefined
      ? undefined
      : section('The same through the protective conductor', () =>
          prospectiveCurrent({ ...weak, loopResistance: back }),
        )
  const isBetween = (each: Quantity<'current'>) => !isBelow(each, ratingAtLeast) && !isAbove(each, ratingAtMost)
  const preferred = (task.ratings ?? fuseFamilies[task.family].ratings).filter(isBetween)
  const window = isAbove(ratingAtLeast, ratingAtMost)
    ? `no rating serves: the load needs at least ${ratingAtLeast}, and the cable bears at most ${ratingAtMost}`
    : `rated ${ratingAtLeast} to ${ratingAtMost}${ratingsInWords(task, preferred, isBetween)}`
  const inductance = task.candidates === undefined ? undefined : cable.inductance?.plus(pack.inductance)
  const peaks = [
    ...(profile === undefined
      ? []
      : hardestInWords(
          profile.map(([current, time]) => [current.si, time.si]),
          ratingAtLeast,
        )),
    ...(controller === undefined || isBelow(controller.batteryCurrent, ratingAtLeast)
      ? []
      : [`${controller.batteryCurrent} for ${controller.time}`]),
  ]
  return {
    left,
    protective,
    /** Only a fuse that is there can be held to it. */
    loop: inductance === undefined ? undefined : loopTimeConstant(inductance, pack.maximumVoltage, highest),
    ratingAtLeast,
    ratingAtMost,
    preferred,
    voltageAtLeast: pack.maximumVoltage,
    breakingCapacityAtLeast: highest,
    letThroughAtMost: cable.withstand,
    prospective: { highest, lowest },
    specification:
      `A fuse for direct current of at least ${pack.maximumVoltage}; ${window}${left === undefined ? ifItKeeps(task) : ''}; breaks ${highest}; lets through at most ` +
      `${cable.withstand}; opens at ${lowest}, the least that the nearly empty, cold, aged pack feeds` +
      `${peaks.length === 0 ? '' : `; bears ${peaks.join(', and ')}, ${cycles} times`}.`,
  }
}

/** The condition under which ratings are told where the air is too warm to know what it leaves of them. */
function ifItKeeps({ ambient }: FuseTask): string {
  return `, if it keeps ${HOTTEST} of its rating in air of ${ambient}`
}

/** The greatest rating of the class that is sought, which opens on less of an overload the smaller it is. */
function greatestRatingOn(ampacity: Quantity<'current'>, task: FuseTask): Quantity<'current'> {
  if (task.fusingFactor !== undefined) return greatestFuseRating({ ampacity, fusingFactor: task.fusingFactor })
  const of = classOf(task)
  const factors = [100, 10, 4].map((rating) => (conventionalOf(of, rating) as { readonly factor: number }).factor)
  const fits = (factor: number) =>
    conventionalOf(of, greatestFuseRating.compute({ ampacity: ampacity.si, fusingFactor: factor }))?.factor === factor
  const fusingFactor = factors.find(fits) ?? (factors.at(-1) as number)
  return greatestFuseRating({ ampacity, fusingFactor })
}

/** Which ratings there are between the bounds; where there is none, which families have one. */
function ratingsInWords(
  { ratings, family }: FuseTask,
  preferred: readonly Quantity<'current'>[],
  isBetween: (rating: Quantity<'current'>) => boolean,
): string {
  if (preferred.length > 0) return ` (${preferred.map(String).join(', ')})`
  const others = Object.entries(fuseFamilies).flatMap(([name, each]) => {
    const found = each.ratings.find(isBetween)
    return name === family || found === undefined ? [] : [`${found} of the family ${name}, ${each.source}`]
  })
  const none = `, between which ${ratings === undefined ? `${fuseFamilies[family].source} has no rating` : 'none of the ratings given lies'}`
  return others.length === 0 ? none : `${none} (but there is ${others.join('; ')})`
}

/** The stretch of a load that asks most of a fuse whose curve falls as most do, with the fourth root of the time. */
function hardestInWords(course: readonly (readonly [number, number])[], rating: Quantity<'current'>): string[] {
  const endurance = { times: () => 1, current: (time: number) => time ** -0.25, bends: [] }
  const { worst } = hardestStretch(course, rating.si, endurance)
  if (worst === undefined) return []
  return [`${quantity('current', worst.current, 'A')} for ${quantity('time', worst.time, 's')} of the load`]
}

/** Whether the least fault opens a fuse at all. */
function leastFaultTrials(
  task: FuseTask,
  { prospective }: Bounds,
  rating: Quantity<'current'>,
  chosen: Fuse | undefined,
): Check[] {
  const factor = factorOf(task, chosen)
  if (factor === undefined) return []
  return [
    trial(
      'fuse.leastFault',
      'Least fault current',
      says`the least fault is ${prospective.lowest}, at least the ${rating.times(factor)} on which the fuse opens`,
      'IEC 60269-1, conventional fusing current (from memory)',
      'pack',
      'cable.resistance',
    ),
  ]
}

/** Whether some rating agrees with load and cable. A chosen fuse is held to its own, by its class. */
function windowTrial(task: FuseTask, bounds: Bounds, left: Derating | undefined): Check {
  return trial(
    'fuse.window',
    'Least rating for the load',
    windowTold(task, bounds, left),
    BASIS,
    'current',
    'cable.ampacity',
  )
}

function windowTold(task: FuseTask, { ratingAtLeast, ratingAtMost }: Bounds, left: Derating | undefined): Told {
  const { ambient, overload } = task
  if (left === undefined) {
    const lacks = `what share of its rating a fuse keeps in air of ${ambient} is not known: give ambientFactor from the curve of its maker`
    const fits = !isAbove(ratingAtLeast, ratingAtMost)
    return {
      unknown: fits
        ? lacks
        : `${lacks}. With ${HOTTEST} the load needs a fuse of ${ratingAtLeast}, and the cable bears one of at most ${ratingAtMost}`,
    }
  }
  if (!isAbove(ratingAtLeast, ratingAtMost)) {
    return says`the load needs a fuse of ${ratingAtLeast}, at most the ${ratingAtMost} that the cable bears`
  }
  const other = overload !== undefined ? `the ${overload.by}` : isHeldByController(task) ? 'the controller' : undefined
  const none = `the load needs a fuse of at least ${ratingAtLeast}, and the cable bears one of at most ${ratingAtMost}`
  return other === undefined ? { fail: none } : { pass: `${none}: overload is left to ${other}` }
}

/** At what current the chosen fuse opens for sure, over its rating, or one of the class that is sought. */
function factorOf(task: FuseTask, chosen: Fuse | undefined): number | undefined {
  if (chosen !== undefined) return fusingFactorOf(chosen, task.fusingFactor)
  return task.fusingFactor?.si ?? conventionalOf(classOf(task), Number.POSITIVE_INFINITY)?.factor
}

function unblown(task: FuseTask, { prospective }: Bounds, rating: Quantity<'current'>, chosen?: Fuse): Caution[] {
  const factor = factorOf(task, chosen)
  if (factor === undefined || !isBelow(prospective.lowest, rating.times(factor))) return []
  return [
    {
      id: 'unblownFuse',
      hazard: 'a fuse that does not blow',
      text:
        `Nearly empty, cold and aged, the pack feeds a short circuit with ${prospective.lowest} only, which may never blow ` +
        `a fuse of ${rating}. Split the pack with a fuse of its own for each part, or have its monitor open the contactors ` +
        'on that current.',
    },
  ]
}

function assumptionsOf(task: FuseTask, left: Derating | undefined, chosen?: Candidate): Assumption[] {
  const { pack, fusingFactor } = task
  return [
    assumed('fuse.continuous', 'A continuous load uses 80 % of the rating at most (NFPA 70 (NEC), 210.20(A)).'),
    ...(chosen === undefined && fusingFactor === undefined
      ? [assumed('fuse.class', `The fuse is of class ${classOf(task)}, as the ${task.family} family is.`)]
      : []),
    ...(left === undefined
      ? []
      : [
          assumed(
            'fuse.derating',
            `In air of ${task.ambient}, up to ${task.altitude} high, the fuse keeps ${quantity('ratio', left.share).as('%')} of its rating (${left.because}).`,
          ),
        ]),
    ...(pack.ohmicResistance === undefined
      ? [
          assumed(
            'fuse.packResistance',
            'In the first milliseconds of a fault the pack resists half as much as in a pulse of some seconds, and feeds twice the current (ohmicResistance by default; common practice, no source).',
          ),
        ]
      : []),
    ...(pack.coldResistance === undefined
      ? [
          assumed(
            'fuse.coldResistance',
            `Nearly empty and cold the pack resists ${COLD} times as much (coldResistance by default; common practice, no source).`,
          ),
        ]
      : []),
    assumed(
      'fuse.faults',
      'The greatest fault lies just behind the fuse, and the least at the far end of the cable; joints, contactors and the fuse add no resistance.',
    ),
    ...(chosen === undefined ? [] : fuseAssumptions(chosen)),
  ]
}

/** What stands in place of what the maker of a fuse did not say. */
function fuseAssumptions({ fuse, clearing }: Candidate): Assumption[] {
  const { curve, class: of, leastBreakingCurrent, meltingIntegral, thermalTimeConstant, timeConstant } = fuse
  return [
    assumed(
      'fuse.arcing',
      curve === undefined
        ? 'Times are those in which the fuse melts with the current there at once; arcing comes on top.'
        : 'The curve tells the time until the fuse has opened, arcing included: where its maker draws the time until it melts, arcing comes on top.',
    ),
    ...(of === undefined
      ? [
          assumed(
            'fuse.class',
            'The class of the fuse is not stated: it opens on an overload as its curve or fusingFactor says, and tires as fast as one for semiconductors.',
          ),
        ]
      : []),
    ...(leastBreakingCurrent === undefined
      ? [
          assumed(
            'fuse.range',
            'A full-range fuse breaks every current on which it opens (leastBreakingCurrent by default).',
          ),
        ]
      : []),
    ...(timeConstant === undefined
      ? [
          assumed(
            'fuse.test',
            'Its breaking capacity holds for a circuit of 1 ms: no DC breaking test is quicker (timeConstant by default; from memory).',
          ),
        ]
      : []),
    ...(thermalTimeConstant === undefined
      ? [
          assumed(
            'fuse.memory',
            `The fuse remembers its load over ${USUAL_MEMORY / 60} min (thermalTimeConstant by default; common practice, no source).`,
          ),
        ]
      : []),
    ...(meltingIntegral === undefined && clearing.highest.time !== undefined
      ? [
          assumed(
            'fuse.short',
            'Beyond the last point of its curve the fuse opens at the joule integral of that point (meltingIntegral and clearingIntegral by default).',
          ),
        ]
      : []),
  ]
}
