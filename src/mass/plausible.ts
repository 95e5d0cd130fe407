/**
 * Whether a car stands as cars do: outside what nearly all have a figure is unusual, and outside what any has it is more
 * likely a slip.
 *
 * Ranges of light road cars: common practice, no source; the static stability factor from NHTSA HS 809 868, which was read.
 */
import { type Check, check, type Note } from '../procedure/index.js'
import { type Kind, type Quantity, quantity } from '../quantity/index.js'
import { staticStabilityFactor } from './transfer.js'
import type { Stance, WeighedCar } from './weigh.js'

/** A figure with what is usual of it, and with what no car has. */
interface Range<K extends Kind = Kind> {
  readonly key: string
  readonly name: string
  readonly value: Quantity<K>
  readonly usual: readonly [Quantity<K>, Quantity<K>]
  readonly limit: readonly [Quantity<K>, Quantity<K>]
  readonly basis: string
}

const PRACTICE = 'common practice, no source'

/**
 * What is unusual of a stance, and what no car has.
 *
 * @param part - What comes before the ids, such as `weighing`.
 * @param path - The fields from which the stance comes.
 * @internal
 */
export function plausibilityOf(
  part: string,
  path: string,
  stance: Stance,
  car: Pick<WeighedCar, 'track' | 'wheelbase' | 'raised'>,
): { readonly checks: readonly Check[]; readonly notes: readonly Note[] } {
  const ranges = rangesOf(stance, car)
  const isOutside = ({ value }: Range, [low, high]: Range['usual']) => value.si < low.si || value.si > high.si
  return {
    checks: ranges.flatMap(({ key, name, value, limit, basis }) => {
      const [low, high] = limit
      const id = `${part}.${key}`
      if (value.si < low.si) return [check(id, name, value, 'at least', low, `plausibility: ${basis}`, path)]
      return value.si > high.si ? [check(id, name, value, 'at most', high, `plausibility: ${basis}`, path)] : []
    }),
    notes: ranges
      .filter((range) => isOutside(range, range.usual) && !isOutside(range, range.limit))
      .map(({ key, name, value, usual, basis }) => ({
        id: `${part}.${key}.unusual`,
        path,
        text: `${name}: ${value} is unusual; light road cars have ${usual[0]} to ${usual[1]} (${basis}).`,
        value: value as Quantity,
        usual: usual as readonly [Quantity, Quantity],
      })),
  }
}

function rangesOf(
  { mass, frontShare, leftShare, crossShare, centreOfGravity: { up } }: Stance,
  { track, wheelbase, raised }: Pick<WeighedCar, 'track' | 'wheelbase' | 'raised'>,
): readonly Range[] {
  const percent = (low: number, high: number) =>
    [quantity('ratio', low / 100).as('%'), quantity('ratio', high / 100).as('%')] as const
  const plain = (low: number, high: number) => [quantity('ratio', low), quantity('ratio', high)] as const
  const metres = (low: number, high: number) => [quantity('length', low, 'm'), quantity('length', high, 'm')] as const
  const whole: Range<'mass'> = {
    key: 'kerbMass',
    name: 'Kerb mass',
    value: mass,
    usual: [quantity('mass', '400 kg'), quantity('mass', '1600 kg')],
    limit: [quantity('mass', '200 kg'), quantity('mass', '3000 kg')],
    basis: PRACTICE,
  }
  const shares: Range<'ratio'>[] = [
    {
      key: 'frontShare',
      name: 'Share of the front wheels',
      value: frontShare,
      usual: percent(40, 65),
      limit: percent(30, 72),
      basis: PRACTICE,
    },
    {
      key: 'leftShare',
      name: 'Share of the left wheels',
      value: leftShare,
      usual: percent(47, 53),
      limit: percent(44, 56),
      basis: PRACTICE,
    },
    {
      key: 'crossShare',
      name: 'Cross weight',
      value: crossShare,
      usual: percent(48, 52),
      limit: percent(45, 55),
      basis: PRACTICE,
    },
  ]
  if (up === undefined) return [whole, ...shares] as readonly Range[]
  const meanTrack = track.front.plus(track.rear).over(2)
  const height: Range<'length'> = {
    key: 'height',
    name: 'Height of the centre of gravity',
    value: up,
    usual: metres(0.4, 0.65),
    limit: metres(0.3, 0.8),
    basis: PRACTICE,
  }
  const ratios: Range<'ratio'>[] = [
    {
      key: 'heightOverWheelbase',
      name: 'Height of the centre of gravity over the wheelbase',
      value: quantity('ratio', up.ratioTo(wheelbase)),
      usual: plain(0.18, 0.27),
      limit: plain(0.14, 0.35),
      basis: PRACTICE,
    },
    // Below 1 has a check of its own, that passes too.
    {
      key: 'stabilityFactor',
      name: 'Static stability factor',
      value: staticStabilityFactor({ track: meanTrack, height: up }),
      usual: plain(0, 1.5),
      limit: plain(0, 1.7),
      basis: 'NHTSA HS 809 868',
    },
    ...(raised === undefined
      ? []
      : [
          {
            key: 'heightOverRadius',
            name: 'Height of the centre of gravity over that of the wheel centres',
            value: quantity('ratio', up.ratioTo(raised.loadedRadius)),
            usual: plain(1.2, 3),
            limit: plain(1.2, 3),
            basis: PRACTICE,
          },
        ]),
  ]
  return [whole, ...shares, height, ...ratios] as readonly Range[]
}
