/**
 * The fields of a structured input, described once: what is written, what is read, within what bounds, what stands when a
 * field is left out, and what is usual. A description is plain data; reading, JSON Schema and documentation are made from it.
 */
import type { Bounds } from '../formula/formula.js'
import type { InputIssue } from '../quantity/errors.js'
import type { Given, Kind, Quantity } from '../quantity/index.js'

/**
 * Whether a field must be written. A spare one may be, is checked, and is not handed to the work: so that one description of
 * a car serves every procedure.
 */
export type Need = 'required' | 'default' | 'optional' | 'spare'

/** The two types of a field, which it has only for the compiler. */
declare const types: unique symbol

/** What is common to all fields. */
interface Words {
  /** What it is: a noun phrase. */
  readonly about: string
  readonly need: Need
  /** What stands when it is left out, as it would be written. */
  readonly default?: unknown
  /** On what ground the default stands. */
  readonly because?: string
  /** What is to be said when it is left out. */
  readonly absent?: string
  /** What stands in its place where it is handed on undecided, and on what ground. */
  readonly unless?: { readonly default: unknown; readonly because: string }
}

/** A quantity of one kind. */
export interface QuantityField extends Words {
  readonly sort: 'quantity'
  readonly kind: Kind
  readonly bounds: Bounds<Kind>
  /** The range that light road cars and their parts have, and on what basis; `common practice` where none is named. */
  readonly usual?: readonly [least: unknown, most: unknown, basis?: string]
  /** The least size that anyone would write: what is less and not nothing is likelier a slip. Temperatures count from 0 °C. */
  readonly finest?: unknown
  /** The standard uncertainty that it typically has, with its ground. */
  readonly uncertain?: string | readonly [uncertainty: string, basis: string]
}

/** One of several words. */
export interface ChoiceField extends Words {
  readonly sort: 'choice'
  readonly of: readonly string[]
}

/** A whole number. */
export interface WholeField extends Words {
  readonly sort: 'whole'
  readonly min?: number
  readonly max?: number
}

/** Some text, which must not be empty. */
export interface TextField extends Words {
  readonly sort: 'text'
}

/** Yes or no. */
export interface FlagField extends Words {
  readonly sort: 'flag'
}

/** Fields under names of their own. */
export interface GroupField extends Words {
  readonly sort: 'group'
  readonly fields: Fields
  /** Whether what else is written is left alone, as where the result of a procedure is handed on whole. */
  readonly open?: true
  /** Where fields belong now that stood here before, by their names. */
  readonly moved?: { readonly [name: string]: string }
}

/** Any number of the same. */
export interface ListField extends Words {
  readonly sort: 'list'
  readonly of: AnyField
  readonly least: number
}

/** Any number of pairs, such as the points of a curve. */
export interface PairsField extends Words {
  readonly sort: 'pairs'
  readonly of: readonly [AnyField, AnyField]
  readonly least: number
}

/** The same under names that the writer chooses. */
export interface ByNameField extends Words {
  readonly sort: 'byName'
  readonly of: AnyField
  /** Whether a name stands in ids and paths: it is a letter, then letters and digits, and words for people are a title. */
  readonly ids?: true
}

/** One of several forms. */
export interface EitherField extends Words {
  readonly sort: 'either'
  readonly of: readonly AnyField[]
}

/** What only its own reader understands, such as the name of a published drive cycle or a cycle that was read. */
export interface OwnField extends Words {
  readonly sort: 'own'
  /** What is read from it, or what is wrong with it. */
  readonly read: (value: unknown) => { readonly value: unknown } | { readonly issue: Omit<InputIssue, 'path'> }
  /** Its JSON Schema. */
  readonly json: object
}

/** Any field, as data. */
export type AnyField =
  | QuantityField
  | ChoiceField
  | WholeField
  | TextField
  | FlagField
  | GroupField
  | ListField
  | PairsField
  | ByNameField
  | EitherField
  | OwnField

/** A field: what may be written for it, what is read, and whether it must be written. */
export type Field<W, R, N extends Need = 'required'> = AnyField & {
  readonly need: N
  readonly [types]?: readonly [written: W, read: R]
}

/** Fields by their names. */
export interface Fields {
  // biome-ignore lint/suspicious/noExplicitAny: a field of any types
  readonly [name: string]: Field<any, any, Need>
}

type Flat<T> = { [P in keyof T]: T[P] }
type Keys<F extends Fields, N extends Need> = { [P in keyof F]: F[P] extends { need: N } ? P : never }[keyof F]

/** What is written for a field, or for fields by their names. */
export type Written<F> = F extends { readonly [types]?: readonly [infer W, unknown] }
  ? W
  : F extends Fields
    ? Flat<
        { readonly [P in Keys<F, 'required'>]: Written<F[P]> } & {
          readonly [P in Keys<F, 'default' | 'optional' | 'spare'>]?: Written<F[P]> | undefined
        }
      >
    : never

/** What is read from a field, or from fields by their names: defaults stand, spare fields are gone. */
export type Read<F> = F extends { readonly [types]?: readonly [unknown, infer R] }
  ? R
  : F extends Fields
    ? Flat<
        { readonly [P in Keys<F, 'required' | 'default'>]: Read<F[P]> } & {
          readonly [P in Keys<F, 'optional'>]?: Read<F[P]> | undefined
        }
      >
    : never

/** What stands when a field is left out, and on what ground. */
export interface Default<W> {
  readonly default: W
  readonly because: string
}

/** What may be said of a quantity beside what it is. */
export type QuantityWords<K extends Kind> = Bounds<K> & {
  readonly usual?: readonly [least: Given<K>, most: Given<K>, basis?: string]
  readonly finest?: Given<K>
  readonly uncertain?: string | readonly [uncertainty: string, basis: string]
}

const needOf = (words: object): Need => ('default' in words ? 'default' : 'required')

/**
 * A quantity.
 *
 * @param kind - What it measures.
 * @param about - What it is: a noun phrase.
 * @param words - Bounds that physics sets; a default with its ground; what is usual; the typical standard uncertainty.
 */
/* @__NO_SIDE_EFFECTS__ */
export function given<const K extends Kind>(
  kind: K,
  about: string,
  words: QuantityWords<NoInfer<K>> & Default<Given<NoInfer<K>>>,
): Field<Given<K>, Quantity<K>, 'default'>
/* @__NO_SIDE_EFFECTS__ */
export function given<const K extends Kind>(
  kind: K,
  about: string,
  words?: QuantityWords<NoInfer<K>> & { readonly default?: never; readonly because?: never },
): Field<Given<K>, Quantity<K>>
/* @__NO_SIDE_EFFECTS__ */
export function given(kind: Kind, about: string, words: object = {}): unknown {
  const { min, above, max, below, ...others } = words as Bounds<Kind>
  const bounds = { min, above, max, below }
  return { sort: 'quantity', kind, about, need: needOf(words), bounds, ...others }
}

/** One of several words. */
/* @__NO_SIDE_EFFECTS__ */
export function choice<const C extends string>(
  about: string,
  of: readonly C[],
  words: Default<NoInfer<C>>,
): Field<C, C, 'default'>
/* @__NO_SIDE_EFFECTS__ */
export function choice<const C extends string>(about: string, of: readonly C[]): Field<C, C>
/* @__NO_SIDE_EFFECTS__ */
export function choice(about: string, of: readonly string[], words: object = {}): unknown {
  return { sort: 'choice', about, need: needOf(words), of, ...words }
}

/** A whole number within bounds. */
/* @__NO_SIDE_EFFECTS__ */
export function whole(
  about: string,
  words: { readonly min?: number; readonly max?: number } & Default<number>,
): Field<number, number, 'default'>
/* @__NO_SIDE_EFFECTS__ */
export function whole(
  about: string,
  words?: { readonly min?: number; readonly max?: number; readonly default?: never },
): Field<number, number>
/* @__NO_SIDE_EFFECTS__ */
export function whole(about: string, words: object = {}): unknown {
  return { sort: 'whole', about, need: needOf(words), ...words }
}

/** Some text, which must not be empty. */
/* @__NO_SIDE_EFFECTS__ */
export function text(about: string): Field<string, string>
/* @__NO_SIDE_EFFECTS__ */
export function text(about: string): unknown {
  return { sort: 'text', about, need: 'required' }
}

/** Yes or no. */
/* @__NO_SIDE_EFFECTS__ */
export function flag(about: string, words: Default<boolean>): Field<boolean, boolean, 'default'>
/* @__NO_SIDE_EFFECTS__ */
export function flag(about: string): Field<boolean, boolean>
/* @__NO_SIDE_EFFECTS__ */
export function flag(about: string, words: object = {}): unknown {
  return { sort: 'flag', about, need: needOf(words), ...words }
}

/**
 * Fields that belong together, under names of their own.
 *
 * @param about - What they are together: a noun phrase.
 * @param fields - The fields by their names.
 * @param words - `open`: other fields are left alone and not read, as where the result of a procedure is handed on whole;
 *   `moved`: where fields belong now that stood here before.
 */
/* @__NO_SIDE_EFFECTS__ */
export function group<const F extends Fields>(
  about: string,
  fields: F,
  words?: Pick<GroupField, 'open' | 'moved'>,
): Field<Written<F>, Read<F>>
/* @__NO_SIDE_EFFECTS__ */
export function group(about: string, fields: Fields, words: object = {}): unknown {
  return { sort: 'group', about, need: 'required', fields, ...words }
}

/** Any number of the same, at least `least`, which is 0 where it is not said. */
/* @__NO_SIDE_EFFECTS__ */
export function list<W, R>(
  about: string,
  of: Field<W, R>,
  words?: { readonly least: number },
): Field<readonly W[], readonly R[]>
/* @__NO_SIDE_EFFECTS__ */
export function list(about: string, of: unknown, words: { readonly least: number } = { least: 0 }): unknown {
  return { sort: 'list', about, need: 'required', of, ...words }
}

/** Any number of pairs, such as the points of a curve. */
/* @__NO_SIDE_EFFECTS__ */
export function pairs<W1, R1, W2, R2>(
  about: string,
  first: Field<W1, R1>,
  second: Field<W2, R2>,
  words?: { readonly least: number },
): Field<readonly (readonly [W1, W2])[], readonly (readonly [R1, R2])[]>
/* @__NO_SIDE_EFFECTS__ */
export function pairs(
  about: string,
  first: unknown,
  second: unknown,
  words: { readonly least: number } = { least: 0 },
): unknown {
  return { sort: 'pairs', about, need: 'required', of: [first, second], ...words }
}

/**
 * The same under names that the writer chooses.
 *
 * @param about - What they are: a noun phrase.
 * @param of - What stands under each name.
 * @param words - `ids`: the names stand in ids and paths, and must be a letter, then letters and digits.
 */
/* @__NO_SIDE_EFFECTS__ */
export function byName<W, R>(
  about: string,
  of: Field<W, R>,
  words?: Pick<ByNameField, 'ids'>,
): Field<{ readonly [name: string]: W }, { readonly [name: string]: R }>
/* @__NO_SIDE_EFFECTS__ */
export function byName(about: string, of: unknown, words: object = {}): unknown {
  return { sort: 'byName', about, need: 'required', of, ...words }
}

/** One of several forms, told apart by what is written: a quantity by its unit, else a word, a list or an object. */
/* @__NO_SIDE_EFFECTS__ */
// biome-ignore lint/suspicious/noExplicitAny: a field of any types
export function either<const F extends readonly Field<any, any>[]>(
  about: string,
  ...of: F
): Field<Written<F[number]>, Read<F[number]>>
/* @__NO_SIDE_EFFECTS__ */
export function either(about: string, ...of: readonly unknown[]): unknown {
  return { sort: 'either', about, need: 'required', of }
}

/**
 * What only its own reader understands.
 *
 * @param about - What it is: a noun phrase.
 * @param read - What is read from a value, or what is wrong with it.
 * @param json - Its JSON Schema.
 */
/* @__NO_SIDE_EFFECTS__ */
export function own<W, R>(
  about: string,
  read: (value: unknown) => { readonly value: R } | { readonly issue: Omit<InputIssue, 'path'> },
  json: object,
): Field<W, R>
/* @__NO_SIDE_EFFECTS__ */
export function own(about: string, read: OwnField['read'], json: object): unknown {
  return { sort: 'own', about, need: 'required', read, json }
}

/**
 * A field that may be left out.
 *
 * @param field - The field, which has no default.
 * @param words - `absent`: what is to be said when it is left out, such as what is not held to a limit then.
 */
/* @__NO_SIDE_EFFECTS__ */
export function optional<W, R>(field: Field<W, R>, words?: { readonly absent: string }): Field<W, R, 'optional'>
/* @__NO_SIDE_EFFECTS__ */
export function optional(field: object, words: object = {}): unknown {
  return { ...field, ...words, need: 'optional' }
}

/** An optional field that must be written here. */
/* @__NO_SIDE_EFFECTS__ */
export function required<W, R>(field: Field<W, R, 'optional'>): Field<W, R>
/* @__NO_SIDE_EFFECTS__ */
export function required({ absent, ...field }: { readonly absent?: string }): unknown {
  return { ...field, need: 'required' }
}

/** A group that may be left out, whose fields all may be: their defaults stand then. */
/* @__NO_SIDE_EFFECTS__ */
export function defaulted<W, R>(field: Field<W, R>): Field<W, R, 'default'>
/* @__NO_SIDE_EFFECTS__ */
export function defaulted(field: object): unknown {
  return { ...field, need: 'default', default: {} }
}

/** A field that may be written, is checked, and is not handed to the work: nothing rests on it. */
/* @__NO_SIDE_EFFECTS__ */
// biome-ignore lint/suspicious/noExplicitAny: whatever is read from it is not handed on
export function spare<W>(field: Field<W, any, Need>): Field<W, never, 'spare'>
/* @__NO_SIDE_EFFECTS__ */
export function spare(field: object): unknown {
  return { ...field, need: 'spare' }
}

/** Fields without their defaults, so that what uses them later decides and tells. */
export type Undecided<F extends Fields> = {
  readonly [P in keyof F]: F[P] extends Field<infer W, infer R, infer N>
    ? Field<W, R, N extends 'default' ? 'optional' : N>
    : never
}

/** Fields without their defaults, for what only hands them on. Groups among them keep theirs. */
/* @__NO_SIDE_EFFECTS__ */
export function undecided<const F extends Fields>(fields: F): Undecided<F>
/* @__NO_SIDE_EFFECTS__ */
export function undecided(fields: Fields): unknown {
  return Object.fromEntries(
    Object.entries(fields).map(([name, { default: given, because, ...field }]) => [
      name,
      field.need === 'default' ? { ...field, need: 'optional', unless: { default: given, because } } : field,
    ]),
  )
}

/** Whether a description of an input is one field, and no record of fields. */
export function isField(input: AnyField | Fields): input is AnyField {
  return typeof (input as { readonly sort?: unknown }).sort === 'string'
}
