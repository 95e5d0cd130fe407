/** The seasons of the sheet: the weather, what it asks of tyres and pack, and the laden car driven in it. */
import { rollingTemperatureFactor } from '../../drivetrain/index.js'
import { withWeatherCounted } from '../../drivetrain/road/air.js'
import { section as heading } from '../../formula/index.js'
import { type Assumption, assumed, type Findings } from '../../procedure/index.js'
import { settled } from '../../procedure/reading.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import { type RangeAtSpeed, type Seasons, type SteadyRange, seasons } from '../../range/index.js'
import type { Build } from '../sheet/build.js'
import type { Laden } from './drive.js'
import { cabinOf } from './morning.js'
import type { Pack } from './pack.js'
import { calledBy, fromSheet, vehiclePlaces } from './section.js'

/** The weather of a season, and what it does to the pack. @internal */
export interface Season {
  readonly key: string
  readonly name: string
  readonly outside: Quantity<'temperature'>
  readonly auxiliaries: Quantity<'power'>
  /** Of the cells as the drive begins. */
  readonly cells: Quantity<'temperature'>
  /** Whether a heater has brought the cells to that. */
  readonly isWarmed: boolean
  /** Share of the charge that is used. */
  readonly usable: Quantity<'ratio'>
  /** Where in the sheet its figures stand. */
  readonly places: ReturnType<typeof placesIn>
  /** From the pack to the outside. */
  readonly conductance?: Quantity<'thermalConductance'>
}

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

/** The seasons of the sheet, in its order. @internal */
export function seasonsOf(build: Build, made: Pack): Season[] {
  const { pack, auxiliaries, seasons = {}, cooling, heating } = build
  if (pack === undefined || auxiliaries === undefined) return []
  return Object.entries(seasons).map(([key, season]) => {
    const { outside } = season
    const isBelow = (temperature: Quantity<'temperature'> | undefined) =>
      temperature !== undefined && outside.si < temperature.si
    // Cells that the sheet has a heater for were warmed before, with energy from the socket.
    const warmed = isBelow(heating?.pack?.to) ? heating?.pack : undefined
    const path = `seasons.${key}`
    const cabin = heating?.cabin
    const conductance = warmed?.conductance ?? cooling?.pack.conductance
    return {
      key,
      name: calledBy(key, season),
      outside,
      auxiliaries:
        cabin !== undefined && isBelow(cabin.inside)
          ? auxiliaries.plus(heading('The cabin', () => cabinOf(cabin, path, outside, made)).power)
          : auxiliaries,
      cells: season.cells ?? warmed?.to ?? outside,
      isWarmed: season.cells === undefined && warmed !== undefined,
      usable: season.usable ?? pack.usable,
      places: placesIn(
        `${path}.outside`,
        season.cells !== undefined ? `${path}.cells` : warmed === undefined ? `${path}.outside` : 'heating.pack.to',
        season.usable === undefined ? 'pack.usable' : `${path}.usable`,
      ),
      ...(conductance === undefined ? {} : { conductance }),
    }
  })
}

/** What was taken for granted of the cells of the seasons in which they are warmed. @internal */
export function warmedIn(seasons: readonly Season[]): Assumption[] {
  const names = seasons.filter(({ isWarmed }) => isWarmed).map(({ name }) => name)
  if (names.length === 0) return []
  const text = `The pack was warmed before, with energy from the socket: ${names.join(', ')}.`
  return [assumed('seasons.warmed', text)]
}

/** The laden car in a season, as the procedures of the range take it. @internal */
export function inSeason(drive: Laden, { outside, auxiliaries, cells, usable, places }: Season) {
  const temperature = places['air.temperature']
  const harder = fromSheet({ temperature }, () => rollingTemperatureFactor({ temperature: outside }))
  return {
    ...drive,
    car: settled({ ...drive.car, rollingResistance: drive.car.rollingResistance.times(harder.si) }),
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
export function tyresIn(weather: readonly Season[]): Assumption[] {
  if (weather.length === 0) return []
  const factors = weather.map(({ name, outside }) => {
    const harder = rollingTemperatureFactor.compute({ temperature: outside.si })
    return `${quantity('ratio', harder, '1')} times as hard in ${name}`
  })
  const text = `The rolling resistance of the sheet is that at 20 °C: the tyres roll ${factors.join(', and ')}.`
  return [assumed('tyres.temperature', text)]
}

/** A season with what was driven in it at steady speeds. @internal */
export type Steady = Season & RangeAtSpeed

/**
 * What the coldest season takes from the range of the laden car at one of the steady speeds that were driven in the warmest,
 * and by what; undefined where there is one season only. The pack counts with the energy that it gives in each season: to
 * empty it anew for all 16 mixtures of the two takes several times as long, and moves the parts by a hundredth or two.
 *
 * @internal
 */
export function lossInCold(
  { car, gearbox, motor }: Laden,
  speed: Quantity<'speed'>,
  driven: readonly Steady[],
): { readonly warm: Season; readonly cold: Season; readonly loss: Seasons } | undefined {
  const ordered = driven.toSorted((one, other) => other.outside.si - one.outside.si)
  const [warm, cold] = [ordered[0], ordered.at(-1)]
  if (warm === undefined || cold === undefined || warm.outside.si === cold.outside.si) return undefined
  const [summer, winter] = [warm, cold].map(({ outside, auxiliaries, speeds }) => {
    const { range, consumption } = speeds.find((each) => each.speed.si === speed.si) as SteadyRange
    if (range === undefined || range.si === 0) return undefined
    return { temperature: outside, auxiliaries, usableEnergy: quantity('energy', range.si * consumption.si, 'J') }
  })
  if (summer === undefined || winter === undefined) return undefined
  const places = {
    ...vehiclePlaces,
    'summer': `seasons.${warm.key}`,
    'summer.temperature': `seasons.${warm.key}.outside`,
    'winter': `seasons.${cold.key}`,
    'winter.temperature': `seasons.${cold.key}.outside`,
  }
  const loss = heading(`What ${cold.name} takes at ${speed}`, () =>
    fromSheet(places, () => seasons({ car, gearbox, motor, speed, summer, winter })),
  )
  return { warm, cold, loss }
}
