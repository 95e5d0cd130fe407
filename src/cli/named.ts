/** Formulas and procedures by their names. */
import { catalogue, procedures } from '../catalogue.js'
import type { AnyFormula } from '../formula/index.js'
import type { AnyProcedure } from '../procedure/index.js'
import type { Kind } from '../quantity/index.js'
import { symbolsOf } from '../quantity/read.js'
import { didYouMean, Refusal } from './refusal.js'

const tables = { formula: catalogue, procedure: procedures } as const
const other = { formula: 'procedure', procedure: 'formula' } as const

/** What a name stands for; where it is of the other sort, the refusal says so. */
export function named(sort: 'formula', name: string): AnyFormula
export function named(sort: 'procedure', name: string): AnyProcedure
export function named(sort: keyof typeof tables, name: string): unknown {
  const table: { readonly [name: string]: unknown } = tables[sort]
  if (Object.hasOwn(table, name)) return table[name]
  const isOther = Object.hasOwn(tables[other[sort]], name)
  const hint = isOther
    ? `; it is a ${other[sort]}: kerbwatt ${other[sort]} ${name}`
    : didYouMean(name, Object.keys(table))
  throw new Refusal(`there is no ${sort} '${name}'${hint}`)
}

/** Names with what they stand for, in two columns. */
export function namesText(names: readonly (readonly [name: string, about: string])[]): string {
  const widest = Math.max(0, ...names.map(([name]) => name.length))
  return names.map(([name, about]) => `  ${name.padEnd(widest)}  ${about}\n`).join('')
}

/** The first unit of a kind; nothing for a plain number. */
export function unitOf(kind: Kind): string {
  const [unit = '1'] = symbolsOf(kind)
  return unit === '1' ? '' : unit
}

/** What an option of a kind takes. */
export function takenBy(kind: Kind): string {
  return unitOf(kind) === '' ? 'NUMBER' : `'… ${unitOf(kind)}'`
}

/** Text as JSON. */
export function json(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`
}
