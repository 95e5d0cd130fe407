/**
 * Heat that cells make, and their resistance in the cold.
 *
 * Rests on D. Bernardi, E. Pawlikowski and J. Newman, A general energy balance for battery systems, Journal of the
 * Electrochemical Society 132 (1985), simplified, and on the law of Arrhenius.
 */
import { cite, formula, input, output } from '../../formula/index.js'

/**
 * Heat that a cell makes: that of its resistance, and that of the change of its entropy, which turns its sign with
 * the current. A cell may so cool itself slightly while charging gently.
 *
 * `P = I^2 * R - I * T * dUdT`
 *
 * - `current` (`I`, A): current, positive on discharge
 * - `resistance` (`R`, mΩ): resistance of the cell, at least 0 mΩ
 * - `temperature` (`T`, °C): temperature of the cell
 * - `entropyCoefficient` (`dUdT`, mV/K): change of the open-circuit voltage with temperature, 0 mV/K unless given
 * - gives `P`: heat made, in W
 * - Assumes: the cell has one temperature and one state of charge throughout
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Bernardi, Pawlikowski and Newman, Journal of the Electrochemical Society 132 (1985) 5, simplified.
 *
 * @example
 * ```ts
 * cellHeat({ current: '5 A', resistance: '25 mΩ', temperature: '298.15 K', entropyCoefficient: '-0.1 mV/K' })
 * // 0.7741 W
 * // Bernardi, Pawlikowski and Newman, Journal of the Electrochemical Society 132 (1985) 5, simplified (recomputed):
 * // 0.77408 W
 * ```
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
 * By how much the core of a round cell is hotter than its side, where its heat leaves it: no sensor on the can shows
 * it. Across its windings a cell conducts near 0.2 W/(m·K), a hundredth of what it does along them (from memory of
 * Drake and others, 2014); published figures differ by half. Through its ends heat leaves with a smaller rise.
 *
 * `dT = P / (4 * pi * k * L)`
 *
 * - `heat` (`P`, kW): heat that the cell makes, at least 0 kW
 * - `length` (`L`, m): length of the cell, above 0 m
 * - `conductivity` (`k`, W/(m·K)): thermal conductivity from core to side, above 0 W/(m·K)
 * - gives `dT`: temperature of the core above that of the side, in K
 * - Assumes: heat is made evenly and steadily throughout the cell, and leaves through its side alone
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Incropera, Fundamentals of Heat and Mass Transfer, chapter 3.
 *
 * @example
 * ```ts
 * cellCoreRise({ heat: '2 W', length: '70 mm', conductivity: '0.2 W/(m·K)' })
 * // 11.37 K
 * // Incropera, Fundamentals of Heat and Mass Transfer, chapter 3, cylinder with heat made in it (recomputed): 11.37
 * // K
 * ```
 */
export const cellCoreRise = /*@__PURE__*/ formula({
  name: 'cellCoreRise',
  title: 'Core of a round cell above its side',
  inputs: {
    heat: input('power', 'P', 'Heat that the cell makes', { min: 0 }),
    length: input('length', 'L', 'Length of the cell', { above: 0 }),
    conductivity: input('thermalConductivity', 'k', 'Thermal conductivity from core to side', { above: 0 }),
  },
  result: output('temperatureDifference', 'dT', 'Temperature of the core above that of the side'),
  expression: 'P / (4 * pi * k * L)',
  assumes: ['Heat is made evenly and steadily throughout the cell, and leaves through its side alone.'],
  source: cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapter 3'),
  compute: ({ heat, length, conductivity }) => heat / (4 * Math.PI * conductivity * length),
})

/**
 * Resistance of a cell at a temperature, from its resistance measured at two. Measure both with pulses of the same
 * length and at the same state of charge; beyond the two temperatures the figure is a guess that grows worse with
 * distance.
 *
 * `R = Rw * (Rc / Rw)^((1 / T - 1 / Tw) / (1 / Tc - 1 / Tw))`
 *
 * - `temperature` (`T`, °C): temperature of the cell, above -273.15 °C
 * - `coldTemperature` (`Tc`, °C): colder temperature of measurement, above -273.15 °C
 * - `coldResistance` (`Rc`, mΩ): resistance measured in the cold, above 0 mΩ
 * - `warmTemperature` (`Tw`, °C): warmer temperature of measurement, above -273.15 °C
 * - `warmResistance` (`Rw`, mΩ): resistance measured in the warm, above 0 mΩ
 * - gives `R`: resistance at the temperature, in mΩ
 * - holds where warmTemperature - coldTemperature is above 0
 * - holds where coldResistance / warmResistance is at least 1
 * - Assumes: one activation energy holds at all the temperatures
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Arrhenius's law.
 *
 * @example
 * ```ts
 * resistanceAtTemperature({
 *   temperature: '0 °C',
 *   coldTemperature: '-20 °C',
 *   coldResistance: '12.04 mΩ',
 *   warmTemperature: '40 °C',
 *   warmResistance: '0.5115 mΩ',
 * })
 * // 3.601 mΩ
 * // Arrhenius's law, 34.7 kJ/mol, the activation energy of electrolyte conductivity in published cell models
 * // (recomputed): 3.601 mΩ
 * ```
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
      kind: 'temperatureDifference',
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
