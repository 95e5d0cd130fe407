/** `kerbwatt compare`: what is different between sheets. */
import { basename } from 'node:path'
import { type Comparison, compare } from '../conversion/index.js'
import type { Quantity } from '../quantity/index.js'
import { shownIn } from '../report/figure.js'
import { BAD_INPUT, type Command, HOLDS } from './command.js'
import { calledIn, readJson } from './files.js'
import { written } from './options.js'
import { Refusal } from './refusal.js'
import { emphasised, print } from './shell.js'
import { aligned } from './table.js'

const alone = shownIn(undefined).alone

export const compareCommand: Command = {
  usage: 'compare SHEET SHEET … [options]',
  about: [
    'Assesses sheets and holds them against the first: verdicts, checks that come out otherwise,',
    'figures that are different. Which is better is not in the figures.',
    'Exit code: 0, or 2 where a sheet cannot be used.',
  ],
  options: { json: { about: 'prints the comparison as JSON' } },
  example: 'kerbwatt compare examples/wagtail-850.json examples/wagtail-first-try.json',
  async run(shell, words) {
    const options = written(words, this.options)
    const { places } = options
    if (places.length < 2) throw new Refusal('expected two sheets or more, such as as-it-is.json lighter.json')
    const twice = places.find((path, i) => places.indexOf(path) !== i)
    if (twice !== undefined) throw new Refusal(`${calledIn(twice)} stands twice`)
    const sheets = []
    for (const path of places) sheets.push({ name: nameAmong(places, path), sheet: await readJson(shell, path) })
    const comparison = compare(sheets)
    const text = options.values.has('json') ? `${JSON.stringify(comparison, null, 2)}\n` : textOf(comparison)
    await print(shell, emphasised(shell, text, /^\S.*$/gm))
    return comparison.variants.some((each) => 'error' in each) ? BAD_INPUT : HOLDS
  },
}

/** What a sheet is called: its file without the ending, or the whole path where another is called the same. */
function nameAmong(paths: readonly string[], path: string): string {
  const nameOf = (each: string) => basename(calledIn(each), '.json')
  return paths.filter((each) => nameOf(each) === nameOf(path)).length === 1 ? nameOf(path) : path
}

function textOf({ variants, figures, checks }: Comparison): string {
  const names = variants.map(({ name }) => name)
  const errors = variants.flatMap((each) => ('error' in each ? [`${each.name}: ${each.error}`] : []))
  const verdicts = variants.map((each) => ('error' in each ? 'not sound' : each.verdict))
  const different = figures.filter(({ values }) => values.some((value) => value?.si !== values[0]?.si))
  const cell = (value: Quantity | undefined) => (value === undefined ? '–' : alone(value))
  const blocks = [
    aligned([
      ['', ...names],
      ['verdict', ...verdicts],
    ]),
    ...(errors.length === 0 ? [] : [['Not sound', ...errors.map((error) => `  ${error.replaceAll('\n', '\n  ')}`)]]),
    ...(checks.length === 0
      ? []
      : [
          [
            'Checks that come out otherwise',
            ...aligned(checks.map(({ id, to }) => [id, ...to.map((verdict) => verdict ?? '–')])),
          ],
        ]),
    ...(different.length === 0
      ? []
      : [
          [
            'Figures that are different',
            ...aligned(different.map(({ id, values }) => [id, ...values.map((value) => cell(value))])),
          ],
        ]),
  ]
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n`
}
