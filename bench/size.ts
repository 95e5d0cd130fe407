/** What the built package adds to a bundle. */
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import type { Row } from './row.js'

const project = fileURLToPath(new URL('..', import.meta.url))

async function sizeRow(what: string, contents: string, bar: number): Promise<Row> {
  const stdin = { contents, resolveDir: project }
  const { outputFiles } = await build({
    stdin,
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    logLevel: 'error',
  })
  const code = outputFiles[0]?.contents ?? new Uint8Array()
  const compressed = gzipSync(code, { level: 9 }).length
  return {
    what: `${what}, bundled with decimal.js`,
    measured: `${(code.length / 1000).toFixed(1)} kB minified`,
    figure: `${(compressed / 1000).toFixed(1)} kB compressed`,
    bar: `under ${bar} kB`,
    met: compressed < bar * 1000,
  }
}

/** Measures bundles. */
export async function sizeRows(): Promise<readonly Row[]> {
  return [
    await sizeRow('one formula', `export { cableVoltageDrop } from './dist/index.js'`, 20),
    await sizeRow('the root entry', `export * from './dist/index.js'`, 45),
  ]
}
