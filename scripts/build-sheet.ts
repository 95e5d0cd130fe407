/** What the fields of the build sheet say: as a type, as JSON Schema, and as a page. */
import { readFileSync } from 'node:fs'
import { assess, readBuild } from '../src/conversion/index.js'
import { sheetFields } from '../src/conversion/sheet/fields.js'
import { type AnyField, type FieldAt, type Fields, fieldsOf, jsonSchemaOf } from '../src/procedure/index.js'
import { lowerFirst } from '../src/procedure/reading.js'
import { firstOfEachPath, shapeOf } from './procedures.js'
import { root } from './root.js'
import { row, wrapped } from './words.js'

/** The widest line of code. */
const WIDTH = 120

/** The JSON Schema of a build sheet, as text. */
export function sheetSchema(): string {
  const answers = 'The car as it is, the change, and what it must do. Every figure is text with its unit.'
  const schema = jsonSchemaOf({ name: 'BuildSheet', title: 'A build sheet', answers, input: sheetFields })
  // A measured value may carry its uncertainty.
  const measured = (key: string, value: unknown) =>
    key === 'pattern' && typeof value === 'string' && value.startsWith('^[-+')
      ? value.replace(/\$$/, '(?:[ \\u00a0\\u202f]?(?:±|\\+/-)[ \\u00a0\\u202f]?[^±]+)?$')
      : value
  return `${JSON.stringify(schema, measured, 2)}\n`
}

/** The module that holds the type of a build sheet as it is written. */
export function sheetModule(): string {
  return [
    '/** The build sheet as it is written. `npm run docs` makes this file from the fields of the sheet. */',
    "import type { Measured } from '../../quantity/index.js'",
    '',
    '/** A build sheet as it is written: every quantity is text with its unit. */',
    `export interface BuildSheet ${objectOf(sheetFields, '')}`,
    '',
  ].join('\n')
}

function objectOf(fields: Fields, indent: string): string {
  const inner = `${indent}  `
  const lines = Object.entries<AnyField>(fields).flatMap(([key, field]) => [
    ...commentOf(field, inner),
    propertyOf(key, field, inner),
  ])
  return `{\n${lines.join('\n')}\n${indent}}`
}

function propertyOf(key: string, field: AnyField, indent: string): string {
  const [mark, orNone] = field.need === 'required' ? ['', ''] : ['?', ' | undefined']
  return `${indent}readonly ${key}${mark}: ${typeOf(field, indent)}${orNone}`
}

function typeOf(field: AnyField, indent: string): string {
  switch (field.sort) {
    case 'quantity':
      return `Measured<'${field.kind}'>`
    case 'choice':
      return field.of.map((each) => `'${each}'`).join(' | ')
    case 'whole':
      return 'number'
    case 'text':
      return 'string'
    case 'flag':
      return 'boolean'
    case 'group':
      return objectOf(field.fields, indent)
    case 'list':
      return `readonly ${inBrackets(field.of, indent)}[]`
    case 'pairs':
      return `readonly (readonly [${field.of.map((each) => typeOf(each, indent)).join(', ')}])[]`
    case 'byName':
      return `{ readonly [name: string]: ${typeOf(field.of, indent)} }`
    case 'either':
      return field.of.map((form) => typeOf(form, indent)).join(' | ')
    case 'own':
      throw new Error('a field of the sheet that only its own reader understands has no type that can be written')
  }
}

/** The type of what a list holds: another list or a union stands in brackets. */
function inBrackets(field: AnyField, indent: string): string {
  const type = typeOf(field, indent)
  return ['list', 'pairs', 'choice', 'either'].includes(field.sort) ? `(${type})` : type
}

/** What a field is, with its unit and its bounds. */
function commentOf(field: AnyField, indent: string): string[] {
  const facts = [field.about, ...(field.sort === 'quantity' || field.sort === 'whole' ? shapeOf(field) : [])]
  const left = field.absent === undefined ? '' : ` Without it: ${lowerFirst(inWordsOfSheet(field.absent))}`
  const text = `${[...facts, ...usualOf(field)].join(', ')}.${left}`
  const only = `${indent}/** ${text} */`
  if (only.length <= WIDTH) return [only]
  const lines = wrapped(text, WIDTH - indent.length)
  return [`${indent}/**`, ...lines.map((line) => `${indent} * ${line}`), `${indent} */`]
}

/** The module stands on the sheet by itself. */
function inWordsOfSheet(text: string): string {
  return text.replaceAll('pack.module.', 'module.')
}

function usualOf(field: AnyField): string[] {
  if (field.sort !== 'quantity' || field.usual === undefined) return []
  return [`usually ${field.usual[0]} to ${field.usual[1]}`]
}

/** The page that lists every field of the build sheet. */
export function sheetPage(): string {
  const fields = firstOfEachPath(fieldsOf({ title: 'A build sheet', input: sheetFields }))
  const partOf = ({ path }: FieldAt) => path.split(/[.[]/)[0] as string
  const isPart = ({ path, field }: FieldAt) => partOf({ path, field }) === path
  const alone = fields.filter(
    (each) => isPart(each) && fields.every((other) => other === each || partOf(other) !== each.path),
  )
  const parts = fields.filter((each) => isPart(each) && !alone.includes(each))
  return [
    '# The build sheet',
    '',
    'Every field of the sheet by its path. This page is made from the fields. `[]` stands for each of a list, `*` for a name',
    "of your own: a letter, then letters and digits. Figures are text with their unit, such as `'120 A'`; a ratio may be",
    "`'45 %'` or `0.45`. A figure that is not usual is told as a note; one that is out of its bounds is refused, and so is",
    'one beyond 10¹² in SI units or, unless it is 0, below 10⁻¹². A sheet holds at most 10 000 values.',
    '',
    'An editor that knows JSON Schema completes the sheet and marks what is wrong, where the sheet begins with',
    '`"$schema": "./node_modules/kerbwatt/docs/build-sheet.schema.json"`.',
    '',
    ...tableOf(alone),
    ...parts.flatMap((part) => [
      `## ${part.path}`,
      '',
      `${part.field.about}. ${whatIfLeftOut(part)}`,
      '',
      ...tableOf(fields.filter((each) => each !== part && partOf(each) === part.path)),
    ]),
  ].join('\n')
}

function tableOf(fields: readonly FieldAt[]): string[] {
  return [
    row('field', 'what it is', 'written', 'usual', 'without it'),
    row('---', '---', '---', '---', '---'),
    ...fields.map((each) =>
      row(`\`${each.path}\``, each.field.about, writtenAs(each.field), usualText(each.field), leftOut(each)),
    ),
    '',
  ]
}

function writtenAs(field: AnyField): string {
  return field.sort === 'group' ? 'its fields, below' : shapeOf(field).join(', ')
}

function usualText(field: AnyField): string {
  return field.sort === 'quantity' && field.usual !== undefined ? `${field.usual[0]} to ${field.usual[1]}` : ''
}

function leftOut({ path, field }: FieldAt): string {
  const { need, absent, unless } = field
  if (need === 'required') return 'It must be given.'
  if (absent !== undefined) return inWordsOfSheet(absent)
  if (unless?.because !== undefined) return `${unless.default} (${unless.because})`
  return path in sheetFields ? whatIfLeftOut({ path, field }) : 'It may be left out.'
}

/** What is not assessed of the example car without a part of its sheet. */
function whatIfLeftOut({ path, field }: FieldAt): string {
  if (field.need === 'required') return 'It must be given.'
  const { [path]: left, ...others } = JSON.parse(readFileSync(`${root}examples/wagtail-850.json`, 'utf8'))
  const titles = left === undefined ? [] : assess(readBuild(others)).unassessed.map(({ title }) => lowerFirst(title))
  return titles.length === 0 ? 'It may be left out.' : `Without it these are not assessed: ${titles.join('; ')}.`
}
