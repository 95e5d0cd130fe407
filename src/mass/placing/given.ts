/** What the placing of masses is given, and what of it is refused. */
import * as z from 'zod/mini'
import { InputError, type InputIssue } from '../../quantity/index.js'
import { about, given, type Read } from '../../structure/index.js'
import { positionGiven } from '../position.js'
import { trackGiven, wheelbaseGiven } from '../weigh.js'

const wholeNumber = (least: number) => z.int().check(z.minimum(least))
const name = /*@__PURE__*/ z.string().check(z.minLength(1))

const weightGiven = (what: string) => z.optional(given('ratio', `Weight of ${what}`, { min: 0 }))

export const placeMassesGiven = /*@__PURE__*/ about(
  'masses to be placed',
  z.strictObject({
    base: about(
      'the car without the modules',
      z.strictObject({
        mass: given('mass', 'Mass of the car without the modules', { above: 0 }),
        centreOfGravity: positionGiven,
      }),
    ),
    groups: about(
      'the groups of like modules',
      z.readonly(
        z
          .array(
            about(
              'a group of like modules',
              z.strictObject({
                name: about('what the group is called', name),
                mass: given('mass', 'Mass of one module', { above: 0 }),
                count: about('how many there are', wholeNumber(1)),
              }),
            ),
          )
          .check(z.minLength(1)),
      ),
    ),
    bays: about(
      'the bays that take modules',
      z.readonly(
        z
          .array(
            about(
              'a bay',
              z.strictObject({
                name: about('what the bay is called', name),
                at: positionGiven,
                capacity: about('how many modules it holds', wholeNumber(0)),
                accepts: about('the groups that fit into it', z.optional(z.readonly(z.array(z.string())))),
                pitch: about(
                  'the way from one module to the next',
                  z.optional(
                    z.strictObject({
                      aft: z.optional(given('length', 'Step to the rear from one module to the next')),
                      left: z.optional(given('length', 'Step to the left from one module to the next')),
                      up: z.optional(given('length', 'Step upwards from one module to the next')),
                    }),
                  ),
                ),
              }),
            ),
          )
          .check(z.minLength(1)),
      ),
    ),
    wheelbase: wheelbaseGiven,
    track: trackGiven,
    target: about(
      'what to come near to',
      z.strictObject({
        frontShare: z.optional(given('ratio', 'Share of the mass on the front axle', { min: 0, max: 1 })),
        leftShare: z.optional(given('ratio', 'Share of the mass on the left wheels', { min: 0, max: 1 })),
        aft: z.optional(given('length', 'Distance of the centre of gravity behind the front axle')),
        up: z.optional(given('length', 'Height that the centre of gravity should not exceed', { min: 0 })),
      }),
    ),
    weights: about(
      'how much each target counts',
      z.optional(
        z.strictObject({
          frontShare: weightGiven('the front share'),
          leftShare: weightGiven('the left share'),
          aft: weightGiven('the place along the car'),
          up: weightGiven('the height'),
        }),
      ),
    ),
  }),
)

export type PlaceGiven = Read<typeof placeMassesGiven>
export type Bay = PlaceGiven['bays'][number]
export type Group = PlaceGiven['groups'][number]
export type Direction = 'aft' | 'left' | 'up'

/** What a target may be about. */
export const targetKeys = ['frontShare', 'leftShare', 'aft', 'up'] as const

/** Refuses what can be told from single fields, by their paths. */
export function refuseFaults(read: PlaceGiven): void {
  for (const faultsIn of [faultyNames, faultyTargets, unknownPlaces, faultyPitches]) {
    const issues = faultsIn(read)
    if (issues.length > 0) throw new InputError('placeMasses', issues)
  }
}

/** How many modules a bay can come to hold. */
export function capacityOf(bay: Bay, groups: readonly Group[]): number {
  return groups
    .filter((group) => accepts(bay, group))
    .reduce((sum, { count }) => Math.min(bay.capacity, sum + count), 0)
}

/** Whether a group fits into a bay. */
export function accepts({ accepts: names }: Bay, group: Group): boolean {
  return names === undefined || names.includes(group.name)
}

/** The place of the module in a slot of a bay along a direction, in metres; 0 where the bay's is unknown. */
export function slotAt({ at, pitch }: Bay, slot: number, direction: Direction): number {
  return (at[direction]?.si ?? 0) + slot * (pitch?.[direction]?.si ?? 0)
}

/** Names that are used twice, and groups that a bay accepts and nobody knows. */
function faultyNames({ groups, bays }: PlaceGiven): InputIssue[] {
  return [
    ...Object.entries({ groups, bays }).flatMap(([list, named]) =>
      named.flatMap(({ name: each }, i) => {
        const before = named.findIndex((other) => other.name === each)
        const expected = 'a name of its own'
        return before === i
          ? []
          : [{ path: `${list}[${i}].name`, expected, received: `'${each}', as ${list}[${before}]` }]
      }),
    ),
    ...bays.flatMap(({ accepts = [] }, i) =>
      accepts.flatMap((group, k) => {
        const known = groups.map(({ name: each }) => `'${each}'`)
        const isOne = known.includes(`'${group}'`)
        const expected = `a group: ${known.join(', ')}`
        return isOne ? [] : [{ path: `bays[${i}].accepts[${k}]`, expected, received: `'${group}'` }]
      }),
    ),
  ]
}

/** No target at all, and weights that weigh nothing. */
function faultyTargets({ target, weights = {} }: PlaceGiven): InputIssue[] {
  const given = targetKeys.filter((key) => target[key] !== undefined)
  if (given.length === 0) {
    return [{ path: 'target', expected: `at least one of ${targetKeys.join(', ')}`, received: 'none of them' }]
  }
  if (given.every((key) => weights[key]?.si === 0)) {
    return [{ path: 'weights', expected: 'at least one above 0, such as 1', received: 'none above 0' }]
  }
  return targetKeys.flatMap((key) => {
    const weight = weights[key]
    const expected = `no weight, or target.${key} as well`
    return weight === undefined || target[key] !== undefined
      ? []
      : [{ path: `weights.${key}`, expected, received: String(weight) }]
  })
}

/** A base or bays whose place is needed for a target and not known. */
function unknownPlaces({ base, bays, target }: PlaceGiven): InputIssue[] {
  const places = [
    { path: 'base.centreOfGravity', at: base.centreOfGravity },
    ...bays.map(({ at }, i) => ({ path: `bays[${i}].at`, at })),
  ]
  const needed = [
    ['left', 'leftShare', "'0 mm'"],
    ['up', 'up', "'350 mm'"],
  ] as const
  return needed.flatMap(([direction, key, example]) =>
    places
      .filter(({ at }) => target[key] !== undefined && at[direction] === undefined)
      .map(({ path }) => ({
        path: `${path}.${direction}`,
        expected: `a length such as ${example}`,
        received: 'nothing',
        hint: `target.${key} needs it`,
      })),
  )
}

/** Steps from a place that is not known, and steps down into the ground. */
function faultyPitches({ bays, groups }: PlaceGiven): InputIssue[] {
  return bays.flatMap((bay, i) => {
    const last = Math.max(0, capacityOf(bay, groups) - 1)
    const fromNowhere = (['left', 'up'] as const).flatMap((direction) => {
      const step = bay.pitch?.[direction]
      if (step === undefined || bay.at[direction] !== undefined) return []
      const expected = `no step, or bays[${i}].at.${direction} as well`
      return [{ path: `bays[${i}].pitch.${direction}`, expected, received: String(step) }]
    })
    const { up } = bay.at
    // A last place on the ground is there in spite of rounding.
    if (up === undefined || slotAt(bay, last, 'up') >= -1e-9) return fromNowhere
    const expected = `at least ${up.times(-1).over(last)}, so that the last of ${last + 1} modules is not below the ground`
    return [...fromNowhere, { path: `bays[${i}].pitch.up`, expected, received: String(bay.pitch?.up) }]
  })
}
