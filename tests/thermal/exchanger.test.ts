/** Heat exchangers: the exact series of cross flow, the fit to it, and the limits of all kinds. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { explain, solve } from '../../src/formula/index.js'
import { quantity } from '../../src/quantity/index.js'
import {
  capacityRate,
  capacityRatio,
  conductanceAtFlow,
  conductanceInSeries,
  effectivenessCounterFlow,
  effectivenessCrossFlow,
  effectivenessCrossFlowApproximation,
  effectivenessParallelFlow,
  exchangerHeat,
  exchangerHotInlet,
  faceFlow,
  streamOutlet,
  transferUnits,
} from '../../src/thermal/index.js'
import { between } from '../between.js'
import { runs } from '../runs.js'

const units = between(0, 20)
const ratio = between(0, 1)

/** Numbers near the least that a double can hold have fewer digits: 1e-300 lets them pass. */
function near(actual: number, wanted: number, relative = 1e-9): void {
  expect(Math.abs(actual - wanted), `${actual} against ${wanted}`).toBeLessThanOrEqual(
    relative * Math.abs(wanted) + 1e-300,
  )
}

const crossFlow = (N: number, Cr: number) => effectivenessCrossFlow({ transferUnits: N, capacityRatio: Cr }).si

describe('effectivenessCrossFlow', () => {
  it.each([
    // Exact series, worked out apart from this library with the open-source library ht and as a double series.
    [1, 0.5, 0.54749, 1e-5],
    [2, 1, 0.61425, 1e-5],
    [1, 0, 0.63212, 1e-5],
    // Kays and London, Compact Heat Exchangers, table of cross flow, both unmixed (from memory: 0.476).
    [1, 1, 0.476, 1e-3],
    // Incropera, example 11.4 (recomputed from its inputs; the chart of the book gives 0.82).
    [2.667, 0.3574, 0.8358, 1e-4],
    // Çengel, example 11.6, a car radiator (recomputed): 25 K of 70 K.
    [0.5429, 0.8, 0.35714, 1e-4],
  ])('is that of published tables at %d transfer units and a ratio of %d', (N, Cr, expected, within) => {
    near(crossFlow(N, Cr), expected, within)
  })

  it('is what the two streams come to, cell by small cell', () => {
    // Heat passes as the difference of the mean temperatures of each of 400 × 400 cells; halving the cells shows an
    // error that falls with their square, and takes it out.
    const marched = (N: number, Cr: number, cells: number) => {
      const [n, c] = [N / cells, (N * Cr) / cells]
      const cold = new Float64Array(cells)
      let out = 0
      for (let row = 0; row < cells; row++) {
        let hot = 1
        for (let i = 0; i < cells; i++) {
          const difference = (hot - (cold[i] as number)) / (1 + n / 2 + c / 2)
          hot -= n * difference
          cold[i] = (cold[i] as number) + c * difference
        }
        out += hot / cells
      }
      return 1 - out
    }
    for (const [N, Cr] of [
      [0.5, 1],
      [1, 0.5],
      [3, 0.8],
      [6, 1],
    ] as const) {
      const [coarse, fine] = [marched(N, Cr, 200), marched(N, Cr, 400)]
      near(crossFlow(N, Cr), fine + (fine - coarse) / 3, 1e-7)
    }
  })

  it('is, for equal streams, 1 − exp(−2 N) (I0(2 N) + I1(2 N)), also for very many transfer units', () => {
    // The modified functions of Bessel by their asymptotic series, which at 2 N of 400 and more is good to 1e-12.
    const scaled = (order: number, x: number) => {
      let [term, sum] = [1, 1]
      for (let k = 1; k < 8; k++) {
        term *= -(4 * order ** 2 - (2 * k - 1) ** 2) / (k * 8 * x)
        sum += term
      }
      return sum / Math.sqrt(2 * Math.PI * x)
    }
    for (const N of [200, 700, 800, 3000, 10000]) {
      near(1 - crossFlow(N, 1), scaled(0, 2 * N) + scaled(1, 2 * N), 1e-8)
    }
  })

  it('solves for the transfer units of an effectiveness', () => {
    // Incropera, example 11.3 (recomputed: exact 2.081; its chart gives 2.1).
    const found = solve((given) => effectivenessCrossFlow({ transferUnits: given, capacityRatio: 0.45 }), {
      result: 0.7547,
      between: [0, 10],
    })
    near(found.si, 2.081, 3e-4)
  })

  it('rises with transfer units and falls with the capacity ratio', () => {
    fc.assert(
      fc.property(between(0, 50), between(0, 50), ratio, ratio, (a, b, first, second) => {
        const [few, many, small, great] = [
          Math.min(a, b),
          Math.max(a, b),
          Math.min(first, second),
          Math.max(first, second),
        ]
        expect(crossFlow(many, small)).toBeGreaterThanOrEqual(crossFlow(few, small) - 1e-12)
        expect(crossFlow(many, great)).toBeLessThanOrEqual(crossFlow(many, small) + 1e-12)
      }),
    )
  })

  it('lies between parallel flow and counterflow', () => {
    fc.assert(
      fc.property(units, ratio, (N, Cr) => {
        const given = { transferUnits: N, capacityRatio: Cr }
        expect(crossFlow(N, Cr)).toBeLessThanOrEqual(effectivenessCounterFlow.compute(given) + 1e-12)
        expect(crossFlow(N, Cr)).toBeGreaterThanOrEqual(effectivenessParallelFlow.compute(given) - 1e-12)
      }),
    )
  })

  it('shows in a working what it gives and from what', () => {
    const working = explain(() => effectivenessCrossFlow({ transferUnits: 1, capacityRatio: 0.5 }))
    expect(working.toText()).toBe(
      'Effectiveness in cross flow, both streams unmixed: 0.5475 at 1 transfer units and a capacity ratio of 0.5   ' +
        '[Mason, Heat transfer in crossflow (1955), exact series]',
    )
  })

  it('refuses what no exchanger is', () => {
    expect(() => effectivenessCrossFlow({ transferUnits: -1, capacityRatio: 1.2 })).toThrow(
      'effectivenessCrossFlow: 2 inputs cannot be used\n' +
        '  transferUnits: expected a ratio at least 0, got -1 (Number of transfer units)\n' +
        '  capacityRatio: expected a ratio at least 0 and at most 1, got 1.2 (Lesser over greater capacity rate)',
    )
    expect(() => effectivenessCrossFlow({ transferUnits: 1e6, capacityRatio: 1 })).toThrow(
      'transferUnits * capacityRatio: expected a product of at most 10000, got 1000000 and 1',
    )
  })
})

describe('the approximation for cross flow', () => {
  it('fits the exact series as closely as it says', () => {
    let [worstBelowOne, worstAbove] = [0, 0]
    fc.assert(
      fc.property(between(0.01, 10), between(0.01, 1), (N, Cr) => {
        const fitted = effectivenessCrossFlowApproximation.compute({ transferUnits: N, capacityRatio: Cr })
        const off = Math.abs(fitted / crossFlow(N, Cr) - 1)
        if (N < 1) worstBelowOne = Math.max(worstBelowOne, off)
        else worstAbove = Math.max(worstAbove, off)
      }),
      { numRuns: runs(500) },
    )
    expect(worstBelowOne).toBeLessThan(0.04)
    expect(worstAbove).toBeLessThan(0.023)
    // It is a fit, and no more: a test that cannot tell it from the series would prove nothing.
    expect(worstBelowOne).toBeGreaterThan(0.02)
  })

  it('goes over into its limit without a step', () => {
    for (const N of [0.1, 1, 5]) {
      const Cr = 0.00001 / N ** 0.78
      const at = (share: number) =>
        effectivenessCrossFlowApproximation.compute({ transferUnits: N, capacityRatio: Cr * share })
      near(at(1 - 1e-10), at(1 + 1e-10), 1e-9)
    }
  })
})

describe('heat exchangers', () => {
  it('are one where the one stream hardly changes its temperature', () => {
    fc.assert(
      fc.property(units, (N) => {
        const wanted = 1 - Math.exp(-N)
        for (const Cr of [0, 1e-300, 1e-15]) {
          const given = { transferUnits: N, capacityRatio: Cr }
          for (const formula of [
            effectivenessCrossFlowApproximation,
            effectivenessCounterFlow,
            effectivenessParallelFlow,
          ]) {
            expect(Math.abs(formula.compute(given) - wanted)).toBeLessThan(1e-12)
          }
          expect(Math.abs(crossFlow(N, Cr) - wanted)).toBeLessThan(1e-12)
        }
      }),
    )
  })

  it('have in counterflow the effectiveness of the usual exponential form', () => {
    fc.assert(
      fc.property(units, between(0, 0.99), (N, Cr) => {
        const decay = Math.exp(-N * (1 - Cr))
        const usual = (1 - decay) / (1 - Cr * decay)
        const effectiveness = effectivenessCounterFlow.compute({ transferUnits: N, capacityRatio: Cr })
        expect(Math.abs(effectiveness - usual)).toBeLessThan(1e-12)
      }),
    )
  })

  it('come to N / (1 + N) in counterflow as the streams become equal', () => {
    fc.assert(
      fc.property(units, (N) => {
        for (const Cr of [1 - 1e-12, 1 - 2 ** -53, 1]) {
          near(effectivenessCounterFlow.compute({ transferUnits: N, capacityRatio: Cr }), N / (1 + N))
        }
      }),
    )
  })

  // Çengel, example 11.8 (recomputed).
  it('solve for the transfer units of an effectiveness in counterflow', () => {
    const counter = solve(effectivenessCounterFlow, 'transferUnits', { result: 0.42857, capacityRatio: 0.5819 })
    near(counter.si, 0.65236, 1e-4)
  })

  // Çengel, example 11.6 (recomputed): 0.6 kg/s of water from 90 °C to 65 °C, air from 20 °C to 40 °C, 40 tubes of
  // 5 mm and 0.65 m, 3347 W/(m²·K) in the book.
  it('cool a published car radiator as the book says', () => {
    const [water, air] = [quantity('thermalConductance', 2517, 'W/K'), quantity('thermalConductance', 3146.25, 'W/K')]
    const conductance = quantity('thermalConductance', 3347 * Math.PI * 0.005 * 0.65 * 40, 'W/K')
    const N = transferUnits({ conductance, minimumCapacityRate: water })
    const effectiveness = effectivenessCrossFlow({
      transferUnits: N,
      capacityRatio: capacityRatio({ first: water, second: air }),
    })
    const heat = exchangerHeat({ effectiveness, minimumCapacityRate: water, hotInlet: '90 °C', coldInlet: '20 °C' })
    near(heat.si, 62925, 0.002)
    near(exchangerHotInlet({ heat, effectiveness, minimumCapacityRate: water, coldInlet: '20 °C' }).in('°C'), 90, 1e-9)
    near(streamOutlet({ inlet: '90 °C', heat: heat.times(-1), capacityRate: water }).in('°C'), 65, 0.002)
  })

  // An invented radiator of 0.16 m² face with half glycol, worked out apart from this library with the exact series; the
  // exponent is that of louvred fins (Davenport, from memory). The lesser capacity rate changes sides at 4 m/s.
  it.each([
    [1, 3682.8],
    [2, 5748.6],
    [4, 8297.4],
    [8, 11049],
    [16, 13619],
  ])('cool a radiator at a face velocity of %d m/s as worked out elsewhere', (velocity, watts) => {
    const coolant = quantity('thermalConductance', 0.2 * 3358, 'W/K')
    const flow = faceFlow({ area: '0.16 m²', velocity: quantity('speed', velocity, 'm/s') })
    const air = capacityRate({ flow, density: '1.127 kg/m³', specificHeat: '1007 J/(kg·K)' })
    const reference = faceFlow({ area: '0.16 m²', velocity: '4 m/s' })
    const airSide = conductanceAtFlow({ conductance: '600 W/K', flow, referenceFlow: reference, exponent: 0.58 })
    const conductance = conductanceInSeries({ first: airSide, second: '2500 W/K' })
    const lesser = air.isAtMost(coolant) ? air : coolant
    const effectiveness = effectivenessCrossFlow({
      transferUnits: transferUnits({ conductance, minimumCapacityRate: lesser }),
      capacityRatio: capacityRatio({ first: air, second: coolant }),
    })
    const heat = exchangerHeat({ effectiveness, minimumCapacityRate: lesser, hotInlet: '60 °C', coldInlet: '30 °C' })
    near(heat.si, watts, 0.001)
  })

  it('refuse streams that were exchanged', () => {
    const given = { effectiveness: 0.5, minimumCapacityRate: '500 W/K' } as const
    expect(() => exchangerHeat({ ...given, hotInlet: '20 °C', coldInlet: '60 °C' })).toThrow(
      'hotInlet - coldInlet: expected at least 0',
    )
  })
})
