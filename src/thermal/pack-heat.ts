/**
 * Heat that cells make, and their resistance in the cold.
 *
 * Rests on D. Bernardi, E. Pawlikowski and J. Newman, A general energy balance for battery systems, Journal of the
 * Electrochemical Society 132 (1985), simplified, and on the law of Arrhenius.
 */
import { cite, formula, input, output } from '../formula/index.js'

/**
 * Heat that a cell makes: that of its resistance, and that of the change of its entropy, which turns its sign with
 * the current. A cell may so cool itself slightly while charging gently.
 */
export const cellHeat = /*@__PURE__*/ formula({
  name: 'cellHeat',
  title: 'Heat of a cell',
  inputs: {
    current: input('current', 'I', 'Current, positive on discharge'),
    resistance: input('resistance', 'R', 'Resistance of the cell', { min: 0 }),
    temperature: input('temperature', 'T', 'Temperature of the cell'),
    entropyCoefficient: input('entropyCoefficient', 'dUdT', 'Change of the open-circuit voltage with temperature', {
      default: '0 mV/K',
    }),
  },
  result: output('power', 'P', 'Heat made', 'W'),
  expression: 'I^2 * R - I * T * dUdT',
  assumes: ['The cell has one temperature and one state of charge throughout.'],
  source: cite('Bernardi, Pawlikowski and Newman, Journal of the Electrochemical Society 132 (1985) 5', 'simplified'),
  compute: ({ current, resistance, temperature, entropyCoefficient }) =>
    current ** 2 * resistance - current * temperature * entropyCoefficient,
})

/**
 * Resistance of a cell at a temperature, from its resistance measured at two. Measure both with pulses of the same
 * length and at the same state of charge; beyond the two temperatures the figure is a guess that grows worse with
 * distance.
 */
export const resistanceAtTemperature = /*@__PURE__*/ formula({
  name: 'resistanceAtTemperature',
  title: 'Resistance of a cell at a temperature',
  inputs: {
    temperature: input('temperature', 'T', 'Temperature of the cell', { above: 0 }),
    coldTemperature: input('temperature', 'Tc', 'Colder temperature of measurement', { above: 0 }),
    coldResistance: input('resistance', 'Rc', 'Resistance measured in the cold', { above: 0 }),
    warmTemperature: input('temperature', 'Tw', 'Warmer temperature of measurement', { above: 0 }),
    warmResistance: input('resistance', 'Rw', 'Resistance measured in the warm', { above: 0 }),
  },
  result: output('resistance', 'R', 'Resistance at the temperature'),
  expression: 'Rw * (Rc / Rw)^((1 / T - 1 / Tw) / (1 / Tc - 1 / Tw))',
  valid: [
    {
      of: 'warmTemperature - coldTemperature',
      value: ({ coldTemperature, warmTemperature }) => warmTemperature - coldTemperature,
      above: 0,
    },
    {
      of: 'coldResistance / warmResistance',
      value: ({ coldResistance, warmResistance }) => coldResistance / warmResistance,
      min: 1,
    },
  ],
  assumes: ['One activation energy holds at all the temperatures.'],
  source: cite("Arrhenius's law"),
  compute: ({ temperature, coldTemperature, coldResistance, warmTemperature, warmResistance }) =>
    warmResistance *
    (coldResistance / warmResistance) **
      ((1 / temperature - 1 / warmTemperature) / (1 / coldTemperature - 1 / warmTemperature)),
})
