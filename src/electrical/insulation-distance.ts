/**
 * Distances that insulate: through the air, clearance, and along a surface, creepage; and the test of a charger's insulation.
 *
 * Rests on IEC 60664-1: annex F, tables F.1 (rated impulse), F.2 (clearance) and F.4 of the edition of 2007, which is F.5 in
 * that of 2020 (creepage), and A.2 (altitude). Of F.2 the rows from 1.5 kV to 6 kV were read in a transcription, of F.4 the
 * rows of 100 V, 250 V, 400 V, 630 V and 1000 V and, of degree 2, 160 V; the other rows, table F.1 and what is said of
 * printed boards are from memory.
 */
import { cite, constant, formula, input, output } from '../formula/index.js'
import { straightAt } from '../formula/points.js'
import { highVoltage } from '../procedure/cautions.js'
import { unlessUnknown } from '../procedure/check.js'
import {
  type Assumption,
  assumed,
  type Check,
  choice,
  type Findings,
  flag,
  given,
  group,
  optional,
  procedure,
  type Read,
  says,
  type Told,
  trial,
  type Unfinished,
  whole,
} from '../procedure/index.js'
import { InputError, shown } from '../quantity/errors.js'
import { type Given, type Quantity, quantity } from '../quantity/index.js'
import { issueWith, readSi } from '../quantity/read.js'

/** A material by how well it withstands tracking: by its comparative tracking index. */
export type MaterialGroup = 'I' | 'II' | 'IIIa' | 'IIIb'
/** What dirt and damp reach a surface: 1 none, 2 dry dust, 3 damp. */
export type PollutionDegree = 1 | 2 | 3
/** Where on the mains a circuit hangs: I behind a limiter, II at a socket, III in the fixed wiring, IV at the meter. */
export type OvervoltageCategory = 'I' | 'II' | 'III' | 'IV'

const WORK = 'IEC 60664-1'
const CREEPAGE = 'table F.4 of 2007, F.5 of 2020'
const materialGroups = ['I', 'II', 'IIIa', 'IIIb'] as const
const categories = ['I', 'II', 'III', 'IV'] as const

/** Least comparative tracking index of each group. */
const trackingIndices: readonly (readonly [least: number, MaterialGroup])[] = [
  [600, 'I'],
  [400, 'II'],
  [175, 'IIIa'],
  [100, 'IIIb'],
]

/** Rated impulse, kV, of categories I to IV by the voltage to earth, V. Table F.1. */
const impulses: readonly (readonly [toEarth: number, ...impulse: number[]])[] = [
  [50, 0.33, 0.5, 0.8, 1.5],
  [100, 0.5, 0.8, 1.5, 2.5],
  [150, 0.8, 1.5, 2.5, 4],
  [300, 1.5, 2.5, 4, 6],
  [600, 2.5, 4, 6, 8],
  [1000, 4, 6, 8, 12],
]

/** Clearance, mm, in an uneven field up to 2000 m by the steps of rated impulse, kV. Table F.2, case A. */
const clearances: readonly (readonly [impulse: number, distance: number])[] = [
  [0.33, 0.01],
  [0.5, 0.04],
  [0.8, 0.1],
  [1.5, 0.5],
  [2.5, 1.5],
  [4, 3],
  [6, 5.5],
  [8, 8],
  [12, 14],
]
/** Least clearance, mm, by degree of pollution: dirt may bridge less. */
const leastClearance = { 1: 0, 2: 0.2, 3: 0.8 } as const

/** Creepage, mm, by working voltage, V: degree 1; degree 2, groups I, II, III; degree 3, groups I, II, III; boards of degree 1, 2. */
const creepages: readonly (readonly [voltage: number, ...distances: number[]])[] = [
  [10, 0.08, 0.4, 0.4, 0.4, 1, 1, 1, 0.025, 0.04],
  [12.5, 0.09, 0.42, 0.42, 0.42, 1.05, 1.05, 1.05, 0.025, 0.04],
  [16, 0.1, 0.45, 0.45, 0.45, 1.1, 1.1, 1.1, 0.025, 0.04],
  [20, 0.11, 0.48, 0.48, 0.48, 1.2, 1.2, 1.2, 0.025, 0.04],
  [25, 0.125, 0.5, 0.5, 0.5, 1.25, 1.25, 1.25, 0.025, 0.04],
  [32, 0.14, 0.53, 0.53, 0.53, 1.3, 1.3, 1.3, 0.025, 0.04],
  [40, 0.16, 0.56, 0.8, 1.1, 1.4, 1.6, 1.8, 0.025, 0.04],
  [50, 0.18, 0.6, 0.85, 1.2, 1.5, 1.7, 1.9, 0.025, 0.04],
  [63, 0.2, 0.63, 0.9, 1.25, 1.6, 1.8, 2, 0.04, 0.063],
  [80, 0.22, 0.67, 0.95, 1.3, 1.7, 1.9, 2.1, 0.063, 0.1],
  [100, 0.25, 0.71, 1, 1.4, 1.8, 2, 2.2, 0.1, 0.16],
  [125, 0.28, 0.75, 1.05, 1.5, 1.9, 2.1, 2.4, 0.16, 0.25],
  [160, 0.32, 0.8, 1.1, 1.6, 2, 2.2, 2.5, 0.25, 0.4],
  [200, 0.42, 1, 1.4, 2, 2.5, 2.8, 3.2, 0.4, 0.63],
  [250, 0.56, 1.25, 1.8, 2.5, 3.2, 3.6, 4, 0.56, 1],
  [320, 0.75, 1.6, 2.2, 3.2, 4, 4.5, 5, 0.75, 1.6],
  [400, 1, 2, 2.8, 4, 5, 5.6, 6.3, 1, 2],
  [500, 1.3, 2.5, 3.6, 5, 6.3, 7.1, 8, 1.3, 2.5],
  [630, 1.8, 3.2, 4.5, 6.3, 8, 9, 10, 1.8, 3.2],
  [800, 2.4, 4, 5.6, 8, 10, 11, 12.5, 2.4, 4],
  [1000, 3.2, 5, 7.1, 10, 12.5, 14, 16, 3.2, 5],
]
const [LOWEST, HIGHEST] = [10, 1000]
/** Above this voltage group IIIb is not for degree 3, in volts. */
const LEAST_MATERIAL = 630

/** Pressure of the air, kPa, by altitude, m. Table A.2. */
const pressures: readonly (readonly [altitude: number, pressure: number])[] = [
  [2000, 80],
  [3000, 70],
  [4000, 62],
  [5000, 54],
  [6000, 47],
  [7000, 41],
]

/** Least width of a groove, mm, that counts along a surface: a narrower one is bridged. */
const grooves = { 1: 0.25, 2: 1, 3: 1.5 } as const

function refused(where: string, path: string, expected: string, received: unknown): InputError {
  return new InputError(where, [
    { path, expected, received: typeof received === 'string' ? received : shown(received) },
  ])
}

/** A quantity of a plain function in SI units. */
function siOf(where: string, path: string, kind: 'voltage', value: Given<'voltage'>): number {
  const si = readSi(kind, value)
  if (Number.isNaN(si)) throw new InputError(where, [issueWith(path, kind, value)])
  return si
}

function refuseUnless<T>(where: string, path: string, of: readonly T[], value: T): void {
  if (of.includes(value)) return
  throw refused(where, path, `one of ${of.map((each) => shown(each)).join(', ')}`, value)
}

/** The first row of a table that reaches a value; the steps of a table count whole. */
function stepAt<Row extends readonly number[]>(rows: readonly Row[], at: number): Row | undefined {
  return rows.find(([step]) => at <= (step as number) * (1 + 1e-12))
}

/**
 * Group of a material by its comparative tracking index, as its sheet states it: I from 600, II from 400, IIIa from 175, IIIb
 * from 100 (IEC 60664-1).
 *
 * @param trackingIndex - Comparative tracking index, CTI.
 * @throws InputError below 100, where no group is.
 */
export function materialGroup(trackingIndex: number): MaterialGroup {
  const found = trackingIndices.find(([least]) => trackingIndex >= least)
  if (found !== undefined && Number.isFinite(trackingIndex)) return found[1]
  throw refused('materialGroup', 'trackingIndex', 'a comparative tracking index of at least 100', trackingIndex)
}

/**
 * Rated impulse voltage of a circuit on the mains (IEC 60664-1, table F.1, from memory): the next row up by its voltage to
 * earth.
 *
 * @param toEarth - Voltage of the mains to earth, above 0 V and at most 1000 V.
 * @param category - Overvoltage category: II for what is plugged into a socket, III for what is wired to it for good.
 * @throws InputError for what cannot be used, and above 1000 V, where the table ends.
 */
export function ratedImpulse(toEarth: Given<'voltage'>, category: OvervoltageCategory): Quantity<'voltage'> {
  const volts = siOf('ratedImpulse', 'toEarth', 'voltage', toEarth)
  refuseUnless('ratedImpulse', 'category', categories, category)
  const row = volts > 0 ? stepAt(impulses, volts) : undefined
  const impulse = row?.[1 + categories.indexOf(category)]
  if (impulse !== undefined) return quantity('voltage', impulse, 'kV')
  throw refused('ratedImpulse', 'toEarth', 'a voltage above 0 V and at most 1000 V', String(toEarth))
}

/**
 * Least distance through the air up to 2000 m (IEC 60664-1, table F.2, uneven field). Between the steps of rated impulse the
 * next one up counts.
 *
 * @param impulse - Impulse voltage that it must withstand, above 0 V and at most 12 kV.
 * @param pollution - Degree of pollution: 2 asks for at least 0.2 mm, 3 for at least 0.8 mm.
 * @throws InputError for what cannot be used, and above 12 kV.
 */
export function clearanceDistance(impulse: Given<'voltage'>, pollution: PollutionDegree): Quantity<'length'> {
  const volts = siOf('clearanceDistance', 'impulse', 'voltage', impulse)
  refuseUnless('clearanceDistance', 'pollution', [1, 2, 3], pollution)
  const row = volts > 0 ? stepAt(clearances, volts / 1000) : undefined
  if (row !== undefined) return quantity('length', Math.max(row[1], leastClearance[pollution]), 'mm')
  throw refused('clearanceDistance', 'impulse', 'a voltage above 0 V and at most 12 kV', String(impulse))
}

/** What lies under a creepage distance. */
export interface Surface {
  readonly pollution: PollutionDegree
  readonly material: MaterialGroup
  /** Whether it is a printed board: of degree 1, or of degree 2 and not of group IIIb. */
  readonly printed?: boolean
}

/**
 * Least distance along a surface for basic insulation (IEC 60664-1, table F.4 of 2007, F.5 of 2020). Between two rows it lies
 * on the straight line, which the standard allows (from memory).
 *
 * @param voltage - Working voltage, DC or root-mean-square, from 10 V to 1000 V.
 * @param surface - Degree of pollution, group of the material, and whether it is a printed board.
 * @throws InputError for what cannot be used, outside the voltages of the table, and for a printed board that it has not.
 */
export function creepageDistance(voltage: Given<'voltage'>, surface: Surface): Quantity<'length'> {
  const where = 'creepageDistance'
  const volts = siOf(where, 'voltage', 'voltage', voltage)
  refuseUnless(where, 'surface.pollution', [1, 2, 3], surface?.pollution)
  refuseUnless(where, 'surface.material', materialGroups, surface.material)
  refuseBoard(where, 'surface.', surface)
  const points = creepages.map((row) => [row[0], row[columnOf(surface)] as number] as const)
  if (volts >= LOWEST && volts <= HIGHEST) return quantity('length', straightAt(points, volts), 'mm')
  throw refused(where, 'voltage', `a voltage of at least ${LOWEST} V and at most ${HIGHEST} V`, String(voltage))
}

function columnOf({ pollution, material, printed = false }: Surface): number {
  if (printed) return 7 + pollution
  if (pollution === 1) return 1
  return (pollution === 2 ? 2 : 5) + Math.min(2, materialGroups.indexOf(material))
}

function refuseBoard(where: string, before: string, { pollution, material, printed = false }: Surface): void {
  if (!printed) return
  if (pollution === 3) {
    throw refused(where, `${before}pollution`, '1 or 2, as the table of printed boards has nothing for 3', pollution)
  }
  if (pollution === 2 && material === 'IIIb') {
    throw refused(where, `${before}material`, "'I', 'II' or 'IIIa' for a printed board of degree 2", material)
  }
}

/**
 * Least clearance in thin air, which breaks down sooner: above 2000 m it grows as the pressure falls. Creepage does
 * not.
 *
 * `da = d * p0 / p`
 *
 * - `clearance` (`d`, m): least clearance up to 2000 m, at least 0 m
 * - `pressure` (`p`, kPa): pressure of the air, above 0 kPa and at most 80 kPa
 * - gives `da`: least clearance, in mm
 * - `p0` = 80 kPa: pressure of the air at 2000 m (IEC 60664-1, table A.2)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60664-1, table A.2.
 *
 * @example
 * ```ts
 * clearanceAtAltitude({ clearance: '1 mm', pressure: '80 kPa' })
 * // 1 mm
 * // IEC 60664-1, table A.2 (read): 1 mm
 * ```
 */
export const clearanceAtAltitude = /*@__PURE__*/ formula({
  name: 'clearanceAtAltitude',
  title: 'Clearance in thin air',
  inputs: {
    clearance: input('length', 'd', 'Least clearance up to 2000 m', { min: 0 }),
    pressure: input('pressure', 'p', 'Pressure of the air', { above: 0, max: '80 kPa' }),
  },
  result: output('length', 'da', 'Least clearance', 'mm'),
  expression: 'd * p0 / p',
  constants: { p0: constant('pressure', '80 kPa', 'Pressure of the air at 2000 m', cite(WORK, 'table A.2')) },
  source: cite(WORK, 'table A.2'),
  compute: ({ clearance, pressure }, { p0 }) => (clearance * p0) / pressure,
})

/**
 * What the insulation between the mains side of a charger and the chassis withstands for a minute: alternating
 * voltage.
 *
 * `Ut = 2 * (U + U0)`
 *
 * - `mains` (`U`, V): rated voltage of the mains input, at least 0 V
 * - gives `Ut`: test voltage, root-mean-square, for a minute, in V
 * - `U0` = 1200 V: of the test of double insulation (UN Regulation No. 100, charger)
 * - Caution: the test can kill, and can break a charger: it is its maker’s, on a bench. Ask for the report
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 100, withstand voltage of the charger.
 *
 * @example
 * ```ts
 * chargerTestVoltage({ mains: '230 V' })
 * // 2860 V
 * // UN Regulation No. 100, withstand voltage of the charger (recomputed): 2860 V
 * ```
 */
export const chargerTestVoltage = /*@__PURE__*/ formula({
  name: 'chargerTestVoltage',
  title: 'Test voltage of a charger, alternating',
  inputs: { mains: input('voltage', 'U', 'Rated voltage of the mains input', { min: 0 }) },
  result: output('voltage', 'Ut', 'Test voltage, root-mean-square, for a minute'),
  expression: '2 * (U + U0)',
  constants: {
    U0: constant('voltage', '1200 V', 'Of the test of double insulation', cite('UN Regulation No. 100', 'charger')),
  },
  cautions: ['The test can kill, and can break a charger: it is its maker’s, on a bench. Ask for the report.'],
  source: cite('UN Regulation No. 100', 'withstand voltage of the charger'),
  compute: ({ mains }, { U0 }) => 2 * (mains + U0),
})

/**
 * The same test with direct voltage: the peak of the alternating one.
 *
 * `Ut = sqrt(2) * 2 * (U + U0)`
 *
 * - `mains` (`U`, V): rated voltage of the mains input, at least 0 V
 * - gives `Ut`: test voltage, direct, for a minute, in V
 * - `U0` = 1200 V: of the test of double insulation (UN Regulation No. 100, charger)
 * - Caution: the test can kill, and can break a charger: it is its maker’s, on a bench. Ask for the report
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: UN Regulation No. 100, withstand voltage of the charger.
 *
 * @example
 * ```ts
 * chargerTestVoltageDirect({ mains: '230 V' })
 * // 4045 V
 * // UN Regulation No. 100, withstand voltage of the charger (recomputed): 4045 V
 * ```
 */
export const chargerTestVoltageDirect = /*@__PURE__*/ formula({
  name: 'chargerTestVoltageDirect',
  title: 'Test voltage of a charger, direct',
  inputs: { mains: input('voltage', 'U', 'Rated voltage of the mains input', { min: 0 }) },
  result: output('voltage', 'Ut', 'Test voltage, direct, for a minute'),
  expression: 'sqrt(2) * 2 * (U + U0)',
  constants: {
    U0: constant('voltage', '1200 V', 'Of the test of double insulation', cite('UN Regulation No. 100', 'charger')),
  },
  cautions: ['The test can kill, and can break a charger: it is its maker’s, on a bench. Ask for the report.'],
  source: cite('UN Regulation No. 100', 'withstand voltage of the charger'),
  compute: ({ mains }, { U0 }) => Math.SQRT2 * 2 * (mains + U0),
})

/** The distances that some insulation needs. */
export interface InsulationDistances extends Findings {
  /** Through the air; absent where no impulse voltage is known. */
  readonly clearance?: Quantity<'length'>
  /** Along the surface. */
  readonly creepage: Quantity<'length'>
  /** The impulse voltage that it must withstand. */
  readonly impulse?: Quantity<'voltage'>
  readonly material: MaterialGroup
  /** A narrower groove is bridged, and does not count along the surface. */
  readonly grooveWidth: Quantity<'length'>
}

/** What is asked of a distance, beside the working voltage and the altitude. @internal */
export const distanceFields = /*@__PURE__*/ (() => ({
  insulation: choice('What the insulation is', ['basic', 'reinforced']),
  impulse: optional(
    given('voltage', 'Impulse voltage that it must withstand', { above: 0, max: '12 kV', usual: ['330 V', '8 kV'] }),
  ),
  mains: optional(
    group('The mains that it hangs on', {
      toEarth: given('voltage', 'Voltage to earth', { above: 0, max: '1000 V', usual: ['100 V', '400 V'] }),
      category: choice('Overvoltage category: II at a socket, III in the fixed wiring', categories),
    }),
  ),
  pollution: whole('Degree of pollution: 1 sealed, 2 dry dust, 3 damp', {
    min: 1,
    max: 3,
    default: 3,
    because: 'a car is damp and dusty where nothing seals it out',
  }),
  material: optional(choice('Group of the material', materialGroups)),
  trackingIndex: optional(whole('Comparative tracking index of the material, in its place', { min: 100, max: 1000 })),
  printed: flag('Whether it is a printed board', { default: false, because: 'other surfaces need more' }),
  clearance: optional(
    given('length', 'Distance through the air, as measured', { min: 0, usual: ['0.1 mm', '100 mm'] }),
  ),
  creepage: optional(
    given('length', 'Distance along the surface, as measured', { min: 0, usual: ['0.1 mm', '200 mm'] }),
  ),
}))()

const fields = /*@__PURE__*/ (() => ({
  voltage: given('voltage', 'Highest working voltage, DC or root-mean-square', {
    min: '10 V',
    max: '1000 V',
    usual: ['12 V', '450 V'],
  }),
  ...distanceFields,
  altitude: given('length', 'Greatest height above the sea', {
    min: '-500 m',
    max: '7000 m',
    default: '2000 m',
    because: 'the table of clearances holds up to there',
  }),
}))()
type Asked = Read<typeof fields>

/**
 * Finds the least distances through the air and along a surface that insulate a circuit, and holds those that were measured to
 * them. Basic insulation lies between live parts and the chassis; reinforced insulation is all there is between them and a hand.
 *
 * Answers: how far apart must live parts be, through the air and along a surface?
 *
 * - `voltage`: highest working voltage, DC or root-mean-square, in V, at least 10 V and at most 1000 V
 * - `insulation`: what the insulation is, 'basic' or 'reinforced'
 * - `impulse`: impulse voltage that it must withstand, in V, above 0 V and at most 12000 V, optional
 * - `mains`: the mains that it hangs on, optional
 *   - `toEarth`: voltage to earth, in V, above 0 V and at most 1000 V
 *   - `category`: overvoltage category: II at a socket, III in the fixed wiring, 'I' or 'II' or 'III' or 'IV'
 * - `pollution`: degree of pollution: 1 sealed, 2 dry dust, 3 damp, a whole number, at least 1 and at most 3, 3 by
 *   default (a car is damp and dusty where nothing seals it out)
 * - `material`: group of the material, 'I' or 'II' or 'IIIa' or 'IIIb', optional
 * - `trackingIndex`: comparative tracking index of the material, in its place, a whole number, at least 100 and at
 *   most 1000, optional
 * - `printed`: whether it is a printed board, true or false, false by default (other surfaces need more)
 * - `clearance`: distance through the air, as measured, in m, at least 0 m, optional
 * - `creepage`: distance along the surface, as measured, in m, at least 0 m, optional
 * - `altitude`: greatest height above the sea, in m, at least -500 m and at most 7000 m, 2000 m by default (the table
 *   of clearances holds up to there)
 * - always assumed: the clearance is that of an uneven field, as between edges and screws
 * - always assumed: insulation that is moulded or potted has no such distances, and is not judged here
 *
 * @returns Clearance, creepage, the impulse voltage, and checks; what was not measured is `unknown`.
 * @throws InputError for input that cannot be used, by its path: such as an impulse below the working voltage.
 * Source: IEC 60664-1, tables F.1 (from memory), F.2 and A.2, and table F.4 of 2007, F.5 of 2020; IEC 60664-1,
 * reinforced insulation: the next step of impulse, twice the creepage, from memory.
 *
 * @example
 * ```ts
 * const { clearance, creepage, checks } = insulationDistances({
 *   voltage: '403.2 V',
 *   impulse: '2.5 kV',
 *   insulation: 'basic',
 *   pollution: 2,
 *   material: 'IIIa',
 *   clearance: '6 mm',
 * })
 * String(clearance) // '1.5 mm'
 * String(creepage) // '4.032 mm'
 * checks.map(({ verdict }) => verdict) // ['pass', 'unknown']
 * ```
 */
export const insulationDistances = /*@__PURE__*/ procedure({
  name: 'insulationDistances',
  title: 'Distances that insulate',
  answers: 'How far apart must live parts be, through the air and along a surface?',
  input: fields,
  source: [
    cite(WORK, `tables F.1 (from memory), F.2 and A.2, and ${CREEPAGE}`),
    cite(WORK, 'reinforced insulation: the next step of impulse, twice the creepage, from memory'),
  ],
  assumes: [
    'The clearance is that of an uneven field, as between edges and screws.',
    'Insulation that is moulded or potted has no such distances, and is not judged here.',
  ],
  work: (asked): Unfinished<InsulationDistances> => {
    const pollution = asked.pollution as PollutionDegree
    const [material, ofMaterial] = materialOf(asked)
    const surface = { pollution, material, printed: asked.printed }
    refuseBoard('insulationDistances', '', surface)
    const impulse = impulseOf(asked)
    const clearance = impulse === undefined ? undefined : clearanceOf(asked, impulse, pollution)
    const alone = creepageDistance(asked.voltage, surface)
    const doubled = asked.insulation === 'reinforced' ? alone.times(2) : alone
    const creepage = clearance !== undefined && clearance.si > doubled.si ? clearance : doubled
    return {
      ...(clearance === undefined ? {} : { clearance }),
      creepage,
      ...(impulse === undefined ? {} : { impulse }),
      material,
      grooveWidth: quantity('length', grooves[pollution], 'mm'),
      checks: [
        clearanceTrial(asked, clearance, impulse),
        creepageTrial(asked, creepage, clearance === undefined),
        ...materialTrial(asked, material),
      ],
      assumptions: [...ofMaterial, ...lineTold(asked.voltage)],
      cautions: [highVoltage],
    }
  },
})

/** The group of the material; where nobody states it, the least. */
function materialOf({ material, trackingIndex }: Asked): readonly [MaterialGroup, readonly Assumption[]] {
  if (material !== undefined && trackingIndex !== undefined && materialGroup(trackingIndex) !== material) {
    const expected = `group ${materialGroup(trackingIndex)}, which its tracking index of ${trackingIndex} tells`
    throw refused('insulationDistances', 'material', expected, material)
  }
  if (material !== undefined) return [material, []]
  if (trackingIndex !== undefined) return [materialGroup(trackingIndex), []]
  return [
    'IIIb',
    [assumed('distance.material', 'The material is of group IIIb, the least (material and trackingIndex not given).')],
  ]
}

/** The impulse that it must withstand: the greater of what is stated and what the mains bring. */
function impulseOf(asked: Asked): Quantity<'voltage'> | undefined {
  const { voltage, impulse: stated, mains } = asked
  const brought = mains === undefined ? undefined : ratedImpulse(mains.toEarth, mains.category)
  const impulse = stated === undefined || (brought !== undefined && brought.si > stated.si) ? brought : stated
  if (impulse === undefined || impulse.si >= voltage.si) return impulse
  throw refused('insulationDistances', impulsePath(asked), `at least the working voltage, ${voltage}`, String(impulse))
}

/** Where the impulse comes from. */
function impulsePath({ impulse }: Asked): string {
  return impulse === undefined ? 'mains' : 'impulse'
}

function clearanceOf(asked: Asked, impulse: Quantity<'voltage'>, pollution: PollutionDegree): Quantity<'length'> {
  const withstood = asked.insulation === 'basic' ? impulse : stepAfter(asked, impulse)
  const clearance = clearanceDistance(withstood, pollution)
  const row = stepAt(pressures, asked.altitude.si)
  const pressure = quantity('pressure', row?.[1] ?? Number.NaN, 'kPa')
  return asked.altitude.si <= 2000 ? clearance : clearanceAtAltitude({ clearance, pressure })
}

/** The step of rated impulse after the one that an impulse reaches. */
function stepAfter(asked: Asked, impulse: Quantity<'voltage'>): Quantity<'voltage'> {
  const reached = clearances.findIndex(([step]) => impulse.si <= step * 1000 * (1 + 1e-12))
  const next = clearances[reached + 1]
  if (next !== undefined) return quantity('voltage', next[0], 'kV')
  const expected = 'an impulse of at most 8 kV for reinforced insulation, as the steps end at 12 kV'
  throw refused('insulationDistances', impulsePath(asked), expected, String(impulse))
}

const NAME = { clearance: 'Distance through the air', creepage: 'Distance along the surface' } as const

function clearanceTrial(
  { clearance: measured, insulation }: Asked,
  least: Quantity<'length'> | undefined,
  impulse: Quantity<'voltage'> | undefined,
): Check {
  const told = (): Told => {
    if (least === undefined || impulse === undefined) {
      return { unknown: 'what impulse voltage it must withstand is not known: give impulse, or mains' }
    }
    if (measured === undefined) {
      return {
        unknown: `at least ${least} through the air is needed, and how far it is was not measured: give clearance`,
      }
    }
    return says`${measured} through the air (${insulation} insulation, impulse of ${impulse}), at least the ${least} that is needed`
  }
  return trial('distance.clearance', NAME.clearance, told(), `${WORK}, table F.2`, 'clearance', 'impulse', 'mains')
}

function creepageTrial({ creepage: measured, voltage }: Asked, least: Quantity<'length'>, isLess: boolean): Check {
  const told: Told =
    measured === undefined
      ? { unknown: `at least ${least} along the surface is needed, and how far it is was not measured: give creepage` }
      : says`${measured} along the surface (working voltage ${voltage}), at least the ${least} that is needed`
  const held = trial('distance.creepage', NAME.creepage, told, `${WORK}, ${CREEPAGE}`, 'creepage', 'voltage')
  const lacks = 'it may not be less than the clearance, for which no impulse voltage is known: give impulse, or mains'
  return unlessUnknown(held, isLess ? lacks : undefined)
}

/** Whether the material may lie in the damp at such a voltage at all. */
function materialTrial({ voltage, pollution }: Asked, material: MaterialGroup): Check[] {
  if (material !== 'IIIb' || pollution !== 3) return []
  const says: Told =
    voltage.si > LEAST_MATERIAL
      ? { fail: `a material of group IIIb is not for more than ${LEAST_MATERIAL} V where it is damp` }
      : { pass: `a material of group IIIb serves up to ${LEAST_MATERIAL} V where it is damp` }
  return [trial('distance.material', 'Material in the damp', says, `${WORK}, ${CREEPAGE}, from memory`, 'material')]
}

/** That a creepage lies between two rows, where it does. */
function lineTold(voltage: Quantity<'voltage'>): Assumption[] {
  if (creepages.some(([row]) => row === voltage.si)) return []
  const after = creepages.findIndex(([row]) => row > voltage.si)
  const [low, high] = [creepages[after - 1]?.[0], creepages[after]?.[0]]
  return [
    assumed('distance.line', `The creepage lies on the straight line between the rows of ${low} V and ${high} V.`),
  ]
}
