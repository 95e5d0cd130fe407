/**
 * Writes what is made from data: the doc comment under the first paragraph over every formula, and under what its author
 * wrote over every procedure; the pages of procedures, of published checks and of the build sheet, and the type and the
 * JSON Schema of the sheet; the output shown after every example in the README and the guides. `npm run docs` runs it, and
 * a test fails when anything has drifted.
 */
import { execFileSync, spawnSync } from 'node:child_process'
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { catalogue, procedures } from '../src/catalogue.js'
import { type AnyFormula, boundsText, limitsText } from '../src/formula/formula.js'
import { type Input, sourceText } from '../src/formula/index.js'
import { lowerFirst } from '../src/procedure/reading.js'
import { type Kind, kinds, type Quantity } from '../src/quantity/index.js'
import { drivetrainHandbook } from '../tests/handbook/drivetrain.js'
import { electricalHandbook } from '../tests/handbook/electrical.js'
import type { HandbookEntry } from '../tests/handbook/handbook.js'
import { massHandbook } from '../tests/handbook/mass.js'
import { rangeHandbook } from '../tests/handbook/range.js'
import { thermalHandbook } from '../tests/handbook/thermal.js'
import { sheetModule, sheetPage, sheetSchema } from './build-sheet.js'
import { buildCommand } from './cli.js'
import { procedureFacts, proceduresPage, sourceLine } from './procedures.js'
import { root } from './root.js'
import { item, unitText, WIDTH, wrapped } from './words.js'

const handbooks: { readonly [domain: string]: readonly HandbookEntry[] } = {
  mass: massHandbook,
  electrical: electricalHandbook,
  drivetrain: drivetrainHandbook,
  range: rangeHandbook,
  thermal: thermalHandbook,
}

/** Every source file of a domain. */
export function domainFiles(): string[] {
  return Object.keys(handbooks).flatMap((domain) =>
    readdirSync(join(root, 'src', domain), { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.ts'))
      .map((file) => join(root, 'src', domain, file)),
  )
}

/** A source file with the comment over each of its formulas and procedures written anew. */
export function withComments(source: string): string {
  return withProcedures(withFormulas(source))
}

/** A procedure's name, and the comment over it. */
const described =
  /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\n(export const (\w+) = \/\*@__PURE__\*\/ (?:\(\(\) =>\s*)?procedure\()/g

function withProcedures(source: string): string {
  return source.replace(described, (whole, comment: string, code: string, name: string) => {
    const procedure = procedures[name]
    if (procedure === undefined) return whole
    const lines = comment.split('\n').map((line) => line.replace(/^\s*\*? ?/, '').trimEnd())
    const from = (start: string) => {
      const found = lines.findIndex((line) => line.startsWith(start))
      return found < 0 ? lines.length : found
    }
    const [facts, outcome, sources, example] = [
      Math.min(...['Answers: ', '@returns', '@throws', 'Source: ', '@example'].map(from)),
      Math.min(...['@returns', '@throws', 'Source: ', '@example'].map(from)),
      Math.min(...['Source: ', '@example'].map(from)),
      from('@example'),
    ]
    const part = (...ends: readonly [number, number?]) =>
      lines
        .slice(...ends)
        .join('\n')
        .trim()
    const text = [
      part(0, facts),
      procedureFacts(procedure).join('\n'),
      `${part(outcome, sources)}\n${wrapped(sourceLine(procedure)).join('\n')}`.trim(),
      part(example),
    ].join('\n\n')
    return `${['/**', ...text.split('\n').map((line) => ` * ${line}`.trimEnd()), ' */'].join('\n')}\n${code}`
  })
}

function withFormulas(source: string): string {
  const pattern = /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\nexport const (\w+) = \/\*@__PURE__\*\/ formula\(/g
  return source.replace(pattern, (whole, comment: string, name: string) => {
    const formula = catalogue[name]
    if (formula === undefined) return whole
    const lines = [...wrapped(firstParagraph(comment)), ...facts(formula)]
    const only =
      lines.length === 1
        ? `/** ${lines[0]} */`
        : ['/**', ...lines.map((line) => ` * ${line}`.trimEnd()), ' */'].join('\n')
    return `${only}\nexport const ${name} = /*@__PURE__*/ formula(`
  })
}

/** What the author wrote: the text up to the first empty line. */
function firstParagraph(comment: string): string {
  const lines = comment.split('\n').map((line) => line.replace(/^\s*\*? ?/, '').trim())
  const text = lines.join('\n').trim()
  return (text.split(/\n\s*\n/)[0] ?? '').replace(/\s*\n\s*/g, ' ').trim()
}

/** What the data of a formula says, as lines of comment. */
function facts(formula: AnyFormula): string[] {
  const { result } = formula
  const constants = Object.entries(formula.constants).map(([symbol, { value, about, source }]) =>
    item(`\`${symbol}\` = ${value.toJSON()}: ${lowerFirst(about)} (${sourceText(source)})`),
  )
  const ranges = formula.valid.map((range) => item(`holds where ${range.of} is ${limitsText(range, String)}`))
  const notes = [
    ...formula.assumes.map((text) => `Assumes: ${lowerFirst(text)}`),
    ...formula.cautions.map((text) => `Caution: ${lowerFirst(text)}`),
  ].map((text) => item(text.replace(/\.$/, '')))
  return [
    '',
    `\`${result.symbol} = ${formula.expression}\``,
    '',
    ...Object.entries(formula.inputs).flatMap(([key, input]) => item(inputText(key, input))),
    ...item(`gives \`${result.symbol}\`: ${lowerFirst(result.about)}, in ${unitText(result.unit)}`),
    ...[...constants, ...ranges, ...notes].flat(),
    '',
    'Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.',
    '',
    ...wrapped(`Source: ${sourceText(formula.source)}.`),
    ...example(formula),
  ]
}

function inputText(key: string, { kind, symbol, about, limits, default: given }: Input): string {
  const bounds = boundsText(kind, limits)
  const parts = [
    `\`${key}\` (\`${symbol}\`, ${unitText(Object.keys(kinds[kind].units)[0] as string)}): ${lowerFirst(about)}`,
  ]
  if (bounds !== '') parts.push(bounds)
  if (given !== undefined) parts.push(`${given} unless given`)
  return parts.join(', ')
}

/** The first published check as a call, with the result that it gives and the figure it is held to. */
function example(formula: AnyFormula): string[] {
  const row = rowsOf(formula.name)[0]
  if (row === undefined) return []
  const given = Object.entries(row.given as object).map(([key, value]) => `${key}: ${code(value)}`)
  const call = `${formula.name}({ ${given.join(', ')} })`
  const result = (formula as unknown as (given: unknown) => Quantity)(row.given)
  const lines = call.length + 3 <= WIDTH ? [call] : [`${formula.name}({`, ...given.map((each) => `  ${each},`), '})']
  const check = `${sourceText(row.source)} (${row.standing}): ${expectedText(row.expected)}`
  return [
    '',
    '@example',
    '```ts',
    ...lines,
    `// ${result}`,
    ...wrapped(check, WIDTH - 3).map((line) => `// ${line}`),
    '```',
  ]
}

function rowsOf(name: string) {
  return Object.values(handbooks)
    .flat()
    .filter((entry) => entry.name === name)
    .flatMap((entry) => entry.rows)
}

function expectedText(expected: unknown): string {
  return typeof expected === 'object' ? (expected as Quantity).format({ digits: 8 }) : String(expected)
}

/** A given value as it is typed. */
function code(value: unknown): string {
  if (typeof value === 'string') return `'${value}'`
  if (typeof value === 'number') return String(value)
  const quantity = value as Quantity
  const unit = Object.keys(kinds[quantity.kind as Kind].units).includes(quantity.unit) ? quantity.unit : ''
  return `quantity('${quantity.kind}', ${quantity.in(unit as never)}, '${unit}')`
}

/** The page that lists every published check, by domain and formula. */
export function checksPage(): string {
  const sections = Object.entries(handbooks).flatMap(([domain, entries]) => [
    `## ${domain}`,
    '',
    '| formula | with | expected | within | source | how the figure is known |',
    '| --- | --- | --- | --- | --- | --- |',
    ...entries.flatMap(({ name, rows }) =>
      rows.map((row) => {
        const given = Object.entries(row.given as object).map(([key, value]) => `${key} ${expectedText(value)}`)
        const within =
          typeof row.within === 'number' ? `${Number((row.within * 100).toPrecision(3))} %` : expectedText(row.within)
        const known = row.note === undefined ? row.standing : `${row.standing}. ${row.note}`
        const cells = [name, given.join(', '), expectedText(row.expected), within, sourceText(row.source), known]
        return `| ${cells.map((cell) => cell.replace(/\|/g, '\\|')).join(' | ')} |`
      }),
    ),
    '',
  ])
  return [
    '# Published checks',
    '',
    'Every formula is held to at least one figure that was worked out apart from it. This page is made from the tests.',
    '',
    '- **read**: the figure was read in a copy or transcription of the source.',
    '- **recomputed**: inputs or formula were read in the source; the figure was worked out from them, apart from this library.',
    '- **from memory**: the figure is remembered; no copy was read.',
    '- **exact**: it follows from definitions by arithmetic.',
    '',
    ...sections,
  ].join('\n')
}

/** The procedures of each domain, in the order of their files. */
function proceduresByDomain(): { readonly [domain: string]: readonly string[] } {
  return Object.fromEntries(
    Object.keys(handbooks).map((domain) => [
      domain,
      domainFiles()
        .filter((path) => path.startsWith(join(root, 'src', domain)))
        .sort()
        .flatMap((path) =>
          Array.from(readFileSync(path, 'utf8').matchAll(described), ([, , , name]) => name as string),
        ),
    ]),
  )
}

/** The page of the procedures. */
export function procedurePage(): string {
  return proceduresPage(proceduresByDomain())
}

/** What is made from the fields of the build sheet. */
export function sheetFiles(): { readonly path: string; readonly made: () => string }[] {
  return [
    { path: join(root, 'docs', 'build-sheet.md'), made: sheetPage },
    { path: join(root, 'docs', 'build-sheet.schema.json'), made: sheetSchema },
    { path: join(root, 'src', 'conversion', 'sheet', 'build-sheet.ts'), made: sheetModule },
  ]
}

/** The pages that are made here. */
const made = ['build-sheet.md', 'checks.md', 'procedures.md']

/** The pages whose examples are run. */
export function pages(): string[] {
  const guides = readdirSync(join(root, 'docs')).filter((file) => file.endsWith('.md') && !made.includes(file))
  return [join(root, 'README.md'), join(root, 'DEVELOPERS.md'), ...guides.map((file) => join(root, 'docs', file))]
}

/** An example that shows its output: a `ts` block followed by a `text` block. */
const shown = /```ts\n([\s\S]*?)```\n\n```text\n[\s\S]*?```/g

/** An example for the shell that shows its output: a `sh` block with the command, followed by a `text` block. */
const typed = /```sh\n((?:[^`]*\n)?kerbwatt [^`]*)```\n\n```text\n[\s\S]*?```/g

/** A block with the name of a file, such as `ts van.ts`, which lies beside every example of its page. */
const named = /```(?:ts|json) (\S+)\n([\s\S]*?)```/g

/** An example of the package that a page says to copy, which lies beside every example of its page. */
const copied = /^cp node_modules\/kerbwatt\/(\S+) (\S+)$/gm

/** Whether this machine has GNU parallel, without which an example that uses it stays as it is. */
const hasParallel = existsSync('/usr/bin/parallel')

/** Pages with the output after each example that shows one written anew. */
export function withOutputs(texts: readonly string[]): string[] {
  // Below the project, so that modules are found from it, and the package from the command.
  const folder = mkdtempSync(join(root, '.example-'))
  try {
    for (const [page, text] of texts.entries()) {
      const own = join(folder, String(page))
      mkdirSync(own)
      symlinkSync(join(root, 'examples'), join(own, 'examples'))
      for (const [, name, file] of text.matchAll(named)) writeFileSync(join(own, name as string), file as string)
      for (const [, from, to] of text.matchAll(copied))
        copyFileSync(join(root, from as string), join(own, to as string))
    }
    const outputs = outputsOf(texts, folder)
    const commands = join(folder, 'commands')
    symlinkSync(fileURLToPath(buildCommand(commands)), join(commands, 'kerbwatt'))
    let next = 0
    return texts.map((text, page) =>
      text
        .replace(shown, (_, example: string) => `\`\`\`ts\n${example}\`\`\`\n\n\`\`\`text\n${outputs[next++]}\`\`\``)
        .replace(typed, (whole, example: string) => {
          if (/\bparallel\b/.test(example) && !hasParallel && !process.env.CI) return whole
          const output = outputInShell(example, join(folder, String(page)), commands)
          return `\`\`\`sh\n${example}\`\`\`\n\n\`\`\`text\n${output}\`\`\``
        }),
    )
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** What each example of pages prints: modules of their own, beside the sources, imported one after another by one process. */
function outputsOf(texts: readonly string[], folder: string): string[] {
  // A control character that no example prints.
  const end = '\u001d\n'
  const modules = texts.flatMap((text, page) =>
    Array.from(text.matchAll(shown), ([, example], i) => {
      writeFileSync(join(folder, String(page), `${i}.ts`), example as string)
      return `./${page}/${i}.ts`
    }),
  )
  const all = join(folder, 'all.ts')
  const printEnd = `process.stdout.write(${JSON.stringify(end)})`
  writeFileSync(all, modules.map((module) => `await import('${module}')\n${printEnd}\n`).join(''))
  const tsx = join(root, 'node_modules', '.bin', 'tsx')
  const printed = execFileSync(tsx, ['--tsconfig', join(root, 'tsconfig.json'), all], { cwd: root, encoding: 'utf8' })
  return printed.split(end).slice(0, -1)
}

/** What is seen of an example that is typed in a folder: all that it prints, whatever its exit code. */
function outputInShell(example: string, folder: string, commands: string): string {
  const env = { ...process.env, PATH: `${commands}:${process.env.PATH}` }
  return spawnSync('bash', ['-c', `{ ${example}} 2>&1`], { cwd: folder, env, encoding: 'utf8' }).stdout
}

/** Every file that is made or completed here, with what it should hold. */
export function documents(): { readonly path: string; readonly wanted: string }[] {
  const outputs = withOutputs(pages().map((path) => readFileSync(path, 'utf8')))
  return [
    ...domainFiles().map((path) => ({ path, wanted: withComments(readFileSync(path, 'utf8')) })),
    { path: join(root, 'docs', 'checks.md'), wanted: checksPage() },
    { path: join(root, 'docs', 'procedures.md'), wanted: procedurePage() },
    ...sheetFiles().map(({ path, made }) => ({ path, wanted: made() })),
    ...pages().map((path, i) => ({ path, wanted: outputs[i] as string })),
  ]
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { path, wanted } of documents()) writeFileSync(path, wanted)
}
