/** The command as one file that Node.js runs, built as the package builds it but for its size. */
import { join } from 'node:path'
import { buildSync } from 'esbuild'
import { root } from './root.js'

/** Builds the command into a folder, which must lie in another of the project: it finds the package two folders up. */
export function buildCommand(folder: string): URL {
  buildSync({
    entryPoints: ['kerbwatt', 'entry'].map((name) => join(root, 'src', 'cli', `${name}.ts`)),
    outdir: folder,
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    external: ['./entry.js', 'decimal.js'],
    logLevel: 'error',
  })
  return new URL(`file://${join(folder, 'kerbwatt.js')}`)
}
