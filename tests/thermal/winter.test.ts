/** Cold mornings: warming a pack and a cabin, against figures worked out elsewhere, and what is said of bad input. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain } from '../../src/formula/index.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import { cabinHeat, heatToWarm, packTemperature, winterStart } from '../../src/thermal/index.js'
import { between } from '../between.js'
import { said } from '../said.js'

const morning = {
  pack: { heatCapacity: '150 kJ/K', energy: '14.6 kWh' },
  from: '-10 °C',
  to: '10 °C',
  heaterPower: '1500 W',
  conductance: '8 W/K',
  surroundings: '-10 °C',
} as const

describe('winterStart', () => {
  it('takes the time and the energy that the closed form gives', () => {
    // An invented pack, worked out apart from this library: 2114.9 s, 0.88121 kWh (0.83333 kWh without losses), and
    // 177.5 °C in the end.
    const { time, energy, share, ceiling } = winterStart(morning)
    expect(time.in('s')).toBeCloseTo(2114.9, 1)
    expect(energy.in('kWh')).toBeCloseTo(0.88121, 5)
    expect(share.in('1')).toBeCloseTo(0.88121 / 14.6, 6)
    expect(ceiling.in('°C')).toBeCloseTo(177.5, 9)
  })

  it('costs what the course of the temperature costs, and never less than the heat that stays', () => {
    fc.assert(
      fc.property(
        between(-25, 0),
        between(1, 20),
        between(300, 4000),
        between(0.5, 12),
        (cold, warmer, power, conductance) => {
          const from = quantity('temperature', cold, '°C')
          const to = quantity('temperature', cold + warmer, '°C')
          const given = {
            heatCapacity: '150 kJ/K',
            conductance: quantity('thermalConductance', conductance, 'W/K'),
            surroundings: from,
          } as const
          fc.pre(power > conductance * warmer * 1.01)
          const heaterPower = quantity('power', power, 'W')
          const { time, energy } = winterStart({
            ...morning,
            from,
            to,
            heaterPower,
            conductance: given.conductance,
            surroundings: from,
          })
          const course = packTemperature({ ...given, initial: from, heat: [[heaterPower, time]] })
          expect(course.final.si).toBeCloseTo(to.si, 8)
          expect(course.energies.made.ratioTo(energy)).toBeCloseTo(1, 9)
          const kept = heatToWarm({ mass: '150 kg', specificHeat: '1000 J/(kg·K)', from, to })
          expect(energy.si).toBeGreaterThanOrEqual(kept.si * (1 - 1e-12))
          expect(energy.si - kept.si).toBeCloseTo(course.energies.lost.si, 1)
        },
      ),
    )
  })

  it('takes no time where the pack is warm', () => {
    const { time, energy } = winterStart({ ...morning, from: '10 °C' })
    expect([time.si, energy.si]).toEqual([0, 0])
  })

  it('says that cells must not be charged below their limit, and holds the target to it', () => {
    const { checks, cautions, assumptions } = winterStart({ ...morning, to: '-2 °C' })
    expect(checks[0]).toMatchObject({ name: 'Cell temperature for charging', verdict: 'fail', sense: 'at least' })
    expect(checks[0]?.basis).toContain('that of the maker counts')
    expect(assumptions.map(said)).toContain('The cells may be charged from 0 °C on, unless their maker says otherwise.')
    expect(cautions[0]?.text).toContain('charged below the limit of their maker (commonly 0 °C)')
    const stated = winterStart({ ...morning, chargeLimit: '15 °C' })
    expect(stated.checks[0]).toMatchObject({ verdict: 'fail', basis: 'the limit given' })
  })

  it('says so where the pack has not the energy to warm itself', () => {
    const { checks } = winterStart({ ...morning, pack: { ...morning.pack, energy: '0.7 kWh' } })
    expect(checks.map(({ verdict }) => verdict)).toEqual(['pass', 'fail'])
  })

  it('tells what a heater that is too weak reaches', () => {
    // 100 W over 8 W/K is 12.5 K: the pack ends at 2.5 °C.
    expect(() => winterStart({ ...morning, heaterPower: '100 W' })).toThrow(CalculationError)
    expect(() => winterStart({ ...morning, heaterPower: '100 W' })).toThrow(
      'winterStart: the heater never brings the pack to 10 °C: in the end it reaches 2.5 °C',
    )
  })

  it('refuses to warm downwards, and all else that makes no sense, by its path', () => {
    expect(() => winterStart({ ...morning, to: '-15 °C' })).toThrow(
      'winterStart: one input cannot be used\n  to: expected a temperature of at least that at the start, -10 °C, got -15 °C',
    )
    expect(() =>
      winterStart({ ...morning, heaterPower: '-1 kW', pack: { heatCapacity: '0 kJ/K', energy: '1 kWh' } }),
    ).toThrow(
      "pack.heatCapacity: expected a heat capacity above 0 kJ/K, got '0 kJ/K' (Heat capacity of the pack)\n" +
        "  heaterPower: expected a power above 0 kW, got '-1 kW' (Power of the heater)",
    )
  })
})

const cabin = {
  airFlow: '150 m³/h',
  outside: '-20 °C',
  inside: '20 °C',
  lossConductance: '60 W/K',
  heaterKind: 'resistive',
} as const

describe('cabinHeat', () => {
  it('is that of walls and of fresh air', () => {
    // An invented cabin, worked out apart from this library: 2400 W and 2338.6 W with air of 1.3948 kg/m³, the density of
    // the equations behind the table, which between two rows gives 1.3954 kg/m³.
    const { transmission, ventilation, heat, power } = cabinHeat(cabin)
    expect(transmission.in('W')).toBeCloseTo(2400, 6)
    expect(ventilation.in('W') / 2338.6).toBeCloseTo(1, 3)
    expect(heat.si).toBe(transmission.si + ventilation.si)
    expect(power.si).toBe(heat.si)
  })

  it('draws for a heat pump as many times less as its coefficient of performance says', () => {
    const pump = cabinHeat({ ...cabin, heaterKind: 'heat pump', coefficientOfPerformance: 1.9 })
    expect(pump.power.si * 1.9).toBeCloseTo(cabinHeat(cabin).power.si, 9)
    expect(pump.checks.map(({ verdict }) => verdict)).toEqual(['pass'])
  })

  it('finds out a heat pump that is too good to be true', () => {
    // 293.15 K over 40 K is 7.33.
    const { checks } = cabinHeat({ ...cabin, heaterKind: 'heat pump', coefficientOfPerformance: 8 })
    expect(checks[0]).toMatchObject({ verdict: 'fail', basis: 'the second law of thermodynamics' })
    expect(checks[0]?.limit?.si).toBeCloseTo(7.329, 3)
  })

  it('gives the energy over a time, and its share of a pack', () => {
    const { energy, share, power, checks } = cabinHeat({ ...cabin, time: '40 min', packEnergy: '14.6 kWh' })
    expect(energy?.in('kWh')).toBeCloseTo((power.in('kW') * 2) / 3, 9)
    expect(share?.si).toBeCloseTo(((energy?.in('kWh') as number) / 14.6) as number, 9)
    expect(checks).toHaveLength(1)
    expect(cabinHeat(cabin)).not.toHaveProperty('energy')
    expect(cabinHeat({ ...cabin, time: '40 min' })).not.toHaveProperty('share')
  })

  it('is found for the coldest morning, too', () => {
    // Air at −40 °C and 101.325 kPa: 1.5157 kg/m³, 0.12 % above the ideal gas (second virial coefficient, from memory).
    const { ventilation } = cabinHeat({ ...cabin, outside: '-40 °C' })
    expect(Math.abs(ventilation.si / ((150 / 3600) * 1.5157 * 1006.3 * 60) - 1)).toBeLessThan(5e-4)
  })

  it('is nothing where it is as warm outside', () => {
    const { heat, checks } = cabinHeat({
      ...cabin,
      outside: '20 °C',
      heaterKind: 'heat pump',
      coefficientOfPerformance: 3,
    })
    expect(heat.si).toBe(0)
    expect(checks).toEqual([])
  })

  it('shows its working', () => {
    expect(explain(() => cabinHeat(cabin)).toText()).toContain(
      'Q = G · (Ti − To) = 60 W/K · (293.15 K − 253.15 K) = 2.4 kW',
    )
  })

  it.each([
    [
      'a cabin colder than outside',
      { inside: '-30 °C' },
      'inside: expected a temperature of at least that outside, -20 °C, got -30 °C',
    ],
    [
      'a heat pump without a coefficient',
      { heaterKind: 'heat pump' },
      'coefficientOfPerformance: expected that of the heat pump, such as 1.9, got nothing',
    ],
    [
      'a resistive heater with one',
      { coefficientOfPerformance: 2 },
      'coefficientOfPerformance: expected none: that of a resistive heater is 1, got 2',
    ],
    [
      'a heater of no kind',
      { heaterKind: 'heatpump' },
      "heaterKind: expected 'resistive' or 'heat pump', got 'heatpump' (did you mean heat pump?)",
    ],
    ['a share of no time', { packEnergy: '14.6 kWh' }, 'time: expected the time for which the cabin is kept warm'],
    ['a negative flow', { airFlow: '-1 m³/h' }, "airFlow: expected a volume flow at least 0 L/min, got '-1 m³/h'"],
    ['air colder than its table', { outside: '-80 °C' }, 'outside: expected a temperature from -73.15 °C to 226.8 °C'],
  ])('refuses %s, by its path', (_, wrong, message) => {
    expect(() => cabinHeat({ ...cabin, ...wrong } as unknown as Parameters<typeof cabinHeat>[0])).toThrow(message)
  })
})
