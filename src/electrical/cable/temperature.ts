/**
 * How warm a cable gets, all day and over a duty that changes, and what it carries.
 *
 * Rests on the heat balance of balance.ts and the course of course.ts.
 */
import { cite, definition } from '../../formula/index.js'
import { shortCircuit } from '../../procedure/cautions.js'
import { check, type Findings, given, optional, procedure, type Unfinished, whole } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { cableFields, cableOf, kelvins, type SteadyCable, steadyAtCurrent, steadyAtLimit } from './balance.js'
import { courseOf, followed, profileField, rmsOf } from './course.js'

const heatBalance = /*@__PURE__*/ (() => [
  cite('Churchill and Chu (1975)'),
  cite('Incropera, Fundamentals of Heat and Mass Transfer', 'chapters 1 and 3'),
  cite('IEC 60287-2-1'),
])()

/** How warm a cable gets. */
export interface CableTemperature extends Findings, Omit<SteadyCable, 'current'> {}

/**
 * Gives the temperature of one cable in still air at a steady current, from the balance of its heat.
 *
 * Between 25 mm² and 240 mm² it lies within 9 % of what IEC 60364-5-52 tabulates for single cables at 90 °C in free air
 * (methods F and G, from memory). The NEC's tables stand below it by 3 % to 20 % in current, most at 90 °C, because they take
 * one film coefficient, near 12 W/(m²·K), for all temperatures: where they are the law, they come first. It counts on still
 * air that can come and go; a cable in a duct, a bundle or beside something hot runs hotter.
 *
 * Answers: how warm does the cable get at a continuous current?
 *
 * - `area`: section of the conductor, in m², above 0 m²
 * - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 * - `resistance`: resistance per length of the conductor at 20 °C, in mΩ/m, above 0 mΩ/m, optional
 * - `conductorDiameter`: diameter of the stranded conductor, in m, above 0 m, optional
 * - `outerDiameter`: outer diameter of the cable, in m, above 0 m, optional
 * - `laid`: how the cables lie, 'apart' or 'touching', apart by default (one cable on its own)
 * - `ambient`: temperature of the air and what is around, in °C, at least -23.15 °C and below 226.85 °C
 * - `current`: continuous current, in A, at least 0 A
 *
 * @returns Temperatures of conductor and surface, the heat of each metre, and the heat transfer coefficient.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a current at which no temperature is
 * steady before the metal melts.
 * Source: Churchill and Chu (1975); Incropera, Fundamentals of Heat and Mass Transfer, chapters 1 and 3; IEC
 * 60287-2-1.
 *
 * @example
 * ```ts
 * const { conductorTemperature, lossPerLength } = cableTemperature({ current: '200 A', area: '50 mm²', ambient: '25 °C' })
 * String(conductorTemperature) // '57.61 °C'
 * String(lossPerLength) // '17.72 W/m'
 * ```
 */
export const cableTemperature = /*@__PURE__*/ procedure({
  name: 'cableTemperature',
  title: 'Temperature of a cable',
  answers: 'How warm does the cable get at a continuous current?',
  input: { ...cableFields, current: given('current', 'Continuous current', { min: 0 }) },
  source: heatBalance,
  work: ({ current, ...asked }): Unfinished<CableTemperature> => {
    const cable = cableOf('cableTemperature', asked)
    const { current: _, ...state } = steadyAtCurrent('cableTemperature', cable, current)
    return { ...state, checks: [], assumptions: cable.assumptions, cautions: [shortCircuit] }
  },
})

/** What a cable carries. */
export interface CableAmpacity extends Findings {
  readonly ampacity: Quantity<'current'>
  readonly surfaceTemperature: Quantity<'temperature'>
  /** Heat given off by each metre of cable. */
  readonly lossPerLength: Quantity<'powerPerLength'>
}

/**
 * Gives the current that one cable in still air carries all day without its conductor passing a temperature.
 *
 * Answers: which current does the cable carry all day within the limit of its insulation?
 *
 * - `area`: section of the conductor, in m², above 0 m²
 * - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 * - `resistance`: resistance per length of the conductor at 20 °C, in mΩ/m, above 0 mΩ/m, optional
 * - `conductorDiameter`: diameter of the stranded conductor, in m, above 0 m, optional
 * - `outerDiameter`: outer diameter of the cable, in m, above 0 m, optional
 * - `laid`: how the cables lie, 'apart' or 'touching', apart by default (one cable on its own)
 * - `ambient`: temperature of the air and what is around, in °C, at least -23.15 °C and below 226.85 °C
 * - `limit`: greatest temperature of the conductor, in °C
 *
 * @throws InputError for input that cannot be used, by its path.
 * Source: Churchill and Chu (1975); Incropera, Fundamentals of Heat and Mass Transfer, chapters 1 and 3; IEC
 * 60287-2-1.
 *
 * @example
 * ```ts
 * const { ampacity } = cableAmpacity({ area: '50 mm²', limit: '90 °C', ambient: '30 °C' })
 * String(ampacity) // '275 A'
 * ```
 */
export const cableAmpacity = /*@__PURE__*/ procedure({
  name: 'cableAmpacity',
  title: 'Ampacity of a cable',
  answers: 'Which current does the cable carry all day within the limit of its insulation?',
  input: { ...cableFields, limit: given('temperature', 'Greatest temperature of the conductor') },
  source: heatBalance,
  work: ({ limit, ...asked }): Unfinished<CableAmpacity> => {
    const cable = cableOf('cableAmpacity', asked)
    const { current, surfaceTemperature, lossPerLength } = steadyAtLimit('cableAmpacity', 'limit', cable, limit)
    return {
      ampacity: current,
      surfaceTemperature,
      lossPerLength,
      checks: [],
      assumptions: cable.assumptions,
      cautions: [shortCircuit],
    }
  },
})

/**
 * Gives the root mean square of currents that last for different times: the steady current that heats a cable as much.
 *
 * The input is a list of pairs of current and time. It stands for the profile only where that
 * repeats faster than the cable warms, which takes some minutes; {@link cableDuty} follows it.
 *
 * Answers: which steady current heats a cable as much as these currents do?
 *
 * - the input: currents, each for a time, pairs of current of either sign and time that it lasts
 *
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition.
 *
 * @example
 * ```ts
 * String(rmsCurrent([['300 A', '10 s'], ['0 A', '30 s']])) // '150 A'
 * ```
 */
export const rmsCurrent = /*@__PURE__*/ procedure({
  name: 'rmsCurrent',
  title: 'Root mean square of a current',
  answers: 'Which steady current heats a cable as much as these currents do?',
  input: profileField,
  source: [definition],
  work: rmsOf,
})

/** A cable over a duty. */
export interface CableDuty extends Findings {
  /** Root mean square of the currents. */
  readonly rms: Quantity<'current'>
  /** Hottest that the conductor gets. */
  readonly peak: Quantity<'temperature'>
  /** When it is hottest, from the start. */
  readonly peakAt: Quantity<'time'>
  /** Conductor at the end. */
  readonly final: Quantity<'temperature'>
}

/**
 * Follows the temperature of a cable over currents that change, from a cold start, and gives the hottest that its
 * conductor gets.
 *
 * The heat is followed through rings of the insulation; what a terminal, a duct or the next hot part adds is not in it.
 *
 * Answers: how warm does the conductor get over currents that change?
 *
 * - `area`: section of the conductor, in m², above 0 m²
 * - `conductor`: metal of the conductor, 'copper' or 'aluminium', copper by default (as in nearly all flexible cable)
 * - `resistance`: resistance per length of the conductor at 20 °C, in mΩ/m, above 0 mΩ/m, optional
 * - `conductorDiameter`: diameter of the stranded conductor, in m, above 0 m, optional
 * - `outerDiameter`: outer diameter of the cable, in m, above 0 m, optional
 * - `laid`: how the cables lie, 'apart' or 'touching', apart by default (one cable on its own)
 * - `ambient`: temperature of the air and what is around, in °C, at least -23.15 °C and below 226.85 °C
 * - `profile`: currents, each for a time, pairs of current of either sign and time that it lasts
 * - `rounds`: how many times the profile is run, a whole number, at least 1 and at most 1000, 1 by default (as it is
 *   given)
 * - `initial`: temperature of the cable at the start, in °C, at least -23.15 °C, optional
 * - `limit`: greatest temperature of the conductor, in °C, optional
 * - always assumed: the insulation takes up 2.4 MJ/(m³·K) (from memory)
 *
 * @throws InputError for input that cannot be used, by its path; CalculationError where the metal would melt.
 * Source: Churchill and Chu (1975); Incropera, Fundamentals of Heat and Mass Transfer, chapters 1 and 3; IEC
 * 60287-2-1; IEC 60949; IEC 60853-2, from memory.
 *
 * @example
 * ```ts
 * const { rms, peak } = cableDuty({
 *   profile: [['300 A', '60 s'], ['50 A', '180 s']],
 *   rounds: 20,
 *   area: '35 mm²',
 *   ambient: '40 °C',
 * })
 * String(rms) // '156.1 A'
 * String(peak) // '79.31 °C'
 * ```
 */
export const cableDuty = /*@__PURE__*/ procedure({
  name: 'cableDuty',
  title: 'Temperature of a cable over a duty',
  answers: 'How warm does the conductor get over currents that change?',
  input: {
    ...cableFields,
    profile: profileField,
    rounds: whole('How many times the profile is run', { min: 1, max: 1000, default: 1, because: 'as it is given' }),
    initial: optional(given('temperature', 'Temperature of the cable at the start', { min: '250 K' }), {
      absent: 'The cable starts at the ambient temperature (initial).',
    }),
    limit: optional(given('temperature', 'Greatest temperature of the conductor'), {
      absent: 'The conductor is not held to a limit: give limit.',
    }),
  },
  source: [...heatBalance, cite('IEC 60949'), cite('IEC 60853-2', 'from memory')],
  assumes: ['The insulation takes up 2.4 MJ/(m³·K) (from memory).'],
  work: ({ profile, rounds, initial, limit, ...asked }): Unfinished<CableDuty> => {
    const cable = cableOf('cableDuty', asked)
    const start = (initial ?? cable.ambient).si
    const { peak, peakAt, final } = followed('cableDuty', cable, courseOf(profile), rounds, start)
    const basis = 'limit of the insulation, as given'
    return {
      rms: rmsOf(profile),
      peak: kelvins(peak),
      peakAt: quantity('time', peakAt, 's'),
      final: kelvins(final),
      checks:
        limit === undefined
          ? []
          : [check('cable.temperature', 'Hottest conductor', kelvins(peak), 'at most', limit, basis, 'limit')],
      assumptions: cable.assumptions,
      cautions: [shortCircuit],
    }
  },
})
