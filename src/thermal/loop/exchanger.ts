/**
 * Radiators and other heat exchangers by effectiveness and number of transfer units (conductance over the lesser
 * capacity rate).
 *
 * Rests on W. M. Kays and A. L. London, Compact Heat Exchangers, and Incropera, Fundamentals of Heat and Mass Transfer,
 * chapter 11; the exact series of cross flow is that of J. L. Mason, Heat transfer in crossflow (1955). The number of
 * transfer units for an effectiveness is what `solve` finds from these formulas.
 */
import { cite, definition, formula, input, output, section } from '../../formula/index.js'
import { given, procedure } from '../../procedure/index.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'

/** Up to this product of transfer units and capacity ratio the series is summed; its terms are hardly more. */
const MOST_UNITS = 1e4

/**
 * Gives the effectiveness of a cross-flow exchanger with both streams unmixed, such as a finned car radiator, from the
 * exact series, to nine figures. The series has no closed form, so it is not a formula of the catalogue;
 * {@link effectivenessCrossFlowApproximation} is the fit that is usually printed in its place, up to 4 % off.
 *
 * `solve((transferUnits) => effectivenessCrossFlow({ transferUnits, capacityRatio }), { result, between })` finds the
 * transfer units for an effectiveness.
 *
 * Answers: how effective is an exchanger in cross flow, both streams unmixed?
 *
 * - `transferUnits`: number of transfer units, a plain number, at least 0
 * - `capacityRatio`: lesser over greater capacity rate, a plain number, at least 0 and at most 1
 *
 * @returns The effectiveness, from 0 to 1.
 * @throws InputError for inputs outside their ranges, or whose product exceeds 10 000: no exchanger comes near.
 * Source: Mason, Heat transfer in crossflow (1955); Kays and London, Compact Heat Exchangers.
 *
 * @example
 * ```ts
 * String(effectivenessCrossFlow({ transferUnits: 1, capacityRatio: 0.5 })) // '0.5475'
 * ```
 */
export const effectivenessCrossFlow = /*@__PURE__*/ procedure({
  name: 'effectivenessCrossFlow',
  title: 'Effectiveness in cross flow',
  answers: 'How effective is an exchanger in cross flow, both streams unmixed?',
  input: {
    transferUnits: given('ratio', 'Number of transfer units', { min: 0 }),
    capacityRatio: given('ratio', 'Lesser over greater capacity rate', { min: 0, max: 1 }),
  },
  source: [cite('Mason, Heat transfer in crossflow (1955)'), cite('Kays and London, Compact Heat Exchangers')],
  work: ({ transferUnits, capacityRatio }): Quantity<'ratio'> =>
    section(
      (effectiveness) =>
        `Effectiveness in cross flow, both streams unmixed: ${effectiveness} at ${transferUnits} transfer units and a ` +
        `capacity ratio of ${capacityRatio}   [Mason, Heat transfer in crossflow (1955), exact series]`,
      () => quantity('ratio', crossFlowSeries(transferUnits.si, capacityRatio.si)),
    ),
})

/**
 * The series of Mason: the sum over n of P(n, N) P(n, Cr N), over Cr N, where P(n, m) is the chance that more than n
 * events come where m are expected.
 *
 * @internal
 */
export function crossFlowSeries(transferUnits: number, capacityRatio: number): number {
  const [N, M] = [transferUnits, transferUnits * capacityRatio]
  if (M > MOST_UNITS) {
    const [expected, received] = [`a product of at most ${MOST_UNITS}`, `${transferUnits} and ${capacityRatio}`]
    throw new InputError('effectivenessCrossFlow', [{ path: 'transferUnits * capacityRatio', expected, received }])
  }
  if (M === 0) return -Math.expm1(-N)
  let [moreN, moreM] = [-Math.expm1(-N), -Math.expm1(-M)]
  let sum = moreN * (moreM / M)
  // The chances of just n events, as logarithms: those of many transfer units are too small for a number.
  let [logN, logM] = [-N, -M]
  for (let n = 1; moreM > Number.EPSILON ** 2 && moreN > 0; n++) {
    logN += Math.log(N / n)
    logM += Math.log(M / n)
    moreN = Math.max(0, moreN - Math.exp(logN))
    // Far beyond M what is left of 1 is all rounding.
    moreM = n > M + 40 + 12 * Math.sqrt(M) ? 0 : Math.max(0, moreM - Math.exp(logM))
    sum += moreN * (moreM / M)
  }
  return Math.min(1, sum)
}

/**
 * Effectiveness of a cross-flow exchanger with both streams unmixed, by the closed form that is usually printed: a
 * fit to the exact series, for a calculation by hand. {@link effectivenessCrossFlow} sums the series. For a small
 * ratio of capacity rates the fit goes over into its limit, the same for every kind of exchanger.
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
 * effectivenessCrossFlowApproximation({ transferUnits: 1, capacityRatio: 0.5 })
 * // 0.5448
 * // Incropera, Fundamentals of Heat and Mass Transfer, 6th edition, Table 11.3, cross-flow, both fluids unmixed
 * // (recomputed): 0.54476
 * ```
 */
export const effectivenessCrossFlowApproximation = /*@__PURE__*/ formula({
  name: 'effectivenessCrossFlowApproximation',
  title: 'Effectiveness in cross flow, approximately',
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
  valid: [
    {
      of: 'hotInlet - coldInlet',
      kind: 'temperatureDifference',
      value: ({ hotInlet, coldInlet }) => hotInlet - coldInlet,
      min: 0,
    },
  ],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 11'),
  compute: ({ effectiveness, minimumCapacityRate, hotInlet, coldInlet }) =>
    effectiveness * minimumCapacityRate * (hotInlet - coldInlet),
})

/**
 * Heat that a stream takes up for each kelvin that it warms.
 *
 * `C = q * rho * c`
 *
 * - `flow` (`q`, L/min): flow, at least 0 L/min
 * - `density` (`rho`, kg/m³): density of the fluid, where the flow is measured, at least 0 kg/m³
 * - `specificHeat` (`c`, J/(kg·K)): specific heat of the fluid, at least 0 J/(kg·K)
 * - gives `C`: capacity rate, in W/K
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * capacityRate({ flow: '14.469 L/min', density: '992.216 kg/m³', specificHeat: '4179.4 J/(kg·K)' })
 * // 1000 W/K
 * // IAPWS, properties of water at 40 °C (recomputed): 1000 W/K
 * ```
 */
export const capacityRate = /*@__PURE__*/ formula({
  name: 'capacityRate',
  title: 'Capacity rate of a stream',
  inputs: {
    flow: input('volumeFlow', 'q', 'Flow', { min: 0 }),
    density: input('density', 'rho', 'Density of the fluid, where the flow is measured', { min: 0 }),
    specificHeat: input('specificHeat', 'c', 'Specific heat of the fluid', { min: 0 }),
  },
  result: output('thermalConductance', 'C', 'Capacity rate'),
  expression: 'q * rho * c',
  source: definition,
  compute: ({ flow, density, specificHeat }) => flow * density * specificHeat,
})

/**
 * Ratio of the capacity rates of two streams, the lesser over the greater.
 *
 * `Cr = min(C1, C2) / max(C1, C2)`
 *
 * - `first` (`C1`, W/K): capacity rate of one stream, at least 0 W/K
 * - `second` (`C2`, W/K): capacity rate of the other stream, above 0 W/K
 * - gives `Cr`: lesser over greater capacity rate, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * capacityRatio({ first: '2517 W/K', second: '3146.25 W/K' })
 * // 0.8
 * // Çengel, Heat Transfer, 3rd edition, example 11.6, a car radiator (recomputed): 0.8
 * ```
 */
export const capacityRatio = /*@__PURE__*/ formula({
  name: 'capacityRatio',
  title: 'Ratio of capacity rates',
  inputs: {
    first: input('thermalConductance', 'C1', 'Capacity rate of one stream', { min: 0 }),
    second: input('thermalConductance', 'C2', 'Capacity rate of the other stream', { above: 0 }),
  },
  result: output('ratio', 'Cr', 'Lesser over greater capacity rate'),
  expression: 'min(C1, C2) / max(C1, C2)',
  source: definition,
  compute: ({ first, second }) => Math.min(first, second) / Math.max(first, second),
})

/**
 * Number of transfer units: how large an exchanger is for the streams that pass it.
 *
 * `N = G / Cmin`
 *
 * - `conductance` (`G`, W/K): conductance from stream to stream, at least 0 W/K
 * - `minimumCapacityRate` (`Cmin`, W/K): lesser capacity rate of the two streams, above 0 W/K
 * - gives `N`: number of transfer units, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * transferUnits({ conductance: '1366.97 W/K', minimumCapacityRate: '2517 W/K' })
 * // 0.5431
 * // Çengel, Heat Transfer, 3rd edition, example 11.6, a car radiator (recomputed): 0.5429
 * ```
 */
export const transferUnits = /*@__PURE__*/ formula({
  name: 'transferUnits',
  title: 'Number of transfer units',
  inputs: {
    conductance: input('thermalConductance', 'G', 'Conductance from stream to stream', { min: 0 }),
    minimumCapacityRate: input('thermalConductance', 'Cmin', 'Lesser capacity rate of the two streams', { above: 0 }),
  },
  result: output('ratio', 'N', 'Number of transfer units'),
  expression: 'G / Cmin',
  source: definition,
  compute: ({ conductance, minimumCapacityRate }) => conductance / minimumCapacityRate,
})

/**
 * Conductance of an exchanger, or of one side of it, at another flow. The exponent is about 0.6 for air between
 * louvred fins (from memory) and 0.8 for a coolant in turbulent flow; in laminar flow the conductance hardly depends
 * on it.
 *
 * `G = G0 * (q / q0)^n`
 *
 * - `conductance` (`G0`, W/K): conductance at the flow of reference, at least 0 W/K
 * - `flow` (`q`, L/min): flow, at least 0 L/min
 * - `referenceFlow` (`q0`, L/min): flow of reference, above 0 L/min
 * - `exponent` (`n`, a plain number): exponent of the flow, at least 0 and at most 1
 * - gives `G`: conductance at the flow, in W/K
 * - Assumes: the flow stays of its sort, laminar or turbulent
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Kays and London, Compact Heat Exchangers.
 *
 * @example
 * ```ts
 * conductanceAtFlow({ conductance: '600 W/K', flow: '4608 m³/h', referenceFlow: '2304 m³/h', exponent: 0.58 })
 * // 896.9 W/K
 * // common practice, no source (recomputed): 896.91 W/K
 * ```
 */
export const conductanceAtFlow = /*@__PURE__*/ formula({
  name: 'conductanceAtFlow',
  title: 'Conductance at another flow',
  inputs: {
    conductance: input('thermalConductance', 'G0', 'Conductance at the flow of reference', { min: 0 }),
    flow: input('volumeFlow', 'q', 'Flow', { min: 0 }),
    referenceFlow: input('volumeFlow', 'q0', 'Flow of reference', { above: 0 }),
    exponent: input('ratio', 'n', 'Exponent of the flow', { min: 0, max: 1 }),
  },
  result: output('thermalConductance', 'G', 'Conductance at the flow'),
  expression: 'G0 * (q / q0)^n',
  assumes: ['The flow stays of its sort, laminar or turbulent.'],
  source: cite('Kays and London, Compact Heat Exchangers'),
  compute: ({ conductance, flow, referenceFlow, exponent }) => conductance * (flow / referenceFlow) ** exponent,
})

/**
 * Conductance of two that heat passes one after the other, such as from the coolant to the wall and from the wall to
 * the air.
 *
 * `G = G1 * G2 / (G1 + G2)`
 *
 * - `first` (`G1`, W/K): first conductance, at least 0 W/K
 * - `second` (`G2`, W/K): second conductance, above 0 W/K
 * - gives `G`: conductance of both, in W/K
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * conductanceInSeries({ first: '600 W/K', second: '2500 W/K' })
 * // 483.9 W/K
 * // by definition (exact): 483.871 W/K
 * ```
 */
export const conductanceInSeries = /*@__PURE__*/ formula({
  name: 'conductanceInSeries',
  title: 'Conductance of two in series',
  inputs: {
    first: input('thermalConductance', 'G1', 'First conductance', { min: 0 }),
    second: input('thermalConductance', 'G2', 'Second conductance', { above: 0 }),
  },
  result: output('thermalConductance', 'G', 'Conductance of both'),
  expression: 'G1 * G2 / (G1 + G2)',
  source: definition,
  compute: ({ first, second }) => (first * second) / (first + second),
})

/**
 * Temperature at which a hot stream must enter an exchanger to pass a heat to a cold one.
 *
 * `Th = Tc + Q / (eps * Cmin)`
 *
 * - `heat` (`Q`, kW): heat to pass, at least 0 kW
 * - `effectiveness` (`eps`, a plain number): effectiveness, above 0 and at most 1
 * - `minimumCapacityRate` (`Cmin`, W/K): lesser capacity rate of the two streams, above 0 W/K
 * - `coldInlet` (`Tc`, °C): temperature at which the cold stream enters
 * - gives `Th`: temperature at which the hot stream enters, in °C
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 11.
 *
 * @example
 * ```ts
 * exchangerHotInlet({
 *   heat: '62.925 kW',
 *   effectiveness: 0.35714,
 *   minimumCapacityRate: '2517 W/K',
 *   coldInlet: '20 °C',
 * })
 * // 90 °C
 * // Çengel, Heat Transfer, 3rd edition, example 11.6, a car radiator (recomputed): 90 °C
 * ```
 */
export const exchangerHotInlet = /*@__PURE__*/ formula({
  name: 'exchangerHotInlet',
  title: 'Hot inlet temperature of an exchanger',
  inputs: {
    heat: input('power', 'Q', 'Heat to pass', { min: 0 }),
    effectiveness: input('ratio', 'eps', 'Effectiveness', { above: 0, max: 1 }),
    minimumCapacityRate: input('thermalConductance', 'Cmin', 'Lesser capacity rate of the two streams', { above: 0 }),
    coldInlet: input('temperature', 'Tc', 'Temperature at which the cold stream enters'),
  },
  result: output('temperature', 'Th', 'Temperature at which the hot stream enters'),
  expression: 'Tc + Q / (eps * Cmin)',
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 11'),
  compute: ({ heat, effectiveness, minimumCapacityRate, coldInlet }) =>
    coldInlet + heat / (effectiveness * minimumCapacityRate),
})

/**
 * Temperature of a stream after it has taken up a heat. Heat given off is negative.
 *
 * `To = Ti + Q / C`
 *
 * - `inlet` (`Ti`, °C): temperature at which the stream enters
 * - `heat` (`Q`, kW): heat taken up
 * - `capacityRate` (`C`, W/K): capacity rate of the stream, above 0 W/K
 * - gives `To`: temperature at which the stream leaves, in °C
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * streamOutlet({ inlet: '90 °C', heat: '-62.925 kW', capacityRate: '2517 W/K' })
 * // 65 °C
 * // Çengel, Heat Transfer, 3rd edition, example 11.6, a car radiator (read): 65 °C
 * ```
 */
export const streamOutlet = /*@__PURE__*/ formula({
  name: 'streamOutlet',
  title: 'Outlet temperature of a stream',
  inputs: {
    inlet: input('temperature', 'Ti', 'Temperature at which the stream enters'),
    heat: input('power', 'Q', 'Heat taken up'),
    capacityRate: input('thermalConductance', 'C', 'Capacity rate of the stream', { above: 0 }),
  },
  result: output('temperature', 'To', 'Temperature at which the stream leaves'),
  expression: 'Ti + Q / C',
  source: definition,
  compute: ({ inlet, heat, capacityRate }) => inlet + heat / capacityRate,
})

/**
 * Flow through a face, such as of air through a radiator. The velocity at the face is far below that of the car,
 * often a tenth to a third of it.
 *
 * `q = A * v`
 *
 * - `area` (`A`, m²): area of the face, at least 0 m²
 * - `velocity` (`v`, km/h): velocity at the face, at least 0 km/h
 * - gives `q`: flow, in m³/h
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * faceFlow({ area: '0.16 m²', velocity: '4 m/s' })
 * // 2304 m³/h
 * // by definition (exact): 2304 m³/h
 * ```
 */
export const faceFlow = /*@__PURE__*/ formula({
  name: 'faceFlow',
  title: 'Flow through a face',
  inputs: {
    area: input('area', 'A', 'Area of the face', { min: 0 }),
    velocity: input('speed', 'v', 'Velocity at the face', { min: 0 }),
  },
  result: output('volumeFlow', 'q', 'Flow', 'm³/h'),
  expression: 'A * v',
  source: definition,
  compute: ({ area, velocity }) => area * velocity,
})
