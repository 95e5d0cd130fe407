/** The pack: what the modules make together, what else they could make, and whether the controller can live with it. */
import {
  arrangePack,
  type PackArrangements,
  packAt,
  packEnergy,
  packResistance,
  parallelCharge,
  seriesVoltage,
  specificEnergy,
  terminalVoltage,
  usableEnergy,
} from '../../electrical/index.js'
import { section as heading } from '../../formula/index.js'
import { highVoltage, lithiumCells } from '../../procedure/cautions.js'
import { type Check, check, type Findings, merged } from '../../procedure/index.js'
import { settled } from '../../procedure/reading.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Driven } from './journeys.js'
import { cellChecks, healthOf, lifeOf } from './life.js'
import { type Chapter, type Figure, fromSheet, heldToSheet, missing, type Table, vehiclePlaces } from './section.js'

/** Where in the sheet its figures stand. */
const places = {
  ...vehiclePlaces,
  'module': 'module',
  'window.minimum': 'controller.minimumVoltage',
  'window.maximum': 'controller.maximumVoltage',
  'available': 'pack.available',
  'energy': 'targets.energy',
  'batteryCurrent': 'controller.batteryCurrent',
  'temperature': 'seasons',
}

/** The electrical figures of a pack. @internal */
export interface Pack {
  readonly made: {
    readonly module: NonNullable<Build['module']>
    readonly series: number
    readonly parallel: number
  }
  readonly modules: number
  readonly nominalVoltage: Quantity<'voltage'>
  readonly minimumVoltage: Quantity<'voltage'>
  readonly maximumVoltage: Quantity<'voltage'>
  readonly capacity: Quantity<'charge'>
  readonly resistance: Quantity<'resistance'>
  readonly energy: Quantity<'energy'>
  readonly usable: Quantity<'energy'>
  readonly mass: Quantity<'mass'>
}

/** The pack of a sheet, or undefined when the sheet has none. @internal */
export function packOf({ module, pack }: Build): Pack | undefined {
  if (module === undefined || pack === undefined) return undefined
  const { series, parallel } = pack
  const volts = (voltage: Quantity<'voltage'>) => seriesVoltage({ count: series, voltage })
  const nominalVoltage = volts(module.nominalVoltage)
  const capacity = parallelCharge({ count: parallel, capacity: module.capacity })
  const energy = packEnergy({ voltage: nominalVoltage, capacity })
  return {
    made: settled({ module, series, parallel }),
    modules: series * parallel,
    nominalVoltage,
    minimumVoltage: volts(module.minimumVoltage),
    maximumVoltage: volts(module.maximumVoltage),
    capacity,
    resistance: packResistance({ series, parallel, resistance: module.resistance }),
    energy,
    usable: usableEnergy({ energy, upper: pack.usable, lower: 0 }),
    mass: module.mass.times(series * parallel),
  }
}

/** The section on the pack. @internal */
export function packSection(build: Build, pack: Pack | undefined, driven: () => readonly Driven[]): Chapter {
  const { module, controller, pack: asked } = build
  if (module === undefined || asked === undefined || pack === undefined) return missing(build, ['module', 'pack'])
  const figures = [
    { id: 'pack.nominalVoltage', name: `voltage, ${asked.series} in series`, value: pack.nominalVoltage },
    { id: 'pack.maximumVoltage', name: 'voltage when full', value: pack.maximumVoltage },
    { id: 'pack.minimumVoltage', name: 'voltage when empty', value: pack.minimumVoltage },
    { id: 'pack.capacity', name: `capacity, ${asked.parallel} in parallel`, value: pack.capacity },
    { id: 'pack.energy', name: 'energy', value: pack.energy },
    { id: 'pack.usableEnergy', name: 'energy used', value: pack.usable },
    { id: 'pack.resistance', name: 'resistance', value: pack.resistance },
    { id: 'pack.mass', name: 'mass of the modules', value: pack.mass },
    {
      id: 'pack.specificEnergy',
      name: 'energy per mass of modules',
      value: specificEnergy({ energy: pack.energy, mass: pack.mass }),
    },
    ...healthOf(pack.made),
  ]
  const arranged = heading('Which arrangements fit', () => arrangementsOf(build, pack))
  const states = statesTable(build, pack)
  const { tables: lives, ...life } = lifeOf(build, pack, driven)
  const fitting = controller === undefined ? undefined : fitOf(pack, controller)
  return {
    figures: [...figures, ...(fitting?.figures ?? [])],
    tables: [...(arranged === undefined ? [] : [arrangementTable(pack, arranged)]), states.table, ...lives],
    ...merged(
      {
        ...arranged,
        checks: [...askedOf(build, pack), ...(fitting?.checks ?? []), ...cellChecks(pack.made), ...(life.checks ?? [])],
        cautions: [highVoltage, lithiumCells],
      },
      states,
      { assumptions: life.assumptions ?? [], notes: life.notes ?? [] },
    ),
  }
}

/** What the sheet asks of the pack: its energy, and no more modules than are at hand. */
function askedOf({ targets, pack: asked }: Build, { energy, made: { series, parallel } }: Pack): Check[] {
  const available = asked?.available
  return [
    ...(targets?.energy === undefined
      ? []
      : [
          heldToSheet(
            'targets.energy',
            'Energy of the pack',
            energy,
            'at least',
            targets.energy,
            'pack.series',
            'pack.parallel',
          ),
        ]),
    ...(available === undefined
      ? []
      : [
          heldToSheet(
            'pack.available',
            'Modules in the pack',
            quantity('ratio', series).times(parallel),
            'at most',
            quantity('ratio', available),
            'pack.series',
            'pack.parallel',
          ),
        ]),
  ]
}

/** Whether a controller can live with the pack. */
function fitOf(
  pack: Pack,
  { minimumVoltage, maximumVoltage, batteryCurrent: current }: NonNullable<Build['controller']>,
) {
  const sagged = terminalVoltage({ openCircuit: pack.minimumVoltage, current, resistance: pack.resistance })
  const { module, parallel } = pack.made
  const [peak, field] =
    module.peakCurrent === undefined
      ? [module.continuousCurrent, 'continuousCurrent']
      : [module.peakCurrent, 'peakCurrent']
  const figures: Figure[] = [{ id: 'pack.saggedVoltage', name: `voltage when empty, at ${current}`, value: sagged }]
  const checks: Check[] = [
    heldToSheet(
      'controller.maximumVoltage',
      'Full pack at the controller',
      pack.maximumVoltage,
      'at most',
      maximumVoltage,
      'pack.series',
    ),
    heldToSheet(
      'controller.minimumVoltage',
      'Empty pack under full current',
      sagged,
      'at least',
      minimumVoltage,
      'controller.batteryCurrent',
    ),
    check(
      'controller.batteryCurrent',
      'Current from the pack',
      current,
      'at most',
      peak.times(parallel),
      `the sheet: module.${field} times the modules in parallel`,
      `module.${field}`,
      'pack.parallel',
      'controller.batteryCurrent',
    ),
  ]
  return { figures, checks }
}

/** Every arrangement of the modules at hand that fits the controller, and the near misses. */
function arrangementsOf({ controller, pack: asked, targets }: Build, pack: Pack): PackArrangements | undefined {
  if (controller === undefined) return undefined
  return fromSheet(places, () =>
    arrangePack({
      module: pack.made.module,
      window: { minimum: controller.minimumVoltage, maximum: controller.maximumVoltage },
      available: asked?.available ?? pack.modules,
      energy: targets?.energy,
      batteryCurrent: controller.batteryCurrent,
    }),
  )
}

const inWords = ({ series, parallel }: { readonly series: number; readonly parallel: number }) =>
  `${series} in series, ${parallel} in parallel`

/** How many of the near misses are told. */
const NEAR_MISSES = 5

function arrangementTable({ made }: Pack, { fits, rejected }: PackArrangements): Table {
  const isMade = ({ series, parallel }: { readonly series: number; readonly parallel: number }) =>
    series === made.series && parallel === made.parallel
  return {
    id: 'arrangements',
    title: 'Arrangements of the modules at hand that fit the controller, the lightest first',
    measures: 'columns',
    columns: [
      { id: 'energy', name: 'energy' },
      { id: 'maximumVoltage', name: 'when full' },
      { id: 'continuousPower', name: 'all day' },
      { id: 'peakPower', name: 'short time' },
      { id: 'mass', name: 'mass' },
    ],
    rows: fits.map((fit) => ({
      id: `${fit.series}s${fit.parallel}p`,
      name: `${inWords(fit)}${isMade(fit) ? ' (the sheet)' : ''}`,
      values: [fit.energy, fit.maximumVoltage, fit.continuousPower, fit.peakPower ?? 'unknown', fit.mass],
    })),
    notes: [
      ...(fits.some(isMade) ? [] : [`${inWords(made)}, as in the sheet, is not among them.`]),
      ...rejected.slice(0, NEAR_MISSES).map((near) => `${inWords(near)} is refused: ${near.reasons.join('; ')}.`),
    ],
  }
}

/** States of charge at which the power of the pack is told, and the temperature of its cells. */
const STATES = [
  ['at90', '90 %', '25 °C'],
  ['at20', '20 %', '25 °C'],
  ['at5', '5 %', '25 °C'],
] as const
/** Cells as cold as this give much less than warm ones. */
const COLD = quantity('temperature', '10 °C')

/** What the pack gives as it empties, and at 20 % in the cold of each season that has some. */
function statesTable(
  { seasons = {} }: Build,
  { made }: Pack,
): { readonly table: Table } & Pick<Findings, 'assumptions' | 'notes'> {
  const cold = Object.entries(seasons).flatMap(([key, { outside, cells = outside }]) =>
    cells.isAtMost(COLD) ? [[`${key}At20`, '20 %', cells] as const] : [],
  )
  const states = [...STATES, ...cold].map(([id, state, temperature]) => {
    const stateOfCharge = quantity('ratio', state)
    const name = `${stateOfCharge} charged, cells at ${temperature}`
    return {
      id,
      name,
      found: heading(name, () =>
        fromSheet(places, () => packAt({ pack: made, stateOfCharge, temperature, current: '0 A' })),
      ),
    }
  })
  const { assumptions, notes } = merged(...states.map(({ found }) => found))
  return {
    table: {
      id: 'states',
      title: 'What it gives as it empties',
      measures: 'columns',
      columns: [
        { id: 'openCircuit', name: 'at rest' },
        { id: 'continuousPower', name: 'all day' },
        { id: 'peakPower', name: 'short time' },
        { id: 'limitedBy', name: 'held by the' },
      ],
      rows: states.map(({ id, name, found: { openCircuit, most } }) => {
        const best = most.peak ?? most.continuous
        return { id, name, values: [openCircuit, most.continuous.power, best.power, best.limitedBy] }
      }),
    },
    assumptions,
    notes,
  }
}
