/** What cells still hold: by two rests. */
import { describe, expect, it } from 'vitest'
import { capacityBetweenRests, restCapacity } from '../../src/electrical/index.js'
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
