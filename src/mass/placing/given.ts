/** What the placing of masses is given, and what of it is refused. */
import { given, group, list, optional, type Read, text, whole } from '../../procedure/index.js'
import { InputError, type InputIssue, type Quantity } from '../../quantity/index.js'
import { limitsField } from '../exchange.js'
import { centreOfGravityField, positionField } from '../position.js'
import { trackField, wheelbaseField } from '../weigh.js'

const baseField = /*@__PURE__*/ (() =>
  group('The car without the modules, with all else that goes in or out counted in', {
    mass: given('mass', 'Mass of the car without the modules', {
      above: 0,
      usual: ['300 kg', '1800 kg', 'usual kerb masses, less the modules of the lightest cars; common practice'],
    }),
    centreOfGravity: centreOfGravityField,
  }))()

const sidesField = (about: string) =>
  group(about, {
    length: given('length', 'Length', { above: 0 }),
    width: given('length', 'Width', { above: 0 }),
    height: given('length', 'Height', { above: 0 }),
  })

const groupField = /*@__PURE__*/ (() =>
  group('A group of like modules', {
    name: text('What the group is called'),
    mass: given('mass', 'Mass of one module', { above: 0 }),
    count: whole('How many there are', { min: 1, max: 100_000 }),
    size: optional(sidesField('The sides of one module')),
  }))()

/** What describes a bay. @internal */
export const bayFields = /*@__PURE__*/ (() => ({
  name: text('What the bay is called'),
  at: positionField,
  capacity: whole('How many modules it holds', { min: 0 }),
  maximumMass: optional(given('mass', 'Greatest mass that it carries', { above: 0 }), {
    absent: 'The mass in the bay is not held to a limit.',
  }),
  inside: optional(sidesField('The sides of the room within'), {
    absent: 'Whether the modules fit into the bay by their size is not checked: only capacity counts.',
  }),
  accepts: optional(list('The groups that fit into it; all unless given', text('The name of a group'))),
  pitch: optional(
    group('The way from one module to the next', {
      aft: optional(given('length', 'Step to the rear from one module to the next')),
      left: optional(given('length', 'Step to the left from one module to the next')),
      up: optional(given('length', 'Step upwards from one module to the next')),
    }),
  ),
}))()

const bayField = /*@__PURE__*/ (() => group('A bay', bayFields))()

const targetField = /*@__PURE__*/ (() =>
  group('What to come near to', {
    frontShare: optional(
      given('ratio', 'Share of the mass on the front axle', { min: 0, max: 1, usual: ['40 %', '65 %'] }),
    ),
    leftShare: optional(
      given('ratio', 'Share of the mass on the left wheels', { min: 0, max: 1, usual: ['47 %', '53 %'] }),
    ),
    aft: optional(given('length', 'Distance of the centre of gravity behind the front axle')),
    up: optional(
      given('length', 'Height that the centre of gravity should not exceed', { min: 0, usual: ['0.4 m', '0.65 m'] }),
    ),
  }))()

const weightsField = /*@__PURE__*/ (() =>
  group('How much each target counts', {
    frontShare: optional(given('ratio', 'Weight of the front share', { min: 0 })),
    leftShare: optional(given('ratio', 'Weight of the left share', { min: 0 })),
    aft: optional(given('ratio', 'Weight of the place along the car', { min: 0 })),
    up: optional(given('ratio', 'Weight of the height', { min: 0 })),
  }))()

/** What describes masses to be placed. @internal */
export const placeMassesFields = /*@__PURE__*/ (() => ({
  base: baseField,
  groups: list('The groups of like modules', groupField, { least: 1 }),
  bays: list('The bays that take modules', bayField, { least: 1 }),
  wheelbase: wheelbaseField,
  track: trackField,
  target: targetField,
  weights: optional(weightsField),
  limits: optional(limitsField, { absent: 'Mass and axle loads are not held to limits: give limits.' }),
}))()

/** @internal */
export type PlaceGiven = Read<typeof placeMassesFields>
/** @internal */
export type Bay = PlaceGiven['bays'][number]
/** @internal */
export type Group = PlaceGiven['groups'][number]
/** @internal */
export type Direction = 'aft' | 'left' | 'up'

/** What a target may be about. @internal */
export const targetKeys = ['frontShare', 'leftShare', 'aft', 'up'] as const

/** Refuses what can be told from single fields, by their paths. @internal */
export function refuseFaults(read: PlaceGiven): void {
  for (const faultsIn of [farPlaces, faultyNames, faultyTargets, unknownPlaces, faultyPitches]) {
    const issues = faultsIn(read)
    if (issues.length > 0) throw new InputError('placeMasses', issues)
  }
}

/** How many modules a bay can come to hold. @internal */
export function capacityOf(bay: Bay, groups: readonly Group[]): number {
  return groups
    .filter((group) => accepts(bay, group))
    .reduce((sum, { count }) => Math.min(bay.capacity, sum + count), 0)
}

/** Whether a group fits into a bay. @internal */
export function accepts({ accepts: names }: Bay, group: Group): boolean {
  return names === undefined || names.includes(group.name)
}

/**
 * The same with bays that take no more of a group than they carry and have room for. Where groups that weigh differently
 * share a bay, it may yet come to hold too much.
 * @internal
 */
export function withinLimits(read: PlaceGiven): PlaceGiven {
  const bays = read.bays.map((bay) => {
    const fitting = read.groups
      .filter((group) => accepts(bay, group))
      .map((group) => ({ name: group.name, most: mostOf(bay, group) }))
      .filter(({ most }) => most > 0)
    const most = Math.max(0, ...fitting.map((each) => each.most))
    return { ...bay, capacity: Math.min(bay.capacity, most), accepts: fitting.map(({ name }) => name) }
  })
  return { ...read, bays }
}

/** How many modules of a group a bay carries and has room for, by mass, sides and volume. */
function mostOf({ maximumMass, inside }: Bay, { mass, size }: Group): number {
  // A little to spare for rounding.
  const whole = (ratio: number) => Math.floor(ratio * (1 + 1e-12))
  const carried = maximumMass === undefined ? Number.POSITIVE_INFINITY : whole(maximumMass.ratioTo(mass))
  if (inside === undefined || size === undefined) return carried
  return tooLong(size, inside) === undefined ? Math.min(carried, whole(volumeOf(inside) / volumeOf(size))) : 0
}

type Sides = NonNullable<Group['size']>

/** The side of a module that does not go into a room, however the module is turned. @internal */
export function tooLong(size: Sides, inside: Sides): Quantity<'length'> | undefined {
  const sorted = ({ length, width, height }: Sides) => [length, width, height].sort((one, other) => one.si - other.si)
  const room = sorted(inside)
  return sorted(size).find((side, k) => side.si > (room[k] as Quantity<'length'>).si)
}

/** In cubic metres. @internal */
export function volumeOf({ length, width, height }: Sides): number {
  return length.si * width.si * height.si
}

/** The place of the module in a slot of a bay along a direction, in metres; 0 where the bay's is unknown. @internal */
export function slotAt({ at, pitch }: Bay, slot: number, direction: Direction): number {
  return (at[direction]?.si ?? 0) + slot * (pitch?.[direction]?.si ?? 0)
}

/** As far from the front axle as this, in m, nothing is of the car: its moments would only overflow. */
const FAR = 1e6

/** Places that no car reaches. */
function farPlaces({ base, bays }: PlaceGiven): InputIssue[] {
  const places = [
    ...Object.entries(base.centreOfGravity).map(([key, at]) => [`base.centreOfGravity.${key}`, at] as const),
    ...bays.flatMap(({ at, pitch = {} }, i) => [
      ...Object.entries(at).map(([key, each]) => [`bays[${i}].at.${key}`, each] as const),
      ...Object.entries(pitch).map(([key, each]) => [`bays[${i}].pitch.${key}`, each] as const),
    ]),
  ]
  return places.flatMap(([path, at]) =>
    at === undefined || Math.abs(at.si) <= FAR
      ? []
      : [{ path, expected: `a length on a car, at most ${FAR} m`, received: String(at) }],
  )
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
