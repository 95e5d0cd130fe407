/** The bus bars: which bar carries each current, how tight its joints are, and what they lose. */

import { barFields } from '../../electrical/bus-bar.js'
import { sizeBar } from '../../electrical/index.js'
import { section as heading } from '../../formula/index.js'
import { merged } from '../../procedure/index.js'
import type { Quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import { type Chapter, calledBy, fromSheet, missing, partOf, type Table } from './section.js'

/** How many of the bars that do not serve are told, the nearest ones. */
const NEAR_MISSES = 3

/** The section on bus bars. @internal */
export function barsSection(build: Build): Chapter {
  const named = Object.entries(build.bars ?? {})
  if (named.length === 0) return missing({ ...build, bars: undefined }, ['bars'])
  const parts = named.map(([key, each]) => heading(`Bar: ${calledBy(key, each)}`, () => barPart(key, each)))
  return { figures: [], tables: parts.map(({ table }) => table), ...merged(...parts) }
}

function barPart(key: string, { title, ...asked }: NonNullable<Build['bars']>[string]) {
  const path = `bars.${key}`
  const name = calledBy(key, { title })
  const places = Object.fromEntries(Object.keys(barFields).map((field) => [field, `${path}.${field}`]))
  const found = fromSheet(places, () => sizeBar(asked))
  const row = (id: string, words: string, value: Quantity | undefined) =>
    value === undefined ? [] : [{ id, name: words, values: [value] }]
  const table: Table = {
    id: path,
    title: `The ${name}`,
    measures: 'rows',
    columns: [{ id: '', name: found.name ?? 'no bar serves' }],
    rows: [
      ...row('ampacity', 'carries all day', found.ampacity),
      ...row('resistance', 'resistance, without its joints', found.resistance),
      ...row('loss', 'heat in the bar', found.loss),
      ...row('jointResistance', 'resistance of a clean joint', found.jointResistance),
      ...row('jointLoss', 'heat in both joints', found.jointLoss),
      ...row('preload', 'force of each bolt', found.preload),
    ],
    notes: found.rejected
      .slice(-NEAR_MISSES)
      .map(({ name: bar, reasons }) => `${bar} is refused: ${reasons.join('; ')}.`),
  }
  return { ...found, table, checks: partOf(path, found.checks, (words) => `${name}: ${words}`) }
}
