/** July and January: the weather, what it asks of tyres and pack, and the laden car driven in it. */
import { rollingTemperatureFactor } from '../../drivetrain/index.js'
import { withWeatherCounted } from '../../drivetrain/road/air.js'
import { section as heading } from '../../formula/index.js'
import { type Assumption, assumed, type Findings } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type RangeAtSpeed, type Seasons, type SteadyRange, seasons } from '../../range/index.js'
import type { Build } from '../sheet/build.js'
import type { Laden } from './drive.js'
import type { Pack } from './pack.js'
import { fromSheet, vehiclePlaces } from './section.js'
import { cabinOf } from './winter.js'

/** The weather of a season, and what it does to the pack. @internal */
export interface Season {
  readonly name: string
  readonly outside: Quantity<'temperature'>
  readonly auxiliaries: Quantity<'power'>
  /** Of the cells as the drive begins. */
  readonly cells: Quantity<'temperature'>
  /** Share of the charge that is used. */
  readonly usable: Quantity<'ratio'>
  /** Where in the sheet its figures stand. */
  readonly places: ReturnType<typeof placesIn>
  /** From the pack to the outside. */
  readonly conductance?: Quantity<'thermalConductance'>
}

/** A mild day, where the sheet has no summer of its own. */
const MILD = quantity('temperature', '20 °C')

function placesIn(outside: string, cells: string, usable: string) {
  return {
    ...vehiclePlaces,
    'air.temperature': outside,
    'cellTemperature': cells,
    'reserve': usable,
    'stateOfCharge': usable,
    'usableEnergy': usable,
  }
}

/** July, and January where the sheet says what the cold asks for. @internal */
export function seasonsOf(build: Build, made: Pack): Season[] {
  const { pack, auxiliaries, cooling, heating } = build
  if (pack === undefined || auxiliaries === undefined) return []
  const outside = cooling?.outside ?? MILD
  const july: Season = {
    name: 'July',
    outside,
    auxiliaries,
    cells: outside,
    usable: pack.usable,
    places: placesIn('cooling.outside', 'cooling.outside', 'pack.usable'),
    ...(cooling === undefined ? {} : { conductance: cooling.pack.conductance }),
  }
  if (heating === undefined) return [july]
  return [
    july,
    {
      name: 'January',
      outside: heating.outside,
      auxiliaries: auxiliaries.plus(heading('The cabin', () => cabinOf(heating, made)).power),
      cells: heating.pack.to,
      usable: pack.usableInWinter,
      places: placesIn('heating.outside', 'heating.pack.to', 'pack.usableInWinter'),
      conductance: heating.pack.conductance,
    },
  ]
}

/** The laden car in a season, as the procedures of the range take it. @internal */
export function inSeason(drive: Laden, { outside, auxiliaries, cells, usable, places }: Season) {
  const temperature = places['air.temperature']
  const harder = fromSheet({ temperature }, () => rollingTemperatureFactor({ temperature: outside }))
  return {
    ...drive,
    car: { ...drive.car, rollingResistance: drive.car.rollingResistance.times(harder.si) },
    auxiliaries,
    stateOfCharge: 1,
    reserve: 1 - usable.si,
    cellTemperature: cells,
    air: { temperature: outside },
  }
}

/** What a drive in a season tells of the sheet: the tyres, the cells and the heater are the season's own. @internal */
export function ofSheet({ checks, assumptions, notes, cautions }: Findings): Findings {
  return {
    checks,
    assumptions: withWeatherCounted(assumptions),
    notes: notes.filter(({ path }) => path !== 'car.rollingResistance' && path !== 'auxiliaries'),
    cautions,
  }
}

/** What was taken for granted of the tyres. @internal */
export function tyresIn(weather: readonly Season[]): Assumption {
  const factors = weather.map(({ name, outside }) => {
    const harder = rollingTemperatureFactor.compute({ temperature: outside.si })
    return `${quantity('ratio', harder, '1')} times as hard in ${name}`
  })
  return assumed(
    'tyres.temperature',
    `The rolling resistance of the sheet is that at 20 °C: the tyres roll ${factors.join(', and ')}.`,
  )
}

/** Where in the sheet the figures of both seasons stand. */
const inBoth = {
  ...vehiclePlaces,
  'summer': 'cooling',
  'summer.temperature': 'cooling.outside',
  'winter': 'heating',
  'winter.temperature': 'heating.outside',
}

/**
 * What January takes from the range of the laden car at one of the steady speeds that were driven, and by what; undefined
 * where there is no January. The pack counts with the energy that it gives in each season: to empty it anew for all 16
 * mixtures of the two takes several times as long, and moves the parts by a hundredth or two.
 *
 * @internal
 */
export function lossInJanuary(
  { car, gearbox, motor }: Laden,
  speed: Quantity<'speed'>,
  driven: readonly (Season & RangeAtSpeed)[],
): Seasons | undefined {
  const [summer, winter] = driven.flatMap(({ outside, auxiliaries, speeds }) => {
    const { range, consumption } = speeds.find((each) => each.speed.si === speed.si) as SteadyRange
    if (range === undefined || range.si === 0) return []
    return [{ temperature: outside, auxiliaries, usableEnergy: quantity('energy', range.si * consumption.si, 'J') }]
  })
  if (summer === undefined || winter === undefined) return undefined
  return heading(`What January takes at ${speed}`, () =>
    fromSheet(inBoth, () => seasons({ car, gearbox, motor, speed, summer, winter })),
  )
}
