/** July and January: the weather, what it asks of the pack, and the laden car driven in it. */
import { section as heading } from '../formula/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import type { Build } from './build.js'
import type { Laden } from './drive.js'
import type { Pack } from './pack.js'
import { cabinOf } from './winter.js'

/** The weather of a season, and what it does to the pack. */
export interface Season {
  readonly name: string
  readonly outside: Quantity<'temperature'>
  readonly auxiliary: Quantity<'power'>
  /** Of the cells as the drive begins. */
  readonly cells: Quantity<'temperature'>
  /** Share of the charge that is used. */
  readonly usable: Quantity<'ratio'>
  /** From the pack to the outside. */
  readonly conductance?: Quantity<'thermalConductance'>
}

/** A mild day, where the sheet has no summer of its own. */
const MILD = quantity('temperature', '20 °C')

/** July, and January where the sheet says what the cold asks for. */
export function seasonsOf(build: Build, made: Pack): Season[] {
  const { pack, auxiliaries, cooling, heating } = build
  if (pack === undefined || auxiliaries === undefined) return []
  const outside = cooling?.outside ?? MILD
  const july: Season = {
    name: 'July',
    outside,
    auxiliary: auxiliaries,
    cells: outside,
    usable: pack.usable,
    ...(cooling === undefined ? {} : { conductance: cooling.pack.conductance }),
  }
  if (heating === undefined) return [july]
  return [
    july,
    {
      name: 'January',
      outside: heating.outside,
      auxiliary: auxiliaries.plus(heading('The cabin', () => cabinOf(heating, made)).power),
      cells: heating.pack.to,
      usable: pack.usableInWinter,
      conductance: heating.pack.conductance,
    },
  ]
}

/** The laden car in a season, as the procedures of the range take it. */
export function inSeason({ gears, finalDrive, tyre, efficiency, ...drive }: Laden, season: Season) {
  return {
    ...drive,
    driveline: { gears, finalDrive, tyre, efficiency },
    auxiliary: season.auxiliary,
    stateOfCharge: { from: 1, to: 1 - season.usable.si },
    cellTemperature: season.cells,
    air: { temperature: season.outside },
  }
}
