/** The package as it is published: packed, installed into empty projects, run, compiled, bundled and measured. */
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { isBuiltin } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliCompressSync } from 'node:zlib'
import { build } from 'esbuild'
import { chromium } from 'playwright-core'
import { publint } from 'publint'
import { formatMessage } from 'publint/utils'
import { rolldown } from 'rolldown'
import ts from 'typescript'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import manifest from '../../package.json' with { type: 'json' }
import { catalogue } from '../../src/catalogue.js'
import * as drivetrain from '../../src/drivetrain/index.js'
import * as electrical from '../../src/electrical/index.js'
import * as mass from '../../src/mass/index.js'
import * as range from '../../src/range/index.js'
import * as thermal from '../../src/thermal/index.js'
import { isDeep } from '../runs.js'
import { accepted, prelude, refused } from '../types/snippets.js'

const project = join(import.meta.dirname, '../..')
const subpaths = Object.keys(manifest.exports)
  .filter((subpath) => !subpath.endsWith('.json'))
  .map((subpath) => `kerbwatt${subpath.slice(1)}`)

/** Folders of src that are not imported from outside: what they hold is exported where it is used. */
const inner = ['cli']

/** The oldest and the newest TypeScript that the types are promised for. */
const oldest = '5.4'
const newest = '5.9'

/** Where npm packs and installs to. */
let place = ''
let tarball = ''

/** Runs a command and gives what it prints; a failure tells all that it printed. */
function run(folder: string, command: string, ...parameters: readonly string[]): string {
  try {
    return execFileSync(command, parameters, { cwd: folder, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] })
  } catch (error) {
    const { stdout, stderr } = error as { readonly stdout: string; readonly stderr: string }
    throw new Error(`${command} ${parameters.join(' ')}\n${stdout}${stderr}`)
  }
}

/** Makes an empty project and installs packages into it, of which the packed one is the first. */
function emptyProject(name: string, type: 'module' | 'commonjs', packages: readonly string[] = []): string {
  const folder = join(place, name)
  mkdirSync(folder)
  writeFileSync(join(folder, 'package.json'), JSON.stringify({ name, private: true, type }))
  run(folder, 'npm', 'install', '--no-audit', '--no-fund', '--prefer-offline', tarball, ...packages)
  return folder
}

/** Runs a program in a project and gives the JSON that it prints. */
function runProgram(folder: string, file: string, text: string): unknown {
  writeFileSync(join(folder, file), text)
  return JSON.parse(run(folder, 'node', file))
}

/** Every file under a folder. */
function filesUnder(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
}

/** What a formula is called with in every project. By hand: 2 · 300 A · 0.000386 Ω/m · 3 m = 0.6948 V. */
const given = `{ current: '300 A', resistancePerLength: '0.386 mΩ/m', length: '3 m' }`

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), 'kerbwatt-package-'))
  // Built apart from the packing, which keeps what is wrong with a build to itself.
  run(project, 'npm', 'run', 'build')
  const [packed] = JSON.parse(run(project, 'npm', 'pack', '--ignore-scripts', '--json', '--pack-destination', place))
  tarball = join(place, packed.filename)
}, 180_000)

afterAll(() => rmSync(place, { recursive: true, force: true }))

describe.runIf(isDeep)('the package', { timeout: 60_000 }, () => {
  const formulas = Object.keys(catalogue).sort()
  let esm = ''
  let commonjs = ''
  let installed = ''

  beforeAll(() => {
    esm = emptyProject('esm', 'module')
    commonjs = emptyProject('commonjs', 'commonjs')
    installed = join(esm, 'node_modules/kerbwatt')
  }, 120_000)

  it('exports every domain', () => {
    const domains = readdirSync(join(project, 'src'), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !inner.includes(entry.name))
      .map((entry) => `kerbwatt/${entry.name}`)
    expect(subpaths.slice().sort()).toEqual(['kerbwatt', ...domains].sort())
  })

  it('holds what is built, the manifest and the papers, and nothing else', () => {
    const outside = filesUnder(installed)
      .map((file) => file.slice(installed.length + 1))
      .filter((file) => !/^dist\/.+\.(js|cjs|d\.ts|d\.cts)$/.test(file))
    expect(outside.sort()).toEqual([
      'CHANGELOG.md',
      'LICENSE',
      'README.md',
      'dist/LICENSES.txt',
      'docs/build-sheet.schema.json',
      'examples/wagtail-850.json',
      'examples/wagtail-first-try.json',
      'examples/wagtail-study.json',
      'package.json',
    ])
  })

  it('gives the example sheets, and the JSON Schema that they name', () => {
    const printed = runProgram(
      esm,
      'sheets.js',
      `import { createRequire } from 'node:module'
      import { dirname, resolve } from 'node:path'
      import { assess, readBuild } from 'kerbwatt/conversion'
      const require = createRequire(import.meta.url)
      const titles = ['wagtail-850', 'wagtail-first-try'].map((name) => {
        const sheet = require('kerbwatt/examples/' + name + '.json')
        const schema = resolve(dirname(require.resolve('kerbwatt/examples/' + name + '.json')), sheet.$schema)
        return [assess(readBuild(sheet)).verdict, schema === require.resolve('kerbwatt/build-sheet.schema.json')]
      })
      console.log(JSON.stringify([...titles, require('kerbwatt/build-sheet.schema.json').title]))`,
    )
    expect(printed).toEqual([['near', true], ['fails', true], 'BuildSheet'])
  })

  it('needs decimal.js and nothing else', () => {
    expect(readdirSync(join(esm, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'decimal.js',
      'kerbwatt',
    ])
    const imported = filesUnder(join(installed, 'dist'))
      .filter((file) => /\.c?js$/.test(file))
      .flatMap((file) => ts.preProcessFile(readFileSync(file, 'utf8'), true, true).importedFiles)
      .map(({ fileName }) => fileName)
      .filter((name) => !name.startsWith('.'))
    // The command runs on Node.js alone; that the library needs nothing of it is held by the bundle for the browser.
    expect([...new Set(imported)].filter((name) => !isBuiltin(name))).toEqual(['decimal.js'])
  })

  it('carries the licences of what is bundled', () => {
    const licences = readFileSync(join(installed, 'dist/LICENSES.txt'), 'utf8')
    for (const name of ['zod', 'd3-array', 'd3-shape']) {
      const folder = join(project, 'node_modules', name)
      const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
      expect(licences).toContain(`${name} ${version} (${license})`)
      expect(licences).toContain(readFileSync(join(folder, 'LICENSE'), 'utf8'))
    }
  })

  it('names in its types no package but itself', () => {
    for (const file of filesUnder(join(installed, 'dist')).filter((name) => /\.d\.c?ts$/.test(name))) {
      const text = readFileSync(file, 'utf8')
      expect(text.match(/from\s+['"][^.'"][^'"]*['"]|import\(['"][^.'"][^'"]*['"]\)/g), file).toBeNull()
      expect(text.match(/\bzod\b|\bZod|\$Zod|\bDecimal\b|decimal\.js/g), file).toBeNull()
    }
  })

  it('runs as ES modules', () => {
    const imports = subpaths.map((subpath, i) => `import * as m${i} from '${subpath}'`).join('\n')
    const counts = subpaths.map((_, i) => `Object.keys(m${i}).length`).join(', ')
    const printed = runProgram(
      esm,
      'run.js',
      `${imports}
      import { cableVoltageDrop, catalogue } from 'kerbwatt'
      const byDomain = (await import('kerbwatt/electrical')).cableVoltageDrop
      console.log(JSON.stringify({
        drop: cableVoltageDrop(${given}),
        same: cableVoltageDrop === byDomain && catalogue.cableVoltageDrop === byDomain,
        formulas: Object.keys(catalogue).sort(),
        counts: [${counts}],
      }))`,
    ) as { readonly counts: readonly number[] }
    expect(printed).toMatchObject({ drop: '0.6948 V', same: true, formulas })
    expect(Math.min(...printed.counts)).toBeGreaterThan(0)
  })

  it('runs as CommonJS, with one state for all its entries', () => {
    const printed = runProgram(
      commonjs,
      'run.js',
      `const entries = ${JSON.stringify(subpaths)}.map((entry) => require(entry))
      const { cableVoltageDrop, catalogue } = require('kerbwatt')
      const byDomain = require('kerbwatt/electrical').cableVoltageDrop
      const { explain } = require('kerbwatt/formula')
      console.log(JSON.stringify({
        drop: cableVoltageDrop(${given}),
        same: cableVoltageDrop === byDomain && catalogue.cableVoltageDrop === byDomain,
        formulas: Object.keys(catalogue).sort(),
        steps: explain(() => byDomain(${given})).steps.map((step) => step.formula.name),
        counts: entries.map((entry) => Object.keys(entry).length),
      }))`,
    ) as { readonly counts: readonly number[] }
    expect(printed).toMatchObject({
      drop: '0.6948 V',
      same: true,
      formulas,
      steps: ['cableVoltageDrop'],
    })
    expect(Math.min(...printed.counts)).toBeGreaterThan(0)
  })

  // The oldest Node.js that is supported, and what is kept up.
  it.each(['20.19.0', '22', '24'])('brings the command, which runs on Node.js %s', { timeout: 120_000 }, (version) => {
    const kerbwatt = (...words: readonly string[]) =>
      run(esm, 'npx', '--yes', '--package', `node@${version}`, 'node', 'node_modules/.bin/kerbwatt', ...words)
    const inputs = ['--current', '300 A', '--resistancePerLength', '0.386 mΩ/m', '--length', '3 m']
    expect(kerbwatt('formula', 'cableVoltageDrop', ...inputs)).toBe('0.6948 V\n')
    writeFileSync(join(esm, 'car.json'), kerbwatt('sheet', '--example'))
    expect(kerbwatt('assess', 'car.json', '--html', 'report.html')).toMatch(/^Wagtail 850, electric\n[\s\S]+\nNEAR: /)
    expect(readFileSync(join(esm, 'report.html'), 'utf8')).toContain('Wagtail 850, electric')
    const study = {
      sheet: 'car.json',
      vary: { 'pack.series': [3, 4] },
      objectives: { 'weight.after.mass': 'least' },
    }
    writeFileSync(join(esm, 'study.json'), JSON.stringify(study))
    expect(kerbwatt('explore', 'study.json', '--workers', '2')).toMatch(/^1 of 2 variants on the front\n/)
  })

  it('brings the command under its name', () => {
    expect(run(esm, 'npx', 'kerbwatt', '--version')).toBe(`${manifest.version}\n`)
  })

  it('takes quantities and explains formulas of its twin in the other module system', () => {
    const printed = runProgram(
      esm,
      'twins.js',
      `import { createRequire } from 'node:module'
      import * as here from 'kerbwatt'
      const there = createRequire(import.meta.url)('kerbwatt')
      const { resistancePerLength, length } = ${given}
      const drop = (one, other) => one.cableVoltageDrop({ current: other.quantity('current', '300 A'), resistancePerLength, length })
      const steps = (one, other) => one.explain(() => other.cableVoltageDrop(${given})).steps.length
      console.log(JSON.stringify({
        apart: here.cableVoltageDrop !== there.cableVoltageDrop,
        drops: [drop(here, there), drop(there, here)],
        sums: [here.quantity('mass', '1 kg').plus(there.quantity('mass', '2 kg')), there.quantity('mass', '1 kg').plus(here.quantity('mass', '2 kg'))],
        steps: [steps(here, there), steps(there, here)],
      }))`,
    )
    expect(printed).toEqual({ apart: true, drops: ['0.6948 V', '0.6948 V'], sums: ['3 kg', '3 kg'], steps: [1, 1] })
  })

  it('is published as it should be', async () => {
    const { messages } = await publint({ pkgDir: installed, level: 'suggestion', strict: true })
    expect(messages.map((message) => formatMessage(message, manifest as never))).toEqual([])
  })

  // Node 10 and the TypeScript setting named after it know no subpaths; Node 20 is the oldest that is supported.
  it('has types that are right for every module system since Node 16', () => {
    run(project, join(project, 'node_modules/.bin/attw'), tarball, '--profile', 'node16', '--no-definitely-typed')
  })
})

describe.runIf(isDeep).each([oldest, newest])('the types on TypeScript %s', (version) => {
  let folder = ''
  const tsc = (...parameters: readonly string[]) => run(folder, 'node_modules/.bin/tsc', ...parameters)

  beforeAll(() => {
    folder = emptyProject(`typescript-${version}`, 'module', [`typescript@${version}`])
    const shared = { strict: true, exactOptionalPropertyTypes: true, target: 'ES2022', lib: ['ES2022'], types: [] }
    const settings = {
      bundler: { module: 'ESNext', moduleResolution: 'bundler', noEmit: true },
      node16: { module: 'Node16', moduleResolution: 'node16', outDir: 'out' },
    }
    for (const [name, options] of Object.entries(settings)) {
      const compilerOptions = { ...shared, ...options, skipLibCheck: false }
      const files = name === 'bundler' ? ['lines.ts', 'program.mts'] : ['lines.ts', 'program.mts', 'program.cts']
      writeFileSync(join(folder, `${name}.json`), JSON.stringify({ compilerOptions, files }))
    }
    const inBlock = (line: string) => line.replace(/^export /, '')
    const lines = [
      ...accepted.map((line) => `{ ${inBlock(line)} }`),
      ...refused.map(([line]) => `// @ts-expect-error\n{ ${inBlock(line)} }`),
    ]
    writeFileSync(join(folder, 'lines.ts'), `${prelude}export {}\n${lines.join('\n')}\n`)
    const program = (
      system: string,
    ) => `${subpaths.map((subpath, i) => `import * as m${i} from '${subpath}'`).join('\n')}
      import { cableVoltageDrop } from 'kerbwatt/electrical'
      import type { Quantity } from 'kerbwatt/quantity'
      declare const console: { log(text: string): void }
      const drop: Quantity<'voltage'> = cableVoltageDrop(${given})
      console.log(JSON.stringify({ drop, entries: [${subpaths.map((_, i) => `typeof m${i}`).join(', ')}].length, system: ${system} }))\n`
    writeFileSync(join(folder, 'program.mts'), program(`'module'`))
    writeFileSync(join(folder, 'program.cts'), program(`'commonjs'`))
  }, 120_000)

  it('compile with a bundler', { timeout: 60_000 }, () => {
    expect(tsc('--version')).toContain(`Version ${version}.`)
    tsc('-p', 'bundler.json')
  })

  it('compile and run in Node.js, as ES module and as CommonJS', { timeout: 60_000 }, () => {
    tsc('-p', 'node16.json')
    for (const [file, system] of [
      ['out/program.mjs', 'module'],
      ['out/program.cjs', 'commonjs'],
    ] as const) {
      expect(JSON.parse(run(folder, 'node', file))).toEqual({ drop: '0.6948 V', entries: subpaths.length, system })
    }
  })
})

describe.runIf(isDeep)('a bundle', { timeout: 60_000 }, () => {
  let folder = ''

  beforeAll(() => {
    folder = emptyProject('bundle', 'module')
  }, 60_000)

  const withEsbuild = async (contents: string, format: 'esm' | 'iife' = 'esm'): Promise<string> => {
    const stdin = { contents, resolveDir: folder }
    const { outputFiles, warnings } = await build({ stdin, format, bundle: true, minify: true, write: false })
    expect(warnings).toEqual([])
    return outputFiles[0]?.text ?? ''
  }

  const withRolldown = async (contents: string): Promise<string> => {
    writeFileSync(join(folder, 'entry.js'), contents)
    const bundle = await rolldown({ input: join(folder, 'entry.js') })
    const { output } = await bundle.generate({ minify: true })
    await bundle.close()
    return output.map((part) => (part.type === 'chunk' ? part.code : '')).join('')
  }

  /** A formula of each domain, and one by way of the root. */
  const someFormulas = [
    ['kerbwatt', 'cableVoltageDrop'],
    ...Object.entries({ thermal, mass, electrical, drivetrain, range }).map(([domain, exported]) => [
      `kerbwatt/${domain}`,
      Object.keys(exported).find((name) => name in catalogue) ?? `no formula in ${domain}`,
    ]),
  ] as [string, string][]

  /** Bytes on the wire as browsers take them: Brotli, RFC 7932. */
  const compressed = (code: string) => brotliCompressSync(code).length

  describe.each([
    ['esbuild', withEsbuild],
    ['rolldown', withRolldown],
  ] as const)('by %s', (_, bundled) => {
    it.each(someFormulas)('of one formula of %s, %s, holds no other, and no schemas', async (entry, name) => {
      const code = await bundled(`export { ${name} } from '${entry}'`)
      const held = Object.keys(catalogue).filter((each) => new RegExp(`name:["'\`]${each}["'\`]`).test(code))
      expect(held).toEqual([name])
      expect(code).not.toMatch(/zod/i)
    })

    it('of one formula takes less than 20 kB, compressed', async () => {
      expect(compressed(await bundled(`export { cableVoltageDrop } from 'kerbwatt'`))).toBeLessThan(20_000)
    })
  })

  const browser = '/usr/bin/chromium'
  const isHere = existsSync(browser)

  // With CI set it must run; elsewhere a machine without the browser does without it.
  it.skipIf(!isHere && !process.env.CI)(
    `runs in a browser${isHere ? '' : ` (skipped: there is no ${browser} here)`}`,
    async () => {
      const code = await withEsbuild(
        `import { cableVoltageDrop, catalogue, explain } from 'kerbwatt'
      const { result, toText } = explain(() => cableVoltageDrop(${given}))
      globalThis.found = { drop: String(result), text: toText(), formulas: Object.keys(catalogue).length }`,
        'iife',
      )
      const instance = await chromium.launch({ executablePath: browser, args: ['--no-sandbox'] })
      try {
        const page = await instance.newPage()
        const faults: string[] = []
        page.on('pageerror', (error) => faults.push(String(error)))
        await page.addScriptTag({ content: code })
        const found = await page.evaluate('globalThis.found')
        expect(faults).toEqual([])
        expect(found).toEqual({
          drop: '0.6948 V',
          text: 'dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 3 m = 0.695 V   [IEC 60364-5-52, Annex G]',
          formulas: Object.keys(catalogue).length,
        })
      } finally {
        await instance.close()
      }
    },
  )
})
