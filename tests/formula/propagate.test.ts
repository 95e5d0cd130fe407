/** Uncertainty: the worked examples of the guides to it, and what must hold of any propagation. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cableVoltageDrop } from '../../src/electrical/index.js'
import { cite, formula, input, output, propagate } from '../../src/formula/index.js'
import { uniform } from '../../src/formula/random.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../src/quantity/index.js'

/** JCGM 100:2008, H.1: length of an end gauge against a standard. Dimensions in SI, differences as the guide has them. */
const endGauge = formula({
  name: 'endGauge',
  title: 'Length of an end gauge',
  inputs: {
    standard: input('length', 'ls', 'Length of the standard'),
    difference: input('length', 'd', 'Measured difference'),
    expansion: input('temperatureCoefficient', 'as', 'Thermal expansion of the standard'),
    deviation: input('temperatureDifference', 'theta', 'Deviation of the temperature from 20 °C'),
    expansionDifference: input('temperatureCoefficient', 'da', 'Difference of thermal expansion'),
    temperatureDifference: input('temperatureDifference', 'dt', 'Difference of temperature'),
  },
  result: output('length', 'l', 'Length', 'mm'),
  expression: 'ls + d - ls * (da * theta + as * dt)',
  source: cite('JCGM 100:2008', 'H.1'),
  compute: ({ standard, difference, expansion, deviation, expansionDifference, temperatureDifference }) =>
    standard + difference - standard * (expansionDifference * deviation + expansion * temperatureDifference),
})

describe('JCGM 100:2008, H.1, the end gauge', () => {
  const result = propagate(endGauge, {
    standard: ['50.000623 mm', '0.000025 mm'],
    difference: ['0.000215 mm', '0.0000097 mm'],
    expansion: ['11.5e-6 1/K', '1.2e-6 1/K'],
    deviation: ['-0.1 K', '0.41 K'],
    // The guide prints 0.58e-6 and 0.029, and goes on with the rectangles that they come from.
    expansionDifference: ['0 1/K', quantity('temperatureCoefficient', 1e-6 / Math.sqrt(3), '1/K')],
    temperatureDifference: ['0 K', quantity('temperatureDifference', 0.05 / Math.sqrt(3), 'K')],
  })
  const nanometres = (si: number) => si * 1e9
  it('has the length and the combined uncertainty that the guide gives', () => {
    expect(nanometres(result.value.si)).toBeCloseTo(50000838, 0)
    expect(nanometres(result.standardUncertainty.si)).toBeCloseTo(31.67, 1)
    expect(nanometres(result.expanded.si)).toBeCloseTo(2 * 31.67, 1)
  })
  it('has the contributions of its table H.1, the largest first', () => {
    const table = [
      ['standard', 25],
      ['temperatureDifference', 16.6],
      ['difference', 9.7],
      ['expansionDifference', 2.9],
    ] as const
    for (const [i, [name, nm]] of table.entries()) {
      expect(result.contributions[i]?.input).toBe(name)
      expect(nanometres(result.contributions[i]?.uncertainty.si as number)).toBeCloseTo(nm, 1)
    }
    expect(result.contributions.slice(4).map((each) => each.uncertainty.si)).toEqual([0, 0])
  })
})

describe('JCGM 100:2008, H.1, with expanded uncertainties in text', () => {
  const result = propagate(endGauge, {
    // Twice the standard uncertainties of table H.1; those of the two rectangles, half-widths 1e-6 1/K and 0.05 K.
    standard: '50.000623 mm ± 50e-6 mm',
    difference: '215e-6 mm ± 19.4e-6 mm',
    expansion: '11.5e-6 1/K ± 2.4e-6 1/K',
    deviation: '-0.1 K ± 0.82 K',
    expansionDifference: '0 1/K ± 1.1547005e-6 1/K',
    temperatureDifference: '0 K ± 0.057735027 K',
  })
  it('has the combined uncertainty that the guide gives', () => {
    expect(result.value.si * 1e9).toBeCloseTo(50000838, 0)
    expect(result.standardUncertainty.si * 1e9).toBeCloseTo(31.67, 1)
    expect(result.contributions.slice(0, 4).map((each) => Math.round(each.uncertainty.si * 1e10) / 10)).toEqual([
      25, 16.6, 9.7, 2.9,
    ])
  })
})

describe('JCGM 100:2008, H.2, resistance and reactance with correlated inputs (from memory)', () => {
  const inputs = {
    voltage: ['4.9990 V', '0.0032 V'],
    current: ['19.6610 mA', '0.0095 mA'],
    phase: [quantity('angle', 1.04446, 'rad'), quantity('angle', 0.00075, 'rad')],
  } as const
  const correlations = [
    ['voltage', 'current', -0.36],
    ['voltage', 'phase', 0.86],
    ['current', 'phase', -0.65],
  ] as const
  const impedance = (name: string, expression: string, part: (phase: number) => number) =>
    formula({
      name,
      title: name,
      inputs: {
        voltage: input('voltage', 'U', 'Voltage'),
        current: input('current', 'I', 'Current', { above: 0 }),
        phase: input('angle', 'phi', 'Phase'),
      },
      result: output('resistance', 'Z', 'Part of the impedance', 'Ω'),
      expression,
      source: cite('JCGM 100:2008', 'H.2'),
      compute: ({ voltage, current, phase }) => (voltage / current) * part(phase),
    })
  it.each([
    ['resistance', impedance('resistance', 'U / I * cos(phi)', Math.cos), 127.732, 0.071],
    ['reactance', impedance('reactance', 'U / I * sin(phi)', Math.sin), 219.847, 0.295],
    ['impedance', impedance('impedance', 'U / I', () => 1), 254.26, 0.236],
  ])('%s', (_, each, value, uncertainty) => {
    const result = propagate(each, inputs, { correlations })
    expect(result.value.in('Ω')).toBeCloseTo(value, 2)
    // The guide prints three digits, worked out with correlations of more digits than the two that it prints.
    expect(Math.abs(result.standardUncertainty.in('Ω') - uncertainty)).toBeLessThan(0.0015)
    expect(result.contributions.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  })
})

describe('EURACHEM/CITAC Guide CG 4, example A1, a standard solution', () => {
  it('has the concentration, its uncertainty and its parts', () => {
    const standard = formula({
      name: 'standardSolution',
      title: 'Concentration of a standard solution',
      inputs: {
        mass: input('mass', 'm', 'Mass'),
        purity: input('ratio', 'P', 'Purity'),
        volume: input('volume', 'V', 'Volume', { above: 0 }),
      },
      result: output('density', 'c', 'Concentration'),
      expression: 'm * P / V',
      source: cite('EURACHEM/CITAC Guide CG 4', 'A1'),
      compute: ({ mass, purity, volume }) => (mass * purity) / volume,
    })
    // Half-widths become standard uncertainties by √3 for a rectangle and √6 for a triangle.
    const volume = Math.hypot(0.1 / Math.sqrt(6), 0.02, 0.084 / Math.sqrt(3))
    const result = propagate(standard, {
      mass: ['100.28 g', '0.05 g'],
      purity: [0.9999, 0.0001 / Math.sqrt(3)],
      volume: ['100 mL', quantity('volume', volume, 'mL')],
    })
    // 100.28 mg in 100 mL is 1002.7 mg/L; a gram in 100 mL reads as 1002.7 kg/m³.
    expect(result.value.si).toBeCloseTo(1002.7, 1)
    expect(result.standardUncertainty.si).toBeCloseTo(0.8352, 3)
    const parts = Object.fromEntries(result.contributions.map((each) => [each.input, each.uncertainty.si]))
    expect(parts.mass).toBeCloseTo(0.49995, 4)
    expect(parts.volume).toBeCloseTo(0.66653, 3)
    expect(parts.purity).toBeCloseTo(0.0579, 4)
  })
})

const sum = formula({
  name: 'sum',
  title: 'Sum of four lengths',
  inputs: {
    a: input('length', 'a', 'First'),
    b: input('length', 'b', 'Second'),
    c: input('length', 'c', 'Third'),
    d: input('length', 'd', 'Fourth'),
  },
  result: output('length', 's', 'Sum'),
  expression: 'a + b + c + d',
  source: cite('JCGM 101:2008', '9.2'),
  compute: ({ a, b, c, d }) => a + b + c + d,
})

describe('JCGM 101:2008, 9.2, the sum of four normal quantities', () => {
  const one = ['0 m', '1 m'] as const
  const monteCarlo = { method: 'monte-carlo', trials: 200_000, seed: 7 } as const
  it('has a standard uncertainty of 2 and an interval of ±3.92', () => {
    const result = propagate(sum, { a: one, b: one, c: one, d: one }, monteCarlo)
    expect(result.value.si).toBeCloseTo(0, 1)
    expect(result.standardUncertainty.si).toBeCloseTo(2, 1)
    expect(Math.abs(result.interval[0].si + 3.92)).toBeLessThan(0.04)
    expect(Math.abs(result.interval[1].si - 3.92)).toBeLessThan(0.04)
  })
  it('is the same again with the same seed, and another with another', () => {
    const draw = (seed: number) =>
      propagate(sum, { a: one, b: one, c: one, d: one }, { ...monteCarlo, trials: 1000, seed })
    expect(draw(7)).toEqual(draw(7))
    expect(draw(7).value.si).not.toBe(draw(8).value.si)
  })
  it('knows correlation', () => {
    const wholly = { ...monteCarlo, correlations: [['a', 'b', 1]] } as const
    expect(propagate(sum, { a: one, b: one, c: '0 m', d: '0 m' }, wholly).standardUncertainty.si).toBeCloseTo(2, 1)
    const against = { ...monteCarlo, correlations: [['a', 'b', -1]] } as const
    expect(propagate(sum, { a: one, b: one, c: '0 m', d: '0 m' }, against).standardUncertainty.si).toBeCloseTo(0, 9)
  })
})

describe('any propagation', () => {
  it('adds independent parts as the root of the sum of squares', () => {
    const deviation = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000)
    fc.assert(
      fc.property(deviation, deviation, deviation, deviation, (...parts) => {
        const [a, b, c, d] = parts.map((u) => ['1 m', quantity('length', u, 'm')] as const)
        const result = propagate(sum, { a, b, c, d } as never)
        expect(result.standardUncertainty.si).toBeCloseTo(Math.hypot(...parts), 8)
      }),
    )
  })
  it('agrees between its two methods where the function is nearly straight', () => {
    const inputs = { current: ['300 A', '5 A'], resistancePerLength: '0.386 mΩ/m', length: ['3 m', '20 mm'] } as const
    const first = propagate(cableVoltageDrop, inputs)
    const drawn = propagate(cableVoltageDrop, inputs, { method: 'monte-carlo', trials: 200_000, seed: 1 })
    // 200 000 draws know a standard deviation to one part in √(2·200 000), 0.16 %; four of those are allowed.
    expect(Math.abs(drawn.standardUncertainty.ratioTo(first.standardUncertainty) - 1)).toBeLessThan(0.0064)
    expect(drawn.value.ratioTo(first.value)).toBeCloseTo(1, 3)
    expect(first.contributions.map((each) => each.input)).toEqual(['current', 'length'])
    expect(first.contributions[0]?.share).toBeCloseTo(25 / 29, 6)
    expect(first.contributions[0]?.sensitivity).toBeCloseTo(2 * 0.386e-3 * 3, 8)
  })
  it('works on any function of quantities, whose kinds the units tell', () => {
    const result = propagate(
      (given) => cableVoltageDrop({ current: given.load, resistancePerLength: '0.386 mΩ/m', length: given.run }),
      { load: ['300 A', '5 A'], run: '3 m' },
    )
    expect(result.standardUncertainty.in('V')).toBeCloseTo(5 * 2 * 0.386e-3 * 3, 8)
    const ambiguous = () => propagate((given: never) => given, { t: ['20 °C', '1 K'] } as never)
    expect(ambiguous).toThrow(/quantity\('temperature', '20 °C'\)/)
  })
  it('takes in text twice what a pair has', () => {
    const half = fc.integer({ min: 1, max: 1e6 }).map((n) => n / 1000)
    fc.assert(
      fc.property(half, half, (a, b) => {
        const run = { resistancePerLength: '0.386 mΩ/m' } as const
        const text = { ...run, current: `300 A ± ${2 * a} A`, length: `3 m +/- ${2 * b} mm` } as const
        const pairs = { ...run, current: ['300 A', `${a} A`], length: ['3 m', `${b} mm`] } as const
        const result = propagate(cableVoltageDrop, pairs)
        expect(propagate(cableVoltageDrop, text)).toEqual(result)
        const work = (given: { readonly i: Quantity<'current'>; readonly l: Quantity<'length'> }) =>
          cableVoltageDrop({ ...run, current: given.i, length: given.l })
        const ofWork = propagate(work, { i: text.current, l: text.length })
        expect(ofWork.standardUncertainty.si).toBeCloseTo(result.standardUncertainty.si, 9)
      }),
    )
  })
  it('takes a share in text as that much of the value', () => {
    const run = { resistancePerLength: '0.386 mΩ/m', length: '3 m' } as const
    const monteCarlo = { method: 'monte-carlo', trials: 1000, seed: 3 } as const
    const share = propagate(cableVoltageDrop, { ...run, current: '300 A ± 4 %' }, monteCarlo)
    expect(share).toEqual(propagate(cableVoltageDrop, { ...run, current: ['300 A', '6 A'] }, monteCarlo))
  })
  it('asks for a list where the units of a text tell several kinds', () => {
    const work = (given: { readonly t: Quantity<'temperature' | 'temperatureDifference'> }) => given.t
    expect(() => propagate(work, { t: '20 °C ± 3 K' })).toThrow(
      "t: expected a list with the standard uncertainty, half of what follows ±: [quantity('temperature', '20 °C'), '1.5 K'] or [quantity('temperatureDifference', '20 °C'), '1.5 K'], got '20 °C ± 3 K'",
    )
    const told = (given: { readonly m: Quantity<'mass' | 'acceleration'> }) => given.m
    expect(propagate(told, { m: '500 g ± 0.1 kg' }).standardUncertainty.in('g')).toBeCloseTo(50, 6)
    expect(() => propagate(told, { m: '500 foo ± 0.1 kg' } as never)).toThrow(/m: expected a quantity, or text/)
  })
  it('gives the uncertainty of a temperature as a difference', () => {
    const warmed = formula({
      name: 'warmed',
      title: 'Temperature after warming',
      inputs: {
        initial: input('temperature', 'T', 'At first'),
        rise: input('temperatureDifference', 'dT', 'Rise', { min: 0 }),
      },
      result: output('temperature', 'Te', 'At the end'),
      expression: 'T + dT',
      source: cite('arithmetic'),
      compute: ({ initial, rise }) => initial + rise,
    })
    const result = propagate(warmed, { initial: ['20 °C', '3 K'], rise: ['10 K', '4 K'] })
    expect(String(result.value)).toBe('30 °C')
    expect(String(result.standardUncertainty)).toBe('5 K')
    expect(result.interval.map(String)).toEqual(['20 °C', '40 °C'])
    // At the bound of the rise the slope is taken from the side that exists.
    expect(propagate(warmed, { initial: '20 °C', rise: ['0 K', '4 K'] }).standardUncertainty.in('K')).toBeCloseTo(4, 6)
    const beyond = () =>
      propagate(warmed, { initial: '20 °C', rise: ['0 K', '4 K'] }, { method: 'monte-carlo', trials: 1000, seed: 1 })
    expect(beyond).toThrow(CalculationError)
    expect(beyond).toThrow(/has no result: rise -/)
  })
  it.each([
    ['a negative uncertainty', { a: ['1 m', '-1 m'] }, {}, /a\[1\]: expected a standard uncertainty, not below zero/],
    ['an uncertainty of another kind', { a: ['1 m', '1 kg'] }, {}, /a\[1\]: expected a length/],
    [
      'an uncertainty of another kind in text',
      { a: '1 m ± 1 kg' },
      {},
      /a: .*'1 m ± 1 kg' \(after ±: kg measures a mass\)/,
    ],
    ['text with an uncertainty in a list', { a: ['1 m ± 1 m', '1 m'] }, {}, /a: .*leave out '± 1 m'/],
    ['text with an uncertainty of an unknown input', { e: '1 m ± 1 m' }, {}, /e: expected no such input/],
    ['an input of another kind', { a: ['1 kg', '1 m'] }, {}, /a: expected a length/],
    ['an unknown input', { e: '1 m' }, {}, /e: expected no such input/],
    [
      'a correlation above 1',
      {},
      { correlations: [['a', 'b', 1.5]] },
      /correlations\[0\]\[2\]: expected a coefficient from -1 to 1/,
    ],
    ['a correlation of an exact input', {}, { correlations: [['a', 'd', 0.5]] }, /inputs with an uncertainty: a, b, c/],
    ['a correlation with itself', {}, { correlations: [['a', 'a', 0.5]] }, /two different inputs/],
    [
      'correlations that cannot all hold',
      {},
      {
        correlations: [
          ['a', 'b', 0.9],
          ['b', 'c', 0.9],
          ['a', 'c', -0.9],
        ],
      },
      /coefficients that can all hold at once/,
    ],
    [
      'too few trials',
      {},
      { method: 'monte-carlo', trials: 5, seed: 1 },
      /trials: expected a whole number from 100 to 10000000/,
    ],
    [
      'too many trials',
      {},
      { method: 'monte-carlo', trials: 1e12, seed: 1 },
      /trials: expected a whole number from 100/,
    ],
    [
      'a method that is misspelt',
      {},
      { method: 'montecarlo', trials: 500, seed: 1 },
      /method: expected 'first-order' or 'monte-carlo'/,
    ],
    [
      'an option that is misspelt',
      {},
      { correlation: [] },
      /correlation: expected no such option.*did you mean correlations\?/,
    ],
    ['correlations that are no list', {}, { correlations: {} }, /correlations: expected a list such as/],
    [
      'a pair named twice',
      {},
      {
        correlations: [
          ['a', 'b', 0.1],
          ['b', 'a', 0.2],
        ],
      },
      /each pair of inputs once/,
    ],
    ['a coefficient as text', {}, { correlations: [['a', 'b', '0.5']] }, /a coefficient from -1 to 1/],
    ['a list of three', { a: ['1 m', '1 m', '1 m'] }, {}, /a: expected a value, or a list of a value and its standard/],
    ['options that are no object', {}, null, /options: expected an object/],
    ['no seed', {}, { method: 'monte-carlo', trials: 500 }, /seed: expected a whole number/],
  ])('refuses %s', (_, wrong, options, message) => {
    const inputs = { a: ['1 m', '1 m'], b: ['1 m', '1 m'], c: ['1 m', '1 m'], d: '1 m', ...wrong }
    expect(() => propagate(sum, inputs as never, options as never)).toThrow(message)
    expect(() => propagate(sum, inputs as never, options as never)).toThrow(InputError)
  })
})

describe('what a first-order propagation cannot tell', () => {
  const root = formula({
    name: 'root',
    title: 'Side of a square',
    inputs: { area: input('area', 'A', 'Area', { min: 0 }) },
    result: output('length', 'a', 'Side'),
    expression: 'sqrt(A)',
    source: cite('geometry'),
    compute: ({ area }) => Math.sqrt(area),
  })
  it('is refused where the result has no steady slope', () => {
    expect(() => propagate(root, { area: ['0 m²', '0.01 m²'] })).toThrow(
      /no steady slope at area = 0 m²: draw with the Monte Carlo/,
    )
    expect(propagate(root, { area: ['4 m²', '0.01 m²'] }).standardUncertainty.si).toBeCloseTo(0.0025, 9)
  })
  it('is refused where the interval would reach below absolute zero', () => {
    const cold = (given: { t: Quantity<'temperature'> }) => given.t
    const t = [quantity('temperature', '5 K'), quantity('temperatureDifference', '4 K')] as const
    expect(() => propagate(cold as never, { t } as never)).toThrow(/below absolute zero/)
  })
  it('tells every fault at once', () => {
    const two = /2 inputs cannot be used/
    expect(() => propagate(sum, { a: ['1 m', '-1 m'], b: ['1 m', '1 kg'], c: '1 m', d: '1 m' } as never)).toThrow(two)
    expect(() => propagate(sum, { a: '1 m ± 0 m', b: '1 m ± 1 kg', c: '1 m', d: '1 m' } as never)).toThrow(two)
  })
  it('asks for a function of quantities', () => {
    expect(() => propagate((() => 5) as never, { a: '1 m' } as never)).toThrow(
      /work: expected a function that returns a quantity, got one that returns 5/,
    )
    expect(() => propagate('sum' as never, {} as never)).toThrow(/work: expected a formula or another function/)
    expect(() => propagate(sum, null as never)).toThrow(/inputs: expected an object/)
  })
})

describe('random numbers', () => {
  it('are spread evenly (chi-square over 100 cells) and differ between near seeds', () => {
    const random = uniform(42)
    const cells = new Array<number>(100).fill(0)
    for (let i = 0; i < 100_000; i++) {
      const cell = Math.floor(random() * 100)
      cells[cell] = (cells[cell] as number) + 1
    }
    const chiSquare = cells.reduce((total, count) => total + (count - 1000) ** 2 / 1000, 0)
    // 99 degrees of freedom: 99.9 % of evenly spread samples lie between 60 and 149 (Abramowitz & Stegun, table 26.8).
    expect(chiSquare).toBeGreaterThan(60)
    expect(chiSquare).toBeLessThan(149)
    expect(uniform(1)()).not.toBe(uniform(2)())
  })
})
