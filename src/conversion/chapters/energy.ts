/** Consumption and range at steady speeds, in July and in January. */
import { section as heading } from '../../formula/index.js'
import { merged } from '../../procedure/index.js'
import { quantity } from '../../quantity/index.js'
import { rangeAtSpeed, type Seasons } from '../../range/index.js'
import type { Build } from '../sheet/build.js'
import { type Laden, laden, onRoad } from './drive.js'
import type { Pack } from './pack.js'
import { inSeason, lossInJanuary, ofSheet, seasonsOf, tyresIn } from './season.js'
import { fromSheet, missing, partOf, type Section, type Table, type Unassessed } from './section.js'
import type { Weights } from './weight.js'

/** The speed at which the loss in January is told. */
const COUNTRY_ROAD = quantity('speed', '70 km/h')
const SPEEDS = [quantity('speed', '50 km/h'), COUNTRY_ROAD, quantity('speed', '90 km/h')]

/** The section on energy and range. @internal */
export function energySection(build: Build, pack: Pack | undefined, weights: () => Weights): Section | Unassessed {
  const title = 'Energy and range at a steady speed'
  const { motor, gearbox, auxiliaries } = build
  if (pack === undefined || motor === undefined || gearbox === undefined || auxiliaries === undefined) {
    return { title, why: missing(build, ['module', 'pack', 'motor', 'gearbox', 'auxiliaries']) }
  }
  const drive = laden(build, pack, onRoad(build, weights)) as Laden
  const seasons = seasonsOf(build, pack)
  const found = seasons.map((season) =>
    heading(season.name, () => ({
      ...season,
      ...fromSheet(season.places, () => rangeAtSpeed({ ...inSeason(drive, season), speeds: SPEEDS })),
    })),
  )
  const loss = lossInJanuary(drive, COUNTRY_ROAD, found)
  const all = merged(...found.map((each) => ({ ...ofSheet(each), checks: partOf(`range.${each.name}`, each.checks) })))
  return {
    title,
    figures: [{ name: 'mass on the road', value: drive.car.mass }],
    tables: [
      {
        title: seasons
          .map(({ name, outside, usable }) => `${name}: ${outside}, ${usable.as('%')} of the charge used`)
          .join('; '),
        columns: seasons.flatMap(({ name }) => [`${name}: from the pack`, `${name}: range`]),
        rows: SPEEDS.map((speed, i) => ({
          name: `at ${speed}`,
          values: found.flatMap(({ speeds }) => [speeds[i]?.consumption ?? 'unknown', speeds[i]?.range ?? 'unknown']),
        })),
        notes: ['Stops, hills and haste take more.'],
      },
      ...(loss === undefined ? [] : [lossTable(loss)]),
    ],
    ...all,
    assumptions: [...all.assumptions, tyresIn(seasons)],
  }
}

function lossTable({ lost, causes }: Seasons): Table {
  const row = (name: string, { range, share }: Seasons['causes']['heater']) => ({
    name,
    values: [range, share ?? 'none'],
  })
  return {
    title: `What January takes from the range at ${COUNTRY_ROAD}`,
    columns: ['range lost', 'share'],
    rows: [
      row('air, which is denser', causes.airDensity),
      row('tyres, which roll harder', causes.rollingResistance),
      row('heater', causes.heater),
      row('pack, which gives less', causes.usableCapacity),
      { name: 'in all', values: [lost, lost.si > 0 ? '100 %' : 'none'] },
    ],
    notes: [
      'The four act on each other: each takes here the mean of what it takes over all orders in which they can set in. The pack counts with the energy that it gives in each season.',
    ],
  }
}
