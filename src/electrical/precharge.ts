/**
 * Charging the controller's capacitor through a resistor before the main contactor closes, and discharging it.
 *
 * Rests on the formulas of capacitor.ts.
 */
import { cite, definition, section } from '../formula/index.js'
import { highVoltage, storedCharge } from '../procedure/cautions.js'
import {
  assumed,
  type Check,
  choice,
  type Findings,
  given,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import {
  capacitorEnergy,
  capacitorTimeConstant,
  dischargeTime,
  prechargeResistance,
  prechargeVoltage,
  SAFE,
} from './capacitor.js'
import { inrushAtClosing } from './contactor/contactor.js'
import { prospectiveCurrent } from './fuse/fuse.js'
import { jouleHeat } from './pack/pack.js'

/** A precharge, and the discharge after it. */
export interface Precharge extends Findings {
  /** The greatest resistance that reaches the target in the time, or the one that was given. */
  readonly resistance: Quantity<'resistance'>
  readonly timeConstant: Quantity<'time'>
  /** As the precharge begins. */
  readonly peakCurrent: Quantity<'current'>
  readonly peakPower: Quantity<'power'>
  /** What the resistor takes up each time, whatever its resistance. */
  readonly energyPerEvent: Quantity<'energy'>
  /** Share of the voltage that the capacitor reaches in the time. */
  readonly reached: Quantity<'ratio'>
  /** Across the contactor as it closes. */
  readonly residualVoltage: Quantity<'voltage'>
  /** As the contactor closes on the rest; absent where the resistance of the loop is not given. */
  readonly inrush?: Quantity<'current'>
  /** In a discharge resistor that stays across the capacitor, for as long as the pack is on. */
  readonly standingPower?: Quantity<'power'>
  /** Until the capacitor stands at 60 V; absent where it never stood higher. */
  readonly dischargeTime?: Quantity<'time'>
}

/** What is asked of a precharge, beside the pack and the controller. @internal */
export const prechargeFields = /*@__PURE__*/ (() => ({
  time: given('time', 'Time allowed', { above: 0, usual: ['0.1 s', '10 s'] }),
  target: given('ratio', 'Share of the voltage at which the contactor closes', {
    above: 0,
    below: 1,
    default: '95 %',
    because: 'common practice, no source',
  }),
  resistance: optional(
    given('resistance', 'Resistance of the precharge resistor, where it is chosen', {
      above: 0,
      usual: ['5 Ω', '5 kΩ'],
    }),
  ),
  makingCapacity: optional(
    given('current', 'Greatest current that the contactor makes', { above: 0, usual: ['5 A', '5000 A'] }),
  ),
  dischargeResistance: optional(given('resistance', 'Resistance through which it discharges', { above: 0 }), {
    absent: 'How long the capacitor stays charged is not held to a limit: give dischargeResistance.',
  }),
  dischargePath: optional(
    choice('Whether that resistance stays across the capacitor while the pack is on', ['stays', 'opens']),
  ),
  dischargePower: optional(
    given('power', 'Power for which it is rated, all day', { above: 0, usual: ['0.25 W', '2 kW'] }),
  ),
}))()

/**
 * Sizes the resistor that charges the capacitor of a controller before the main contactor closes, and tells how long the
 * capacitor takes to discharge to 60 V.
 *
 * Answers: which resistor charges the capacitor of the controller in time, and how long does it take to discharge to
 * 60 V?
 *
 * - `voltage`: voltage of the full pack, in V, above 0 V
 * - `capacitance`: capacitance of the controller, in µF, above 0 µF
 * - `time`: time allowed, in s, above 0 s
 * - `target`: share of the voltage at which the contactor closes, a plain number, above 0 and below 1, 95 % by
 *   default (common practice, no source)
 * - `resistance`: resistance of the precharge resistor, where it is chosen, in mΩ, above 0 mΩ, optional
 * - `makingCapacity`: greatest current that the contactor makes, in A, above 0 A, optional
 * - `dischargeResistance`: resistance through which it discharges, in mΩ, above 0 mΩ, optional
 * - `dischargePath`: whether that resistance stays across the capacitor while the pack is on, 'stays' or 'opens',
 *   optional
 * - `dischargePower`: power for which it is rated, all day, in kW, above 0 kW, optional
 * - `loopResistance`: resistance of pack and cables within 10 ms, in mΩ, above 0 mΩ, optional
 * - always assumed: nothing else draws current while the capacitor charges: a converter left on may keep it from ever
 *   getting there
 * - always assumed: the resistor takes up the energy of an event as a pulse; after repeated starts it needs time to
 *   cool
 *
 * @returns Resistance, currents, energy of each event, the voltage across the closing contactor, the discharge, and checks.
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition; ISO 6469-4:2015, 5.2 (60 V within 10 s of an impact).
 *
 * @example
 * ```ts
 * const { resistance, energyPerEvent, residualVoltage } = precharge({
 *   voltage: '201.6 V',
 *   capacitance: '1200 µF',
 *   time: '1 s',
 * })
 * String(resistance) // '278.2 Ω'
 * String(energyPerEvent) // '24.39 J'
 * String(residualVoltage) // '10.08 V'
 * ```
 */
export const precharge = /*@__PURE__*/ procedure({
  name: 'precharge',
  title: 'Precharge of a controller',
  answers:
    'Which resistor charges the capacitor of the controller in time, and how long does it take to discharge to 60 V?',
  input: {
    voltage: given('voltage', 'Voltage of the full pack', { above: 0, usual: ['48 V', '400 V'] }),
    capacitance: given('capacitance', 'Capacitance of the controller', { above: 0, usual: ['50 µF', '20 mF'] }),
    ...prechargeFields,
    loopResistance: optional(given('resistance', 'Resistance of pack and cables within 10 ms', { above: 0 })),
  },
  source: [definition, cite('ISO 6469-4:2015', '5.2 (60 V within 10 s of an impact)')],
  assumes: [
    'Nothing else draws current while the capacitor charges: a converter left on may keep it from ever getting there.',
    'The resistor takes up the energy of an event as a pulse; after repeated starts it needs time to cool.',
  ],
  work: (asked): Unfinished<Precharge> => {
    const { voltage, capacitance, time, target, dischargeResistance } = asked
    const standing = asked.dischargePath === 'opens' ? undefined : dischargeResistance
    const resistance = asked.resistance ?? resistanceFor(asked, standing)
    const peakCurrent = prospectiveCurrent({ voltage, sourceResistance: resistance, loopResistance: '0 Ω' })
    const discharge =
      voltage.si <= SAFE.si
        ? undefined
        : dischargeTime({ resistance: dischargeResistance ?? resistance, capacitance, from: voltage, to: SAFE })
    const held = section('What the capacitor reaches', () => {
      // A resistor across the capacitor divides the voltage, and quickens the charge as one in parallel would.
      const [settles, through] =
        standing === undefined ? [voltage, resistance] : dividedBy(voltage, resistance, standing)
      return prechargeVoltage({ voltage: settles, time, resistance: through, capacitance })
    })
    const residualVoltage = voltage.minus(held)
    const inrush =
      asked.loopResistance === undefined
        ? undefined
        : section('As the contactor closes', () =>
            inrushAtClosing({ residualVoltage, loopResistance: asked.loopResistance as Quantity<'resistance'> }),
          )
    const standingPower =
      standing === undefined
        ? undefined
        : jouleHeat({ current: currentThrough(standing, voltage), resistance: standing })
    const reached = quantity('ratio', held.ratioTo(voltage)).as('%')
    return {
      resistance,
      timeConstant: capacitorTimeConstant({ resistance, capacitance }),
      peakCurrent,
      peakPower: jouleHeat({ current: peakCurrent, resistance }),
      energyPerEvent: capacitorEnergy({ capacitance, voltage }),
      reached,
      residualVoltage,
      ...(inrush === undefined ? {} : { inrush }),
      ...(standingPower === undefined ? {} : { standingPower }),
      ...(discharge === undefined ? {} : { dischargeTime: discharge }),
      checks: [
        // A resistor that is sized for the target reaches it.
        ...(asked.resistance === undefined
          ? []
          : [
              trial(
                'precharge.reached',
                'Share reached in the time',
                says`the capacitor reaches ${reached} of the voltage in the time, at least the ${target} at which the contactor closes`,
                'target, as given',
                'resistance',
                'target',
              ),
            ]),
        inrushTrial(inrush, asked.makingCapacity),
        ...(standingPower === undefined ? [] : [standingTrial(standingPower, asked.dischargePower)]),
        // A path that nobody stated cannot pass.
        ...(discharge === undefined || dischargeResistance === undefined
          ? []
          : [
              trial(
                'precharge.discharge',
                'Discharge to 60 V',
                says`the capacitor takes ${discharge} to discharge to 60 V, at most the ${quantity('time', '10 s')} allowed`,
                'ISO 6469-4:2015, 5.2, after an impact',
                'dischargeResistance',
              ),
            ]),
      ],
      assumptions: [
        ...(asked.resistance === undefined
          ? [
              assumed(
                'precharge.sized',
                'The precharge resistor is the greatest that reaches the target in the time (resistance by default).',
              ),
            ]
          : []),
        ...(dischargeResistance === undefined && discharge !== undefined
          ? [
              assumed(
                'precharge.dischargePath',
                'The capacitor discharges through the precharge resistor (dischargeResistance by default), if a contact puts it there; that it reaches 60 V in time is not checked without a path that is given.',
              ),
            ]
          : dischargeResistance !== undefined && asked.dischargePath === undefined
            ? [
                assumed(
                  'precharge.dischargeStays',
                  'The discharge resistor stays across the capacitor while the pack is on (dischargePath by default).',
                ),
              ]
            : []),
      ],
      cautions: [storedCharge, highVoltage],
    }
  },
})

type Asked = Read<typeof prechargeFields> & {
  readonly voltage: Quantity<'voltage'>
  readonly capacitance: Quantity<'capacitance'>
}

/** The greatest resistance that reaches the target in the time, beside a resistor that stays across the capacitor. */
function resistanceFor(
  { voltage, capacitance, time, target }: Asked,
  standing: Quantity<'resistance'> | undefined,
): Quantity<'resistance'> {
  const alone = prechargeResistance({ time, capacitance, fraction: target })
  if (standing === undefined) return alone
  // The share reached falls as the resistance rises: halved until nothing is left to halve.
  let [low, high] = [0, alone.si]
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    const [settles, through] = dividedBy(voltage, quantity('resistance', middle, 'Ω'), standing)
    const share = (settles.si / voltage.si) * -Math.expm1(-time.si / (through.si * capacitance.si))
    if (share >= target.si) low = middle
    else high = middle
  }
  return quantity('resistance', low, 'Ω')
}

/** Where the capacitor settles between two resistors, and the resistance through which it gets there. */
function dividedBy(
  voltage: Quantity<'voltage'>,
  { si: series }: Quantity<'resistance'>,
  { si: across }: Quantity<'resistance'>,
): [settles: Quantity<'voltage'>, through: Quantity<'resistance'>] {
  const share = across / (series + across)
  return [voltage.times(share), quantity('resistance', series * share, 'Ω')]
}

function currentThrough(resistance: Quantity<'resistance'>, voltage: Quantity<'voltage'>): Quantity<'current'> {
  return quantity('current', voltage.si / resistance.si, 'A')
}

function inrushTrial(inrush: Quantity<'current'> | undefined, capacity: Quantity<'current'> | undefined): Check {
  const told = (says: Told) =>
    trial(
      'precharge.inrush',
      'Inrush as the contactor closes',
      says,
      'making capacity of the contactor',
      'makingCapacity',
      'loopResistance',
    )
  if (inrush === undefined || capacity === undefined) {
    const lacks = [
      ...(inrush === undefined ? ['loopResistance'] : []),
      ...(capacity === undefined ? ['makingCapacity'] : []),
    ]
    return told({
      unknown: `whether the contactor may close on what is left is not known: give ${lacks.join(' and ')}`,
    })
  }
  return told(says`${inrush} flow as the contactor closes on what is left, at most the ${capacity} that it makes`)
}

function standingTrial(power: Quantity<'power'>, rating: Quantity<'power'> | undefined): Check {
  return trial(
    'precharge.standingPower',
    'Standing power of the discharge resistor',
    rating === undefined
      ? {
          unknown: `the discharge resistor takes ${power} for good, and whether it bears that is not known: give dischargePower, or let its path open`,
        }
      : says`the discharge resistor takes ${power} for good, at most the ${rating} for which it is rated`,
    'rating of the resistor',
    'dischargePower',
    'dischargeResistance',
  )
}
