/** A winter morning: how cold the pack has become, what it takes to warm it, and what the cabin asks. */
import { section as heading } from '../../formula/index.js'
import { merged } from '../../procedure/index.js'
import { type CabinHeat, cabinHeat, heatCapacity, packTemperature, winterStart } from '../../thermal/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Figure, fromSheet, missing, partOf, type Section, type Unassessed } from './section.js'

type Heating = NonNullable<Build['heating']>

/** Where in the sheet the figures of the cabin and of the pack stand. */
const cabinPlaces = {
  airFlow: 'heating.cabin.airFlow',
  inside: 'heating.cabin.inside',
  lossConductance: 'heating.cabin.lossConductance',
  coefficientOfPerformance: 'heating.cabin.coefficientOfPerformance',
  outside: 'heating.outside',
}
const packPlaces = {
  conductance: 'heating.pack.conductance',
  surroundings: 'heating.outside',
  initial: 'heating.night.from',
  from: 'heating.night.from',
  heat: 'heating.night.time',
  to: 'heating.pack.to',
  heaterPower: 'heating.pack.heater',
}

/** What the cabin asks on a winter morning, of the heater that the sheet names. @internal */
export function cabinOf({ outside, cabin }: Heating, { energy: packEnergy }: Pack): CabinHeat {
  const { airFlow, inside, lossConductance, coefficientOfPerformance } = cabin
  const asked = { airFlow, inside, lossConductance, outside, time: '1 h', packEnergy } as const
  return fromSheet(cabinPlaces, () =>
    coefficientOfPerformance === undefined
      ? cabinHeat({ ...asked, heaterKind: 'resistive' })
      : cabinHeat({ ...asked, heaterKind: 'heat pump', coefficientOfPerformance }),
  )
}

function cabinFigures(heater: string, { power, share }: CabinHeat): Figure[] {
  return [
    { name: `power that ${heater} draws for it`, value: power },
    ...(share === undefined ? [] : [{ name: 'each hour of it, as a share of the pack', value: share }]),
  ]
}

/** The section on a winter morning. @internal */
export function winterSection(build: Build, pack: Pack | undefined): Section | Unassessed {
  const { heating } = build
  const title = 'A winter morning'
  const specificHeat = pack?.made.module.specificHeat
  if (pack === undefined || heating === undefined || specificHeat === undefined) {
    return { title, why: missing(build, ['heating', 'module', 'module.specificHeat', 'pack']) }
  }
  const { outside, night } = heating
  const { heater, to, conductance } = heating.pack
  const capacity = heatCapacity({ mass: pack.mass, specificHeat })
  const left = heading('The night', () =>
    fromSheet(packPlaces, () =>
      packTemperature({
        heatCapacity: capacity,
        conductance,
        surroundings: outside,
        initial: night.from,
        heat: [['0 W', night.time]],
      }),
    ),
  )
  const isWarm = left.final.si >= to.si
  const start = isWarm
    ? undefined
    : heading('Warming the pack', () =>
        fromSheet(packPlaces, () =>
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
  const cabin = heading('The cabin', () => cabinOf(heating, pack))
  const { coefficientOfPerformance: _, ...plain } = heating.cabin
  const [resistive, pump] =
    heating.cabin.coefficientOfPerformance === undefined
      ? [cabin]
      : [heading('The cabin with a resistive heater', () => cabinOf({ ...heating, cabin: plain }, pack)), cabin]
  return {
    title,
    figures: [
      { name: 'heat capacity of the modules', value: capacity },
      { name: `pack after ${night.time} at ${outside}, left at ${night.from}`, value: left.final },
      ...(start === undefined
        ? []
        : [
            { name: `time to ${to} with ${heater.as('W')}`, value: start.time },
            { name: 'energy of the pack heater', value: start.energy },
            { name: 'as a share of the pack', value: start.share },
          ]),
      { name: `heat for ${heating.cabin.inside} in the cabin`, value: cabin.heat },
      ...cabinFigures('a resistive heater', resistive),
      ...(pump === undefined ? [] : cabinFigures('the heat pump', pump)),
    ],
    tables: [],
    ...merged(
      { ...left, checks: partOf('heating.night', left.checks) },
      { ...cabin, checks: partOf('heating.cabin', cabin.checks) },
      ...(start === undefined ? [] : [{ ...start, checks: partOf('heating.pack', start.checks) }]),
    ),
  }
}
