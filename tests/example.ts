/** The examples, run as their reader runs them. */
import { execFileSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))

/** What an example prints, line by line. */
export const outputOf = (example: string) =>
  execFileSync('node_modules/.bin/tsx', [`examples/${example}.ts`], { cwd: root, encoding: 'utf8' })
    .trim()
    .split('\n')
