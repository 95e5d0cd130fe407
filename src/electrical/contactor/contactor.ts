/**
 * What a contactor makes, breaks and carries, and what its coil takes.
 *
 * Rests on IEC 60947-4-1 (utilisation categories for direct current) and on circuit theory.
 */
import { cite, formula, input, output } from '../../formula/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'

/**
 * Current as a contactor closes on the voltage that a precharge has left across it. The controller's capacitor does
 * not hold it back: only what the loop resists in the first milliseconds does.
 *
 * `I = dU / R`
 *
 * - `residualVoltage` (`dU`, V): voltage left across the contactor, at least 0 V
 * - `loopResistance` (`R`, mΩ): resistance of pack and loop in the first milliseconds, above 0 mΩ
 * - gives `I`: inrush, in A
 * - Assumes: the inductance of the loop is left out: it only slows and lowers the inrush
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: circuit theory.
 *
 * @example
 * ```ts
 * inrushAtClosing({ residualVoltage: '20 V', loopResistance: '28 mΩ' })
 * // 714.3 A
 * // Ohm's law (exact): 714 A
 * ```
 */
export const inrushAtClosing = /*@__PURE__*/ formula({
  name: 'inrushAtClosing',
  title: 'Inrush as a contactor closes',
  inputs: {
    residualVoltage: input('voltage', 'dU', 'Voltage left across the contactor', { min: 0 }),
    loopResistance: input('resistance', 'R', 'Resistance of pack and loop in the first milliseconds', { above: 0 }),
  },
  result: output('current', 'I', 'Inrush'),
  expression: 'dU / R',
  assumes: ['The inductance of the loop is left out: it only slows and lowers the inrush.'],
  source: cite('circuit theory'),
  compute: ({ residualVoltage, loopResistance }) => residualVoltage / loopResistance,
})

/**
 * Power in the coil of a contactor, at its full voltage or as an economiser holds it: chopped, with the inductance of
 * the coil keeping the current smooth, it sees the duty's share of the voltage.
 *
 * `P = (d * U)^2 / R`
 *
 * - `voltage` (`U`, V): voltage of the supply, at least 0 V
 * - `resistance` (`R`, mΩ): resistance of the coil, above 0 mΩ
 * - `duty` (`d`, a plain number): share of the time that it is switched on, above 0 and at most 1, 1 unless given
 * - gives `P`: power in the coil, in W
 * - Assumes: the current is smooth: it is chopped quickly beside the time constant of the coil
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: circuit theory.
 *
 * @example
 * ```ts
 * coilPower({ voltage: '12 V', resistance: '4.5 Ω', duty: 1 })
 * // 32 W
 * // Ohm's law, a coil of 4.5 Ω at 12 V (exact): 32 W
 * ```
 */
export const coilPower = /*@__PURE__*/ formula({
  name: 'coilPower',
  title: 'Power in the coil of a contactor',
  inputs: {
    voltage: input('voltage', 'U', 'Voltage of the supply', { min: 0 }),
    resistance: input('resistance', 'R', 'Resistance of the coil', { above: 0 }),
    duty: input('ratio', 'd', 'Share of the time that it is switched on', {
      above: 0,
      max: 1,
      default: 1,
      because: 'no economiser chops it',
    }),
  },
  result: output('power', 'P', 'Power in the coil', 'W'),
  expression: '(d * U)^2 / R',
  assumes: ['The current is smooth: it is chopped quickly beside the time constant of the coil.'],
  source: cite('circuit theory'),
  compute: ({ voltage, resistance, duty }) => (duty * voltage) ** 2 / resistance,
})

/**
 * Current that a contactor withstands for less than its stated short time, by heat alone. A few kiloamperes lift the
 * contacts off each other, and weld them, however short: hold it to the stated peak too.
 *
 * `I = Icw * sqrt(tcw / t)`
 *
 * - `ratedCurrent` (`Icw`, A): short-time withstand current, as stated, above 0 A
 * - `ratedTime` (`tcw`, s): time for which it is stated, above 0 s
 * - `time` (`t`, s): time, at most as long, above 0 s
 * - gives `I`: current that it withstands, in A
 * - holds where time over the time that is stated is at most 1
 * - Assumes: no heat leaves the contacts in the time
 * - Caution: it is no more than the stated peak: above that the contacts lift and weld
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: circuit theory, adiabatic heating.
 *
 * @example
 * ```ts
 * shortTimeWithstand({ ratedCurrent: '1 kA', ratedTime: '1 s', time: '0.1 s' })
 * // 3162 A
 * // circuit theory, adiabatic heating, 1 kA for 1 s (exact): 3.162 kA
 * ```
 */
export const shortTimeWithstand = /*@__PURE__*/ formula({
  name: 'shortTimeWithstand',
  title: 'Short-time withstand current of a contactor',
  inputs: {
    ratedCurrent: input('current', 'Icw', 'Short-time withstand current, as stated', { above: 0 }),
    ratedTime: input('time', 'tcw', 'Time for which it is stated', { above: 0 }),
    time: input('time', 't', 'Time, at most as long', { above: 0 }),
  },
  result: output('current', 'I', 'Current that it withstands'),
  expression: 'Icw * sqrt(tcw / t)',
  valid: [
    {
      of: 'time over the time that is stated',
      max: 1,
      value: ({ ratedTime, time }) => time / ratedTime,
    },
  ],
  assumes: ['No heat leaves the contacts in the time.'],
  cautions: ['It is no more than the stated peak: above that the contacts lift and weld.'],
  source: cite('circuit theory', 'adiabatic heating'),
  compute: ({ ratedCurrent, ratedTime, time }) => ratedCurrent * Math.sqrt(ratedTime / time),
})

/** What a utilisation category for direct current proves. */
export interface ContactorCategory {
  /** Current that it makes and breaks, over the rated operational current. */
  readonly multiple: Quantity<'ratio'>
  /** Time constant of the circuit in which that is proved; absent for lamps. */
  readonly timeConstant?: Quantity<'time'>
  /** How often that is proved. From memory. */
  readonly times: number
}

/** A utilisation category, as IEC 60947-4-1 names it. */
export type UtilisationCategory = 'DC-1' | 'DC-3' | 'DC-5' | 'DC-6'

/**
 * Utilisation categories of IEC 60947-4-1 for direct current: DC-1 for loads of hardly any inductance, DC-3 and DC-5 for
 * motors, DC-6 for lamps. Multiples and time constants were read in a manual; that 50 operations prove them is from memory.
 */
export const contactorCategories: { readonly [C in UtilisationCategory]: ContactorCategory } = /*@__PURE__*/ (() => {
  const proved = (multiple: number, milliseconds: number): ContactorCategory => ({
    multiple: quantity('ratio', multiple),
    timeConstant: quantity('time', milliseconds, 'ms'),
    times: 50,
  })
  return {
    'DC-1': proved(1.5, 1),
    'DC-3': proved(4, 2.5),
    'DC-5': proved(4, 15),
    'DC-6': { multiple: quantity('ratio', 1.5), times: 50 },
  }
})()
