/** Sections chosen, each refusal provoked, and the laws of a run. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  awg,
  cableAmpacity,
  cableDuty,
  cableTemperature,
  metricSections,
  sizeCable,
} from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import { runs } from '../runs.js'
import { said } from '../said.js'

const run = {
  current: '150 A',
  length: '2.4 m',
  maximumDrop: '1 %',
  systemVoltage: '178 V',
  insulationLimit: '105 °C',
} as const
const rank = (name: string) => metricSections.findIndex((each) => each.name === name)
const amperes = (value: number) => quantity('current', value, 'A')

describe('sizeCable', () => {
  it('gives what its documentation shows', () => {
    const { section, temperature, drop, rejected } = sizeCable(run)
    expect([section.name, String(temperature), String(drop)]).toEqual(['50 mm²', '65.08 °C', '0.3272 V'])
    expect(rejected.at(-1)?.reasons).toEqual([
      'the cable brings 79.79 °C to its terminals, more than the 75 °C for which they are made',
    ])
  })

  it('takes what insulation and terminals both bear', () => {
    expect(sizeCable({ ...run, terminalLimit: '105 °C' }).section.name).toBe('25 mm²')
    expect(sizeCable({ ...run, terminalLimit: '90 °C' }).section.name).toBe('35 mm²')
    expect(sizeCable({ ...run, terminalLimit: '60 °C' }).section.name).toBe('70 mm²')
  })

  it('agrees with the cable that it chose', () => {
    const { section, ampacity, temperature } = sizeCable(run)
    const cable = { area: section.area, ambient: '40 °C', laid: 'touching' } as const
    expect(ampacity.si).toBeCloseTo(cableAmpacity({ ...cable, limit: '105 °C' }).ampacity.si, 9)
    expect(temperature.si).toBeCloseTo(cableTemperature({ ...cable, current: '150 A' }).conductorTemperature.si, 9)
  })

  it('takes the least that serves, and gives reasons for every smaller one', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 500, noNaN: true }), (current) => {
        const { section, rejected, checks } = sizeCable({
          current: amperes(current),
          length: '3 m',
          insulationLimit: '105 °C',
        })
        expect(rejected.map(({ name }) => name)).toEqual(
          metricSections.slice(0, rank(section.name)).map(({ name }) => name),
        )
        for (const { reasons } of rejected) expect(reasons.length).toBeGreaterThan(0)
        for (const { verdict } of checks) expect(verdict).not.toBe('fail')
      }),
      { numRuns: runs(25) },
    )
  })

  it('never takes less copper for more current, more length, hotter air or less drop', () => {
    const of = (given: object) => rank(sizeCable({ ...run, ...given }).section.name)
    expect(of({ current: '250 A' })).toBeGreaterThan(of({}))
    expect(of({ ambient: '70 °C' })).toBeGreaterThan(of({}))
    expect(of({ length: '20 m' })).toBeGreaterThan(of({}))
    expect(of({ maximumDrop: '0.2 V' })).toBeGreaterThan(of({}))
    expect(of({ bundled: 0.7 })).toBeGreaterThan(of({}))
    expect(of({ laid: 'apart' })).toBeLessThanOrEqual(of({}))
    expect(of({ conductor: 'aluminium' })).toBeGreaterThan(of({}))
  })

  it('lets a bundle leave a cable its share of what it carries alone', () => {
    const { section, ampacity } = sizeCable({ ...run, bundled: 0.7 })
    const cable = { area: section.area, ambient: '40 °C', laid: 'touching', limit: '105 °C' } as const
    expect(ampacity.ratioTo(cableAmpacity(cable).ampacity)).toBeCloseTo(0.7, 12)
  })

  it('drops over two halves what it drops over the whole', () => {
    const of = (length: '1.2 m' | '2.4 m') => sizeCable({ current: '150 A', length }).drop.si
    expect(2 * of('1.2 m')).toBeCloseTo(of('2.4 m'), 12)
  })

  it('drops as IEC 60228 and the coefficient of copper have it', () => {
    // 35 mm², 0.554 Ω/km at 20 °C, 3 m each way, 150 A: 0.6358 V at 90 °C.
    const { section, drop, temperature } = sizeCable({
      current: '150 A',
      length: '3 m',
      insulationLimit: '90 °C',
      ambient: '30 °C',
    })
    const resistance = { '25 mm²': 0.78e-3, '35 mm²': 0.554e-3 }[section.name] as number
    const expected = 2 * 3 * 150 * resistance * (1 + 0.00393 * (temperature.in('°C') - 20))
    expect(drop.si).toBeCloseTo(expected, 9)
  })

  it('withstands what k²S² withstands, and takes more copper where a fault asks for it', () => {
    const { withstand, section } = sizeCable({ ...run, insulationLimit: '90 °C', faultLimit: '250 °C' })
    // k = 143 from 90 °C to 250 °C, IEC 60364-5-54, rounded to whole numbers.
    expect(Math.abs(withstand.si / (143 * section.area.in('mm²')) ** 2 - 1)).toBeLessThan(0.012)
    const { section: faulted, rejected, checks } = sizeCable({ ...run, fault: { current: '12 kA', time: '0.2 s' } })
    expect(rank(faulted.name)).toBeGreaterThan(rank(section.name))
    expect(rejected.at(-1)?.reasons.join()).toMatch(
      /^the cable withstands \d+\.?\d* kA²·s, less than the 28\.8 kA²·s of the fault$/,
    )
    expect(checks.map(({ name }) => name)).toContain('Fault through the cable')
  })

  it('holds a profile to the mean that warms and to the peak that drops', () => {
    const profile = [
      ['300 A', '20 s'],
      ['60 A', '60 s'],
    ] as const
    const { checks, drop, loss, assumptions } = sizeCable({ profile, length: '2.4 m', series: 'american' })
    // Heat of the root mean square through the resistance that drops the greatest current.
    expect(loss.si).toBeCloseTo((drop.si / 300) * ((300 ** 2 * 20 + 60 ** 2 * 60) / 80), 9)
    expect(checks[0]?.name).toBe('Root mean square of the load')
    expect(checks[0]?.limit?.in('A' as never)).toBeCloseTo(Math.sqrt((300 ** 2 * 20 + 60 ** 2 * 60) / 80), 9)
    const steady = sizeCable({ current: '158.7 A', length: '2.4 m', series: 'american' })
    expect(drop.ratioTo(steady.drop)).toBeGreaterThan(1.8)
    expect(assumptions.map(said).join()).toContain('until each round warms the cable as the last one did')
  })

  it('finds for a profile the peak to which many rounds from the cold lead', () => {
    for (const profile of [
      [
        ['260 A', '20 s'],
        ['60 A', '60 s'],
      ],
      [
        ['220 A', '8 min'],
        ['40 A', '20 min'],
      ],
    ] as const) {
      const { section, temperature } = sizeCable({ profile, length: '2.4 m' })
      const cable = { area: section.area, ambient: '40 °C', laid: 'touching' } as const
      const { peak } = cableDuty({ ...cable, profile, rounds: 200 })
      expect(Math.abs(temperature.si - peak.si)).toBeLessThan(0.02)
    }
  })

  it('takes a profile of milliseconds for its root mean square, and one of weeks for its greatest current', () => {
    const of = (times: readonly ['1 ms' | '1000 h', '3 ms' | '3000 h']) =>
      sizeCable({
        profile: [
          ['200 A', times[0]],
          ['40 A', times[1]],
        ],
        length: '2.4 m',
      })
    const quick = of(['1 ms', '3 ms'])
    const rms = quantity('current', Math.sqrt((200 ** 2 + 3 * 40 ** 2) / 4), 'A')
    const steady = sizeCable({ current: rms, length: '2.4 m' })
    expect(quick.section.name).toBe(steady.section.name)
    expect(Math.abs(quick.temperature.si - steady.temperature.si)).toBeLessThan(0.02)
    const slow = of(['1000 h', '3000 h'])
    const full = sizeCable({ current: '200 A', length: '2.4 m' })
    expect(slow.section.name).toBe(full.section.name)
    expect(slow.temperature.si).toBeCloseTo(full.temperature.si, 2)
  })

  it('knows American gauges by their names, and other thicknesses that are given', () => {
    const { section } = sizeCable({ ...run, series: 'american', terminalLimit: '105 °C' })
    expect(section.name).toBe('3 AWG')
    expect(section.area.si).toBe(awg('3').area.si)
    const { assumptions } = sizeCable({ ...run, geometry: { '50 mm²': '13.9 mm' } })
    expect(assumptions.map(said).join()).not.toContain('thin-walled')
  })

  it('says every default that it used', () => {
    expect(sizeCable({ current: '150 A', length: '2.4 m' }).assumptions.map(said)).toEqual([
      'Metal of the conductor: copper (conductor by default; as in nearly all flexible cable).',
      'Continuous limit of the insulation: 70 °C (insulationLimit by default; PVC, the least of the usual insulations, IEC 60364-5-52; cross-linked cable bears more).',
      'Limit of the insulation in a fault of at most 5 s: 160 °C (faultLimit by default; PVC, the least of the usual insulations, IEC 60364-5-54).',
      'Temperature of the air around the cables: 40 °C (ambient by default; a hot day, common practice, no source).',
      'The voltage drop is not held to a limit: give maximumDrop.',
      'Sections to choose from: metric (series by default; the sections of IEC 60228).',
      'How the cables lie: touching (laid by default; as the cables out and back usually do).',
      'What the terminals at both ends are made for: 75 °C (terminalLimit by default; most terminals, fuses and contactors are, NEC 110.14(C) by analogy; more where both ends state it).',
      'Share of its ampacity that a bundle leaves a cable: 1 (bundled by default; no bundle, duct or hot part warms the cables).',
      'Both conductors carry the same current.',
      'Cable of 50 mm² is 13.36 mm thick, as thin-walled flexible cable is (geometry; common practice, no source).',
    ])
  })

  it('shows each section under its verdict', () => {
    const text = explain(() => sizeCable({ ...run, terminalLimit: '105 °C' })).toText()
    expect(text).toContain(
      '16 mm²: refused, the cable carries 114.3 A, less than the 150 A of the load; the conductor reaches 151.2 °C at 150 A, more than the 105 °C that its insulation bears\n',
    )
    expect(text).toContain(
      '25 mm²: serves, the cable carries 153.8 A, at least the 150 A of the load; the conductor reaches 101.9 °C at 150 A, at most the 105 °C that its insulation bears; the cable brings 101.9 °C to its terminals, at most the 105 °C for which they are made; the cable drops 0.7424 V, at most the 1.78 V allowed\n',
    )
    expect(text).toMatch(
      /dU = 2 · I · r · l = 2 · 150 A · 1\.03 mΩ\/m · 2\.4 m = 0\.742 V {3}\[IEC 60364-5-52, Annex G\]/,
    )
  })

  it('refuses what no listed section carries, with the reasons of the largest and the figures of all', () => {
    try {
      sizeCable({ current: '1500 A', length: '2 m', maximumDrop: '0.1 V', insulationLimit: '105 °C' })
      expect.unreachable()
    } catch (error) {
      expect(error).toBeInstanceOf(CalculationError)
      expect((error as Error).message).toMatch(
        /^sizeCable: no section up to 240 mm² serves\. 240 mm²: the cable carries 728\.4 A, less than the 1500 A of the load; the conductor reaches 319\.8 °C at 1500 A, more than the 105 °C that its insulation bears; the cable drops 1\.\d+ V, more than the 0\.1 V allowed\. Run two in parallel/,
      )
      expect((error as CalculationError).figures['25 mm²']).toContain('burns at 1500 A')
    }
  })

  it.each([
    [{ current: undefined }, 'current and profile: expected one of them'],
    [{ profile: [['3 A', '1 s']] }, 'current and profile: expected one of them'],
    [
      { systemVoltage: undefined },
      "systemVoltage: expected a voltage such as '144 V', of which the drop may be 1 %, got nothing",
    ],
    [
      { maximumDrop: '3 A' },
      "maximumDrop: expected a voltage such as '345 V', or a ratio such as '0.95', got '3 A' (Greatest drop)",
    ],
    [
      { ambient: '110 °C', insulationLimit: undefined },
      'insulationLimit: expected a temperature above the ambient one, 110 °C, got nothing, which is 70 °C',
    ],
    [
      { faultLimit: '90 °C' },
      'faultLimit: expected a temperature above the continuous limit of the insulation, 105 °C, got 90 °C',
    ],
    [{ insulationLimit: '180 °C' }, 'continuous limit of the insulation, 180 °C, got nothing, which is 160 °C'],
    [
      { faultLimit: '1200 °C' },
      'faultLimit: expected a temperature below 1085 °C, at which the conductor melts, got 1200 °C',
    ],
    [
      { ambient: '300 °C', insulationLimit: '400 °C', faultLimit: '500 °C' },
      "ambient: expected a temperature at least -23.15 °C and below 226.85 °C, got '300 °C'",
    ],
    [
      { current: undefined, profile: [{ current: '3 A', time: '1 s' }] },
      'profile[0]: expected a pair [current of either sign, time that it lasts], got an object',
    ],
    [
      { geometry: { '0.5 mm²': '0.1 mm' } },
      'geometry.0.5 mm²: expected a length of at least 0.7979 mm, that of the conductor, got 0.1 mm',
    ],
    [{ geometry: { '33 mm²': '9 mm' } }, 'geometry.33 mm²: expected a section: 0.5 mm², 0.75 mm²'],
    [
      { fault: { current: '3 kA' } },
      "fault: expected current and time, such as '3 kA' and '0.1 s', or jouleIntegral, such as '90000 A²·s', got current",
    ],
    [{ fault: {} }, 'got nothing'],
  ])('refuses %j', (wrong, message) => {
    expect(() => sizeCable({ ...run, ...wrong } as never)).toThrow(message)
  })
})
