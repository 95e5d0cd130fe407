/** The pack: what the modules make together, and whether the controller can live with it. */
import {
  packEnergy,
  packResistance,
  parallelCharge,
  seriesVoltage,
  specificEnergy,
  terminalVoltage,
  usableEnergy,
} from '../electrical/index.js'
import { type Check, cautions, check } from '../findings/index.js'
import type { Quantity } from '../quantity/index.js'
import type { Build } from './build.js'
import { missing, type Section, type Unassessed } from './section.js'

/** The electrical figures of a pack. */
export interface Pack {
  readonly modules: number
  readonly nominalVoltage: Quantity<'voltage'>
  readonly minimumVoltage: Quantity<'voltage'>
  readonly maximumVoltage: Quantity<'voltage'>
  readonly capacity: Quantity<'charge'>
  readonly resistance: Quantity<'resistance'>
  readonly energy: Quantity<'energy'>
  readonly usable: Quantity<'energy'>
  readonly usableInWinter: Quantity<'energy'>
  readonly mass: Quantity<'mass'>
}

/** The pack of a sheet, or undefined when the sheet has none. */
export function packOf({ module, pack }: Build): Pack | undefined {
  if (module === undefined || pack === undefined) return undefined
  const { series, parallel } = pack
  const volts = (voltage: Quantity<'voltage'>) => seriesVoltage({ count: series, voltage })
  const nominalVoltage = volts(module.nominalVoltage)
  const capacity = parallelCharge({ count: parallel, capacity: module.capacity })
  const energy = packEnergy({ voltage: nominalVoltage, capacity })
  return {
    modules: series * parallel,
    nominalVoltage,
    minimumVoltage: volts(module.minimumVoltage),
    maximumVoltage: volts(module.maximumVoltage),
    capacity,
    resistance: packResistance({ series, parallel, resistance: module.resistance }),
    energy,
    usable: usableEnergy({ energy, upper: pack.usable, lower: 0 }),
    usableInWinter: usableEnergy({ energy, upper: pack.usableInWinter, lower: 0 }),
    mass: module.mass.times(series * parallel),
  }
}

/** The section on the pack. */
export function packSection(build: Build, pack: Pack | undefined): Section | Unassessed {
  const { module, controller } = build
  const title = 'The pack'
  if (module === undefined || pack === undefined) return { title, why: missing(build, ['module', 'pack']) }
  const checks: Check[] = []
  const figures = [
    { name: `voltage, ${build.pack?.series} in series`, value: pack.nominalVoltage },
    { name: 'voltage when full', value: pack.maximumVoltage },
    { name: 'voltage when empty', value: pack.minimumVoltage },
    { name: `capacity, ${build.pack?.parallel} in parallel`, value: pack.capacity },
    { name: 'energy', value: pack.energy },
    { name: 'energy used in summer', value: pack.usable },
    { name: 'resistance', value: pack.resistance },
    { name: 'mass of the modules', value: pack.mass },
    { name: 'energy per mass of modules', value: specificEnergy({ energy: pack.energy, mass: pack.mass }) },
  ]
  if (controller !== undefined) {
    const current = controller.batteryCurrent
    const sagged = terminalVoltage({ openCircuit: pack.minimumVoltage, current, resistance: pack.resistance })
    figures.push({ name: `voltage when empty, at ${current}`, value: sagged })
    const peak = module.peakCurrent.times(build.pack?.parallel ?? 1)
    const basis = (field: string) => `the sheet: ${field}`
    checks.push(
      check(
        'Full pack at the controller',
        pack.maximumVoltage,
        'at most',
        controller.maximumVoltage,
        basis('controller.maximumVoltage'),
      ),
      check(
        'Empty pack under full current',
        sagged,
        'at least',
        controller.minimumVoltage,
        basis('controller.minimumVoltage'),
      ),
      check(
        'Current from the pack',
        current,
        'at most',
        peak,
        basis('module.peakCurrent times the modules in parallel'),
      ),
    )
  }
  const assumptions = [
    'The modules are equal and share the current; links and contactors add no resistance.',
    `The open-circuit voltage of the empty pack is ${pack.minimumVoltage}.`,
  ]
  return { title, figures, tables: [], checks, assumptions, cautions: [cautions.highVoltage, cautions.lithiumCells] }
}
