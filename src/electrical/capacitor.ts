/**
 * A capacitor that charges and discharges through a resistor, and what it holds that can be touched.
 *
 * Rests on circuit theory: one capacitor, one resistor, a pack of constant voltage; and on ISO 6469-4 for what may be left.
 */
import { cite, constant, definition, formula, input, output } from '../formula/index.js'
import { storedCharge } from '../procedure/cautions.js'
import { type Findings, given, procedure, says, trial, type Unfinished } from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'

/** The voltage up to which a circuit is of class A (ISO 6469-3). @internal */
export const SAFE = /*@__PURE__*/ (() => quantity('voltage', '60 V'))()

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
