/** Tables of points whose first numbers rise: what is wrong with one that was given. */
import type { InputIssue } from '../quantity/errors.js'
import type { Quantity } from '../quantity/index.js'

/** Which way the second numbers of a table go, if either, and why. */
interface Second {
  readonly falls?: string
  readonly rises?: string
  readonly hint?: string
}

/**
 * What is out of order in a table.
 *
 * @param path - Its path in the input.
 * @param table - The points as they are read.
 * @param first - What the first numbers are, such as `temperature`.
 * @param second - What the second numbers are, where those only fall or only rise.
 * @internal
 */
export function tableIssues(
  path: string,
  table: readonly (readonly [Quantity, Quantity])[],
  first: string,
  { falls, rises, hint }: Second = {},
): InputIssue[] {
  return table.flatMap(([at, value], i) => {
    const before = table[i - 1]
    if (before === undefined) return []
    const issues: InputIssue[] = []
    const refuse = (place: 0 | 1, expected: string, received: Quantity) =>
      issues.push({
        path: `${path}[${i}][${place}]`,
        expected,
        received: String(received),
        ...(place === 0 || hint === undefined ? {} : { hint }),
      })
    if (at.si <= before[0].si) refuse(0, `more than the ${first} before it, ${before[0]}`, at)
    if (falls !== undefined && value.si > before[1].si) refuse(1, `at most the ${falls} before it, ${before[1]}`, value)
    if (rises !== undefined && value.si < before[1].si)
      refuse(1, `at least the ${rises} before it, ${before[1]}`, value)
    return issues
  })
}
