/** What is asked of a fuse: its load, the pack that feeds a fault, the cable that it protects, and the fuses to choose from. */
import {
  choice,
  given,
  group,
  isAbove,
  isBelow,
  list,
  optional,
  pairs,
  type Read,
  text,
  whole,
} from '../../procedure/index.js'
import { tableIssues } from '../../procedure/table.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { HOT_DAY, LOADS, profileField } from '../cable/course.js'
import { fuseClasses } from './class.js'

/** A fuse as its maker describes it. @internal */
export const fuseField = /*@__PURE__*/ (() =>
  group('A fuse', {
    name: optional(text('What it is called')),
    class: optional(choice('Its class, as its standard names it', fuseClasses)),
    rating: given('current', 'Rated current', { above: 0, usual: ['1 A', '1250 A'] }),
    voltage: group('Its rated voltages', {
      dc: optional(given('voltage', 'Rated voltage for direct current', { above: 0, usual: ['12 V', '4000 V'] })),
      ac: optional(given('voltage', 'Rated voltage for alternating current', { above: 0, usual: ['12 V', '4000 V'] })),
    }),
    breakingCapacity: given('current', 'Greatest direct current that it breaks', {
      above: 0,
      usual: ['0.2 kA', '500 kA'],
    }),
    timeConstant: optional(
      given('time', 'Time constant of the circuit in which it breaks that current', {
        above: 0,
        usual: ['0.5 ms', '30 ms'],
      }),
    ),
    leastBreakingCurrent: optional(given('current', 'Least direct current that it breaks', { above: 0 })),
    meltingIntegral: optional(
      given('jouleIntegral', 'Melting (pre-arcing) joule integral; 1 kA²·s is (1 kA)²·s, a million A²·s', {
        above: 0,
        usual: ['1 A²·s', '30 kA²·s'],
      }),
    ),
    clearingIntegral: optional(
      given('jouleIntegral', 'Greatest joule integral until it has cleared', {
        above: 0,
        usual: ['1 A²·s', '30 kA²·s'],
      }),
    ),
    curve: optional(
      pairs(
        'Its time–current curve, the currents rising',
        given('current', 'Current', { above: 0, usual: ['1 A', '300 kA'] }),
        given('time', 'Time until it opens', { above: 0, usual: ['0.1 ms', '100 h'] }),
        { least: 2 },
      ),
    ),
    derating: optional(
      pairs(
        'Share of its rating by the temperature around it, the temperatures rising',
        given('temperature', 'Temperature around the fuse'),
        given('ratio', 'Share of its rating', { above: 0, max: 1.2 }),
        { least: 2 },
      ),
    ),
    thermalTimeConstant: optional(
      given('time', 'Time constant with which it warms', { above: 0, usual: ['10 s', '1 h'] }),
    ),
  }))()

/** A fuse as it is read. @internal */
export type Fuse = Read<typeof fuseField>

/** Fuses to choose from. @internal */
export const candidatesField = /*@__PURE__*/ (() => list('Fuses to choose from', fuseField, { least: 1 }))()

/** How long a controller draws its greatest current, where it is not said. */
const fullPullField = /*@__PURE__*/ (() =>
  given('time', 'How long it draws that current at most', {
    above: 0,
    finest: '0.5 s',
    default: '60 s',
    because: 'a minute of full pull, common practice, no source',
  }))()

/** How much a pack ages, and what it adds to the inductance of a fault. @internal */
export const ageingField = /*@__PURE__*/ (() =>
  given('ratio', 'How many times as much the pack resists at the end of its life', {
    min: 1,
    max: 10,
    default: 2,
    because: 'the common end of life; 1 where it was measured on modules so old; common practice, no source',
  }))()

/** @internal */
export const inductanceField = /*@__PURE__*/ (() =>
  given('inductance', 'Inductance of the pack', {
    min: 0,
    usual: ['0.1 µH', '100 µH'],
    default: '2 µH',
    because: 'two metres of conductor around its modules, common practice, no source',
  }))()

/** What is asked of a fuse beside its load, its pack and its cable. @internal */
export const fuseFields = /*@__PURE__*/ (() => ({
  altitude: given('length', 'Greatest height above the sea', {
    min: 0,
    max: '5000 m',
    default: '2000 m',
    because: 'no road that is driven is higher',
  }),
  ambientFactor: optional(
    given('ratio', 'Share of its rating that the heat around leaves the fuse, in place of what its class tells', {
      min: 0.2,
      max: 1.2,
      usual: [0.5, 1],
    }),
  ),
  fusingFactor: optional(
    given('ratio', 'Current at which a fuse of no stated class opens within its conventional time, over its rating', {
      above: 1,
      max: 3,
      usual: [1.3, 2.2, 'classes of IEC 60269 and ISO 8820'],
    }),
  ),
  cycles: whole('How often the peaks of the load, and a full pull, come in the life of the car', {
    min: 1,
    max: 1_000_000,
    default: 100_000,
    because: 'every pull-away, common practice, no source',
  }),
  family: choice('The family in which ratings are sought', ['R10', 'UL', 'blade', 'bolt-down'], {
    default: 'R10',
    because: 'the ratings of IEC 60269-1',
  }),
  ratings: optional(
    list('Ratings that can be had, in place of those of a family', given('current', 'A rating', { above: 0 }), {
      least: 1,
    }),
  ),
  overload: optional(
    group('What opens on an overload in place of the fuse, such as a contactor', {
      by: text('What opens'),
      current: given('current', 'Current at which it opens', { above: 0 }),
      time: given('time', 'Within what time', { above: 0, finest: '5 ms' }),
      breaks: given('current', 'Greatest direct current that it breaks', { above: 0 }),
    }),
  ),
  controller: optional(
    group('The controller that the run feeds', {
      batteryCurrent: given('current', 'Greatest current that it draws from the battery', {
        above: 0,
        usual: ['5 A', '2000 A'],
      }),
      time: fullPullField,
    }),
    { absent: 'What the run feeds never draws more than its load, not even for a moment.' },
  ),
  candidates: optional(candidatesField),
}))()

/** A load, a pack and a cable. @internal */
export const selectFields = /*@__PURE__*/ (() => ({
  current: given('current', 'Continuous current of the load', { above: 0, usual: LOADS }),
  profile: optional(profileField, { absent: 'The load is steady.' }),
  ambient: given('temperature', 'Temperature of the air around the fuse', {
    above: '-90 °C',
    below: '200 °C',
    usual: ['20 °C', '85 °C'],
    ...HOT_DAY,
  }),
  ...fuseFields,
  pack: group('The pack that feeds a fault', {
    maximumVoltage: given('voltage', 'Voltage of the full pack', {
      above: 0,
      max: '1500 V',
      usual: ['48 V', '400 V'],
    }),
    openCircuit: given('voltage', 'Open-circuit voltage of the nearly empty pack', { above: 0 }),
    resistance: given('resistance', 'Resistance of the warm pack, by a pulse of some seconds', { above: 0 }),
    ohmicResistance: optional(
      given('resistance', 'Resistance of the warm pack within 10 ms, such as at 1 kHz', { above: 0 }),
    ),
    coldResistance: optional(given('resistance', 'Resistance of the nearly empty pack in the cold', { above: 0 })),
    ageing: ageingField,
    inductance: inductanceField,
  }),
  cable: group('The cable that the fuse protects', {
    ampacity: given('current', 'Continuous current of the cable', { above: 0 }),
    withstand: given('jouleIntegral', 'Joule integral that the cable withstands; 1 kA²·s is (1 kA)²·s', {
      above: 0,
      usual: ['0.01 kA²·s', '2000 kA²·s'],
    }),
    resistance: given('resistance', 'Resistance of the run, out and back, as warm as it gets', { min: 0 }),
    inductance: optional(given('inductance', 'Inductance of the run, out and back', { min: 0 })),
  }),
}))()

/** A load, a pack and a cable as they are read. @internal */
export type FuseTask = Read<typeof selectFields>

/** How warm a cable gets, which only who knows its section can follow. @internal */
export interface FollowedCable {
  /** After a time at a current; undefined where it burns. */
  readonly after: (
    current: Quantity<'current'>,
    time: number,
    from: Quantity<'temperature'>,
  ) => Quantity<'temperature'> | undefined
  /** In one pull on top of its load, and while it cools again; undefined where it burns. */
  readonly pulled: (
    current: Quantity<'current'>,
    time: number,
  ) =>
    | {
        readonly peak: Quantity<'temperature'>
        readonly ends: Quantity<'temperature'>
        /** How long it is above its limit. */
        readonly above: Quantity<'time'>
      }
    | undefined
  /** Under its load, at the hottest. */
  readonly loaded: Quantity<'temperature'>
  readonly limit: Quantity<'temperature'>
  readonly overloadLimit?: Quantity<'temperature'>
  readonly terminalLimit: Quantity<'temperature'>
}

/** A task as a fuse is judged by it. @internal */
export interface Judging extends FuseTask {
  /** What thin air leaves of any rating. */
  readonly thinAir: Quantity<'ratio'>
  readonly follow?: FollowedCable
  /** The protective conductor of the run: what it withstands, and how much it resists before a fault. */
  readonly protective?: { readonly withstand: Quantity<'jouleIntegral'>; readonly resistance: Quantity<'resistance'> }
}

/** The prospective currents of a task, and the time constant of their loop where its inductance is known. @internal */
export interface Faults {
  readonly loop?: Quantity<'time'>
  readonly highest: Quantity<'current'>
  readonly lowest: Quantity<'current'>
  /** The least through the protective conductor, where there is one. */
  readonly protective?: Quantity<'current'>
}

/** Refuses what contradicts itself in a task. @internal */
export function refuseTask(where: string, path: string, { pack, candidates = [], overload }: FuseTask): void {
  const issues: InputIssue[] = []
  const least = (
    key: string,
    value: { readonly si: number } | undefined,
    what: string,
    bound: { readonly si: number },
  ) => {
    if (value === undefined || value.si >= bound.si) return
    issues.push({ path: `${path}${key}`, expected: `at least ${what}, ${bound}`, received: String(value) })
  }
  if (isAbove(pack.openCircuit, pack.maximumVoltage)) {
    const expected = `at most the voltage of the full pack, ${pack.maximumVoltage}`
    issues.push({ path: `${path}pack.openCircuit`, expected, received: String(pack.openCircuit) })
  }
  if (pack.ohmicResistance !== undefined && pack.ohmicResistance.si > pack.resistance.si) {
    const expected = `at most the resistance by a pulse of some seconds, ${pack.resistance}`
    issues.push({ path: `${path}pack.ohmicResistance`, expected, received: String(pack.ohmicResistance) })
  }
  least('pack.coldResistance', pack.coldResistance, 'the resistance of the warm pack', pack.resistance)
  if (overload !== undefined)
    least('overload.breaks', overload.breaks, 'the current at which it opens', overload.current)
  candidates.forEach((fuse, c) => {
    issues.push(...fuseIssues(`${path}candidates[${c}]`, fuse))
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/** Readings of a curve and of an integral lie apart by this much. Common practice, no source. */
const [SCATTER, SLIP] = [2, 10]

/**
 * Integrals that go with no curve like this: nothing melts on less than the melting integral, and what melts within 10 ms
 * takes little more (IEC 60269-1 joins the two there).
 */
function integralIssues(path: string, { curve = [], meltingIntegral, clearingIntegral }: Fuse): InputIssue[] {
  const integralOf = ([current, time]: readonly [Quantity<'current'>, Quantity<'time'>]) =>
    quantity('jouleIntegral', current.si ** 2 * time.si, 'A²·s')
  const tooQuick = curve.flatMap((point, i) => {
    const integral = integralOf(point)
    if (meltingIntegral === undefined || integral.si * SCATTER >= meltingIntegral.si) return []
    const [current, time] = point
    const expected = `a time in which ${current} melts the link: ${integral} is less than the melting integral, ${meltingIntegral}`
    return [{ path: `${path}.curve[${i}][1]`, expected, received: String(time) }]
  })
  const last = curve.at(-1)
  if (last === undefined || last[1].si > 10e-3) return tooQuick
  const melts = integralOf(last)
  const tooSmall = Object.entries({ meltingIntegral, clearingIntegral }).flatMap(([key, integral]) => {
    if (integral === undefined || integral.si * SLIP >= melts.si) return []
    const expected = `about the ${melts} on which the link melts by the end of its curve, or more`
    return [{ path: `${path}.${key}`, expected, received: String(integral), hint: '1 kA²·s is a million A²·s' }]
  })
  return [...tooQuick, ...tooSmall]
}

/** What contradicts itself in a fuse. @internal */
export function fuseIssues(path: string, fuse: Fuse): InputIssue[] {
  const { curve = [], derating = [], meltingIntegral, clearingIntegral, leastBreakingCurrent, breakingCapacity } = fuse
  const issues: InputIssue[] = []
  if (meltingIntegral !== undefined && clearingIntegral !== undefined && isBelow(clearingIntegral, meltingIntegral)) {
    issues.push({
      path: `${path}.clearingIntegral`,
      expected: `at least the melting integral, ${meltingIntegral}`,
      received: String(clearingIntegral),
      hint: 'a fuse clears after it has melted',
    })
  }
  if (leastBreakingCurrent !== undefined && isAbove(leastBreakingCurrent, breakingCapacity)) {
    issues.push({
      path: `${path}.leastBreakingCurrent`,
      expected: `at most the greatest current that it breaks, ${breakingCapacity}`,
      received: String(leastBreakingCurrent),
    })
  }
  const first = curve[0]?.[0]
  if (first !== undefined && first.si <= fuse.rating.si) {
    issues.push({
      path: `${path}.curve[0][0]`,
      expected: `a current above the rating, ${fuse.rating}`,
      received: String(first),
      hint: 'a fuse carries its rating all day',
    })
  }
  issues.push(
    ...integralIssues(path, fuse),
    ...tableIssues(`${path}.curve`, curve, 'current', { falls: 'time' }),
    ...tableIssues(`${path}.derating`, derating, 'temperature', { falls: 'share' }),
  )
  return issues
}
