/**
 * What the cold takes from the range, and how much of it is due to air, tyres, heater and pack.
 *
 * Rests on Shapley, A value for n-person games (1953), from memory, for the parts of causes that act on each other, and on
 * UN Global Technical Regulation No. 15, Annex 4, from memory, for tyres in the cold.
 */
import { withWeatherCounted } from '../drivetrain/road/air.js'
import { rollingTemperatureFactor } from '../drivetrain/road/road-load.js'
import { auxiliariesField } from '../drivetrain/vehicle.js'
import { cite, section } from '../formula/index.js'
import { unrecorded } from '../formula/record.js'
import {
  assumed,
  type Findings,
  given,
  group,
  optional,
  procedure,
  type Read,
  renamed,
  type Unfinished,
} from '../procedure/index.js'
import { settled } from '../procedure/reading.js'
import { CalculationError, InputError, type InputIssue, type Quantity } from '../quantity/index.js'
import { fromSi } from '../quantity/quantity.js'
import { type DrivenCycle, driveCycle, STEP } from './drive/drive-cycle.js'
import { journeyField, paceField } from './drive/journey.js'
import { heatedField, powertrainFields, sourceFields } from './drive/powertrain.js'
import { cycleField } from './route/cycle.js'
import { airWithoutTemperature, rangeAtSpeed, speedField, temperatureField } from './steady.js'

/** How far the car comes in a season, and what a kilometre takes. */
export interface SeasonRange {
  readonly range: Quantity<'length'>
  readonly consumption: Quantity<'energyPerDistance'>
}

/** What one cause takes from the range. */
export interface SeasonLoss {
  /** What is lost by it; negative where it lets the car come farther. */
  readonly range: Quantity<'length'>
  /** Of the whole loss; absent where winter takes nothing from the range. */
  readonly share?: Quantity<'ratio'>
}

/** What winter takes from the range, and by what. */
export interface Seasons extends Findings {
  readonly summer: SeasonRange
  readonly winter: SeasonRange
  /** Range of summer less that of winter; negative where the car comes farther in winter. */
  readonly lost: Quantity<'length'>
  /** They add up to what is lost. */
  readonly causes: {
    /** Cold air is denser. */
    readonly airDensity: SeasonLoss
    readonly rollingResistance: SeasonLoss
    /** The heater, and whatever else `auxiliaries` holds. */
    readonly heater: SeasonLoss
    /** The energy or the charge that is used, and the resistance and the limits of cold cells. */
    readonly usableCapacity: SeasonLoss
  }
}

const seasonField = /*@__PURE__*/ (() => {
  const { usableEnergy, stateOfCharge, reserve, cellTemperature } = sourceFields
  return group('What a season makes of the air, the tyres, the heater and the pack', {
    temperature: temperatureField,
    rollingResistance: optional(given('ratio', 'Rolling resistance coefficient in this season', { min: 0 })),
    auxiliaries: optional(heatedField),
    usableEnergy,
    stateOfCharge,
    reserve,
    cellTemperature,
  })
})()

const seasonsFields = /*@__PURE__*/ (() => ({
  ...powertrainFields,
  auxiliaries: optional(auxiliariesField),
  pack: sourceFields.pack,
  air: airWithoutTemperature,
  speed: optional(speedField),
  cycle: optional(cycleField),
  journey: optional(journeyField),
  pace: optional(paceField),
  summer: seasonField,
  winter: seasonField,
}))()

type Asked = Read<typeof seasonsFields>
type SeasonName = 'summer' | 'winter'
type Driven = Parameters<typeof driveCycle>[0]

const where = 'seasons'

/** What changes from summer to winter, in words; a set of them is a number of which each has a binary digit. */
const inWords = {
  airDensity: 'air density',
  rollingResistance: 'rolling resistance',
  heater: 'heater',
  usableCapacity: 'usable capacity',
} as const
type Cause = keyof typeof inWords
const causes = /*@__PURE__*/ Object.keys(inWords) as Cause[]
/** Nothing has changed, and all has. */
const [SUMMER, WINTER] = [0, 2 ** 4 - 1]
/**
 * Share of the 24 orders of four causes in which a given one comes just after a given set of 0, 1, 2 or 3 of the others:
 * n! (3 - n)! of 4!.
 */
const WEIGHTS = [1 / 4, 1 / 12, 1 / 12, 1 / 4]

const has = (set: number, i: number) => (set & (1 << i)) !== 0

/** What a drive is told of each cause in a season. */
type Changes = { readonly [cause in Cause]: Partial<Driven> }

/**
 * Tells what winter takes from the range, and how much of it is due to denser air, harder rolling tyres, the heater, and
 * what the cold pack gives less.
 *
 * What a season does not say of the auxiliaries is as for the whole vehicle. Where it has no rolling resistance of its own,
 * that of the car, or its coast-down, is taken to be the one at 20 °C, and {@link rollingTemperatureFactor} corrects it,
 * between -40 °C and 50 °C. What ends the range stands in each season: `usableEnergy`, or with a `pack` its `stateOfCharge`,
 * `reserve` and `cellTemperature`.
 *
 * The causes act on each other: a heater costs more kilometres of a full pack than of a small one, so what a cause takes
 * depends on which others are there already. The part of each is its mean over all 24 orders in which the four can change
 * from summer to winter, for which 16 drives are driven. The parts add up to the loss.
 *
 * Answers: how much less far does the car come in winter, and how much of it is due to air, tyres, heater and pack?
 *
 * - `car`: the car, `{ mass, wheelbase?, track?, centreOfGravity?, drivenAxle?, tyre?, rollingRadius?,
 *   rollingResistance?, dragArea?, roadLoad?, rotatingFactor?, wheelInertia?, friction? }`
 * - `gearbox`: the gearbox with its final drive, `{ gears?, finalDrive?, efficiency, ratedInputTorque? }`
 * - `motor`: the motor with its controller, `{ peakTorque?, peakPower?, maximumSpeed?, continuousTorque?,
 *   continuousPower?, peakTime?, timeConstant?, curve?, ratedVoltage?, loss?, efficiency?, inertia? }`
 * - `controller`: the controller of the motor, `{ minimumVoltage?, maximumVoltage?, batteryCurrent?,
 *   continuousCurrent?, batteryCurrentTime?, chargeCurrent?, regeneration?, capacitance? }`, optional
 * - `pack`: a pack of equal modules, `{ module, series, parallel }`, optional
 * - `auxiliaries`: power of lamps, pumps and the 12 V system, in kW, at least 0 kW, optional
 * - `air`: the air, `{ temperature?, altitude?, headwind? }`, optional
 * - `speed`: steady speed, in km/h, above 0 km/h, optional
 * - `cycle`: the drive cycle, optional
 * - `journey`: the stretches of a journey, one after the other, a list of at least 1, optional
 *   - `name`: what the stretch is called, text, optional
 *   - `distance`: length of the stretch, in m, at least 0.001 m and at most 2000000 m
 *   - `speed`: speed on the stretch, in km/h, above 0 km/h
 *   - `grade`: grade, rise over run, a plain number, optional
 *   - `stops`: how often the car comes to a stand, the last time at its end, a whole number, at least 1 and at most
 *     1000, optional
 *   - `standing`: time at a stand, each time, in s, at least 0 s, optional
 *   - `temperature`: temperature of the air, in °C, above -273.15 °C, optional
 *   - `altitude`: altitude of the road above sea level, in m, at least -2000 m and at most 11000 m, optional
 *   - `headwind`: head wind, negative for a tail wind, in km/h, optional
 *   - `auxiliaries`: power of all that is on, the heater too, in kW, at least 0 kW, optional
 * - `pace`: how briskly the car speeds up and slows down, optional
 *   - `acceleration`: acceleration while it speeds up, in m/s², at least 0.01 m/s² and at most 30 m/s², optional
 *   - `braking`: deceleration while it slows down, as a positive figure, in m/s², at least 0.01 m/s² and at most 30
 *     m/s², optional
 * - `summer`: what a season makes of the air, the tyres, the heater and the pack
 *   - `temperature`: temperature of the air, in °C, above -273.15 °C
 *   - `rollingResistance`: rolling resistance coefficient in this season, a plain number, at least 0, optional
 *   - `auxiliaries`: power of all that is on, the heater too, in kW, at least 0 kW, optional
 *   - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 *   - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 *   - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 *   - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - `winter`: what a season makes of the air, the tyres, the heater and the pack
 *   - `temperature`: temperature of the air, in °C, above -273.15 °C
 *   - `rollingResistance`: rolling resistance coefficient in this season, a plain number, at least 0, optional
 *   - `auxiliaries`: power of all that is on, the heater too, in kW, at least 0 kW, optional
 *   - `usableEnergy`: energy that may be used, in kWh, above 0 kWh, optional
 *   - `stateOfCharge`: state of charge at the start, a plain number, at least 0 and at most 1, optional
 *   - `reserve`: state of charge at which the pack counts as empty, a plain number, at least 0 and at most 1, optional
 *   - `cellTemperature`: temperature of the cells, in °C, above -273.15 °C, optional
 * - always assumed: a cause takes the mean of what it takes over all orders in which the four can set in
 *
 * @returns The {@link Seasons}. `share` is absent where nothing is lost.
 * @throws InputError for input that cannot be used, by its path; CalculationError for a car that cannot drive, or that comes
 * to no end of its range, with the season and why.
 * Source: Shapley, A value for n-person games (1953), from memory; Gillespie, Fundamentals of Vehicle Dynamics
 * (1992), chapter 4.
 *
 * @example
 * ```ts
 * const { lost, causes } = seasons({
 *   car: { mass: '780 kg', rollingResistance: 0.012, dragArea: '0.62 m²' },
 *   gearbox: { efficiency: 0.93 },
 *   motor: { efficiency: 0.86 },
 *   speed: '80 km/h',
 *   summer: { temperature: '25 °C', auxiliaries: '250 W', usableEnergy: '12 kWh' },
 *   winter: { temperature: '-5 °C', auxiliaries: '1.45 kW', usableEnergy: '10.8 kWh' },
 * })
 * String(lost) // '40.28 km'
 * const { airDensity, rollingResistance, heater, usableCapacity } = causes
 * String(airDensity.range) // '6.518 km'
 * String(rollingResistance.range) // '9.257 km'
 * String(heater.share) // '34.08 %'
 * String(usableCapacity.share) // '26.76 %'
 * ```
 */
export const seasons = /*@__PURE__*/ (() =>
  procedure({
    name: where,
    title: 'What winter takes from the range',
    answers: 'How much less far does the car come in winter, and how much of it is due to air, tyres, heater and pack?',
    input: seasonsFields,
    source: [
      cite('Shapley, A value for n-person games (1953)', 'from memory'),
      cite('Gillespie, Fundamentals of Vehicle Dynamics (1992)', 'chapter 4'),
    ],
    assumes: ['A cause takes the mean of what it takes over all orders in which the four can set in.'],
    work: compared,
  }))()

function compared(asked: Asked): Unfinished<Seasons> {
  refuse(asked)
  const factors = { summer: factorIn('summer', asked), winter: factorIn('winter', asked) }
  const changes = { summer: changesIn('summer', asked, factors), winter: changesIn('winter', asked, factors) }
  const base = sharedOf(asked)
  const driven = (set: number) => {
    const told = causes.map((cause, i) => changes[has(set, i) ? 'winter' : 'summer'][cause])
    return rangeOf(Object.assign({}, base, ...told), asked.speed, set)
  }
  const summer = section(
    ({ range }) => `In summer: ${range}`,
    () => driven(SUMMER),
  )
  const winter = section(
    ({ range }) => `In winter: ${range}`,
    () => driven(WINTER),
  )
  const ranges = unrecorded(() =>
    Array.from({ length: WINTER + 1 }, (_, set) => {
      const season = set === SUMMER ? summer : set === WINTER ? winter : driven(set)
      return season.range.si
    }),
  )
  const lost = summer.range.si - winter.range.si
  const lossBy = (cause: Cause): SeasonLoss => {
    const part = partOf(causes.indexOf(cause), ranges)
    return section(`By ${inWords[cause]}, over all orders: ${way(part)}`, () => ({
      range: way(part),
      ...(lost > 0 ? { share: fromSi('ratio', part / lost, '%') } : {}),
    }))
  }
  return {
    summer: { range: summer.range, consumption: summer.consumption },
    winter: { range: winter.range, consumption: winter.consumption },
    lost: way(lost),
    causes: {
      airDensity: lossBy('airDensity'),
      rollingResistance: lossBy('rollingResistance'),
      heater: lossBy('heater'),
      usableCapacity: lossBy('usableCapacity'),
    },
    ...findingsOf(factors, summer, winter),
  }
}

const way = (metres: number) => fromSi('length', metres, 'km')

/** The mean over all orders of what one cause takes, from the range of every set of causes. */
function partOf(i: number, ranges: readonly number[]): number {
  let part = 0
  for (const [set, without] of ranges.entries()) {
    if (has(set, i)) continue
    const others = causes.filter((_, k) => has(set, k)).length
    part += (WEIGHTS[others] as number) * (without - (ranges[set | (1 << i)] as number))
  }
  return part
}

/** Refuses what does not go together, each fault by its path. */
function refuse(asked: Asked): void {
  const { speed, cycle, journey, pace, air } = asked
  const roads = Object.entries({ speed, cycle, journey }).filter(([, road]) => road !== undefined)
  const issues: InputIssue[] = []
  if (roads.length !== 1) {
    const expected =
      "one of them: speed such as '70 km/h', cycle such as 'NEDC', or journey such as [{ distance: '12 km', speed: '70 km/h' }]"
    const received = roads.length === 0 ? 'none' : roads.map(([road]) => road).join(' and ')
    issues.push({ path: 'speed, cycle and journey', expected, received })
  }
  if (speed !== undefined && pace !== undefined) {
    issues.push({ path: 'pace', expected: 'a journey to which it belongs, or nothing', received: 'a steady speed' })
  }
  const inItsPlace = (key: 'temperature' | 'auxiliaries') =>
    `nothing: summer.${key} and winter.${key} stand in its place`
  if (air.temperature !== undefined) {
    issues.push({ path: 'air.temperature', expected: inItsPlace('temperature'), received: String(air.temperature) })
  }
  for (const [i, stretch] of (journey ?? []).entries()) {
    for (const key of ['temperature', 'auxiliaries'] as const) {
      if (stretch[key] === undefined) continue
      issues.push({ path: `journey[${i}].${key}`, expected: inItsPlace(key), received: String(stretch[key]) })
    }
  }
  issues.push(...seasonIssues('summer', asked), ...seasonIssues('winter', asked))
  if (issues.length > 0) throw new InputError(where, issues)
}

function seasonIssues(name: SeasonName, asked: Asked): InputIssue[] {
  const { car, pack } = asked
  const { rollingResistance, usableEnergy, stateOfCharge, reserve, cellTemperature } = asked[name]
  const issues: InputIssue[] = []
  if (rollingResistance !== undefined && car.roadLoad !== undefined) {
    const expected = 'nothing: car.roadLoad is corrected for the temperature of the air'
    issues.push({ path: `${name}.rollingResistance`, expected, received: String(rollingResistance) })
  }
  if (pack !== undefined) {
    if (usableEnergy === undefined) return issues
    const expected = 'nothing: the pack tells its energy'
    return [...issues, { path: `${name}.usableEnergy`, expected, received: String(usableEnergy) }]
  }
  if (usableEnergy === undefined) {
    const expected = "an energy such as '12 kWh', or a pack for both seasons"
    issues.push({ path: `${name}.usableEnergy`, expected, received: 'nothing' })
  }
  for (const [key, stray] of Object.entries({ stateOfCharge, reserve, cellTemperature })) {
    if (stray === undefined) continue
    const expected = 'a pack to which it belongs, or nothing'
    issues.push({ path: `${name}.${key}`, expected, received: 'no pack' })
  }
  return issues
}

/** What of a drive belongs to a season, and is blamed there. */
const ofSeason = ['usableEnergy', 'stateOfCharge', 'reserve', 'cellTemperature']

/** Does the work of another function for a season, and blames on the season what it refuses. */
function blamed<T>(name: SeasonName | undefined, when: string, work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof CalculationError) {
      throw new CalculationError(where, `${when} ${error.message.slice(error.where.length + 2)}`, error.figures)
    }
    if (!(error instanceof InputError)) throw error
    const issues = error.issues.map((issue) => {
      const isOfSeason = name !== undefined && ofSeason.includes(issue.path)
      return isOfSeason ? { ...issue, path: `${name}.${issue.path}` } : issue
    })
    throw new InputError(where, issues)
  }
}

/** What a drive is told of a season, by cause. */
function changesIn(name: SeasonName, asked: Asked, factors: Factors): Changes {
  const { temperature, usableEnergy, stateOfCharge, reserve, cellTemperature } = asked[name]
  return {
    airDensity: { air: { ...asked.air, temperature } },
    rollingResistance: { car: carIn(name, asked, factors) },
    heater: { auxiliaries: asked[name].auxiliaries ?? asked.auxiliaries },
    usableCapacity: { usableEnergy, stateOfCharge, reserve, cellTemperature },
  }
}

/** How much harder the tyres of the car roll in each season, where that is not told. */
type Factors = { readonly [name in SeasonName]: Quantity<'ratio'> | undefined }

/** How much harder the tyres of the car roll than at 20 °C; undefined where the season tells its rolling resistance. */
function factorIn(name: SeasonName, asked: Asked): Quantity<'ratio'> | undefined {
  const { temperature, rollingResistance } = asked[name]
  if (rollingResistance !== undefined) return undefined
  return section(`The tyres in ${name}`, () => {
    try {
      return rollingTemperatureFactor({ temperature })
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      const hint =
        asked.car.roadLoad === undefined ? `beyond it, give ${name}.rollingResistance` : 'the range of its source'
      throw new InputError(
        where,
        error.issues.map((issue) => ({ ...issue, path: `${name}.temperature`, hint })),
      )
    }
  })
}

function carIn(name: SeasonName, asked: Asked, factors: Factors): Driven['car'] {
  const { car } = asked
  const factor = factors[name]?.si
  // Driven in eight mixtures of the seasons, it is read but once.
  if (factor === undefined) return settled({ ...car, rollingResistance: asked[name].rollingResistance })
  if (car.roadLoad !== undefined) {
    const { constant, linear } = car.roadLoad
    const roadLoad = settled({ ...car.roadLoad, constant: constant.times(factor), linear: linear.times(factor) })
    return settled({ ...car, roadLoad })
  }
  return settled({ ...car, rollingResistance: car.rollingResistance?.times(factor) })
}

/** What both seasons share, as it was given. */
function sharedOf({ gearbox, motor, controller, pack, cycle, journey, pace }: Asked) {
  return { gearbox, motor, controller, pack, cycle, journey, pace, step: STEP } as const
}

/** A season, or a mixture of both, as it was driven. */
interface DrivenSeason extends SeasonRange, Findings {}

/**
 * Drives with a set of causes as in winter, and the others as in summer. The tyres of each season are told by
 * {@link findingsOf}, and its cells by what it is given.
 */
function rangeOf(drive: Driven, speed: Quantity<'speed'> | undefined, set: number): DrivenSeason {
  const name = set === SUMMER ? 'summer' : set === WINTER ? 'winter' : undefined
  const changed = causes.filter((_, i) => has(set, i)).map((cause) => inWords[cause])
  const when = name === undefined ? `in summer but for the ${changed.join(' and ')} of winter` : `in ${name}`
  return blamed(name, when, () => {
    if (speed === undefined) {
      const driven = driveCycle(drive)
      const { range, consumption, checks, notes, cautions } = driven
      const assumptions = withWeatherCounted(driven.assumptions)
      if (range === undefined) throw new CalculationError(where, whyNoRange(driven))
      return { range, consumption, checks, assumptions, notes, cautions }
    }
    const { cycle: _, journey: __, pace: ___, step: ____, ...steady } = drive
    const { speeds, ...findings } = rangeAtSpeed({ ...steady, speed })
    const [{ range, consumption }] = speeds as [(typeof speeds)[number]]
    if (range === undefined) throw new CalculationError(where, `${NO_END}: at ${speed} it takes ${consumption}`)
    return { range, consumption, ...findings, assumptions: withWeatherCounted(findings.assumptions) }
  })
}

const NO_END = 'the range has no end'

/** Why a drive comes to no end of its range. */
function whyNoRange({ net, distance, missed, rangeEndedBy }: DrivenCycle): string {
  if (net.si <= 0) return `${NO_END}: the drive takes ${net}`
  if (rangeEndedBy !== undefined) return `the range is ended by ${rangeEndedBy}`
  return `the car comes to a stand after ${distance}: what holds it is the ${missed.at(-1)?.limitedBy}`
}

/**
 * What was checked and taken for granted, with the season where it goes for one alone. What is unusual is told of the
 * figures that were given, not of those of a season made from them.
 */
function findingsOf(
  factors: Factors,
  summer: DrivenSeason,
  winter: DrivenSeason,
): Pick<Findings, 'checks' | 'assumptions' | 'cautions'> {
  const checksIn = (name: SeasonName, { checks }: Findings) =>
    checks.map((each) => renamed(each, `${name}.${each.id}`, `${each.name}, in ${name}`))
  const isIn = ({ assumptions }: Findings, text: string) => assumptions.some((each) => each.text === text)
  const only = (name: SeasonName, { assumptions }: Findings, other: Findings) =>
    assumptions
      .filter(({ text }) => !isIn(other, text))
      .map(({ id, text }) => assumed(`${name}.${id}`, `In ${name}: ${text}`))
  const harder = (['summer', 'winter'] as const).flatMap((name) =>
    factors[name] === undefined ? [] : [`${factors[name]} times as hard in ${name}`],
  )
  return {
    checks: [...checksIn('summer', summer), ...checksIn('winter', winter)],
    assumptions: [
      ...summer.assumptions.filter(({ text }) => isIn(winter, text)),
      ...only('summer', summer, winter),
      ...only('winter', winter, summer),
      ...(harder.length === 0
        ? []
        : [
            assumed(
              'car.rollingResistance.at20',
              `The rolling resistance of the car is that at 20 °C: its tyres roll ${harder.join(', and ')}.`,
            ),
          ]),
    ],
    cautions: winter.cautions,
  }
}
