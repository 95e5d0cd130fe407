/** Plain JSON: what may stand in it, and when two values are the same. */
import { type InputIssue, shown } from '../../quantity/errors.js'
import { isQuantity, type Quantity } from '../../quantity/index.js'
import { MOST_LEVELS } from '../sheet/build.js'

/** Whether a value is an object of JSON: no list, and nothing of a class, such as a quantity. @internal */
export function isRecord(value: unknown): value is { readonly [key: string]: unknown } {
  if (typeof value !== 'object' || value === null) return false
  const prototype = Object.getPrototypeOf(value)
  return prototype === Object.prototype || prototype === null
}

/**
 * A value as plain JSON of its own, with the text of each quantity in its place.
 *
 * @param value - The value.
 * @param path - Where it stands.
 * @param issues - Takes what is no JSON.
 *
 * @internal
 */
export function plain(value: unknown, path: string, issues: InputIssue[], holders: readonly unknown[] = []): unknown {
  const refuse = (expected: string, received = shown(value)) => {
    issues.push({ path, expected, received })
  }
  if (holders.includes(value)) return refuse('nothing that holds itself')
  if (holders.length > MOST_LEVELS) return refuse(`at most ${MOST_LEVELS} levels`)
  if (isQuantity(value)) return (value as Quantity).toJSON()
  if (Array.isArray(value)) {
    return Array.from(value, (each: unknown, i) => plain(each, `${path}[${i}]`, issues, [...holders, value]))
  }
  if (isRecord(value)) {
    const entries = Object.entries(value).filter(([, each]) => each !== undefined)
    return Object.fromEntries(
      entries.map(([key, each]) => {
        const at = path === '' ? key : `${path}.${key}`
        // Whoever assigns it would lose it.
        if (key === '__proto__') issues.push({ path: at, expected: 'another name', received: "'__proto__'" })
        return [key, plain(each, at, issues, [...holders, value])]
      }),
    )
  }
  const isPlain = value === null || typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value)
  return isPlain ? value : refuse('plain JSON, such as text, a number, a list or an object')
}

/** Text that two values have in common where they are the same JSON, whatever the order of their fields. @internal */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_, each: unknown) =>
    isRecord(each) ? Object.fromEntries(Object.entries(each).sort(([one], [other]) => (one < other ? -1 : 1))) : each,
  )
}
