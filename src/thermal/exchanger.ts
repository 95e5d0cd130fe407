/**
 * Radiators and other heat exchangers by effectiveness and number of transfer units (conductance over the lesser
 * capacity rate).
 *
 * Rests on W. M. Kays and A. L. London, Compact Heat Exchangers, and Incropera, Fundamentals of Heat and Mass Transfer,
 * chapter 11. The number of transfer units for an effectiveness is what `solve` finds from these formulas.
 */
import { cite, formula, input, output } from '../formula/index.js'

/**
 * Effectiveness of a cross-flow exchanger with both streams unmixed, such as a finned car radiator. It is a fit to
 * the exact series; for a small ratio of capacity rates it goes over into the limit of that fit, the same for every
 * kind of exchanger.
 *
 * `eps = Cr * N^0.78 < 0.00001 ? 1 - exp(-N * (1 - Cr * N^0.78 / 2)) : 1 - exp(N^0.22 / Cr * (exp(-Cr * N^0.78) - 1))`
 *
 * - `transferUnits` (`N`, a plain number): number of transfer units, at least 0
 * - `capacityRatio` (`Cr`, a plain number): lesser over greater capacity rate, at least 0 and at most 1
 * - gives `eps`: effectiveness, in a plain number
 * - Assumes: the fit lies up to 4 % below the exact series at less than one transfer unit, and within 2.3 % of it up
 *   to ten
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, Table 11.3, cross-flow, both fluids unmixed.
 *
 * @example
 * ```ts
 * effectivenessCrossFlow({ transferUnits: 1, capacityRatio: 0.5 })
 * // 0.5448
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 11.3, cross-flow, both fluids unmixed
 * // (recomputed): 0.54476
 * ```
 */
export const effectivenessCrossFlow = /*@__PURE__*/ formula({
  name: 'effectivenessCrossFlow',
  title: 'Effectiveness in cross flow',
  inputs: {
    transferUnits: input('ratio', 'N', 'Number of transfer units', { min: 0 }),
    capacityRatio: input('ratio', 'Cr', 'Lesser over greater capacity rate', { min: 0, max: 1 }),
  },
  result: output('ratio', 'eps', 'Effectiveness'),
  expression:
    'Cr * N^0.78 < 0.00001 ? 1 - exp(-N * (1 - Cr * N^0.78 / 2)) : 1 - exp(N^0.22 / Cr * (exp(-Cr * N^0.78) - 1))',
  assumes: [
    'The fit lies up to 4 % below the exact series at less than one transfer unit, and within 2.3 % of it up to ten.',
  ],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'Table 11.3, cross-flow, both fluids unmixed'),
  // Where the difference from 1 would cancel, the first two terms of its series are good to 1e-11.
  compute: ({ transferUnits, capacityRatio }) => {
    const exponent = capacityRatio * transferUnits ** 0.78
    return exponent < 0.00001
      ? 1 - Math.exp(-transferUnits * (1 - exponent / 2))
      : 1 - Math.exp((transferUnits ** 0.22 / capacityRatio) * (Math.exp(-exponent) - 1))
  },
})

/**
 * Effectiveness of a counterflow exchanger, the most that a number of transfer units can do. It is the usual
 * exponential form written with the hyperbolic tangent, because that one loses its digits as the capacity rates
 * become equal.
 *
 * `eps = Cr < 1 ? 2 / (1 + Cr + (1 - Cr) / tanh(N * (1 - Cr) / 2)) : N / (1 + N)`
 *
 * - `transferUnits` (`N`, a plain number): number of transfer units, at least 0
 * - `capacityRatio` (`Cr`, a plain number): lesser over greater capacity rate, at least 0 and at most 1
 * - gives `eps`: effectiveness, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, Table 11.3, counterflow.
 *
 * @example
 * ```ts
 * effectivenessCounterFlow({ transferUnits: 1, capacityRatio: 0.5 })
 * // 0.5647
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 11.3, counterflow (recomputed): 0.56473
 * ```
 */
export const effectivenessCounterFlow = /*@__PURE__*/ formula({
  name: 'effectivenessCounterFlow',
  title: 'Effectiveness in counterflow',
  inputs: {
    transferUnits: input('ratio', 'N', 'Number of transfer units', { min: 0 }),
    capacityRatio: input('ratio', 'Cr', 'Lesser over greater capacity rate', { min: 0, max: 1 }),
  },
  result: output('ratio', 'eps', 'Effectiveness'),
  expression: 'Cr < 1 ? 2 / (1 + Cr + (1 - Cr) / tanh(N * (1 - Cr) / 2)) : N / (1 + N)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'Table 11.3, counterflow'),
  compute: ({ transferUnits, capacityRatio }) =>
    capacityRatio < 1
      ? 2 / (1 + capacityRatio + (1 - capacityRatio) / Math.tanh((transferUnits * (1 - capacityRatio)) / 2))
      : transferUnits / (1 + transferUnits),
})

/**
 * Effectiveness of an exchanger whose streams run the same way. It can never exceed 1 / (1 + capacity ratio).
 *
 * `eps = (1 - exp(-N * (1 + Cr))) / (1 + Cr)`
 *
 * - `transferUnits` (`N`, a plain number): number of transfer units, at least 0
 * - `capacityRatio` (`Cr`, a plain number): lesser over greater capacity rate, at least 0 and at most 1
 * - gives `eps`: effectiveness, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, Table 11.3, parallel flow.
 *
 * @example
 * ```ts
 * effectivenessParallelFlow({ transferUnits: 1, capacityRatio: 0.5 })
 * // 0.5179
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 11.3, parallel flow (recomputed): 0.51791
 * ```
 */
export const effectivenessParallelFlow = /*@__PURE__*/ formula({
  name: 'effectivenessParallelFlow',
  title: 'Effectiveness in parallel flow',
  inputs: {
    transferUnits: input('ratio', 'N', 'Number of transfer units', { min: 0 }),
    capacityRatio: input('ratio', 'Cr', 'Lesser over greater capacity rate', { min: 0, max: 1 }),
  },
  result: output('ratio', 'eps', 'Effectiveness'),
  expression: '(1 - exp(-N * (1 + Cr))) / (1 + Cr)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'Table 11.3, parallel flow'),
  compute: ({ transferUnits, capacityRatio }) =>
    (1 - Math.exp(-transferUnits * (1 + capacityRatio))) / (1 + capacityRatio),
})

/**
 * Heat that an exchanger passes from the hot to the cold stream. The lesser capacity rate (mass flow times specific
 * heat) may be that of the air at low speed and that of the coolant at high speed.
 *
 * `Q = eps * Cmin * (Th - Tc)`
 *
 * - `effectiveness` (`eps`, a plain number): effectiveness, at least 0 and at most 1
 * - `minimumCapacityRate` (`Cmin`, W/K): lesser capacity rate of the two streams, at least 0 W/K
 * - `hotInlet` (`Th`, °C): temperature at which the hot stream enters
 * - `coldInlet` (`Tc`, °C): temperature at which the cold stream enters
 * - gives `Q`: heat passed, in kW
 * - holds where hotInlet - coldInlet is at least 0
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 11.
 *
 * @example
 * ```ts
 * exchangerHeat({ effectiveness: 0.35714, minimumCapacityRate: '2517 W/K', hotInlet: '90 °C', coldInlet: '20 °C' })
 * // 62.92 kW
 * // Çengel, Heat Transfer, 3rd edition, example 11.6, a car radiator (recomputed): 62.925 kW
 * ```
 */
export const exchangerHeat = /*@__PURE__*/ formula({
  name: 'exchangerHeat',
  title: 'Heat passed by an exchanger',
  inputs: {
    effectiveness: input('ratio', 'eps', 'Effectiveness', { min: 0, max: 1 }),
    minimumCapacityRate: input('thermalConductance', 'Cmin', 'Lesser capacity rate of the two streams', { min: 0 }),
    hotInlet: input('temperature', 'Th', 'Temperature at which the hot stream enters'),
    coldInlet: input('temperature', 'Tc', 'Temperature at which the cold stream enters'),
  },
  result: output('power', 'Q', 'Heat passed'),
  expression: 'eps * Cmin * (Th - Tc)',
  valid: [{ of: 'hotInlet - coldInlet', value: ({ hotInlet, coldInlet }) => hotInlet - coldInlet, min: 0 }],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 11'),
  compute: ({ effectiveness, minimumCapacityRate, hotInlet, coldInlet }) =>
    effectiveness * minimumCapacityRate * (hotInlet - coldInlet),
})
