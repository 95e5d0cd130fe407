/**
 * JSON Schema (draft-7) of a procedure's input, for editors and for other programs. A quantity is text with a pattern; its
 * bounds stand in the description, and only the reader holds them.
 */
import { boundsText, limitsOf } from '../formula/formula.js'
import { type Kind, kinds } from '../quantity/kinds.js'
import { issueWith, kindInWords, spellingsOfKind, symbolsOf } from '../quantity/read.js'
import type { AnyField, Fields, GroupField, QuantityField } from './field.js'
import { wholeOf } from './procedure.js'
import { ID, lowerFirst, NAME } from './reading.js'

/** A JSON Schema. */
export interface JsonSchema {
  readonly [keyword: string]: unknown
}

/**
 * The JSON Schema of the input of a procedure.
 *
 * @param procedure - The procedure.
 * @returns A schema of draft-7, as plain JSON.
 */
export function jsonSchemaOf(procedure: {
  readonly name: string
  readonly title: string
  readonly answers: string
  readonly input: Fields | AnyField
}): JsonSchema {
  const used = new Set<Kind>()
  const schema = schemaOf(wholeOf(procedure.title, procedure.input), used)
  const definitions = Object.fromEntries([...used].sort().map((kind) => [kind, kindSchema(kind)]))
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    ...schema,
    title: procedure.name,
    description: `${procedure.title}. ${procedure.answers}`,
    definitions,
  }
}

function schemaOf(field: AnyField, used: Set<Kind>): JsonSchema {
  const words = {
    description: textOf(field),
    ...(field.default === undefined ? {} : { default: field.default }),
  }
  switch (field.sort) {
    case 'quantity':
      used.add(field.kind)
      return { ...words, allOf: [{ $ref: `#/definitions/${field.kind}` }] }
    case 'choice':
      return { ...words, type: 'string', enum: field.of }
    case 'whole':
      return {
        ...words,
        type: 'integer',
        ...(field.min === undefined ? {} : { minimum: field.min }),
        ...(field.max === undefined ? {} : { maximum: field.max }),
      }
    case 'text':
      return { ...words, type: 'string', minLength: 1 }
    case 'flag':
      return { ...words, type: 'boolean' }
    case 'group':
      return { ...words, ...groupSchema(field, used) }
    case 'list':
      return { ...words, type: 'array', minItems: field.least, items: schemaOf(field.of, used) }
    case 'pairs': {
      const items = field.of.map((each) => schemaOf(each, used))
      const pair = { type: 'array', minItems: 2, maxItems: 2, items }
      return { ...words, type: 'array', minItems: field.least, items: pair }
    }
    case 'byName':
      return {
        ...words,
        type: 'object',
        propertyNames: { pattern: field.ids ? ID : NAME },
        additionalProperties: schemaOf(field.of, used),
      }
    case 'either':
      return { ...words, anyOf: field.of.map((each) => schemaOf(each, used)) }
    case 'own':
      return { ...words, ...field.json }
  }
}

function groupSchema({ fields, open }: GroupField, used: Set<Kind>): JsonSchema {
  const entries = Object.entries<AnyField>(fields)
  const required = entries.filter(([, { need }]) => need === 'required').map(([key]) => key)
  return {
    type: 'object',
    properties: Object.fromEntries(entries.map(([key, field]) => [key, schemaOf(field, used)])),
    ...(required.length === 0 ? {} : { required }),
    additionalProperties: open === true,
  }
}

/** What a field is, for whoever has a file of it open in an editor. */
function textOf(field: AnyField): string {
  const { about, absent, unless } = field
  const what = field.sort === 'quantity' ? quantityText(field) : about
  const left =
    (absent === undefined ? undefined : `Without it: ${lowerFirst(absent)}`) ??
    (unless?.because === undefined ? undefined : `${unless.default} unless given (${unless.because})`)
  return left === undefined ? what : `${what}. ${left}`
}

function quantityText({ kind, about, bounds, usual }: QuantityField): string {
  const limits = boundsText(kind, limitsOf(kind, bounds))
  const [unit] = symbolsOf(kind)
  return [
    about,
    ...(unit === '1' ? [] : [`in ${unit}`]),
    ...(limits === '' ? [] : [limits]),
    ...(usual === undefined ? [] : [`usually ${usual[0]} to ${usual[1]}`]),
  ].join(', ')
}

/** Text of a number and one of the units of a kind; a ratio may be a number. */
function kindSchema(kind: Kind): JsonSchema {
  const units = spellingsOfKind(kind).map((spelling) => spelling.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
  const unit = `[ \\u00a0\\u202f]?(?:${units.join('|')})`
  const pattern = `^[-+\\u2212]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][-+\\u2212]?\\d+)?${kind === 'ratio' ? `(?:${unit})?` : unit}$`
  const example = /such as '([^']*)'/.exec(issueWith('', kind, undefined).expected)?.[1]
  const text = {
    type: 'string',
    pattern,
    description: `Text of ${kindInWords(kind)} with its unit: ${Object.keys(kinds[kind].units).join(', ')}`,
    ...(example === undefined ? {} : { examples: [example] }),
  }
  return kind === 'ratio' ? { anyOf: [{ type: 'number' }, text] } : text
}
