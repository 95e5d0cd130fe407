/** Weight and balance: the car on its four wheels before and after, and where each module goes. */

import { section as heading } from '../../formula/index.js'
import {
  exchangeMasses,
  type MassExchange,
  type PlacedMasses,
  placeMasses,
  type RestoredRide,
  restoreRide,
  sideShare,
} from '../../mass/index.js'
import { type Check, merged } from '../../procedure/index.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import { type Chapter, calledBy, foundIn, fromSheet, heldToSheet, type Places, partOf, type Table } from './section.js'

/** Where in the sheet the figures stand. */
const places: Places = {
  'car': 'car',
  'removed': 'removed',
  'added': 'added',
  'frontRollShare': 'car.frontRollShare',
  'limits': 'car.limits',
  'base': 'car.scales',
  'groups': 'module',
  'wheelbase': 'car.wheelbase',
  'track': 'car.track',
  'target.frontShare': 'targets.frontShare',
  'target.leftShare': 'car.scales',
  'groups[0].size': 'module.size',
}

/** Where in the sheet the figures of the weighing stand. */
const weighingPlaces: Places = Object.fromEntries(
  ['scales', 'wheelbase', 'track', 'raised'].map((key) => [key, `car.${key}`]),
)

/** What the exchange of parts, and the modules in their bays, make of the car. @internal */
export interface Weights {
  /** Parts out, parts and modules in: the empty car. */
  readonly exchange: MassExchange
  /** Where the modules go; undefined where the sheet has none. */
  readonly placed: PlacedMasses | undefined
  /** The same with people and goods, held to the limits on the papers. */
  readonly laden: MassExchange
  /** What brings the empty car back to its height: other springs, or the seats of those it has; undefined without springs. */
  readonly ride: { readonly fitted: RestoredRide; readonly kept: RestoredRide } | undefined
}

/** Works out where the modules go, unless they have their places, and how the car then stands. @internal */
export function weightsOf(build: Build, before?: PlacedMasses): Weights {
  const { car, removed = [], added = [], module, pack, targets } = build
  const { scales, wheelbase, track, raised, frontRollShare } = car
  const exchanged = (parts: typeof added, limits?: typeof car.limits) =>
    fromSheet(places, () =>
      exchangeMasses({ car: { scales, wheelbase, track, raised }, removed, added: parts, frontRollShare, limits }),
    )
  const placed =
    before ??
    (module === undefined || pack === undefined
      ? undefined
      : heading('Where the modules go', () => {
          const { before, after } = exchanged(added)
          const bayPlaces = namedBays(pack.bays).map(({ key }, i) => [`bays[${i}]`, `pack.bays.${key}`])
          return fromSheet({ ...places, ...Object.fromEntries(bayPlaces) }, () =>
            placeMasses({
              base: { mass: after.mass, centreOfGravity: after.centreOfGravity },
              groups: [{ name: module.name, mass: module.mass, count: pack.series * pack.parallel, size: module.size }],
              bays: namedBays(pack.bays).map(({ name, bay: { title: _, ...bay } }) => ({ ...bay, name })),
              wheelbase,
              track,
              target: {
                frontShare: targets?.frontShare ?? before.frontShare,
                // Where the tracks differ, the share that scales show is not the one that the place of the mass tells.
                leftShare: sideShare({
                  left: before.centreOfGravity.left,
                  track: track.front.plus(track.rear).over(2),
                }),
              },
            }),
          )
        }))
  const modules = (placed?.parts ?? []).map(({ at, ...part }) => {
    // A placement keeps to the bays of the sheet, whose left is known.
    return { ...part, at: { ...at, left: at.left as Quantity<'length'> } }
  })
  const whole = [...added, ...modules]
  const exchange = heading('The empty car', () => exchanged(whole))
  return {
    exchange,
    placed,
    ride: heading('Springs', () => rideOf(car, exchange)),
    laden: heading('With people and goods', () =>
      // Nobody on board is no part.
      exchanged(
        car.payload.mass.si === 0 ? whole : [...whole, { name: 'people and goods', ...car.payload }],
        car.limits,
      ),
    ),
  }
}

type Bays = NonNullable<Build['pack']>['bays']

/** The bays with their keys and a name for each that no other has. @internal */
export function namedBays(bays: Bays) {
  const all = Object.entries(bays).map(([key, bay]) => ({ key, bay, called: calledBy(key, bay) }))
  return all.map(({ key, bay, called }) => {
    const isShared = all.some((other) => other.key !== key && other.called === called)
    return { key, bay, name: isShared ? `${called} (${key})` : called }
  })
}

function rideOf({ springs }: Build['car'], { before, after }: MassExchange): Weights['ride'] {
  if (springs === undefined) return undefined
  const axle = (end: 'front' | 'rear', keepHeight: boolean) => {
    const { unsprung, ...spring } = springs[end]
    const mass = end === 'front' ? 'frontMass' : 'rearMass'
    return { ...spring, before: before[mass].minus(unsprung), after: after[mass].minus(unsprung), keepHeight }
  }
  const restored = (keepHeight: boolean) =>
    fromSheet({ axles: 'car.springs' }, () =>
      restoreRide({ axles: { front: axle('front', keepHeight), rear: axle('rear', keepHeight) } }),
    )
  return { fitted: restored(false), kept: restored(true) }
}

/** The section on weight and balance. @internal */
export function weightSection({ targets, pack }: Build, { exchange, placed, laden, ride }: Weights): Chapter {
  const { change } = exchange
  const checks: Check[] = []
  if (targets?.kerbMassChange !== undefined) {
    const limit = targets.kerbMassChange
    checks.push(heldToSheet('targets.kerbMassChange', 'Rise of the empty mass', change.mass, 'at most', limit))
  }
  if (targets?.frontShareChange !== undefined) {
    const shift = (change.frontShare.si < 0 ? change.frontShare.times(-1) : change.frontShare).as('%')
    const limit = targets.frontShareChange
    checks.push(heldToSheet('targets.frontShareChange', 'Shift of the front share, in points', shift, 'at most', limit))
  }
  // It is the laden car that is held to the limits on the papers.
  const unlimited = [...exchange.assumptions, ...(placed?.assumptions ?? [])].filter(({ id }) => id !== 'limits.absent')
  const { checks: weighed } = foundIn(weighingPlaces, { checks: exchange.before.checks })
  return {
    figures: [],
    tables: [
      stanceTable(exchange),
      ...(placed === undefined || pack === undefined ? [] : [placementTable(placed, pack.bays)]),
      ...(ride === undefined ? [] : [rideTable(ride)]),
    ],
    ...merged({ ...exchange, assumptions: unlimited }, { ...placed, assumptions: [] }, laden, ride?.fitted ?? {}),
    checks: [
      ...checks,
      ...partOf('weight.before', weighed, (name) => `${name}, as it was weighed`),
      ...partOf('weight.placing', placed?.checks ?? [], (name) => `${name}, as the modules are placed`),
      ...partOf('weight.empty', ofExchange(exchange), (name) => `${name}, empty`),
      ...partOf('weight.laden', ofExchange(laden), (name) => `${name}, laden`),
      ...partOf('weight.springs', ride?.fitted.checks ?? [], (name) => `${name}, on fitted springs`),
    ],
  }
}

/** The checks of an exchange without those of its weighing, which is the same for all. */
function ofExchange({ checks, before }: MassExchange): Check[] {
  return checks.filter(({ id }) => before.checks.every((each) => each.id !== id))
}

function stanceTable({ before, after, change }: MassExchange): Table {
  const wheel = (name: string, key: keyof typeof after.corners) => ({
    id: key,
    name,
    values: [before.corners[key], after.corners[key], change.corners[key]],
  })
  const share = (name: string, key: 'frontShare' | 'leftShare' | 'crossShare') => ({
    id: key,
    name,
    values: [before, after, change].map((each) => each[key].as('%')),
  })
  const place = (name: string, key: 'aft' | 'left' | 'up') => {
    const values = [before, after, change].map(({ centreOfGravity }) => centreOfGravity[key]?.as('mm') ?? 'unknown')
    return values[0] === 'unknown' ? [] : [{ id: key, name, values }]
  }
  return {
    id: 'weight',
    title: 'The empty car, ready for the road',
    measures: 'rows',
    columns: (['before', 'after', 'change'] as const).map((id) => ({ id, name: id })),
    rows: [
      { id: 'mass', name: 'mass', values: [before.mass, after.mass, change.mass] },
      wheel('front left', 'frontLeft'),
      wheel('front right', 'frontRight'),
      wheel('rear left', 'rearLeft'),
      wheel('rear right', 'rearRight'),
      share('on the front axle', 'frontShare'),
      share('on the left', 'leftShare'),
      share('cross weight, front right and rear left', 'crossShare'),
      ...place('centre of gravity, aft of the front axle', 'aft'),
      ...place('centre of gravity, left of the centre line', 'left'),
      ...place('centre of gravity, above the ground', 'up'),
    ],
  }
}

function placementTable({ placements, deviation, proven, explored, limitedBy }: PlacedMasses, bays: Bays): Table {
  const keys = new Map(namedBays(bays).map(({ name, key }) => [name, key]))
  const proof = proven
    ? `No placement comes nearer to the target: proven over ${explored} placements, whole and partial.`
    : `The nearest of ${explored} placements looked at; that none is nearer is not proven.`
  const off = `It is ${(deviation.si * 100).toFixed(2)} points off, front and left shares together.`
  return {
    id: 'placement',
    title: 'Where the modules go',
    measures: 'columns',
    columns: ['modules', 'mass', 'aft', 'left'].map((id) => ({ id, name: id })),
    rows: placements.map(({ bay, count, totalMass, at }) => ({
      id: keys.get(bay) as string,
      name: bay,
      values: [quantity('ratio', count), totalMass, at.aft.as('mm'), at.left?.as('mm') ?? 'unknown'],
    })),
    notes: [[proof, off, ...(limitedBy === undefined ? [] : [`More room would help most ${limitedBy}.`])].join(' ')],
  }
}

function rideTable({ fitted, kept }: NonNullable<Weights['ride']>): Table {
  return {
    id: 'ride',
    title: 'The ride of the empty car, on the springs that it has or on others',
    measures: 'columns',
    columns: [
      { id: 'heightChange', name: 'body moves by' },
      { id: 'preload', name: 'keep them, seats by' },
      { id: 'frequency', name: 'ride frequency' },
      { id: 'springRate', name: 'or fit springs of' },
      { id: 'fittedFrequency', name: 'ride frequency' },
    ],
    rows: (['front', 'rear'] as const).map((end) => ({
      id: end,
      name: end,
      values: [
        kept[end].heightChange.as('mm'),
        kept[end].preload.as('mm'),
        kept[end].frequency,
        fitted[end].springRate,
        fitted[end].frequency,
      ],
    })),
    notes: ['Springs of the rate named, with the free length of the old ones, bring back both height and frequency.'],
  }
}
