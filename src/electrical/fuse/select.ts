/**
 * A fuse that agrees with the load that it carries, the cable that it protects and the pack that feeds the fault: full and
 * warm, and nearly empty and cold.
 *
 * Rests on NEC 210.20 (load), IEC 60364-4-43 (overload of the cable), IEC 60364-5-54 (let-through) and IEC 60269-1 (ratings).
 */
import { cite, section } from '../../formula/index.js'
import { type Caution, highVoltage, shortCircuit } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  defaultOf,
  type Findings,
  firstThatServes,
  given,
  group,
  isAbove,
  isBelow,
  type Judged,
  list,
  optional,
  pairs,
  procedure,
  type Read,
  rejectedAs,
  says,
  text,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { profileField } from '../cable/course.js'
import { mostLetThrough, type Peak, peaksAbove, shareOfPeak, timeOnCurve } from './curve.js'
import { fuseRating, greatestFuseRating, meltingTime, preferredRatings, prospectiveCurrent } from './fuse.js'

/** What a fault through a fuse comes to. */
export interface Clearing {
  /** Until the fuse has opened by its curve, or has melted by its melting integral; absent where its data do not tell. */
  readonly time?: Quantity<'time'>
  /** Joule integral that it lets through; absent where its data do not tell. */
  readonly letThrough?: Quantity<'jouleIntegral'>
}

/** A fuse, or what to look for in one. */
export interface FuseFigures {
  readonly ratingAtLeast: Quantity<'current'>
  readonly ratingAtMost: Quantity<'current'>
  /** Rated currents of IEC 60269-1 between the two. */
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

/** A fuse as its maker describes it. */
const fuseField = /*@__PURE__*/ (() =>
  group('A fuse', {
    name: optional(text('What it is called')),
    rating: given('current', 'Rated current', { above: 0 }),
    voltage: group('Its rated voltages', {
      dc: optional(given('voltage', 'Rated voltage for direct current', { above: 0 })),
      ac: optional(given('voltage', 'Rated voltage for alternating current', { above: 0 })),
    }),
    breakingCapacity: given('current', 'Greatest direct current that it breaks', { above: 0 }),
    meltingIntegral: optional(given('jouleIntegral', 'Melting (pre-arcing) joule integral', { above: 0 })),
    clearingIntegral: optional(given('jouleIntegral', 'Greatest joule integral until it has cleared', { above: 0 })),
    curve: optional(
      pairs(
        'Its time–current curve, the currents rising',
        given('current', 'Current', { above: 0 }),
        given('time', 'Time until it opens', { above: 0 }),
        { least: 2 },
      ),
    ),
  }))()

/** Fuses to choose from. @internal */
export const candidatesField = /*@__PURE__*/ (() => list('Fuses to choose from', fuseField, { least: 1 }))()

/** What is asked of a fuse beside its load, its pack and its cable. @internal */
export const fuseFields = /*@__PURE__*/ (() => ({
  ambientFactor: given('ratio', 'Share of its rating that the heat around leaves the fuse', {
    above: 0,
    ...defaultOf(fuseRating.inputs.ambientFactor),
  }),
  fusingFactor: given('ratio', 'Current at which the fuse opens within its conventional time, over its rating', {
    above: 1,
    ...defaultOf(greatestFuseRating.inputs.fusingFactor),
  }),
  candidates: optional(candidatesField),
}))()

const selectFields = /*@__PURE__*/ (() => ({
  current: given('current', 'Continuous current of the load', { above: 0 }),
  profile: optional(profileField),
  ...fuseFields,
  pack: group('The pack that feeds a fault', {
    maximumVoltage: given('voltage', 'Voltage of the full pack', { above: 0, usual: ['48 V', '400 V'] }),
    openCircuit: given('voltage', 'Open-circuit voltage of the nearly empty pack', { above: 0 }),
    resistance: given('resistance', 'Resistance of the warm pack', { above: 0 }),
    coldResistance: optional(given('resistance', 'Resistance of the nearly empty pack in the cold', { above: 0 })),
  }),
  cable: group('The cable that the fuse protects', {
    ampacity: given('current', 'Continuous current of the cable', { above: 0 }),
    withstand: given('jouleIntegral', 'Joule integral that the cable withstands', { above: 0 }),
    resistance: given('resistance', 'Resistance of the run, out and back, as warm as it gets', { min: 0 }),
  }),
}))()

type Fuse = Read<typeof fuseField>

/** A load, a pack and a cable as they are read. @internal */
export type FuseTask = Read<typeof selectFields>

/** How much more a nearly empty pack resists in the cold, where nothing better is known. Common practice, no source. */
const COLD = 3

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
 * - `pack`: the pack that feeds a fault
 *   - `maximumVoltage`: voltage of the full pack, in V, above 0 V
 *   - `openCircuit`: open-circuit voltage of the nearly empty pack, in V, above 0 V
 *   - `resistance`: resistance of the warm pack, in mΩ, above 0 mΩ
 *   - `coldResistance`: resistance of the nearly empty pack in the cold, in mΩ, above 0 mΩ, optional
 * - `cable`: the cable that the fuse protects
 *   - `ampacity`: continuous current of the cable, in A, above 0 A
 *   - `withstand`: joule integral that the cable withstands, in A²·s, above 0 A²·s
 *   - `resistance`: resistance of the run, out and back, as warm as it gets, in mΩ, at least 0 mΩ
 *
 * @returns The bounds, the prospective currents, the chosen fuse with its clearing times, and those of a lesser rating with
 * all reasons.
 * A nearly empty, cold pack that may not blow the fuse is a failed check and a caution.
 * @throws InputError for input that cannot be used, by its path.
 * Source: NFPA 70 (NEC), 210.20(A); IEC 60364-4-43, 433.1 (from memory); IEC 60364-5-54, 543.1.2; IEC 60269-1.
 *
 * @example
 * ```ts
 * const { ratingAtLeast, ratingAtMost, preferred, prospective } = selectFuse({
 *   current: '120 A',
 *   pack: { maximumVoltage: '201.6 V', openCircuit: '150 V', resistance: '28 mΩ' },
 *   cable: { ampacity: '190 A', withstand: '9.2 kA²·s', resistance: '2.7 mΩ' },
 * })
 * String(ratingAtLeast) // '150 A'
 * String(ratingAtMost) // '172.2 A'
 * preferred.map(String) // ['160 A']
 * String(prospective.highest) // '7200 A'
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
    return fuseFor(task)
  },
})

/** Refuses what contradicts itself in a task. @internal */
export function refuseTask(where: string, path: string, { pack, candidates = [] }: FuseTask): void {
  const issues: InputIssue[] = []
  if (pack.openCircuit.si > pack.maximumVoltage.si) {
    const expected = `at most the voltage of the full pack, ${pack.maximumVoltage}`
    issues.push({ path: `${path}pack.openCircuit`, expected, received: String(pack.openCircuit) })
  }
  if (pack.coldResistance !== undefined && pack.coldResistance.si < pack.resistance.si) {
    const expected = `at least the resistance of the warm pack, ${pack.resistance}`
    issues.push({ path: `${path}pack.coldResistance`, expected, received: String(pack.coldResistance) })
  }
  candidates.forEach(({ curve = [], meltingIntegral, clearingIntegral }, c) => {
    if (meltingIntegral !== undefined && clearingIntegral !== undefined && isBelow(clearingIntegral, meltingIntegral)) {
      issues.push({
        path: `${path}candidates[${c}].clearingIntegral`,
        expected: `at least the melting integral, ${meltingIntegral}`,
        received: String(clearingIntegral),
        hint: 'a fuse clears after it has melted',
      })
    }
    curve.forEach(([current, time], i) => {
      const before = curve[i - 1]
      if (before === undefined) return
      const at = `${path}candidates[${c}].curve[${i}]`
      if (current.si <= before[0].si) {
        issues.push({ path: `${at}[0]`, expected: `a current above ${before[0]}`, received: String(current) })
      }
      if (time.si > before[1].si) {
        issues.push({ path: `${at}[1]`, expected: `a time of at most ${before[1]}`, received: String(time) })
      }
    })
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/** The bounds of a fuse. */
type Bounds = Omit<FuseFigures, 'chosen' | 'clearing' | 'rejected'>

/** The fuse for a task. @internal */
export function fuseFor(task: FuseTask): Omit<FuseSelection, 'notes'> {
  const bounds = section('What the fuse must be', () => boundsOf(task))
  const candidates = [...(task.candidates ?? [])].sort((one, other) => one.rating.si - other.rating.si)
  const { chosen, rejected } = firstThatServes(candidates, (fuse) => judge(fuse, bounds, task))
  const rating = chosen?.made.rating ?? bounds.ratingAtLeast
  return {
    ...bounds,
    ...(chosen === undefined ? {} : { chosen: { name: chosen.name, rating }, clearing: chosen.made.clearing }),
    rejected: rejected.map(rejectedAs).map(({ name, reasons }) => ({ candidate: name, reasons })),
    checks: [...taskChecks(task, bounds, rating), ...(chosen?.checks ?? []), ...(chosen?.own ?? [])],
    assumptions: assumptionsOf(task, chosen?.made),
    cautions: [shortCircuit, highVoltage, ...unblown(task, bounds, rating)],
  }
}

function boundsOf({ current, profile, ambientFactor, fusingFactor, pack, cable }: FuseTask): Bounds {
  const ratingAtLeast = fuseRating({ current, ambientFactor })
  const ratingAtMost = greatestFuseRating({ ampacity: cable.ampacity, fusingFactor })
  const highest = section('Full and warm, just behind the fuse', () =>
    prospectiveCurrent({ voltage: pack.maximumVoltage, sourceResistance: pack.resistance, loopResistance: '0 Ω' }),
  )
  const lowest = section('Nearly empty and cold, at the far end of the cable', () =>
    prospectiveCurrent({
      voltage: pack.openCircuit,
      sourceResistance: pack.coldResistance ?? pack.resistance.times(COLD),
      loopResistance: cable.resistance,
    }),
  )
  const preferred = preferredRatings.filter((each) => !isBelow(each, ratingAtLeast) && !isAbove(each, ratingAtMost))
  const peak = hardestPeak(profile, ratingAtLeast)
  const window = isAbove(ratingAtLeast, ratingAtMost)
    ? `no rating serves: the load needs at least ${ratingAtLeast}, and the cable bears at most ${ratingAtMost}`
    : `rated ${ratingAtLeast} to ${ratingAtMost}` +
      (preferred.length === 0 ? ', between which IEC 60269-1 has no rating' : ` (${preferred.map(String).join(', ')})`)
  return {
    ratingAtLeast,
    ratingAtMost,
    preferred,
    voltageAtLeast: pack.maximumVoltage,
    breakingCapacityAtLeast: highest,
    letThroughAtMost: cable.withstand,
    prospective: { highest, lowest },
    specification:
      `A fuse for direct current of at least ${pack.maximumVoltage}; ${window}; breaks ${highest}; lets through at most ` +
      `${cable.withstand}; opens at ${lowest}, the least that the nearly empty, cold pack feeds` +
      `${peak === undefined ? '' : `; bears ${peakInWords(peak)} of the load, again and again`}.`,
  }
}

/** Until when the melting integral that a maker states holds. */
const ADIABATIC = 0.01

/** What a fuse does at a current; `never` where its curve does not reach so low. */
function clearingAt(fuse: Fuse, current: Quantity<'current'>): Clearing | 'never' {
  const { curve, meltingIntegral, clearingIntegral } = fuse
  if (curve !== undefined) {
    const time = timeOnCurve(curve, current.si)
    if (time === undefined) return 'never'
    const onCurve = current.si ** 2 * time
    const letThrough = Math.max(onCurve, clearingIntegral?.si ?? 0)
    return { time: seconds(time), letThrough: quantity('jouleIntegral', letThrough, 'A²·s').as('kA²·s') }
  }
  if (meltingIntegral !== undefined && meltingIntegral.si / current.si ** 2 <= ADIABATIC) {
    const time = meltingTime({ meltingIntegral, current })
    return clearingIntegral === undefined ? { time } : { time, letThrough: clearingIntegral.as('kA²·s') }
  }
  // A clearing integral alone is stated for currents high enough to melt the fuse within some milliseconds.
  return meltingIntegral === undefined && clearingIntegral !== undefined
    ? { letThrough: clearingIntegral.as('kA²·s') }
    : {}
}

function seconds(value: number): Quantity<'time'> {
  return value < 0.1 ? quantity('time', value, 's').as('ms') : quantity('time', value, 's')
}

/** The share of its melting integral that a fuse bears 100 000 times. Guides of fuse makers; the figures were read. */
const BORNE = /*@__PURE__*/ (() => quantity('ratio', '22 %'))()

/** A candidate with what it does in the greatest and in the least fault. */
interface Candidate {
  readonly rating: Quantity<'current'>
  readonly hasCurve: boolean
  readonly clearing: Required<FuseSelection>['clearing']
}

function judge(fuse: Fuse, bounds: Bounds, task: FuseTask): Judged<Candidate> {
  const { highest, lowest } = bounds.prospective
  const [atHighest, atLowest] = [clearingAt(fuse, highest), clearingAt(fuse, lowest)]
  const pulses = pulseTrials(fuse, task)
  return {
    name: fuse.name ?? `fuse of ${fuse.rating}`,
    checks: [
      ...ratingTrials(fuse, bounds),
      ...pulses.filter(({ verdict }) => verdict !== 'unknown'),
      greatestFaultTrial(atHighest, bounds),
      ...leastFaultTrials(fuse, atLowest, bounds, task),
    ],
    own: pulses.filter(({ verdict }) => verdict === 'unknown'),
    made: {
      rating: fuse.rating,
      hasCurve: fuse.curve !== undefined,
      clearing: { highest: atHighest === 'never' ? {} : atHighest, lowest: atLowest === 'never' ? {} : atLowest },
    },
  }
}

/** By what is written on a fuse: its voltage, the load, the cable and the greatest fault. */
function ratingTrials(
  { voltage: { dc, ac }, rating, breakingCapacity }: Fuse,
  { ratingAtLeast, ratingAtMost, voltageAtLeast, prospective }: Bounds,
): Check[] {
  const noDc = `has no voltage rating for direct current${ac === undefined ? '' : `, and ${ac} AC says nothing of it`}`
  return [
    trial(
      'fuse.voltage',
      'DC voltage of the fuse',
      dc === undefined ? { fail: noDc } : says`is rated ${dc} DC, at least the ${voltageAtLeast} of the full pack`,
      'voltage of the full pack',
      'candidates',
    ),
    trial(
      'fuse.load',
      'Rating for the load',
      says`is rated ${rating}, at least the ${ratingAtLeast} that the load needs`,
      'NFPA 70 (NEC), 210.20(A)',
      'candidates',
    ),
    trial(
      'fuse.overload',
      'Rating for the cable',
      says`is rated ${rating}, at most the ${ratingAtMost} at which it protects the cable`,
      'IEC 60364-4-43, 433.1 (from memory)',
      'candidates',
    ),
    trial(
      'fuse.breakingCapacity',
      'Breaking capacity',
      says`breaks ${breakingCapacity}, at least the ${prospective.highest} that the full pack feeds`,
      'fault at the full, warm pack',
      'candidates',
    ),
  ]
}

/** What the peaks of the load do to a fuse, where there are any. */
function pulseTrials({ rating, curve }: Fuse, { profile = [] }: FuseTask): Check[] {
  const told = (says: Parameters<typeof trial>[2]) => [
    trial('fuse.pulses', 'Pulses of the load', says, 'guides of fuse makers', 'profile'),
  ]
  if (curve === undefined) {
    const peak = hardestPeak(profile, rating)
    if (peak === undefined) return []
    return told({
      unknown: `whether it bears ${peakInWords(peak)} of the load again and again needs its curve, of which a peak may use up ${BORNE}`,
    })
  }
  const shares = peaksAbove(profile, rating).map((peak) => ({ peak, share: shareOfPeak(curve, peak) }))
  const worst = shares.sort((one, other) => other.share.si - one.share.si)[0]
  if (worst === undefined) return []
  const { peak, share } = worst
  return told(
    says`uses up ${share} of the time until it opens in ${peakInWords(peak)} of the load, at most the ${BORNE} that it bears again and again`,
  )
}

function greatestFaultTrial(clearing: Clearing | 'never', { prospective, letThroughAtMost }: Bounds): Check {
  const told = (says: Parameters<typeof trial>[2]) =>
    trial('fuse.letThrough', 'Let-through of the fuse', says, 'IEC 60364-5-54, 543.1.2', 'candidates')
  if (clearing === 'never') {
    return told({ fail: `does not open at ${prospective.highest}, the greatest fault, by its curve` })
  }
  if (clearing.letThrough === undefined) {
    return told({ unknown: 'what it lets through is not known: give its clearing integral or its curve' })
  }
  return told(says`lets through ${clearing.letThrough}, at most the ${letThroughAtMost} that the cable withstands`)
}

/** What a fuse does in the least fault, and between it and the greatest. */
function leastFaultTrials(
  { rating, curve }: Fuse,
  clearing: Clearing | 'never',
  { prospective: { lowest, highest }, letThroughAtMost }: Bounds,
  task: FuseTask,
): Check[] {
  const opens = (told: Parameters<typeof trial>[2]) =>
    trial('fuse.opens', 'Opening in the least fault', told, 'time–current curve of the fuse', 'candidates')
  if (clearing === 'never' || (clearing.time === undefined && isTooLow(rating, task, lowest))) {
    return [opens({ fail: `may not open at ${lowest}, all that the nearly empty, cold pack feeds` })]
  }
  const { time, letThrough } = clearing
  const between = mostLetThrough(curve ?? [], lowest, highest)
  const basis = 'IEC 60364-5-54, 543.1.2'
  return [
    opens({ pass: `opens at ${lowest} in ${time ?? 'a time that its data do not tell'}` }),
    ...(letThrough === undefined
      ? []
      : [
          trial(
            'fuse.leastLetThrough',
            'Let-through in the least fault',
            says`lets through ${letThrough}${time === undefined ? '' : ` in ${time}`} at ${lowest}, at most the ${letThroughAtMost} that the cable withstands`,
            basis,
            'candidates',
          ),
        ]),
    ...(between === undefined
      ? []
      : [
          trial(
            'fuse.letThroughBetween',
            'Let-through between the faults',
            says`lets through ${between.letThrough} at ${between.current}, at most the ${letThroughAtMost} that the cable withstands`,
            basis,
            'candidates',
          ),
        ]),
  ]
}

function peakInWords({ current, time, parts }: Peak): string {
  return parts.length === 1 ? `the ${current} for ${time}` : `the ${time} of up to ${current}`
}

/** The hardest of the peaks of a profile above a rating, by its joule integral. */
function hardestPeak(profile: FuseTask['profile'], rating: Quantity<'current'>): Peak | undefined {
  const joules = ({ parts }: Peak) => parts.reduce((sum, [current, time]) => sum + current.si ** 2 * time.si, 0)
  return peaksAbove(profile ?? [], rating).sort((one, other) => joules(other) - joules(one))[0]
}

function isTooLow(rating: Quantity<'current'>, { fusingFactor }: FuseTask, lowest: Quantity<'current'>): boolean {
  return isBelow(lowest, rating.times(fusingFactor.si))
}

/** What is checked whichever fuse is taken. */
function taskChecks(
  { fusingFactor }: FuseTask,
  { ratingAtLeast, ratingAtMost, prospective }: Bounds,
  rating: Quantity<'current'>,
): Check[] {
  return [
    check(
      'fuse.window',
      'Least rating for the load',
      ratingAtLeast,
      'at most',
      ratingAtMost,
      'IEC 60364-4-43, 433.1 (from memory)',
      'current',
      'cable.ampacity',
    ),
    check(
      'fuse.leastFault',
      'Least fault current',
      prospective.lowest,
      'at least',
      rating.times(fusingFactor.si),
      'IEC 60269-1, conventional fusing current (from memory)',
      'pack',
      'cable.resistance',
    ),
  ]
}

function unblown(task: FuseTask, { prospective }: Bounds, rating: Quantity<'current'>): Caution[] {
  if (!isTooLow(rating, task, prospective.lowest)) return []
  return [
    {
      id: 'unblownFuse',
      hazard: 'a fuse that does not blow',
      text:
        `Nearly empty and cold, the pack feeds a short circuit with ${prospective.lowest} only, which may never blow a fuse of ` +
        `${rating}. Split the pack with a fuse of its own for each part, or have its monitor open the contactors on that current.`,
    },
  ]
}

function assumptionsOf({ pack }: FuseTask, chosen?: Candidate): Assumption[] {
  return [
    assumed('fuse.continuous', 'A continuous load uses 80 % of the rating at most (NFPA 70 (NEC), 210.20(A)).'),
    assumed(
      'fuse.range',
      'The fuse breaks every current at which it opens: a partial-range (a) fuse does so only from the least current that its maker states, and can burst below.',
    ),
    assumed(
      'fuse.packResistance',
      'In a fault the pack resists as much as is given for it. Measured with a pulse of some seconds that is more, up to twice as much, than in the first milliseconds: let the breaking capacity lie well above the greatest fault (common practice, no source).',
    ),
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
    assumed(
      'fuse.timeConstant',
      "The time constant of the fault loop lies within that of the fuse's DC rating: ask its maker.",
    ),
    ...(chosen === undefined ? [] : timesAssumed(chosen)),
  ]
}

/** What the times of a fuse stand for. */
function timesAssumed({ hasCurve, clearing }: Candidate): Assumption[] {
  return [
    assumed(
      'fuse.arcing',
      hasCurve
        ? 'The curve tells the time until the fuse has opened, arcing included: where its maker draws the time until it melts, arcing comes on top.'
        : 'Times are those in which the fuse melts with the current there at once; arcing comes on top.',
    ),
    ...(clearing.lowest.time === undefined
      ? [
          assumed(
            'fuse.leastTime',
            'How long the fuse takes in the least fault is not known: read its time–current curve.',
          ),
        ]
      : []),
  ]
}
