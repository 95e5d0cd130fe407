/**
 * Logs as recorders write them: text of rows under a header that names each column with its unit, read piece by piece.
 */
import { shown } from '../quantity/errors.js'
import type { Kind } from '../quantity/index.js'
import { kindInWords, readValue } from '../quantity/read.js'
import { own } from './field.js'

/** No row of a log is as long as this. @internal */
export const LONGEST_LINE = 1000

/** The text of a log, which is read as it is used. @internal */
export const logField = /*@__PURE__*/ (() =>
  own<string | Iterable<string>, string | Iterable<string>>(
    'The text of the log, whole or in pieces of any length',
    (value) => (isText(value) ? { value } : { issue: { expected: 'text, or pieces of text', received: shown(value) } }),
    { anyOf: [{ type: 'string' }, { type: 'array', items: { type: 'string' } }] },
  ))()

function isText(value: unknown): value is string | Iterable<string> {
  return typeof (value as Partial<Iterable<string>> | null | undefined)?.[Symbol.iterator] === 'function'
}

/** The text of a log, whole or in pieces, as pieces. @internal */
export function piecesOf(log: string | Iterable<string>): Iterable<string> {
  return typeof log === 'string' ? [log] : log
}

/** Takes text as it comes, in pieces of any length, and hands on its lines, the first as number 1. @internal */
export class Lines {
  readonly #onLine: (line: string, number: number) => void
  #number = 0
  /** The start of a line whose end has not come yet. */
  #rest = ''

  constructor(onLine: (line: string, number: number) => void) {
    this.#onLine = onLine
  }

  /** How many lines have been handed on. */
  get count(): number {
    return this.#number
  }

  /** What has come of a line that has not ended. */
  get pending(): string {
    return this.#rest
  }

  take(text: string): void {
    const whole = this.#rest + text
    let from = 0
    for (let end = whole.indexOf('\n'); end >= 0; end = whole.indexOf('\n', from)) {
      this.#hand(whole.slice(from, end))
      from = end + 1
    }
    this.#rest = whole.slice(from)
  }

  /** Says that the text has ended. */
  end(): void {
    if (this.#rest !== '') this.#hand(this.#rest)
    this.#rest = ''
  }

  #hand(raw: string): void {
    const line = raw.endsWith('\r') ? raw.slice(0, -1) : raw
    this.#number++
    this.#onLine(this.#number === 1 && line.startsWith('\ufeff') ? line.slice(1) : line, this.#number)
  }
}

/** What separates the columns under a header. @internal */
export function separatorIn(header: string): string {
  return [';', '\t'].find((each) => header.includes(each)) ?? ','
}

/** The unit in the title of a column, in round or square brackets. @internal */
export function unitIn(title: string): string | undefined {
  return /[([]\s*([^()[\]]*?)\s*[)\]]\s*$/.exec(title)?.[1]
}

/** What is wrong with a line of a log. @internal */
export interface Fault {
  readonly expected: string
  readonly received: string
  readonly hint?: string
}

/** The number in a cell, in SI units, or what is wrong with it. @internal */
export function readCell(kind: Kind, cell: string, unit: string): number | Fault {
  const text = cell.trim()
  const read = /\s|[^\d.eE+\-\u2212]/.test(text) ? undefined : readValue(kind, `${text} ${unit}`)
  if (read !== undefined) return read.si
  const expected = `${kindInWords(kind)} in ${unit}, a number such as 12.5`
  const received = text === '' ? 'an empty cell' : shown(text)
  return /^[-+]?\d+,\d+$/.test(text)
    ? { expected, received, hint: `write ${text.replace(',', '.')}` }
    : { expected, received }
}

/** Why a row has more cells than its header, where a comma is likely to stand in a number. @internal */
export function commaHint(separator: string, cells: number, columns: number): { readonly hint?: string } {
  return separator === ',' && cells > columns ? { hint: 'a comma separates columns here: write 0.5, not 0,5' } : {}
}
