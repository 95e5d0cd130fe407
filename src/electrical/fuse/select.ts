/**
 * A fuse that agrees with the load that it carries, the cable that it protects and the pack that feeds the fault: full and
 * warm, and nearly empty and cold.
 *
 * Rests on NEC 210.20 (load), IEC 60364-4-43 (overload of the cable), IEC 60364-5-54 (let-through) and IEC 60269-1 (ratings).
 */
import * as z from 'zod/mini'
import { type Caution, type Check, cautions, check, type Findings, isAbove, isBelow } from '../../findings/index.js'
import { section } from '../../formula/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { about, given, procedure, type Read } from '../../structure/index.js'
import { profileGiven } from '../cable/heat.js'
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

/** A fuse as it is read. */
const fuseGiven = /*@__PURE__*/ about(
  'a fuse',
  z.strictObject({
    name: about('what it is called', z.optional(z.string().check(z.minLength(1)))),
    rating: given('current', 'Rated current', { above: 0 }),
    voltage: about(
      'its rated voltages, for direct and for alternating current',
      z.strictObject({
        dc: z.optional(given('voltage', 'Rated voltage for direct current', { above: 0 })),
        ac: z.optional(given('voltage', 'Rated voltage for alternating current', { above: 0 })),
      }),
    ),
    breakingCapacity: given('current', 'Direct current that it can break', { above: 0 }),
    meltingIntegral: z.optional(given('jouleIntegral', 'Melting (pre-arcing) joule integral', { above: 0 })),
    clearingIntegral: z.optional(given('jouleIntegral', 'Greatest joule integral until it has cleared', { above: 0 })),
    curve: about(
      'points [current, time until it opens], the currents rising',
      z.optional(
        z.readonly(
          z
            .array(
              z.readonly(
                z.tuple([
                  given('current', 'Current', { above: 0 }),
                  given('time', 'Time until it opens', { above: 0 }),
                ]),
              ),
            )
            .check(z.minLength(2)),
        ),
      ),
    ),
  }),
)

/** Fuses to choose from, as they are read. */
export const candidatesGiven = /*@__PURE__*/ about(
  'fuses to choose from',
  z.optional(z.readonly(z.array(fuseGiven).check(z.minLength(1)))),
)

type Fuse = Read<typeof fuseGiven>

const selectFuseGiven = /*@__PURE__*/ about(
  'a load, a pack and a cable',
  z.strictObject({
    current: given('current', 'Continuous current of the load', { above: 0 }),
    profile: z.optional(profileGiven),
    ambientFactor: z.optional(given('ratio', 'Share of its rating that the heat around leaves the fuse', { above: 0 })),
    fusingFactor: z.optional(
      given('ratio', 'Current at which it opens within its conventional time, over its rating', { above: 1 }),
    ),
    pack: about(
      'the pack that feeds a fault',
      z.strictObject({
        maximumVoltage: given('voltage', 'Voltage of the full pack', { above: 0 }),
        openCircuit: given('voltage', 'Open-circuit voltage of the nearly empty pack', { above: 0 }),
        resistance: given('resistance', 'Resistance of the warm pack', { above: 0 }),
        coldResistance: z.optional(
          given('resistance', 'Resistance of the nearly empty pack in the cold', { above: 0 }),
        ),
      }),
    ),
    cable: about(
      'the cable that the fuse protects',
      z.strictObject({
        ampacity: given('current', 'Current that the cable carries all day', { above: 0 }),
        withstand: given('jouleIntegral', 'Joule integral that the cable withstands', { above: 0 }),
        resistance: given('resistance', 'Resistance of the run, out and back, as warm as it gets', { min: 0 }),
      }),
    ),
    candidates: candidatesGiven,
  }),
)

/** A load, a pack and a cable as they are read. */
export type FuseTask = Read<typeof selectFuseGiven>

/** How much more a nearly empty pack resists in the cold, where nothing better is known. Common practice, no source. */
const COLD = 3

/**
 * Says what a fuse must be, so that it carries the load, protects the cable and breaks every fault that the pack can feed,
 * and chooses from candidates.
 *
 * - `current` (A): of the load, all day, or the root mean square of its `profile`, a list of [current (A), time (s)] that is run
 *   again and again, whose peaks the fuse must bear
 * - `ambientFactor`: share of its rating that heat leaves the fuse, 1 unless given
 * - `fusingFactor`: the fuse opens at so many times its rating within its conventional time, 1.6 unless given (gG)
 * - `pack`: `maximumVoltage` (V) when full, `openCircuit` (V) when nearly empty, `resistance` (mΩ) warm, and
 *   `coldResistance` (mΩ) nearly empty in the cold, three times the warm one unless given
 * - `cable`: `ampacity` (A), `withstand` (A²·s), `resistance` (mΩ) out and back, warm, as {@link sizeCable} gives them
 * - `candidates`: each `name`, `rating` (A), `voltage` with `dc` and `ac` (V), `breakingCapacity` (A), and of
 *   `meltingIntegral`, `clearingIntegral` (A²·s) and `curve` [current, time until it opens] what its maker states
 *
 * Without candidates it gives the specification to buy against. A fuse without a voltage rating for direct current is
 * refused, whatever its rating for alternating current: a DC arc has no zero at which it goes out.
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
export const selectFuse = /*@__PURE__*/ procedure('selectFuse', selectFuseGiven, (task): FuseSelection => {
  refuseTask('selectFuse', '', task)
  return fuseFor(task)
})

/** Refuses what contradicts itself in a task. */
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

/** The fuse for a task. */
export function fuseFor(task: FuseTask): FuseSelection {
  const bounds = section('What the fuse must be', () => boundsOf(task))
  const { candidates = [] } = task
  const named = candidates
    .map((fuse) => ({ fuse, name: fuse.name ?? `fuse of ${fuse.rating}` }))
    .sort((one, other) => one.fuse.rating.si - other.fuse.rating.si)
  const rejected: { candidate: string; reasons: string[] }[] = []
  let chosen: { readonly name: string; readonly fuse: Fuse; readonly clearing: FuseSelection['clearing'] } | undefined
  for (const { name, fuse } of named) {
    if (chosen !== undefined) break
    const { reasons, clearing } = section(
      (judged: FuseJudged) => fuseHeading(name, fuse, bounds, judged),
      () => judge(fuse, bounds, task),
    )
    if (reasons.length === 0) chosen = { name, fuse, clearing }
    else rejected.push({ candidate: name, reasons })
  }
  return {
    ...bounds,
    ...(chosen === undefined
      ? {}
      : {
          chosen: { name: chosen.name, rating: chosen.fuse.rating },
          clearing: chosen.clearing as Required<FuseSelection>['clearing'],
        }),
    rejected,
    checks: checksOf(task, bounds, chosen?.fuse, chosen?.clearing),
    assumptions: assumptionsOf(task, chosen?.fuse, chosen?.clearing),
    cautions: [cautions.shortCircuit, cautions.highVoltage, ...unblown(task, bounds, chosen?.fuse)],
  }
}

function boundsOf({ current, profile, ambientFactor, fusingFactor, pack, cable }: FuseTask): Bounds {
  const ratingAtLeast = fuseRating({ current, ...(ambientFactor === undefined ? {} : { ambientFactor }) })
  const ratingAtMost = greatestFuseRating({
    ampacity: cable.ampacity,
    ...(fusingFactor === undefined ? {} : { fusingFactor }),
  })
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

/** Why a fuse does not serve, and what it does in the greatest and in the least fault. */
interface FuseJudged {
  readonly reasons: string[]
  readonly clearing: FuseSelection['clearing']
}

/** The heading of a fuse in a working: each test with its figure and its limit, or why it is refused. */
function fuseHeading(name: string, fuse: Fuse, bounds: Bounds, { reasons, clearing }: FuseJudged): string {
  if (reasons.length > 0 || clearing === undefined) return `${name}: refused, ${reasons.join('; ')}`
  const { ratingAtLeast, ratingAtMost, voltageAtLeast, letThroughAtMost, prospective } = bounds
  const { highest, lowest } = clearing
  return (
    `${name}: serves, ${fuse.rating}, ${ratingAtLeast} to ${ratingAtMost}; ${fuse.voltage.dc} DC, at least ${voltageAtLeast}; ` +
    `breaks ${fuse.breakingCapacity}, at least ${prospective.highest}; lets through ${highest.letThrough}, at most ` +
    `${letThroughAtMost}; opens at ${prospective.lowest} in ${lowest.time ?? 'a time that its data do not tell'}`
  )
}

function judge(fuse: Fuse, bounds: Bounds, task: FuseTask): FuseJudged {
  const { letThroughAtMost, prospective } = bounds
  const reasons = [...ratingReasons(fuse, bounds), ...peakReasons(fuse, task)]
  const highest = clearingAt(fuse, prospective.highest)
  const lowest = clearingAt(fuse, prospective.lowest)
  if (highest === 'never') reasons.push(`does not open at ${prospective.highest}, the greatest fault, by its curve`)
  else if (highest.letThrough === undefined) {
    reasons.push('has neither a clearing integral nor a curve: what it lets through is not known')
  } else if (isAbove(highest.letThrough, letThroughAtMost)) {
    reasons.push(`lets through ${highest.letThrough}, and the cable withstands ${letThroughAtMost}`)
  }
  const between = mostLetThrough(fuse.curve ?? [], prospective.lowest, prospective.highest)
  if (lowest === 'never' || (lowest.time === undefined && isTooLow(fuse.rating, task, prospective.lowest))) {
    reasons.push(`may not open at ${prospective.lowest}, all that the nearly empty, cold pack feeds`)
  } else if (lowest.letThrough !== undefined && isAbove(lowest.letThrough, letThroughAtMost)) {
    const after = lowest.time === undefined ? '' : ` in ${lowest.time}`
    reasons.push(
      `lets through ${lowest.letThrough}${after} at ${prospective.lowest}, and the cable withstands ${letThroughAtMost}`,
    )
  } else if (between !== undefined && isAbove(between.letThrough, letThroughAtMost)) {
    const { letThrough, current } = between
    reasons.push(`lets through ${letThrough} at ${current}, and the cable withstands ${letThroughAtMost}`)
  }
  return { reasons, clearing: highest === 'never' || lowest === 'never' ? undefined : { highest, lowest } }
}

/** Why a fuse does not suit the voltage, the load, the cable or the greatest fault by what is written on it. */
function ratingReasons(fuse: Fuse, { ratingAtLeast, ratingAtMost, voltageAtLeast, prospective }: Bounds): string[] {
  const { dc, ac } = fuse.voltage
  const reasons: string[] = []
  if (dc === undefined) {
    reasons.push(
      `has no voltage rating for direct current${ac === undefined ? '' : `, and ${ac} AC says nothing of it`}`,
    )
  } else if (isBelow(dc, voltageAtLeast)) reasons.push(`is rated ${dc} DC, and the full pack has ${voltageAtLeast}`)
  if (isBelow(fuse.rating, ratingAtLeast)) reasons.push(`is rated below the ${ratingAtLeast} that the load needs`)
  if (isAbove(fuse.rating, ratingAtMost)) {
    reasons.push(`is rated above the ${ratingAtMost} at which it protects the cable`)
  }
  if (isBelow(fuse.breakingCapacity, prospective.highest)) {
    reasons.push(`breaks ${fuse.breakingCapacity}, and the full pack feeds ${prospective.highest}`)
  }
  return reasons
}

/** Why a fuse does not bear the peaks of the load, where its curve tells. */
function peakReasons({ rating, curve }: Fuse, { profile = [] }: FuseTask): string[] {
  if (curve === undefined) return []
  const shares = peaksAbove(profile, rating).map((peak) => ({ peak, share: shareOfPeak(curve, peak) }))
  const worst = shares
    .filter(({ share }) => isAbove(share, BORNE))
    .sort((one, other) => other.share.si - one.share.si)[0]
  if (worst === undefined) return []
  const { peak, share } = worst
  const does = share.si >= 1 ? 'opens in' : `ages in`
  return [
    `${does} ${peakInWords(peak)} of the load, ${share} of the time until it opens, and bears ${BORNE} again and again`,
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
  return isBelow(lowest, rating.times(factorOf(fusingFactor)))
}

function factorOf(fusingFactor: Quantity<'ratio'> | undefined): number {
  return (fusingFactor ?? (greatestFuseRating.inputs.fusingFactor.default as Quantity<'ratio'>)).si
}

function checksOf(task: FuseTask, bounds: Bounds, fuse?: Fuse, clearing?: FuseSelection['clearing']): Check[] {
  const { ratingAtLeast, ratingAtMost, prospective, letThroughAtMost } = bounds
  const rating = fuse?.rating ?? ratingAtLeast
  const opens = rating.times(factorOf(task.fusingFactor))
  const through = clearing?.highest.letThrough
  return [
    check('Least rating for the load', ratingAtLeast, 'at most', ratingAtMost, 'IEC 60364-4-43, 433.1 (from memory)'),
    check(
      'Least fault current',
      prospective.lowest,
      'at least',
      opens,
      'IEC 60269-1, conventional fusing current (from memory)',
    ),
    ...(fuse?.voltage.dc === undefined
      ? []
      : [
          check(
            'DC voltage of the fuse',
            fuse.voltage.dc,
            'at least',
            bounds.voltageAtLeast,
            'voltage of the full pack',
          ),
          check(
            'Breaking capacity',
            fuse.breakingCapacity,
            'at least',
            prospective.highest,
            'fault at the full, warm pack',
          ),
        ]),
    ...(through === undefined
      ? []
      : [check('Let-through of the fuse', through, 'at most', letThroughAtMost, 'IEC 60364-5-54, 543.1.2')]),
  ]
}

function unblown(task: FuseTask, { ratingAtLeast, prospective }: Bounds, fuse?: Fuse): Caution[] {
  const rating = fuse?.rating ?? ratingAtLeast
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

function assumptionsOf(task: FuseTask, fuse?: Fuse, clearing?: FuseSelection['clearing']): string[] {
  const { ambientFactor, fusingFactor, pack, profile } = task
  const peak = fuse === undefined || fuse.curve !== undefined ? undefined : hardestPeak(profile, fuse.rating)
  return [
    'A continuous load uses 80 % of the rating at most (NFPA 70 (NEC), 210.20(A)).',
    ...(ambientFactor === undefined
      ? ['The fuse sits no warmer than its rating allows (ambientFactor 1 by default).']
      : []),
    ...(fusingFactor === undefined
      ? [
          'The fuse opens at 1.6 times its rating within its conventional time, as gG does (fusingFactor by default; from memory).',
        ]
      : []),
    'The fuse breaks every current at which it opens: a partial-range (a) fuse does so only from the least current that its maker states, and can burst below.',
    'In a fault the pack resists as much as is given for it. Measured with a pulse of some seconds that is more, up to twice as much, than in the first milliseconds: let the breaking capacity lie well above the greatest fault (common practice, no source).',
    ...(pack.coldResistance === undefined
      ? [
          `Nearly empty and cold the pack resists ${COLD} times as much (coldResistance by default; common practice, no source).`,
        ]
      : []),
    'The greatest fault lies just behind the fuse, and the least at the far end of the cable; joints, contactors and the fuse add no resistance.',
    "The time constant of the fault loop lies within that of the fuse's DC rating: ask its maker.",
    ...(fuse === undefined
      ? []
      : [
          fuse.curve === undefined
            ? 'Times are those in which the fuse melts with the current there at once; arcing comes on top.'
            : 'The curve tells the time until the fuse has opened, arcing included: where its maker draws the time until it melts, arcing comes on top.',
        ]),
    ...(peak === undefined
      ? []
      : [
          `Whether the fuse bears ${peakInWords(peak)} of the load is not known: give its curve, of which a peak may use up ${BORNE} again and again.`,
        ]),
    ...(fuse !== undefined && clearing?.lowest.time === undefined
      ? ['How long the fuse takes in the least fault is not known: read its time–current curve.']
      : []),
  ]
}
