/** The working: what is written down, and how it reads. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cableVoltageDrop } from '../../src/electrical/index.js'
import { expressionText, parseExpression, valueOf } from '../../src/formula/expression.js'
import {
  cite,
  explain,
  type FormulaStep,
  formula,
  icePoint,
  input,
  output,
  section,
  solve,
} from '../../src/formula/index.js'
import { InputError } from '../../src/quantity/index.js'
import { math } from '../mathjs.js'
import { runs } from '../runs.js'

const drop = { current: '300 A', resistancePerLength: '0.386 mΩ/m', length: '3 m' } as const

const force = formula({
  name: 'force',
  title: 'Force on a slope',
  inputs: {
    mass: input('mass', 'm', 'Mass', { min: 0 }),
    slope: input('angle', 'theta', 'Slope'),
    share: input('ratio', 'k', 'Share', { default: 1 }),
  },
  result: output('force', 'F', 'Force'),
  constants: {},
  expression: 'k * m * sin(theta)^2 / (2 * m)',
  source: cite('a book'),
  compute: ({ mass, slope, share }) => (share * mass * Math.sin(slope) ** 2) / (2 * mass),
})

const ramp = formula({
  name: 'ramp',
  title: 'Share of power by temperature',
  inputs: { temperature: input('temperature', 'T', 'Temperature') },
  result: output('temperatureDifference', 'dT', 'Above freezing'),
  constants: { T0: icePoint },
  expression: 'T > T0 ? T - T0 : T0 - T',
  source: cite('a book', 'p. 7'),
  compute: ({ temperature }, { T0 }) => Math.abs(temperature - T0),
})

describe('a working', () => {
  it('reads like a line in a notebook', () => {
    expect(explain(() => cableVoltageDrop(drop)).toText()).toBe(
      'dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 3 m = 0.695 V   [IEC 60364-5-52, Annex G]',
    )
    expect(explain(() => cableVoltageDrop(drop)).toMarkdown()).toBe(
      '- Voltage drop of a two-wire cable run: dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 3 m = **0.695 V** *(IEC 60364-5-52, Annex G)*',
    )
  })
  it('gives the result, and the steps with what was read', () => {
    const working = explain(() => cableVoltageDrop(drop).in('mV'))
    expect(working.result).toBeCloseTo(694.8, 9)
    const [step] = working.steps
    expect(step).toMatchObject({ formula: cableVoltageDrop, defaults: [] })
    expect(String((step as FormulaStep).inputs.current)).toBe('300 A')
  })
  it('says which values are defaults', () => {
    const text = explain(() => force({ mass: '2 kg', slope: '30 °' })).toText()
    expect(text).toBe(
      'F = k · m · sin(theta)² / (2 · m) = 1 · 2 kg · sin(30 °)² / (2 · 2 kg) = 0.125 N   [a book; k = 1 by default]',
    )
  })
  it('shows the branch that applies, with temperatures in kelvins', () => {
    expect(explain(() => ramp({ temperature: '20 °C' })).toText()).toBe(
      'dT = T − T0 = 293.15 K − 273.15 K = 20 K   [a book, p. 7]',
    )
    expect(explain(() => ramp({ temperature: '-20 °C' })).toText()).toBe(
      'dT = T0 − T = 273.15 K − 253.15 K = 20 K   [a book, p. 7]',
    )
  })
  it('groups steps under headings that may tell the result', () => {
    const working = explain(() =>
      section(
        (result) => `3 m run: ${result}`,
        () => {
          cableVoltageDrop(drop)
          return section('twice as long', () => cableVoltageDrop({ ...drop, length: '6 m' }))
        },
      ),
    )
    expect(String(working.result)).toBe('1.39 V')
    expect(working.toText()).toBe(
      [
        '3 m run: 1.39 V',
        '  Voltage drop of a two-wire cable run',
        '    dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 3 m = 0.695 V   [IEC 60364-5-52, Annex G]',
        '  twice as long',
        '    Voltage drop of a two-wire cable run',
        '      dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 6 m = 1.39 V   [IEC 60364-5-52, Annex G]',
      ].join('\n'),
    )
    expect(working.toMarkdown().split('\n')[0]).toBe('- **3 m run: 1.39 V**')
  })
  it('breaks a long line at its equals signs', () => {
    const long = { current: '312.5 A', resistancePerLength: '0.0003863 Ω/m', length: '3.017 m' } as const
    const wide = formula({
      ...cableVoltageDrop,
      name: 'wide',
      expression: 'I * r * l + I * r * l + I * r * l - I * r * l',
      compute: cableVoltageDrop.compute,
    })
    expect(
      explain(() => wide(long))
        .toText()
        .split('\n'),
    ).toHaveLength(3)
  })
  it('shows a value that was worked out the same way where it is used', () => {
    const working = explain(() => {
      const lost = cableVoltageDrop(drop)
      return remaining({ voltage: '12 V', drop: lost })
    })
    expect(working.toText()).toContain('U − dU = 12 V − 0.695 V = 11.3 V')
  })
  it('does not record when nobody asks, nor what a failed explanation left', () => {
    expect(() =>
      explain(() => {
        throw new RangeError('no')
      }),
    ).toThrow(RangeError)
    cableVoltageDrop(drop)
    expect(explain(() => 1).steps).toEqual([])
  })
  it('keeps two minus signs apart', () => {
    const charging = explain(() => remaining({ voltage: '12 V', drop: '-5 V' }))
    expect(charging.toText()).toContain('U − dU = 12 V − (−5 V) = 17 V')
  })
  it('keeps what led to a refusal, under its heading', () => {
    const working = explain(() => {
      try {
        section('16 mm²: refused', () => {
          cableVoltageDrop(drop)
          throw new RangeError('too hot')
        })
      } catch {
        return 'next'
      }
      return 'done'
    })
    expect(working.result).toBe('next')
    expect(working.toText().split('\n')[0]).toBe('16 mm²: refused')
    expect(working.toText()).toContain('0.695 V')
  })
  it('holds a hundred thousand steps', () => {
    const many = explain(
      () =>
        explain(() => {
          for (let i = 0; i < 100_000; i++) cableVoltageDrop(drop)
        }).steps.length,
    )
    expect(many.steps).toHaveLength(100_000)
  })
  it('shows the formula of a solution once, with the value found', () => {
    const given = { result: '1 V', current: '300 A', resistancePerLength: '0.386 mΩ/m' } as const
    const working = explain(() => solve(cableVoltageDrop, 'length', given))
    expect(working.toText()).toBe(
      'dU = 2 · I · r · l = 2 · 300 A · 0.386 mΩ/m · 4.318 m = 1 V   [IEC 60364-5-52, Annex G]',
    )
  })
  it('of a working inside a working is part of both', () => {
    const outer = explain(() => explain(() => cableVoltageDrop(drop)).steps.length)
    expect(outer.result).toBe(1)
    expect(outer.steps).toHaveLength(1)
  })
  it('refuses work that is not done when it returns', () => {
    expect(() => explain(async () => cableVoltageDrop(drop))).toThrow(InputError)
  })
})

const remaining = formula({
  name: 'remaining',
  title: 'Voltage left',
  inputs: { voltage: input('voltage', 'U', 'Voltage'), drop: input('voltage', 'dU', 'Drop') },
  result: output('voltage', 'Ue', 'Voltage at the end'),
  expression: 'U - dU',
  source: cite('Kirchhoff'),
  compute: ({ voltage, drop: lost }) => voltage - lost,
})

/** mathjs goes on with complex numbers where real ones end, and does not order them: what is not real does not count. */
function realOf(work: () => unknown): number {
  try {
    const value = work()
    return typeof value === 'number' ? value : Number.NaN
  } catch {
    return Number.NaN
  }
}

describe('an expression', () => {
  it.each([
    ['2 * I * r * l', '2 · I · r · l'],
    ['sqrt(a / b) - -c', '√(a / b) − −c'],
    ['sqrt(a)^2', '√a²'],
    ['(a + b)^2 / c^3', '(a + b)² / c³'],
    ['a^(1/4) + a^-2', 'a^(1 / 4) + a^(−2)'],
    ['log(x) + abs(y) + max(a, b)', 'ln(x) + |y| + max(a, b)'],
    ['x <= 1 and y > 2 or z == 3 ? 64 / x : pi', '64 / x if x ≤ 1 and y > 2 or z = 3, else π'],
  ])('%s is shown as %s', (text, shown) => {
    expect(expressionText(parseExpression(text))).toBe(shown)
  })
  it.each(['2 *', '(a', 'a b', 'sqrt()', 'a ? b', '2 + + 3', 'a $ b', ''])('%j cannot be read', (text) => {
    expect(() => parseExpression(text)).toThrow(SyntaxError)
  })
  it('has brackets where a value with a unit would be misread', () => {
    const values: { [name: string]: string } = { a: '3 kg', b: '5 J/(kg·K)', c: '−2 m' }
    const shown = (text: string) => expressionText(parseExpression(text), (name) => values[name] ?? name)
    expect(shown('a^2')).toBe('(3 kg)²')
    expect(shown('a / b')).toBe('3 kg / (5 J/(kg·K))')
    expect(shown('a * b')).toBe('3 kg · 5 J/(kg·K)')
    expect(shown('a - c')).toBe('3 kg − (−2 m)')
    expect(shown('-c')).toBe('−(−2 m)')
  })
  it('has the value that mathjs gives it', () => {
    const names = ['x', 'y', 'z']
    const { expression } = fc.letrec<{ expression: string }>((tie) => ({
      expression: fc.oneof(
        { depthSize: 'small', withCrossShrink: true },
        fc.constantFrom(...names, 'pi', '2', '0.5', '1e-3'),
        fc
          .tuple(tie('expression'), fc.constantFrom('+', '-', '*', '/', '^'), tie('expression'))
          .map(([a, o, b]) => `${a} ${o} ${b}`),
        tie('expression').map((inner) => `(${inner})`),
        tie('expression').map((inner) => `-${inner}`),
        fc
          .tuple(fc.constantFrom('sqrt', 'exp', 'log', 'sin', 'tanh', 'abs', 'atan', 'cbrt'), tie('expression'))
          .map(([f, x]) => `${f}(${x})`),
        fc
          .tuple(tie('expression'), fc.constantFrom('<', '>', '<=', '>='), tie('expression'), tie('expression'))
          .map(([a, o, b, c]) => `(${a} ${o} ${b} ? ${c} : ${a})`),
      ),
    }))
    const value = fc.double({ min: 0.1, max: 3, noNaN: true })
    fc.assert(
      fc.property(expression, fc.record({ x: value, y: value, z: value }), (text, scope) => {
        const ours = valueOf(parseExpression(text), scope)
        const theirs = realOf(() => math.evaluate(text, { ...scope }))
        fc.pre(Number.isFinite(theirs) && Number.isFinite(ours))
        expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(1e-9 * Math.abs(theirs) + 1e-300)
      }),
      { numRuns: runs(500) },
    )
  })
})
