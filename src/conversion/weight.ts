/** Weight and balance, before and after. */
import { type Check, cautions, check } from '../findings/index.js'
import { section as heading } from '../formula/index.js'
import { centreOfGravityAft, rearAxleMass } from '../mass/index.js'
import { type Quantity, quantity } from '../quantity/index.js'
import type { Build } from './build.js'
import type { Section, Table } from './section.js'

/** What stands on each axle. */
interface Axles {
  readonly front: Quantity<'mass'>
  readonly rear: Quantity<'mass'>
}

interface Part {
  readonly mass: Quantity<'mass'>
  readonly at: { readonly aft: Quantity<'length'> }
}

/** The mass after the change, empty. */
export function kerbMass(build: Build): Quantity<'mass'> {
  const { front, rear } = axlesAfter(build)
  return front.plus(rear)
}

/** Everything that comes: the parts listed, and the modules in their bays. */
function comes({ added = [], module, pack }: Build): readonly Part[] {
  if (module === undefined || pack === undefined) return added
  const modules = pack.bays
    .filter((bay) => bay.modules > 0)
    .map((bay) => ({ mass: module.mass.times(bay.modules), at: bay.at }))
  return [...added, ...modules]
}

function axlesBefore({ car: { scales } }: Build): Axles {
  return { front: scales.frontLeft.plus(scales.frontRight), rear: scales.rearLeft.plus(scales.rearRight) }
}

/** The axle loads when a part has come (1) or gone (-1). */
function moved({ front, rear }: Axles, { mass, at }: Part, sign: 1 | -1, wheelbase: Quantity<'length'>): Axles {
  const onRear = rearAxleMass({ mass, aft: at.aft, wheelbase })
  return { front: front.plus(mass.minus(onRear).times(sign)), rear: rear.plus(onRear.times(sign)) }
}

function axlesAfter(build: Build): Axles {
  const { wheelbase } = build.car
  const stripped = (build.removed ?? []).reduce((axles, part) => moved(axles, part, -1, wheelbase), axlesBefore(build))
  return comes(build).reduce((axles, part) => moved(axles, part, 1, wheelbase), stripped)
}

/** The section on weight and balance. */
export function weightSection(build: Build): Section {
  const { car, targets } = build
  const before = axlesBefore(build)
  const after = heading('Axle loads after: each part that leaves or comes, by its place', () => axlesAfter(build))
  const [mass, newMass] = [before, after].map(({ front, rear }) => front.plus(rear)) as [
    Quantity<'mass'>,
    Quantity<'mass'>,
  ]
  const [share, newShare] = [before, after].map(({ front, rear }) => percent(front.ratioTo(front.plus(rear)))) as [
    Quantity<'ratio'>,
    Quantity<'ratio'>,
  ]
  const [aft, newAft] = [before, after].map(({ front, rear }) =>
    centreOfGravityAft({ rearAxleMass: rear, mass: front.plus(rear), wheelbase: car.wheelbase }).as('mm'),
  ) as [Quantity<'length'>, Quantity<'length'>]
  const table: Table = {
    title: 'The empty car, ready for the road',
    columns: ['before', 'after', 'change'],
    rows: [
      { name: 'mass', values: [mass, newMass, newMass.minus(mass)] },
      { name: 'on the front axle', values: [before.front, after.front, after.front.minus(before.front)] },
      { name: 'on the rear axle', values: [before.rear, after.rear, after.rear.minus(before.rear)] },
      {
        name: 'share of the front axle',
        values: [share, newShare, `${((newShare.si - share.si) * 100).toFixed(2)} points`],
      },
      { name: 'centre of gravity aft of the front axle', values: [aft, newAft, newAft.minus(aft)] },
    ],
  }
  const laden = heading('With people and goods', () => moved(after, car.payload, 1, car.wheelbase))
  const checks: Check[] = []
  const basis = (field: string) => `the sheet: ${field}`
  if (targets?.kerbMassChange !== undefined) {
    const rise = newMass.minus(mass)
    checks.push(
      check('Rise of the empty mass', rise, 'at most', targets.kerbMassChange, basis('targets.kerbMassChange')),
    )
  }
  if (targets?.frontShareChange !== undefined) {
    const shift = percent(Math.abs(newShare.minus(share).si))
    const limit = targets.frontShareChange
    checks.push(
      check('Shift of the front share, in points', shift, 'at most', limit, basis('targets.frontShareChange')),
    )
  }
  const limits = [
    ['Gross mass', laden.front.plus(laden.rear), 'gross'],
    ['Laden mass on the front axle', laden.front, 'frontAxle'],
    ['Laden mass on the rear axle', laden.rear, 'rearAxle'],
  ] as const
  for (const [name, actual, key] of limits) {
    const limit = car.limits?.[key]
    if (limit !== undefined) checks.push(check(name, actual, 'at most', limit, basis(`car.limits.${key}`)))
  }
  return {
    title: 'Weight and balance',
    figures: [],
    tables: [table],
    checks,
    assumptions: ['Each part acts at its place as a point; side to side is not assessed yet.'],
    cautions: [cautions.brakesAndSteering, cautions.approval],
  }
}

function percent(share: number): Quantity<'ratio'> {
  return quantity('ratio', share).as('%')
}
