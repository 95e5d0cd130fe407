/** Charges against closed forms and the balance of energy, a house from the pack, and what both refuse. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chargePlan, homeSupply, packAt } from '../../src/electrical/index.js'
import { explain } from '../../src/formula/index.js'
import { feedingHouse } from '../../src/procedure/cautions.js'
import { quantity } from '../../src/quantity/index.js'
import { runs } from '../runs.js'
import { said } from '../said.js'
import { module } from './sheet.js'

const pack = { module, series: 4, parallel: 2 }
const plan = {
  pack,
  stateOfCharge: 0.2,
  to: 0.9,
  supply: { voltage: '230 V', current: '13 A', phases: 1, circuit: '20 A', rule: 'NEC' },
  charger: { power: '3.3 kW', efficiency: 0.92 },
} as const
const strong = {
  ...plan,
  supply: { voltage: '230 V', current: '32 A', phases: 3, circuit: '40 A', rule: 'NEC' },
  charger: { power: '22 kW', efficiency: 0.92 },
} as const
/** A cell whose voltage is straight from 3 V to 4 V: its charge has a closed form. */
const straight = {
  name: 'straight cell',
  cellsInSeries: 1,
  nominalVoltage: '3.5 V',
  minimumVoltage: '3 V',
  maximumVoltage: '4.2 V',
  openCircuit: [
    [0, '3 V'],
    [1, '4 V'],
  ],
  capacity: '100 Ah',
  resistance: '4 mΩ',
  mass: '2 kg',
  continuousCurrent: '100 A',
  chargeCurrent: '50 A',
} as const

describe('chargePlan', () => {
  it('gives what its documentation shows', () => {
    const { chargeCurrent: _, peakCurrent: __, ...documented } = module
    const { time, wallEnergy, reached } = chargePlan({ ...plan, pack: { ...pack, module: documented } })
    expect([time, wallEnergy, reached].map(String)).toEqual(['3.832 h', '11.46 kWh', '90 %'])
  })

  it('takes at constant current the charge over the current', () => {
    // 100 Ah from 60 % to 80 % at 50 A: 24 min.
    const { time, limitedBy, taperAt, peakCurrent } = chargePlan({
      ...strong,
      pack: { module: straight, series: 1, parallel: 1 },
      stateOfCharge: 0.6,
      to: 0.8,
    })
    expect(time.in('min')).toBeCloseTo(24, 9)
    expect(limitedBy).toBe('charge current of the modules')
    expect(taperAt).toBeUndefined()
    expect(peakCurrent.in('A')).toBeCloseTo(50, 9)
  })

  it('tapers as the logarithm of the current: a straight curve behind a resistance', () => {
    // tau = R Q / (dU/ds) = 4 mΩ · 100 Ah / 1 V = 0.4 h. At 4 V the current is (4 V - U) / R: 50 A at 80 %, and 5 A at 98 %.
    const { time, taperAt, reached, curve } = chargePlan({
      ...strong,
      pack: { module: straight, series: 1, parallel: 1 },
      stateOfCharge: 0.7,
      to: 1,
      taperVoltage: '4 V',
      cutoff: '5 A',
    })
    expect(taperAt?.in('min')).toBeCloseTo(12, 1)
    expect(reached.si).toBeCloseTo(0.98, 3)
    const tapering = time.in('min') - (taperAt?.in('min') ?? Number.NaN)
    expect(Math.abs(tapering - 24 * Math.log(10))).toBeLessThan(0.15)
    // Charge taken in the taper: tau (I - Icut) = 0.4 h · 45 A = 18 Ah.
    expect(100 * (reached.si - 0.8)).toBeCloseTo(18, 1)
    expect(curve.at(-1)?.voltage.in('V')).toBeCloseTo(4, 6)
    expect(curve.at(-1)?.current.in('A')).toBeGreaterThanOrEqual(5)
  })

  it('puts into the terminals what is stored and what becomes heat, and draws the rest of the wall as loss', () => {
    const state = fc.double({ min: 0, max: 0.95, noNaN: true })
    fc.assert(
      fc.property(state, fc.double({ min: 0.02, max: 1, noNaN: true }), (from, share) => {
        const to = from + share * (1 - from)
        const { wallEnergy, packEnergy, heat, curve, reached } = chargePlan({ ...strong, stateOfCharge: from, to })
        expect(Math.abs((wallEnergy.si * 0.92) / (packEnergy.si + heat.si) - 1)).toBeLessThan(1e-9)
        // The energy into the terminals again, by the trapezoids of the curve.
        const into = curve.slice(1).reduce((sum, point, i) => {
          const before = curve[i] as (typeof curve)[number]
          return sum + ((point.power.si + before.power.si) / 2) * (point.time.si - before.time.si)
        }, 0)
        expect(Math.abs(into / (packEnergy.si + heat.si) - 1)).toBeLessThan(0.005)
        expect(reached.si).toBeLessThanOrEqual(to)
      }),
      { numRuns: runs(25) },
    )
  })

  it('agrees with small steps of time, written apart: constant power, and then constant voltage', () => {
    const { time, packEnergy, heat, taperAt, reached } = chargePlan({
      ...strong,
      pack: { module: { ...straight, chargeCurrent: undefined }, series: 1, parallel: 1 },
      supply: { voltage: '230 V', current: '1 A', phases: 1 },
      charger: { power: '180 W', efficiency: 0.92 },
      stateOfCharge: 0.2,
      to: 1,
      taperVoltage: '4 V',
      cutoff: '5 A',
    })
    let [state, seconds, stored, lost, tapered] = [0.2, 0, 0, 0, 0]
    const step = 0.1
    for (;;) {
      const rest = 3 + state
      // (rest + I R) I = 180 W, and at most what 4 V push in.
      const current = Math.min((Math.sqrt(rest ** 2 + 4 * 0.004 * 180) - rest) / (2 * 0.004), (4 - rest) / 0.004)
      if (rest + current * 0.004 >= 4 - 1e-12 && tapered === 0) tapered = seconds
      if (tapered > 0 && current < 5) break
      state += (current * step) / 360_000
      stored += rest * current * step
      lost += current ** 2 * 0.004 * step
      seconds += step
    }
    expect(time.si / seconds).toBeCloseTo(1, 3)
    expect((taperAt?.si ?? Number.NaN) / tapered).toBeCloseTo(1, 3)
    expect(packEnergy.si / stored).toBeCloseTo(1, 4)
    expect(heat.si / lost).toBeCloseTo(1, 3)
    expect(reached.si).toBeCloseTo(state, 3)
  })

  it('stores what the open-circuit curve holds between the two states', () => {
    const { packEnergy } = chargePlan(plan)
    const points = 200
    let energy = 0
    for (let i = 0; i < points; i++) {
      const stateOfCharge = 0.2 + ((i + 0.5) * 0.7) / points
      energy += packAt({ pack, stateOfCharge, current: '0 A' }).openCircuit.si * ((82 * 0.7) / points) * 3600
    }
    expect(packEnergy.si / energy).toBeCloseTo(1, 4)
  })

  it('is no slower with more supply, and never above the voltage that it holds', () => {
    const slow = chargePlan(plan)
    const fast = chargePlan(strong)
    expect(fast.time.si).toBeLessThan(slow.time.si)
    for (const { voltage } of [...slow.curve, ...fast.curve])
      expect(voltage.in('V')).toBeLessThanOrEqual(201.6 * (1 + 1e-12))
    expect(slow.limitedBy).toBe('supply')
    expect(chargePlan({ ...plan, supply: { ...plan.supply, current: '16 A' } }).limitedBy).toBe('charger')
  })

  it('draws from three phases three times the power of one', () => {
    // 230 V and 6 A: 1380 W in one phase.
    const of = (phases: number) =>
      chargePlan({ ...strong, supply: { voltage: '230 V', current: '6 A', phases }, stateOfCharge: 0.3, to: 0.5 }).time
        .si
    expect(of(1) / of(3)).toBeGreaterThan(2.97)
    expect(of(1) / of(3)).toBeLessThan(3.03)
  })

  it('ends unless told otherwise at a twentieth of the capacity per hour', () => {
    // 100 Ah: 5 A, which 4 V push in through 4 mΩ at 3.98 V, 98 %.
    const { reached, assumptions } = chargePlan({
      ...strong,
      pack: { module: straight, series: 1, parallel: 1 },
      stateOfCharge: 0.7,
      to: 1,
      taperVoltage: '4 V',
    })
    expect(reached.si).toBeCloseTo(0.98, 3)
    expect(assumptions.map(said).join()).toContain('fallen to 5 A, C/20 (cutoff by default')
  })

  it('says when it ends before what was wanted', () => {
    const { reached, checks } = chargePlan({ ...strong, to: 1 })
    expect(reached.si).toBeLessThan(1)
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['State of charge reached', 'fail'],
      // 32 A of 40 A: NFPA 70 (NEC), 625.41.
      ['Load of the circuit for hours', 'near'],
    ])
    expect(chargePlan(plan).checks.map(({ verdict }) => verdict)).toEqual(['pass'])
  })

  it('holds a charge to 0 °C where the module states no limits, and says what it does not hold', () => {
    const at = chargePlan({ ...plan, temperature: '-10 °C' })
    expect(at.checks.map(({ name, verdict, limit }) => [name, verdict, String(limit)])).toEqual([
      ['Cold cells on charge', 'fail', '0 °C'],
      ['Warm cells on charge', 'pass', '45 °C'],
      ['Load of the circuit for hours', 'pass', '16 A'],
    ])
    expect(at.assumptions.map(said).join()).toContain(
      'The cells take a charge from 0 °C to 45 °C (pack.module.temperatures by default',
    )
    expect(chargePlan(plan).assumptions.map(said).join()).toContain(
      'The temperature of the cells is not held to limits',
    )
    const taken = packAt({ pack, stateOfCharge: 0.5, current: '-10 A', temperature: '-1 °C' })
    expect(taken.checks.find(({ name }) => name === 'Cold cells on charge')?.verdict).toBe('fail')
    const given = packAt({ pack, stateOfCharge: 0.5, current: '10 A', temperature: '-1 °C' })
    expect(given.checks.map(({ name }) => name)).not.toContain('Cold cells on charge')
  })

  it('says between what the voltage of more than one phase lies', () => {
    const of = (phases: number) =>
      chargePlan({ ...plan, supply: { ...plan.supply, phases } })
        .assumptions.map(said)
        .join()
    expect(of(3)).toContain('The 230 V of the supply lie between a phase and neutral.')
    expect(of(1)).not.toContain('neutral')
  })

  it('refuses to charge cold cells in a check', () => {
    const span = { minimum: '1 °C', maximum: '45 °C' } as const
    const limited = { ...module, temperatures: { charge: span, discharge: span } }
    const { checks } = chargePlan({ ...plan, pack: { ...pack, module: limited }, temperature: '-5 °C' })
    expect(checks.find(({ name }) => name === 'Cold cells on charge')?.verdict).toBe('fail')
  })

  it('shows its working', () => {
    const text = explain(() => chargePlan(plan)).toText()
    expect(text).toContain('P = n · U · I · lambda = 1 · 230 V · 13 A · 1 = 2.99 kW   [by definition]')
    expect(text).toContain('At the start, 20 %')
  })

  it.each([
    [{ to: 0.2 }, 'to: expected a state of charge above the one at the start, 0.2, got 0.2'],
    [
      { taperVoltage: '210 V' },
      'taperVoltage: expected at most the voltage of the full pack, 201.6 V, got 210 V (beyond it cells burn)',
    ],
    [
      { taperVoltage: '150 V' },
      /chargePlan: at 20 % the pack rests at 168\.\d V and the charger holds 150 V: nothing flows$/,
    ],
    [{ supply: { ...plan.supply, phases: 4 } }, 'supply.phases: expected a number at most 3, got 4'],
    [
      { charger: { power: '3.3 kW', efficiency: 92 } },
      'charger.efficiency: expected a ratio above 0 and at most 1, got 92',
    ],
  ])('refuses %j', (wrong, message) => {
    expect(() => chargePlan({ ...plan, ...wrong } as never)).toThrow(message)
  })
})

describe('homeSupply', () => {
  const home = { usableEnergy: '12 kWh', inverter: { efficiency: 0.9, power: '3 kW', standby: '40 W' } } as const

  it('gives what its documentation shows', () => {
    // 8 kWh at 450 W / 0.9 + 40 W = 540 W.
    const { duration, delivered, lost } = homeSupply({ ...home, load: '450 W', reserve: '4 kWh' })
    expect(duration.in('h')).toBeCloseTo(8000 / 540, 9)
    expect(delivered.in('kWh')).toBeCloseTo((8 * 450) / 540, 9)
    expect([duration, delivered].map(String)).toEqual(['14.81 h', '6.667 kWh'])
    expect(delivered.plus(lost).in('kWh')).toBeCloseTo(8, 12)
  })

  it('goes through the hours and begins again', () => {
    const flat = homeSupply({ ...home, hourly: ['450 W', '450 W', '450 W'], reserve: '4 kWh' })
    expect(flat.duration.in('h')).toBeCloseTo(8000 / 540, 9)
    // 0.9 kWh, 0 and 1.8 kWh through 0.9 and 40 W: 1.04, 0.04 and 2.04 kWh an hour, 3.12 in a round. 12 kWh are three
    // rounds, 1.04, 0.04 and 1.56 of the 2.04.
    const { duration, delivered } = homeSupply({ ...home, hourly: ['900 W', '0 W', '1.8 kW'] })
    expect(duration.in('h')).toBeCloseTo(9 + 2 + 1.56 / 2.04, 9)
    expect(delivered.in('kWh')).toBeCloseTo(3 * 2.7 + 0.9 + (1.8 * 1.56) / 2.04, 9)
  })

  it('loses what it does not deliver, and lasts longer for less', () => {
    const watts = fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1, maxLength: 24 })
    fc.assert(
      fc.property(watts, (list) => {
        const hourly = list.map((each) => quantity('power', each, 'W'))
        const { duration, delivered, lost } = homeSupply({ ...home, hourly })
        expect(delivered.plus(lost).in('kWh')).toBeCloseTo(12, 9)
        expect(lost.si).toBeCloseTo(delivered.si * (1 / 0.9 - 1) + 40 * duration.si, 0)
        const half = homeSupply({ ...home, hourly: hourly.map((each) => each.over(2)) })
        expect(half.duration.si).toBeGreaterThan(duration.si)
      }),
    )
  })

  it('says that feeding a house needs an isolated transfer and licensed work', () => {
    const { cautions: told } = homeSupply({ ...home, load: '450 W' })
    expect(told).toContain(feedingHouse)
    expect(told[0]?.text).toMatch(
      /transfer arrangement that isolates it from the grid.*needs a licence, and local rules/,
    )
  })

  it('refuses a load beyond the inverter by its hour, and a load that never ends', () => {
    expect(() => homeSupply({ ...home, hourly: ['1 kW', '3.5 kW'] })).toThrow(
      'homeSupply: the load of 3.5 kW in hour 2 is beyond the inverter, which delivers 3 kW at most',
    )
    const still = { efficiency: 0.9, power: '3 kW' } as const
    expect(() => homeSupply({ usableEnergy: '12 kWh', load: '0 W', inverter: still })).toThrow(
      'nothing draws on the pack: its 12 kWh last for ever',
    )
    expect(() => homeSupply({ ...home, load: '1 kW', reserve: '12 kWh' })).toThrow(
      'reserve: expected an energy below the usable one, 12 kWh, got 12 kWh',
    )
    expect(() => homeSupply(home)).toThrow(
      "load and hourly: expected one of them: load such as '450 W', or hourly such as",
    )
  })
})
