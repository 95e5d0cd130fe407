/**
 * A pack at work: its voltage, current and heat at a state of charge, and the most that it can give there.
 *
 * Rests on circuit theory: the open-circuit voltage behind one resistance. Currents and powers are positive on discharge.
 */
import { cite, definition, section } from '../../formula/index.js'
import { highVoltage, lithiumCells } from '../../procedure/cautions.js'
import { unlessUnknown } from '../../procedure/check.js'
import {
  type Assumption,
  assumed,
  type Check,
  check,
  type Findings,
  given,
  group,
  optional,
  procedure,
  trial,
  type Unfinished,
} from '../../procedure/index.js'
import { CalculationError, InputError, type Quantity, quantity } from '../../quantity/index.js'
import { type ChargeLimit, chargeLimitOf } from './charge-limit.js'
import { openCircuitOf, type Pack, packFields, refuseModule, resistanceOf, unusualOfPack } from './module.js'
import {
  currentAtVoltage,
  currentForPower,
  jouleHeat,
  maximumPower,
  seriesVoltage,
  terminalPower,
  terminalVoltage,
} from './pack.js'

/** The most that a pack can do within a set of limits, and the limit that is met first. */
export interface MostPower {
  /** Power at the terminals, as a positive figure in both directions. */
  readonly power: Quantity<'power'>
  readonly current: Quantity<'current'>
  /** What binds first, such as `lowest voltage of the modules`. */
  readonly limitedBy: string
}

/** A pack at work. */
export interface PackState extends Findings {
  readonly openCircuit: Quantity<'voltage'>
  /** Voltage at the terminals under load. */
  readonly terminal: Quantity<'voltage'>
  /** Positive on discharge. */
  readonly current: Quantity<'current'>
  /** Power at the terminals, positive on discharge. */
  readonly power: Quantity<'power'>
  /** Heat inside the pack. */
  readonly heat: Quantity<'power'>
  /** Share of the power that is not lost as heat inside the pack. */
  readonly efficiency: Quantity<'ratio'>
  readonly resistance: Quantity<'resistance'>
  /** What the pack can give all day, for a short time, and take, at this state of charge. */
  readonly most: {
    readonly continuous: MostPower
    readonly peak?: MostPower
    readonly charge?: MostPower
  }
}

/** The temperature at which a pack is asked about. @internal */
export const cellTemperatureField = /*@__PURE__*/ (() =>
  optional(given('temperature', 'Temperature of the cells'), {
    absent: 'The temperature of the cells is not held to limits: give temperature and pack.module.temperatures.',
  }))()

/**
 * Gives voltage, current, heat and efficiency of a pack at a state of charge and a load, holds them to every limit of
 * its modules, and tells the most that it can give there and what binds first.
 *
 * Answers: what are voltage, current and heat of a pack at a state of charge and a load, and what can it give there
 * at most?
 *
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`
 * - `stateOfCharge`: state of charge, a plain number, at least 0 and at most 1
 * - `power`: power at the terminals, positive on discharge, in kW, optional
 * - `current`: current, positive on discharge, in A, optional
 * - `temperature`: temperature of the cells, in °C, optional
 * - always assumed: the modules are equal and share the current; links and contactors add no resistance
 *
 * @returns The state, with a check against each limit, assumptions and cautions.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a power or current beyond what the
 * pack can deliver, with the most that it can, and for a state of charge outside the points given.
 * Source: by definition; Chen and others, Journal of the Electrochemical Society 167 (2020) 080534; Afshar and others
 * (2017).
 *
 * @example
 * ```ts
 * const module = {
 *   name: 'salvaged module of 12 cells',
 *   cellsInSeries: 12,
 *   chemistry: 'NMC',
 *   nominalVoltage: '44.4 V',
 *   minimumVoltage: '36 V',
 *   maximumVoltage: '50.4 V',
 *   capacity: '41 Ah',
 *   resistance: '14 mΩ',
 *   mass: '11.5 kg',
 *   continuousCurrent: '80 A',
 * } as const
 * const { terminal, current, most } = packAt({
 *   pack: { module, series: 4, parallel: 2 },
 *   stateOfCharge: 0.1,
 *   power: '15 kW',
 * })
 * String(terminal) // '160.2 V'
 * String(current) // '93.63 A'
 * String(most.continuous.power) // '25.34 kW'
 * most.continuous.limitedBy // 'continuous current of the modules'
 * ```
 */
export const packAt = /*@__PURE__*/ procedure({
  name: 'packAt',
  title: 'A pack at work',
  answers:
    'What are voltage, current and heat of a pack at a state of charge and a load, and what can it give there at most?',
  input: {
    pack: group('A pack of equal modules', packFields),
    stateOfCharge: given('ratio', 'State of charge', { min: 0, max: 1 }),
    power: optional(given('power', 'Power at the terminals, positive on discharge')),
    current: optional(given('current', 'Current, positive on discharge')),
    temperature: cellTemperatureField,
  },
  source: [
    definition,
    cite('Chen and others, Journal of the Electrochemical Society 167 (2020) 080534'),
    cite('Afshar and others (2017)'),
  ],
  assumes: ['The modules are equal and share the current; links and contactors add no resistance.'],
  work: ({ pack, stateOfCharge, power, current: asked, temperature }): Unfinished<PackState> => {
    refuseModule('packAt', 'pack.module', pack.module)
    if ((power === undefined) === (asked === undefined)) {
      const expected = "one of them, such as power: '20 kW' or current: '120 A'"
      const received = power === undefined ? 'neither' : 'both'
      throw new InputError('packAt', [{ path: 'power and current', expected, received }])
    }
    const { module, series } = pack
    const curve = openCircuitOf('packAt', 'pack.module', module)
    const openCircuit = seriesVoltage({ count: series, voltage: curve.voltageAt(stateOfCharge) })
    const { resistance, basis, unknown } = resistanceOf(pack, temperature)
    const current =
      asked ?? currentWithin({ openCircuit, resistance, stateOfCharge, power: power as Quantity<'power'> })
    const terminal = terminalVoltage({ openCircuit, current, resistance })
    const charging = current.si < 0
    const charge = chargeLimitOf(pack, 'the charge current', { temperature, field: 'temperature' })
    const way = charging ? 'charge' : 'discharge'
    return {
      openCircuit,
      terminal,
      current,
      power: terminalPower({ voltage: terminal, current }),
      heat: jouleHeat({ current, resistance }),
      efficiency: quantity('ratio', charging ? openCircuit.ratioTo(terminal) : terminal.ratioTo(openCircuit)).as('%'),
      resistance,
      most: mostOf(pack, openCircuit, resistance, charge),
      checks: [
        ...(charging
          ? chargeChecks(pack, current, terminal, charge, unknown)
          : dischargeChecks(pack, current, terminal, unknown)),
        ...temperatureChecks(pack, way, temperature),
      ],
      assumptions: [
        assumed('pack.openCircuit', curve.basis),
        assumed('pack.resistance', basis),
        ...(charging ? charge.assumptions : []),
        ...temperatureAssumptions(pack, way, temperature),
      ],
      notes: unusualOfPack('pack', pack),
      cautions: [highVoltage, lithiumCells],
    }
  },
})

/** The current for a power, or the refusal that says how much the pack can give. */
function currentWithin({
  openCircuit,
  resistance,
  power,
  stateOfCharge,
}: {
  readonly openCircuit: Quantity<'voltage'>
  readonly resistance: Quantity<'resistance'>
  readonly power: Quantity<'power'>
  readonly stateOfCharge: Quantity<'ratio'>
}): Quantity<'current'> {
  const most = maximumPower.compute({ openCircuit: openCircuit.si, resistance: resistance.si })
  if (power.si <= most) return currentForPower({ openCircuit, resistance, power })
  const atMost = quantity('power', most, 'W').as('kW')
  throw new CalculationError(
    'packAt',
    `the pack cannot deliver ${power}: at most ${atMost} at ${stateOfCharge.as('%')} state of charge, half of it lost again as heat inside`,
    { power: String(power), atMost: String(atMost), stateOfCharge: String(stateOfCharge.as('%')) },
  )
}

/** Limits of a module as those of the pack. */
function limitsOf({ module, series, parallel }: Pack) {
  return {
    floor: module.minimumVoltage.times(series),
    ceiling: module.maximumVoltage.times(series),
    continuous: module.continuousCurrent.times(parallel),
    peak: module.peakCurrent?.times(parallel),
  }
}

function dischargeChecks(
  pack: Pack,
  current: Quantity<'current'>,
  terminal: Quantity<'voltage'>,
  unknown: string | undefined,
): Check[] {
  const { floor, continuous, peak } = limitsOf(pack)
  return [
    unlessUnknown(
      check(
        'pack.voltageUnderLoad',
        'Voltage under load',
        terminal,
        'at least',
        floor,
        'module.minimumVoltage, for all in series',
        'pack.module.minimumVoltage',
        'pack.series',
      ),
      unknown,
    ),
    check(
      'pack.continuousCurrent',
      'Current all day',
      current,
      'at most',
      continuous,
      'module.continuousCurrent, for all in parallel',
      'pack.module.continuousCurrent',
      'pack.parallel',
    ),
    ...(peak === undefined
      ? []
      : [
          check(
            'pack.peakCurrent',
            'Current for a short time',
            current,
            'at most',
            peak,
            'module.peakCurrent, for all in parallel',
            'pack.module.peakCurrent',
            'pack.parallel',
          ),
        ]),
  ]
}

function chargeChecks(
  pack: Pack,
  current: Quantity<'current'>,
  terminal: Quantity<'voltage'>,
  charge: ChargeLimit,
  unknown: string | undefined,
): Check[] {
  const { ceiling } = limitsOf(pack)
  return [
    unlessUnknown(
      check(
        'pack.voltageOnCharge',
        'Voltage on charge',
        terminal,
        'at most',
        ceiling,
        'module.maximumVoltage, for all in series',
        'pack.module.maximumVoltage',
        'pack.series',
      ),
      unknown,
    ),
    chargeCurrentCheck(charge, current.times(-1)),
  ]
}

/** A charge current beside what the modules take. @internal */
export function chargeCurrentCheck({ most, field, unknown }: ChargeLimit, taken: Quantity<'current'>): Check {
  const [id, name, basis] = ['pack.chargeCurrent', 'Charge current', `module.${field}, for all in parallel`] as const
  const paths = [`pack.module.${field}`, 'pack.parallel']
  if (most === undefined) return trial(id, name, { unknown: unknown as string }, basis, ...paths)
  return unlessUnknown(check(id, name, taken, 'at most', most, basis, ...paths), unknown)
}

/**
 * Between what temperatures makers of lithium cells commonly allow a charge, and a discharge. Common practice, no source;
 * an LFP module's manual, which was read, has 0 °C to 60 °C on charge, with a tenth of the capacity beyond 50 °C.
 */
const COMMON = /*@__PURE__*/ (() => ({
  charge: { minimum: quantity('temperature', '0 °C'), maximum: quantity('temperature', '45 °C') },
  discharge: { minimum: quantity('temperature', '-20 °C'), maximum: quantity('temperature', '60 °C') },
}))()

/** Between what temperatures the cells may work, and who says so: on charge their table says it too. */
function spanOf({ temperatures, chargeCurrents }: Pack['module'], way: 'charge' | 'discharge') {
  if (temperatures !== undefined) return { ...temperatures[way], basis: `module.temperatures.${way}`, isCommon: false }
  if (way === 'discharge' || chargeCurrents === undefined) {
    return { ...COMMON[way], basis: 'common practice, no source', isCommon: true }
  }
  const [minimum, maximum] = [chargeCurrents[0], chargeCurrents.at(-1)].map((point) => point?.[0]) as [
    Quantity<'temperature'>,
    Quantity<'temperature'>,
  ]
  return { minimum, maximum, basis: 'module.chargeCurrents', isCommon: false }
}

/**
 * The temperature of the cells beside the limits of the module; without them, beside those that are common.
 * @internal
 */
export function temperatureChecks(
  { module }: Pack,
  way: 'charge' | 'discharge',
  temperature: Quantity<'temperature'> | undefined,
): Check[] {
  if (temperature === undefined) return []
  const { minimum, maximum, basis } = spanOf(module, way)
  return [
    check(
      'cells.cold',
      `Cold cells on ${way}`,
      temperature,
      'at least',
      minimum,
      basis,
      'temperature',
      `pack.module.temperatures.${way}.minimum`,
    ),
    check(
      'cells.warm',
      `Warm cells on ${way}`,
      temperature,
      'at most',
      maximum,
      basis,
      'temperature',
      `pack.module.temperatures.${way}.maximum`,
    ),
  ]
}

/** What is not known of those limits, where there is a temperature. @internal */
export function temperatureAssumptions(
  { module }: Pack,
  way: 'charge' | 'discharge',
  temperature: Quantity<'temperature'> | undefined,
): Assumption[] {
  if (temperature === undefined) return []
  const { minimum, maximum, isCommon } = spanOf(module, way)
  if (!isCommon) return []
  return [
    assumed(
      'cells.temperatures',
      `The cells take ${way === 'charge' ? 'a charge' : 'a load'} from ${minimum} to ${maximum} (pack.module.temperatures by default; common practice, no source).`,
    ),
  ]
}

function mostOf(
  pack: Pack,
  openCircuit: Quantity<'voltage'>,
  resistance: Quantity<'resistance'>,
  charge: ChargeLimit,
): PackState['most'] {
  const { floor, ceiling, continuous, peak } = limitsOf(pack)
  const mostIn = charge.most
  const atVoltage = (terminal: Quantity<'voltage'>) => currentAtVoltage({ openCircuit, terminal, resistance })
  const least = (limits: readonly (readonly [string, Quantity<'current'>])[], sign: 1 | -1): MostPower => {
    const [limitedBy, bound] = limits.reduce((one, other) => (other[1].si < one[1].si ? other : one))
    const current = bound.si > 0 ? bound : quantity('current', '0 A')
    const voltage = terminalVoltage({ openCircuit, current: current.times(sign), resistance })
    return { power: terminalPower({ voltage, current }), current, limitedBy }
  }
  const most = (name: string, current: Quantity<'current'>) =>
    section(`The most on discharge, ${name}`, () =>
      least(
        [
          ['lowest voltage of the modules', atVoltage(floor)],
          [`${name} of the modules`, current],
          // Past half the open-circuit voltage more current gives less power.
          ['resistance of the pack', atVoltage(openCircuit.over(2))],
        ],
        1,
      ),
    )
  return {
    continuous: most('continuous current', continuous),
    ...(peak === undefined ? {} : { peak: most('peak current', peak) }),
    ...(mostIn === undefined
      ? {}
      : {
          charge: section('The most on charge', () =>
            least(
              [
                ['highest voltage of the modules', atVoltage(ceiling).times(-1)],
                [charge.name, mostIn],
              ],
              -1,
            ),
          ),
        }),
  }
}
