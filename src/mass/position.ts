/**
 * Where a mass sits in the car, in words instead of bare signs.
 *
 * ISO 8855 has x forward, y left and z up. Here aft is the distance behind the front axle line (aft = −x, with
 * the origin on that axle), left is measured from the centre line (left = y) and up from the ground (up = z).
 */
import type { Given } from '../quantity/index.js'

/** A place in the car. What needs `left` or `up` says so where they are unknown. */
export interface Position {
  /** Distance behind the front axle line; negative ahead of it. */
  readonly aft: Given<'length'>
  /** Distance to the left of the centre line; negative to the right. Unknown when left out. */
  readonly left?: Given<'length'>
  /** Height above the ground. Unknown when left out. */
  readonly up?: Given<'length'>
}
