/** The car seen from above: wheels with what they carry, centres of gravity and masses at their places, to be drawn. */
import { definition } from '../formula/index.js'
import { given, group, list, optional, procedure, text } from '../procedure/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import { requireLeft } from './ledger.js'
import { type Place, positionField } from './position.js'
import { scalesField, trackField, type Wheel, wheelbaseField, wheels } from './weigh.js'

/** A place seen from above. */
export interface PlanPlace extends Place {
  readonly left: Quantity<'length'>
}

/** A wheel at its place, with what it carries. */
export interface PlanWheel {
  readonly wheel: Wheel
  readonly at: PlanPlace
  readonly mass: Quantity<'mass'>
  /** What it carried before, where that was given. */
  readonly before?: Quantity<'mass'>
}

/** What there is to be drawn of a car seen from above. */
export interface Plan {
  readonly wheels: readonly PlanWheel[]
  readonly centreOfGravity: PlanPlace
  /** Where it was before, where that was given. */
  readonly before?: PlanPlace
  readonly masses: readonly { readonly name: string; readonly mass: Quantity<'mass'>; readonly at: PlanPlace }[]
  /** The foremost, rearmost and outermost of all places: half of the width lies on each side of the centre line. */
  readonly extent: {
    readonly front: Quantity<'length'>
    readonly rear: Quantity<'length'>
    readonly width: Quantity<'length'>
  }
}

/** Of a stance or of anything with more to it, what a plan shows. */
const stanceField = /*@__PURE__*/ (() =>
  group('How the car stands', { corners: scalesField, centreOfGravity: positionField }, { open: true }))()

const massField = /*@__PURE__*/ (() =>
  group('A mass at its place', {
    name: text('What it is called'),
    mass: given('mass', 'Mass', { min: 0 }),
    at: positionField,
  }))()

/**
 * Puts together what a drawing of the car from above shows: each wheel at its place with what it carries, the centre of
 * gravity, and masses at their places. A stance is what `weigh` or `exchangeMasses` gives, or its `corners` and
 * `centreOfGravity`. Every place needs its `left`, without which it cannot be drawn.
 *
 * Answers: where are the wheels, the centres of gravity and the masses in a drawing of the car from above?
 *
 * - `wheelbase`: wheelbase, in m, above 0 m
 * - `track`: the distances between the wheels of an axle
 *   - `front`: front track, in m, above 0 m
 *   - `rear`: rear track, in m, above 0 m
 * - `stance`: how the car stands
 *   - `corners`: what the scales show
 *     - `frontLeft`: mass on the front left wheel, in kg, at least 0 kg
 *     - `frontRight`: mass on the front right wheel, in kg, at least 0 kg
 *     - `rearLeft`: mass on the rear left wheel, in kg, at least 0 kg
 *     - `rearRight`: mass on the rear right wheel, in kg, at least 0 kg
 *   - `centreOfGravity`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 * - `before`: how the car stands, optional
 *   - `corners`: what the scales show
 *     - `frontLeft`: mass on the front left wheel, in kg, at least 0 kg
 *     - `frontRight`: mass on the front right wheel, in kg, at least 0 kg
 *     - `rearLeft`: mass on the rear left wheel, in kg, at least 0 kg
 *     - `rearRight`: mass on the rear right wheel, in kg, at least 0 kg
 *   - `centreOfGravity`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 * - `masses`: masses at their places, a list, optional
 *   - `name`: what it is called, text
 *   - `mass`: mass, in kg, at least 0 kg
 *   - `at`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 *
 * @returns What there is to be drawn.
 * @throws InputError for input that cannot be used, by its path.
 * Source: by definition.
 *
 * @example
 * ```ts
 * const car = { wheelbase: '2030 mm', track: { front: '1220 mm', rear: '1190 mm' } } as const
 * const scales = { frontLeft: '182 kg', frontRight: '174 kg', rearLeft: '161 kg', rearRight: '165 kg' } as const
 * const { wheels } = planOf({ ...car, stance: weigh({ ...car, scales }) })
 * wheels.map(({ wheel, at, mass }) => `${wheel} ${at.aft} ${at.left} ${mass}`)[0] // 'frontLeft 0 mm 610 mm 182 kg'
 * ```
 */
export const planOf = /*@__PURE__*/ procedure({
  name: 'planOf',
  title: 'The car seen from above',
  answers: 'Where are the wheels, the centres of gravity and the masses in a drawing of the car from above?',
  input: {
    wheelbase: wheelbaseField,
    track: trackField,
    stance: stanceField,
    before: optional(stanceField),
    masses: optional(list('Masses at their places', massField)),
  },
  source: [definition],
  work: ({ wheelbase, track, stance, before, masses = [] }): Plan => {
    const placed = [
      { path: 'stance.centreOfGravity', at: stance.centreOfGravity },
      ...(before === undefined ? [] : [{ path: 'before.centreOfGravity', at: before.centreOfGravity }]),
      ...masses.map(({ at }, i) => ({ path: `masses[${i}].at`, at })),
    ]
    requireLeft('planOf', placed, 'its place in the plan')
    const front = quantity('length', '0 mm')
    const placeOf = (wheel: Wheel): PlanPlace => {
      const half = (wheel.startsWith('front') ? track.front : track.rear).over(2)
      return {
        aft: wheel.startsWith('front') ? front : wheelbase,
        left: wheel.endsWith('Left') ? half : half.times(-1),
      }
    }
    const drawn: Plan['masses'] = masses.map(({ name, mass, at }) => ({ name, mass, at: at as PlanPlace }))
    const shown = wheels.map((wheel) => ({
      wheel,
      at: placeOf(wheel),
      mass: stance.corners[wheel],
      ...(before === undefined ? {} : { before: before.corners[wheel] }),
    }))
    const places = [...shown, ...drawn].map(({ at }) => at)
    const afts = places.map(({ aft }) => aft)
    const outermost = Math.max(...places.map(({ left }) => Math.abs(left.si)))
    return {
      wheels: shown,
      centreOfGravity: stance.centreOfGravity as PlanPlace,
      ...(before === undefined ? {} : { before: before.centreOfGravity as PlanPlace }),
      masses: drawn,
      extent: {
        front: afts.reduce((least, aft) => (aft.isAtMost(least) ? aft : least)),
        rear: afts.reduce((most, aft) => (aft.isAtLeast(most) ? aft : most)),
        width: quantity('length', 2 * outermost, 'm').as('mm'),
      },
    }
  },
})
