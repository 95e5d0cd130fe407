/**
 * Open-circuit voltage of a lithium cell by its state of charge: the potential of the positive electrode above that of
 * the negative one, each a function of how much of its lithium it holds.
 *
 * Rests on the cell models of C.-H. Chen and others, Journal of the Electrochemical Society 167 (2020) 080534 (NMC 811
 * against graphite with silicon) and of S. Afshar, K. Morris and A. Khajepour (2017) (iron phosphate).
 */

import { cite, commonPractice, constant, definition, formula, input, output, type Source } from '../../formula/index.js'
import { rootBetween } from '../../formula/root.js'

const chen = /*@__PURE__*/ cite('Chen and others, Journal of the Electrochemical Society 167 (2020) 080534')
const afshar = /*@__PURE__*/ cite(
  'Afshar, Morris and Khajepour (2017)',
  'fit of the iron phosphate electrode, as published cell models carry it',
)
const volt = /*@__PURE__*/ constant('voltage', '1 V', 'Unit in which the fit is written', definition)

/**
 * Share of the lithium that an electrode holds at a state of charge of the cell, between its shares when the cell is
 * empty and full. It falls in the positive electrode as the cell is charged and rises in the negative.
 *
 * `x = x0 + s * (x1 - x0)`
 *
 * - `empty` (`x0`, a plain number): share of its lithium when the cell is empty, at least 0 and at most 1
 * - `full` (`x1`, a plain number): share of its lithium when the cell is full, at least 0 and at most 1
 * - `stateOfCharge` (`s`, a plain number): state of charge of the cell, at least 0 and at most 1
 * - gives `x`: share of its lithium that the electrode holds, in a plain number
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * lithiumFraction({ empty: 0.2, full: 0.8, stateOfCharge: 0.25 })
 * // 0.35
 * // by definition (exact): 0.35
 * ```
 */
export const lithiumFraction = /*@__PURE__*/ formula({
  name: 'lithiumFraction',
  title: 'Lithium in an electrode',
  inputs: {
    empty: input('ratio', 'x0', 'Share of its lithium when the cell is empty', { min: 0, max: 1 }),
    full: input('ratio', 'x1', 'Share of its lithium when the cell is full', { min: 0, max: 1 }),
    stateOfCharge: input('ratio', 's', 'State of charge of the cell', { min: 0, max: 1 }),
  },
  result: output('ratio', 'x', 'Share of its lithium that the electrode holds'),
  expression: 'x0 + s * (x1 - x0)',
  source: definition,
  compute: ({ empty, full, stateOfCharge }) => empty + stateOfCharge * (full - empty),
})

/**
 * Potential against lithium of a negative electrode of graphite with some silicon, at rest.
 *
 * `Un = V1 * (1.9793 * exp(-39.3631 * x) + 0.2482 - 0.0909 * tanh(29.8538 * (x - 0.1234)) - 0.04478 * tanh(14.9159 * (x - 0.2769)) - 0.0205 * tanh(30.4444 * (x - 0.6103)))`
 *
 * - `lithium` (`x`, a plain number): share of its lithium that the electrode holds, at least 0 and at most 1
 * - gives `Un`: potential of the negative electrode, in V
 * - `V1` = 1 V: unit in which the fit is written (by definition)
 * - Assumes: the cell is at 25 °C and has rested
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Chen and others, Journal of the Electrochemical Society 167 (2020) 080534.
 *
 * @example
 * ```ts
 * graphitePotential({ lithium: 0.5 })
 * // 0.1331 V
 * // Chen and others, Journal of the Electrochemical Society 167 (2020) 080534, fits of the electrodes (recomputed):
 * // 0.13309 V
 * ```
 */
export const graphitePotential = /*@__PURE__*/ formula({
  name: 'graphitePotential',
  title: 'Potential of a graphite electrode',
  inputs: { lithium: input('ratio', 'x', 'Share of its lithium that the electrode holds', { min: 0, max: 1 }) },
  result: output('voltage', 'Un', 'Potential of the negative electrode'),
  expression:
    'V1 * (1.9793 * exp(-39.3631 * x) + 0.2482 - 0.0909 * tanh(29.8538 * (x - 0.1234)) - 0.04478 * tanh(14.9159 * (x - 0.2769)) - 0.0205 * tanh(30.4444 * (x - 0.6103)))',
  constants: { V1: volt },
  assumes: ['The cell is at 25 °C and has rested.'],
  source: chen,
  compute: ({ lithium: x }, { V1 }) =>
    V1 *
    (1.9793 * Math.exp(-39.3631 * x) +
      0.2482 -
      0.0909 * Math.tanh(29.8538 * (x - 0.1234)) -
      0.04478 * Math.tanh(14.9159 * (x - 0.2769)) -
      0.0205 * Math.tanh(30.4444 * (x - 0.6103))),
})

/**
 * Potential against lithium of a positive electrode of nickel, manganese and cobalt oxide in the ratio 8:1:1, at
 * rest.
 *
 * `Up = V1 * (4.4875 - 0.809 * y - 0.0428 * tanh(18.5138 * (y - 0.5542)) - 17.7326 * tanh(15.789 * (y - 0.3117)) + 17.5842 * tanh(15.9308 * (y - 0.312)))`
 *
 * - `lithium` (`y`, a plain number): share of its lithium that the electrode holds, at least 0.25 and at most 1
 * - gives `Up`: potential of the positive electrode, in V
 * - `V1` = 1 V: unit in which the fit is written (by definition)
 * - Assumes: the cell is at 25 °C and has rested
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Chen and others, Journal of the Electrochemical Society 167 (2020) 080534.
 *
 * @example
 * ```ts
 * nmcPotential({ lithium: 0.5 })
 * // 3.972 V
 * // Chen and others, Journal of the Electrochemical Society 167 (2020) 080534, fits of the electrodes (recomputed):
 * // 3.97196 V
 * ```
 */
export const nmcPotential = /*@__PURE__*/ formula({
  name: 'nmcPotential',
  title: 'Potential of an NMC 811 electrode',
  inputs: {
    lithium: input('ratio', 'y', 'Share of its lithium that the electrode holds', { min: 0.25, max: 1 }),
  },
  result: output('voltage', 'Up', 'Potential of the positive electrode'),
  expression:
    'V1 * (4.4875 - 0.809 * y - 0.0428 * tanh(18.5138 * (y - 0.5542)) - 17.7326 * tanh(15.789 * (y - 0.3117)) + 17.5842 * tanh(15.9308 * (y - 0.312)))',
  constants: { V1: volt },
  assumes: ['The cell is at 25 °C and has rested.'],
  source: chen,
  compute: ({ lithium: y }, { V1 }) =>
    V1 *
    (4.4875 -
      0.809 * y -
      0.0428 * Math.tanh(18.5138 * (y - 0.5542)) -
      17.7326 * Math.tanh(15.789 * (y - 0.3117)) +
      17.5842 * Math.tanh(15.9308 * (y - 0.312))),
})

/**
 * Potential against lithium of a positive electrode of iron phosphate, at rest: flat over nearly all of its range.
 *
 * `Up = V1 * (3.4077 - 0.020269 * y + 0.5 * exp(-150 * y) - 0.9 * exp(-30 * (1 - y)))`
 *
 * - `lithium` (`y`, a plain number): share of its lithium that the electrode holds, at least 0 and at most 1
 * - gives `Up`: potential of the positive electrode, in V
 * - `V1` = 1 V: unit in which the fit is written (by definition)
 * - Assumes: the cell has rested
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: Afshar, Morris and Khajepour (2017), fit of the iron phosphate electrode, as published cell models carry
 * it.
 *
 * @example
 * ```ts
 * ironPhosphatePotential({ lithium: 0.5 })
 * // 3.398 V
 * // common practice, no source (from memory): 3.42 V
 * ```
 */
export const ironPhosphatePotential = /*@__PURE__*/ formula({
  name: 'ironPhosphatePotential',
  title: 'Potential of an iron phosphate electrode',
  inputs: { lithium: input('ratio', 'y', 'Share of its lithium that the electrode holds', { min: 0, max: 1 }) },
  result: output('voltage', 'Up', 'Potential of the positive electrode'),
  expression: 'V1 * (3.4077 - 0.020269 * y + 0.5 * exp(-150 * y) - 0.9 * exp(-30 * (1 - y)))',
  constants: { V1: volt },
  assumes: ['The cell has rested.'],
  source: afshar,
  compute: ({ lithium: y }, { V1 }) =>
    V1 * (3.4077 - 0.020269 * y + 0.5 * Math.exp(-150 * y) - 0.9 * Math.exp(-30 * (1 - y))),
})

/**
 * Open-circuit voltage of a cell from the potentials of its electrodes.
 *
 * `U = Up - Un`
 *
 * - `positive` (`Up`, V): potential of the positive electrode, at least 0 V
 * - `negative` (`Un`, V): potential of the negative electrode, at least 0 V
 * - gives `U`: open-circuit voltage of the cell, in V
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * cellVoltage({ positive: '3.97196 V', negative: '0.13309 V' })
 * // 3.839 V
 * // by definition (exact): 3.83887 V
 * ```
 */
export const cellVoltage = /*@__PURE__*/ formula({
  name: 'cellVoltage',
  title: 'Open-circuit voltage of a cell',
  inputs: {
    positive: input('voltage', 'Up', 'Potential of the positive electrode', { min: 0 }),
    negative: input('voltage', 'Un', 'Potential of the negative electrode', { min: 0 }),
  },
  result: output('voltage', 'U', 'Open-circuit voltage of the cell'),
  expression: 'Up - Un',
  source: definition,
  compute: ({ positive, negative }) => positive - negative,
})

/** A published model of a cell at rest. */
export interface CellModel {
  /** What the cell is made of. */
  readonly cell: string
  /** Potential of the positive electrode. */
  readonly positivePotential: typeof nmcPotential | typeof ironPhosphatePotential
  /** Share of lithium in each electrode, empty and full. */
  readonly positive: { readonly empty: number; readonly full: number }
  readonly negative: { readonly empty: number; readonly full: number }
  /** Voltages at rest, in volts, between which the model holds. */
  readonly range: { readonly empty: number; readonly full: number }
  readonly source: Source
  /** Where the shares of lithium come from. */
  readonly balance: Source
}

/**
 * Cells that stand in where the open-circuit voltage of a module was not measured.
 *
 * `NMC`: NMC 811 against graphite with silicon, 2.5 V to 4.2 V (Chen and others, 2020). The shares of lithium follow from
 * the electrodes of that paper, with their lithium conserved and the ends at 2.5 V and 4.2 V; the fits and electrodes are
 * from memory. Other NMC cells lie within about 30 mV of it.
 *
 * `LFP`: iron phosphate (Afshar and others, 2017) against the same graphite, 2.5 V to 3.65 V. No published balance is
 * taken: the negative electrode has 1.1 times the capacity of the positive one, and lithium for 95 % of the positive one
 * goes round, both common practice without a source. On the flat part of this curve a voltage tells next to nothing of
 * the state of charge.
 */
export const cellModels: { readonly [chemistry in 'NMC' | 'LFP']: CellModel } = /*@__PURE__*/ (() => ({
  NMC: {
    cell: 'NMC 811 against graphite with silicon',
    positivePotential: nmcPotential,
    positive: { empty: 0.853975, full: 0.263845 },
    negative: { empty: 0.0263458, full: 0.910618 },
    range: { empty: 2.5, full: 4.2 },
    source: chen,
    balance: chen,
  },
  LFP: {
    cell: 'iron phosphate against graphite',
    positivePotential: ironPhosphatePotential,
    positive: { empty: 0.9073547, full: 0.0026823 },
    negative: { empty: 0.0387685, full: 0.8611979 },
    range: { empty: 2.5, full: 3.65 },
    source: afshar,
    balance: commonPractice,
  },
}))()

/** Open-circuit voltage of a cell of a model, on plain numbers. @internal */
export function voltageOfModel(model: CellModel, stateOfCharge: number): number {
  // Hundreds of thousands are asked for: objects written out are not made, those that are spread are.
  const { positive, negative } = model
  const inPositive = lithiumFraction.compute({ empty: positive.empty, full: positive.full, stateOfCharge })
  const inNegative = lithiumFraction.compute({ empty: negative.empty, full: negative.full, stateOfCharge })
  return cellVoltage.compute({
    positive: model.positivePotential.compute({ lithium: inPositive }),
    negative: graphitePotential.compute({ lithium: inNegative }),
  })
}

/**
 * A model used only between two voltages at rest, of which the lower counts as empty and the higher as full.
 * @internal
 */
export function modelBetween(model: CellModel, emptyVolts: number, fullVolts: number): CellModel {
  const at = (volts: number) => rootBetween((state) => voltageOfModel(model, state) - volts, 0, 1)
  const [stateEmpty, stateFull] = [at(emptyVolts), at(fullVolts)]
  const part = (electrode: CellModel['positive']) => ({
    empty: lithiumFraction.compute({ ...electrode, stateOfCharge: stateEmpty }),
    full: lithiumFraction.compute({ ...electrode, stateOfCharge: stateFull }),
  })
  return {
    ...model,
    positive: part(model.positive),
    negative: part(model.negative),
    range: { empty: emptyVolts, full: fullVolts },
  }
}
