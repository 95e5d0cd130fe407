/** What the built package adds to a bundle. */
import { readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { brotliCompressSync, gzipSync } from 'node:zlib'
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
  const gzip = gzipSync(code, { level: 9 }).length
  const brotli = brotliCompressSync(code).length
  return {
    what: `${what}, bundled with decimal.js`,
    measured: `${kilobytes(code.length)} minified`,
    figure: `${kilobytes(brotli)} Brotli, ${kilobytes(gzip)} gzip`,
    bar: `under ${bar} kB`,
    met: brotli < bar * 1000,
  }
}

/** What the package and its one dependency take on disk. */
function installedRow(): Row {
  const bytes = ['dist', 'node_modules/decimal.js'].flatMap((folder) =>
    readdirSync(join(project, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => statSync(join(entry.parentPath, entry.name)).size),
  )
  const total = bytes.reduce((sum, each) => sum + each, 0)
  return {
    what: 'the installed package with decimal.js',
    measured: `${bytes.length} files`,
    figure: `${(total / 1e6).toFixed(2)} MB`,
    bar: 'under 2 MB',
    met: total < 2e6,
  }
}

function kilobytes(bytes: number): string {
  return `${(bytes / 1000).toFixed(1)} kB`
}

/** Measures bundles. */
export async function sizeRows(): Promise<readonly Row[]> {
  return [
    await sizeRow('one formula', `export { cableVoltageDrop } from './dist/index.js'`, 20),
    await sizeRow('the root entry', `export * from './dist/index.js'`, 45),
    installedRow(),
  ]
}
