/** The command `kerbwatt`: which command is meant, and what becomes of errors. */
import { CalculationError, InputError, SolveError } from '../quantity/index.js'
import { BAD_INPUT, type Command, FAILS, FAULT, HOLDS, helpOf } from './command.js'
import { packageFile } from './package.js'
import { didYouMean, Fault, Refusal } from './refusal.js'
import { print, type Shell, tell } from './shell.js'

interface Entry {
  readonly usage: string
  readonly about: string
  readonly load: () => Promise<Command>
}

/** Every command; each is loaded when it is called. */
const commands: { readonly [name: string]: Entry } = {
  assess: {
    usage: 'assess SHEET',
    about: 'does the car hold: verdict, figures, checks',
    load: async () => (await import('./assess.js')).assessCommand,
  },
  compare: {
    usage: 'compare SHEET SHEET …',
    about: 'what is different between sheets',
    load: async () => (await import('./compare.js')).compareCommand,
  },
  explore: {
    usage: 'explore STUDY',
    about: 'every variant of a study, and the best of them',
    load: async () => (await import('./explore.js')).exploreCommand,
  },
  variants: {
    usage: 'variants STUDY',
    about: 'the variants as lines, for other machines',
    load: async () => (await import('./variants.js')).variantsCommand,
  },
  front: {
    usage: 'front STUDY RESULTS …',
    about: 'the best of the lines that come back',
    load: async () => (await import('./front.js')).frontCommand,
  },
  formula: {
    usage: 'formula [NAME]',
    about: 'any formula: value, unknown, working, table',
    load: async () => (await import('./formula.js')).formulaCommand,
  },
  procedure: {
    usage: 'procedure [NAME]',
    about: 'any procedure: what serves, and what does not',
    load: async () => (await import('./procedure.js')).procedureCommand,
  },
  sheet: {
    usage: 'sheet',
    about: 'a build sheet to start from',
    load: async () => (await import('./sheet.js')).sheetCommand,
  },
  schema: {
    usage: 'schema',
    about: 'the JSON Schema of the sheet, for an editor',
    load: async () => (await import('./sheet.js')).schemaCommand,
  },
}

/**
 * Runs what was typed.
 *
 * @param words - What stands after `kerbwatt`.
 * @param shell - Where it runs.
 * @returns The exit code. Nothing is thrown.
 */
export async function main(words: readonly string[], shell: Shell): Promise<number> {
  const [name = ''] = words
  try {
    return await ran(words, shell)
  } catch (error) {
    const [text, code] = toldOf(error)
    const prefix = Object.hasOwn(commands, name) ? `kerbwatt ${name}` : 'kerbwatt'
    // What is told of several lines stands below.
    const told = text.includes('\n') && error instanceof Refusal && !text.includes('\n  ') ? `\n${text}` : ` ${text}`
    await tell(shell, `${prefix}:${told.replaceAll(/\n(?! )/g, '\n  ')}`).catch(() => undefined)
    return code
  }
}

async function ran([name, ...words]: readonly string[], shell: Shell): Promise<number> {
  if (name === undefined) {
    await tell(shell, help().trimEnd())
    return BAD_INPUT
  }
  if (name === '--help' || name === '-h' || (name === 'help' && words.length === 0)) {
    await print(shell, help())
    return HOLDS
  }
  if (name === '--version') {
    const { version } = JSON.parse(packageFile(shell, 'package.json')) as { readonly version: string }
    await print(shell, `${version}\n`)
    return HOLDS
  }
  const entry = Object.hasOwn(commands, name) ? commands[name] : undefined
  if (entry === undefined) {
    const sort = name.startsWith('-') ? 'option' : 'command'
    throw new Refusal(`there is no ${sort} ${name}${didYouMean(name, Object.keys(commands))} (kerbwatt --help)`)
  }
  const command = await entry.load()
  const own = words.slice(0, words.includes('--') ? words.indexOf('--') : words.length)
  if (!own.includes('--help') && !own.includes('-h')) return command.run(shell, words)
  await print(shell, command.helpOn?.(words) ?? helpOf(command))
  return HOLDS
}

/** What to say of an error, and the exit code. */
function toldOf(error: unknown): readonly [text: string, code: number] {
  if (error instanceof Refusal || error instanceof InputError) return [error.message, BAD_INPUT]
  if (error instanceof CalculationError || error instanceof SolveError) return [error.message, FAILS]
  if (error instanceof Fault) return [error.message, FAULT]
  return [`a fault of kerbwatt itself, not of what was typed: ${String(error)}`, FAULT]
}

function help(): string {
  const entries = Object.values(commands)
  const widest = Math.max(...entries.map(({ usage }) => usage.length))
  return [
    'kerbwatt: an electric drive in an old car, worked out with units and sources',
    '',
    ...entries.map(({ usage, about }) => `  kerbwatt ${usage.padEnd(widest)}  ${about}`),
    '',
    'Each tells more with --help. A file may be -, standard input.',
    'Exit code: 0 holds, 1 fails or is open, 2 cannot be used.',
    '',
    'Example:',
    '  kerbwatt sheet --example | kerbwatt assess -',
    '',
  ].join('\n')
}
