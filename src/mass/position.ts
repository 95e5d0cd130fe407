/**
 * Where a mass sits in the car, in words instead of bare signs.
 *
 * ISO 8855 has x forward, y left and z up. Here aft is the distance behind the front axle line (aft = −x, with
 * the origin on that axle), left is measured from the centre line (left = y) and up from the ground (up = z).
 */
import { type Assumption, assumed, given, group, optional, type Read } from '../procedure/index.js'
import type { Given, Quantity } from '../quantity/index.js'

/** A place in the car. What needs `left` or `up` says so where they are unknown. */
export interface Position {
  /** Distance behind the front axle line; negative ahead of it. */
  readonly aft: Given<'length'>
  /** Distance to the left of the centre line; negative to the right. Unknown when left out. */
  readonly left?: Given<'length'>
  /** Height above the ground. Unknown when left out. */
  readonly up?: Given<'length'>
}

/** A place that was worked out. `left` and `up` are there where all that they rest on was known. */
export interface Place {
  /** Distance behind the front axle line; negative ahead of it. */
  readonly aft: Quantity<'length'>
  /** Distance to the left of the centre line; negative to the right. */
  readonly left?: Quantity<'length'>
  /** Height above the ground. */
  readonly up?: Quantity<'length'>
}

/** Where parts of light road cars lie: nobody measures a place finer than a millimetre. Common practice, no source. */
const placed = { usual: ['-2 m', '5 m'], finest: '1 mm' } as const

/** What describes a place. @internal */
export const positionFields = /*@__PURE__*/ (() => ({
  aft: given('length', 'Distance behind the front axle line, negative ahead of it', placed),
  left: optional(given('length', 'Distance to the left of the centre line, negative to the right', placed)),
  up: optional(given('length', 'Height above the ground', { min: 0, usual: ['0 m', '2.5 m'], finest: '20 mm' })),
}))()

/** A place in the car. @internal */
export const positionField = /*@__PURE__*/ (() => group('A place in the car', positionFields))()

/** The centre of gravity of a car. @internal */
export const centreOfGravityField = /*@__PURE__*/ (() =>
  // It is worked out, and no finer than it is: only a place that is measured has a least size.
  group('Where the centre of gravity lies', {
    aft: given('length', positionFields.aft.about, { usual: placed.usual }),
    left: optional(given('length', positionFields.left.about, { usual: placed.usual })),
    up: optional(given('length', 'Height above the ground', { min: 0, usual: ['0.4 m', '0.65 m'] })),
  }))()

/** Beyond this share of the wheelbase few cars overhang their axles; wider than its wheels hardly any part sits. */
const OVERHANG = 0.5
/** Hardly any road car is higher, in m. */
const HIGHEST = 2.5

/** Says of a thing that lies where few cars have anything, that it was taken as given. @internal */
export function outside(
  path: string,
  name: string,
  { aft, left, up }: Read<typeof positionField>,
  {
    wheelbase,
    track,
  }: {
    readonly wheelbase: Quantity<'length'>
    readonly track: { readonly front: Quantity<'length'>; readonly rear: Quantity<'length'> }
  },
): Assumption[] {
  const half = Math.max(track.front.si, track.rear.si) / 2
  const places = [
    ...(aft.si < -OVERHANG * wheelbase.si ? [`${aft.times(-1)} ahead of the front axle`] : []),
    ...(aft.si > (1 + OVERHANG) * wheelbase.si ? [`${aft.minus(wheelbase)} behind the rear axle`] : []),
    ...(left !== undefined && Math.abs(left.si) > half
      ? [`${left.times(Math.sign(left.si))} to the ${left.si > 0 ? 'left' : 'right'}, outside the wheels`]
      : []),
    ...(up !== undefined && up.si > HIGHEST ? [`${up} above the ground`] : []),
  ]
  if (places.length === 0) return []
  const text = `${name} was taken as given, ${places.join(' and ')}: is that inside the car?`
  return [assumed(`${path}.outside`, text)]
}
