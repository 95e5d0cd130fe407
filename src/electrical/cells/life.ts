/**
 * What a pack loses over the years by standing and by use, as published models of cells have it, with a band.
 *
 * Rests on the models of ageing.ts. Loss by standing and loss by use add up.
 */
import { cite } from '../../formula/index.js'
import { lithiumCells } from '../../procedure/cautions.js'
import {
  assumed,
  type Check,
  type Findings,
  given,
  group,
  isAbove,
  list,
  optional,
  pairs,
  procedure,
  type Read,
  says,
  text,
  trial,
  type Unfinished,
  whole,
} from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity, quantity } from '../../quantity/index.js'
import { openCircuitOf, packFields, refuseModule } from '../pack/module.js'
import { packResistance, parallelCharge } from '../pack/pack.js'
import {
  cellsOfModels,
  naumannCalendarLoss,
  naumannCycleLoss,
  reachOf,
  schmalstiegCalendarLoss,
  schmalstiegCalendarRise,
  schmalstiegCycleLoss,
  schmalstiegCycleRise,
  wangCycleLoss,
} from './ageing.js'

/** From the least to the most that the models tell. */
export interface LifeBand<Q> {
  readonly least: Q
  readonly most: Q
}

/** A pack after some years, by the models. */
export interface PackYear {
  readonly year: number
  readonly capacity: LifeBand<Quantity<'charge'>>
  /** Share of the capacity when new, or of that of today where nobody told the other. */
  readonly left: LifeBand<Quantity<'ratio'>>
  /** Absent where no model tells it. */
  readonly resistance?: LifeBand<Quantity<'resistance'>>
}

/** What a pack loses over the years. */
export interface PackLife extends Findings {
  /** What the models are of; absent where there is none. */
  readonly cell?: string
  /** Charge given in a year, in whole capacities. */
  readonly cyclesPerYear: Quantity<'ratio'>
  /** One after the other; none where there is no model. */
  readonly years: readonly PackYear[]
}

/** How a pack is charged. @internal */
export const habitField = /*@__PURE__*/ (() =>
  group('How it is charged', {
    to: given('ratio', 'State of charge to which it is charged', { above: 0, max: 1 }),
    from: given('ratio', 'State of charge at which it is charged', { min: 0, below: 1 }),
    standing: optional(given('ratio', 'State of charge in which it stands most of the time', { min: 0, max: 1 }), {
      absent:
        'The pack stands at the state to which it is charged: where it is charged just before a drive, give standing.',
    }),
  }))()

/** How warm cells are over a year. @internal */
export const temperaturesField = /*@__PURE__*/ (() =>
  pairs(
    'Temperatures of the cells over a year, with the share of the year for each; the shares make 100 %',
    given('temperature', 'Temperature of the cells', { usual: ['-20 °C', '45 °C'], finest: '0.1 °C' }),
    given('ratio', 'Share of the year', { above: 0, max: 1 }),
    { least: 1 },
  ))()

/** How far ahead the models are asked. @internal */
export const yearsField = /*@__PURE__*/ (() =>
  whole('How many years to tell', {
    min: 1,
    max: 30,
    default: 10,
    because: 'as long as a conversion should serve, common practice, no source',
  }))()

const lifeFields = /*@__PURE__*/ (() => ({
  pack: group('The pack', packFields),
  journeys: list(
    'What the car drives in a year',
    group('A journey', {
      name: optional(text('What the journey is called')),
      perYear: whole('How often it is made in a year', { min: 0, max: 20_000 }),
      charge: given('charge', 'Charge that it draws from the pack', { min: 0, usual: ['0.5 Ah', '300 Ah'] }),
      current: given('current', 'Current while it drives, on average', { min: 0, usual: ['1 A', '400 A'] }),
    }),
    { least: 1 },
  ),
  temperatures: temperaturesField,
  charge: habitField,
  years: yearsField,
}))()

type Asked = Read<typeof lifeFields>

/** What one model alone tells is taken from half to twice of it: two of iron phosphate differ by 2 to 4 times. */
const SPREAD = 2
const where = 'packLife'
const YEAR = 365.25 * 24 * 3600

/**
 * Tells what published models of cells say of a pack over the years: what it still holds, and what it resists.
 *
 * The models are of other cells than these. They tell how time, warmth, charge and use go together, and the band how far they
 * are apart; what a pack does, only its own tests tell. None knows the bend after which worn cells fail fast.
 *
 * Answers: what do published models say that a pack holds and resists after some years?
 *
 * - `pack`: the pack, `{ module, series, parallel }`
 * - `journeys`: what the car drives in a year, a list of at least 1
 *   - `name`: what the journey is called, text, optional
 *   - `perYear`: how often it is made in a year, a whole number, at least 0 and at most 20000
 *   - `charge`: charge that it draws from the pack, in Ah, at least 0 Ah
 *   - `current`: current while it drives, on average, in A, at least 0 A
 * - `temperatures`: temperatures of the cells over a year, with the share of the year for each; the shares make 100
 *   %, pairs of temperature of the cells and share of the year
 * - `charge`: how it is charged
 *   - `to`: state of charge to which it is charged, a plain number, above 0 and at most 1
 *   - `from`: state of charge at which it is charged, a plain number, at least 0 and below 1
 *   - `standing`: state of charge in which it stands most of the time, a plain number, at least 0 and at most 1,
 *     optional
 * - `years`: how many years to tell, a whole number, at least 1 and at most 30, 10 by default (as long as a
 *   conversion should serve, common practice, no source)
 * - always assumed: the models are of other cells than these: they tell how time, warmth and use go together, not
 *   what this pack will do
 * - always assumed: no model knows the bend after which worn cells fail fast, nor what a charge in the cold does
 * - always assumed: the pack ages as if it were new today, which is faster than one that has stood for years
 * - always assumed: loss by standing and loss by use add up, and all cells are as warm as is told, standing and
 *   driving
 *
 * @returns The pack of each year from the least to the most, or no year where no model fits the chemistry.
 * @throws InputError for input that cannot be used, and beyond the warmth and the rate that the models reach, by its path.
 * Source: Wang and others, Journal of Power Sources 196 (2011) 3942; Schmalstieg and others, Journal of Power Sources
 * 257 (2014) 325; Naumann and others, Journal of Energy Storage 17 (2018) 153; Journal of Power Sources 451 (2020)
 * 227666.
 *
 * @example
 * ```ts
 * const { years, cell } = packLife({
 *   pack: {
 *     module: {
 *       name: 'invented module of 16 cells', cellsInSeries: 16, chemistry: 'LFP', nominalVoltage: '51.2 V',
 *       minimumVoltage: '44 V', maximumVoltage: '57.6 V', capacity: '100 Ah', resistance: '10 mΩ', mass: '40 kg',
 *       continuousCurrent: '100 A',
 *     },
 *     series: 4,
 *     parallel: 1,
 *   },
 *   journeys: [{ perYear: 220, charge: '40 Ah', current: '30 A' }],
 *   temperatures: [['8 °C', 0.5], ['22 °C', 0.5]],
 *   charge: { to: 0.9, from: 0.4 },
 *   years: 5,
 * })
 * cell // 'iron phosphate against graphite'
 * `${years[4]?.capacity.least} to ${years[4]?.capacity.most}` // '76.78 Ah to 92.35 Ah'
 * ```
 */
export const packLife = /*@__PURE__*/ procedure({
  name: where,
  title: 'Life of a pack',
  answers: 'What do published models say that a pack holds and resists after some years?',
  input: lifeFields,
  source: [
    cite('Wang and others, Journal of Power Sources 196 (2011) 3942'),
    cite('Schmalstieg and others, Journal of Power Sources 257 (2014) 325'),
    cite('Naumann and others, Journal of Energy Storage 17 (2018) 153; Journal of Power Sources 451 (2020) 227666'),
  ],
  assumes: [
    'The models are of other cells than these: they tell how time, warmth and use go together, not what this pack will do.',
    'No model knows the bend after which worn cells fail fast, nor what a charge in the cold does.',
    'The pack ages as if it were new today, which is faster than one that has stood for years.',
    'Loss by standing and loss by use add up, and all cells are as warm as is told, standing and driving.',
  ],
  work: (asked): Unfinished<PackLife> => {
    const { pack, journeys, charge } = asked
    const { module, series, parallel } = pack
    refuse(asked)
    const capacity = parallelCharge({ count: parallel, capacity: module.capacity })
    const whole =
      module.newCapacity === undefined ? capacity : parallelCharge({ count: parallel, capacity: module.newCapacity })
    const resistance = packResistance({ series, parallel, resistance: module.resistance })
    const given = journeys.reduce((sum, each) => sum + each.perYear * each.charge.si, 0)
    const cycles = given / capacity.si
    const use = { cycles, rate: rateOf(asked, capacity), depth: charge.to.si - charge.from.si }
    const found = modelOf(asked, use)
    const band = <Q>(one: Q, other: Q): LifeBand<Q> => ({ least: one, most: other })
    const years = Array.from({ length: found === undefined ? 0 : asked.years }, (_, i) => i + 1).flatMap((year) => {
      const { loss, rise } = (found as Model).after(year)
      const charges = loss.map((each) => capacity.minus(whole.times(each))) as [Quantity<'charge'>, Quantity<'charge'>]
      // Beyond all of it the models say nothing.
      if (charges[1].si <= 0) return []
      const left = charges.map((each) => quantity('ratio', each.ratioTo(whole)).as('%')) as [
        Quantity<'ratio'>,
        Quantity<'ratio'>,
      ]
      return [
        {
          year,
          capacity: band(charges[1], charges[0]),
          left: band(left[1], left[0]),
          ...(rise === undefined
            ? {}
            : { resistance: band(resistance.times(1 + rise[0]), resistance.times(1 + rise[1])) }),
        },
      ]
    })
    return {
      ...(found === undefined ? {} : { cell: found.cell }),
      cyclesPerYear: quantity('ratio', cycles),
      years,
      checks: [modelTrial(found), depthTrial(asked, capacity, use.depth)],
      assumptions: [
        ...(found?.assumptions ?? []).map((each, i) => assumed(`life.model.${i + 1}`, each)),
        ...(module.newCapacity === undefined
          ? [
              assumed(
                'life.whole',
                'The losses are shares of the capacity of today: that of the module when new is not given (pack.module.newCapacity).',
              ),
            ]
          : []),
      ],
      cautions: [lithiumCells],
    }
  },
})

/** What is done with a pack in a year. */
interface Use {
  readonly cycles: number
  /** In C; the mean over all charge that is drawn. */
  readonly rate: number
  readonly depth: number
}

/** A chemistry's models: loss and rise after so many years, the least and the most of each. */
interface Model {
  readonly cell: string
  readonly basis: string
  readonly after: (years: number) => {
    readonly loss: readonly [least: number, most: number]
    readonly rise?: readonly [least: number, most: number]
  }
  readonly assumptions: readonly string[]
}

function rateOf({ journeys }: Asked, capacity: Quantity<'charge'>): number {
  const drawn = journeys.reduce((sum, { perYear, charge }) => sum + perYear * charge.si, 0)
  if (drawn === 0) return 0
  const weighted = journeys.reduce((sum, { perYear, charge, current }) => sum + perYear * charge.si * current.si, 0)
  return ((weighted / drawn) * 3600) / capacity.si
}

function refuse({ pack, journeys, temperatures, charge }: Asked): void {
  refuseModule(where, 'pack.module', pack.module)
  const issues: InputIssue[] = []
  const shares = temperatures.reduce((sum, [, share]) => sum + share.si, 0)
  if (Math.abs(shares - 1) > 1e-6) {
    const received = String(quantity('ratio', shares).as('%'))
    issues.push({ path: 'temperatures', expected: 'shares of the year that make 100 %', received })
  }
  if (charge.from.si >= charge.to.si) {
    issues.push({ path: 'charge.from', expected: `less than charge.to, ${charge.to}`, received: String(charge.from) })
  }
  const capacity = pack.module.capacity.times(pack.parallel)
  journeys.forEach((each, i) => {
    if (!isAbove(each.charge, capacity)) return
    const expected = `at most what the pack holds, ${capacity}`
    issues.push({ path: `journeys[${i}].charge`, expected, received: String(each.charge) })
  })
  if (issues.length > 0) throw new InputError(where, issues)
}

/** The models of the chemistry of a pack; undefined where there is none. */
function modelOf(asked: Asked, use: Use): Model | undefined {
  const { chemistry } = asked.pack.module
  if (chemistry === undefined) return undefined
  return chemistry === 'LFP' ? ironPhosphate(asked, use) : nmc(asked, use)
}

interface Reach {
  readonly coldest: number
  readonly warmest: number
  readonly slowest: number
  readonly fastest: number
}

/** The temperatures of a year within the reach of a model: what is warmer is refused, what is colder taken as its coldest. */
function yearOf({ temperatures }: Asked, { coldest, warmest }: Reach): (readonly [kelvins: number, share: number])[] {
  const issues = temperatures.flatMap(([at], i) =>
    at.si <= warmest + 273.15 + 1e-9
      ? []
      : [
          {
            path: `temperatures[${i}][0]`,
            expected: `at most ${warmest} °C, to which the model of these cells reaches`,
            received: String(at),
          },
        ],
  )
  if (issues.length > 0) throw new InputError(where, issues)
  return temperatures.map(([at, share]) => [Math.min(Math.max(at.si, coldest + 273.15), warmest + 273.15), share.si])
}

function rateWithin({ rate }: Use, { slowest, fastest }: Reach): number {
  if (rate > fastest * (1 + 1e-9)) {
    const received = String(quantity('cRate', rate, 'C'))
    const expected = `currents of at most ${fastest} C on average, to which the models of these cells reach`
    throw new InputError(where, [{ path: 'journeys', expected, received }])
  }
  return Math.min(Math.max(rate, slowest), fastest)
}

/** A loss that grows by a power of time, over a year of several temperatures: the age that each adds, one after the other. */
function over(
  year: readonly (readonly [kelvins: number, share: number])[],
  power: number,
  of: (kelvins: number) => number,
) {
  return year.reduce((sum, [kelvins, share]) => sum + share * Math.max(0, of(kelvins)) ** (1 / power), 0) ** power
}

const colder = (reach: Reach, what: string) =>
  `Below ${reach.coldest} °C ${what} is taken as at ${reach.coldest} °C, more than by its law: colder cells were not tested.`

function ironPhosphate(asked: Asked, use: Use): Model {
  const { wang, naumann } = reachOf
  const standing = (asked.charge.standing ?? asked.charge.to).si
  const calendar = over(yearOf(asked, naumann), 0.5, (temperature) =>
    naumannCalendarLoss.compute({ stateOfCharge: standing, temperature, time: YEAR }),
  )
  const byNaumann = naumannCycleLoss.compute({
    rate: rateWithin(use, naumann) / 3600,
    depth: use.depth,
    cycles: use.cycles,
  })
  const throughput = use.cycles * quantity('charge', cellsOfModels.wang).si
  const byWang = over(yearOf(asked, wang), 0.55, (temperature) =>
    wangCycleLoss.compute({ rate: rateWithin(use, wang) / 3600, temperature, throughput }),
  )
  return {
    cell: 'iron phosphate against graphite',
    basis: 'Wang (2011) and Naumann (2018, 2020)',
    after: (years) => {
      const standingLoss = calendar * Math.sqrt(years)
      const byUse = [Math.max(0, byNaumann) * Math.sqrt(years), byWang * years ** 0.55]
      return { loss: [standingLoss / SPREAD + Math.min(...byUse), standingLoss * SPREAD + Math.max(...byUse)] }
    },
    assumptions: [
      'By use the band lies between two models of iron phosphate, of Naumann and of Wang; by standing it lies from half to twice of what the one model tells, as models differ by 2 to 4 times (common practice, no source).',
      'How the resistance of iron phosphate rises is not told: no published law is at hand.',
      ...(asked.temperatures.some(([at]) => at.si < wang.coldest + 273.15)
        ? [colder(wang, 'the loss by use after Wang')]
        : []),
      ...(asked.temperatures.some(([at]) => at.si < naumann.coldest + 273.15)
        ? [colder(naumann, 'the loss by standing')]
        : []),
      ...(use.rate < wang.slowest
        ? [
            `The current is ${quantity('cRate', use.rate, 'C')} on average: the models were made from ${naumann.slowest} C and ${wang.slowest} C up, and are taken there.`,
          ]
        : []),
    ],
  }
}

function nmc(asked: Asked, use: Use): Model {
  const { schmalstieg } = reachOf
  const { module } = asked.pack
  const curve = openCircuitOf(where, 'pack.module', module)
  const voltageAt = (state: number, path: string) => {
    const volts = curve.voltsAt(state) / module.cellsInSeries
    if (volts >= 3.2 && volts <= 4.2 * (1 + 1e-12)) return Math.min(volts, 4.2)
    const received = `${quantity('ratio', state).as('%')}, ${quantity('voltage', volts, 'V')} a cell`
    const expected = 'a state of charge at which a cell rests between 3.2 V and 4.2 V, to which its model reaches'
    throw new InputError(where, [{ path, expected, received }])
  }
  const { to, from, standing } = asked.charge
  const stood = voltageAt((standing ?? to).si, standing === undefined ? 'charge.to' : 'charge.standing')
  const mean = voltageAt((to.si + from.si) / 2, 'charge.from')
  rateWithin(use, schmalstieg)
  const year = yearOf(asked, schmalstieg)
  const byStanding = (law: typeof schmalstiegCalendarLoss | typeof schmalstiegCalendarRise) =>
    over(year, 0.75, (temperature) => law.compute({ voltage: stood, temperature, time: YEAR }))
  const throughput = 2 * use.cycles * quantity('charge', cellsOfModels.schmalstieg).si
  const cycled = { voltage: mean, depth: use.depth, throughput }
  const [lossStanding, riseStanding] = [byStanding(schmalstiegCalendarLoss), byStanding(schmalstiegCalendarRise)]
  const [lossByUse, riseByUse] = [
    schmalstiegCycleLoss.compute(cycled),
    Math.max(0, schmalstiegCycleRise.compute(cycled)),
  ]
  return {
    cell: 'NMC against graphite',
    basis: 'Schmalstieg (2014)',
    after: (years) => {
      const loss = lossStanding * years ** 0.75 + lossByUse * Math.sqrt(years)
      const rise = riseStanding * years ** 0.75 + riseByUse * years
      return { loss: [loss / SPREAD, loss * SPREAD], rise: [rise / SPREAD, rise * SPREAD] }
    },
    assumptions: [
      'The band lies from half to twice of what the one model of NMC tells, as two models of iron phosphate differ by 2 to 4 times (common practice, no source).',
      'Charge and discharge both count as charge that goes through the cell, which is the worse reading of the model.',
      curve.basis,
      ...(asked.temperatures.some(([at]) => at.si < schmalstieg.coldest + 273.15)
        ? [colder(schmalstieg, 'the loss by standing')]
        : []),
    ],
  }
}

function modelTrial(found: Model | undefined): Check {
  return trial(
    'life.model',
    'Model of the cells',
    found === undefined
      ? {
          unknown:
            'what the pack loses is not known: give pack.module.chemistry, NMC or LFP; of other cells no model is at hand',
        }
      : { pass: `the loss is that of ${found.cell} after ${found.basis}, not that of these cells` },
    'published models of cells',
    'pack.module.chemistry',
  )
}

function depthTrial({ journeys }: Asked, capacity: Quantity<'charge'>, depth: number): Check {
  const most = quantity('charge', Math.max(...journeys.map(({ charge }) => charge.si)), 'C').as('Ah')
  return trial(
    'life.depth',
    'Charge of the longest journey',
    says`the longest journey draws ${most}, at most the ${capacity.times(depth)} between the charges`,
    'charge.to less charge.from',
    'journeys',
    'charge',
  )
}
