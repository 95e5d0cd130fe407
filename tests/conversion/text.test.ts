/** An assessment as text: what a reader sees first, in his units, in lines of his width. */
import { describe, expect, it } from 'vitest'
import { quantity } from '../../src/quantity/index.js'
import { shownIn } from '../../src/report/figure.js'
import { toText } from '../../src/report/index.js'
import { of } from './sheets.js'

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
  const shown = shownIn(undefined)
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
  ] as const)('of %s, %d %s, is shown as %s', (kind, value, unit, words) => {
    expect(shown(quantity(kind, value, unit as never))).toBe(words)
  })
  it('is shown no finer than a step', () => {
    expect(shown(quantity('mass', -0.08823, 'kg'), 0.0178)).toBe('−0.09 kg')
    expect(shown(quantity('mass', 0.001, 'kg'), 0.0178)).toBe('0 kg')
  })
  it('is shown in pounds and miles, and by kind; millimetres never become miles', () => {
    const imperial = shownIn('imperial')
    // NIST SP 811, Appendix B: 1 lb is 0.453 592 37 kg, 1 mi is 1.609 344 km, 1 in is 25.4 mm, exactly.
    expect(imperial(quantity('mass', 45.359237, 'kg'))).toBe('100 lb')
    expect(imperial(quantity('length', 160.9344, 'km'))).toBe('100 mi')
    expect(imperial(quantity('length', 254, 'mm'))).toBe('10 in')
    expect(imperial(quantity('temperature', -40, '°C'))).toBe('−40 °F')
    const miles = shownIn({ length: 'mi' })
    expect(miles(quantity('length', 160.9344, 'km'))).toBe('100 mi')
    expect(miles(quantity('length', 254, 'mm'))).toBe('254 mm')
  })
})
