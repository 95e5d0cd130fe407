/** What the package does not export says so in its comment, and nothing else does. */
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import ts from 'typescript'
import { expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }

const source = join(import.meta.dirname, '../../src')
const files = readdirSync(source, { recursive: true, encoding: 'utf8' })
  // Of the command nothing is imported from outside.
  .filter((file) => file.endsWith('.ts') && !file.startsWith('cli'))
  .map((file) => join(source, file))
const entries = Object.keys(manifest.exports)
  .filter((subpath) => !subpath.endsWith('.json'))
  .map((subpath) => join(source, subpath, 'index.ts'))

it('what is internal is marked', () => {
  // Names and where they come from need no types: only what each file exports is looked at.
  const { Bundler } = ts.ModuleResolutionKind
  const program = ts.createProgram(files, {
    noLib: true,
    types: [],
    module: ts.ModuleKind.ESNext,
    moduleResolution: Bundler,
  })
  const checker = program.getTypeChecker()
  const exportsOf = (file: string) => {
    const module = checker.getSymbolAtLocation(program.getSourceFile(file) as ts.SourceFile)
    return module === undefined ? [] : checker.getExportsOfModule(module)
  }
  const origin = (symbol: ts.Symbol) =>
    symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol
  const exported = new Set(entries.flatMap(exportsOf).map(origin))
  const own = files
    .filter((file) => !entries.includes(file))
    .flatMap((file) => exportsOf(file).filter((symbol) => origin(symbol) === symbol))
  const isMarked = (symbol: ts.Symbol) => symbol.getJsDocTags().some(({ name }) => name === 'internal')
  expect(own.length).toBeGreaterThan(exported.size / 2)
  expect(own.filter((symbol) => !exported.has(symbol) && !isMarked(symbol)).map(({ name }) => name)).toEqual([])
  expect(own.filter((symbol) => exported.has(symbol) && isMarked(symbol)).map(({ name }) => name)).toEqual([])
})
