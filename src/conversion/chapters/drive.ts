/** The laden car with its drive, as the procedures of the drivetrain and of the range take it. */
import { settled } from '../../procedure/reading.js'
import { type Quantity, quantity } from '../../quantity/index.js'
import type { Build } from '../sheet/build.js'
import type { Pack } from './pack.js'
import { isOfSheet } from './section.js'
import type { Weights } from './weight.js'

/** What the road needs of the weights: the mass, and the centre of gravity where it is known. @internal */
export interface OnRoad {
  readonly mass: Quantity<'mass'>
  readonly centreOfGravity?: Weights['laden']['after']['centreOfGravity']
}

/**
 * The laden car. Where it cannot be told how it stands, such as with modules that do not fit into the bays, its mass is
 * known all the same: range and pull need no more.
 * @internal
 */
export function onRoad(build: Build, weights: () => Weights): OnRoad {
  try {
    const { mass, centreOfGravity } = weights().laden.after
    return { mass, centreOfGravity }
  } catch (error) {
    if (!isOfSheet(error)) throw error
    const mass = massOf(build)
    if (mass.si <= 0) throw error
    return { mass }
  }
}

/** What the scales showed, all four together. @internal */
export function weighedMass({ scales }: Build['car']): Quantity<'mass'> {
  const { frontLeft, frontRight, rearLeft, rearRight } = scales
  return frontLeft.plus(frontRight).plus(rearLeft).plus(rearRight)
}

/** What the scales showed, less what leaves, and what comes: parts, modules, people and goods. */
function massOf({ car, removed = [], added = [], module, pack }: Build): Quantity<'mass'> {
  const sum = (parts: typeof added) => parts.reduce((total, { mass, count = 1 }) => total + mass.si * count, 0)
  const modules = module === undefined || pack === undefined ? 0 : module.mass.si * pack.series * pack.parallel
  return weighedMass(car).plus(quantity('mass', sum(added) - sum(removed) + modules + car.payload.mass.si, 'kg'))
}

/**
 * The car as it is driven, with people and goods; undefined where the sheet has no motor, gearbox or pack.
 * @internal
 */
export function laden(build: Build, pack: Pack | undefined, { mass, centreOfGravity }: OnRoad) {
  const { car, motor, controller, gearbox } = build
  if (motor === undefined || gearbox === undefined || pack === undefined) return undefined
  const { wheelbase, dragArea, rollingResistance, rotatingFactor, drivenAxle, friction } = car
  return {
    car: settled({
      mass,
      wheelbase,
      ...wheelsOf(car),
      dragArea,
      rollingResistance,
      rotatingFactor,
      drivenAxle,
      ...(centreOfGravity === undefined ? {} : { centreOfGravity: settled({ ...centreOfGravity }) }),
      // Grip needs the height of the centre of gravity.
      ...(centreOfGravity?.up === undefined ? {} : { friction }),
    }),
    gearbox,
    motor,
    controller,
    pack: pack.made,
  }
}

/** What tells how far the wheels roll in one turn. @internal */
export function wheelsOf({ tyre, rollingRadius, rollingCircumference }: Build['car']) {
  return { tyre, rollingRadius: rollingCircumference?.over(2 * Math.PI) ?? rollingRadius }
}

/** The car as it is driven. @internal */
export type Laden = NonNullable<ReturnType<typeof laden>>
