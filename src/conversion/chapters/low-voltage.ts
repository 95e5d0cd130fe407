/** The 12 V side: what its loads take, what converter and battery must give, and the wire and fuse of each load. */
import { type LowVoltageFeed, lowVoltageSupply } from '../../electrical/index.js'
import { lowVoltageFields } from '../../electrical/low-voltage.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { type Chapter, calledBy, type Figure, fromSheet, heldToSheet, missing, partOf, type Table } from './section.js'

/** Where in the sheet its figures stand. */
const places = {
  ...Object.fromEntries(Object.keys(lowVoltageFields).map((key) => [key, `lowVoltage.${key}`])),
  packVoltage: 'module.minimumVoltage',
}

/** The section on the 12 V side. @internal */
export function lowVoltageSection(build: Build, pack: Pack | undefined): Chapter {
  const { lowVoltage: asked, auxiliaries } = build
  if (asked === undefined) return missing(build, ['lowVoltage'])
  const found = fromSheet(places, () =>
    lowVoltageSupply({ ...asked, ...(pack === undefined ? {} : { packVoltage: pack.minimumVoltage }) }),
  )
  const figure = (
    id:
      | 'steady'
      | 'allOn'
      | 'leastRating'
      | 'inputCurrent'
      | 'greatestInputCurrent'
      | 'steadyPower'
      | 'inputPower'
      | 'runTime',
    name: string,
  ): Figure[] => {
    const value = found[id]
    return value === undefined ? [] : [{ id: `lowVoltage.${id}`, name, value }]
  }
  return {
    figures: [
      ...figure('steady', 'current of what is on for long'),
      ...figure('steadyPower', 'power of that'),
      ...figure('inputPower', 'power that it takes from the pack'),
      ...figure('allOn', 'current with everything on'),
      ...figure('leastRating', 'least rating of the converter'),
      ...figure('inputCurrent', 'drawn from the nearly empty pack for long'),
      ...figure('greatestInputCurrent', 'most that it draws from it'),
      ...figure('runTime', 'the battery lasts without the converter'),
    ],
    tables: feedsTable([
      ...Object.entries(found.feeds).map(([key, feed]) => [key, calledBy(key, {}), feed] as const),
      ...(found.output === undefined ? [] : [['converter', 'converter to battery', found.output] as const]),
    ]),
    ...found,
    checks: [
      ...partOf('lowVoltage', found.checks, (name) => inWords(name, Object.keys(asked.loads))),
      // What the journeys count on, where they count at all.
      ...(auxiliaries === undefined
        ? []
        : [
            heldToSheet(
              'auxiliaries',
              'Power of the 12 V side, as the journeys count it',
              found.inputPower ?? found.steadyPower,
              'at most',
              auxiliaries,
              'lowVoltage.loads',
            ),
          ]),
    ],
  }
}

/** A name of a check with the loads in words. */
function inWords(name: string, loads: readonly string[]): string {
  const load = loads.find((each) => name.endsWith(` ${each}`))
  return load === undefined ? name : `${name.slice(0, -load.length)}${calledBy(load, {})}`
}

function feedsTable(feeds: readonly (readonly [id: string, name: string, feed: LowVoltageFeed])[]): Table[] {
  if (feeds.length === 0) return []
  return [
    {
      id: 'feeds',
      title: 'Wires and fuses at 12 V',
      measures: 'columns',
      columns: [
        { id: 'current', name: 'current' },
        { id: 'fuse', name: 'fuse' },
        { id: 'section', name: 'section' },
        { id: 'ampacity', name: 'carries' },
        { id: 'drop', name: 'loses' },
      ],
      rows: feeds.map(([id, name, { current, fuse, section, ampacity, drop }]) => ({
        id,
        name,
        values: [current, fuse, section, ampacity, drop],
      })),
    },
  ]
}
