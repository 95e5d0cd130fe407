/** The journeys of a sheet, driven in July and in January: energy, range, what the pack and its cables bear. */

import { section as heading } from '../../formula/index.js'
import { assumed, merged } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type DrivenCycle, driveCycle } from '../../range/index.js'
import { heatCapacity, packTemperature } from '../../thermal/index.js'
import type { Build } from '../sheet/build.js'
import { laden, onRoad } from './drive.js'
import type { Pack } from './pack.js'
import { inSeason, ofSheet, type Season, seasonsOf, tyresIn } from './season.js'
import { fromSheet, missing, partOf, type Section, type Table, type Unassessed } from './section.js'
import type { Weights } from './weight.js'

/** A journey as it was driven in a season. @internal */
export interface Driven {
  readonly name: string
  readonly season: Season
  readonly drive: DrivenCycle
}

/** Every journey in every season; none where the sheet lacks something. @internal */
export function journeysOf(build: Build, pack: Pack | undefined, weights: () => Weights): readonly Driven[] {
  const { journeys = [] } = build
  if (pack === undefined || journeys.length === 0) return []
  const drive = laden(build, pack, onRoad(build, weights))
  if (drive === undefined) return []
  return journeys.flatMap(({ name, stretches, pace }, i) =>
    seasonsOf(build, pack).map((season) => ({
      name,
      season,
      drive: heading(`${name} in ${season.name}`, () =>
        fromSheet({ ...season.places, journey: `journeys[${i}].stretches`, pace: `journeys[${i}].pace` }, () =>
          driveCycle({ ...inSeason(drive, season), journey: stretches, pace }),
        ),
      ),
    })),
  )
}

/** The section on journeys. @internal */
export function journeysSection(
  build: Build,
  pack: Pack | undefined,
  driven: () => readonly Driven[],
): Section | Unassessed {
  const title = 'Journeys'
  if (pack === undefined || driven().length === 0) {
    return { title, why: missing(build, ['journeys', 'module', 'pack', 'motor', 'gearbox', 'auxiliaries']) }
  }
  const names = [...new Set(driven().map(({ name }) => name))]
  const all = merged(
    ...driven().map(({ name, season, drive }) => {
      const part = `journeys[${names.indexOf(name)}].${season.name}`
      const told = (check: string) => `${name} in ${season.name}: ${check}`
      return { ...ofSheet(drive), checks: partOf(part, drive.checks, told) }
    }),
  )
  const seasons = driven().flatMap(({ name, season }) => (name === names[0] ? [season] : []))
  const isCold = seasons.some(({ name }) => name === 'January')
  return {
    title,
    figures: [],
    tables: names.map((name) =>
      journeyTable(
        name,
        driven().filter((each) => each.name === name),
        pack,
      ),
    ),
    ...all,
    assumptions: [
      ...all.assumptions,
      tyresIn(seasons),
      ...(isCold
        ? [assumed('january.warmed', 'In January the pack was warmed before, with energy from the socket.')]
        : []),
    ],
  }
}

function journeyTable(name: string, seasons: readonly Driven[], pack: Pack): Table {
  const row = (what: string, value: (each: Driven) => Quantity | string | undefined) => ({
    name: what,
    values: seasons.map((each) => value(each) ?? 'unknown'),
  })
  const ends = seasons.flatMap(({ season, drive }) =>
    drive.rangeEndedBy === undefined ? [] : [`In ${season.name} the range ends by ${drive.rangeEndedBy}.`],
  )
  const missed = seasons.flatMap(({ season, drive }) =>
    drive.missed.slice(0, 3).map((each) => {
      const { from, at, asked, reached, limitedBy } = each
      return `In ${season.name} the car falls behind after ${from} (${at}): ${reached} instead of ${asked}, held by the ${limitedBy}.`
    }),
  )
  return {
    title: name,
    columns: seasons.map(({ season }) => `${season.name}, ${season.outside}`),
    rows: [
      row('distance', ({ drive }) => drive.distance.as('km')),
      row('time', ({ drive }) => drive.duration.as('min')),
      row('drawn from the pack', ({ drive }) => drive.drawn),
      row('taken back', ({ drive }) => drive.regenerated),
      row('consumption', ({ drive }) => drive.consumption),
      row('of it to auxiliaries and heater', ({ drive }) =>
        quantity('ratio', drive.losses.auxiliaries.ratioTo(drive.net)).as('%'),
      ),
      row('range, the journey repeated', ({ drive }) => drive.range?.as('km')),
      row('charge left after one', ({ drive }) => drive.stateOfCharge?.as('%')),
      row('greatest current', ({ drive }) => drive.peakCurrent),
      row('root mean square of the current', ({ drive }) => drive.rmsCurrent),
      row('lowest voltage', ({ drive }) => drive.lowestVoltage),
      row('heat in the pack', ({ drive }) => drive.packHeat?.as('Wh')),
      row('cells after one', (each) => cellsAfter(each, pack)),
    ],
    notes: [...ends, ...missed],
  }
}

/** How warm the cells are after a journey, where the sheet says what they take up and give off. */
function cellsAfter({ season, drive }: Driven, pack: Pack): Quantity<'temperature'> | undefined {
  const { specificHeat } = pack.made.module
  if (specificHeat === undefined || season.conductance === undefined || drive.heats === undefined) return undefined
  const { conductance, outside: surroundings, cells: initial, places } = season
  const capacity = heatCapacity({ mass: pack.mass, specificHeat })
  const { heats: heat } = drive
  return fromSheet({ surroundings: places['air.temperature'], initial: places.cellTemperature }, () =>
    packTemperature({ heatCapacity: capacity, conductance, surroundings, initial, heat }),
  ).final
}
