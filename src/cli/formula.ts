/** `kerbwatt formula`: any formula of the catalogue. */
import { catalogue } from '../catalogue.js'
import { boundsText } from '../formula/formula.js'
import { type AnyFormula, explain, type Input, solve, sourceText, sweep } from '../formula/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { type Command, HOLDS } from './command.js'
import { json, named, namesText, takenBy, unitOf } from './named.js'
import { type Options, valueOf, type Written, wholeOf, written } from './options.js'
import { Refusal } from './refusal.js'
import { print } from './shell.js'
import { aligned } from './table.js'

const MOST_STEPS = 100_000

const common: Options = {
  solve: { takes: 'INPUT', about: 'finds this input from --result' },
  result: { takes: 'VALUE', about: 'the result that is wanted' },
  sweep: { takes: 'INPUT', about: 'varies this input in --steps, from one --between to the other' },
  between: { takes: 'VALUE', about: 'an end of the interval of --solve or --sweep; stands twice', most: 2 },
  steps: { takes: 'N', about: 'how many values a sweep has' },
  working: { about: 'prints the working, with source' },
  json: { about: 'prints JSON' },
  csv: { about: 'prints a table with commas' },
}

export const formulaCommand: Command = {
  usage: 'formula [NAME [--INPUT VALUE …] [options]]',
  about: ['Lists the formulas, tells of one, or works it out. Its inputs are its options.'],
  options: common,
  example: "kerbwatt formula cableVoltageDrop --current '300 A' --resistancePerLength '0.386 mΩ/m' --length '3 m'",
  async run(shell, words) {
    const [name, ...others] = words
    const options = written(name?.startsWith('-') === false ? others : words, optionsOf(words))
    if (options.places[0] !== undefined) throw new Refusal(`expected options, got '${options.places[0]}'`)
    await print(shell, answer(name?.startsWith('-') === false ? formulaNamed(name) : undefined, options))
    return HOLDS
  },
  helpOn([name = '']) {
    return Object.hasOwn(catalogue, name) ? describe(formulaNamed(name)) : undefined
  },
}

function formulaNamed(name: string): AnyFormula {
  return named('formula', name)
}

/** The inputs of the formula that is named first, and what goes with any. */
function optionsOf([name = '']: readonly string[]): Options {
  if (!Object.hasOwn(catalogue, name)) {
    if (name !== '' && !name.startsWith('-')) formulaNamed(name)
    return { json: common.json as never }
  }
  const inputs = Object.entries(formulaNamed(name).inputs).map(([key, { about, kind }]) => [
    key,
    { takes: takenBy(kind), about },
  ])
  return { ...Object.fromEntries(inputs), ...common }
}

function answer(formula: AnyFormula | undefined, options: Written): string {
  const has = (name: string) => options.values.has(name)
  if (has('json') && has('csv')) throw new Refusal('--json goes without --csv')
  if (formula === undefined) {
    const all = Object.values(catalogue).map(({ name, title }) => ({ name, title }))
    return has('json') ? json(all) : namesText(all.map(({ name, title }) => [name, title]))
  }
  const given = Object.fromEntries(
    Object.keys(formula.inputs).flatMap((key) => (has(key) ? [[key, valueOf(options, key) as string]] : [])),
  )
  const isAsked = Object.keys(given).length > 0 || has('solve') || has('sweep') || has('working') || has('csv')
  if (!isAsked) {
    refuseWithout(options, 'solve', ['result', 'between', 'steps'])
    const { name, ...others } = formula
    return has('json') ? json({ name: formula.name, ...others }) : describe(formula)
  }
  if (has('solve') && has('sweep')) throw new Refusal('--solve goes without --sweep')
  return has('sweep') ? swept(formula, given, options) : found(formula, given, options)
}

type GivenTexts = { readonly [key: string]: string }

/** The value of a formula, or of an input from its result. */
function found(formula: AnyFormula, given: GivenTexts, options: Written): string {
  const unknown = valueOf(options, 'solve')
  refuseWithout(options, 'sweep', ['steps'])
  if (unknown === undefined) refuseWithout(options, 'solve', ['result', 'between'])
  const between = endsIn(options)
  const { result, toText } = explain(() =>
    unknown === undefined
      ? formula(given as never)
      : solve(
          formula as never,
          unknown as never,
          {
            ...given,
            result: valueOf(options, 'result'),
            ...(between === undefined ? {} : { between }),
          } as never,
        ),
  )
  const value = result as unknown as Quantity
  const working = options.values.has('working') ? { working: toText() } : {}
  if (options.values.has('json')) {
    return json({
      formula: formula.name,
      given,
      ...(unknown === undefined ? {} : { unknown }),
      result: value,
      ...working,
    })
  }
  if (options.values.has('csv')) {
    const inputs = Object.entries(given).map(([key, text]) => [key, quantity(kindOf(formula, key), text as never)])
    return csv([{ ...Object.fromEntries(inputs), [unknown ?? 'result']: value }])
  }
  return `${working.working ?? value}\n`
}

/** A formula over a range of one input. */
function swept(formula: AnyFormula, given: GivenTexts, options: Written): string {
  const varied = valueOf(options, 'sweep') as string
  if (options.values.has('working')) throw new Refusal('--working goes without --sweep')
  if (options.values.has('result')) throw new Refusal('--result goes with --solve')
  if (!Object.hasOwn(formula.inputs, varied)) {
    throw new Refusal(`--sweep takes an input, ${Object.keys(formula.inputs).join(', ')}; got '${varied}'`)
  }
  const between = endsIn(options)
  const steps = wholeOf(options, 'steps', [2, MOST_STEPS])
  if (between === undefined || steps === undefined) {
    throw new Refusal(
      "--sweep goes with its two ends and the number of steps: --between '50 A' --between '400 A' --steps 8",
    )
  }
  const range = { [varied]: { from: between[0], to: between[1], steps } }
  const rows = sweep(formula as never, range as never, given as never) as { readonly [key: string]: Quantity }[]
  if (options.values.has('json')) return json(rows)
  if (options.values.has('csv')) return csv(rows)
  const keys = Object.keys(rows[0] as object)
  return `${aligned([keys, ...rows.map((row) => keys.map((key) => String(row[key])))]).join('\n')}\n`
}

function endsIn({ values }: Written): readonly [string, string] | undefined {
  const [from, to] = values.get('between') ?? []
  if (from === undefined) return undefined
  if (to === undefined) throw new Refusal('--between stands twice, once for each end')
  return [from, to]
}

function refuseWithout({ values }: Written, option: string, needs: readonly string[]): void {
  const alone = needs.find((each) => values.has(each))
  if (alone !== undefined && !values.has(option)) throw new Refusal(`--${alone} goes with --${option}`)
}

function kindOf({ inputs }: AnyFormula, key: string): Input['kind'] {
  return (inputs[key] as Input).kind
}

/** Rows as comma-separated values (RFC 4180), each column in the unit of its first row. */
function csv(rows: readonly { readonly [key: string]: Quantity }[]): string {
  const units = Object.entries(rows[0] as object).map(([key, { unit }]: [string, Quantity]) => [key, unit] as const)
  const heading = units.map(([key, unit]) => (String(unit) === '1' ? key : `${key} (${unit})`))
  const lines = rows.map((row) => units.map(([key, unit]) => (row[key] as Quantity).in(unit)))
  return [heading, ...lines].map((line) => `${line.join(',')}\n`).join('')
}

/** What a formula is, and how it is called. */
function describe(formula: AnyFormula): string {
  const { name, title, inputs, result, expression, assumes, cautions, source } = formula
  const rows = Object.entries(inputs).map(([key, { kind, symbol, about, limits, default: stands, because }]) => {
    const facts = [
      about,
      boundsText(kind, limits),
      stands === undefined ? '' : `${stands} unless given${because === undefined ? '' : ` (${because})`}`,
    ]
    return [`--${key}`, symbol, takenBy(kind), facts.filter((fact) => fact !== '').join(', ')]
  })
  const widths = [0, 1, 2].map((i) => Math.max(...rows.map((row) => (row[i] as string).length)))
  const given = Object.entries(inputs)
    .filter(([, { default: stands }]) => stands === undefined)
    .map(([key, { kind }]) => ` --${key} ${takenBy(kind)}`)
  return [
    `${name}: ${title}`,
    `  ${result.symbol} = ${expression}`,
    '',
    ...rows.map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')}`),
    `  gives ${result.symbol}: ${result.about}${unitOf(result.kind) === '' ? '' : `, in ${result.unit}`}`,
    '',
    ...assumes.map((text) => `Assumes: ${text}`),
    ...cautions.map((text) => `Caution: ${text}`),
    `Source: ${sourceText(source)}`,
    '',
    `kerbwatt formula ${name}${given.join('')}`,
    '',
  ].join('\n')
}
