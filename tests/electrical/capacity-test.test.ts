/** The test of a module, from its log. */
import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { capacityTest } from '../../src/electrical/index.js'
import { between } from '../between.js'
import { runs } from '../runs.js'
import { benchCharge, benchLog, benchRows, textOf } from './bench-log.js'

const module = { minimumVoltage: '36 V', maximumVoltage: '50.4 V', newCapacity: '45 Ah' } as const
const tested = (log: string | Iterable<string>, more: object = {}) =>
  capacityTest({ log, module, longestGap: '2 h', ...more })
const verdicts = (found: ReturnType<typeof tested>) =>
  Object.fromEntries(found.checks.map(({ id, verdict }) => [id.replace('test.', ''), verdict]))

describe('the test of a module', () => {
  it('counts what comes out and what goes in, as trapezia by hand', () => {
    const { capacity, energy, charged, coulombicEfficiency, current, temperature } = tested(benchLog)
    expect(capacity.in('Ah')).toBeCloseTo(benchCharge, 9)
    const byHand = benchRows.reduce((sum, [time, amperes, volts], i) => {
      const [before, a, v] = benchRows[i - 1] ?? [time, amperes, volts]
      return time < 601 || time > 7701 ? sum : sum + ((time - before) * (amperes * volts + a * v)) / 2
    }, 0)
    expect(energy.in('J')).toBeCloseTo(byHand, 3)
    const into = (0.5 * 20 + 6899 * 20 + 600 * 11 + 0.5 * 2) / 3600
    expect(charged?.charge.in('Ah')).toBeCloseTo(into, 9)
    expect(coulombicEfficiency?.si).toBeCloseTo(benchCharge / into, 9)
    expect(current.in('A')).toBeCloseTo((benchCharge * 3600) / 7101, 9)
    expect(temperature?.in('°C')).toBeCloseTo(24.5, 9)
  })
  it('reads the resistance ten seconds after each step', () => {
    const { steps, resistance, resistanceUncertainty } = tested(benchLog)
    // 44.98 V at 20 A to 44.4 V at 60 A, and back to 44.96 V at 20 A.
    expect(steps.map(({ line, resistance: each }) => [line, each.in('mΩ').toFixed(6)])).toEqual([
      [8, '14.500000'],
      [10, '14.000000'],
    ])
    expect(resistance?.in('mΩ')).toBeCloseTo(14.25, 9)
    expect(resistanceUncertainty).toBeUndefined()
  })
  it('gives the module for the sheet, with ± where that is known', () => {
    expect(tested(benchLog).module).toEqual({
      minimumVoltage: '36 V',
      maximumVoltage: '50.4 V',
      newCapacity: '45 Ah',
      capacity: '39.57 Ah ± 0.4 Ah',
      resistance: '14.25 mΩ',
    })
  })
  it('finds what a module held that was simulated apart from it', () => {
    // Two resistances and a capacitor behind an open-circuit curve, 39.5556 Ah drawn to 36 V; 10.5 mΩ and 4 mΩ · (1 − e^(−10/3)) after 10 s.
    const log = readFileSync(new URL('../../examples/module-test.csv', import.meta.url), 'utf8')
    const { capacity, capacityUncertainty, resistance, resistanceUncertainty, checks, roundTripEfficiency } =
      capacityTest({ log, module })
    expect(Math.abs(capacity.in('Ah') - 39.5556)).toBeLessThan(capacityUncertainty.in('Ah'))
    expect(Math.abs(capacity.in('Ah') - 39.5556)).toBeLessThan(0.001)
    expect(Math.abs((resistance?.in('mΩ') ?? 0) - 14.357)).toBeLessThan(resistanceUncertainty?.in('mΩ') ?? 0)
    expect(checks.filter(({ verdict }) => verdict === 'fail' || verdict === 'unknown')).toEqual([])
    expect(roundTripEfficiency?.si).toBeGreaterThan(0.97)
  })
  it('is the same in other units, separators and orders of columns, and with the other sign', () => {
    const wanted = tested(benchLog).capacity.si
    const header = 'I (mA)\tnote\tU (mV)\tt (min)\tT (°F)'
    const rows = benchRows.map(([t, i, u]) => [-i * 1000, 'x', u * 1000, t / 60, 76.1].join('\t'))
    const found = tested(`${header}\r\n${rows.join('\r\n')}`, { positive: 'charge' })
    expect(found.capacity.si).toBeCloseTo(wanted, 3)
    expect(found.temperature?.in('°C')).toBeCloseTo(24.5, 9)
    expect(found.assumptions.map(({ text }) => text)).toContain("Nothing is made of the columns 'note'.")
    expect(verdicts(found)).toEqual(verdicts(tested(benchLog)))
  })
  it('is the same wherever the text is cut, and however often the rows between are written', () => {
    const wanted = tested(benchLog)
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 80 }), between(0.1, 0.9), (length, at) => {
        const pieces = benchLog.match(new RegExp(`[\\s\\S]{1,${length}}`, 'g')) ?? []
        expect(tested(pieces).capacity.si).toBe(wanted.capacity.si)
        const denser = benchRows.flatMap((row, i) => {
          const before = benchRows[i - 1]
          return before === undefined
            ? [row]
            : [row.map((each, j) => (before[j] as number) + at * (each - (before[j] as number))), row]
        })
        expect(tested(textOf(denser)).capacity.si / wanted.capacity.si).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(30) },
    )
  })
  it('knows what it holds to the sensor, to its zero and to the spacing of the rows', () => {
    const { capacityUncertainty, capacity } = tested(benchLog, { currentUncertainty: 0 })
    // Steps of 20 A, 40 A and back again lie within a second each: half of that is not known.
    expect(capacityUncertainty.in('C')).toBeCloseTo(Math.hypot(10, 20, 20, 10), 6)
    const offset = benchRows.map(([t, i, u]) => [t, i === 0 ? 0.2 : i + 0.2, u])
    const off = tested(textOf(offset), { currentUncertainty: 0 })
    expect(off.capacityUncertainty.in('C')).toBeCloseTo(Math.hypot(Math.hypot(10.1, 20, 20, 10.1), 0.2 * 7101), -2)
    expect(Math.abs(off.capacity.si - capacity.si)).toBeLessThan(off.capacityUncertainty.si)
  })
})

describe('a log that is not whole', () => {
  const lines = benchLog.split('\n')
  const withLine = (line: number, text: string) => lines.map((each, i) => (i === line - 1 ? text : each)).join('\n')

  it.each([
    [withLine(5, '601,x,49.92,24.5'), 5, "expected a current in A, a number such as 12.5, got 'x'"],
    [withLine(7, '3600,20,45'), 7, "expected 4 columns as in the header, got 3, '3600,20,45'"],
    [withLine(7, '3600,20,0,45,24.5'), 7, '(a comma separates columns here: write 0.5, not 0,5)'],
    [withLine(6, ''), 6, 'expected a row, got an empty line'],
    [
      withLine(13, '600,20,43,24.5'),
      13,
      'expected a time after that of the last row that can be read, 3635 s, got 600 s',
    ],
    [withLine(14, '7000,20,NaN,24.5'), 14, "expected a voltage in V, a number such as 12.5, got 'NaN'"],
  ])('tells each row by its line (%#)', (log, line, why) => {
    const found = tested(log)
    expect(found.unreadable.map((each) => each.line)).toEqual([line])
    expect(found.unreadable[0]?.why).toContain(why)
    expect(verdicts(found).rows).toBe('unknown')
    expect(found.checks[0]?.text).toContain(`line ${line}`)
    expect(found.module).not.toHaveProperty('capacity')
  })
  it('refuses a log of which hardly anything can be read, and lists the lines', () => {
    const bad = `${lines[0]}\n${benchRows.map((row) => row.join(';')).join('\n')}`
    expect(() => tested(bad)).toThrow(/log: expected at least two rows .* got 0 that can be read, 20 that cannot/)
    expect(() => tested(bad)).toThrow('line 2: expected 4 columns as in the header')
    expect(() => tested(bad)).toThrow('line 21: expected 4 columns')
  })
  it.each([
    ['', "line 1: expected a header such as 'time (s),current (A),voltage (V)', got nothing"],
    ['time (s),current (A)\n', 'line 1: expected one column with a voltage and its unit in brackets'],
    [
      'time (s),current (A),a (V),b (V)\n',
      "got 'a (V)' and 'b (V)' (the voltage of a cell has a title that begins with cell)",
    ],
    ['time (s),current (A),voltage (V)\n', 'log: expected at least two rows behind the header'],
    ['time (s),current (A),voltage (V)\n0,0,50\n1,0,50\n', 'log: expected a discharge of the module, got none'],
  ])('refuses %j', (log, words) => expect(() => tested(log)).toThrow(words))
  it('refuses a current whose sign is the other way round', () => {
    expect(() => tested(benchLog, { positive: 'charge' })).toThrow(
      "positive: expected 'discharge', got 'charge' (the voltage rises while that current flows)",
    )
  })
  it('tells a gap by what it may hide, and one at rest hides nothing', () => {
    const gaps = (longestGap: string) => tested(benchLog, { longestGap })
    expect(gaps('29 min').gaps.map(({ line, hides }) => [line, hides.in('Ah').toFixed(3)])).toEqual([
      [14, '10.000'],
      [19, '38.328'],
    ])
    expect(verdicts(gaps('29 min')).gaps).toBe('fail')
    expect(gaps('29 min').module).not.toHaveProperty('capacity')
  })
  it('takes no pulse on the way for the empty end', () => {
    const early = benchRows.filter(([time]) => time < 7000).map((row) => (row[0] === 3623 ? [3623, 60, 35.9] : row))
    const found = tested(textOf([...early, [7000, 0, 41]]))
    expect(verdicts(found).empty).toBe('fail')
    expect(found.module).not.toHaveProperty('capacity')
  })
  it('does not know whether a module was full that it only saw at rest', () => {
    expect(verdicts(tested(textOf(benchRows.filter(([time]) => time > 0)))).full).toBe('near')
    const relaxed = benchRows.filter(([time]) => time > 0).map(([t, i, u]) => [t, i, Math.min(u, 49)])
    expect(verdicts(tested(textOf(relaxed))).full).toBe('unknown')
  })
  it('holds each cell to its limits where the log tells them', () => {
    const cell = { minimumVoltage: '2.8 V', maximumVoltage: '4.2 V' }
    const header = 'time (s),current (A),voltage (V),cell 1 (V),cell 12 (V),temperature (°C)'
    const rows = (spread: number) =>
      benchRows.map(([t, i, u]) => [t, i, u, (u / 12 + spread).toFixed(4), (u / 12 - spread).toFixed(4)])
    const limited = { module: { ...module, cell } }
    const even = tested(textOf(rows(0.01) as never, header), limited)
    expect([verdicts(even).highestCell, verdicts(even).lowestCell]).toEqual(['near', 'pass'])
    expect(verdicts(tested(textOf(rows(0.05) as never, header), limited)).highestCell).toBe('fail')
    expect(verdicts(tested(textOf(rows(0.25) as never, header), limited)).lowestCell).toBe('fail')
    expect(verdicts(tested(benchLog, limited)).highestCell).toBe('unknown')
  })
})
