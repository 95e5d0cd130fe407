/**
 * The point at which the car charges: its cable, its fuse or breaker, what sees a fault, its earth; what its pilot and its cable
 * tell the car.
 *
 * Rests on IEC 61851-1 (pilot and coding), IEC 60364-5-52 and NEC 310 (ampacity, drop), IEC 60364-4-43 (overload), IEC
 * 60364-7-722, IEC 62752 and IEC 62955 (residual current).
 */
import { cite, commonPractice, constant, definition, formula, input, output, section } from '../formula/index.js'
import { highVoltage, mainsCharging } from '../procedure/cautions.js'
import { worded } from '../procedure/check.js'
import {
  assumed,
  type Check,
  choice,
  type Findings,
  firstThatServes,
  given,
  group,
  isAbove,
  isBelow,
  type Judged,
  optional,
  procedure,
  type Read,
  type Rejected,
  rejectedAs,
  says,
  type Told,
  text,
  trial,
  type Unfinished,
} from '../procedure/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import { cableOf } from './cable/balance.js'
import { ampacityAtAmbient } from './cable/cable.js'
import { resistancePerLengthAt } from './cable/conductor.js'
import { type Candidate, sectionsOf } from './cable/size.js'
import { acPower, allDayOf, chargerFields, circuitTrial, SHARE, supplyFields } from './charging/charging.js'
import { conventionalOf, fuseFamilies } from './fuse/class.js'
import { fuseRating, greatestFuseRating } from './fuse/fuse.js'

const pilotStandard = /*@__PURE__*/ (() => cite('IEC 61851-1', 'Annex A, duty cycle of the control pilot'))()

/** Between these a pilot announces a current. */
const [LEAST_DUTY, MOST_DUTY] = [0.08, 0.97]

/** What a pilot says that announces no current. */
function noCurrent(duty: number): string {
  const said =
    duty < 0.03
      ? 'no charge is allowed'
      : duty <= 0.07
        ? 'the car is asked to speak with the charging point, and may draw what they agree on'
        : duty < LEAST_DUTY
          ? 'it is an error, and no charge is allowed'
          : 'the charging point is not ready, and no charge is allowed'
  return `a pilot of ${quantity('ratio', duty).as('%')} announces no current: ${said}`
}

/**
 * Greatest current that the control pilot of a charging point announces by its duty: the share of its time that it is
 * high. The car may draw that from each phase, and no more. A duty that announces no current is refused, with what it
 * means.
 *
 * `I = d < 0.1 ? Ia : d <= 0.85 ? Ib * d : d <= 0.96 ? Ic * (d - 0.64) : Id`
 *
 * - `duty` (`d`, a plain number): share of the time that the pilot is high, at least 0 and at most 1
 * - gives `I`: greatest current in each phase, in A
 * - `Ia` = 6 A: least current that is announced (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - `Ib` = 60 A: current over duty, up to 51 A (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - `Ic` = 250 A: current over duty, above 51 A (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - `Id` = 80 A: greatest current that is announced (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - holds where duty is at least 0.08 and at most 0.97
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 61851-1, Annex A, duty cycle of the control pilot.
 *
 * @example
 * ```ts
 * pilotCurrent({ duty: '53.3 %' })
 * // 31.98 A
 * // IEC 61851-1, duty of the pilot, as the table of a test adapter lists it (read): 32 A
 * ```
 */
export const pilotCurrent = /*@__PURE__*/ formula({
  name: 'pilotCurrent',
  title: 'Current that a control pilot announces',
  inputs: { duty: input('ratio', 'd', 'Share of the time that the pilot is high', { min: 0, max: 1 }) },
  result: output('current', 'I', 'Greatest current in each phase'),
  expression: 'd < 0.1 ? Ia : d <= 0.85 ? Ib * d : d <= 0.96 ? Ic * (d - 0.64) : Id',
  constants: {
    Ia: constant('current', '6 A', 'Least current that is announced', pilotStandard),
    Ib: constant('current', '60 A', 'Current over duty, up to 51 A', pilotStandard),
    Ic: constant('current', '250 A', 'Current over duty, above 51 A', pilotStandard),
    Id: constant('current', '80 A', 'Greatest current that is announced', pilotStandard),
  },
  valid: [
    {
      of: 'duty',
      value: ({ duty }) => duty,
      min: LEAST_DUTY,
      max: MOST_DUTY,
      otherwise: ({ duty }) => noCurrent(duty),
    },
  ],
  source: pilotStandard,
  compute: ({ duty }, { Ia, Ib, Ic, Id }) =>
    duty < 0.1 ? Ia : duty <= 0.85 ? Ib * duty : duty <= 0.96 ? Ic * (duty - 0.64) : Id,
})

const codingStandard = /*@__PURE__*/ (() => cite('IEC 61851-1', 'coding resistor of the cable'))()

/**
 * Current for which a charging cable is made, as the resistor in its plug says. Where two bands meet, the lesser
 * current counts. More than 2200 Ω is no cable at all; less than 75 Ω is a fault.
 *
 * `I = R < R1 ? (n > 1 ? I1 : I0) : R < R2 ? I2 : R < R3 ? I3 : R <= R4 ? I4 : 0 * I4`
 *
 * - `resistance` (`R`, mΩ): resistance between proximity contact and earth; below 75 Ω it is a fault, and nothing may
 *   be drawn, at least 75000 mΩ and at most 1e9 mΩ
 * - `phases` (`n`, a plain number): number of phases, at least 1 and at most 3, 3 unless given
 * - gives `I`: greatest current in each phase, in A
 * - `R1` = 150 Ω: upper end of the band of 100 Ω (IEC 61851-1, coding resistor of the cable)
 * - `R2` = 330 Ω: upper end of the band of 220 Ω (IEC 61851-1, coding resistor of the cable)
 * - `R3` = 1000 Ω: upper end of the band of 680 Ω (IEC 61851-1, coding resistor of the cable)
 * - `R4` = 2200 Ω: upper end of the band of 1500 Ω (IEC 61851-1, coding resistor of the cable)
 * - `I0` = 70 A: at 100 Ω, one phase (IEC 61851-1, coding resistor of the cable)
 * - `I1` = 63 A: at 100 Ω, several phases (IEC 61851-1, coding resistor of the cable)
 * - `I2` = 32 A: at 220 Ω (IEC 61851-1, coding resistor of the cable)
 * - `I3` = 20 A: at 680 Ω (IEC 61851-1, coding resistor of the cable)
 * - `I4` = 13 A: at 1500 Ω (IEC 61851-1, coding resistor of the cable)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 61851-1, coding resistor of the cable.
 *
 * @example
 * ```ts
 * proximityCurrent({ resistance: '220 Ω', phases: 3 })
 * // 32 A
 * // IEC 61851-1, coding of the cable, as the table of a test adapter lists it (read): 32 A
 * ```
 */
export const proximityCurrent = /*@__PURE__*/ formula({
  name: 'proximityCurrent',
  title: 'Current for which a charging cable is coded',
  inputs: {
    resistance: input(
      'resistance',
      'R',
      'Resistance between proximity contact and earth; below 75 Ω it is a fault, and nothing may be drawn',
      {
        min: '75 Ω',
        max: '1 MΩ',
      },
    ),
    phases: input('ratio', 'n', 'Number of phases', {
      min: 1,
      max: 3,
      default: 3,
      because: 'the lesser of the two currents of the thickest cable',
    }),
  },
  result: output('current', 'I', 'Greatest current in each phase'),
  expression: 'R < R1 ? (n > 1 ? I1 : I0) : R < R2 ? I2 : R < R3 ? I3 : R <= R4 ? I4 : 0 * I4',
  constants: {
    R1: constant('resistance', '150 Ω', 'Upper end of the band of 100 Ω', codingStandard),
    R2: constant('resistance', '330 Ω', 'Upper end of the band of 220 Ω', codingStandard),
    R3: constant('resistance', '1000 Ω', 'Upper end of the band of 680 Ω', codingStandard),
    R4: constant('resistance', '2200 Ω', 'Upper end of the band of 1500 Ω', codingStandard),
    I0: constant('current', '70 A', 'At 100 Ω, one phase', codingStandard),
    I1: constant('current', '63 A', 'At 100 Ω, several phases', codingStandard),
    I2: constant('current', '32 A', 'At 220 Ω', codingStandard),
    I3: constant('current', '20 A', 'At 680 Ω', codingStandard),
    I4: constant('current', '13 A', 'At 1500 Ω', codingStandard),
  },
  source: codingStandard,
  compute: ({ resistance, phases }, { R1, R2, R3, R4, I0, I1, I2, I3, I4 }) => {
    if (resistance < R1) return phases > 1 ? I1 : I0
    return resistance < R2 ? I2 : resistance < R3 ? I3 : resistance <= R4 ? I4 : 0
  },
})

/**
 * Voltage to which the car pulls the positive half of the pilot down, by the resistance that it puts between pilot
 * and earth: the car's side of the pilot is a diode and that resistor. About 9 V says that it is plugged in, 6 V that
 * it wants current, 3 V that it wants it with ventilation.
 *
 * `Up = Ud + (U - Ud) * R / (Rs + R)`
 *
 * - `resistance` (`R`, mΩ): resistance that the car puts across, behind its diode, at least 0 mΩ
 * - gives `Up`: voltage of the positive half, in V
 * - `U` = 12 V: voltage of the charging point (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - `Rs` = 1000 Ω: resistance in the charging point (IEC 61851-1, Annex A, duty cycle of the control pilot)
 * - `Ud` = 0.7 V: drop over the diode in the car (common practice, no source)
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 61851-1, Annex A, duty cycle of the control pilot.
 *
 * @example
 * ```ts
 * pilotVoltage({ resistance: '882 Ω' })
 * // 5.996 V
 * // IEC 61851-1, states B, C and D; the drop of the diode from memory (recomputed): 6 V
 * ```
 */
export const pilotVoltage = /*@__PURE__*/ formula({
  name: 'pilotVoltage',
  title: 'Voltage of a control pilot',
  inputs: { resistance: input('resistance', 'R', 'Resistance that the car puts across, behind its diode', { min: 0 }) },
  result: output('voltage', 'Up', 'Voltage of the positive half'),
  expression: 'Ud + (U - Ud) * R / (Rs + R)',
  constants: {
    U: constant('voltage', '12 V', 'Voltage of the charging point', pilotStandard),
    Rs: constant('resistance', '1000 Ω', 'Resistance in the charging point', pilotStandard),
    Ud: constant('voltage', '0.7 V', 'Drop over the diode in the car', commonPractice),
  },
  source: pilotStandard,
  compute: ({ resistance }, { U, Rs, Ud }) => Ud + ((U - Ud) * resistance) / (Rs + resistance),
})

/**
 * AC voltage lost over a feed. Of one phase it is lost out and back, and is a share of the voltage to neutral. Of
 * three phases it is lost between the lines, and is the same share of the voltage between them as the drop of one way
 * is of the voltage to neutral. Two phases count as one, which is the worse.
 *
 * `dU = (n > 2 ? sqrt(3) : 2) * I * r * l`
 *
 * - `current` (`I`, A): current in each phase, root mean square, at least 0 A
 * - `resistancePerLength` (`r`, mΩ/m): resistance of one conductor per length, above 0 mΩ/m
 * - `length` (`l`, m): one-way length of the feed, at least 0 m
 * - `phases` (`n`, a plain number): number of phases, at least 1 and at most 3
 * - gives `dU`: voltage lost, between lines for three phases, in V
 * - Assumes: the reactance of the cable adds nothing, as up to 25 mm²
 * - Assumes: the power factor is 1, with which resistance counts most
 *
 * Throws InputError for inputs that cannot be used, CalculationError where there is no finite result.
 *
 * Source: IEC 60364-5-52, Annex G.
 *
 * @example
 * ```ts
 * acFeedDrop({ current: '32 A', resistancePerLength: '3.685 mΩ/m', length: '25 m', phases: 1 })
 * // 5.896 V
 * // IEC 60228, 6 mm² class 2, 3.08 Ω/km at 20 °C, taken to 70 °C (recomputed): 5.9 V
 * ```
 */
export const acFeedDrop = /*@__PURE__*/ formula({
  name: 'acFeedDrop',
  title: 'Voltage drop of an AC feed',
  inputs: {
    current: input('current', 'I', 'Current in each phase, root mean square', { min: 0 }),
    resistancePerLength: input('resistancePerLength', 'r', 'Resistance of one conductor per length', { above: 0 }),
    length: input('length', 'l', 'One-way length of the feed', { min: 0 }),
    phases: input('ratio', 'n', 'Number of phases', { min: 1, max: 3 }),
  },
  result: output('voltage', 'dU', 'Voltage lost, between lines for three phases'),
  expression: '(n > 2 ? sqrt(3) : 2) * I * r * l',
  assumes: [
    'The reactance of the cable adds nothing, as up to 25 mm².',
    'The power factor is 1, with which resistance counts most.',
  ],
  source: cite('IEC 60364-5-52', 'Annex G'),
  compute: ({ current, resistancePerLength, length, phases }) =>
    (phases > 2 ? Math.sqrt(3) : 2) * current * resistancePerLength * length,
})

/** A charging point: cable, fuse or breaker, and what it gives. */
export interface ChargingPoint extends Findings {
  /** The least section that serves; where none does, the largest, with failed checks. */
  readonly section: { readonly name: string; readonly area: Quantity<'area'> }
  /** What the cable carries as it is laid. */
  readonly ampacity: Quantity<'current'>
  /** Rated current of the circuit: `supply.circuit`, or the least rating that the current needs. */
  readonly circuit: Quantity<'current'>
  /** Greatest rating that the cable bears. */
  readonly ratingAtMost: Quantity<'current'>
  /** What the circuit may give for hours. */
  readonly allDay: Quantity<'current'>
  /** What the point may give for hours, drawn from the supply. */
  readonly power: Quantity<'power'>
  /** At the current of the supply; between lines where there are three phases. */
  readonly drop: Quantity<'voltage'>
  /** The same as a share of the voltage of the supply. */
  readonly dropShare: Quantity<'ratio'>
  /** Every smaller section, and why it does not serve. */
  readonly rejected: readonly Rejected[]
}

/** What a cable carries by its section, with two conductors loaded and with three. */
interface Ampacities {
  readonly source: string
  /** Limit of the insulation, in °C. The tables are for air of 30 °C. */
  readonly limit: number
  readonly series: 'metric' | 'american'
  /** From the least section on. */
  readonly sections: readonly string[]
  readonly two: readonly number[]
  readonly three: readonly number[]
}

const METRIC = ['1.5 mm²', '2.5 mm²', '4 mm²', '6 mm²', '10 mm²', '16 mm²', '25 mm²', '35 mm²']

/** A multicore cable of copper in PVC at 70 °C. */
const metric = (method: string, two: readonly number[], three: readonly number[]): Ampacities => ({
  source: `IEC 60364-5-52, method ${method} (from memory)`,
  limit: 70,
  series: 'metric',
  sections: METRIC,
  two,
  three,
})

const NEC_60 = [15, 20, 30, 40, 55, 70, 85, 95, 110, 125]

/**
 * What cables of copper carry by how they lie, in amperes: IEC 60364-5-52, tables B.52.2 and B.52.4, and NFPA 70 (NEC), table
 * 310.16, 60 °C. From memory, but for single figures.
 * @internal
 */
export const ampacitiesOf = {
  'insulated wall': metric('A2', [14, 18.5, 25, 32, 43, 57, 75, 92], [13, 17.5, 23, 29, 39, 52, 68, 83]),
  conduit: metric('B2', [16.5, 23, 30, 38, 52, 69, 90, 111], [15, 20, 27, 34, 46, 62, 80, 99]),
  clipped: metric('C', [19.5, 27, 36, 46, 63, 85, 112, 138], [17.5, 24, 32, 41, 57, 76, 96, 119]),
  'NEC raceway': {
    source: 'NFPA 70 (NEC), 310.16, 60 °C (from memory)',
    limit: 60,
    series: 'american',
    sections: ['14 AWG', '12 AWG', '10 AWG', '8 AWG', '6 AWG', '4 AWG', '3 AWG', '2 AWG', '1 AWG', '1/0 AWG'],
    two: NEC_60,
    three: NEC_60,
  },
} satisfies { readonly [laid: string]: Ampacities }

/** Rated currents of circuit breakers for households: IEC 60898-1, from memory. */
const BREAKERS = [6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125]

/** Current at which a breaker of IEC 60898-1 opens within its conventional time, over its rating. From memory. */
const BREAKER_FACTOR = 1.45

/** What describes a charging point beside its supply and the charger. @internal */
export const chargingPointFields = /*@__PURE__*/ (() => ({
  length: given('length', 'One-way length of the cable from the board', {
    min: 0,
    usual: ['0 m', '100 m'],
    finest: '10 cm',
  }),
  section: optional(text('The section, where it lies already and is only to be examined'), {
    absent: 'The section is chosen.',
  }),
  laid: choice('How the cable lies', ['insulated wall', 'conduit', 'clipped', 'NEC raceway'], {
    default: 'insulated wall',
    because: 'it gets rid of least heat there; conduit is one on a wall, and clipped is to the bare wall',
  }),
  ambient: given('temperature', 'Temperature of the air around the cable', {
    min: '-20 °C',
    below: '60 °C',
    usual: ['10 °C', '50 °C'],
    default: '30 °C',
    because: 'that of the tables, IEC 60364-5-52 and NEC 310.16',
  }),
  bundled: given('ratio', 'Share of its ampacity that a bundle leaves the cable', {
    above: 0,
    max: 1,
    default: 1,
    because: 'no other loaded circuit lies beside it',
  }),
  overcurrent: choice('What opens on an overload', ['breaker', 'fuse'], {
    default: 'fuse',
    because: 'it needs the thicker cable of the two',
  }),
  maximumDrop: given('ratio', 'Greatest drop, as a share of the voltage', {
    above: 0,
    max: 0.2,
    usual: ['0.5 %', '5 %'],
    default: '3 %',
    because: 'of the 5 % of IEC 60364-5-52, Annex G (from memory), the wiring before the board takes its part',
  }),
  residualCurrent: optional(
    group('The residual-current device before the point, or in it', {
      type: optional(choice('Its type', ['AC', 'A', 'F', 'B'])),
      trips: optional(given('current', 'Its rated residual current', { above: 0, usual: ['6 mA', '500 mA'] })),
      detector: optional(
        choice('What opens on smooth direct current beside it, in the point or in the box of the cable', [
          '6 mA',
          'none',
        ]),
      ),
      upstream: optional(
        choice('Type of another device before it, on which other circuits rely too', ['none', 'AC', 'A', 'F', 'B']),
      ),
    }),
  ),
  earth: optional(
    group('The earth of the point', {
      system: choice('How the supply is earthed', ['TN-S', 'TN-C-S', 'TT']),
      resistance: optional(
        given('resistance', 'Resistance of the earth electrode of the house, as measured', {
          above: 0,
          usual: ['1 Ω', '2 kΩ'],
        }),
      ),
      openNeutral: optional(
        choice('What is done about a broken neutral of the supply, where it is the earth too', [
          'detected',
          'allowed by local code',
        ]),
      ),
    }),
  ),
  pilot: optional(given('ratio', 'Duty of the control pilot of the point', { min: 0, max: 1 }), {
    absent: 'What the control pilot announces is not held to what the circuit gives: give pilot.',
  }),
}))()

const pointFields = /*@__PURE__*/ (() => ({
  supply: group('The supply', supplyFields),
  charger: group('The charger', chargerFields),
  ...chargingPointFields,
}))()

type Asked = Read<typeof pointFields>

/**
 * Sizes the feed of a charging point, and holds it to what a charge of hours asks: cable, fuse or breaker, residual current,
 * earth, and what the pilot announces.
 *
 * The cable is sized for the current that the supply lets flow, not for what one charger draws: the next car may draw all of
 * it. Ampacities are those of the tables for fixed wiring, not those of free air. A cable in the ground is not in them.
 *
 * Answers: which cable, which fuse or breaker and what protection does a charging point need, and what may it give
 * for hours?
 *
 * - `supply`: the supply
 *   - `voltage`: voltage of one phase to neutral, in V, above 0 V
 *   - `current`: current in each phase that may be drawn all day, in A, above 0 A
 *   - `phases`: how many phases, a whole number, at least 1 and at most 3
 *   - `circuit`: rated current of the circuit that feeds it, in A, above 0 A, optional
 *   - `rule`: by which rule a charge may load it for hours, 'NEC' or 'IEC own circuit' or 'domestic socket', optional
 *   - `powerFactor`: power factor of the charger, a plain number, above 0 and at most 1, 1 by default (chargers that
 *     correct it come close, common practice, no source)
 * - `charger`: the charger
 *   - `power`: greatest power into the pack, in kW, above 0 kW
 *   - `efficiency`: efficiency from the supply to the pack, a plain number, above 0 and at most 1
 * - `length`: one-way length of the cable from the board, in m, at least 0 m
 * - `section`: the section, where it lies already and is only to be examined, text, optional
 * - `laid`: how the cable lies, 'insulated wall' or 'conduit' or 'clipped' or 'NEC raceway', insulated wall by
 *   default (it gets rid of least heat there; conduit is one on a wall, and clipped is to the bare wall)
 * - `ambient`: temperature of the air around the cable, in °C, at least -20 °C and below 60 °C, 30 °C by default
 *   (that of the tables, IEC 60364-5-52 and NEC 310.16)
 * - `bundled`: share of its ampacity that a bundle leaves the cable, a plain number, above 0 and at most 1, 1 by
 *   default (no other loaded circuit lies beside it)
 * - `overcurrent`: what opens on an overload, 'breaker' or 'fuse', fuse by default (it needs the thicker cable of the
 *   two)
 * - `maximumDrop`: greatest drop, as a share of the voltage, a plain number, above 0 and at most 0.2, 3 % by default
 *   (of the 5 % of IEC 60364-5-52, Annex G (from memory), the wiring before the board takes its part)
 * - `residualCurrent`: the residual-current device before the point, or in it, optional
 *   - `type`: its type, 'AC' or 'A' or 'F' or 'B', optional
 *   - `trips`: its rated residual current, in A, above 0 A, optional
 *   - `detector`: what opens on smooth direct current beside it, in the point or in the box of the cable, '6 mA' or
 *     'none', optional
 *   - `upstream`: type of another device before it, on which other circuits rely too, 'none' or 'AC' or 'A' or 'F' or
 *     'B', optional
 * - `earth`: the earth of the point, optional
 *   - `system`: how the supply is earthed, 'TN-S' or 'TN-C-S' or 'TT'
 *   - `resistance`: resistance of the earth electrode of the house, as measured, in mΩ, above 0 mΩ, optional
 *   - `openNeutral`: what is done about a broken neutral of the supply, where it is the earth too, 'detected' or
 *     'allowed by local code', optional
 * - `pilot`: duty of the control pilot of the point, a plain number, at least 0 and at most 1, optional
 * - always assumed: multicore cable of copper, with a protective conductor of the same section
 * - always assumed: the drop is that of a flexible conductor at the limit of its insulation, which is no less than
 *   that of a solid one
 * - always assumed: how quickly a short circuit or a fault to earth is switched off is not judged: who installs the
 *   point measures that
 *
 * @returns Section, rating, what the point gives for hours, drop, checks, and `rejected` with all reasons. Where no section
 * serves, and where a `section` is given, the checks say what fails.
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition; IEC 60364-5-52, tables B.52.2, B.52.4 and Annex G (from memory); IEC 60364-4-43, 433.1 (from
 * memory); IEC 60364-7-722, from memory; NFPA 70 (NEC), 310.16, 625.41; IEC 61851-1; IEC 62752; IEC 62955.
 *
 * @example
 * ```ts
 * const { section, circuit, power, dropShare } = chargingPoint({
 *   supply: { voltage: '230 V', current: '32 A', phases: 1, rule: 'IEC own circuit' },
 *   charger: { power: '6.6 kW', efficiency: 0.92 },
 *   length: '22 m',
 *   laid: 'clipped',
 *   overcurrent: 'breaker',
 * })
 * section.name // '6 mm²'
 * String(circuit) // '32 A'
 * String(power) // '7.36 kW'
 * String(dropShare) // '2.417 %'
 * ```
 */
export const chargingPoint = /*@__PURE__*/ procedure({
  name: 'chargingPoint',
  title: 'A charging point',
  answers:
    'Which cable, which fuse or breaker and what protection does a charging point need, and what may it give for hours?',
  input: pointFields,
  source: [
    definition,
    cite('IEC 60364-5-52', 'tables B.52.2, B.52.4 and Annex G (from memory)'),
    cite('IEC 60364-4-43', '433.1 (from memory)'),
    cite('IEC 60364-7-722', 'from memory'),
    cite('NFPA 70 (NEC)', '310.16, 625.41'),
    cite('IEC 61851-1'),
    cite('IEC 62752'),
    cite('IEC 62955'),
  ],
  assumes: [
    'Multicore cable of copper, with a protective conductor of the same section.',
    'The drop is that of a flexible conductor at the limit of its insulation, which is no less than that of a solid one.',
    'How quickly a short circuit or a fault to earth is switched off is not judged: who installs the point measures that.',
  ],
  work: (asked): Unfinished<ChargingPoint> => {
    const { supply, charger } = asked
    const { current, phases } = supply
    const circuit = supply.circuit ?? leastRating(asked)
    const table: Ampacities = ampacitiesOf[asked.laid]
    const { chosen, rejected } = firstThatServes(candidatesOf(asked, table), (candidate) =>
      judgedSection(asked, table, circuit, candidate),
    )
    const found = chosen ?? (rejected.at(-1) as (typeof rejected)[number])
    const { name, area, ...made } = found.made
    const allDay = allDayOf(circuit, supply.rule)
    const announced = asked.pilot === undefined || isSilent(asked.pilot) ? current : pilotCurrent({ duty: asked.pilot })
    const offered = [allDay, announced].reduce((least, each) => (isBelow(each, least) ? each : least), current)
    return {
      section: { name, area },
      ...made,
      circuit,
      allDay,
      power: section('What the point gives for hours', () =>
        acPower({
          voltage: supply.voltage,
          current: offered,
          phases: quantity('ratio', phases),
          powerFactor: supply.powerFactor,
        }),
      ),
      rejected: rejected.filter((each) => each !== found).map(rejectedAs),
      checks: [
        circuitTrial({ ...supply, circuit }, charger),
        ...ratingTrials(asked, circuit),
        ...found.checks,
        ...pilotTrials(asked),
        ...residualTrials(asked.residualCurrent),
        earthTrial(asked),
      ],
      assumptions:
        supply.circuit === undefined
          ? [
              assumed(
                'mains.circuit',
                `The circuit is rated ${circuit}, the least that the current needs (supply.circuit by default).`,
              ),
            ]
          : [],
      cautions: [mainsCharging, highVoltage],
    }
  },
})

const where = 'chargingPoint'

/** The least rating that carries the current for hours. */
function leastRating({ supply: { current, rule }, laid, overcurrent }: Asked): Quantity<'current'> {
  const needed = section('What the circuit must be rated for', () =>
    fuseRating({ current, loadFactor: rule === 'NEC' || rule === undefined ? SHARE : 1 }),
  )
  const ratings =
    laid === 'NEC raceway'
      ? fuseFamilies.UL.ratings
      : overcurrent === 'fuse'
        ? fuseFamilies.R10.ratings
        : BREAKERS.map((each) => quantity('current', each, 'A'))
  const found = ratings.find((each) => !isBelow(each, needed))
  if (found !== undefined) return found
  const expected = `a current for which a circuit of at most ${ratings.at(-1)} is enough`
  throw new InputError(where, [{ path: 'supply.current', expected, received: String(current) }])
}

/** The sections of the table, or the one that is only examined. */
function candidatesOf({ section: only }: Asked, { series, sections }: Ampacities): readonly Candidate[] {
  const all = sectionsOf(series).filter(({ name }) => sections.includes(name))
  if (only === undefined) return all
  const one = all.filter(({ name }) => name === only)
  if (one.length > 0) return one
  throw new InputError(where, [
    { path: 'section', expected: `a section: ${sections.join(', ')}`, received: `'${only}'` },
  ])
}

interface MadeSection extends Candidate {
  readonly ampacity: Quantity<'current'>
  readonly ratingAtMost: Quantity<'current'>
  readonly drop: Quantity<'voltage'>
  readonly dropShare: Quantity<'ratio'>
}

/** What a section does as a feed. */
function judgedSection(
  asked: Asked,
  table: Ampacities,
  circuit: Quantity<'current'>,
  { name, area }: Candidate,
): Judged<MadeSection> {
  const { ambient, bundled, overcurrent, maximumDrop, length, supply } = asked
  const limit = quantity('temperature', table.limit, '°C')
  const column = supply.phases > 1 ? table.three : table.two
  const ampacity = section(`Ampacity by ${table.source}`, () =>
    ampacityAtAmbient({
      ampacity: quantity('current', column[table.sections.indexOf(name)] as number, 'A'),
      rated: limit,
      ratedAmbient: '30 °C',
      ambient,
    }).times(bundled.si),
  )
  const ratingAtMost = greatestFuseRating({ ampacity, fusingFactor: fusingFactorOf(asked, circuit) })
  const { resistance, material } = cableOf(where, { area, conductor: 'copper', laid: 'touching', ambient })
  const drop = acFeedDrop({
    current: supply.current,
    resistancePerLength: resistancePerLengthAt({
      resistance,
      coefficient: material.coefficient,
      temperature: limit,
    }),
    length,
    phases: quantity('ratio', supply.phases),
  })
  const whole = supply.phases > 2 ? supply.voltage.times(Math.sqrt(3)) : supply.voltage
  const dropShare = quantity('ratio', drop.ratioTo(whole)).as('%')
  return {
    name,
    checks: [
      trial(
        'mains.ampacity',
        'Cable under its fuse or breaker',
        worded(`the cable bears a ${overcurrent} of `, says`${ratingAtMost}, at least the ${circuit} of the circuit`),
        `${table.source}; IEC 60364-4-43, 433.1 (from memory)`,
        'supply.circuit',
        'laid',
        'overcurrent',
      ),
      trial(
        'mains.drop',
        'Voltage drop of the feed',
        says`the cable drops ${dropShare} at ${supply.current}, at most the ${maximumDrop.as('%')} allowed`,
        'maximumDrop',
        'length',
        'maximumDrop',
      ),
    ],
    made: { name, area, ampacity, ratingAtMost, drop, dropShare },
  }
}

/** Over its rating, the current on which the fuse or breaker opens within its conventional time. */
function fusingFactorOf({ laid, overcurrent }: Asked, circuit: Quantity<'current'>): number {
  if (overcurrent === 'breaker') return BREAKER_FACTOR
  const of = laid === 'NEC raceway' ? 'UL 248' : 'gG'
  return conventionalOf(of, circuit.si)?.factor as number
}

/** A circuit that is there already has a rating, and nobody chooses it. */
function ratingTrials({ supply }: Asked, circuit: Quantity<'current'>): Check[] {
  if (supply.rule !== 'domestic socket' || supply.circuit !== undefined) return []
  const unknown = `what fuse or breaker feeds the socket is not known, and ${circuit} is taken: give supply.circuit`
  return [trial('mains.rating', 'Rating of the circuit', { unknown }, 'the circuit that is there', 'supply.circuit')]
}

/** Whether a pilot announces no current. */
function isSilent({ si }: Quantity<'ratio'>): boolean {
  return si < LEAST_DUTY || si > MOST_DUTY
}

function pilotTrials({ pilot, supply: { current } }: Asked): Check[] {
  if (pilot === undefined) return []
  return [
    trial(
      'mains.pilot',
      'Current that the pilot announces',
      isSilent(pilot) ? { fail: noCurrent(pilot.si) } : announcedTold(pilotCurrent({ duty: pilot }), current),
      'IEC 61851-1',
      'pilot',
      'supply.current',
    ),
  ]
}

/** A pilot is set to what the supply gives: it is not near to anything. */
function announcedTold(announced: Quantity<'current'>, current: Quantity<'current'>): Told {
  return isAbove(announced, current)
    ? says`the pilot announces ${announced}, at most the ${current} that may be drawn all day`
    : { pass: `the pilot announces ${announced}, and ${current} may be drawn all day` }
}

/** The most residual current at which a device before a charging point opens. */
const RESIDUAL = /*@__PURE__*/ (() => quantity('current', '30 mA'))()

/** Whether a fault of smooth direct current is seen, one through a person is broken, and no other device is blinded. */
function residualTrials({ type, trips, detector, upstream }: NonNullable<Asked['residualCurrent']> = {}): Check[] {
  const path = (key: string) => `residualCurrent.${key}`
  return [
    trial(
      'mains.directCurrent',
      'Smooth direct residual current',
      directCurrentTold(type, detector),
      'IEC 62955; IEC 62752; IEC 60364-7-722 (from memory)',
      path('type'),
      path('detector'),
    ),
    trial(
      'mains.residual',
      'Residual current that is switched off',
      trips === undefined
        ? { unknown: `at what residual current the point is switched off is not known: give ${path('trips')}` }
        : isAbove(trips, RESIDUAL)
          ? says`the residual-current device opens at ${trips}, at most the ${RESIDUAL} for a charging point`
          : // Devices are made for just that: it is not near to anything.
            { pass: `the residual-current device opens at ${trips}, and ${RESIDUAL} is the most for a charging point` },
      'IEC 60364-7-722 (from memory)',
      path('trips'),
    ),
    trial(
      'mains.upstream',
      'Residual-current device upstream',
      upstreamTold(type, detector, upstream),
      'IEC 62955; IEC 60364-5-53 (from memory)',
      path('upstream'),
      path('type'),
      path('detector'),
    ),
  ]
}

function directCurrentTold(
  type: NonNullable<Asked['residualCurrent']>['type'],
  detector: NonNullable<Asked['residualCurrent']>['detector'],
): Told {
  switch (type) {
    case undefined:
      return {
        unknown: 'whether anything opens on smooth direct current is not known: give residualCurrent.type',
      }
    case 'B':
      return { pass: 'the residual-current device is of type B, which opens on smooth direct current' }
    case 'AC':
      return { fail: 'the residual-current device is of type AC, which no charger may be fed through' }
    default:
  }
  if (detector === undefined) {
    return {
      unknown: `whether anything opens on smooth direct current, which blinds a device of type ${type}, is not known: give residualCurrent.detector`,
    }
  }
  return detector === 'none'
    ? { fail: `smooth direct current blinds a device of type ${type}: fit a detector that opens at 6 mA, or type B` }
    : { pass: `beside the device of type ${type} a detector opens at 6 mA of smooth direct current` }
}

/** A device of type B opens only at more direct current than blinds another one before it. */
function upstreamTold(
  type: NonNullable<Asked['residualCurrent']>['type'],
  detector: NonNullable<Asked['residualCurrent']>['detector'],
  upstream: NonNullable<Asked['residualCurrent']>['upstream'],
): Told {
  switch (upstream) {
    case undefined:
      return {
        unknown:
          "whether direct current blinds another device upstream is not known: give residualCurrent.upstream, 'none' where there is none",
      }
    case 'none':
      return { pass: 'no other residual-current device stands upstream' }
    case 'B':
      return { pass: 'the device upstream is of type B, which direct current does not blind' }
    case 'AC':
      return { fail: 'a device of type AC upstream does not see what a charger leaks: take the point off it' }
    default:
  }
  if (detector === '6 mA') {
    return { pass: `the detector opens at 6 mA, with which the device of type ${upstream} upstream still works` }
  }
  if (type === undefined || detector === undefined) {
    return {
      unknown: `whether direct current blinds the device of type ${upstream} upstream is not known: give residualCurrent.type and residualCurrent.detector`,
    }
  }
  return {
    fail: `more direct current than 6 mA blinds the device of type ${upstream} upstream before anything opens: fit a detector of 6 mA, or take the point off it`,
  }
}

/** The most that the body of a car may stand at before the device opens, where the earth of a house is its own, in volts. */
const TOUCH = 50

function earthTrial({ earth, residualCurrent }: Asked): Check {
  const told = (says: Told, basis = 'IEC 60364-4-41 (from memory)') =>
    trial('mains.earth', 'Earth of the charging point', says, basis, 'earth', 'residualCurrent.trips')
  if (earth === undefined) return told({ unknown: 'whether the point is earthed is not known: give earth' })
  const { system, resistance, openNeutral } = earth
  switch (system) {
    case 'TN-S':
      return told({ pass: 'the supply brings an earth of its own' })
    case 'TN-C-S':
      return told(
        openNeutral === undefined
          ? {
              unknown:
                'where its neutral breaks, a supply whose neutral is the earth too puts the body of the car at mains voltage, and what is done about that is not known: give earth.openNeutral',
            }
          : { pass: `a broken neutral of the supply, which is the earth too, is ${openNeutral}` },
        'IEC 60364-7-722; national rules differ (from memory)',
      )
    default:
  }
  const trips = residualCurrent?.trips
  if (resistance === undefined || trips === undefined) {
    const lacks = [
      ...(resistance === undefined ? ['earth.resistance'] : []),
      ...(trips === undefined ? ['residualCurrent.trips'] : []),
    ]
    return told({ unknown: `whether the earth electrode is good enough is not known: give ${lacks.join(' and ')}` })
  }
  const most = quantity('resistance', TOUCH / trips.si, 'Ω')
  return told(
    says`the earth electrode has ${resistance.as('Ω')}, at most the ${most} with which the body of the car stays below 50 V`,
    'IEC 60364-4-41, 411.5.3 (from memory)',
  )
}
