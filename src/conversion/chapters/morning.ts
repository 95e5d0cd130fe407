/** A cold morning: how cold the pack has become, what it takes to warm it, and what the cabin asks. */
import { section as heading } from '../../formula/index.js'
import { type Findings, merged } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import { type CabinHeat, cabinHeat, heatCapacity, packTemperature, winterStart } from '../../thermal/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Chapter, calledBy, type Figure, fromSheet, missing, partOf } from './section.js'

type Heating = NonNullable<Build['heating']>
type Season = NonNullable<Build['seasons']>[string]

/** Where in the sheet the figures of the cabin and of the pack stand. */
const cabinPlaces = {
  airFlow: 'heating.cabin.airFlow',
  inside: 'heating.cabin.inside',
  lossConductance: 'heating.cabin.lossConductance',
  coefficientOfPerformance: 'heating.cabin.coefficientOfPerformance',
}
const packPlaces = {
  conductance: 'heating.pack.conductance',
  to: 'heating.pack.to',
  heaterPower: 'heating.pack.heater',
}

/** What the cabin asks in the cold of a season, of the heater that the sheet names. @internal */
export function cabinOf(
  cabin: NonNullable<Heating['cabin']>,
  path: string,
  outside: Quantity<'temperature'>,
  { energy: packEnergy }: Pack,
): CabinHeat {
  const { airFlow, inside, lossConductance, coefficientOfPerformance } = cabin
  const asked = { airFlow, inside, lossConductance, outside, time: '1 h', packEnergy } as const
  return fromSheet({ ...cabinPlaces, outside: `${path}.outside` }, () =>
    coefficientOfPerformance === undefined
      ? cabinHeat({ ...asked, heaterKind: 'resistive' })
      : cabinHeat({ ...asked, heaterKind: 'heat pump', coefficientOfPerformance }),
  )
}

/** What is found of one morning. */
interface Part extends Partial<Findings> {
  readonly figures: readonly Figure[]
}

/** The section on cold mornings: of each season that is colder than cabin or pack are to be. @internal */
export function morningSection(build: Build, pack: Pack | undefined): Chapter {
  const { heating, seasons = {} } = build
  const specificHeat = pack?.made.module.specificHeat
  const cold = Object.entries(seasons).filter(([, { outside }]) =>
    [heating?.cabin?.inside, heating?.pack?.to].some((warm) => warm !== undefined && outside.si < warm.si),
  )
  if (pack === undefined || heating === undefined || specificHeat === undefined || cold.length === 0) {
    const found = { ...build, seasons: cold[0] }
    return missing(found, ['heating', 'seasons', 'module', 'module.specificHeat', 'pack'])
  }
  const capacity = heatCapacity({ mass: pack.mass, specificHeat })
  const parts = cold.map(([key, season]) =>
    heading(calledBy(key, season), (): Part => {
      const own = [warmingPart(key, season, heating.pack, capacity, pack), cabinPart(key, season, build, pack)]
      return { figures: own.flatMap(({ figures }) => figures), ...merged(...own) }
    }),
  )
  return {
    figures: [
      { id: 'mornings.heatCapacity', name: 'heat capacity of the modules', value: capacity },
      ...parts.flatMap(({ figures }) => figures),
    ],
    tables: [],
    ...merged(...parts),
  }
}

/** The pack in the morning, and what it takes to warm it. */
function warmingPart(
  key: string,
  season: Season,
  warming: Heating['pack'],
  capacity: Quantity<'heatCapacity'>,
  pack: Pack,
): Part {
  const { outside, night } = season
  if (warming === undefined || night === undefined) return { figures: [] }
  const { heater, to, conductance } = warming
  const path = `seasons.${key}`
  const places = {
    ...packPlaces,
    surroundings: `${path}.outside`,
    initial: `${path}.night.from`,
    heat: `${path}.night.time`,
  }
  const left = heading('The night', () =>
    fromSheet(places, () =>
      packTemperature({
        heatCapacity: capacity,
        conductance,
        surroundings: outside,
        initial: night.from,
        heat: [['0 W', night.time]],
      }),
    ),
  )
  const start =
    left.final.si >= to.si
      ? undefined
      : heading('Warming the pack', () =>
          fromSheet({ ...places, from: `${path}.night.from` }, () =>
            winterStart({
              pack: { heatCapacity: capacity, energy: pack.energy },
              from: left.final,
              to,
              heaterPower: heater,
              conductance,
              surroundings: outside,
            }),
          ),
        )
  const name = calledBy(key, season)
  return {
    figures: [
      {
        id: `mornings.${key}.packTemperature`,
        name: `${name}: pack after ${night.time} at ${outside}, left at ${night.from}`,
        value: left.final,
      },
      ...(start === undefined
        ? []
        : [
            { id: `mornings.${key}.warmUpTime`, name: `time to ${to} with ${heater.as('W')}`, value: start.time },
            { id: `mornings.${key}.warmUpEnergy`, name: 'energy of the pack heater', value: start.energy },
            { id: `mornings.${key}.warmUpShare`, name: 'as a share of the pack', value: start.share },
          ]),
    ],
    ...merged(
      { ...left, checks: partOf(`mornings.${key}.night`, left.checks, (check) => `${name}, the night: ${check}`) },
      ...(start === undefined
        ? []
        : [{ ...start, checks: partOf(`mornings.${key}.warming`, start.checks, (check) => `${name}: ${check}`) }]),
    ),
  }
}

/** What the cabin asks, of a heat pump beside a plain heater. */
function cabinPart(key: string, season: Season, build: Build, pack: Pack): Part {
  const cabin = build.heating?.cabin
  const { outside } = season
  if (cabin === undefined || outside.si >= cabin.inside.si) return { figures: [] }
  const name = calledBy(key, season)
  const found = heading('The cabin', () => cabinOf(cabin, `seasons.${key}`, outside, pack))
  const { coefficientOfPerformance, ...plain } = cabin
  const resistive =
    coefficientOfPerformance === undefined
      ? found
      : heading('The cabin with a resistive heater', () => cabinOf(plain, `seasons.${key}`, outside, pack))
  return {
    figures: [
      { id: `mornings.${key}.cabinHeat`, name: `${name}: heat for ${cabin.inside} in the cabin`, value: found.heat },
      ...cabinFigures(`mornings.${key}.resistive`, 'a resistive heater', resistive),
      ...(coefficientOfPerformance === undefined
        ? []
        : cabinFigures(`mornings.${key}.heatPump`, 'the heat pump', found)),
    ],
    // What a heater that the car does not have would fail is not held against the car: its figures tell it.
    ...found,
    checks: partOf(`mornings.${key}.cabin`, found.checks, (check) => `${name}: ${check}`),
  }
}

function cabinFigures(id: string, heater: string, { power, share }: CabinHeat): Figure[] {
  return [
    { id: `${id}.power`, name: `power that ${heater} draws for it`, value: power },
    ...(share === undefined
      ? []
      : [{ id: `${id}.share`, name: 'each hour of it, as a share of the pack', value: share }]),
  ]
}
