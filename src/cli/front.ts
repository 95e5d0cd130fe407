/** `kerbwatt front`: the front of results, wherever they were found. */
import { explorationOf, type VariantResult } from '../conversion/index.js'
import { BAD_INPUT, type Command, inFile } from './command.js'
import { tellExploration } from './exploration.js'
import { calledIn } from './files.js'
import { linesOf } from './lines.js'
import { written } from './options.js'
import { Refusal } from './refusal.js'
import { type Shell, tell } from './shell.js'
import { studyFrom } from './study.js'

/** So many lines that cannot be used are told one by one. */
const TOLD = 5

export const frontCommand: Command = {
  usage: 'front STUDY RESULTS …',
  about: [
    'Finds the best variants of a study among the lines that kerbwatt assess --lines wrote.',
    'Exit code: 0 where there is a front, 1 where there is none or variants are missing.',
  ],
  options: { json: { about: 'prints every result and the front as JSON' } },
  example:
    'kerbwatt variants examples/wagtail-study.json | kerbwatt assess --lines - | kerbwatt front examples/wagtail-study.json -',
  async run(shell, words) {
    const options = written(words, this.options)
    const [path, ...files] = options.places
    if (path === undefined || files.length === 0) {
      throw new Refusal('expected a study and the results, such as study.json results.jsonl, or - for standard input')
    }
    if (new Set(options.places).size < options.places.length) throw new Refusal('a file stands twice')
    const study = await studyFrom(shell, path)
    const { results, isWhole } = await resultsIn(shell, files)
    const found = inFile(files.join(', '), () => explorationOf(study, results))
    const code = await tellExploration(shell, study, found, options.values.has('json'))
    return isWhole ? code : BAD_INPUT
  },
}

/** The results in files. Lines that hold none are told and left out. */
async function resultsIn(shell: Shell, files: readonly string[]) {
  const results: VariantResult[] = []
  let unusable = 0
  for (const file of files) {
    for await (const line of linesOf(shell, file)) {
      const why = 'error' in line ? line.error : whyNone(line.value)
      if (why === undefined) results.push((line as { readonly value: VariantResult }).value)
      else if (++unusable <= TOLD) await tell(shell, `${calledIn(file)}, line ${line.number}: left out: ${why}`)
    }
  }
  if (unusable > TOLD) await tell(shell, `and ${unusable - TOLD} more lines left out`)
  return { results, isWhole: unusable === 0 }
}

/** Why a line is no result: it tells of one that could not be used. */
function whyNone(value: unknown): string | undefined {
  const { number, line, error } = Object(value) as { readonly [key: string]: unknown }
  if (number !== undefined) return undefined
  return line === undefined ? 'no result' : `line ${line} of the variants: ${error}`
}
