/** What the compiler accepts and refuses, in what words, and how hard it has to work. */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { kinds } from '../../src/quantity/kinds.js'
import { accepted, prelude, refused } from './snippets.js'

const project = fileURLToPath(new URL('../..', import.meta.url))
const { options } = ts.parseJsonConfigFileContent(
  ts.readConfigFile(`${project}tsconfig.json`, ts.sys.readFile).config,
  ts.sys,
  project,
)

/** The files on the disk, read once for all programs. */
const read = new Map<string, ts.SourceFile | undefined>()

/** A program of source texts that are on no disk, in the project. */
function programOf(texts: readonly string[]): { program: ts.Program; files: readonly ts.SourceFile[] } {
  const sources = new Map(
    texts.map((text, i) => {
      const name = `${project}tests/types/text-${i}.ts`
      return [name, ts.createSourceFile(name, text, ts.ScriptTarget.ES2022)]
    }),
  )
  const host = ts.createCompilerHost(options)
  const { fileExists, getSourceFile } = host
  host.fileExists = (name) => sources.has(name) || fileExists(name)
  host.getSourceFile = (name, ...rest) => {
    const own = sources.get(name)
    if (own !== undefined) return own
    if (!read.has(name)) read.set(name, getSourceFile(name, ...rest))
    return read.get(name)
  }
  const program = ts.createProgram([...sources.keys()], { ...options, noUnusedLocals: false, types: [] }, host)
  return { program, files: [...sources.values()] }
}

describe('the compiler', { timeout: 60_000 }, () => {
  const lines = [...accepted, ...refused.map(([line]) => line)]
  const { program, files } = programOf(lines.map((line) => `${prelude}${line}\n`))

  /** What it says of a line, line by line, without the indentation that shows what follows from what. */
  const saysOf = (line: string): readonly string[] => {
    const file = files[lines.indexOf(line)]
    return [...program.getSyntacticDiagnostics(file), ...program.getSemanticDiagnostics(file)].flatMap((diagnostic) =>
      ts
        .flattenDiagnosticMessageText(diagnostic.messageText, '\n')
        .split('\n')
        .map((text) => text.trim()),
    )
  }

  it.each(accepted)('accepts %s', (line) => {
    expect(saysOf(line)).toEqual([])
  })

  it.each(refused)('refuses %s: %s', (line, message) => {
    const isCut = message.endsWith('…')
    expect(saysOf(line).map((text) => (isCut ? `${text.slice(0, message.length - 1)}…` : text))).toContain(message)
  })

  it('has as many lines to refuse as to accept', () => {
    expect(refused.length).toBeGreaterThanOrEqual(accepted.length)
  })
})

describe('the type of the build sheet', { timeout: 60_000 }, () => {
  const written = readFileSync(`${project}src/conversion/sheet/build-sheet.ts`, 'utf8').replaceAll(
    '../../',
    '../../src/',
  )
  /** The sheet with every measured value as a plain one: what its fields say of a procedure. */
  const plain = written.replaceAll('Measured', 'Given')
  const textOf = (sheet: string, type: string) => `${sheet}
      import type { sheetFields } from '../../src/conversion/sheet/fields.js'
      import type { Written } from '../../src/procedure/index.js'
      type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false
      export const same: Same<${type}, Written<typeof sheetFields>> = true
      export const there = (sheet: ${type}): Written<typeof sheetFields> => sheet
      export const back = (sheet: Written<typeof sheetFields>): ${type} => sheet\n`
  it('is what its fields say, no more and no less, but that every quantity may carry its uncertainty', () => {
    const sheets = [
      [plain, 'BuildSheet'],
      [plain, `Omit<BuildSheet, 'note'>`],
      [plain, 'BuildSheet & { readonly colour?: string }'],
      [written, 'BuildSheet'],
    ] as const
    const { program, files } = programOf(sheets.map(([sheet, type]) => textOf(sheet, type)))
    const refusals = files.map((file) => program.getSemanticDiagnostics(file).length > 0)
    expect(refusals).toEqual([false, true, true, true])
    expect(plain).not.toBe(written)
    expect(written).not.toContain('Given')
  })
})

describe('the work of the compiler', { timeout: 60_000 }, () => {
  // Every formula has kinds of its own, so that none profits from what another made the compiler do.
  const units = Object.entries(kinds)
    .filter(([kind]) => kind !== 'ratio')
    .map(([kind, { example }]) => ({ kind, example }))
  const count = 10

  /** Formulas, of which the first so many are called. */
  const instantiations = (formulas: number, calls: number): number => {
    const parts = Array.from({ length: formulas }, (_, i) => {
      const [a, b] = [units[2 * i], units[2 * i + 1]]
      const definition = `export const f${i} = formula({
        name: 'f${i}', title: '', expression: 'a', source: cite(''),
        inputs: { a: input('${a?.kind}', 'a', ''), b: input('${b?.kind}', 'b', ''), x: input('ratio', 'x', '', { default: 1 }) },
        result: output('${a?.kind}', 'y', ''),
        compute: ({ a, b, x }) => a + b + x,
      })`
      return i < calls ? `${definition}\nf${i}({ a: '${a?.example}', b: '${b?.example}' })` : definition
    })
    const { program, files } = programOf([
      `import { cite, formula, input, output } from 'kerbwatt/formula'\n${parts.join('\n')}\n`,
    ])
    expect(program.getSemanticDiagnostics(files[0])).toEqual([])
    return program.getInstantiationCount()
  }

  it('stays under 2000 type instantiations for a formula, written and called', () => {
    const called = (instantiations(2 * count, 2 * count) - instantiations(2 * count, count)) / count
    const both = (instantiations(2 * count, 2 * count) - instantiations(count, count)) / count
    expect(called).toBeGreaterThan(0)
    expect(both).toBeGreaterThan(called)
    expect(both).toBeLessThan(2000)
  })

  /** Procedures of 18 fields, of which the first so many are called. */
  const instantiationsOfProcedures = (procedures: number, calls: number): number => {
    const field = (i: number) => units[i % units.length] as { kind: string; example: string }
    const parts = Array.from({ length: procedures }, (_, p) => {
      const fields = Array.from({ length: 18 }, (_, i) => `f${i}: given('${field(p + i).kind}' as const, 'F')`)
      const values = Array.from({ length: 18 }, (_, i) => `f${i}: '${field(p + i).example}'`)
      const definition = `export const p${p} = procedure({
        name: 'p${p}', title: '', answers: '', input: { ${fields.join(', ')} }, source: [],
        work: ({ f0, f17 }) => ({ f0, f17, checks: [] }),
      })`
      return p < calls ? `${definition}\np${p}({ ${values.join(', ')} })` : definition
    })
    const { program, files } = programOf([
      `import { given, procedure } from 'kerbwatt/procedure'\n${parts.join('\n')}\n`,
    ])
    expect(program.getSemanticDiagnostics(files[0])).toEqual([])
    return program.getInstantiationCount()
  }

  it('stays under 2000 type instantiations for a procedure of 18 fields, and 1000 for a call of it', () => {
    const written = (instantiationsOfProcedures(6, 3) - instantiationsOfProcedures(3, 3)) / 3
    const called = (instantiationsOfProcedures(6, 6) - instantiationsOfProcedures(6, 3)) / 3
    expect(called).toBeGreaterThan(0)
    expect(called).toBeLessThan(1000)
    expect(written).toBeLessThan(2000)
  })

  /** A value of every kind, as a type that reads it. */
  const instantiationsAs = (type: 'Given' | 'Measured', uncertainty: (kind: string) => string): number => {
    const parts = units.map(
      ({ kind, example }, i) => `export const v${i}: ${type}<'${kind}'> = '${example}${uncertainty(kind)}'`,
    )
    const { program, files } = programOf([`import type { ${type} } from 'kerbwatt/quantity'\n${parts.join('\n')}\n`])
    expect(program.getSemanticDiagnostics(files[0])).toEqual([])
    return program.getInstantiationCount()
  }

  it('stays under 150 type instantiations a kind for an uncertainty beside the value', () => {
    const measured = instantiationsAs('Measured', (kind) => (kind === 'temperature' ? ' ± 2 K' : ' ± 5 %'))
    const more = (measured - instantiationsAs('Given', () => '')) / units.length
    expect(more).toBeGreaterThan(0)
    expect(more).toBeLessThan(150)
  })

  it('stays under 150 type instantiations a kind for a whole sheet, over one of plain values', () => {
    const sheet = readFileSync(`${project}examples/wagtail-850.json`, 'utf8').trim()
    const type = readFileSync(`${project}src/conversion/sheet/build-sheet.ts`, 'utf8').replaceAll(
      '../../',
      '../../src/',
    )
    const used = new Set([...type.matchAll(/Measured<'(\w+)'>/g)].map(([, kind]) => kind))
    const [plain, measured] = [type.replaceAll('Measured', 'Given'), type].map((text) => {
      const { program, files } = programOf([`${text}\nexport const sheet = ${sheet} satisfies BuildSheet\n`])
      expect(program.getSemanticDiagnostics(files[0])).toEqual([])
      return program.getInstantiationCount()
    }) as [number, number]
    expect(measured - plain).toBeGreaterThan(0)
    expect((measured - plain) / used.size).toBeLessThan(150)
  })
})
