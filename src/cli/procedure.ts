/** `kerbwatt procedure`: any procedure. */
import { procedures } from '../catalogue.js'
import { schedules } from '../cycles/index.js'
import { boundsText, limitsOf } from '../formula/formula.js'
import { explain, sourceText } from '../formula/index.js'
import { type AnyField, type AnyProcedure, fieldsOf, isField } from '../procedure/index.js'
import { formsOf, type Part, partsAt } from '../procedure/path.js'
import { wholeOf as wholeInput } from '../procedure/procedure.js'
import { InputError } from '../quantity/index.js'
import { type Command, FAILS, HOLDS, withoutPlace } from './command.js'
import { calledIn, readJson } from './files.js'
import { findingsText, standsAgainst } from './findings.js'
import { json, named, namesText, takenBy } from './named.js'
import { type Options, type Written, written } from './options.js'
import { Refusal } from './refusal.js'
import { print, type Shell } from './shell.js'

const common: Options = {
  working: { about: 'prints the working, with sources' },
  json: { about: 'prints JSON' },
}

export const procedureCommand: Command = {
  usage: 'procedure [NAME [INPUT] [--FIELD VALUE …] [options]]',
  about: [
    'Lists the procedures, tells of one, or works it out. INPUT is a JSON file, or - for standard',
    'input. Fields are options, one in a group by its path: --cable.ampacity. Lists come from INPUT.',
    'Exit code: 0 where all checks are met, 1 where one fails or is not known.',
  ],
  options: common,
  example:
    "kerbwatt procedure sizeCable --current '120 A' --length '2.4 m' --maximumDrop '1 %' --systemVoltage '177.6 V'",
  async run(shell, words) {
    const [name, ...others] = words
    if (name === undefined || name.startsWith('-')) {
      const options = written(words, { json: common.json as never })
      const all = Object.values(procedures).map((each) => ({ name: each.name, answers: each.answers }))
      await print(
        shell,
        options.values.has('json') ? json(all) : namesText(all.map((each) => [each.name, each.answers])),
      )
      return HOLDS
    }
    const procedure = named('procedure', name)
    const options = written(others, optionsOf(procedure, others))
    const input = await inputOf(shell, procedure, options)
    if (input === undefined) {
      await print(shell, options.values.has('json') ? json(procedureData(procedure)) : describe(procedure))
      return HOLDS
    }
    return worked(shell, procedure, input, options)
  },
  helpOn([name = '']) {
    return Object.hasOwn(procedures, name) ? describe(named('procedure', name)) : undefined
  },
}

async function worked(shell: Shell, procedure: AnyProcedure, input: unknown, options: Written): Promise<number> {
  const [file] = options.places
  const has = (name: string) => options.values.has(name)
  const { result, toText } = explain(() => {
    try {
      return procedure(withSchedule(procedure, input) as never)
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      throw new Refusal(`${file === undefined ? procedure.name : calledIn(file)}: ${withoutPlace(error)}`)
    }
  })
  const working = has('working') ? { working: toText() } : {}
  const text = working.working === undefined ? '' : `\nWorking\n${working.working}\n`
  await print(shell, has('json') ? json({ result, ...working }) : `${findingsText(result)}${text}`)
  return standsAgainst(result) ? FAILS : HOLDS
}

/** The input with the published schedule in place of its name: in a file and in words there are only names. */
function withSchedule(procedure: AnyProcedure, input: unknown): unknown {
  if (isField(procedure.input) || procedure.input.cycle?.sort !== 'own') return input
  const name = (input as { readonly cycle?: unknown } | null)?.cycle
  if (typeof name !== 'string' || !Object.hasOwn(schedules, name)) return input
  return { ...(input as object), cycle: schedules[name as keyof typeof schedules] }
}

/** Options for each field that is a value of its own, and for those that the words name under names of their own. */
function optionsOf(procedure: AnyProcedure, words: readonly string[]): Options {
  const options = Object.fromEntries(
    fieldsOf(procedure).flatMap(({ path, field }) =>
      path === '' || /[[*]/.test(path) || !isValue(field) ? [] : [[path, optionFor(field)]],
    ),
  )
  for (const word of words) {
    const path = /^--([^=]+)/.exec(word)?.[1]
    if (path === undefined || Object.hasOwn(options, path) || Object.hasOwn(common, path)) continue
    const [field, ...others] = partsOn(procedure, path).filter((part): part is AnyField => part.sort !== 'pair')
    if (field === undefined) continue
    const known = [field, ...others].find(isValue)
    if (known === undefined) throw new Refusal(whyNoValue(path, field, Object.keys(options)))
    options[path] = optionFor(known)
  }
  return { ...options, ...common }
}

function whyNoValue(path: string, { sort }: AnyField, known: readonly string[]): string {
  const inner = known.find((each) => each.startsWith(`${path}.`))
  if (inner !== undefined) return `--${path} is a group: give its fields, such as --${inner}`
  const names = sort === 'byName' ? ` or its entries, --${path}.NAME` : ''
  return `--${path} is ${sort === 'byName' || sort === 'group' ? 'a group' : 'a list'}: give it in a JSON file${names}`
}

function partsOn({ title, input }: AnyProcedure, path: string): readonly Part[] {
  return path
    .split('.')
    .reduce<readonly Part[]>((parts, step) => parts.flatMap((part) => partsAt(part, step)), [wholeInput(title, input)])
}

/** Whether something that is written in one word may stand for a field. */
function isValue(field: AnyField): boolean {
  return formsOf(field).some(({ sort }) => ['quantity', 'choice', 'whole', 'text', 'flag', 'own'].includes(sort))
}

function optionFor(field: AnyField): Options[string] {
  return { takes: takenIn(field), about: field.about }
}

/** What is written for a field. */
function takenIn(field: AnyField): string {
  const forms = formsOf(field).flatMap((form) => {
    switch (form.sort) {
      case 'quantity':
        return [takenBy(form.kind)]
      case 'choice':
        return [form.of.join('|')]
      case 'whole':
        return ['N']
      case 'flag':
        return ['true|false']
      case 'text':
      case 'own':
        return ['TEXT']
      default:
        return []
    }
  })
  return [...new Set(forms)].join('|')
}

/** The input: what the file holds, with what the options put in its place; undefined where nothing is given. */
async function inputOf(shell: Shell, procedure: AnyProcedure, { places, values }: Written): Promise<unknown> {
  const [file, second] = places
  if (second !== undefined) throw new Refusal(`expected one file, got '${file}' and '${second}'`)
  const given = [...values].filter(([name]) => !Object.hasOwn(common, name))
  const written = file === undefined ? undefined : await readJson(shell, file)
  if (given.length === 0) return written
  if (written !== undefined && (typeof written !== 'object' || written === null || Array.isArray(written))) {
    throw new Refusal(`${calledIn(file as string)}: expected an object, as --${given[0]?.[0]} stands beside it`)
  }
  return given.reduce<unknown>(
    (input, [path, [text = '']]) => put(input, path.split('.'), valueIn(partsOn(procedure, path), text)),
    written ?? {},
  )
}

/** A word as it would stand in JSON. */
function valueIn(parts: readonly Part[], text: string): unknown {
  const sorts = parts.flatMap(formsOf).map(({ sort }) => sort)
  if (sorts.includes('whole') && /^[-+]?\d{1,15}$/.test(text)) return Number(text)
  if (sorts.includes('flag') && (text === 'true' || text === 'false')) return text === 'true'
  return text
}

function put(holder: unknown, [step = '', ...rest]: readonly string[], value: unknown): unknown {
  const held = Object.hasOwn(Object(holder), step) ? (holder as { readonly [key: string]: unknown })[step] : undefined
  return { ...Object(holder), [step]: rest.length === 0 ? value : put(held, rest, value) }
}

function procedureData(procedure: AnyProcedure): object {
  const { name, title, answers, source, assumes } = procedure
  const fields = fieldsOf(procedure).map(({ path, field: { sort, about, need } }) => ({ path, sort, about, need }))
  return { name, title, answers, fields, assumes, source: source.map(sourceText) }
}

/** What a procedure is, and how it is called. */
function describe(procedure: AnyProcedure): string {
  const { name, title, answers, input, assumes, source } = procedure
  const seen = new Set<string>()
  const rows = fieldsOf(procedure).flatMap(({ path, field }) => {
    if (field.need === 'spare' || path === '' || seen.has(path)) return []
    seen.add(path)
    const isOption = isValue(field) && !/[[*]/.test(path)
    return [[isOption ? `--${path}` : `  ${path}`, isOption ? takenIn(field) : sortIn(field), factsOf(field)] as const]
  })
  const spares = isField(input) ? [] : Object.keys(input).filter((key) => input[key]?.need === 'spare')
  const [first, second] = [0, 1].map((i) => Math.max(0, ...rows.map((row) => (row[i] as string).length)))
  return [
    `${name}: ${title}`,
    answers,
    '',
    ...rows.map(([option, taken, facts]) =>
      `  ${option.padEnd(first as number)}  ${taken.padEnd(Math.min(second as number, 16))}  ${facts}`.trimEnd(),
    ),
    ...(spares.length === 0 ? [] : ['', `May stand beside, and is not used: ${spares.join(', ')}`]),
    '',
    ...assumes.map((text) => `Assumes: ${text}`),
    `Source: ${source.map(sourceText).join('; ')}`,
    '',
  ].join('\n')
}

function sortIn({ sort }: AnyField): string {
  return sort === 'pairs'
    ? 'pairs'
    : sort === 'list'
      ? 'list'
      : sort === 'byName'
        ? 'by name'
        : sort === 'group'
          ? ''
          : sort
}

function factsOf(field: AnyField): string {
  const { about, need, because } = field
  const bounds = field.sort === 'quantity' ? boundsText(field.kind, limitsOf(field.kind, field.bounds)) : ''
  const left = typeof field.default === 'object' ? '' : `${field.default} unless given (${because})`
  const stands = need === 'default' ? left : need === 'optional' ? 'may be left out' : ''
  return [about, bounds, stands].filter((fact) => fact !== '').join(', ')
}
