/** Every unit against outside values: published factors, and four libraries with tables of their own. */
import convert from 'convert-units'
import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import Qty from 'js-quantities'
import { describe, expect, it } from 'vitest'
import { type Kind, kinds, quantity, type UnitOf } from '../../src/quantity/index.js'
import { fromSi } from '../../src/quantity/quantity.js'
import { dimensions } from '../engine/dimensions.js'
import { math } from '../mathjs.js'
import { runs } from '../runs.js'

/** A tie between two doubles of ordinary size is seen only with all its digits, up to about 100. */
const Long = Decimal.clone({ precision: 150, defaults: true })

const units = (Object.keys(kinds) as Kind[]).flatMap((kind) =>
  Object.keys(kinds[kind].units).map((unit) => [kind, unit] as const),
)

/** A number in a unit as SI, in the types of any kind. */
const toSi = (kind: Kind, number: number | string, unit: string) => quantity(kind, `${number} ${unit}` as never).si

describe('published factors', () => {
  // NIST Special Publication 811 (2008), Appendix B.8: factors in bold there are exact. From memory.
  const published: readonly (readonly [Kind, string, number, string])[] = [
    ['length', 'ft', 0.3048, 'exact'],
    ['length', 'mi', 1609.344, 'exact'],
    ['length', 'yd', 0.9144, 'exact'],
    ['area', 'in²', 6.4516e-4, 'exact'],
    ['area', 'ft²', 0.09290304, 'exact'],
    ['area', 'kcmil', 5.067075e-7, 'rounded'],
    ['volume', 'in³', 1.6387064e-5, 'exact'],
    ['mass', 'lb', 0.45359237, 'exact'],
    ['mass', 'oz', 0.028349523125, 'exact'],
    ['force', 'lbf', 4.4482216152605, 'exact'],
    ['force', 'kgf', 9.80665, 'exact'],
    ['torque', 'lbf·ft', 1.355818, 'rounded'],
    ['torque', 'lbf·in', 0.1129848, 'rounded'],
    ['pressure', 'psi', 6894.757, 'rounded'],
    ['power', 'hp', 745.6999, 'rounded'],
    ['power', 'PS', 735.49875, 'exact'],
    ['speed', 'mph', 0.44704, 'exact'],
    ['angularSpeed', 'rpm', 0.1047198, 'rounded'],
    ['springRate', 'lbf/in', 175.1268, 'rounded'],
    ['temperatureDifference', '°F', 0.5555556, 'rounded'],
    ['energy', 'kWh', 3.6e6, 'exact'],
    ['angle', '°', 0.01745329, 'rounded'],
  ]
  it.each(published)('%s: 1 %s is %d in SI (%s)', (kind, unit, factor, sort) => {
    const ours = toSi(kind, 1, unit)
    if (sort === 'exact') expect(ours).toBe(factor)
    else expect(Number(ours.toPrecision(7))).toBeCloseTo(factor, 12)
  })
  it('reads the lbf/mph² of a coast-down as 22.258 N/(m/s)²', () => {
    // The slip most often made with coast-down coefficients: the speed unit is squared too.
    expect(toSi('forcePerSpeedSquared', 1, 'lbf/mph²')).toBeCloseTo(22.258, 3)
  })
  it('knows the fixed points of temperature', () => {
    // The steam point at one atmosphere, 100 °C = 212 °F, and where both scales meet, -40.
    expect(quantity('temperature', '212 °F').equals('100 °C')).toBe(true)
    expect(quantity('temperature', '100 °C').in('°F')).toBeCloseTo(212, 12)
    expect(quantity('temperature', '-40 °F').equals('-40 °C')).toBe(true)
    expect(quantity('temperature', '0 K').in('°C')).toBe(-273.15)
    expect(quantity('temperature', '0 °F').si).toBeCloseTo(2298.35 / 9, 12)
  })
})

/** A factor from its definition, as a quotient: factors after a stroke go below, `pi` with all its digits. */
function exactFactor(kind: Kind, unit: string): { readonly top: Decimal; readonly bottom: Decimal } {
  const definition = (kinds[kind].units as { [unit: string]: string })[unit] as string
  const product = (texts: readonly (string | undefined)[]) =>
    texts.reduce((all, text) => all.times(text === 'pi' ? Long.acos(-1) : (text as string)), new Long(1))
  return {
    top: product([...definition.matchAll(/(?:^|\* )(\S+)/g)].map((match) => match[1])),
    bottom: product([...definition.matchAll(/\/ (\S+)/g)].map((match) => match[1])),
  }
}

/** Short, as people write them; of 16 and 17 digits, as doubles are written; and longer than any double needs. */
const wholeNumber = fc.oneof(
  ...[6n, 17n, 34n].map((digits) => fc.bigInt({ min: -(10n ** digits), max: 10n ** digits })),
)
const decimalText = fc
  .tuple(wholeNumber, fc.integer({ min: -40, max: 12 }))
  .map(([digits, exponent]) => `${digits}e${exponent}`)

describe('conversion is correctly rounded', () => {
  it.each(units.filter(([kind]) => kind !== 'temperature'))('from %s in %s', (kind, unit) => {
    const factor = exactFactor(kind, unit)
    fc.assert(
      fc.property(decimalText, (text) => {
        expect(toSi(kind, text, unit)).toBe(new Long(text).times(factor.top).div(factor.bottom).toNumber() + 0)
      }),
      { numRuns: runs(60) },
    )
  })
  it.each(units.filter(([kind]) => kind !== 'temperature'))('to %s in %s', (kind, unit) => {
    const factor = exactFactor(kind, unit)
    // A double is put to Decimal as the fraction that it is, not as its shortest text.
    const binary = fc.tuple(fc.maxSafeInteger(), fc.integer({ min: -80, max: 20 }))
    fc.assert(
      fc.property(binary, ([mantissa, exponent]) => {
        const si = mantissa * 2 ** exponent
        const exact = new Long(mantissa).times(Long.pow(2, exponent))
        const ours = fromSi(kind, si, unit)
        expect(ours.in(unit as UnitOf<Kind>)).toBe(exact.times(factor.bottom).div(factor.top).toNumber() + 0)
      }),
      { numRuns: runs(60) },
    )
  })
  it.each([
    ['°C', '1', '273.15'],
    ['°F', '5', '459.67'],
  ])('of temperatures in %s', (unit, top, zero) => {
    const bottom = unit === '°F' ? 9 : 1
    fc.assert(
      fc.property(
        fc.integer({ min: -2731500, max: 10 ** 9 }),
        fc.integer({ min: -12, max: -4 }),
        (digits, exponent) => {
          const exact = new Long(`${digits}e${exponent}`).plus(zero).times(top).div(bottom)
          expect(toSi('temperature', `${digits}e${exponent}`, unit)).toBe(exact.toNumber())
        },
      ),
    )
  })
  it('decides a tie as IEEE 754 does, to the even double, however many digits it takes', () => {
    // Half way between 1 and the next double, and a hair to either side, in a unit whose factor is 1000.
    const half = '1.00000000000000011102230246251565404236316680908203125'
    const thousandth = (text: string) => new (Decimal.clone({ precision: 100 }))(text).div(1000).toString()
    expect(toSi('mass', thousandth(half), 't')).toBe(1)
    expect(toSi('mass', thousandth(`${half}1`), 't')).toBe(1 + Number.EPSILON)
    expect(toSi('mass', thousandth(half.replace(/5$/, '4')), 't')).toBe(1)
  })
})

describe('mathjs agrees on factor and dimension', () => {
  /** How mathjs writes our units; it has no name for the rest. */
  const written = (unit: string) =>
    unit
      .replace(/^°(?=[CF]$)/, 'deg')
      .replace(/°/g, 'deg')
      .replace(/A·√s/, 'A s^0.5')
      .replace(/[·]/g, ' ')
      .replace(/²/g, '^2')
      .replace(/³/g, '^3')
      .replace(/Ω/g, 'ohm')
      .replace(/µ/g, 'u')
      .replace(/mph/g, '(mi/hour)')
      .replace(/\bmin\b/g, 'minute')
      .replace(/\/kft/, '/(1000 ft)')
      .replace(/\/100km/, '/(100 km)')
      .replace(/\bh\b/g, 'hour')
  const strangers = new Set(['kcmil', 'PS', 'mbar', 'rpm', 'kgf', 'Ah', 'mAh'])
  const skipped = (kind: Kind, unit: string) =>
    strangers.has(unit) || kind === 'cRate' || kind === 'ratio' || /^temp\w*e/.test(kind)
  it.each(units.filter(([kind, unit]) => !skipped(kind, unit)))('%s in %s', (kind, unit) => {
    const name = kind === 'acceleration' && unit === 'g' ? '9.80665 m/s^2' : written(unit)
    const theirs = math.evaluate(/^[\d(]/.test(name) ? name : name === 't' ? 'tonne' : `1 ${name}`)
    const dimension = dimensions[kind]
    // The angle is a dimension to mathjs; here the radian counts as 1, so each radian in the unit is taken out.
    const radians =
      (unit.match(/rad|°/g) ?? []).length * (unit.includes('³') ? 3 : 1) * (/\/.*(rad|°)/.test(unit) ? -1 : 1)
    const plain = math.divide(theirs, math.evaluate(`(1 rad)^${radians}`))
    const number = math.isUnit(plain) ? plain.toNumber(dimension) : Number(plain)
    // mathjs keeps some factors to about 15 digits and its π to 50.
    expect(Math.abs(number / toSi(kind, 1, unit) - 1)).toBeLessThan(1e-9)
  })
})

describe('convert-units agrees within its own rounding', () => {
  // Its factors between systems are rounded: a pound as 0.453592 kg, a foot by way of 3.28084 ft to the metre.
  // The last column is how far each of its factors lies from the exact one, as it was worked out from its tables.
  const cases: readonly (readonly [Kind, string, string, string, number])[] = [
    ['length', 'in', 'in', 'm', 3.2e-8],
    ['length', 'ft', 'ft', 'm', 3.2e-8],
    ['length', 'yd', 'yd', 'm', 3.2e-8],
    ['length', 'mi', 'mi', 'm', 3.2e-8],
    ['length', 'km', 'km', 'm', 1e-15],
    ['area', 'in²', 'in2', 'm2', 9.7e-7],
    ['area', 'ft²', 'ft2', 'm2', 9.7e-7],
    ['mass', 'lb', 'lb', 'kg', 8.2e-7],
    ['mass', 'oz', 'oz', 'kg', 8.2e-7],
    ['mass', 'g', 'g', 'kg', 1e-15],
    ['pressure', 'psi', 'psi', 'Pa', 4e-7],
    ['pressure', 'bar', 'bar', 'Pa', 1e-15],
    ['speed', 'km/h', 'km/h', 'm/s', 1e-15],
    ['energy', 'kWh', 'kWh', 'J', 1e-15],
    ['power', 'kW', 'kW', 'W', 1e-15],
    ['angle', '°', 'deg', 'rad', 1e-15],
    ['time', 'h', 'h', 's', 1e-15],
    ['volumeFlow', 'L/min', 'l/min', 'm3/s', 1e-15],
  ]
  it.each(cases)('%s in %s (%s to %s, within %d)', (kind, unit, from, to, rounding) => {
    expect(Math.abs(convert(1).from(from).to(to) / toSi(kind, 1, unit) - 1)).toBeLessThanOrEqual(rounding)
  })
  it('temperatures', () => {
    expect(convert(68).from('F').to('K')).toBeCloseTo(toSi('temperature', 68, '°F'), 10)
    expect(convert(21.5).from('C').to('K')).toBeCloseTo(toSi('temperature', 21.5, '°C'), 10)
  })
})

describe('js-quantities agrees', () => {
  const cases: readonly (readonly [Kind, string, string, string])[] = [
    ['length', 'mi', 'mi', 'm'],
    ['mass', 'lb', 'lbs', 'kg'],
    ['mass', 'oz', 'oz', 'kg'],
    ['speed', 'mph', 'mph', 'm/s'],
    ['speed', 'km/h', 'kph', 'm/s'],
    ['angularSpeed', 'rpm', 'rpm', 'rad/s'],
    ['force', 'lbf', 'lbf', 'N'],
    ['pressure', 'psi', 'psi', 'Pa'],
    ['pressure', 'bar', 'bar', 'Pa'],
    ['power', 'hp', 'hp', 'W'],
    ['energy', 'kWh', 'kWh', 'J'],
    ['charge', 'Ah', 'Ah', 'C'],
    ['torque', 'lbf·ft', 'lbf*ft', 'N*m'],
    ['springRate', 'lbf/in', 'lbf/in', 'N/m'],
    ['volume', 'in³', 'in3', 'm3'],
    ['angle', '°', 'deg', 'rad'],
    ['temperatureDifference', '°F', 'degF', 'degK'],
    ['capacitance', 'µF', 'uF', 'F'],
  ]
  it.each(cases)('%s in %s', (kind, unit, from, to) => {
    const theirs = Qty(1, from).to(to).scalar
    if (kind === 'temperatureDifference') expect(theirs).toBeCloseTo(5 / 9, 12)
    // Its tables hold the pound-force as 4.448222 N and the psi as 6894.76 Pa; what is made of them is no better.
    const rounding = /lbf|psi/.test(unit) ? 4e-7 : 1e-9
    expect(Math.abs(theirs / toSi(kind, 1, unit) - 1)).toBeLessThan(rounding)
  })
})
