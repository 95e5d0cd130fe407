/** The examples, run as their reader runs them. */
import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { vi } from 'vitest'
import { isDeep } from './runs.js'

const root = fileURLToPath(new URL('..', import.meta.url))

/** What an example prints, line by line: in a process of its own in the deep tests, else in this one. */
export async function outputOf(example: string): Promise<string[]> {
  const printed = isDeep
    ? execFileSync('node_modules/.bin/tsx', [`examples/${example}.ts`], { cwd: root, encoding: 'utf8' })
    : await printedBy(example)
  return printed.trim().split('\n')
}

async function printedBy(example: string): Promise<string> {
  const print = vi.spyOn(console, 'log').mockImplementation(() => undefined)
  try {
    await import(`../examples/${example}.ts`)
    return print.mock.calls.map((texts) => texts.join(' ')).join('\n')
  } finally {
    print.mockRestore()
  }
}
