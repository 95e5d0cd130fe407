/**
 * The checks that hold for every formula: what is printed is what is computed, and the units come out. Each throws
 * when a formula fails it, and nothing here knows one formula from another.
 */
import fc from 'fast-check'
import type { MathNode, Unit } from 'mathjs'
import type { AnyFormula } from '../../src/formula/index.js'
import type { Kind } from '../../src/quantity/index.js'
import { math } from '../mathjs.js'
import { runs } from '../runs.js'
import { dimensions } from './dimensions.js'
import { inputsFor, siConstants } from './draw.js'

/** How often each check draws, and how close two ways of computing one thing must come. */
const [DRAWS, CLOSE] = [50, 1e-9]

/** The symbols of a formula, each with its kind and its value among the SI inputs or constants. */
function symbolsOf(formula: AnyFormula, si: { readonly [key: string]: number }) {
  const constants = siConstants(formula)
  return [
    ...Object.entries(formula.inputs).map(([key, input]) => ({
      symbol: input.symbol,
      kind: input.kind,
      si: si[key] as number,
    })),
    ...Object.entries(formula.constants).map(([symbol, { value }]) => ({
      symbol,
      kind: value.kind,
      si: constants[symbol] as number,
    })),
  ]
}

function parsed(formula: AnyFormula): MathNode {
  const node = math.parse(formula.expression)
  const declared = symbolsOf(formula, {}).map(({ symbol }) => symbol)
  if (new Set(declared).size !== declared.length) throw new Error(`${formula.name}: a symbol stands for two things`)
  const used = new Set<string>()
  node.traverse((inner, path, parent) => {
    if ('isSymbolNode' in inner && !(parent !== null && 'isFunctionNode' in parent && path === 'fn')) {
      used.add((inner as unknown as { name: string }).name)
    }
  })
  for (const symbol of used) {
    if (symbol !== 'pi' && !declared.includes(symbol)) throw new Error(`${formula.name}: ${symbol} is not declared`)
  }
  for (const symbol of declared)
    if (!used.has(symbol)) throw new Error(`${formula.name}: ${symbol} is not in the expression`)
  return node
}

function isClose(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= CLOSE * Math.max(Math.abs(a), Math.abs(b))
}

/** The printed expression, evaluated by mathjs on numbers, gives what the formula computes. */
export function checkPrintedIsComputed(formula: AnyFormula): void {
  const code = parsed(formula).compile()
  fc.assert(
    fc.property(inputsFor(formula), (si) => {
      const printed: unknown = code.evaluate(
        Object.fromEntries(symbolsOf(formula, si).map((each) => [each.symbol, each.si])),
      )
      const computed = formula.compute(si)
      if (typeof printed !== 'number' || !isClose(printed, computed)) {
        throw new Error(`${formula.name}: printed gives ${String(printed)}, computed ${computed}`)
      }
    }),
    { numRuns: runs(DRAWS), includeErrorInReport: true },
  )
}

/** The printed expression, evaluated by mathjs on values with units, has the unit of the result. */
export function checkPrintedUnits(formula: AnyFormula): void {
  const code = parsed(formula).compile()
  const wanted = inBaseUnits(1, formula.result.kind)
  fc.assert(
    fc.property(inputsFor(formula), (si) => {
      const scope = symbolsOf(formula, si).map((each) => [each.symbol, inBaseUnits(each.si, each.kind)])
      const printed: unknown = code.evaluate(Object.fromEntries(scope))
      const isRight =
        typeof wanted === 'number' ? typeof printed === 'number' : math.isUnit(printed) && printed.equalBase(wanted)
      if (!isRight)
        throw new Error(`${formula.name}: the printed unit is that of ${String(printed)}, not ${String(wanted)}`)
      const value = typeof printed === 'number' ? printed : (printed as Unit).toNumber(dimensions[formula.result.kind])
      const computed = formula.compute(si)
      if (!isClose(value, computed)) throw new Error(`${formula.name}: with units ${value}, computed ${computed}`)
    }),
    { numRuns: runs(DRAWS), includeErrorInReport: true },
  )
}

/** A value as a product of kg, m, s, A and K; a ratio or an angle as a plain number. */
function inBaseUnits(si: number, kind: Kind): Unit | number {
  const dimension = dimensions[kind]
  return dimension === '1' ? si : math.unit(si, dimension)
}

const bases = ['kg', 'm', 's', 'A', 'K'] as const
type Factors = { readonly [base in (typeof bases)[number]]: number }

/** With other base units, the computed result changes by just the powers of its kind. */
export function checkRescaled(formula: AnyFormula): void {
  // Powers of four scale doubles and their square roots without rounding, so that no cancellation is stirred up.
  const factor = fc.integer({ min: -4, max: 4 }).map((n) => 4 ** n)
  const factors = fc.record({ kg: factor, m: factor, s: factor, A: factor, K: factor })
  const constants = siConstants(formula)
  fc.assert(
    fc.property(inputsFor(formula), factors, (si, by) => {
      const scaled = Object.entries(formula.inputs).map(([key, { kind }]) => [
        key,
        (si[key] as number) * powers(kind, by),
      ])
      const scaledConstants = Object.entries(formula.constants).map(([symbol, { value }]) => [
        symbol,
        (constants[symbol] as number) * powers(value.kind, by),
      ])
      const result = formula.compute(Object.fromEntries(scaled), Object.fromEntries(scaledConstants))
      const wanted = formula.compute(si) * powers(formula.result.kind, by)
      if (!isClose(result, wanted)) {
        throw new Error(`${formula.name}: in other base units ${result}, but ${wanted} by the kind of its result`)
      }
    }),
    { numRuns: runs(DRAWS), includeErrorInReport: true },
  )
}

/** With other base units, what a range of validity bounds changes by the powers of the kind that it names, or not at all. */
export function checkRangesRescaled(formula: AnyFormula): void {
  const by: Factors = { kg: 4, m: 16, s: 0.25, A: 64, K: 0.0625 }
  const scaledBy = (values: { readonly [key: string]: number }, kindOf: (key: string) => Kind) =>
    Object.fromEntries(Object.entries(values).map(([key, si]) => [key, si * powers(kindOf(key), by)]))
  const constants = siConstants(formula)
  const scaledConstants = scaledBy(
    constants,
    (symbol) => (formula.constants[symbol] as { value: { kind: Kind } }).value.kind,
  )
  fc.assert(
    fc.property(inputsFor(formula), (si) => {
      const scaled = scaledBy(si, (key) => (formula.inputs[key] as { kind: Kind }).kind)
      for (const range of formula.valid) {
        const wanted = range.value(si, constants) * powers(range.kind ?? 'ratio', by)
        const value = range.value(scaled, scaledConstants)
        if (!isClose(value, wanted)) {
          throw new Error(`${formula.name}: ${range.of} is ${value} in other base units, but ${wanted} by its kind`)
        }
      }
    }),
    { numRuns: runs(DRAWS), includeErrorInReport: true },
  )
}

/** How the number of a kind changes when the base units change. */
function powers(kind: Kind, by: Factors): number {
  const dimension = dimensions[kind]
  if (dimension === '1') return 1
  return dimension.split(' ').reduce((product, power) => {
    const [base, exponent = '1'] = power.split('^')
    return product * by[base as keyof Factors] ** Number(exponent)
  }, 1)
}
