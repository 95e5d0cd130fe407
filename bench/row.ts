/** A line of the benchmark's table: what was measured, what it came to, the bar, and whether the bar is met. */
export interface Row {
  readonly what: string
  /** The medians or sizes that were compared. */
  readonly measured: string
  /** What is held against the bar. */
  readonly figure: string
  readonly bar: string
  readonly met: boolean
}

/** The table as text. */
export function tableOf(rows: readonly Row[]): string {
  const head = ['what', 'measured', 'figure', 'bar', 'met']
  const cells = rows.map(({ what, measured, figure, bar, met }) => [what, measured, figure, bar, met ? 'yes' : 'NO'])
  const widths = head.map((title, i) => Math.max(...[head, ...cells].map((line) => (line[i] ?? title).length)))
  const lineOf = (line: readonly string[]) =>
    line
      .map((cell, i) => cell.padEnd(widths[i] ?? 0))
      .join('   ')
      .trimEnd()
  return [head, widths.map((width) => '-'.repeat(width)), ...cells].map(lineOf).join('\n')
}

/** A duration in nanoseconds as text. */
export function durationText(ns: number): string {
  if (ns < 1e3) return `${ns.toFixed(1)} ns`
  return ns < 1e6 ? `${(ns / 1e3).toFixed(2)} µs` : `${(ns / 1e6).toFixed(1)} ms`
}

/** The middle of some numbers. */
export function medianOf(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  const middle = sorted.length / 2
  return ((sorted[Math.floor(middle)] ?? Number.NaN) + (sorted[Math.ceil(middle) - 1] ?? sorted[0] ?? Number.NaN)) / 2
}
