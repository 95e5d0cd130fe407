/** What a command is, and how errors of the library are told at the shell. */
import { InputError } from '../quantity/index.js'
import { calledIn } from './files.js'
import { type Options, optionLines } from './options.js'
import { Refusal } from './refusal.js'
import type { Shell } from './shell.js'

/** A command: how it is written, and what it does. */
export interface Command {
  readonly usage: string
  /** What it does, in sentences of a line each. */
  readonly about: readonly string[]
  readonly options: Options
  /** A line that can be typed as it stands. */
  readonly example: string
  /** Does it, and gives the exit code. */
  run(shell: Shell, words: readonly string[]): Promise<number>
  /** Help on what the words name, such as a formula; undefined where they name nothing. */
  helpOn?(words: readonly string[]): string | undefined
}

/** Exit codes. */
export const [HOLDS, FAILS, BAD_INPUT, FAULT, INTERRUPTED] = [0, 1, 2, 70, 130] as const

/** Help on a command, on one screen. */
export function helpOf({ usage, about, options, example }: Command): string {
  const lines = optionLines({ ...options, help: { about: 'this help' } })
  return `kerbwatt ${usage}\n\n${about.join('\n')}\n\n${lines.join('\n')}\n\nExample:\n  ${example}\n`
}

/** Does something with what a file holds; what the library refuses of it is told of the file. */
export function inFile<T>(path: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    throw error instanceof InputError ? new Refusal(`${calledIn(path)}: ${withoutPlace(error)}`) : error
  }
}

/** What an error of the library says, without the name of the function that refused. */
export function withoutPlace({ message, where }: InputError): string {
  return message.startsWith(`${where}: `) ? message.slice(where.length + 2) : message
}
