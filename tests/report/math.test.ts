/** MathML of every formula, read back to the expression that it was written from. */
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/catalogue.js'
import { type Expression, parseExpression } from '../../src/formula/expression.js'
import type { AnyFormula } from '../../src/formula/index.js'
import { mathOf } from '../../src/report/math.js'

/** An element of MathML. */
interface Element {
  readonly name: string
  readonly children: readonly Element[]
  readonly text: string
}

/** Reads elements; each is closed, and the text of each is its own. */
function read(mathml: string): Element {
  const open: { name: string; children: Element[]; text: string }[] = [{ name: '', children: [], text: '' }]
  for (const [, close, name, text] of mathml.matchAll(/<(\/?)(\w+)[^>]*>|([^<]+)/g)) {
    const top = open.at(-1) as (typeof open)[number]
    if (text !== undefined) top.text += text.replaceAll('&lt;', '<').replaceAll('&gt;', '>')
    else if (close === '') open.push({ name: name as string, children: [], text: '' })
    else {
      expect(top.name).toBe(name)
      open.pop()
      open.at(-1)?.children.push(top)
    }
  }
  expect(open).toHaveLength(1)
  return open[0]?.children[0] as Element
}

const greek = 'αalpha βbeta γgamma δdelta εeps ηeta θtheta λlambda μmu νnu πpi ρrho σsigma τtau φphi ωomega Δd'
  .split(' ')
  .map((each) => [each.charAt(0), each.slice(1)] as const)
const operators = { '⋅': '*', '−': '-', '×': '*', '≤': '<=', '≥': '>=', '=': '==', '≠': '!=' } as {
  readonly [sign: string]: string
}

/** MathML as plain mathematics, with each part in brackets of its own. */
function plain(element: Element, symbols: ReadonlyMap<string, string>): string {
  const { name, children, text } = element
  const inner = (all = children) => all.map((each) => plain(each, symbols)).join(' ')
  const part = (i: number) => `(${plain(children[i] as Element, symbols)})`
  switch (name) {
    case 'mi':
      return symbolFor(text, symbols)
    case 'mn':
      return text.replace('−', '-')
    case 'mo':
      return operators[text] ?? text
    case 'mtext':
      return text.replaceAll('\u00a0', ' ')
    case 'mfrac':
      return `(${part(0)} / ${part(1)})`
    case 'msup':
      return `(${part(0)} ^ ${part(1)})`
    case 'msqrt':
      return `sqrt(${inner()})`
    case 'mroot':
      return `cbrt${part(0)}`
    case 'msub': {
      const [base, index] = children.map((each) => each.text)
      return `${base}${index}` === 'log10' ? 'log10' : symbolFor(`${base}_${index}`, symbols)
    }
    case 'mtable':
      return casesOf(children, symbols) ?? inner()
    case 'mspace':
      return ''
    case 'mrow':
      if (children[0]?.text === '{') return inner(children.slice(1))
      if (children[0]?.text === '|') return `abs(${inner(children.slice(1, -1))})`
      return inner()
    default:
      return inner()
  }
}

function casesOf(rows: readonly Element[], symbols: ReadonlyMap<string, string>): string | undefined {
  if (rows[0]?.children.length !== 2) return undefined
  return rows
    .map(({ children: [value, when] }) => {
      const [told, condition] = [value, when].map((each) => plain(each as Element, symbols).trim())
      return condition === 'else' ? `(${told})` : `(${condition?.replace(/^if/, '')}) ? (${told}) : `
    })
    .join('')
}

/** A name as the formula has it, whatever letters and indices it is shown with. */
function symbolFor(shown: string, symbols: ReadonlyMap<string, string>): string {
  const letters = greek.reduce((text, [sign, name]) => text.replaceAll(sign, name), shown)
  const known = { ln: 'log', 'dU/dT': 'dUdT', 'I²t': 'I2t' } as { readonly [name: string]: string }
  const name = known[letters] ?? letters
  return symbols.get(name.replaceAll('_', '')) ?? name
}

/** An expression without its brackets, with what is shown in another way as it is shown. */
function bare(expression: Expression): unknown {
  switch (expression.type) {
    case 'group':
      return bare(expression.inner)
    case 'negative':
      return { negative: bare(expression.operand) }
    case 'binary':
      return { [expression.operator]: [bare(expression.left), bare(expression.right)] }
    case 'choice':
      return { test: bare(expression.test), yes: bare(expression.yes), no: bare(expression.no) }
    case 'call': {
      const list = expression.arguments.map(bare)
      if (expression.name === 'log1p') return { log: [{ '+': ['1', list[0]] }] }
      if (expression.name === 'expm1') return { '-': [{ exp: list }, '1'] }
      return { [expression.name]: list }
    }
    case 'number': {
      const [, digits, exponent] = /^([\d.]+)e([-+]?\d+)$/.exec(expression.text) ?? []
      if (exponent === undefined) return expression.text
      const power = exponent.startsWith('-') ? { negative: exponent.slice(1) } : exponent.replace('+', '')
      return { '*': [digits, { '^': ['10', power] }] }
    }
    case 'symbol':
      return expression.name
  }
}

function symbolsOf({ result, inputs, constants }: AnyFormula): ReadonlyMap<string, string> {
  const all = [result.symbol, ...Object.values(inputs).map(({ symbol }) => symbol), ...Object.keys(constants), 'pi']
  const names = new Map(all.map((each) => [each.replaceAll('_', ''), each]))
  // Each is shown as itself alone.
  expect(names.size).toBe(new Set(all).size)
  return names
}

describe('the MathML of', () => {
  it.each(Object.entries(catalogue))('%s reads back', (_, formula) => {
    const element = read(mathOf(formula))
    expect(element.name).toBe('math')
    const symbols = symbolsOf(formula)
    const [symbol, equals, ...others] = element.children
    expect(plain(symbol as Element, symbols)).toBe(formula.result.symbol)
    expect(equals?.text).toBe('=')
    const text = plain({ name: 'mrow', children: others, text: '' }, symbols)
    expect(bare(parseExpression(text))).toEqual(bare(parseExpression(formula.expression)))
  })
  it('a formula that was written wrong is found', () => {
    const [one, other] = Object.values(catalogue) as [AnyFormula, AnyFormula]
    const wrong = plain({ name: 'mrow', children: read(mathOf(one)).children.slice(2), text: '' }, symbolsOf(one))
    expect(bare(parseExpression(wrong))).not.toEqual(bare(parseExpression(other.expression)))
  })
})

it('numbers that are named after people stand upright and whole, resistances of the same letters do not', () => {
  expect(mathOf(catalogue.reynoldsNumber as AnyFormula)).toMatch(/^<math display="block"><mi>Re<\/mi>/)
  expect(mathOf(catalogue.prospectiveCurrent as AnyFormula)).not.toContain('<mi>Re</mi>')
})
