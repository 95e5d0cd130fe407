/** Arrangements of modules against counting by hand, and what refuses the others. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { arrangePack, packAt } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import { said } from '../said.js'
import { module } from './sheet.js'

const asked = {
  module,
  window: { minimum: '96 V', maximum: '220 V' },
  available: 9,
  energy: '12 kWh',
  batteryCurrent: '250 A',
} as const
const named = (list: readonly { series: number; parallel: number }[]) =>
  list.map(({ series, parallel }) => `${series} x ${parallel}`)

/** An invented module whose voltage at rest goes straight from empty to full. */
const straight = {
  name: 'straight module',
  cellsInSeries: 12,
  nominalVoltage: '44 V',
  minimumVoltage: '36 V',
  maximumVoltage: '50 V',
  openCircuit: [
    [0, '36 V'],
    [1, '50 V'],
  ],
  capacity: '60 Ah',
  resistance: '14 mΩ',
  mass: '20 kg',
  continuousCurrent: '120 A',
  chargeCurrent: '70 A',
} as const

describe('arrangePack', () => {
  it('gives what its documentation shows', () => {
    const { fits, rejected } = arrangePack(asked)
    expect(named(fits)).toEqual(['4 x 2', '3 x 3'])
    expect(rejected[0]?.reasons).toEqual(['holds 10.92 kWh, less than the 12 kWh wanted'])
  })

  it('works out the arrangement of 96 cells in series and 3 in parallel', () => {
    // 345.6 V nominal, 403.2 V full, 240 V empty, 15 Ah, 5.184 kWh, 640 mΩ, 64 V of sag at 100 A.
    const cell = {
      name: 'cell',
      cellsInSeries: 1,
      nominalVoltage: '3.6 V',
      minimumVoltage: '2.5 V',
      maximumVoltage: '4.2 V',
      capacity: '5 Ah',
      resistance: '20 mΩ',
      mass: '70 g',
      continuousCurrent: '35 A',
    } as const
    const window = { minimum: '170 V', maximum: '404 V' } as const
    const { fits } = arrangePack({ module: cell, window, available: 288, batteryCurrent: '100 A', energy: '5.184 kWh' })
    expect(named(fits)).toEqual(['96 x 3'])
    const [made] = fits
    expect(made?.maximumVoltage.in('V')).toBeCloseTo(403.2, 9)
    expect(made?.minimumVoltage.in('V')).toBeCloseTo(240, 9)
    expect(made?.capacity.in('Ah')).toBeCloseTo(15, 9)
    expect(made?.energy.in('kWh')).toBeCloseTo(5.184, 9)
    expect(made?.usableEnergy.in('kWh')).toBeCloseTo(5.184 * 0.8, 9)
    expect(made?.resistance.in('mΩ')).toBeCloseTo(640, 9)
    expect(made?.sag.in('V')).toBeCloseTo(64, 9)
    expect(made?.mass.in('kg')).toBeCloseTo(20.16, 9)
    // 105 A all day: 345.6 V less 67.2 V.
    expect(made?.continuousPower.in('kW')).toBeCloseTo(0.105 * 278.4, 9)
  })

  it('finds just those that a person finds who tries all', () => {
    const pick = fc.record({
      available: fc.integer({ min: 1, max: 24 }),
      minimum: fc.integer({ min: 40, max: 200 }),
      span: fc.integer({ min: 5, max: 300 }),
      energy: fc.integer({ min: 0, max: 30 }),
      current: fc.integer({ min: 0, max: 700 }),
    })
    fc.assert(
      fc.property(pick, ({ available, minimum, span, energy, current }) => {
        const wanted: string[] = []
        for (let series = 1; series <= available; series++) {
          for (let parallel = 1; series * parallel <= available; parallel++) {
            const sagged = series * 36 - (current * series * 0.014) / parallel
            const fits =
              series * 50.4 <= minimum + span &&
              sagged >= minimum &&
              current <= 180 * parallel &&
              series * 44.4 * parallel * 41 >= energy * 1000
            if (fits) wanted.push(`${series} x ${parallel}`)
          }
        }
        const { fits, rejected } = arrangePack({
          module,
          window: { minimum: quantity('voltage', minimum, 'V'), maximum: quantity('voltage', minimum + span, 'V') },
          available,
          energy: quantity('energy', energy, 'kWh'),
          batteryCurrent: quantity('current', current, 'A'),
        })
        expect(named(fits).sort()).toEqual(wanted.sort())
        for (const { reasons } of rejected) expect(reasons.length).toBeGreaterThan(0)
        const masses = fits.map(({ mass }) => mass.si)
        expect(masses).toEqual([...masses].sort((a, b) => a - b))
      }),
    )
  })

  it('takes a window and a mass that are met to the last digits', () => {
    // 3 times 16.8 V and 3 times 0.1 kg come out above 50.4 V and 0.3 kg in binary arithmetic.
    const small = { ...module, nominalVoltage: '14.4 V', minimumVoltage: '12 V', maximumVoltage: '16.8 V' } as const
    const { fits } = arrangePack({
      module: { ...small, mass: '0.1 kg' },
      window: { minimum: '30 V', maximum: '50.4 V' },
      maximumMass: '0.3 kg',
      batteryCurrent: '10 A',
    })
    expect(named(fits)).toEqual(['3 x 1'])
  })

  it('puts the higher voltage first of equal numbers, whose energies differ by rounding alone', () => {
    const { fits } = arrangePack({
      module: {
        ...module,
        nominalVoltage: '20.9 V',
        minimumVoltage: '17 V',
        maximumVoltage: '24 V',
        capacity: '38.3 Ah',
      },
      window: { minimum: '30 V', maximum: '200 V' },
      available: 24,
      batteryCurrent: '20 A',
    })
    for (const [i, one] of fits.entries()) {
      const next = fits[i + 1]
      if (next?.modules === one.modules) expect(one.series).toBeGreaterThan(next.series)
    }
  })

  it('gives no more power than the lowest voltage of the controller lets it', () => {
    // 177.6 V at rest behind 28 mΩ, and 176 V at least: 57.14 A, of the 160 A that the modules bear.
    const { rejected } = arrangePack({ ...asked, window: { minimum: '176 V', maximum: '220 V' }, power: '20 kW' })
    const { reasons } = rejected.find(({ series, parallel }) => series === 4 && parallel === 2) ?? { reasons: [] }
    expect(reasons).toContain('gives 10.06 kW all day, less than the 20 kW wanted')
  })

  it('agrees with the pack at work', () => {
    const [made] = arrangePack(asked).fits
    const { terminal, openCircuit } = packAt({
      pack: { module, series: 4, parallel: 2 },
      stateOfCharge: 0,
      current: '250 A',
    })
    expect(openCircuit.minus(terminal).si).toBeCloseTo(made?.sag.si as number, 6)
    expect(openCircuit.si).toBeCloseTo(made?.minimumVoltage.si as number, 6)
  })

  it('never sags more with more in parallel, and holds as much energy in any order', () => {
    const { fits } = arrangePack({
      module,
      window: { minimum: '1 V', maximum: '700 V' },
      available: 12,
      batteryCurrent: '50 A',
    })
    for (const one of fits) {
      for (const other of fits) {
        if (one.series === other.series && one.parallel < other.parallel)
          expect(one.sag.si).toBeGreaterThan(other.sag.si)
        if (one.modules === other.modules) expect(one.energy.ratioTo(other.energy)).toBeCloseTo(1, 12)
      }
    }
    expect(fits.length).toBeGreaterThan(20)
  })

  it('says of a window that nothing fits, which limit refuses each near miss', () => {
    const { fits, rejected } = arrangePack({ ...asked, window: { minimum: '140 V', maximum: '200 V' } })
    expect(fits).toEqual([])
    expect(rejected.find(({ series, parallel }) => series === 4 && parallel === 2)?.reasons).toEqual([
      'stands at 201.6 V when full, more than the 200 V that the controller bears',
      'falls to 137 V when empty at 250 A, less than the 140 V at which the controller works',
    ])
    for (const { series, reasons } of rejected) if (series === 3) expect(reasons.join()).toContain('when empty')
  })

  it('gives every reason of a refused arrangement', () => {
    const { rejected } = arrangePack({ ...asked, available: 4, maximumMass: '40 kg', power: '20 kW' })
    expect(rejected.find(({ series, parallel }) => series === 4 && parallel === 1)?.reasons).toEqual([
      'takes 250 A from 1 in parallel, more than the peak current of 180 A',
      'weighs 46 kg, more than the 40 kg allowed',
      'holds 7.282 kWh, less than the 12 kWh wanted',
      'gives 13.85 kW all day, less than the 20 kW wanted',
    ])
  })

  it('sags under the power where no current is given, and says of a pack that it cannot deliver it', () => {
    const weak = { ...module, resistance: '0.4 Ω' } as const
    const { rejected, assumptions } = arrangePack({
      module: weak,
      window: { minimum: '96 V', maximum: '220 V' },
      available: 4,
      power: '20 kW',
    })
    expect(rejected.find(({ series }) => series === 4)?.reasons[0]).toBe('the empty pack cannot deliver 20 kW at all')
    expect(assumptions.find(({ id }) => id === 'pack.emptyUnderLoad')?.text).toContain('the current for 20 kW')
  })

  it('says between which states of charge it is used, and what is not held to a limit', () => {
    const { energy: _, ...open } = asked
    expect(arrangePack(open).assumptions.map(said)).toEqual([
      'The energy is not held to a limit: give energy.',
      'The power is not held to a limit: give power.',
      'The mass of the modules is not held to a limit: give maximumMass.',
      'Nothing is recovered when the pack is full: no regenerationCurrent is given.',
      'Highest state of charge used: 90 % (usable.upper by default; a full cell wears, common practice, no source).',
      'Lowest state of charge used: 10 % (usable.lower by default; an empty cell wears and sags most, common practice, no source).',
      'The modules are equal, warm, and share the current; links and contactors add no resistance.',
      'Powers are those at the nominal voltage as open-circuit voltage.',
      'The empty pack rests at the lowest voltage of its modules, and sags from there under 250 A, the most that the controller draws.',
    ])
    const [half] = arrangePack({ ...asked, usable: { upper: 0.6 } }).fits
    expect(half?.usableEnergy.ratioTo(half.energy)).toBeCloseTo(0.5, 12)
  })

  it('shows each arrangement under its verdict', () => {
    const text = explain(() => arrangePack(asked)).toText()
    expect(text).toContain(
      '4 in series, 2 in parallel: serves, stands at 201.6 V when full, at most the 220 V that the controller bears; falls to 137 V when empty at 250 A, at least the 96 V at which the controller works; takes 250 A from 2 in parallel, at most the peak current of 360 A; needs 8 modules, at most the 9 available; holds 14.56 kWh, at least the 12 kWh wanted\n',
    )
    expect(text).toMatch(/3 in series, 2 in parallel: refused, holds 10\.92 kWh, less than the 12 kWh wanted\n/)
  })

  it('refuses a search without end, and a window upside down', () => {
    const { available: _, ...endless } = asked
    expect(() => arrangePack(endless)).toThrow(
      "available and maximumMass: expected at least one of them, such as available: 12 or maximumMass: '140 kg', so that the search ends, got neither",
    )
    expect(() => arrangePack({ ...asked, available: 1e9 })).toThrow(
      'available and maximumMass: expected so few modules, and with so high a voltage, that at most 100000 arrangements come of them, got 1000000000 modules, and up to 5 in series',
    )
    expect(() => arrangePack({ ...endless, module: { ...module, mass: '0.01 g' }, maximumMass: '1 t' })).toThrow(
      'at most 100000 arrangements',
    )
    expect(() => arrangePack({ ...asked, window: { minimum: '220 V', maximum: '96 V' } })).toThrow(
      'window.maximum: expected a voltage above the minimum, 220 V, got 96 V',
    )
    expect(() => arrangePack({ ...asked, usable: { upper: 0.1, lower: 0.9 } })).toThrow(
      'usable.upper: expected a state of charge of at least the lower one, 0.9, got 0.1',
    )
    expect(() => arrangePack({ ...asked, module: { ...module, maximumVoltage: '44.4 V' } })).toThrow(
      'module.maximumVoltage: expected a voltage above the nominal one, 44.4 V, got 44.4 V (the voltage of the full module, not its nominal one)',
    )
    expect(() => arrangePack({ ...asked, module: { ...module, mass: '1e-305 kg' } })).toThrow(
      "module.mass: expected the mass of a module, such as '20 kg', got 1e-305 kg",
    )
    expect(() => arrangePack({ ...asked, available: 2.5 })).toThrow('available: expected a whole number')
  })

  it('refuses what braking lifts above controller or cells, and takes it where there is room', () => {
    // Straight from 36 V to 50 V: 48.6 V at 90 %; 4 in series 194.4 V, and 60 A over 56 mΩ lift it by 3.36 V.
    const of = (maximum: '198 V' | '202 V', more: object = {}) =>
      arrangePack({
        module: straight,
        window: { minimum: '120 V', maximum },
        available: 4,
        regenerationCurrent: '60 A',
        ...more,
      } as never)
    expect(of('202 V').fits.map(({ series }) => series)).toContain(4)
    const full = of('202 V', { usable: { upper: 1 } })
    expect(full.fits.map(({ series }) => series)).not.toContain(4)
    expect(full.rejected.find(({ series, parallel }) => series === 4 && parallel === 1)?.reasons).toEqual([
      'rises to 203.4 V at 100 % as 60 A come back, more than the 202 V that the controller bears',
      'rises to 203.4 V at 100 % as 60 A come back, more than the 200 V of the full cells',
    ])
  })
  it('counts a pack of unknown voltage as full beside the controller, says so, and leaves the cells unknown', () => {
    const { openCircuit: _, ...plain } = straight
    const of = (maximum: '202 V' | '204 V') =>
      arrangePack({
        module: plain,
        window: { minimum: '120 V', maximum },
        available: 4,
        regenerationCurrent: '60 A',
      })
    const { fits, checks, assumptions } = of('204 V')
    expect(fits.map(({ series }) => series)).toContain(4)
    expect(checks.map(({ id, verdict, text }) => [id, verdict, text])).toContainEqual([
      'pack.regenerationCells',
      'unknown',
      'whether the recovered current lifts the cells above their full voltage is not known: give module.openCircuit or module.chemistry, for the voltage at 90 %',
    ])
    expect(assumptions.map(said)).toContain(
      'For the controller, braking starts from the voltage of the full pack, not from that at 90 %: neither module.openCircuit nor module.chemistry is given.',
    )
    expect(of('202 V').rejected.find(({ series, parallel }) => series === 4 && parallel === 1)?.reasons).toEqual([
      'rises to 203.4 V when full as 60 A come back, more than the 202 V that the controller bears',
    ])
  })
  it('reads a charge current by temperature for warm cells', () => {
    const chargeCurrents = [
      ['5 °C', '10 A'],
      ['45 °C', '50 A'],
    ] as const
    const of = (regenerationCurrent: string, table: unknown = chargeCurrents) =>
      arrangePack({
        module: { ...straight, chargeCurrent: undefined, chargeCurrents: table },
        window: { minimum: '120 V', maximum: '210 V' },
        available: 4,
        regenerationCurrent,
      } as never)
    // Half way from 5 °C to 45 °C, 30 A.
    expect(of('29 A').fits.map(({ series }) => series)).toContain(4)
    expect(of('31 A').rejected.find(({ series }) => series === 4)?.reasons).toEqual([
      'takes 31 A back, more than the 30 A that the modules take',
    ])
    expect(
      of(
        '31 A',
        chargeCurrents.map(([at, current], i) => (i === 0 ? [at, current] : ['20 °C', '25 A'])),
      ).checks,
    ).toMatchObject([{ id: 'pack.chargeCurrent', verdict: 'unknown' }])
  })
})
