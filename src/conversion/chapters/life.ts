/** The cells of the pack: their own limits, what is left of them, and what models say of the years to come. */
import { type PackYear, packLife, stateOfHealth } from '../../electrical/index.js'
import { section as heading } from '../../formula/index.js'
import { unlessUnknown } from '../../procedure/check.js'
import { type Check, type Findings, says, trial } from '../../procedure/index.js'
import { inOneLine } from '../../quantity/errors.js'
import { InputError, type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Driven } from './journeys.js'
import type { Pack } from './pack.js'
import { type Figure, fromSheet, isOfSheet, type Table } from './section.js'

/** Where in the sheet the figures of its life stand. */
const places = {
  'pack': 'pack',
  'pack.module': 'module',
  'journeys': 'pack.life.journeys',
  'temperatures': 'pack.life.temperatures',
  'charge': 'pack.life.charge',
  'years': 'pack.life.years',
}

/** What is left of the capacity when new, where the sheet says what that was. @internal */
export function healthOf({ module }: Pack['made']): Figure[] {
  const { capacity, newCapacity } = module
  if (newCapacity === undefined) return []
  const value = stateOfHealth({ capacity, newCapacity })
  return [{ id: 'pack.stateOfHealth', name: 'of the capacity when new', value }]
}

/** How unlike the cells are, held to the room that the limits of a cell leave beside those of the module. @internal */
export function cellChecks({ module }: Pack['made']): Check[] {
  const { cell, cellsInSeries: count } = module
  if (cell === undefined) return []
  const spread = cell.spread ?? quantity('voltage', '0 V')
  const unknown =
    cell.spread === undefined
      ? 'how far a cell is off the mean of its module is not known: measure each cell of a full and an empty module, and give module.cell.spread'
      : undefined
  const [full, empty] = [module.maximumVoltage.over(count), module.minimumVoltage.over(count)]
  const mV = (room: Quantity<'voltage'>) => room.as('mV')
  return [
    unlessUnknown(
      trial(
        'cell.highest',
        'Highest cell of a full module',
        says`a cell lies up to ${mV(spread)} above the ${full} of all, at most the ${mV(cell.maximumVoltage.minus(full))} that it may`,
        'the sheet: module.cell.maximumVoltage',
        'module.cell.maximumVoltage',
        'module.maximumVoltage',
        'module.cell.spread',
      ),
      unknown,
    ),
    unlessUnknown(
      trial(
        'cell.lowest',
        'Lowest cell of an empty module',
        says`a cell lies up to ${mV(spread)} below the ${empty} of all, at most the ${mV(empty.minus(cell.minimumVoltage))} that it may`,
        'the sheet: module.cell.minimumVoltage',
        'module.cell.minimumVoltage',
        'module.minimumVoltage',
        'module.cell.spread',
      ),
      unknown,
    ),
  ]
}

/** What the models say of the pack, where the sheet tells a year of it. @internal */
export function lifeOf(
  { pack: asked }: Build,
  pack: Pack,
  driven: () => readonly Driven[],
): { readonly tables: readonly Table[] } & Partial<Findings> {
  const life = asked?.life
  if (life === undefined) return { tables: [] }
  try {
    const journeys = Object.entries(life.journeys).flatMap(([key, perYear]) => drawnBy(key, perYear, pack, driven()))
    if (journeys.length === 0) {
      const why =
        'what the journeys draw is not known: name one in pack.life.journeys, and give the sheet what drives it'
      return { tables: [], checks: [unknownLife(why)] }
    }
    const { temperatures, charge, years } = life
    const found = heading('What models say of its life', () =>
      fromSheet(places, () => packLife({ pack: pack.made, journeys, temperatures, charge, years })),
    )
    return { ...found, tables: found.years.length === 0 ? [] : [lifeTable(found.years)] }
  } catch (error) {
    if (!isOfSheet(error)) throw error
    const said = error instanceof InputError ? inOneLine(error) : error.message
    return { tables: [], checks: [unknownLife(`the models say nothing of it. ${said}`)] }
  }
}

function unknownLife(unknown: string): Check {
  return trial('life.model', 'Model of the cells', { unknown }, 'published models of cells', 'pack.life')
}

/** What a journey draws, in the season in which it draws most. */
function drawnBy(key: string, perYear: number, pack: Pack, driven: readonly Driven[]) {
  const [worst] = driven
    .filter((each) => each.key === key)
    .sort((one, other) => other.drive.drawn.si - one.drive.drawn.si)
  if (worst === undefined) return []
  const { drawn, duration } = worst.drive
  const charge = quantity('charge', drawn.si / pack.nominalVoltage.si, 'C').as('Ah')
  const current = quantity('current', charge.si / duration.si, 'A')
  return [{ name: worst.name, perYear, charge, current }]
}

/** The years that are told: the first ones, then fewer, and the last. */
const TOLD = [1, 2, 3, 5, 8, 10, 15, 20, 25, 30]

function lifeTable(years: readonly PackYear[]): Table {
  const withResistance = years[0]?.resistance !== undefined
  const shown = years.filter(({ year }) => TOLD.includes(year) || year === years.length)
  const ends = (values: { readonly least: Quantity; readonly most: Quantity } | undefined) =>
    values === undefined ? [] : [values.least, values.most]
  return {
    id: 'life',
    title: 'What models say that it holds after years, from the least to the most',
    measures: 'columns',
    columns: [
      { id: 'capacityLeast', name: 'holds at least' },
      { id: 'capacityMost', name: 'at most' },
      { id: 'leftLeast', name: 'left at least' },
      { id: 'leftMost', name: 'at most' },
      ...(withResistance
        ? [
            { id: 'resistanceLeast', name: 'resists at least' },
            { id: 'resistanceMost', name: 'at most' },
          ]
        : []),
    ],
    rows: shown.map(({ year, capacity, left, resistance }) => ({
      id: `year${year}`,
      name: year === 1 ? 'after 1 year' : `after ${year} years`,
      values: [...ends(capacity), ...ends(left), ...ends(resistance)],
    })),
    notes: ['This is what models of other cells make of the years, and not what these cells will do: test them again.'],
  }
}
