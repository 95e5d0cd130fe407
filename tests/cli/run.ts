/** The command, run in this process, with what it writes. */
import { mkdtempSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { Readable, Writable } from 'node:stream'
import { pathToFileURL } from 'node:url'
import { afterAll } from 'vitest'
import { buildCommand } from '../../scripts/cli.js'
import { root } from '../../scripts/root.js'
import { main } from '../../src/cli/main.js'
import type { Output, Shell } from '../../src/cli/shell.js'

/** What a command came to. */
export interface Outcome {
  readonly code: number
  readonly out: string
  readonly err: string
}

/** How it is run beside its words. */
export interface Surroundings {
  readonly stdin?: string | Uint8Array
  readonly env?: Shell['env']
  /** Whether what it writes goes to a terminal, and how wide that is. */
  readonly columns?: number
  readonly bin?: URL
  /** Handed the shell before it runs. */
  readonly before?: (shell: Shell) => void
}

const bin = new URL('src/cli/kerbwatt.ts', pathToFileURL(root))

/** The command built as a file that Node.js runs, for threads and processes of its own. It goes when the tests are over. */
export function builtCommand(): URL {
  const folder = mkdtempSync(join(root, '.example-'))
  afterAll(() => rmSync(folder, { recursive: true }))
  return buildCommand(join(folder, 'cli'))
}

/** Runs the command, in the folder of the project. */
export async function kerbwatt(words: readonly string[], surroundings: Surroundings = {}): Promise<Outcome> {
  const { stdin = '', env = {}, columns } = surroundings
  const [out, err] = [collected(columns), collected(columns)]
  const shell: Shell = {
    stdin: Readable.from(stdin.length === 0 ? [] : [Buffer.from(stdin)]),
    stdout: out.stream,
    stderr: err.stream,
    env,
    bin: surroundings.bin ?? bin,
  }
  surroundings.before?.(shell)
  const code = await main(words, shell)
  return { code, out: out.text(), err: err.text() }
}

/** A stream that keeps what is written. */
function collected(columns: number | undefined): { readonly stream: Output; readonly text: () => string } {
  const parts: string[] = []
  const stream = new Writable({
    write(chunk, _, done) {
      parts.push(String(chunk))
      done()
    },
  })
  const terminal = columns === undefined ? {} : { isTTY: true, columns }
  return { stream: Object.assign(stream, terminal), text: () => parts.join('') }
}
