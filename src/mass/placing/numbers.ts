/** From what is to be placed to the numbers that the search works on, and back. */
import {
  accepts,
  type Bay,
  capacityOf,
  type Direction,
  type Group,
  type PlaceGiven,
  slotAt,
  targetKeys,
} from './given.js'
import { type Filling, type Problem, SAME, type Term } from './problem.js'

/** Groups that differ in name only: their modules weigh the same and fit into the same bays. @internal */
export interface Alike {
  readonly mass: number
  readonly count: number
  readonly groups: readonly Group[]
}

/**
 * Puts groups together that differ in name only, where it does not change which module comes first in a bay with a pitch.
 * @internal
 */
export function alike({ groups, bays }: PlaceGiven): readonly Alike[] {
  const isPitched = bays.some(({ pitch }) => pitch !== undefined)
  const kinds: Alike[] = []
  for (const group of groups) {
    const same = kinds.findIndex(
      ({ mass, groups: [first] }, i) =>
        mass === group.mass.si &&
        (!isPitched || i === kinds.length - 1) &&
        bays.every((bay) => accepts(bay, group) === accepts(bay, first as Group)),
    )
    const kind = kinds[same]
    if (kind === undefined) kinds.push({ mass: group.mass.si, count: group.count, groups: [group] })
    else kinds[same] = { ...kind, count: kind.count + group.count, groups: [...kind.groups, group] }
  }
  return kinds
}

/** How many of each group are in each bay, where it is known how many of each kind are. @internal */
export function countsByGroup(
  kinds: readonly Alike[],
  groups: readonly Group[],
  fillings: readonly Filling[],
): readonly (readonly number[])[] {
  const left = new Map(groups.map((group) => [group, group.count]))
  return fillings.map(({ counts }) => {
    const taken = new Map<Group, number>()
    counts.forEach((count, kind) => {
      let wanted = count
      for (const group of kinds[kind]?.groups ?? []) {
        const many = Math.min(wanted, left.get(group) as number)
        wanted -= many
        left.set(group, (left.get(group) as number) - many)
        taken.set(group, many)
      }
    })
    return groups.map((group) => taken.get(group) ?? 0)
  })
}

/** The greatest weight of a target. The search takes it as 1, as what it takes for a tie is fixed. @internal */
export function greatestWeight({ target, weights = {} }: PlaceGiven): number {
  return targetKeys.reduce((most, key) => (target[key] ? Math.max(most, weights[key]?.si ?? 1) : most), 0)
}

/** What is to be searched. @internal */
export function problemOf(read: PlaceGiven, kinds: readonly Alike[]): Problem {
  const { base, groups, bays, wheelbase, target, weights } = read
  const unit = unitOf(read)
  const greatest = greatestWeight(read)
  const mass = base.mass.si + groups.reduce((sum, group) => sum + group.mass.si * group.count, 0)
  const meanTrack = (read.track.front.si + read.track.rear.si) / 2
  /** A weighted difference from a target: of the centre of gravity from a place, over a length. */
  const term = (direction: Direction, place: number, length: number, given = 1): Term[] => {
    const weight = given / greatest
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
  const aim = aimOf(read)
  const yawUnit = yawUnitOf(read, aim)
  const fillingOf = (bay: Bay, counts: readonly number[]): Filling => {
    const momentAlong = (direction: Direction) => momentOf(bay, kinds, counts, direction, unit)
    const [first, second] = axes.map(({ direction }) => momentAlong(direction))
    const yaw = Math.round(yawOf(bay, kinds, counts, aim) / yawUnit)
    return { counts, first: first ?? 0, second: second ?? 0, up: heights ? momentAlong('up') : 0, yaw }
  }
  return {
    counts: kinds.map(({ count }) => count),
    bays: bays.map((bay) => {
      const capacity = capacityOf(bay, groups)
      return {
        capacity,
        takes: kinds.map(({ groups: [first] }) => accepts(bay, first as Group)),
        fillingOf: remembered(kinds.length, capacity, (counts) => fillingOf(bay, counts)),
      }
    }),
    first: axes[0]?.terms ?? [],
    second: axes[1]?.terms ?? [],
    up: upwards[0],
    // A height that counts must stay the lowest of its sums: it decides first.
    ties:
      upwards.length > 0
        ? [
            { sum: 'up', same: (SAME * mass * L) / unit },
            { sum: 'yaw', same: (SAME * mass * L ** 2) / yawUnit },
          ]
        : [
            { sum: 'yaw', same: (SAME * mass * L ** 2) / yawUnit },
            { sum: 'up', same: (SAME * mass * L) / unit },
          ],
  }
}

/** A bay of which so many fillings are possible has each worked out only once: a search meets the same again and again. */
const FEW_FILLINGS = 1e4

function remembered(
  kinds: number,
  capacity: number,
  work: (counts: readonly number[]) => Filling,
): (counts: readonly number[]) => Filling {
  const base = capacity + 1
  if (base ** kinds > FEW_FILLINGS) return work
  const known: Filling[] = []
  return (counts) => {
    const code = counts.reduce((sum, count) => sum * base + count, 0)
    known[code] ??= work(counts)
    return known[code]
  }
}

/** The moment of what is in a bay, in units. Modules of a kind follow one another, so that their middle stands for all. */
function momentOf(
  bay: Bay,
  kinds: readonly Alike[],
  counts: readonly number[],
  direction: Direction,
  unit: number,
): number {
  const [at, step] = [slotAt(bay, 0, direction), bay.pitch?.[direction]?.si ?? 0]
  let slot = 0
  let moment = 0
  for (let kind = 0; kind < counts.length; kind++) {
    const count = counts[kind] as number
    if (count === 0) continue
    const steps = count * slot + (count * (count - 1)) / 2
    moment += Math.round(((kinds[kind] as Alike).mass * (count * at + steps * step)) / unit)
    slot += count
  }
  return moment
}

/** A point that the upright axis goes through, by directions; of those that are not known of all there is none. */
type Aim = readonly (readonly [Direction, number])[]

/** Where the target wants the centre of gravity; the base's own where it says nothing. */
function aimOf({ base, bays, wheelbase, track, target }: PlaceGiven): Aim {
  const { aft, left } = base.centreOfGravity
  const { frontShare, leftShare } = target
  const behind = target.aft?.si ?? (frontShare ? (1 - frontShare.si) * wheelbase.si : aft.si)
  const across = leftShare ? ((leftShare.si - 0.5) * (track.front.si + track.rear.si)) / 2 : left?.si
  const isKnown = across !== undefined && bays.every(({ at }) => at.left !== undefined)
  return [['aft', behind], ...(isKnown ? [['left', across] as const] : [])]
}

/** The second moment of what is in a bay about the axis, in kg·m². */
function yawOf(bay: Bay, kinds: readonly Alike[], counts: readonly number[], aim: Aim): number {
  let slot = 0
  let sum = 0
  counts.forEach((count, kind) => {
    // The sums of the slots and of their squares, from the first of the kind to its last.
    const slots = count * slot + (count * (count - 1)) / 2
    const squares = count * slot ** 2 + slot * count * (count - 1) + ((count - 1) * count * (2 * count - 1)) / 6
    for (const [direction, from] of aim) {
      const [apart, step] = [slotAt(bay, 0, direction) - from, bay.pitch?.[direction]?.si ?? 0]
      sum += (kinds[kind] as Alike).mass * (count * apart ** 2 + 2 * apart * step * slots + step ** 2 * squares)
    }
    slot += count
  })
  return sum
}

const directions = ['aft', 'left', 'up'] as const

/** The unit of moments, in kg·m. */
function unitOf({ groups, bays }: PlaceGiven): number {
  const along = bays.flatMap((bay) => directions.map((direction) => ({ bay, direction })))
  const places = along.flatMap(({ bay, direction }) => [slotAt(bay, 0, direction), bay.pitch?.[direction]?.si ?? 0])
  return wholeUnit(
    groups,
    places,
    farthestOf(
      groups,
      bays,
      directions.map((direction) => [direction, 0]),
    ),
  )
}

/** The unit of second moments, in kg·m². */
function yawUnitOf({ groups, bays }: PlaceGiven, aim: Aim): number {
  const parts = bays.flatMap((bay) =>
    aim.flatMap(([direction, from]) => {
      const [apart, step] = [slotAt(bay, 0, direction) - from, bay.pitch?.[direction]?.si ?? 0]
      return [apart ** 2, 2 * apart * step, step ** 2]
    }),
  )
  return wholeUnit(groups, parts, 2 * farthestOf(groups, bays, aim) ** 2)
}

/** How far from a point a module can come to lie, along one direction. */
function farthestOf(groups: readonly Group[], bays: readonly Bay[], point: Aim): number {
  return bays.reduce((most, bay) => {
    const last = Math.max(0, capacityOf(bay, groups) - 1)
    const apart = point.flatMap(([direction, from]) => [0, last].map((slot) => slotAt(bay, slot, direction) - from))
    return Math.max(most, ...apart.map(Math.abs))
  }, 1e-3)
}

/**
 * A unit of which sums of masses times these factors are whole numbers: exactly, where masses and places are round
 * decimals of one another, and else to one part in 10¹⁴ of the greatest sum.
 */
function wholeUnit(groups: readonly Group[], factors: readonly number[], farthest: number): number {
  const count = groups.reduce((sum, group) => sum + group.count, 0)
  const heaviest = groups.reduce((most, { mass }) => Math.max(most, mass.si), 0)
  // Sums of so many units are worked out to less than half a unit in doubles.
  const greatest = 2 ** 48
  for (const reference of [(groups[0] as Group).mass.si, 1]) {
    const moments = groups.flatMap(({ mass }) => factors.map((factor) => (mass.si / reference) * factor))
    for (let scale = 1; (farthest * heaviest * count * scale) / reference < greatest; scale *= 10) {
      if (moments.every((moment) => isWhole(moment * scale))) return reference / scale
    }
  }
  return (farthest * heaviest * count) / greatest
}

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) <= 4 * Number.EPSILON * Math.abs(value)
}
