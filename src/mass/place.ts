/**
 * Where to put modules so that a car keeps its balance: how many of each group go into which bay.
 *
 * Rests on moments about the axles (Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1). The search is exact
 * and in place-search.ts.
 */
import * as z from 'zod/mini'
import { type Check, cautions, check, type Findings } from '../findings/index.js'
import { section } from '../formula/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import { about, given, procedure, type Read } from '../structure/index.js'
import { frontShare, sideShare } from './balance.js'
import { commonAlong } from './ledger.js'
import { deviationAt, type Filling, type Problem, SAME, type Term } from './place-problem.js'
import { bestPlacement } from './place-search.js'
import { type Place, positionGiven } from './position.js'
import { trackGiven, wheelbaseGiven } from './weigh.js'

/** So many of a group in a bay. */
export interface Placement {
  readonly group: string
  readonly bay: string
  readonly count: number
  /** Mass of them all. */
  readonly mass: Quantity<'mass'>
  /** Their common centre. */
  readonly at: Place
}

/** Where all modules go, and how the car then stands. */
export interface PlacedMasses extends Findings {
  readonly placements: readonly Placement[]
  readonly mass: Quantity<'mass'>
  /** Of the base and all modules; `left` and `up` where they are known of the base and of every bay. */
  readonly centreOfGravity: Place
  readonly frontShare: Quantity<'ratio'>
  /** On the mean track; where `left` is known. */
  readonly leftShare?: Quantity<'ratio'>
  /** The weighted sum of the differences from the target. */
  readonly deviation: Quantity<'ratio'>
  /** The full bay in which one place more would bring the car the nearest to its target, where that gains anything. */
  readonly limitedBy?: string
  /** Whether the search has shown that no placement is better. */
  readonly proven: boolean
  /** How many partial and whole placements it looked at. */
  readonly explored: number
}

const wholeNumber = (least: number) => z.int().check(z.minimum(least))
const name = /*@__PURE__*/ z.string().check(z.minLength(1))

const weightGiven = (what: string) => z.optional(given('ratio', `Weight of ${what}`, { min: 0 }))

const placeMassesGiven = /*@__PURE__*/ about(
  'masses to be placed',
  z.strictObject({
    base: about(
      'the car without the modules',
      z.strictObject({
        mass: given('mass', 'Mass of the car without the modules', { above: 0 }),
        centreOfGravity: positionGiven,
      }),
    ),
    groups: about(
      'the groups of like modules',
      z.readonly(
        z
          .array(
            about(
              'a group of like modules',
              z.strictObject({
                name: about('what the group is called', name),
                mass: given('mass', 'Mass of one module', { above: 0 }),
                count: about('how many there are', wholeNumber(1)),
              }),
            ),
          )
          .check(z.minLength(1)),
      ),
    ),
    bays: about(
      'the bays that take modules',
      z.readonly(
        z
          .array(
            about(
              'a bay',
              z.strictObject({
                name: about('what the bay is called', name),
                at: positionGiven,
                capacity: about('how many modules it holds', wholeNumber(0)),
                accepts: about('the groups that fit into it', z.optional(z.readonly(z.array(z.string())))),
                pitch: about(
                  'the way from one module to the next',
                  z.optional(
                    z.strictObject({
                      aft: z.optional(given('length', 'Step to the rear from one module to the next')),
                      left: z.optional(given('length', 'Step to the left from one module to the next')),
                      up: z.optional(given('length', 'Step upwards from one module to the next')),
                    }),
                  ),
                ),
              }),
            ),
          )
          .check(z.minLength(1)),
      ),
    ),
    wheelbase: wheelbaseGiven,
    track: trackGiven,
    target: about(
      'what to come near to',
      z.strictObject({
        frontShare: z.optional(given('ratio', 'Share of the mass on the front axle', { min: 0, max: 1 })),
        leftShare: z.optional(given('ratio', 'Share of the mass on the left wheels', { min: 0, max: 1 })),
        aft: z.optional(given('length', 'Distance of the centre of gravity behind the front axle')),
        up: z.optional(given('length', 'Height that the centre of gravity should not exceed', { min: 0 })),
      }),
    ),
    weights: about(
      'how much each target counts',
      z.optional(
        z.strictObject({
          frontShare: weightGiven('the front share'),
          leftShare: weightGiven('the left share'),
          aft: weightGiven('the place along the car'),
          up: weightGiven('the height'),
        }),
      ),
    ),
  }),
)

type Given = Read<typeof placeMassesGiven>
type Bay = Given['bays'][number]
type Group = Given['groups'][number]
type Direction = 'aft' | 'left' | 'up'

/**
 * Finds how many modules of each group to put into which bay, so that the car comes as near to its target as whole
 * modules allow, and shows that nothing is nearer.
 *
 * The deviation is the weighted sum of how far the car is from each target: the front share and the left share as they
 * are, `aft` over the wheelbase, and `up` over the wheelbase where the centre of gravity is too high. Of placements with
 * the same deviation, to one part in 10⁹, the one with the lowest centre of gravity is taken, then one that uses the
 * fewest bays.
 *
 * - `base`: `mass` (kg) and `centreOfGravity` of the car without modules, with all else that goes in or out counted in
 * - `groups`: each with a `name`, the `mass` (kg) of one module and their `count`
 * - `bays`: each with a `name`, a place `at` (see {@link Position}), a `capacity` in modules of any group, and, where they
 *   matter, the names of the groups that it `accepts` and the `pitch` from one module to the next. Without a pitch `at` is
 *   the centre of whatever is in the bay. With one it is the centre of the first module; the next ones follow at steps of
 *   `pitch`, group by group in the order of `groups`.
 * - `wheelbase` (m), `track`: `front` and `rear` (m), above 0; the left share is taken on the mean track
 * - `target`: any of `frontShare`, `leftShare` (0 to 1), `aft` (m), `up` (m); what needs a place across or a height needs
 *   it of the base and of every bay
 * - `weights`: a plain number for each target, at least 0, 1 unless given
 *
 * @returns The placements, how the car stands with them, the deviation that is left, and whether the search has proven
 * it to be the least. A check holds each target to within a percentage point; `limitedBy` names the bay that binds.
 * @throws InputError for input that cannot be used, by its path: among others more modules than the bays hold, names that
 * are used twice or not known, places that are needed and not given.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1, for the balance; Horowitz & Sahni, J. ACM 21
 * (1974), for the search.
 *
 * @example
 * ```ts
 * const { placements, frontShare, proven } = placeMasses({
 *   base: { mass: '560 kg', centreOfGravity: { aft: '880 mm' } },
 *   groups: [{ name: 'module', mass: '24 kg', count: 5 }],
 *   bays: [
 *     { name: 'under the bonnet', at: { aft: '-50 mm' }, capacity: 4 },
 *     { name: 'behind the seats', at: { aft: '1.5 m' }, capacity: 4 },
 *   ],
 *   wheelbase: '2030 mm',
 *   track: { front: '1220 mm', rear: '1190 mm' },
 *   target: { frontShare: '56 %' },
 * })
 * placements.map(({ bay, count }) => `${count} ${bay}`) // ['2 under the bonnet', '3 behind the seats']
 * String(frontShare) // '56.65 %'
 * proven // true
 * ```
 */
export const placeMasses = /*@__PURE__*/ procedure('placeMasses', placeMassesGiven, (read): PlacedMasses => {
  refuseNames(read)
  refuseUnknownPlaces(read)
  refuseOverfull(read)
  const search = searchOf(read)
  const { problem } = search
  const best = bestPlacement(problem)
  if (best === undefined) throw new Error('bays with room for every set of groups have room for all of them')
  const placements = best.fillings.flatMap((filling, i) => placementsIn(read.bays[i] as Bay, filling, read.groups))
  const stance = section('The car with its modules', () => stanceOf(read, placements))
  const deviation = deviationAt(problem, best.fillings)
  const binding = deviation < WORTH_A_PLACE ? undefined : bindingBay(read, search, best.fillings)
  return {
    placements,
    ...stance,
    deviation: quantity('ratio', deviation),
    ...(binding === undefined ? {} : { limitedBy: binding }),
    proven: best.proven,
    explored: best.explored,
    checks: checksOf(read, stance),
    assumptions: assumptionsOf(read, best.proven, binding),
    cautions: [cautions.brakesAndSteering, cautions.lithiumCells],
  }
})

function isKnown({ base, bays }: Given, direction: Direction): boolean {
  return base.centreOfGravity[direction] !== undefined && bays.every(({ at }) => at[direction] !== undefined)
}

/** Refuses names that are used twice, and groups that a bay accepts and nobody knows. */
function refuseNames({ groups, bays }: Given): void {
  const issues = [
    ...Object.entries({ groups, bays }).flatMap(([list, named]) =>
      named.flatMap(({ name: each }, i) => {
        const before = named.findIndex((other) => other.name === each)
        const expected = 'a name of its own'
        return before === i
          ? []
          : [{ path: `${list}[${i}].name`, expected, received: `'${each}', as ${list}[${before}]` }]
      }),
    ),
    ...bays.flatMap(({ accepts = [] }, i) =>
      accepts.flatMap((group, k) => {
        const known = groups.map(({ name: each }) => `'${each}'`)
        const isOne = known.includes(`'${group}'`)
        const expected = `a group: ${known.join(', ')}`
        return isOne ? [] : [{ path: `bays[${i}].accepts[${k}]`, expected, received: `'${group}'` }]
      }),
    ),
  ]
  if (issues.length > 0) throw new InputError('placeMasses', issues)
}

/** Refuses a base or bays whose place is needed for a target and not known. */
function refuseUnknownPlaces({ base, bays, target }: Given): void {
  const places = [
    { path: 'base.centreOfGravity', at: base.centreOfGravity },
    ...bays.map(({ at }, i) => ({ path: `bays[${i}].at`, at })),
  ]
  const needed = [
    ['left', 'leftShare', "'0 mm'"],
    ['up', 'up', "'350 mm'"],
  ] as const
  const issues = needed.flatMap(([direction, key, example]) =>
    places
      .filter(({ at }) => target[key] !== undefined && at[direction] === undefined)
      .map(({ path }) => ({
        path: `${path}.${direction}`,
        expected: `a length such as ${example}`,
        received: 'nothing',
        hint: `target.${key} needs it`,
      })),
  )
  if (issues.length > 0) throw new InputError('placeMasses', issues)
}

/**
 * Refuses groups that the bays have no room for. There is room for all just where the bays that accept any of them hold
 * as many, for every choice of groups (Hall, On Representatives of Subsets, 1935).
 */
function refuseOverfull({ groups, bays }: Given): void {
  for (let choice = 1; choice < 2 ** groups.length; choice++) {
    const chosen = groups.filter((_, i) => Math.floor(choice / 2 ** i) % 2 === 1)
    const modules = chosen.reduce((sum, { count }) => sum + count, 0)
    const open = bays.filter((bay) => chosen.some((group) => accepts(bay, group)))
    const room = open.reduce((sum, { capacity }) => sum + capacity, 0)
    if (modules <= room) continue
    const names = chosen.map((group) => group.name).join(' and ')
    throw new InputError('placeMasses', [
      {
        path: 'groups',
        expected: `at most ${room} of ${names}, as many as the bays that accept them hold`,
        received: String(modules),
      },
    ])
  }
}

function accepts({ accepts: names }: Bay, group: Group): boolean {
  return names === undefined || names.includes(group.name)
}

/** The place of the module in a slot of a bay along a direction, in metres. */
function slotAt({ at, pitch }: Bay, slot: number, direction: Direction): number {
  return (at[direction]?.si ?? 0) + slot * (pitch?.[direction]?.si ?? 0)
}

/** Every way to fill a bay, as counts of each group. */
function countsIn(bay: Bay, groups: readonly Group[]): number[][] {
  return groups.reduce<number[][]>(
    (ways, group) =>
      ways.flatMap((way) => {
        const room = bay.capacity - way.reduce((sum, count) => sum + count, 0)
        const most = accepts(bay, group) ? Math.min(room, group.count) : 0
        return Array.from({ length: most + 1 }, (_, count) => [...way, count])
      }),
    [[]],
  )
}

/** What is to be searched, and any filling of a bay in its terms. */
interface Search {
  readonly problem: Problem
  fillingOf(bay: Bay, counts: readonly number[]): Filling
}

function searchOf(read: Given): Search {
  const { base, groups, bays, wheelbase, target, weights } = read
  const unit = unitOf(read)
  const mass = base.mass.si + groups.reduce((sum, group) => sum + group.mass.si * group.count, 0)
  const meanTrack = (read.track.front.si + read.track.rear.si) / 2
  /** A weighted difference from a target: of the centre of gravity from a place, over a length. */
  const term = (direction: Direction, place: number, length: number, weight = 1): Term[] => {
    const moment = base.mass.si * (base.centreOfGravity[direction]?.si ?? 0)
    return weight === 0
      ? []
      : [{ slope: (weight * unit) / (mass * length), offset: (weight * (moment / mass - place)) / length }]
  }
  const L = wheelbase.si
  const along = [
    ...(target.frontShare ? term('aft', (1 - target.frontShare.si) * L, L, weights?.frontShare?.si) : []),
    ...(target.aft ? term('aft', target.aft.si, L, weights?.aft?.si) : []),
  ]
  const across = target.leftShare
    ? term('left', (target.leftShare.si - 0.5) * meanTrack, meanTrack, weights?.leftShare?.si)
    : []
  const upwards = target.up ? term('up', target.up.si, L, weights?.up?.si) : []
  // The search needs the axes that a target is about, the first of them first.
  const axes = [
    { direction: 'aft' as const, terms: along },
    { direction: 'left' as const, terms: across },
  ].filter(({ terms }) => terms.length > 0)
  const heights = bays.every(({ at }) => at.up !== undefined)
  const momentOf = (bay: Bay, counts: readonly number[], direction: Direction) => {
    let slot = 0
    let moment = 0
    counts.forEach((count, i) => {
      for (let k = 0; k < count; k++)
        moment += Math.round(((groups[i] as Group).mass.si * slotAt(bay, slot++, direction)) / unit)
    })
    return moment
  }
  const fillingOf = (bay: Bay, counts: readonly number[]): Filling => {
    const [first, second] = axes.map(({ direction }) => momentOf(bay, counts, direction))
    return { counts, first: first ?? 0, second: second ?? 0, up: heights ? momentOf(bay, counts, 'up') : 0 }
  }
  const problem: Problem = {
    counts: groups.map(({ count }) => count),
    bays: bays.map((bay) => countsIn(bay, groups).map((counts) => fillingOf(bay, counts))),
    first: axes[0]?.terms ?? [],
    second: axes[1]?.terms ?? [],
    up: upwards[0],
    sameHeight: (SAME * mass * L) / unit,
  }
  return { problem, fillingOf }
}

/**
 * The unit of moments, in kg·m, of which all are whole numbers: exactly, where masses and places are round decimals of
 * one another, and else to one part in 10¹⁵ of the greatest sum.
 */
function unitOf({ groups, bays }: Given): number {
  const directions = ['aft', 'left', 'up'] as const
  const places = bays.flatMap((bay) => {
    const slots = bay.pitch === undefined ? 1 : Math.max(1, bay.capacity)
    return Array.from({ length: slots }, (_, slot) =>
      directions.map((direction) => slotAt(bay, slot, direction)),
    ).flat()
  })
  const farthest = Math.max(...places.map(Math.abs), 1e-3)
  const count = groups.reduce((sum, group) => sum + group.count, 0)
  const heaviest = Math.max(...groups.map(({ mass }) => mass.si))
  for (const reference of [(groups[0] as Group).mass.si, 1]) {
    const moments = groups.flatMap(({ mass }) => places.map((place) => (mass.si / reference) * place))
    for (let scale = 1; (farthest * heaviest * count * scale) / reference < 2 ** 52; scale *= 10) {
      if (moments.every((moment) => isWhole(moment * scale))) return reference / scale
    }
  }
  return (farthest * heaviest * count) / 2 ** 50
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) <= 4 * Number.EPSILON * Math.abs(value)
}

/** What is in a bay, group by group, each at the middle of its modules. */
function placementsIn(bay: Bay, { counts }: Filling, groups: readonly Group[]): Placement[] {
  let slot = 0
  return counts.flatMap((count, i) => {
    if (count === 0) return []
    const group = groups[i] as Group
    const middle = slot + (count - 1) / 2
    slot += count
    const along = (direction: Direction) => {
      const at = bay.at[direction] as Quantity<'length'>
      const step = bay.pitch?.[direction]
      return step === undefined ? at : at.plus(step.times(middle))
    }
    const at: Place = {
      aft: along('aft'),
      ...(bay.at.left === undefined ? {} : { left: along('left') }),
      ...(bay.at.up === undefined ? {} : { up: along('up') }),
    }
    return [{ group: group.name, bay: bay.name, count, mass: group.mass.times(count), at }]
  })
}

type PlacedStance = Pick<PlacedMasses, 'mass' | 'centreOfGravity' | 'frontShare' | 'leftShare'>

function stanceOf(read: Given, placements: readonly Placement[]): PlacedStance {
  const masses = [{ mass: read.base.mass, at: read.base.centreOfGravity }, ...placements]
  const along = (direction: Direction) =>
    section(`Centre of gravity: ${direction}`, () => commonAlong(masses, direction))
  const mass = masses.map((each) => each.mass).reduce((sum, each) => sum.plus(each))
  const aft = along('aft')
  const left = isKnown(read, 'left') ? along('left') : undefined
  const up = isKnown(read, 'up') ? along('up') : undefined
  const meanTrack = read.track.front.plus(read.track.rear).over(2)
  return {
    mass,
    centreOfGravity: { aft, ...(left && { left }), ...(up && { up }) },
    frontShare: frontShare({ aft, wheelbase: read.wheelbase }),
    ...(left && { leftShare: sideShare({ left, track: meanTrack }) }),
  }
}

/** What one place more in a full bay must gain for that bay to be called the one that binds: a tenth of a point. */
const WORTH_A_PLACE = 0.001

/** The full bay in which one more module, moved there from another bay, would bring the greatest gain. */
function bindingBay(
  { bays, groups }: Given,
  { problem, fillingOf }: Search,
  fillings: readonly Filling[],
): string | undefined {
  const countsOf = (bay: number) => (fillings[bay] as Filling).counts
  const isFull = (bay: Bay, i: number) => countsOf(i).reduce((sum, count) => sum + count, 0) === bay.capacity
  let least = deviationAt(problem, fillings) - WORTH_A_PLACE
  let binding: string | undefined
  bays.forEach((bay, to) => {
    if (!isFull(bay, to)) return
    bays.forEach((_, from) => {
      groups.forEach((group, moved) => {
        if (from === to || countsOf(from)[moved] === 0 || !accepts(bay, group)) return
        const change = (i: number, by: number) =>
          fillingOf(
            bays[i] as Bay,
            countsOf(i).map((count, each) => (each === moved ? count + by : count)),
          )
        const changed = new Map([
          [from, change(from, -1)],
          [to, change(to, 1)],
        ])
        const deviation = deviationAt(
          problem,
          fillings.map((filling, i) => changed.get(i) ?? filling),
        )
        if (deviation > least) return
        least = deviation
        binding = bay.name
      })
    })
  })
  return binding
}

function checksOf(
  { target, wheelbase }: Given,
  { centreOfGravity, frontShare: front, leftShare: left }: PlacedStance,
): Check[] {
  const point = quantity('ratio', '1 %')
  const basis = 'good practice: within a percentage point'
  const off = (name: string, difference: number) =>
    check(`${name} from its target`, quantity('ratio', Math.abs(difference)).as('%'), 'at most', point, basis)
  return [
    ...(target.frontShare ? [off('Front share', front.si - target.frontShare.si)] : []),
    ...(target.leftShare && left ? [off('Left share', left.si - target.leftShare.si)] : []),
    ...(target.aft ? [off('Place along the wheelbase', centreOfGravity.aft.minus(target.aft).ratioTo(wheelbase))] : []),
    ...(target.up && centreOfGravity.up
      ? [check('Height of the centre of gravity', centreOfGravity.up, 'at most', target.up, 'target as given')]
      : []),
  ]
}

function assumptionsOf(read: Given, proven: boolean, binding: string | undefined): string[] {
  const { target, weights, track, bays } = read
  const unweighted = (['frontShare', 'leftShare', 'aft', 'up'] as const).filter(
    (key) => target[key] !== undefined && weights?.[key] === undefined,
  )
  const unknown = bays.filter(({ at }) => at.up === undefined).map((bay) => bay.name)
  return [
    ...(unweighted.length === 0 ? [] : [`Counted with weight 1 by default: ${unweighted.join(', ')}.`]),
    ...(target.leftShare !== undefined && track.front.si !== track.rear.si
      ? ['The left share is taken on the mean of the two tracks.']
      : []),
    ...(unknown.length === 0 ? [] : [`Ties are not decided by height, which is not given for ${unknown.join(', ')}.`]),
    ...(binding === undefined ? [] : [`The bay that binds is ${binding}: one place more in it would come nearer.`]),
    ...(proven ? [] : ['There are too many placements to see them all: a better one may exist.']),
  ]
}
