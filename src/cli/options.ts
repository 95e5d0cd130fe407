/** The words after a command, read by what it takes. */
import { parseArgs } from 'node:util'
import { didYouMean, Refusal } from './refusal.js'

/** An option: a flag, or one that takes a value. */
export interface Option {
  /** What it takes, such as FILE; nothing for a flag. */
  readonly takes?: string
  readonly about: string
  /** How often it may stand, where that is more than once. */
  readonly most?: number
}

/** Options by their names. */
export interface Options {
  readonly [name: string]: Option
}

/** What was written after a command. */
export interface Written {
  /** The values of each option that was written; a flag has the empty one. */
  readonly values: ReadonlyMap<string, readonly string[]>
  /** What is no option, in order. */
  readonly places: readonly string[]
}

/**
 * Reads the words after a command.
 *
 * @throws Refusal that lists everything wrong with them.
 */
export function written(words: readonly string[], options: Options): Written {
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      Object.entries(options).map(([name, { takes }]) => [name, { type: takes === undefined ? 'boolean' : 'string' }]),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  })
  const values = new Map<string, string[]>()
  const places: string[] = []
  const wrong: string[] = []
  for (const token of tokens) {
    if (token.kind === 'positional') places.push(token.value)
    if (token.kind !== 'option') continue
    const { name, rawName, value, inlineValue } = token
    const option = rawName.startsWith('--') && Object.hasOwn(options, name) ? options[name] : undefined
    if (option === undefined) {
      wrong.push(`there is no option ${rawName}${didYouMean(name, Object.keys(options), '--')}`)
      continue
    }
    const { takes, most = 1 } = option
    if (takes === undefined && value !== undefined) wrong.push(`${rawName} takes no value, got '${value}'`)
    if (takes !== undefined && (value === undefined || value === '')) {
      wrong.push(`${rawName} takes a value: ${rawName} ${takes}`)
    } else if (takes !== undefined && inlineValue !== true && /^-(?:-|[A-Za-z])/.test(value as string)) {
      wrong.push(`${rawName} takes a value: ${rawName} ${takes}; got the option ${value}`)
    }
    const all = values.get(name) ?? []
    if (all.length === most) wrong.push(`${rawName} stands ${most === 1 ? 'twice' : `more than ${most} times`}`)
    values.set(name, [...all, value ?? ''])
  }
  if (wrong.length > 0) throw new Refusal(wrong.join('\n'))
  return { values, places }
}

/** The value of an option that stands once, where it stands. */
export function valueOf({ values }: Written, name: string): string | undefined {
  return values.get(name)?.[0]
}

/** The only place, such as a file. */
export function onlyPlace({ places }: Written, expected: string): string {
  const [first, second] = places
  if (first === undefined) throw new Refusal(`expected ${expected}`)
  if (second !== undefined) throw new Refusal(`expected one: ${expected}, got '${first}' and '${second}'`)
  return first
}

/** A number of an option, whole and within bounds. */
export function wholeOf(options: Written, name: string, [least, most]: readonly [number, number]): number | undefined {
  const text = valueOf(options, name)
  if (text === undefined) return undefined
  const number = /^\d{1,15}$/.test(text) ? Number(text) : Number.NaN
  if (number >= least && number <= most) return number
  throw new Refusal(`--${name} takes a whole number from ${least} to ${most}, got '${text}'`)
}

/** Lines of help for options. */
export function optionLines(options: Options): string[] {
  const rows = Object.entries(options).map(([name, { takes, about }]) => [`--${name} ${takes ?? ''}`.trim(), about])
  const widest = Math.max(0, ...rows.map(([name = '']) => name.length))
  return rows.map(([name = '', about]) => `  ${name.padEnd(widest)}  ${about}`)
}
