/** What kind a figure is of, by its id. */
import type { Kind } from '../../quantity/index.js'
import { kindsOfFigures } from '../figures.js'

/** Each id with stars in place of the names of a sheet, and its kind. */
const kinds = /*@__PURE__*/ (() =>
  new Map<string, Kind>(
    Object.entries(kindsOfFigures).flatMap(([pattern, kind]) => spelt(pattern).map((id) => [id, kind] as const)),
  ))()

/** A pattern for each of what stands in its braces. */
function spelt(pattern: string): readonly string[] {
  const [, before, listed, after] = /^([^{]*)\{([^}]*)\}(.*)$/.exec(pattern) ?? []
  if (listed === undefined) return [pattern]
  return listed.split(',').flatMap((each) => spelt(`${before}${each}${after}`))
}

/** The ids that there may be with the names that stand in an id. @internal */
export function idsLike(id: string): readonly string[] {
  const parts = id.split('.')
  return [...kinds.keys()].map((each) =>
    each
      .split('.')
      .map((part, i) => (part === '*' ? (parts[i] ?? part) : part))
      .join('.'),
  )
}

/** The kind of the figure of an id; undefined where no assessment has one. @internal */
export function kindOfFigure(id: string): Kind | undefined {
  const parts = id.split('.')
  if (parts.some((part) => part === '' || part === '*')) return undefined
  const pattern = [...kinds.keys()].find((each) => {
    const wanted = each.split('.')
    return wanted.length === parts.length && wanted.every((part, i) => part === '*' || part === parts[i])
  })
  return pattern === undefined ? undefined : kinds.get(pattern)
}
