/**
 * The monitor that watches the isolation of the traction circuit while driving: where it must warn, how soon it can tell, and
 * what the capacitances to the chassis hold.
 *
 * Rests on UN Regulation No. 100 (isolation), ISO 6469-4 (stored energy) and circuit theory.
 */
import { cite, definition, formula, input, output } from '../formula/index.js'
import { fallingIsolation, highVoltage } from '../procedure/cautions.js'
import {
  type Check,
  type Findings,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { InputError } from '../quantity/errors.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { capacitorTimeConstant } from './capacitor.js'
import { circuitFields, minimumIsolation, perVoltOf } from './safety.js'

/**
 * Energy that flows through someone who touches one pole and the chassis: both capacitances discharge, at the voltage
 * of that pole to the chassis. With sound isolation that is half the voltage of the pack, with a fault at the other
 * pole all of it.
 *
 * `E = 0.5 * (C1 + C2) * U1^2`
 *
 * - `positive` (`C1`, µF): capacitance from the positive pole to the chassis, at least 0 µF
 * - `negative` (`C2`, µF): capacitance from the negative pole to the chassis, at least 0 µF
 * - `voltage` (`U1`, V): voltage of the touched pole to the chassis, at least 0 V
 * - gives `E`: energy through the body, in J
 * - Assumes: the pack holds its voltage during the touch
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * yCapacitorEnergy({ positive: '0.5 µF', negative: '0.5 µF', voltage: '400 V' })
 * // 0.08 J
 * // by definition (exact): 0.08 J
 * ```
 */
export const yCapacitorEnergy = /*@__PURE__*/ formula({
  name: 'yCapacitorEnergy',
  title: 'Energy of the capacitances to the chassis',
  inputs: {
    positive: input('capacitance', 'C1', 'Capacitance from the positive pole to the chassis', { min: 0 }),
    negative: input('capacitance', 'C2', 'Capacitance from the negative pole to the chassis', { min: 0 }),
    voltage: input('voltage', 'U1', 'Voltage of the touched pole to the chassis', { min: 0 }),
  },
  result: output('energy', 'E', 'Energy through the body', 'J'),
  expression: '0.5 * (C1 + C2) * U1^2',
  assumes: ['The pack holds its voltage during the touch.'],
  source: definition,
  compute: ({ positive, negative, voltage }) => 0.5 * (positive + negative) * voltage ** 2,
})

/**
 * Time until a monitor can tell: its measuring pulse charges the capacitances to the chassis through its own
 * resistance and the isolation, side by side. After five time constants 0.67 % is missing.
 *
 * `t = n * C * Rf * Ri / (Rf + Ri)`
 *
 * - `isolation` (`Rf`, mΩ): isolation of the circuit, above 0 mΩ
 * - `monitor` (`Ri`, mΩ): resistance of the monitor to the chassis, above 0 mΩ
 * - `capacitance` (`C`, µF): capacitance to the chassis, both poles together, at least 0 µF
 * - `constants` (`n`, a plain number): time constants until it has settled, above 0, 5 unless given
 * - gives `t`: settling time, in s
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: circuit theory.
 *
 * @example
 * ```ts
 * monitorSettlingTime({ isolation: '100 kΩ', monitor: '100 kΩ', capacitance: '2 µF' })
 * // 0.5 s
 * // circuit theory, two resistances of 100 kΩ side by side, five time constants (exact): 0.5 s
 * ```
 */
export const monitorSettlingTime = /*@__PURE__*/ formula({
  name: 'monitorSettlingTime',
  title: 'Settling time of an insulation monitor',
  inputs: {
    isolation: input('resistance', 'Rf', 'Isolation of the circuit', { above: 0 }),
    monitor: input('resistance', 'Ri', 'Resistance of the monitor to the chassis', { above: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance to the chassis, both poles together', { min: 0 }),
    constants: input('ratio', 'n', 'Time constants until it has settled', {
      above: 0,
      default: 5,
      because: '0.67 % is missing then',
    }),
  },
  result: output('time', 't', 'Settling time'),
  expression: 'n * C * Rf * Ri / (Rf + Ri)',
  source: cite('circuit theory'),
  compute: ({ isolation, monitor, capacitance, constants }) =>
    (constants * capacitance * isolation * monitor) / (isolation + monitor),
})

/** What an insulation monitor must do. */
export interface InsulationMonitor extends Findings {
  /** The least isolation allowed: it must warn there at the latest. */
  readonly least: Quantity<'resistance'>
  /** Where monitors usually warn, 500 Ω/V, and open the contactors, 100 Ω/V. */
  readonly usual: { readonly warns: Quantity<'resistance'>; readonly opens: Quantity<'resistance'> }
  /** Until it can tell; absent where the capacitances to the chassis are not given. */
  readonly settlingTime?: Quantity<'time'>
  /** In those capacitances, with one pole on the chassis. */
  readonly energy?: Quantity<'energy'>
}

/** What is asked of a monitor, beside the circuit. @internal */
export const monitorFields = /*@__PURE__*/ (() => ({
  warns: optional(
    given('resistance', 'Isolation at which it warns', { above: 0, usual: ['10 kΩ', '2 MΩ'], finest: '1 kΩ' }),
  ),
  opens: optional(
    given('resistance', 'Isolation at which it opens the contactors', {
      above: 0,
      usual: ['5 kΩ', '1 MΩ'],
      finest: '1 kΩ',
    }),
  ),
  ownResistance: optional(
    given('resistance', 'Its own resistance to the chassis', { above: 0, usual: ['50 kΩ', '5 MΩ'] }),
  ),
  responseTime: optional(given('time', 'Time in which it must tell', { above: 0, usual: ['1 s', '120 s'] }), {
    absent: 'How soon the monitor tells is not held to a limit: give responseTime.',
  }),
}))()

/** The capacitances to the chassis. @internal */
export const chassisCapacitanceField = /*@__PURE__*/ (() =>
  optional(
    group('Capacitances to the chassis, of filters and cables together', {
      positive: given('capacitance', 'From the positive pole', { min: 0, usual: ['1 nF', '10 µF'] }),
      negative: given('capacitance', 'From the negative pole', { min: 0, usual: ['1 nF', '10 µF'] }),
    }),
  ))()

const fields = /*@__PURE__*/ (() => ({
  workingVoltage: given('voltage', 'Highest working voltage', { above: 0, usual: ['48 V', '400 V'] }),
  ...circuitFields,
  capacitance: chassisCapacitanceField,
  ...monitorFields,
}))()
type Asked = Read<typeof fields>

/**
 * Holds a monitor of the isolation to what it must do: warn before the isolation is less than allowed, open before it is
 * dangerous, and tell in time. Where one pole lies on the chassis, all the voltage stands across the capacitances of the other:
 * their energy is held to 0.2 J so.
 *
 * Answers: at what isolation must the monitor warn, and how soon can it tell?
 *
 * - `workingVoltage`: highest working voltage, in V, above 0 V
 * - `circuit`: which circuits are connected, 'DC' or 'DC and AC', DC and AC by default (the motor's circuit hangs on
 *   the pack's, and 500 Ω/V are asked for)
 * - `acSide`: what all of the AC side has beyond basic insulation, 'double insulation' or 'robust housings', optional
 * - `capacitance`: capacitances to the chassis, of filters and cables together, optional
 *   - `positive`: from the positive pole, in µF, at least 0 µF
 *   - `negative`: from the negative pole, in µF, at least 0 µF
 * - `warns`: isolation at which it warns, in mΩ, above 0 mΩ, optional
 * - `opens`: isolation at which it opens the contactors, in mΩ, above 0 mΩ, optional
 * - `ownResistance`: its own resistance to the chassis, in mΩ, above 0 mΩ, optional
 * - `responseTime`: time in which it must tell, in s, above 0 s, optional
 * - always assumed: a monitor finds a fault of both poles alike only if its maker says so: the passive kind does not
 *
 * @returns The least isolation, the usual thresholds, the time it takes, the stored energy, and checks.
 * @throws InputError for input that cannot be used, by its path.
 * Source: UN Regulation No. 100, 5.1.3; ISO 6469-4:2015, 5.2 (0.2 J).
 *
 * @example
 * ```ts
 * const { least, settlingTime, checks } = insulationMonitor({
 *   workingVoltage: '350 V',
 *   capacitance: { positive: '0.5 µF', negative: '0.5 µF' },
 *   warns: '175 kΩ',
 *   opens: '35 kΩ',
 * })
 * String(least) // '175 kΩ'
 * String(settlingTime) // '875 ms'
 * checks.map(({ verdict }) => verdict) // ['near', 'near', 'pass']
 * ```
 */
export const insulationMonitor = /*@__PURE__*/ procedure({
  name: 'insulationMonitor',
  title: 'Monitor of the isolation',
  answers: 'At what isolation must the monitor warn, and how soon can it tell?',
  input: fields,
  source: [cite('UN Regulation No. 100', '5.1.3'), cite('ISO 6469-4:2015', '5.2 (0.2 J)')],
  assumes: ['A monitor finds a fault of both poles alike only if its maker says so: the passive kind does not.'],
  work: (asked): Unfinished<InsulationMonitor> => {
    const { workingVoltage: voltage, capacitance, warns, opens } = asked
    if (warns !== undefined && opens !== undefined && opens.si > warns.si) {
      const expected = `at most ${warns}, at which it warns`
      throw new InputError('insulationMonitor', [{ path: 'opens', expected, received: String(opens) }])
    }
    const least = minimumIsolation({ voltage, perVolt: perVoltOf('insulationMonitor', asked) })
    const usual = {
      warns: minimumIsolation({ voltage, perVolt: '500 Ω/V' }),
      opens: minimumIsolation({ voltage, perVolt: '100 Ω/V' }),
    }
    const energy = capacitance && yCapacitorEnergy({ ...capacitance, voltage })
    const settlingTime = settlingTimeOf(asked, warns ?? least)
    return {
      least,
      usual,
      ...(settlingTime === undefined ? {} : { settlingTime }),
      ...(energy === undefined ? {} : { energy }),
      checks: [
        trial('monitor.warns', 'Threshold of the warning', warnsTold(asked, least), R100, 'warns', 'circuit', 'acSide'),
        trial('monitor.opens', 'Threshold of opening', opensTold(asked, usual.opens), PRACTICE, 'opens'),
        ...responseTrial(asked, settlingTime),
        trial('monitor.energy', 'Energy to the chassis', energyTold(energy), 'ISO 6469-4:2015, 5.2', 'capacitance'),
      ],
      cautions: [fallingIsolation, highVoltage],
    }
  },
})

const R100 = 'UN Regulation No. 100, 5.1.3'
const PRACTICE = 'common practice, no source'

/** The most that it takes: with its own resistance unknown, that of the isolation alone. */
function settlingTimeOf(
  { capacitance, ownResistance }: Asked,
  isolation: Quantity<'resistance'>,
): Quantity<'time'> | undefined {
  if (capacitance === undefined) return undefined
  const both = capacitance.positive.plus(capacitance.negative)
  if (ownResistance === undefined) return capacitorTimeConstant({ resistance: isolation, capacitance: both }).times(5)
  return monitorSettlingTime({ isolation, monitor: ownResistance, capacitance: both })
}

function warnsTold({ warns }: Asked, least: Quantity<'resistance'>): Told {
  if (warns === undefined)
    return { unknown: `it must warn at ${least} or before, and where it does is not known: give warns` }
  return says`the monitor warns at ${warns}, at least the ${least} of isolation that is asked for`
}

function opensTold({ opens }: Asked, limit: Quantity<'resistance'>): Told {
  if (opens === undefined)
    return { unknown: `whether it opens the contactors before ${limit} is not known: give opens` }
  return says`the monitor opens the contactors at ${opens}, at least the ${limit} at which it is dangerous`
}

function responseTrial({ responseTime }: Asked, settles: Quantity<'time'> | undefined): Check[] {
  if (responseTime === undefined) return []
  const told: Told =
    settles === undefined
      ? { unknown: 'how soon the monitor can tell is not known: give capacitance' }
      : says`the monitor has settled after ${settles}, at most the ${responseTime} in which it must tell`
  return [trial('monitor.response', 'Response of the monitor', told, 'responseTime, as given', 'responseTime')]
}

function energyTold(energy: Quantity<'energy'> | undefined): Told {
  if (energy === undefined)
    return { unknown: 'what the capacitances to the chassis hold is not known: give capacitance' }
  return says`with one pole on the chassis they hold ${energy}, at most the ${quantity('energy', '0.2 J')} that may be touched`
}
