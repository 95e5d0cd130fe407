/**
 * Properties of a fluid by temperature, as published tables give them.
 *
 * Between two rows a property is interpolated; outside the table there is none, and nothing is extrapolated.
 */
import { icePoint, type Source } from '../formula/index.js'
import { rowsAround } from '../formula/points.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'

/** A table of the properties of a fluid at temperatures that rise from row to row. */
export interface PropertyTable {
  /** The fluid, in words. */
  readonly fluid: string
  /** Where it is published, and how it came here. */
  readonly source: Source
  /** The unit of the temperatures, which are the first column. */
  readonly temperatureUnit: '°C' | 'K'
  /** What the other columns hold, with their units. */
  readonly columns: readonly string[]
  readonly rows: readonly (readonly number[])[]
}

/** How a column runs between two rows: it is straight, or its logarithm or its reciprocal is. */
type Course = 'straight' | 'logarithm' | 'reciprocal'

/**
 * What a column holds, counted from the first after the temperature, at kelvins within the table; in its own unit.
 * @internal
 */
export function columnAt(table: PropertyTable, column: number, kelvins: number, course: Course): number {
  const { rows, temperatureUnit } = table
  const temperature = temperatureUnit === 'K' ? kelvins : kelvins - icePoint.value.si
  const [low, high] = rowsAround(rows, temperature)
  const share = (temperature - (low[0] as number)) / ((high[0] as number) - (low[0] as number))
  const [from, to] = [low[column + 1] as number, high[column + 1] as number]
  if (course === 'logarithm') return from * (to / from) ** share
  return course === 'straight' ? from + share * (to - from) : 1 / (1 / from + share * (1 / to - 1 / from))
}

/** The lowest and the highest temperature of a table. @internal */
export function rangeOf({
  rows,
  temperatureUnit,
}: PropertyTable): readonly [low: Quantity<'temperature'>, high: Quantity<'temperature'>] {
  const at = (row: readonly number[] | undefined) =>
    quantity('temperature', row?.[0] as number, temperatureUnit).as('°C')
  return [at(rows[0]), at(rows.at(-1))]
}

/** Refuses a temperature outside a table. @internal */
export function refuseOutside(where: string, path: string, table: PropertyTable, asked: Quantity<'temperature'>): void {
  const [low, high] = rangeOf(table)
  if (asked.si >= low.si && asked.si <= high.si) return
  const expected = `a temperature from ${low} to ${high}, the range of the table of ${table.fluid}`
  throw new InputError(where, [
    { path, expected, received: String(asked), hint: `${table.source.work}; nothing is extrapolated` },
  ])
}
