/**
 * Isolation of the traction circuit from the chassis, and the voltage classes that decide which rules apply.
 *
 * Rests on UN Regulation No. 100 (isolation and its measurement) and ISO 6469-3 (voltage classes).
 */
import { cite, definition, formula, input, output } from '../formula/index.js'
import { fallingIsolation, highVoltage } from '../procedure/cautions.js'
import {
  assumed,
  check,
  choice,
  type Findings,
  given,
  optional,
  procedure,
  type Read,
  says,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { CalculationError, InputError, shown } from '../quantity/errors.js'
import { type Given, type Quantity, quantity } from '../quantity/index.js'
import { issueWith, readSi } from '../quantity/read.js'

/**
 * Least isolation between a traction circuit and the chassis: 100 Ω/V for direct current, 500 Ω/V for alternating
 * current or where the two are connected. Take the highest working voltage, not the nominal one.
 *
 * `R = U * r`
 *
 * - `voltage` (`U`, V): highest working voltage, at least 0 V
 * - `perVolt` (`r`, Ω/V): isolation required per volt, at least 0 Ω/V
 * - gives `R`: least isolation resistance, in kΩ
 * - Caution: isolation that was good when built falls with dirt, damp and chafing: monitor it while driving
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 100, 5.1.3.
 *
 * @example
 * ```ts
 * minimumIsolation({ voltage: '350 V', perVolt: '500 Ω/V' })
 * // 175 kΩ
 * // UN Regulation No. 100, 5.1.3, 500 Ω/V (recomputed): 175 kΩ
 * ```
 */
export const minimumIsolation = /*@__PURE__*/ formula({
  name: 'minimumIsolation',
  title: 'Least isolation resistance',
  inputs: {
    voltage: input('voltage', 'U', 'Highest working voltage', { min: 0 }),
    perVolt: input('isolationRatio', 'r', 'Isolation required per volt', { min: 0 }),
  },
  result: output('resistance', 'R', 'Least isolation resistance', 'kΩ'),
  expression: 'U * r',
  cautions: ['Isolation that was good when built falls with dirt, damp and chafing: monitor it while driving.'],
  source: cite('UN Regulation No. 100', '5.1.3'),
  compute: ({ voltage, perVolt }) => voltage * perVolt,
})

/**
 * Current that flows when someone bridges the other pole to the chassis: the reason for a least isolation per volt.
 *
 * `I = U / R`
 *
 * - `voltage` (`U`, V): voltage of the circuit, at least 0 V
 * - `isolation` (`R`, mΩ): isolation resistance to the chassis, above 0 mΩ
 * - gives `I`: leakage current, in mA
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * leakageCurrent({ voltage: '350 V', isolation: '175 kΩ' })
 * // 2 mA
 * // by definition (exact): 2 mA
 * ```
 */
export const leakageCurrent = /*@__PURE__*/ formula({
  name: 'leakageCurrent',
  title: 'Leakage current through an isolation',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage of the circuit', { min: 0 }),
    isolation: input('resistance', 'R', 'Isolation resistance to the chassis', { above: 0 }),
  },
  result: output('current', 'I', 'Leakage current', 'mA'),
  expression: 'U / R',
  source: definition,
  compute: ({ voltage, isolation }) => voltage / isolation,
})

/**
 * Isolation resistance from three voltmeter readings. `reading` is the larger of the two voltages between a pole and
 * the chassis; `loadedReading` is the same with the known resistance across it. The result is the isolation of the
 * opposite pole, the smaller of the two, which is the one to compare with the least allowed.
 *
 * `Ri = Ro * Ub * (1 / U2 - 1 / U1)`
 *
 * - `packVoltage` (`Ub`, V): voltage between the poles, above 0 V
 * - `reading` (`U1`, V): larger voltage between a pole and the chassis, above 0 V
 * - `loadedReading` (`U2`, V): the same voltage with the known resistance across it, above 0 V
 * - `insertedResistance` (`Ro`, mΩ): known resistance put across the reading, above 0 mΩ
 * - gives `Ri`: isolation resistance, in kΩ
 * - holds where reading / packVoltage is at most 1
 * - holds where reading - loadedReading is at least 0
 * - Assumes: the voltmeter's own resistance is far above the isolation (at least 10 MΩ in UN Regulation No. 100, from
 *   memory)
 * - Caution: the readings are taken on a live traction circuit, which can kill: insulated tools and gloves, a meter
 *   rated for the voltage, and local rules on who may do it
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 100, annex on the isolation resistance measurement.
 *
 * @example
 * ```ts
 * isolationFromVoltmeter({
 *   packVoltage: '400 V',
 *   reading: '266.667 V',
 *   loadedReading: '28.5714 V',
 *   insertedResistance: '40 kΩ',
 * })
 * // 500 kΩ
 * // UN Regulation No. 100, annex on the isolation resistance measurement, on a circuit of 1 MΩ and 500 kΩ
 * // (recomputed): 500 kΩ
 * ```
 */
export const isolationFromVoltmeter = /*@__PURE__*/ formula({
  name: 'isolationFromVoltmeter',
  title: 'Isolation resistance from voltmeter readings',
  inputs: {
    packVoltage: input('voltage', 'Ub', 'Voltage between the poles', { above: 0 }),
    reading: input('voltage', 'U1', 'Larger voltage between a pole and the chassis', { above: 0 }),
    loadedReading: input('voltage', 'U2', 'The same voltage with the known resistance across it', { above: 0 }),
    insertedResistance: input('resistance', 'Ro', 'Known resistance put across the reading', { above: 0 }),
  },
  result: output('resistance', 'Ri', 'Isolation resistance', 'kΩ'),
  expression: 'Ro * Ub * (1 / U2 - 1 / U1)',
  valid: [
    { of: 'reading / packVoltage', value: ({ reading, packVoltage }) => reading / packVoltage, max: 1 },
    {
      of: 'reading - loadedReading',
      kind: 'voltage',
      value: ({ reading, loadedReading }) => reading - loadedReading,
      min: 0,
    },
  ],
  assumes: [
    "The voltmeter's own resistance is far above the isolation (at least 10 MΩ in UN Regulation No. 100, from memory).",
  ],
  cautions: [
    'The readings are taken on a live traction circuit, which can kill: insulated tools and gloves, a meter rated for the voltage, and local rules on who may do it.',
  ],
  source: cite('UN Regulation No. 100', 'annex on the isolation resistance measurement'),
  compute: ({ packVoltage, reading, loadedReading, insertedResistance }) =>
    insertedResistance * packVoltage * (1 / loadedReading - 1 / reading),
})

/** Highest working voltages of classes A and B in ISO 6469-3, by kind of current; those for AC are from memory. */
const classLimits = {
  DC: { A: 60, B: 1500 },
  AC: { A: 30, B: 1000 },
} as const

/**
 * Voltage class of a circuit by its highest working voltage (ISO 6469-3): A up to 60 V DC or 30 V AC, B above that up
 * to 1500 V DC or 1000 V AC. Class B needs protection against touch, isolation and warning marks.
 *
 * @param voltage - Highest working voltage, the root-mean-square one for AC: that of the full pack, not the nominal one.
 * @param current - Kind of current; DC unless said.
 * @throws InputError when the voltage cannot be read, is negative, or lies above class B.
 */
export function voltageClass(voltage: Given<'voltage'>, current: 'DC' | 'AC' = 'DC'): 'A' | 'B' {
  if (!Object.hasOwn(classLimits, current)) {
    throw new InputError('voltageClass', [{ path: 'current', expected: "'DC' or 'AC'", received: shown(current) }])
  }
  const volts = readSi('voltage', voltage)
  if (Number.isNaN(volts)) throw new InputError('voltageClass', [issueWith('voltage', 'voltage', voltage)])
  const { A, B } = classLimits[current]
  if (volts >= 0 && volts <= B) return volts <= A ? 'A' : 'B'
  const expected = `a voltage of at least 0 V and at most ${B} V ${current}, where ISO 6469-3 ends`
  throw new InputError('voltageClass', [{ path: 'voltage', expected, received: String(voltage) }])
}

/** The isolation of a traction circuit, as measured. */
export interface MeasuredIsolation extends Findings {
  /** Of the pole with the lesser isolation. */
  readonly isolation: Quantity<'resistance'>
  /** The pole that leaks more. */
  readonly weakPole: 'positive' | 'negative'
  /** Of the other pole. */
  readonly otherIsolation: Quantity<'resistance'>
  readonly least: Quantity<'resistance'>
  /** What flows through someone who bridges the other pole to the chassis. */
  readonly leakage: Quantity<'current'>
}

/** Which circuits hang together, and how those of alternating current are protected. @internal */
export const circuitFields = /*@__PURE__*/ (() => ({
  circuit: choice('Which circuits are connected', ['DC', 'DC and AC'], {
    default: 'DC and AC',
    because: "the motor's circuit hangs on the pack's, and 500 Ω/V are asked for",
  }),
  acSide: optional(
    choice('What all of the AC side has beyond basic insulation', ['double insulation', 'robust housings']),
  ),
}))()

/**
 * Isolation required per volt. Direct current that is joined to an inverter's alternating current counts as a whole as that;
 * only where the AC side is doubly insulated or in robust housings, 100 Ω/V do (UN Regulation No. 100, 5.1.3, from memory).
 * @internal
 */
export function perVoltOf(where: string, { circuit, acSide }: Read<typeof circuitFields>): Quantity<'isolationRatio'> {
  if (circuit === 'DC' && acSide !== undefined) {
    const expected = "nothing, as the circuit is 'DC' and has no AC side"
    throw new InputError(where, [{ path: 'acSide', expected, received: shown(acSide) }])
  }
  return quantity('isolationRatio', circuit === 'DC' || acSide !== undefined ? '100 Ω/V' : '500 Ω/V')
}

/** What is read off the meter. @internal */
export const readingFields = /*@__PURE__*/ (() => ({
  packVoltage: given('voltage', 'Voltage between the poles during the test', { above: 0, usual: ['48 V', '400 V'] }),
  positive: given('voltage', 'Voltage from the positive pole to the chassis', { min: 0 }),
  negative: given('voltage', 'Voltage from the negative pole to the chassis', { min: 0 }),
  loadedReading: given('voltage', 'Larger of the two voltages, with the known resistance across it', { above: 0 }),
  insertedResistance: given('resistance', 'Known resistance, put from that pole to the chassis', { above: 0 }),
}))()

const isolationFields = /*@__PURE__*/ (() => ({
  ...readingFields,
  workingVoltage: optional(given('voltage', 'Highest working voltage', { above: 0, usual: ['48 V', '400 V'] })),
  ...circuitFields,
}))()

/** How much the readings of good meters may disagree. Common practice, no source. */
const DISAGREEMENT = 0.02

/** Refuses readings that no circuit gives, and takes a pole that lies on the chassis for what it is. */
function refuseReadings({ packVoltage, positive, negative, loadedReading }: Read<typeof readingFields>): void {
  const refuse = (path: string, expected: string, received: string): never => {
    throw new InputError('isolationTest', [{ path, expected, received }])
  }
  const [larger, reading, weak] =
    positive.si >= negative.si
      ? (['positive', positive, 'negative'] as const)
      : (['negative', negative, 'positive'] as const)
  if (reading.si > packVoltage.si) {
    refuse(larger, `at most the voltage between the poles, ${packVoltage}`, String(reading))
  }
  const together = positive.plus(negative)
  if (together.si > packVoltage.si * (1 + DISAGREEMENT)) {
    const expected = `readings that come to at most ${packVoltage}, the voltage between the poles`
    refuse('positive and negative', expected, `${together} together`)
  }
  if (reading.si === 0) {
    const expected = 'a reading above 0 V: with 0 V at both poles the meter is not connected, or the pack is off'
    refuse('positive and negative', expected, '0 V and 0 V')
  }
  if (loadedReading.si > reading.si * (1 + DISAGREEMENT)) {
    const expected = `at most ${reading}, the ${larger} reading without the known resistance`
    refuse('loadedReading', expected, String(loadedReading))
  }
  if (loadedReading.si < reading.si) return
  throw new CalculationError(
    'isolationTest',
    `the known resistance does not lower the ${larger} reading, ${reading}: the ${weak} pole lies on the chassis. Switch off, ` +
      'touch neither pole nor chassis, and find the fault before anything else',
    { reading: String(reading), loadedReading: String(loadedReading), pole: weak },
  )
}

/**
 * Works out the isolation of a traction circuit from the chassis by two readings and a third with a known resistance, and
 * holds it to the least that is allowed. Take as the known resistance the least isolation in Ω/V times the working voltage,
 * within 20 %.
 *
 * Answers: is the traction circuit isolated well enough from the chassis, and which pole leaks more?
 *
 * - `packVoltage`: voltage between the poles during the test, in V, above 0 V
 * - `positive`: voltage from the positive pole to the chassis, in V, at least 0 V
 * - `negative`: voltage from the negative pole to the chassis, in V, at least 0 V
 * - `loadedReading`: larger of the two voltages, with the known resistance across it, in V, above 0 V
 * - `insertedResistance`: known resistance, put from that pole to the chassis, in mΩ, above 0 mΩ
 * - `workingVoltage`: highest working voltage, in V, above 0 V, optional
 * - `circuit`: which circuits are connected, 'DC' or 'DC and AC', DC and AC by default (the motor's circuit hangs on
 *   the pack's, and 500 Ω/V are asked for)
 * - `acSide`: what all of the AC side has beyond basic insulation, 'double insulation' or 'robust housings', optional
 *
 * @returns The isolation of the weaker pole, the least allowed, and checks; one tells whether the meter's own resistance is
 * high enough, so that the two readings come to the voltage of the pack.
 * @throws InputError for readings that no circuit gives, by their path; CalculationError where the known resistance changes
 * nothing: then the other pole lies on the chassis.
 * Source: UN Regulation No. 100, 5.1.3 and annex on the isolation resistance measurement.
 *
 * @example
 * ```ts
 * const { isolation, weakPole, checks } = isolationTest({
 *   packVoltage: '400 V',
 *   positive: '133.3 V',
 *   negative: '266.7 V',
 *   loadedReading: '28.6 V',
 *   insertedResistance: '40 kΩ',
 * })
 * String(isolation) // '499.4 kΩ'
 * weakPole // 'positive'
 * checks[0]?.verdict // 'pass'
 * ```
 */
export const isolationTest = /*@__PURE__*/ procedure({
  name: 'isolationTest',
  title: 'Isolation of the traction circuit, as measured',
  answers: 'Is the traction circuit isolated well enough from the chassis, and which pole leaks more?',
  input: isolationFields,
  source: [cite('UN Regulation No. 100', '5.1.3 and annex on the isolation resistance measurement')],
  work: (asked): Unfinished<MeasuredIsolation> => {
    refuseReadings(asked)
    const { packVoltage, positive, negative, loadedReading, insertedResistance, workingVoltage } = asked
    // The larger voltage stands across the better isolation, so the other pole leaks more.
    const [weakPole, otherPole, reading, lesser] =
      positive.si >= negative.si
        ? (['negative', 'positive', positive, negative] as const)
        : (['positive', 'negative', negative, positive] as const)
    if (lesser.si === 0) {
      const expected = `a reading above 0 V, as the known resistance lowers the ${otherPole} reading`
      throw new InputError('isolationTest', [{ path: weakPole, expected, received: String(lesser) }])
    }
    const isolation = isolationFromVoltmeter({ packVoltage, reading, loadedReading, insertedResistance })
    const otherIsolation = isolation.times(reading.ratioTo(lesser))
    const voltage = workingVoltage ?? packVoltage
    const least = minimumIsolation({ voltage, perVolt: perVoltOf('isolationTest', asked) })
    return {
      isolation,
      weakPole,
      otherIsolation,
      least,
      leakage: leakageCurrent({ voltage, isolation }),
      checks: [
        trial(
          'isolation.resistance',
          'Isolation to the chassis',
          says`isolated by ${isolation} at the ${weakPole} pole, which leaks more (${otherIsolation} at the ${otherPole} pole), at least the ${least} asked for`,
          'UN Regulation No. 100, 5.1.3',
          'loadedReading',
          'circuit',
          'acSide',
        ),
        check(
          'isolation.readings',
          'Both readings together',
          positive.plus(negative),
          'at least',
          packVoltage.times(0.9),
          'good practice: the meter draws too much below',
          'positive',
          'negative',
        ),
      ],
      assumptions:
        workingVoltage === undefined
          ? [
              assumed(
                'isolation.workingVoltage',
                `The highest working voltage is ${packVoltage} (workingVoltage by default).`,
              ),
            ]
          : [],
      cautions: [fallingIsolation, highVoltage],
    }
  },
})
