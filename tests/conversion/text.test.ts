/** An assessment as text: what a reader sees first, in his units, in lines of his width. */
import { describe, expect, it } from 'vitest'
import { assess, readBuild } from '../../src/conversion/index.js'
import { type Quantity, quantity } from '../../src/quantity/index.js'
import { shownIn } from '../../src/report/figure.js'
import { toText } from '../../src/report/index.js'
import { demo, of, sheetOf } from './sheets.js'

const found = of({})

describe('the text of an assessment', () => {
  const text = toText(found)
  it('comes to its verdict first, in at most twelve lines', () => {
    const blocks = text.split('\n\n')
    expect(blocks[1]?.split('\n').length).toBeLessThanOrEqual(12)
    expect(blocks[1]).toMatch(
      /^NEAR: every check is met, and some are near their limits\.\n {2}near {5}Input torque in first/,
    )
    expect(blocks[1]).toContain('650 kg → 655 kg')
  })
  it('tells the same check of four gears in one line, with the worst and the count', () => {
    expect(text.match(/Input torque in/g)).toHaveLength(2)
    expect(text).toMatch(/NEAR {2}Input torque in first: 100 N·m, at most 105 N·m; 4\.8 % left, the worst of 4/)
  })
  it('numbers the assumptions, each once, and leaves them out where it is to be brief', () => {
    const numbered = text.split('\n').filter((line) => /^ {2,4}\d+ {2}\S/.test(line))
    expect(numbered).toHaveLength(found.assumptions.length)
    expect(new Set(found.assumptions.map((each) => each.text)).size).toBe(found.assumptions.length)
    expect(toText(found, { brief: true })).not.toContain('Taken for granted')
  })
  it('keeps running text to a width', () => {
    const narrow = toText(found, { width: 60 })
    const isTable = (line: string) => / {3}/.test(line.trim()) || /^ {12}/.test(line)
    for (const line of narrow.split('\n').filter((each) => !isTable(each))) expect(line.length).toBeLessThanOrEqual(60)
  })
  it('tells of all that fails first, and of what was asked for and not assessed', () => {
    const lacking = toText(of({ gearbox: undefined }))
    expect(lacking).toMatch(/^OPEN: nothing fails, and not everything could be judged\.$/m)
    expect(lacking).toMatch(/not assessed {2}Gears, The laden car on the road/)
  })
  it('refuses what is no assessment, and options that there are not', () => {
    expect(() => toText(demo() as never)).toThrow('toText: one input cannot be used\n  expected what assess has found')
    expect(() => toText(undefined as never)).toThrow('expected what assess has found')
    expect(() => toText(found, { unit: 'imperial' } as never)).toThrow(
      "unit: expected no such option; there are brief, width, units, got 'imperial' (did you mean units?)",
    )
    expect(() => toText(found, { brief: 'no' as never })).toThrow("brief: expected true or false, got 'no'")
  })
  it('refuses what is no width and no unit', () => {
    expect(() => toText(found, { width: 20 })).toThrow(
      'width: expected a whole number of characters, at least 40, got 20',
    )
    expect(() => toText(found, { units: { length: 'kg' } as never })).toThrow('units.length: expected a unit of it: m')
    expect(() => toText(found, { units: { lenght: 'mi' } as never })).toThrow(
      'units.lenght: expected a kind of quantity',
    )
    expect(() => toText(found, { units: 'metric' as never })).toThrow("units: expected 'imperial', or units by kind")
  })
})

describe('a figure', () => {
  const { alone: shown, sure } = shownIn(undefined)
  it.each([
    ['time', 8640, 's', '2 h 24 min'],
    ['time', 7200, 's', '2 h'],
    ['time', 44.23, 'min', '44 min'],
    ['time', 59.99, 'min', '1 h'],
    ['time', 90, 's', '1 min 30 s'],
    ['time', 8.0301, 's', '8.03 s'],
    ['time', 0.00093, 's', '0.93 ms'],
    ['mass', 1105, 'kg', '1105 kg'],
    ['energy', 14.563, 'kWh', '14.6 kWh'],
    ['mass', -0.08823, 'kg', '−0.0882 kg'],
    ['temperature', -7, '°C', '−7 °C'],
    ['angularSpeed', 3083, 'rpm', '3080 rpm'],
    ['length', 1605, 'mm', '1605 mm'],
    ['length', 0.0923, 'mm', '0.1 mm'],
    ['length', 0.04, 'mm', '0 mm'],
  ] as const)('of %s, %d %s, is shown as %s', (kind, value, unit, words) => {
    expect(shown(quantity(kind, value, unit as never))).toBe(words)
  })
  it('is shown no finer than a step', () => {
    expect(shown(quantity('mass', -0.08823, 'kg'), 0.0178)).toBe('−0.09 kg')
    expect(shown(quantity('mass', 0.001, 'kg'), 0.0178)).toBe('0 kg')
  })
  // JCGM 100:2008, 7.2.6: an uncertainty has at most two digits, and its estimate goes as far.
  it.each([
    ['length', 110.24, 19.03, 'km', '110 km ± 19 km'],
    ['length', 1234.5, 187, 'km', '1230 km ± 190 km'],
    ['speed', 147.43, 5.94, 'km/h', '147.4 km/h ± 5.9 km/h'],
    ['speed', 147.43, 9.96, 'km/h', '147 km/h ± 10 km/h'],
    ['ratio', 55.2311, 0.3142, '%', '55.23 % ± 0.31 %'],
    ['energy', 14.5632, 0.8712, 'kWh', '14.56 kWh ± 0.87 kWh'],
    ['time', 8.0301, 0.388, 's', '8.03 s ± 0.39 s'],
    ['time', 235, 14, 'min', '3 h 55 min ± 14 min'],
    ['time', 235, 0.75, 'min', '3 h 55 min ± 1 min'],
    ['time', 235, 0.1, 'min', '3 h 55 min'],
    ['mass', 3, 40, 'kg', '3 kg ± 40 kg'],
    ['mass', 0.3, 40, 'kg', '0 kg ± 40 kg'],
  ] as const)('of %s, %d ± %d %s, is shown as %s', (kind, value, uncertainty, unit, words) => {
    const [one, other] = [value, uncertainty].map((each) => quantity(kind, each, unit as never)) as [Quantity, Quantity]
    expect(sure(one, other).join(' ± ')).toBe(words)
  })
  it('has the digits of its band in summary and sections alike', () => {
    const banded = toText(assess(readBuild(demo()), { bands: true }))
    expect(banded).toMatch(/^ {2}energy +14\.56 kWh ± 0\.87 kWh$/m)
    expect(banded).toMatch(/^ {2}energy {2,}14\.56 kWh$/m)
    expect(banded).toMatch(/0 to 80 km\/h in 8\.03 s ± 0\.39 s/)
    expect(banded.split('\n\n')[1]?.split('\n').length).toBeLessThanOrEqual(12)
  })
  it.each([
    ['the demo', found, undefined],
    ['the demo in pounds and miles', found, 'imperial'],
    ['the first try', assess(readBuild(sheetOf('wagtail-first-try'))), undefined],
  ] as const)('has three digits at most in every figure, table and check of %s', (_, assessment, units) => {
    // What is weighed and placed is not rounded before the point.
    const asWeighed = /^−?\d+ (?:kg|lb|mm|m|km|in|ft|mi)$/
    const figure = /^−?(\d+(?:\.\d+)?)(?:e\d+)?(?: [^\s\d,;.]\S*)?$/
    const text = toText(assessment, { width: 400, ...(units === undefined ? {} : { units }) })
    const cells = text
      .split('\n')
      .flatMap((line) => (line.startsWith('  ') ? line.slice(2).split(/ {3,}/).slice(1) : []))
    const outcomes = [...text.matchAll(/: ([^:;]+), at (?:most|least) ([^;]+); [\d.]+ % (?:left|beyond)/g)]
    // Where figure and limit would read alike, both have the digits that tell them apart.
    const told = outcomes.flatMap(([, actual = '', limit = '']) =>
      Number.parseFloat(actual) === Number.parseFloat(limit) ? [] : [actual, limit],
    )
    let count = 0
    for (const cell of [...cells.filter((each) => figure.test(each)), ...told]) {
      if (asWeighed.test(cell)) continue
      count++
      const [, number = ''] = figure.exec(cell) ?? []
      const digits = number.replace('.', '').replace(/^0+/, '')
      expect([cell, (number.includes('.') ? digits : digits.replace(/0+$/, '')).length <= 3]).toEqual([cell, true])
    }
    expect(count).toBeGreaterThan(100)
  })
  it('is shown in pounds and miles, and by kind; millimetres never become miles', () => {
    const { alone: imperial } = shownIn('imperial')
    // NIST SP 811, Appendix B: 1 lb is 0.453 592 37 kg, 1 mi is 1.609 344 km, 1 in is 25.4 mm, exactly.
    expect(imperial(quantity('mass', 45.359237, 'kg'))).toBe('100 lb')
    expect(imperial(quantity('length', 160.9344, 'km'))).toBe('100 mi')
    expect(imperial(quantity('length', 254, 'mm'))).toBe('10 in')
    expect(imperial(quantity('temperature', -40, '°C'))).toBe('−40 °F')
    const { alone: miles } = shownIn({ length: 'mi' })
    expect(miles(quantity('length', 160.9344, 'km'))).toBe('100 mi')
    expect(miles(quantity('length', 254, 'mm'))).toBe('254 mm')
  })
})
