/** Precharge, stored energy and isolation as procedures, against worked circuits. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isolationTest, precharge, storedEnergyCheck } from '../../src/electrical/index.js'
import { CalculationError, quantity } from '../../src/quantity/index.js'
import { said } from '../said.js'

describe('precharge', () => {
  it('gives what its documentation shows', () => {
    const { resistance, energyPerEvent, residualVoltage } = precharge({
      voltage: '201.6 V',
      capacitance: '1200 µF',
      time: '1 s',
    })
    expect([resistance, energyPerEvent, residualVoltage].map(String)).toEqual(['278.2 Ω', '24.39 J', '10.08 V'])
  })

  it('agrees with a reference design: 50 Ω, 2 mF, five time constants in 0.5 s', () => {
    // A semiconductor maker's reference design (resistance and time read); at 400 V 8 A, and 160 J in both.
    const at = precharge({ voltage: '400 V', capacitance: '2 mF', time: '0.5 s', target: 1 - Math.exp(-5) })
    expect(at.resistance.in('Ω')).toBeCloseTo(50, 9)
    expect(at.peakCurrent.in('A')).toBeCloseTo(8, 9)
    expect(at.energyPerEvent.in('J')).toBeCloseTo(160, 9)
    expect(at.timeConstant.in('ms')).toBeCloseTo(100, 9)
    expect(at.peakPower.in('W')).toBeCloseTo(3200, 9)
  })

  it('bleeds 1 mF from 400 V to 60 V in 5 s through 2636 Ω', () => {
    const at = precharge({ voltage: '400 V', capacitance: '1 mF', time: '1 s', dischargeResistance: '2636 Ω' })
    expect(at.dischargeTime?.in('s')).toBeCloseTo(5, 2)
    const verdictOf = ({ checks }: typeof at) => checks.find(({ id }) => id === 'precharge.discharge')?.verdict
    expect(verdictOf(at)).toBe('pass')
    const slow = precharge({ voltage: '400 V', capacitance: '1 mF', time: '1 s', dischargeResistance: '10 kΩ' })
    expect(verdictOf(slow)).toBe('fail')
  })

  it('takes 680 µF from 403.2 V to 60 V in a second through 772 Ω, which takes 210.6 W for good', () => {
    // Recomputed from circuit theory, apart from this library.
    const at = precharge({ voltage: '403.2 V', capacitance: '680 µF', time: '1 s', dischargeResistance: '772 Ω' })
    expect(at.dischargeTime?.in('s')).toBeCloseTo(1, 3)
    expect(at.standingPower?.in('W')).toBeCloseTo(210.6, 1)
    expect(
      precharge({
        voltage: '403.2 V',
        capacitance: '680 µF',
        time: '1 s',
        dischargePath: 'opens',
        dischargeResistance: '772 Ω',
      }).standingPower,
    ).toBeUndefined()
  })

  it('makes the precharge resistor less where a discharge resistor divides the voltage', () => {
    const beside = { voltage: '400 V', capacitance: '1 mF', time: '1 s', dischargeResistance: '4 kΩ' } as const
    const at = precharge(beside)
    // C dU/dt = (400 − U) / R − U / 4000, stepped for a second.
    let volts = 0
    const [steps, resistance] = [200_000, at.resistance.si]
    for (let i = 0; i < steps; i++) volts += (((400 - volts) / resistance - volts / 4000) / 1e-3) * (1 / steps)
    expect(volts).toBeCloseTo(380, 2)
    expect(at.residualVoltage.in('V')).toBeCloseTo(20, 6)
    // What would do alone falls short of 95 % beside it.
    const chosen = precharge({ ...beside, resistance: '333.8 Ω' })
    expect(chosen.checks.find(({ id }) => id === 'precharge.reached')?.verdict).toBe('fail')
  })

  it('tells what flows as the contactor closes on the rest: 20 V over 28 mΩ are 714 A', () => {
    // Recomputed by Ohm's law.
    const at = precharge({ voltage: '400 V', capacitance: '1 mF', time: '1 s', loopResistance: '28 mΩ' })
    expect(at.inrush?.in('A')).toBeCloseTo(714.3, 1)
  })

  it('passes no discharge through a path that nobody stated', () => {
    const { checks, assumptions, dischargeTime } = precharge({ voltage: '400 V', capacitance: '1 mF', time: '1 s' })
    expect(dischargeTime?.in('s')).toBeCloseTo(Math.log(400 / 60) / Math.log(20), 9)
    expect(checks.map(({ id, verdict }) => [id, verdict])).toEqual([['precharge.inrush', 'unknown']])
    expect(assumptions.map(said).join()).toContain('is not checked without a path that is given')
  })

  it('has nothing to discharge at 60 V', () => {
    const at = precharge({ voltage: '58.4 V', capacitance: '1 mF', time: '1 s' })
    expect(at.dischargeTime).toBeUndefined()
    expect(at.checks.map(({ id }) => id)).toEqual(['precharge.inrush'])
  })

  it('leaves across the contactor what the target leaves', () => {
    const share = fc.double({ min: 0.01, max: 0.999, noNaN: true })
    fc.assert(
      fc.property(share, fc.double({ min: 61, max: 800, noNaN: true }), (target, volts) => {
        const voltage = quantity('voltage', volts, 'V')
        const { residualVoltage } = precharge({ voltage, capacitance: '1 mF', time: '1 s', target })
        expect(residualVoltage.in('V')).toBeCloseTo((1 - target) * volts, 8)
      }),
    )
  })

  it('refuses to reach all of the voltage', () => {
    expect(() => precharge({ voltage: '400 V', capacitance: '1 mF', time: '1 s', target: 1 })).toThrow(
      'target: expected a ratio above 0 and below 1, got 1',
    )
  })
})

describe('storedEnergyCheck', () => {
  it('passes 2 µF at 400 V, with 0.1564 J above 60 V, and fails beyond 2.5 µF', () => {
    const { energy, above60V, checks } = storedEnergyCheck({ capacitance: '2 µF', voltage: '400 V' })
    expect(energy.in('J')).toBeCloseTo(0.16, 12)
    expect(above60V?.in('J')).toBeCloseTo(0.1564, 12)
    expect(checks[0]?.verdict).toBe('pass')
    expect(storedEnergyCheck({ capacitance: '2.51 µF', voltage: '400 V' }).checks[0]?.verdict).toBe('fail')
    expect(storedEnergyCheck({ capacitance: '2.5 µF', voltage: '400 V' }).checks[0]?.margin).toBeCloseTo(0, 9)
    expect(storedEnergyCheck({ capacitance: '2 µF', voltage: '48 V' })).not.toHaveProperty('above60V')
  })
})

describe('isolationTest', () => {
  const readings = {
    packVoltage: '400 V',
    positive: '133.3 V',
    negative: '266.7 V',
    loadedReading: '28.6 V',
    insertedResistance: '40 kΩ',
  } as const

  it('finds 500 kΩ at the positive pole of a circuit with 1 MΩ at the negative one', () => {
    // The circuit worked out by hand: 266.667 V, 133.333 V, and 28.5714 V with 40 kΩ.
    const { isolation, weakPole, least, leakage, checks } = isolationTest({
      ...readings,
      positive: '133.333 V',
      negative: '266.667 V',
      loadedReading: '28.5714 V',
    })
    expect(Math.abs(isolation.in('kΩ') / 500 - 1)).toBeLessThan(1e-5)
    expect(weakPole).toBe('positive')
    expect(String(least)).toBe('200 kΩ')
    expect(leakage.in('mA')).toBeCloseTo(0.8, 4)
    expect(checks.map(({ verdict }) => verdict)).toEqual(['pass', 'pass'])
  })

  it('gives what its documentation shows', () => {
    expect(String(isolationTest(readings).isolation)).toBe('499.4 kΩ')
  })

  it('finds the same with the poles exchanged', () => {
    const { isolation, weakPole } = isolationTest({
      ...readings,
      positive: readings.negative,
      negative: readings.positive,
    })
    expect(isolation.si).toBe(isolationTest(readings).isolation.si)
    expect(weakPole).toBe('negative')
  })

  it('asks 100 Ω/V of a circuit without alternating current, at the highest voltage', () => {
    const { least } = isolationTest({
      ...readings,
      packVoltage: '350 V',
      positive: '100 V',
      negative: '250 V',
      circuit: 'DC',
    })
    expect(least.in('kΩ')).toBeCloseTo(35, 12)
    expect(isolationTest({ ...readings, workingVoltage: '450 V' }).least.in('kΩ')).toBeCloseTo(225, 12)
  })

  it('fails a leak, and a meter that loads the circuit', () => {
    const { checks } = isolationTest({ ...readings, positive: '20 V', negative: '250 V', loadedReading: '150 V' })
    expect(checks.map(({ name, verdict }) => [name, verdict])).toEqual([
      ['Isolation to the chassis', 'fail'],
      ['Both readings together', 'fail'],
    ])
  })

  it.each([
    [
      { loadedReading: '300 V' },
      'loadedReading: expected at most 266.7 V, the negative reading without the known resistance, got 300 V',
    ],
    [{ negative: '420 V' }, 'negative: expected at most the voltage between the poles, 400 V, got 420 V'],
    [
      { positive: '400 V', negative: '400 V' },
      'positive and negative: expected readings that come to at most 400 V, the voltage between the poles, got 800 V together',
    ],
    [{ positive: '0 V', negative: '0 V' }, 'with 0 V at both poles the meter is not connected, or the pack is off'],
  ])('refuses readings that no circuit gives: %j', (given, message) => {
    expect(() => isolationTest({ ...readings, ...given } as never)).toThrow(message)
  })

  it('takes a reading that the known resistance does not lower for a pole on the chassis', () => {
    const shorted = { ...readings, positive: '0 V', negative: '400 V', loadedReading: '400 V' } as const
    expect(() => isolationTest(shorted)).toThrow(
      'isolationTest: the known resistance does not lower the negative reading, 400 V: the positive pole lies on the chassis. Switch off, touch neither',
    )
    expect(() => isolationTest({ ...shorted, loadedReading: '402 V' })).toThrow(CalculationError)
  })
})
