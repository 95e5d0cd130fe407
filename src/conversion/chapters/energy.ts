/** Consumption and range at steady speeds, in each season. */
import { section as heading } from '../../formula/index.js'
import { merged } from '../../procedure/index.js'
import { quantity } from '../../quantity/index.js'
import { rangeAtSpeed, type Seasons } from '../../range/index.js'
import type { Build } from '../sheet/build.js'
import { type Laden, laden, onRoad } from './drive.js'
import type { Pack } from './pack.js'
import { inSeason, lossInCold, ofSheet, type Steady, seasonsOf, tyresIn, warmedIn } from './season.js'
import { type Chapter, fromSheet, missing, partOf, type Table } from './section.js'
import type { Weights } from './weight.js'

/** The speed at which the loss in the cold is told. */
const COUNTRY_ROAD = quantity('speed', '70 km/h')
const SPEEDS = [quantity('speed', '50 km/h'), COUNTRY_ROAD, quantity('speed', '90 km/h')]

/** The section on energy and range. @internal */
export function energySection(build: Build, pack: Pack | undefined, weights: () => Weights): Chapter {
  const needed = ['module', 'pack', 'motor', 'gearbox', 'auxiliaries', 'seasons']
  const { motor, gearbox, auxiliaries } = build
  if (pack === undefined || motor === undefined || gearbox === undefined || auxiliaries === undefined) {
    return missing(build, needed)
  }
  const seasons = seasonsOf(build, pack)
  if (seasons.length === 0) return missing({ ...build, seasons: undefined }, needed)
  const drive = laden(build, pack, onRoad(build, weights)) as Laden
  const found = seasons.map(
    (season): Steady =>
      heading(season.name, () => ({
        ...season,
        ...fromSheet(season.places, () => rangeAtSpeed({ ...inSeason(drive, season), speeds: SPEEDS })),
      })),
  )
  const lost = lossInCold(drive, COUNTRY_ROAD, found)
  const told = (each: Steady) => (check: string) => `${each.name}: ${check}`
  const all = merged(
    ...found.map((each) => ({ ...ofSheet(each), checks: partOf(`steady.${each.key}`, each.checks, told(each)) })),
  )
  return {
    figures: [],
    tables: [
      {
        id: 'steady',
        title: seasons
          .map(({ name, outside, usable }) => `${name}: ${outside}, ${usable.as('%')} of the charge used`)
          .join('; '),
        measures: 'columns',
        columns: [
          { id: 'consumption', name: 'from the pack' },
          { id: 'range', name: 'range' },
        ],
        rows: found.flatMap(({ key, name, speeds }) =>
          speeds.map(({ speed, consumption, range }) => ({
            id: `${key}.at${speed.in('km/h')}`,
            name: `${name}, at ${speed}`,
            values: [consumption, range ?? 'unknown'],
          })),
        ),
        notes: ['Stops, hills and haste take more.'],
      },
      ...(lost === undefined ? [] : [lossTable(lost)]),
    ],
    ...all,
    assumptions: [...all.assumptions, ...tyresIn(seasons), ...warmedIn(seasons)],
  }
}

function lossTable({ warm, cold, loss: { lost, causes } }: NonNullable<ReturnType<typeof lossInCold>>): Table {
  const row = (id: keyof Seasons['causes'], name: string) => {
    const { range, share } = causes[id]
    return { id, name, values: [range, share ?? 'none'] }
  }
  return {
    id: 'cold',
    title: `What ${cold.name} takes from the range of ${warm.name} at ${COUNTRY_ROAD}`,
    measures: 'columns',
    columns: [
      { id: 'lost', name: 'range lost' },
      { id: 'share', name: 'share' },
    ],
    rows: [
      row('airDensity', 'air, which is denser'),
      row('rollingResistance', 'tyres, which roll harder'),
      row('heater', 'heater'),
      row('usableCapacity', 'pack, which gives less'),
      { id: 'all', name: 'in all', values: [lost, lost.si > 0 ? '100 %' : 'none'] },
    ],
    notes: [
      'The four act on each other: each takes here the mean of what it takes over all orders in which they can set in. The pack counts with the energy that it gives in each season.',
    ],
  }
}
