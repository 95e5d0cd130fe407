/** Which points are dominated by none: by division, so that a hundred thousand are no trouble. */

/** A point, by what it costs in each objective. @internal */
export interface Point {
  readonly costs: readonly number[]
}

/** Fewer than so many are held against each of the others, which is sooner done than to part them. */
const FEW = 16

/**
 * The points that no other dominates, no two of which may be equal. A point dominates another where it costs no more in
 * each objective.
 *
 * The method is the division of Kung, Luccio and Preparata (Journal of the ACM 22 (1975) 469): of n points with k costs it
 * takes some n (log n)^(k-1) steps.
 *
 * @internal
 */
export function nonDominated<P extends Point>(points: readonly P[]): readonly P[] {
  return frontIn(
    points.toSorted(({ costs: one }, { costs: other }) => {
      const i = one.findIndex((cost, k) => cost !== other[k])
      return at(one, i) - at(other, i)
    }),
  )
}

function at(costs: readonly number[], i: number): number {
  return costs[i] as number
}

/** Of points in the order of their costs, of which none dominates one before it. */
function frontIn<P extends Point>(points: readonly P[]): readonly P[] {
  if (points.length < 2) return points
  const middle = points.length >> 1
  const [before, after] = [frontIn(points.slice(0, middle)), frontIn(points.slice(middle))]
  // By their first cost those before are no worse.
  return [...before, ...undominated(before, after, 1)]
}

/** Which points others do not dominate that cost no more than they in the objectives before the i-th. */
function undominated<P extends Point>(others: readonly P[], points: readonly P[], i: number): readonly P[] {
  if (others.length === 0 || points.length === 0) return points
  const { length } = (points[0] as P).costs
  if (i >= length) return []
  if (i >= length - 2) return swept(others, points, i)
  if (others.length < FEW || points.length < FEW) {
    const isLess = (other: P, { costs }: P) => other.costs.every((cost, k) => k < i || cost <= at(costs, k))
    return points.filter((point) => !others.some((other) => isLess(other, point)))
  }
  const bound = boundOf([...others, ...points], i)
  if (bound === undefined) return undominated(others, points, i + 1)
  const [cheapOthers, dearOthers] = parted(others, i, bound)
  const [cheap, dear] = parted(points, i, bound)
  // What is dear dominates nothing that is cheap; what is cheap is better by this objective than all that is dear.
  return [...undominated(cheapOthers, cheap, i), ...undominated(dearOthers, undominated(cheapOthers, dear, i + 1), i)]
}

/** The same where only the i-th objective and perhaps one more are left: from the cheapest on, by the least of the last. */
function swept<P extends Point>(others: readonly P[], points: readonly P[], i: number): readonly P[] {
  const byCost = ({ costs: one }: P, { costs: other }: P) => at(one, i) - at(other, i)
  const last = ({ costs }: P) => at(costs, costs.length - 1)
  const waiting = others.toSorted(byCost)
  let [next, least] = [0, Number.POSITIVE_INFINITY]
  return points.toSorted(byCost).filter((point) => {
    for (let other = waiting[next]; other !== undefined && byCost(other, point) <= 0; other = waiting[++next]) {
      least = Math.min(least, last(other))
    }
    return last(point) < least
  })
}

/** A cost that parts points, about in the middle; undefined where all cost the same. */
function boundOf(points: readonly Point[], i: number): number | undefined {
  const all = Float64Array.from(points, ({ costs }) => at(costs, i)).sort()
  const [least, most] = [all[0] as number, all.at(-1) as number]
  if (least === most) return undefined
  const middle = all[all.length >> 1] as number
  return middle < most ? middle : all.findLast((cost) => cost < most)
}

function parted<P extends Point>(points: readonly P[], i: number, bound: number): readonly [P[], P[]] {
  const [cheap, dear]: [P[], P[]] = [[], []]
  for (const each of points) (at(each.costs, i) <= bound ? cheap : dear).push(each)
  return [cheap, dear]
}
