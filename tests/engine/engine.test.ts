/** Every formula of the catalogue, and formulas that are wrong on purpose, against the checks that hold for all. */

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/catalogue.js'
import { parseExpression, valueOf } from '../../src/formula/expression.js'
import { type AnyFormula, cite, constant, formula, input, output } from '../../src/formula/index.js'
import type { Kind } from '../../src/quantity/index.js'
import { runs } from '../runs.js'
import { inputsFor, siConstants } from './draw.js'
import { checkPrintedIsComputed, checkPrintedUnits, checkRangesRescaled, checkRescaled } from './engine.js'

const formulas = Object.values(catalogue)

describe.each(formulas.map((each) => [each.name, each] as const))('%s', (_, each) => {
  it('prints what it computes', () => checkPrintedIsComputed(each))
  it('prints units that come out', () => checkPrintedUnits(each))
  it('computes the same in other base units', () => checkRescaled(each))
  it('names the kind of what its ranges of validity bound', () => checkRangesRescaled(each))
  it('is shown in its working as mathjs reads it', () => {
    const expression = parseExpression(each.expression)
    fc.assert(
      fc.property(inputsFor(each), (si) => {
        const bySymbol = Object.entries(each.inputs).map(([key, { symbol }]) => [symbol, si[key] as number])
        const shown = valueOf(expression, { ...Object.fromEntries(bySymbol), ...siConstants(each) })
        const computed = each.compute(si)
        expect(Math.abs(shown - computed)).toBeLessThanOrEqual(1e-9 * Math.abs(computed))
      }),
      { numRuns: runs(20), includeErrorInReport: true },
    )
  })
})

/** Kinetic energy, right or with one thing wrong. */
function kineticEnergy(wrong: {
  expression?: string
  compute?: (si: { mass: number; speed: number }) => number
  range?: { of: string; kind?: Kind }
}): AnyFormula {
  return formula({
    name: 'kineticEnergy',
    title: 'Energy of motion',
    inputs: {
      mass: input('mass', 'm', 'Mass', { min: 0 }),
      speed: input('speed', 'v', 'Speed', { min: 0 }),
    },
    result: output('energy', 'E', 'Energy of motion'),
    expression: wrong.expression ?? 'm * v^2 / 2',
    source: cite('any textbook of mechanics'),
    valid: wrong.range === undefined ? [] : [{ ...wrong.range, value: ({ speed }) => speed, max: 50 }],
    compute: wrong.compute ?? (({ mass, speed }) => (mass * speed * speed) / 2),
  })
}

describe('the checks find what is wrong', () => {
  it('and nothing in what is right', () => {
    const right = kineticEnergy({})
    checkPrintedIsComputed(right)
    checkPrintedUnits(right)
    checkRescaled(right)
  })
  it('a factor that is printed and not computed', () => {
    const missingHalf = kineticEnergy({ compute: ({ mass, speed }) => mass * speed * speed })
    expect(() => checkPrintedIsComputed(missingHalf)).toThrow(/printed gives .* computed/)
  })
  it('a factor that is computed and not printed', () => {
    expect(() => checkPrintedIsComputed(kineticEnergy({ expression: 'm * v^2' }))).toThrow(/printed gives/)
  })
  it('an error that shows only beyond a threshold', () => {
    const fast = kineticEnergy({ compute: ({ mass, speed }) => (mass * speed * speed) / (speed > 50 ? 3 : 2) })
    expect(() => checkPrintedIsComputed(fast)).toThrow(/printed gives/)
  })
  it('a wrong power in print and arithmetic alike', () => {
    const cubed = kineticEnergy({ expression: 'm * v^3 / 2', compute: ({ mass, speed }) => (mass * speed ** 3) / 2 })
    checkPrintedIsComputed(cubed)
    expect(() => checkPrintedUnits(cubed)).toThrow(/printed unit/)
    expect(() => checkRescaled(cubed)).toThrow(/in other base units/)
  })
  it('a sum of unlike things', () => {
    const sum = kineticEnergy({
      expression: 'm * v^2 / 2 + m',
      compute: ({ mass, speed }) => (mass * speed * speed) / 2 + mass,
    })
    expect(() => checkPrintedUnits(sum)).toThrow(/Units do not match/)
    expect(() => checkRescaled(sum)).toThrow(/in other base units/)
  })
  it('a unit factor hidden in the arithmetic', () => {
    const inMilesPerHour = kineticEnergy({
      expression: 'm * (v / 0.44704)^2 / 2',
      compute: ({ mass, speed }) => (mass * (speed / 0.44704) ** 2) / 2,
    })
    checkPrintedIsComputed(inMilesPerHour)
    // A bare number carries no unit, so only a published value can find this one: the handbook checks do.
    checkPrintedUnits(inMilesPerHour)
  })
  it('a dimensional number added without its unit', () => {
    const offset = kineticEnergy({
      expression: 'm * (v + 1)^2 / 2',
      compute: ({ mass, speed }) => (mass * (speed + 1) ** 2) / 2,
    })
    expect(() => checkPrintedUnits(offset)).toThrow()
    expect(() => checkRescaled(offset)).toThrow(/in other base units/)
  })
  it('a symbol that is not declared, even where mathjs knows a constant or a unit of that name', () => {
    expect(() => checkPrintedIsComputed(kineticEnergy({ expression: 'm * v^2 / 2 * c / c' }))).toThrow(
      /c is not declared/,
    )
    expect(() => checkPrintedIsComputed(kineticEnergy({ expression: 'm * v^2 / 2 * e' }))).toThrow(/e is not declared/)
  })
  it('an input that is not printed', () => {
    expect(() => checkPrintedIsComputed(kineticEnergy({ expression: 'm / 2' }))).toThrow(/v is not in the expression/)
  })
  it('a range of validity without the kind that it bounds', () => {
    const slow = (kind?: 'speed') => kineticEnergy({ range: { of: 'speed', ...(kind === undefined ? {} : { kind }) } })
    checkRangesRescaled(slow('speed'))
    expect(() => checkRangesRescaled(slow())).toThrow(/speed is .* in other base units/)
  })
  it('a constant that the arithmetic writes out by hand', () => {
    const fall = (compute: (si: { height: number }, constants: { g0: number }) => number): AnyFormula =>
      formula({
        name: 'fallSpeed',
        title: 'Speed after a fall',
        inputs: { height: input('length', 'h', 'Height', { min: 0 }) },
        result: output('speed', 'v', 'Speed'),
        constants: { g0: constant('acceleration', '9.80665 m/s²', 'Standard gravity', cite('ISO 80000-3')) },
        expression: 'sqrt(2 * g0 * h)',
        source: cite('any textbook of mechanics'),
        compute,
      })
    checkRescaled(fall(({ height }, { g0 }) => Math.sqrt(2 * g0 * height)))
    const byHand = fall(({ height }) => Math.sqrt(2 * 9.80665 * height))
    checkPrintedIsComputed(byHand)
    expect(() => checkRescaled(byHand)).toThrow(/in other base units/)
  })
})
