/**
 * A placement to start from: all modules in bays that take them, then moved and exchanged while that brings the car
 * nearer to its target.
 *
 * Room for all is found along paths on which modules make way for one another (maximum flow: Ford & Fulkerson, Maximal
 * Flow through a Network, Canadian Journal of Mathematics 8 (1956)). Where it ends short, the kinds and bays that the
 * last path reached show why (Hall, On Representatives of Subsets, 1935). Moves that gain are made until there is none;
 * then a few are made at random and it begins again (iterated local search: Lourenço, Martin & Stützle, in Handbook of
 * Metaheuristics (2003)).
 */
import { deviationOf, type Filling, type Problem, type Progress, SAME, totalOf } from './problem.js'

/** Kinds for which there is too little room. @internal */
export interface Overfull {
  readonly kinds: readonly number[]
  /** How many modules the bays hold that take any of them. */
  readonly room: number
}

/** Counts by bay and kind. */
type Counts = readonly (readonly number[])[]

/** Puts all modules into bays that take them, or tells for which there is no room. @internal */
export function housed({ counts, bays }: Problem): Counts | Overfull {
  const housed = bays.map(() => counts.map(() => 0))
  const roomIn = bays.map(({ capacity }) => capacity)
  const change = (bay: number, kind: number, by: number) => {
    const row = housed[bay] as number[]
    row[kind] = (row[kind] as number) + by
  }
  for (const [kind, count] of counts.entries()) {
    for (let left = count; left > 0; ) {
      // Breadth first: which kinds could go where, and which others could make way for them there.
      const reached = [kind]
      const comesFrom = new Map<number, number>()
      const makesWayIn = new Map<number, number>()
      let end: number | undefined
      for (let next = 0; next < reached.length && end === undefined; next++) {
        const wanting = reached[next] as number
        end = bays.findIndex(({ takes }, bay) => {
          if (takes[wanting] !== true || comesFrom.has(bay)) return false
          comesFrom.set(bay, wanting)
          if ((roomIn[bay] as number) > 0) return true
          for (const [other, there] of (housed[bay] as number[]).entries()) {
            if (there === 0 || reached.includes(other)) continue
            reached.push(other)
            makesWayIn.set(other, bay)
          }
          return false
        })
        if (end < 0) end = undefined
      }
      if (end === undefined) {
        const room = [...comesFrom.keys()].reduce((sum, bay) => sum + (bays[bay]?.capacity ?? 0), 0)
        return { kinds: reached.sort((a, b) => a - b), room }
      }
      const path: { readonly bay: number; readonly kind: number; readonly from: number | undefined }[] = []
      for (let bay: number | undefined = end; bay !== undefined; ) {
        const moved = comesFrom.get(bay) as number
        const from = moved === kind ? undefined : makesWayIn.get(moved)
        path.push({ bay, kind: moved, from })
        bay = from
      }
      const many = path.reduce(
        (least, { kind: moved, from }) => (from === undefined ? least : Math.min(least, housed[from]?.[moved] ?? 0)),
        Math.min(left, roomIn[end] as number),
      )
      for (const { bay, kind: moved, from } of path) {
        change(bay, moved, many)
        if (from !== undefined) change(from, moved, -many)
      }
      roomIn[end] = (roomIn[end] as number) - many
      left -= many
    }
  }
  return housed
}

/** How many moves at random come before the next climb. */
const KICKS = 3

/**
 * Moves and exchanges modules as long as that brings the car nearer to its target, again and again from changed starts.
 *
 * @param steps - How many placements to look at.
 *
 * @internal
 */
export function improved(
  problem: Problem,
  start: readonly Filling[],
  steps: number,
  progress: Progress,
): readonly Filling[] {
  const random = randomOf(1)
  const end = progress.explored + steps
  let best = climbed(problem, start, end, progress)
  while (progress.explored < end && best.deviation > SAME) {
    let fillings = best.fillings
    for (let kick = 0; kick < KICKS; kick++) fillings = kicked(problem, fillings, random)
    progress.explored += KICKS
    const next = climbed(problem, fillings, end, progress)
    if (next.deviation <= best.deviation) best = next
  }
  return best.fillings
}

interface Placed {
  readonly fillings: readonly Filling[]
  readonly deviation: number
}

/** Makes every move that gains, until there is none or the steps are used up. */
function climbed(problem: Problem, start: readonly Filling[], end: number, progress: Progress): Placed {
  let fillings = start
  let total = totalOf(fillings)
  let deviation = deviationOf(problem, total.first, total.second, total.up)
  for (let gains = true; gains; ) {
    gains = false
    for (let from = 0; from < fillings.length; from++) {
      for (let to = 0; to < fillings.length; to++) {
        if (from === to) continue
        for (const move of movesBetween(problem, fillings, from, to)) {
          if (progress.explored++ >= end) return { fillings, deviation }
          const [out, into] = changed(problem, fillings, move)
          const [a, b] = [fillings[from] as Filling, fillings[to] as Filling]
          const first = total.first - a.first - b.first + out.first + into.first
          const second = total.second - a.second - b.second + out.second + into.second
          const up = total.up - a.up - b.up + out.up + into.up
          const next = deviationOf(problem, first, second, up)
          // A gain in the last digits may be no gain, and would go round in circles.
          if (next > deviation - SAME / 1000) continue
          fillings = fillings.with(from, out).with(to, into)
          total = { first, second, up }
          deviation = next
          gains = true
          break
        }
      }
    }
  }
  return { fillings, deviation }
}

/** So many of a kind go from one bay to another, and one of a kind may come back for them. */
interface Move {
  readonly from: number
  readonly to: number
  readonly kind: number
  readonly many: number
  readonly back: number | undefined
}

function* movesBetween(
  { counts, bays }: Problem,
  fillings: readonly Filling[],
  from: number,
  to: number,
): Generator<Move> {
  const [here, there] = [(fillings[from] as Filling).counts, (fillings[to] as Filling).counts]
  const [source, goal] = [bays[from], bays[to]]
  const room = (goal?.capacity ?? 0) - there.reduce((sum, count) => sum + count, 0)
  for (let kind = 0; kind < counts.length; kind++) {
    if (here[kind] === 0 || goal?.takes[kind] !== true) continue
    for (let many = Math.min(here[kind] as number, room); many > 0; many >>= 1) {
      yield { from, to, kind, many, back: undefined }
    }
    for (let back = 0; back < counts.length; back++) {
      if (back === kind || there[back] === 0 || source?.takes[back] !== true) continue
      yield { from, to, kind, many: 1, back }
    }
  }
}

/** What a move makes of the two bays. */
function changed({ bays }: Problem, fillings: readonly Filling[], { from, to, kind, many, back }: Move) {
  const with_ = (bay: number, by: number) => {
    const counts = [...(fillings[bay] as Filling).counts]
    counts[kind] = (counts[kind] as number) + by * many
    if (back !== undefined) counts[back] = (counts[back] as number) - by
    return bays[bay]?.fillingOf(counts) as Filling
  }
  return [with_(from, -1), with_(to, 1)] as const
}

/** The placement after a move at random, if there is one between two bays at random. */
function kicked(problem: Problem, fillings: readonly Filling[], random: (below: number) => number) {
  const [from, to] = [random(fillings.length), random(fillings.length)]
  const moves = from === to ? [] : [...movesBetween(problem, fillings, from, to)]
  const move = moves[random(moves.length)]
  if (move === undefined) return fillings
  const [out, into] = changed(problem, fillings, move)
  return fillings.with(from, out).with(to, into)
}

/** Whole numbers below a bound that look random and are the same on every run (Park & Miller, 1988). */
function randomOf(seed: number): (below: number) => number {
  let state = seed
  return (below) => {
    state = (state * 48271) % 2147483647
    return state % Math.max(1, below)
  }
}
