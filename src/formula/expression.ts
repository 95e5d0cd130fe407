/**
 * The mathematics of a printed formula: read from plain ASCII, shown in a notebook's signs, with symbols or
 * with numbers. The grammar is the part of mathjs's that formulas here use, so that mathjs can check them.
 *
 *   condition ? a : b    < > <= >= == != and or    + - * / ^    f(x, y)    ( )
 */

/** A node of an expression. @internal */
export type Expression =
  | { readonly type: 'number'; readonly text: string }
  | { readonly type: 'symbol'; readonly name: string }
  | { readonly type: 'call'; readonly name: string; readonly arguments: readonly Expression[] }
  | { readonly type: 'negative'; readonly operand: Expression }
  | { readonly type: 'binary'; readonly operator: string; readonly left: Expression; readonly right: Expression }
  | { readonly type: 'choice'; readonly test: Expression; readonly yes: Expression; readonly no: Expression }
  | { readonly type: 'group'; readonly inner: Expression }

/** Binary operators from the loosest to the tightest. A power binds tighter than all and to the right. */
const precedence: readonly (readonly string[])[] = [
  ['or'],
  ['and'],
  ['<', '>', '<=', '>=', '==', '!='],
  ['+', '-'],
  ['*', '/'],
]

/** Functions that an expression may call. */
const functions: { readonly [name: string]: (...values: number[]) => number } = {
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  exp: Math.exp,
  log: Math.log,
  log1p: Math.log1p,
  expm1: Math.expm1,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  tanh: Math.tanh,
  abs: Math.abs,
  min: Math.min,
  max: Math.max,
}

/**
 * Reads an expression.
 *
 * @throws SyntaxError that tells where it cannot be read.
 *
 * @internal
 */
export function parseExpression(text: string): Expression {
  const tokens = text.match(/\d+\.?\d*(?:e[-+]?\d+)?|[A-Za-z]\w*|[<>=!]=|\S/g) ?? []
  let at = 0
  const fail = (): never => {
    throw new SyntaxError(`cannot read '${tokens[at] ?? 'the end'}' after '${tokens.slice(0, at).join(' ')}'`)
  }
  const take = (token: string): boolean => {
    if (tokens[at] !== token) return false
    at++
    return true
  }
  const expect = (token: string): void => {
    if (!take(token)) fail()
  }
  const choice = (): Expression => {
    const test = binary(0)
    if (!take('?')) return test
    const yes = choice()
    expect(':')
    return { type: 'choice', test, yes, no: choice() }
  }
  const binary = (level: number): Expression => {
    const operators = precedence[level]
    if (operators === undefined) return signed()
    let left = binary(level + 1)
    for (;;) {
      const operator = tokens[at]
      if (operator === undefined || !operators.includes(operator)) return left
      at++
      left = { type: 'binary', operator, left, right: binary(level + 1) }
    }
  }
  const signed = (): Expression => (take('-') ? { type: 'negative', operand: signed() } : power())
  const power = (): Expression => {
    const base = atom()
    return take('^') ? { type: 'binary', operator: '^', left: base, right: signed() } : base
  }
  const atom = (): Expression => {
    const token = tokens[at] ?? fail()
    at++
    if (/^\d/.test(token)) return { type: 'number', text: token }
    if (token === '(') {
      const inner = choice()
      expect(')')
      return { type: 'group', inner }
    }
    if (!/^[A-Za-z]/.test(token)) {
      at--
      return fail()
    }
    if (!take('(')) return { type: 'symbol', name: token }
    const list = [choice()]
    while (take(',')) list.push(choice())
    expect(')')
    return { type: 'call', name: token, arguments: list }
  }
  const whole = choice()
  return at < tokens.length ? fail() : whole
}

/** The value of an expression, with symbols looked up. True counts as 1 and false as 0. @internal */
export function valueOf(expression: Expression, symbols: { readonly [name: string]: number }): number {
  const of = (inner: Expression) => valueOf(inner, symbols)
  switch (expression.type) {
    case 'number':
      return Number(expression.text)
    case 'symbol': {
      if (expression.name === 'pi') return Math.PI
      const value = symbols[expression.name]
      if (value === undefined) throw new ReferenceError(`unknown symbol ${expression.name}`)
      return value
    }
    case 'call': {
      const call = functions[expression.name]
      if (call === undefined) throw new ReferenceError(`unknown function ${expression.name}`)
      return call(...expression.arguments.map(of))
    }
    case 'negative':
      return -of(expression.operand)
    case 'group':
      return of(expression.inner)
    case 'choice':
      return of(expression.test) === 0 ? of(expression.no) : of(expression.yes)
    case 'binary':
      return operate(expression.operator, of(expression.left), of(expression.right))
  }
}

function operate(operator: string, left: number, right: number): number {
  switch (operator) {
    case '+':
      return left + right
    case '-':
      return left - right
    case '*':
      return left * right
    case '/':
      return left / right
    case '^':
      return left ** right
    case '<':
      return Number(left < right)
    case '>':
      return Number(left > right)
    case '<=':
      return Number(left <= right)
    case '>=':
      return Number(left >= right)
    case '==':
      return Number(left === right)
    case '!=':
      return Number(left !== right)
    case 'and':
      return Number(left !== 0 && right !== 0)
    default:
      return Number(left !== 0 || right !== 0)
  }
}

/** The branch of a piecewise expression that applies to some values; other expressions as they are. @internal */
export function branchFor(expression: Expression, symbols: { readonly [name: string]: number }): Expression {
  if (expression.type === 'group' && expression.inner.type === 'choice') return branchFor(expression.inner, symbols)
  if (expression.type !== 'choice') return expression
  const taken = valueOf(expression.test, symbols) === 0 ? expression.no : expression.yes
  return branchFor(taken, symbols)
}

const signs: { readonly [operator: string]: string } = {
  '*': '·',
  '-': '−',
  '<=': '≤',
  '>=': '≥',
  '==': '=',
  '!=': '≠',
}
const raised: { readonly [exponent: string]: string } = { '2': '²', '3': '³', '4': '⁴' }

/** What stands for a symbol: its name, or a number with its unit. @internal */
export type Naming = (name: string) => string

const asNamed: Naming = (name) => (name === 'pi' ? 'π' : name)

/** Whether a text is more than one bare number or name, so that a power or a quotient of it needs brackets. */
function isCompound(text: string): boolean {
  return /[^\p{L}\p{N}._]/u.test(text)
}

/** An expression in a notebook's signs: `2 · I · r · l`. @internal */
export function expressionText(expression: Expression, naming: Naming = asNamed): string {
  const text = (inner: Expression) => expressionText(inner, naming)
  switch (expression.type) {
    case 'number':
      return expression.text
    case 'symbol':
      return expression.name === 'pi' ? 'π' : signed(naming(expression.name))
    case 'group':
      return `(${text(expression.inner)})`
    case 'negative':
      return `−${text(expression.operand)}`
    case 'choice':
      return `${text(expression.yes)} if ${text(expression.test)}, else ${text(expression.no)}`
    case 'call':
      return callText(expression.name, expression.arguments.map(text))
    case 'binary': {
      const { operator, left, right } = expression
      if (operator === '^') {
        const isBare = left.type === 'symbol' && isCompound(text(left)) && !text(left).startsWith('(')
        const base = isBare ? `(${text(left)})` : text(left)
        const exponent = text(right.type === 'group' ? right.inner : right)
        return `${base}${raised[exponent] ?? `^${isCompound(exponent) ? `(${exponent})` : exponent}`}`
      }
      const divisor =
        operator === '/' && right.type === 'symbol' && /[/·]/.test(text(right)) ? `(${text(right)})` : text(right)
      return `${text(left)} ${signs[operator] ?? operator} ${divisor}`
    }
  }
}

/** A negative value stands in brackets, so that no two signs meet. */
function signed(text: string): string {
  return text.startsWith('−') ? `(${text})` : text
}

function callText(name: string, list: readonly string[]): string {
  const only = list[0] as string
  if (name === 'sqrt') return isCompound(only) ? `√(${only})` : `√${only}`
  if (name === 'abs') return `|${only}|`
  if (name === 'log1p') return only.startsWith('−') ? `ln(1 − ${only.slice(1)})` : `ln(1 + ${only})`
  if (name === 'expm1') return `(exp(${only}) − 1)`
  return `${name === 'log' ? 'ln' : name}(${list.join(', ')})`
}
