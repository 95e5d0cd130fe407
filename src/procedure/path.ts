/** Places by their paths: in a description, and in what is written or read by it. */
import type { AnyField, PairsField } from './field.js'

/** The name or the index under which something stands. @internal */
export type Step = string | number

/** One of the pairs of a list, which is no field of its own but holds two. */
interface Pair {
  readonly sort: 'pair'
  readonly of: PairsField['of']
}

/** What may stand at a place. @internal */
export type Part = AnyField | Pair

/** What may stand under a name or an index of a part, in each of its forms; nothing where there is no such place. @internal */
export function partsAt(part: Part, step: PropertyKey): readonly Part[] {
  switch (part.sort) {
    case 'group':
      return typeof step !== 'number' && Object.hasOwn(part.fields, step) ? [part.fields[String(step)] as AnyField] : []
    case 'byName':
      return typeof step === 'number' ? [] : [part.of]
    case 'list':
      return typeof step === 'number' ? [part.of] : []
    case 'pairs':
      return typeof step === 'number' ? [{ sort: 'pair', of: part.of }] : []
    case 'pair':
      return step === 0 || step === 1 ? [part.of[step]] : []
    case 'either':
      return part.of.flatMap((form) => partsAt(form, step))
    default:
      return []
  }
}

/** The forms that a part may have. @internal */
export function formsOf(part: Part): readonly Part[] {
  return part.sort === 'either' ? part.of.flatMap(formsOf) : [part]
}

/** A path as it is written: `bays[2].at.aft`. @internal */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}${text === '' ? '' : '.'}${String(key)}`),
    '',
  )
}

/** What stands at a path of what was written, or undefined. @internal */
export function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((outer, key) => Object(outer)[key], value)
}

/** What is held under a name or an index, and not what every object has. @internal */
export function heldAt(holder: unknown, step: Step): unknown {
  return Object.hasOwn(Object(holder), step) ? (holder as { readonly [key: Step]: unknown })[step] : undefined
}

/** The same with a value in the place of all that stands at a path. @internal */
export function placed(holder: unknown, [step, ...rest]: readonly Step[], value: unknown): unknown {
  if (step === undefined) return value
  const inner = placed(heldAt(holder, step), rest, value)
  if (Array.isArray(holder)) return holder.with(step as number, inner)
  return { ...(holder as object), [step]: inner }
}
