/** What cells still hold by two rests, and what models say that they lose. */
import { describe, expect, it } from 'vitest'
import {
  capacityBetweenRests,
  naumannCalendarLoss,
  packLife,
  restCapacity,
  schmalstiegCalendarLoss,
  schmalstiegCycleLoss,
  wangCycleLoss,
} from '../../src/electrical/index.js'
import { propagate } from '../../src/formula/index.js'

describe('capacity from two rests', () => {
  it('is as uncertain as the two states make it', () => {
    // 30 Ah between 85 % and 35 %, each ± 0.02: 60 Ah ± 5.7 %, the root of the sum of squares over the difference (exact).
    const { value, standardUncertainty } = propagate(capacityBetweenRests, {
      charge: '30 Ah',
      upper: '0.85 ± 0.02',
      lower: '0.35 ± 0.02',
    })
    expect(value.in('Ah')).toBeCloseTo(60, 9)
    expect((2 * standardUncertainty.si) / value.si).toBeCloseTo(0.04 / Math.SQRT2 / 0.5, 6)
  })
  const straight = {
    cellsInSeries: 10,
    openCircuit: [
      [0, '30 V'],
      [1, '40 V'],
    ],
    minimumVoltage: '28 V',
    maximumVoltage: '42 V',
  } as const
  it('reads the states off the curve, and adds the meter to them', () => {
    const { upper, lower, capacity, uncertainty } = restCapacity({
      module: straight,
      from: '38 V',
      to: '32 V',
      charge: '30 Ah',
      voltageUncertainty: '1 %',
      chargeUncertainty: 0,
      stateUncertainty: 0,
    })
    expect([upper.si, lower.si, capacity.in('Ah')].map((each) => each.toFixed(6))).toEqual([
      '0.800000',
      '0.200000',
      '50.000000',
    ])
    // The curve rises by 1 V for a tenth: 0.38 V and 0.32 V are 3.8 and 3.2 points of the 60 between.
    expect(uncertainty.in('Ah')).toBeCloseTo((50 * Math.hypot(0.038, 0.032)) / 0.6, 6)
  })
  it('knows a state no better than the curve is flat', () => {
    const flat = {
      ...straight,
      openCircuit: [
        [0, '30 V'],
        [0.2, '33 V'],
        [0.9, '33 V'],
        [1, '40 V'],
      ],
    } as const
    const { lower, uncertainty, capacity } = restCapacity({ module: flat, from: '39 V', to: '33 V', charge: '20 Ah' })
    expect(lower.si).toBeCloseTo(0.55, 6)
    expect(uncertainty.ratioTo(capacity)).toBeGreaterThan(0.35 / (0.986 - 0.55))
  })
  it('refuses what it cannot read, by its path', () => {
    const asked = { module: straight, from: '38 V', to: '32 V', charge: '30 Ah' } as const
    expect(() => restCapacity({ ...asked, to: '38.5 V' })).toThrow(
      'to: expected a voltage below from, 38 V, got 38.5 V',
    )
    expect(() => restCapacity({ ...asked, from: '41 V' })).toThrow(
      'reaches from 30 V to 40 V, and from, 41 V, lies beyond it',
    )
    expect(() => restCapacity({ ...asked, module: { ...straight, openCircuit: undefined } })).toThrow(
      'module.openCircuit: expected points such as',
    )
  })
})

describe('the life of a pack', () => {
  const module = {
    name: 'invented module of 14 cells',
    cellsInSeries: 14,
    chemistry: 'NMC',
    openCircuit: [
      [0, '46.2 V'],
      [1, '57.4 V'],
    ],
    nominalVoltage: '51.8 V',
    minimumVoltage: '42 V',
    maximumVoltage: '58.8 V',
    capacity: '60 Ah',
    resistance: '12 mΩ',
    mass: '22 kg',
    continuousCurrent: '120 A',
  } as const
  const asked = {
    pack: { module, series: 6, parallel: 2 },
    journeys: [{ perYear: 200, charge: '48 Ah', current: '40 A' }],
    temperatures: [['25 °C', 1]],
    charge: { to: 0.75, from: 0.25 },
    years: 10,
  } as const
  const lossAt = (found: ReturnType<typeof packLife>, year: number) => {
    const { left } = found.years[year - 1] as (typeof found.years)[number]
    return { least: 1 - left.most.si, most: 1 - left.least.si }
  }

  it('grows ten degrees warmer as the published laws do', () => {
    // From 25 °C to 35 °C: 2.137 times after Schmalstieg, 1.514 times after Wang (recomputed from their activation energies,
    // Wang's of 31 700 J/mol less 370.3 J/mol for each C).
    const standing = (temperature: '25 °C' | '35 °C') =>
      schmalstiegCalendarLoss({ voltage: '3.7 V', temperature, time: '8760 h' }).si
    expect(standing('35 °C') / standing('25 °C')).toBeCloseTo(2.137, 3)
    const used = (temperature: '25 °C' | '35 °C') =>
      wangCycleLoss({ rate: '0.5 C', temperature, throughput: '1000 Ah' }).si
    expect((used('35 °C') / used('25 °C')) ** (31700 / (31700 - 370.3 / 2))).toBeCloseTo(1.514, 3)
  })
  it('adds what is lost by standing and by use, from half to twice of it', () => {
    // 200 times 48 Ah of 120 Ah are 80 capacities, both ways 160, of a cell of 2.05 Ah; 3.9 V at 75 %, 3.7 V at 50 %.
    const standing = schmalstiegCalendarLoss({ voltage: '3.9 V', temperature: '25 °C', time: '8766 h' }).si
    const used = schmalstiegCycleLoss({ voltage: '3.7 V', depth: 0.5, throughput: '328 Ah' }).si
    const found = packLife(asked)
    for (const years of [1, 4, 10]) {
      const loss = standing * years ** 0.75 + used * years ** 0.5
      expect(lossAt(found, years).least).toBeCloseTo(loss / 2, 6)
      expect(lossAt(found, years).most).toBeCloseTo(loss * 2, 6)
    }
  })
  it('is the same however a year is cut and a journey is split', () => {
    const cut = packLife({
      ...asked,
      temperatures: [
        ['25 °C', 0.3],
        ['25 °C', 0.7],
      ],
      journeys: [
        { perYear: 50, charge: '48 Ah', current: '40 A' },
        { perYear: 150, charge: '48 Ah', current: '40 A' },
      ],
    })
    expect(lossAt(cut, 7).most).toBeCloseTo(lossAt(packLife(asked), 7).most, 9)
  })
  it.each([
    ['warmer', { temperatures: [['35 °C', 1]] }],
    ['fuller', { charge: { to: 0.75, from: 0.25, standing: 0.95 } }],
    ['driven more', { journeys: [{ perYear: 300, charge: '48 Ah', current: '40 A' }] }],
  ] as const)('loses more where it is %s', (_, patch) => {
    for (const chemistry of ['NMC', 'LFP'] as const) {
      const pack = { ...asked.pack, module: { ...module, chemistry } }
      const [before, after] = [packLife({ ...asked, pack }), packLife({ ...asked, pack, ...patch })]
      expect(lossAt(after, 3).most).toBeGreaterThan(lossAt(before, 3).most)
      expect(lossAt(after, 3).least).toBeGreaterThan(lossAt(before, 3).least)
    }
  })
  it('lies for iron phosphate between two models by use, and tells no resistance', () => {
    const pack = { ...asked.pack, module: { ...module, chemistry: 'LFP' as const } }
    const found = packLife({ ...asked, pack })
    const standing = naumannCalendarLoss({ stateOfCharge: 0.75, temperature: '25 °C', time: '8766 h' }).si
    const used = wangCycleLoss({ rate: '0.5 C', temperature: '25 °C', throughput: '176 Ah' }).si
    expect(lossAt(found, 1).most).toBeCloseTo(2 * standing + used, 6)
    expect(found.years[0]).not.toHaveProperty('resistance')
  })
  it('tells no year where nobody says what the cells are made of', () => {
    const pack = { ...asked.pack, module: { ...module, chemistry: undefined } }
    expect(packLife({ ...asked, pack }).years).toEqual([])
  })
  it('goes no further than to nothing', () => {
    const { years } = packLife({ ...asked, temperatures: [['50 °C', 1]], years: 30 })
    expect(years.length).toBeLessThan(30)
    for (const { capacity } of years) expect(capacity.least.si).toBeGreaterThan(0)
  })
})
