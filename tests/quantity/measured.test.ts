/** Values with their uncertainty in one text: what is read, and what is refused in what words. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { InputError, type InputIssue, type Kind, kinds, quantity } from '../../src/quantity/index.js'
import { differenceOf } from '../../src/quantity/kinds.js'
import { type MeasuredValue, readMeasured } from '../../src/quantity/measured.js'
import { fromSi } from '../../src/quantity/quantity.js'
import { runs } from '../runs.js'

/** What was read of a text that must be readable. */
function measured(kind: Kind, text: string): MeasuredValue {
  const found = readMeasured(kind, text)
  if (found !== undefined && 'value' in found) return found
  throw new Error(`'${text}' was not read: ${JSON.stringify(found)}`)
}

/** What is wrong with a text that must be refused. */
function refusal(kind: Kind, text: string): InputIssue {
  const found = readMeasured(kind, text)
  if (found !== undefined && !('value' in found)) return found
  throw new Error(`'${text}' was not refused`)
}

const unitsOf = (kind: Kind): string[] => Object.keys(kinds[kind].units)
const kind = fc.constantFrom(...(Object.keys(kinds) as Kind[]))
/** A kind, a unit of it and a unit of its difference; a ratio is a plain number. */
const written = kind.chain((each) =>
  fc.tuple(
    fc.constant(each),
    fc.constantFrom(...(each === 'ratio' ? ['1'] : unitsOf(each))),
    fc.constantFrom(...unitsOf(differenceOf(each)).filter((unit) => unit !== '%')),
  ),
)
const [value, uncertainty] = [fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 1e9 })].map((whole) =>
  whole.map((number) => number / 1000),
) as [fc.Arbitrary<number>, fc.Arbitrary<number>]
const sign = fc.constantFrom(' ± ', '±', ' +/- ', ' ±', '\u00a0±\u202f')
const withUnit = (number: number, unit: string) => (unit === '1' ? `${number}` : `${number} ${unit}`)

describe('reading a value with its uncertainty', () => {
  it.each([
    ['area', '0.74 m² ± 0.05 m²', '0.74 m²', '0.025 m²'],
    ['area', '0.74 m² ± 500 cm²', '0.74 m²', '250 cm²'],
    ['area', '0.74 m2 +/- 7 %', '0.74 m²', '0.0259 m²'],
    ['area', '0.74m²±7%', '0.74 m²', '0.0259 m²'],
    ['force', '-200 N ± 10 %', '-200 N', '10 N'],
    ['length', '0 mm ± 4 mm', '0 mm', '2 mm'],
    ['mass', '9 kg ± 200 %', '9 kg', '9 kg'],
    ['ratio', '0.013 ± 0.001', '0.013', '0.0005'],
    ['ratio', '0.013 ± 10 %', '0.013', '0.00065'],
    ['temperature', '20 °C ± 2 K', '20 °C', '1 K'],
    ['temperature', '20 °C ± 2 °C', '20 °C', '1 °C'],
    ['temperature', '68 °F ± 9 °F', '68 °F', '4.5 °F'],
  ] as const)('%s from %j', (each, text, alone, standard) => {
    const found = measured(each, text)
    expect([String(found.value), String(found.standardUncertainty)]).toEqual([alone, standard])
    expect([found.value.kind, found.standardUncertainty.kind]).toEqual([each, differenceOf(each)])
  })

  it('has the mass standard of JCGM 100:2008, 7.2.2 (from memory)', () => {
    // 100.021 47 g, combined standard uncertainty 0.35 mg. The ± 0.79 mg of 7.2.4 is for k = 2.26 and not for 2.
    const standard = measured('mass', '100.02147 g ± 0.00070 g').standardUncertainty
    expect(standard.toJSON()).toBe('0.00035 g')
  })

  it('reads the value as it is read alone, and the uncertainty as half of it is read', () => {
    fc.assert(
      fc.property(written, value, uncertainty, sign, ([each, unit, other], x, u, between) => {
        const found = measured(each, `${withUnit(x, unit)}${between}${withUnit(u, other)}`)
        expect(found.value.toJSON()).toBe(quantity(each, x, unit as never).toJSON())
        const half = quantity(differenceOf(each), u / 2, other as never)
        expect(found.standardUncertainty.si).toBe(half.si)
        expect(found.standardUncertainty.unit).toBe(other)
      }),
      { numRuns: runs(300) },
    )
  })

  it('takes a share as that much of the size of the value', () => {
    fc.assert(
      fc.property(written, value, fc.integer({ min: 1, max: 300 }), fc.boolean(), ([each, unit], x, share, below) => {
        fc.pre(each !== 'temperature')
        const found = measured(each, `${withUnit(below ? -x : x, unit)} ± ${share} %`)
        expect(found.standardUncertainty.in(unit as never) / ((x * share) / 200)).toBeCloseTo(1, 12)
        expect(found.standardUncertainty.unit).toBe(unit)
      }),
      { numRuns: runs(300) },
    )
  })

  it('reads back what quantities write', () => {
    const si = fc.double({ min: 1e-30, max: 1e30, noNaN: true })
    fc.assert(
      fc.property(written, si, si, ([each, unit, other], x, u) => {
        const expanded = fromSi(differenceOf(each), u, other)
        const found = measured(each, `${fromSi(each, x, unit).toJSON()} ± ${expanded.toJSON()}`)
        expect([found.value.si, 2 * found.standardUncertainty.si]).toEqual([x, u])
      }),
      { numRuns: runs(300) },
    )
  })

  it('leaves alone what has no ±', () => {
    fc.assert(
      fc.property(kind, fc.anything(), (each, anything) => {
        fc.pre(!(typeof anything === 'string' && anything.includes('±')))
        expect(readMeasured(each, anything)).toBeUndefined()
      }),
    )
    expect(readMeasured('area', '0.74 m²')).toBeUndefined()
    expect(readMeasured('area', quantity('area', '0.74 m²'))).toBeUndefined()
  })

  it('reads or refuses any text, and lets nothing through that is not above zero', () => {
    const part = fc.oneof(
      fc.string(),
      fc.constantFrom('45 %', '1e308', '1e308 m²', '5e-324', '-5 %', '0 m²', '2 K', '1e999 %', 'NaN', '1e300 %'),
    )
    fc.assert(
      fc.property(kind, part, part, (each, before, after) => {
        const found = readMeasured(each, `${before} ± ${after}`)
        if (found === undefined) throw new Error('a ± was overlooked')
        if ('value' in found) expect(found.standardUncertainty.si).toBeGreaterThan(0)
        else expect(found.hint).toMatch(/^(?!.*(undefined|NaN|Infinity))./s)
      }),
      { numRuns: runs(1000) },
    )
  })
})

describe('refusing a value with its uncertainty', () => {
  it.each([
    ['area', '0.74 m² ± 0.05 m', 'after ±: m measures a length'],
    ['area', '0.74 m ± 0.05 m', 'before ±: m measures a length'],
    ['area', '0.74 m² ± 0.05', 'after ±: which unit? m², mm², cm², in², ft² or kcmil'],
    ['area', '0.74 ± 0.05 m²', 'before ±: which unit? m², mm², cm², in², ft² or kcmil'],
    ['area', '(0.74 ± 0.05) m²', 'write the unit beside both numbers, without brackets'],
    ['area', '0.74 m² ±', "after ±: write a number and a unit, such as '35 mm²'"],
    ['area', '± 0.05 m²', "before ±: write a number and a unit, such as '35 mm²'"],
    ['area', '0.74 m² ± m²', 'after ±: write the number first, then the unit'],
    ['area', '0.74 m² ± NaN m²', 'after ±: only finite numbers are quantities'],
    ['area', 'NaN m² ± 0.05 m²', 'before ±: only finite numbers are quantities'],
    ['area', '0.74 m² ± 0.05 m² ± 0.01 m²', 'write ± once'],
    ['area', '0.74 m² ± 5 % +/- 1 %', 'write ± once'],
    ['area', '0.74 m² ± -0.05 m²', 'write the uncertainty without a sign'],
    ['area', '0.74 m² ± \u22125 %', 'write the uncertainty without a sign'],
    ['area', '0.74 m² ± 0 m²', "leave it out where the value is exact: '0.74 m²'"],
    ['area', '0.74 m² ± 0 %', "leave it out where the value is exact: '0.74 m²'"],
    ['area', '0 m² ± 5 %', 'a share of zero is zero: write the uncertainty without %'],
    [
      'area',
      '0.74 m² ± 0,05 m²',
      "after ±: write '0.05 m²': the decimal sign is a point, and thousands are not separated",
    ],
    ['area', '1e300 m² ± 1e20 %', 'that is more, or closer to zero, than a number can hold'],
    ['area', '1 m² ± 5e-324 m²', 'that is more, or closer to zero, than a number can hold'],
    [
      'ratio',
      '45 % ± 2 %',
      "that can be read in two ways: write '0.45 ± 0.02' for 43 % to 47 %, or '0.45 ± 2 %' for 44.1 % to 45.9 %",
    ],
    ['ratio', '45 % ± 0.02', "write the ratio as a plain number: '0.45 ± 0.02' for 43 % to 47 %"],
    [
      'temperature',
      '20 °C ± 5 %',
      'write the uncertainty of a temperature in K: a share would depend on where its zero is',
    ],
    ['temperature', '20 °C ± 2 bar', 'after ±: bar measures a pressure'],
    ['temperature', '-300 °C ± 2 K', 'before ±: that is below absolute zero, -273.15 °C'],
  ] as const)('%s from %j', (each, text, hint) => {
    expect(refusal(each, text)).toMatchObject({ received: `'${text}'`, hint })
  })

  it.each([
    ['area', "an area with its uncertainty such as '35 mm² ± 5 %'"],
    ['temperature', "a temperature with its uncertainty such as '20 °C ± 2 K'"],
    ['ratio', "a ratio with its uncertainty such as '0.95 ± 5 %'"],
  ] as const)('shows how %s is written', (each, expected) => {
    expect(refusal(each, 'x ± y').expected).toBe(expected)
  })

  it('shows of every kind a text that can be read', () => {
    for (const each of Object.keys(kinds) as Kind[]) {
      const [, example = ''] = /'(.*)'$/.exec(refusal(each, 'x ± y').expected) ?? []
      expect(measured(each, example).standardUncertainty.si).toBeGreaterThan(0)
    }
  })

  it('offers two texts for a ratio in %, each of which means what it says', () => {
    const whole = fc.integer({ min: 1, max: 99 })
    fc.assert(
      fc.property(whole, whole, (percent, off) => {
        const { hint = '' } = refusal('ratio', `${percent} % ± ${off} %`)
        const [absolute, share] = [...hint.matchAll(/'(.*?)'/g)].map(([, text = '']) => measured('ratio', text))
        for (const found of [absolute, share]) expect(found?.value.si).toBe(percent / 100)
        expect(absolute?.standardUncertainty.si).toBeCloseTo(off / 200, 12)
        expect(share?.standardUncertainty.si).toBeCloseTo((percent * off) / 20_000, 12)
      }),
    )
  })

  it('is told where a value alone is read', () => {
    const read = () => quantity('area', '0.74 m² ± 5 %' as never)
    expect(read).toThrow(InputError)
    expect(read).toThrow("got '0.74 m² ± 5 %' (no uncertainty is taken here: leave out '± 5 %')")
  })
})
