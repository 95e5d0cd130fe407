/**
 * The 12 V side of the car: what its loads take, what the converter must give, how long the battery lasts without it, and the wire
 * and fuse of each load.
 *
 * Rests on W. Peukert (1897) for the battery, on the heat balance of cable/balance.ts, on ISO 8820 (fuses of road vehicles),
 * and on the habits of the trade where it says so.
 */
import { cite, commonPractice, definition, formula, input, output, section } from '../formula/index.js'
import { shortCircuit } from '../procedure/cautions.js'
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
  isAbove,
  isBelow,
  type Judged,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  text,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import { airRange, cableOf, steadyAtLimit } from './cable/balance.js'
import { cableVoltageDrop } from './cable/cable.js'
import { resistancePerLengthAt } from './cable/conductor.js'
import { HOT_DAY } from './cable/course.js'
import { type Candidate, sectionsOf } from './cable/size.js'
import { converterInputCurrent } from './charging/charging.js'
import { fuseFamilies } from './fuse/class.js'
import { fuseRating } from './fuse/fuse.js'

/**
 * Time for which a battery gives a current, by the law of Peukert: the more it gives at once, the less it gives in
 * all. Its capacity is that at the current that empties it in a stated time, 20 h for the starter batteries of cars.
 * At lesser currents than that one the law promises more than a battery holds, and the formula counts the stated
 * capacity.
 *
 * `t = s * C / I * min(1, C / (I * H))^(k - 1)`
 *
 * - `capacity` (`C`, Ah): capacity, as stated for the time below, at least 0 Ah
 * - `hours` (`H`, s): time in which that capacity is taken, above 0 s, 20 h unless given
 * - `current` (`I`, A): current that is taken, above 0 A
 * - `exponent` (`k`, a plain number): exponent of Peukert, at least 1 and at most 1.6, 1.2 unless given
 * - `share` (`s`, a plain number): share of it that is taken, above 0 and at most 1, 1 unless given
 * - gives `t`: time until that share is taken, in h
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Peukert, Elektrotechnische Zeitschrift 20 (1897), from memory.
 *
 * @example
 * ```ts
 * batteryRunTime({ capacity: '100 Ah', current: '10 A' })
 * // 8.706 h
 * // Peukert, Elektrotechnische Zeitschrift 20 (1897), 20 h * (100 Ah / (10 A * 20 h))^1.2 (from memory): 8.706 h
 * ```
 */
export const batteryRunTime = /*@__PURE__*/ formula({
  name: 'batteryRunTime',
  title: 'Time for which a battery gives a current',
  inputs: {
    capacity: input('charge', 'C', 'Capacity, as stated for the time below', { min: 0 }),
    hours: input('time', 'H', 'Time in which that capacity is taken', {
      above: 0,
      default: '20 h',
      because: 'as starter batteries are rated',
    }),
    current: input('current', 'I', 'Current that is taken', { above: 0 }),
    exponent: input('ratio', 'k', 'Exponent of Peukert', {
      min: 1,
      max: 1.6,
      default: 1.2,
      because: 'lead, common practice, no source; near 1 for lithium',
    }),
    share: input('ratio', 's', 'Share of it that is taken', { above: 0, max: 1, default: 1 }),
  },
  result: output('time', 't', 'Time until that share is taken', 'h'),
  expression: 's * C / I * min(1, C / (I * H))^(k - 1)',
  source: cite('Peukert, Elektrotechnische Zeitschrift 20 (1897)', 'from memory'),
  compute: ({ capacity, hours, current, exponent, share }) =>
    ((share * capacity) / current) * Math.min(1, capacity / (current * hours)) ** (exponent - 1),
})

/** A wire with its fuse. */
export interface LowVoltageFeed {
  readonly current: Quantity<'current'>
  /** Its rating: the one that is fitted, or the least that the load needs. */
  readonly fuse: Quantity<'current'>
  /** The least section that serves; where none does, the largest, with failed checks. */
  readonly section: string
  readonly ampacity: Quantity<'current'>
  /** Over the wire, and over its way back where that is a wire too. */
  readonly drop: Quantity<'voltage'>
}

/** The 12 V side of a car. */
export interface LowVoltageSupply extends Findings {
  /** Mean of all that is on for long. */
  readonly steady: Quantity<'current'>
  /** With everything on at once. */
  readonly allOn: Quantity<'current'>
  /** Mean power of what is on for long. */
  readonly steadyPower: Quantity<'power'>
  /** Least rating of the converter. */
  readonly leastRating: Quantity<'current'>
  /** What that draws from the pack through the converter; absent without `converter`. */
  readonly inputPower?: Quantity<'power'>
  /** The same as a current; absent without `packVoltage` too. */
  readonly inputCurrent?: Quantity<'current'>
  /** What it draws at its rating, or with everything on where that is less. */
  readonly greatestInputCurrent?: Quantity<'current'>
  /** How long the battery feeds what is on for long, with the converter off; absent without `battery`. */
  readonly runTime?: Quantity<'time'>
  /** The wires by their loads. */
  readonly feeds: { readonly [load: string]: LowVoltageFeed }
  /** The wire between converter and battery; absent where its length is not given. */
  readonly output?: LowVoltageFeed
}

/** What may be lost on the way to a load, in volts: a trade journal for agricultural machines, positive side, 12 V. */
const DROPS = {
  'lamp up to 15 W': 0.1,
  'lamp above 15 W': 0.5,
  headlamp: 0.3,
  'charging line': 0.4,
  'starter': 0.5,
  'control line': 0.5,
} as const

const feedFields = /*@__PURE__*/ (() => ({
  length: given('length', 'Length of the wire from the fuse to the load', {
    min: 0,
    usual: ['0 m', '8 m'],
    finest: '20 mm',
  }),
  section: optional(text('The section, where it lies already and is only to be examined'), {
    absent: 'The section is chosen.',
  }),
  fuse: optional(
    given('current', 'Rating of its fuse, where one is fitted already', { above: 0, usual: ['1 A', '500 A'] }),
    {
      absent: 'The fuse is the least that the load needs.',
    },
  ),
  back: choice('How the current comes back: by a wire it loses voltage out and back', ['wire', 'body']),
  feeds: optional(
    choice('What it feeds, which tells what it may lose', [
      'lamp up to 15 W',
      'lamp above 15 W',
      'headlamp',
      'charging line',
      'starter',
      'control line',
    ]),
  ),
  maximumDrop: optional(given('voltage', 'Greatest drop', { above: 0, usual: ['0.05 V', '1 V'] })),
}))()

const loadField = /*@__PURE__*/ (() =>
  group('A load', {
    power: optional(given('power', 'Power that it takes', { above: 0, usual: ['1 W', '1 kW'] })),
    current: optional(given('current', 'Current that it takes', { above: 0, usual: ['0.1 A', '80 A'] })),
    duty: either(
      'How long it is on: for a whole drive, for moments that the battery bridges, or by turns for a share of the time',
      choice('For a whole drive or for moments', ['steady', 'short']),
      given('ratio', 'Share of any ten minutes', { above: 0, max: 1 }),
    ),
    feed: optional(group('Its wire', feedFields)),
  }))()

/** What describes the converter. @internal */
export const converterFields = /*@__PURE__*/ (() => ({
  current: given('current', 'Its rated current on the 12 V side', { above: 0, usual: ['10 A', '250 A'] }),
  efficiency: given('ratio', 'Its efficiency', {
    above: 0,
    max: 1,
    usual: [0.8, 0.97],
    default: 0.9,
    because: 'common practice, no source',
  }),
  feed: optional(group('Its wire to the battery', feedFields), {
    absent: 'The wire between converter and battery is not judged: give converter.feed.',
  }),
}))()

/** What describes the 12 V battery. @internal */
export const batteryFields = /*@__PURE__*/ (() => ({
  capacity: given('charge', 'Capacity that is taken in 20 h', { above: 0, usual: ['5 Ah', '120 Ah'] }),
  usable: given('ratio', 'Share of it that may be taken', {
    above: 0,
    max: 1,
    default: 0.5,
    because: 'lead that is emptied further ages fast, common practice, no source',
  }),
  exponent: given('ratio', 'Exponent of Peukert', {
    min: 1,
    max: 1.6,
    default: 1.2,
    because: 'lead, common practice, no source; near 1 for lithium',
  }),
  lasts: optional(
    given('time', 'How long it must last with the converter off', { above: 0, usual: ['5 min', '4 h'] }),
    { absent: 'How long the battery lasts without the converter is not held to a limit: give battery.lasts.' },
  ),
}))()

/** What describes the 12 V side. @internal */
export const lowVoltageFields = /*@__PURE__*/ (() => ({
  loads: byName('The loads, by their names', loadField, { ids: true }),
  voltage: given('voltage', 'Voltage with the converter on', {
    above: 0,
    usual: ['12.5 V', '15 V'],
    default: '13.8 V',
    because: 'that holds a lead battery full, common practice, no source',
  }),
  converter: optional(group('The converter from the pack', converterFields)),
  battery: optional(group('The 12 V battery', batteryFields)),
  ambient: given('temperature', 'Temperature of the air around the wires', {
    ...airRange,
    usual: ['-20 °C', '125 °C'],
    finest: '0.1 °C',
    ...HOT_DAY,
  }),
  insulationLimit: given('temperature', 'Continuous limit of the insulation', {
    usual: ['60 °C', '250 °C', 'from rubber to fluoropolymers, from memory'],
    default: '70 °C',
    because: 'PVC, the least of the usual insulations, IEC 60364-5-52; cross-linked cable bears more',
  }),
  bundled: given('ratio', 'Share of its ampacity that a bundle leaves a wire', {
    above: 0,
    max: 1,
    default: 0.5,
    because: 'a loom of several loaded wires, common practice, no source',
  }),
}))()

const supplyFields = /*@__PURE__*/ (() => ({
  ...lowVoltageFields,
  packVoltage: optional(given('voltage', 'Lowest voltage of the pack', { above: 0 })),
}))()

type Asked = Read<typeof supplyFields>
type Load = Asked['loads'][string]
type Feed = NonNullable<Load['feed']>

const where = 'lowVoltageSupply'

/** Share of its rating that a converter may give for long. Common practice, no source. */
const CONVERTER_SHARE = 0.8

/** Share of its rating that a fuse of road vehicles carries for long at 25 °C: guides of fuse makers. */
const FUSE_SHARE = 0.75

/**
 * Sizes the 12 V side: the converter by what is on for long, the battery by how long it must do without the converter, and wire
 * and fuse of each load.
 *
 * A load that goes on and off counts with the share of the time for which it is on; what is on for moments is left to the
 * battery. Lamps are on for a whole drive, even if not for every one: on a wet night all comes together. A fuse carries
 * at most 75 % of its rating for long, and the wire carries the whole rating of its fuse.
 *
 * Answers: what must the 12 V converter give, how long does the battery last without it, and which wire and fuse does
 * each load need?
 *
 * - `loads`: the loads, by their names, by names of your own
 *   - `power`: power that it takes, in kW, above 0 kW, optional
 *   - `current`: current that it takes, in A, above 0 A, optional
 *   - `duty`: how long it is on: for a whole drive, for moments that the battery bridges, or by turns for a share of
 *     the time, 'steady' or 'short'; or a plain number, above 0 and at most 1
 *   - `feed`: its wire, optional
 *     - `length`: length of the wire from the fuse to the load, in m, at least 0 m
 *     - `section`: the section, where it lies already and is only to be examined, text, optional
 *     - `fuse`: rating of its fuse, where one is fitted already, in A, above 0 A, optional
 *     - `back`: how the current comes back: by a wire it loses voltage out and back, 'wire' or 'body'
 *     - `feeds`: what it feeds, which tells what it may lose, 'lamp up to 15 W' or 'lamp above 15 W' or 'headlamp' or
 *       'charging line' or 'starter' or 'control line', optional
 *     - `maximumDrop`: greatest drop, in V, above 0 V, optional
 * - `voltage`: voltage with the converter on, in V, above 0 V, 13.8 V by default (that holds a lead battery full,
 *   common practice, no source)
 * - `converter`: the converter from the pack, optional
 *   - `current`: its rated current on the 12 V side, in A, above 0 A
 *   - `efficiency`: its efficiency, a plain number, above 0 and at most 1, 0.9 by default (common practice, no source)
 *   - `feed`: its wire to the battery, optional
 *     - `length`: length of the wire from the fuse to the load, in m, at least 0 m
 *     - `section`: the section, where it lies already and is only to be examined, text, optional
 *     - `fuse`: rating of its fuse, where one is fitted already, in A, above 0 A, optional
 *     - `back`: how the current comes back: by a wire it loses voltage out and back, 'wire' or 'body'
 *     - `feeds`: what it feeds, which tells what it may lose, 'lamp up to 15 W' or 'lamp above 15 W' or 'headlamp' or
 *       'charging line' or 'starter' or 'control line', optional
 *     - `maximumDrop`: greatest drop, in V, above 0 V, optional
 * - `battery`: the 12 V battery, optional
 *   - `capacity`: capacity that is taken in 20 h, in Ah, above 0 Ah
 *   - `usable`: share of it that may be taken, a plain number, above 0 and at most 1, 0.5 by default (lead that is
 *     emptied further ages fast, common practice, no source)
 *   - `exponent`: exponent of Peukert, a plain number, at least 1 and at most 1.6, 1.2 by default (lead, common
 *     practice, no source; near 1 for lithium)
 *   - `lasts`: how long it must last with the converter off, in s, above 0 s, optional
 * - `ambient`: temperature of the air around the wires, in °C, at least -23.15 °C and below 226.85 °C, 40 °C by
 *   default (a hot day, common practice, no source)
 * - `insulationLimit`: continuous limit of the insulation, in °C, 70 °C by default (PVC, the least of the usual
 *   insulations, IEC 60364-5-52; cross-linked cable bears more)
 * - `bundled`: share of its ampacity that a bundle leaves a wire, a plain number, above 0 and at most 1, 0.5 by
 *   default (a loom of several loaded wires, common practice, no source)
 * - `packVoltage`: lowest voltage of the pack, in V, above 0 V, optional
 * - always assumed: power is told at the voltage with the converter on
 * - always assumed: the body, where the current comes back through it, adds no voltage drop: its joints must be clean
 * - always assumed: wires are of copper, in still air, and drop what they do at the limit of their insulation
 *
 * @returns Currents, least rating, run time, the wires, and checks. Where no section serves, the largest is shown with what fails.
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition; Peukert (1897), from memory; IEC 60287-2-1; ISO 8820-3, from memory; common practice, no
 * source.
 *
 * @example
 * ```ts
 * const { steady, leastRating, runTime } = lowVoltageSupply({
 *   loads: {
 *     headlamps: { power: '110 W', duty: 'steady' },
 *     wiper: { power: '60 W', duty: 'steady' },
 *     heaterFan: { power: '120 W', duty: 0.5 },
 *     rearWindow: { power: '150 W', duty: 'short' },
 *   },
 *   battery: { capacity: '44 Ah' },
 * })
 * String(steady) // '16.67 A'
 * String(leastRating) // '20.83 A'
 * String(runTime) // '0.8804 h'
 * ```
 */
export const lowVoltageSupply = /*@__PURE__*/ procedure({
  name: 'lowVoltageSupply',
  title: 'The 12 V side',
  answers:
    'What must the 12 V converter give, how long does the battery last without it, and which wire and fuse does each load need?',
  input: supplyFields,
  source: [
    definition,
    cite('Peukert (1897)', 'from memory'),
    cite('IEC 60287-2-1'),
    cite('ISO 8820-3', 'from memory'),
    commonPractice,
  ],
  assumes: [
    'Power is told at the voltage with the converter on.',
    'The body, where the current comes back through it, adds no voltage drop: its joints must be clean.',
    'Wires are of copper, in still air, and drop what they do at the limit of their insulation.',
  ],
  work: (asked): Unfinished<LowVoltageSupply> => {
    const { loads, converter, battery, packVoltage, voltage } = asked
    const named = Object.entries(loads)
    refuse(asked)
    const taken = named.map(([name, load]) => [name, load, currentOf(name, load, voltage)] as const)
    const sum = (each: (load: Load, current: Quantity<'current'>) => number) =>
      quantity(
        'current',
        taken.reduce((all, [, load, current]) => all + each(load, current), 0),
        'A',
      )
    const steady = sum((load, { si }) => si * shareOf(load))
    const allOn = sum((_, { si }) => si)
    const leastRating = section('The converter', () => fuseRating({ current: steady, loadFactor: CONVERTER_SHARE }))
    const inputPower = converter && quantity('power', (steady.si * voltage.si) / converter.efficiency.si, 'W')
    const powerOf = (current: Quantity<'current'>) => quantity('power', current.si * voltage.si, 'W')
    const drawn = (current: Quantity<'current'>) =>
      packVoltage === undefined || converter === undefined
        ? undefined
        : converterInputCurrent({ power: powerOf(current), voltage: packVoltage, efficiency: converter.efficiency })
    const [inputCurrent, greatestInputCurrent] = [
      drawn(steady),
      drawn(converter !== undefined && isBelow(converter.current, allOn) ? converter.current : allOn),
    ]
    const runTime =
      battery === undefined || steady.si === 0
        ? undefined
        : section('The battery, with the converter off', () =>
            batteryRunTime({
              capacity: battery.capacity,
              current: steady,
              exponent: battery.exponent,
              share: battery.usable,
            }),
          )
    const feeds = taken.flatMap(([name, { feed }, current]) =>
      feed === undefined
        ? []
        : [[name, feedOf(asked, feed, current, { key: name, path: `loads.${name}.feed` })] as const],
    )
    const out =
      converter?.feed === undefined
        ? undefined
        : feedOf(asked, converter.feed, converter.current, {
            key: 'converter',
            path: 'converter.feed',
          })
    return {
      steady,
      allOn,
      steadyPower: powerOf(steady),
      leastRating,
      ...(inputPower === undefined ? {} : { inputPower }),
      ...(inputCurrent === undefined ? {} : { inputCurrent }),
      ...(greatestInputCurrent === undefined ? {} : { greatestInputCurrent }),
      ...(runTime === undefined ? {} : { runTime }),
      feeds: Object.fromEntries(feeds.map(([name, { made }]) => [name, made])),
      ...(out === undefined ? {} : { output: out.made }),
      checks: [
        converterTrial(asked, steady, leastRating),
        peakTrial(asked, allOn),
        ...runTimeTrials(asked, runTime),
        ...feeds.flatMap(([, { checks }]) => checks),
        ...(out?.checks ?? []),
      ],
      assumptions: assumptionsOf(asked),
      cautions: [shortCircuit],
    }
  },
})

/** Refuses what contradicts itself. */
function refuse({ loads, insulationLimit, ambient }: Asked): void {
  if (Object.keys(loads).length === 0) {
    const expected = "at least one load, such as { headlamps: { power: '110 W', duty: 'steady' } }"
    throw new InputError(where, [{ path: 'loads', expected, received: 'none' }])
  }
  if (Object.hasOwn(loads, 'converter')) {
    const expected = 'a load of another name, as the wire between converter and battery has that'
    throw new InputError(where, [{ path: 'loads.converter', expected, received: "'converter'" }])
  }
  if (insulationLimit.si <= ambient.si) {
    const expected = `a temperature above the ambient one, ${ambient}`
    throw new InputError(where, [{ path: 'insulationLimit', expected, received: String(insulationLimit) }])
  }
}

/** What a load takes while it is on. */
function currentOf(name: string, { power, current }: Load, voltage: Quantity<'voltage'>): Quantity<'current'> {
  if ((power === undefined) === (current === undefined)) {
    const expected = "one of them: power such as '60 W', or current such as '5 A'"
    const received = power === undefined ? 'neither' : 'both'
    throw new InputError(where, [{ path: `loads.${name}.power and loads.${name}.current`, expected, received }])
  }
  return current ?? quantity('current', (power as Quantity<'power'>).si / voltage.si, 'A')
}

/** Share of the time for which a load counts for the converter. */
function shareOf({ duty }: Load): number {
  return duty === 'steady' ? 1 : duty === 'short' ? 0 : duty.si
}

function converterTrial({ converter }: Asked, steady: Quantity<'current'>, leastRating: Quantity<'current'>): Check {
  return trial(
    'lowVoltage.converter',
    'Rating of the 12 V converter',
    converter === undefined
      ? {
          unknown: `whether the converter gives ${steady} for long is not known: give converter.current, at least ${leastRating}`,
        }
      : says`the converter is rated ${converter.current}, at least the ${leastRating} of which 80 % are on for long`,
    'common practice',
    'converter.current',
    'loads',
  )
}

function peakTrial({ converter, battery }: Asked, allOn: Quantity<'current'>): Check {
  const told = (says: Told) =>
    trial('lowVoltage.peak', 'Everything on at once', says, 'common practice', 'converter.current', 'battery', 'loads')
  if (converter === undefined) {
    return told({ unknown: `what gives the ${allOn} of everything on at once is not known: give converter.current` })
  }
  if (!isAbove(allOn, converter.current)) {
    return told({ pass: `everything on at once takes ${allOn}, and the converter gives ${converter.current}` })
  }
  const rest = allOn.minus(converter.current)
  return told(
    battery === undefined
      ? {
          unknown: `everything on at once takes ${allOn}, and what gives the ${rest} beyond the converter is not known: give battery`,
        }
      : {
          pass: `everything on at once takes ${allOn}, and the battery gives the ${rest} beyond the converter for moments`,
        },
  )
}

function runTimeTrials({ battery }: Asked, runTime: Quantity<'time'> | undefined): Check[] {
  const told = (says: Told) =>
    trial('lowVoltage.runTime', 'Without the converter', says, 'battery.lasts, as given', 'battery.lasts', 'battery')
  if (battery === undefined) {
    return [told({ unknown: 'what feeds lamps and contactors where the converter fails is not known: give battery' })]
  }
  if (battery.lasts === undefined || runTime === undefined) return []
  return [
    told(
      says`the battery feeds what is on for long for ${runTime.as('min')} with the converter off, at least the ${battery.lasts.as('min')} asked`,
    ),
  ]
}

/** Ratings of fuses of road vehicles, from the least: blade fuses, and bolt-down ones above. */
const ratings = /*@__PURE__*/ (() => {
  const { blade, 'bolt-down': bolted } = fuseFamilies
  const most = blade.ratings.at(-1) as Quantity<'current'>
  return [...blade.ratings, ...bolted.ratings.filter((each) => isAbove(each, most))]
})()

/** Which wire: what it is called in ids and words, and where it stands in the input. */
interface Place {
  readonly key: string
  readonly path: string
}

/** A wire with its fuse, and what is held to both. */
function feedOf(asked: Asked, feed: Feed, current: Quantity<'current'>, place: Place) {
  return section(`The wire of the ${place.key}`, () => {
    const needed = fuseRating({ current, loadFactor: FUSE_SHARE })
    const fuse = feed.fuse ?? ratings.find((each) => !isBelow(each, needed))
    if (fuse === undefined) {
      const expected = `a current for which a fuse of at most ${ratings.at(-1)} is enough, or the rating of a fuse`
      throw new InputError(where, [{ path: `${place.path}.fuse`, expected, received: `nothing, for ${current}` }])
    }
    const most = feed.maximumDrop ?? (feed.feeds && quantity('voltage', DROPS[feed.feeds], 'V'))
    const { chosen, rejected } = firstThatServes(candidatesOf(feed, place), (candidate) =>
      judgedWire(asked, feed, current, candidate, { fuse, most, place }),
    )
    const found = chosen ?? (rejected.at(-1) as Judged<Omit<LowVoltageFeed, 'fuse' | 'current'>>)
    return {
      made: { current, fuse, ...found.made },
      checks: [
        ...(feed.fuse === undefined ? [] : [fuseTrial(feed.fuse, current, place)]),
        ...found.checks,
        ...(most === undefined ? [unknownDrop(place)] : []),
      ],
    }
  })
}

function candidatesOf({ section: only }: Feed, { path }: Place): readonly Candidate[] {
  const all = sectionsOf('metric')
  if (only === undefined) return all
  const one = all.filter(({ name }) => name === only)
  if (one.length > 0) return one
  const expected = `a section: ${all.map(({ name }) => name).join(', ')}`
  throw new InputError(where, [{ path: `${path}.section`, expected, received: `'${only}'` }])
}

function judgedWire(
  { ambient, insulationLimit, bundled }: Asked,
  { length, back }: Feed,
  current: Quantity<'current'>,
  candidate: Candidate,
  { fuse, most, place }: { fuse: Quantity<'current'>; most: Quantity<'voltage'> | undefined; place: Place },
): Judged<Omit<LowVoltageFeed, 'fuse' | 'current'>> {
  const { key, path } = place
  const cable = cableOf(where, { area: candidate.area, conductor: 'copper', laid: 'apart', ambient })
  const ampacity = section(`Ampacity at ${insulationLimit}`, () =>
    steadyAtLimit(where, 'insulationLimit', cable, insulationLimit).current.times(bundled.si),
  )
  const drop = cableVoltageDrop({
    current,
    resistancePerLength: resistancePerLengthAt({
      resistance: cable.resistance,
      coefficient: cable.material.coefficient,
      temperature: insulationLimit,
    }),
    // Where the current comes back through the body, half as much wire loses voltage.
    length: back === 'body' ? length.times(0.5) : length,
  })
  return {
    name: candidate.name,
    checks: [
      trial(
        `feed.${key}.cable`,
        `Wire of the ${key}`,
        says`the wire carries ${ampacity}, at least the ${fuse} of its fuse`,
        'heat balance of the wire at the limit of its insulation; IEC 60364-4-43, 433.1 (from memory)',
        `${path}.section`,
        `${path}.fuse`,
        'bundled',
      ),
      ...(most === undefined
        ? []
        : [
            trial(
              `feed.${key}.drop`,
              `Voltage drop to the ${key}`,
              says`the wire loses ${drop}, at most the ${most}`,
              'maximumDrop, or a trade journal for agricultural machines',
              `${path}.length`,
              `${path}.maximumDrop`,
              `${path}.feeds`,
            ),
          ]),
    ],
    made: { section: candidate.name, ampacity, drop },
  }
}

function fuseTrial(fuse: Quantity<'current'>, current: Quantity<'current'>, { key, path }: Place): Check {
  return trial(
    `feed.${key}.fuse`,
    `Fuse of the ${key}`,
    says`the fuse carries ${fuse.times(FUSE_SHARE)} for long, 75 % of its rating, at least the ${current} of the load`,
    'guides of fuse makers',
    `${path}.fuse`,
  )
}

function unknownDrop({ key, path }: Place): Check {
  const unknown = `how much voltage the ${key} may lose is not known: give ${path}.feeds or ${path}.maximumDrop`
  return trial(`feed.${key}.drop`, `Voltage drop to the ${key}`, { unknown }, 'maximumDrop', `${path}.maximumDrop`)
}

/** What of a wire is chosen, where it is not given. */
function chosenTold(key: string, { section, fuse }: Pick<Feed, 'section' | 'fuse'>): Assumption[] {
  return [
    ...(section === undefined
      ? [
          assumed(
            `feed.${key}.section`,
            `The wire to the ${key} has the least section that serves (section by default).`,
          ),
        ]
      : []),
    ...(fuse === undefined
      ? [
          assumed(
            `feed.${key}.fuse`,
            `The wire to the ${key} has the least fuse that carries the load (fuse by default).`,
          ),
        ]
      : []),
  ]
}

function assumptionsOf({ loads, converter }: Asked): Assumption[] {
  const feeds = [...Object.values(loads).map(({ feed }) => feed), converter?.feed].filter((each) => each !== undefined)
  return [
    ...Object.entries({ ...loads, ...(converter === undefined ? {} : { converter }) }).flatMap(([key, { feed }]) =>
      feed === undefined
        ? [assumed(`feed.${key}.untold`, `The wire to the ${key} is not judged (its feed is not given).`)]
        : chosenTold(key, feed),
    ),
    ...(feeds.some(({ fuse }) => fuse === undefined)
      ? [
          assumed(
            'lowVoltage.fuses',
            'Fuses are those of ISO 8820 (from memory), blade fuses up to 40 A and bolt-down ones above, and carry at most 75 % of their rating for long.',
          ),
        ]
      : []),
    ...(feeds.some(({ maximumDrop, feeds: what }) => maximumDrop === undefined && what !== undefined)
      ? [
          assumed(
            'lowVoltage.drops',
            'What a wire may lose is what a trade journal for agricultural machines allows on the positive side at 12 V; a wire back counts with it.',
          ),
        ]
      : []),
  ]
}
