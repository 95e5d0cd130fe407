/**
 * Groups of modules that share the current as evenly as can be, where every group must hold enough.
 *
 * Rests on circuit theory: modules in parallel share the current by their conductances.
 */

/** A module on plain numbers. @internal */
export interface Member {
  readonly capacity: number
  readonly conductance: number
}

type Groups = readonly (readonly number[])[]

/** How many steps an exact search for a grouping may take. @internal */
export const STEPS = 200_000

/** What rounding may do to a sum or a share, as a share of it. */
const ROUNDING = 1e-12

/** How a grouping serves: by the share of the hardest module in the current of its group, then by its weakest group. */
interface Cost {
  readonly share: number
  readonly least: number
}

const isLess = (one: number, other: number) => one < other * (1 - ROUNDING)

function isBetter(one: Cost, other: Cost): boolean {
  return isLess(one.share, other.share) || (!isLess(other.share, one.share) && isLess(other.least, one.least))
}

/**
 * The grouping in which the hardest module takes the least share of the current of its group; of those alike, the one
 * whose weakest group holds most.
 *
 * @param start - A grouping, in indices of the members.
 * @param floor - What each group must hold at least: not more than those of the start.
 * @internal
 */
export function evenest(
  members: readonly Member[],
  start: Groups,
  floor: number,
): { readonly groups: Groups; readonly proven: boolean } {
  const enough = floor * (1 - ROUNDING)
  return searched(members, exchanged(members, start, enough), enough)
}

function capacityOf(members: readonly Member[], group: readonly number[]): number {
  return group.reduce((sum, i) => sum + (members[i] as Member).capacity, 0)
}

/** The share that the hardest module of a group takes of its current. */
function hardestShare(members: readonly Member[], group: readonly number[]): number {
  const conductances = group.map((i) => (members[i] as Member).conductance)
  return Math.max(...conductances) / conductances.reduce((sum, each) => sum + each, 0)
}

function costOf(members: readonly Member[], groups: Groups): Cost {
  return {
    share: Math.max(...groups.map((group) => hardestShare(members, group))),
    least: Math.min(...groups.map((group) => capacityOf(members, group))),
  }
}

/** Exchanges a module of the group of the hardest one for another while the harder of the two groups gains. */
function exchanged(members: readonly Member[], start: Groups, floor: number): Groups {
  const groups = [...start]
  for (;;) {
    const shares = groups.map((group) => hardestShare(members, group))
    const worst = shares.indexOf(Math.max(...shares))
    const own = groups[worst] as readonly number[]
    let best: { readonly share: number; readonly swap: () => void } | undefined
    groups.forEach((other, at) => {
      if (at === worst) return
      for (const theirs of other) {
        for (const ours of own) {
          const [one, two] = [replaced(own, ours, theirs), replaced(other, theirs, ours)]
          const share = Math.max(hardestShare(members, one), hardestShare(members, two))
          if (!isLess(share, best?.share ?? (shares[worst] as number))) continue
          if (Math.min(capacityOf(members, one), capacityOf(members, two)) < floor) continue
          best = {
            share,
            swap: () => {
              ;[groups[worst], groups[at]] = [one, two]
            },
          }
        }
      }
    })
    if (best === undefined) return groups
    best.swap()
  }
}

function replaced(group: readonly number[], one: number, other: number): number[] {
  return group.map((i) => (i === one ? other : i))
}

/**
 * Looks for groupings better than a first one, group by group: each is built around the module that conducts best of
 * those left, so that no grouping is met twice and that module is the hardest of its group.
 */
function searched(
  members: readonly Member[],
  start: Groups,
  floor: number,
): { readonly groups: Groups; readonly proven: boolean } {
  const size = (start[0] as readonly number[]).length
  let best = start
  let cost = costOf(members, start)
  let steps = 0
  const of = (i: number) => members[i] as Member
  const search = (left: readonly number[], done: Groups, made: Cost): void => {
    if (left.length === 0) {
      ;[best, cost] = [done, made]
      return
    }
    const hardest = of(left[0] as number).conductance
    const choose = (group: readonly number[], from: number, conductance: number): void => {
      if (++steps > STEPS) return
      const missing = size - group.length
      if (missing === 0) {
        const held = capacityOf(members, group)
        const others = left.filter((i) => !group.includes(i))
        const now = { share: Math.max(made.share, hardest / conductance), least: Math.min(made.least, held) }
        if (held < floor || !mayHold(members, others, size, floor)) return
        const mean = others.length === 0 ? Infinity : (capacityOf(members, others) / others.length) * size
        if (isBetter({ ...now, least: Math.min(now.least, mean) }, cost)) search(others, [...done, group], now)
        return
      }
      for (let at = from; at + missing <= left.length; at++) {
        const next = of(left[at] as number).conductance
        // Even with as many of this one as are missing the first would be too hard: the later ones conduct less still.
        const share = Math.max(made.share, hardest / (conductance + missing * next))
        if (isLess(cost.share, share)) return
        choose([...group, left[at] as number], at + 1, conductance + next)
        if (steps > STEPS) return
      }
    }
    choose([left[0] as number], 1, hardest)
  }
  const ranked = members.map((_, i) => i).sort((one, other) => of(other).conductance - of(one).conductance)
  search(ranked, [], { share: 0, least: Infinity })
  return { groups: best, proven: steps <= STEPS }
}

/** Whether the members left may still make groups that hold enough; of pairs, whether they do. */
function mayHold(members: readonly Member[], left: readonly number[], size: number, floor: number): boolean {
  const sorted = left.map((i) => (members[i] as Member).capacity).sort((one, other) => other - one)
  // Pairs of strongest and weakest are those whose least sum is greatest; a weakest one in a larger group may take the best.
  const pairs = size === 2 ? sorted.length / 2 : Math.min(1, sorted.length)
  return Array.from({ length: pairs }, (_, i) => {
    const [weakest, strongest] = [sorted[sorted.length - 1 - i] as number, sorted.slice(i, i + size - 1)]
    return strongest.reduce((sum, each) => sum + each, weakest)
  }).every((sum) => sum >= floor)
}
