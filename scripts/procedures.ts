/** What the description of a procedure says, as lines of comment and as a page. */
import { procedures } from '../src/catalogue.js'
import { spareParts } from '../src/drivetrain/vehicle.js'
import { boundsText, limitsOf } from '../src/formula/formula.js'
import { sourceText } from '../src/formula/index.js'
import {
  type AnyField,
  type AnyProcedure,
  type FieldAt,
  type Fields,
  fieldsOf,
  isField,
} from '../src/procedure/index.js'
import { lowerFirst } from '../src/procedure/reading.js'
import { kinds } from '../src/quantity/index.js'
import { item, row, unitText, wrapped } from './words.js'

/** The domains, with the procedures of each by the folder that holds them. */
type Domains = { readonly [domain: string]: readonly string[] }

const parts: { readonly [key: string]: AnyField } = spareParts

/** What the comment over a procedure says beside what its author wrote. */
export function procedureFacts({ answers, input, assumes }: AnyProcedure): string[] {
  return [
    ...wrapped(`Answers: ${lowerFirst(answers)}`),
    '',
    ...fieldItems(input, ''),
    ...assumes.flatMap((text) => item(`always assumed: ${lowerFirst(text.replace(/\.$/, ''))}`)),
  ]
}

/** The sources of a procedure, as a sentence. */
export function sourceLine({ source }: AnyProcedure): string {
  return `Source: ${source.map(sourceText).join('; ')}.`
}

function fieldItems(input: Fields | AnyField, indent: string): string[] {
  if (isField(input)) {
    return isGroup(input) ? fieldItems(input.fields, indent) : withInner('the input', input, indent)
  }
  const entries = Object.entries<AnyField>(input)
  const spares = entries.filter(([, { need }]) => need === 'spare').map(([key]) => `\`${key}\``)
  return [
    ...entries.flatMap(([key, field]) => (field.need === 'spare' ? [] : fieldItem(key, field, indent))),
    ...(spares.length === 0 ? [] : item(`${spares.join(', ')}: may stand beside, as parts of a vehicle; not used`)),
  ]
}

function fieldItem(key: string, field: AnyField, indent: string): string[] {
  const name = `\`${key}\``
  if (!isPartOfVehicle(key, field)) return withInner(name, field, indent)
  return itemAt(indent, `${name}: ${lowerFirst(field.about)}, ${keysOf(field)}`)
}

/** A field with what it holds. */
function withInner(name: string, field: AnyField, indent: string): string[] {
  return [...itemAt(indent, `${name}: ${factsOf(field)}`), ...fieldItems(innerOf(field) ?? {}, `${indent}  `)]
}

function itemAt(indent: string, text: string): string[] {
  return item(text).map((line) => `${indent}${line}`)
}

/** What a group or a list of groups holds. */
function innerOf(field: AnyField): Fields | undefined {
  if (isGroup(field)) return field.fields
  return field.sort === 'list' || field.sort === 'byName' ? innerOf(field.of) : undefined
}

function isGroup(field: AnyField): field is AnyField & { readonly fields: Fields } {
  return field.sort === 'group'
}

/** Whether a field is a part of the vehicle, with what a procedure needs of it. */
function isPartOfVehicle(key: string, field: AnyField): boolean {
  const part = parts[key]
  const [whole, own] = [part && innerOf(part), innerOf(field)]
  return whole !== undefined && own !== undefined && Object.keys(own).every((each) => each in whole)
}

/** A part of the vehicle by the names of its fields: what they are stands in `docs/procedures.md`, once. */
function keysOf(field: AnyField): string {
  const keys = Object.entries<AnyField>(innerOf(field) as Fields).map(([key, { need }]) => {
    return need === 'required' ? key : `${key}?`
  })
  return `\`{ ${keys.join(', ')} }\`${field.need === 'required' ? '' : ', optional'}`
}

function factsOf(field: AnyField): string {
  return [lowerFirst(field.about), ...shapeOf(field), ...needOf(field)].join(', ')
}

/** Unit, bounds, words, count: what may be written for a field. */
export function shapeOf(field: AnyField): string[] {
  switch (field.sort) {
    case 'quantity': {
      const { kind, bounds } = field
      const limits = boundsText(kind, limitsOf(kind, bounds))
      const unit = Object.keys(kinds[kind].units)[0] as string
      return [unit === '1' ? unitText(unit) : `in ${unit}`, ...(limits === '' ? [] : [limits])]
    }
    case 'choice':
      return [field.of.map((each) => `'${each}'`).join(' or ')]
    case 'whole': {
      const bounds = [
        ...(field.min === undefined ? [] : [`at least ${field.min}`]),
        ...(field.max === undefined ? [] : [`at most ${field.max}`]),
      ]
      return ['a whole number', ...(bounds.length === 0 ? [] : [bounds.join(' and ')])]
    }
    case 'text':
      return ['text']
    case 'flag':
      return ['true or false']
    case 'list':
      return [field.least > 0 ? `a list of at least ${field.least}` : 'a list', ...plainOf(field.of)]
    case 'pairs':
      return [`pairs of ${field.of.map(({ about }) => lowerFirst(about)).join(' and ')}`]
    case 'byName':
      return ['by names of your own', ...plainOf(field.of)]
    case 'either':
      return [field.of.map((form) => shapeOf(form).join(', ') || lowerFirst(form.about)).join('; or ')]
    default:
      return []
  }
}

/** What each of many is, where it is no group of fields. */
function plainOf(field: AnyField): string[] {
  return innerOf(field) === undefined ? shapeOf(field).map((each) => `each ${each}`) : []
}

function needOf({ need, default: given, because, sort }: AnyField): string[] {
  if (need === 'optional') return ['optional']
  if (need !== 'default') return []
  return sort === 'group' ? ['optional'] : [`${String(given)} by default (${because})`]
}

/** The page that lists every procedure, by domain, with its fields. */
export function proceduresPage(domains: Domains): string {
  const whole: AnyField = { sort: 'group', about: 'A vehicle', need: 'required', fields: spareParts }
  return [
    '# Procedures',
    '',
    'What each procedure answers and takes. This page is made from their descriptions. Figures with a unit are written as',
    "text, such as `'120 A'`, or as quantities. Every procedure refuses fields that it does not know.",
    '',
    '## The vehicle',
    '',
    'The procedures of the drivetrain and of the range take one vehicle whole, and tell for themselves which parts they need.',
    '',
    ...tableOf(fieldsOf({ title: 'A vehicle', input: whole })),
    ...Object.entries(domains).flatMap(([domain, names]) => [
      `## ${domain}`,
      '',
      ...names.flatMap((name) => sectionOf(procedures[name] as AnyProcedure)),
    ]),
  ].join('\n')
}

function sectionOf(procedure: AnyProcedure): string[] {
  const { name, title, answers, assumes } = procedure
  const tops: readonly (readonly [string, AnyField])[] = isField(procedure.input)
    ? []
    : Object.entries<AnyField>(procedure.input)
  const ofVehicle = tops.filter(([key, field]) => isPartOfVehicle(key, field))
  const spares = tops.filter(([, { need }]) => need === 'spare').map(([key]) => key)
  const isShown = (path: string) =>
    !spares.includes(path.split(/[.[]/)[0] as string) && !ofVehicle.some(([key]) => path.startsWith(`${key}.`))
  return [
    `### ${name}`,
    '',
    `${title}. ${answers}`,
    '',
    ...tableOf(fieldsOf(procedure).filter(({ path }) => isShown(path))),
    ...(spares.length === 0
      ? []
      : [`May stand beside, and is not used: ${spares.map((key) => `\`${key}\``).join(', ')}.`, '']),
    ...assumes.map((text) => `- Always assumed: ${lowerFirst(text)}`),
    ...(assumes.length === 0 ? [] : ['']),
    sourceLine(procedure),
    '',
    `Example: [examples/${name}.json](examples/${name}.json).`,
    '',
  ]
}

function tableOf(fields: readonly FieldAt[]): string[] {
  if (fields.length === 0) return []
  return [
    row('field', 'what it is', 'written', 'where it is left out'),
    row('---', '---', '---', '---'),
    ...firstOfEachPath(fields).map(({ path, field }) => {
      const { need, because, absent } = field
      const left =
        need === 'required'
          ? 'must be given'
          : need === 'default' && field.sort !== 'group'
            ? `${String(field.default)} (${because})`
            : (absent ?? 'optional')
      return row(`\`${path}\``, field.about, shapeOf(field).join(', '), left)
    }),
    '',
  ]
}

/** Fields without the forms of one, which stand at its own path: it tells them all. */
export function firstOfEachPath(fields: readonly FieldAt[]): FieldAt[] {
  return [...new Map([...fields].reverse().map((each) => [each.path, each])).values()].reverse()
}
