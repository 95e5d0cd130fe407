/** The known name that a mistyped one most likely meant. */

/** Single-character edits (insert, delete, replace) that turn one text into the other. */
function editDistance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, column) => column)
  for (let i = 1; i <= from.length; i++) {
    const next = [i]
    for (let j = 1; j <= to.length; j++) {
      const replace = (row[j - 1] as number) + (from[i - 1] === to[j - 1] ? 0 : 1)
      next.push(Math.min(replace, (row[j] as number) + 1, (next[j - 1] as number) + 1))
    }
    row = next
  }
  return row[to.length] as number
}

/** No name is longer: what is, was not mistyped. */
const LONGEST = 100

/**
 * The name among `known` nearest to `name`: the same but for capitals, or few edits away (a third of its length, at
 * least one), or one that ends with it. Undefined when nothing is near.
 *
 * @internal
 */
export function nearestName(name: string, known: readonly string[]): string | undefined {
  if (name.length > LONGEST) return undefined
  const folded = name.toLowerCase()
  let nearest: string | undefined
  let least = Math.max(1, Math.floor(name.length / 3)) + 1
  for (const candidate of known) {
    const distance = editDistance(folded, candidate.toLowerCase())
    if (distance < least && distance < candidate.length) [nearest, least] = [candidate, distance]
  }
  return nearest ?? known.find((candidate) => folded.length > 3 && candidate.toLowerCase().endsWith(folded))
}
