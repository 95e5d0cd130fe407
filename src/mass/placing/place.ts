/**
 * Where to put modules so that a car keeps its balance: how many of each group go into which bay.
 *
 * Rests on moments about the axles (Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1). The search is exact
 * and in search.ts.
 */
import { cite, section } from '../../formula/index.js'
import { brakesAndSteering, crushZone, lithiumCells } from '../../procedure/cautions.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  procedure,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import { frontShare, sideShare } from '../balance.js'
import { commonAlong } from '../ledger.js'
import { outside, type Place } from '../position.js'
import {
  type Bay,
  capacityOf,
  type Direction,
  type Group,
  type PlaceGiven,
  placeMassesFields,
  refuseFaults,
  targetKeys,
  tooLong,
  volumeOf,
  withinLimits,
} from './given.js'
import { type Alike, alike, countsByGroup, greatestWeight, problemOf } from './numbers.js'
import { deviationAt, type Filling, type Problem, type Room, SAME } from './problem.js'
import { type Best, bestPlacement } from './search.js'
import { housed, type Overfull } from './start.js'

/** So many of a group in a bay. */
export interface Placement {
  readonly group: string
  readonly bay: string
  readonly count: number
  /** Mass of one. */
  readonly mass: Quantity<'mass'>
  readonly totalMass: Quantity<'mass'>
  /** Their common centre. */
  readonly at: Place
}

/** Where all modules go, and how the car then stands. */
export interface PlacedMasses extends Findings {
  readonly placements: readonly Placement[]
  /** The placements as parts that {@link exchangeMasses} takes. */
  readonly parts: readonly {
    readonly name: string
    readonly mass: Quantity<'mass'>
    readonly count: number
    readonly at: Place
  }[]
  readonly mass: Quantity<'mass'>
  /**
   * Of the modules, and of the base as a point, about the upright axis through the common centre of gravity: what the
   * places of the modules decide of how readily the car turns.
   */
  readonly yawInertia: Quantity<'inertia'>
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
  /** How many partial and whole placements it looked at; more than some 10⁸ it does not. */
  readonly explored: number
}

/**
 * Finds how many modules of each group to put into which bay, so that the car comes as near to its target as whole
 * modules allow, and shows that nothing is nearer. The deviation is the weighted sum of how far the car is from each
 * target: the front share and the left share (on the mean track) as they are, `aft` over the wheelbase, and `up` over the
 * wheelbase where the centre of gravity is too high. A target of weight 0 is not aimed at. Of placements with the same
 * deviation, to within 10⁻⁹ of the greatest weight, the one is taken whose modules have the least yaw inertia about the
 * centre of gravity that is aimed at (the base's own, where the target leaves it open), then the lowest, then one that
 * uses the fewest bays. Where the height is a target, the lowest comes first. Without a `pitch`, a bay's `at` is the centre of whatever is in it. With one it is the centre of the
 * first module; the next ones follow at steps of `pitch`, group by group in the order of `groups`. The work has an end, of
 * two or three seconds on an ordinary machine, counted in placements so that the answer is the same everywhere. Some 60
 * modules of one kind in 12 bays, or 16 single parts in 4, it sees through. Of more kinds, it may give the nearest
 * placement that it met, with `proven` false; the assumptions then tell by how much another can come nearer at most. Fewer
 * bays or kinds, or modules fixed by hand and counted into `base`, let it prove more.
 *
 * Answers: how many modules go into which bay, so that the car comes nearest to its target?
 *
 * - `base`: the car without the modules, with all else that goes in or out counted in
 *   - `mass`: mass of the car without the modules, in kg, above 0 kg
 *   - `centreOfGravity`: where the centre of gravity lies
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 * - `groups`: the groups of like modules, a list of at least 1
 *   - `name`: what the group is called, text
 *   - `mass`: mass of one module, in kg, above 0 kg
 *   - `count`: how many there are, a whole number, at least 1 and at most 100000
 *   - `size`: the sides of one module, optional
 *     - `length`: length, in m, above 0 m
 *     - `width`: width, in m, above 0 m
 *     - `height`: height, in m, above 0 m
 * - `bays`: the bays that take modules, a list of at least 1
 *   - `name`: what the bay is called, text
 *   - `at`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 *   - `capacity`: how many modules it holds, a whole number, at least 0
 *   - `maximumMass`: greatest mass that it carries, in kg, above 0 kg, optional
 *   - `inside`: the sides of the room within, optional
 *     - `length`: length, in m, above 0 m
 *     - `width`: width, in m, above 0 m
 *     - `height`: height, in m, above 0 m
 *   - `accepts`: the groups that fit into it; all unless given, a list, each text, optional
 *   - `pitch`: the way from one module to the next, optional
 *     - `aft`: step to the rear from one module to the next, in m, optional
 *     - `left`: step to the left from one module to the next, in m, optional
 *     - `up`: step upwards from one module to the next, in m, optional
 * - `wheelbase`: wheelbase, in m, above 0 m
 * - `track`: the distances between the wheels of an axle
 *   - `front`: front track, in m, above 0 m
 *   - `rear`: rear track, in m, above 0 m
 * - `target`: what to come near to
 *   - `frontShare`: share of the mass on the front axle, a plain number, at least 0 and at most 1, optional
 *   - `leftShare`: share of the mass on the left wheels, a plain number, at least 0 and at most 1, optional
 *   - `aft`: distance of the centre of gravity behind the front axle, in m, optional
 *   - `up`: height that the centre of gravity should not exceed, in m, at least 0 m, optional
 * - `weights`: how much each target counts, optional
 *   - `frontShare`: weight of the front share, a plain number, at least 0, optional
 *   - `leftShare`: weight of the left share, a plain number, at least 0, optional
 *   - `aft`: weight of the place along the car, a plain number, at least 0, optional
 *   - `up`: weight of the height, a plain number, at least 0, optional
 * - `limits`: the greatest masses allowed, optional
 *   - `gross`: greatest mass allowed, in kg, above 0 kg, optional
 *   - `frontAxle`: greatest mass allowed on the front axle, in kg, above 0 kg, optional
 *   - `rearAxle`: greatest mass allowed on the rear axle, in kg, above 0 kg, optional
 *
 * @returns The placements, how the car stands with them, the deviation that is left, and whether the search has proven
 * it to be the least. A check holds each target to within a percentage point, and one fails where wheels would lift; `limitedBy` names the
 * bay that binds. A base and bays that lie outside the car are named among the assumptions.
 * @throws InputError for input that cannot be used, by its path: among others more modules than the bays hold, names that
 * are used twice or not known, places that are needed and not given.
 * Source: Gillespie, Fundamentals of Vehicle Dynamics (1992), chapter 1; Horowitz & Sahni, J. ACM 21 (1974).
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
export const placeMasses = /*@__PURE__*/ procedure({
  name: 'placeMasses',
  title: 'Modules in their bays',
  answers: 'How many modules go into which bay, so that the car comes nearest to its target?',
  input: placeMassesFields,
  source: [
    cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 1'),
    cite('Horowitz & Sahni, J. ACM 21 (1974)'),
  ],
  work: (read): Unfinished<PlacedMasses> => {
    refuseFaults(read)
    // Where the bays do not carry or hold all, the modules are placed by capacity alone, and the checks tell which bay is over.
    const held = startOf(withinLimits(read))
    const { kinds, problem, start } = held ?? startOf(read) ?? refuseOverfull(read)
    const best = bestPlacement(
      problem,
      start.map((counts, i) => (problem.bays[i] as Room).fillingOf(counts)),
    )
    const placements = countsByGroup(kinds, read.groups, best.fillings).flatMap((counts, i) =>
      placementsIn(read.bays[i] as Bay, counts, read.groups),
    )
    const stance = section('The car with its modules', () => stanceOf(read, placements))
    const deviation = deviationAt(problem, best.fillings)
    const binding = deviation < WORTH_A_PLACE ? undefined : bindingBay(read, problem, best.fillings)
    return {
      placements,
      parts: placements.map(({ group, bay, mass, count, at }) => ({ name: `${group}, ${bay}`, mass, count, at })),
      ...stance,
      yawInertia: yawInertiaOf(read, placements, stance),
      deviation: quantity('ratio', deviation * greatestWeight(read)),
      ...(binding === undefined ? {} : { limitedBy: binding }),
      proven: best.proven,
      explored: best.explored,
      checks: [...checksOf(read, stance), ...limitChecks(read, stance), ...bayChecks(read, placements)],
      assumptions: assumptionsOf(read, best, deviation, binding, held !== undefined),
      cautions: [
        brakesAndSteering,
        lithiumCells,
        ...(placements.some(({ at }) => at.aft.si < 0 || at.aft.si > read.wheelbase.si) ? [crushZone] : []),
      ],
    }
  },
})

function isKnown({ base, bays }: PlaceGiven, direction: Direction): boolean {
  return base.centreOfGravity[direction] !== undefined && bays.every(({ at }) => at[direction] !== undefined)
}

/** What is searched, and from where; undefined where the bays do not take all modules. */
function startOf(asked: PlaceGiven) {
  const kinds = alike(asked)
  const problem = problemOf(asked, kinds)
  const start = housed(problem)
  return 'kinds' in start ? undefined : { kinds, problem, start }
}

/** Refuses groups that the bays have no room for. */
function refuseOverfull(read: PlaceGiven): never {
  const all = alike(read)
  const { kinds, room } = housed(problemOf(read, all)) as Overfull
  const chosen = kinds.map((kind) => all[kind] as Alike)
  const modules = chosen.reduce((sum, { count }) => sum + count, 0)
  const names = chosen.flatMap(({ groups }) => groups.map(({ name }) => name)).join(' and ')
  const expected = `at most ${room} of ${names}, as many as the bays that accept them hold`
  throw new InputError('placeMasses', [{ path: 'groups', expected, received: String(modules) }])
}

/** What is in a bay, group by group, each at the middle of its modules. */
function placementsIn(bay: Bay, counts: readonly number[], groups: readonly Group[]): Placement[] {
  let slot = 0
  return counts.flatMap((count, i) => {
    if (count === 0) return []
    const group = groups[i] as Group
    const middle = slot + (count - 1) / 2
    slot += count
    const at = placeIn(bay, middle)
    return [{ group: group.name, bay: bay.name, count, mass: group.mass, totalMass: group.mass.times(count), at }]
  })
}

/** The place of a slot of a bay, from 0; between two slots at halves. */
function placeIn({ at, pitch }: Bay, slot: number): Place {
  const along = (direction: Direction) => {
    const [start, step] = [at[direction] as Quantity<'length'>, pitch?.[direction]]
    return step === undefined ? start : start.plus(step.times(slot))
  }
  return {
    aft: along('aft'),
    ...(at.left === undefined ? {} : { left: along('left') }),
    ...(at.up === undefined ? {} : { up: along('up') }),
  }
}

/** The base and what is placed, each as one mass. */
function massesOf({ base }: PlaceGiven, placements: readonly Placement[]) {
  return [
    { mass: base.mass, at: base.centreOfGravity },
    ...placements.map(({ totalMass, at }) => ({ mass: totalMass, at })),
  ]
}

/** About the upright axis through the common centre: modules of a bay with a pitch stand apart, each at its place. */
function yawInertiaOf(
  read: PlaceGiven,
  placements: readonly Placement[],
  { centreOfGravity: { aft, left } }: PlacedStance,
): Quantity<'inertia'> {
  const spread = placements.reduce((sum, { bay: name, mass, count }) => {
    const { pitch } = read.bays.find((bay) => bay.name === name) as Bay
    const step = (pitch?.aft?.si ?? 0) ** 2 + (pitch?.left?.si ?? 0) ** 2
    return sum + (mass.si * step * (count ** 3 - count)) / 12
  }, 0)
  const apart = massesOf(read, placements).reduce((sum, { mass, at }) => {
    const aside = left === undefined ? 0 : (at.left as Quantity<'length'>).si - left.si
    return sum + mass.si * ((at.aft.si - aft.si) ** 2 + aside ** 2)
  }, 0)
  return quantity('inertia', spread + apart, 'kg·m²')
}

type PlacedStance = Pick<PlacedMasses, 'mass' | 'centreOfGravity' | 'frontShare' | 'leftShare'>

function stanceOf(read: PlaceGiven, placements: readonly Placement[]): PlacedStance {
  const masses = massesOf(read, placements)
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

/** From this deviation on, a tenth of a point, a bay is looked for that binds: below it whole modules come out so by chance. */
const WORTH_A_PLACE = 0.001

/** The full bay in which one more module, moved there from another bay, would bring the greatest gain. */
function bindingBay({ bays }: PlaceGiven, problem: Problem, fillings: readonly Filling[]): string | undefined {
  const countsOf = (bay: number) => (fillings[bay] as Filling).counts
  const isFull = (bay: number) => countsOf(bay).reduce((sum, count) => sum + count, 0) === bays[bay]?.capacity
  // However little one module moves the car, a bay binds that keeps it out.
  let least = deviationAt(problem, fillings) - SAME
  let binding: string | undefined
  problem.bays.forEach(({ takes }, to) => {
    if (!isFull(to)) return
    problem.bays.forEach((_, from) => {
      problem.counts.forEach((_, moved) => {
        if (from === to || countsOf(from)[moved] === 0 || !takes[moved]) return
        const change = (bay: number, by: number) =>
          (problem.bays[bay] as Room).fillingOf(
            countsOf(bay).map((count, each) => (each === moved ? count + by : count)),
          )
        const deviation = deviationAt(problem, fillings.with(from, change(from, -1)).with(to, change(to, 1)))
        if (deviation > least) return
        least = deviation
        binding = bays[to]?.name
      })
    })
  })
  return binding
}

function checksOf(
  { target, weights = {}, wheelbase }: PlaceGiven,
  { centreOfGravity, frontShare: front, leftShare: left }: PlacedStance,
): Check[] {
  // A target of weight 0 was not aimed at.
  const counted = <T>(key: (typeof targetKeys)[number], wanted: T) => (weights[key]?.si === 0 ? undefined : wanted)
  const counts = {
    frontShare: counted('frontShare', target.frontShare),
    leftShare: counted('leftShare', target.leftShare),
    aft: counted('aft', target.aft),
    up: counted('up', target.up),
  }
  const point = quantity('ratio', '1 %')
  const basis = 'good practice: within a percentage point'
  const off = (key: keyof typeof counts, name: string, difference: number) => {
    const actual = quantity('ratio', Math.abs(difference)).as('%')
    return check(`placing.${key}`, `${name} from its target`, actual, 'at most', point, basis, `target.${key}`, 'bays')
  }
  return [
    ...(counts.frontShare ? [off('frontShare', 'Front share', front.si - counts.frontShare.si)] : []),
    ...(counts.leftShare && left ? [off('leftShare', 'Left share', left.si - counts.leftShare.si)] : []),
    ...(counts.aft
      ? [off('aft', 'Place along the wheelbase', centreOfGravity.aft.minus(counts.aft).ratioTo(wheelbase))]
      : []),
    ...onTheWheels(front, 'front', 'rear'),
    ...(left ? onTheWheels(left, 'left', 'right') : []),
    ...(counts.up && centreOfGravity.up
      ? [
          check(
            'placing.up',
            'Height of the centre of gravity',
            centreOfGravity.up,
            'at most',
            counts.up,
            'target as given',
            'target.up',
            'bays',
          ),
        ]
      : []),
  ]
}

/** The car with its modules, held to the masses that are allowed. */
function limitChecks({ limits }: PlaceGiven, { mass, frontShare: front }: PlacedStance): Check[] {
  const onFront = mass.times(front.si)
  const held = [
    ['gross', 'Mass with the modules', mass],
    ['frontAxle', 'Mass on the front axle', onFront],
    ['rearAxle', 'Mass on the rear axle', mass.minus(onFront)],
  ] as const
  return held.flatMap(([key, name, value]) => {
    const limit = limits?.[key]
    return limit === undefined
      ? []
      : [check(`placing.${key}`, name, value, 'at most', limit, 'limit as given', `limits.${key}`)]
  })
}

/** What a bay carries and holds. */
function bayChecks({ bays, groups }: PlaceGiven, placements: readonly Placement[]): Check[] {
  return bays.flatMap(({ name, maximumMass, inside }, i) => {
    const within = placements.filter(({ bay }) => bay === name)
    if (within.length === 0) return []
    const carried = within.reduce((sum, { totalMass }) => sum.plus(totalMass), quantity('mass', 0, 'kg'))
    return [
      ...(maximumMass === undefined
        ? []
        : [
            check(
              `bay.${i + 1}.mass`,
              `Mass in the bay ${name}`,
              carried,
              'at most',
              maximumMass,
              'maximumMass, as given',
              `bays[${i}].maximumMass`,
            ),
          ]),
      ...(inside === undefined ? [] : [roomTrial(i, name, inside, within, groups)]),
    ]
  })
}

/** Whether modules can lie in the room within a bay: each by its sides, turned as it will, and all by their volume. */
function roomTrial(
  i: number,
  name: string,
  inside: NonNullable<Bay['inside']>,
  within: readonly Placement[],
  groups: readonly Group[],
): Check {
  const told = (says: Told) =>
    trial(`bay.${i + 1}.room`, `Room in the bay ${name}`, says, 'sides, as given', `bays[${i}].inside`, 'groups')
  let volume = 0
  for (const { group: called, count } of within) {
    const { size } = groups.find((each) => each.name === called) as Group
    if (size === undefined) return told({ unknown: `whether ${called} fits into ${name} is not known: give its size` })
    const wide = tooLong(size, inside)
    if (wide !== undefined)
      return told({ fail: `${called} does not go into ${name}, however it is turned: its side of ${wide} is too long` })
    volume += count * volumeOf(size)
  }
  const litres = (cubicMetres: number) => quantity('volume', cubicMetres, 'm³').as('L')
  return told(says`the modules take up ${litres(volume)} in ${name}, at most the ${litres(volumeOf(inside))} within`)
}

/** Fails where the car would tip over, off the wheels of one side. */
function onTheWheels(share: Quantity<'ratio'>, side: string, other: string): Check[] {
  const lifted = share.si < 0 ? { side, of: share } : { side: other, of: quantity('ratio', 1 - share.si) }
  if (lifted.of.si >= 0) return []
  const [id, name] = [`placing.${lifted.side}Wheels`, `Share on the ${lifted.side} wheels`]
  const basis = 'wheels carry weight, they do not hold it down'
  return [check(id, name, lifted.of.as('%'), 'at least', quantity('ratio', '0 %'), basis, 'base', 'bays')]
}

/** Says of the base and of bays, at their first and last places, that they lie where few cars have anything. */
function outsideOf({ base, groups, bays, wheelbase, track }: PlaceGiven): Assumption[] {
  const car = { wheelbase, track }
  return [
    ...outside('base.centreOfGravity', 'The base', base.centreOfGravity, car),
    ...bays.flatMap((bay, i) => {
      const path = `bays[${i}].at`
      const first = outside(path, bay.name, bay.at, car)
      const last = placeIn(bay, Math.max(0, capacityOf(bay, groups) - 1))
      return first.length > 0 ? first : outside(path, `The last place of ${bay.name}`, last, car)
    }),
  ]
}

function assumptionsOf(
  read: PlaceGiven,
  { proven, bound, explored }: Best,
  deviation: number,
  binding: string | undefined,
  isHeld: boolean,
): Assumption[] {
  const { target, weights, track, bays } = read
  const unweighted = targetKeys.filter((key) => target[key] !== undefined && weights?.[key] === undefined)
  const unknown = bays.filter(({ at }) => at.up === undefined).map((bay) => bay.name)
  const tell = (isSo: boolean, id: string, text: string) => (isSo ? [assumed(id, text)] : [])
  return [
    ...tell(unweighted.length > 0, 'weights.default', `Counted with weight 1 by default: ${unweighted.join(', ')}.`),
    ...tell(
      target.leftShare !== undefined && track.front.si !== track.rear.si,
      'track.mean',
      'The left share is taken on the mean of the two tracks.',
    ),
    ...tell(
      unknown.length > 0,
      'placing.ties',
      `Ties are not decided by height, which is not given for ${unknown.join(', ')}.`,
    ),
    ...tell(
      read.groups.length > 1 && bays.some(({ pitch }) => pitch !== undefined),
      'placing.order',
      'Within a bay with a pitch the groups follow one another as they are given: no other order was tried, and proven says nothing of it.',
    ),
    ...tell(
      isHeld && read.groups.length > 1 && bays.some(({ maximumMass, inside }) => (maximumMass ?? inside) !== undefined),
      'placing.held',
      'The search counts what a bay carries and has room for group by group: where groups share a bay, their sum is only checked.',
    ),
    ...tell(
      !isHeld,
      'placing.notHeld',
      'The bays do not carry all the modules, or have no room for them: they were placed by capacity alone.',
    ),
    ...outsideOf(read),
    ...tell(
      binding !== undefined,
      'placing.limitedBy',
      `The bay that binds is ${binding}: one place more in it would come nearer.`,
    ),
    ...tell(
      !proven,
      'placing.unproven',
      `There are too many placements to see them all: ${explored} partial and whole ones were looked at. Another may come nearer, by ${quantity('ratio', (deviation - bound) * greatestWeight(read)).as('%')} at most.`,
    ),
  ]
}
