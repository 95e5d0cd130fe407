/** Tables of points: what stands between two of them. */

/** Points whose first numbers rise, at least two. @internal */
export type Points = readonly (readonly [at: number, value: number])[]

/** The two rows of a table that a number lies between; beyond an end, which is the caller's to refuse, the two outermost. @internal */
export function rowsAround<Row extends readonly number[]>(
  rows: readonly Row[],
  at: number,
): readonly [low: Row, high: Row] {
  let above = 1
  while (above < rows.length - 1 && ((rows[above] as Row)[0] as number) <= at) above++
  return [rows[above - 1] as Row, rows[above] as Row]
}

/** The value on the straight line between two points. @internal */
export function straightAt(points: Points, at: number): number {
  const [low, high] = rowsAround(points, at)
  return low[1] + ((at - low[0]) / (high[0] - low[0])) * (high[1] - low[1])
}

/** The value on the line between two points that is straight on logarithmic scales. @internal */
export function straightInLogs(points: Points, at: number): number {
  const [low, high] = rowsAround(points, at)
  return low[1] * (high[1] / low[1]) ** (Math.log(at / low[0]) / Math.log(high[0] / low[0]))
}
