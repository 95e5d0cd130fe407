/** The most current that the modules of a pack take on charge, and what is not known of it. */
import { type Points, straightAt } from '../../formula/points.js'
import { type Assumption, assumed } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import type { Pack } from './module.js'

/** What the modules take on charge. @internal */
export interface ChargeLimit {
  /** Of the pack; absent where nothing is said of it. */
  readonly most?: Quantity<'current'>
  /** What sets it, such as `charge current of the modules at 5 °C`. */
  readonly name: string
  /** The field of the module that sets it. */
  readonly field: 'chargeCurrent' | 'chargeCurrents'
  /** Why it may be less than that, and what to give; absent where the limit is known. */
  readonly unknown?: string
  readonly assumptions: readonly Assumption[]
}

/**
 * The charge current of a pack: by temperature where the module tells it so, and nothing beyond what it tells.
 *
 * @param what - What the cells are to take, in words.
 * @param temperature - Of the cells, with the field that gives it.
 * @internal
 */
export function chargeLimitOf(
  pack: Pack,
  what: string,
  { temperature, field }: { readonly temperature: Quantity<'temperature'> | undefined; readonly field: string },
): ChargeLimit {
  const { chargeCurrent, chargeCurrents } = pack.module
  if (chargeCurrents !== undefined) return limitByTable(pack, chargeCurrents, what, temperature, field)
  const name = 'charge current of the modules'
  const most = chargeCurrent?.times(pack.parallel)
  return {
    ...(most === undefined
      ? { unknown: `whether the cells take ${what} is not known: give pack.module.chargeCurrent` }
      : { most }),
    name,
    field: 'chargeCurrent',
    assumptions:
      most !== undefined
        ? []
        : [
            assumed(
              'pack.module.chargeCurrent.absent',
              'No charge current of the modules is given: on charge only their voltage is a limit.',
            ),
          ],
  }
}

function limitByTable(
  { module: { chargeCurrent }, parallel }: Pack,
  table: NonNullable<Pack['module']['chargeCurrents']>,
  what: string,
  temperature: Quantity<'temperature'> | undefined,
  field: string,
): ChargeLimit {
  const points = table.map(([at, current]) => [at.si, current.si] as const)
  const bySheet = chargeCurrent?.si ?? Infinity
  const ofPack = (amperes: number) => quantity('current', Math.min(bySheet, amperes) * parallel, 'A')
  if (temperature !== undefined) {
    const [[coldest], [warmest]] = [points[0], points.at(-1)] as [Points[number], Points[number]]
    const isTold = temperature.si >= coldest && temperature.si <= warmest
    return {
      most: ofPack(isTold ? straightAt(points, temperature.si) : 0),
      name: `charge current of the modules at ${temperature}`,
      field: 'chargeCurrents',
      assumptions: [],
    }
  }
  const most = ofPack(Math.max(...points.map(([, amperes]) => amperes)))
  return {
    most,
    name: 'charge current of the modules',
    field: 'chargeCurrents',
    unknown: `whether the cells take ${what} depends on their temperature: give ${field}`,
    assumptions: [
      assumed(
        'pack.module.chargeCurrents.most',
        `The pack is charged with up to ${most}, what it takes at the best temperature of pack.module.chargeCurrents: ${field} is not given.`,
      ),
    ],
  }
}
