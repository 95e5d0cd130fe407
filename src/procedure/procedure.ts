/**
 * A procedure as a value: a decision made with formulas that can be called, and that carries its question, its fields, their
 * defaults and the grounds for them.
 */
import type { Source } from '../formula/index.js'
import { inOneLine } from '../quantity/errors.js'
import { CalculationError, InputError, type Kind, type Quantity, quantity } from '../quantity/index.js'
import { isQuantity } from '../quantity/read.js'
import { called } from './calls.js'
import { type AnyField, type Field, type Fields, isField, type Need, type Read, type Written } from './field.js'
import type { Assumption, Findings } from './findings.js'
import { valueAt } from './path.js'
import { readField } from './reading.js'
import { unusualIn } from './unusual.js'

/** The description of an input: fields by their names, or one field. */
// biome-ignore lint/suspicious/noExplicitAny: a field of any types
export type Input = Fields | Field<any, any, Need>

/** What the work of a procedure gives: its result, where it need not repeat what the description tells. */
export type Unfinished<R> = Omit<R, 'assumptions' | 'notes' | 'cautions'> & {
  readonly [P in keyof R & ('assumptions' | 'notes' | 'cautions')]?: R[P]
}

/** What describes a procedure: all that the library knows of it stands here, once. */
export interface Description<I extends Input> {
  /** The name under which it is exported; errors begin with it. */
  readonly name: string
  /** What it gives, as a heading. */
  readonly title: string
  /** The question that it answers. */
  readonly answers: string
  readonly input: I
  readonly source: readonly Source[]
  /** What is always taken for granted, in short sentences. */
  readonly assumes?: readonly string[]
}

/** A procedure: call it with a plain object, or read what it is. */
export interface Procedure<I extends Input, R> extends Required<Description<I>> {
  /**
   * Decides.
   *
   * @throws InputError that lists everything wrong with the input, each by its path; CalculationError where the input is
   * sound and what it asks for does not exist.
   */
  (given: Written<I>): R
}

/** Any procedure, where it is read and not called by the names of its fields. */
export interface AnyProcedure extends Required<Description<Fields | AnyField>> {
  (given: never): unknown
}

/**
 * Makes a procedure from its description.
 *
 * To the findings that its work gives, what only the description knows is added: the defaults that were used, what was not
 * given, what is always taken for granted, and what is unusual.
 *
 * @param description - Name, title, question, input, source, and `work`: what is done with what was read.
 */
/* @__NO_SIDE_EFFECTS__ */
export function procedure<const I extends Input, R extends Findings>(
  description: Description<I> & { readonly work: (asked: Read<NoInfer<I>>) => Unfinished<R> },
): Procedure<I, R>
/* @__NO_SIDE_EFFECTS__ */
export function procedure<const I extends Input, R>(
  description: Description<I> & { readonly work: (asked: Read<NoInfer<I>>) => R },
): Procedure<I, R>
/* @__NO_SIDE_EFFECTS__ */
export function procedure(description: Description<Input> & { readonly work: (asked: never) => unknown }): unknown {
  const { name, title, answers, input, source, assumes = [], work } = description
  let known: Plan | undefined
  const call = (given: unknown): unknown => {
    known ??= planOf(title, input)
    const plan = known
    const whole = readField(name, plan.whole, given)
    const told = toldOf(plan, given, whole)
    const asked = without(plan.spare, whole)
    const result = toldAsDefault(name, told, () => work(asked as never))
    called({ procedure: self, given, result })
    if (!isFindings(result)) return result
    const always = assumes.map((text, i) => ({ id: `${name}.assumes.${i + 1}`, text }))
    const { assumptions = [], notes = [], cautions = [] } = result
    return Object.assign(result, {
      assumptions: [...told, ...always, ...assumptions],
      notes: [...unusualIn(plan.whole, asked), ...notes],
      cautions,
    })
  }
  Object.defineProperty(call, 'name', { value: name })
  const self = Object.freeze(Object.assign(call, { title, answers, input, source, assumes }))
  return self
}

/** What was read, but for what the work is not handed. */
function without(spare: readonly string[], whole: unknown): unknown {
  if (spare.length === 0) return whole
  const asked: { [key: string]: unknown } = { ...(whole as object) }
  for (const key of spare) delete asked[key]
  return asked
}

/** Whether a value is a procedure. */
export function isProcedure(value: unknown): value is AnyProcedure {
  return typeof value === 'function' && 'answers' in value && 'input' in value
}

/** What a procedure knows of its input beside how it is read. It is made at the first call. */
interface Plan {
  readonly whole: AnyField
  /** The fields that stand or are missed when they are left out. */
  readonly told: readonly { readonly keys: readonly string[]; readonly field: AnyField }[]
  readonly spare: readonly string[]
}

/** The description of a whole input as one field. @internal */
export function wholeOf(title: string, input: Fields | AnyField): AnyField {
  return isField(input) ? input : { sort: 'group', about: title, need: 'required', fields: input as Fields }
}

function planOf(title: string, input: Input): Plan {
  const whole = wholeOf(title, input)
  const spare = isField(input) ? [] : Object.keys(input).filter((key) => (input as Fields)[key]?.need === 'spare')
  return { whole, told: toldFields(whole, []), spare }
}

function toldFields(field: AnyField, keys: readonly string[]): Plan['told'] {
  if (field.need === 'spare') return []
  if (field.sort !== 'group') return field.need === 'default' || field.absent !== undefined ? [{ keys, field }] : []
  const own = field.absent === undefined ? [] : [{ keys, field }]
  return [...own, ...Object.entries(field.fields).flatMap(([key, inner]) => toldFields(inner, [...keys, key]))]
}

/** The defaults that stand, and what is to be said of what was left out. */
function toldOf({ told }: Plan, given: unknown, asked: unknown): Assumption[] {
  return told.flatMap(({ keys, field }) => {
    // A group whose defaults stand is read even where it is left out.
    const outer = valueAt(asked, keys.slice(0, -1))
    const isLeftOut = outer !== undefined && valueAt(given, keys) === undefined
    return isLeftOut ? [leftOut(keys.join('.'), field, valueAt(asked, keys))] : []
  })
}

function leftOut(path: string, { need, about, because, absent }: AnyField, value: unknown): Assumption {
  if (need !== 'default') return { id: `${path}.absent`, path, text: absent as string }
  const shown = isQuantity(value) ? (value as unknown as Quantity) : (value as string | number | boolean)
  const text = `${about}: ${shown} (${path} by default; ${because}).`
  return { id: `${path}.default`, path, value: shown, because: because as string, text }
}

/** Runs the work; where it refuses a default, the error says that nothing was given and what stands then. */
function toldAsDefault(where: string, told: readonly Assumption[], work: () => unknown): unknown {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    // What a formula on the way refuses is no field of the caller's.
    if (error.where !== where) throw beyond(where, error)
    const issues = error.issues.map((issue) => {
      const stands = told.find(({ path, value }) => path === issue.path && value !== undefined)
      return stands === undefined ? issue : { ...issue, received: `nothing, which is ${stands.value}` }
    })
    throw new InputError(where, issues)
  }
}

/** The error where the figures lead out of what a formula or procedure on the way holds for. */
function beyond(where: string, error: InputError): CalculationError {
  return new CalculationError(where, `${error.where} does not hold for these figures: ${inOneLine(error)}`)
}

function isFindings(result: unknown): result is Partial<Findings> {
  return typeof result === 'object' && result !== null && 'checks' in result
}

/** A field with the path at which it stands: `fault.current`, `candidates[].rating`, `profile[][0]`, `geometry.*`. */
export interface FieldAt {
  readonly path: string
  readonly field: AnyField
}

/** Every field of a procedure's input, flat, each before what it holds. */
export function fieldsOf({ title, input }: { readonly title: string; readonly input: Fields | AnyField }): FieldAt[] {
  return within('', wholeOf(title, input))
}

function within(path: string, field: AnyField): FieldAt[] {
  const at = (key: string) => (path === '' ? key : `${path}.${key}`)
  const own = path === '' && field.sort === 'group' ? [] : [{ path, field }]
  switch (field.sort) {
    case 'group':
      return [...own, ...Object.entries(field.fields).flatMap(([key, inner]) => within(at(key), inner))]
    case 'list':
      return [...own, ...within(`${path}[]`, field.of)]
    case 'pairs':
      return [...own, ...within(`${path}[][0]`, field.of[0]), ...within(`${path}[][1]`, field.of[1])]
    case 'byName':
      return [...own, ...within(at('*'), field.of)]
    case 'either':
      return [...own, ...field.of.flatMap((form) => within(path, form))]
    default:
      return own
  }
}

/** A default that a formula has for an input, for a field that is handed on to it. */
/* @__NO_SIDE_EFFECTS__ */
export function defaultOf<K extends Kind>(input: {
  readonly kind: K
  readonly default: Quantity<K>
  readonly because: string
}): { readonly default: Quantity<K>; readonly because: string } {
  return { default: quantity(input.kind, input.default), because: input.because }
}
