/**
 * Reads a structured input by its description: to the same shape with quantities at its leaves, or to an error that lists
 * every fault by its path, with what was expected and what came.
 */
import * as z from 'zod/mini'
import { boundsText, limitsOf, unknownKey, within } from '../formula/formula.js'
import { InputError, type InputIssue, shown } from '../quantity/errors.js'
import type { Kind, Quantity } from '../quantity/index.js'
import { nearestName } from '../quantity/nearest.js'
import { fromSi, isOwnQuantity } from '../quantity/quantity.js'
import { isQuantity, issueWith, kindInWords, listed, readValue } from '../quantity/read.js'
import type { AnyField, ByNameField, EitherField, GroupField, OwnField, PairsField, QuantityField } from './field.js'
import { type Part, partsAt, pathText, valueAt } from './path.js'

type Schema = z.ZodMiniType
type Payload = z.core.ParsePayload<unknown>

const schemas = /*@__PURE__*/ new WeakMap<AnyField, Schema>()

/** The schema of a field, made when it is first needed: most programs use few procedures. */
function schemaOf(field: AnyField): Schema {
  const known = schemas.get(field)
  if (known !== undefined) return known
  const core = coreOf(field)
  const schema =
    field.need === 'default'
      ? z.prefault(core, () => field.default)
      : field.need === 'required'
        ? core
        : z.optional(core)
  schemas.set(field, schema)
  return schema
}

function coreOf(field: AnyField): Schema {
  switch (field.sort) {
    case 'quantity':
      return quantitySchema(field)
    case 'choice':
      return z.enum([...field.of])
    case 'whole':
      return z
        .int()
        .check(z.minimum(field.min ?? Number.MIN_SAFE_INTEGER), z.maximum(field.max ?? Number.MAX_SAFE_INTEGER))
    case 'text':
      return z.string().check(z.minLength(1))
    case 'flag':
      return z.boolean()
    case 'group': {
      const shape = Object.fromEntries(Object.entries(field.fields).map(([key, inner]) => [key, schemaOf(inner)]))
      return readOnce(field.open ? z.object(shape) : z.strictObject(shape))
    }
    case 'list':
      return readOnce(z.array(schemaOf(field.of)).check(z.minLength(field.least)))
    case 'pairs':
      return pairsSchema(field)
    case 'byName':
      return byNameSchema(field)
    case 'either':
      return eitherSchema(field)
    case 'own':
      return ownSchema(field)
  }
}

function refuse(payload: Payload, input: unknown, issue: Omit<InputIssue, 'path'>): never {
  payload.issues.push({ code: 'custom', input, params: { issue } })
  return z.NEVER
}

function quantitySchema(field: QuantityField): Schema {
  const { kind, about, bounds } = field
  const [limits, isSound] = [limitsOf(kind, bounds), soundFor(field)]
  return z.transform((value: unknown, payload): Quantity => {
    if (isSound(value)) return value
    const read = readValue(kind, value)
    if (read === undefined) return refuse(payload, value, issueWith('', kind, value))
    if (within(read.si, limits)) return fromSi<Kind>(kind, read.si, read.scale.symbol)
    const expected = `${kindInWords(kind)} ${boundsText(kind, limits)}`
    return refuse(payload, value, { expected, received: received(value), hint: about })
  })
}

/** Pairs of quantities, such as the steps of a drive, are seldom written and often computed, by the thousand. */
function pairsSchema(field: PairsField): Schema {
  const [one, other] = field.of
  const any = z.array(z.tuple([schemaOf(one), schemaOf(other)])).check(z.minLength(field.least))
  if (one.sort !== 'quantity' || other.sort !== 'quantity') return any
  const [isOne, isOther] = [soundFor(one), soundFor(other)]
  return z.transform((value: unknown, payload) => {
    if (Array.isArray(value) && value.length >= field.least) {
      const isSound = (pair: unknown) => Array.isArray(pair) && pair.length === 2 && isOne(pair[0]) && isOther(pair[1])
      const keep = value.length > LONGEST ? <T>(each: T) => each : settled
      if (value.every(isSound)) return keep(value.map(([first, second]) => keep([first, second])))
    }
    return readBy(any, value, payload)
  })
}

/** What is made of parts that cannot change, and cannot change either: a field that took it takes it again. */
const unchanging = /*@__PURE__*/ new WeakSet<object>()

/** Whether a value is known not to change, down to its leaves. @internal */
export function isUnchanging(value: unknown): value is object {
  return typeof value === 'object' && value !== null && unchanging.has(value)
}

/** A list that is longer is a course over time, which nobody reads twice. */
const LONGEST = 1000

/** Freezes what was read or is to be read again and again, where all in it is frozen. @internal */
export function settled<T extends object>(read: T): T {
  const parts = Array.isArray(read) ? read : Object.values(read)
  if (parts.length > LONGEST) return read
  const isFixed = (part: unknown) =>
    typeof part !== 'object' || part === null || isOwnQuantity(part) || unchanging.has(part)
  if (!parts.every(isFixed)) return read
  unchanging.add(Object.freeze(read))
  return read
}

/**
 * A schema that reads once what cannot change: the parts of a car go through dozens of procedures, each of which reads all
 * that it is given.
 */
function readOnce(schema: Schema): Schema {
  const known = new WeakMap<object, object>()
  return z.transform((value: unknown, payload) => {
    if (isUnchanging(value)) {
      const before = known.get(value)
      if (before !== undefined) return before
    }
    const read = readBy(schema, value, payload)
    if (typeof read !== 'object' || read === null || payload.issues.length > 0) return read
    settled(read)
    if (isUnchanging(value)) known.set(value, read)
    if (isUnchanging(read)) known.set(read, read)
    return read
  })
}

/** Whether a value is a quantity already that a field takes as it is. */
function soundFor({ kind, bounds }: QuantityField): (value: unknown) => value is Quantity {
  const limits = limitsOf(kind, bounds)
  return (value): value is Quantity => isOwnQuantity(value) && value.kind === kind && within(value.si, limits)
}

/** What a schema reads, or its faults handed on. */
function readBy(schema: Schema, value: unknown, payload: Payload): unknown {
  const read = z.safeParse(schema, value)
  if (read.success) return read.data
  payload.issues.push(...(read.error.issues.map((issue) => ({ ...issue, input: value })) as Payload['issues']))
  return z.NEVER
}

/** A record written out, because a schema of one leaves out the name `__proto__` in silence. */
function byNameSchema(field: ByNameField): Schema {
  const inner = schemaOf(field.of)
  return z.transform((value: unknown, payload) => {
    if (!isForm(field, value)) return refuse(payload, value, byNameIssue(field, value))
    const read: { [name: string]: unknown } = {}
    for (const [name, each] of Object.entries(value as object)) {
      const issue = nameIssue(field, name)
      if (issue !== undefined) {
        payload.issues.push({ code: 'custom', input: value, params: { issue } })
        continue
      }
      const found = z.safeParse(inner, each)
      if (found.success) read[name] = found.data
      else for (const fault of found.error.issues) payload.issues.push(under(name, fault, each))
    }
    return settled(read)
  })
}

/** A fault of one of several under its name. */
function under(name: string, fault: z.core.$ZodIssue, input: unknown): Payload['issues'][number] {
  return { ...fault, input, path: [name, ...fault.path] } as Payload['issues'][number]
}

function byNameIssue(field: ByNameField, value: unknown): Omit<InputIssue, 'path'> {
  const issue = { expected: inWords(field), received: received(value) }
  if (!Array.isArray(value)) return issue
  const title = field.ids ? '; words for people go into its title' : ''
  return { ...issue, hint: `each stands under a name of its own, such as { first: … }${title}` }
}

/** What is wrong with a name: it must be there and keep what stands under it, and what stands in ids must be one. */
function nameIssue({ ids }: ByNameField, name: string): Omit<InputIssue, 'path'> | undefined {
  if (new RegExp(ids ? ID : NAME).test(name)) return undefined
  if (!ids) return { expected: "another name, such as 'first'", received: shown(name) }
  const expected = 'a name of at most 64 letters and digits that begins with a letter, such as bakeryRound'
  return { expected, received: shown(name), hint: 'words for people go into its title' }
}

/** What a name may be where it stands in ids; a pattern that JSON Schema knows too. @internal */
export const ID = '^[A-Za-z][A-Za-z0-9]{0,63}$'
/** What a name may be elsewhere. @internal */
export const NAME = '^(?!__proto__$)[^]'

function eitherSchema(field: EitherField): Schema {
  return z.transform((value: unknown, payload) => {
    const form = field.of.find((each) => isForm(each, value))
    if (form === undefined) {
      const expected = field.of.map(inWords).join(', or ')
      return refuse(payload, value, { expected, received: received(value), hint: field.about })
    }
    return readBy(schemaOf(form), value, payload)
  })
}

/** Whether a value is of the form of a field, sound or not. */
function isForm(field: AnyField, value: unknown): boolean {
  switch (field.sort) {
    case 'quantity':
      return readValue(field.kind, value) !== undefined
    case 'choice':
      return field.of.includes(value as string)
    case 'text':
      return typeof value === 'string'
    case 'whole':
      return typeof value === 'number'
    case 'flag':
      return typeof value === 'boolean'
    case 'list':
    case 'pairs':
      return Array.isArray(value)
    case 'group':
    case 'byName':
      return typeof value === 'object' && value !== null && !Array.isArray(value) && !isQuantity(value)
    default:
      return true
  }
}

/** What a field wants, in words. */
function inWords(field: AnyField): string {
  switch (field.sort) {
    case 'quantity':
      return issueWith('', field.kind, undefined).expected
    case 'choice':
      return listed(field.of.map(shown))
    case 'either':
      return field.of.map(inWords).join(', or ')
    default:
      return withAbout(sortInWords(field), field)
  }
}

function sortInWords(field: AnyField): string {
  switch (field.sort) {
    case 'group': {
      const keys = Object.entries(field.fields).map(([key, { need }]) => `${key}${need === 'required' ? '' : '?'}`)
      return `an object { ${keys.join(', ')} }`
    }
    case 'list':
    case 'pairs':
      return field.least > 0 ? `a list of at least ${field.least}` : 'a list'
    case 'byName':
      return 'an object with a value for each name'
    case 'whole':
      return 'a whole number'
    case 'flag':
      return 'true or false'
    default:
      return 'text'
  }
}

function withAbout(text: string, { about }: AnyField): string {
  return `${text} (${lowerFirst(about)})`
}

/** A phrase inside a sentence: a name or an abbreviation keeps its capital. @internal */
export function lowerFirst(phrase: string): string {
  return /^\p{Lu}(?:\p{Ll}| )/u.test(phrase) ? phrase.charAt(0).toLowerCase() + phrase.slice(1) : phrase
}

function ownSchema(field: OwnField): Schema {
  return z.transform((value: unknown, payload) => {
    const read = field.read(value)
    return 'value' in read ? read.value : refuse(payload, value, read.issue)
  })
}

/**
 * Reads an input.
 *
 * @param where - The function that reads, for its errors.
 * @param field - The description of its input.
 * @param value - What was written.
 * @returns What is read: defaults stand, quantities are at the leaves.
 * @throws InputError that lists every fault by its path, such as `bays[2].at.aft`.
 *
 * @internal
 */
export function readField(where: string, field: AnyField, value: unknown): unknown {
  const read = parsed(where, field, value)
  if (read.success) return read.data
  const issues = read.error.issues.flatMap((issue) => issuesFrom(issue, field, value))
  // A function, whose arguments can be counted, is of the wrong sort and too short.
  const isFirst = ({ path, expected, received: came }: InputIssue, i: number) =>
    issues.findIndex((each) => each.path === path && each.expected === expected && each.received === came) === i
  throw new InputError(where, issues.length > MOST_COMPARED ? issues : issues.filter(isFirst))
}

/** So many faults are held against each other: no one reads more. */
const MOST_COMPARED = 100

/** What the schema makes of a value. A list of a hundred thousand faults is more than it can gather. */
function parsed(where: string, field: AnyField, value: unknown) {
  try {
    return z.safeParse(schemaOf(field), value)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    throw new InputError(where, [{ path: '', expected: inWords(field), received: 'more faults than can be listed' }])
  }
}

/** An issue of the schema in this library's words. */
function issuesFrom(issue: z.core.$ZodIssue, whole: AnyField, value: unknown): InputIssue[] {
  const path = pathText(issue.path)
  const came = received(valueAt(value, issue.path))
  const field = partAt(whole, issue.path)
  if (issue.code === 'custom') return [{ ...(issue.params?.issue as Omit<InputIssue, 'path'>), path }]
  if (issue.code === 'unrecognized_keys') {
    const group = field?.sort === 'group' ? field : undefined
    const known = Object.keys(group?.fields ?? {})
    return issue.keys.map((key, i) => {
      const at = [...issue.path, key]
      const inner = valueAt(value, at)
      // Which fields there are is said once; more than the first few keys nobody mistyped.
      if (i >= MISTYPED) return { path: pathText(at), expected: 'no such field', received: received(inner) }
      const told = unknownKey(key, inner, known, 'field')
      return { ...told, path: pathText(at), ...hintFor(key, inner, group) }
    })
  }
  if (field === undefined || field.sort === 'pair') return [{ path, expected: pairInWords(field), received: came }]
  if (issue.code === 'invalid_value' && field.sort === 'choice') {
    const given = valueAt(value, issue.path)
    const nearest = typeof given === 'string' ? nearestName(given, field.of) : undefined
    const told = { path, expected: inWords(field), received: came }
    return [nearest === undefined ? told : { ...told, hint: `did you mean ${nearest}?` }]
  }
  if ((issue.code === 'too_small' || issue.code === 'too_big') && field.sort === 'whole') {
    const bound = issue.code === 'too_small' ? `at least ${issue.minimum}` : `at most ${issue.maximum}`
    return [{ path, expected: `a number ${bound}`, received: came, hint: field.about }]
  }
  return [{ path, expected: inWords(field), received: came }]
}

/** What a pair of a list is, in words: `a pair [current, time that it lasts]`. */
function pairInWords(pair: Extract<Part, { sort: 'pair' }> | undefined): string {
  return pair === undefined ? 'a pair' : `a pair [${pair.of.map(({ about }) => lowerFirst(about)).join(', ')}]`
}

/** So many unknown keys in one place are each held against the fields that there are. */
const MISTYPED = 10

function hasField(field: AnyField | undefined, key: string): boolean {
  return field?.sort === 'group' && Object.hasOwn(field.fields, key)
}

/** Where a key belongs that stood here before or stands one level too high, or what its own fields belong in. */
function hintFor(key: string, inner: unknown, group: GroupField | undefined): { readonly hint?: string } {
  const { fields = {}, moved = {} } = group ?? {}
  if (Object.hasOwn(moved, key)) return { hint: moved[key] as string }
  const [first, ...rest] = key.split('.')
  if (rest.length > 0 && Object.hasOwn(fields, first as string)) {
    return {
      hint: `each field stands in its own object: { ${[first, ...rest].join(': { ')}: … ${'} '.repeat(rest.length)}}`,
    }
  }
  const ownersOf = (all: readonly string[]) =>
    Object.keys(fields).filter((name) => all.length > 0 && all.every((each) => hasField(fields[name], each)))
  const owners = ownersOf([key])
  if (owners.length > 0) return { hint: `${key} belongs in ${owners.join(' or ')}` }
  const others = isQuantity(inner) || typeof inner !== 'object' ? [] : ownersOf(Object.keys(Object(inner)))
  return others.length === 0 ? {} : { hint: `its fields belong in ${others.join(' or ')}` }
}

/** What may stand at a path. */
function partAt(field: AnyField, path: readonly PropertyKey[]): Part | undefined {
  return path.reduce<readonly Part[]>((parts, step) => parts.flatMap((part) => partsAt(part, step)), [field])[0]
}

function received(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`
  return isQuantity(value) ? String(value) : shown(value)
}
