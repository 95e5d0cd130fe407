/** The working of a calculation: every formula that ran, with its numbers, its result and its source. */
import { InputError } from '../quantity/errors.js'
import type { Quantity } from '../quantity/index.js'
import { branchFor, type Expression, expressionText, parseExpression } from './expression.js'
import { type FormulaStep, recorded, recording, type SectionStep, type Step } from './record.js'
import { sourceText } from './source.js'

/** A result with all that led to it. */
export interface Working<T> {
  readonly result: T
  /** The formulas that were evaluated with units, in order, under the headings that were set. */
  readonly steps: readonly Step[]
  /** The working as plain text, a line for each formula. */
  toText(): string
  /** The working as Markdown. */
  toMarkdown(): string
}

/**
 * Runs a calculation and writes down every formula that is evaluated with units on the way.
 *
 * @param work - The calculation. It must not be asynchronous.
 * @returns The result, the steps, and their text.
 * @throws InputError when the work returns a promise; whatever the work throws.
 */
export function explain<T>(work: () => T): Working<T> {
  const { result, steps } = recorded(work)
  if (typeof result === 'object' && result !== null && 'then' in result) {
    throw new InputError('explain', [
      { path: 'work', expected: 'a function that returns its result at once', received: 'one that returns a promise' },
    ])
  }
  for (const step of steps) recording.steps?.push(step)
  return {
    result,
    steps,
    toText: () => workingText(steps),
    toMarkdown: () => workingMarkdown(steps),
  }
}

/** A formula's step as the parts of a line: `dU`, the formula, the numbers, the result, the source. @internal */
export interface Line {
  readonly title: string
  readonly symbol: string
  readonly formula: string
  readonly numbers: string
  readonly result: string
  readonly source: string
}

/** The values that were shown as results, so that they look the same where they are used. */
type ShownResults = Map<Quantity, string>

/** Three significant digits, but never less than the whole number: `0.695 V`, `1263 kg`. */
function resultText(quantity: Quantity): string {
  const number = Math.abs(quantity.in(quantity.unit))
  const wholeDigits = number < 1 ? 1 : Math.floor(Math.log10(number)) + 1
  return typographic(quantity.format({ digits: Math.min(17, Math.max(3, wholeDigits)) }))
}

/** A value as a working shows it in the middle of a formula. Sums and ratios of temperatures need kelvins. */
function inputText(quantity: Quantity, results: ShownResults): string {
  if (quantity.kind === 'temperature') return quantity.format({ unit: 'K' as never, digits: 5 })
  if (quantity.kind === 'ratio') return typographic(quantity.format({ unit: '1' as never }))
  return results.get(quantity) ?? typographic(String(quantity))
}

function typographic(text: string): string {
  return text.replace(/^-/, '−')
}

/** A step as the parts of a line. @internal */
export function lineOf({ formula, inputs, defaults, result }: FormulaStep, results: ShownResults = new Map()): Line {
  const values: { [symbol: string]: number } = {}
  const texts: { [symbol: string]: string } = {}
  for (const [key, { symbol }] of Object.entries(formula.inputs)) {
    const value = inputs[key] as Quantity
    values[symbol] = value.si
    texts[symbol] = inputText(value, results)
  }
  for (const [symbol, { value }] of Object.entries(formula.constants)) {
    values[symbol] = value.si
    texts[symbol] = inputText(value, new Map())
  }
  const branch: Expression = branchFor(parseExpression(formula.expression), values)
  const text = resultText(result)
  results.set(result, text)
  const assumed = defaults.map((key) => `${formula.inputs[key]?.symbol} = ${inputs[key]} by default`)
  return {
    title: formula.title,
    symbol: formula.result.symbol,
    formula: expressionText(branch),
    numbers: expressionText(branch, (name) => texts[name] ?? name),
    result: text,
    source: [sourceText(formula.source), ...assumed].join('; '),
  }
}

/** The widest line that stays on one line. */
const WIDTH = 100

function lineText({ symbol, formula, numbers, result, source }: Line, indent: string): string {
  const parts = formula === numbers ? [formula, result] : [formula, numbers, result]
  const one = `${indent}${symbol} = ${parts.join(' = ')}`
  if (one.length <= WIDTH) return `${one}   [${source}]`
  const equals = `\n${indent}${' '.repeat(symbol.length)} = `
  return `${indent}${symbol} = ${parts.join(equals)}   [${source}]`
}

function workingText(steps: readonly Step[]): string {
  const results: ShownResults = new Map()
  const single = steps.length === 1 && isFormulaStep(steps[0] as Step)
  const write = (list: readonly Step[], indent: string): string[] =>
    list.flatMap((step) => {
      if (!isFormulaStep(step)) return [`${indent}${step.heading}`, ...write(step.steps, `${indent}  `)]
      const line = lineOf(step, results)
      return single ? [lineText(line, indent)] : [`${indent}${line.title}`, lineText(line, `${indent}  `)]
    })
  return write(steps, '').join('\n')
}

function workingMarkdown(steps: readonly Step[]): string {
  const results: ShownResults = new Map()
  const write = (list: readonly Step[], indent: string): string[] =>
    list.flatMap((step) => {
      if (!isFormulaStep(step)) return [`${indent}- **${step.heading}**`, ...write(step.steps, `${indent}  `)]
      const { title, symbol, formula, numbers, result, source } = lineOf(step, results)
      const parts = formula === numbers ? [formula] : [formula, numbers]
      return [`${indent}- ${title}: ${symbol} = ${parts.join(' = ')} = **${result}** *(${source})*`]
    })
  return write(steps, '').join('\n')
}

/** @internal */
export function isFormulaStep(step: Step): step is FormulaStep {
  return !('heading' in (step as SectionStep))
}
