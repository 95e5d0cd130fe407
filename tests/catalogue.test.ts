/** The catalogue is complete, and every formula in it is documented, sourced and checked against something outside. */
import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../src/catalogue.js'
import { parseExpression } from '../src/formula/expression.js'
import { drivetrainHandbook } from './handbook/drivetrain.js'
import { electricalHandbook } from './handbook/electrical.js'
import type { HandbookEntry } from './handbook/handbook.js'
import { massHandbook } from './handbook/mass.js'
import { rangeHandbook } from './handbook/range.js'
import { thermalHandbook } from './handbook/thermal.js'

const domains = ['thermal', 'mass', 'electrical', 'drivetrain', 'range']
const sources = domains.flatMap((domain) => {
  const folder = new URL(`../src/${domain}/`, import.meta.url)
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(new URL(file, folder), 'utf8'))
})
const entries: readonly HandbookEntry[] = [
  ...thermalHandbook,
  ...massHandbook,
  ...electricalHandbook,
  ...drivetrainHandbook,
  ...rangeHandbook,
]

describe('the catalogue', () => {
  it('lists every formula that is written in a domain', () => {
    const written = sources.flatMap((text) =>
      [...text.matchAll(/formula\(\{\s*name: '(\w+)'/g)].map((match) => match[1]),
    )
    expect(Object.keys(catalogue).sort()).toEqual(written.sort())
  })
  it('finds each formula under its own name, which is the name it is exported by', async () => {
    const exported = await import('../src/index.js')
    for (const [name, formula] of Object.entries(catalogue)) {
      expect(formula.name).toBe(name)
      expect((exported as unknown as Record<string, unknown>)[name]).toBe(formula)
    }
  })
})

describe.each(Object.values(catalogue).map((each) => [each.name, each] as const))('%s', (name, formula) => {
  it('has a published value, or one worked out apart from it', () => {
    const rows = entries.filter((entry) => entry.name === name).flatMap((entry) => entry.rows)
    expect(rows.length).toBeGreaterThan(0)
  })
  it('names its symbols so that each stands for one thing', () => {
    const symbols = [
      formula.result.symbol,
      ...Object.values(formula.inputs).map((input) => input.symbol),
      ...Object.keys(formula.constants),
    ]
    expect(new Set(symbols).size).toBe(symbols.length)
    for (const symbol of symbols) expect(symbol).toMatch(/^[A-Za-z]\w*$/)
  })
  it('is written in the grammar that its working shows', () => {
    expect(parseExpression(formula.expression)).toHaveProperty('type')
  })
  it('has a title, a source and words for every input', () => {
    const words = [formula.title, formula.result.about, ...Object.values(formula.inputs).map((input) => input.about)]
    for (const text of words) expect(text).toMatch(/^\p{Lu}.*[^.]$/u)
    expect(formula.source.work).toMatch(/\w/)
    for (const constant of Object.values(formula.constants)) expect(constant.source.work).toMatch(/\w/)
  })
})
