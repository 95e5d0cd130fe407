/** Charging points: what a pilot means, what the tables for fixed wiring stand on, and what is chosen. */
import { describe, expect, it } from 'vitest'
import { cableAmpacity, chargePlan, chargingPoint, pilotCurrent, proximityCurrent } from '../../src/electrical/index.js'
import { ampacitiesOf } from '../../src/electrical/mains.js'
import { solve } from '../../src/formula/index.js'
import { CalculationError, InputError } from '../../src/quantity/index.js'
import { module } from './sheet.js'

const point = {
  supply: { voltage: '230 V', current: '32 A', phases: 1, rule: 'IEC own circuit' },
  charger: { power: '6.6 kW', efficiency: 0.92 },
  length: '12 m',
  laid: 'clipped',
  overcurrent: 'breaker',
} as const

describe('a pilot', () => {
  // IEC 61851-1, as the table of a test adapter lists it: no charge, digital, error, no charge.
  it.each([
    ['2.9 %', /no charge is allowed/],
    ['4.5 %', /speak with the charging point/],
    ['5.5 %', /speak with the charging point/],
    ['7.5 %', /error/],
    ['100 %', /not ready, and no charge is allowed/],
  ] as const)('of %s announces no current, and says what it means', (duty, what) => {
    expect(() => pilotCurrent({ duty })).toThrow(CalculationError)
    expect(() => pilotCurrent({ duty })).toThrow(what)
  })
  // The formula of IEC 61851-1 turned round by hand.
  it.each([
    ['10 A', 0.1667, [0.1, 0.85]],
    ['13 A', 0.2167, [0.1, 0.85]],
    ['16 A', 0.2667, [0.1, 0.85]],
    ['20 A', 0.3333, [0.1, 0.85]],
    ['32 A', 0.5333, [0.1, 0.85]],
    ['48 A', 0.8, [0.1, 0.85]],
    ['63 A', 0.892, [0.86, 0.96]],
  ] as const)('announces %s by a duty of %f', (current, duty, [from, to]) => {
    expect(solve(pilotCurrent, 'duty', { result: current, between: [from, to] }).si).toBeCloseTo(duty, 4)
  })
  it('is refused as a coding of less than 75 Ω', () => {
    expect(() => proximityCurrent({ resistance: '60 Ω' })).toThrow(/below 75 Ω it is a fault/)
  })
})

describe('the ampacities of fixed wiring', () => {
  const tables = Object.values(ampacitiesOf)
  it.each(Object.entries(ampacitiesOf))('rise with the section: %s', (_, { two, three, sections }) => {
    expect(two).toHaveLength(sections.length)
    expect(three).toHaveLength(sections.length)
    for (const column of [two, three]) expect([...column].sort((a, b) => a - b)).toEqual(column)
    expect(three.every((each, i) => each <= (two[i] as number))).toBe(true)
  })
  it('fall from a bare wall over a conduit to an insulated wall', () => {
    const [worst, middle, best] = tables
    for (const key of ['two', 'three'] as const) {
      worst?.[key].forEach((each, i) => {
        expect(each).toBeLessThan(middle?.[key][i] as number)
        expect(middle?.[key][i] as number).toBeLessThan(best?.[key][i] as number)
      })
    }
  })
  it('agree on a bare wall with the heat balance of two cores that touch, within 9 %', () => {
    const { two, sections } = ampacitiesOf.clipped
    sections.forEach((area, i) => {
      const { ampacity } = cableAmpacity({ area: area as '4 mm²', limit: '70 °C', ambient: '30 °C', laid: 'touching' })
      expect(Math.abs((two[i] as number) / ampacity.si - 1)).toBeLessThan(0.09)
    })
  })
  it('are no more than the heat balance allows on any other way, but for the rounding of the table', () => {
    for (const key of ['insulated wall', 'conduit'] as const) {
      const { two, sections } = ampacitiesOf[key]
      sections.forEach((area, i) => {
        const { ampacity } = cableAmpacity({
          area: area as '4 mm²',
          limit: '70 °C',
          ambient: '30 °C',
          laid: 'touching',
        })
        expect(two[i] as number).toBeLessThan(ampacity.si)
      })
    }
  })
})

describe('chargingPoint', () => {
  it('chooses the least section under the breaker that the current needs', () => {
    const { section, circuit, ratingAtMost, rejected } = chargingPoint(point)
    expect([section.name, String(circuit), String(ratingAtMost)]).toEqual(['4 mm²', '32 A', '36 A'])
    expect(rejected.map(({ name }) => name)).toEqual(['1.5 mm²', '2.5 mm²'])
  })
  it('takes the next rating above 125 % of the current under the NEC, and where no rule is stated', () => {
    // NFPA 70 (NEC), 625.41: 32 A ask for 40 A, 48 A for 60 A.
    const under = (rule: 'NEC' | undefined, current: '32 A' | '48 A') =>
      String(
        chargingPoint({
          ...point,
          laid: 'NEC raceway',
          supply: { ...point.supply, voltage: '240 V', current, rule },
        }).circuit,
      )
    expect([under('NEC', '32 A'), under(undefined, '32 A'), under('NEC', '48 A')]).toEqual(['40 A', '40 A', '60 A'])
  })
  it('gives for hours what the circuit, the pilot and the supply allow', () => {
    const powerWith = (supply: object, pilot?: `${number} %`) =>
      chargingPoint({ ...point, supply: { ...point.supply, ...supply }, ...(pilot && { pilot }) }).power.in('kW')
    expect(powerWith({})).toBeCloseTo(7.36, 9)
    expect(powerWith({ circuit: '32 A', rule: 'NEC' })).toBeCloseTo(0.8 * 7.36, 9)
    expect(powerWith({ circuit: '32 A', rule: 'domestic socket' })).toBeCloseTo(2.3, 9)
    expect(powerWith({}, '25 %')).toBeCloseTo(3.45, 9)
  })
  it('loses of three phases the share that one way loses of the voltage to neutral', () => {
    const by = (phases: 1 | 3) =>
      chargingPoint({ ...point, section: '6 mm²', supply: { ...point.supply, phases } }).dropShare.si
    expect(by(3) / by(1)).toBeCloseTo(0.5, 9)
  })
  it('shows the largest section where none serves, with what fails', () => {
    const { section, checks, rejected } = chargingPoint({ ...point, length: '400 m' })
    expect([section.name, rejected.length]).toEqual(['35 mm²', 7])
    expect(checks.filter(({ verdict }) => verdict === 'fail').map(({ id }) => id)).toEqual(['mains.drop'])
  })
  it('lists the sections that there are', () => {
    const call = () => chargingPoint({ ...point, section: '5 mm²' })
    expect(call).toThrow(InputError)
    expect(call).toThrow(/section: expected a section: 1\.5 mm², .*35 mm², got '5 mm²'/)
  })
  it('refuses a current for which there is no rating', () => {
    expect(() => chargingPoint({ ...point, supply: { ...point.supply, current: '200 A' } })).toThrow(
      /supply\.current: expected a current for which a circuit of at most 125 A is enough, got 200 A/,
    )
  })
  it('tells of the load of its circuit what a plan of the charge tells', () => {
    for (const rule of ['NEC', 'IEC own circuit', 'domestic socket', undefined] as const) {
      const supply = { ...point.supply, circuit: '32 A', rule } as const
      const told = [
        chargingPoint({ ...point, supply }),
        chargePlan({
          pack: { module, series: 6, parallel: 2 },
          stateOfCharge: 0.2,
          to: 0.8,
          supply,
          charger: point.charger,
        }),
      ].map(({ checks }) => checks.find(({ id }) => id === 'charge.circuit')?.text)
      expect(told[0]).toBe(told[1])
    }
  })
})
