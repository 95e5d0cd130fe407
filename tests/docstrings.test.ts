/** The examples in the comments over procedures, run: each printed value is that of the expression before it. */
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import * as catalogue from '../src/catalogue.js'
import * as formula from '../src/formula/index.js'
import * as root from '../src/index.js'
import * as quantity from '../src/quantity/index.js'

const folder = fileURLToPath(new URL('../src/', import.meta.url))
const examples = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => {
    const pattern =
      /@example\n \* ```ts\n((?: \*.*\n)+?) \* ```\n \*\/\nexport const (\w+) = \/\*@__PURE__\*\/ (?:\(\(\) =>\s*)?procedure\(/g
    return [...readFileSync(folder + file, 'utf8').matchAll(pattern)].map(
      ([, text, name]) => [name as string, (text as string).replace(/^ \* ?/gm, '')] as const,
    )
  })

/** An example as a function that returns each expression's value beside the text printed after it. */
function asProgram(example: string): string {
  const lines = example.trimEnd().split('\n')
  // In a block of its own an example may call a figure as a function is called.
  const program: string[] = ['const shown = []; {']
  for (let i = 0; i < lines.length; i++) {
    const line = lines[i] as string
    const [, expression = line, inline] = /^(.*?) \/\/ (.*)$/.exec(line) ?? []
    const printed = inline === undefined ? [] : [inline]
    while (lines[i + 1]?.startsWith('//')) printed.push((lines[++i] as string).slice(2))
    program.push(printed.length === 0 ? line : `shown.push([${expression}, (${printed.join('\n')})])`)
  }
  program.push('} return shown')
  const { outputText } = ts.transpileModule(program.join('\n'), { compilerOptions: { target: ts.ScriptTarget.ES2022 } })
  return outputText
}

const names = { ...quantity, ...formula, ...root }

describe('the example over', () => {
  it('each procedure is there', () => {
    expect(examples.map(([name]) => name).sort()).toEqual(Object.keys(catalogue.procedures).sort())
  })
  it.each(examples)('%s prints what it says', (name, example) => {
    expect(example).toContain(`${name}(`)
    const run = new Function(...Object.keys(names), asProgram(example))
    const shown = run(...Object.values(names)) as [unknown, unknown][]
    expect(shown.length).toBeGreaterThan(0)
    for (const [value, printed] of shown) expect(value).toEqual(printed)
  })
})
