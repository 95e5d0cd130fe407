/** A house that the pack feeds for an evening. */
import { homeSupply } from '../../electrical/index.js'
import { assumed, merged } from '../../procedure/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Chapter, fromSheet, missing, partOf } from './section.js'

/** Where in the sheet its figures stand. */
const places = {
  usableEnergy: 'pack.usable',
  hourly: 'home.hourly',
  inverter: 'home.inverter',
  reserve: 'home.reserve',
}

/** The section on the house. @internal */
export function homeSection(build: Build, pack: Pack | undefined): Chapter {
  const { home } = build
  if (pack === undefined || home === undefined) return missing(build, ['home', 'module', 'pack'])
  const { hourly, inverter, reserve } = home
  const found = fromSheet(places, () => homeSupply({ usableEnergy: pack.usable, hourly, inverter, reserve }))
  const again = `After ${hourly.length} hours the loads begin again with the first.`
  return {
    figures: [
      { id: 'home.usableEnergy', name: 'energy used', value: pack.usable },
      { id: 'home.reserve', name: 'kept back for the next drive', value: reserve },
      { id: 'home.duration', name: 'the house runs for', value: found.duration },
      { id: 'home.delivered', name: 'delivered to its loads', value: found.delivered },
      { id: 'home.lost', name: 'lost in the inverter', value: found.lost },
    ],
    tables: [],
    ...merged(found, { assumptions: [assumed('home.again', again)] }),
    checks: partOf('home', found.checks),
  }
}
