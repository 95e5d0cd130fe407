import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Plugin } from 'esbuild'
import { defineConfig, type Options } from 'tsup'
import ts from 'typescript'
import manifest from './package.json' with { type: 'json' }

/** The sources of the exports: `.` is src/index.ts, `./electrical` is src/electrical/index.ts. */
const entry = Object.fromEntries(
  Object.keys(manifest.exports)
    .filter((subpath) => !subpath.endsWith('.json'))
    .map((subpath) => {
      const name = subpath === '.' ? 'index' : `${subpath.slice(2)}/index`
      return [name, `src/${name}.ts`]
    }),
)

/** Writes the licences of all packages whose code is in the bundle to dist/LICENSES.txt. */
const licences: Plugin = {
  name: 'licences',
  setup(build) {
    build.onEnd(({ metafile }) => {
      const folders = Object.keys(metafile?.inputs ?? {}).flatMap(
        (file) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file)?.[0] ?? [],
      )
      const texts = [...new Set(folders)].sort().map(licenceOf)
      mkdirSync('dist', { recursive: true })
      writeFileSync('dist/LICENSES.txt', texts.join(`\n${'-'.repeat(80)}\n\n`))
    })
  },
}

function licenceOf(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const file = readdirSync(folder).find((found) => /^licen[cs]e/i.test(found))
  if (file === undefined) throw new Error(`${name} is bundled and has no licence file`)
  return `${name} ${version} (${license})\n\n${readFileSync(join(folder, file), 'utf8')}`
}

/**
 * Lets bundlers drop unused formulas. A call marked as pure is dropped, but esbuild keeps the calls among its
 * arguments, such as `input(…)` and `cite(…)`, with all their texts. In a function of their own they go with it:
 * `/*@__PURE__*\/ formula({ … })` becomes `/*@__PURE__*\/ (() => formula({ … }))()`.
 */
const droppable: Plugin = {
  name: 'droppable',
  setup(build) {
    build.onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, ({ path }) => {
      let contents = readFileSync(path, 'utf8')
      for (const call of pureCalls(ts.createSourceFile(path, contents, ts.ScriptTarget.Latest, true)).reverse()) {
        const text = contents.slice(call.getStart(), call.getEnd())
        contents = `${contents.slice(0, call.getStart())}(() => ${text})()${contents.slice(call.getEnd())}`
      }
      return { contents, loader: 'ts' }
    })
  },
}

/**
 * Has the catalogue import the domains as the package's entries. Bundled, each domain would be made an object by a
 * call that bundlers must keep, and all its formulas with it, in every bundle that uses one of them.
 */
const domainsOfCatalogue: Plugin = {
  name: 'domains of the catalogue',
  setup(build) {
    const extension = build.initialOptions.outExtension?.['.js'] ?? '.js'
    build.onResolve({ filter: /^\.\/\w+\/index\.js$/ }, ({ path, importer }) => {
      const isAsObject = /[\\/]src[\\/]catalogue\.ts$/.test(importer) && !path.includes('/formula/')
      return isAsObject ? { path: path.replace('.js', extension), external: true, sideEffects: false } : undefined
    })
  },
}

/** The outermost calls marked as pure that run when a module is loaded, in their order. */
function pureCalls(node: ts.Node): ts.CallExpression[] {
  if (ts.isFunctionLike(node)) return []
  if (
    ts.isCallExpression(node) &&
    node.arguments.length > 0 &&
    /^\s*\/\*\s*@__PURE__\s*\*\//.test(node.getFullText())
  ) {
    return [node]
  }
  const calls: ts.CallExpression[] = []
  ts.forEachChild(node, (child) => {
    calls.push(...pureCalls(child))
  })
  return calls
}

const common: Options = {
  // Shared chunks in both formats, so that all subpaths, and the command, work on the same modules.
  splitting: true,
  target: 'es2022',
  platform: 'neutral',
  // Everything but decimal.js is bundled: see "dependencies".
  noExternal: [/^zod/, /^d3-/],
}

/** The command: the file that is run, and what it loads once the cache of compiled code is on. Both are ES modules only. */
const command = { 'cli/kerbwatt': 'src/cli/kerbwatt.ts', 'cli/entry': 'src/cli/entry.ts' }

// By hand, as each of them would take away what the others have built.
rmSync('dist', { recursive: true, force: true })

export default defineConfig([
  {
    ...common,
    entry: { ...entry, ...command },
    format: 'esm',
    external: [/^node:/],
    esbuildPlugins: [droppable, domainsOfCatalogue, licences],
  },
  { ...common, entry, format: 'cjs', esbuildPlugins: [droppable, domainsOfCatalogue] },
  // The types of both formats are made by one compiler.
  { ...common, entry, format: ['esm', 'cjs'], dts: { entry, only: true } },
])
