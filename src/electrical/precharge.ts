/**
 * Charging the controller's capacitor through a resistor before the main contactor closes, discharging it, and what it holds.
 *
 * Rests on circuit theory: one capacitor, one resistor, a pack of constant voltage; and on ISO 6469-4 for what may be left.
 */
import { cite, constant, definition, formula, input, output, section } from '../formula/index.js'
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
import { prospectiveCurrent } from './fuse/fuse.js'
import { jouleHeat } from './pack/pack.js'

/**
 * Voltage of a capacitor that charges through a resistor from empty.
 *
 * `Uc = U * (1 - exp(-t / (R * C)))`
 *
 * - `voltage` (`U`, V): voltage of the pack, at least 0 V
 * - `time` (`t`, s): time since the precharge began, at least 0 s
 * - `resistance` (`R`, mΩ): precharge resistance, above 0 mΩ
 * - `capacitance` (`C`, µF): capacitance of the controller, above 0 µF
 * - gives `Uc`: voltage of the capacitor, in V
 * - Assumes: nothing but the capacitor draws current
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * prechargeVoltage({ voltage: '320 V', time: '0.3 s', resistance: '100 Ω', capacitance: '680 µF' })
 * // 316.1 V
 * // by definition (exact): 316.12 V
 * ```
 */
export const prechargeVoltage = /*@__PURE__*/ formula({
  name: 'prechargeVoltage',
  title: 'Capacitor voltage during precharge',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage of the pack', { min: 0 }),
    time: input('time', 't', 'Time since the precharge began', { min: 0 }),
    resistance: input('resistance', 'R', 'Precharge resistance', { above: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance of the controller', { above: 0 }),
  },
  result: output('voltage', 'Uc', 'Voltage of the capacitor'),
  expression: 'U * (1 - exp(-t / (R * C)))',
  assumes: ['Nothing but the capacitor draws current.'],
  source: definition,
  compute: ({ voltage, time, resistance, capacitance }) => voltage * (1 - Math.exp(-time / (resistance * capacitance))),
})

/**
 * Time in which a capacitor charges to a share of the pack's voltage. All of it takes for ever.
 *
 * `t = -R * C * log(1 - f)`
 *
 * - `resistance` (`R`, mΩ): precharge resistance, at least 0 mΩ
 * - `capacitance` (`C`, µF): capacitance of the controller, at least 0 µF
 * - `fraction` (`f`, a plain number): share of the pack voltage to reach, at least 0 and below 1
 * - gives `t`: precharge time, in s
 * - Assumes: nothing but the capacitor draws current
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * prechargeTime({ resistance: '100 Ω', capacitance: '680 µF', fraction: 0.95 })
 * // 0.2037 s
 * // by definition (exact): 204 ms
 * ```
 */
export const prechargeTime = /*@__PURE__*/ formula({
  name: 'prechargeTime',
  title: 'Precharge time',
  inputs: {
    resistance: input('resistance', 'R', 'Precharge resistance', { min: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance of the controller', { min: 0 }),
    fraction: input('ratio', 'f', 'Share of the pack voltage to reach', { min: 0, below: 1 }),
  },
  result: output('time', 't', 'Precharge time'),
  expression: '-R * C * log(1 - f)',
  assumes: ['Nothing but the capacitor draws current.'],
  source: definition,
  compute: ({ resistance, capacitance, fraction }) => -resistance * capacitance * Math.log(1 - fraction),
})

/**
 * Greatest resistance with which a capacitor reaches a share of the pack's voltage in a time.
 *
 * `R = -t / (C * log(1 - f))`
 *
 * - `time` (`t`, s): time allowed, at least 0 s
 * - `capacitance` (`C`, µF): capacitance of the controller, above 0 µF
 * - `fraction` (`f`, a plain number): share of the pack voltage to reach, above 0 and below 1
 * - gives `R`: precharge resistance, in Ω
 * - Assumes: nothing but the capacitor draws current
 * - Caution: the resistor takes as much energy as the capacitor, whatever its resistance: rate it for that pulse, for
 *   repeated attempts, and for the voltage
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * prechargeResistance({ time: '0.5 s', capacitance: '2 mF', fraction: 0.99326 })
 * // 50 Ω
 * // a semiconductor maker's reference design for precharge, 50 Ω, five time constants in 0.5 s (recomputed): 50 Ω
 * ```
 */
export const prechargeResistance = /*@__PURE__*/ formula({
  name: 'prechargeResistance',
  title: 'Precharge resistance',
  inputs: {
    time: input('time', 't', 'Time allowed', { min: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance of the controller', { above: 0 }),
    fraction: input('ratio', 'f', 'Share of the pack voltage to reach', { above: 0, below: 1 }),
  },
  result: output('resistance', 'R', 'Precharge resistance', 'Ω'),
  expression: '-t / (C * log(1 - f))',
  assumes: ['Nothing but the capacitor draws current.'],
  cautions: [
    'The resistor takes as much energy as the capacitor, whatever its resistance: rate it for that pulse, for repeated attempts, and for the voltage.',
  ],
  source: definition,
  compute: ({ time, capacitance, fraction }) => -time / (capacitance * Math.log(1 - fraction)),
})

/**
 * Energy held in a charged capacitor. A precharge resistor turns as much again into heat each time it is filled.
 *
 * `E = 0.5 * C * U^2`
 *
 * - `capacitance` (`C`, µF): capacitance, at least 0 µF
 * - `voltage` (`U`, V): voltage, at least 0 V
 * - gives `E`: energy held, in J
 * - Caution: a capacitor stays charged after the pack is disconnected: wait, then measure before touching
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * capacitorEnergy({ capacitance: '680 µF', voltage: '320 V' })
 * // 34.82 J
 * // by definition (exact): 34.8 J
 * ```
 */
export const capacitorEnergy = /*@__PURE__*/ formula({
  name: 'capacitorEnergy',
  title: 'Energy in a capacitor',
  inputs: {
    capacitance: input('capacitance', 'C', 'Capacitance', { min: 0 }),
    voltage: input('voltage', 'U', 'Voltage', { min: 0 }),
  },
  result: output('energy', 'E', 'Energy held', 'J'),
  expression: '0.5 * C * U^2',
  cautions: ['A capacitor stays charged after the pack is disconnected: wait, then measure before touching.'],
  source: definition,
  compute: ({ capacitance, voltage }) => 0.5 * capacitance * voltage ** 2,
})

/**
 * Time in which a capacitor discharges through a resistor from one voltage to a lower one, such as 60 V.
 *
 * `t = R * C * log(U1 / U2)`
 *
 * - `resistance` (`R`, mΩ): discharge resistance, at least 0 mΩ
 * - `capacitance` (`C`, µF): capacitance, at least 0 µF
 * - `from` (`U1`, V): voltage at the start, above 0 V
 * - `to` (`U2`, V): voltage at the end, above 0 V
 * - gives `t`: discharge time, in s
 * - holds where from / to is at least 1
 * - Assumes: the pack is disconnected
 * - Caution: a discharge resistor can fail unseen: measure before touching
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * dischargeTime({ resistance: '2636 Ω', capacitance: '1 mF', from: '400 V', to: '60 V' })
 * // 5.001 s
 * // by definition (exact): 5 s
 * ```
 */
export const dischargeTime = /*@__PURE__*/ formula({
  name: 'dischargeTime',
  title: 'Discharge time of a capacitor',
  inputs: {
    resistance: input('resistance', 'R', 'Discharge resistance', { min: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance', { min: 0 }),
    from: input('voltage', 'U1', 'Voltage at the start', { above: 0 }),
    to: input('voltage', 'U2', 'Voltage at the end', { above: 0 }),
  },
  result: output('time', 't', 'Discharge time'),
  expression: 'R * C * log(U1 / U2)',
  valid: [{ of: 'from / to', value: ({ from, to }) => from / to, min: 1 }],
  assumes: ['The pack is disconnected.'],
  cautions: ['A discharge resistor can fail unseen: measure before touching.'],
  source: definition,
  compute: ({ resistance, capacitance, from, to }) => resistance * capacitance * Math.log(from / to),
})

/**
 * Time constant of a capacitor behind a resistor: after five of them 0.67 % of the voltage is missing.
 *
 * `tau = R * C`
 *
 * - `resistance` (`R`, mΩ): resistance, at least 0 mΩ
 * - `capacitance` (`C`, µF): capacitance, at least 0 µF
 * - gives `tau`: time constant, in ms
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * capacitorTimeConstant({ resistance: '100 Ω', capacitance: '680 µF' })
 * // 68 ms
 * // by definition (exact): 68 ms
 * ```
 */
export const capacitorTimeConstant = /*@__PURE__*/ formula({
  name: 'capacitorTimeConstant',
  title: 'Time constant of a capacitor and a resistor',
  inputs: {
    resistance: input('resistance', 'R', 'Resistance', { min: 0 }),
    capacitance: input('capacitance', 'C', 'Capacitance', { min: 0 }),
  },
  result: output('time', 'tau', 'Time constant', 'ms'),
  expression: 'R * C',
  source: definition,
  compute: ({ resistance, capacitance }) => resistance * capacitance,
})

/**
 * Energy that a capacitor holds above what it would hold at 60 V: the part that can hurt.
 *
 * `E = 0.5 * C * (U^2 - Us^2)`
 *
 * - `capacitance` (`C`, µF): capacitance, at least 0 µF
 * - `voltage` (`U`, V): voltage, at least 60 V
 * - gives `E`: energy above that at 60 V, in J
 * - `Us` = 60 V: highest voltage of class A, direct current (ISO 6469-3)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 94, requirements after impact, from memory.
 *
 * @example
 * ```ts
 * energyAboveSafeVoltage({ capacitance: '2 µF', voltage: '400 V' })
 * // 0.1564 J
 * // UN Regulation No. 94, requirements after impact (from memory): 0.1564 J
 * ```
 */
export const energyAboveSafeVoltage = /*@__PURE__*/ formula({
  name: 'energyAboveSafeVoltage',
  title: 'Energy of a capacitor above 60 V',
  inputs: {
    capacitance: input('capacitance', 'C', 'Capacitance', { min: 0 }),
    voltage: input('voltage', 'U', 'Voltage', { min: 60 }),
  },
  result: output('energy', 'E', 'Energy above that at 60 V', 'J'),
  expression: '0.5 * C * (U^2 - Us^2)',
  constants: {
    Us: constant('voltage', '60 V', 'Highest voltage of class A, direct current', cite('ISO 6469-3')),
  },
  source: cite('UN Regulation No. 94', 'requirements after impact, from memory'),
  compute: ({ capacitance, voltage }, { Us }) => 0.5 * capacitance * (voltage ** 2 - Us ** 2),
})

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
  resistance: optional(given('resistance', 'Resistance of the precharge resistor, where it is chosen', { above: 0 })),
  makingCapacity: optional(
    given('current', 'Greatest current that the contactor makes', { above: 0, usual: ['5 A', '5000 A'] }),
  ),
  dischargeResistance: optional(given('resistance', 'Resistance through which it discharges', { above: 0 })),
  dischargePath: optional(
    choice('Whether that resistance stays across the capacitor while the pack is on', ['stays', 'opens']),
  ),
  dischargePower: optional(
    given('power', 'Power for which it is rated, all day', { above: 0, usual: ['0.25 W', '2 kW'] }),
  ),
}))()

/** The voltage up to which a circuit is of class A (ISO 6469-3). */
const SAFE = /*@__PURE__*/ (() => quantity('voltage', '60 V'))()

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
            prospectiveCurrent({
              voltage: residualVoltage,
              sourceResistance: asked.loopResistance as Quantity<'resistance'>,
              loopResistance: '0 Ω',
            }),
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

/** What a capacitor holds that can be touched. */
export interface StoredEnergy extends Findings {
  readonly energy: Quantity<'energy'>
  /** The part above 60 V; absent at or below that voltage. */
  readonly above60V?: Quantity<'energy'>
}

/**
 * Holds the energy in a capacitor that can be touched, such as the capacitors from the poles to the chassis, to the limit of
 * 0.2 J.
 *
 * Answers: is the energy in a capacitor that can be touched within the limit of 0.2 J?
 *
 * - `capacitance`: capacitance, all that is in parallel, in µF, at least 0 µF
 * - `voltage`: voltage that it can stand at, in V, at least 0 V
 *
 * @returns The energy, the part above 60 V, and a check.
 * @throws InputError for input that cannot be used, by its path.
 * Source: ISO 6469-4:2015, 5.2; UN Regulation No. 94, requirements after impact (the part above 60 V), from memory.
 *
 * @example
 * ```ts
 * const { energy, checks } = storedEnergyCheck({ capacitance: '2 µF', voltage: '400 V' })
 * String(energy) // '0.16 J'
 * checks[0]?.verdict // 'pass'
 * ```
 */
export const storedEnergyCheck = /*@__PURE__*/ procedure({
  name: 'storedEnergyCheck',
  title: 'Stored energy that can be touched',
  answers: 'Is the energy in a capacitor that can be touched within the limit of 0.2 J?',
  input: {
    capacitance: given('capacitance', 'Capacitance, all that is in parallel', { min: 0 }),
    voltage: given('voltage', 'Voltage that it can stand at', { min: 0, usual: ['48 V', '400 V'] }),
  },
  source: [
    cite('ISO 6469-4:2015', '5.2'),
    cite('UN Regulation No. 94', 'requirements after impact (the part above 60 V), from memory'),
  ],
  work: ({ capacitance, voltage }): Unfinished<StoredEnergy> => {
    const energy = capacitorEnergy({ capacitance, voltage })
    return {
      energy,
      ...(voltage.si <= SAFE.si ? {} : { above60V: energyAboveSafeVoltage({ capacitance, voltage }) }),
      checks: [
        trial(
          'storedEnergy.energy',
          'Stored energy',
          says`the capacitor holds ${energy}, at most the ${quantity('energy', '0.2 J')} that may be touched`,
          'ISO 6469-4:2015, 5.2',
          'capacitance',
          'voltage',
        ),
      ],
      cautions: [storedCharge],
    }
  },
})
