/** The one family of errors that this library throws, each with a stable code and the data behind its words. */

/** One thing that is wrong with an input. */
export interface InputIssue {
  /** Where it is, such as `current` or `bays[2].at.aft`; empty when the input as a whole is meant. */
  readonly path: string
  /** What was expected, with an example. */
  readonly expected: string
  /** What came. */
  readonly received: string
  /** How to mend it, where that is known. */
  readonly hint?: string
}

/**
 * Input that cannot be used. What is wrong with one call is in `issues`, and the message has a line for each.
 */
export class InputError extends Error {
  override readonly name = 'InputError'
  readonly code = 'ERR_KERBWATT_INPUT'
  /** The function that refused, such as `cableVoltageDrop`. */
  readonly where: string
  /** What is wrong, in the order of the inputs: the first 50. */
  readonly issues: readonly InputIssue[]

  constructor(where: string, issues: readonly InputIssue[]) {
    const count = issues.length === 1 ? 'one input' : `${issues.length} inputs`
    const told = issues.slice(0, MOST_ISSUES).map((issue) => ({
      ...issue,
      path: shortened(issue.path),
      received: shortened(issue.received),
    }))
    const more = issues.length - told.length
    const lines = [...told.map(issueText), ...(more === 0 ? [] : [`and ${more} more`])]
    super(`${where}: ${count} cannot be used\n${lines.map((line) => `  ${line}`).join('\n')}`)
    this.where = where
    this.issues = told
  }
}

/** So many issues an error tells, and so many characters of what came and of where. */
const [MOST_ISSUES, MOST_CHARACTERS] = [50, 200]

function shortened(text: string): string {
  return text.length > MOST_CHARACTERS ? `${text.slice(0, MOST_CHARACTERS - 1)}…` : text
}

/** One issue as a sentence: `current: expected a current such as '300 A', got '300 V' (V measures a voltage)`. */
function issueText(issue: InputIssue): string {
  const place = issue.path === '' ? '' : `${issue.path}: `
  const hint = issue.hint === undefined ? '' : ` (${issue.hint})`
  return `${place}expected ${issue.expected}, got ${issue.received}${hint}`
}

/** What an error tells of each input, one after the other in one line. @internal */
export function inOneLine({ message }: InputError): string {
  return message.split(/\n\s*/).slice(1).join('; ')
}

/** An equation that has no solution, or several, in the interval that was searched. */
export class SolveError extends Error {
  override readonly name = 'SolveError'
  readonly code = 'ERR_KERBWATT_SOLVE'
  /** The function whose solution was asked for. */
  readonly where: string
  /** The input that was to be found. */
  readonly unknown: string
  /** The interval that was searched, as text with units. */
  readonly interval: readonly [string, string]
  /** The intervals that each hold a solution, as text with units; empty when there is none. */
  readonly brackets: readonly (readonly [string, string])[]

  constructor(where: string, message: string, details: Pick<SolveError, 'unknown' | 'interval' | 'brackets'>) {
    super(`${where}: ${message}`)
    this.where = where
    this.unknown = details.unknown
    this.interval = details.interval
    this.brackets = details.brackets
  }
}

/** A calculation that has no finite result, or an operating point that does not exist. */
export class CalculationError extends Error {
  override readonly name = 'CalculationError'
  readonly code = 'ERR_KERBWATT_CALCULATION'
  /** The function that could not give a result. */
  readonly where: string
  /** The figures that tell why, as text with units. */
  readonly figures: { readonly [name: string]: string }

  constructor(where: string, message: string, figures: { readonly [name: string]: string } = {}) {
    super(`${where}: ${message}`)
    this.where = where
    this.figures = figures
  }
}

/** A value as it came, for a message: text in quotes, numbers as written, anything else by what it is. @internal */
export function shown(value: unknown): string {
  if (typeof value === 'string') return value.length > 60 ? `'${value.slice(0, 57)}…'` : `'${value}'`
  if (typeof value === 'function') return 'a function'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object' && value !== null) return 'an object'
  return typeof value === 'bigint' ? `${value}n` : String(value)
}
