/** Consumption and range at steady speeds, in July and in January. */
import { section as heading } from '../formula/index.js'
import { quantity } from '../quantity/index.js'
import { rangeAtSpeed } from '../range/index.js'
import type { Build } from './build.js'
import { type Laden, laden } from './drive.js'
import type { Pack } from './pack.js'
import { inSeason, seasonsOf } from './season.js'
import { gathered, missing, type Section, type Unassessed } from './section.js'
import type { Weights } from './weight.js'

const SPEEDS = [quantity('speed', '50 km/h'), quantity('speed', '70 km/h'), quantity('speed', '90 km/h')]

/** The section on energy and range. */
export function energySection(build: Build, pack: Pack | undefined, weights: () => Weights): Section | Unassessed {
  const title = 'Energy and range at a steady speed'
  const { motor, gearbox, auxiliaries } = build
  if (pack === undefined || motor === undefined || gearbox === undefined || auxiliaries === undefined) {
    return { title, why: missing(build, ['module', 'pack', 'motor', 'gearbox', 'auxiliaries']) }
  }
  const { friction: _, ...drive } = laden(build, pack, weights()) as Laden
  const seasons = seasonsOf(build, pack)
  const found = seasons.map((season) =>
    heading(season.name, () => rangeAtSpeed({ ...inSeason(drive, season), speeds: SPEEDS })),
  )
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
        notes: [
          'Stops, hills and haste take more. Of January, air, heater and cold cells are counted; that tyres roll harder is not.',
        ],
      },
    ],
    ...gathered(found),
  }
}
