/** Rows in columns. */

/** Rows with the first column to the left and the others to the right, each as wide as its widest cell. */
export function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths: number[] = []
  for (const row of rows) for (const [i, cell] of row.entries()) widths[i] = Math.max(widths[i] ?? 0, cell.length)
  return rows.map((row) =>
    row
      .map((cell, i) => (i === 0 ? `  ${cell.padEnd(widths[0] as number)}` : cell.padStart((widths[i] as number) + 2)))
      .join('')
      .trimEnd(),
  )
}

/** Headings that are paths, a name in each line: under one another they take no more room than what stands below. */
export function stacked(headings: readonly string[]): string[][] {
  const names = headings.map((heading) => heading.split('.'))
  const height = Math.max(0, ...names.map(({ length }) => length))
  return Array.from({ length: height }, (_, line) => names.map((parts) => parts[line - height + parts.length] ?? ''))
}

/** A text of one line in so many characters. */
export function cut(text: string, most: number): string {
  const line = text.replace(/\s+/g, ' ')
  return line.length > most ? `${line.slice(0, most - 1)}…` : line
}
