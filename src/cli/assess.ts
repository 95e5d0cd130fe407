/** `kerbwatt assess`: does the car hold? */
import { type Assessment, assess, readBuild } from '../conversion/index.js'
import { toCsv, toHtml, toMarkdown, toText } from '../report/index.js'
import { type Command, FAILS, HOLDS, inFile } from './command.js'
import { readJson, refuseTargets, type Target, writeWhole } from './files.js'
import { onlyPlace, valueOf, type Written, written } from './options.js'
import { Refusal } from './refusal.js'
import { emphasised, print, type Shell, tell, widthOf } from './shell.js'

/** What a report is written in, by the option that names its file. */
const reports = {
  html: (found: Assessment, units: { readonly units?: 'imperial' }) => toHtml(found, units),
  markdown: (found: Assessment, units: { readonly units?: 'imperial' }) => toMarkdown(found, units),
  csv: (found: Assessment) => toCsv(found),
} as const
const sorts = Object.keys(reports) as (keyof typeof reports)[]

export const assessCommand: Command = {
  usage: 'assess SHEET [options]',
  about: [
    'Assesses the car of a build sheet: verdict and key figures first, then chapter by chapter.',
    'Exit code: 0 where it holds, 1 where it fails or is open, 2 where the sheet cannot be used.',
  ],
  options: {
    html: { takes: 'FILE', about: 'writes the report as one page' },
    markdown: { takes: 'FILE', about: 'writes the report as Markdown' },
    csv: { takes: 'FILE', about: 'writes figures and checks as a table' },
    json: { about: 'prints the assessment as JSON' },
    brief: { about: 'leaves out the assumptions' },
    bands: { about: 'tells how sure the key figures are, and what to measure next' },
    units: { takes: 'imperial', about: 'shows pounds, inches and miles' },
    lines: { about: 'reads variants, a line of JSON each, and writes a line for each' },
  },
  example: 'kerbwatt sheet --example | kerbwatt assess - --brief',
  async run(shell, words) {
    const options = written(words, this.options)
    const path = onlyPlace(options, 'a sheet, such as car.json, or - for standard input')
    return options.values.has('lines') ? lines(shell, path, options) : sheet(shell, path, options)
  },
}

async function lines(shell: Shell, path: string, { values }: Written): Promise<number> {
  const other = [...values.keys()].find((name) => name !== 'lines')
  if (other !== undefined) throw new Refusal(`--lines goes without --${other}`)
  return (await import('./assess-lines.js')).assessLines(shell, path)
}

async function sheet(shell: Shell, path: string, options: Written): Promise<number> {
  const has = (name: string) => options.values.has(name)
  if (has('json') && has('brief')) throw new Refusal('--json goes without --brief')
  const units = unitsOf(options)
  const targets = sorts.flatMap((sort): (Target & { readonly sort: typeof sort })[] => {
    const target = valueOf(options, sort)
    return target === undefined ? [] : [{ option: `--${sort}`, path: target, sort }]
  })
  refuseTargets(targets, [path])
  const written = await readJson(shell, path)
  const found = assess(
    inFile(path, () => readBuild(written)),
    { bands: has('bands') },
  )
  // All are made before the first is written.
  const texts = targets.map((target) => ({ ...target, text: reports[target.sort](found, units) }))
  for (const { path: place, text } of texts) {
    writeWhole(place, text)
    await tell(shell, `wrote ${place}`)
  }
  await print(shell, has('json') ? jsonOf(found) : textOf(shell, found, { brief: has('brief'), ...units }))
  return found.verdict === 'holds' || found.verdict === 'near' ? HOLDS : FAILS
}

function unitsOf(options: Written): { readonly units?: 'imperial' } {
  const units = valueOf(options, 'units')
  if (units === undefined) return {}
  if (units === 'imperial') return { units }
  throw new Refusal(`--units takes imperial, got '${units}'`)
}

/** An assessment as JSON: each quantity as text that reads back as just that. */
function jsonOf(found: Assessment): string {
  return `${JSON.stringify(found, null, 2)}\n`
}

function textOf(shell: Shell, found: Assessment, options: { readonly brief: boolean; readonly units?: 'imperial' }) {
  const text = toText(found, { ...options, width: widthOf(shell) })
  return emphasised(shell, text, /^(?:[A-Z]+:.*|.+(?=\n[-=]{3,}$))/gm)
}
