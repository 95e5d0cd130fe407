/** What a procedure gives, as text: its figures by their paths, checks, assumptions and cautions. */
import type { Check, Findings } from '../procedure/index.js'
import { isQuantity } from '../quantity/index.js'
import { cut } from './table.js'

/** So many entries of a list are told, and so many characters of a value. */
const [ENTRIES, VALUE] = [12, 200]

const words = { pass: 'ok', near: 'NEAR', fail: 'FAILS', unknown: 'UNKNOWN' } as const

/** Whether a check fails or is not known. */
export function standsAgainst(result: unknown): boolean {
  const { checks = [] } = partsOf(result)
  return checks.some(({ verdict }) => verdict === 'fail' || verdict === 'unknown')
}

/** The result of a procedure as text. */
export function findingsText(result: unknown): string {
  const { checks, assumptions, notes, cautions, figures } = partsOf(result)
  const rows = rowsOf('', figures)
  const widest = Math.max(0, ...rows.map(([path]) => path.length))
  const blocks: (readonly string[])[] = [
    rows.map(([path, value]) => `${path.padEnd(widest)}  ${value}`.trim()),
    titled(
      'Checks',
      checks,
      ({ verdict, name, text, basis }) => `${words[verdict].padEnd(7)} ${name}: ${text} (${basis})`,
    ),
    titled('Unusual', notes, ({ path, text }) => `${path}: ${text}`),
    titled('Taken for granted', assumptions, ({ text }) => text),
    titled('Cautions', cautions, ({ text }) => text),
  ]
  const told = blocks.filter(({ length }) => length > 0)
  return `${told.map((lines) => lines.join('\n')).join('\n\n')}\n`
}

type Parts = Partial<Findings> & { readonly figures: unknown }

/** What is said beside the figures, where a result has it. */
function partsOf(result: unknown): Parts {
  const isRecord = typeof result === 'object' && result !== null && !Array.isArray(result) && !isQuantity(result)
  if (!isRecord || !('checks' in result)) return { figures: result }
  const { checks, assumptions, notes, cautions, ...figures } = result as Findings
  return { checks: checks as readonly Check[], assumptions, notes, cautions, figures }
}

function titled<T>(title: string, all: readonly T[] = [], text: (each: T) => string): readonly string[] {
  return all.length === 0 ? [] : [title, ...all.map((each) => `  ${text(each)}`)]
}

type Row = readonly [path: string, value: string]

function rowsOf(path: string, value: unknown): Row[] {
  if (value === undefined || typeof value === 'function') return []
  if (typeof value !== 'object' || value === null || isQuantity(value)) return [[path, cut(String(value), VALUE)]]
  if (!Array.isArray(value)) {
    return Object.entries(value).flatMap(([key, each]) => rowsOf(path === '' ? key : `${path}.${key}`, each))
  }
  if (value.every((each) => typeof each !== 'object' || isQuantity(each)) && value.length <= ENTRIES) {
    return [[path, cut(value.map(String).join('; '), VALUE)]]
  }
  const more = value.length - ENTRIES
  return [
    ...value.slice(0, ENTRIES).flatMap((each, i) => rowsOf(`${path}[${i}]`, each)),
    ...(more > 0 ? [[path, `and ${more} more (--json tells all)`] as const] : []),
  ]
}
