/**
 * The ledger of parts: what each weighs, where it sits, and what they come to together.
 *
 * Rests on Meriam & Kraige, Engineering Mechanics: Statics, chapter 5 (centres of mass), and Dynamics, appendix B
 * (moments of inertia).
 */
import { cite, section } from '../formula/index.js'
import {
  type Assumption,
  assumed,
  type Findings,
  given,
  group,
  list,
  optional,
  procedure,
  type Read,
  text,
  type Unfinished,
  whole,
} from '../procedure/index.js'
import { InputError, type Quantity, quantity } from '../quantity/index.js'
import { commonCentre } from './balance.js'
import { boxYawInertia, parallelAxis } from './inertia.js'
import { type Place, positionField } from './position.js'

/** What a list of parts comes to. */
export interface Tally extends Findings {
  readonly mass: Quantity<'mass'>
  /** Their common centre of gravity; `up` where the height of every part is known. */
  readonly centreOfGravity: Place & { readonly left: Quantity<'length'> }
  /** Moment of inertia about the upright axis through that centre of gravity. */
  readonly yawInertia: Quantity<'inertia'>
}

/** What describes a part. @internal */
export const partFields = /*@__PURE__*/ (() => ({
  name: text('What it is called'),
  mass: given('mass', 'Mass of one', { above: 0, usual: ['0.2 kg', '600 kg'] }),
  at: positionField,
  count: optional(whole('How many there are, all at this place', { min: 1, max: 100_000 })),
  size: optional(
    group('The sides of the part, seen from above; without them it is taken as a point', {
      length: given('length', 'Length along the car', { min: 0 }),
      width: given('length', 'Width across the car', { min: 0 }),
    }),
  ),
}))()

/** A part. @internal */
export const partField = /*@__PURE__*/ (() => group('A part', partFields))()

/** What is read of a part. @internal */
export type Part = Read<typeof partField>

/**
 * Sums parts to their mass, their centre of gravity and their yaw inertia about it.
 *
 * Answers: what do the parts weigh together, where is their centre of gravity, and how hard is it to turn them?
 *
 * - the input: the parts, a list of at least 1
 *   - `name`: what it is called, text
 *   - `mass`: mass of one, in kg, above 0 kg
 *   - `at`: a place in the car
 *     - `aft`: distance behind the front axle line, negative ahead of it, in m
 *     - `left`: distance to the left of the centre line, negative to the right, in m, optional
 *     - `up`: height above the ground, in m, at least 0 m, optional
 *   - `count`: how many there are, all at this place, a whole number, at least 1 and at most 100000, optional
 *   - `size`: the sides of the part, seen from above; without them it is taken as a point, optional
 *     - `length`: length along the car, in m, at least 0 m
 *     - `width`: width across the car, in m, at least 0 m
 *
 * @returns Mass, centre of gravity and yaw inertia, with what was assumed.
 * @throws InputError for parts that cannot be used, such as one whose `left` is unknown, by its path in the list.
 * Source: Meriam & Kraige, Engineering Mechanics: Statics, chapter 5; Meriam & Kraige, Engineering Mechanics:
 * Dynamics, appendix B.
 *
 * @example
 * ```ts
 * const { mass, centreOfGravity } = tally([
 *   { name: 'motor', mass: '46 kg', at: { aft: '150 mm', left: '0 mm' } },
 *   { name: 'modules', mass: '24 kg', count: 8, at: { aft: '1.6 m', left: '50 mm' } },
 * ])
 * String(mass) // '238 kg'
 * String(centreOfGravity.aft) // '1320 mm'
 * ```
 */
export const tally = /*@__PURE__*/ procedure({
  name: 'tally',
  title: 'What parts come to',
  answers: 'What do the parts weigh together, where is their centre of gravity, and how hard is it to turn them?',
  input: list('The parts', partField, { least: 1 }),
  source: [
    cite('Meriam & Kraige, Engineering Mechanics: Statics', 'chapter 5'),
    cite('Meriam & Kraige, Engineering Mechanics: Dynamics', 'appendix B'),
  ],
  work: (parts): Unfinished<Tally> => {
    const masses = parts.map((part, i) => ({ ...part, mass: wholeMass(part), path: `[${i}].at` }))
    const centreOfGravity = commonPlace('tally', masses, 'the yaw inertia')
    const yawInertia = section('Yaw inertia', () => yawInertiaAbout(masses, centreOfGravity))
    const points = parts.filter(({ size }) => size === undefined).map(({ name }) => name)
    return {
      mass: masses.map(({ mass }) => mass).reduce((sum, mass) => sum.plus(mass)),
      centreOfGravity,
      yawInertia,
      checks: [],
      assumptions: [
        ...(points.length === 0
          ? []
          : [assumed('parts.points', `Taken as points, without a size of their own: ${points.join(', ')}.`)]),
        ...heightUnknown(parts),
      ],
    }
  },
})

/** Mass of all pieces of a part. @internal */
export function wholeMass({ mass, count = 1 }: Pick<Part, 'mass' | 'count'>): Quantity<'mass'> {
  return mass.times(count)
}

/** A mass at a place, and the path of that place in the input. */
interface Placed {
  readonly name: string
  readonly mass: Quantity<'mass'>
  readonly at: Part['at']
  readonly path: string
}

/**
 * The common centre of gravity of masses whose `left` must be known for something, and whose `up` may be.
 *
 * @throws InputError that lists every mass whose `left` is unknown.
 */
function commonPlace(where: string, masses: readonly Placed[], purpose: string): Tally['centreOfGravity'] {
  requireLeft(where, masses, purpose)
  const along = (direction: 'aft' | 'left' | 'up') =>
    section(`Centre of gravity: ${direction}`, () => commonAlong(masses, direction))
  const [aft, left] = [along('aft'), along('left')]
  return masses.every(({ at }) => at.up !== undefined) ? { aft, left, up: along('up') } : { aft, left }
}

/** The common centre of gravity along one direction, in which every place is known. @internal */
export function commonAlong(
  masses: readonly Pick<Placed, 'mass' | 'at'>[],
  direction: 'aft' | 'left' | 'up',
): Quantity<'length'> {
  const places = masses.map(({ mass, at }) => ({ mass, place: at[direction] as Quantity<'length'> }))
  return places.reduce((all, next) => ({
    place: commonCentre({ firstMass: all.mass, first: all.place, secondMass: next.mass, second: next.place }),
    mass: all.mass.plus(next.mass),
  })).place
}

/** Refuses masses whose `left` is unknown where it is needed. @internal */
export function requireLeft(where: string, masses: readonly Pick<Placed, 'at' | 'path'>[], purpose: string): void {
  const issues = masses
    .filter(({ at }) => at.left === undefined)
    .map(({ path }) => ({
      path: `${path}.left`,
      expected: "a length such as '-120 mm', or '0 mm' on the centre line",
      received: 'nothing',
      hint: `${purpose} cannot be worked out without it`,
    }))
  if (issues.length > 0) throw new InputError(where, issues)
}

/** What is said of parts of unknown height: nothing where none has a height, and where all have one. @internal */
export function heightUnknown(parts: readonly Pick<Part, 'name' | 'at'>[]): Assumption[] {
  const unknown = parts.filter(({ at }) => at.up === undefined).map(({ name }) => name)
  if (unknown.length === 0) return []
  const text = `The height of the centre of gravity is left out: none is given for ${unknown.join(', ')}.`
  return [assumed('centreOfGravity.up.unknown', text)]
}

function yawInertiaAbout(masses: readonly (Placed & Pick<Part, 'size'>)[], centre: Tally['centreOfGravity']) {
  const inertias = masses.map(({ name, mass, at, size }) =>
    section(name, () => {
      const inertia = size === undefined ? quantity('inertia', '0 kg·m²') : boxYawInertia({ mass, ...size })
      const away = Math.hypot(at.aft.si - centre.aft.si, (at.left as Quantity<'length'>).si - centre.left.si)
      return parallelAxis({ inertia, mass, distance: quantity('length', away, 'm') })
    }),
  )
  return inertias.reduce((sum, inertia) => sum.plus(inertia))
}
