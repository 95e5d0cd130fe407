/**
 * A battery module as its maker or a measurement describes it, and its open-circuit voltage by state of charge.
 *
 * Rests on what is given; where no curve was measured, on the cell models of open-circuit.ts.
 */
import { section, sourceText } from '../../formula/index.js'
import { type Points, straightAt } from '../../formula/points.js'
import { unrecorded } from '../../formula/record.js'
import {
  choice,
  given,
  group,
  isAbove,
  type Note,
  optional,
  pairs,
  type Read,
  text,
  unusualIn,
  whole,
} from '../../procedure/index.js'
import { tableIssues } from '../../procedure/table.js'
import { CalculationError, InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { resistanceAtTemperature } from '../../thermal/index.js'
import {
  cellModels,
  cellVoltage,
  graphitePotential,
  lithiumFraction,
  modelBetween,
  voltageOfModel,
} from './open-circuit.js'
import { packEnergy, packResistance, seriesVoltage, specificEnergy } from './pack.js'

const spanField = (when: string, coldest: '-10 °C' | '-40 °C') =>
  group(`The temperatures of the cells ${when}`, {
    minimum: given('temperature', `Lowest temperature of the cells ${when}`, {
      usual: [coldest, '15 °C'],
      finest: '0.1 °C',
    }),
    maximum: given('temperature', `Highest temperature of the cells ${when}`, { usual: ['30 °C', '75 °C'] }),
  })

/** What describes a module. @internal */
export const moduleFields = /*@__PURE__*/ (() => ({
  name: text('What the module is called'),
  cellsInSeries: whole('Cells in series', { min: 1, max: 1000 }),
  chemistry: optional(choice('What its cells are made of', ['NMC', 'LFP'])),
  nominalVoltage: given('voltage', 'Nominal voltage of the module', { above: 0 }),
  minimumVoltage: given('voltage', 'Lowest voltage that the module may have', { above: 0 }),
  maximumVoltage: given('voltage', 'Voltage of the full module', { above: 0 }),
  capacity: given('charge', 'Capacity of the module', {
    above: 0,
    usual: ['20 Ah', '200 Ah'],
    uncertain: ['3 %', 'salvaged modules that were not discharged in a test, common practice, no source'],
  }),
  newCapacity: optional(
    given('charge', 'Capacity of the module when it was new, at the same current and temperature', {
      above: 0,
      usual: ['20 Ah', '200 Ah'],
    }),
  ),
  cell: optional(
    group('The limits of each of its cells, and how unlike they are', {
      minimumVoltage: given('voltage', 'Lowest voltage that a cell may have', { above: 0, usual: ['2 V', '3.3 V'] }),
      maximumVoltage: given('voltage', 'Highest voltage that a cell may have', { above: 0, usual: ['3.4 V', '4.4 V'] }),
      spread: optional(
        given('voltage', 'Most by which a cell of the full or empty module is off the mean of all', {
          min: 0,
          usual: ['0 V', '0.1 V'],
        }),
      ),
    }),
  ),
  resistance: given('resistance', 'Resistance of the module, warm', {
    above: 0,
    uncertain: ['10 %', 'a pulse read by hand, common practice, no source'],
  }),
  ohmicResistance: optional(
    given('resistance', 'Resistance of the module, warm, within 10 ms, such as at 1 kHz', { above: 0 }),
  ),
  cold: optional(
    group('Its resistance in the cold', {
      temperature: given('temperature', 'Temperature of the cold measurement', {
        above: 0,
        below: '25 °C',
        usual: ['-40 °C', '20 °C'],
        finest: '0.1 °C',
      }),
      resistance: given('resistance', 'Resistance of the module at that temperature', { above: 0 }),
    }),
  ),
  mass: given('mass', 'Mass of the module', { above: 0 }),
  continuousCurrent: given('current', 'Discharge current that it bears all day', { above: 0 }),
  peakCurrent: optional(
    given('current', 'Discharge current that it bears for a short time', { above: 0, usual: ['20 A', '3000 A'] }),
  ),
  chargeCurrent: optional(given('current', 'Charge current that it bears', { above: 0, usual: ['1 A', '600 A'] })),
  chargeCurrents: optional(
    pairs(
      'Charge current that it bears by the temperature of the cells, the temperatures rising',
      given('temperature', 'Temperature of the cells'),
      given('current', 'Charge current that it bears there', { min: 0 }),
      { least: 2 },
    ),
  ),
  temperatures: optional(
    group('The temperatures at which its cells may work', {
      charge: spanField('on charge', '-10 °C'),
      discharge: spanField('on discharge', '-40 °C'),
    }),
  ),
  size: optional(
    group('The sides of the module', {
      length: given('length', 'Length', { above: 0 }),
      width: given('length', 'Width', { above: 0 }),
      height: given('length', 'Height', { above: 0 }),
    }),
  ),
  specificHeat: optional(
    given('specificHeat', 'Specific heat of the module', { above: 0, usual: ['600 J/(kg·K)', '1600 J/(kg·K)'] }),
  ),
  openCircuit: optional(
    pairs(
      'Points [state of charge, voltage at rest] in rising order',
      given('ratio', 'State of charge', { min: 0, max: 1 }),
      given('voltage', 'Open-circuit voltage', { above: 0 }),
      { least: 2 },
    ),
  ),
}))()

/** What is read of a module. @internal */
export type Module = Read<typeof moduleFields>

/** What describes a pack of equal modules. @internal */
export const packFields = /*@__PURE__*/ (() => ({
  module: group('A module', moduleFields),
  series: whole('How many modules are in series', { min: 1, max: 1000 }),
  parallel: whole('How many modules are in parallel', { min: 1, max: 1000 }),
}))()

/** What is read of a pack. @internal */
export type Pack = Read<typeof packFields>

/** Refuses a module whose figures contradict each other, each fault by its path. @internal */
export function refuseModule(where: string, path: string, module: Module): void {
  const issues: InputIssue[] = []
  const { minimumVoltage, nominalVoltage, maximumVoltage, continuousCurrent, peakCurrent } = module
  if (minimumVoltage.si >= nominalVoltage.si) {
    issues.push({
      path: `${path}.minimumVoltage`,
      expected: `a voltage below the nominal one, ${nominalVoltage}`,
      received: String(minimumVoltage),
    })
  }
  if (nominalVoltage.si >= maximumVoltage.si) {
    issues.push({
      path: `${path}.maximumVoltage`,
      expected: `a voltage above the nominal one, ${nominalVoltage}`,
      received: String(maximumVoltage),
      hint: 'the voltage of the full module, not its nominal one',
    })
  }
  if (peakCurrent !== undefined && peakCurrent.si < continuousCurrent.si) {
    issues.push({
      path: `${path}.peakCurrent`,
      expected: `at least the continuous current, ${continuousCurrent}`,
      received: String(peakCurrent),
    })
  }
  if (!Number.isFinite((nominalVoltage.si * module.capacity.si) / module.mass.si)) {
    const expected = "the mass of a module, such as '20 kg'"
    issues.push({ path: `${path}.mass`, expected, received: String(module.mass) })
  }
  if (module.ohmicResistance !== undefined && module.ohmicResistance.si > module.resistance.si) {
    issues.push({
      path: `${path}.ohmicResistance`,
      expected: `at most the resistance by a pulse of some seconds, ${module.resistance}`,
      received: String(module.ohmicResistance),
    })
  }
  if (module.cold !== undefined && module.cold.resistance.si < module.resistance.si) {
    issues.push({
      path: `${path}.cold.resistance`,
      expected: `at least the resistance of the warm module, ${module.resistance}`,
      received: String(module.cold.resistance),
      hint: 'cold cells resist more',
    })
  }
  for (const [name, span] of Object.entries(module.temperatures ?? {})) {
    if (span.minimum.si < span.maximum.si) continue
    const expected = `a temperature above the minimum, ${span.minimum}`
    issues.push({ path: `${path}.temperatures.${name}.maximum`, expected, received: String(span.maximum) })
  }
  issues.push(
    ...tableIssues(`${path}.chargeCurrents`, module.chargeCurrents ?? [], 'temperature'),
    ...curveIssues(path, module),
  )
  if (issues.length > 0) throw new InputError(where, issues)
}

/** What of a module its open-circuit voltage rests on. @internal */
export type AtRest = Pick<Module, 'cellsInSeries' | 'chemistry' | 'openCircuit' | 'minimumVoltage' | 'maximumVoltage'>

/** What is wrong with the open-circuit points of a module, each fault by its path. @internal */
export function curveIssues(path: string, { openCircuit: points = [], minimumVoltage, maximumVoltage }: AtRest) {
  const issues = tableIssues(`${path}.openCircuit`, points, 'state of charge', { rises: 'voltage' })
  points.forEach(([, voltage], i) => {
    if (!isAbove(voltage, maximumVoltage)) return
    const expected = `at most the voltage of the full module, ${maximumVoltage}`
    issues.push({ path: `${path}.openCircuit[${i}][1]`, expected, received: String(voltage) })
  })
  const highest = points.at(-1)?.[1]
  if (highest !== undefined && highest.si <= minimumVoltage.si) {
    issues.push({
      path: `${path}.openCircuit`,
      expected: `voltages of the whole module, that reach above its minimum, ${minimumVoltage}`,
      received: `at most ${highest}`,
    })
  }
  return issues
}

/** Of lithium cells of any chemistry. */
const CELL = ['2 V', '4.3 V', 'chemistry'] as const
/** Capacity times resistance of a cell, in ohms times coulombs: 20 mΩ·Ah for power to 150 mΩ·Ah for energy. */
const [FOR_POWER, FOR_ENERGY] = [72, 540] as const

/**
 * What is unusual of a module where its figures are taken together: of a cell of it, and of its energy by its mass.
 * @internal
 */
export function unusualOfModule(path: string, module: Module): Note[] {
  const { cellsInSeries: cells, capacity, mass } = module
  const voltage = (key: 'nominalVoltage' | 'minimumVoltage' | 'maximumVoltage', about: string) =>
    unusualIn(given('voltage', about, { usual: CELL }), module[key].over(cells), [path, key])
  const ohms = (product: number) => quantity('resistance', product / capacity.si, 'Ω').as('mΩ')
  const resistance = given('resistance', 'Resistance of a cell', {
    usual: [ohms(FOR_POWER), ohms(FOR_ENERGY), `20 mΩ·Ah to 150 mΩ·Ah at ${capacity}, common practice`],
  })
  const current = (
    key: 'continuousCurrent' | 'chargeCurrent',
    about: string,
    [least, most]: readonly [number, number],
  ) => {
    const amperes = (perHour: number) => quantity('current', (perHour * capacity.si) / 3600, 'A')
    const basis = `${least} to ${most} times ${capacity} in an hour, common practice`
    const value = module[key]
    return value === undefined
      ? []
      : unusualIn(given('current', about, { usual: [amperes(least), amperes(most), basis] }), value, [path, key])
  }
  const energy = given('specificEnergy', 'Energy of the module by its mass', {
    usual: ['80 Wh/kg', '180 Wh/kg', 'whole packs, common practice'],
  })
  return [
    ...voltage('nominalVoltage', 'Nominal voltage of a cell'),
    ...voltage('minimumVoltage', 'Lowest voltage of a cell'),
    ...voltage('maximumVoltage', 'Voltage of a full cell'),
    ...unusualIn(resistance, module.resistance.over(cells), [path, 'resistance']),
    ...current('continuousCurrent', 'Continuous current of the module', [0.2, 15]),
    ...current('chargeCurrent', 'Charge current of the module', [0.05, 5]),
    ...unusualIn(
      energy,
      unrecorded(() => specificEnergy({ energy: packEnergy({ voltage: module.nominalVoltage, capacity }), mass })),
      [path, 'mass'],
    ),
  ]
}

/** What is unusual of a pack: of its modules, and its voltage. @internal */
export function unusualOfPack(path: string, { module, series }: Pack): Note[] {
  const voltage = given('voltage', 'Nominal voltage of the pack', { usual: ['48 V', '400 V'] })
  return [
    ...unusualOfModule(`${path}.module`, module),
    ...unusualIn(voltage, module.nominalVoltage.times(series), [path, 'series']),
  ]
}

/** The open-circuit voltage of a module. @internal */
export interface OpenCircuit {
  /** Volts at a state of charge, on plain numbers; only where the curve reaches. */
  readonly voltsAt: (stateOfCharge: number) => number
  /** The states of charge between which the curve reaches, on plain numbers. */
  readonly ends: readonly [lowest: number, highest: number]
  /** The voltage at a state of charge, with its working. */
  readonly voltageAt: (stateOfCharge: Quantity<'ratio'>) => Quantity<'voltage'>
  /** What the curve is, as an assumption. */
  readonly basis: string
}

/** The curve that was given for a module, or that of the cell model of its chemistry between its voltages. @internal */
export function openCircuitOf(where: string, path: string, module: AtRest): OpenCircuit {
  if (module.openCircuit !== undefined) return curveOfPoints(where, module.openCircuit)
  if (module.chemistry !== undefined) return curveOfModel(where, path, module, module.chemistry)
  throw new InputError(where, [
    {
      path: `${path}.openCircuit`,
      expected:
        "points such as [[0, '36 V'], [0.5, '44 V'], [1, '50 V']], or a chemistry, 'NMC' or 'LFP', in their stead",
      received: 'nothing',
    },
  ])
}

function curveOfPoints(where: string, points: NonNullable<Module['openCircuit']>): OpenCircuit {
  const volts = points.map(([state, voltage]) => [state.si, voltage.si] as const)
  const [[first], [last]] = [volts[0], volts.at(-1)] as [Points[number], Points[number]]
  const voltsAt = (state: number) => {
    if (state < first || state > last) {
      const ends = [first, last].map((end) => String(quantity('ratio', end).as('%')))
      const asked = quantity('ratio', state).as('%')
      throw new CalculationError(
        where,
        `the open-circuit curve of the module reaches from ${ends.join(' to ')}, not to ${asked}; nothing is extrapolated`,
        { from: ends[0] as string, to: ends[1] as string, asked: String(asked) },
      )
    }
    return straightAt(volts, state)
  }
  return {
    voltsAt,
    ends: [first, last],
    voltageAt: (state) => quantity('voltage', voltsAt(state.si), 'V'),
    basis: 'The open-circuit voltage is interpolated between the points given for the module.',
  }
}

function curveOfModel(where: string, path: string, module: AtRest, chemistry: 'NMC' | 'LFP'): OpenCircuit {
  const whole = cellModels[chemistry]
  const { cellsInSeries: cells } = module
  const [empty, full] = [module.minimumVoltage.si / cells, module.maximumVoltage.si / cells]
  const issues = (['minimumVoltage', 'maximumVoltage'] as const)
    .filter(
      (key) =>
        module[key].si / cells < whole.range.empty * (1 - 1e-12) ||
        module[key].si / cells > whole.range.full * (1 + 1e-12),
    )
    .map((key) => ({
      path: `${path}.${key}`,
      expected: `${whole.range.empty} V to ${whole.range.full} V for each of ${cells} cells, the range of the model of ${whole.cell}`,
      received: `${module[key]}, ${module[key].over(cells)} a cell`,
      hint: 'give openCircuit for another cell',
    }))
  if (issues.length > 0) throw new InputError(where, issues)
  const model = modelBetween(whole, empty, full)
  const balance =
    whole.balance === whole.source ? '' : `; how its electrodes share the lithium: ${sourceText(whole.balance)}`
  return {
    voltsAt: (state) => cells * voltageOfModel(model, state),
    ends: [0, 1],
    voltageAt: (state) =>
      section(`Open-circuit voltage of a module at ${state.as('%')}, ${whole.cell}`, () => {
        const lithium = (electrode: { readonly empty: number; readonly full: number }) =>
          lithiumFraction({ ...electrode, stateOfCharge: state })
        const positive = model.positivePotential({ lithium: lithium(model.positive) })
        const negative = graphitePotential({ lithium: lithium(model.negative) })
        return seriesVoltage({ count: cells, voltage: cellVoltage({ positive, negative }) })
      }),
    basis:
      `The open-circuit voltage is that of a cell model, ${whole.cell} (${sourceText(whole.source)}${balance}), with ` +
      `${module.minimumVoltage} as empty and ${module.maximumVoltage} as full.`,
  }
}

/** Where the resistance of a warm module is taken to have been measured. @internal */
export const WARM = '25 °C'

/**
 * By how much colder than where it was measured a resistance is still taken for known, in kelvins. Common practice, no
 * source: by Arrhenius's law, with the 34.7 kJ/mol of electrolytes (thermal domain), it is then 1.6 times as high.
 */
const BAND = 10

/**
 * The resistance of a pack at a temperature, and what was assumed for it. Colder than it was measured the pack resists
 * more, by what is not known; warmer it resists less, which leaves every check that rests on it on the safe side.
 * @internal
 */
export function resistanceOf(
  { module, series, parallel }: Pack,
  temperature: Quantity<'temperature'> | undefined,
): {
  readonly resistance: Quantity<'resistance'>
  readonly basis: string
  /** Why it may be more, and what to give; absent where it is known. */
  readonly unknown?: string
} {
  const { cold } = module
  const measured = cold?.temperature ?? quantity('temperature', WARM)
  const unknown =
    temperature === undefined || measured.si - temperature.si <= BAND * (1 + 1e-12)
      ? {}
      : {
          unknown: `how much the modules resist at ${temperature} is not known: give pack.module.cold, measured no more than ${BAND} K above that`,
        }
  const ofPack = (resistance: Quantity<'resistance'>) => packResistance({ series, parallel, resistance })
  if (temperature === undefined || cold === undefined) {
    const basis =
      temperature === undefined
        ? 'The modules are warm, and have the resistance given for them.'
        : `The resistance is that of warm modules: none is given for the cold, where it is several times as high.`
    return { resistance: ofPack(module.resistance), basis, ...unknown }
  }
  const resistance = resistanceAtTemperature({
    temperature,
    coldTemperature: cold.temperature,
    coldResistance: cold.resistance,
    warmTemperature: WARM,
    warmResistance: module.resistance,
  })
  const basis = `The resistance given for the warm module was measured at ${WARM}; Arrhenius's law joins it to the cold one.`
  return { resistance: ofPack(resistance), basis, ...unknown }
}
