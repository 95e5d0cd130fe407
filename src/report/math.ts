/**
 * A formula as MathML (W3C MathML Core), written from its expression.
 *
 * Dimensionless numbers and words stand upright and whole, Greek letters by their names; digits and tails of a name are its
 * index. Brackets grow only around what is tall, and long sums go on in a new line.
 */
import { type Expression, parseExpression } from '../formula/expression.js'
import type { AnyFormula } from '../formula/index.js'
import { escaped } from './markup.js'

const greek: { readonly [name: string]: string } = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  eps: 'ε',
  eta: 'η',
  theta: 'θ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  omega: 'ω',
}

/** Names that stand for one thing as a whole, and how they are written. */
const whole: { readonly [name: string]: string } = {
  COP: 'COP',
  SSF: 'SSF',
  I2t: 'I²t',
  dUdT: 'dU/dT',
}
/** Numbers without a dimension that are named after people: letters of no index, where they measure nothing. */
const numbers = ['Re', 'Pr', 'Nu', 'Ra', 'Bi', 'Gr']

const functionNames: { readonly [name: string]: string } = { log: 'ln', log1p: 'ln', expm1: 'exp' }

const signs: { readonly [operator: string]: string } = {
  '*': '⋅',
  '-': '−',
  '<': '&lt;',
  '>': '&gt;',
  '<=': '≤',
  '>=': '≥',
  '==': '=',
  '!=': '≠',
}

/** So many signs stand in one line of a sum. */
const LINE = 46

/** Elements beside each other. */
type Elements = readonly string[]

const tag = (name: string, ...inner: readonly string[]) => `<${name}>${inner.join('')}</${name}>`
const sign = (text: string) => tag('mo', text)
/** Elements beside each other, as one where one is wanted. */
const one = (inner: Elements) => (inner.length === 1 ? (inner[0] as string) : tag('mrow', ...inner))
const upright = (text: string) =>
  [...text].length === 1 ? `<mi mathvariant="normal">${escaped(text)}</mi>` : tag('mi', escaped(text))

/** A formula, its symbol before its expression. @internal */
export function mathOf({ result, expression, inputs, constants }: AnyFormula): string {
  const kinds = new Map<string, string>([
    ...Object.values(inputs).map(({ symbol, kind }) => [symbol, kind] as const),
    ...Object.entries(constants).map(([symbol, { value }]) => [symbol, value.kind] as const),
    [result.symbol, result.kind],
  ])
  const write = new Writer((name) => numbers.includes(name) && kinds.get(name) === 'ratio')
  const elements = [write.symbol(result.symbol), sign('='), ...write.whole(parseExpression(expression))]
  return `<math display="block">${elements.join('')}</math>`
}

class Writer {
  readonly #isNumber: (name: string) => boolean

  constructor(isNumber: (name: string) => boolean) {
    this.#isNumber = isNumber
  }

  symbol(name: string): string {
    const written = whole[name] ?? (this.#isNumber(name) ? name : undefined)
    if (written !== undefined) return upright(written)
    const [, difference = '', letters = name, tail = ''] =
      /^(d(?=[A-Zmpsz](?![A-Za-z]*\d\d?$)|[A-Z]))?((?:alpha|beta|gamma|delta|eps|eta|theta|lambda|mu|nu|pi|rho|sigma|tau|phi|omega)|[A-Za-z])_?(\w*)$/.exec(
        name,
      ) ?? []
    const base = tag('mi', `${difference === '' ? '' : 'Δ'}${greek[letters] ?? letters}`)
    if (tail === '') return base
    return tag('msub', base, /^\d+$/.test(tail) ? tag('mn', tail) : upright(greek[tail] ?? tail))
  }

  /** An expression at the top, where sums may go on in a new line. */
  whole(expression: Expression): Elements {
    return this.#broken(expression) ?? this.#of(expression)
  }

  #of(expression: Expression): Elements {
    switch (expression.type) {
      case 'number':
        return this.#number(expression.text)
      case 'symbol':
        return [this.symbol(expression.name)]
      case 'group':
        return this.#bracketed(expression.inner)
      case 'negative':
        return ['<mo form="prefix">−</mo>', ...this.#of(expression.operand)]
      case 'choice':
        return this.#cases(expression)
      case 'call':
        return this.#call(expression.name, expression.arguments)
      case 'binary':
        return this.#binary(expression.operator, expression.left, expression.right)
    }
  }

  #number(text: string): Elements {
    const [, digits = text, exponent] = /^([\d.]+)(?:e([-+]?\d+))?$/.exec(text) ?? []
    if (exponent === undefined) return [tag('mn', digits)]
    const power = tag('mn', exponent.replace('-', '−').replace('+', ''))
    return [tag('mn', digits), sign('×'), tag('msup', tag('mn', '10'), power)]
  }

  #binary(operator: string, left: Expression, right: Expression): Elements {
    if (operator === '/') return [tag('mfrac', one(this.#of(bare(left))), one(this.#of(bare(right))))]
    if (operator === '^') {
      const isBase = left.type === 'number' || left.type === 'symbol' || left.type === 'group'
      return [tag('msup', one(isBase ? this.#of(left) : this.#bracketed(left)), one(this.#of(bare(right))))]
    }
    const isWord = /^[a-z]+$/.test(operator)
    const between = isWord ? tag('mtext', `\u00a0${operator}\u00a0`) : sign(signs[operator] ?? operator)
    return [...this.#of(left), between, ...this.#of(right)]
  }

  #call(name: string, list: readonly Expression[]): Elements {
    const [only] = list as [Expression]
    if (name === 'sqrt') return [tag('msqrt', ...this.whole(bare(only)))]
    if (name === 'cbrt') return [tag('mroot', one(this.#of(bare(only))), tag('mn', '3'))]
    if (name === 'abs') return this.#between('|', this.#of(only), '|')
    const log10 = () => tag('msub', tag('mi', 'log'), tag('mn', '10'))
    const called = name === 'log10' ? log10() : tag('mi', functionNames[name] ?? name)
    const unit: Expression = { type: 'number', text: '1' }
    if (name === 'log1p')
      return [called, ...this.#bracketed({ type: 'binary', operator: '+', left: unit, right: only })]
    const inner = list.flatMap((each, i) => [...(i === 0 ? [] : [sign(',')]), ...this.#of(each)])
    const whole = [called, ...this.#between('(', inner, ')')]
    return name === 'expm1' ? this.#between('(', [...whole, sign('−'), tag('mn', '1')], ')') : whole
  }

  #bracketed(inner: Expression): Elements {
    return this.#between('(', this.whole(bare(inner)), ')')
  }

  #between(open: string, inner: Elements, close: string): Elements {
    const isTall = inner.some((each) => /<m(?:frac|table|root|sqrt)>/.test(each))
    // Brackets grow as tall as their own row; what opens a size and what closes it look alike.
    if (isTall || open === close) return [tag('mrow', sign(open), ...inner, sign(close))]
    const bracket = (text: string) => `<mo stretchy="false">${text}</mo>`
    return [bracket(open), ...inner, bracket(close)]
  }

  /** `a if x, b if y, else c`, a line each. */
  #cases(choice: Expression): Elements {
    const rows: string[] = []
    let rest = choice
    while (rest.type === 'choice') {
      rows.push(lineOfCase(this.#of(bare(rest.yes)), [tag('mtext', 'if\u00a0'), ...this.#of(rest.test)]))
      rest = bare(rest.no)
    }
    rows.push(lineOfCase(this.whole(rest), [tag('mtext', 'else')]))
    return [tag('mrow', sign('{'), tag('mtable', ...rows))]
  }

  /** A sum that is too long for a line, in several. */
  #broken(expression: Expression): Elements | undefined {
    const terms = termsOf(expression)
    if (terms.length < 2 || lengthOf(expression) <= LINE) return undefined
    const lines: string[][] = []
    let room = 0
    for (const { operator, term } of terms) {
      const length = lengthOf(term)
      if (lines.length === 0 || room < length) {
        lines.push([])
        room = LINE
      }
      room -= length
      lines.at(-1)?.push(...(operator === undefined ? [] : [sign(signs[operator] ?? operator)]), ...this.#of(term))
    }
    if (lines.length === 1) return undefined
    return [tag('mtable', ...lines.map((line) => tag('mtr', tag('mtd', ...line))))]
  }
}

function lineOfCase(value: Elements, when: Elements): string {
  return tag('mtr', tag('mtd', ...value), tag('mtd', '<mspace width="1em"></mspace>', ...when))
}

/** The terms of a sum, each with the sign before it. */
function termsOf(expression: Expression): { readonly operator?: string; readonly term: Expression }[] {
  if (expression.type !== 'binary' || !['+', '-'].includes(expression.operator)) return [{ term: expression }]
  return [...termsOf(expression.left), { operator: expression.operator, term: expression.right }]
}

/** About how many signs an expression is wide. */
function lengthOf(expression: Expression): number {
  switch (expression.type) {
    case 'number':
      return expression.text.length
    case 'symbol':
      return Math.min(2, expression.name.length)
    case 'group':
      return lengthOf(expression.inner) + 2
    case 'negative':
      return lengthOf(expression.operand) + 1
    case 'choice':
      return Math.max(lengthOf(expression.yes) + lengthOf(expression.test) + 4, lengthOf(expression.no))
    case 'call':
      return expression.arguments.reduce((sum, each) => sum + lengthOf(each), 2 + expression.name.length)
    case 'binary': {
      const [left, right] = [lengthOf(expression.left), lengthOf(expression.right)]
      if (expression.operator === '/') return Math.max(left, right)
      return left + (expression.operator === '^' ? right * 0.7 : right + 1)
    }
  }
}

/** An expression without the brackets around the whole of it. */
function bare(expression: Expression): Expression {
  return expression.type === 'group' ? bare(expression.inner) : expression
}
