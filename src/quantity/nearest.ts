/** The known name that a mistyped one most likely meant. */

/** Single-character edits (insert, delete, replace, or exchange two neighbours) that turn one text into the other. */
function editDistance(from: string, to: string): number {
  let previous: number[] = []
  let row = Array.from({ length: to.length + 1 }, (_, column) => column)
  for (let i = 1; i <= from.length; i++) {
    const next = [i]
    for (let j = 1; j <= to.length; j++) {
      const replace = (row[j - 1] as number) + (from[i - 1] === to[j - 1] ? 0 : 1)
      let least = Math.min(replace, (row[j] as number) + 1, (next[j - 1] as number) + 1)
      if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
        least = Math.min(least, (previous[j - 2] as number) + 1)
      }
      next.push(least)
    }
    previous = row
    row = next
  }
  return row[to.length] as number
}

/**
 * The name among `known` nearest to `name`: the same but for capitals, or few edits away (one in a
 * short name, a third of its length in a longer one). Undefined when nothing is near.
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  const folded = name.toLowerCase()
  const same = known.find((candidate) => candidate.toLowerCase() === folded)
  if (same !== undefined) return same
  const reach = Math.max(1, Math.floor(name.length / 3))
  let nearest: string | undefined
  let least = reach + 1
  for (const candidate of known) {
    if (Math.abs(candidate.length - name.length) >= least) continue
    const distance = editDistance(folded, candidate.toLowerCase())
    if (distance < least && distance < candidate.length) [nearest, least] = [candidate, distance]
  }
  return nearest
}
