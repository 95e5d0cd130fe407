/**
 * Structured input, described once as a zod schema: its types, its checks and the words of its errors come from
 * the one description. Quantities in it are leaves made by {@link given}, read by the reader that formulas use.
 */
import * as z from 'zod/mini'
import { type Bounds, limitsOf, limitsText, siText, within } from '../formula/formula.js'
import type { Field } from '../procedure/field.js'
import { schemaOf } from '../procedure/reading.js'
import { InputError, type InputIssue, shown } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi } from '../quantity/quantity.js'
import { isQuantity, issueWith, kindInWords, listed, readValue } from '../quantity/read.js'

/** What a person writes for a structure. */
export type Written<S extends z.ZodMiniType> = z.input<S>
/** What is read from it. */
export type Read<S extends z.ZodMiniType> = z.output<S>

/** The words on a field: what it is, and for a quantity its kind. */
const notes = /*@__PURE__*/ z.registry<{ readonly about: string; readonly kind?: Kind }>()

/** Says what a field is. */
/* @__NO_SIDE_EFFECTS__ */
export function about<S extends z.ZodMiniType>(text: string, schema: S): S {
  notes.add(schema, { about: text })
  return schema
}

/**
 * A quantity in a structure.
 *
 * @param kind - What it measures.
 * @param text - What it is, in a few words.
 * @param bounds - Bounds that physics sets, in SI units or as text.
 */
/* @__NO_SIDE_EFFECTS__ */
export function given<const K extends Kind>(
  kind: K,
  text: string,
  bounds: Bounds<K> = {},
): z.ZodMiniTransform<Quantity<K>, Given<K>> {
  const limits = limitsOf(kind, bounds)
  const leaf = z.transform((value: Given<K>, context): Quantity<K> => {
    const refuse = (issue: InputIssue): never => {
      context.issues.push({ code: 'custom', input: value, params: { issue } })
      return z.NEVER
    }
    const read = readValue(kind, value)
    if (read === undefined) return refuse(issueWith('', kind, value))
    if (within(read.si, limits)) return fromSi(kind, read.si, read.scale.symbol)
    const expected = `${kindInWords(kind)} ${limitsText(limits, (si) => siText(kind, si))}`
    return refuse({ path: '', expected, received: isQuantity(value) ? String(value) : shown(value), hint: text })
  })
  notes.add(leaf, { about: text, kind })
  return leaf
}

/** The schema of a field of a description, for structures that are not described by fields yet. */
/* @__NO_SIDE_EFFECTS__ */
export function schemaFrom<W, R>(field: Field<W, R>): z.ZodMiniType<R, W> {
  const schema = schemaOf(field) as z.ZodMiniType<R, W>
  notes.add(schema, { about: field.about })
  return schema
}

/**
 * Reads a structure.
 *
 * @param where - The function that reads, for its errors.
 * @param schema - The description.
 * @param value - What was written.
 * @returns What is read: the same shape, with quantities at its leaves.
 * @throws InputError that lists every fault by its path, such as `bays[2].at.aft`.
 */
export function readStructure<S extends z.ZodMiniType>(where: string, schema: S, value: unknown): Read<S> {
  const read = z.safeParse(schema, value)
  if (read.success) return read.data
  throw new InputError(
    where,
    read.error.issues.flatMap((issue) => issuesFrom(issue, schema, value)),
  )
}

/** An issue of zod in this library's words. */
function issuesFrom(issue: z.core.$ZodIssue, schema: z.ZodMiniType, value: unknown): InputIssue[] {
  const path = pathText(issue.path)
  const received = shownAt(value, issue.path)
  const field = schemaAt(schema, issue.path)
  switch (issue.code) {
    case 'custom':
      return [{ ...(issue.params?.issue as InputIssue | undefined), path } as InputIssue]
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(key, issue.path, field, value))
    case 'invalid_value':
      return [
        withHint({ path, expected: listed(issue.values.map(shown)), received }, received, issue.values.map(String)),
      ]
    case 'invalid_type':
      return [{ path, expected: expectedOf(issue.expected, field), received }]
    case 'too_small':
    case 'too_big': {
      const least = issue.code === 'too_small'
      const bound = least ? `at least ${issue.minimum}` : `at most ${issue.maximum}`
      if (issue.origin === 'array') return [listIssue(path, bound, field, valueAt(value, issue.path))]
      return [{ path, expected: issue.origin === 'string' ? 'some text' : `a number ${bound}`, received }]
    }
    default:
      return [{ path, expected: expectedOf(issue.code, field), received }]
  }
}

/** What is wrong with how long a list is. */
function listIssue(path: string, bound: string, field: z.ZodMiniType | undefined, list: unknown): InputIssue {
  const about = aboutOf(field)
  const { length } = list as readonly unknown[]
  const expected = `a list of ${bound}${about === undefined ? '' : ` (${about})`}`
  return { path, expected, received: length === 0 ? 'an empty list' : `a list of ${length}` }
}

function aboutOf(field: z.ZodMiniType | undefined): string | undefined {
  return field === undefined ? undefined : (notes.get(field) ?? notes.get(unwrapped(field)))?.about
}

function withHint(issue: InputIssue, name: string, known: readonly string[]): InputIssue {
  const nearest = nearestName(name.replace(/'/g, ''), known)
  return nearest === undefined ? issue : { ...issue, hint: `did you mean ${nearest}?` }
}

function unknownKey(
  key: string,
  at: readonly PropertyKey[],
  field: z.ZodMiniType | undefined,
  value: unknown,
): InputIssue {
  const known = Object.keys(shapeOf(field) ?? {})
  const path = [...at, key]
  const issue = {
    path: pathText(path),
    expected: `no such field; there are ${known.join(', ')}`,
    received: shownAt(value, path),
  }
  return withHint(issue, key, known)
}

/** What is wanted in words: for an object, what it is and the fields it must have. */
function expectedOf(type: string, field: z.ZodMiniType | undefined): string {
  const about = aboutOf(field)
  const words = {
    object: 'an object',
    record: 'an object',
    array: 'a list',
    tuple: 'a list',
    string: 'text',
    number: 'a number',
    int: 'a whole number',
  }
  const sort = words[type as keyof typeof words] ?? type
  const shape = shapeOf(field)
  const keys =
    shape === undefined
      ? ''
      : ` { ${Object.entries(shape)
          .map(([key, inner]) => `${key}${isOptional(inner) ? '?' : ''}`)
          .join(', ')} }`
  return `${sort}${keys}${about === undefined ? '' : ` (${about})`}`
}

/** The schema inside what only makes it optional or gives it a default. */
function unwrapped(schema: z.ZodMiniType): z.ZodMiniType {
  const inner = (schema._zod.def as { innerType?: z.ZodMiniType }).innerType
  return inner === undefined ? schema : unwrapped(inner)
}

function isOptional(schema: z.ZodMiniType): boolean {
  return ['optional', 'default'].includes(schema._zod.def.type)
}

function shapeOf(schema: z.ZodMiniType | undefined): { readonly [key: string]: z.ZodMiniType } | undefined {
  if (schema === undefined) return undefined
  return (unwrapped(schema)._zod.def as { shape?: { readonly [key: string]: z.ZodMiniType } }).shape
}

function schemaAt(schema: z.ZodMiniType, path: readonly PropertyKey[]): z.ZodMiniType | undefined {
  return path.reduce<z.ZodMiniType | undefined>((outer, key) => {
    if (outer === undefined) return undefined
    const { element } = unwrapped(outer)._zod.def as { element?: z.ZodMiniType }
    return typeof key === 'number' ? element : shapeOf(outer)?.[String(key)]
  }, schema)
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>(
    (text, key) => (typeof key === 'number' ? `${text}[${key}]` : `${text}${text === '' ? '' : '.'}${String(key)}`),
    '',
  )
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((outer, key) => Object(outer)[key], value)
}

function shownAt(value: unknown, path: readonly PropertyKey[]): string {
  const at = valueAt(value, path)
  if (at === undefined) return 'nothing'
  return isQuantity(at) ? String(at) : shown(at)
}

/**
 * Makes a function of one structured input.
 *
 * @param name - The name under which it is exported; errors begin with it.
 * @param schema - The description of its input.
 * @param work - What it does with what was read.
 */
export function procedure<S extends z.ZodMiniType, R>(
  name: string,
  schema: S,
  work: (read: z.output<S>) => R,
): (given: z.input<S>) => R {
  return (given) => work(readStructure(name, schema, given))
}
