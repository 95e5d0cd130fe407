/** Solving: roots that are published, inverses, and the errors where there is no root or several. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { catalogue } from '../../src/catalogue.js'
import { rollingResistance } from '../../src/drivetrain/index.js'
import { cableVoltageDrop, powerAtFloor } from '../../src/electrical/index.js'
import { type AnyFormula, cite, formula, input, output, solve } from '../../src/formula/index.js'
import { rootsOver, scanPoints } from '../../src/formula/root.js'
import { InputError, type Kind, kinds, type Quantity, quantity, SolveError } from '../../src/quantity/index.js'
import { fromSi } from '../../src/quantity/quantity.js'
import { warmUpTime } from '../../src/thermal/index.js'
import { holds, inputsFor, isResult } from '../engine/draw.js'
import { runs } from '../runs.js'

const roots = (f: (x: number) => number, low: number, high: number, count = 200) => {
  const found = rootsOver(f, scanPoints(low, high, count))
  return found === 'everywhere' ? found : found.map(({ root }) => root)
}

describe('roots of one variable', () => {
  // Textbook roots, computed to 16 digits with brentq of SciPy; x³ - 2x - 5 is Wallis's equation of 1685.
  it.each([
    ['cos x = x', (x: number) => Math.cos(x) - x, 0, 1, 0.739085133215161],
    ['x³ - 2x - 5', (x: number) => x ** 3 - 2 * x - 5, 2, 3, 2.094551481542327],
    ['x·eˣ = 1', (x: number) => x * Math.exp(x) - 1, 0, 1, 0.567143290409784],
    ['eˣ = 3x²', (x: number) => Math.exp(x) - 3 * x * x, 3, 4, 3.733079028632814],
  ])('%s', (_, f, low, high, expected) => {
    const [root, ...others] = roots(f, low, high) as number[]
    expect(others).toEqual([])
    expect(Math.abs((root as number) / expected - 1)).toBeLessThan(1e-12)
  })
  it('finds a root in the very middle of an interval once', () => {
    for (let middle = 1; middle < 3; middle += 0.01) {
      const found = roots((x) => x - middle, 0.9 * middle, 1.1 * middle, 2000)
      expect(found).toHaveLength(1)
    }
  })
  it('finds a root at an end where rounding makes a zero of its neighbours too', () => {
    const diameter = (n: number) => 92 ** ((36 - n) / 39) - 92 ** (39 / 39)
    expect(roots(diameter, -3, -2.9, 2000)).toHaveLength(1)
    expect((roots(diameter, -3, -2.9, 2000) as number[])[0]).toBeCloseTo(-3, 9)
  })
  it('finds a root at an end, and each of several once', () => {
    expect(roots((x) => x, 0, 5)).toEqual([0])
    expect(roots((x) => x - 5, 0, 5)).toEqual([5])
    const three = roots((x) => (x - 1) * (x - 2) * (x - 3), 0, 5) as number[]
    expect(three.map((x) => Number(x.toFixed(9)))).toEqual([1, 2, 3])
  })
  it('finds a root that touches without crossing, and two that lie between two points of the scan', () => {
    const [touch, ...none] = roots((x) => (x - Math.SQRT2) ** 2, 0, 5) as number[]
    expect(none).toEqual([])
    expect(touch).toBeCloseTo(Math.SQRT2, 9)
    const close = roots((x) => (x - 2.0001) * (x - 2.0002), 0, 5, 20) as number[]
    expect(close.map((x) => Number(x.toFixed(6)))).toEqual([2.0001, 2.0002])
  })
  it('does not take a pole or a jump for a root', () => {
    expect(roots((x) => 1 / (x - 2), 0, 5)).toEqual([])
    expect(roots((x) => Math.tan(x), 1, 2)).toEqual([])
    expect(roots((x) => (x < 2 ? -1 : 1), 0, 5)).toEqual([])
  })
  it('finds the root of a function that cancelling makes rough, and none at a small jump', () => {
    // (1e7 + x) - 1e7 comes in steps of 2e-9; the noise is that of solve, 1e-13 of the 0.3 that is wanted.
    const within = (f: (x: number) => number) => rootsOver(f, scanPoints(0.299, 0.301, 200), 3e-14)
    const rough = within((x) => 1e7 + x - 1e7 - 0.3) as { root: number }[]
    expect(rough).toHaveLength(1)
    expect(Math.abs((rough[0]?.root ?? Number.NaN) - 0.3)).toBeLessThan(4e-9)
    expect(within((x) => x - 0.3 + (x < 0.3 ? -1e-7 : 1e-7))).toEqual([])
  })
  it('knows a root at zero from a function that hardly moves', () => {
    // All that it ever changes is 1e-8 of the value that cancels.
    const flat = (x: number) => 1 + (1e-8 * x) / (1 + x) - 1
    expect(rootsOver(flat, scanPoints(0, Infinity, 2000), 1e-13)).toMatchObject([{ root: 0 }])
    expect(rootsOver((x) => Math.max(0, x - 1) * 1e-8, scanPoints(0, 5, 2000), 1e-13)).toBe('everywhere')
  })
  it('ends where nothing changes sign, and says when all is zero', () => {
    expect(roots(() => 1, 0, 5)).toEqual([])
    expect(roots(() => Number.NaN, 0, 5)).toEqual([])
    expect(roots(() => 0, 0, 5)).toBe('everywhere')
  })
  it('looks over many magnitudes where an end is missing', () => {
    for (const root of [1e-9, 3.7, 1e9]) {
      const [found] = roots((x) => x * x - root * root, 0, Number.POSITIVE_INFINITY, 2000) as number[]
      expect(Math.abs((found as number) / root - 1)).toBeLessThan(1e-12)
    }
    expect(roots((x) => x + 5, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, 2000)).toEqual([-5])
  })
})

const given = { current: '300 A', resistancePerLength: '0.386 mΩ/m' } as const

/** Power out of a source with inner resistance: the same power at two currents, the most at one. */
const sourcePower = formula({
  name: 'sourcePower',
  title: 'Power out of a source',
  inputs: {
    current: input('current', 'I', 'Current', { min: 0 }),
    voltage: input('voltage', 'U', 'Voltage'),
    resistance: input('resistance', 'R', 'Resistance', { above: 0 }),
  },
  result: output('power', 'P', 'Power'),
  expression: 'U * I - R * I^2',
  source: cite('Ohm'),
  compute: ({ current, voltage, resistance }) => voltage * current - resistance * current ** 2,
})
const source = { voltage: '100 V', resistance: '1 Ω' } as const

describe('solving a formula', () => {
  it('finds an input from the result', () => {
    // 1 V / (2 · 300 A · 0.386 mΩ/m) = 4.317789…
    expect(solve(cableVoltageDrop, 'length', { ...given, result: '1 V' }).si).toBeCloseTo(1 / (2 * 300 * 0.386e-3), 12)
  })
  it.each(Object.values(catalogue).map((each) => [each.name, each] as const))(
    'gives back every input of %s, or says that there are several',
    (_, each: AnyFormula) => {
      for (const [key, { kind }] of Object.entries(each.inputs)) {
        fc.assert(
          fc.property(inputsFor(each), (si) => {
            const result = each.compute(si)
            // The slope in double logarithms: where it vanishes, the result does not tell the input.
            const { [key]: value, ...rest } = si as { [key: string]: number }
            const steeper = each.compute({ ...si, [key]: (value as number) * (1 + 1e-6) })
            // Where a millionth of the input changes all of the result, what was left of it after cancelling is rounding.
            if (Math.abs(steeper / result - 1) > 1) return
            // Many a formula is flat over most of its range: a charged capacitor no longer tells the time.
            if (!(Math.abs(steeper / result - 1) > 1e-8) || value === 0 || Math.abs(result) < 1e-200) return
            // Where a limit sets in, the result is flat on its other side.
            const gentler = each.compute({ ...si, [key]: (value as number) * (1 - 1e-6) })
            if (!(Math.abs(gentler / result - 1) > 1e-8)) return
            const others = Object.entries(rest).map(([name, number]) => [name, asQuantity(each, name, number)])
            const wanted = { ...Object.fromEntries(others), result: fromSi(each.result.kind, result, each.result.unit) }
            // Close by, so that a range of validity no wider than a thousandth of the value is not stepped over.
            const around = [0.999, 1.001]
              .map((share) => inBounds(each, key, (value as number) * share))
              .sort((a, b) => a - b)
            if (around[0] === around[1]) return
            const between = around.map((end) => fromSi(kind, end, firstUnit(kind)))
            try {
              const found = solve(each as never, key as never, { ...wanted, between } as never) as { si: number }
              const back = each.compute({ ...si, [key]: found.si })
              expect(Math.abs(back - result)).toBeLessThanOrEqual(1e-9 * Math.abs(result))
            } catch (error) {
              if (!(error instanceof SolveError && error.brackets.length > 1)) throw error
            }
          }),
          { numRuns: runs(3, 25) },
        )
      }
    },
  )
  it('says the interval and the reach of the result when there is no root', () => {
    expect(() => solve(sourcePower, 'current', { ...source, result: '5 kW', between: ['0 A', '100 A'] })).toThrow(
      'solve(sourcePower): no current from 0 A to 100 A gives a power of 5 kW: the result there runs from 0 kW to 2.5 kW',
    )
  })
  it('says the brackets when there are several, and takes one of them', () => {
    const wanted = { ...source, result: '1.6 kW' } as const
    try {
      solve(sourcePower, 'current', wanted)
      throw new Error('two roots were not seen')
    } catch (error) {
      expect(error).toBeInstanceOf(SolveError)
      const { brackets, code, unknown } = error as SolveError
      expect({ code, unknown, count: brackets.length }).toEqual({
        code: 'ERR_KERBWATT_SOLVE',
        unknown: 'current',
        count: 2,
      })
      // 100 I - I² = 1600 has the roots 20 and 80.
      const found = brackets.map(
        (between) => solve(sourcePower, 'current', { ...wanted, between: between as never }).si,
      )
      expect(found[0]).toBeCloseTo(20, 9)
      expect(found[1]).toBeCloseTo(80, 9)
    }
  })
  it('finds the one current that gives the most power', () => {
    expect(solve(sourcePower, 'current', { ...source, result: '2.5 kW' }).in('A')).toBeCloseTo(50, 8)
  })
  it.each(Object.values(catalogue).map((each) => [each.name, each] as const))(
    'finds zero for every input of %s that may be zero, over its whole range',
    (_, each: AnyFormula) => {
      for (const [key, { kind, limits }] of Object.entries(each.inputs)) {
        const mayBeZero =
          kind !== 'temperature' && (limits.min ?? -1) <= 0 && limits.above === undefined && (limits.max ?? 1) >= 0
        if (!mayBeZero) continue
        fc.assert(
          fc.property(inputsFor(each), (drawn) => {
            const si = { ...drawn, [key]: 0 }
            const result = each.compute(si)
            const near = each.compute({ ...si, [key]: 1e-3 })
            // Not where zero is out of range, gives nothing, or is not to be told from its surroundings.
            if (!holds(each, si) || !isResult(each, result) || !holds(each, { ...si, [key]: 1e-3 })) return
            if (!(Math.abs(near - result) > 1e-9 * Math.abs(result))) return
            const others = Object.entries(si).filter(([name]) => name !== key)
            const given = Object.fromEntries(
              others.map(([name, number]) => [name, asQuantity(each, name, number as number)]),
            )
            const wanted = { ...given, result: fromSi(each.result.kind, result, each.result.unit) }
            try {
              const found = solve(each as never, key as never, wanted as never) as Quantity
              expect(Math.abs(each.compute({ ...si, [key]: found.si }) - result)).toBeLessThanOrEqual(
                1e-9 * Math.abs(result),
              )
            } catch (error) {
              if (!(error instanceof SolveError && error.brackets.length > 1)) throw error
            }
          }),
          { numRuns: runs(2, 15) },
        )
      }
    },
  )
  it('finds a grade of zero, and the conductance of a warm-up', () => {
    const rolling = { mass: '805 kg', coefficient: 0.013 } as const
    const level = rollingResistance({ ...rolling, grade: 0 })
    expect(solve(rollingResistance, 'grade', { ...rolling, result: level }).si).toBe(0)
    const warming = {
      heatCapacity: '92 kJ/K',
      power: '600 W',
      from: '-7 °C',
      to: '10 °C',
      surroundings: '-7 °C',
    } as const
    const time = warmUpTime({ ...warming, conductance: '5 W/K' })
    expect(solve(warmUpTime, 'conductance', { ...warming, result: time }).in('W/K')).toBeCloseTo(5, 9)
  })
  it('says when the result does not depend on the input', () => {
    expect(() => solve(cableVoltageDrop, 'length', { ...given, current: '0 A', result: '0 V' })).toThrow(
      /does not depend on it/,
    )
  })
  it.each([
    ['an unknown that is no input', 'lenght', {}, /did you mean length\?/],
    ['a missing input', 'length', { current: undefined }, /current: expected a current/],
    ['the unknown given too', 'length', { length: '3 m' }, /length: expected nothing, as it is what is to be found/],
    ['a result of another kind', 'length', { result: '1 A' }, /result: expected a voltage/],
    ['an interval upside down', 'length', { between: ['3 m', '1 m'] }, /lower end first/],
    ['an interval of three', 'length', { between: ['1 m', '2 m', '3 m'] }, /between: expected a list of two ends/],
    [
      'an interval out of bounds',
      'length',
      { between: ['-5 m', '-1 m'] },
      /within the bounds of the input, at least 0 m/,
    ],
    ['an unknown from the prototype', 'toString', {}, /unknown: expected an input: current/],
    [
      'several faults, all at once',
      'length',
      { current: '3 V', result: '1 A', between: '4 m' },
      /3 inputs cannot be used/,
    ],
    ['an interval of another kind', 'length', { between: ['3 V', '4 V'] }, /between\[0\]: expected a length/],
    ['an input out of bounds', 'length', { current: '-3 A' }, /at least 0 A/],
  ])('refuses %s', (_, unknown, wrong, message) => {
    const all = { ...given, result: '1 V', ...wrong }
    expect(() => solve(cableVoltageDrop, unknown as never, all as never)).toThrow(message)
    expect(() => solve(cableVoltageDrop, unknown as never, all as never)).toThrow(InputError)
  })
})

describe('solving another function', () => {
  it('finds the quantity between two ends', () => {
    const found = solve((length) => cableVoltageDrop({ ...given, length }), { result: '1 V', between: ['1 m', '20 m'] })
    expect(found.kind).toBe('length')
    expect(found.si).toBeCloseTo(1 / (2 * 300 * 0.386e-3), 9)
  })
  it('steps over what lies outside its domain', () => {
    const given = { openCircuit: '177.6 V', resistance: '28 mΩ' } as const
    const result = powerAtFloor({ ...given, floor: '150 V' })
    const found = solve((floor) => powerAtFloor({ ...given, floor }), { result, between: ['100 V', '200 V'] })
    expect(found.in('V')).toBeCloseTo(150, 9)
    expect(() => solve((floor) => powerAtFloor({ ...given, floor }), { result, between: ['200 V', '300 V'] })).toThrow(
      InputError,
    )
  })
  it('tells what it was given instead of a function or its ends', () => {
    expect(() => solve('x' as never, {} as never)).toThrow(/work: expected a formula or another function/)
    expect(() => solve((() => 5) as never, { result: '1 V', between: ['1 m', '2 m'] } as never)).toThrow(
      /a function that returns a quantity/,
    )
    expect(() => solve((() => 5) as never, { result: '1 V', betwen: ['1 m', '2 m'] } as never)).toThrow(
      /did you mean between\?/,
    )
  })
  it('needs the ends, in a unit that tells the kind', () => {
    const work = (length: never) => cableVoltageDrop({ ...given, length })
    expect(() => solve(work, { result: '1 V' } as never)).toThrow(/between: expected the interval to search/)
    expect(() => solve(work, { result: '1 V', between: ['1 °C', '2 °C'] } as never)).toThrow(
      /quantity\('temperature', '1 °C'\) or quantity\('temperatureDifference', '1 °C'\)/,
    )
    const between = [quantity('length', '1 m'), quantity('length', '20 m')] as const
    expect(solve((length) => cableVoltageDrop({ ...given, length }), { result: '1 V', between }).in('m')).toBeCloseTo(
      4.3178,
      4,
    )
  })
})

function firstUnit(kind: Kind): string {
  return Object.keys(kinds[kind].units)[0] as string
}

function asQuantity(each: AnyFormula, key: string, si: number): Quantity {
  const { kind } = each.inputs[key] as { kind: Kind }
  return fromSi(kind, si, firstUnit(kind))
}

/** A number moved to the nearest end of an input's bounds where it lies beyond. */
function inBounds(each: AnyFormula, key: string, si: number): number {
  const { min, above, max, below } = each.inputs[key]?.limits ?? {}
  return Math.min(Math.max(si, min ?? above ?? -Infinity), max ?? below ?? Infinity)
}
