/** Quantities: what is read and what is refused, what can be done with them, and that nothing is lost. */
import { inspect } from 'node:util'
import fc from 'fast-check'
import { describe, expect, it, vi } from 'vitest'
import { CalculationError, InputError, type Kind, kinds, quantity } from '../../src/quantity/index.js'
import { twinOf } from '../../src/quantity/kinds.js'
import { fromSi } from '../../src/quantity/quantity.js'
import { runs } from '../runs.js'

const units = (Object.keys(kinds) as Kind[]).flatMap((kind) =>
  Object.keys(kinds[kind].units).map((unit) => [kind, unit] as const),
)

/** The issue that a call is refused with. */
function refusal(work: () => unknown) {
  try {
    work()
  } catch (error) {
    if (error instanceof InputError) return error.issues[0]
    throw error
  }
  throw new Error('nothing was refused')
}

describe('reading', () => {
  it.each([
    ['mass', '155 lb', 70.30681735],
    ['mass', '155lb', 70.30681735],
    ['length', '-0.5 m', -0.5],
    ['length', '\u22120.5 m', -0.5],
    ['length', '+.5 m', 0.5],
    ['length', '5. mm', 0.005],
    ['length', '2\u00a0m', 2],
    ['length', '2\u202fm', 2],
    ['current', '3e2 A', 300],
    ['current', '3E\u22122 kA', 30],
    ['area', '35 mm2', 35e-6],
    ['area', '35 mm²', 35e-6],
    ['resistance', '1.5 mohm', 0.0015],
    ['resistance', '1.5 m\u2126', 0.0015],
    ['resistance', '1.5 m\u03a9', 0.0015],
    ['capacitance', '680 uF', 0.00068],
    ['capacitance', '680 \u00b5F', 0.00068],
    ['capacitance', '680 \u03bcF', 0.00068],
    ['torque', '12 Nm', 12],
    ['temperature', '20 degC', 293.15],
    ['temperature', '20 \u2103', 293.15],
    ['temperatureDifference', '9 °F', 5],
    ['angle', '180 deg', Math.PI],
    ['ratio', '96 %', 0.96],
    ['ratio', '96%', 0.96],
    ['ratio', '0.96', 0.96],
    ['ratio', 0.96, 0.96],
    ['cRate', '2 C', 2 / 3600],
    ['acceleration', '1 g', 9.80665],
    ['mass', '1 g', 0.001],
  ] as const)('%s from %j', (kind, text, si) => {
    expect(quantity(kind, text as never).si).toBe(si)
  })

  it('of a number with its unit is the same as of its text', () => {
    expect(quantity('mass', 155, 'lb').si).toBe(quantity('mass', '155 lb').si)
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e9, max: 1e9 }), (number) => {
        fc.pre(Math.abs(number) > 1e-290 || number === 0)
        expect(quantity('length', number, 'ft').si).toBe(quantity('length', `${number} ft`).si)
      }),
    )
  })

  it.each(units)('of %s in %s by its plain-ASCII twin', (kind, unit) => {
    const twin = twinOf(unit)
    expect(twin).toMatch(/^[\x20-\x7e]+$/)
    expect(quantity(kind, `2.5 ${twin}` as never).si).toBe(quantity(kind, `2.5 ${unit}` as never).si)
  })

  it('is the same when a text comes again, and after a thousand others', () => {
    const first = quantity('length', '1.5 m').si
    for (let i = 0; i < 2500; i++) expect(quantity('length', `${i} mm`).si).toBe(i / 1000)
    expect(quantity('length', '1.5 m').si).toBe(first)
    expect(() => quantity('length', '1.5 V' as never)).toThrow(InputError)
    expect(() => quantity('length', '1.5 V' as never)).toThrow(InputError)
  })

  it('keeps minus zero out, which JSON would lose', () => {
    expect(Object.is(quantity('length', '-0 m').si, 0)).toBe(true)
    expect(Object.is(quantity('length', '1 m').times(-0).si, 0)).toBe(true)
  })
})

describe('refusing, with the mend', () => {
  it.each([
    ['length', '0,33 m', /write '0\.33 m'/],
    ['length', '1,200 mm', /'1200 mm' or '1\.2 mm'/],
    ['length', '1,200.5 mm', /write '1200\.5 mm'/],
    ['length', '1.200,5 mm', /write '1200\.5 mm'/],
    ['length', '1,200,300 mm', /write '1200300 mm'/],
    ['length', '0,386 m', /write '0\.386 m'/],
    ['length', '1200,5 mm', /write '1200\.5 mm'/],
    ['voltage', '12 Volt', /did you mean V\?/],
    ['voltage', '12 volts', /did you mean V\?/],
    ['power', '5 KW', /did you mean kW\?/],
    ['speed', '80 kph', /did you mean km\/h\?/],
    ['temperature', '20 C', /C measures a charge or a C-rate; did you mean °C\?/],
    ['temperature', '-300 °C', /below absolute zero/],
    ['temperature', '-500 °F', /below absolute zero/],
    ['voltage', '12', /which unit\? V, mV or kV/],
    ['current', '300 V', /V measures a voltage/],
    ['current', 'NaN A', /only finite numbers/],
    ['current', 'Infinity A', /only finite numbers/],
    ['current', '-inf A', /only finite numbers/],
    ['current', 'A 300', /number first, then the unit/],
    ['current', ' 300 A', /without spaces around it: '300 A'/],
    ['current', '300  A', /one space or none/],
    ['length', '10² m', /not a unit of length/],
    ['length', '0x10 m', /is not a unit of length/],
    ['length', '1.2.3 m', /not a unit of length/],
    ['length', '1e400 m', /more, or closer to zero, than a number can hold/],
    ['length', '1e-400 m', /more, or closer to zero, than a number can hold/],
    ['energy', '1e308 kWh', /more, or closer to zero/],
    ['length', `${'1'.repeat(801)} m`, /at most 800 digits/],
    ['resistance', '5 MOhm', /did you mean MΩ\?/],
    ['resistance', '5 Mohms', /did you mean MΩ\?/],
    ['resistance', '5 mOhms', /did you mean mΩ\?/],
    ['power', '3 mW', /mW is not a unit of power: kW, W, MW, hp or PS/],
    ['capacitance', '680 mfd', /mfd is not a unit of capacitance: µF, F, mF or nF/],
    ['capacitance', '680 MF', /MF is not a unit of capacitance/],
    ['length', '5 µm', /µm is not a unit of length/],
    ['mass', '5 lbs', /did you mean lb\?/],
    ['mass', '1,2,3 kg', /^the decimal sign is a point/],
    ['mass', '1 200 kg', /digits of a number together/],
    ['current', '1e999999999999999999999 A', /more, or closer to zero/],
    ['current', '', /write a number and a unit, such as '300 A'/],
    ['length', 12, /which unit\? Write '12 m' if that is meant/],
    ['ratio', Number.NaN, /only finite numbers/],
    ['ratio', Number.POSITIVE_INFINITY, /only finite numbers/],
    ['ratio', '0,9', /write '0\.9'/],
    ['ratio', 'most', /write a number/],
  ] as const)('%s from %j', (kind, value, hint) => {
    const issue = refusal(() => quantity(kind, value as never))
    expect(issue?.hint).toMatch(hint)
    expect(issue?.expected).toContain(kinds[kind].example)
  })

  it.each([[''], [null], [undefined], [{}], [[]], [true], [5n], [() => 5], [Symbol('x')]])(
    'a length from %o',
    (value) => {
      expect(refusal(() => quantity('length', value as never))?.expected).toBe("a length such as '2.4 m'")
    },
  )

  it('a quantity of another kind, and says which it is', () => {
    const mass = quantity('mass', '24 kg')
    expect(refusal(() => quantity('length', mass as never))?.received).toBe('a mass, 24 kg')
  })

  it('a kind that does not exist, with the nearest', () => {
    expect(refusal(() => quantity('curent' as never, '3 A' as never))?.hint).toBe("did you mean 'current'?")
    for (const kind of ['toString', ['current'], null, 5]) {
      expect(() => quantity(kind as never, '3 A' as never)).toThrow(InputError)
    }
    expect(() => quantity('current', 3, Symbol('A') as never)).toThrow(InputError)
  })

  it('a unit of another kind for a number', () => {
    expect(refusal(() => quantity('mass', 5, 'V' as never))).toMatchObject({
      received: "'5 V'",
      hint: 'V measures a voltage',
    })
    expect(refusal(() => quantity('mass', Number.NaN, 'kg'))?.hint).toBe('only finite numbers are quantities')
    expect(refusal(() => quantity('mass', Number.POSITIVE_INFINITY, 'kg'))?.received).toBe("'Infinity kg'")
    expect(refusal(() => quantity('temperature', -300, '°C'))?.hint).toMatch(/below absolute zero/)
    expect(refusal(() => quantity('mass', '5 lb' as never, 'kg'))).toMatchObject({
      expected: 'a number, its unit as text beside it',
    })
  })

  it('with one line that can be read without the code', () => {
    expect(() => quantity('current', '300 V' as never)).toThrow(
      "quantity: one input cannot be used\n  value: expected a current such as '300 A', got '300 V' (V measures a voltage)",
    )
  })
})

describe('writing and reading back', () => {
  it.each(units)('%s in %s gives the same double', (kind, unit) => {
    const anyDouble = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    )
    fc.assert(
      fc.property(anyDouble, (double) => {
        const si = kind === 'temperature' ? Math.abs(double) : double + 0
        const written = JSON.parse(JSON.stringify({ q: fromSi(kind, si, unit) })).q
        expect(quantity(kind, written).si).toBe(si + 0)
      }),
      { numRuns: runs(50), examples: [[0], [5e-324], [1.7976931348623157e308], [1 / 3], [-1e-300]] },
    )
  })
  it('keeps what was written, in its unit', () => {
    const typed = fc.tuple(fc.integer({ min: -999999, max: 999999 }), fc.integer({ min: 0, max: 4 }))
    fc.assert(
      fc.property(fc.constantFrom(...units), typed, ([kind, unit], [digits, places]) => {
        const number = (kind === 'temperature' ? Math.abs(digits) : digits) / 10 ** places
        const text = kind === 'ratio' && unit === '1' ? `${number}` : `${number} ${unit}`
        expect(JSON.stringify(quantity(kind, text as never))).toBe(JSON.stringify(text.replace(/^-0(?![.\d])/, '0')))
      }),
      { numRuns: runs(1000) },
    )
  })
  it('shows at most 4 significant digits, and the text can be read', () => {
    expect(String(quantity('energy', '24 kWh'))).toBe('24 kWh')
    expect(String(quantity('mass', '70.30681735 kg'))).toBe('70.31 kg')
    expect(String(quantity('power', '123456 W'))).toBe('123500 W')
    expect(String(quantity('power', '1234567891 W'))).toBe('1.235e9 W')
    expect(String(quantity('ratio', 1 / 3))).toBe('0.3333')
    expect(String(quantity('temperature', '35 °C'))).toBe('35 °C')
    expect(quantity('power', '1.235e9 W').si).toBe(1.235e9)
    expect(`${quantity('current', '300 A')}`).toBe('300 A')
  })
  it('shows its kind on the console', () => {
    expect(inspect(quantity('energy', '24 kWh'))).toBe('Quantity<energy> 24 kWh')
  })
})

describe('what can be done with a quantity', () => {
  const q = quantity('energy', '24 kWh')
  it('shows the values that its documentation shows', () => {
    expect(q.in('MJ')).toBe(86.4)
    expect(String(q.as('MJ'))).toBe('86.4 MJ')
    expect(q.as('MJ').si).toBe(q.si)
    expect(String(q.plus('500 Wh').minus('4.5 kWh').times(0.9).over(2))).toBe('9 kWh')
    expect(q.ratioTo('12 kWh')).toBe(2)
    expect(q.isAtMost('25 kWh')).toBe(true)
    expect(q.isAtMost('24 kWh')).toBe(true)
    expect(q.isAtLeast('24.0001 kWh')).toBe(false)
    expect(q.equals('86.4 MJ')).toBe(true)
    expect(q.equals('24.1 kWh')).toBe(false)
    expect(q.equals('24.1 kWh', '0.2 kWh')).toBe(true)
    expect(q.format({ unit: 'MJ', digits: 2 })).toBe('86 MJ')
    expect(q.format()).toBe('24 kWh')
  })
  it('never changes', () => {
    expect(() => Object.assign(q, { si: 1 })).toThrow(TypeError)
    expect(q.si).toBe(86.4e6)
  })
  it('refuses units and quantities of other kinds, by name', () => {
    expect(refusal(() => q.in('V' as never))).toMatchObject({
      expected: 'a unit of an energy: kWh, Wh, J, kJ or MJ',
      received: "'V'",
    })
    expect(refusal(() => q.plus('5 kW' as never))?.hint).toBe('kW measures a power')
    expect(refusal(() => q.format({ digits: 0 }))?.path).toBe('digits')
    expect(refusal(() => q.times(Number.NaN))?.received).toBe('NaN')
    expect(refusal(() => q.over(0))?.expected).toContain('other than 0')
  })
  it('is not a number: comparison and arithmetic signs are refused', () => {
    expect(() => (q as unknown as number) < 5).toThrow(/a quantity is not a number/)
    expect(() => (q as unknown as number) * 2).toThrow(InputError)
  })
  it('never holds what is not finite', () => {
    const huge = quantity('length', 1e308, 'm')
    expect(() => huge.times(10)).toThrow(CalculationError)
    expect(() => huge.plus(huge)).toThrow(CalculationError)
    expect(() => huge.in('mm')).toThrow(/1e\+308 m is more mm than a number can hold/)
    expect(String(huge.as('mm'))).toBe('1e+311 mm')
    expect(quantity('length', String(huge.as('mm')) as never).si).toBe(1e308)
    expect(() => fromSi('length', Number.NaN, 'm')).toThrow(CalculationError)
    expect(() => fromSi('length', Number.POSITIVE_INFINITY, 'm')).toThrow('a length of Infinity is not a quantity')
    expect(() => huge.over(1e-10)).toThrow(CalculationError)
    expect(() => huge.ratioTo('0 m')).toThrow(CalculationError)
  })
})

describe('temperatures and their differences', () => {
  const warm = quantity('temperature', '35 °C')
  it('a temperature takes a difference, and two temperatures make one', () => {
    expect(String(warm.plus('5 K'))).toBe('40 °C')
    expect(String(warm.plus('9 °F'))).toBe('40 °C')
    const difference = warm.minus('20 °C')
    expect(difference.kind).toBe('temperatureDifference')
    expect(difference.in('K')).toBeCloseTo(15, 12)
    expect(String(quantity('temperature', '77 °F').minus('32 °F'))).toBe('45 °F')
    expect(String(warm.minus(quantity('temperatureDifference', '5 K')))).toBe('30 °C')
  })
  it.each([0, 35, -40, 100, 20.5, -17.8, 36.6, 0.001, 1000])('%d degrees are just that in either scale', (number) => {
    for (const unit of ['°C', '°F'] as const) {
      const q = quantity('temperature', number, unit)
      expect(q.in(unit)).toBe(number)
      expect(String(q)).toBe(`${Number(number.toPrecision(4))} ${unit}`)
      expect(q.toJSON()).toBe(`${number} ${unit}`)
    }
    expect(quantity('temperature', '212 °F').in('°C')).toBe(100)
    expect(quantity('temperature', '-40 °F').in('°C')).toBe(-40)
  })
  it('what is near one of few decimals is not taken for it', () => {
    const near = quantity('temperature', '35.0000000001 °C')
    expect(near.in('°C')).toBeCloseTo(35.0000000001, 12)
    expect(quantity('temperature', near.toJSON() as never).si).toBe(near.si)
  })
  it('two temperatures have no sum, no double and no ratio', () => {
    expect(() => warm.plus(warm as never)).toThrow(
      /expected a temperature difference such as '5 K', got a temperature, 35 °C/,
    )
    expect(() => warm.times(2 as never)).toThrow(/multiply a temperature difference/)
    expect(() => warm.ratioTo('5 °C' as never)).toThrow(InputError)
  })
  it('nothing is colder than absolute zero', () => {
    expect(() => warm.plus('-400 K')).toThrow(/below absolute zero/)
    expect(() => warm.minus(quantity('temperatureDifference', '400 K'))).toThrow(/below absolute zero/)
  })
  it('may lie within a difference of each other', () => {
    expect(warm.equals('36 °C', '2 K')).toBe(true)
    expect(warm.equals('36 °C', '0.5 K')).toBe(false)
  })
})

describe('another copy of the package', () => {
  it('makes quantities that this one knows, and the other way', async () => {
    vi.resetModules()
    const other = await import('../../src/quantity/index.js')
    expect(other.quantity).not.toBe(quantity)
    const theirs = other.quantity('mass', '155 lb')
    expect(quantity('mass', theirs).si).toBe(70.30681735)
    expect(String(quantity('mass', '1 lb').plus(theirs))).toBe('156 lb')
    expect(String(theirs.plus(quantity('mass', '1 lb')))).toBe('156 lb')
  })
})
