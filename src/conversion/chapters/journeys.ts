/** The journeys of a sheet, driven in each season: energy, range, what the pack and its cables bear. */

import { section as heading } from '../../formula/index.js'
import { merged } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type DrivenCycle, driveCycle } from '../../range/index.js'
import { heatCapacity, type PackTemperature, packTemperature } from '../../thermal/index.js'
import type { Build } from '../sheet/build.js'
import { cycleCalled } from '../sheet/cycles.js'
import { laden, onRoad } from './drive.js'
import type { Pack } from './pack.js'
import { inSeason, ofSheet, type Season, seasonsOf, tyresIn, warmedIn } from './season.js'
import {
  type Chapter,
  calledBy,
  fromSheet,
  heldToSheet,
  missing,
  partOf,
  type SheetCheck,
  type Table,
} from './section.js'
import type { Weights } from './weight.js'

/** A journey as it was driven in a season. @internal */
export interface Driven {
  readonly key: string
  readonly name: string
  readonly season: Season
  readonly drive: DrivenCycle
}

/** Every journey in every season; none where the sheet lacks something. @internal */
export function journeysOf(build: Build, pack: Pack | undefined, weights: () => Weights): readonly Driven[] {
  const { journeys = {} } = build
  if (pack === undefined || Object.keys(journeys).length === 0) return []
  const drive = laden(build, pack, onRoad(build, weights))
  if (drive === undefined) return []
  const seasons = seasonsOf(build, pack)
  return Object.entries(journeys).flatMap(([key, journey]) => {
    const name = calledBy(key, journey)
    const path = `journeys.${key}`
    const places = { journey: `${path}.stretches`, pace: `${path}.pace`, cycle: `${path}.cycle` }
    const { stretches, pace, cycle } = journey
    const road = cycle === undefined ? { journey: stretches, pace } : { cycle: cycleCalled(cycle) }
    return seasons.map((season) => ({
      key,
      name,
      season,
      drive: heading(`${name}, ${season.name}`, () =>
        fromSheet({ ...season.places, ...places }, () => driveCycle({ ...inSeason(drive, season), ...road })),
      ),
    }))
  })
}

/** The section on journeys. @internal */
export function journeysSection(build: Build, pack: Pack | undefined, driven: () => readonly Driven[]): Chapter {
  const needed = ['journeys', 'seasons', 'module', 'pack', 'motor', 'gearbox', 'auxiliaries']
  if (pack === undefined || driven().length === 0) return missing(withoutEmpty(build), needed)
  const keys = [...new Set(driven().map(({ key }) => key))]
  const seasons = driven().flatMap(({ key, season }) => (key === keys[0] ? [season] : []))
  const warmed = new Map(driven().map((each) => [each, cellsOver(each, pack, build.cooling?.pack)]))
  const all = merged(
    ...driven().map((each) => {
      const { key, name, season, drive } = each
      const told = (check: string) => `${name}, ${season.name}: ${check}`
      const found = merged(ofSheet(drive), warmed.get(each) ?? {})
      return { ...found, checks: partOf(`journeys.${key}.${season.key}`, found.checks, told) }
    }),
  )
  return {
    figures: [],
    tables: keys.map((key) =>
      journeyTable(
        driven().filter((each) => each.key === key),
        warmed,
      ),
    ),
    ...all,
    checks: [...all.checks, ...runChecks(build, driven())],
    assumptions: [...all.assumptions, ...tyresIn(seasons), ...warmedIn(seasons)],
  }
}

/** Whether each run that feeds the controller is sized for what the journeys draw through it. */
function runChecks({ runs = {}, controller }: Build, driven: readonly Driven[]): SheetCheck[] {
  const hardest = hardestOf(driven)
  const drawn = hardest?.drive.rmsCurrent
  if (drawn === undefined || controller === undefined) return []
  return Object.entries(runs).flatMap(([key, run]) => {
    if (run.current === undefined || run.feeds === 'other') return []
    const name = `${calledBy(key, run)}: rms current, ${hardest?.name}, ${hardest?.season.name}`
    return [heldToSheet(`runs.${key}.current`, name, drawn, 'at most', run.current, 'journeys')]
  })
}

/** The journey that warms cables most. @internal */
export function hardestOf(driven: readonly Driven[]): Driven | undefined {
  return driven
    .filter(({ drive }) => drive.rmsCurrent !== undefined)
    .reduce<Driven | undefined>(
      (one, other) =>
        one !== undefined && (one.drive.rmsCurrent?.si ?? 0) >= (other.drive.rmsCurrent?.si ?? 0) ? one : other,
      undefined,
    )
}

/** Records without an entry are as good as none. */
function withoutEmpty({ journeys = {}, seasons = {}, ...others }: Build) {
  const some = (named: object) => (Object.keys(named).length === 0 ? undefined : named)
  return { ...others, journeys: some(journeys), seasons: some(seasons) }
}

function journeyTable(seasons: readonly Driven[], warmed: ReadonlyMap<Driven, PackTemperature | undefined>): Table {
  const row = (id: string, name: string, value: (each: Driven) => Quantity | string | undefined) => ({
    id,
    name,
    values: seasons.map((each) => value(each) ?? 'unknown'),
  })
  const ends = seasons.flatMap(({ season, drive }) =>
    drive.rangeEndedBy === undefined ? [] : [`${season.name}: the range ends by ${drive.rangeEndedBy}.`],
  )
  const missed = seasons.flatMap(({ season, drive }) =>
    drive.missed.slice(0, 3).map((each) => {
      const { from, at, asked, reached, limitedBy } = each
      return `${season.name}: the car falls behind after ${from} (${at}): ${reached} instead of ${asked}, held by the ${limitedBy}.`
    }),
  )
  return {
    id: `journeys.${seasons[0]?.key}`,
    title: `${seasons[0]?.name}`,
    measures: 'rows',
    columns: seasons.map(({ season }) => ({ id: season.key, name: `${season.name}, ${season.outside}` })),
    rows: [
      row('distance', 'distance', ({ drive }) => drive.distance.as('km')),
      row('duration', 'time', ({ drive }) => drive.duration.as('min')),
      row('drawn', 'drawn from the pack', ({ drive }) => drive.drawn),
      row('regenerated', 'taken back', ({ drive }) => drive.regenerated),
      row('consumption', 'consumption', ({ drive }) => drive.consumption),
      row('auxiliaryShare', 'of it to auxiliaries and heater', ({ drive }) =>
        quantity('ratio', drive.losses.auxiliaries.ratioTo(drive.net)).as('%'),
      ),
      row('range', 'range, the journey repeated', ({ drive }) => drive.range?.as('km')),
      row('chargeLeft', 'charge left after one', ({ drive }) => drive.stateOfCharge?.as('%')),
      row('peakCurrent', 'greatest current', ({ drive }) => drive.peakCurrent),
      row('rmsCurrent', 'root mean square of the current', ({ drive }) => drive.rmsCurrent),
      row('lowestVoltage', 'lowest voltage', ({ drive }) => drive.lowestVoltage),
      row('packHeat', 'heat in the pack', ({ drive }) => drive.packHeat?.as('Wh')),
      row('cellsAfter', 'cells after one', (each) => warmed.get(each)?.final),
    ],
    notes: [...ends, ...missed],
  }
}

/** How warm the cells become over a journey, where the sheet says what they take up and give off. @internal */
export function cellsOver(
  { season, drive }: Driven,
  pack: Pack,
  cooling: NonNullable<Build['cooling']>['pack'] | undefined,
): PackTemperature | undefined {
  const { specificHeat } = pack.made.module
  if (specificHeat === undefined || season.conductance === undefined || drive.heats === undefined) return undefined
  const { conductance, outside: surroundings, cells: initial, places } = season
  const capacity = heatCapacity({ mass: pack.mass, specificHeat })
  const { heats: heat } = drive
  const held = cooling === undefined ? {} : { limits: { high: cooling.limit }, hottest: cooling.hottest }
  const inSheet = {
    'surroundings': places['air.temperature'],
    'initial': places.cellTemperature,
    'limits.high': 'cooling.pack.limit',
    'hottest': 'cooling.pack.hottest',
  }
  return fromSheet(inSheet, () =>
    packTemperature({ heatCapacity: capacity, conductance, surroundings, initial, heat, heatOf: 'drive', ...held }),
  )
}
