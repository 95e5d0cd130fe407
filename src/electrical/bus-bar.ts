/**
 * Flat copper bars: what they carry, how they are joined, what bars, joints and fuses lose.
 *
 * Rests on DIN 43671 (continuous current of bars) and DIN 43673 (joints), both as quoted by others: of DIN 43671 the rows 12 × 5,
 * 20 × 5, 30 × 5, 40 × 5, 20 × 10, 40 × 10 and 60 × 10 mm were read, the current of 50 × 10 and 100 × 5 mm bare too, and of two
 * bars 20 × 5, 40 × 10 and 60 × 10 mm; the others are from memory. Contact by R. Holm, Electric Contacts (1967); bolts by
 * VDI 2230 and ISO 898-1, from memory.
 */
import { cite, constant, definition, formula, input, output, section } from '../formula/index.js'
import { shortCircuit } from '../procedure/cautions.js'
import {
  assumed,
  type Check,
  choice,
  type Findings,
  firstThatServes,
  given,
  group,
  type Judged,
  list,
  optional,
  procedure,
  type Read,
  type Rejected,
  rejectedAs,
  says,
  type Told,
  trial,
  type Unfinished,
  whole,
} from '../procedure/index.js'
import { InputError } from '../quantity/errors.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { HOT_DAY } from './cable/course.js'
import { jouleHeat } from './pack/pack.js'

const DIN = 'DIN 43671'
const copper = {
  resistivity: { default: '0.017241 Ω·mm²/m', because: 'annealed copper at 20 °C, IEC 60028' },
  coefficient: { default: '0.00393 1/K', because: 'annealed copper, IEC 60028' },
} as const

/**
 * Resistance of a flat bar from end to end, without its joints.
 *
 * `R = rho * (1 + a * (T - T20)) * l / (w * t)`
 *
 * - `length` (`l`, m): length of the bar, at least 0 m
 * - `width` (`w`, m): width, above 0 m
 * - `thickness` (`t`, m): thickness, of all bars side by side, above 0 m
 * - `temperature` (`T`, °C): temperature of the bar, at least -60 °C and at most 250 °C
 * - `resistivity` (`rho`, Ω·m): resistivity at 20 °C, above 0 Ω·m, 0.01724 Ω·mm²/m unless given
 * - `coefficient` (`a`, 1/K): temperature coefficient of resistance at 20 °C, at least 0 1/K and at most 0.01 1/K,
 *   0.00393 1/K unless given
 * - gives `R`: resistance of the bar, in µΩ
 * - `T20` = 20 °C: temperature of the resistivity (IEC 60028)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * barResistance({ length: '1 m', width: '20 mm', thickness: '5 mm', temperature: '65 °C' })
 * // 202.9 µΩ
 * // DIN 43671, heat of 274 A in a bar of 20 mm × 5 mm, 15.23 W/m (recomputed): 0.0002028611 Ω
 * ```
 */
export const barResistance = /*@__PURE__*/ formula({
  name: 'barResistance',
  title: 'Resistance of a flat bar',
  inputs: {
    length: input('length', 'l', 'Length of the bar', { min: 0 }),
    width: input('length', 'w', 'Width', { above: 0 }),
    thickness: input('length', 't', 'Thickness, of all bars side by side', { above: 0 }),
    temperature: input('temperature', 'T', 'Temperature of the bar', { min: '-60 °C', max: '250 °C' }),
    resistivity: input('resistivity', 'rho', 'Resistivity at 20 °C', { above: 0, ...copper.resistivity }),
    coefficient: input('temperatureCoefficient', 'a', 'Temperature coefficient of resistance at 20 °C', {
      min: 0,
      max: '0.01 1/K',
      ...copper.coefficient,
    }),
  },
  result: output('resistance', 'R', 'Resistance of the bar', 'µΩ'),
  expression: 'rho * (1 + a * (T - T20)) * l / (w * t)',
  constants: { T20: constant('temperature', '20 °C', 'Temperature of the resistivity', cite('IEC 60028')) },
  source: definition,
  compute: ({ length, width, thickness, temperature, resistivity, coefficient }, { T20 }) =>
    (resistivity * (1 + coefficient * (temperature - T20)) * length) / (width * thickness),
})

/**
 * What a bar carries at another rise than the 30 K of its table. The exponent is that of the published currents at a
 * rise of 50 K; below 20 K and above 65 K nothing was found to hold it against.
 *
 * `I = I0 * (dT / dT0)^0.551`
 *
 * - `rated` (`I0`, A): continuous current at a rise of 30 K, at least 0 A
 * - `rise` (`dT`, K): rise of the bar above the air, at least 20 K and at most 65 K
 * - gives `I`: continuous current at the rise, in A
 * - `dT0` = 30 K: rise of the table, 35 °C to 65 °C (DIN 43671)
 * - Assumes: the bar stands on edge in still air, by itself
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: DIN 43671, currents at a rise of 50 K, as quoted by two others.
 *
 * @example
 * ```ts
 * barAmpacityAtRise({ rated: '852 A', rise: '50 K' })
 * // 1129 A
 * // DIN 43671, bars of 50 × 10 and 100 × 5 mm at a rise of 50 K, as quoted (read): 1129 A
 * ```
 */
export const barAmpacityAtRise = /*@__PURE__*/ formula({
  name: 'barAmpacityAtRise',
  title: 'Continuous current of a bar at a rise',
  inputs: {
    rated: input('current', 'I0', 'Continuous current at a rise of 30 K', { min: 0 }),
    rise: input('temperatureDifference', 'dT', 'Rise of the bar above the air', { min: '20 K', max: '65 K' }),
  },
  result: output('current', 'I', 'Continuous current at the rise'),
  expression: 'I0 * (dT / dT0)^0.551',
  constants: { dT0: constant('temperatureDifference', '30 K', 'Rise of the table, 35 °C to 65 °C', cite(DIN)) },
  assumes: ['The bar stands on edge in still air, by itself.'],
  source: cite(DIN, 'currents at a rise of 50 K, as quoted by two others'),
  compute: ({ rated, rise }, { dT0 }) => rated * (rise / dT0) ** 0.551,
})

/**
 * Resistance of a bolted contact: the current is squeezed through the spots that the force presses flat. Clean faces
 * only; a film of oxide, paint or grease adds to it, and may be all of it.
 *
 * `R = rho / 2 * sqrt(pi * H / F)`
 *
 * - `force` (`F`, N): force of all bolts together, above 0 N
 * - `resistivity` (`rho`, Ω·m): resistivity of the metal, above 0 Ω·m, 0.01724 Ω·mm²/m unless given
 * - `hardness` (`H`, kPa): hardness of the softer face, above 0 kPa, 1000 MPa unless given
 * - gives `R`: resistance of the contact, in µΩ
 * - Assumes: the faces are clean and flat
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: R. Holm, Electric Contacts (1967), constriction resistance, from memory.
 *
 * @example
 * ```ts
 * jointResistance({ force: '10 kN' })
 * // 4.832 µΩ
 * // R. Holm, Electric Contacts (1967), constriction resistance, copper of 1 GPa (from memory): 4.8 µΩ
 * ```
 */
export const jointResistance = /*@__PURE__*/ formula({
  name: 'jointResistance',
  title: 'Resistance of a bolted contact',
  inputs: {
    force: input('force', 'F', 'Force of all bolts together', { above: 0 }),
    resistivity: input('resistivity', 'rho', 'Resistivity of the metal', { above: 0, ...copper.resistivity }),
    hardness: input('pressure', 'H', 'Hardness of the softer face', {
      above: 0,
      default: '1000 MPa',
      because: 'hard copper, from memory',
    }),
  },
  result: output('resistance', 'R', 'Resistance of the contact', 'µΩ'),
  expression: 'rho / 2 * sqrt(pi * H / F)',
  assumes: ['The faces are clean and flat.'],
  source: cite('R. Holm, Electric Contacts (1967)', 'constriction resistance, from memory'),
  compute: ({ force, resistivity, hardness }) => (resistivity / 2) * Math.sqrt((Math.PI * hardness) / force),
})

/**
 * Force with which a bolt presses at a torque: most of the torque is lost in friction, and oil lets it press much
 * harder.
 *
 * `F = M / (0.16 * P + 0.58 * (d - 0.6495 * P) * mu + Dk * mu / 2)`
 *
 * - `torque` (`M`, N·m): tightening torque, at least 0 N·m
 * - `friction` (`mu`, a plain number): coefficient of friction of thread and head, at least 0 and at most 1
 * - `diameter` (`d`, m): diameter of the thread, above 0 m
 * - `pitch` (`P`, m): pitch of the thread, above 0 m
 * - `bearing` (`Dk`, m): mean diameter under the head, above 0 m
 * - gives `F`: preload, in kN
 * - holds where pitch / diameter is at most 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: VDI 2230, torque of a bolt, from memory.
 *
 * @example
 * ```ts
 * boltPreload({ torque: '25.3 N·m', friction: 0.12, diameter: '8 mm', pitch: '1.25 mm', bearing: '11 mm' })
 * // 18.6 kN
 * // VDI 2230, M8 of class 8.8 at 90 % of its yield stress (recomputed): 18.6 kN
 * ```
 */
export const boltPreload = /*@__PURE__*/ formula({
  name: 'boltPreload',
  title: 'Preload of a bolt',
  inputs: {
    torque: input('torque', 'M', 'Tightening torque', { min: 0 }),
    friction: input('ratio', 'mu', 'Coefficient of friction of thread and head', { min: 0, max: 1 }),
    diameter: input('length', 'd', 'Diameter of the thread', { above: 0 }),
    pitch: input('length', 'P', 'Pitch of the thread', { above: 0 }),
    bearing: input('length', 'Dk', 'Mean diameter under the head', { above: 0 }),
  },
  result: output('force', 'F', 'Preload', 'kN'),
  expression: 'M / (0.16 * P + 0.58 * (d - 0.6495 * P) * mu + Dk * mu / 2)',
  valid: [{ of: 'pitch / diameter', value: ({ pitch, diameter }) => pitch / diameter, max: 1 }],
  source: cite('VDI 2230', 'torque of a bolt, from memory'),
  compute: ({ torque, friction, diameter, pitch, bearing }) =>
    torque / (0.16 * pitch + 0.58 * (diameter - 0.6495 * pitch) * friction + (bearing * friction) / 2),
})

/**
 * How much longer a bar gets as it warms. Between two parts that stand firm it pushes at its joints: let one end
 * give.
 *
 * `dl = a * l * dT`
 *
 * - `length` (`l`, m): length of the bar, at least 0 m
 * - `rise` (`dT`, K): how much it warms, at least 0 K
 * - `coefficient` (`a`, 1/K): coefficient of linear expansion, at least 0 1/K, 0.000017 1/K unless given
 * - gives `dl`: expansion, in mm
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * barExpansion({ length: '1275 m', rise: '55 K', coefficient: '12e-6 1/K' })
 * // 841.5 mm
 * // OpenStax, College Physics, example on the expansion of a bridge (from memory): 0.84 m
 * ```
 */
export const barExpansion = /*@__PURE__*/ formula({
  name: 'barExpansion',
  title: 'Expansion of a bar',
  inputs: {
    length: input('length', 'l', 'Length of the bar', { min: 0 }),
    rise: input('temperatureDifference', 'dT', 'How much it warms', { min: 0 }),
    coefficient: input('temperatureCoefficient', 'a', 'Coefficient of linear expansion', {
      min: 0,
      default: '17e-6 1/K',
      because: 'copper, OpenStax, College Physics, table 13.2, from memory',
    }),
  },
  result: output('length', 'dl', 'Expansion', 'mm'),
  expression: 'a * l * dT',
  source: definition,
  compute: ({ length, rise, coefficient }) => coefficient * length * rise,
})

/**
 * Heat of a fuse off its rating, at most: a link that is cooler resists less.
 *
 * `P = Pn * (I / In)^2`
 *
 * - `ratedLoss` (`Pn`, kW): heat at its rating, from its sheet, at least 0 kW
 * - `current` (`I`, A): current through it, at least 0 A
 * - `rating` (`In`, A): rating of the fuse, above 0 A
 * - gives `P`: heat of the fuse, at most, in W
 * - holds where current / rating is at most 1
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: by definition.
 *
 * @example
 * ```ts
 * fuseLoss({ ratedLoss: '12 W', current: '120 A', rating: '160 A' })
 * // 6.75 W
 * // IEC 60269-2, greatest loss of a gG link of size 00, 160 A (from memory): 6.75 W
 * ```
 */
export const fuseLoss = /*@__PURE__*/ formula({
  name: 'fuseLoss',
  title: 'Heat of a fuse',
  inputs: {
    ratedLoss: input('power', 'Pn', 'Heat at its rating, from its sheet', { min: 0 }),
    current: input('current', 'I', 'Current through it', { min: 0 }),
    rating: input('current', 'In', 'Rating of the fuse', { above: 0 }),
  },
  result: output('power', 'P', 'Heat of the fuse, at most', 'W'),
  expression: 'Pn * (I / In)^2',
  valid: [{ of: 'current / rating', value: ({ current, rating }) => current / rating, max: 1 }],
  source: definition,
  compute: ({ ratedLoss, current, rating }) => ratedLoss * (current / rating) ** 2,
})

/** What DIN 43671 gives for a bar: mm, mm, A bare, A painted, A of two bars side by side, bare. */
const rows: readonly (readonly [width: number, thickness: number, bare: number, painted: number, two?: number])[] = [
  [12, 2, 108, 123],
  [15, 2, 128, 148],
  [15, 3, 162, 187],
  [12, 5, 177, 203],
  [20, 3, 204, 237],
  [25, 3, 245, 287],
  [30, 3, 285, 337],
  [20, 5, 274, 319, 500],
  [25, 5, 327, 384],
  [30, 5, 379, 447],
  [20, 10, 427, 497],
  [40, 5, 482, 573],
  [50, 5, 583, 697],
  [30, 10, 573, 676],
  [60, 5, 688, 826],
  [40, 10, 715, 850, 1290],
  [80, 5, 885, 1070],
  [50, 10, 852, 1020],
  [100, 5, 1080, 1300],
  [60, 10, 985, 1180, 1720],
]

/** A flat bar of copper. */
export interface FlatBar {
  readonly width: Quantity<'length'>
  readonly thickness: Quantity<'length'>
  /** Continuous current at 35 °C in the air and 65 °C in the bar: bare, painted, and of two bare bars a thickness apart. */
  readonly bare: Quantity<'current'>
  readonly painted: Quantity<'current'>
  readonly two?: Quantity<'current'>
}

/** The bars of DIN 43671 up to 600 mm², the smallest section first. */
export const flatBars: readonly FlatBar[] = /*@__PURE__*/ (() =>
  rows
    .toSorted((one, other) => one[0] * one[1] - other[0] * other[1] || one[2] - other[2])
    .map(([width, thickness, bare, painted, two]) => ({
      width: quantity('length', width, 'mm'),
      thickness: quantity('length', thickness, 'mm'),
      bare: quantity('current', bare, 'A'),
      painted: quantity('current', painted, 'A'),
      ...(two === undefined ? {} : { two: quantity('current', two, 'A') }),
    })))()

/** The torques that are in print, N·m dry, for bolts of class 8.8. They differ by a quarter: name the one you use. */
const torques = {
  'DIN 43673': { M5: undefined, M6: 8, M8: 20, M10: 40, M12: 70 },
  'machine handbook': { M5: undefined, M6: 9.5, M8: 23, M10: 46, M12: 79 },
} as const
/** The thread of a bolt. */
export type Bolt = 'M5' | 'M6' | 'M8' | 'M10' | 'M12'

/** Threads of ISO 261 and heads of ISO 4014 (from memory), mm: diameter, pitch, stress area, hole, mean diameter under the head. */
const threads: { readonly [bolt in Bolt]: readonly [number, number, number, number, number] } = {
  M5: [5, 0.8, 14.2, 5.5, 6.75],
  M6: [6, 1, 20.1, 6.6, 8.3],
  M8: [8, 1.25, 36.6, 9, 11],
  M10: [10, 1.5, 58, 11, 13.5],
  M12: [12, 1.75, 84.3, 13.5, 15.75],
}

/** Greatest current, A, of a stud that does not carry it itself, by its thread (a maker of terminal boards). */
const studs: { readonly [bolt in Bolt]: number } = { M5: 75, M6: 125, M8: 150, M10: 200, M12: 350 }

/** A bolt of a joint or a lug. */
export interface JointBolt {
  readonly diameter: Quantity<'length'>
  readonly pitch: Quantity<'length'>
  readonly stressArea: Quantity<'area'>
  /** The hole in bar or lug. */
  readonly hole: Quantity<'length'>
  /** Mean diameter under its head. */
  readonly bearing: Quantity<'length'>
  /** Torque of a dry bolt of class 8.8, as DIN 43673 is quoted, and as a machine handbook is. */
  readonly torques: { readonly [set in keyof typeof torques]?: Quantity<'torque'> }
  /** For a lug on a stud that does not carry the current itself: the most that a maker of terminal boards allows. */
  readonly studCurrent: Quantity<'current'>
}

/** Bolts by their threads, each with its torques and what a lug on such a stud carries. */
export const jointBolts: { readonly [bolt in Bolt]: JointBolt } = /*@__PURE__*/ (() =>
  Object.fromEntries(
    Object.entries(threads).map(([name, [diameter, pitch, area, hole, bearing]]) => [
      name,
      {
        diameter: quantity('length', diameter, 'mm'),
        pitch: quantity('length', pitch, 'mm'),
        stressArea: quantity('area', area, 'mm²'),
        hole: quantity('length', hole, 'mm'),
        bearing: quantity('length', bearing, 'mm'),
        torques: Object.fromEntries(
          Object.entries(torques).flatMap(([set, of]) => {
            const torque = of[name as Bolt]
            return torque === undefined ? [] : [[set, quantity('torque', torque, 'N·m')]]
          }),
        ),
        studCurrent: quantity('current', studs[name as Bolt], 'A'),
      },
    ]),
  ) as never)()

/** What is found of a bar. */
export interface SizedBar extends Findings {
  /** The bar, such as `20 × 5 mm`; absent where none serves. */
  readonly name?: string
  readonly ampacity?: Quantity<'current'>
  /** End to end at its limit, without the joints. */
  readonly resistance?: Quantity<'resistance'>
  /** Of one joint, clean. */
  readonly jointResistance?: Quantity<'resistance'>
  /** Of the bar and of both joints, at the current. */
  readonly loss?: Quantity<'power'>
  readonly jointLoss?: Quantity<'power'>
  /** How much longer the bar gets up to its limit. */
  readonly expansion: Quantity<'length'>
  /** Force of each bolt. */
  readonly preload?: Quantity<'force'>
  readonly rejected: readonly Rejected[]
}

const boltNames = ['M6', 'M8', 'M10', 'M12'] as const

/** What is asked of the joints of a bar. @internal */
export const endFields = /*@__PURE__*/ (() => ({
  bolt: choice('Thread of the bolts', boltNames),
  bolts: whole('Bolts in a joint', { min: 1, max: 6, default: 1, because: 'a bar of up to 40 mm has one' }),
  torque: optional(given('torque', 'Torque of each bolt', { above: 0, usual: ['2 N·m', '100 N·m'] })),
  torques: choice('The published torques that it is held to', ['DIN 43673', 'machine handbook'], {
    default: 'DIN 43673',
    because: 'it is for bars; published sets differ by a quarter',
  }),
  friction: given('ratio', 'Coefficient of friction', {
    min: '5 %',
    max: '50 %',
    default: 0.12,
    because: 'VDI 2230 for bolts as they are delivered, from memory',
  }),
  measured: optional(
    list(
      'Resistances of like joints, as measured',
      given('resistance', 'Resistance of a joint', { above: 0, usual: ['0.5 µΩ', '500 µΩ'] }),
      { least: 2 },
    ),
    { absent: 'The joints were not measured against each other: give ends.measured.' },
  ),
}))()

/** The joints of a bar, in words. @internal */
export const ENDS = 'The joints at both ends, with dry bolts of class 8.8'
/** What is told without them. @internal */
export const endless = { absent: 'The joints of the bar are not judged: give ends.' }

/** What is asked of a bar. @internal */
export const barFields = /*@__PURE__*/ (() => ({
  current: given('current', 'Current, all day', { above: 0, usual: ['10 A', '800 A'] }),
  ambient: given('temperature', 'Temperature of the air around it', {
    min: '-40 °C',
    max: '105 °C',
    usual: ['-20 °C', '85 °C'],
    finest: '0.1 °C',
    ...HOT_DAY,
  }),
  limit: given('temperature', 'Highest temperature of the bar', {
    min: '0 °C',
    max: '130 °C',
    usual: ['50 °C', '120 °C'],
    default: '75 °C',
    because: 'terminals and fuses that it is bolted to commonly bear no more, common practice, no source',
  }),
  length: given('length', 'Length between its joints', { above: 0, usual: ['20 mm', '2 m'], finest: '1 mm' }),
  finish: choice('Its surface', ['bare', 'painted'], { default: 'bare', because: 'a bare bar carries less' }),
  count: whole('Bars side by side, a thickness apart', {
    min: 1,
    max: 2,
    default: 1,
    because: 'one is usual in a light car',
  }),
  ends: optional(group(ENDS, endFields), endless),
  candidates: optional(
    list(
      'The bars to choose from, in their order',
      group('A flat bar of copper', {
        width: given('length', 'Width', { above: 0, usual: ['5 mm', '120 mm'] }),
        thickness: given('length', 'Thickness', { above: 0, usual: ['1 mm', '12 mm'] }),
      }),
      { least: 1 },
    ),
    { absent: 'The bars of DIN 43671 up to 600 mm² are tried, the smallest first.' },
  ),
}))()
type Asked = Read<typeof barFields>
type Ends = NonNullable<Asked['ends']>

const nameOf = ({ width, thickness }: Pick<FlatBar, 'width' | 'thickness'>) =>
  `${width.in('mm')} × ${thickness.as('mm')}`

/**
 * Chooses a flat bar of copper for a current, and judges its joints: whether they are tight enough, whether a bolt bears its
 * torque, and what is lost in them. A bar that the table does not have is refused, as nothing tells what it carries.
 *
 * Answers: which flat copper bar carries a current, and are its joints tight?
 *
 * - `current`: current, all day, in A, above 0 A
 * - `ambient`: temperature of the air around it, in °C, at least -40 °C and at most 105 °C, 40 °C by default (a hot
 *   day, common practice, no source)
 * - `limit`: highest temperature of the bar, in °C, at least 0 °C and at most 130 °C, 75 °C by default (terminals and
 *   fuses that it is bolted to commonly bear no more, common practice, no source)
 * - `length`: length between its joints, in m, above 0 m
 * - `finish`: its surface, 'bare' or 'painted', bare by default (a bare bar carries less)
 * - `count`: bars side by side, a thickness apart, a whole number, at least 1 and at most 2, 1 by default (one is
 *   usual in a light car)
 * - `ends`: the joints at both ends, with dry bolts of class 8.8, optional
 *   - `bolt`: thread of the bolts, 'M6' or 'M8' or 'M10' or 'M12'
 *   - `bolts`: bolts in a joint, a whole number, at least 1 and at most 6, 1 by default (a bar of up to 40 mm has one)
 *   - `torque`: torque of each bolt, in N·m, above 0 N·m, optional
 *   - `torques`: the published torques that it is held to, 'DIN 43673' or 'machine handbook', DIN 43673 by default (it
 *     is for bars; published sets differ by a quarter)
 *   - `friction`: coefficient of friction, a plain number, at least 0.05 and at most 0.5, 0.12 by default (VDI 2230 for
 *     bolts as they are delivered, from memory)
 *   - `measured`: resistances of like joints, as measured, a list of at least 2, each in mΩ, each above 0 mΩ, optional
 * - `candidates`: the bars to choose from, in their order, a list of at least 1, optional
 *   - `width`: width, in m, above 0 m
 *   - `thickness`: thickness, in m, above 0 m
 * - always assumed: the bar stands on edge in still air that is as warm all along it; in a closed box that air is
 *   warmer than outside
 * - always assumed: the bar is of copper; the current is direct
 * - always assumed: where a part states the torque of its terminal, that torque comes first
 *
 * @returns The bar with its current, resistance, losses and expansion, why others do not serve, and checks.
 * @throws InputError for input that cannot be used, by its path; so for a rise below 20 K or above 65 K.
 * Source: DIN 43671, continuous currents, as quoted by others; part of the rows from memory; DIN 43673, torques, as
 * quoted; R. Holm, Electric Contacts (1967), from memory; ISO 898-1, proof stress of class 8.8, from memory.
 *
 * @example
 * ```ts
 * const { name, ampacity, jointResistance, checks } = sizeBar({
 *   current: '250 A',
 *   length: '300 mm',
 *   ends: { bolt: 'M8', torque: '20 N·m' },
 * })
 * name // '25 × 3 mm'
 * String(ampacity) // '266.7 A'
 * String(jointResistance) // '3.985 µΩ'
 * checks.map(({ verdict }) => verdict) // ['pass', 'pass', 'pass']
 * ```
 */
export const sizeBar = /*@__PURE__*/ procedure({
  name: 'sizeBar',
  title: 'A bus bar and its joints',
  answers: 'Which flat copper bar carries a current, and are its joints tight?',
  input: barFields,
  source: [
    cite(DIN, 'continuous currents, as quoted by others; part of the rows from memory'),
    cite('DIN 43673', 'torques, as quoted'),
    cite('R. Holm, Electric Contacts (1967)', 'from memory'),
    cite('ISO 898-1', 'proof stress of class 8.8, from memory'),
  ],
  assumes: [
    'The bar stands on edge in still air that is as warm all along it; in a closed box that air is warmer than outside.',
    'The bar is of copper; the current is direct.',
    'Where a part states the torque of its terminal, that torque comes first.',
  ],
  work: (asked): Unfinished<SizedBar> => {
    const rise = riseOf(asked)
    const offered =
      asked.candidates?.map((each, i) => rowOf(each, i)) ?? flatBars.filter((bar) => has(bar, asked.count))
    const { chosen, rejected } = firstThatServes(offered, (bar) => judged(bar, asked, rise))
    const joint = asked.ends === undefined ? undefined : section('Joints', () => jointOf(asked.ends as Ends))
    const jointLoss = joint?.resistance && jouleHeat({ current: asked.current, resistance: joint.resistance }).times(2)
    return {
      ...(chosen === undefined
        ? {}
        : {
            name: chosen.name,
            ...chosen.made,
            loss: jouleHeat({ current: asked.current, resistance: chosen.made.resistance }),
          }),
      ...(joint?.resistance === undefined ? {} : { jointResistance: joint.resistance }),
      ...(jointLoss === undefined ? {} : { jointLoss }),
      expansion: barExpansion({ length: asked.length, rise }),
      ...(joint?.preload === undefined ? {} : { preload: joint.preload }),
      rejected: rejected.map(rejectedAs),
      checks: [servesTrial(asked.current, chosen, rejected), ...(joint?.checks ?? [])],
      assumptions: [
        assumed('bar.ends', 'One end of the bar can give as it warms, or is joined by a flexible link.'),
        ...(asked.ends === undefined
          ? []
          : [
              assumed(
                'bar.torques',
                `Torques are those of ${wordsOf(asked.ends.torques)}: published sets differ by a quarter.`,
              ),
            ]),
      ],
      cautions: [shortCircuit],
    }
  },
})

const wordsOf = (set: keyof typeof torques) => (set === 'DIN 43673' ? set : `a ${set}`)

function refused(path: string, expected: string, received: string): InputError {
  return new InputError('sizeBar', [{ path, expected, received }])
}

function riseOf({ ambient, limit }: Asked): Quantity<'temperatureDifference'> {
  const rise = limit.minus(ambient)
  if (rise.in('K') >= 20 && rise.in('K') <= 65) return rise
  const expected = `20 K to 65 K more than ambient, ${ambient}: for other rises no current is published`
  throw refused('limit', expected, String(limit))
}

const ampacityIn = (bar: FlatBar, finish: Asked['finish'], count: number) =>
  count === 2 ? (finish === 'bare' ? bar.two : undefined) : bar[finish]
const has = (bar: FlatBar, count: number) => count === 1 || bar.two !== undefined

/** The row of the table for a bar. */
function rowOf({ width, thickness }: NonNullable<Asked['candidates']>[number], i: number): FlatBar {
  const isLike = (one: Quantity<'length'>, other: Quantity<'length'>) => Math.abs(one.si / other.si - 1) < 1e-9
  const found = flatBars.find((bar) => isLike(bar.width, width) && isLike(bar.thickness, thickness))
  if (found !== undefined) return { ...found, width, thickness }
  const expected = `a bar of the table: ${flatBars.map(nameOf).join(', ')}`
  throw refused(`candidates[${i}]`, expected, nameOf({ width, thickness }))
}

/** A bar as it serves, or why it does not. */
interface Carried {
  readonly ampacity: Quantity<'current'>
  readonly resistance: Quantity<'resistance'>
}

function judged(bar: FlatBar, asked: Asked, rise: Quantity<'temperatureDifference'>): Judged<Carried> {
  const { current, length, limit, count, finish, ends } = asked
  const rated = ampacityIn(bar, finish, count)
  if (rated === undefined) {
    const has = count === 2 && finish === 'painted' ? 'two painted bars' : `two bars of ${nameOf(bar)}`
    throw refused('count', `1, as the table has no ${has}`, String(count))
  }
  const ampacity = barAmpacityAtRise({ rated, rise })
  const resistance = barResistance({
    length,
    width: bar.width,
    thickness: bar.thickness.times(count),
    temperature: limit,
  })
  const carries = says`${ampacity} all day, at least the ${current} that flow`
  return {
    name: count === 2 ? `2 × ${nameOf(bar)}` : nameOf(bar),
    checks: [
      trial('bar.ampacity', 'Current of the bar', carries, DIN, 'current', 'ambient', 'limit'),
      ...(ends === undefined ? [] : [holeTrial(bar, ends)]),
    ],
    made: { ampacity, resistance },
  }
}

/** A hole takes section from the bar, and the face around it is what carries. */
function holeTrial({ width }: FlatBar, { bolt }: Ends): Check {
  const { hole } = jointBolts[bolt]
  const holds = says`a hole of ${hole} for ${bolt}, at most half its width, ${width.times(0.5)}`
  return trial('bar.hole', 'Hole in the bar', holds, 'common practice, no source', 'ends.bolt')
}

function servesTrial(
  current: Quantity<'current'>,
  chosen: Judged<Carried> | undefined,
  rejected: readonly Judged<Carried>[],
): Check {
  const why = rejected
    .slice(-1)
    .map((last) => `; ${last.name}, the last of them: ${rejectedAs(last).reasons.join('; ')}`)
  const told: Told =
    chosen === undefined
      ? { fail: `no bar serves${why.join('')}` }
      : says`${chosen.made.ampacity} all day in ${chosen.name}, at least the ${current} that flow`
  return trial('bar.serves', 'Current of the bar', told, DIN, 'current', 'ambient', 'limit', 'candidates')
}

/** Share of the torque at which a joint is checked later. */
const CHECKED_AT = 0.8
/** Proof stress of a bolt of class 8.8 up to M16, in Pa. */
const PROOF = 580e6
/** How much more than the best of like joints one may have. */
const LIKE = 1.5

function jointOf({ bolt, bolts, torque, torques: set, friction, measured }: Ends) {
  const { diameter, pitch, bearing, stressArea, torques: known } = jointBolts[bolt]
  const asked = known[set] as Quantity<'torque'>
  const preload = torque && boltPreload({ torque, friction, diameter, pitch, bearing })
  const resistance = preload && jointResistance({ force: preload.times(bolts) })
  const unknown = { unknown: `how tight the joints are is not known: give ends.torque, such as ${asked} for ${bolt}` }
  const checks = [
    trial(
      'joint.torque',
      'Torque of the joints',
      torque === undefined
        ? unknown
        : says`${torque} on each ${bolt}, at least the ${asked.times(CHECKED_AT)} at which a joint is checked`,
      set === 'DIN 43673' ? 'DIN 43673, as quoted' : 'a machine handbook, as quoted',
      'ends.torque',
      'ends.torques',
    ),
    trial(
      'joint.bolt',
      'Force of the bolts',
      preload === undefined
        ? unknown
        : says`${preload} in each ${bolt}, at most the ${quantity('force', stressArea.si * PROOF, 'N').as('kN')} that it bears`,
      'ISO 898-1, class 8.8, from memory',
      'ends.torque',
      'ends.friction',
    ),
    ...(measured === undefined ? [] : [likeTrial(measured)]),
  ]
  return { preload, resistance, checks }
}

function likeTrial(measured: readonly Quantity<'resistance'>[]): Check {
  const sorted = measured.toSorted((one, other) => one.si - other.si)
  const [best, worst] = [sorted[0], sorted.at(-1)] as [Quantity<'resistance'>, Quantity<'resistance'>]
  const told = says`${worst} in the worst of the joints, at most the ${best.times(LIKE)} that is half as much again as the best`
  return trial('joint.measured', 'Joints against each other', told, 'good practice', 'ends.measured')
}
