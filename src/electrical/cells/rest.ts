/**
 * The capacity of a module from its voltage at two rests and the charge that flowed between them.
 *
 * Rests on the open-circuit voltage of pack/module.ts.
 */
import { definition, propagate, section } from '../../formula/index.js'
import { lithiumCells } from '../../procedure/cautions.js'
import {
  assumed,
  type Findings,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { curveIssues, moduleFields, type OpenCircuit, openCircuitOf } from '../pack/module.js'
import { capacityBetweenRests } from './health.js'

/** A capacity from two rests. */
export interface RestCapacity extends Findings {
  readonly capacity: Quantity<'charge'>
  /** Expanded, k = 2. */
  readonly uncertainty: Quantity<'charge'>
  /** State of charge at each rest. */
  readonly upper: Quantity<'ratio'>
  readonly lower: Quantity<'ratio'>
}

/** Modules are sorted by capacities that are known as well as this. Common practice, no source. */
const SORTED = /*@__PURE__*/ (() => quantity('ratio', '10 %'))()
/** How well a state of charge is known from a curve of the cell itself and from that of a model, k = 2. */
const [OF_CELL, OF_MODEL] = [0.02, 0.05] as const

const restFields = /*@__PURE__*/ (() => ({
  module: group(
    'The module, whole if that is at hand',
    {
      cellsInSeries: moduleFields.cellsInSeries,
      chemistry: moduleFields.chemistry,
      minimumVoltage: moduleFields.minimumVoltage,
      maximumVoltage: moduleFields.maximumVoltage,
      openCircuit: moduleFields.openCircuit,
    },
    { open: true },
  ),
  from: given('voltage', 'Voltage at the rest before', { above: 0 }),
  to: given('voltage', 'Voltage at the rest after', { above: 0 }),
  charge: given('charge', 'Charge that flowed out between the two', { above: 0, usual: ['5 Ah', '200 Ah'] }),
  voltageUncertainty: given('ratio', 'How uncertain a reading of the voltage is, k = 2, as a share of it', {
    min: 0,
    max: 0.1,
    usual: ['0.01 %', '2 %'],
    default: '0.5 %',
    because: 'a hand-held meter, common practice, no source',
  }),
  chargeUncertainty: given('ratio', 'How uncertain the charge is, k = 2, as a share of it', {
    min: 0,
    max: 0.5,
    usual: ['0.1 %', '5 %'],
    default: '2 %',
    because: 'a counter with a shunt, common practice, no source',
  }),
  stateUncertainty: optional(
    given('ratio', 'How uncertain the state of charge is that the curve tells, k = 2, in parts of the whole', {
      min: 0,
      max: 0.5,
      usual: ['0.5 %', '10 %'],
    }),
    {
      absent:
        'A state of charge is known to ± 2 % from openCircuit and to ± 5 % from the model of a chemistry (common practice, no source).',
    },
  ),
}))()

/**
 * Works out the capacity of a module from its voltage at two rests and the charge that flowed between them, with how
 * uncertain it is.
 *
 * The module has rested for an hour or more at both. Two rests far apart say much, two rests on the flat part of the curve
 * of iron phosphate next to nothing: the check tells which it is.
 *
 * Answers: what capacity follows from two voltages at rest and the charge between them, and how sure is it?
 *
 * - `module`: the module, whole if that is at hand
 *   - `cellsInSeries`: cells in series, a whole number, at least 1 and at most 1000
 *   - `chemistry`: what its cells are made of, 'NMC' or 'LFP', optional
 *   - `minimumVoltage`: lowest voltage that the module may have, in V, above 0 V
 *   - `maximumVoltage`: voltage of the full module, in V, above 0 V
 *   - `openCircuit`: points [state of charge, voltage at rest] in rising order, pairs of state of charge and
 *     open-circuit voltage, optional
 * - `from`: voltage at the rest before, in V, above 0 V
 * - `to`: voltage at the rest after, in V, above 0 V
 * - `charge`: charge that flowed out between the two, in Ah, above 0 Ah
 * - `voltageUncertainty`: how uncertain a reading of the voltage is, k = 2, as a share of it, a plain number, at
 *   least 0 and at most 0.1, 0.5 % by default (a hand-held meter, common practice, no source)
 * - `chargeUncertainty`: how uncertain the charge is, k = 2, as a share of it, a plain number, at least 0 and at most
 *   0.5, 2 % by default (a counter with a shunt, common practice, no source)
 * - `stateUncertainty`: how uncertain the state of charge is that the curve tells, k = 2, in parts of the whole, a
 *   plain number, at least 0 and at most 0.5, optional
 * - always assumed: the module rested at both until its voltage stood still, such as for an hour
 *
 * @returns The capacity with its uncertainty, and the states of charge that it rests on.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a voltage beyond the curve.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const { capacity, uncertainty } = restCapacity({
 *   module: {
 *     cellsInSeries: 12,
 *     openCircuit: [[0, '37 V'], [0.1, '40.6 V'], [0.5, '44.4 V'], [0.9, '48.9 V'], [1, '50.2 V']],
 *     minimumVoltage: '36 V',
 *     maximumVoltage: '50.4 V',
 *   },
 *   from: '48.9 V',
 *   to: '42.5 V',
 *   charge: '23.4 Ah',
 * })
 * `${capacity} ± ${uncertainty}` // '39 Ah ± 2.846 Ah'
 * ```
 */
export const restCapacity = /*@__PURE__*/ procedure({
  name: 'restCapacity',
  title: 'Capacity from two rests',
  answers: 'What capacity follows from two voltages at rest and the charge between them, and how sure is it?',
  input: restFields,
  source: [definition],
  assumes: ['The module rested at both until its voltage stood still, such as for an hour.'],
  work: (asked): Unfinished<RestCapacity> => {
    refuse(asked)
    const { module, charge, chargeUncertainty } = asked
    const curve = openCircuitOf('restCapacity', 'module', module)
    const [before, after] = [stateAt(asked, curve, 'from'), stateAt(asked, curve, 'to')]
    if (!(before.state > after.state)) {
      const received = `${asked.to}, as near to it as the curve is flat`
      throw new InputError('restCapacity', [
        { path: 'to', expected: `a voltage that tells less charge than ${asked.from}`, received },
      ])
    }
    const [upper, lower] = [before, after].map(({ state }) => quantity('ratio', state).as('%')) as [
      Quantity<'ratio'>,
      Quantity<'ratio'>,
    ]
    const capacity = section('Capacity from two rests', () => capacityBetweenRests({ charge, upper, lower }))
    const { standardUncertainty } = propagate(capacityBetweenRests, {
      charge: [charge, charge.times(chargeUncertainty.si / 2)],
      upper: [upper, quantity('ratio', before.uncertainty / 2)],
      lower: [lower, quantity('ratio', after.uncertainty / 2)],
    })
    const uncertainty = standardUncertainty.times(2).as('Ah')
    const share = quantity('ratio', uncertainty.ratioTo(capacity)).as('%')
    return {
      capacity: capacity.as('Ah'),
      uncertainty,
      upper,
      lower,
      checks: [
        trial(
          'rests.uncertainty',
          'Uncertainty of the capacity',
          says`the capacity is known to ± ${share}, at most the ± ${SORTED} with which modules can be told apart`,
          'common practice, no source',
          'from',
          'to',
          'charge',
        ),
      ],
      assumptions: [assumed('rests.openCircuit', curve.basis)],
      cautions: [lithiumCells],
    }
  },
})

type Asked = Read<typeof restFields>

function refuse({ module, from, to }: Asked): void {
  const issues = curveIssues('module', module)
  if (module.minimumVoltage.si >= module.maximumVoltage.si) {
    const expected = `a voltage above the lowest one, ${module.minimumVoltage}`
    issues.push({ path: 'module.maximumVoltage', expected, received: String(module.maximumVoltage) })
  }
  if (to.si >= from.si) issues.push({ path: 'to', expected: `a voltage below from, ${from}`, received: String(to) })
  if (issues.length > 0) throw new InputError('restCapacity', issues)
}

/** A state of charge by its voltage, and how uncertain that is: no curve says which state it is where it is flat. */
function stateAt(
  { module, voltageUncertainty, stateUncertainty, ...volts }: Asked,
  { voltsAt, ends: [lowest, highest] }: OpenCircuit,
  key: 'from' | 'to',
): { readonly state: number; readonly uncertainty: number } {
  const read = volts[key].si
  const [least, most] = [voltsAt(lowest), voltsAt(highest)]
  if (read < least * (1 - 1e-12) || read > most * (1 + 1e-12)) {
    const [from, to] = [least, most].map((each) => String(quantity('voltage', each, 'V'))) as [string, string]
    throw new CalculationError(
      'restCapacity',
      `the open-circuit curve of the module reaches from ${from} to ${to}, and ${key}, ${volts[key]}, lies beyond it; nothing is extrapolated`,
      { from, to, asked: String(volts[key]) },
    )
  }
  /** The least state whose voltage is at least so high, or the greatest whose voltage is at most so high. */
  const edge = (limit: number, isLeast: boolean) => {
    let [low, high] = [lowest, highest]
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (isLeast ? voltsAt(middle) >= limit : voltsAt(middle) > limit) high = middle
      else low = middle
    }
    return (low + high) / 2
  }
  const state = (edge(read, true) + edge(read, false)) / 2
  const error = read * voltageUncertainty.si
  const byReading = Math.max(state - edge(read - error, true), edge(read + error, false) - state)
  const byCurve = stateUncertainty?.si ?? (module.openCircuit === undefined ? OF_MODEL : OF_CELL)
  return { state, uncertainty: Math.hypot(byReading, byCurve) }
}
