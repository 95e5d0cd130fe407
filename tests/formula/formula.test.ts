/** Formulas as values: called, read, and refused. */
import { describe, expect, it } from 'vitest'
import { cableVoltageDrop } from '../../src/electrical/index.js'
import {
  cite,
  commonPractice,
  constant,
  formula,
  icePoint,
  input,
  output,
  standardGravity,
} from '../../src/formula/index.js'
import { CalculationError, InputError, quantity } from '../../src/quantity/index.js'

const drop = { current: '300 A', resistancePerLength: '0.386 mΩ/m', length: '3 m' } as const

/** A formula with a default, a constant, bounds of every sort and a range of validity. */
const coasting = formula({
  name: 'coasting',
  title: 'Distance coasted from a speed to a lower one',
  inputs: {
    from: input('speed', 'v1', 'Speed at the start', { min: 0, below: '300 km/h' }),
    to: input('speed', 'v2', 'Speed at the end', { min: 0 }),
    resistance: input('ratio', 'f', 'Resistance over weight', { above: 0, max: 1, default: 0.015 }),
  },
  result: output('length', 's', 'Distance', 'km'),
  constants: { g0: standardGravity },
  expression: '(v1^2 - v2^2) / (2 * f * g0)',
  valid: [{ of: 'from - to', value: ({ from, to }) => from - to, min: 0 }],
  assumes: ['Resistance that does not change with speed'],
  cautions: ['On a closed road'],
  source: commonPractice,
  compute: ({ from, to, resistance }, { g0 }) => (from * from - to * to) / (2 * resistance * g0),
})

describe('a formula', () => {
  it('takes text or quantities and gives a quantity', () => {
    expect(String(cableVoltageDrop(drop))).toBe('0.6948 V')
    const given = {
      current: quantity('current', '0.3 kA'),
      resistancePerLength: quantity('resistancePerLength', '0.386 Ω/km'),
      length: quantity('length', '300 cm'),
    }
    expect(cableVoltageDrop(given).si).toBe(cableVoltageDrop(drop).si)
  })
  it('computes SI numbers, unchecked', () => {
    expect(cableVoltageDrop.compute({ current: 300, resistancePerLength: 0.386e-3, length: 3 })).toBeCloseTo(0.6948, 12)
    expect(coasting.compute({ from: 20, to: 10, resistance: 0.015 })).toBeCloseTo(300 / (2 * 0.015 * 9.80665), 9)
    expect(coasting.compute({ from: 20, to: 10, resistance: 0.015 }, { g0: 10 })).toBeCloseTo(1000, 9)
  })
  it('can be read', () => {
    expect(coasting.name).toBe('coasting')
    expect(coasting.title).toBe('Distance coasted from a speed to a lower one')
    expect(coasting.expression).toBe('(v1^2 - v2^2) / (2 * f * g0)')
    expect(coasting.inputs.from).toMatchObject({ kind: 'speed', symbol: 'v1', limits: { min: 0, below: 300 / 3.6 } })
    expect(coasting.result).toEqual({ kind: 'length', symbol: 's', about: 'Distance', unit: 'km' })
    expect(coasting.source.work).toBe('common practice, no source')
    expect(coasting.assumes).toEqual(['Resistance that does not change with speed'])
    expect(coasting.cautions).toEqual(['On a closed road'])
    expect(String(coasting.constants.g0.value)).toBe('9.807 m/s²')
  })
  it('cannot be changed', () => {
    expect(() => Object.assign(coasting, { title: 'another' })).toThrow(TypeError)
  })
  it('shows its result in the unit it names, and takes a default for what is left out', () => {
    const from20 = coasting({ from: '72 km/h', to: '36 km/h' })
    expect(from20.unit).toBe('km')
    expect(from20.in('m')).toBeCloseTo(300 / (2 * 0.015 * 9.80665), 9)
    expect(from20.equals(coasting({ from: '72 km/h', to: '36 km/h', resistance: '1.5 %' }))).toBe(true)
  })
})

describe('a call that cannot be used', () => {
  const issuesOf = (work: () => unknown) => {
    try {
      work()
    } catch (error) {
      return (error as InputError).issues
    }
    throw new Error('nothing was refused')
  }
  it('is told all that is wrong with it at once, in the order of the inputs', () => {
    const wrong = { current: '300 V', resistancePerLength: '-1 mΩ/m', lenght: '3 m' }
    expect(() => cableVoltageDrop(wrong as never)).toThrow(
      [
        'cableVoltageDrop: 4 inputs cannot be used',
        "  current: expected a current such as '300 A', got '300 V' (V measures a voltage)",
        "  resistancePerLength: expected a resistance per length above 0 mΩ/m, got '-1 mΩ/m' (Resistance of one conductor per length)",
        "  length: expected a length such as '2.4 m', got nothing",
        "  lenght: expected no such input; there are current, resistancePerLength, length, got '3 m' (did you mean length?)",
      ].join('\n'),
    )
    const error = issuesOf(() => cableVoltageDrop(wrong as never))
    expect(error.map((issue) => issue.path)).toEqual(['current', 'resistancePerLength', 'length', 'lenght'])
  })
  it.each([[undefined], [null], ['3 m'], [42], [[]], [quantity('length', '3 m')]])(
    'given %o is told its form',
    (given) => {
      expect(issuesOf(() => cableVoltageDrop(given as never))[0]?.expected).toBe(
        'an object { current: a current, resistancePerLength: a resistance per length, length: a length }',
      )
    },
  )
  it('is held to every sort of bound', () => {
    const bound = (given: object) => issuesOf(() => coasting({ from: '50 km/h', to: '0 km/h', ...given }))[0]?.expected
    expect(bound({ from: '-1 km/h' })).toBe('a speed at least 0 km/h and below 300 km/h')
    expect(bound({ from: '300 km/h' })).toBe('a speed at least 0 km/h and below 300 km/h')
    expect(bound({ resistance: 0 })).toBe('a ratio above 0 and at most 1')
    expect(bound({ resistance: 1.01 })).toBe('a ratio above 0 and at most 1')
    expect(coasting({ from: '0 km/h', to: '0 km/h', resistance: 1 }).si).toBe(0)
  })
  it('is held to the range in which the formula holds', () => {
    expect(issuesOf(() => coasting({ from: '50 km/h', to: '60 km/h' }))).toEqual([
      {
        path: 'from - to',
        expected: 'at least 0, the range of this formula (common practice, no source)',
        received: '-2.778',
      },
    ])
  })
  it('treats undefined as left out, and null as given', () => {
    expect(issuesOf(() => cableVoltageDrop({ ...drop, length: undefined } as never))[0]?.received).toBe('nothing')
    expect(issuesOf(() => cableVoltageDrop({ ...drop, length: null } as never))[0]?.received).toBe('null')
    expect(coasting({ from: '50 km/h', to: '0 km/h', resistance: undefined } as never).si).toBeGreaterThan(0)
  })
  it('takes what an object shows, inherited or not, and names what it does not know', () => {
    expect(cableVoltageDrop(Object.create(drop)).si).toBe(cableVoltageDrop(drop).si)
    expect(issuesOf(() => cableVoltageDrop(Object.create({ ...drop, extra: 1 })))).toHaveLength(1)
    class Cable {
      get current() {
        return '300 A'
      }
      get resistancePerLength() {
        return '0.386 mΩ/m'
      }
      get length() {
        return '3 m'
      }
    }
    expect(cableVoltageDrop(new Cable() as never).si).toBe(cableVoltageDrop(drop).si)
    const hidden = Object.defineProperty({ current: '300 A', resistancePerLength: '1 mΩ/m', lenght: '9 m' }, 'length', {
      value: '3 m',
    })
    expect(issuesOf(() => cableVoltageDrop(hidden as never))[0]?.path).toBe('lenght')
    expect(issuesOf(() => cableVoltageDrop({ ...drop, toString: '1 m' } as never))[0]?.path).toBe('toString')
  })
  it('is told every range that it leaves, with units where they are known', () => {
    const window = formula({
      name: 'window',
      title: 'Voltage left in a window',
      inputs: { high: input('voltage', 'Uh', 'Upper'), low: input('voltage', 'Ul', 'Lower') },
      result: output('voltage', 'dU', 'Window'),
      expression: 'Uh - Ul',
      valid: [
        { of: 'high - low', kind: 'voltage', value: ({ high, low }) => high - low, min: 0 },
        { of: 'low', kind: 'voltage', value: ({ low }) => low, min: 10, max: 20 },
      ],
      source: cite('a book'),
      compute: ({ high, low }) => high - low,
    })
    expect(
      issuesOf(() => window({ high: '5 V', low: '30 V' })).map(({ path, expected, received }) => [
        path,
        expected,
        received,
      ]),
    ).toEqual([
      ['high - low', 'at least 0 V, the range of this formula (a book)', '-25 V'],
      ['low', 'at least 10 V and at most 20 V, the range of this formula (a book)', '30 V'],
    ])
  })
})

describe('a result that is not there', () => {
  const quotient = formula({
    name: 'quotient',
    title: 'Speed from a distance and a time',
    inputs: { distance: input('length', 's', 'Distance'), time: input('time', 't', 'Time') },
    result: output('speed', 'v', 'Speed'),
    expression: 's / t',
    source: cite('any textbook'),
    compute: ({ distance, time }) => distance / time,
  })
  it('is an error with the figures, never NaN', () => {
    expect(() => quotient({ distance: '0 m', time: '0 s' })).toThrow(
      'quotient: there is no finite speed for distance 0 m, time 0 s',
    )
    expect(() => quotient({ distance: '1 m', time: '0 s' })).toThrow(CalculationError)
    try {
      quotient({ distance: '1 m', time: '0 s' })
    } catch (error) {
      expect(error).toMatchObject({
        code: 'ERR_KERBWATT_CALCULATION',
        where: 'quotient',
        figures: { distance: '1 m', time: '0 s' },
      })
    }
  })
  it('is an error for a temperature below absolute zero', () => {
    const cooled = formula({
      name: 'cooled',
      title: 'Temperature after cooling',
      inputs: {
        initial: input('temperature', 'T', 'Temperature at first'),
        fall: input('temperatureDifference', 'dT', 'Fall', { min: '0 K' }),
      },
      result: output('temperature', 'Te', 'Temperature'),
      expression: 'T - dT',
      source: cite('arithmetic'),
      compute: ({ initial, fall }) => initial - fall,
    })
    expect(String(cooled({ initial: '20 °C', fall: '30 K' }))).toBe('-10 °C')
    expect(() => cooled({ initial: '20 °C', fall: '300 K' })).toThrow(CalculationError)
  })
})

describe('a description', () => {
  it('takes no bound that is not a number, and an infinite one as none', () => {
    expect(() => input('length', 'l', 'Length', { min: Number.NaN })).toThrow(/min: expected a number, got NaN/)
    expect(input('length', 'l', 'Length', { min: 0, max: Number.POSITIVE_INFINITY }).limits).toEqual({ min: 0 })
    expect(() => Object.assign(input('length', 'l', 'Length', { min: 0 }).limits, { min: -5 })).toThrow(TypeError)
  })
  it('knows the unit of its result, by either spelling', () => {
    expect(output('resistance', 'R', 'Resistance', 'ohm').unit).toBe('Ω')
    expect(() => output('area', 'A', 'Area', 'kg' as never)).toThrow(/unit: expected a unit of an area/)
  })
})

describe('a constant', () => {
  it('carries its unit and source', () => {
    expect(standardGravity.value.si).toBe(9.80665)
    expect(icePoint.value.si).toBe(273.15)
    const made = constant('density', '1.2 kg/m³', 'Air', cite('a book', 'p. 1'))
    expect(made.source).toEqual({ work: 'a book', place: 'p. 1' })
    expect(() => constant('density', '1.2 kg' as never, 'Air', cite('a book'))).toThrow(InputError)
  })
})
