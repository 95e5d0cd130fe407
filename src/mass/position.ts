/**
 * Where a mass sits in the car, in words instead of bare signs.
 *
 * ISO 8855 has x forward, y left and z up. Here aft is the distance behind the front axle line (aft = −x, with
 * the origin on that axle), left is measured from the centre line (left = y) and up from the ground (up = z).
 */
import * as z from 'zod/mini'
import type { Given, Quantity } from '../quantity/index.js'
import { about, given } from '../structure/index.js'

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

/** A position as it is read. */
export const positionGiven = /*@__PURE__*/ about(
  'a place in the car',
  z.strictObject({
    aft: given('length', 'Distance behind the front axle line, negative ahead of it'),
    left: z.optional(given('length', 'Distance to the left of the centre line, negative to the right')),
    up: z.optional(given('length', 'Height above the ground', { min: 0 })),
  }),
)
