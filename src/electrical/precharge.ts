/**
 * Charging the controller's capacitor through a resistor before the main contactor closes, and discharging it.
 *
 * Rests on circuit theory: one capacitor, one resistor, a pack of constant voltage.
 */
import { definition, formula, input, output } from '../formula/index.js'

/** Voltage of a capacitor that charges through a resistor from empty. */
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

/** Time in which a capacitor charges to a share of the pack's voltage. All of it takes for ever. */
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

/** Greatest resistance with which a capacitor reaches a share of the pack's voltage in a time. */
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

/** Energy held in a charged capacitor. A precharge resistor turns as much again into heat each time it is filled. */
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

/** Time in which a capacitor discharges through a resistor from one voltage to a lower one, such as 60 V. */
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
