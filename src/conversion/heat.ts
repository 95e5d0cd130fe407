/** Warming a cold pack before it works. */
import { cautions } from '../findings/index.js'
import { quantity } from '../quantity/index.js'
import { heatCapacity, heaterEnergy, thermalTimeConstant, warmUpTime } from '../thermal/index.js'
import type { Build } from './build.js'
import type { Pack } from './pack.js'
import { missing, type Section, type Unassessed } from './section.js'

/** The section on heat. */
export function heatSection(build: Build, pack: Pack | undefined): Section | Unassessed {
  const { module, heating } = build
  const title = 'Warming the pack on a winter morning'
  if (pack === undefined || module === undefined || heating === undefined)
    return { title, why: missing(build, ['heating', 'module', 'pack']) }
  const { heater, to, conductance } = heating.pack
  const capacity = heatCapacity({ mass: pack.mass, specificHeat: module.specificHeat })
  const { outside } = heating
  const time = warmUpTime({
    heatCapacity: capacity,
    conductance,
    power: heater,
    from: outside,
    to,
    surroundings: outside,
  })
  const energy = heaterEnergy({ power: heater, time })
  return {
    title,
    figures: [
      { name: 'heat capacity of the modules', value: capacity },
      { name: 'time constant of the cooling', value: thermalTimeConstant({ heatCapacity: capacity, conductance }) },
      { name: `time from ${outside} to ${to} with ${heater.as('W')}`, value: time },
      { name: 'energy of the heater', value: energy },
      { name: 'as a share of the pack', value: quantity('ratio', energy.ratioTo(pack.energy)).as('%') },
    ],
    tables: [],
    checks: [],
    assumptions: [
      'The modules have one temperature, and start as cold as the morning; boxes and coolant are not counted.',
    ],
    cautions: [cautions.lithiumCells],
  }
}
