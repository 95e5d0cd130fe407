/** What the package holds beside its code. */
import { readFileSync } from 'node:fs'
import type { Shell } from './shell.js'

/** A file of the package, by its path in it. The file that is run lies two folders deep. */
export function packageFile({ bin }: Pick<Shell, 'bin'>, path: string): string {
  return readFileSync(new URL(`../../${path}`, bin), 'utf8')
}
