/** `kerbwatt sheet` and `kerbwatt schema`: what a sheet is written from. */
import { sheetFields } from '../conversion/sheet/fields.js'
import type { AnyField, Fields } from '../procedure/index.js'
import { type Command, HOLDS } from './command.js'
import { unitOf } from './named.js'
import { written } from './options.js'
import { packageFile } from './package.js'
import { Refusal } from './refusal.js'
import { print } from './shell.js'

/** Where the schema is looked for, beside the sheet. */
const SCHEMA = './build-sheet.schema.json'

export const sheetCommand: Command = {
  usage: 'sheet [--example]',
  about: [
    'Prints a build sheet to start from: what every sheet must say, with what belongs there in',
    'the place of each value. Until it is filled in, assess tells what is missing.',
    'With kerbwatt schema > build-sheet.schema.json beside it an editor completes the fields.',
  ],
  options: { example: { about: 'prints the whole sheet of an invented car instead' } },
  example: 'kerbwatt sheet --example | kerbwatt assess - --brief',
  async run(shell, words) {
    const { values, places } = written(words, this.options)
    refusePlaces(places)
    const example = () => JSON.parse(packageFile(shell, 'examples/wagtail-850.json')) as { readonly $schema: string }
    const { $schema: _, ...sheet } = values.has('example') ? example() : { $schema: SCHEMA, ...blank(sheetFields) }
    await print(shell, `${JSON.stringify({ $schema: SCHEMA, ...sheet }, null, 2)}\n`)
    return HOLDS
  },
}

export const schemaCommand: Command = {
  usage: 'schema',
  about: ['Prints the JSON Schema of a build sheet, with which an editor completes its fields.'],
  options: {},
  example: 'kerbwatt schema > build-sheet.schema.json',
  async run(shell, words) {
    refusePlaces(written(words, this.options).places)
    await print(shell, packageFile(shell, 'docs/build-sheet.schema.json'))
    return HOLDS
  },
}

function refusePlaces([first]: readonly string[]): void {
  if (first !== undefined) throw new Refusal(`takes no file, got '${first}'`)
}

/** The fields that must be written, each with what belongs there in the place of its value. */
function blank(fields: Fields): object {
  return Object.fromEntries(
    Object.entries<AnyField>(fields).flatMap(([key, field]) =>
      field.need === 'required' ? [[key, blankOf(field)]] : [],
    ),
  )
}

function blankOf(field: AnyField): unknown {
  if (field.sort === 'group') return blank(field.fields)
  if (field.sort === 'choice') return field.of.join(' or ')
  if (field.sort !== 'quantity') return field.about
  const unit = unitOf(field.kind)
  return `${field.about}, ${unit === '' ? 'a plain number' : `in ${unit}`}`
}
